//! What was done, what passed, and how the granted load moved, in the order in which it counts.

use std::collections::{BTreeMap, BTreeSet};

use bismar::Error;
use bismar::gate::{Outcome, session_pass};
use bismar::loading::Implement;
use bismar::progression::{State, fold};
use bismar::quantity::{Day, Mass, Name};
use bismar::record::{Event, EventKind, LiftSession, Log, Parameters, Session};
use bismar::text::Words;
use bismar::value::Value;
use serde::{Deserialize, Serialize};

use crate::opened::{Which, may_open};

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "HistoryAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: Which,
    today: Day,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "HistoryAnswer"))]
pub(crate) struct Answer {
    #[serde(skip_serializing_if = "Option::is_none")]
    parameters: Option<Parameters>,
    /// Completed years of age.
    #[serde(skip_serializing_if = "Option::is_none")]
    age: Option<u8>,
    /// Day of the last event.
    #[serde(skip_serializing_if = "Option::is_none")]
    last_day: Option<Day>,
    /// First day after the last event.
    #[serde(skip_serializing_if = "Option::is_none")]
    next_day: Option<Day>,
    /// The stops in force, each a region or everything.
    stops: Vec<String>,
    /// Every event in force, corrections applied, in order.
    events: Vec<Entry>,
    sessions: Vec<Done>,
    /// Where each lift stood after each event that moved it.
    steps: Vec<Step>,
}

/// An event in one line.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "HistoryEntry"))]
struct Entry {
    sequence: u32,
    day: Day,
    kind: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<String>,
    /// What it says, for those that are short.
    #[serde(skip_serializing_if = "Option::is_none")]
    said: Option<EventKind>,
}

/// A session that was done.
#[derive(Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Done {
    sequence: u32,
    day: Day,
    days_ago: i32,
    #[serde(skip_serializing_if = "Option::is_none")]
    minutes: Option<u16>,
    pain: Vec<String>,
    pain_asked: bool,
    lifts: Vec<DoneLift>,
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<String>,
}

#[derive(Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct DoneLift {
    lift: Name,
    /// Heaviest work set.
    load: Mass,
    /// Its load was one of two, one in each hand.
    each_hand: bool,
    sets: Vec<bismar::record::WorkSet>,
    /// What it came to in the end: what was told the next morning may take a pass back.
    passed: Outcome,
    /// By its marks it passed, and the morning after took that back.
    taken_back: bool,
    acceptable: u32,
    scored: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    weakest: Option<Name>,
    #[serde(skip_serializing_if = "Option::is_none")]
    cue: Option<Name>,
    /// Who was there, and the pins.
    #[serde(skip_serializing_if = "Option::is_none")]
    setup: Option<bismar::record::Setup>,
}

/// A lift's place after an event.
#[derive(Clone, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Step {
    sequence: u32,
    day: Day,
    /// Days since the first event, for drawing.
    at: i32,
    lift: Name,
    load: Mass,
    /// It is one of two, one in each hand.
    each_hand: bool,
    /// Name of the state.
    status: &'static str,
    cause: &'static str,
}

/// The history of a log.
pub(crate) fn history(asked: Asked) -> Result<Answer, Error> {
    let opened = asked.log.open()?;
    let (log, state) = (&opened.log, &opened.state);
    let events: Vec<Event> = log.effective()?.into_iter().map(|event| event.into_owned()).collect();
    let walk = opened.walked(|walk| walk.follow(log, &events))?;
    let ago = |session: &Done| Done { days_ago: asked.today.since(session.day), ..session.clone() };
    let sessions = walk.sessions.iter().map(ago).collect();
    let age = log.lifter.born.and_then(|born| bismar::horizon::Age::on(born, asked.today).ok());
    let last_day = state.last().map(|(day, _)| day);
    let mut stops = Vec::new();
    if state.stop().is_some() {
        stops.push("everything".to_string());
    }
    let words = state.parameters().map_or_else(Words::plain, Words::of);
    let stopped = state.regions().iter().filter(|region| region.stop.is_some());
    stops.extend(stopped.map(|region| words.region_name(&region.id).to_string()));
    Ok(Answer {
        parameters: state.parameters().cloned(),
        age: age.map(|age| age.completed()),
        last_day,
        next_day: last_day.and_then(|day| day.plus(1).ok()),
        stops,
        events: events.iter().map(entry).collect(),
        sessions,
        steps: walk.steps.clone(),
    })
}

