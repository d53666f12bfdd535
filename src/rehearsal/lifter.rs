//! One made-up lifter on the way through the weeks.

use alloc::vec::Vec;

use super::outcome::{Tally, Went};
use super::session::Luck;
use super::skill::{LiftSkill, Milestone, SkillModel};
use crate::condition::DayClass;
use crate::error::{Code, Error};
use crate::numeric::generator::Generator;
use crate::prescription::{LiftToday, Verdict, next_session_from};
use crate::progression::{Decision, MoveOutlook, State, fold};
use crate::quantity::{Day, Mass, Name};
use crate::record::{
    Advance, Clearance, ClearanceStatus, DayReport, Event, EventKind, Grant, LiftParameters, LiftSession,
    Log, NextDayReport, PainAnswer, Parameters, Plan, Session, SessionMissed, SignOff, SignOffScope,
};

/// Streams of chance kept for one day: one for the day, one for each of at most 16 lifts.
const STREAMS_A_DAY: u32 = 32;

/// What all lifters of a rehearsal share.
pub(super) struct Stage<'a> {
    pub(super) parameters: &'a Parameters,
    pub(super) model: &'a SkillModel,
    /// The plan of each training day of the model's week.
    pub(super) plans: Vec<(u8, Plan)>,
    pub(super) first: Day,
    pub(super) born: Option<Day>,
    pub(super) who: Name,
}

impl Stage<'_> {
    pub(super) fn clearance(&self) -> EventKind {
        EventKind::ClearanceRecorded(Clearance {
            status: ClearanceStatus::Cleared,
            who: self.who.clone(),
            expires: None,
            limits: Vec::new(),
        })
    }
}

/// A lifter: a log that grows, and the state after it.
#[derive(Clone)]
pub(super) struct Lifter<'a> {
    stage: &'a Stage<'a>,
    log: Log,
    state: State,
    seed: u32,
    moves: Vec<u32>,
    reached: Vec<bool>,
}

