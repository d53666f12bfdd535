//! Tests of what is told in whole sentences, and of what a session came to in the end.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use bismar::value::Value;

use crate::asking::{LOG, PLAN, ask, with};

const EMPTY: &str = r#"{"format":"bismar-log","version":1,"lifter":{"id":"A"},"events":[]}"#;
const TODAY: &str = "2026-08-28";

/// What an answer says, whole.
fn words(value: &Value) -> String {
    value.to_json()
}

/// Sessions in the history of that log, each lift as `name passed taken_back`.
fn last_session(log: &str) -> Vec<String> {
    let history = ask("page.history", &[("log", log), ("today", TODAY)]).unwrap();
    let Some(Value::List(sessions)) = history.field("sessions") else { panic!("no sessions") };
    let Some(Value::List(lifts)) = sessions.last().unwrap().field("lifts") else { panic!("no lifts") };
    let of = |lift: &Value, field: &str| words(lift.field(field).unwrap());
    lifts
        .iter()
        .map(|lift| format!("{} {} {}", of(lift, "lift"), of(lift, "passed"), of(lift, "taken_back")))
        .collect()
}

#[test]
fn a_pass_that_the_morning_took_back_is_told_as_taken_back() {
    // The knee is loaded by the front squat and not by the press.
    let session = r#"{"sequence":704,"day":"2026-08-27","kind":{"session_recorded":{"lifts":[
        {"lift":"front squat","sets":[SET,SET,SET]}],"pain":[]}}}"#;
    let set = r#"{"load":{"kg":33.5},"reps":5,"effort":{"rir":3},"marks":{"reps":5,"acceptable":5,"marks":[{"criterion":"brace held","mark":"met"},{"criterion":"depth reached","mark":"met"},{"criterion":"knees track feet","mark":"met"}],"rater":"coach"}}"#;
    let session = session.replace("SET", set);
    assert_eq!(last_session(&with(&session)), [r#""front squat" "pass" false"#]);
    let morning = r#"{"sequence":705,"day":"2026-08-28","kind":{"next_day_report":{"session":704,"pain":[{"region":"knee","score":4,"features":["rising"]}]}}}"#;
    assert_eq!(last_session(&with(&format!("{session},{morning}"))), [r#""front squat" "fail" true"#]);
    let unasked = r#"{"sequence":705,"day":"2026-08-28","kind":{"pain_report":{"region":"knee","score":4,"features":["rising"]}}}"#;
    assert_eq!(last_session(&with(&format!("{session},{unasked}"))), [r#""front squat" "fail" true"#]);
    let calm = r#"{"sequence":705,"day":"2026-08-28","kind":{"next_day_report":{"session":704,"pain":[]}}}"#;
    assert_eq!(last_session(&with(&format!("{session},{calm}"))), [r#""front squat" "pass" false"#]);
}

#[test]
fn an_empty_log_says_what_is_missing_and_counts_nothing() {
    let about = [("log", EMPTY), ("today", TODAY), ("unit", "kg")];
    let plan = [about.as_slice(), &[("plan", PLAN)]].concat();
    for (key, given, missing) in [
        ("page.verdicts", about.as_slice(), "No session is in the log."),
        ("page.block", &about, "No block of weeks was begun in the log."),
        ("page.raters", &about, "No session is in the log."),
        ("page.easy_week", &plan, "No session is in the log."),
        ("page.missed", &plan, "No missed session is noted"),
        ("page.year", &plan, "No test of everyday function is in the log."),
    ] {
        let said = words(&ask(key, given).unwrap());
        assert!(said.contains(missing), "{key}: {said}");
    }
}

#[test]
fn a_load_is_said_to_the_hundredth_as_the_page_shows_it() {
    let given = [("log", LOG), ("plan", PLAN), ("today", TODAY), ("unit", "kg")];
    let said = words(&ask("page.easy_week", &given).unwrap());
    // 20 + 2 (10 + 2.268 + 1.25 + 0.25) = 47.54 kg, less by the easy week.
    assert!(said.contains("kg x"), "{said}");
    assert!(!said.contains("47.5 kg"), "{said}");
    let today = words(&ask("page.today", &given).unwrap());
    assert!(today.contains("48.54 kg (hip width") && !today.contains("48.5 kg"), "{today}");
}

/// Harder and easier, and whether it is a step sideways.
fn compared(one: &str, other: &str) -> String {
    let grant = |place: &str| {
        let (place, load) = place.split_once(' ').unwrap();
        format!(r#"json:{{"place":{place},"work":{{"sets":3,"reps":5,"load":{{"kg":{load}}}}}}}"#)
    };
    let (one, other) = (grant(one), grant(other));
    let given = [("log", LOG), ("lift", "front squat"), ("one", one.as_str()), ("other", other.as_str())];
    words(&ask("page.compare", &given).unwrap())
}

#[test]
fn two_places_compare_the_same_from_both_sides() {
    let [low, high] = [r#"{"rung":0,"range":0,"tempo":0}"#, r#"{"rung":2,"range":0,"tempo":0}"#];
    let (light, heavy) = (format!("{high} 20"), format!("{low} 30"));
    assert_eq!(compared(&heavy, &light), r#"{"harder":["variant"],"easier":["load"],"sideways":false}"#);
    assert_eq!(compared(&light, &heavy), r#"{"harder":["load"],"easier":["variant"],"sideways":false}"#);
    assert_eq!(compared(&light, &light), r#"{"harder":[],"easier":[],"sideways":false}"#);
}
