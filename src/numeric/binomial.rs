//! Binomial probabilities.

use super::beta::beta_parts;
use super::gamma::{deviance, stirling_remainder};
use super::{exp, ln, ln_1p, sqrt};
use crate::error::Error;

/// Probability of exactly `successes` in `trials`, each with probability `p` from 0 to 1.
pub(crate) fn binomial_pmf(successes: u32, trials: u32, p: f64) -> f64 {
    if successes > trials {
        return 0.0;
    }
    let (x, n) = (f64::from(successes), f64::from(trials));
    let rest = n - x;
    if p <= 0.0 || p >= 1.0 {
        let certain = if p <= 0.0 { successes == 0 } else { successes == trials };
        return if certain { 1.0 } else { 0.0 };
    }
    if successes == 0 {
        return exp(n * ln_1p(-p));
    }
    if successes == trials {
        return exp(n * ln(p));
    }
    let exponent = stirling_remainder(n)
        - stirling_remainder(x)
        - stirling_remainder(rest)
        - deviance(x, n * p)
        - deviance(rest, n * (1.0 - p));
    exp(exponent) * sqrt(n / (core::f64::consts::TAU * x * rest))
}

/// Probability of at most `successes` in `trials`.
pub(crate) fn binomial_cdf(successes: u32, trials: u32, p: f64) -> Result<f64, Error> {
    if successes >= trials {
        return Ok(1.0);
    }
    let (x, n) = (f64::from(successes), f64::from(trials));
    Ok(beta_parts(n - x, x + 1.0, 1.0 - p, p)?.lower)
}

/// Probability of more than `successes` in `trials`.
pub(crate) fn binomial_upper(successes: u32, trials: u32, p: f64) -> Result<f64, Error> {
    if successes >= trials {
        return Ok(0.0);
    }
    let (x, n) = (f64::from(successes), f64::from(trials));
    Ok(beta_parts(n - x, x + 1.0, 1.0 - p, p)?.upper)
}

#[cfg(test)]
mod tests {
    use super::*;

    // Reference values: mpmath 1.3, 40 digits.
    #[test]
    fn pmf_matches_the_reference() {
        let cases = [
            (3, 10, 0.25, 0.250_282_287_597_656_25),
            (0, 20, 0.1, 0.121_576_654_590_569_3),
            (20, 20, 0.9, 0.121_576_654_590_569_3),
            (480, 1000, 0.5, 0.011_340_982_371_187_727),
            (5, 100_000, 0.0001, 0.037_829_491_291_727_78),
        ];
        for (x, n, p, expected) in cases {
            let got = binomial_pmf(x, n, p);
            assert!((got / expected - 1.0).abs() < 1e-13, "{got} {expected}");
        }
        assert!(
            binomial_pmf(3, 2, 0.5) <= 0.0
                && binomial_pmf(0, 5, 0.0) >= 1.0
                && binomial_pmf(4, 5, 1.0) <= 0.0
        );
    }

    #[test]
    fn cdf_matches_the_reference() {
        let cases = [
            (3, 10, 0.25, 0.775_875_091_552_734_4),
            (81, 263, 0.3, 0.639_688_835_040_718_3),
            (480, 1000, 0.5, 0.108_724_146_602_070_47),
        ];
        for (x, n, p, expected) in cases {
            let got = binomial_cdf(x, n, p).unwrap();
            assert!((got / expected - 1.0).abs() < 1e-13, "{got} {expected}");
            assert!((binomial_upper(x, n, p).unwrap() - (1.0 - expected)).abs() < 1e-13);
        }
    }

    #[test]
    fn the_probabilities_add_to_the_distribution() {
        let mut total = 0.0;
        for x in 0..=30 {
            total += binomial_pmf(x, 30, 0.37);
            assert!((total - binomial_cdf(x, 30, 0.37).unwrap()).abs() < 1e-14);
        }
    }
}