fn entry(event: &Event) -> Entry {
    // Whole sets of parameters are long, and stand above with the sessions.
    let said = match &event.kind {
        EventKind::ParametersChanged(_) | EventKind::SessionRecorded(_) => None,
        kind => Some(kind.clone()),
    };
    Entry {
        sequence: event.sequence,
        day: event.day,
        kind: event.kind.name(),
        note: event.note.clone(),
        said,
    }
}

/// A log as it was followed, event by event; kept beside it, and followed on from where it ended.
#[derive(Clone)]
pub(crate) struct Walk {
    taken: usize,
    first: Option<Day>,
    state: State,
    sessions: Vec<Done>,
    steps: Vec<Step>,
    stood: Vec<Stood>,
}

impl Walk {
    pub(crate) fn before(log: &Log) -> Walk {
        let (sessions, steps, stood) = (Vec::new(), Vec::new(), Vec::new());
        Walk { taken: 0, first: None, state: State::before(log), sessions, steps, stood }
    }

    /// Follows the events that were not taken yet.
    fn follow(self, log: &Log, events: &[Event]) -> Result<Walk, Error> {
        let Walk { taken, first, mut state, mut sessions, mut steps, mut stood } = self;
        let first = first.or_else(|| events.first().map(|event| event.day));
        let told = Told::of(log);
        for (at, event) in events.iter().enumerate().skip(taken) {
            let mut before = None;
            if state.changes_the_past(event) || told.by_correction(event) {
                // It reaches back, or was told later than it is numbered: the state of the whole beginning, folded anew.
                let beginning = told.beginning(log, events.get(..=at).unwrap_or_default());
                before = Some(std::mem::replace(&mut state, fold(&beginning)?));
            } else {
                state = state.applied(event)?;
            }
            if let EventKind::SessionRecorded(session) = &event.kind {
                sessions.push(done(event, session, &state));
            }
            if let Some(before) = &before {
                let spoken_of = spoken_of(&event.kind, &sessions);
                for session in sessions.iter_mut().rev().take(LOOKED_AT_AGAIN) {
                    session.judge(before, &state, spoken_of == Some(session.day));
                }
            }
            let now = places(&state);
            steps.extend(moved(event, (&stood, &now), first, state.parameters()));
            stood = now;
        }
        Ok(Walk { taken: events.len(), first, state, sessions, steps, stood })
    }
}

/// Of each correction in a log the event that it corrects in the end, and these events.
#[derive(Default)]
struct Told {
    first: BTreeMap<u32, u32>,
    events: BTreeSet<u32>,
}

impl Told {
    /// A log that was read has no corrections in a circle.
    fn of(log: &Log) -> Told {
        let said = log.events.iter().filter_map(|event| match &event.kind {
            EventKind::Correction(correction) => Some((event.sequence, correction.replaces)),
            _ => None,
        });
        let said: BTreeMap<u32, u32> = said.collect();
        let mut told = Told::default();
        for from in said.keys() {
            let (mut path, mut at) = (Vec::new(), *from);
            while let (None, Some(replaced)) = (told.first.get(&at), said.get(&at)) {
                path.push(at);
                at = *replaced;
            }
            let first = told.first(at);
            told.first.extend(path.into_iter().map(|link| (link, first)));
            told.events.insert(first);
        }
        told
    }

    /// The event that is spoken of.
    fn first(&self, sequence: u32) -> u32 {
        self.first.get(&sequence).copied().unwrap_or(sequence)
    }

    /// Whether it matters when it was told, and a correction told it.
    fn by_correction(&self, event: &Event) -> bool {
        may_open(&event.kind) && self.events.contains(&event.sequence)
    }

    /// The log of these events in force, with the corrections that tell them.
    fn beginning(&self, log: &Log, events: &[Event]) -> Log {
        let taken: BTreeSet<u32> = events.iter().map(|event| event.sequence).collect();
        let of_them = |event: &&Event| taken.contains(&self.first(event.sequence));
        log.clone().with_events(log.events.iter().filter(of_them).cloned().collect())
    }
}

