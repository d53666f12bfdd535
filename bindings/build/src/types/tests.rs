//! The schemas of the documents against the library's own reader.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic, reason = "a test may panic")]

use std::path::{Path, PathBuf};

use bismar::progression::{State, fold};
use bismar::record::{EventKind, Log, Plan};
use jsonschema::Validator;
use serde_json::{Value, json};

use super::{generate, schema};

fn validator(name: &str) -> Validator {
    jsonschema::validator_for(&schema(&generate().unwrap(), name, name)).unwrap()
}

fn root() -> PathBuf {
    crate::root()
}

fn demo(name: &str) -> Value {
    let path = root().join(format!("examples/data/demo-{name}.json"));
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// Every text of a folder of the fuzz corpus, and those files.
fn texts(kind: &str, more: &[&str]) -> Vec<(PathBuf, String)> {
    let folder = root().join("tests/fuzz/corpus").join(kind);
    let listed = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let all = listed.chain(more.iter().map(|file| root().join(file)));
    all.filter_map(|path| Some((path.clone(), std::fs::read_to_string(&path).ok()?))).collect()
}

/// What the library reads, the schema takes; how many of them there were.
fn held(name: &str, texts: Vec<(PathBuf, String)>, reads: impl Fn(&str) -> bool) -> usize {
    let validator = validator(name);
    let wrong = |path: &Path, text: &str| {
        let value: Value = serde_json::from_str(text).unwrap();
        validator.iter_errors(&value).next().map(|error| format!("{}: {error}", path.display()))
    };
    let read: Vec<_> = texts.into_iter().filter(|(_, text)| reads(text)).collect();
    let refused: Vec<_> = read.iter().filter_map(|(path, text)| wrong(path, text)).collect();
    assert!(refused.is_empty(), "{}", refused.join("\n"));
    read.len()
}

#[test]
fn the_log_that_is_read_is_valid() {
    // What a newer version writes, nobody can describe here.
    let known = |log: &Log| !log.events.iter().any(|event| matches!(event.kind, EventKind::Unknown(_)));
    let files = ["examples/data/demo-log.json", "src/guide/first_log.json"];
    let read = held("Log", texts("log", &files), |text| Log::from_json(text).is_ok_and(|log| known(&log)));
    assert!(read > 8, "{read}");
}

#[test]
fn the_plan_that_is_read_is_valid() {
    let files = ["examples/data/demo-plan.json"];
    let read = held("Plan", texts("plan", &files), |text| Plan::from_json(text).is_ok());
    assert!(read > 8, "{read}");
}

#[test]
fn the_state_that_is_made_is_valid() {
    let logs = texts("log", &["examples/data/demo-log.json", "src/guide/first_log.json"]);
    let folded: Vec<_> = logs
        .iter()
        .filter_map(|(path, text)| {
            let state = fold(&Log::from_json(text).ok()?).ok()?;
            Some((path.clone(), state.to_json().unwrap()))
        })
        .collect();
    let made = held("State", folded, |text| State::from_json(text).is_ok());
    assert!(made > 8, "{made}");
}

/// The demo log with one change made to the event of that kind.
fn changed(kind: &str, change: impl Fn(&mut Value)) -> Value {
    let mut log = demo("log");
    let event = log["events"].as_array_mut().unwrap().iter_mut().find(|one| one["kind"].get(kind).is_some());
    change(event.unwrap_or_else(|| panic!("no {kind} in the demo log")));
    log
}

#[test]
fn what_the_reader_refuses_by_its_form_the_schema_refuses() {
    let validator = validator("Log");
    assert!(validator.is_valid(&demo("log")));
    let of_session = |change: &dyn Fn(&mut Value)| changed("session_recorded", change);
    let of_mass = |mass: Value| {
        let mut log = demo("log");
        let event = json!({ "sequence": 9_999, "day": "2026-08-30", "kind": { "body_mass_recorded": mass } });
        log["events"].as_array_mut().unwrap().push(event);
        log
    };
    assert!(validator.is_valid(&of_mass(json!({ "lb": 180 }))));
    for (what, log) in [
        ("a surplus field", of_session(&|event| event["surplus"] = json!(1))),
        ("null for what is absent", of_session(&|event| event["note"] = Value::Null)),
        ("a day in words", of_session(&|event| event["day"] = json!("yesterday"))),
        ("no day", of_session(&|event| _ = event.as_object_mut().unwrap().remove("day"))),
        ("half a number", of_session(&|event| event["sequence"] = json!(1.5))),
        ("a number below none", of_session(&|event| event["sequence"] = json!(-1))),
        ("a number beyond its type", of_session(&|event| event["sequence"] = json!(4_294_967_296_u64))),
        ("two kinds at once", of_session(&|event| event["kind"]["block_ended"] = json!("spring"))),
        ("no such kind", of_session(&|event| event["kind"] = json!({ "guessed": 1 }))),
        ("a kind without its content", of_session(&|event| event["kind"] = json!("session_recorded"))),
        ("another unit", of_mass(json!({ "stone": 12 }))),
        ("two units", of_mass(json!({ "kg": 80, "lb": 180 }))),
        ("a mass without its unit", of_mass(json!(80))),
        ("a mass in words", of_mass(json!({ "kg": "80" }))),
        ("no log at all", json!([])),
    ] {
        assert!(Log::from_json(&log.to_string()).is_err(), "the reader takes {what}");
        assert!(!validator.is_valid(&log), "the schema takes {what}");
    }
}

#[test]
fn a_field_named_like_a_word_of_the_schema_is_described() {
    let log = schema(&generate().unwrap(), "Log", "log");
    assert_eq!(log["$defs"]["Log"]["properties"]["format"]["type"], "string");
}
