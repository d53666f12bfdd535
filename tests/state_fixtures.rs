//! Stored states that must load for ever: one for each released version, with the plan it was asked with and what it
//! answered then. A file is written once, when its version is made (`BISMAR_UPDATE=1`), and never written over.
//!
//! `state-0.0.9.json` is invented: the state of this version as a version before it may have stored it, without the
//! fields that came last and under a digest that this version can't repeat.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp
)]

use std::path::{Path, PathBuf};

use bismar::prescription::{SessionPlan, next_session_from};
use bismar::progression::{State, fold};
use bismar::quantity::Day;
use bismar::record::{Log, Plan};
use bismar::value::Value;

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures")
}

fn demo(name: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("examples/data/{name}.json")))
        .unwrap()
}

/// What a coach would notice if it changed: for each lift, what to do and with what.
fn answer(session: &SessionPlan) -> Value {
    let lifts = session.lifts.iter().map(|lift| {
        Value::Map(vec![
            ("lift".into(), Value::write(&lift.lift).unwrap()),
            ("verdict".into(), Value::write(&lift.verdict).unwrap()),
            ("status".into(), Value::write(&lift.status).unwrap()),
            ("limit".into(), Value::write(&lift.limit).unwrap()),
            ("load".into(), Value::write(&lift.load).unwrap()),
            ("sets".into(), Value::Number(f64::from(lift.sets))),
            ("reps".into(), Value::Number(f64::from(lift.reps))),
        ])
    });
    Value::List(lifts.collect())
}

fn write_once(path: &Path) {
    let log = Log::from_json(&demo("demo-log")).unwrap();
    let plan = Plan::from_json(&demo("demo-plan")).unwrap();
    let today = log.events.last().unwrap().day;
    let state = fold(&log).unwrap();
    let fixture = Value::Map(vec![
        ("today".into(), Value::write(&today).unwrap()),
        ("answer".into(), answer(&next_session_from(&state, &plan, today).unwrap())),
        ("plan".into(), Value::write(&plan).unwrap()),
        ("state".into(), Value::write(&state).unwrap()),
    ]);
    std::fs::write(path, fixture.to_json_pretty() + "\n").unwrap();
}

#[test]
fn every_stored_state_loads_and_answers_as_it_did() {
    let own = folder().join(format!("state-{}.json", env!("CARGO_PKG_VERSION")));
    if std::env::var_os("BISMAR_UPDATE").is_some() && !own.exists() {
        write_once(&own);
    }
    let mut seen = Vec::new();
    for entry in std::fs::read_dir(folder()).unwrap() {
        let path = entry.unwrap().path();
        let fixture = Value::from_json(&std::fs::read_to_string(&path).unwrap()).unwrap();
        let part =
            |name: &str| fixture.field(name).unwrap_or_else(|| panic!("{}: no {name}", path.display()));
        let state: State = part("state").read().unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let (plan, today): (Plan, Day) = (part("plan").read().unwrap(), part("today").read().unwrap());
        let session = next_session_from(&state, &plan, today).unwrap();
        assert_eq!(answer(&session), *part("answer"), "{}", path.display());
        seen.push(path.file_stem().unwrap().to_string_lossy().into_owned());
    }
    seen.sort();
    assert!(seen.contains(&String::from("state-0.0.9")), "{seen:?}");
    assert!(seen.contains(&format!("state-{}", env!("CARGO_PKG_VERSION"))), "{seen:?}");
}
