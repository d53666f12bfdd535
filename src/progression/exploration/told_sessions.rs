//! How a session and the morning after it go into the notes, by the text of the rules.

use std::vec::Vec;

use super::notes::{LiftNotes, Notes, SessionNote, Verdict};
use super::telling::{Standing, Standings, number_of};
use super::world::{FORGIVING, LIFTS, REGIONS, STRICT};
use crate::condition::DayClass;
use crate::gate::Mark;
use crate::record::*;

impl Notes {
    pub(super) fn tell_session(&mut self, session: &Session, before: &Standings) {
        let done: Vec<usize> = session.lifts.iter().map(|lift| number_of(lift.lift.as_str())).collect();
        let again = self.last_trained() == Some(0);
        let loads = |notes: &Notes, region| done.iter().any(|lift| notes.concerns(*lift, region));
        let loaded: Vec<bool> = (0..REGIONS.len()).map(|region| loads(self, region)).collect();
        for region in &mut self.regions {
            region.level = region.said;
        }
        if let Some(pain) = &session.pain {
            self.tell_all_pain(pain);
        }
        for (region, _) in self.regions.iter_mut().zip(&loaded).filter(|(_, loaded)| **loaded) {
            region.train(session.pain.is_some());
        }
        self.pain_asked = Some(session.pain.is_some());
        self.answered = None;
        self.away = false;
        for lift in &session.lifts {
            self.tell_lift(lift, before);
        }
        for (region, loaded) in self.regions.iter_mut().zip(&loaded) {
            // Another day of training has a morning of its own, also for what it did not load.
            region.flared &= again;
            if *loaded {
                region.loaded = Some(0);
            }
        }
    }

    /// The morning after: more pain than before the training takes its passes back, else they count.
    pub(super) fn tell_morning(&mut self, pain: &[PainAnswer], before: &Standings) {
        let Some(trained) = self.last_trained().filter(|ago| *ago > 0) else { return };
        let flared = self.tell_flares(pain);
        self.answered.get_or_insert(true);
        for (region, flared) in self.regions.iter_mut().zip(flared) {
            if !flared && region.loaded == Some(trained) && !region.flared {
                region.flares = 0;
            }
        }
        for (number, standing) in before.iter().enumerate() {
            let standing = standing.as_ref().filter(|standing| standing.in_force);
            let lift = &mut self.lifts[number];
            lift.waits.take_if(|ago| *ago == trained && standing.is_some());
            for session in lift.sessions.iter_mut().filter(|session| session.ago == trained) {
                session.answered |= standing.is_some();
                if let (Verdict::Pass, Some(standing)) = (session.verdict, standing) {
                    lift.proven = Some((trained, standing.grant.load()));
                }
            }
        }
    }

    /// More pain in a region than before the last training, of which it takes the passes back. Told twice it is still one.
    pub(super) fn tell_flares(&mut self, pain: &[PainAnswer]) -> [bool; 3] {
        let mut flared = [false; 3];
        let Some(trained) = self.last_trained().filter(|ago| *ago > 0) else { return flared };
        for (number, region) in self.regions.iter_mut().enumerate() {
            let mut own = pain.iter().filter(|answer| answer.region.as_str() == REGIONS[number]);
            let level = region.level.unwrap_or_else(|| region.usual_level());
            flared[number] = own.any(|answer| answer.score.score() > level);
            if flared[number] {
                region.due = region.due.max(1);
                region.flares += u8::from(!region.flared);
                region.flared = true;
            }
        }
        for number in 0..LIFTS.len() {
            if !(0..REGIONS.len()).any(|region| flared[region] && self.concerns(number, region)) {
                continue;
            }
            let passed = self.lifts[number].sessions.iter_mut().filter(|session| session.ago == trained);
            passed
                .filter(|session| session.verdict != Verdict::Critical)
                .for_each(|session| session.verdict = Verdict::TakenBack);
        }
        flared
    }

