//! Two courses side by side, held against each other lift by lift.

use super::super::compare::*;
use super::super::course::*;
use super::told::{Worse, answers};
use std::collections::BTreeMap;

use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::Outcome;
use bismar::prescription::{LiftToday, next_session_from};
use bismar::progression::{Decision, Held as LightWork, MoveOutlook, Sitting, State, WayBack, fold};
use bismar::quantity::{Day, Name, Pain};
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

/// Why a lift is no longer held against the better course, until it and its regions stand alike in both again. Each is a
/// rule that is stated elsewhere, and not a fault.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Excuse {
    /// It passed at its grant where the better course did not pass at the same one: from here on it is granted what it has
    /// shown itself.
    ShownItself,
    /// One move at a time in a region, in a pair and in a window of weeks: where a worse report holds one, its turn goes to
    /// another, or to a later day.
    ItsTurn,
    /// The better course alone went to a harder rung, which costs load: back on the rung that both had, it stands lower.
    HarderRung,
    /// A coach eased it for good, to a load named for the better course: there it begins anew, and where the worse one stands
    /// at that load or below it already, nothing is to be eased.
    EasedAlone,
    /// It was trained while the worse course was stopped: that is against the stop and is not judged, so that it costs no
    /// step back either. The stop has cost one.
    TrainedDuringAStop,
    /// A fail on a confirmed day below the usual says nothing, and the worse day is confirmed.
    DayBelow,
    /// A pass whose morning nobody asked about keeps the run shut until it is answered; a session that does not count toward
    /// the run waits for no answer.
    Unanswered,
    /// A short break gave the better course the load before it back, where its passes are counted anew; the worse one goes on
    /// at the lower load that it came back at, with the passes that it has shown there.
    GivenBack,
    /// No session of it is on record: it begins where the coach said, and no break counts against it.
    NotBegun,
    /// Where nobody asked before training, the level that is agreed to be usual stands for what hurt then.
    UsualLevel,
    /// What hurts before training is the level that the morning after is held against, so that more of it before makes a
    /// flare of less.
    LevelBefore,
    /// More pain on an earlier day leaves no rise over three days where less of it did.
    NoRise,
    /// A session that is not told makes one break of two, and what two breaks leave of a load by the table may be less than
    /// what one leaves.
    OneBreakOfTwo,
    /// Something still keeps the worse course below its work: what light work has cost it is settled when it is let go. The better one
    /// has come back from its light work already.
    StillKept,
    /// It went a step back from the same load before the last weighing. What a help leaves to be moved is another part of another body:
    /// the better course, which goes back later, goes further.
    WeighedSince,
    /// A change of discs parts a day of the better course in two that are judged apart; with discs that stay as they are the same
    /// day is one.
    PartedAlone,
}

/// One log, event by event.
#[derive(Clone)]
struct Told {
    log: Log,
    state: State,
    /// Number of events taken.
    taken: usize,
}

impl Told {
    fn new(log: Log) -> Told {
        let state = State::before(&log);
        Told { log, state, taken: 0 }
    }

    /// Takes every event up to that day and number. An event that is turned away makes the log unreadable.
    fn up_to(&mut self, key: (Day, u32)) -> Result<(), Code> {
        while let Some(event) =
            self.log.events.get(self.taken).filter(|event| (event.day, event.sequence) <= key)
        {
            let applied = self.state.apply(event);
            self.taken += 1;
            match applied {
                Err(error) if error.code() == Code::NeedsRefold => {
                    let events = self.log.events[..self.taken].to_vec();
                    self.state = fold(&self.log.clone().with_events(events)).map_err(|error| error.code())?;
                }
                other => other.map_err(|error| error.code())?,
            }
        }
        Ok(())
    }
}

/// Both courses side by side, lift by lift.
pub struct Held {
    better: Told,
    worse: Told,
    excuses: BTreeMap<Name, Excuse>,
    /// What became of every lift so far, to be read where something was found.
    story: Vec<String>,
    /// How often each of them was met.
    pub met: BTreeMap<Excuse, usize>,
    /// How many lifts were held against each other so far.
    pub lifts: usize,
}

impl Excuse {
    /// All of them: one that is never met excuses nothing, and has to go.
    pub const ALL: [Excuse; 16] = [
        Excuse::ShownItself,
        Excuse::ItsTurn,
        Excuse::HarderRung,
        Excuse::EasedAlone,
        Excuse::TrainedDuringAStop,
        Excuse::DayBelow,
        Excuse::Unanswered,
        Excuse::GivenBack,
        Excuse::NotBegun,
        Excuse::UsualLevel,
        Excuse::LevelBefore,
        Excuse::NoRise,
        Excuse::OneBreakOfTwo,
        Excuse::StillKept,
        Excuse::WeighedSince,
        Excuse::PartedAlone,
    ];
}

