//! Files in and out: what one would change, a copy without health detail, sets as a table.

use std::fmt::Write as _;

use bismar::Error;
use bismar::progression::fold;
use bismar::quantity::{Day, Name};
use bismar::record::{Clearance, ClearanceStatus, Effort, Event, EventKind, Lifter, Log};
use bismar::value::Value;
use serde::{Deserialize, Serialize};

/// A log that came in, and the one that is here, if any.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Incoming {
    incoming: String,
    #[serde(default)]
    here: Option<String>,
}

/// What it would change.
#[derive(Serialize)]
pub(crate) struct Preview {
    lifter: Lifter,
    events: u32,
    same: u32,
    added: Vec<Change>,
    changed: Vec<Change>,
    /// Events that are here and not in the file.
    only_here: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    last_day: Option<Day>,
    /// The file's log as text, in one spelling.
    log: String,
}

#[derive(Serialize)]
struct Change {
    sequence: u32,
    day: Day,
    kind: &'static str,
}

impl Change {
    fn of(event: &Event) -> Change {
        Change { sequence: event.sequence, day: event.day, kind: event.kind.name() }
    }
}

/// What a log that came in would change here; a log that does not fold is refused whole.
pub(crate) fn preview(asked: Incoming) -> Result<Preview, Error> {
    let incoming = Log::from_json(&asked.incoming)?;
    fold(&incoming)?;
    let here = asked.here.map(|text| Log::from_json(&text)).transpose()?;
    let known = here.map(|log| log.events).unwrap_or_default();
    let (mut added, mut changed, mut same) = (Vec::new(), Vec::new(), 0_u32);
    let by_number: std::collections::BTreeMap<u32, &Event> =
        known.iter().map(|event| (event.sequence, event)).collect();
    for event in &incoming.events {
        match by_number.get(&event.sequence) {
            None => added.push(Change::of(event)),
            Some(own) if *own == event => same += 1,
            Some(_) => changed.push(Change::of(event)),
        }
    }
    let only_here = (known.len() as u32).saturating_sub(same).saturating_sub(changed.len() as u32);
    Ok(Preview {
        events: incoming.events.len() as u32,
        same,
        added,
        changed,
        only_here,
        last_day: incoming.events.iter().map(|event| event.day).max(),
        log: Value::write(&incoming)?.to_json(),
        lifter: incoming.lifter,
    })
}

/// A log as text.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Whole {
    log: String,
}

/// The log without answers about pain, symptoms, days, clearances, body mass and notes. It ends stopped: what was
/// left out may have held a limit, so a new clearance comes first wherever the copy is used.
pub(crate) fn without_health(asked: Whole) -> Result<String, Error> {
    let log = Log::from_json(&asked.log)?;
    let mut events: Vec<Event> =
        log.effective()?.into_iter().filter_map(|event| stripped(event.into_owned())).collect();
    let day = log.events.iter().map(|event| event.day).max();
    if let Some(day) = day {
        let sequence =
            log.events.iter().map(|event| event.sequence).max().unwrap_or_default().saturating_add(1);
        let who = Name::new("health detail left out")?;
        let stop = Clearance { status: ClearanceStatus::NotCleared, who, expires: None, limits: Vec::new() };
        events.push(Event { sequence, day, kind: EventKind::ClearanceRecorded(stop), note: None });
    }
    let copy = Log { events, lifter: Lifter { born: None, age: None, ..log.lifter }, ..log };
    fold(&copy)?;
    Ok(Value::write(&copy)?.to_json())
}

fn stripped(mut event: Event) -> Option<Event> {
    event.note = None;
    match &mut event.kind {
        EventKind::SessionRecorded(session) => session.pain = None,
        EventKind::CoachOverride(given) => given.why = given.why.as_ref().map(|_| "left out".to_string()),
        EventKind::SessionMissed(missed) => missed.reason = Name::new("left out").ok()?,
        EventKind::DayReport(_)
        | EventKind::AskAnswered(_)
        | EventKind::NextDayReport(_)
        | EventKind::PainReport(_)
        | EventKind::UsualPainAgreed(_)
        | EventKind::SymptomReport(_)
        | EventKind::ClearanceRecorded(_)
        | EventKind::ClearanceExpired(_)
        | EventKind::LayoffNoted(_)
        | EventKind::BodyMassRecorded(_)
        | EventKind::FunctionTested(_)
        | EventKind::Unknown(_) => return None,
        EventKind::CoachSignOff(_) => return None,
        _ => {}
    }
    Some(event)
}

/// The log as indented JSON.
pub(crate) fn pretty(asked: Whole) -> Result<String, Error> {
    Ok(Value::from_json(&asked.log)?.to_json_pretty())
}

/// Text for one cell; what a spreadsheet would take for a formula is marked as text.
fn cell(text: &str) -> String {
    let mark = if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { "'" } else { "" };
    format!("\"{mark}{}\"", text.replace('"', "\"\""))
}

/// Every work set as one line of a table; no health detail is in it.
pub(crate) fn sets_table(asked: Whole) -> Result<String, Error> {
    let log = Log::from_json(&asked.log)?;
    let mut out = String::from(
        "day,session,lift,set,load_kg,load_lb,reps,reps_in_reserve,rating,missed,acceptable_reps,scored_reps,cue\r\n",
    );
    for event in log.effective()? {
        let EventKind::SessionRecorded(session) = &event.kind else { continue };
        for lift in &session.lifts {
            let cue = lift.cue.as_ref().map(|cue| cell(cue.as_str())).unwrap_or_default();
            for (number, set) in (1..).zip(&lift.sets) {
                let (reserve, rating) = match set.effort {
                    Some(Effort::Rir(rir)) => (rir.to_string(), String::new()),
                    Some(Effort::Rpe(rpe)) => (String::new(), rpe.to_string()),
                    None => (String::new(), String::new()),
                };
                let marks = set.marks.as_ref();
                let acceptable = marks.and_then(|marks| marks.acceptable).map(|count| count.to_string());
                let scored = acceptable.as_ref().and(marks).map(|marks| marks.reps.to_string());
                _ = write!(
                    out,
                    "{},{},{},{number},{:.3},{:.3},{},{reserve},{rating},{},{},{},{cue}\r\n",
                    event.day,
                    event.sequence,
                    cell(lift.lift.as_str()),
                    set.load.kg(),
                    set.load.lb(),
                    set.reps,
                    u8::from(set.failed),
                    acceptable.unwrap_or_default(),
                    scored.unwrap_or_default(),
                );
            }
        }
    }
    Ok(out)
}
