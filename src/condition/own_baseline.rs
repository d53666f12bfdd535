//! The lifter's own ordinary range of a marker.

use alloc::vec::Vec;

use super::marker::{Conditions, MarkerReading, value_of};
use crate::error::{Code, Error};
use crate::numeric::{fabs, larger};
use crate::quantity::Day;
use crate::source::{OURS, default_of, formula, rows};
use crate::statistics::robust::{median_of, spread_about};

/// How a baseline is made and read. All of it is this project's choice.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DayOptions {
    /// Most past values used, the newest first.
    pub most_values: u32,
    /// Fewer than this give no baseline.
    pub least_values: u32,
    /// How many spreads below the centre lie below the usual, and above it above.
    pub threshold: f64,
    /// How many markers must agree.
    pub agreeing: u32,
}

impl DayOptions {
    /// 4 to 12 values, 1.5 spreads, two agreeing markers.
    pub const STANDARD: DayOptions =
        DayOptions { most_values: 12, least_values: 4, threshold: 1.5, agreeing: 2 };

    pub(super) fn checked(self) -> Result<DayOptions, Error> {
        let count = |field, value: u32, low: f64, high: f64| {
            crate::numeric::within(Code::OutOfRange, field, f64::from(value), low, high, "").map(|_| ())
        };
        count("least_values", self.least_values, 3.0, 60.0)?;
        count("most_values", self.most_values, f64::from(self.least_values), 60.0)?;
        count("agreeing", self.agreeing, 1.0, 20.0)?;
        crate::numeric::within(Code::OutOfRange, "threshold", self.threshold, 0.5, 4.0, "spreads")?;
        Ok(self)
    }
}

impl Default for DayOptions {
    fn default() -> DayOptions {
        DayOptions::STANDARD
    }
}

default_of! {
    "condition.day_options_default",
    /// How a baseline is made and a day read where a caller names nothing else.
    day_options_default: DayOptions;
    source: OURS, place: "own baseline under equal conditions", standing: OurChoice, seen: NotApplicable,
}

/// What is ordinary for this lifter.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Baseline {
    /// The middle of the values.
    pub centre: f64,
    /// Their scatter, not below the floor.
    pub spread: f64,
    /// How many values.
    pub values: u32,
    /// Whether the floor replaced a narrower scatter.
    pub floored: bool,
}

/// The newest values under equal conditions before today.
fn comparable(
    history: &[MarkerReading],
    conditions: &Conditions,
    today: Day,
    most: u32,
) -> Result<Vec<f64>, Error> {
    let mut past: Vec<(Day, f64)> = Vec::new();
    for reading in history {
        let value = value_of("value", reading.value).map_err(|error| error.within("history"))?;
        if reading.day < today && reading.conditions == *conditions {
            past.push((reading.day, value));
        }
    }
    // Values of one day in the order of their size, so that the order of the list does not matter.
    crate::numeric::sort::sort_by(&mut past, |a, b| b.0.cmp(&a.0).then(a.1.total_cmp(&b.1)));
    Ok(past.into_iter().take(most as usize).map(|(_, value)| value).collect())
}

formula! {
    "condition.baseline",
    /// What is ordinary for this lifter under these conditions?
    ///
    /// # Formula
    /// Median and 1.4826 times the median distance from it, over the newest values under equal conditions before today;
    /// the scatter is not taken below `least_spread`.
    ///
    /// # Domain
    /// 4 to 12 values by default. None where there are fewer, or where all are equal and no floor is given: not enough
    /// history.
    ///
    /// # Errors
    /// `out_of_range` for options outside their ranges, a floor below 0, or values beyond 1e6; `not_finite`.
    ///
    /// # Source
    /// This project's choice (row `condition.baseline`).
    ///
    /// # Examples
    /// ```
    /// use bismar::condition::{Conditions, DayOptions, MarkerReading, baseline};
    /// use bismar::quantity::Day;
    ///
    /// let mut history = Vec::new();
    /// for (day, value) in (1..).zip([7.0, 6.0, 8.0, 7.0, 7.0, 1.0]) {
    ///     history.push(MarkerReading::new(Day::from_number(day)?, value));
    /// }
    /// let today = Day::from_number(10)?;
    /// let found = baseline(&history, &Conditions::default(), today, 0.59, DayOptions::STANDARD)?;
    /// assert_eq!(found.map(|baseline| baseline.centre), Some(7.0)); // the 1 does not move it
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn baseline(
        history: &[MarkerReading],
        conditions: &Conditions,
        today: Day,
        least_spread: f64,
        options: DayOptions
    ) -> Result<Option<Baseline>, Error> {
        let options = options.checked()?;
        let floor = crate::numeric::within(Code::OutOfRange, "least_spread", least_spread, 0.0, 1e6, "")?;
        let values = comparable(history, conditions, today, options.most_values)?;
        if values.len() < options.least_values as usize {
            return Ok(None);
        }
        let Some(centre) = median_of(&values) else { return Ok(None) };
        let scatter = spread_about(&values, centre).unwrap_or(0.0);
        let spread = larger(scatter, floor);
        // Below this the division would only show rounding.
        if spread <= 1e-9 * fabs(centre) || spread <= 0.0 {
            return Ok(None);
        }
        let floored = scatter < floor;
        Ok(Some(Baseline { centre, spread, values: values.len() as u32, floored }))
    }
    source: OURS, place: "own baseline under equal conditions", standing: OurChoice, seen: NotApplicable,
    domain: "4 to 12 values by default",
}

rows![baseline, day_options_default];
