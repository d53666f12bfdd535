//! How many clean repetitions prove what?

use super::domain::open_unit;
use crate::error::{Allowed, Code, Error};
use crate::numeric::binomial::binomial_cdf;
use crate::numeric::{ceil, exp_m1, ln, ln_1p};
use crate::source::{ARITHMETIC, Source, formula, rows};

const SUCCESS_RUN: Source = Source {
    id: "success-run",
    citation: "Success-run theorem, as in standard texts on reliability demonstration (also credited to Bayes and Laplace)",
    doi: None,
};
const HANLEY_1983: Source = Source {
    id: "hanley-1983",
    citation: "Hanley JA, Lippman-Hand A. If nothing goes wrong, is everything all right? JAMA 249:1743-1745, 1983",
    doi: Some("10.1001/jama.1983.03330370053031"),
};

/// A count of this size is refused rather than rounded.
const MOST_TRIALS: f64 = 1e9;
/// Failures allowed in a demonstration test.
const MOST_FAILURES: u32 = 1000;

/// `ln(1 - confidence) / ln(reliability)`: the length of a clean run, before rounding.
fn clean_run(reliability: f64, confidence: f64) -> Result<f64, Error> {
    let reliability = open_unit("reliability", reliability)?;
    let confidence = open_unit("confidence", confidence)?;
    let run = ln_1p(-confidence) / ln(reliability);
    crate::numeric::within(Code::OutOfRange, "reliability", run, 0.0, MOST_TRIALS, "trials needed")
}

/// Rounds up, forgiving the last bit where the run is whole.
fn whole_run(run: f64) -> u32 {
    ceil(run - 1e-9) as u32
}

formula! {
    "statistics.success_run_trials",
    /// How many trials, with at most so many failures, show a rate of at least this with this confidence?
    ///
    /// # Formula
    /// The smallest `n` with `P(X <= f) <= 1 - C`, `X` binomial with `n` trials and failure rate `1 - R`; without
    /// failures `n = ceil(ln(1-C) / ln R)`.
    ///
    /// # Domain
    /// A plan fixed before the first trial. Looking after each repetition needs a sequential test instead.
    ///
    /// # Errors
    /// `out_of_range` for a reliability or confidence at or outside 0 and 1, more than 1000 failures, or a plan of
    /// more than 1,000,000,000 trials.
    ///
    /// # Source
    /// Success-run theorem (row `statistics.success_run_trials`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::success_run_trials(0.90, 0.95, 0)?, 29);
    /// assert_eq!(bismar::statistics::success_run_trials(0.90, 0.95, 1)?, 46);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn success_run_trials(reliability: f64, confidence: f64, failures: u32) -> Result<u32, Error> {
        let run = clean_run(reliability, confidence)?;
        if failures == 0 {
            return Ok(whole_run(run));
        }
        if failures > MOST_FAILURES {
            let most = f64::from(MOST_FAILURES);
            return Err(Error::range(Code::OutOfRange, "failures", failures, 0.0, most, "failures"));
        }
        let shows = |trials: u32| Ok::<bool, Error>(binomial_cdf(failures, trials, 1.0 - reliability)? <= 1.0 - confidence);
        let mut high = failures + 1;
        while !shows(high)? {
            high = high.checked_mul(2).ok_or_else(|| {
                Error::new(Code::OutOfRange, "failures", failures, Allowed::rule("a plan of fewer trials"))
            })?;
        }
        let mut low = failures;
        while high - low > 1 {
            let middle = low + (high - low) / 2;
            if shows(middle)? { high = middle } else { low = middle }
        }
        Ok(high)
    }
    source: SUCCESS_RUN, place: "one- and more-failure form", standing: Published, seen: Memory,
    domain: "fixed plan, independent trials",
}

formula! {
    "statistics.success_run_trials_with_uniform_prior",
    /// How long must a clean run be, if every rate was equally likely before?
    ///
    /// # Formula
    /// `ceil(ln(1-C) / ln R) - 1`: the prior is worth one trial. Explains tables that print 28 where others print 29.
    ///
    /// # Domain
    /// A plan fixed before the first trial, uniform prior.
    ///
    /// # Errors
    /// `out_of_range` for a reliability or confidence at or outside 0 and 1.
    ///
    /// # Source
    /// Follows from the posterior `1 - R^(n+1)` (row `statistics.success_run_trials_with_uniform_prior`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::success_run_trials_with_uniform_prior(0.90, 0.95)?, 28);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn success_run_trials_with_uniform_prior(reliability: f64, confidence: f64) -> Result<u32, Error> {
        Ok(whole_run(clean_run(reliability, confidence)?).saturating_sub(1))
    }
    source: ARITHMETIC, place: "posterior of a clean run", standing: Derived, seen: NotApplicable,
    domain: "fixed plan, uniform prior",
}

formula! {
    "statistics.no_event_upper",
    /// Nothing went wrong in so many trials: how high may the rate of going wrong still be?
    ///
    /// # Formula
    /// `1 - (1 - C)^(1/n)`, one-sided with confidence `C`.
    ///
    /// # Domain
    /// From one trial; independent trials at a constant rate.
    ///
    /// # Errors
    /// `no_trials`, `out_of_range` for a confidence at or outside 0 and 1.
    ///
    /// # Source
    /// The exact form beside the rule of three, Hanley & Lippman-Hand 1983 (row `statistics.no_event_upper`).
    ///
    /// # Examples
    /// ```
    /// assert!((bismar::statistics::no_event_upper(10, 0.95)? - 0.2588655509).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn no_event_upper(trials: u32, confidence: f64) -> Result<f64, Error> {
        let (_, n) = super::domain::counts(0, trials)?;
        Ok(-exp_m1(ln_1p(-open_unit("confidence", confidence)?) / n))
    }
    source: HANLEY_1983, place: "exact form", standing: Published, seen: Memory,
    domain: "independent trials at a constant rate",
}

formula! {
    "statistics.rule_of_three",
    /// Nothing went wrong in so many trials: the bound one can do in the head.
    ///
    /// # Formula
    /// `3 / n`, about 95 % one-sided.
    ///
    /// # Domain
    /// From about 30 trials; below that it is too high. Use [`no_event_upper`].
    ///
    /// # Errors
    /// `no_trials`.
    ///
    /// # Source
    /// Hanley & Lippman-Hand 1983 (row `statistics.rule_of_three`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::rule_of_three(30)?, 0.1);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn rule_of_three(trials: u32) -> Result<f64, Error> {
        let (_, n) = super::domain::counts(0, trials)?;
        Ok(3.0 / n)
    }
    source: HANLEY_1983, place: "rule of three", standing: Published, seen: Memory,
    domain: "from about 30 trials",
}

rows![success_run_trials, success_run_trials_with_uniform_prior, no_event_upper, rule_of_three];
