//! Sessions that did not happen, and breaks.

use derive_setters::Setters;

use crate::canonical::{canonical_fields, canonical_kinds};
use crate::quantity::{Day, Name};

/// A planned session that did not happen. Missed work is never made up by more load or more sets.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SessionMissed {
    /// Why.
    pub reason: Name,
}

canonical_fields!(SessionMissed: reason);

impl SessionMissed {
    /// Missed for that reason.
    #[must_use]
    pub fn new(reason: Name) -> SessionMissed {
        SessionMissed { reason }
    }
}

/// Why a break happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum LayoffReason {
    /// Holiday, travel, work: well throughout.
    Well,
    /// A planned rest.
    Planned,
    /// Ill in bed, in hospital, an operation or a fracture: needs a clearance and comes back lower. Noted in advance it stops nothing
    /// before its first day, and a clearance given before that day does not answer it.
    Ill,
}

/// A break.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Layoff {
    /// First day of it.
    pub from: Day,
    /// Last day of it, if known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub to: Option<Day>,
    /// Why.
    pub reason: LayoffReason,
}

canonical_kinds!(LayoffReason: 0 Well, 1 Planned, 2 Ill);
canonical_fields!(Layoff: from, to, reason);

impl Layoff {
    /// A break from that day on, its end open.
    #[must_use]
    pub fn new(from: Day, reason: LayoffReason) -> Layoff {
        Layoff { from, to: None, reason }
    }
}
