//! The lifter of a rehearsal: every chance is stated here, and there are no others.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::week::{TrainingDay, WEEK, check_days};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Mass, Name, Pain};
use crate::record::Parameters;

/// Greatest age of a made-up lifter (our choice: beyond every rule that asks for an age).
const OLDEST: u8 = 100;

/// What a lift is to reach in the rehearsal.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Milestone {
    /// A granted load of at least this.
    Load(Mass),
    /// The rung with that id, or one harder than it.
    Rung(Name),
}

/// How a made-up lifter does one lift. Nothing is learned along the way: the skill stays as stated.
///
/// ```
/// use bismar::{quantity::Name, rehearsal::LiftSkill};
///
/// let skill = LiftSkill::of(Name::new("squat")?, 0.97).with_pain(0.01);
/// assert_eq!((skill.acceptable, skill.critical_fault), (0.97, 0.0));
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LiftSkill {
    /// Id of the lift.
    pub lift: Name,
    /// Chance that an ordinary repetition is acceptable, each by itself.
    pub acceptable: f64,
    /// The same on a confirmed day below the usual; absent means no worse.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub acceptable_below_usual: Option<f64>,
    /// Chance that a session loses the first critical criterion, in its last set.
    #[cfg_attr(feature = "serde", serde(default))]
    pub critical_fault: f64,
    /// Chance that the first region of the lift hurts in a session of it.
    #[cfg_attr(feature = "serde", serde(default))]
    pub pain: f64,
    /// How much it then hurts; absent means 3 of 10.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub pain_score: Option<Pain>,
    /// Chance that the region is worse on the morning after, at 2 of 10, which takes the pass back.
    #[cfg_attr(feature = "serde", serde(default))]
    pub worse_next_morning: f64,
    /// What the lift is to reach.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub milestone: Option<Milestone>,
}

impl LiftSkill {
    /// A lifter whose repetitions are acceptable with this chance, and to whom nothing else happens.
    #[must_use]
    pub const fn of(lift: Name, acceptable: f64) -> LiftSkill {
        LiftSkill {
            lift,
            acceptable,
            acceptable_below_usual: None,
            critical_fault: 0.0,
            pain: 0.0,
            pain_score: None,
            worse_next_morning: 0.0,
            milestone: None,
        }
    }
}

/// A made-up lifter and the weeks of training.
///
/// Beside the chances stated here the rehearsal takes this for granted: every question is asked before every session,
/// pain also in it and on the morning after; the coach marks every repetition and takes every move on the next training
/// day; every set leaves what is prescribed at the place prescribed; clearance is given on the first day and again when it
/// runs out.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SkillModel {
    /// One entry for each lift that is trained.
    pub lifts: Vec<LiftSkill>,
    /// The training days of a week that repeats.
    pub week: Vec<TrainingDay>,
    /// Age in whole years on the first day, at most 100. Absent means unknown, and the rules then take the older.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub age: Option<u8>,
    /// Chance that a training day is a confirmed day below the usual.
    #[cfg_attr(feature = "serde", serde(default))]
    pub below_usual: f64,
    /// Chance that a training day is missed.
    #[cfg_attr(feature = "serde", serde(default))]
    pub missed_session: f64,
    /// Days after a pain stop until a clearance and the coach's sign-off reopen the region; absent means never.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub cleared_after_days: Option<u16>,
}

impl SkillModel {
    /// These skills over that week, with a lifter of unknown age who misses nothing.
    #[must_use]
    pub fn new(lifts: Vec<LiftSkill>, week: Vec<TrainingDay>) -> SkillModel {
        SkillModel { lifts, week, age: None, below_usual: 0.0, missed_session: 0.0, cleared_after_days: None }
    }
}

impl SkillModel {
    /// Refuses what cannot be rehearsed.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite` for a chance or the age; `unknown_lift`, `duplicate_lift`, `empty_list`;
    /// `unknown_name` for a milestone's rung; what [`check_week`](super::check_week) reports of the week.
    pub fn check(&self, parameters: &Parameters) -> Result<(), Error> {
        chance("below_usual", self.below_usual)?;
        chance("missed_session", self.missed_session)?;
        if let Some(age) = self.age.filter(|age| *age > OLDEST) {
            return Err(Error::range(Code::OutOfRange, "age", age, 0.0, f64::from(OLDEST), "years"));
        }
        check_days(parameters, &self.week)?;
        for (at, lift) in self.lifts.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("lifts[{at}]"));
            lift.check(parameters).map_err(inside)?;
            if self.lifts.iter().take(at).any(|earlier| earlier.lift == lift.lift) {
                let name = lift.lift.as_str();
                return Err(inside(Error::new(Code::DuplicateLift, "lift", name, Allowed::Unstated)));
            }
        }
        self.week_has_skills()
    }

    fn week_has_skills(&self) -> Result<(), Error> {
        if self.week.iter().all(|day| day.lifts.is_empty()) {
            return Err(Error::plain(Code::EmptyList, "week"));
        }
        let trained = self.week.iter().flat_map(|day| &day.lifts);
        match trained.into_iter().find(|lift| self.skill(lift).is_none()) {
            None => Ok(()),
            Some(lift) => {
                let rule = Allowed::rule("a lift with a stated skill");
                Err(Error::new(Code::UnknownLift, "week", lift.as_str(), rule))
            }
        }
    }

    pub(super) fn skill(&self, lift: &Name) -> Option<&LiftSkill> {
        self.lifts.iter().find(|skill| skill.lift == *lift)
    }

    /// The lifts of that day, counted from the first; none on a day of rest.
    pub(super) fn lifts_on(&self, day: u32) -> Option<&TrainingDay> {
        let weekday = day % u32::from(WEEK);
        self.week.iter().find(|each| u32::from(each.weekday) == weekday && !each.lifts.is_empty())
    }
}

impl LiftSkill {
    fn check(&self, parameters: &Parameters) -> Result<(), Error> {
        chance("acceptable", self.acceptable)?;
        chance("acceptable_below_usual", self.acceptable_below_usual.unwrap_or(0.0))?;
        chance("critical_fault", self.critical_fault)?;
        chance("pain", self.pain)?;
        chance("worse_next_morning", self.worse_next_morning)?;
        let Some(set) = parameters.lift(&self.lift) else {
            let rule = Allowed::rule("a lift of the parameters");
            return Err(Error::new(Code::UnknownLift, "lift", self.lift.as_str(), rule));
        };
        match &self.milestone {
            Some(Milestone::Rung(rung)) if set.rung_with(rung).is_none() => {
                let rule = Allowed::rule("a rung of the lift");
                Err(Error::new(Code::UnknownName, "milestone", rung.as_str(), rule))
            }
            _ => Ok(()),
        }
    }
}

fn chance(field: &'static str, value: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, field, value, 0.0, 1.0, "chance")
}
