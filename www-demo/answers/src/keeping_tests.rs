//! Tests of what is kept, brought in and given away.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use bismar::Code;
use bismar::record::Log;
use bismar::value::Value;

use crate::asking::{LOG, PLAN, ask, with};

fn list(value: Option<&Value>) -> &[Value] {
    let Some(Value::List(items)) = value else { panic!("{value:?}") };
    items
}

#[test]
fn entries_after_a_day_are_those_in_force() {
    let none = ask("page.ahead", &[("log", LOG), ("day", "2026-08-27")]).unwrap();
    assert!(list(Some(&none)).is_empty());
    let wrong = r#"{"sequence":704,"day":"2031-05-01","kind":{"body_mass_recorded":{"kg":80}}}"#;
    let found = ask("page.ahead", &[("log", &with(wrong)), ("day", "2026-08-28")]).unwrap();
    assert_eq!(list(Some(&found)).len(), 1);
    assert_eq!(list(Some(&found))[0].field("last"), Some(&Value::Number(704.0)));
    let right =
        r#"{"sequence":705,"day":"2031-05-01","kind":{"correction":{"replaces":704,"day":"2026-08-28"}}}"#;
    let righted = with(&format!("{wrong},{right}"));
    assert!(list(Some(&ask("page.ahead", &[("log", &righted), ("day", "2026-08-28")]).unwrap())).is_empty());
    // And the last day is that of what is in force, not of what was written.
    let lifter = ask("page.lifter", &[("log", &righted)]).unwrap();
    assert_eq!(lifter.field("last_day"), Some(&Value::Text("2026-08-28".into())));
    let preview = ask("page.preview", &[("incoming", &righted)]).unwrap();
    assert_eq!(preview.field("last_day"), Some(&Value::Text("2026-08-28".into())));
}

#[test]
fn a_plan_is_checked_like_a_log() {
    assert!(ask("page.check_plan", &[("plan", PLAN), ("log", LOG)]).is_ok());
    let plan = |lifts: &str| format!(r#"{{"format":"bismar-plan","version":1,"lifts":[{lifts}]}}"#);
    for (plan, code) in [
        (plan(r#"{"lift":"nobody knows"}"#), Code::UnknownLift),
        (plan(r#"{"lift":"box squat","x":1}"#), Code::UnknownField),
        (plan("").replace("bismar-plan", "x"), Code::WrongFormat),
        ("{".into(), Code::NotJson),
    ] {
        assert_eq!(
            ask("page.check_plan", &[("plan", &plan), ("log", LOG)]).unwrap_err().code(),
            code,
            "{plan}"
        );
    }
}

#[test]
fn a_preview_tells_every_place_that_differs() {
    let other = LOG.replacen("1967-05-20", "1950-01-01", 1);
    assert_ne!(other, LOG);
    let plan =
        PLAN.replacen("\"reserve\": 3", "\"reserve\": 5", 1).replacen("\"reserve\":3", "\"reserve\":5", 1);
    assert_ne!(plan, PLAN);
    let given = [("incoming", other.as_str()), ("here", LOG), ("plan", plan.as_str()), ("plan_here", PLAN)];
    let preview = ask("page.preview", &given).unwrap();
    let at = |part: &str| -> Vec<Option<Value>> {
        list(preview.field(part)).iter().map(|one| one.field("at").cloned()).collect()
    };
    assert_eq!(at("header"), [Some(Value::Text("born".into()))]);
    assert_eq!(at("plan"), [Some(Value::Text("lifts.box squat.reserve".into()))]);
    assert!(at("parameters").is_empty());
    let same = ask("page.preview", &[("incoming", LOG), ("here", LOG), ("plan", PLAN), ("plan_here", PLAN)])
        .unwrap();
    for part in ["header", "plan", "parameters", "added", "changed"] {
        assert!(list(same.field(part)).is_empty(), "{part}");
    }
}

#[test]
fn a_copy_without_health_has_nobodys_own_words() {
    let secret = [
        r#"{"sequence":704,"day":"2026-08-27","kind":{"block_started":"afterbirth"},"note":"sertraline"}"#,
        r#"{"sequence":705,"day":"2026-08-27","kind":{"coach_override":{"lift":"strict press","load":{"kg":15},"who":"Dr Physio","why":"grumpy shoulder"}}}"#,
        r#"{"sequence":706,"day":"2026-08-27","kind":{"session_missed":{"reason":"chest clinic"}}}"#,
        r#"{"sequence":707,"day":"2026-08-27","kind":{"advance_declined":{"lift":"box squat","who":"Dr Physio"}}}"#,
        r#"{"sequence":708,"day":"2026-08-27","kind":{"rater_changed":{"now":"Dr Physio"}}}"#,
        r#"{"sequence":709,"day":"2026-08-27","kind":{"clearance_recorded":{"status":"cleared_with_limits","who":"asthma clinic","limits":[{"no_breath_hold":true}]}}}"#,
    ];
    let Value::Text(copy) = ask("page.without_health", &[("log", &with(&secret.join(",")))]).unwrap() else {
        panic!()
    };
    for word in [
        "afterbirth",
        "sertraline",
        "Physio",
        "grumpy",
        "clinic",
        "asthma",
        "no_breath_hold",
        "\"cue\"",
        "invented coach",
        "garden",
    ] {
        assert!(!copy.contains(word), "{word}");
    }
    assert!(copy.contains("person 1") && copy.contains("not_cleared"));
    // Neither a gap in the numbers nor the day of the stop at the end tells of what was left out.
    let later = r#"{"sequence":704,"day":"2026-09-20","kind":{"pain_report":{"region":"knee","score":4}}}"#;
    let Value::Text(copy) = ask("page.without_health", &[("log", &with(later))]).unwrap() else { panic!() };
    let log = Log::from_json(&copy).unwrap();
    for (number, event) in (1..).zip(&log.events) {
        assert_eq!(event.sequence, number);
    }
    assert!(!copy.contains("2026-09-20"));
    assert!(log.events.len() < 703 && log.events.len() > 200);
}

#[test]
fn a_copy_of_which_nothing_stays_is_stopped_and_tells_of_nothing() {
    let copy_of = |events: &str| {
        let log =
            format!(r#"{{"format":"bismar-log","version":1,"lifter":{{"id":"Ann"}},"events":[{events}]}}"#);
        ask("page.without_health", &[("log", &log)]).unwrap()
    };
    let left_out = [
        r#"{"sequence":1,"day":"2026-09-20","kind":{"body_mass_recorded":{"kg":80}}}"#,
        r#"{"sequence":1,"day":"2026-09-20","kind":{"symptom_report":{"signs":["faint"]}}}"#,
    ];
    for events in left_out {
        assert_eq!(copy_of(events), copy_of(""));
        let Value::Text(copy) = copy_of(events) else { panic!() };
        assert!(copy.contains("not_cleared") && !copy.contains("2026"));
    }
}

#[test]
fn a_table_is_marked_as_utf8_and_no_cell_is_a_formula() {
    for start in ["=1+1", "+1", "-1", "@x", "\u{ff1d}1", "\u{ff0b}1", "\u{ff0d}1", "\u{ff20}x"] {
        let log = LOG.replace("\"front squat\"", &format!("{start:?}"));
        let Value::Text(table) = ask("page.sets_table", &[("log", &log)]).unwrap() else { panic!() };
        assert!(table.starts_with('\u{feff}'));
        assert!(
            table.contains(&format!(",\"'{start}\",")) && !table.contains(&format!(",\"{start}\",")),
            "{start}"
        );
    }
}
