//! Daily loads: recorded, rested, or not recorded - which are three different things.

use crate::error::{Code, Error};
use crate::numeric;

/// A load total of zero or more in a unit that the caller keeps to (arbitrary units, kg, sets).
///
/// Invariant: finite, from 0 to 10^9, never `-0.0`.
///
/// ```
/// use bismar::dose::LoadTotal;
///
/// assert_eq!(LoadTotal::new(420.0)?.value(), 420.0);
/// assert!(LoadTotal::new(-1.0).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "f64", into = "f64", extend("minimum" = 0, "maximum" = 1_000_000_000)))]
pub struct LoadTotal(f64);

/// No training day comes near it; beyond lies a mistaken unit.
const LARGEST: f64 = 1e9;

impl LoadTotal {
    /// A load total.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` below 0 or above 10^9.
    pub fn new(load: f64) -> Result<LoadTotal, Error> {
        numeric::within(Code::OutOfRange, "load", load, 0.0, LARGEST, "").map(LoadTotal)
    }

    /// The number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// What is known of a day's load (or a week's).
///
/// A day without an entry is not a rest day: a rested day counts as 0, a day that was not recorded makes every
/// total over it unknown.
///
/// ```
/// use bismar::dose::DailyLoad;
///
/// assert_eq!(DailyLoad::Rested.value(), Some(0.0));
/// assert_eq!(DailyLoad::NotRecorded.value(), None);
/// assert_eq!(DailyLoad::recorded(300.0)?.value(), Some(300.0));
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum DailyLoad {
    /// Trained, with this total.
    Recorded(LoadTotal),
    /// Known to have had no training: 0.
    Rested,
    /// Nobody wrote it down.
    NotRecorded,
}

impl DailyLoad {
    /// A recorded total.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` below 0 or above 10^9.
    pub fn recorded(load: f64) -> Result<DailyLoad, Error> {
        LoadTotal::new(load).map(DailyLoad::Recorded)
    }

    /// The load, 0 when rested, none when not recorded.
    #[must_use]
    pub const fn value(self) -> Option<f64> {
        match self {
            DailyLoad::Recorded(load) => Some(load.0),
            DailyLoad::Rested => Some(0.0),
            DailyLoad::NotRecorded => None,
        }
    }
}

/// All loads as numbers, or `day_not_recorded` naming the first gap.
pub(super) fn complete(days: &[DailyLoad]) -> Result<alloc::vec::Vec<f64>, Error> {
    days.iter().enumerate().map(|(at, day)| day.value().ok_or_else(|| not_recorded(at))).collect()
}

/// The error for a day that nobody wrote down.
pub(super) fn not_recorded(at: usize) -> Error {
    let rule = crate::error::Allowed::rule("recorded, or known to be rested");
    Error::new(Code::DayNotRecorded, "", crate::error::Given::Nothing, rule)
        .within(&alloc::format!("days[{at}]"))
}

#[cfg(feature = "serde")]
mod wire {
    //! Plain numbers in and out.
    use super::LoadTotal;
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    impl Serialize for LoadTotal {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.value().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for LoadTotal {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<LoadTotal, D::Error> {
            LoadTotal::new(f64::deserialize(from)?).map_err(de::Error::custom)
        }
    }
}
