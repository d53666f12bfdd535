//! Centre and spread that one bad value cannot move far.

use alloc::vec::Vec;

use super::domain::{numbers, unit};
use crate::error::Error;
use crate::numeric::{fabs, floor, tidy};
use crate::source::{Source, constant, formula, rows};

const HAMPEL_1974: Source = Source {
    id: "hampel-1974",
    citation: "Hampel FR. The influence curve and its role in robust estimation. J Am Stat Assoc 69:383-393, 1974",
    doi: None,
};
const HYNDMAN_FAN_1996: Source = Source {
    id: "hyndman-fan-1996",
    citation: "Hyndman RJ, Fan Y. Sample quantiles in statistical packages. Am Stat 50:361-365, 1996",
    doi: None,
};

constant! {
    "statistics.deviation_to_spread",
    /// Turns the median absolute deviation of normal values into their standard deviation: 1 over the normal
    /// quantile of 3/4.
    pub const DEVIATION_TO_SPREAD: f64 = 1.482_602_218_505_602;
    source: HAMPEL_1974, place: "normal consistency", standing: Published, seen: Memory,
}

/// The values in order. They are finite by then, so the order is the usual one.
pub(crate) fn sorted(values: &[f64]) -> Vec<f64> {
    let mut sorted: Vec<f64> = values.iter().copied().map(tidy).collect();
    crate::numeric::sort::sort_numbers(&mut sorted);
    sorted
}

/// The quantile of sorted values by linear interpolation; `None` for an empty list.
pub(crate) fn quantile_of_sorted(sorted: &[f64], probability: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let place = probability * last as f64;
    let below = floor(place);
    let low = *sorted.get(below as usize)?;
    let high = *sorted.get((below as usize + 1).min(last))?;
    let part = place - below;
    Some(if part > 0.0 { low + part * (high - low) } else { low })
}

/// The median of values that are finite; `None` for an empty list.
pub(crate) fn median_of(values: &[f64]) -> Option<f64> {
    quantile_of_sorted(&sorted(values), 0.5)
}

/// The median of the distances from `centre`, scaled to a standard deviation.
pub(crate) fn spread_about(values: &[f64], centre: f64) -> Option<f64> {
    let distances: Vec<f64> = values.iter().map(|value| fabs(value - centre)).collect();
    median_of(&distances).map(|deviation| DEVIATION_TO_SPREAD * deviation)
}

/// The answer of a step that only an empty list can spoil; lists are checked before.
fn present(value: Option<f64>, field: &'static str) -> Result<f64, Error> {
    value.ok_or_else(|| Error::plain(crate::Code::NotEnoughData, field))
}

formula! {
    "statistics.median",
    /// What is the middle value?
    ///
    /// # Formula
    /// The middle of the sorted values, or the mean of the two middle ones.
    ///
    /// # Domain
    /// At least one value. Half the values may be wrong before it moves without bound.
    ///
    /// # Errors
    /// `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Hampel 1974 for its robustness (row `statistics.median`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::median(&[3.0, 100.0, 1.0])?, 3.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn median(values: &[f64]) -> Result<f64, Error> {
        present(median_of(numbers("values", values, 1)?), "values")
    }
    source: HAMPEL_1974, place: "definition", standing: Published, seen: Memory,
}

formula! {
    "statistics.quantile",
    /// Below which value does this part of the values lie?
    ///
    /// # Formula
    /// Linear interpolation at place `p (n - 1)` of the sorted values, counted from 0 (definition 7).
    ///
    /// # Domain
    /// At least one value; probability from 0 to 1.
    ///
    /// # Errors
    /// `not_enough_data`, `not_finite`, `out_of_range`.
    ///
    /// # Source
    /// Hyndman & Fan 1996, definition 7 (row `statistics.quantile`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::statistics::quantile(&[4.0, 1.0, 2.0, 3.0], 0.25)?, 1.75);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn quantile(values: &[f64], probability: f64) -> Result<f64, Error> {
        let values = numbers("values", values, 1)?;
        present(quantile_of_sorted(&sorted(values), unit("probability", probability)?), "values")
    }
    source: HYNDMAN_FAN_1996, place: "definition 7", standing: Published, seen: Memory,
}

formula! {
    "statistics.robust_spread",
    /// How widely do the values scatter, whatever one or two of them do?
    ///
    /// # Formula
    /// 1.4826 times the median distance from the median.
    ///
    /// # Domain
    /// At least two values. It is 0 where more than half the values are equal: floor it before dividing by it.
    ///
    /// # Errors
    /// `not_enough_data`, `not_finite`, `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Hampel 1974 (row `statistics.robust_spread`).
    ///
    /// # Examples
    /// ```
    /// let spread = bismar::statistics::robust_spread(&[1.0, 2.0, 3.0, 4.0, 100.0])?;
    /// assert!((spread - 1.4826).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn robust_spread(values: &[f64]) -> Result<f64, Error> {
        let values = numbers("values", values, 2)?;
        let centre = present(median_of(values), "values")?;
        present(spread_about(values, centre), "values")
    }
    source: HAMPEL_1974, place: "median absolute deviation", standing: Published, seen: Memory,
}

rows![DEVIATION_TO_SPREAD, median, quantile, robust_spread];
