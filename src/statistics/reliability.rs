//! How much does a test wander on its own, and how much change is real?

use alloc::vec::Vec;

use super::domain::{numbers, positive};
use super::regression::pairs;
use crate::error::{Code, Error};
use crate::numeric::moments::Moments;
use crate::numeric::sum::sum;
use crate::numeric::{exp, finite, ln, sqrt};
use crate::source::{Source, constant, formula, rows};

const HOPKINS_2000: Source = Source {
    id: "hopkins-2000",
    citation: "Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000",
    doi: Some("10.2165/00007256-200030010-00001"),
};
const HOPKINS_2004: Source = Source {
    id: "hopkins-2004",
    citation: "Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004",
    doi: None,
};
const SHROUT_FLEISS_1979: Source = Source {
    id: "shrout-fleiss-1979",
    citation: "Shrout PE, Fleiss JL. Intraclass correlations: uses in assessing rater reliability. Psychol Bull 86:420-428, 1979",
    doi: None,
};

const ROOT_TWO: f64 = core::f64::consts::SQRT_2;

constant! {
    "statistics.change_multiplier",
    /// 1.96, the rounded normal quantile by which a 95 % minimal detectable change is usually defined.
    pub const CHANGE_MULTIPLIER: f64 = 1.96;
    source: HOPKINS_2000, place: "limits for a change", standing: Published, seen: Memory,
}

constant! {
    "statistics.small_effect",
    /// Smallest worthwhile change as a part of the spread between people: Cohen's small effect.
    pub const SMALL_EFFECT: f64 = 0.2;
    source: HOPKINS_2004, place: "smallest worthwhile change", standing: Published, seen: Read,
}

constant! {
    "statistics.competition_effect",
    /// Smallest worthwhile change of a solo competitor as a part of the own variation between competitions.
    pub const COMPETITION_EFFECT: f64 = 0.3;
    source: HOPKINS_2004, place: "smallest worthwhile change", standing: Published, seen: Read,
}

/// How two trials of the same people differ.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TestRetest {
    /// Mean of second less first: learning, or fatigue.
    pub change_in_mean: f64,
    /// Standard deviation of the differences.
    pub difference_deviation: f64,
    /// Typical error: what one trial of one person wanders by.
    pub typical_error: f64,
}

/// Agreement of repeated trials.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct IntraclassCorrelation {
    /// Form (1,1): trials are interchangeable.
    pub one_way: f64,
    /// Form (2,1): trials drawn from many, their shift counts as error.
    pub two_way_random: f64,
    /// Form (3,1): just these trials, their shift does not count.
    pub two_way_mixed: f64,
    /// Form (1,k): the mean of all trials, read as (1,1); absent where people do not differ.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub one_way_of_mean: Option<f64>,
    /// Form (2,k): the mean of all trials, read as (2,1); absent where people do not differ.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub two_way_random_of_mean: Option<f64>,
    /// Form (3,k): the mean of all trials, read as (3,1); absent where people do not differ.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub two_way_mixed_of_mean: Option<f64>,
    /// Mean square between people.
    pub between_people: f64,
    /// Mean square between trials.
    pub between_trials: f64,
    /// Mean square left over.
    pub residual: f64,
    /// Mean square within people.
    pub within_people: f64,
}

formula! {
    "statistics.test_retest",
    /// Measured twice: by how much did people shift together, and by how much does each wander?
    ///
    /// # Formula
    /// `d = second - first`; change in mean `mean(d)`, typical error `SD(d) / sqrt(2)`.
    ///
    /// # Domain
    /// At least two people, each measured twice; about 50 people for a usable typical error. Two trials alone mix in
    /// learning.
    ///
    /// # Errors
    /// `not_enough_data`, `wrong_length`, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Hopkins 2000 (row `statistics.test_retest`).
    ///
    /// # Examples
    /// ```
    /// let first = [62.0, 78.0, 81.0, 55.0, 66.0, 70.0, 59.0, 88.0];
    /// let second = [67.0, 76.0, 87.0, 55.0, 63.0, 75.0, 62.0, 86.0];
    /// let found = bismar::statistics::test_retest(&first, &second)?;
    /// assert!((found.typical_error - 2.5911938782).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn test_retest(first: &[f64], second: &[f64]) -> Result<TestRetest, Error> {
        differences(first, second)
    }
    source: HOPKINS_2000, place: "typical error", standing: Published, seen: Memory,
    population: "any; about 50 people advised",
}

