//! Wald's sequential test on a rate: decide after each repetition, stop as soon as the answer is clear.

use super::domain::unit;
use super::sequential_test::SequentialTest;
use crate::error::{Code, Error};
use crate::numeric::{self, ceil, exp_m1, fabs, floor};
use crate::source::{Source, formula, rows};

const WALD_1945: Source = Source {
    id: "wald-1945",
    citation: "Wald A. Sequential tests of statistical hypotheses. Ann Math Stat 16:117-186, 1945",
    doi: Some("10.1214/aoms/1177731118"),
};
const NIST_HANDBOOK: Source = Source {
    id: "nist-sematech",
    citation: "NIST/SEMATECH e-Handbook of Statistical Methods",
    doi: Some("10.18434/M32189"),
};

/// The test as two parallel lines in the plane of faults over trials.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SequentialLines {
    /// Faults per trial along both lines.
    pub slope: f64,
    /// Accept while faults are at or below `slope * trials - accept_intercept`.
    pub accept_intercept: f64,
    /// Reject while faults are at or above `slope * trials + reject_intercept`.
    pub reject_intercept: f64,
    /// Log odds ratio of the two rates: the scale of the intercepts.
    pub log_odds_ratio: f64,
}

/// Whole-number limits after so many trials.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SequentialCounts {
    /// Accept at this many faults or fewer; none while acceptance is not yet possible.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub accept: Option<u32>,
    /// Reject at this many faults or more; none while rejection is not yet possible.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub reject: Option<u32>,
}

/// What the test says now.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SequentialDecision {
    /// The fault rate is taken as acceptable.
    Accept,
    /// The fault rate is taken as unacceptable.
    Reject,
    /// Not clear yet.
    Continue,
}

formula! {
    "statistics.sequential_lines",
    /// Where do the two lines of a sequential test lie?
    ///
    /// # Formula
    /// `k = ln(p1 (1-p0) / (p0 (1-p1)))`, slope `ln((1-p0)/(1-p1)) / k`, accept intercept
    /// `ln((1-alpha)/beta) / k`, reject intercept `ln((1-beta)/alpha) / k`; `p0` acceptable and `p1` unacceptable
    /// fault rate per trial, `alpha` false rejection, `beta` false acceptance.
    ///
    /// # Domain
    /// Independent trials at a constant rate. Repetitions of one set are not quite independent, so the true error
    /// rates lie above the nominal ones.
    ///
    /// # Errors
    /// Those of [`SequentialTest::new`]; `not_finite` for rates or errors so near 0 that a line lies beyond `f64`.
    ///
    /// # Source
    /// Wald 1945; worked example in the NIST/SEMATECH e-Handbook 6.2.6 (row `statistics.sequential_lines`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{SequentialTest, sequential_lines};
    ///
    /// let lines = sequential_lines(SequentialTest::new(0.01, 0.10, 0.05, 0.10)?)?;
    /// assert!((lines.slope - 0.0397).abs() < 0.00005);
    /// assert!((lines.accept_intercept - 0.939).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sequential_lines(test: SequentialTest) -> Result<SequentialLines, Error> {
        let held = |value: f64| numeric::finite("test", value);
        let log_odds_ratio = held(test.fault_weight() - test.good_weight())?;
        Ok(SequentialLines {
            slope: held(-test.good_weight() / log_odds_ratio)?,
            accept_intercept: held(-test.accept_limit() / log_odds_ratio)?,
            reject_intercept: held(test.reject_limit() / log_odds_ratio)?,
            log_odds_ratio,
        })
    }
    source: NIST_HANDBOOK, place: "6.2.6", standing: Published, seen: Memory,
    domain: "independent trials, 0 < p0 < p1 < 1",
}

/// Rounding may put a tie on the wrong side of its line; a tie is a decision.
const TIE: f64 = 1e-12;

