//! Mean, standard deviation, and how much each value resembles the one before.

use super::domain::numbers;
use crate::error::{Code, Error};
use crate::numeric::moments::Moments;
use crate::numeric::sum::{Sum, sum};
use crate::numeric::{finite, sqrt};
use crate::source::{Source, formula, rows};

const WELFORD_1962: Source = Source {
    id: "welford-1962",
    citation: "Welford BP. Note on a method for calculating corrected sums of squares and products. Technometrics 4:419-420, 1962",
    doi: None,
};
const NEUMAIER_1974: Source = Source {
    id: "neumaier-1974",
    citation: "Neumaier A. Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen. Z Angew Math Mech 54:39-51, 1974",
    doi: None,
};
const NIST_STRD: Source =
    Source { id: "nist-strd", citation: "NIST Statistical Reference Datasets", doi: None };

/// Mean and standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Summary {
    /// How many values.
    pub count: u32,
    /// Their mean.
    pub mean: f64,
    /// Standard deviation with `n - 1` below.
    pub standard_deviation: f64,
}

fn moments(values: &[f64]) -> Result<Moments, Error> {
    Ok(numbers("values", values, 2)?.iter().copied().collect())
}

/// Mean and spread in one pass, the mean from a compensated sum.
fn centre(values: &[f64]) -> f64 {
    sum(values.iter().copied()) / values.len() as f64
}

formula! {
    "statistics.summary",
    /// What are mean and standard deviation, to the last digit that the values carry?
    ///
    /// # Formula
    /// Mean from a compensated sum; deviations `d = x - m`, `S = S + d (x - m')` value by value; standard deviation
    /// `sqrt(S / (n - 1))`.
    ///
    /// # Domain
    /// At least two values.
    ///
    /// # Errors
    /// `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Welford 1962 (row `statistics.summary`).
    ///
    /// # Examples
    /// ```
    /// let summary = bismar::statistics::summary(&[10000001.0, 10000003.0, 10000002.0])?;
    /// assert_eq!((summary.mean, summary.standard_deviation), (10000002.0, 1.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn summary(values: &[f64]) -> Result<Summary, Error> {
        let moments = moments(values)?;
        Ok(Summary {
            count: moments.count(),
            mean: finite("values", centre(values))?,
            standard_deviation: sqrt(moments.variance().unwrap_or(0.0)),
        })
    }
    source: WELFORD_1962, place: "p 419-420", standing: Published, seen: Memory,
}

formula! {
    "statistics.lag_one_correlation",
    /// How much does each value resemble the one before it?
    ///
    /// # Formula
    /// `sum (x_t - m)(x_{t+1} - m) / sum (x_t - m)^2`.
    ///
    /// # Domain
    /// At least two values that are not all equal.
    ///
    /// # Errors
    /// `not_enough_data`, `zero_spread`, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// As certified in the NIST Statistical Reference Datasets (row `statistics.lag_one_correlation`).
    ///
    /// # Examples
    /// ```
    /// let r = bismar::statistics::lag_one_correlation(&[10000001.0, 10000003.0, 10000002.0])?;
    /// assert_eq!(r, -0.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lag_one_correlation(values: &[f64]) -> Result<f64, Error> {
        let mean = centre(numbers("values", values, 2)?);
        let (mut products, mut squares) = (Sum::default(), Sum::default());
        for pair in values.windows(2) {
            if let [now, next] = pair {
                products.add_product(now - mean, next - mean);
            }
        }
        for value in values {
            squares.add_product(value - mean, value - mean);
        }
        if squares.value() <= 0.0 {
            return Err(Error::plain(Code::ZeroSpread, "values"));
        }
        finite("values", products.value() / squares.value())
    }
    source: NIST_STRD, place: "univariate summary statistics, definition of the lag-1 coefficient", standing: Published, seen: Secondary,
    copies: "test files of open numerical libraries, one library for a data set",
}

formula! {
    "statistics.compensated_sum",
    /// What is the total, with the rounding error of each addition made good?
    ///
    /// # Formula
    /// Plain addition, beside it the sum of what each addition lost; both together at the end.
    ///
    /// # Domain
    /// At least one value.
    ///
    /// # Errors
    /// `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Neumaier 1974 (row `statistics.compensated_sum`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::compensated_sum(&[1.0, 1e100, 1.0, -1e100])?, 2.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn compensated_sum(values: &[f64]) -> Result<f64, Error> {
        finite("values", sum(numbers("values", values, 1)?.iter().copied()))
    }
    source: NEUMAIER_1974, place: "algorithm IV", standing: Published, seen: Memory,
}

rows![summary, lag_one_correlation, compensated_sum];
