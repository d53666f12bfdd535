//! How each event goes into the notes, by the text of the rules.

use std::vec::Vec;

use super::super::asked::Asked;
use super::super::status::Status;
use super::notes::{ClearanceNotes, DayNotes, LiftNotes, Notes, RegionNotes, SessionNote, Verdict};
use super::world::{CLEAR_SESSIONS, CLEARANCE, LIFTS, REGIONS, Set};
use crate::condition::DayClass;
use crate::quantity::{Day, Name};
use crate::record::*;

/// What a lift was told to do on a day, before what is told now.
#[derive(Clone, Debug)]
pub(super) struct Standing {
    /// The parameters have it; else it is set aside.
    pub(super) in_force: bool,
    /// With a bar.
    pub(super) bar: bool,
    pub(super) grant: Grant,
    /// What the day asks of it.
    pub(super) asked: Asked,
    pub(super) status: Status,
    /// The coach set it to rest.
    pub(super) rests: bool,
    /// Half the sets, after a break or a stop.
    pub(super) halves: bool,
    /// A break asks it to begin anew there.
    pub(super) anew: bool,
    /// And at another place.
    pub(super) elsewhere: bool,
}

/// What both lifts were told to do, where the log knows them.
pub(super) type Standings = [Option<Standing>; 2];

pub(super) fn number_of(lift: &str) -> usize {
    LIFTS.iter().position(|id| *id == lift).unwrap()
}

pub(super) fn region_number(id: &Name) -> usize {
    REGIONS.iter().position(|region| *region == id.as_str()).unwrap()
}

/// What one answer about pain asks for.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Row {
    Clear,
    Hold,
    Block,
    Stop,
}

/// The most cautious row that matches; features outrank the score, and what nobody asked about is taken as new.
fn row(answer: &PainAnswer, usual: u8) -> Row {
    let score = answer.score.score();
    let features = answer.features.as_deref();
    let named = |new: bool| {
        let is_new = |feature: &PainFeature| matches!(feature, PainFeature::New | PainFeature::Rising);
        features.unwrap_or_default().iter().any(|feature| is_new(feature) == new)
    };
    let unusual = score > 0 && (features.is_none() || named(true));
    match score {
        _ if named(false) || score > 5 => Row::Stop,
        _ if unusual || (score >= 3 && score > usual) => Row::Block,
        _ if score > usual => Row::Hold,
        _ => Row::Clear,
    }
}

impl RegionNotes {
    fn note(&mut self, score: u8) {
        let before = self.last;
        let score = before.filter(|(_, today)| *today).map_or(score, |(earlier, _)| earlier.max(score));
        if let Some((_, steady)) = &mut self.usual
            && (score > 2 || before.is_some_and(|(last, _)| score > last))
        {
            *steady = 0;
        }
        self.last = Some((score, true));
    }

    /// Whether it is more than usual.
    fn answer(&mut self, answer: &PainAnswer) -> bool {
        let row = row(answer, self.usual_level());
        self.note(answer.score.score());
        if self.loaded == Some(0) {
            self.keep_score(answer.score.score());
        }
        if row == Row::Stop {
            self.stop = Some(false);
        }
        self.unclear |= row > Row::Clear;
        if row > Row::Clear && core::mem::take(&mut self.cleared) {
            self.due += 1;
        }
        let due = [0, 1, CLEAR_SESSIONS, CLEAR_SESSIONS][row as usize];
        self.due = self.due.max(due);
        row > Row::Clear
    }

    fn keep_score(&mut self, score: u8) {
        match self.scores.last_mut() {
            Some(worst) if self.scored_today => *worst = score.max(*worst),
            _ => self.scores.push(score),
        }
        if self.scores.len() > 3 {
            self.scores.remove(0);
        }
        self.scored_today = true;
    }

    /// Trained today, in a session that asked about pain or did not.
    pub(super) fn train(&mut self, asked: bool) {
        // None before training, and nobody asked after it: no news where it hurt when it was last trained.
        let none_told = |score: u8| !asked && score == 0 && self.scores.last().is_some_and(|last| *last > 0);
        let told = self.last.filter(|(_, today)| *today).map(|(score, _)| score);
        if let Some(score) = told.filter(|score| !none_told(*score)) {
            self.keep_score(score);
        }
        // One civil day is one.
        if !asked || self.loaded == Some(0) {
            return;
        }
        if let Some((_, steady)) = &mut self.usual
            && self.last.is_some_and(|(last, _)| last <= 2)
        {
            *steady = (*steady + 1).min(3);
        }
        // The answer in the session has been noted already, as have those before it.
        if !self.unclear && self.due > 0 {
            self.due -= 1;
            self.cleared = true;
        }
    }
}

impl Notes {
    /// Whether the region concerns the lift.
    pub(super) fn concerns(&self, lift: usize, region: usize) -> bool {
        let set = self.set.lift(LIFTS[lift]);
        let own = set.is_some_and(|set| set.regions.iter().any(|id| id.as_str() == REGIONS[region]));
        own || self.lifts[lift].former[region]
    }

