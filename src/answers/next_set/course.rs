//! The order in which the rules speak: the day, pain, technique, the number of sets, the lift's rule, what can be loaded.

use alloc::vec::Vec;

use super::super::evidence::reserve_of_set;
use super::answer::{NextSet, SetReason, SetWork, SetsToday, Then};
use super::by_rule::{AfterSet, Asked, Own};
use crate::caution::Caution;
use crate::error::Error;
use crate::gate::Mark;
use crate::prescription::{Equipment, LiftToday, TechniqueStop, Verdict, technique_stop};
use crate::progression::{View, one_load_back};
use crate::quantity::{Mass, Name, Pain, Rpe};
use crate::reason::Reason;
use crate::record::{LiftPlan, PainAnswer, Place, SetRule, WorkSet};

/// The way from the sets done to the next one.
pub(super) struct Course<'a> {
    view: View<'a>,
    rule: SetRule,
    today: &'a LiftToday,
    done: &'a SetsToday,
    /// Somebody asked about pain since the last set.
    asked: bool,
    own: Own,
    stops: Vec<Reason>,
    reasons: Vec<SetReason>,
    cautions: Vec<Caution>,
    /// Nothing goes up any more today.
    held: bool,
}

/// What pain asks for.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Hurt {
    No,
    Holds,
    Eases,
    Stops,
}

impl<'a> Course<'a> {
    pub(super) fn new(
        view: View<'a>,
        (planned, today): (&LiftPlan, &'a LiftToday),
        done: &'a SetsToday,
        own: Own,
        asked: bool,
        (stops, cautions): (Vec<Reason>, Vec<Caution>),
    ) -> Course<'a> {
        let rule = planned.rule.unwrap_or(SetRule::OwnCurve);
        let reasons = Vec::new();
        let mut course =
            Course { view, rule, today, done, asked, own, stops, reasons, cautions, held: false };
        course.stopped_by_answers();
        course
    }

    pub(super) fn answer(mut self) -> Result<NextSet, Error> {
        let Some(limit) = self.today.load.filter(|_| self.today.verdict < Verdict::Rest) else {
            self.reasons.push(SetReason::NotToday);
            return Ok(self.end(None));
        };
        let hurt = self.pain();
        if hurt == Hurt::Stops {
            return Ok(self.end(None));
        }
        let Some((last, before)) = self.done.sets.split_last() else {
            self.reasons.push(SetReason::FirstSet);
            return if hurt == Hurt::Eases { self.ease(limit, limit) } else { self.load(limit, limit) };
        };
        let technique = self.technique(last)?;
        if technique == TechniqueStop::EndLift {
            let instead = self.easier_rung();
            return Ok(self.end(instead));
        }
        if self.done.sets.len() >= usize::from(self.today.sets) {
            self.reasons.push(SetReason::AllSetsDone { sets: self.today.sets });
            return Ok(self.end(None));
        }
        let asked = self.by_rule(before, last)?;
        let above = |load: Mass| load > limit;
        // What was lifted above today's load is no reason to go on there.
        if above(last.load) || matches!(asked, Asked::Load(load) if above(load) && !self.held) {
            self.reasons.push(SetReason::Limited { to: limit });
        }
        let last = last.load.min(limit);
        let eases = hurt == Hurt::Eases || technique == TechniqueStop::EndSet;
        match asked {
            Asked::Stop => Ok(self.end(None)),
            Asked::Load(load) if eases => self.ease(last, load),
            _ if eases => self.ease(last, last),
            Asked::StepDown => self.ease(last, last),
            Asked::Same => self.load(last, last),
            Asked::Load(load) if load > last && self.held => self.load(last, last),
            Asked::Load(load) => self.load(load.min(limit), last),
        }
    }