impl Held {
    pub fn new(better: Log, worse: Log) -> Held {
        Held {
            better: Told::new(better),
            worse: Told::new(worse),
            excuses: BTreeMap::new(),
            story: Vec::new(),
            met: BTreeMap::new(),
            lifts: 0,
        }
    }

    fn tell(&mut self, key: (Day, u32)) {
        let kind = |told: &Told| told.log.events[..told.taken].last().map_or("", |event| event.kind.name());
        let mut line = format!("{} {} {} / {}", key.0, key.1, kind(&self.better), kind(&self.worse));
        for (one, other) in all_stand(&self.better.state).iter().zip(all_stand(&self.worse.state)) {
            let of = |lift: &Stands<'_>| {
                let grant = lift.grant;
                let sitting = lift.sittings.last().map(|last| (last.session, last.outcome, last.confirmed));
                let (place, work) = (grant.place, grant.work);
                format!(
                    "{} r{}{}{} {}x{}x{} f{} p{} h{} {sitting:?}",
                    lift.status,
                    place.rung,
                    place.range,
                    place.tempo,
                    work.sets,
                    work.reps,
                    work.load.kg(),
                    lift.fails,
                    lift.passes(),
                    lift.half_sessions
                )
            };
            line += &format!("\n    {} | {}", of(one), of(&other));
        }
        self.story.push(line);
    }

    /// Takes what happens up to then; none where the worse log cannot be read.
    pub fn up_to(&mut self, key: (Day, u32), worse: Worse) -> Result<Option<()>, TestCaseError> {
        let before = (self.better.clone(), self.worse.clone());
        self.better.up_to(key).expect("the better log can be read");
        if self.worse.up_to(key).is_err() {
            return Ok(None);
        }
        self.tell(key);
        let ids: Vec<Name> = self.better.state.lifts().map(|lift| lift.id().clone()).collect();
        for id in ids {
            if self.stands_alike(&id) {
                self.excuses.remove(&id);
            } else if !self.excuses.contains_key(&id)
                && let Some(excuse) = self.excuse(&id, &before, key.0, worse)?
            {
                self.excuses.insert(id, excuse);
                *self.met.entry(excuse).or_default() += 1;
            }
        }
        Ok(Some(()))
    }

    /// Whether the lift and everything known of the body stand alike in both courses.
    fn stands_alike(&self, id: &Name) -> bool {
        let (one, other) = (&self.worse.state, &self.better.state);
        let of = |state: &State| state.lift_state(id).map(|lift| lift.now().clone());
        of(one) == of(other) && one.regions() == other.regions()
    }

    fn excuse(
        &self,
        id: &Name,
        before: &(Told, Told),
        on: Day,
        worse: Worse,
    ) -> Result<Option<Excuse>, TestCaseError> {
        let Some(at) = place_of(&self.better.state, id) else { return Ok(None) };
        let (one, other) = (stands(&self.worse.state, at), stands(&self.better.state, at));
        let (then, other_then) = (stands_of(&before.1.state, id), stands_of(&before.0.state, id));
        let Some((then, other_then)) = then.zip(other_then) else { return Ok(None) };
        let set = &self.worse.state.parameters().unwrap().lifts[at];
        let trained = one.last_session == Some(on) && then.last_session != Some(on);
        // A pass that gave back the load before a short break leaves no sitting behind.
        let restored =
            |lift: &Stands<'_>| lift.here.0 == 0 && [HOLDING, LEARNING, MAINTAINING].contains(&lift.status);
        let passed = |lift: &Stands<'_>| {
            restored(lift) || lift.sittings.last().is_some_and(|last| last.outcome == Outcome::Pass)
        };
        if trained && then.status == STOPPED && other_then.status != STOPPED {
            return Ok(Some(Excuse::TrainedDuringAStop));
        }
        if one.last_session.is_none() && other.last_session.is_some() {
            return Ok(Some(Excuse::NotBegun));
        }
        let today =
            self.better.log.events[..self.better.taken].iter().rev().take_while(|event| event.day == on);
        let eased = today.into_iter().any(|event| matches!(event.kind, EventKind::CoachOverride(_)));
        if eased && other.grant.load() < other_then.grant.load() && one.grant == then.grant {
            return Ok(Some(Excuse::EasedAlone));
        }
        let way = |lift: &Stands<'_>| lift.now.status.way_back();
        let ways = (way(&one), way(&other));
        if worse == Worse::NotTold && trained && is_one_break_of_two(ways, way(&other_then)) {
            return Ok(Some(Excuse::OneBreakOfTwo));
        }
        let from = one.stepped_from().filter(|from| other.stepped_from() == Some(*from));
        let weighed = |event: &&Event| matches!(event.kind, EventKind::BodyMassRecorded(_));
        let mut weighings = self.worse.log.events.iter().filter(weighed);
        let weighed_since = weighings.any(|event| event.day > one.since && event.day <= on);
        if from.is_some() && weighed_since && one.grant.load() > other.grant.load() {
            return Ok(Some(Excuse::WeighedSince));
        }
        if worse == Worse::Discs && one.last_session == Some(on) && self.is_parted_alone(on) {
            return Ok(Some(Excuse::PartedAlone));
        }
        let same = then.grant == other_then.grant;
        if trained && passed(&one) && !(same && passed(&other)) {
            return Ok(Some(Excuse::ShownItself));
        }
        let lower = one.grant.place == other.grant.place && one.grant.load() < other.grant.load();
        if restored(&other) && one.here.0 > 0 && lower {
            return Ok(Some(Excuse::GivenBack));
        }
        let usual = |id: &Name| self.worse.state.region(id).is_some_and(|region| region.usual.is_some());
        if matches!(worse, Worse::NoPain | Worse::NotTold) && trained && set.regions.iter().any(usual) {
            return Ok(Some(Excuse::UsualLevel));
        }
        let more_pain = matches!(worse, Worse::Pain { .. } | Worse::PainBetween { .. });
        if more_pain && trained && self.hurt_before(at, on) {
            return Ok(Some(Excuse::LevelBefore));
        }
        let rises = |state: &State, id: &Name| state.region(id).is_some_and(|region| rises(&region.scores));
        let rises_no_more = |id: &&Name| rises(&self.better.state, id) && !rises(&self.worse.state, id);
        if more_pain && set.regions.iter().find(rises_no_more).is_some() {
            return Ok(Some(Excuse::NoRise));
        }
        if worse == Worse::Class(DayClass::Below) && one.neutral > other.neutral {
            return Ok(Some(Excuse::DayBelow));
        }
        let open = |sitting: &&Sitting| sitting.outcome == Outcome::Pass && !sitting.confirmed;
        let mut unanswered = other.now.sittings.iter().filter(open);
        let counts =
            |session: u32| one.sittings.iter().filter(open).any(|sitting| sitting.session == session);
        if unanswered.any(|sitting| !counts(sitting.session)) {
            return Ok(Some(Excuse::Unanswered));
        }
        if set.is_harder(other.grant.place.rung, one.grant.place.rung)
            && other.moves.last() != other_then.moves.last()
        {
            return Ok(Some(Excuse::HarderRung));
        }
        let moved = |now: &Stands<'_>, before: &Stands<'_>| now.moves.last() != before.moves.last();
        if !moved(&one, &then) || moved(&other, &other_then) {
            return Ok(None);
        }
        // It moved where the better course did not: it catches up, or the better one only waits for its turn.
        let decision = self.better.state.decide(on).unwrap().swap_remove(at);
        let after = with(&decision, |decision| decision.grant = one.grant);
        if granted_more(set, &with(&after, |after| after.limit = one.grant.load()), &decision).is_none() {
            return Ok(None);
        }
        let MoveOutlook::Blocked { by, .. } = &decision.outlook else { return Ok(Some(Excuse::ItsTurn)) };
        let story = self.story.join("\n");
        prop_assert!(
            by.iter().all(only_waits),
            "{} moved, where better was held by {by:?}\n{story}",
            set.id.as_str()
        );
        Ok(Some(Excuse::ItsTurn))
    }

    /// Whether the discs change on that day in the better course alone.
    fn is_parted_alone(&self, on: Day) -> bool {
        let changes = |log: &Log| {
            let sets = log.events.iter().filter_map(|event| match &event.kind {
                EventKind::ParametersChanged(all) => Some((event.day, &all.stock)),
                _ => None,
            });
            let sets: Vec<_> = sets.collect();
            sets.windows(2).any(|two| two[1].0 == on && two[0].1 != two[1].1)
        };
        changes(&self.better.log) && !changes(&self.worse.log)
    }

    /// Whether more pain in a region of the lift was told on that day outside training in the worse course.
    fn hurt_before(&self, at: usize, on: Day) -> bool {
        let said = |log: &Log| -> Vec<PainAnswer> {
            let today = log.events.iter().filter(|event| event.day == on);
            let reports = today.filter(|event| !matches!(event.kind, EventKind::SessionRecorded(_)));
            let mut all = Vec::new();
            for event in reports {
                let mut kind = event.kind.clone();
                match &mut kind {
                    EventKind::PainReport(answer) => all.push(answer.clone()),
                    kind => all.extend(answers(kind).and_then(|pain| pain.take()).unwrap_or_default()),
                }
            }
            all
        };
        let (worse, better) = (said(&self.worse.log), said(&self.better.log));
        let set = &self.worse.state.parameters().unwrap().lifts[at];
        worse.iter().any(|answer| set.regions.contains(&answer.region) && !better.contains(answer))
    }

    /// Nothing more is granted, asked or on offer on that day.
    pub fn compare(&mut self, today: Day, whole: bool, told: Worse) -> Result<(), TestCaseError> {
        let of = |told: &Told| Answers::of(&told.state, today, whole);
        let (worse, better) = (of(&self.worse), of(&self.better));
        let sets = &self.worse.state.parameters().unwrap().lifts;
        for (at, set) in sets.iter().enumerate().filter(|(_, set)| !self.excuses.contains_key(&set.id)) {
            let (one, other) = (&worse.decisions[at], &better.decisions[at]);
            let first = stands_of(&self.better.state, &set.id).and_then(|lift| lift.now.status.way_back());
            let ways = (one.status.way_back(), other.status.way_back());
            if told == Worse::NotTold && is_one_break_of_two(ways, first) {
                *self.met.entry(Excuse::OneBreakOfTwo).or_default() += 1;
                continue;
            }
            if is_still_kept(stands(&self.worse.state, at).held, other) {
                *self.met.entry(Excuse::StillKept).or_default() += 1;
                continue;
            }
            let asked = worse.session.get(at).zip(better.session.get(at));
            self.lifts += 1;
            let more = granted_more(set, one, other)
                .or_else(|| asked.and_then(|(one, other)| asked_more(set, one, other)));
            prop_assert!(
                more.is_none(),
                "{} on {today}: {}\n  better {}\n  worse {}\n{}",
                set.id.as_str(),
                more.unwrap(),
                told_of(other, &self.better.state, at),
                told_of(one, &self.worse.state, at),
                self.story.join("\n")
            );
            offers_more(set, one, other, &self.story)?;
        }
        Ok(())
    }
}

