//! A made-up session of one lift: what was prescribed, done with stated skill.

use alloc::vec::Vec;

use super::skill::LiftSkill;
use crate::error::Error;
use crate::gate::{CriterionMark, Mark, Rater, SetMarks};
use crate::numeric::generator::Generator;
use crate::prescription::LiftToday;
use crate::quantity::{Mass, Pain, Reps};
use crate::record::{ByTheBar, Effort, LiftParameters, LiftSession, Setup, WorkSet};

/// Where the model names no score (our choice: the lowest that blocks by default).
const PAIN_SCORE: u8 = 3;
/// Score of a region that is worse on the morning after (our choice).
const MORNING_SCORE: u8 = 2;

/// What chance holds for one lift on one day, drawn before it is known what will be prescribed: a lifter of more
/// skill then meets the same day.
pub(super) struct Luck {
    generator: Generator,
    critical: f64,
    pain: f64,
    morning: f64,
}

impl Luck {
    pub(super) fn new(mut generator: Generator) -> Luck {
        let (critical, pain, morning) = (generator.uniform(), generator.uniform(), generator.uniform());
        Luck { generator, critical, pain, morning }
    }

    pub(super) fn hurts(&self, skill: &LiftSkill) -> Option<Pain> {
        let score = skill.pain_score.or_else(|| Pain::new(PAIN_SCORE).ok())?;
        (self.pain < skill.pain).then_some(score)
    }

    pub(super) fn worse_next_morning(&self, skill: &LiftSkill) -> Option<Pain> {
        let score = Pain::new(MORNING_SCORE).ok()?;
        (self.morning < skill.worse_next_morning).then_some(score)
    }

    /// The lift as it is done.
    pub(super) fn lift(
        &self,
        today: &LiftToday,
        load: Mass,
        set: &LiftParameters,
        skill: &LiftSkill,
        below_usual: bool,
    ) -> Result<LiftSession, Error> {
        let rate = if below_usual { skill.acceptable_below_usual } else { None }.unwrap_or(skill.acceptable);
        let mut generator = self.generator;
        let mut sets = Vec::with_capacity(usize::from(today.sets));
        for number in 1..=today.sets {
            let lost = number == today.sets && self.critical < skill.critical_fault;
            let marks = marks(&mut generator, today.reps, rate, set, lost);
            let reps = Reps::whole(u16::from(today.reps))?;
            let effort = Some(Effort::Rir(today.reserve));
            sets.push(WorkSet { effort, marks: Some(marks), ..WorkSet::done(load, reps) });
        }
        // Where it is prescribed: on an easy day that may be an easier rung. Somebody spots what is done under the bar.
        let spotted = Setup { company: Some(ByTheBar::Spotter), ..Setup::default() };
        let setup = set.over_the_body.then_some(spotted);
        Ok(LiftSession {
            place: Some(today.place),
            reserve_asked: Some(today.reserve),
            setup,
            ..LiftSession::as_granted(today.lift.clone(), sets)
        })
    }
}

fn marks(generator: &mut Generator, reps: u8, rate: f64, set: &LiftParameters, lost: bool) -> SetMarks {
    let (mut acceptable, mut first_failing_rep) = (0, None);
    for rep in 1..=u16::from(reps) {
        if generator.chance(rate) {
            acceptable += 1;
        } else {
            first_failing_rep = first_failing_rep.or(Some(rep));
        }
    }
    let critical = set.criteria.iter().find(|criterion| criterion.critical);
    let mark = |fault: bool| if fault { Mark::NotMet } else { Mark::Met };
    let marks = set.criteria.iter().map(|criterion| CriterionMark {
        criterion: criterion.id.clone(),
        mark: mark(lost && critical == Some(criterion)),
    });
    let marks = marks.collect();
    SetMarks { first_failing_rep, marks, ..SetMarks::scored(u16::from(reps), acceptable, Rater::Coach) }
}
