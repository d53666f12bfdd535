//! How far is a called reserve off? Printed means and spreads, for short sets and for long ones.
//!
//! People leave more than they say, and in long sets by repetitions. What they leave is taken up by the upper end of an
//! interval, never by the value, unless a bias is asked for: more load on the bar is nothing to be assumed.

use crate::error::Error;
use crate::numeric;
use crate::quantity::Rir;
use crate::source::{ARITHMETIC, Source, constant, formula, rows};

const REFALO_2024: Source = Source {
    id: "refalo-2024",
    citation: "Refalo MC, Remmert JF, Pelland JC, et al. Accuracy of intraset repetitions-in-reserve predictions during the bench press exercise in resistance-trained male and female subjects. J Strength Cond Res 2024",
    doi: Some("10.1519/JSC.0000000000004653"),
};

const ZOURDOS_2021: Source = Source {
    id: "zourdos-2021",
    citation: "Zourdos MC, Goldsmith JA, Helms ER, et al. Proximity to failure and total repetitions performed in a set influences accuracy of intraset repetitions in reserve-based rating of perceived exertion. J Strength Cond Res 2021;35(2S):S158-S165",
    doi: Some("10.1519/JSC.0000000000002995"),
};

const HALPERIN_2022: Source = Source {
    id: "halperin-2022",
    citation: "Halperin I, Malleron T, Har-Nir I, et al. Accuracy in predicting repetitions to task failure in resistance exercise: a scoping review and exploratory meta-analysis. Sports Med 2022;52:377-390",
    doi: Some("10.1007/s40279-021-01559-x"),
};

const HACKETT_2018: Source = Source {
    id: "hackett-2018",
    citation: "Hackett DA, Cobley SP, Halaki M. Estimation of repetitions to failure for monitoring resistance exercise intensity: building a case for application. J Strength Cond Res 2018;32:1352-1359",
    doi: Some("10.1519/JSC.0000000000002419"),
};

constant! {
    "one_rm.halperin_2022_under_call",
    /// Repetitions by which people under-call what they have left, on average: to be added to a reported reserve.
    ///
    /// # Domain
    /// 12 studies, 414 people; 95 % interval 0.17 to 1.73 repetitions, with nearly all of the spread (97.9 %)
    /// between studies: one person's bias may be nothing like it. In long sets it is far larger:
    /// [`zourdos_2021_reserve_error`].
    ///
    /// # Source
    /// Halperin et al. 2022, abstract (row `one_rm.halperin_2022_under_call`).
    pub const HALPERIN_2022_UNDER_CALL: f64 = 0.95;
    source: HALPERIN_2022, place: "abstract", standing: Published, seen: Read,
    population: "12 studies, 414 people", domain: "reported repetitions in reserve",
    error: "95 % interval 0.17 to 1.73 repetitions, I2 97.9 %",
}

constant! {
    "one_rm.refalo_2024_reserve_error",
    /// Repetitions by which one call is off in a short set: standard deviation.
    ///
    /// # Domain
    /// Bench press at 75 % of the maximum, called at 1 and 3 in reserve; the mean was -0.17. Hackett et al. 2017 found
    /// errors of about 1 where 0 to 5 were left.
    ///
    /// # Source
    /// Refalo et al. 2024, abstract (row `one_rm.refalo_2024_reserve_error`).
    pub const REFALO_2024_RESERVE_ERROR: f64 = 1.00;
    source: REFALO_2024, place: "abstract", standing: Published, seen: Read,
    population: "12 men and 12 women, trained", domain: "short sets, 1 and 3 in reserve",
    error: "mean absolute error 0.65, standard deviation 0.78",
}

constant! {
    "one_rm.reserve_habit_spread",
    /// By how much one lifter's own habit of calling may differ from the average: standard deviation, in repetitions.
    ///
    /// # Domain
    /// Errors of about 1 repetition where 0 to 5 were left, 81 adults of any experience (Hackett et al. 2017), are a standard
    /// deviation of 1.25 if normal; what that has beyond the 1.00 of [`REFALO_2024_RESERVE_ERROR`] is taken for habit (our
    /// reading).
    ///
    /// # Source
    /// Follows from Hackett et al. 2017 and Refalo et al. 2024 (row `one_rm.reserve_habit_spread`).
    pub const RESERVE_HABIT_SPREAD: f64 = 0.75;
    source: ARITHMETIC, place: "from the errors of Hackett et al. 2017, about 1, and Refalo et al. 2024, 1.00",
    standing: Derived, seen: NotApplicable, domain: "width of the estimate",
}

constant! {
    "one_rm.reserve_error_per_repetition",
    /// Growth of that standard deviation with each repetition in reserve; 1.00 holds at 2, the middle of 1 and 3.
    ///
    /// # Domain
    /// From 1.73 at 1 in reserve to 2.92 at 5 in long sets: 0.2975 a repetition. With it short sets called at 7 to 10 in
    /// reserve are off by 2.0 to 2.7 repetitions on average; Hackett et al. 2017 found more than 2.
    ///
    /// # Source
    /// Follows from Zourdos et al. 2021 (row `one_rm.reserve_error_per_repetition`).
    pub const RESERVE_ERROR_PER_REPETITION: f64 = 0.30;
    source: ARITHMETIC, place: "from the standard deviations of Zourdos et al. 2021, 1.73 at 1 and 2.92 at 5 in reserve",
    standing: Derived, seen: NotApplicable, domain: "width of the estimate",
}

