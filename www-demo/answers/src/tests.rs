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
    Value::Text(text.to_string().into())
}

fn map(fields: &[(&str, Value)]) -> Value {
    Value::Map(fields.iter().map(|(key, value)| ((*key).to_string().into(), value.clone())).collect())
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
    assert_eq!(list(answer.field("lines").unwrap()).len(), 4);
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
        ("front squat", 20),
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
        let fields: Vec<_> = fields.iter().map(|(key, value)| (&**key, value.clone())).collect();
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
        ("lift", text("strict press")),
        ("today", text("2026-08-28")),
        ("weeks", Value::Number(8.0)),
    ];
    ask("page.trend", &asked).unwrap();
    let asked = [("log", text(LOG)), ("strict", text("front squat")), ("forgiving", text("box squat"))];
    assert!(ask("page.pair", &asked).unwrap().field("ratio").is_some());
}

fn marker(kind: &str, value: f64) -> Value {
    map(&[("kind", text(kind)), ("value", Value::Number(value))])
}

#[test]
fn a_day_is_judged_from_the_markers_of_earlier_day_reports() {
    let mut log = bismar::record::Log::from_json(LOG).unwrap();
    let mut day = "2026-08-28".parse::<bismar::quantity::Day>().unwrap();
    let report = r#"{"day_report":{"markers":[{"kind":"recovery","value":7},{"kind":"sleep","value":7},{"kind":"warm_up_effort","value":3}]}}"#;
    for sequence in 1000..1006 {
        day = day.plus(1).unwrap();
        let kind = Value::from_json(report).unwrap().read().unwrap();
        log.events.push(bismar::record::Event { sequence, day, kind, note: None });
    }
    let log = text(&Value::write(&log).unwrap().to_json());
    let answer = |recovery: f64, sleep: f64| {
        let answers = Value::List(vec![
            marker("recovery", recovery),
            marker("sleep", sleep),
            marker("warm_up_effort", 3.0),
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
fn markers_of_a_day_are_named_once_and_within_their_range() {
    let log = |markers: &str| {
        text(&format!(
            r#"{{"format":"bismar-log","version":1,"lifter":{{"id":"A"}},"events":[{{"sequence":1,"day":"2026-01-01","kind":{{"day_report":{{"markers":[{markers}]}}}}}}]}}"#
        ))
    };
    let sleep = r#"{"kind":"sleep","value":7}"#;
    assert!(ask("page.accepts", &[("log", log(sleep))]).is_ok());
    let code = |markers: &str| ask("page.accepts", &[("log", log(markers))]).unwrap_err().code();
    assert_eq!(code(&format!("{sleep},{sleep}")), bismar::Code::DuplicateName);
    assert_eq!(code(r#"{"kind":"sleep","value":11}"#), bismar::Code::OutOfRange);
}

#[test]
fn a_pair_is_read_by_the_ratio_of_its_estimates() {
    let asked = [("log", text(LOG)), ("strict", text("front squat")), ("forgiving", text("box squat"))];
    let answer = ask("page.pair", &asked).unwrap();
    let number = |field: &str| match answer.field(field) {
        Some(Value::Number(number)) => *number,
        other => panic!("{field}: {other:?}"),
    };
    assert!(number("low") < number("high"));
    let Some(Value::Number(pairs)) = answer.field("own").unwrap().field("pairs") else { panic!() };
    assert!(*pairs > 10.0, "{pairs}");
    // Far ahead of anything in the past is for looking at; far above the forgiving lift is over the cap.
    let with = |strict: f64, forgiving: f64| {
        let kg = |kg| map(&[("kg", Value::Number(kg))]);
        let loads = [("strict_load", kg(strict)), ("forgiving_load", kg(forgiving))];
        ask("page.pair", &[asked.as_slice(), &loads].concat()).unwrap().field("place").unwrap().clone()
    };
    assert_eq!(with(20.0, 300.0), text("forgiving_ahead"));
    assert_eq!(with(60.0, 40.0), text("above_cap"));
}

#[test]
fn a_longer_range_starts_as_the_rules_say_and_never_heavier() {
    let implement = r#"{"bar":{"id":"bar 20","mass":{"kg":20},"collar":{"kg":0},"kind":"straight"}}"#;
    let stock = r#"{"discs":[{"nominal":{"kg":20},"count":2}]}"#;
    let mm = |mm| map(&[("mm", Value::Number(mm))]);
    let asked = [
        ("implement", Value::from_json(implement).unwrap()),
        ("stock", Value::from_json(stock).unwrap()),
        ("load", map(&[("kg", Value::Number(60.0))])),
        ("from", mm(100.0)),
        ("to", mm(50.0)),
    ];
    let answer = ask("page.range_step", &asked).unwrap();
    let Some(Value::Number(kg)) = answer.field("load").unwrap().field("kg") else { panic!() };
    assert!(*kg <= 60.0 && *kg > 0.0);
}

#[test]
fn a_lifter_is_told_in_small() {
    let answer = ask("page.lifter", &[("log", text(LOG))]).unwrap();
    let places = list(answer.field("places").unwrap());
    assert_eq!(places.len(), list(answer.field("parameters").unwrap().field("lifts").unwrap()).len());
    assert!(places.iter().all(|place| place.field("role") == Some(&text("train"))));
    assert_eq!(ask("page.accepts", &[("log", text(LOG))]).unwrap(), Value::Bool(true));
    assert!(ask("page.accepts", &[("log", text(&LOG[..LOG.len() - 4]))]).is_err());
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
