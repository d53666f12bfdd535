//! Cumulative sum chart: has the series shifted, and when?

use alloc::vec::Vec;

use derive_setters::Setters;

use super::domain::{not_negative, number, numbers, positive};
use crate::error::Error;
use crate::numeric::{finite, larger};
use crate::source::{OURS, Source, constant, default_of, formula, rows};

const MONTGOMERY: Source = Source {
    id: "montgomery",
    citation: "Montgomery DC. Introduction to Statistical Quality Control, chapter 9",
    doi: None,
};

constant! {
    "statistics.cusum_reference",
    /// Usual slack of a cumulative sum, in standard deviations: half of a shift of one.
    pub const CUSUM_REFERENCE: f64 = 0.5;
    source: MONTGOMERY, place: "chapter 9", standing: Published, seen: Memory,
}

constant! {
    "statistics.cusum_threshold",
    /// Usual threshold of a cumulative sum, in standard deviations.
    pub const CUSUM_THRESHOLD: f64 = 5.0;
    source: MONTGOMERY, place: "chapter 9", standing: Published, seen: Memory,
}

/// Slack and threshold of a cumulative sum, both in standard deviations.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct CusumDesign {
    /// Slack: half the shift to find.
    pub reference: f64,
    /// A sum above this is a signal.
    pub threshold: f64,
    /// Where both sums start; half the threshold for a fast first response, else 0.
    pub head_start: f64,
}

impl CusumDesign {
    /// Slack 0.5, threshold 5, no head start: finds a shift of one standard deviation in about ten values.
    pub const STANDARD: CusumDesign =
        CusumDesign { reference: CUSUM_REFERENCE, threshold: CUSUM_THRESHOLD, head_start: 0.0 };

    pub(super) fn checked(self) -> Result<CusumDesign, Error> {
        not_negative("reference", self.reference)?;
        positive("threshold", self.threshold)?;
        crate::numeric::within(
            crate::Code::OutOfRange,
            "head_start",
            self.head_start,
            0.0,
            self.threshold,
            "",
        )?;
        Ok(self)
    }
}

impl Default for CusumDesign {
    fn default() -> CusumDesign {
        CusumDesign::STANDARD
    }
}

default_of! {
    "statistics.cusum_design_default",
    /// Slack, threshold and start of a cumulative sum where a caller names none.
    cusum_design_default: CusumDesign;
    source: OURS, place: "the usual design of Montgomery, chapter 9", standing: OurChoice, seen: NotApplicable,
}

/// Which way the series went.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Side {
    /// Above the centre.
    Up,
    /// Below the centre.
    Down,
}

/// One point of the chart.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct CusumPoint {
    /// Sum of what lay above target and slack, in the unit of the values.
    pub up: f64,
    /// Values since that sum was last 0.
    pub up_run: u32,
    /// Sum of what lay below target and slack.
    pub down: f64,
    /// Values since that sum was last 0.
    pub down_run: u32,
    /// The side whose sum is above the threshold.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub signal: Option<Side>,
    /// With a signal: where the mean seems to lie now.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub new_mean: Option<f64>,
}

/// One side of the sum.
#[derive(Clone, Copy)]
struct Half {
    sum: f64,
    run: u32,
}

impl Half {
    fn add(&mut self, excess: f64) {
        self.sum = larger(self.sum + excess, 0.0);
        self.run = if self.sum > 0.0 { self.run.saturating_add(1) } else { 0 };
    }

    fn mean_excess(self) -> f64 {
        self.sum / f64::from(self.run.max(1))
    }
}

formula! {
    "statistics.cusum_chart",
    /// Has the mean of the series shifted, and since when?
    ///
    /// # Formula
    /// `up = max(0, x - (target + K) + up')`, `down = max(0, (target - K) - x + down')`, `K` and `H` slack and threshold
    /// times the spread; a signal where a sum exceeds `H`. New mean `target + K + up/n` (or `target - K - down/n`), `n`
    /// values since the sum was last 0: they are also the age of the shift.
    ///
    /// # Domain
    /// Spread above 0. Sums go on after a signal; start anew once it is dealt with.
    ///
    /// # Errors
    /// `not_enough_data` without a value, `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Page 1954; worked example in Montgomery, chapter 9 (row `statistics.cusum_chart`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{CusumDesign, cusum_chart};
    ///
    /// let points = cusum_chart(&[9.45, 7.99, 9.29], 10.0, 1.0, CusumDesign::STANDARD)?;
    /// assert!((points[2].down - 1.77).abs() < 1e-9 && points[2].down_run == 3);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cusum_chart(values: &[f64], target: f64, spread: f64, design: CusumDesign) -> Result<Vec<CusumPoint>, Error> {
        numbers("values", values, 1)?;
        let target = number("target", target)?;
        let spread = positive("spread", spread)?;
        let design = design.checked()?;
        let (slack, threshold) = (design.reference * spread, design.threshold * spread);
        let start = Half { sum: design.head_start * spread, run: 0 };
        let (mut up, mut down) = (start, start);
        let mut points = Vec::with_capacity(values.len());
        for value in values {
            up.add(value - (target + slack));
            down.add((target - slack) - value);
            let signal = match (up.sum > threshold, down.sum > threshold) {
                (true, _) => Some(Side::Up),
                (false, true) => Some(Side::Down),
                _ => None,
            };
            let new_mean = signal.map(|side| match side {
                Side::Up => target + slack + up.mean_excess(),
                Side::Down => target - slack - down.mean_excess(),
            });
            points.push(CusumPoint {
                up: finite("values", up.sum)?,
                up_run: up.run,
                down: finite("values", down.sum)?,
                down_run: down.run,
                signal,
                new_mean,
            });
        }
        Ok(points)
    }
    source: MONTGOMERY, place: "chapter 9, tabular form", standing: Published, seen: Secondary,
    copies: "the documentation of one statistical package",
}

rows![CUSUM_REFERENCE, CUSUM_THRESHOLD, cusum_chart, cusum_design_default];
