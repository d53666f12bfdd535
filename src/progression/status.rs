//! Where a lift stands in its course, with whatever belongs to standing there.

use alloc::vec::Vec;

use crate::quantity::{Day, Mass, Name};
use crate::reason::SignOffRefusal;

/// A way back after a break or a stop.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WayBack {
    /// Granted load before it; the way back never goes past.
    pub cap: Mass,
    /// Row of the layoff table that it began with, 1 being the shortest.
    pub row: u8,
    /// Days of the break; 0 after a stop.
    pub gap: u16,
    /// These are days of lighter work, not days without any.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub held: bool,
    /// Load from which a step back was taken on it last.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub stepped_from: Option<Mass>,
    /// Day on which the stop that it comes back from was lifted.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reopened: Option<Day>,
    /// An illness was part of what it comes back from.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub after_illness: bool,
    /// The first row alone gives the load back after one pass; on this way it does not either.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub no_restoring: bool,
}

impl WayBack {
    /// A way back on which nothing else is to be told.
    #[must_use]
    pub const fn new(cap: Mass, row: u8, gap: u16) -> WayBack {
        let (stepped_from, reopened) = (None, None);
        WayBack {
            cap,
            row,
            gap,
            held: false,
            stepped_from,
            reopened,
            after_illness: false,
            no_restoring: false,
        }
    }

    /// Whether one pass gives the load before it back, as after the shortest break.
    #[must_use]
    pub(crate) const fn restores(&self) -> bool {
        self.row == 1 && !self.no_restoring
    }

    /// The rows up to this one say what is to be learned again: after a stop no fewer than two, whatever break is told.
    #[must_use]
    pub(crate) const fn row_asked(&self) -> u8 {
        if self.reopened.is_some() && self.row < 2 { 2 } else { self.row }
    }
}

/// State of a lift. Holding is the ordinary, successful state; it may last for months.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Status {
    /// Calibration on a new lift or rung.
    Learning,
    /// The right place; the load stays until the gate opens.
    Holding,
    /// The gate is open and a move waits to be taken.
    ReadyToAdvance {
        /// Last session that earned it.
        since: Day,
    },
    /// The first sessions after a move.
    Consolidating,
    /// One step easier, to look again.
    SteppingBack {
        /// Load before the step, where the load was lowered.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        from: Option<Mass>,
        /// Passes since.
        passes: u8,
    },
    /// A planned break; one that came on the way back leads there again.
    Resting {
        /// The way back that it interrupts.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        way: Option<WayBack>,
    },
    /// Coming back after a break or a stop, never past the load before it.
    Returning {
        /// From where, and how far.
        way: WayBack,
        /// Passes since.
        passes: u8,
    },
    /// Kept where it is on purpose.
    Maintaining,
    /// Stopped by pain or a symptom until a clearance and the coach's sign-off.
    StoppedRefer {
        /// The way back that it interrupts.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        way: Option<WayBack>,
    },
    /// No longer used.
    Retired,
}

impl Status {
    /// The stable names of all states.
    pub const NAMES: [&'static str; 10] = [
        "learning",
        "holding",
        "ready_to_advance",
        "consolidating",
        "stepping_back",
        "resting",
        "returning",
        "maintaining",
        "stopped_refer",
        "retired",
    ];

