//! Tests of what opens.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may panic")]

use bismar::Code;
use bismar::value::Value;

use crate::asking::{LOG, ask, with};

const NEXT: &str = "2026-08-28";

fn texts(answer: &Value, part: &str, field: &str) -> Vec<String> {
    let Some(Value::List(items)) = answer.field(part) else { panic!("{answer:?}") };
    let text = |one: &Value| match one.field(field) {
        Some(Value::Text(text)) => text.to_string(),
        other => panic!("{other:?}"),
    };
    items.iter().map(text).collect()
}

/// What taking back an event after the demo log opens, beside loads.
fn taken_back(kind: &str) -> Vec<String> {
    let log = with(&format!(r#"{{"sequence":704,"day":"2026-08-27","kind":{kind}}}"#));
    let undo = r#"json:{"correction":{"replaces":704}}"#;
    let given = [("log", log.as_str()), ("today", NEXT), ("unit", "kg"), ("suppose", undo)];
    let answer = ask("page.opens", &given).unwrap();
    assert!(texts(&answer, "stops", "what").is_empty());
    let kinds = texts(&answer, "less", "kind");
    let says = texts(&answer, "less", "says");
    kinds.iter().zip(says).filter(|(kind, _)| *kind != "load").map(|(_, says)| says).collect()
}

#[test]
fn each_part_of_a_limit_is_named() {
    let limit = r#"{"clearance_recorded":{"status":"cleared_with_limits","who":"invented clinic","limits":[{"region":"knee","load":{"kg":30}},{"effort":6,"no_breath_hold":true}]}}"#;
    assert_eq!(
        taken_back(limit),
        [
            "A limit of 30 kg for the knee at every place is no longer in force then.",
            "A limit of effort 6 of 10 for every lift is no longer in force then.",
        ],
        "the limit of breath-holding is that of the clearance before it too"
    );
}

#[test]
fn a_word_a_break_and_a_rest_are_named() {
    let word = r#"{"coach_override":{"lift":"box squat","load":{"kg":30},"who":"Coach"}}"#;
    assert_eq!(
        taken_back(word),
        ["Box squat: a working load of 47.54 kg (high box) then, and not 30 kg (high box)."]
    );
    let away = r#"{"layoff_noted":{"from":"2026-08-27","to":"2026-09-10","reason":"planned"}}"#;
    assert_eq!(taken_back(away), ["The planned break until 10 Sep 2026 is no longer in force then."]);
    let ahead = r#"{"layoff_noted":{"from":"2026-09-05","to":"2026-09-10","reason":"planned"}}"#;
    assert_eq!(taken_back(ahead), ["The planned break until 10 Sep 2026 is no longer in force then."]);
    let rest = r#"{"role_set":{"lift":"box squat","role":"rest"}}"#;
    assert_eq!(taken_back(rest), ["The rest of box squat is no longer in force then."]);
}

#[test]
fn a_load_that_goes_up_is_named_and_one_that_stays_is_not() {
    let limit = r#"{"sequence":704,"day":"2026-08-27","kind":{"clearance_recorded":{"status":"cleared_with_limits","who":"invented clinic","limits":[{"load":{"kg":30}}]}}}"#;
    let log = with(limit);
    let ask_for = |log: &str, instead: &str| {
        ask("page.opens", &[("log", log), ("today", NEXT), ("unit", "kg"), ("instead", instead)]).unwrap()
    };
    let loads = texts(&ask_for(&log, LOG), "less", "says");
    assert!(
        loads
            .iter()
            .any(|says| says.starts_with("Box squat: ") && says.ends_with("and not 30 kg (high box).")),
        "{loads:?}"
    );
    // The demo log's own limits are those that a newer clearance took away.
    let own = texts(&ask_for(LOG, &log), "less", "says");
    assert_eq!(own.len(), 2, "{own:?}");
    // A limit that is as careful holds what the other said.
    let lower = log.replace(r#"{"load":{"kg":30}}"#, r#"{"load":{"kg":25}}"#);
    assert!(texts(&ask_for(&log, &lower), "less", "says").is_empty());
    assert!(!texts(&ask_for(&lower, &log), "less", "says").is_empty());
}

#[test]
fn a_day_before_the_lifters_birth_is_refused() {
    let log = with(r#"{"sequence":704,"day":"2026-08-27","kind":{"body_mass_recorded":{"kg":80}}}"#);
    let kind = r#"json:{"correction":{"replaces":704,"day":"1960-01-01"}}"#;
    let found = ask("page.takes", &[("log", &log), ("day", NEXT), ("kind", kind)]);
    assert_eq!(found.unwrap_err().code(), Code::BornLater);
}
