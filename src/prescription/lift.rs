//! One lift of today's session.

use alloc::vec::Vec;

use super::change::Change;
use super::warm_up::WarmUpSet;
use crate::caution::Caution;
use crate::gate::GateState;
use crate::loading::Loaded;
use crate::progression::{MoveOutlook, Status};
use crate::quantity::{Length, Mass, Name, Rir};
use crate::reason::Reason;
use crate::record::{Grant, Place};

/// What to do with a lift today, from the lightest intervention to the gravest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Verdict {
    /// Train as granted.
    Train,
    /// Train, with less.
    EaseOff,
    /// Technique only, light.
    TechniqueOnly,
    /// Leave it out today.
    Rest,
    /// Stop: nothing until what stopped it is lifted.
    Stop,
}

impl Verdict {
    /// The stable name.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Verdict::Train => "train",
            Verdict::EaseOff => "ease_off",
            Verdict::TechniqueOnly => "technique_only",
            Verdict::Rest => "rest",
            Verdict::Stop => "stop",
        }
    }
}

/// One lift of today's session, with everything that made it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LiftToday {
    /// Id of the lift.
    pub lift: Name,
    /// What to do.
    pub verdict: Verdict,
    /// State of the lift.
    pub status: Status,
    /// The granted place and work.
    pub granted: Grant,
    /// Highest load granted for today.
    pub limit: Mass,
    /// Where today's work is done: the granted place, within what a clearance allows, or an easier rung of it.
    pub place: Place,
    /// Height of the bar's centre at the start, where the lift begins from the floor or from pins.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub height: Option<Length>,
    /// Work load; none where nothing is lifted, or nothing can be loaded.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub load: Option<Mass>,
    /// How the load is made.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub loaded: Option<Loaded>,
    /// Blocks under each end of the bar, where they hold the height.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub blocks: Option<Length>,
    /// Work sets.
    pub sets: u8,
    /// Repetitions a set.
    pub reps: u8,
    /// Repetitions to leave in reserve.
    pub reserve: Rir,
    /// Warm-up sets.
    pub warm_up: Vec<WarmUpSet>,
    /// Every reason, in the order in which the stages spoke.
    pub reasons: Vec<Reason>,
    /// Whether the lift may move up, and what stands in the way.
    pub outlook: MoveOutlook,
    /// What the gate has and what it misses.
    pub gate: GateState,
    /// What would change the answer.
    pub would_change: Vec<Change>,
    /// Events that the gate counts.
    pub evidence: Vec<u32>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}