    /// What the lift's rule asks for, and what holds below it.
    fn by_rule(&mut self, before: &[WorkSet], last: &WorkSet) -> Result<Asked, Error> {
        let least = self.today.reserve;
        let floor = self.today.reasons.iter().any(|reason| matches!(reason, Reason::ReserveFloor { .. }));
        let highest = floor.then(|| Rpe::new(10.0 - least.value())).transpose()?;
        let after = AfterSet { before, last, asked: least, own: self.own, highest };
        let (asked, reasons) = after.asked(&self.rule)?;
        self.reasons.extend(reasons);
        let left = reserve_of_set(last);
        match (asked, left) {
            (Asked::Same, Some(left)) if floor && left < least => {
                self.reasons.push(SetReason::BelowReserve { left, least });
                Ok(Asked::StepDown)
            }
            (asked, _) => Ok(asked),
        }
    }

    /// Pain that was just told and stops its region, whatever lift is done: said first, as once it is written down.
    fn stopped_by_answers(&mut self) {
        let done = self.done;
        for answer in done.pain.iter().flatten() {
            if self.hurt(answer) != Hurt::Stops {
                continue;
            }
            let stopped = self.stops.iter_mut().find_map(|stop| match stop {
                Reason::PainStop { region, since, features } if *region == answer.region => {
                    Some((since, features))
                }
                _ => None,
            });
            // Of a region that is stopped already, what came with the pain is told together, as of today.
            if let Some((since, features)) = stopped {
                *since = self.view.on;
                answer.join_features(features);
                continue;
            }
            let (region, since) = (answer.region.clone(), self.view.on);
            let features = answer.features.clone().unwrap_or_default();
            self.stops.push(Reason::PainStop { region, since, features });
            let new = Caution::OF_A_STOP.iter().filter(|caution| !self.cautions.contains(caution));
            let new: Vec<Caution> = new.copied().collect();
            self.cautions.splice(0..0, new);
        }
    }

    /// The gravest that pain asks for.
    fn pain(&mut self) -> Hurt {
        if !self.asked && !self.done.sets.is_empty() {
            self.reasons.push(SetReason::PainNotAsked);
            self.held = true;
        }
        // What no lift loads halts every lift.
        let all = self.view.all;
        let loaded = |region: &Name| all.lifts.iter().any(|lift| lift.regions.contains(region));
        let (done, mut gravest) = (self.done, Hurt::No);
        for answer in done.pain.iter().flatten() {
            let hurt = self.hurt(answer);
            let halts_all = hurt == Hurt::Stops && !loaded(&answer.region);
            if !halts_all && !self.view.lift.has_region(&answer.region) {
                continue;
            }
            let (region, score) = (answer.region.clone(), answer.score);
            self.reasons.extend(match hurt {
                Hurt::No => None,
                Hurt::Holds => Some(SetReason::PainHolds { region, score }),
                Hurt::Eases => Some(SetReason::PainEases { region, score }),
                Hurt::Stops => Some(SetReason::PainStops { region, score }),
            });
            gravest = gravest.max(hurt);
        }
        self.held |= gravest > Hurt::No;
        gravest
    }

    fn hurt(&self, answer: &PainAnswer) -> Hurt {
        let policy = self.view.policy();
        let region = self.view.shared.region(&answer.region);
        let usual =
            region.map_or(Pain::NONE, |region| region.usual_level(self.view.on, policy.usual_review_days));
        let score = answer.score;
        if answer.stops() || score.score() > policy.pain_stop_above {
            Hurt::Stops
        } else if answer.is_unusual() || (score.score() >= policy.pain_block_from && score > usual) {
            Hurt::Eases
        } else if score > Pain::NONE {
            Hurt::Holds
        } else {
            Hurt::No
        }
    }

    /// Critical points and missed repetitions of the sets so far.
    fn technique(&mut self, last: &WorkSet) -> Result<TechniqueStop, Error> {
        let faults: Vec<bool> = (1..)
            .zip(&self.done.sets)
            .map(|(number, set)| self.lost(number, set).is_some() || set.failed)
            .collect();
        let stop = technique_stop(&faults)?;
        let number = u8::try_from(self.done.sets.len()).unwrap_or(u8::MAX);
        if let Some(criterion) = self.lost(number, last) {
            self.reasons.push(SetReason::CriticalFault { criterion });
        }
        if last.failed {
            self.reasons.push(SetReason::RepetitionMissed);
        }
        if stop == TechniqueStop::EndLift {
            self.reasons.push(SetReason::TwoFaults);
        }
        self.held |= faults.contains(&true);
        if last.marks.as_ref().is_none_or(|marks| marks.acceptable.is_none()) {
            self.reasons.push(SetReason::NotMarked);
            self.held = true;
        }
        Ok(stop)
    }

