//! Intervals of a rate from the binomial distribution itself, without a normal approximation.

use super::binomial_interval::{NEWCOMBE_1998, one_sided};
use super::domain::{counts, open_unit};
use crate::error::Error;
use crate::numeric::beta::beta_quantile;
use crate::numeric::binomial::{binomial_cdf, binomial_pmf, binomial_upper};
use crate::numeric::search::root;
use crate::numeric::{larger, smaller};
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const CLOPPER_PEARSON_1934: Source = Source {
    id: "clopper-pearson-1934",
    citation: "Clopper CJ, Pearson ES. The use of confidence or fiducial limits illustrated in the case of the binomial. Biometrika 26:404-413, 1934",
    doi: None,
};

/// Lower end of the exact interval, leaving `tail` below it.
fn exact_low(x: f64, n: f64, tail: f64) -> Result<f64, Error> {
    if x <= 0.0 { Ok(0.0) } else { Ok(beta_quantile(x, n - x + 1.0, tail, 1.0 - tail)?.0) }
}

/// Upper end of the exact interval, leaving `tail` above it.
fn exact_high(x: f64, n: f64, tail: f64) -> Result<f64, Error> {
    if x >= n { Ok(1.0) } else { Ok(beta_quantile(x + 1.0, n - x, 1.0 - tail, tail)?.0) }
}

formula! {
    "statistics.clopper_pearson_interval",
    /// How well is a rate known, never promising more than the counts carry?
    ///
    /// # Formula
    /// Low: the `a/2` quantile of Beta(x, n-x+1), 0 at no success; high: the `1-a/2` quantile of Beta(x+1, n-x),
    /// 1 at all successes; `a = 1 - level`.
    ///
    /// # Domain
    /// Any counts. Covers at least as often as it says, usually more: wider than needed.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).
    ///
    /// # Source
    /// Clopper & Pearson 1934 (row `statistics.clopper_pearson_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::clopper_pearson_interval(0, 20, 0.95)?;
    /// assert!((interval.high() - 0.1684).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn clopper_pearson_interval(successes: u32, trials: u32, level: f64) -> Result<Interval, Error> {
        let (x, n) = counts(successes, trials)?;
        let tail = 0.5 * (1.0 - open_unit("level", level)?);
        Interval::new(exact_low(x, n, tail)?, exact_high(x, n, tail)?, level)
    }
    source: CLOPPER_PEARSON_1934, place: "p 404-413", standing: Published, seen: Memory,
    domain: "independent trials at a constant rate",
}

formula! {
    "statistics.clopper_pearson_lower",
    /// At least how high is the rate, with this exact confidence on one side?
    ///
    /// # Formula
    /// The `1 - confidence` quantile of Beta(x, n-x+1); 0 at no success.
    ///
    /// # Domain
    /// Any counts; confidence from 0.5.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a confidence below 0.5 or at 1.
    ///
    /// # Source
    /// Clopper & Pearson 1934 (row `statistics.clopper_pearson_lower`).
    ///
    /// # Examples
    /// ```
    /// // All of 29 good: at least 90 % with 95 % confidence.
    /// assert!(bismar::statistics::clopper_pearson_lower(29, 29, 0.95)? >= 0.9);
    /// assert!(bismar::statistics::clopper_pearson_lower(28, 28, 0.95)? < 0.9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn clopper_pearson_lower(successes: u32, trials: u32, confidence: f64) -> Result<f64, Error> {
        let (x, n) = counts(successes, trials)?;
        exact_low(x, n, 1.0 - one_sided(confidence)?)
    }
    source: CLOPPER_PEARSON_1934, place: "p 404-413, one side", standing: Published, seen: Memory,
    domain: "confidence 0.5 to 1",
}

formula! {
    "statistics.mid_p_interval",
    /// How well is a rate known, exact but counting the observed outcome half?
    ///
    /// # Formula
    /// Low solves `P(X > x) + P(X = x)/2 = a/2`, high `P(X < x) + P(X = x)/2 = a/2`; `X` binomial with `n` trials.
    ///
    /// # Domain
    /// Any counts; covers close to the stated level on average.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).
    ///
    /// # Source
    /// Newcombe 1998, method 6 (row `statistics.mid_p_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::mid_p_interval(0, 20, 0.95)?;
    /// assert!((interval.high() - 0.1391).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn mid_p_interval(successes: u32, trials: u32, level: f64) -> Result<Interval, Error> {
        let (x, n) = counts(successes, trials)?;
        let tail = 0.5 * (1.0 - open_unit("level", level)?);
        let p = x / n;
        let above = |q: f64| Ok(binomial_upper(successes, trials, q)? + 0.5 * binomial_pmf(successes, trials, q) - tail);
        let below = |q: f64| {
            let less = if successes == 0 { 0.0 } else { binomial_cdf(successes - 1, trials, q)? };
            Ok(less + 0.5 * binomial_pmf(successes, trials, q) - tail)
        };
        let low = if successes == 0 { 0.0 } else { root(above, 0.0, 1.0, "low")? };
        let high = if successes == trials { 1.0 } else { root(below, 0.0, 1.0, "high")? };
        Interval::new(smaller(low, p), larger(high, p), level)
    }
    source: NEWCOMBE_1998, place: "mid-P, Table I", standing: Published, seen: Secondary,
    copies: "the tests of one statistical package and two more public files",
    domain: "independent trials at a constant rate",
}

rows![clopper_pearson_interval, clopper_pearson_lower, mid_p_interval];