formula! {
    "statistics.sequential_counts",
    /// After so many trials, how few faults accept and how many reject?
    ///
    /// # Formula
    /// `accept = floor(slope n - accept intercept)`, `reject = ceil(slope n + reject intercept)`; accept is absent
    /// while negative, reject while above `n`.
    ///
    /// # Domain
    /// As [`sequential_lines`]. A tie on a line is a decision.
    ///
    /// # Errors
    /// None beyond those of [`SequentialTest::new`].
    ///
    /// # Source
    /// NIST/SEMATECH e-Handbook 6.2.6 (row `statistics.sequential_counts`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{SequentialTest, sequential_counts};
    ///
    /// let counts = sequential_counts(SequentialTest::new(0.01, 0.10, 0.05, 0.10)?, 24)?;
    /// assert_eq!((counts.accept, counts.reject), (Some(0), Some(3)));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sequential_counts(test: SequentialTest, trials: u32) -> Result<SequentialCounts, Error> {
        let lines = sequential_lines(test)?;
        let n = f64::from(trials);
        let accept = floor(lines.slope * n - lines.accept_intercept + TIE);
        let reject = ceil(lines.slope * n + lines.reject_intercept - TIE);
        Ok(SequentialCounts {
            accept: (accept >= 0.0).then_some(accept as u32),
            reject: (reject <= n).then_some(reject as u32),
        })
    }
    source: NIST_HANDBOOK, place: "6.2.6", standing: Published, seen: Memory,
    domain: "independent trials, 0 < p0 < p1 < 1",
}

formula! {
    "statistics.sequential_decision",
    /// Accept, reject, or go on after so many faults in so many trials?
    ///
    /// # Formula
    /// `L = d ln(p1/p0) + (n-d) ln((1-p1)/(1-p0))`; reject if `L >= ln((1-beta)/alpha)`, accept if
    /// `L <= ln(beta/(1-alpha))`; `d` faults, `n` trials.
    ///
    /// # Domain
    /// As [`sequential_lines`]. No upper bound on the number of trials: a gate needs one of its own.
    ///
    /// # Errors
    /// `successes_exceed_trials` with more faults than trials.
    ///
    /// # Source
    /// Wald 1945 (row `statistics.sequential_decision`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{SequentialDecision, SequentialTest, sequential_decision};
    ///
    /// // Twelve clean repetitions in a row pass a gate of 90 % good against 70 % good.
    /// let gate = SequentialTest::new(0.10, 0.30, 0.10, 0.05)?;
    /// assert_eq!(sequential_decision(gate, 0, 11)?, SequentialDecision::Continue);
    /// assert_eq!(sequential_decision(gate, 0, 12)?, SequentialDecision::Accept);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sequential_decision(test: SequentialTest, faults: u32, trials: u32) -> Result<SequentialDecision, Error> {
        if faults > trials {
            let most = f64::from(trials);
            return Err(Error::range(Code::SuccessesExceedTrials, "faults", faults, 0.0, most, "faults"));
        }
        let counts = sequential_counts(test, trials)?;
        Ok(if counts.accept.is_some_and(|most| faults <= most) {
            SequentialDecision::Accept
        } else if counts.reject.is_some_and(|least| faults >= least) {
            SequentialDecision::Reject
        } else {
            SequentialDecision::Continue
        })
    }
    source: WALD_1945, place: "binomial case", standing: Published, seen: Memory,
    domain: "independent trials, 0 < p0 < p1 < 1",
}

/// `1 / (1 - (e^(h over) - 1) / (e^(h under) - 1))`, with its limit where `h` is 0.
fn tilted(h: f64, over: f64, under: f64) -> f64 {
    let ratio = if fabs(h) < 1e-12 { over / under } else { exp_m1(h * over) / exp_m1(h * under) };
    1.0 / (1.0 - ratio)
}

