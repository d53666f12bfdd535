//! Sessions that did not happen, and breaks.

use crate::quantity::{Day, Name};

/// A planned session that did not happen. Missed work is never made up by more load or more sets.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SessionMissed {
    /// Why.
    pub reason: Name,
}

/// Why a break happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum LayoffReason {
    /// Holiday, travel, work: well throughout.
    Well,
    /// A planned rest.
    Planned,
    /// Ill in bed, in hospital, an operation or a fracture: needs a clearance and comes back lower.
    Ill,
}

/// A break.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Layoff {
    /// First day of it.
    pub from: Day,
    /// Last day of it, if known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub to: Option<Day>,
    /// Why.
    pub reason: LayoffReason,
}