/// What is decided and prescribed on one day.
pub struct Answers {
    decisions: Vec<Decision>,
    pub session: Vec<LiftToday>,
}

impl Answers {
    /// Of the work itself only where the whole of it is asked for: what is loaded is worked out anew each time.
    pub fn of(state: &State, today: Day, whole: bool) -> Answers {
        if !whole {
            return Answers { decisions: state.decide(today).unwrap(), session: Vec::new() };
        }
        let plan = Plan::of(state.parameters().unwrap().lifts.iter().map(|lift| lift.id.clone()));
        let session = next_session_from(state, &plan, today).unwrap().lifts;
        Answers { decisions: state.decide(today).unwrap(), session }
    }
}

/// Whether, on its way back from a first break already, the better course comes back from a second one, neither of which is
/// longer than the one that the worse course comes back from.
fn is_one_break_of_two((worse, better): (Option<WayBack>, Option<WayBack>), first: Option<WayBack>) -> bool {
    let (Some(one), Some(other), Some(first)) = (worse, better, first) else { return false };
    // Of two breaks of one way the longer is told.
    other != first && other.gap <= one.gap
}

/// What is decided of a lift, for whoever reads what was found.
fn told_of(decision: &Decision, state: &State, at: usize) -> String {
    let held = stands(state, at).held;
    format!("{:?} at {}, {:?}, {held:?}", decision.status, decision.limit, decision.reasons)
}

