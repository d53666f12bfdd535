//! What the lift's rule alone asks for after a set.

use alloc::vec::Vec;

use super::super::evidence::reserve_of_set;
use super::answer::SetReason;
use crate::error::Error;
use crate::one_rm::{CurveForm, Equation};
use crate::prescription::{
    NextStep, PART_PER_POINT, back_off_load, double_progression, knight_1979, next_set_by_curve,
    next_set_by_own_curve, next_set_fixed, stop_at_target_effort,
};
use crate::quantity::{Mass, Reps, Rir, Rpe};
use crate::record::{Effort, SetRule, WorkSet};

/// More repetitions in reserve than these are called too loosely: they are reckoned as these (our choice).
const MOST_RESERVE: Rir = Rir::whole(4);

/// What a rule asks for.
pub(super) enum Asked {
    /// The same load.
    Same,
    /// That load; whether it may go up is not for the rule to say.
    Load(Mass),
    /// One step less.
    StepDown,
    /// The end of the lift.
    Stop,
}

/// What is known of the lifter beside the sets.
#[derive(Clone, Copy)]
pub(super) struct Own {
    /// Form and slope of the own curve, where there is enough of one.
    pub(super) curve: Option<(CurveForm, f64)>,
    /// What is moved beside the load: the body, where the load is help; none where nobody was weighed.
    pub(super) body: Option<Mass>,
}

impl Own {
    /// Rows of the registry that the answer of that rule comes from; technique comes before every rule.
    pub(super) fn sources(&self, rule: &SetRule) -> Vec<&'static str> {
        let of_rule: &[&str] = match rule {
            SetRule::TechniqueStop => &[],
            SetRule::OwnCurve if self.curve.is_some() => &["one_rm.own_curve"],
            SetRule::OwnCurve => &["prescription.next_set_by_curve", "one_rm.epley_1985"],
            SetRule::FixedPerPoint { part: None } => {
                &["prescription.next_set_fixed", "prescription.part_per_point"]
            }
            SetRule::FixedPerPoint { part: Some(_) } => &["prescription.next_set_fixed"],
            SetRule::DoubleProgression { .. } => &["prescription.double_progression"],
            SetRule::RepetitionTable => &["prescription.knight_1979"],
            SetRule::StopAtEffort { .. } => &["prescription.stop_at_target_effort"],
            SetRule::BackOff { .. } => &["prescription.back_off_load", "prescription.stop_at_target_effort"],
        };
        of_rule.iter().copied().chain(["prescription.technique_stop"]).collect()
    }
}

/// What a rule looks at.
pub(super) struct AfterSet<'a> {
    /// The sets so far, the last of them apart.
    pub(super) before: &'a [WorkSet],
    pub(super) last: &'a WorkSet,
    /// Repetitions to leave in reserve.
    pub(super) asked: Rir,
    pub(super) own: Own,
    /// The highest rating that holds today, where less in reserve is not allowed.
    pub(super) highest: Option<Rpe>,
}

/// The rating that was said, or the one that stands for the reserve that was said.
fn rating(effort: Effort) -> Option<Rpe> {
    match effort {
        Effort::Rpe(rating) => Some(rating),
        // A half repetition counts as none, which is the harder reading.
        Effort::Rir(left) => Rpe::from_reserve(Rir::whole(u8::try_from(left.halves() / 2).ok()?)),
    }
}

