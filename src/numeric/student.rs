//! Student's t distribution.

use super::beta::{beta_parts, beta_quantile};
use super::sqrt;
use crate::error::Error;

/// Probability that a t value with `degrees > 0` degrees of freedom lies above `t`, for `t >= 0`.
fn tail(t: f64, degrees: f64) -> Result<f64, Error> {
    let square = t * t;
    let whole = degrees + square;
    Ok(0.5 * beta_parts(0.5 * degrees, 0.5, degrees / whole, square / whole)?.lower)
}

/// Probability that a t value lies at or below `t`.
pub(crate) fn student_cdf(t: f64, degrees: f64) -> Result<f64, Error> {
    if t < 0.0 { tail(-t, degrees) } else { Ok(1.0 - tail(t, degrees)?) }
}

/// The point below which a t value lies with probability `p`, strictly between 0 and 1.
pub(crate) fn student_quantile(p: f64, degrees: f64) -> Result<f64, Error> {
    if p > 0.5 {
        // 1 - p is exact here: both lie within a factor of two of one half or the difference is a multiple of p's last bit.
        return Ok(-student_quantile(1.0 - p, degrees)?);
    }
    let (x, rest) = beta_quantile(0.5 * degrees, 0.5, 2.0 * p, 1.0 - 2.0 * p)?;
    Ok(super::tidy(-sqrt(degrees * rest / x)))
}

#[cfg(test)]
mod tests {
    use super::*;

    // Reference values: mpmath 1.3, 40 digits.
    #[test]
    fn cdf_matches_the_reference() {
        let cases = [
            (1.0, 3.0, 0.195_501_109_477_885_32),
            (2.5, 20.0, 0.010_616_772_719_566_198),
            (0.001, 7.0, 0.499_615_008_622_499_4),
            (10.0, 2.5, 0.002_220_747_883_653_712_4),
            (5.0, 200.0, 6.250_990_638_857_698e-7),
        ];
        for (t, degrees, expected) in cases {
            let got = student_cdf(-t, degrees).unwrap();
            assert!((got / expected - 1.0).abs() < 1e-13, "{got} {expected}");
            assert!((student_cdf(t, degrees).unwrap() - (1.0 - expected)).abs() < 2e-16);
        }
    }

    #[test]
    fn quantile_matches_the_reference() {
        let cases = [
            (0.025, 3.0, 3.182_446_305_283_709_6),
            (0.025, 20.0, 2.085_963_447_265_865),
            (0.05, 1.0, 6.313_751_514_675_043),
            (0.0005, 7.0, 5.407_882_520_861_725),
            (0.4999, 12.0, 0.000_255_933_628_849_451_4),
            (1e-10, 5.0, 156.825_592_708_894_3),
        ];
        for (p, degrees, expected) in cases {
            let got = student_quantile(p, degrees).unwrap();
            assert!((got / -expected - 1.0).abs() < 1e-12, "{p} {degrees}: {got} {expected}");
        }
        assert!(student_quantile(0.5, 4.0).unwrap().abs() < 1e-15);
    }
}
