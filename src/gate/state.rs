//! What a gate answers: open or not, what is met, what is missing and by how much.

use alloc::vec::Vec;

use crate::quantity::{Day, Name};

/// A requirement that is met, with its numbers.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Met {
    /// Enough passing sessions in a row.
    PassingSessions {
        /// In a row up to now.
        have: u32,
        /// Asked for.
        need: u32,
    },
    /// Enough acceptable repetitions to be sure enough.
    Evidence {
        /// Repetitions scored.
        scored: u32,
        /// Missed among them.
        misses: u32,
        /// Misses with which the gate still opens at this number.
        most_misses: u32,
    },
    /// Effort stayed under its cap.
    EffortCap,
    /// No block is open.
    NoOpenBlock,
    /// Enough sessions at the present tuple.
    DwellSessions {
        /// Done.
        have: u32,
        /// Asked for.
        need: u32,
    },
    /// Enough days at the present tuple.
    DwellDays {
        /// Passed.
        have: u32,
        /// Asked for.
        need: u32,
    },
    /// Enough days since the last step up.
    Spacing {
        /// Passed; absent if there was no step up.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        have: Option<u32>,
        /// Asked for.
        need: u32,
    },
    /// The coach has signed off.
    SignOff,
    /// The other lift of the pair stands in no way.
    Pair,
    /// The regions of the lift stand in no way.
    Region,
}

/// What is still missing, with how much of it.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Missing {
    /// Passing sessions in a row, on other days.
    PassingSessions {
        /// In a row up to now.
        have: u32,
        /// Asked for.
        need: u32,
        /// The day on which the run last started again, if it did.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        restarted: Option<Day>,
        /// The criterion to watch: the last one that held worst.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        weakest: Option<Name>,
    },
    /// Acceptable repetitions.
    Evidence {
        /// Repetitions scored up to now.
        scored: u32,
        /// Missed among them.
        misses: u32,
        /// Acceptable repetitions in a row that would open the gate; absent if none would before its end.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        clean_reps: Option<u32>,
    },
    /// The evidence is in and speaks against; the test must be started again, on an easier tuple or by the coach.
    EvidenceAgainst {
        /// The day it ended.
        day: Day,
        /// Repetitions scored by then.
        scored: u32,
        /// Missed among them.
        misses: u32,
    },
    /// Passing sessions on distinct days, in a row or not.
    PassingDays {
        /// Up to now.
        have: u32,
        /// Asked for.
        need: u32,
    },
    /// The last scored session did not pass.
    LastSessionNotPassed {
        /// Its day.
        day: Day,
    },
    /// The answer about the morning after a session that counts.
    NextMorningAnswer {
        /// The day of that session.
        day: Day,
    },
    /// Effort went over its cap, or was not recorded.
    EffortCap {
        /// Whether effort was recorded.
        recorded: bool,
    },
    /// A block is open.
    OpenBlock {
        /// Which.
        name: Name,
    },
    /// Sessions at the present tuple.
    DwellSessions {
        /// Done.
        have: u32,
        /// Asked for.
        need: u32,
    },
    /// Days at the present tuple.
    DwellDays {
        /// Passed.
        have: u32,
        /// Asked for.
        need: u32,
    },
    /// Days since the last step up.
    Spacing {
        /// Passed.
        have: u32,
        /// Asked for.
        need: u32,
    },
    /// The coach's sign-off.
    SignOff,
    /// A condition set by the other lift of the pair.
    Pair {
        /// Which.
        name: Name,
    },
    /// A condition set by a region of the lift.
    Region {
        /// Which.
        name: Name,
    },
    /// Some of several ways; what each of them misses stands beside this.
    Ways {
        /// Open now.
        have: u32,
        /// Asked for.
        need: u32,
        /// There are.
        of: u32,
    },
}

/// Something to know that neither opens nor closes the gate.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Note {
    /// Another person gave the marks within the run; two people agree less than one with himself.
    RaterChanged {
        /// Since this day.
        day: Day,
    },
    /// A session passed but had too few scored repetitions to count toward the run.
    TooFewScored {
        /// Its day.
        day: Day,
        /// Scored.
        scored: u32,
        /// Asked for.
        need: u32,
    },
}

/// The answer of a gate.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GateState {
    /// Whether it is open.
    pub open: bool,
    /// What is met.
    pub met: Vec<Met>,
    /// What is missing; empty if and only if the gate is open.
    pub missing: Vec<Missing>,
    /// What else to know.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub notes: Vec<Note>,
}