/// Whether something keeps the worse course below its work as ever, while the better one has come back from its light work.
fn is_still_kept(worse: Option<LightWork>, better: &Decision) -> bool {
    let let_go = better.status.way_back().is_some_and(|way| way.held);
    let_go && worse.is_some_and(|held| held.goes_on)
}

/// Whether pain rises over the three training days that are kept.
fn rises(scores: &[(Day, Pain)]) -> bool {
    scores.len() == 3 && scores.windows(2).all(|pair| pair[0].1 < pair[1].1)
}

/// Reasons that end by waiting for a turn.
fn only_waits(reason: &Reason) -> bool {
    matches!(
        reason,
        Reason::CoolingOff { .. }
            | Reason::RegionWindow { .. }
            | Reason::PairWindow { .. }
            | Reason::WindowCap { .. }
    )
}

/// A move on offer in the worse course alone leads no further than the better one stands, or the better one waits for its
/// turn.
fn offers_more(
    set: &LiftParameters,
    worse: &Decision,
    better: &Decision,
    story: &[String],
) -> Result<(), TestCaseError> {
    let (MoveOutlook::OnOffer { to }, MoveOutlook::Blocked { by, .. }) = (&worse.outlook, &better.outlook)
    else {
        return Ok(());
    };
    let there = with(worse, |there| (there.grant, there.limit) = (*to, better.limit));
    let catches_up = granted_more(set, &there, better).is_none();
    prop_assert!(
        catches_up || by.iter().all(only_waits),
        "{}: {to:?} on offer, where better is held by {by:?}\n{}",
        set.id.as_str(),
        story.join("\n")
    );
    Ok(())
}