type Stood = (Name, Mass, &'static str);

/// Lifts that stand elsewhere than before, or were trained.
fn moved(
    event: &Event,
    (stood, now): (&[Stood], &[Stood]),
    first: Option<Day>,
    set: Option<&Parameters>,
) -> Vec<Step> {
    let at = first.map_or(0, |first| event.day.since(first));
    let trained = |lift: &Name| match &event.kind {
        EventKind::SessionRecorded(session) => session.lifts.iter().any(|done| done.lift == *lift),
        _ => false,
    };
    now.iter()
        .filter(|one| trained(&one.0) || !stood.contains(one))
        .map(|(lift, load, status)| Step {
            sequence: event.sequence,
            day: event.day,
            at,
            lift: lift.clone(),
            load: *load,
            each_hand: each_hand(set, lift),
            status,
            cause: event.kind.name(),
        })
        .collect()
}

/// Sessions back that a later event can judge anew: more than the library lets one reach.
const LOOKED_AT_AGAIN: usize = 12;

/// What a session of a lift came to for its gate, as the state has it.
fn outcome(state: &State, lift: &Name, session: u32) -> Option<Outcome> {
    let sittings = &state.lift_state(lift)?.now().sittings;
    sittings.iter().rev().find(|sitting| sitting.session == session).map(|sitting| sitting.outcome)
}

/// The day of training that an answer about pain speaks of.
fn spoken_of(kind: &EventKind, sessions: &[Done]) -> Option<Day> {
    match kind {
        EventKind::NextDayReport(report) => sessions
            .iter()
            .rev()
            .find(|session| session.sequence == report.session)
            .map(|session| session.day),
        EventKind::DayReport(_) | EventKind::PainReport(_) => sessions.last().map(|session| session.day),
        _ => None,
    }
}

impl Done {
    /// Judges it by the state that came of a later event; `spoken_of` is whether that was an answer about its pain.
    fn judge(&mut self, before: &State, after: &State, spoken_of: bool) {
        for lift in &mut self.lifts {
            let was = outcome(before, &lift.lift, self.sequence);
            let passed = was == Some(Outcome::Pass);
            // A lift that went a step back over it remembers nothing of its old place.
            let now = outcome(after, &lift.lift, self.sequence)
                .or_else(|| (spoken_of && passed).then_some(Outcome::Fail));
            let Some(now) = now else { continue };
            lift.taken_back = now != Outcome::Pass && (lift.taken_back || (spoken_of && passed));
            lift.passed = now;
        }
    }
}

/// Whether a load of that lift is one of two, one in each hand.
pub(crate) fn each_hand(set: Option<&Parameters>, lift: &Name) -> bool {
    let implement = set.and_then(|all| all.implement(&all.lift(lift)?.implement));
    match implement {
        Some(Implement::Handle(handle)) => {
            Value::write(handle).is_ok_and(|told| told.field("handles") == Some(&Value::Number(2.0)))
        }
        Some(Implement::Pieces(_)) => true,
        _ => false,
    }
}

fn places(state: &State) -> Vec<Stood> {
    state.lifts().map(|lift| (lift.id().clone(), lift.grant().load(), lift.status().as_str())).collect()
}

fn done(event: &Event, session: &Session, state: &State) -> Done {
    let words = state.parameters().map_or_else(Words::plain, Words::of);
    Done {
        sequence: event.sequence,
        day: event.day,
        // Told when it is asked about.
        days_ago: 0,
        minutes: session.minutes,
        pain: session
            .pain
            .iter()
            .flatten()
            .map(|pain| format!("{} {}/10", words.region_name(&pain.region), pain.score.score()))
            .collect(),
        pain_asked: session.pain.is_some(),
        lifts: session.lifts.iter().map(|lift| done_lift(lift, event.sequence, state)).collect(),
        note: event.note.clone(),
    }
}

fn done_lift(lift: &LiftSession, session: u32, state: &State) -> DoneLift {
    let set = state.parameters().and_then(|all| all.lift(&lift.lift));
    let marks: Vec<_> = lift.sets.iter().filter_map(|set| set.marks.clone()).collect();
    let verdict = set.and_then(|set| session_pass(&set.pass, &set.criteria, &marks).ok());
    DoneLift {
        lift: lift.lift.clone(),
        each_hand: each_hand(state.parameters(), &lift.lift),
        load: lift.sets.iter().map(|set| set.load).max().unwrap_or(Mass::ZERO),
        sets: lift.sets.clone(),
        passed: outcome(state, &lift.lift, session)
            .or_else(|| verdict.as_ref().map(|verdict| verdict.passed))
            .unwrap_or(Outcome::NotScored),
        taken_back: false,
        acceptable: verdict.as_ref().map_or(0, |verdict| verdict.acceptable),
        scored: verdict.as_ref().map_or(0, |verdict| verdict.scored),
        weakest: verdict.and_then(|verdict| verdict.weakest),
        cue: lift.cue.clone(),
        setup: lift.setup.clone(),
    }
}
