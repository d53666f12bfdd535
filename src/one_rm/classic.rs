//! The classic scale-free prediction equations: one set to failure in, the maximum out.
//!
//! Uses `quantity`, `source`, `numeric` and the curve of this module. Each is a curve (most repetitions, those measured or
//! spoken of, maximum for a load of 1, repetitions back from it) and its facts. Left out on purpose: Tucker et al. 2006
//! (its unit could not be confirmed). Welday 1988 is Epley's curve.

use super::curve::Curve;
use super::declare::equation;
use crate::error::Error;
use crate::numeric;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, rows};

/// 30: repetitions that double the estimate.
pub(super) const EPLEY: Curve = Curve::new(30.0, (1.0, 10.0), |r| 1.0 + r / 30.0, |m| 30.0 * (m - 1.0));

equation! {
    "Epley 1985", "p 86 as recalled; copies print 1/30 or 0.033", highest: 30;
    row: {
        source: Source { id: "epley-1985", citation: "Epley B. Poundage chart. Body Enterprises, Lincoln NE, 1985", doi: None },
        place: "p 86; copies print 1/30 or 0.033", standing: Published, seen: Secondary,
        copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a coach's chart; no published sample"
    },
    domain: "1 to 30 repetitions; a chart for up to about 10 repetitions";
    /// From 1 repetition up to 30 repetitions: no pole; a straight line without end. Not measured: a coach's
    /// chart without a published sample; that it ended at about 10 repetitions is recalled. The form printed with Welday 1988 is the same
    /// curve.
    pub fn epley_1985(load: Mass, reps: Reps) -> Result<Kilograms, Error> { EPLEY.one_rm(load, reps) }
    "`E = w (1 + r / 30)`", at_one: "1.0333 w, not the load itself", gives: 126.667;
    pub fn epley_1985_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { EPLEY.load(one_rm, reps) }
    "`w = E / (1 + r / 30)`", gives: 78.947;
    pub fn epley_1985_reps(fraction: Fraction) -> Result<f64, Error> { EPLEY.reps(fraction) }
    "`r = 30 (1 / F - 1)`", gives: 7.50;
}

const BRZYCKI_1993: Source = Source {
    id: "brzycki-1993",
    citation: "Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90",
    doi: Some("10.1080/07303084.1993.10606684"),
};

/// It runs away at 37; 36 is one less, so that one repetition gives the load.
pub(super) const BRZYCKI: Curve = Curve::new(36.5, (1.0, 10.0), |r| 36.0 / (37.0 - r), |m| 37.0 - 36.0 / m);

equation! {
    "Brzycki 1993", "p 88-90", highest: 36.5;
    row: {
        source: BRZYCKI_1993,
        place: "p 88-90", standing: Published, seen: Secondary, copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a practical rule; no sample"
    },
    domain: "1 to 36.5 repetitions (pole at 37); stated by its author for up to 10 repetitions";
    /// From 1 repetition up to 36.5 repetitions (pole at 37): pole at 37 repetitions. Nobody was measured: a
    /// practical rule, stated by its author for up to 10 repetitions.
    pub fn brzycki_1993(load: Mass, reps: Reps) -> Result<Kilograms, Error> { BRZYCKI.one_rm(load, reps) }
    "`E = 36 w / (37 - r)`", at_one: "the load itself", gives: 124.138;
    pub fn brzycki_1993_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { BRZYCKI.load(one_rm, reps) }
    "`w = E (37 - r) / 36`", gives: 80.556;
    pub fn brzycki_1993_reps(fraction: Fraction) -> Result<f64, Error> { BRZYCKI.reps(fraction) }
    "`r = 37 - 36 F`", gives: 8.20;
}

pub(super) const BRZYCKI_DECIMAL: Curve =
    Curve::new(36.5, (1.0, 10.0), |r| 1.0 / (1.0278 - 0.0278 * r), |m| (1.0278 - 1.0 / m) / 0.0278);

