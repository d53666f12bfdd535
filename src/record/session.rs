//! What was done in one training session. What it shows of the place where it was done is judged in `progression/judge.rs`, and a
//! place that it leaves out is found in `progression/asked.rs`.

use alloc::borrow::Cow;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::health::{PainAnswer, one_answer_a_region};
use super::place::Place;
use crate::canonical::{canonical_fields, canonical_kinds};
use crate::error::{Allowed, Code, Error};
use crate::gate::{Mark, Rater, SetMarks};
use crate::quantity::{Length, Mass, Name, Reps, Rir, Rpe};

/// The most lifts in a session and work sets in a lift.
const MOST_LIFTS: usize = 16;
const MOST_SETS: usize = 30;
/// The most people beside the first who mark one set.
const MOST_FURTHER_RATERS: usize = 4;
/// The most words about kit.
pub(crate) const MOST_KIT: usize = 16;

/// One training session: the lifts that were done and how the person was.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Session {
    /// The lifts in the order done, at least one. A day without a lift is no training: what was said on it is a day report, and pain
    /// a pain report.
    pub lifts: Vec<LiftSession>,
    /// Pain during the session. Absent means not asked; a list means asked, and regions not named had none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub pain: Option<Vec<PainAnswer>>,
    /// Minutes from first to last set.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub minutes: Option<u16>,
    /// One rating for the whole session.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub effort: Option<Rpe>,
}

canonical_fields!(Session: lifts, pain, minutes, effort);

impl Session {
    /// These lifts, with nothing asked about pain.
    #[must_use]
    pub fn new(lifts: Vec<LiftSession>) -> Session {
        Session { lifts, pain: None, minutes: None, effort: None }
    }
}

/// One lift of a session.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LiftSession {
    /// Id of the lift.
    pub lift: Name,
    /// Where it was done. Absent means where that day asked for it: as granted, within what a clearance allows, or on an easier
    /// rung where pain or a day below the usual eases a lift of which nothing is lighter. It is resolved when the event is
    /// taken, and kept until the next session. What a plan alone makes easier the log does not say: then the place is written.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub place: Option<Place>,
    /// Height at which it began, as measured: of the bar's centre from the floor or pins, of a box or bench below.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub height: Option<Length>,
    /// Range reached in every repetition that counts, measured as the lift's own list of ranges is.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reached: Option<Length>,
    /// Repetitions that were to be left in reserve, as that day's session said; never taken as fewer than the policy's floor.
    /// Absent means not written down, and what the day asked for without a plan stands in its place: three, four alone without
    /// pins, more where a clearance limits effort, and no less than the policy's number for a step.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reserve_asked: Option<Rir>,
    /// Work sets in order; warm-ups are not recorded here.
    pub sets: Vec<WorkSet>,
    /// How the lift was set up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub setup: Option<Setup>,
    /// The cue last used.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub cue: Option<Name>,
}

canonical_fields!(LiftSession: lift, place, height, reached, reserve_asked, sets, setup, cue);

impl LiftSession {
    /// These work sets of a lift, done as granted.
    #[must_use]
    pub const fn as_granted(lift: Name, sets: Vec<WorkSet>) -> LiftSession {
        LiftSession {
            lift,
            place: None,
            height: None,
            reached: None,
            reserve_asked: None,
            sets,
            setup: None,
            cue: None,
        }
    }
}

/// One work set.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct WorkSet {
    /// The load on the bar.
    pub load: Mass,
    /// Repetitions done; 0 is a failed attempt.
    pub reps: Reps,
    /// How hard it was. Absent means not asked.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub effort: Option<Effort>,
    /// A repetition was tried and missed beyond those done. Absent means that none was told, and not that somebody asked: what a set
    /// shows it shows by the repetitions done and their marks, which are never taken for granted, so that leaving this out makes
    /// no pass of what is none. Told, it is a fail.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub failed: bool,
    /// Technique marks, of as many repetitions as the set has. Absent means not scored, which is never a pass.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub marks: Option<SetMarks>,
    /// Mean velocity of the bar in the fastest repetition, in m/s, where somebody measured it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub velocity: Option<f64>,
    /// Marks of other people who looked at the same set, of as many repetitions. What one of them saw lost counts as lost; nothing better is taken
    /// from them.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub also_marked: Vec<SetMarks>,
}

canonical_fields!(WorkSet: load, reps, effort, failed, marks, velocity, also_marked);

/// How hard a set was, in one of the two ways people say it. The two run opposite ways and are never mixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Effort {
    /// Repetitions in reserve.
    Rir(Rir),
    /// Rating of perceived exertion, 0 to 10.
    Rpe(Rpe),
}

canonical_kinds!(Effort: 0 Rir(reserve), 1 Rpe(rating));

/// Who is by the bar. One answer, so that nobody can be alone with a spotter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum ByTheBar {
    /// Nobody else is in the room.
    Alone,
    /// Somebody is about, and does not spot.
    Others,
    /// Somebody spots.
    Spotter,
}

canonical_kinds!(ByTheBar: 0 Alone, 1 Others, 2 Spotter);

/// How a lift was set up. A change is reported and starts the comparison of sessions anew. What is absent was not said
/// and leaves what was last said.
#[derive(Clone, Debug, Default, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Setup {
    /// Height of the safety pins; absent where there are none or nobody wrote it down.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub pins: Option<Length>,
    /// Who is by the bar; absent means not asked.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub company: Option<ByTheBar>,
    /// Stance, box, shoes, belt, straps, in the coach's words; absent means not said, an empty list means none of them.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub kit: Option<Vec<Name>>,
}

canonical_fields!(Setup: pins, company, kit);