fn differences(first: &[f64], second: &[f64]) -> Result<TestRetest, Error> {
    pairs(first, second, 2)?;
    let moments: Moments = first.iter().zip(second).map(|(first, second)| second - first).collect();
    let difference_deviation = moments.standard_deviation().unwrap_or(0.0);
    Ok(TestRetest {
        change_in_mean: finite("second", moments.mean().unwrap_or(0.0))?,
        difference_deviation,
        typical_error: difference_deviation / ROOT_TWO,
    })
}

formula! {
    "statistics.typical_error_percent",
    /// How much does one trial of one person wander, in percent of its value?
    ///
    /// # Formula
    /// Typical error `e` of `100 ln(value)`; `100 (exp(e / 100) - 1)`.
    ///
    /// # Domain
    /// At least two people, each measured twice; all values above 0.
    ///
    /// # Errors
    /// `out_of_range` for a value at or below 0 or beyond 1e100; `not_enough_data`, `wrong_length`, `not_finite`.
    ///
    /// # Source
    /// Hopkins 2000 (row `statistics.typical_error_percent`).
    ///
    /// # Examples
    /// ```
    /// let percent = bismar::statistics::typical_error_percent(&[100.0, 50.0], &[102.0, 50.0])?;
    /// assert!(percent > 0.9 && percent < 1.1);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn typical_error_percent(first: &[f64], second: &[f64]) -> Result<f64, Error> {
        pairs(first, second, 2)?;
        let logs = |field, values: &[f64]| {
            values.iter().map(|value| Ok(100.0 * ln(positive(field, *value)?))).collect::<Result<Vec<f64>, Error>>()
        };
        let error = differences(&logs("first", first)?, &logs("second", second)?)?.typical_error;
        finite("second", 100.0 * (exp(error / 100.0) - 1.0))
    }
    source: HOPKINS_2000, place: "typical error as a coefficient of variation", standing: Published, seen: Memory,
}

formula! {
    "statistics.minimal_detectable_change",
    /// Smaller changes than this of one person are within noise (95 %).
    ///
    /// # Formula
    /// `1.96 sqrt(2) e`, `e` the typical error.
    ///
    /// # Domain
    /// Typical error above 0, in the unit of the test.
    ///
    /// # Errors
    /// `out_of_range` at or below 0, `not_finite`.
    ///
    /// # Source
    /// Hopkins 2000 (row `statistics.minimal_detectable_change`).
    ///
    /// # Examples
    /// ```
    /// // A one-repetition maximum that wanders by 2.9 kg: less than 8 kg proves nothing.
    /// assert!((bismar::statistics::minimal_detectable_change(2.9)? - 8.0).abs() < 0.05);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn minimal_detectable_change(typical_error: f64) -> Result<f64, Error> {
        finite("typical_error", CHANGE_MULTIPLIER * ROOT_TWO * positive("typical_error", typical_error)?)
    }
    source: HOPKINS_2000, place: "limits for a change", standing: Published, seen: Memory,
}

formula! {
    "statistics.intraclass_correlation",
    /// How well do repeated trials tell people apart?
    ///
    /// # Formula
    /// From the mean squares of people `R`, trials `C`, residual `E` and within people `W`, `n` people and `k` trials:
    /// `(R-W)/(R+(k-1)W)`, `(R-E)/(R+(k-1)E+k(C-E)/n)`, `(R-E)/(R+(k-1)E)`; of the mean of the trials `(R-W)/R`,
    /// `(R-E)/(R+(C-E)/n)`, `(R-E)/R`.
    ///
    /// # Domain
    /// At least two people with at least two trials each; `trials` holds one list a trial, people in one order.
    ///
    /// # Errors
    /// `not_enough_data`, `wrong_length`, `zero_spread` where all values are equal, `not_finite`, `out_of_range`
    /// beyond 1e100.
    ///
    /// # Source
    /// Shrout & Fleiss 1979 (row `statistics.intraclass_correlation`).
    ///
    /// # Examples
    /// ```
    /// let found = bismar::statistics::intraclass_correlation(&[vec![1.0, 5.0, 9.0], vec![2.0, 5.0, 9.0]])?;
    /// assert!(found.two_way_mixed > 0.98);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn intraclass_correlation(trials: &[Vec<f64>]) -> Result<IntraclassCorrelation, Error> {
        let squares = mean_squares(trials)?;
        let (k, n) = (squares.trials, squares.people);
        let (r, c, e, w) = (squares.between_people, squares.between_trials, squares.residual, squares.within_people);
        let whole = r + (k - 1.0) * w;
        if whole <= 0.0 || r + (k - 1.0) * e <= 0.0 {
            return Err(Error::plain(Code::ZeroSpread, "trials"));
        }
        Ok(IntraclassCorrelation {
            one_way: finite("trials", (r - w) / whole)?,
            two_way_random: finite("trials", (r - e) / (r + (k - 1.0) * e + k * (c - e) / n))?,
            two_way_mixed: finite("trials", (r - e) / (r + (k - 1.0) * e))?,
            one_way_of_mean: part(r - w, r),
            two_way_random_of_mean: part(r - e, r + (c - e) / n),
            two_way_mixed_of_mean: part(r - e, r),
            between_people: r,
            between_trials: c,
            residual: e,
            within_people: w,
        })
    }
    source: SHROUT_FLEISS_1979, place: "forms (1,1), (2,1), (3,1), and those of the mean of k trials", standing: Published, seen: Secondary,
    copies: "the documentation and the tests of two statistical packages",
}

