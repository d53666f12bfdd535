//! Choices of the estimate, with the numbers they come from.

use alloc::vec::Vec;

use super::effort::ReserveBias;
use super::equation::Equation;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Reps, Rir};
use crate::source::{OURS, Source, constant, default_of, rows};

const GRGIC_2020: Source = Source {
    id: "grgic-2020",
    citation: "Grgic J, Lazinica B, Schoenfeld BJ, Pedisic Z. Test-retest reliability of the one-repetition maximum (1RM) strength assessment: a systematic review. Sports Med Open 2020;6:31",
    doi: Some("10.1186/s40798-020-00260-z"),
};

const BANYARD_2017: Source = Source {
    id: "banyard-2017",
    citation: "Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 2017;31(7):1897-1904",
    doi: Some("10.1519/JSC.0000000000001657"),
};

const MITTER_2022: Source = Source {
    id: "mitter-2022",
    citation: "Mitter B, Csapo R, Bauer P, Tschan H. Reproducibility of strength performance and strength-endurance profiles: a test-retest study. PLoS One 2022;17(5):e0268074",
    doi: None,
};

constant! {
    "one_rm.grgic_2020_cv",
    /// How much a tested one-repetition maximum differs from day to day: median coefficient of variation, 4.2 %.
    ///
    /// # Domain
    /// 32 studies, 1595 people; 0.5 to 12.1 %, the same in older adults, with or without familiarisation.
    ///
    /// # Source
    /// Grgic et al. 2020, abstract (row `one_rm.grgic_2020_cv`).
    pub const GRGIC_2020_CV: f64 = 0.042;
    source: GRGIC_2020, place: "abstract", standing: Published, seen: Read,
    population: "32 studies, 1595 people, older adults included", domain: "tests of the one-repetition maximum",
    error: "range 0.5 to 12.1 %",
}

constant! {
    "one_rm.banyard_2017_cv",
    /// The same for well-trained men in the back squat: 2.1 %.
    ///
    /// # Source
    /// Banyard et al. 2017, abstract (row `one_rm.banyard_2017_cv`).
    pub const BANYARD_2017_CV: f64 = 0.021;
    source: BANYARD_2017, place: "abstract", standing: Published, seen: Read,
    population: "17 strength-trained men", domain: "back squat, three sessions", error: "SEM 2.9 kg, ICC 0.99",
}

constant! {
    "one_rm.mitter_2022_repetition_sem",
    /// Repetitions by which a set to failure at 90 % differs when repeated on another day: standard error 0.7.
    ///
    /// # Source
    /// Mitter et al. 2022, abstract (row `one_rm.mitter_2022_repetition_sem`).
    pub const MITTER_2022_REPETITION_SEM: f64 = 0.7;
    source: MITTER_2022, place: "abstract", standing: Published, seen: Read,
    population: "24 trained people, bench press", domain: "sets to failure at 90 % of the maximum",
    error: "90 % interval 0.5 to 0.9; 1.1 repetitions at 70 %",
}

constant! {
    "one_rm.typical_slope",
    /// What one more repetition to failure adds to the maximum of a typical lifter, as a part of the load.
    ///
    /// # Domain
    /// Between the slopes of O'Conner et al. 1989 (0.025) and Epley 1985 (0.033). It scales the width of the
    /// interval only; the value comes from the equations.
    ///
    /// # Source
    /// Our choice (row `one_rm.typical_slope`).
    pub const TYPICAL_SLOPE: f64 = 0.03;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
    domain: "width of the estimate",
}

constant! {
    "one_rm.personal_slope_cv",
    /// How much that slope differs between people: coefficient of variation.
    ///
    /// # Domain
    /// Set so that an estimate from one set of 5 to 6 repetitions to failure has a standard error of 5 to 6 %, day
    /// included, as printed for single sets (5.4 to 6.8 kg of 95.5 kg at 85 %: Hutchins & Gearhart 2010; 2.98 kg for a
    /// 5RM bench press: Reynolds et al. 2006).
    ///
    /// # Source
    /// Our choice (row `one_rm.personal_slope_cv`).
    pub const PERSONAL_SLOPE_CV: f64 = 0.30;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
    domain: "width of the estimate",
}

constant! {
    "one_rm.reserve_error_near_failure",
    /// Repetitions by which a call of no reserve is off: standard deviation.
    ///
    /// # Domain
    /// With [`RESERVE_ERROR_PER_REPETITION`] it gives about 1 at 1 to 3 in reserve (Refalo et al. 2024: 1.00) and
    /// above 2 at 7 to 10 (Hackett et al. 2017).
    ///
    /// # Source
    /// Our choice (row `one_rm.reserve_error_near_failure`).
    pub const RESERVE_ERROR_NEAR_FAILURE: f64 = 0.65;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
    domain: "width of the estimate",
}

constant! {
    "one_rm.reserve_error_per_repetition",
    /// Growth of that standard deviation with every repetition in reserve.
    ///
    /// # Source
    /// Our choice (row `one_rm.reserve_error_per_repetition`).
    pub const RESERVE_ERROR_PER_REPETITION: f64 = 0.20;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
    domain: "width of the estimate",
}

constant! {
    "one_rm.reserve_error_in_long_sets",
    /// Factor on that standard deviation where the set would go beyond 12 repetitions.
    ///
    /// # Domain
    /// Calls are worse in sets of more than 12 repetitions (Halperin et al. 2022); 1.73 at 1 in reserve in sets of 16
    /// (Zourdos et al. 2021).
    ///
    /// # Source
    /// Our choice (row `one_rm.reserve_error_in_long_sets`).
    pub const RESERVE_ERROR_IN_LONG_SETS: f64 = 2.0;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
    domain: "width of the estimate",
}