    fn tell_lift(&mut self, done: &LiftSession, before: &Standings) {
        let number = number_of(done.lift.as_str());
        let (Some(standing), Some(set)) = (&before[number], self.set.lift(LIFTS[number])) else { return };
        let below_usual = self.class() == DayClass::Below;
        let unclear = |region: usize| self.regions[region].unclear && self.concerns(number, region);
        let hurts = (0..REGIONS.len()).any(unclear);
        // Trained, or where the forgiving lift loads nothing.
        let trained_too = self.lifts[0].last == Some(0);
        let hurt_today = |region: usize| {
            let own = self.concerns(0, region) && (trained_too || !self.concerns(1, region));
            own && self.regions[region].unclear
        };
        let strict_hurt_today = (0..REGIONS.len()).any(hurt_today);
        let first = self.comes_first() || self.ill || self.limit_is_lost();
        let lift = &mut self.lifts[number];
        if standing.anew {
            lift.forget();
        }
        if standing.elsewhere {
            lift.proven = None;
        }
        lift.wear(done);
        let as_granted = is_as_granted(done, standing, set);
        let trained = standing.status.is_trained() && !standing.rests;
        // Of what is done in spite of a rest nothing is kept but that its morning comes.
        if standing.status.is_trained() && standing.rests {
            lift.waits = Some(0);
        }
        let verdict = verdict(done, as_granted);
        lift.last = Some(0);
        lift.elsewise = !as_granted;
        lift.fault = verdict == Verdict::Critical;
        if trained {
            let asked = standing.asked.reserve;
            let short = |set: &WorkSet| matches!(set.effort, Some(Effort::Rir(left)) if left < asked);
            let hard = done.sets.iter().any(short);
            let verdict = if first && verdict == Verdict::Pass { Verdict::Unheard } else { verdict };
            lift.keep(SessionNote { ago: 0, verdict, below_usual, hard, answered: false });
            lift.held &= first || (self.set.pairs() && number == 1 && strict_hurt_today);
        }
        if hurts && done.lift.as_str() == STRICT && self.set.pairs() {
            self.lifts[number_of(FORGIVING)].held = true;
        }
    }
}

impl LiftNotes {
    /// How it was set up, as far as anybody says: another belt breaks the comparison.
    fn wear(&mut self, done: &LiftSession) {
        let Some(setup) = &done.setup else { return };
        if let Some(company) = setup.company {
            self.alone = company == ByTheBar::Alone && setup.pins.is_none();
        }
        let Some(kit) = &setup.kit else { return };
        let belt = !kit.is_empty();
        if self.belt.is_some_and(|before| before != belt) {
            self.begin_anew();
        }
        self.belt = Some(belt);
    }
}

/// Whether the work granted was done: place, load, sets, repetitions.
fn is_as_granted(done: &LiftSession, standing: &Standing, set: &LiftParameters) -> bool {
    let Grant { place, work } = standing.grant;
    let sets = usize::from(work.sets).div_ceil(if standing.halves { 2 } else { 1 });
    let full = set.ranges[usize::from(place.range)];
    // A day that asks for an easier place shows nothing at the granted one.
    standing.asked.place == place
        // Nor does one that pain eases, whatever was done.
        && !standing.asked.eased
        && done.place.is_none_or(|there| there == place)
        && done.reached.is_none_or(|reached| reached >= full)
        && done.sets.len() >= sets
        && done.sets.iter().all(|set| set.load == work.load && set.reps.value() >= f64::from(work.reps))
}

fn verdict(done: &LiftSession, as_granted: bool) -> Verdict {
    let marks = || done.sets.iter().filter_map(|set| set.marks.as_ref());
    let brace = super::world::name("brace");
    if marks().any(|marks| marks.mark(&brace) == Mark::NotMet) {
        return Verdict::Critical;
    }
    if done.sets.iter().any(|set| set.failed) || marks().any(|marks| marks.misses() != Some(0)) {
        return Verdict::Fail;
    }
    let seen = marks().count() == done.sets.len();
    if seen && as_granted { Verdict::Pass } else { Verdict::Nothing }
}