equation! {
    "Brzycki 1993, decimal form", "p 88-90, decimal form", highest: 36.5;
    row: {
        source: BRZYCKI_1993,
        place: "p 88-90, decimal form", standing: Published, seen: Secondary,
        copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a practical rule; no sample"
    },
    domain: "1 to 36.5 repetitions (pole at 36.971); stated by its author for up to 10 repetitions";
    /// From 1 repetition up to 36.5 repetitions (pole at 36.971): pole at 36.971 repetitions. Nobody was
    /// measured: a practical rule, stated by its author for up to 10 repetitions.
    pub fn brzycki_1993_decimal(load: Mass, reps: Reps) -> Result<Kilograms, Error> { BRZYCKI_DECIMAL.one_rm(load, reps) }
    "`E = w / (1.0278 - 0.0278 r)`", at_one: "the load itself", gives: 124.162;
    pub fn brzycki_1993_decimal_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { BRZYCKI_DECIMAL.load(one_rm, reps) }
    "`w = E (1.0278 - 0.0278 r)`", gives: 80.540;
    pub fn brzycki_1993_decimal_reps(fraction: Fraction) -> Result<f64, Error> { BRZYCKI_DECIMAL.reps(fraction) }
    "`r = (1.0278 - F) / 0.0278`", gives: 8.19;
}

/// Percent of the maximum at no repetition, and lost with each.
pub(super) const LANDER: Curve =
    Curve::new(37.5, (1.0, 10.0), |r| 100.0 / (101.3 - 2.67123 * r), |m| (101.3 - 100.0 / m) / 2.67123);

equation! {
    "Lander 1985", "p 60-61", highest: 37.5;
    row: {
        source: Source { id: "lander-1985", citation: "Lander J. Maximum based on reps. NSCA Journal 1985;6(6):60-61", doi: None },
        place: "p 60-61", standing: Published, seen: Secondary, copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a handbook chart; no sample"
    },
    domain: "1 to 37.5 repetitions (pole at 37.923); a handbook chart for up to 10 repetitions";
    /// From 1 repetition up to 37.5 repetitions (pole at 37.923): pole at 37.923 repetitions. Nobody was
    /// measured: a handbook chart for up to 10 repetitions.
    pub fn lander_1985(load: Mass, reps: Reps) -> Result<Kilograms, Error> { LANDER.one_rm(load, reps) }
    "`E = 100 w / (101.3 - 2.67123 r)`", at_one: "1.0139 w, not the load itself", gives: 125.109;
    pub fn lander_1985_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { LANDER.load(one_rm, reps) }
    "`w = E (101.3 - 2.67123 r) / 100`", gives: 79.930;
    pub fn lander_1985_reps(fraction: Fraction) -> Result<f64, Error> { LANDER.reps(fraction) }
    "`r = (101.3 - 100 F) / 2.67123`", gives: 7.97;
}

/// The power says how slowly repetitions raise the estimate.
pub(super) const LOMBARDI: Curve =
    Curve::new(30.0, (1.0, 10.0), |r| numeric::pow(r, 0.10), |m| numeric::pow(m, 1.0 / 0.10));

equation! {
    "Lombardi 1989", "prediction of the maximum", highest: 30;
    row: {
        source: Source { id: "lombardi-1989", citation: "Lombardi VP. Beginning Weight Training. Brown, Dubuque IA, 1989", doi: None },
        place: "prediction of the maximum", standing: Published, seen: Secondary,
        copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from", population: "a textbook; no sample"
    },
    domain: "1 to 30 repetitions; fits up to 10 repetitions at best";
    /// From 1 repetition up to 30 repetitions: no pole; explodes when inverted (35.4 repetitions at 70 %, 165 at
    /// 60 %). Nobody was measured: a textbook's rule, which fits up to 10 repetitions at best.
    pub fn lombardi_1989(load: Mass, reps: Reps) -> Result<Kilograms, Error> { LOMBARDI.one_rm(load, reps) }
    "`E = w r^0.10`", at_one: "the load itself", gives: 123.114;
    pub fn lombardi_1989_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { LOMBARDI.load(one_rm, reps) }
    "`w = E r^-0.10`", gives: 81.225;
    pub fn lombardi_1989_reps(fraction: Fraction) -> Result<f64, Error> { LOMBARDI.reps(fraction) }
    "`r = (1 / F)^10`", gives: 9.31;
}