constant! {
    "one_rm.bias_error_uncorrected",
    /// How far one lifter's own habit of calling too few or too many may lie from nothing: standard deviation,
    /// where no bias is corrected.
    ///
    /// # Domain
    /// The pooled under-call itself (0.95, Halperin et al. 2022), taken as a deviation.
    ///
    /// # Source
    /// Our choice (row `one_rm.bias_error_uncorrected`).
    pub const BIAS_ERROR_UNCORRECTED: f64 = 0.95;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
    domain: "width of the estimate",
}

constant! {
    "one_rm.bias_error_corrected",
    /// The same where a bias is corrected.
    ///
    /// # Domain
    /// Wider than the standard error of the pooled bias (0.40, from its interval), since nearly all spread lies
    /// between studies.
    ///
    /// # Source
    /// Our choice (row `one_rm.bias_error_corrected`).
    pub const BIAS_ERROR_CORRECTED: f64 = 0.6;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
    domain: "width of the estimate",
}

/// Choices of the estimate. Every default is a parameter.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(default, deny_unknown_fields, rename_all = "snake_case")
)]
pub struct EstimateOptions {
    /// Equations that speak; the value is their geometric mean, their spread is part of the width.
    pub equations: Vec<Equation>,
    /// Added to every reported reserve.
    pub bias: ReserveBias,
    /// Probability the interval aims at.
    pub level: f64,
    /// Sets above this many repetitions are flagged.
    pub usual_reps: Reps,
    /// Sets above this many repetitions are refused.
    pub highest_reps: Reps,
    /// Sets that may have had more than this left are refused.
    pub highest_reserve: Rir,
    /// Day-to-day coefficient of variation of the maximum.
    pub day_to_day_cv: f64,
    /// Coefficient of variation of the slope between people.
    pub personal_slope_cv: f64,
    /// Whether sets that nobody scored are used, with a flag.
    pub accept_unscored: bool,
    /// Whether a single repetition with nothing left is the maximum, whatever the equations say.
    pub single_is_maximum: bool,
}

/// Most repetitions and reserve that options may allow.
const LIMITS: (f64, f64) = (30.0, 10.0);

impl EstimateOptions {
    /// Equations of general use, from a power to a cubic on older women; none is bound to a machine or to kilograms.
    pub const EQUATIONS: &'static [Equation] = &[
        Equation::Epley1985,
        Equation::Brzycki1993,
        Equation::Lander1985,
        Equation::Lombardi1989,
        Equation::Mayhew1992,
        Equation::OConner1989,
        Equation::Wathan1994,
        Equation::Kemmler2006,
    ];

    /// With the pooled under-call of reserve corrected.
    #[must_use]
    pub fn halperin_2022() -> EstimateOptions {
        EstimateOptions { bias: ReserveBias::halperin_2022(), ..EstimateOptions::default() }
    }

    /// One equation alone, its name visible at the call.
    #[must_use]
    pub fn only(equation: Equation) -> EstimateOptions {
        EstimateOptions { equations: alloc::vec![equation], ..EstimateOptions::default() }
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        let level = numeric::within(Code::OutOfRange, "level", self.level, 0.0, 1.0, "(ends excluded)")?;
        if level <= 0.0 || level >= 1.0 {
            return Err(Error::range(Code::OutOfRange, "level", level, 0.0, 1.0, "(ends excluded)"));
        }
        let mut once = self.equations.clone();
        crate::numeric::sort::sort(&mut once);
        once.dedup();
        if once.is_empty() || once.len() < self.equations.len() {
            let rule = Allowed::rule("at least one equation, each once");
            return Err(Error::new(Code::OutOfRange, "equations", self.equations.len(), rule));
        }
        let limit =
            |field, value, high| numeric::within(Code::OutOfRange, field, value, 0.0, high, "").map(|_| ());
        limit("usual_reps", self.usual_reps.value(), LIMITS.0)?;
        limit("highest_reps", self.highest_reps.value(), LIMITS.0)?;
        limit("highest_reserve", self.highest_reserve.value(), LIMITS.1)?;
        limit("day_to_day_cv", self.day_to_day_cv, 0.5)?;
        limit("personal_slope_cv", self.personal_slope_cv, 2.0)
    }
}

/// Whole repetitions far below the most that the type holds, so never refused.
fn whole(reps: u16) -> Reps {
    Reps::whole(reps).unwrap_or_default()
}

impl Default for EstimateOptions {
    fn default() -> EstimateOptions {
        EstimateOptions {
            equations: EstimateOptions::EQUATIONS.to_vec(),
            bias: ReserveBias::NONE,
            level: 0.95,
            usual_reps: whole(10),
            highest_reps: whole(15),
            highest_reserve: Rir::whole(4),
            day_to_day_cv: GRGIC_2020_CV,
            personal_slope_cv: PERSONAL_SLOPE_CV,
            accept_unscored: false,
            single_is_maximum: true,
        }
    }
}

default_of! {
    "one_rm.estimate_options_default",
    /// How an estimate is made where a caller names nothing else.
    estimate_options_default: EstimateOptions;
    source: OURS, place: "the estimate's default", standing: OurChoice, seen: NotApplicable,
}

rows![
    GRGIC_2020_CV,
    BANYARD_2017_CV,
    MITTER_2022_REPETITION_SEM,
    TYPICAL_SLOPE,
    PERSONAL_SLOPE_CV,
    RESERVE_ERROR_NEAR_FAILURE,
    RESERVE_ERROR_PER_REPETITION,
    RESERVE_ERROR_IN_LONG_SETS,
    BIAS_ERROR_UNCORRECTED,
    BIAS_ERROR_CORRECTED,
    estimate_options_default,
];
