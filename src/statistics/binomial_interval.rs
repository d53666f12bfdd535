//! How well is a rate known after so many good repetitions out of so many?

use super::domain::{counts, open_unit};
use crate::error::Error;
use crate::numeric::beta::beta_quantile;
use crate::numeric::normal::{normal_quantile, normal_reach};
use crate::numeric::{larger, smaller, sqrt};
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const WILSON_1927: Source = Source {
    id: "wilson-1927",
    citation: "Wilson EB. Probable inference, the law of succession, and statistical inference. J Am Stat Assoc 22:209-212, 1927",
    doi: None,
};
pub(super) const NEWCOMBE_1998: Source = Source {
    id: "newcombe-1998",
    citation: "Newcombe RG. Two-sided confidence intervals for the single proportion: comparison of seven methods. Stat Med 17:857-872, 1998",
    doi: Some("10.1002/(SICI)1097-0258(19980430)17:8<857::AID-SIM777>3.0.CO;2-E"),
};
const AGRESTI_COULL_1998: Source = Source {
    id: "agresti-coull-1998",
    citation: "Agresti A, Coull BA. Approximate is better than exact for interval estimation of binomial proportions. Am Stat 52:119-126, 1998",
    doi: None,
};
const BROWN_CAI_DASGUPTA_2001: Source = Source {
    id: "brown-cai-dasgupta-2001",
    citation: "Brown LD, Cai TT, DasGupta A. Interval estimation for a binomial proportion. Stat Sci 16:101-133, 2001",
    doi: Some("10.1214/ss/1009213286"),
};
const NIST_HANDBOOK: Source = Source {
    id: "nist-sematech",
    citation: "NIST/SEMATECH e-Handbook of Statistical Methods",
    doi: Some("10.18434/M32189"),
};

/// Wilson's two ends for `x` of `n` at `z` standard errors.
fn wilson_ends(x: f64, n: f64, z: f64) -> (f64, f64) {
    let p = x / n;
    let square = z * z;
    let scale = 1.0 + square / n;
    let centre = (p + square / (2.0 * n)) / scale;
    let half = z * sqrt(p * (1.0 - p) / n + square / (4.0 * n * n)) / scale;
    let low = if x <= 0.0 { 0.0 } else { larger(centre - half, 0.0) };
    let high = if x >= n { 1.0 } else { smaller(centre + half, 1.0) };
    (low, high)
}

formula! {
    "statistics.simple_interval",
    /// What is the textbook interval of a rate? Shown for comparison: too narrow for the counts of a training hall.
    ///
    /// # Formula
    /// `p +- z sqrt(p (1-p) / n)`, `p = x/n`. Ends may leave 0 to 1; at 0 or `n` successes it has no width.
    ///
    /// # Domain
    /// Hundreds of trials with a rate far from 0 and 1. Use [`wilson_interval`] instead.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).
    ///
    /// # Source
    /// Newcombe 1998, method 1 (row `statistics.simple_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::simple_interval(81, 263, 0.95)?;
    /// assert!((interval.low() - 0.2522).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn simple_interval(successes: u32, trials: u32, level: f64) -> Result<Interval, Error> {
        let (x, n) = counts(successes, trials)?;
        let z = normal_reach(open_unit("level", level)?);
        let p = x / n;
        let half = z * sqrt(p * (1.0 - p) / n);
        Interval::new(p - half, p + half, level)
    }
    source: NEWCOMBE_1998, place: "method 1, Table I", standing: Published, seen: Memory,
    domain: "many trials, rate far from 0 and 1",
}