/// The exponent `h` of the operating characteristic that belongs to a fault rate inside (0, 1).
fn tilt(test: SequentialTest, rate: f64) -> Result<f64, Error> {
    let (fault, good) = (test.fault_weight(), test.good_weight());
    let mut reach = 1.0;
    // Doubling: at 2^40 every rate a number can hold is passed.
    for _ in 0..40 {
        if tilted(reach, fault, good) < rate && tilted(-reach, fault, good) > rate {
            break;
        }
        reach *= 2.0;
    }
    numeric::search::root(|h| Ok(tilted(h, fault, good) - rate), -reach, reach, "rate")
}

formula! {
    "statistics.sequential_acceptance",
    /// With this test, how likely is a lifter of that true fault rate to be accepted?
    ///
    /// # Formula
    /// In `h`: `p = (1 - ((1-p1)/(1-p0))^h) / ((p1/p0)^h - ((1-p1)/(1-p0))^h)`, acceptance
    /// `(A^h - 1)/(A^h - B^h)` with `A = (1-beta)/alpha`, `B = beta/(1-alpha)`.
    ///
    /// # Domain
    /// `rate` from 0 to 1. Ignores how far a decision overshoots its line, so it is an approximation.
    ///
    /// # Errors
    /// `out_of_range` for a rate outside 0 to 1.
    ///
    /// # Source
    /// Wald 1945 (row `statistics.sequential_acceptance`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{SequentialTest, sequential_acceptance};
    ///
    /// let test = SequentialTest::new(0.01, 0.10, 0.05, 0.10)?;
    /// assert!((sequential_acceptance(test, 0.01)? - 0.95).abs() < 1e-9);
    /// assert!((sequential_acceptance(test, 0.10)? - 0.10).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sequential_acceptance(test: SequentialTest, rate: f64) -> Result<f64, Error> {
        let rate = unit("rate", rate)?;
        if rate <= 0.0 || rate >= 1.0 {
            return Ok(if rate <= 0.0 { 1.0 } else { 0.0 });
        }
        numeric::finite("rate", tilted(tilt(test, rate)?, test.accept_limit(), test.reject_limit()))
    }
    source: WALD_1945, place: "operating characteristic", standing: Published, seen: Memory,
    domain: "overshoot ignored",
}

formula! {
    "statistics.sequential_average_trials",
    /// With this test, how many trials does a decision take on average at that true fault rate?
    ///
    /// # Formula
    /// `(P ln B + (1-P) ln A) / (p ln(p1/p0) + (1-p) ln((1-p1)/(1-p0)))`, `P` the probability of acceptance; at the
    /// slope itself, `accept intercept * reject intercept / (slope (1 - slope))`.
    ///
    /// # Domain
    /// As [`sequential_acceptance`].
    ///
    /// # Errors
    /// `out_of_range` for a rate outside 0 to 1.
    ///
    /// # Source
    /// Wald 1945 (row `statistics.sequential_average_trials`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{SequentialTest, sequential_average_trials};
    ///
    /// let test = SequentialTest::new(0.01, 0.10, 0.05, 0.10)?;
    /// assert!((sequential_average_trials(test, 0.0)? - 23.6207).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sequential_average_trials(test: SequentialTest, rate: f64) -> Result<f64, Error> {
        let accepted = sequential_acceptance(test, rate)?;
        let drift = rate * test.fault_weight() + (1.0 - rate) * test.good_weight();
        let spread = test.fault_weight() - test.good_weight();
        if fabs(drift) < 1e-8 * spread {
            let lines = sequential_lines(test)?;
            let limit = lines.accept_intercept * lines.reject_intercept / (lines.slope * (1.0 - lines.slope));
            return numeric::finite("rate", limit);
        }
        let end = accepted * test.accept_limit() + (1.0 - accepted) * test.reject_limit();
        numeric::finite("rate", end / drift)
    }
    source: WALD_1945, place: "average sample number", standing: Published, seen: Memory,
    domain: "overshoot ignored",
}

rows![
    sequential_lines,
    sequential_counts,
    sequential_decision,
    sequential_acceptance,
    sequential_average_trials,
];
