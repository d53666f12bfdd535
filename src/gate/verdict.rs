//! What a set or a session came to, and every reason why.

use alloc::vec::Vec;

use crate::quantity::Name;

/// Outcome of a set or a session.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Outcome {
    /// Passed.
    Pass,
    /// Did not pass, whatever was not seen.
    Fail,
    /// Too little was seen to say; neither a pass nor a fail.
    NotScored,
}

/// Why a set or a session did not pass. Work sets are numbered from 1.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PassReason {
    /// There was no work set.
    NoWorkSet,
    /// Nobody counted acceptable repetitions in this set, or none was done.
    SetNotScored {
        /// Work set.
        set: u8,
    },
    /// Only the lifter marked this set, and the rules do not count that.
    LifterMarksOnly {
        /// Work set.
        set: u8,
    },
    /// A critical criterion was lost.
    CriticalNotMet {
        /// Work set.
        set: u8,
        /// Which criterion.
        criterion: Name,
    },
    /// A critical criterion was borderline.
    CriticalBorderline {
        /// Work set.
        set: u8,
        /// Which criterion.
        criterion: Name,
    },
    /// A critical criterion was not seen in a set in which it is judged.
    CriticalNotSeen {
        /// Work set.
        set: u8,
        /// Which criterion.
        criterion: Name,
    },
    /// A criterion was seen in none of the sets.
    CriterionNotSeen {
        /// Which criterion.
        criterion: Name,
    },
    /// A repetition was missed among the first of the first work set, where none may be.
    EarlyMiss {
        /// First failing repetition, where it was recorded.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        rep: Option<u16>,
        /// Repetitions that had to be clean.
        clean: u16,
    },
    /// The first work set had a miss and nobody recorded where; it may have been among the first repetitions.
    EarlyMissPossible {
        /// Repetitions that had to be clean.
        clean: u16,
    },
    /// More repetitions were missed in the first work set than it may have by itself.
    FirstSetMisses {
        /// Missed.
        misses: u32,
        /// Allowed.
        allowed: u32,
    },
    /// More repetitions were missed than allowed.
    TooManyMisses {
        /// Missed.
        misses: u32,
        /// Allowed.
        allowed: u32,
    },
    /// Pain was up the next morning, or an equal answer before the next session: the pass is taken back.
    NextMorningFlare,
}

impl PassReason {
    /// Whether it fails the session, or only leaves it unscored.
    #[must_use]
    pub const fn outcome(&self) -> Outcome {
        match self {
            PassReason::NoWorkSet
            | PassReason::SetNotScored { .. }
            | PassReason::LifterMarksOnly { .. }
            | PassReason::CriticalNotSeen { .. }
            | PassReason::CriterionNotSeen { .. }
            | PassReason::EarlyMissPossible { .. } => Outcome::NotScored,
            _ => Outcome::Fail,
        }
    }

    /// Whether it is the loss of a critical criterion, which counts on every kind of day.
    #[must_use]
    pub const fn is_critical(&self) -> bool {
        matches!(self, PassReason::CriticalNotMet { .. })
    }
}

/// A pass needs no reason against it; one failing reason fails; otherwise it stays unscored.
pub(super) fn outcome_of(reasons: &[PassReason]) -> Outcome {
    if reasons.iter().any(|reason| reason.outcome() == Outcome::Fail) {
        Outcome::Fail
    } else if reasons.is_empty() {
        Outcome::Pass
    } else {
        Outcome::NotScored
    }
}

/// What one work set came to.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SetVerdict {
    /// Pass, fail or not scored.
    pub passed: Outcome,
    /// Passed, but with a missed repetition or a mark that was not met.
    pub marginal: bool,
    /// A critical criterion was lost.
    pub critical_fail: bool,
    /// Missed repetitions, where they were counted.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub misses: Option<u32>,
    /// Misses allowed in this set by itself.
    pub misses_allowed: u32,
    /// First repetition that was not acceptable.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub first_failing_rep: Option<u16>,
    /// The criterion that held worst, if any did not hold.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub weakest: Option<Name>,
    /// Everything that stands against a pass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub reasons: Vec<PassReason>,
}

/// A repetition that was not acceptable.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FailingRep {
    /// Work set, 1 being the first.
    pub set: u8,
    /// Repetition, 1 being the first of the set.
    pub rep: u16,
}

/// What a session came to.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SessionVerdict {
    /// Pass, fail or not scored.
    pub passed: Outcome,
    /// A critical criterion was lost; counts on every kind of day.
    pub critical_fail: bool,
    /// Acceptable repetitions among those scored.
    pub acceptable: u32,
    /// Repetitions scored by somebody whose marks count.
    pub scored: u32,
    /// Misses allowed among those scored.
    pub misses_allowed: u32,
    /// The criterion that held worst over all sets, if any did not hold.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub weakest: Option<Name>,
    /// The first repetition of the session recorded as not acceptable.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub first_failing: Option<FailingRep>,
    /// Everything that stands against a pass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub reasons: Vec<PassReason>,
}

impl SessionVerdict {
    /// The same session after a flare the next morning: its pass is taken back and it counts as failed.
    #[must_use]
    pub fn retracted(mut self) -> SessionVerdict {
        if !self.reasons.contains(&PassReason::NextMorningFlare) {
            self.reasons.push(PassReason::NextMorningFlare);
        }
        self.passed = outcome_of(&self.reasons);
        self
    }
}