formula! {
    "statistics.wilson_interval",
    /// How well is a rate known? The recommended interval for up to about 40 trials.
    ///
    /// # Formula
    /// Centre `(p + z^2/2n) / (1 + z^2/n)`, half-width `z sqrt(p(1-p)/n + z^2/4n^2) / (1 + z^2/n)`; `p = x/n`,
    /// `z` the normal quantile of the level.
    ///
    /// # Domain
    /// Any counts; independent trials at a constant rate.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).
    ///
    /// # Source
    /// Wilson 1927; recommended by Brown, Cai & DasGupta 2001 (row `statistics.wilson_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::wilson_interval(0, 20, 0.95)?;
    /// assert!((interval.high() - 0.1611).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wilson_interval(successes: u32, trials: u32, level: f64) -> Result<Interval, Error> {
        let (x, n) = counts(successes, trials)?;
        let (low, high) = wilson_ends(x, n, normal_reach(open_unit("level", level)?));
        Interval::new(low, high, level)
    }
    source: WILSON_1927, place: "p 209-212", standing: Published, seen: Memory,
    domain: "independent trials at a constant rate",
}

formula! {
    "statistics.wilson_lower",
    /// At least how high is the rate, with this confidence on one side?
    ///
    /// # Formula
    /// The lower end of [`wilson_interval`] with the one-sided normal quantile of the confidence.
    ///
    /// # Domain
    /// Any counts; confidence from 0.5.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a confidence below 0.5 or at 1.
    ///
    /// # Source
    /// Wilson 1927 (row `statistics.wilson_lower`).
    ///
    /// # Examples
    /// ```
    /// // One-sided 97.5 % is the lower end of the two-sided 95 %.
    /// let lower = bismar::statistics::wilson_lower(9, 10, 0.975)?;
    /// assert!((lower - 0.5958499732).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wilson_lower(successes: u32, trials: u32, confidence: f64) -> Result<f64, Error> {
        let (x, n) = counts(successes, trials)?;
        let confidence = one_sided(confidence)?;
        Ok(wilson_ends(x, n, normal_quantile(confidence)).0)
    }
    source: WILSON_1927, place: "p 209-212, one side", standing: Published, seen: Memory,
    domain: "confidence 0.5 to 1",
}

/// A one-sided confidence: at least one half, below 1.
pub(super) fn one_sided(confidence: f64) -> Result<f64, Error> {
    open_unit("confidence", confidence)?;
    crate::numeric::within(crate::Code::OutOfRange, "confidence", confidence, 0.5, 1.0, "")
}

formula! {
    "statistics.wilson_corrected_interval",
    /// How well is a rate known, with a continuity correction: wider, close to the exact interval?
    ///
    /// # Formula
    /// Low `(2x + z^2 - 1 - z sqrt(z^2 - 2 - 1/n + 4p(n(1-p) + 1))) / (2(n + z^2))`, high
    /// `(2x + z^2 + 1 + z sqrt(z^2 + 2 - 1/n + 4p(n(1-p) - 1))) / (2(n + z^2))`; 0 at no success, 1 at all.
    ///
    /// # Domain
    /// Any counts; independent trials at a constant rate.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).
    ///
    /// # Source
    /// Newcombe 1998, method 4 (row `statistics.wilson_corrected_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::wilson_corrected_interval(0, 20, 0.95)?;
    /// assert!((interval.high() - 0.2005).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wilson_corrected_interval(successes: u32, trials: u32, level: f64) -> Result<Interval, Error> {
        let (x, n) = counts(successes, trials)?;
        let z = normal_reach(open_unit("level", level)?);
        let (square, p) = (z * z, x / n);
        let root_of = |inside: f64| z * sqrt(larger(inside, 0.0));
        let below = root_of(square - 2.0 - 1.0 / n + 4.0 * p * (n - x + 1.0));
        let above = root_of(square + 2.0 - 1.0 / n + 4.0 * p * (n - x - 1.0));
        let scale = 2.0 * (n + square);
        let low = if successes == 0 { 0.0 } else { larger((2.0 * x + square - 1.0 - below) / scale, 0.0) };
        let high = if successes == trials { 1.0 } else { smaller((2.0 * x + square + 1.0 + above) / scale, 1.0) };
        Interval::new(smaller(low, p), larger(high, p), level)
    }
    source: NEWCOMBE_1998, place: "method 4, Table I", standing: Published, seen: Secondary,
    copies: "the tests of one statistical package and two more public files",
    domain: "independent trials at a constant rate",
}

