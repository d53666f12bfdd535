//! A session of one lift as the gate needs it.

use super::lift::Now;
use crate::gate::Outcome;
use crate::quantity::Day;

/// The most sessions a lift remembers one by one; older ones at the same place are kept as counts.
pub(crate) const SITTINGS: usize = 12;

/// One session at the current place, as the gate needs it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(from = "SittingLine", into = "SittingLine")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Sitting {
    /// Number of the session's event.
    pub session: u32,
    /// Its day.
    pub day: Day,
    /// What it came to.
    pub outcome: Outcome,
    /// A critical criterion was lost.
    pub critical: bool,
    /// It was a confirmed day below the usual.
    pub below_usual: bool,
    /// The work granted was done: place, load, sets and repetitions.
    pub at_grant: bool,
    /// The next-morning answer was given and raised nothing.
    pub confirmed: bool,
    /// A set left less in reserve than was asked for, or than a step needs at the least.
    pub short_of_reserve: bool,
    /// Nobody said of every set how much was left.
    pub effort_unsaid: bool,
    /// Somebody else than before gave the marks.
    pub other_rater: bool,
    /// A repetition was missed early in the first set or later, and nobody said which: nothing else stood against a pass.
    pub miss_unplaced: bool,
    /// Something that comes before training was open or said that day: it shows nothing, and what it left in reserve counts.
    pub asked_first: bool,
    /// Repetitions scored.
    pub scored: u16,
    /// Repetitions among them that were acceptable.
    pub acceptable: u16,
}

/// A sitting as it is stored: session, day, outcome, flags, scored, acceptable. Short, since there are many.
#[cfg(feature = "serde")]
type SittingLine = (u32, Day, Outcome, u16, u16, u16);

#[cfg(feature = "serde")]
impl From<SittingLine> for Sitting {
    fn from((session, day, outcome, flags, scored, acceptable): SittingLine) -> Sitting {
        let flag = |bit: u16| flags & bit != 0;
        Sitting {
            session,
            day,
            outcome,
            critical: flag(1),
            below_usual: flag(2),
            confirmed: flag(4),
            at_grant: flag(8),
            short_of_reserve: flag(16),
            other_rater: flag(32),
            effort_unsaid: flag(64),
            miss_unplaced: flag(128),
            asked_first: flag(256),
            scored,
            acceptable,
        }
    }
}

#[cfg(feature = "serde")]
impl From<Sitting> for SittingLine {
    fn from(sitting: Sitting) -> SittingLine {
        let flags = [
            sitting.critical,
            sitting.below_usual,
            sitting.confirmed,
            sitting.at_grant,
            sitting.short_of_reserve,
            sitting.other_rater,
            sitting.effort_unsaid,
            sitting.miss_unplaced,
            sitting.asked_first,
        ];
        let flags = flags.into_iter().rev().fold(0, |bits, flag| 2 * bits + u16::from(flag));
        (sitting.session, sitting.day, sitting.outcome, flags, sitting.scored, sitting.acceptable)
    }
}

impl Now {
    /// Keeps a session; older ones at this place become counts.
    pub(crate) fn remember(&mut self, sitting: Sitting) {
        (self.unanswered, self.stepped) = (None, false);
        self.sittings.push(sitting);
        if self.sittings.len() > SITTINGS {
            let oldest = self.sittings.remove(0);
            if oldest.outcome != Outcome::NotScored {
                self.earlier.0 = self.earlier.0.saturating_add(u32::from(oldest.acceptable));
                self.earlier.1 = self.earlier.1.saturating_add(u32::from(oldest.scored));
            }
        }
    }

    /// Whether the last session at this place was the work granted and passed.
    pub(crate) fn last_passed(&self) -> bool {
        self.sittings.last().is_some_and(|last| last.outcome == Outcome::Pass)
    }
}
