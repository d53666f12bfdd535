//! What was done, what passed, and how the granted load moved: the library's history, beside what the log itself tells.

use std::collections::BTreeMap;

use bismar::Error;
use bismar::answers::{GrantStep, LiftOutcome, SessionDone};
use bismar::gate::Outcome;
use bismar::quantity::{Day, Mass, Name};
use bismar::record::{Event, EventKind, LiftSession, Parameters};
use bismar::text::Words;
use serde::{Deserialize, Serialize};

use crate::opened::Which;

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
#[derive(Serialize)]
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

#[derive(Serialize)]
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
#[derive(Serialize)]
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
    let last_day = state.last().map(|(day, _)| day);
    let today = last_day.map_or(asked.today, |last| asked.today.max(last));
    let found = opened.course()?.history(&*opened.diary()?, None, today)?;
    let events = log.effective()?;
    let by_number: BTreeMap<u32, &Event> = events.iter().map(|event| (event.sequence, &**event)).collect();
    let words = state.parameters().map_or_else(Words::plain, Words::of);
    let age = log.lifter.born.and_then(|born| bismar::horizon::Age::on(born, asked.today).ok());
    let mut stops = Vec::new();
    if state.stop().is_some() {
        stops.push("everything".to_string());
    }
    let stopped = state.regions().iter().filter(|region| region.stop.is_some());
    stops.extend(stopped.map(|region| words.region_name(&region.id).to_string()));
    let told = |session: SessionDone| {
        let event = by_number.get(&session.event)?;
        Some(Done { days_ago: asked.today.since(session.day), ..Done::of(event, session, &words)? })
    };
    Ok(Answer {
        parameters: state.parameters().cloned(),
        age: age.map(|age| age.completed()),
        last_day,
        next_day: last_day.and_then(|day| day.plus(1).ok()),
        stops,
        events: events.iter().map(|event| entry(event)).collect(),
        sessions: found.sessions.into_iter().filter_map(told).collect(),
        steps: found.steps.into_iter().map(Step::of).collect(),
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

impl Done {
    /// What came of a session, with what the log tells of it; none of an event that is no session.
    fn of(event: &Event, session: SessionDone, words: &Words<'_>) -> Option<Done> {
        let EventKind::SessionRecorded(told) = &event.kind else { return None };
        let pain = told.pain.iter().flatten();
        let pain = pain.map(|pain| format!("{} {}/10", words.region_name(&pain.region), pain.score.score()));
        Some(Done {
            sequence: session.event,
            day: session.day,
            days_ago: session.days_ago,
            minutes: told.minutes,
            pain: pain.collect(),
            pain_asked: told.pain.is_some(),
            lifts: told
                .lifts
                .iter()
                .zip(session.lifts)
                .map(|(lift, came)| DoneLift::of(lift, came))
                .collect(),
            note: event.note.clone(),
        })
    }
}

impl DoneLift {
    fn of(told: &LiftSession, came: LiftOutcome) -> DoneLift {
        DoneLift {
            lift: came.lift,
            load: came.load.unwrap_or(Mass::ZERO),
            each_hand: came.each_hand,
            sets: told.sets.clone(),
            passed: came.outcome,
            taken_back: came.taken_back,
            acceptable: came.acceptable,
            scored: came.scored,
            weakest: came.weakest,
            cue: told.cue.clone(),
            setup: told.setup.clone(),
        }
    }
}

impl Step {
    fn of(step: GrantStep) -> Step {
        Step {
            sequence: step.event,
            day: step.day,
            at: step.days_in,
            lift: step.lift,
            load: step.load,
            each_hand: step.each_hand,
            status: step.status.as_str(),
            cause: step.cause,
        }
    }
}