/// Percent of the maximum that the curve levels off at, span above it, rate.
pub(super) const MAYHEW: Curve = Curve::new(
    50.0,
    (1.0, 50.0),
    |r| 100.0 / (52.2 + 41.9 * numeric::exp(-0.055 * r)),
    |m| -numeric::ln((100.0 / m - 52.2) / 41.9) / 0.055,
);

equation! {
    "Mayhew et al. 1992", "p 200-206", highest: 50;
    row: {
        source: Source { id: "mayhew-1992", citation: "Mayhew JL, Ball TE, Arnold MD, Bowen JC. Relative muscular endurance performance as a predictor of bench press strength in college men and women. J Appl Sport Sci Res 1992;6(4):200-206", doi: None },
        place: "p 200-206", standing: Published, seen: Secondary,
        copies: "public code and lists of equations", recalled: "the pages",
        population: "college men and women, bench press, repetitions in one minute"
    },
    domain: "1 to 50 repetitions; loads of 55 to 95 % lifted as often as possible in one minute, about 50 repetitions at the lightest";
    /// From 1 repetition up to 50 repetitions: no pole; levels off at 1.9157 w, and above 91.86 % of the maximum
    /// it has less than one repetition. Measured: loads of 55 to 95 % lifted as often as possible in one minute,
    /// about 50 repetitions at the lightest (college men and women, bench press, repetitions in one minute). One
    /// curve, bench press only; lift-specific curves under this name found elsewhere are not its own.
    pub fn mayhew_1992(load: Mass, reps: Reps) -> Result<Kilograms, Error> { MAYHEW.one_rm(load, reps) }
    "`E = 100 w / (52.2 + 41.9 exp(-0.055 r))`", at_one: "1.0886 w, not the load itself", gives: 126.286;
    pub fn mayhew_1992_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { MAYHEW.load(one_rm, reps) }
    "`w = E (52.2 + 41.9 exp(-0.055 r)) / 100`", gives: 79.185;
    pub fn mayhew_1992_reps(fraction: Fraction) -> Result<f64, Error> { MAYHEW.reps(fraction) }
    "`r = -ln((100 F - 52.2) / 41.9) / 0.055`", gives: 7.46;
}

/// Part of the load added by each repetition (0.25 in some copies is a slip).
pub(super) const OCONNER: Curve = Curve::new(30.0, (1.0, 10.0), |r| 1.0 + 0.025 * r, |m| (m - 1.0) / 0.025);

equation! {
    "O'Conner et al. 1989", "prediction of the maximum", highest: 30;
    row: {
        source: Source { id: "oconner-1989", citation: "O'Conner B, Simmons J, O'Shea P. Weight Training Today. West, St Paul MN, 1989", doi: None },
        place: "prediction of the maximum", standing: Published, seen: Secondary,
        copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a textbook rule; no sample"
    },
    domain: "1 to 30 repetitions; a rule for up to about 10 repetitions";
    /// From 1 repetition up to 30 repetitions: no pole; a straight line without end. Nobody was measured: a
    /// textbook's rule for up to about 10 repetitions.
    pub fn oconner_1989(load: Mass, reps: Reps) -> Result<Kilograms, Error> { OCONNER.one_rm(load, reps) }
    "`E = w (1 + 0.025 r)`", at_one: "1.025 w, not the load itself", gives: 120.000;
    pub fn oconner_1989_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { OCONNER.load(one_rm, reps) }
    "`w = E / (1 + 0.025 r)`", gives: 83.333;
    pub fn oconner_1989_reps(fraction: Fraction) -> Result<f64, Error> { OCONNER.reps(fraction) }
    "`r = 40 (1 / F - 1)`", gives: 10.00;
}