    /// The stable name.
    #[must_use]
    pub const fn as_str(&self) -> &'static str {
        match self {
            Status::Learning => "learning",
            Status::Holding => "holding",
            Status::ReadyToAdvance { .. } => "ready_to_advance",
            Status::Consolidating => "consolidating",
            Status::SteppingBack { .. } => "stepping_back",
            Status::Resting { .. } => "resting",
            Status::Returning { .. } => "returning",
            Status::Maintaining => "maintaining",
            Status::StoppedRefer { .. } => "stopped_refer",
            Status::Retired => "retired",
        }
    }

    /// Whether sessions of the lift are judged toward its course.
    #[must_use]
    pub const fn is_trained(&self) -> bool {
        !matches!(self, Status::StoppedRefer { .. } | Status::Retired)
    }

    /// Whether it is stopped.
    #[must_use]
    pub const fn is_stopped(&self) -> bool {
        matches!(self, Status::StoppedRefer { .. })
    }

    /// Whether a move or a step back has still to be seen to hold.
    #[must_use]
    pub const fn is_to_be_seen(&self) -> bool {
        matches!(self, Status::Consolidating | Status::SteppingBack { .. })
    }

    /// Whether a move waits to be taken.
    #[must_use]
    pub const fn is_ready(&self) -> bool {
        matches!(self, Status::ReadyToAdvance { .. })
    }

    /// The way back that is under way, interrupted or not.
    #[must_use]
    pub const fn way_back(&self) -> Option<WayBack> {
        match self {
            Status::Returning { way, .. } => Some(*way),
            Status::Resting { way } | Status::StoppedRefer { way } => *way,
            _ => None,
        }
    }

    /// Passes of a return or a step back count anew.
    pub(crate) const fn forget_passes(&mut self) {
        if let Status::Returning { passes, .. } | Status::SteppingBack { passes, .. } = self {
            *passes = 0;
        }
    }

    pub(crate) fn way_back_mut(&mut self) -> Option<&mut WayBack> {
        match self {
            Status::Returning { way, .. } => Some(way),
            Status::Resting { way } | Status::StoppedRefer { way } => way.as_mut(),
            _ => None,
        }
    }
}

/// What a lift is for in this block, with the band of a lift that is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Purpose {
    /// To be learned or advanced through its gate.
    Train,
    /// Deliberately kept where it is.
    Maintain {
        /// Down to this load it is on plan.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        not_below: Option<Mass>,
    },
    /// Not trained for now.
    Rest,
    /// No longer used.
    Retire,
}

impl Purpose {
    /// Whether it keeps the lift out of use.
    pub(crate) const fn is_unused(self) -> bool {
        matches!(self, Purpose::Rest | Purpose::Retire)
    }
}

/// Sessions of calibration: on how many days they were done, and how many are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Calibration {
    /// Days with a session.
    pub done: u8,
    /// Days asked for.
    pub needed: u8,
}

impl Calibration {
    pub(crate) const fn of(needed: u8) -> Calibration {
        Calibration { done: 0, needed }
    }

    /// One more day with a session.
    pub(crate) const fn count_day(&mut self) {
        self.done = self.done.saturating_add(1);
    }

    /// Whether days are still to come.
    #[must_use]
    pub const fn is_open(self) -> bool {
        self.left() > 0
    }

    /// How many days are still to come.
    pub(crate) const fn left(self) -> u8 {
        self.needed.saturating_sub(self.done)
    }
}

/// A stop that only a clearance and a sign-off lift.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Stop {
    /// When.
    pub since: Day,
    /// Number under which what stops was told last: of an event, or of the correction that says it. A clearance or a sign-off
    /// of a lower number was given before, and lifts nothing of it.
    pub told: u32,
    /// Signs that stopped; none for pain or for a clearance that was refused.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub signs: Vec<crate::sign::StopSign>,
    /// What came with the pain that stopped, where that was said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub features: Vec<crate::sign::PainFeature>,
    /// A clearance was given since.
    pub cleared: bool,
    /// The coach signed off since.
    pub signed: bool,
    /// Day of the coach's last sign-off, where it did not count, and why.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub refused: Option<(Day, SignOffRefusal)>,
}

impl Stop {
    pub(crate) const fn new(since: Day, told: u32, signs: Vec<crate::sign::StopSign>) -> Stop {
        Stop { since, told, signs, features: Vec::new(), cleared: false, signed: false, refused: None }
    }

    /// Takes a sign-off: it counts, or is kept as refused.
    pub(crate) fn sign(&mut self, refused: Option<SignOffRefusal>, on: Day) {
        self.signed = refused.is_none();
        self.refused = refused.map(|why| (on, why));
    }

    /// Whether both have been given.
    pub(crate) const fn is_lifted(&self) -> bool {
        self.cleared && self.signed
    }
}

/// An override in force.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct OverrideInForce {
    /// Load allowed by it.
    pub load: Mass,
    /// Last day it holds.
    pub expires: Day,
    /// Who.
    pub who: Name,
    /// Its event.
    pub event: u32,
    /// It asked for no more than was granted when it was given, and asks for no more ever since.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub eases: bool,
}
