#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use bismar::value::Value;

use crate::ENTRIES;

const LOG: &str = include_str!("../../../examples/data/demo-log.json");
const PLAN: &str = include_str!("../../../examples/data/demo-plan.json");

fn text(text: &str) -> Value {
    Value::Text(text.into())
}

fn map(fields: &[(&str, Value)]) -> Value {
    Value::Map(fields.iter().map(|(key, value)| ((*key).to_string(), value.clone())).collect())
}

fn ask(key: &str, fields: &[(&str, Value)]) -> Result<Value, bismar::Error> {
    let entry = ENTRIES.iter().find(|entry| entry.key == key).unwrap();
    (entry.call)(&map(fields))
}

fn list(value: &Value) -> &[Value] {
    match value {
        Value::List(items) => items,
        _ => panic!("not a list: {value:?}"),
    }
}

#[test]
fn today_says_a_line_for_every_lift_of_the_plan() {
    let answer =
        ask("page.today", &[("log", text(LOG)), ("plan", text(PLAN)), ("today", text("2026-08-28"))])
            .unwrap();
    assert_eq!(list(answer.field("lines").unwrap()).len(), 3);
}

#[test]
fn a_supposed_stop_sign_stops_every_lift_and_changes_nothing() {
    let suppose = text(r#"{"symptom_report":{"signs":["chest_pain"]}}"#);
    let asked = [("log", text(LOG)), ("plan", text(PLAN)), ("today", text("2026-08-28"))];
    let answer = ask("page.today", &[asked.as_slice(), &[("suppose", suppose)]].concat()).unwrap();
    for line in list(answer.field("lines").unwrap()) {
        assert_eq!(line.field("verdict").unwrap(), &text("stop"));
    }
    let again = ask("page.today", &asked).unwrap();
    assert_ne!(list(again.field("lines").unwrap())[0].field("verdict").unwrap(), &text("stop"));
}

#[test]
fn history_tells_every_session_and_where_each_lift_stood() {
    let answer = ask("page.history", &[("log", text(LOG)), ("today", text("2026-08-28"))]).unwrap();
    assert_eq!(list(answer.field("sessions").unwrap()).len(), 196);
    assert!(list(answer.field("steps").unwrap()).len() > 196);
}

#[test]
fn a_copy_without_health_names_no_pain_and_stops_until_a_clearance() {
    let Value::Text(copy) = ask("page.without_health", &[("log", text(LOG))]).unwrap() else { panic!() };
    for word in ["day_report", "pain", "soreness", "born", "\"note\""] {
        assert!(!copy.contains(&format!("{word}\":")) || word == "pain", "{word}");
    }
    let answer =
        ask("page.today", &[("log", text(&copy)), ("plan", text(PLAN)), ("today", text("2026-08-28"))])
            .unwrap();
    for line in list(answer.field("lines").unwrap()) {
        assert_eq!(line.field("verdict").unwrap(), &text("stop"));
    }
}

#[test]
fn seals_find_the_first_torn_text() {
    let Value::Text(first) = ask("page.seal", &[("before", text("")), ("text", text("a"))]).unwrap() else {
        panic!()
    };
    let Value::Text(second) = ask("page.seal", &[("before", text(&first)), ("text", text("b"))]).unwrap()
    else {
        panic!()
    };
    let seals = Value::List(vec![text(&first), text(&second)]);
    for (texts, whole) in [(["a", "b"], 2.0), (["a", ""], 1.0), (["x", "b"], 0.0)] {
        let texts = Value::List(texts.iter().map(|one| text(one)).collect());
        let asked = [("start", text("")), ("texts", texts), ("seals", seals.clone())];
        assert_eq!(ask("page.check_seals", &asked).unwrap().field("whole"), Some(&Value::Number(whole)));
    }
}

#[test]
fn every_lift_to_begin_with_can_begin() {
    for (lift, load) in [
        ("front-held squat", 20),
        ("box squat", 20),
        ("straight-bar pull", 30),
        ("hex-bar pull", 30),
        ("strict press", 20),
        ("seated press", 20),
        ("bench press", 20),
        ("supported row", 20),
    ] {
        let asked = format!(
            r#"{{"lifter":{{"id":"New","invented":true}},"day":"2026-01-05","lifts":[{{"lift":"{lift}","implement":"bar 20","load":{{"kg":{load}}}}}],
            "implements":[{{"bar":{{"id":"bar 20","mass":{{"kg":20}},"collar":{{"kg":0}},"kind":"straight"}}}}],
            "stock":{{"discs":[{{"nominal":{{"kg":5}},"diameter":{{"mm":450}},"thickness":{{"mm":30}},"count":2}}]}}}}"#
        );
        let Value::Map(fields) = Value::from_json(&asked).unwrap() else { panic!() };
        let fields: Vec<_> = fields.iter().map(|(key, value)| (key.as_str(), value.clone())).collect();
        let answer = ask("page.begin", &fields).unwrap();
        let (log, plan) = (answer.field("log").unwrap().clone(), answer.field("plan").unwrap().clone());
        let today =
            ask("page.today", &[("log", log), ("plan", plan), ("today", text("2026-01-05"))]).unwrap();
        assert_eq!(list(today.field("lines").unwrap()).len(), 1, "{lift}");
    }
}

