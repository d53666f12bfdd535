//! What a coach plans beyond the coming sessions: lifts to swap, gaps, weighings, loads to keep for later years.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::session::at_most;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Mass, Name};

/// A bar, disc or machine, and when it was last weighed.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Weighing {
    /// Which bar, disc or machine.
    pub equipment: Name,
    /// The day it was last weighed; absent if never.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub on: Option<Day>,
}

impl Weighing {
    /// That equipment, never weighed.
    #[must_use]
    pub fn new(equipment: Name) -> Weighing {
        Weighing { equipment, on: None }
    }
}

/// A lift that is to make room for another before pain forces it.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LiftSwap {
    /// The lift.
    pub lift: Name,
    /// The last day it is planned for.
    pub by: Day,
    /// What takes its place, if known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub replacement: Option<Name>,
}

impl LiftSwap {
    /// That lift ends by that day, with nothing in its place.
    #[must_use]
    pub fn new(lift: Name, by: Day) -> LiftSwap {
        LiftSwap { lift, by, replacement: None }
    }
}

/// Days without training that are known ahead: a journey, an operation, a season.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct PlannedGap {
    /// What the days are for: a journey, an operation.
    pub name: Name,
    /// First day.
    pub from: Day,
    /// Last day.
    pub to: Day,
}

impl PlannedGap {
    /// From that day to that day.
    #[must_use]
    pub fn new(name: Name, from: Day, to: Day) -> PlannedGap {
        PlannedGap { name, from, to }
    }
}

/// A load of a lift that must still be there at a later age.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LoadToKeep {
    /// The lift.
    pub lift: Name,
    /// What it is for: a suitcase, a grandchild, a bag of soil.
    pub name: Name,
    /// The load.
    pub load: Mass,
    /// Until which age, in years.
    pub at_age: u8,
}

impl LoadToKeep {
    /// That load of that lift at that age.
    #[must_use]
    pub fn new(lift: Name, name: Name, load: Mass, at_age: u8) -> LoadToKeep {
        LoadToKeep { lift, name, load, at_age }
    }
}

/// What a coach plans beyond the coming sessions.
#[derive(Clone, Debug, Default, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct YearsAhead {
    /// Lifts to swap.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub swaps: Vec<LiftSwap>,
    /// Planned gaps.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub gaps: Vec<PlannedGap>,
    /// Equipment and when it was last weighed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub weighed: Vec<Weighing>,
    /// Loads to keep for later years.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub keep: Vec<LoadToKeep>,
    /// Body mass is meant to fall.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "core::ops::Not::not"))]
    pub mass_loss_intended: bool,
}

/// The most entries of each list.
const MOST: usize = 64;

impl YearsAhead {
    pub(super) fn check(&self) -> Result<(), Error> {
        at_most("swaps", self.swaps.len(), MOST)?;
        at_most("gaps", self.gaps.len(), MOST)?;
        at_most("weighed", self.weighed.len(), MOST)?;
        at_most("keep", self.keep.len(), MOST)?;
        match self.gaps.iter().position(|gap| gap.to < gap.from) {
            Some(at) => {
                let error =
                    Error::new(Code::IntervalReversed, "to", "before from", Allowed::rule("from <= to"));
                Err(error.within(&alloc::format!("gaps[{at}]")))
            }
            None => Ok(()),
        }
    }
}