/// Percent of the maximum that the curve levels off at, span above it, rate.
pub(super) const WATHAN: Curve = Curve::new(
    30.0,
    (1.0, 15.0),
    |r| 100.0 / (48.8 + 53.8 * numeric::exp(-0.075 * r)),
    |m| -numeric::ln((100.0 / m - 48.8) / 53.8) / 0.075,
);

equation! {
    "Wathan 1994", "chapter on load assignment", highest: 30;
    row: {
        source: Source { id: "wathan-1994", citation: "Wathan D. Load assignment. In: Baechle TR (ed). Essentials of Strength Training and Conditioning. Human Kinetics, Champaign IL, 1994", doi: None },
        place: "chapter on load assignment", standing: Published, seen: Secondary,
        copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a refit of a chart; no sample"
    },
    domain: "1 to 30 repetitions; a chart for up to about 15 repetitions";
    /// From 1 repetition up to 30 repetitions: no pole; levels off at 2.0492 w. Nobody was measured: a chart
    /// for up to about 15 repetitions, fitted again. The name is also printed Wathen.
    pub fn wathan_1994(load: Mass, reps: Reps) -> Result<Kilograms, Error> { WATHAN.one_rm(load, reps) }
    "`E = 100 w / (48.8 + 53.8 exp(-0.075 r))`", at_one: "1.0130 w, not the load itself", gives: 127.671;
    pub fn wathan_1994_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { WATHAN.load(one_rm, reps) }
    "`w = E (48.8 + 53.8 exp(-0.075 r)) / 100`", gives: 78.326;
    pub fn wathan_1994_reps(fraction: Fraction) -> Result<f64, Error> { WATHAN.reps(fraction) }
    "`r = -ln((100 F - 48.8) / 53.8) / 0.075`", gives: 7.26;
}

pub(super) const BROWN: Curve =
    Curve::new(30.0, (1.0, 10.0), |r| 0.9849 + 0.0338 * r, |m| (m - 0.9849) / 0.0338);

equation! {
    "Brown 1992", "prediction of the maximum", highest: 30;
    row: {
        source: Source { id: "brown-1992", citation: "Brown HL. Lifetime Fitness. Gorsuch Scarisbrick, Scottsdale AZ, 1992", doi: None },
        place: "prediction of the maximum", standing: Published, seen: Secondary,
        copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a textbook rule; no sample known"
    },
    domain: "1 to 30 repetitions; a rule for up to about 10 repetitions";
    /// From 1 repetition up to 30 repetitions: no pole; a straight line without end. No sample is known: a
    /// textbook's rule for up to about 10 repetitions.
    pub fn brown_1992(load: Mass, reps: Reps) -> Result<Kilograms, Error> { BROWN.one_rm(load, reps) }
    "`E = w (0.9849 + 0.0338 r)`", at_one: "1.0187 w, not the load itself", gives: 125.530;
    pub fn brown_1992_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { BROWN.load(one_rm, reps) }
    "`w = E / (0.9849 + 0.0338 r)`", gives: 79.662;
    pub fn brown_1992_reps(fraction: Fraction) -> Result<f64, Error> { BROWN.reps(fraction) }
    "`r = (1 / F - 0.9849) / 0.0338`", gives: 7.84;
}

/// Part of the maximum lost with each repetition.
pub(super) const ADAMS: Curve =
    Curve::new(49.5, (1.0, 10.0), |r| 1.0 / (1.0 - 0.02 * r), |m| (1.0 - 1.0 / m) / 0.02);