constant! {
    "one_rm.hackett_2018_first_set_error",
    /// Repetitions by which calls in the first set of a first day on a lift were off, on average over two machines.
    ///
    /// # Domain
    /// 2.0 on the chest press and 3.1 on the leg press; in the third set 0.6 and 1.6, on the second day 1.9 in the first
    /// set of leg presses. Whoever is new to a lift leaves repetitions, not nothing.
    ///
    /// # Source
    /// Mean of the two errors in the abstract of Hackett et al. 2018 (row `one_rm.hackett_2018_first_set_error`).
    pub const HACKETT_2018_FIRST_SET_ERROR: f64 = 2.55;
    source: HACKETT_2018, place: "mean of 2.0 and 3.1, both in the abstract", standing: Derived, seen: NotApplicable,
    population: "48 adults, chest press and leg press, three sets of 10", domain: "first set of the first day",
}

/// By how much a call is off, in repetitions: what was left less what was called.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ReserveError {
    /// On average; above 0 where more was left than called.
    pub mean: f64,
    /// Standard deviation.
    pub standard_deviation: f64,
}

/// Called reserve, mean error and standard deviation as printed.
const PRINTED: [(f64, ReserveError); 3] = [
    (1.0, ReserveError { mean: 2.05, standard_deviation: 1.73 }),
    (3.0, ReserveError { mean: 3.65, standard_deviation: 2.46 }),
    (5.0, ReserveError { mean: 5.15, standard_deviation: 2.92 }),
];

/// The line through the two printed calls next to this one.
fn between(called: f64) -> ReserveError {
    let [first, middle, last] = PRINTED;
    let ((low, at_low), (high, at_high)) = if called <= middle.0 { (first, middle) } else { (middle, last) };
    let along = |low_value: f64, high_value: f64| {
        low_value + (high_value - low_value) * (called - low) / (high - low)
    };
    ReserveError {
        mean: along(at_low.mean, at_high.mean),
        standard_deviation: along(at_low.standard_deviation, at_high.standard_deviation),
    }
}

formula! {
    "one_rm.zourdos_2021_reserve_error",
    /// By how much is a call of reserve off in a long set?
    ///
    /// # Formula
    /// Left less called: 2.05 +- 1.73 repetitions at 1 in reserve, 3.65 +- 2.46 at 3, 5.15 +- 2.92 at 5; straight lines
    /// between (our choice).
    ///
    /// # Domain
    /// Called 1 to 5 in reserve; back squat at 70 % of the maximum, sets of 16 +- 4 repetitions. In short sets of the
    /// trained there was no such bias ([`REFALO_2024_RESERVE_ERROR`]).
    ///
    /// # Errors
    /// `out_of_range` below 1 and above 5 in reserve: not asked in the study.
    ///
    /// # Source
    /// Zourdos et al. 2021, abstract (row `one_rm.zourdos_2021_reserve_error`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::zourdos_2021_reserve_error;
    /// use bismar::quantity::Rir;
    ///
    /// // Who says "three more" in a long set has six or seven.
    /// assert_eq!(zourdos_2021_reserve_error(Rir::whole(3))?.mean, 3.65);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn zourdos_2021_reserve_error(called: Rir) -> Result<ReserveError, Error> {
        let ([(low, _), .., (high, _)], unit) = (PRINTED, "in reserve");
        let called = numeric::within(crate::Code::OutOfRange, "called", called.value(), low, high, unit)?;
        Ok(between(called))
    }
    source: ZOURDOS_2021, place: "abstract", standing: Published, seen: Read,
    population: "25 trained men, back squat at 70 % of the maximum",
    domain: "1 to 5 in reserve, sets of 16 repetitions", error: "standard deviations as given",
}

/// Sets that would go beyond this many repetitions are long ones: calls become poor (Halperin et al. 2022).
pub(super) const LONG_SET: f64 = 12.0;

/// The middle of the reserves that Refalo et al. 2024 asked for.
const REFALO_MIDDLE: f64 = 2.0;

/// What is known of a call beforehand, for any reserve: beyond the printed ones the outer lines are carried on (our choice).
pub(super) fn reserve_error(done: f64, called: f64, new_to_lift: bool) -> ReserveError {
    let least = if new_to_lift { HACKETT_2018_FIRST_SET_ERROR } else { HALPERIN_2022_UNDER_CALL };
    if done + called > LONG_SET {
        let long = between(called);
        return ReserveError { mean: numeric::larger(long.mean, least), ..long };
    }
    let further = called - REFALO_MIDDLE;
    let standard_deviation = REFALO_2024_RESERVE_ERROR + RESERVE_ERROR_PER_REPETITION * further;
    ReserveError { mean: least, standard_deviation }
}

rows![
    HALPERIN_2022_UNDER_CALL,
    REFALO_2024_RESERVE_ERROR,
    RESERVE_HABIT_SPREAD,
    RESERVE_ERROR_PER_REPETITION,
    HACKETT_2018_FIRST_SET_ERROR,
    zourdos_2021_reserve_error,
];
