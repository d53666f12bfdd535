//! A range with a level.

use crate::error::{Code, Error};
use crate::numeric;

/// A lower and an upper end, and the probability the method aims at (0.95 for 95 %).
///
/// Invariant: all finite, `low <= high`, level above 0 and below 1.
///
/// ```
/// use bismar::quantity::Interval;
///
/// let interval = Interval::new(70.0, 78.0, 0.95)?;
/// assert!(interval.contains(74.0));
/// assert!(Interval::new(78.0, 70.0, 0.95).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct Interval {
    low: f64,
    high: f64,
    level: f64,
}

impl Interval {
    /// An interval.
    ///
    /// # Errors
    /// `not_finite`; `interval_reversed`; `overflow` for ends so far apart that the width is no `f64`;
    /// `out_of_range` for a level outside 0 to 1.
    pub fn new(low: f64, high: f64, level: f64) -> Result<Interval, Error> {
        let low = numeric::finite("low", low)?;
        let high = numeric::finite("high", high)?;
        let level = level_between(level)?;
        if low > high {
            return Err(Error::new(
                Code::IntervalReversed,
                "low",
                low,
                crate::error::Allowed::rule("low <= high"),
            ));
        }
        if !(high - low).is_finite() {
            return Err(Error::plain(Code::Overflow, "high"));
        }
        Ok(Interval { low, high, level })
    }

    /// Lower end.
    #[must_use]
    pub const fn low(&self) -> f64 {
        self.low
    }

    /// Upper end.
    #[must_use]
    pub const fn high(&self) -> f64 {
        self.high
    }

    /// The probability the method aims at.
    #[must_use]
    pub const fn level(&self) -> f64 {
        self.level
    }

    /// Upper end less lower end.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.high - self.low
    }

    /// Whether the value lies inside or on an end.
    #[must_use]
    pub fn contains(&self, value: f64) -> bool {
        self.low <= value && value <= self.high
    }
}

/// A level strictly between 0 and 1.
pub(crate) fn level_between(level: f64) -> Result<f64, Error> {
    let level = numeric::within(Code::OutOfRange, "level", level, 0.0, 1.0, "")?;
    if level > 0.0 && level < 1.0 {
        Ok(level)
    } else {
        Err(Error::range(Code::OutOfRange, "level", level, 0.0, 1.0, "(ends excluded)"))
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! `{ "low": 70, "high": 78, "level": 0.95 }` in and out.
    use super::Interval;
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "Interval")]
    pub(super) struct Wire {
        low: f64,
        high: f64,
        level: f64,
    }

    impl<'de> Deserialize<'de> for Interval {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Interval, D::Error> {
            let wire = Wire::deserialize(from)?;
            Interval::new(wire.low, wire.high, wire.level).map_err(de::Error::custom)
        }
    }
}