equation! {
    "Adams 1998", "prediction of the maximum", highest: 49.5;
    row: {
        source: Source { id: "adams-1998", citation: "Adams GM. Exercise Physiology Laboratory Manual. McGraw-Hill, Boston MA, 1998", doi: None },
        place: "prediction of the maximum", standing: Published, seen: Secondary,
        copies: "public code and lists of equations",
        recalled: "the place in the work, and what it was made from",
        population: "a laboratory manual; no sample known"
    },
    domain: "1 to 49.5 repetitions (pole at 50); a rule for up to about 10 repetitions";
    /// From 1 repetition up to 49.5 repetitions (pole at 50): pole at 50 repetitions. No sample is known: a
    /// rule of a laboratory manual for up to about 10 repetitions. Some cite it as 1994.
    pub fn adams_1998(load: Mass, reps: Reps) -> Result<Kilograms, Error> { ADAMS.one_rm(load, reps) }
    "`E = w / (1 - 0.02 r)`", at_one: "1.0204 w, not the load itself", gives: 119.048;
    pub fn adams_1998_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { ADAMS.load(one_rm, reps) }
    "`w = E (1 - 0.02 r)`", gives: 84.000;
    pub fn adams_1998_reps(fraction: Fraction) -> Result<f64, Error> { ADAMS.reps(fraction) }
    "`r = 50 (1 - F)`", gives: 10.00;
}

/// Later lists print 0.00262, with which ten repetitions would add nothing; 0.0262 gives the load at one. The original
/// table was not seen: the correction is ours.
pub(super) const BERGER: Curve = Curve::new(
    30.0,
    (1.0, 10.0),
    |r| 1.0 / (1.0261 * numeric::exp(-0.0262 * r)),
    |m| numeric::ln(1.0261 * m) / 0.0262,
);

equation! {
    "Berger 1961", "in later lists, its constant corrected by this project", highest: 30;
    row: {
        source: Source { id: "berger-1961", citation: "Berger RA. Determination of the resistance load for 1-RM and 10-RM. J Assoc Phys Ment Rehabil 1961;15:108-110 (also cited as 1970)", doi: None },
        place: "as later lists print it, 0.0262 in place of their 0.00262", standing: OurChoice, seen: NotApplicable,
        population: "college men, bench press"
    },
    domain: "1 to 30 repetitions; measured up to 10 repetitions";
    /// From 1 repetition up to 30 repetitions: no pole; grows without end. Measured, as recalled, up to
    /// 10 repetitions (college men, bench press).
    pub fn berger_1961(load: Mass, reps: Reps) -> Result<Kilograms, Error> { BERGER.one_rm(load, reps) }
    "`E = w / (1.0261 exp(-0.0262 r))`", at_one: "1.0004 w, the load itself within rounding", gives: 120.182;
    pub fn berger_1961_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { BERGER.load(one_rm, reps) }
    "`w = E 1.0261 exp(-0.0262 r)`", gives: 83.207;
    pub fn berger_1961_reps(fraction: Fraction) -> Result<f64, Error> { BERGER.reps(fraction) }
    "`r = -ln(F / 1.0261) / 0.0262`", gives: 9.50;
}

#[rustfmt::skip]
rows![
    epley_1985, epley_1985_load, epley_1985_reps,
    brzycki_1993, brzycki_1993_load, brzycki_1993_reps,
    brzycki_1993_decimal, brzycki_1993_decimal_load, brzycki_1993_decimal_reps,
    lander_1985, lander_1985_load, lander_1985_reps,
    lombardi_1989, lombardi_1989_load, lombardi_1989_reps,
    mayhew_1992, mayhew_1992_load, mayhew_1992_reps,
    oconner_1989, oconner_1989_load, oconner_1989_reps,
    wathan_1994, wathan_1994_load, wathan_1994_reps,
    brown_1992, brown_1992_load, brown_1992_reps,
    adams_1998, adams_1998_load, adams_1998_reps,
    berger_1961, berger_1961_load, berger_1961_reps,
];
