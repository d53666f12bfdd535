//! More trials than one, and one person's change beside them.

use super::domain::{number, positive, unit};
use crate::error::{Allowed, Code, Error};
use crate::numeric::{ceil, fabs, finite, sqrt};
use crate::source::{ARITHMETIC, Source, formula, rows};

const SPEARMAN_BROWN: Source = Source {
    id: "spearman-brown-1910",
    citation: "Spearman C. Correlation calculated from faulty data. Br J Psychol 3:271-295, 1910; Brown W. Some experimental results in the correlation of mental abilities. Br J Psychol 3:296-322, 1910",
    doi: None,
};
const JACOBSON_TRUAX_1991: Source = Source {
    id: "jacobson-truax-1991",
    citation: "Jacobson NS, Truax P. Clinical significance: a statistical approach to defining meaningful change in psychotherapy research. J Consult Clin Psychol 59:12-19, 1991",
    doi: None,
};

const ROOT_TWO: f64 = core::f64::consts::SQRT_2;

/// Most trials of one test that anyone averages.
const MOST_TRIALS: u32 = 1_000;

fn trials_in_range(trials: u32) -> Result<f64, Error> {
    let most = f64::from(MOST_TRIALS);
    crate::numeric::within(Code::OutOfRange, "trials", f64::from(trials), 1.0, most, "trials")
}

formula! {
    "statistics.reliability_of_mean",
    /// How well does the mean of so many trials tell people apart, if one trial does so well?
    ///
    /// # Formula
    /// `k r / (1 + (k - 1) r)`; `r` the reliability (intraclass correlation) of one trial, `k` trials.
    ///
    /// # Domain
    /// `r` from 0 to 1, up to 1,000 trials whose errors have nothing to do with each other. Trials of one day share the day, so
    /// their mean is less reliable than this.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Spearman 1910 and Brown 1910 (row `statistics.reliability_of_mean`).
    ///
    /// # Examples
    /// ```
    /// // One trial of 0.80; the mean of three.
    /// let three = bismar::statistics::reliability_of_mean(0.8, 3)?;
    /// assert!((three - 0.923).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn reliability_of_mean(reliability: f64, trials: u32) -> Result<f64, Error> {
        let (r, k) = (unit("reliability", reliability)?, trials_in_range(trials)?);
        finite("reliability", k * r / (1.0 + (k - 1.0) * r))
    }
    source: SPEARMAN_BROWN, place: "the formula named after both", standing: Published, seen: Memory,
    domain: "trials with errors of their own",
}

formula! {
    "statistics.trials_for_reliability",
    /// How many trials until their mean tells people apart that well?
    ///
    /// # Formula
    /// The smallest whole `k` with `k r / (1 + (k - 1) r) >= R`: `R (1 - r) / (r (1 - R))`, rounded up.
    ///
    /// # Domain
    /// As [`reliability_of_mean`]; both above 0 and below 1.
    ///
    /// # Errors
    /// `out_of_range` at or beyond the ends, or where more than 1,000 trials would be needed; `not_finite`.
    ///
    /// # Source
    /// Inverse of [`reliability_of_mean`] (row `statistics.trials_for_reliability`).
    ///
    /// # Examples
    /// ```
    /// // From 0.80 to 0.90: three trials (2.25 would do).
    /// assert_eq!(bismar::statistics::trials_for_reliability(0.8, 0.9)?, 3);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn trials_for_reliability(reliability: f64, wanted: f64) -> Result<u32, Error> {
        let (r, aim) = (super::domain::open_unit("reliability", reliability)?, super::domain::open_unit("wanted", wanted)?);
        let trials = aim * (1.0 - r) / (r * (1.0 - aim));
        // A whole number that rounding lifted by its last bits is that number.
        let whole = ceil(trials * (1.0 - 1e-12));
        let most = f64::from(MOST_TRIALS);
        let whole = crate::numeric::within(Code::OutOfRange, "wanted", whole, 0.0, most, "trials")?;
        Ok((whole as u32).max(1))
    }
    source: ARITHMETIC, place: "inverse of the reliability of a mean", standing: Derived, seen: NotApplicable,
    domain: "trials with errors of their own",
}

formula! {
    "statistics.error_of_mean",
    /// By how much does the mean of so many trials of one person wander?
    ///
    /// # Formula
    /// `e / sqrt(k)`, `e` the typical error of one trial.
    ///
    /// # Domain
    /// Typical error above 0; 1 to 1,000 trials whose errors have nothing to do with each other.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Follows from independent errors (row `statistics.error_of_mean`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::error_of_mean(3.0, 4)?, 1.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn error_of_mean(typical_error: f64, trials: u32) -> Result<f64, Error> {
        finite("typical_error", positive("typical_error", typical_error)? / sqrt(trials_in_range(trials)?))
    }
    source: ARITHMETIC, place: "variance of a mean", standing: Derived, seen: NotApplicable,
    domain: "trials with errors of their own",
}

/// One person's change against what two tests wander by.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ReliableChange {
    /// What one test wanders by.
    pub standard_error: f64,
    /// What the difference of two tests wanders by.
    pub difference_error: f64,
    /// The change in units of that.
    pub index: f64,
    /// Whether it lies beyond 1.96 either way.
    pub is_reliable: bool,
}

formula! {
    "statistics.reliable_change",
    /// Is one person's change more than two tests would differ by anyway?
    ///
    /// # Formula
    /// `RC = (after - before) / S`, `S = sqrt(2) SD sqrt(1 - r)`; `SD` between people, `r` the reliability of the test. Reliable
    /// beyond 1.96.
    ///
    /// # Domain
    /// `SD` above 0, `r` from 0 to below 1. The same question as a change beyond
    /// [`minimal_detectable_change`](super::minimal_detectable_change()); a shift that everybody shows, as by learning the
    /// test, is not taken off.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Jacobson & Truax 1991 (row `statistics.reliable_change`).
    ///
    /// # Examples
    /// ```
    /// let found = bismar::statistics::reliable_change(32.5, 47.5, 7.5, 0.8)?;
    /// assert!((found.index - 3.16).abs() < 0.005 && found.is_reliable);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn reliable_change(before: f64, after: f64, standard_deviation: f64, reliability: f64) -> Result<ReliableChange, Error> {
        let change = finite("after", number("after", after)? - number("before", before)?)?;
        let reliability = unit("reliability", reliability)?;
        if reliability >= 1.0 {
            let allowed = Allowed::rule("below 1: a test without error has no such index");
            return Err(Error::new(Code::OutOfRange, "reliability", reliability, allowed));
        }
        let standard_error = positive("standard_deviation", standard_deviation)? * sqrt(1.0 - reliability);
        let difference_error = ROOT_TWO * standard_error;
        let index = finite("standard_deviation", change / difference_error)?;
        let is_reliable = fabs(index) > super::reliability::CHANGE_MULTIPLIER;
        Ok(ReliableChange { standard_error, difference_error, index, is_reliable })
    }
    source: JACOBSON_TRUAX_1991, place: "reliable change index", standing: Published, seen: Memory,
    population: "any test with a known reliability",
}

rows![reliability_of_mean, trials_for_reliability, error_of_mean, reliable_change];