impl AfterSet<'_> {
    /// What that rule asks for, and why.
    pub(super) fn asked(&self, rule: &SetRule) -> Result<(Asked, Vec<SetReason>), Error> {
        match *rule {
            SetRule::TechniqueStop => Ok((Asked::Same, alloc::vec![SetReason::ByTechnique])),
            SetRule::OwnCurve => self.by_effort(|left| self.on_curve(left), self.own.curve.is_some()),
            SetRule::FixedPerPoint { part } => {
                let part = part.unwrap_or(PART_PER_POINT);
                self.by_effort(|left| self.per_point(left, part), false)
            }
            SetRule::DoubleProgression { bottom, top } => self.in_range(bottom, top),
            SetRule::RepetitionTable => self.by_table(),
            SetRule::StopAtEffort { rating } => Ok(self.until(self.no_harder_than(rating))),
            SetRule::BackOff { reduction, rating } => self.back_off(reduction, self.no_harder_than(rating)),
        }
    }

    /// A rule may ask for a rating that the day does not allow.
    fn no_harder_than(&self, rating: Rpe) -> Rpe {
        self.highest.map_or(rating, |highest| highest.min(rating))
    }

    fn by_effort(
        &self,
        load: impl Fn(Rir) -> Result<Option<(Mass, f64)>, Error>,
        own_curve: bool,
    ) -> Result<(Asked, Vec<SetReason>), Error> {
        let Some(left) = reserve_of_set(self.last) else {
            let said = self.last.effort.is_some();
            let reason = if said { SetReason::EffortSaysNothing } else { SetReason::EffortNotSaid };
            return Ok((Asked::Same, alloc::vec![reason]));
        };
        let left = left.min(MOST_RESERVE.max(self.asked));
        if left == self.asked {
            return Ok((Asked::Same, alloc::vec![SetReason::AsAsked]));
        }
        let Some((load, part)) = load(left)? else {
            // A curve has no value there; what was harder than asked is followed by one step less.
            let asked = if left < self.asked { Asked::StepDown } else { Asked::Same };
            return Ok((asked, alloc::vec![SetReason::EffortSaysNothing]));
        };
        let reason =
            SetReason::ByEffort { left, asked: self.asked, part: crate::numeric::tidy(part), own_curve };
        Ok((Asked::Load(load), alloc::vec![reason]))
    }

    /// The load for what is asked, and its change as a part of what is moved.
    fn on_curve(&self, left: Rir) -> Result<Option<(Mass, f64)>, Error> {
        // The day's limit is looked at afterwards.
        let (reps, most) = (self.last.reps, Mass::MAX);
        let moved = self.own.body.and_then(|body| body.plus(self.last.load).ok());
        let (Some(body), Some(moved)) = (self.own.body, moved.filter(|moved| moved.is_positive())) else {
            return Ok(None);
        };
        if reps == Reps::whole(0)? {
            return Ok(None);
        }
        let next = match self.own.curve {
            Some(own) => next_set_by_own_curve(moved, reps, left, self.asked, own, most),
            None => next_set_by_curve(moved, reps, left, self.asked, Equation::Epley1985, most),
        };
        // Too many repetitions for any curve.
        let Ok(next) = next else { return Ok(None) };
        let next = next.to_mass()?;
        Ok(Some((next.minus(body)?, next.kg() / moved.kg() - 1.0)))
    }

    fn per_point(&self, left: Rir, part: f64) -> Result<Option<(Mass, f64)>, Error> {
        let load = self.last.load;
        if !load.is_positive() {
            return Ok(None);
        }
        let done = Rpe::new(10.0 - left.value())?;
        let asked = Rpe::new(10.0 - self.asked.value())?;
        let next = next_set_fixed(load, done, asked, part, Mass::MAX)?.to_mass()?;
        Ok(Some((next, next.kg() / load.kg() - 1.0)))
    }

    fn in_range(&self, bottom: u8, top: u8) -> Result<(Asked, Vec<SetReason>), Error> {
        let at_load = self.before.iter().filter(|set| set.load == self.last.load);
        let reps: Vec<Reps> = at_load.map(|set| set.reps).chain([self.last.reps]).collect();
        let (least, most) = (Reps::whole(u16::from(bottom))?, Reps::whole(u16::from(top))?);
        Ok(match double_progression(&reps, least, most)? {
            NextStep::LessLoad => (Asked::StepDown, alloc::vec![SetReason::BelowRange { bottom }]),
            NextStep::MoreRepetitions => (Asked::Same, alloc::vec![SetReason::WithinRange { top }]),
            NextStep::LoadMayRise => (Asked::Same, alloc::vec![SetReason::TopOfRange { top }]),
        })
    }

    /// The larger decrease or the smaller increase of the table.
    fn by_table(&self) -> Result<(Asked, Vec<SetReason>), Error> {
        let step = knight_1979(self.last.reps)?;
        let change = step.least.to_mass()?;
        let load = self.last.load.plus(change)?;
        let asked = if change == Mass::ZERO { Asked::Same } else { Asked::Load(load) };
        Ok((asked, alloc::vec![SetReason::ByTable { least: step.least, most: step.most }]))
    }

    fn until(&self, target: Rpe) -> (Asked, Vec<SetReason>) {
        let Some(effort) = self.last.effort else {
            // It may have been reached.
            return (Asked::Stop, alloc::vec![SetReason::EffortNotSaid]);
        };
        match rating(effort) {
            Some(done) if stop_at_target_effort(done, target).unwrap_or(true) => {
                (Asked::Stop, alloc::vec![SetReason::RatingReached { rating: target }])
            }
            // More in reserve than the scale has numbers for is below any rating from 7 on; below that nobody can tell.
            None if target < Rpe::from_reserve(Rir::whole(3)).unwrap_or(target) => {
                (Asked::Stop, alloc::vec![SetReason::EffortSaysNothing])
            }
            _ => (Asked::Same, alloc::vec![SetReason::RatingNotReached { rating: target }]),
        }
    }

    fn back_off(&self, reduction: f64, target: Rpe) -> Result<(Asked, Vec<SetReason>), Error> {
        if !self.before.is_empty() {
            return Ok(self.until(target));
        }
        let reason = alloc::vec![SetReason::BackOff { reduction }];
        if !self.last.load.is_positive() {
            return Ok((Asked::StepDown, reason));
        }
        Ok((Asked::Load(back_off_load(self.last.load, reduction)?.to_mass()?), reason))
    }
}
