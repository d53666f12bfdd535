//! What was done in one training session.

use alloc::vec::Vec;

use super::health::{PainAnswer, one_answer_a_region};
use crate::error::{Allowed, Code, Error};
use crate::gate::SetMarks;
use crate::quantity::{Length, Mass, Name, Reps, Rir, Rpe};

/// The most lifts in a session and work sets in a lift.
const MOST_LIFTS: usize = 16;
const MOST_SETS: usize = 30;

/// One training session: the lifts that were done and how the person was.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Session {
    /// The lifts in the order done.
    pub lifts: Vec<LiftSession>,
    /// Pain during the session. Absent means not asked; a list means asked, and regions not named had none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pain: Option<Vec<PainAnswer>>,
    /// Minutes from first to last set.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub minutes: Option<u16>,
    /// One rating for the whole session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub effort: Option<Rpe>,
}

/// One lift of a session.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct LiftSession {
    /// Which track.
    pub track: Name,
    /// Work sets in order; warm-ups are not recorded here.
    pub sets: Vec<WorkSet>,
    /// How the lift was set up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub setup: Option<Setup>,
    /// The cue last used.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cue: Option<Name>,
}

/// One work set.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct WorkSet {
    /// The load on the bar.
    pub load: Mass,
    /// Repetitions done; 0 is a failed attempt.
    pub reps: Reps,
    /// How hard it was. Absent means not asked.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub effort: Option<Effort>,
    /// A repetition was tried and missed.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub failed: bool,
    /// Technique marks. Absent means not scored, which is never a pass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub marks: Option<SetMarks>,
}

/// How hard a set was, in one of the two ways people say it. The two run opposite ways and are never mixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Effort {
    /// Repetitions in reserve.
    Rir(Rir),
    /// Rating of perceived exertion, 0 to 10.
    Rpe(Rpe),
}

/// How a lift was set up. A change is reported, since it makes sessions harder to compare.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Setup {
    /// Height of the safety pins; absent where there are none or nobody wrote it down.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub pins: Option<Length>,
    /// Somebody spots.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub spotter: bool,
    /// Nobody else is in the room.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub alone: bool,
    /// Height of the box or blocks.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub support_height: Option<Length>,
    /// Stance, shoes, belt, straps, in the coach's words.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub kit: Vec<Name>,
}

impl Session {
    /// Checks what the parts alone cannot.
    ///
    /// # Errors
    /// `too_many` lifts or sets; `not_whole` repetitions; `duplicate_track`; `duplicate_name` where pain of one
    /// region is answered twice.
    pub fn check(&self) -> Result<(), Error> {
        at_most("lifts", self.lifts.len(), MOST_LIFTS)?;
        one_answer_a_region(self.pain.as_deref().unwrap_or_default())?;
        for (at, lift) in self.lifts.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("lifts[{at}]"));
            at_most("sets", lift.sets.len(), MOST_SETS).map_err(inside)?;
            if lift.sets.is_empty() {
                return Err(inside(Error::plain(Code::EmptyList, "sets")));
            }
            if self.lifts.iter().take(at).any(|earlier| earlier.track == lift.track) {
                let rule = Allowed::rule("each lift once a session");
                return Err(inside(Error::new(Code::DuplicateTrack, "track", lift.track.as_str(), rule)));
            }
            for (number, set) in lift.sets.iter().enumerate() {
                set.check().map_err(|error| inside(error.within(&alloc::format!("sets[{number}]"))))?;
            }
        }
        Ok(())
    }
}

impl WorkSet {
    fn check(&self) -> Result<(), Error> {
        if !self.reps.is_whole() {
            let rule = Allowed::rule("whole repetitions");
            return Err(Error::new(Code::NotWhole, "reps", self.reps.value(), rule));
        }
        Ok(())
    }
}

/// Refuses a list that is longer than its stated limit.
pub(crate) fn at_most(field: &'static str, length: usize, most: usize) -> Result<(), Error> {
    if length <= most {
        Ok(())
    } else {
        Err(Error::range(Code::TooMany, field, length, 0.0, most as f64, ""))
    }
}