#[test]
fn the_week_and_the_trend_of_the_demo_log_are_said() {
    ask("page.week", &[("log", text(LOG)), ("today", text("2026-08-28"))]).unwrap();
    let asked = [
        ("log", text(LOG)),
        ("track", text("strict press")),
        ("today", text("2026-08-28")),
        ("weeks", Value::Number(8.0)),
    ];
    ask("page.trend", &asked).unwrap();
    let asked = [("log", text(LOG)), ("strict", text("front-held squat")), ("forgiving", text("box squat"))];
    assert!(ask("page.pair", &asked).unwrap().field("ratio").is_some());
}

#[test]
fn a_day_is_judged_from_the_markers_in_the_notes() {
    let mut log = bismar::record::Log::from_json(LOG).unwrap();
    let mut day = "2026-08-28".parse::<bismar::quantity::Day>().unwrap();
    for sequence in 1000..1006 {
        day = day.plus(1).unwrap();
        let report = bismar::record::DayReport::default();
        log.events.push(bismar::record::Event {
            sequence,
            day,
            kind: bismar::record::EventKind::DayReport(report),
            note: Some("Markers: recovery 7, sleep 7, warm-up effort 3.".into()),
        });
    }
    let log = text(&Value::write(&log).unwrap().to_json());
    let answer = |recovery: f64, sleep: f64| {
        let given = |marker: &str, value| map(&[("marker", text(marker)), ("value", Value::Number(value))]);
        let answers = Value::List(vec![
            given("recovery", recovery),
            given("sleep", sleep),
            given("warm-up effort", 3.0),
        ]);
        let asked = [("log", log.clone()), ("today", text("2026-09-10")), ("answers", answers)];
        let answer = ask("page.judge", &asked).unwrap();
        answer.field("verdict").unwrap().field("class").unwrap().clone()
    };
    assert_eq!(answer(7.0, 7.0), text("ordinary"));
    assert_eq!(answer(3.0, 7.0), text("bad_single"));
    assert_eq!(answer(3.0, 3.0), text("bad_agreeing"));
}

#[test]
fn a_log_with_one_more_event_answers_as_if_it_were_read_whole() {
    let asked = |log: &str| [("log", text(log)), ("today", text("2026-09-01"))];
    let short = Value::from_json(LOG).unwrap().to_json();
    ask("page.history", &asked(&short)).unwrap();
    let longer = format!(
        "{},{}]}}",
        &short[..short.len() - 2],
        r#"{"sequence":900,"day":"2026-08-30","kind":{"body_mass_recorded":{"kg":80}}}"#
    );
    let quick = ask("page.history", &asked(&longer)).unwrap();
    // Another spelling of the same log is read whole.
    let spaced = longer.replacen('{', "{ ", 1);
    assert_eq!(quick, ask("page.history", &asked(&spaced)).unwrap());
}
