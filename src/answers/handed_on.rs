//! What is in force, and what was done last: parts of a handover.

use alloc::string::String;
use alloc::vec::Vec;

use crate::gate::Outcome;
use crate::quantity::{Day, Mass, Name, Pain};
use crate::reason::{NamedPlace, Shortfall};
use crate::record::WorkSet;
use crate::sign::{PainFeature, StopSign};

/// A stop in force by a sign or by pain, and what of its reopening is there.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StopNow {
    /// The region; absent where everything is stopped.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub region: Option<Name>,
    /// Since when.
    pub since: Day,
    /// Signs that stopped; none for pain or for a clearance that was refused.
    pub signs: Vec<StopSign>,
    /// What came with the pain that stopped, where that was said.
    pub features: Vec<PainFeature>,
    /// A clearance was given since.
    pub cleared: bool,
    /// The coach signed off since.
    pub signed: bool,
}

/// What is known of pain in a region.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct PainNow {
    /// Where.
    pub region: Name,
    /// The last score, and its day.
    pub last: (Day, Pain),
    /// The level agreed as usual, and when; absent where none was agreed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub usual: Option<(Day, Pain)>,
    /// Training days without more pain than usual still to come before a step.
    pub clear_needed: u8,
    /// Rising over three training days, or high on three: a clinician should look at it.
    pub persists: bool,
}

/// An override in force, with what was said.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct OverrideNow {
    /// Load allowed by it.
    pub load: Mass,
    /// Last day it holds.
    pub until: Day,
    /// It allows more than is granted, and waits: after a break, a stop or a step back, while away, with pain, an open or unasked
    /// question, a day not known or below the usual, an event not understood, or alone without pins.
    pub waits: bool,
    /// Who gave it.
    pub who: Name,
    /// Why.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub why: Option<String>,
}

/// The last session of a lift.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LastDone {
    /// Its day.
    pub day: Day,
    /// Number of its event.
    pub event: u32,
    /// Where it was done.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub place: Option<NamedPlace>,
    /// The work sets.
    pub sets: Vec<WorkSet>,
    /// What it came to for the gate; absent where it counted toward nothing.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub outcome: Option<Outcome>,
    /// In what it fell short of the work granted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub short: Option<Shortfall>,
    /// The cue last used.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub cue: Option<Name>,
    /// What was written beside it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub note: Option<String>,
}