/// A part of what people differ by; absent where they do not.
fn part(own: f64, whole: f64) -> Option<f64> {
    if whole > 0.0 { finite("trials", own / whole).ok() } else { None }
}

struct MeanSquares {
    trials: f64,
    people: f64,
    between_people: f64,
    between_trials: f64,
    residual: f64,
    within_people: f64,
}

fn mean_of(values: impl Iterator<Item = f64>, count: f64) -> f64 {
    sum(values) / count
}

fn mean_squares(trials: &[Vec<f64>]) -> Result<MeanSquares, Error> {
    let too_few = || Error::plain(Code::NotEnoughData, "trials");
    let [first, _, ..] = trials else { return Err(too_few()) };
    for trial in trials {
        pairs(first, numbers("trials", trial, 2)?, 2)?;
    }
    let (k, n) = (trials.len() as f64, first.len() as f64);
    let grand = mean_of(trials.iter().flatten().copied(), k * n);
    let square = |value: f64| (value - grand) * (value - grand);
    let person_means: Vec<f64> = (0..first.len())
        .map(|person| mean_of(trials.iter().filter_map(|trial| trial.get(person).copied()), k))
        .collect();
    let people = k * sum(person_means.iter().map(|mean| square(*mean)));
    let shifts = n * sum(trials.iter().map(|trial| square(mean_of(trial.iter().copied(), n))));
    let within = sum(trials.iter().flat_map(|trial| {
        trial.iter().zip(&person_means).map(|(value, mean)| (value - mean) * (value - mean))
    }));
    Ok(MeanSquares {
        trials: k,
        people: n,
        between_people: people / (n - 1.0),
        between_trials: shifts / (k - 1.0),
        residual: crate::numeric::larger(within - shifts, 0.0) / ((n - 1.0) * (k - 1.0)),
        within_people: within / (n * (k - 1.0)),
    })
}

formula! {
    "statistics.standard_error_of_measurement",
    /// How much does one trial wander, from the spread between people and how well trials agree?
    ///
    /// # Formula
    /// `SD sqrt(1 - ICC)`.
    ///
    /// # Domain
    /// `SD` above 0; the correlation from 0 to 1.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Hopkins 2000 (row `statistics.standard_error_of_measurement`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::standard_error_of_measurement(10.0, 0.75)?, 5.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn standard_error_of_measurement(standard_deviation: f64, correlation: f64) -> Result<f64, Error> {
        let spread = positive("standard_deviation", standard_deviation)?;
        Ok(spread * sqrt(1.0 - super::domain::unit("correlation", correlation)?))
    }
    source: HOPKINS_2000, place: "typical error from the retest correlation", standing: Published, seen: Memory,
}

formula! {
    "statistics.smallest_worthwhile_change",
    /// Which change would matter at all, from the spread between people?
    ///
    /// # Formula
    /// `0.2 SD`.
    ///
    /// # Domain
    /// A small standardised effect; it depends on the group measured. Often smaller than the typical error: then one
    /// test cannot show it.
    ///
    /// # Errors
    /// `out_of_range` at or below 0, `not_finite`.
    ///
    /// # Source
    /// Hopkins 2004 (row `statistics.smallest_worthwhile_change`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::smallest_worthwhile_change(10.0)?, 2.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn smallest_worthwhile_change(between_people: f64) -> Result<f64, Error> {
        Ok(SMALL_EFFECT * positive("between_people", between_people)?)
    }
    source: HOPKINS_2004, place: "smallest worthwhile change", standing: Published, seen: Read,
}

rows![
    CHANGE_MULTIPLIER,
    SMALL_EFFECT,
    COMPETITION_EFFECT,
    test_retest,
    typical_error_percent,
    minimal_detectable_change,
    intraclass_correlation,
    standard_error_of_measurement,
    smallest_worthwhile_change,
];