    /// The critical criterion that anybody saw lost in a set.
    fn lost(&self, number: u8, set: &WorkSet) -> Option<Name> {
        let criteria = &self.view.lift.set.criteria;
        let judged = criteria.iter().filter(|each| each.critical && each.applies_to(number));
        let mut ids = judged.map(|criterion| &criterion.id);
        ids.find(|id| set.all_marks().any(|marks| marks.mark(id) == Mark::NotMet)).cloned()
    }

    /// The rung directly easier, by name.
    fn easier_rung(&self) -> Option<Name> {
        let set = &self.view.lift.set;
        let rung = set.easier_rung(self.today.place.rung);
        set.rungs.get(usize::from(rung)).filter(|_| rung != self.today.place.rung).map(|rung| rung.id.clone())
    }

    /// One step less, or as much less as the rule asks; where nothing is lighter, the easier rung; where there is none,
    /// the end.
    fn ease(self, from: Mass, by_rule: Mass) -> Result<NextSet, Error> {
        match one_load_back(self.view.lift, self.today.place, from, self.view.policy()) {
            Some(below) => self.load(below.min(by_rule), from),
            None => self.easier(from),
        }
    }

    /// The easier rung, with no more than the lightest load of this one: a worse set asks for no more than a better.
    fn easier(mut self, from: Mass) -> Result<NextSet, Error> {
        self.reasons.push(SetReason::NothingLighter);
        let Some(easier) = self.easier_rung() else { return Ok(self.end(None)) };
        let rung = self.view.lift.set.easier_rung(self.today.place.rung);
        let lightest = self.view.lift.loadable.at(self.today.place).lightest();
        let from = lightest.map_or(from, |lightest| lightest.min(from));
        match self.made(Place { rung, ..self.today.place }, from)? {
            Some(work) => Ok(self.finish(Then::EasierRung(easier), Some(work), None)),
            None => Ok(self.end(None)),
        }
    }

    /// That load or the nearest below it.
    fn load(self, load: Mass, last: Mass) -> Result<NextSet, Error> {
        let Some(work) = self.made(self.today.place, load)? else { return self.easier(last) };
        let then = match work.load {
            _ if self.done.sets.is_empty() && work.load == last => Then::Begin,
            now if now < last => Then::DownTo(now),
            now if now > last => Then::UpTo(now),
            _ => Then::Same,
        };
        Ok(self.finish(then, Some(work), None))
    }

    fn made(&self, place: Place, load: Mass) -> Result<Option<SetWork>, Error> {
        let made = Equipment::of(&self.view, place)?.load(load);
        let reps = match self.rule {
            SetRule::DoubleProgression { top, .. } => self.today.reps.min(top),
            _ => self.today.reps,
        };
        Ok(made.filter(|made| made.loaded.total <= load).map(|made| SetWork {
            place,
            load: made.loaded.total,
            loaded: made.loaded,
            blocks: made.blocks,
            reps,
            reserve: self.today.reserve,
        }))
    }

    fn end(self, instead: Option<Name>) -> NextSet {
        self.finish(Then::Stop, None, instead)
    }

    fn finish(mut self, then: Then, work: Option<SetWork>, instead: Option<Name>) -> NextSet {
        self.cautions.dedup();
        NextSet {
            stops: self.stops,
            today: self.view.on,
            lift: self.done.lift.clone(),
            done: u8::try_from(self.done.sets.len()).unwrap_or(u8::MAX),
            sets: self.today.sets,
            rule: self.rule,
            then,
            work,
            limit: self.today.load,
            instead,
            reasons: self.reasons,
            sources: self.own.sources(&self.rule),
            cautions: self.cautions,
        }
    }
}