formula! {
    "statistics.agresti_coull_interval",
    /// How well is a rate known, by adding a few imagined trials of both kinds?
    ///
    /// # Formula
    /// `N = n + z^2`, `P = (x + z^2/2)/N`, `P +- z sqrt(P(1-P)/N)`. Ends may leave 0 to 1 and are not cut.
    ///
    /// # Domain
    /// Recommended above 40 trials; never shorter than [`wilson_interval`].
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).
    ///
    /// # Source
    /// Agresti & Coull 1998 (row `statistics.agresti_coull_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::agresti_coull_interval(9, 10, 0.95)?;
    /// assert!((interval.low() - 0.5740322626).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn agresti_coull_interval(successes: u32, trials: u32, level: f64) -> Result<Interval, Error> {
        let (x, n) = counts(successes, trials)?;
        let z = normal_reach(open_unit("level", level)?);
        let all = n + z * z;
        let p = (x + 0.5 * z * z) / all;
        let half = z * sqrt(p * (1.0 - p) / all);
        Interval::new(p - half, p + half, level)
    }
    source: AGRESTI_COULL_1998, place: "p 119-126", standing: Published, seen: Memory,
    domain: "above 40 trials",
}

formula! {
    "statistics.jeffreys_interval",
    /// How well is a rate known, as a posterior that starts from the least informative prior?
    ///
    /// # Formula
    /// The `a/2` and `1-a/2` quantiles of Beta(x+1/2, n-x+1/2); low is 0 at no success, high is 1 at all.
    ///
    /// # Domain
    /// Any counts; recommended up to about 40 trials.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for a level outside 0 to 1 (ends excluded).
    ///
    /// # Source
    /// Brown, Cai & DasGupta 2001, with their rule for the ends (row `statistics.jeffreys_interval`).
    ///
    /// # Examples
    /// ```
    /// let interval = bismar::statistics::jeffreys_interval(10, 10, 0.95)?;
    /// assert!((interval.low() - 0.7828037325).abs() < 1e-9 && interval.high() == 1.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn jeffreys_interval(successes: u32, trials: u32, level: f64) -> Result<Interval, Error> {
        let (x, n) = counts(successes, trials)?;
        let tail = 0.5 * (1.0 - open_unit("level", level)?);
        let (a, b) = (x + 0.5, n - x + 0.5);
        let low = if successes == 0 { 0.0 } else { beta_quantile(a, b, tail, 1.0 - tail)?.0 };
        let high = if successes == trials { 1.0 } else { beta_quantile(a, b, 1.0 - tail, tail)?.0 };
        Interval::new(low, high, level)
    }
    source: BROWN_CAI_DASGUPTA_2001, place: "Jeffreys interval", standing: Published, seen: Memory,
    domain: "up to about 40 trials",
}

formula! {
    "statistics.proportion_score",
    /// How many standard errors does an observed rate lie from a supposed one?
    ///
    /// # Formula
    /// `z = (x/n - p0) / sqrt(p0 (1-p0) / n)`.
    ///
    /// # Domain
    /// `p0` strictly between 0 and 1; a normal approximation.
    ///
    /// # Errors
    /// `no_trials`, `successes_exceed_trials`, `out_of_range` for `p0` at or outside 0 and 1.
    ///
    /// # Source
    /// NIST/SEMATECH e-Handbook 7.2.4 (row `statistics.proportion_score`).
    ///
    /// # Examples
    /// ```
    /// assert!((bismar::statistics::proportion_score(26, 200, 0.10)? - 1.414).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn proportion_score(successes: u32, trials: u32, supposed: f64) -> Result<f64, Error> {
        let (x, n) = counts(successes, trials)?;
        let p = open_unit("supposed", supposed)?;
        crate::numeric::finite("supposed", (x / n - p) / sqrt(p * (1.0 - p) / n))
    }
    source: NIST_HANDBOOK, place: "7.2.4", standing: Published, seen: Memory,
    domain: "normal approximation",
}

rows![
    simple_interval,
    wilson_interval,
    wilson_lower,
    wilson_corrected_interval,
    agresti_coull_interval,
    jeffreys_interval,
    proportion_score,
];
