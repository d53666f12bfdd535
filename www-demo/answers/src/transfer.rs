//! Files in and out: what one would change, a copy without health detail, sets as a table.

use std::fmt::Write as _;

use bismar::Error;
use bismar::answers::Diary;
use bismar::progression::{State, fold};
use bismar::quantity::Day;
use bismar::record::{Effort, Event, EventKind, Lifter, Log, Plan};
use bismar::value::Value;
use serde::{Deserialize, Serialize};

use crate::keeping::{Difference, differences};
use crate::opened::Which;
use crate::opens::{StopGone, stops_gone};

/// A log that came in, and the one that is here, if any.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Incoming {
    incoming: String,
    #[serde(default)]
    here: Option<Which>,
    /// The file's plan, if it has one.
    #[serde(default)]
    plan: Option<String>,
    #[serde(default)]
    plan_here: Option<String>,
}

/// What it would change.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Preview {
    lifter: Lifter,
    events: u32,
    same: u32,
    added: Vec<Change>,
    changed: Vec<Change>,
    /// Events that are here and not in the file.
    only_here: u32,
    /// The stops in force here that would be gone.
    opens: Vec<StopGone>,
    /// In what the header, the plan, and what is set for the lifts differ; nothing for a lifter who is new here.
    header: Vec<Difference>,
    plan: Vec<Difference>,
    parameters: Vec<Difference>,
    #[serde(skip_serializing_if = "Option::is_none")]
    last_day: Option<Day>,
    /// The file's log as text, in one spelling.
    log: String,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "TransferChange"))]
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
    let there = Diary::of(&incoming)?;
    let state = there.state();
    let here = asked.here.map(|one| one.open()).transpose()?;
    let plan = match (asked.plan_here, asked.plan) {
        (Some(here), Some(there)) => {
            differences(&Value::write(&Plan::from_json(&here)?)?, &Value::write(&Plan::from_json(&there)?)?)
        }
        _ => Vec::new(),
    };
    let (header, parameters) = match &here {
        Some(own) => {
            (differences(&whose(&own.log)?, &whose(&incoming)?), differences(&set(&own.state)?, &set(state)?))
        }
        None => (Vec::new(), Vec::new()),
    };
    let known = here.as_ref().map(|own| own.log.events.as_slice()).unwrap_or_default();
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
    let opens = match &here {
        Some(own) => stops_gone(own, &there)?,
        None => Vec::new(),
    };
    let only_here = (known.len() as u32).saturating_sub(same).saturating_sub(changed.len() as u32);
    Ok(Preview {
        events: incoming.events.len() as u32,
        same,
        added,
        changed,
        only_here,
        opens,
        header,
        plan,
        parameters,
        last_day: state.last().map(|(day, _)| day),
        log: Value::write(&incoming)?.to_json(),
        lifter: incoming.lifter,
    })
}

/// Whose log it is, with the version of its format.
fn whose(log: &Log) -> Result<Value, Error> {
    let mut all = Value::write(&log.lifter)?;
    if let Value::Map(fields) = &mut all {
        // Absent means that nobody said so; shown as what it means.
        if all_without(fields, "invented") {
            fields.push(("invented".into(), Value::Bool(false)));
        }
        fields.push(("version".into(), Value::Number(f64::from(log.version))));
    }
    Ok(all)
}

fn all_without(fields: &[(bismar::value::Key, Value)], name: &str) -> bool {
    fields.iter().all(|(key, _)| key != name)
}

/// What is set for the lifts after the last event.
fn set(state: &State) -> Result<Value, Error> {
    state.parameters().map_or(Ok(Value::Map(Vec::new())), Value::write)
}

/// A log as text.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Whole {
    log: String,
}

/// The log without health detail, as text.
pub(crate) fn without_health(asked: Whole) -> Result<String, Error> {
    let copy = Log::from_json(&asked.log)?.without_health()?.log;
    fold(&copy)?;
    Ok(Value::write(&copy)?.to_json())
}

/// What begins a formula in a spreadsheet: the signs, their full-width forms, and white space before them.
const FORMULA: [char; 11] =
    ['=', '+', '-', '@', '\t', '\r', '\n', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

/// Text for one cell; what a spreadsheet would take for a formula is marked as text. What cannot be seen is skipped
/// first, as some spreadsheets do.
fn cell(text: &str) -> String {
    let unseen = |letter: char| {
        letter.is_whitespace()
            || matches!(letter, '\u{200b}'..='\u{200f}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
    };
    let mark = if text.starts_with(FORMULA) || text.trim_start_matches(unseen).starts_with(FORMULA) {
        "'"
    } else {
        ""
    };
    format!("\"{mark}{}\"", text.replace('"', "\"\""))
}

/// Every work set as one line of a table; no health detail is in it, and none of anybody's own words but the names of
/// lifts. It begins with the mark by which spreadsheets know UTF-8.
pub(crate) fn sets_table(asked: Whole) -> Result<String, Error> {
    let log = Log::from_json(&asked.log)?;
    let mut out = String::from(
        "\u{feff}day,session,lift,set,load_kg,load_lb,reps,reps_in_reserve,rating,missed,acceptable_reps,scored_reps\r\n",
    );
    for event in log.effective()? {
        let EventKind::SessionRecorded(session) = &event.kind else { continue };
        for lift in &session.lifts {
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
                    "{},{},{},{number},{:.3},{:.3},{},{reserve},{rating},{},{},{}\r\n",
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