    pub(super) fn is_loaded(&self, region: usize) -> bool {
        let mut lifts = self.set.parameters().lifts.iter();
        lifts.any(|lift| lift.regions.iter().any(|id| id.as_str() == REGIONS[region]))
    }

    /// Notes one event; what becomes of the grants is noted apart.
    pub(super) fn tell(&mut self, kind: &EventKind, before: &Standings, on: Day) {
        match kind {
            EventKind::SessionRecorded(session) => self.tell_session(session, before),
            EventKind::NextDayReport(report) => {
                if let Some(pain) = &report.pain {
                    self.tell_all_pain(pain);
                    self.tell_morning(pain, before);
                    self.say_before_training(pain);
                }
            }
            EventKind::DayReport(report) => self.tell_day(report, before),
            EventKind::PainReport(answer) => {
                let number = region_number(&answer.region);
                self.answer(number, answer);
                if self.answered != Some(false) {
                    self.tell_flares(core::slice::from_ref(answer));
                }
                self.regions[number].said = Some(answer.score.score());
            }
            EventKind::UsualPainAgreed(usual) => {
                self.regions[region_number(&usual.region)].usual = Some((0, 0));
            }
            EventKind::SymptomReport(_) => self.symptom = Some(false),
            EventKind::ClearanceRecorded(given) => self.tell_clearance(given, on),
            EventKind::ClearanceExpired(_) => {
                self.clearance.iter_mut().for_each(|given| given.left = given.left.min(-1));
            }
            EventKind::CoachSignOff(given) => self.tell_sign_off(&given.scope),
            EventKind::AskAnswered(answer) => self.asks[usize::from(answer.ask != Ask::Fever)] = false,
            EventKind::LayoffNoted(layoff) => {
                self.ill |= layoff.reason == LayoffReason::Ill;
                self.away |= layoff.reason == LayoffReason::Planned;
            }
            EventKind::CoachOverride(given) => self.tell_override(given, before, on),
            EventKind::RaterChanged(_) => self.begin_anew(|set| set.gate.restarts_with_another_rater()),
            EventKind::BarOrDiscsChanged(changed) => {
                self.begin_anew(|set| changed.lift.as_ref().is_none_or(|id| set.id == *id));
            }
            EventKind::ParametersChanged(parameters) => {
                self.tell_set(Set::ALL.into_iter().find(|set| *set.parameters() == **parameters).unwrap());
            }
            EventKind::Unknown(_) => self.unknown = true,
            _ => {}
        }
        self.note_former();
    }

    fn begin_anew(&mut self, which: impl Fn(&LiftParameters) -> bool) {
        let set = self.set;
        for (id, lift) in LIFTS.iter().zip(&mut self.lifts) {
            if set.lift(id).is_some_and(&which) {
                lift.begin_anew();
            }
        }
    }

    /// A list is an answer about every region.
    pub(super) fn tell_all_pain(&mut self, pain: &[PainAnswer]) {
        self.pain_today = true;
        for (number, id) in REGIONS.iter().enumerate() {
            match pain.iter().find(|answer| answer.region.as_str() == *id) {
                Some(answer) => self.answer(number, answer),
                None => self.regions[number].note(0),
            }
        }
    }

    /// Pain where the strict lift loads and the forgiving one does not holds that one, whoever says so.
    fn answer(&mut self, region: usize, answer: &PainAnswer) {
        let more = self.regions[region].answer(answer);
        let holds = more && self.set.pairs() && self.concerns(0, region) && !self.concerns(1, region);
        self.lifts[1].held |= holds;
    }

    /// What was said of today stands for the level before today's training.
    fn say_before_training(&mut self, pain: &[PainAnswer]) {
        for (id, region) in REGIONS.iter().zip(&mut self.regions) {
            let answer = pain.iter().find(|answer| answer.region.as_str() == *id);
            region.said = Some(answer.map_or(0, |answer| answer.score.score()));
        }
    }

    fn tell_day(&mut self, report: &DayReport, before: &Standings) {
        if let Some(pain) = &report.pain {
            self.tell_all_pain(pain);
            self.tell_morning(pain, before);
            self.say_before_training(pain);
        }
        for ask in report.asks.iter().flatten() {
            self.asks[usize::from(*ask != Ask::Fever)] = true;
        }
        // Of two answers of one day the more cautious stands.
        let class = report.class.unwrap_or(DayClass::Unknown);
        let earlier = self.day.take();
        self.day = Some(DayNotes {
            class: earlier.as_ref().map_or(class, |earlier| earlier.class.min(class)),
            asks_asked: report.asks.is_some() || earlier.as_ref().is_some_and(|earlier| earlier.asks_asked),
            raised: report.asks.iter().flatten().next().is_some()
                || earlier.is_some_and(|earlier| earlier.raised),
        });
    }

