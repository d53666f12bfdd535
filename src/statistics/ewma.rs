//! Exponentially weighted chart: has the series drifted slowly?

use alloc::vec::Vec;

use super::domain::{not_negative, number, numbers, positive, unit};
use crate::error::{Code, Error};
use crate::numeric::{exp_m1, finite, ln_1p, sqrt};
use crate::source::{ARITHMETIC, Source, formula, rows};

const ROBERTS_1959: Source = Source {
    id: "roberts-1959",
    citation: "Roberts SW. Control chart tests based on geometric moving averages. Technometrics 1:239-250, 1959",
    doi: None,
};
const MUTH_1960: Source = Source {
    id: "muth-1960",
    citation: "Muth JF. Optimal properties of exponentially weighted forecasts. J Am Stat Assoc 55:299-306, 1960",
    doi: None,
};

/// A weight of the newest value: above 0, at most 1.
pub(super) fn weight_of(weight: f64) -> Result<f64, Error> {
    let weight = unit("weight", weight)?;
    if weight > 0.0 {
        Ok(weight)
    } else {
        Err(Error::range(Code::OutOfRange, "weight", weight, 0.0, 1.0, "(above 0)"))
    }
}

/// One point of the chart.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EwmaPoint {
    /// The weighted mean.
    pub value: f64,
    /// Lower limit at this point.
    pub low: f64,
    /// Upper limit at this point.
    pub high: f64,
    /// Whether it lies outside.
    pub signal: bool,
}

/// The chart with its limits far from the start.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EwmaChart {
    /// One point a value.
    pub points: Vec<EwmaPoint>,
    /// Lower limit in the long run.
    pub low: f64,
    /// Upper limit in the long run.
    pub high: f64,
}

formula! {
    "statistics.ewma_chart",
    /// Has the series drifted away from its target, slowly?
    ///
    /// # Formula
    /// `z = w x + (1 - w) z'`, from the target; limits `target +- width * spread * sqrt(w/(2-w) (1 - (1-w)^(2i)))` at
    /// the `i`-th value.
    ///
    /// # Domain
    /// Weight above 0 to 1, spread above 0, width usually 2.6 to 3.
    ///
    /// # Errors
    /// `not_enough_data` without a value, `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Roberts 1959 (row `statistics.ewma_chart`).
    ///
    /// # Examples
    /// ```
    /// let chart = bismar::statistics::ewma_chart(&[52.0, 47.0, 53.0], 50.0, 2.0539, 0.3, 3.0)?;
    /// assert!((chart.high - 52.5884).abs() < 0.00005);
    /// assert!((chart.points[0].value - 50.6).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn ewma_chart(values: &[f64], target: f64, spread: f64, weight: f64, width: f64) -> Result<EwmaChart, Error> {
        numbers("values", values, 1)?;
        let target = number("target", target)?;
        let weight = weight_of(weight)?;
        let reach = positive("width", width)? * positive("spread", spread)? * sqrt(weight / (2.0 - weight));
        let keep = (1.0 - weight) * (1.0 - weight);
        let (mut value, mut left) = (target, 1.0);
        let mut points = Vec::with_capacity(values.len());
        for x in values {
            value = finite("values", weight * x + (1.0 - weight) * value)?;
            left *= keep;
            let half = reach * sqrt(1.0 - left);
            let (low, high) = (target - half, target + half);
            points.push(EwmaPoint { value, low, high, signal: value < low || value > high });
        }
        Ok(EwmaChart { points, low: finite("spread", target - reach)?, high: finite("spread", target + reach)? })
    }
    source: ROBERTS_1959, place: "p 239-250", standing: Published, seen: Memory,
}

formula! {
    "statistics.ewma_weight_over",
    /// What weight does a value get that comes after several days?
    ///
    /// # Formula
    /// `1 - (1 - w)^days`.
    ///
    /// # Domain
    /// Weight above 0 to 1; days at least 0. An extension for irregular days, not part of the chart's literature.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Follows from taking the days between as having carried no news (row `statistics.ewma_weight_over`).
    ///
    /// # Examples
    /// ```
    /// assert!((bismar::statistics::ewma_weight_over(0.3, 2.0)? - 0.51).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn ewma_weight_over(weight: f64, days: f64) -> Result<f64, Error> {
        let weight = weight_of(weight)?;
        let days = not_negative("days", days)?;
        if weight >= 1.0 {
            return Ok(if days > 0.0 { 1.0 } else { 0.0 });
        }
        Ok(crate::numeric::tidy(-exp_m1(days * ln_1p(-weight))))
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

formula! {
    "statistics.steady_weight",
    /// Which weight does a level filter settle at?
    ///
    /// # Formula
    /// `(-q + sqrt(q^2 + 4q)) / 2`, `q` drift over reading variance, one reading a step.
    ///
    /// # Domain
    /// `q` from 0 to 1,000,000.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Muth 1960 (row `statistics.steady_weight`).
    ///
    /// # Examples
    /// ```
    /// let weight = bismar::statistics::steady_weight(1469.1 / 15099.0)?;
    /// assert!((weight - 0.2670480126).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn steady_weight(relative_drift: f64) -> Result<f64, Error> {
        let q = crate::numeric::within(Code::OutOfRange, "relative_drift", relative_drift, 0.0, 1e6, "")?;
        // The same as the formula above, without its cancellation for a large q.
        let root = sqrt(q * q + 4.0 * q);
        Ok(if q > 0.0 { 2.0 * q / (q + root) } else { 0.0 })
    }
    source: MUTH_1960, place: "p 299-306", standing: Published, seen: Memory,
}

rows![ewma_chart, ewma_weight_over, steady_weight];
