//! A range that claims no probability.

use crate::error::{Allowed, Code, Error};
use crate::numeric;

/// A lower and an upper figure, and one between where the source gives it.
///
/// What published studies span, or both sexes, or a fast and a slow course. It claims no probability; where one is
/// claimed, [`Interval`](crate::quantity::Interval) is used.
///
/// Invariant: all finite, `low <= middle <= high`.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct Band {
    low: f64,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    middle: Option<f64>,
    high: f64,
}

impl Band {
    /// A range.
    ///
    /// # Errors
    /// `not_finite`; `interval_reversed` unless `low <= middle <= high`.
    pub fn new(low: f64, middle: Option<f64>, high: f64) -> Result<Band, Error> {
        let low = numeric::finite("low", low)?;
        let high = numeric::finite("high", high)?;
        let middle = middle.map(|middle| numeric::finite("middle", middle)).transpose()?;
        let ordered = low <= high && middle.is_none_or(|middle| low <= middle && middle <= high);
        if ordered {
            Ok(Band { low, middle, high })
        } else {
            Err(Error::new(Code::IntervalReversed, "low", low, Allowed::rule("low <= middle <= high")))
        }
    }

    /// The range that the figures span; the middle figure is spanned too.
    pub(super) fn around(figures: &[f64], middle: Option<f64>) -> Result<Band, Error> {
        let mut all = figures.iter().copied().chain(middle);
        let Some(first) = all.next() else { return Err(Error::plain(Code::NotEnoughData, "band")) };
        let (low, high) = all.fold((first, first), |(low, high), figure| {
            (numeric::smaller(low, figure), numeric::larger(high, figure))
        });
        Band::new(low, middle, high)
    }

    /// The same range after a function that keeps or reverses the order.
    pub(super) fn map(self, function: impl Fn(f64) -> f64) -> Result<Band, Error> {
        Band::around(&[function(self.low), function(self.high)], self.middle.map(&function))
    }

    /// Lower figure.
    #[must_use]
    pub const fn low(&self) -> f64 {
        self.low
    }

    /// Figure between, where the source gives one.
    #[must_use]
    pub const fn middle(&self) -> Option<f64> {
        self.middle
    }

    /// Upper figure.
    #[must_use]
    pub const fn high(&self) -> f64 {
        self.high
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! `{ "low": 70, "middle": 74, "high": 78 }` in and out.
    use super::Band;
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "Band")]
    pub(super) struct Wire {
        low: f64,
        #[serde(default)]
        middle: Option<f64>,
        high: f64,
    }

    impl<'de> Deserialize<'de> for Band {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Band, D::Error> {
            let wire = Wire::deserialize(from)?;
            Band::new(wire.low, wire.middle, wire.high).map_err(de::Error::custom)
        }
    }
}