    /// What was a pass while something else comes first is not kept, but its morning is waited for; one that left too little in
    /// reserve is, and as no pass.
    pub(super) fn forget_unheard(&mut self) {
        for lift in &mut self.lifts {
            let hard = |session: &&mut SessionNote| session.hard && session.verdict == Verdict::Unheard;
            lift.sessions.iter_mut().filter(hard).for_each(|session| session.verdict = Verdict::Nothing);
            let unheard = lift.sessions.iter().find(|session| session.verdict == Verdict::Unheard);
            lift.waits = unheard.map(|session| session.ago).or(lift.waits);
            lift.sessions.retain(|session| session.verdict != Verdict::Unheard);
        }
    }

    /// The sessions of today count as failed for these lifts.
    pub(super) fn take_back(&mut self, flared: &[bool]) {
        for (lift, _) in self.lifts.iter_mut().zip(flared).filter(|(_, flared)| **flared) {
            let today = lift.sessions.last_mut().filter(|session| session.ago == 0);
            if let Some(session) = today.filter(|session| session.verdict != Verdict::Critical) {
                session.verdict = Verdict::TakenBack;
            }
        }
    }

    fn tell_clearance(&mut self, given: &Clearance, on: Day) {
        let left = given.expires.map_or(CLEARANCE, |last| last.since(on)).max(-1);
        let mut load = given.limits.iter().any(|limit| limit.load.is_some());
        let mut range = given.limits.iter().any(|limit| limit.range.is_some());
        if let Some(earlier) = self.clearance.take().filter(|_| left < 0) {
            // One that has run out already lifts no limit.
            load |= earlier.load;
            range |= earlier.range;
        }
        self.clearance = Some(ClearanceNotes { status: given.status, left: left as i8, load, range });
        if given.status == ClearanceStatus::NotCleared {
            self.symptom = Some(false);
        } else if left >= 0 {
            self.ill = false;
            // A fall needs a clinician's own word about it.
            self.asks[0] = false;
            self.symptom.iter_mut().for_each(|cleared| *cleared = true);
            self.regions
                .iter_mut()
                .filter_map(|region| region.stop.as_mut())
                .for_each(|cleared| *cleared = true);
        }
    }

    /// A stop ends with a sign-off after a clearance that is in force.
    fn tell_sign_off(&mut self, scope: &SignOffScope) {
        let cleared = self.is_cleared();
        let ends = |stop: &mut bool| *stop && cleared;
        match scope {
            SignOffScope::Everything => drop(self.symptom.take_if(ends)),
            SignOffScope::Region(id) => drop(self.regions[region_number(id)].stop.take_if(ends)),
            SignOffScope::Gate(id) => self.lifts[number_of(id.as_str())].signed = true,
        }
    }

    fn tell_override(&mut self, given: &Override, before: &Standings, on: Day) {
        let number = number_of(given.lift.as_str());
        let Some(standing) = &before[number] else { return };
        let above = given.load > standing.grant.load();
        let left = given.expires.map(|last| last.since(on));
        let lift = &mut self.lifts[number];
        lift.eased = match left {
            Some(left) if !above && left >= 0 => Some((given.load, left as i8)),
            Some(left) if left < 0 => lift.eased,
            // Another word stands in its place, or none.
            _ => None,
        };
        self.lifts[number].allowed = match left {
            Some(left) if above && given.why.is_some() && left >= 0 => Some((given.load, left as i8)),
            // Refused, or of no effect any more: what was allowed before stays.
            _ if above => self.lifts[number].allowed,
            Some(left) if left < 0 => self.lifts[number].allowed,
            _ => None,
        };
    }

    fn tell_set(&mut self, set: Set) {
        let former: Vec<[bool; 3]> =
            (0..LIFTS.len()).map(|lift| core::array::from_fn(|region| self.concerns(lift, region))).collect();
        self.set = set;
        for (number, id) in LIFTS.iter().enumerate() {
            let lift = &mut self.lifts[number];
            lift.former = former[number];
            let Some(now) = set.lift(id) else { continue };
            let bar = now.implement.as_str() == "bar";
            if lift.bar != bar {
                // The number on the one says nothing about the other.
                let (sessions, moves) = (Vec::new(), Vec::new());
                *lift = LiftNotes {
                    sessions,
                    moves,
                    proven: None,
                    allowed: None,
                    eased: None,
                    bar,
                    ..lift.clone()
                };
            }
        }
        for region in 0..REGIONS.len() {
            self.regions[region].lifted |= self.is_loaded(region);
        }
    }

    /// A region that a lift once had concerns it while something in it is open or a clearance limits it; a stop where no
    /// lift loads concerns all, also those left out.
    fn note_former(&mut self) {
        for (number, id) in LIFTS.iter().enumerate() {
            let set = self.set.lift(id);
            for (region, name) in REGIONS.iter().enumerate() {
                let lost = self.regions[region].stop.is_some() && !self.is_loaded(region);
                let own = set.is_some_and(|set| set.regions.iter().any(|id| id.as_str() == *name));
                let open = self.regions[region].is_open() || (region == 0 && self.hip_is_limited());
                let former = &mut self.lifts[number].former[region];
                // One that is left out is looked at when it comes back.
                *former = (*former || lost) && (open || set.is_none()) && !own;
            }
        }
    }
}
