//! Individuals chart: is one value unusual against its own series?

use alloc::vec::Vec;

use super::domain::numbers;
use crate::error::{Code, Error};
use crate::numeric::sum::sum;
use crate::numeric::{fabs, finite};
use crate::source::{Source, constant, formula, rows};

const NIST_HANDBOOK: Source = Source {
    id: "nist-sematech",
    citation: "NIST/SEMATECH e-Handbook of Statistical Methods",
    doi: Some("10.18434/M32189"),
};

constant! {
    "statistics.range_to_spread",
    /// Mean range of two normal values, in standard deviations (d2).
    pub const RANGE_TO_SPREAD: f64 = 1.128;
    source: NIST_HANDBOOK, place: "6.3.2.2, d2 for two", standing: Published, seen: Memory,
}

constant! {
    "statistics.range_limit",
    /// Upper limit of the moving range of two, in mean moving ranges (D4).
    pub const RANGE_LIMIT: f64 = 3.267;
    source: NIST_HANDBOOK, place: "6.3.2.2, D4 for two", standing: Published, seen: Memory,
}

/// An individuals and moving-range chart.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct IndividualsChart {
    /// Mean of the values.
    pub centre: f64,
    /// Mean distance between neighbours.
    pub mean_range: f64,
    /// Standard deviation estimated from it.
    pub spread: f64,
    /// Lower limit.
    pub low: f64,
    /// Upper limit.
    pub high: f64,
    /// Upper limit of the distance between neighbours.
    pub range_high: f64,
    /// Places (from 0) of values outside the limits.
    pub outside: Vec<u32>,
    /// Places (from 0) of values too far from the one before.
    pub range_outside: Vec<u32>,
}

fn places(values: impl Iterator<Item = bool>) -> Vec<u32> {
    (0_u32..).zip(values).filter_map(|(place, out)| out.then_some(place)).collect()
}

formula! {
    "statistics.individuals_chart",
    /// Which of the values are unusual for their own series?
    ///
    /// # Formula
    /// Spread `r / 1.128`, `r` the mean of `|x_i - x_(i-1)|`; limits at the mean plus and minus 3 spreads; moving range
    /// limit `3.267 r`.
    ///
    /// # Domain
    /// At least two values in their order. A series that resembles itself from day to day shrinks `r` and raises false
    /// alarms.
    ///
    /// # Errors
    /// `not_enough_data`; `zero_spread` where all values are equal; `not_finite`; `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// NIST/SEMATECH e-Handbook 6.3.2.2 (row `statistics.individuals_chart`).
    ///
    /// # Examples
    /// ```
    /// let flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
    /// let chart = bismar::statistics::individuals_chart(&flow)?;
    /// assert!((chart.high - 55.8041).abs() < 0.00005 && chart.outside.is_empty());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn individuals_chart(values: &[f64]) -> Result<IndividualsChart, Error> {
        let count = numbers("values", values, 2)?.len() as f64;
        let ranges: Vec<f64> = values
            .windows(2)
            .filter_map(|pair| if let [before, now] = pair { Some(fabs(now - before)) } else { None })
            .collect();
        let centre = finite("values", sum(values.iter().copied()) / count)?;
        let mean_range = sum(ranges.iter().copied()) / ranges.len() as f64;
        if mean_range <= 0.0 {
            return Err(Error::plain(Code::ZeroSpread, "values"));
        }
        let spread = mean_range / RANGE_TO_SPREAD;
        let (low, high) = (centre - 3.0 * spread, centre + 3.0 * spread);
        let range_high = RANGE_LIMIT * mean_range;
        let jumps = core::iter::once(false).chain(ranges.iter().map(|range| *range > range_high));
        Ok(IndividualsChart {
            centre,
            mean_range,
            spread,
            low,
            high,
            range_high,
            outside: places(values.iter().map(|value| *value < low || *value > high)),
            range_outside: places(jumps),
        })
    }
    source: NIST_HANDBOOK, place: "6.3.2.2", standing: Published, seen: Memory,
}

rows![RANGE_TO_SPREAD, RANGE_LIMIT, individuals_chart];