impl Setup {
    /// Nobody and nothing would take the bar. Where nobody said who is by, nothing follows.
    #[must_use]
    pub fn is_unguarded(&self) -> Option<bool> {
        match (self.company, self.pins) {
            (_, Some(_)) => Some(false),
            (Some(company), None) => Some(company == ByTheBar::Alone),
            (None, None) => None,
        }
    }
}

impl Session {
    /// Checks what the parts alone cannot.
    ///
    /// # Errors
    /// `empty_list` without lifts or sets; `too_many` of them; `not_whole` repetitions; `marks_of_other_reps`; `duplicate_lift`; `duplicate_name` where pain of one
    /// region is answered twice.
    pub fn check(&self) -> Result<(), Error> {
        at_most("lifts", self.lifts.len(), MOST_LIFTS)?;
        // It would end a break and stand between a training and its morning, with nothing done.
        if self.lifts.is_empty() {
            return Err(Error::plain(Code::EmptyList, "lifts"));
        }
        one_answer_a_region(self.pain.as_deref().unwrap_or_default())?;
        for (at, lift) in self.lifts.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("lifts[{at}]"));
            lift.check().map_err(inside)?;
            if self.lifts.iter().take(at).any(|earlier| earlier.lift == lift.lift) {
                let rule = Allowed::rule("each lift once a session");
                return Err(inside(Error::new(Code::DuplicateLift, "lift", lift.lift.as_str(), rule)));
            }
        }
        Ok(())
    }
}

impl LiftSession {
    fn check(&self) -> Result<(), Error> {
        at_most("sets", self.sets.len(), MOST_SETS)?;
        if self.sets.is_empty() {
            return Err(Error::plain(Code::EmptyList, "sets"));
        }
        let kit = self.setup.as_ref().and_then(|setup| setup.kit.as_ref());
        at_most("kit", kit.map_or(0, Vec::len), MOST_KIT).map_err(|error| error.within("setup"))?;
        for (number, set) in self.sets.iter().enumerate() {
            set.check().map_err(|error| error.within(&alloc::format!("sets[{number}]")))?;
        }
        Ok(())
    }
}

impl WorkSet {
    /// A set of which only load and repetitions are known.
    #[must_use]
    pub const fn done(load: Mass, reps: Reps) -> WorkSet {
        WorkSet {
            load,
            reps,
            effort: None,
            failed: false,
            marks: None,
            velocity: None,
            also_marked: Vec::new(),
        }
    }

    /// Whether something in it was missed or did not hold.
    pub(crate) fn shows_less(&self) -> bool {
        let lost = |marks: &SetMarks| {
            marks.acceptable.is_some_and(|held| held < marks.reps)
                || marks.marks.iter().any(|each| each.mark == Mark::NotMet)
        };
        self.failed || self.all_marks().any(lost)
    }

    /// Everybody's marks of the set, those that count first.
    pub fn all_marks(&self) -> impl Iterator<Item = &SetMarks> {
        self.marks.iter().chain(&self.also_marked)
    }

    /// The marks with everything in them that anybody else saw lost; none where nobody marked the set.
    pub(crate) fn careful_marks(&self) -> Option<Cow<'_, SetMarks>> {
        let own = self.marks.as_ref();
        if self.also_marked.is_empty() {
            return own.map(Cow::Borrowed);
        }
        let reps = self.reps.halves() / 2;
        let mut worst = own.cloned().unwrap_or_else(|| SetMarks::unscored(reps, Rater::Coach));
        self.also_marked.iter().for_each(|other| worst.take_losses(other));
        Some(Cow::Owned(worst))
    }

    /// The same; of a set that nobody marked, marks that score nothing.
    pub(crate) fn careful_marks_or_unscored(&self) -> Cow<'_, SetMarks> {
        let unscored = || Cow::Owned(SetMarks::unscored(self.reps.halves() / 2, Rater::Coach));
        self.careful_marks().unwrap_or_else(unscored)
    }

    /// Checks what the parts alone cannot.
    pub(crate) fn check(&self) -> Result<(), Error> {
        if !self.reps.is_whole() {
            let rule = Allowed::rule("whole repetitions");
            return Err(Error::new(Code::NotWhole, "reps", self.reps.value(), rule));
        }
        if let Some(velocity) = self.velocity {
            crate::numeric::within(Code::VelocityOutOfDomain, "velocity", velocity, 0.01, 10.0, "m/s")?;
        }
        at_most("also_marked", self.also_marked.len(), MOST_FURTHER_RATERS)?;
        self.check_marked_reps()?;
        let who = |marks: &SetMarks| (marks.rater, marks.rater_id.clone());
        for (at, marks) in self.all_marks().enumerate() {
            if self.all_marks().take(at).any(|earlier| who(earlier) == who(marks)) {
                let rule = Allowed::rule("each person once, by rater and rater_id");
                return Err(Error::new(Code::DuplicateName, "also_marked", at, rule));
            }
        }
        Ok(())
    }
}

impl WorkSet {
    /// Marks of fewer repetitions would pass for the set, and of more they would count for more than was done.
    fn check_marked_reps(&self) -> Result<(), Error> {
        let reps = self.reps.halves() / 2;
        let own = self.marks.iter().map(|marks| ("marks".into(), marks));
        let further = (0..).zip(&self.also_marked);
        let further = further.map(|(at, marks)| (alloc::format!("also_marked[{at}]"), marks));
        for (field, marks) in own.chain(further) {
            if marks.reps != reps {
                let rule = Allowed::Rule(alloc::format!("{reps}, the repetitions of the set").into());
                let error = Error::new(Code::MarksOfOtherReps, "reps", marks.reps, rule);
                return Err(error.within(&field));
            }
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
