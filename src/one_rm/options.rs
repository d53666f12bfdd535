//! Choices of the estimate, with the numbers they come from.

use alloc::vec::Vec;

use super::effort::ReserveBias;
use super::equation::Equation;
use super::new_to_lift::NEW_TO_LIFT_SLOPE_CV;
use super::reserve_error::RESERVE_HABIT_SPREAD;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Reps, Rir};
use crate::source::{ARITHMETIC, OURS, Source, constant, default_of, rows};

const GRGIC_2020: Source = Source {
    id: "grgic-2020",
    citation: "Grgic J, Lazinica B, Schoenfeld BJ, Pedisic Z. Test-retest reliability of the one-repetition maximum (1RM) strength assessment: a systematic review. Sports Med Open 2020;6:31",
    doi: Some("10.1186/s40798-020-00260-z"),
};

const BANYARD_2017: Source = Source {
    id: "banyard-2017",
    citation: "Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017",
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
    /// A slope is as one over the repetitions beyond the first, so their coefficient of variation is its own: 0.27 in 25
    /// squatters at 70 % (16 +- 4: Zourdos et al. 2021), 0.26 in 8 at 60 % (29.9 +- 7.4: Shimano et al. 2006), 0.27 in 8
    /// weightlifters and 0.40 in 8 runners over 90, 80 and 70 % on a leg press (Richens & Cleather 2014); root mean
    /// square, weighted by people less one. One person's scatter from day to day is in it.
    ///
    /// # Source
    /// Follows from those studies (row `one_rm.personal_slope_cv`).
    pub const PERSONAL_SLOPE_CV: f64 = 0.29;
    source: ARITHMETIC,
    place: "from the repetitions in Zourdos et al. 2021, Shimano et al. 2006, Richens & Cleather 2014",
    standing: Derived, seen: NotApplicable, population: "33 squatters, 8 weightlifters and 8 runners on a leg press",
    domain: "width of the estimate", error: "0.17 to 0.45 by group and load",
}

/// Choices of the estimate. Every default is a parameter.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(default, deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct EstimateOptions {
    /// Equations that speak; the value is their geometric mean, their spread is part of the width.
    pub equations: Vec<Equation>,
    /// Added to every reported reserve.
    pub bias: ReserveBias,
    /// Probability the interval aims at.
    pub level: f64,
    /// Sets above this many repetitions are flagged.
    pub usual_reps: Reps,
    /// Sets of more than this many repetitions to failure, done and called, are refused.
    pub highest_reps: Reps,
    /// Sets that may have had more than this left are refused.
    pub highest_reserve: Rir,
    /// Day-to-day coefficient of variation of the maximum.
    pub day_to_day_cv: f64,
    /// Coefficient of variation of the slope between people.
    pub personal_slope_cv: f64,
    /// How far one lifter's own habit of calling may lie from the average: standard deviation, in repetitions.
    pub habit_spread: f64,
    /// Whether the lifter is in the first months of this lift: slope and calls are then far less sure.
    pub new_to_lift: bool,
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

    /// With the published under-calls corrected, in long sets by as many repetitions as were measured there.
    #[must_use]
    pub fn by_length_of_set() -> EstimateOptions {
        EstimateOptions { bias: ReserveBias::by_length_of_set(), ..EstimateOptions::default() }
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
        limit("personal_slope_cv", self.personal_slope_cv, 2.0)?;
        limit("habit_spread", self.habit_spread, LIMITS.1)
    }

    /// The spread of the slope that holds for this lifter.
    pub(super) fn slope_cv(&self) -> f64 {
        let least = if self.new_to_lift { NEW_TO_LIFT_SLOPE_CV } else { 0.0 };
        numeric::larger(self.personal_slope_cv, least)
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
            habit_spread: RESERVE_HABIT_SPREAD,
            new_to_lift: false,
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
    estimate_options_default,
];