impl<'a> Lifter<'a> {
    pub(super) fn new(stage: &'a Stage<'a>) -> Lifter<'a> {
        let born = stage.born;
        let who =
            crate::record::Lifter { born, invented: true, ..crate::record::Lifter::new(stage.who.clone()) };
        let lifts = stage.model.lifts.len();
        Lifter {
            stage,
            log: Log::new(who.clone()),
            state: State::new(who),
            seed: 0,
            moves: alloc::vec![0; lifts],
            reached: alloc::vec![false; lifts],
        }
    }

    pub(super) fn digest(&self) -> (&str, &str) {
        (self.state.version(), self.state.digest())
    }

    /// Adds an event; where it changes the past, the whole log is folded anew.
    pub(super) fn add(&mut self, day: Day, kind: EventKind) -> Result<u32, Error> {
        let sequence = self.log.events.len() as u32 + 1;
        let event = Event { sequence, day, kind, note: None };
        let applied = self.state.apply(&event);
        self.log.events.push(event);
        match applied {
            Err(error) if error.code() == Code::NeedsRefold => self.state = fold(&self.log)?,
            applied => applied?,
        }
        Ok(sequence)
    }

    /// Plays all days for the lifter of that number.
    pub(super) fn play(mut self, days: u32, seed: u32, tallies: &mut [Tally]) -> Result<(), Error> {
        self.seed = seed;
        self.note_milestones(0, tallies);
        for day in 0..days {
            if let Some(training) = self.stage.model.lifts_on(day) {
                self.training_day(day, training.weekday, &training.lifts, tallies)?;
                self.note_milestones(day, tallies);
            }
        }
        for (tally, moves) in tallies.iter_mut().zip(&self.moves) {
            tally.moves.push(*moves);
        }
        Ok(())
    }

    /// The generator for one purpose on one day: the same whatever happened before.
    fn chance(&self, day: u32, purpose: u32) -> Generator {
        Generator::stream(self.seed, day * STREAMS_A_DAY + purpose)
    }

    fn training_day(
        &mut self,
        number: u32,
        weekday: u8,
        lifts: &[Name],
        tallies: &mut [Tally],
    ) -> Result<(), Error> {
        let today = self.stage.first.plus(number as i32)?;
        let mut chance = self.chance(number, 0);
        let (missed, below_usual) =
            (chance.chance(self.stage.model.missed_session), chance.chance(self.stage.model.below_usual));
        if missed {
            self.add(today, EventKind::SessionMissed(SessionMissed { reason: self.stage.who.clone() }))?;
            self.count(tallies, lifts, |_| Went::Missed);
            return Ok(());
        }
        self.reopen(today)?;
        let class = if below_usual { DayClass::Below } else { DayClass::Within };
        self.add(today, EventKind::DayReport(DayReport::all_well(class)))?;
        let moved = self.take_moves(today, lifts)?;
        let before: Vec<Option<Grant>> = lifts.iter().map(|lift| self.grant(lift)).collect();
        let trained = self.train(number, today, weekday, below_usual)?;
        let back: Vec<&Name> = lifts
            .iter()
            .zip(before)
            .filter(|(lift, before)| self.is_easier_now(lift, *before))
            .map(|(lift, _)| lift)
            .collect();
        self.count(tallies, lifts, |lift| {
            match (trained.contains(lift), back.contains(&lift), moved.contains(lift)) {
                (_, true, _) => Went::SteppedBack,
                (false, ..) => Went::Stopped,
                (true, _, true) => Went::Moved,
                (true, ..) => Went::Held,
            }
        });
        Ok(())
    }

    fn count(&self, tallies: &mut [Tally], lifts: &[Name], went: impl Fn(&Name) -> Went) {
        for (tally, skill) in tallies.iter_mut().zip(&self.stage.model.lifts) {
            if lifts.contains(&skill.lift) {
                tally.count(went(&skill.lift));
            }
        }
    }

    fn grant(&self, lift: &Name) -> Option<Grant> {
        self.state.lift_state(lift).map(|state| state.grant())
    }

    /// Whether a lift stands easier than before, in any of its dimensions.
    fn is_easier_now(&self, lift: &Name, before: Option<Grant>) -> bool {
        let (Some(state), Some(before)) = (self.state.lift_state(lift), before) else { return false };
        !state.parameters().harder_in(&state.grant(), &before).is_empty()
    }

    /// A clearance that ran out is given anew; a pain stop is cleared and signed off after the stated days.
    fn reopen(&mut self, today: Day) -> Result<(), Error> {
        if self.state.clearance().is_none_or(|clearance| clearance.expires < today) {
            self.add(today, self.stage.clearance())?;
        }
        let Some(wait) = self.stage.model.cleared_after_days else { return Ok(()) };
        let due = |since: Day| today.since(since) >= i32::from(wait);
        let stopped: Vec<Name> = self
            .state
            .regions()
            .iter()
            .filter(|region| region.stop.as_ref().is_some_and(|stop| due(stop.since)))
            .map(|region| region.id.clone())
            .collect();
        for region in stopped {
            self.add(today, self.stage.clearance())?;
            let scope = SignOffScope::Region(region);
            self.add(today, EventKind::CoachSignOff(SignOff { who: self.stage.who.clone(), scope }))?;
        }
        Ok(())
    }

    /// Takes every move on offer for the lifts of the day.
    fn take_moves(&mut self, today: Day, lifts: &[Name]) -> Result<Vec<Name>, Error> {
        let mut moved = Vec::new();
        if !self.state.lifts().any(|lift| lift.status().is_ready()) {
            return Ok(moved);
        }
        for lift in lifts {
            // One move may block the next, so each is asked for by itself.
            let decisions = self.state.decide(today)?;
            let offered = decisions.iter().find(|decision| decision.lift == *lift);
            let offered =
                offered.is_some_and(|decision| matches!(decision.outlook, MoveOutlook::OnOffer { .. }));
            if offered && !self.is_turn_of_another(lift, &decisions, today) {
                let advance = Advance { lift: lift.clone(), who: self.stage.who.clone() };
                self.add(today, EventKind::AdvanceAccepted(advance))?;
                self.note_move(lift);
                moved.push(lift.clone());
            }
        }
        Ok(moved)
    }

    /// Whether a step of that lift would close the window for one that also has a step on offer, has waited longer, and has
    /// had no day of training since the window opened. A turn that was not used goes on.
    fn is_turn_of_another(&self, lift: &Name, decisions: &[Decision], today: Day) -> bool {
        let Some(own) = self.state.lift_state(lift) else { return false };
        let Some((last, _)) = own.now().moves.last() else { return false };
        let window = i32::from(self.stage.parameters.policy.region_window_days);
        let shares = |other: &LiftParameters| {
            let paired =
                self.stage.parameters.pair_of(lift).is_some_and(|pair| {
                    [&pair.strict, &pair.forgiving].into_iter().any(|id| *id == other.id)
                });
            paired || other.regions.iter().any(|region| own.parameters().regions.contains(region))
        };
        let offers =
            decisions.iter().filter(|decision| matches!(decision.outlook, MoveOutlook::OnOffer { .. }));
        let others = offers.filter(|decision| decision.lift != *lift);
        others.filter_map(|decision| self.state.lift_state(&decision.lift)).any(|other| {
            let now = other.now();
            let waited = now.moves.last().is_none_or(|(day, _)| day < last);
            let unused =
                now.last_session.is_some_and(|day| day.since(*last) < window) && today.since(*last) >= window;
            shares(other.parameters()) && waited && unused
        })
    }

    fn note_move(&mut self, lift: &Name) {
        let at = self.stage.model.lifts.iter().position(|skill| skill.lift == *lift);
        if let Some(moves) = at.and_then(|at| self.moves.get_mut(at)) {
            *moves += 1;
        }
    }

    /// Does what is prescribed, and says which lifts were trained.
    fn train(&mut self, number: u32, today: Day, weekday: u8, below_usual: bool) -> Result<Vec<Name>, Error> {
        let Some((_, plan)) = self.stage.plans.iter().find(|(day, _)| *day == weekday) else {
            return Ok(Vec::new());
        };
        let session = next_session_from(&self.state, plan, today)?;
        let (mut lifts, mut pain, mut morning) = (Vec::new(), Vec::new(), Vec::new());
        for prescribed in &session.lifts {
            let numbered = (1..).zip(&self.stage.parameters.lifts);
            let found = { numbered }.find(|(_, set)| set.id == prescribed.lift);
            let (Some((stream, set)), Some(load)) = (found, trainable(prescribed)) else { continue };
            let Some(skill) = self.stage.model.skill(&set.id) else { continue };
            let luck = Luck::new(self.chance(number, stream));
            lifts.push(luck.lift(prescribed, load, set, skill, below_usual)?);
            answer(&mut pain, set, luck.hurts(skill));
            answer(&mut morning, set, luck.worse_next_morning(skill));
        }
        let trained = lifts.iter().map(|lift: &LiftSession| lift.lift.clone()).collect();
        if lifts.is_empty() {
            return Ok(trained);
        }
        let session = Session { lifts, pain: Some(pain), minutes: None, effort: None };
        let session = self.add(today, EventKind::SessionRecorded(session))?;
        let report = NextDayReport { session, pain: Some(morning), soreness: None };
        self.add(today.plus(1)?, EventKind::NextDayReport(report))?;
        Ok(trained)
    }

    fn note_milestones(&mut self, day: u32, tallies: &mut [Tally]) {
        let stage = self.stage;
        for ((skill, tally), reached) in stage.model.lifts.iter().zip(tallies).zip(&mut self.reached) {
            let Some(lift) = self.state.lift_state(&skill.lift) else { continue };
            if !*reached && is_reached(skill, lift.parameters(), &lift.grant()) {
                *reached = true;
                tally.days.push(day);
            }
        }
    }
}

fn trainable(lift: &LiftToday) -> Option<Mass> {
    lift.load.filter(|_| lift.verdict < Verdict::Rest && lift.sets > 0)
}

/// One answer a region.
fn answer(answers: &mut Vec<PainAnswer>, set: &LiftParameters, score: Option<crate::quantity::Pain>) {
    if let (Some(score), Some(region)) = (score, set.regions.first())
        && !answers.iter().any(|answer| answer.region == *region)
    {
        answers.push(PainAnswer::plain(region.clone(), score));
    }
}

fn is_reached(skill: &LiftSkill, set: &LiftParameters, grant: &Grant) -> bool {
    match &skill.milestone {
        None => false,
        Some(Milestone::Load(load)) => grant.load() >= *load,
        Some(Milestone::Rung(id)) => {
            let (rung, at) = (set.rung_with(id), grant.place.rung);
            rung.is_some_and(|rung| at == rung || set.is_harder(at, rung))
        }
    }
}
