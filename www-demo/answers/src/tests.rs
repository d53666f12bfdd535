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
    entry.call(&map(fields))
}

fn list(value: &Value) -> &[Value] {
    match value {
        Value::List(items) => items,
        _ => panic!("not a list: {value:?}"),
    }
}

#[test]
fn today_says_a_line_for_every_lift_of_the_plan() {
    let answer = ask(
        "page.today",
        &[("log", text(LOG)), ("plan", text(PLAN)), ("today", text("2026-08-28")), ("unit", text("kg"))],
    )
    .unwrap();
    assert_eq!(list(answer.field("lines").unwrap()).len(), 4);
}

#[test]
fn a_supposed_stop_sign_stops_every_lift_and_changes_nothing() {
    let suppose = Value::from_json(r#"{"symptom_report":{"signs":["chest_pain"]}}"#).unwrap();
    let asked =
        [("log", text(LOG)), ("plan", text(PLAN)), ("today", text("2026-08-28")), ("unit", text("kg"))];
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
    let answer = ask(
        "page.today",
        &[("log", text(&copy)), ("plan", text(PLAN)), ("today", text("2026-08-28")), ("unit", text("kg"))],
    )
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
        let today = ask(
            "page.today",
            &[("log", log), ("plan", plan), ("today", text("2026-01-05")), ("unit", text("kg"))],
        )
        .unwrap();
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
    assert!(ask("page.pair", &of_pair()).unwrap().field("ratio").is_some());
}

fn of_pair() -> [(&'static str, Value); 4] {
    [
        ("log", text(LOG)),
        ("strict", text("front squat")),
        ("forgiving", text("box squat")),
        ("today", text("2026-08-28")),
    ]
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
        log.events.push(bismar::record::Event::new(sequence, day, kind));
    }
    let log = text(&Value::write(&log).unwrap().to_json());
    let answer = |recovery: f64, sleep: f64| {
        let markers =
            vec![marker("recovery", recovery), marker("sleep", sleep), marker("warm_up_effort", 3.0)];
        let answers = map(&[("markers", Value::List(markers))]);
        let asked = [("log", log.clone()), ("today", text("2026-09-10")), ("answers", answers)];
        let answer = ask("page.day_against_own", &asked).unwrap();
        answer.field("verdict").unwrap().field("class").unwrap().clone()
    };
    assert_eq!(answer(7.0, 7.0), text("within"));
    assert_eq!(answer(3.0, 7.0), text("below_single"));
    assert_eq!(answer(3.0, 3.0), text("below"));
}

#[test]
fn markers_of_a_day_are_named_once_and_within_their_range() {
    let log = |markers: &str| {
        text(&format!(
            r#"{{"format":"bismar-log","version":1,"lifter":{{"id":"A"}},"events":[{{"sequence":1,"day":"2026-01-01","kind":{{"day_report":{{"markers":[{markers}]}}}}}}]}}"#
        ))
    };
    let sleep = r#"{"kind":"sleep","value":7}"#;
    assert!(ask("page.open", &[("log", log(sleep))]).is_ok());
    let code = |markers: &str| ask("page.open", &[("log", log(markers))]).unwrap_err().code();
    assert_eq!(code(&format!("{sleep},{sleep}")), bismar::Code::DuplicateName);
    assert_eq!(code(r#"{"kind":"sleep","value":11}"#), bismar::Code::OutOfRange);
}

#[test]
fn a_pair_is_read_by_the_ratio_of_its_estimates() {
    let answer = ask("page.pair", &of_pair()).unwrap();
    let Some(Value::Number(pairs)) = answer.field("own").unwrap().field("pairs") else { panic!() };
    assert!(*pairs > 10.0, "{pairs}");
    // Far ahead of anything in the past is for looking at; far above the forgiving lift is over the cap.
    let with = |strict: f64, forgiving: f64| {
        let kg = |kg| map(&[("kg", Value::Number(kg))]);
        let loads = [("loads", map(&[("strict", kg(strict)), ("forgiving", kg(forgiving))]))];
        ask("page.pair", &[of_pair().as_slice(), &loads].concat()).unwrap().field("place").unwrap().clone()
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
    let load = |answer: &Value| match answer.field("step").unwrap().field("load").unwrap().field("kg") {
        Some(Value::Number(kg)) => *kg,
        _ => panic!(),
    };
    let kg = load(&ask("page.range_step", &asked).unwrap());
    assert!(kg <= 60.0 && kg > 0.0);

    // Of somebody with a limit: never above it, and nothing under one of range.
    let under = |limit: &str| {
        let log = limited(limit);
        let of = map(&[("log", text(&log)), ("lift", text("deadlift"))]);
        ask("page.range_step", &[asked.as_slice(), &[("of", of)]].concat()).unwrap()
    };
    assert!((load(&under(r#"{"load":{"kg":45}}"#)) - 45.0).abs() < 1e-9);
    assert!((load(&under(r#"{"load":{"kg":45},"region":"shoulder"}"#)) - kg).abs() < 1e-9);
    assert!(under(r#"{"range":{"mm":300}}"#).field("step").is_none());
}

/// The log with a clearance behind it that names this limit.
fn limited(limit: &str) -> String {
    let event = format!(
        r#",{{"sequence":100000,"day":"2027-01-01","kind":{{"clearance_recorded":{{"status":"cleared_with_limits","who":"clinic","limits":[{limit}]}}}}}}]}}"#
    );
    let end = LOG.trim_end().strip_suffix('}').unwrap().trim_end().strip_suffix(']').unwrap();
    format!("{}{event}", end.trim_end())
}

#[test]
fn the_limits_of_a_lift_are_those_of_its_regions() {
    let of = |limit: &str, lift: &str| {
        let answer = ask("page.limits", &[("log", text(&limited(limit))), ("lift", text(lift))]).unwrap();
        list(answer.field("limits").unwrap()).len()
    };
    let shoulder = r#"{"load":{"kg":45},"region":"shoulder"}"#;
    assert_eq!(of(shoulder, "deadlift"), 0, "a lift of the log");
    assert_eq!(of(r#"{"load":{"kg":45}}"#, "deadlift"), 1, "everywhere");
    assert_eq!(of(shoulder, "strict press"), 1, "of its region");
    assert_eq!(of(shoulder, "nobody knows it"), 1, "all of them where nobody knows its regions");
}

#[test]
fn a_bar_above_a_limit_does_not_fit_a_first_day() {
    let implement = r#"[{"bar":{"id":"bar 20","mass":{"kg":20},"collar":{"kg":0},"kind":"straight"}}]"#;
    let fits = |limit: &str, lift: &str| {
        let asked = [
            ("lift", text(lift)),
            ("implements", Value::from_json(implement).unwrap()),
            ("stock", Value::from_json(r#"{"discs":[]}"#).unwrap()),
            ("log", text(&limited(limit))),
        ];
        let answer = ask("page.first_bars", &asked).unwrap();
        list(answer.field("offers").unwrap())[0].field("fits").cloned()
    };
    assert_eq!(fits(r#"{"load":{"kg":12}}"#, "bench press"), Some(Value::Bool(false)));
    assert_eq!(fits(r#"{"load":{"kg":12},"region":"knee"}"#, "bench press"), Some(Value::Bool(true)));
    assert_eq!(fits(r#"{"load":{"kg":25}}"#, "bench press"), Some(Value::Bool(true)));
}

#[test]
fn a_lifter_is_told_in_small() {
    let answer = ask("page.lifter", &[("log", text(LOG))]).unwrap();
    let places = list(answer.field("places").unwrap());
    assert_eq!(places.len(), list(answer.field("parameters").unwrap().field("lifts").unwrap()).len());
    assert!(places.iter().all(|place| place.field("role") == Some(&text("train"))));
    assert!(ask("page.open", &[("log", text(&LOG[..LOG.len() - 4]))]).is_err());
}

/// What a log says, asked in every way that depends on its state.
fn said(log: &Value) -> Vec<Value> {
    let today = ("today", text("2026-09-20"));
    let own = [("log", log.clone()), today.clone()];
    let session = [own.as_slice(), &[("plan", text(PLAN)), ("unit", text("kg"))]].concat();
    vec![
        ask("page.history", &own).unwrap(),
        ask("page.lifter", &own[..1]).unwrap(),
        ask("page.today", &session).unwrap(),
    ]
}

fn append(log: &Value, day: &str, kind: &str) -> Result<Value, bismar::Error> {
    let kind = Value::from_json(kind).unwrap();
    let given = [("log", log.clone()), ("day", text(day)), ("kind", kind)];
    let before = said(log);
    let takes = ask("page.takes", &given);
    assert_eq!(said(log), before, "asking keeps nothing");
    let added = ask("page.append", &given);
    assert_eq!(takes.err(), added.as_ref().err().cloned(), "refused in the same words");
    added
}

/// Events for the end of the demo log: what a coach writes in a week, with much of it taken back, put back and corrected.
fn additions(last: u32) -> Vec<String> {
    let session = r#"{"session_recorded":{"lifts":[{"lift":"box squat","sets":[{"load":{"kg":40},"reps":5}]}],"pain":[]}}"#;
    let pain = r#"{"pain_report":{"region":"knee","score":5}}"#;
    let sign = r#"{"symptom_report":{"signs":["chest_pain"]}}"#;
    let mass = r#"{"body_mass_recorded":{"kg":80}}"#;
    let report = r#"{"day_report":{"pain":[],"asks":[]}}"#;
    let back = |of: u32| format!(r#"{{"correction":{{"replaces":{}}}}}"#, last + of);
    let put = |of: u32, kind: &str| format!(r#"{{"correction":{{"replaces":{},"with":{kind}}}}}"#, last + of);
    [
        mass.to_string(),                                 // 1
        back(1),                                          // 2
        put(2, mass),                                     // 3
        report.to_string(),                               // 4
        session.to_string(),                              // 5
        back(5),                                          // 6
        sign.to_string(),                                 // 7
        back(7),                                          // 8
        pain.to_string(),                                 // 9
        session.to_string(),                              // 10
        put(10, &session.replace("40", "38")),            // 11
        back(9),                                          // 12: below what was corrected since
        r#"{"correction":{"replaces":300}}"#.to_string(), // 13: far back
        back(11),                                         // 14
        mass.to_string(),                                 // 15
    ]
    .to_vec()
}

#[test]
fn a_log_that_is_kept_open_answers_after_every_addition_as_one_that_is_read_whole() {
    let mut whole = Value::from_json(LOG).unwrap().to_json();
    let open = ask("page.open", &[("log", text(&whole))]).unwrap();
    let highest =
        bismar::record::Log::from_json(LOG).unwrap().events.iter().map(|event| event.sequence).max();
    let mut changed = 0;
    for (at, kind) in (1..).zip(additions(highest.unwrap())) {
        let sequence = highest.unwrap() + at;
        let day = format!("2026-09-{at:02}");
        let before = said(&open);
        let added = append(&open, &day, &kind).unwrap();
        assert_eq!(added.field("sequence"), Some(&Value::Number(f64::from(sequence))));
        let Some(Value::Text(event)) = added.field("text") else { panic!("no text") };
        assert_eq!(**event, format!(r#"{{"sequence":{sequence},"day":"{day}","kind":{kind}}}"#));
        whole = format!("{},{event}]}}", whole.strip_suffix("]}").unwrap());
        assert_eq!(said(&open), said(&text(&whole)), "after {at}");
        changed += u32::from(said(&open)[1] != before[1]);
    }
    assert!(changed > 10, "{changed}");
    // What is refused changes nothing: a lift that nobody declared, an event that is not there.
    let before = said(&open);
    let next = highest.unwrap() + 16;
    for kind in [
        r#"{"session_recorded":{"lifts":[{"lift":"curl","sets":[]}]}}"#,
        r#"{"correction":{"replaces":8000}}"#,
        r#"{"pain_report":{"region":"left ear","score":2}}"#,
        r#"{"clearance_recorded":{"status":"cleared_with_limits","who":"invented clinic","limits":[]}}"#,
        r#"{"clearance_recorded":{"status":"cleared_with_limits","who":"invented clinic","limits":[{"region":"left ear","effort":6}]}}"#,
    ] {
        let refused = append(&open, "2026-09-20", kind).unwrap_err();
        assert_eq!(said(&open), before);
        let event = format!(r#"{{"sequence":{next},"day":"2026-09-20","kind":{kind}}}"#);
        let log = format!("{},{event}]}}", whole.strip_suffix("]}").unwrap());
        let read = ask("page.open", &[("log", text(&log))]).unwrap_err();
        assert_eq!(refused, read, "as the log that is read whole refuses it");
    }
    assert_eq!(ask("page.close", &[("log", open.clone())]).unwrap(), Value::Bool(true));
    assert_eq!(ask("page.lifter", &[("log", open)]).unwrap_err().code(), bismar::Code::NotReady);
}

/// A pain that is corrected to a stop after a clearance was given: the clearance knew nothing of it, whatever day it is of.
#[test]
fn what_a_correction_tells_is_told_when_it_is_corrected_also_where_a_log_is_kept_open() {
    let mut whole = Value::from_json(LOG).unwrap().to_json();
    let open = ask("page.open", &[("log", text(&whole))]).unwrap();
    let last = bismar::record::Log::from_json(LOG).unwrap().events.iter().map(|event| event.sequence).max();
    let last = last.unwrap();
    let cleared = r#"{"clearance_recorded":{"status":"cleared","who":"invented clinic"}}"#;
    let signed = r#"{"coach_sign_off":{"who":"coach","scope":{"region":"knee"}}}"#;
    let worse = format!(
        r#"{{"correction":{{"replaces":{},"with":{{"pain_report":{{"region":"knee","score":9}}}}}}}}"#,
        last + 1
    );
    let kinds = [r#"{"pain_report":{"region":"knee","score":1}}"#, cleared, signed, worse.as_str()];
    let stops = |log: &Value| {
        let answer = ask("page.stops", &[("log", log.clone()), ("today", text("2026-09-05"))]).unwrap();
        list(answer.field("in_force").unwrap()).len()
    };
    let status = |log: &Value| {
        let answer = ask("page.history", &[("log", log.clone()), ("today", text("2026-09-05"))]).unwrap();
        let steps = list(answer.field("steps").unwrap()).to_vec();
        let mut own = steps.into_iter().filter(|step| step.field("lift") == Some(&text("box squat")));
        own.next_back().unwrap().field("status").unwrap().clone()
    };
    for (kind, day) in kinds.iter().zip(1..) {
        let added = append(&open, &format!("2026-09-{day:02}"), kind).unwrap();
        let Some(Value::Text(event)) = added.field("text") else { panic!("no text") };
        whole = format!("{},{event}]}}", whole.strip_suffix("]}").unwrap());
    }
    assert_eq!(stops(&text(&whole)), 1);
    assert_eq!(stops(&open), 1, "kept open");
    assert_eq!(status(&text(&whole)), text("stopped_refer"));
    assert_eq!(status(&open), text("stopped_refer"), "kept open");
    // Followed on from there.
    append(&open, "2026-09-05", cleared).unwrap();
    assert_eq!(status(&open), text("stopped_refer"));
    append(&open, "2026-09-05", signed).unwrap();
    assert_ne!(status(&open), text("stopped_refer"));
    assert_eq!(stops(&open), 0);
}

#[test]
fn undoing_the_last_event_brings_back_what_was_said_before_it() {
    let open = ask("page.open", &[("log", text(LOG))]).unwrap();
    let entries = || ask("page.entries", &[("log", open.clone()), ("most", Value::Number(3.0))]).unwrap();
    let said = |answer: &Value| {
        let first = &list(answer.field("entries").unwrap())[0];
        ["day", "said", "taken_back"].map(|name| first.field(name).unwrap().to_json())
    };
    let undo = || {
        let answer = entries();
        let undo = answer.field("undo").unwrap();
        let (by, change) = (undo.field("by").unwrap().to_json(), undo.field("change").unwrap().clone());
        append(&open, "2026-09-02", &by).unwrap();
        change
    };
    append(&open, "2026-09-01", r#"{"body_mass_recorded":{"kg":80}}"#).unwrap();
    let first = said(&entries());
    assert_eq!(first, ["\"2026-09-01\"", r#"{"body_mass_recorded":{"kg":80}}"#, "false"]);
    let number = list(entries().field("entries").unwrap())[0].field("last").unwrap().to_json();
    // Corrected, undone; taken back by undoing, and put back.
    append(
        &open,
        "2026-09-02",
        &format!(r#"{{"correction":{{"replaces":{number},"with":{{"body_mass_recorded":{{"kg":90}}}}}}}}"#),
    )
    .unwrap();
    assert_ne!(said(&entries()), first);
    assert_eq!(undo(), text("correction"));
    assert_eq!(said(&entries()), first);
    let number = list(entries().field("entries").unwrap())[0].field("last").unwrap().to_json();
    append(&open, "2026-09-02", &format!(r#"{{"correction":{{"replaces":{number}}}}}"#)).unwrap();
    assert_eq!(said(&entries())[2], "true");
    assert_eq!(undo(), text("taking_back"));
    assert_eq!(said(&entries()), first);
    // Only its day was wrong.
    let number = list(entries().field("entries").unwrap())[0].field("last").unwrap().to_json();
    append(&open, "2026-09-02", &format!(r#"{{"correction":{{"replaces":{number},"day":"2026-08-30"}}}}"#))
        .unwrap();
    assert_eq!(said(&entries()), ["\"2026-08-30\"".into(), first[1].clone(), first[2].clone()]);
    undo();
    assert_eq!(said(&entries()), first);
    // The entry itself.
    append(&open, "2026-09-02", r#"{"body_mass_recorded":{"kg":81}}"#).unwrap();
    assert_eq!(undo(), text("entry"));
    assert_eq!(said(&entries())[2], "true");
}

#[test]
fn what_another_window_wrote_is_followed_by_what_was_entered_here() {
    let open = ask("page.open", &[("log", text(LOG))]).unwrap();
    let mass = r#"{"body_mass_recorded":{"kg":80}}"#;
    append(&open, "2026-09-01", mass).unwrap();
    let mine = [
        r#"{"sequence":704,"day":"2026-08-30","kind":{"body_mass_recorded":{"kg":81}}}"#,
        r#"{"sequence":705,"day":"2026-08-30","kind":{"correction":{"replaces":704}}}"#,
        r#"{"sequence":706,"day":"2026-08-30","kind":{"correction":{"replaces":8000}}}"#,
    ];
    let events = Value::List(mine.iter().map(|one| text(one)).collect());
    let joined = ask("page.join", &[("log", open.clone()), ("events", events)]).unwrap();
    let texts: Vec<_> = list(joined.field("texts").unwrap()).iter().map(Value::to_json).collect();
    assert_eq!(texts.len(), 2);
    assert!(
        texts[0].contains("705")
            && texts[1].contains("2026-09-01")
            && texts[1].contains(r#"\"replaces\":705"#),
        "{texts:?}"
    );
    assert_eq!(joined.field("left"), Some(&Value::Number(1.0)));
}

#[test]
fn a_plan_is_kept_as_the_text_that_it_was_read_from() {
    let plan = ask("page.plan", &[("plan", text(PLAN))]).unwrap();
    let kept = ask("page.plan_text", &[("plan", plan.clone())]).unwrap();
    assert_eq!(ask("page.plan", &[("plan", kept)]).unwrap(), plan);
}

/// Two bars, a frame, and discs of which one pair has full size.
fn kit() -> [(&'static str, Value); 2] {
    let implements = r#"[
        {"bar":{"id":"bar 20","mass":{"kg":20},"collar":{"kg":0},"kind":"straight"}},
        {"bar":{"id":"bar 8","mass":{"kg":8},"collar":{"kg":0},"kind":"straight"}},
        {"bar":{"id":"frame","mass":{"kg":25},"collar":{"kg":0},"kind":{"hex":{"low_handle":{"mm":0}}}}}]"#;
    let stock = r#"{"discs":[
        {"nominal":{"kg":10},"diameter":{"mm":450},"count":2},
        {"nominal":{"kg":5},"diameter":{"mm":230},"count":4},
        {"nominal":{"kg":2.5},"diameter":{"mm":200},"count":2}]}"#;
    [("implements", Value::from_json(implements).unwrap()), ("stock", Value::from_json(stock).unwrap())]
}

/// Name, load and blocks of each bar on offer.
fn offered(answer: &Value) -> Vec<(String, String, bool)> {
    let offers = list(answer.field("offers").unwrap()).iter();
    offers
        .map(|offer| {
            let Value::Text(name) = offer.field("implement").unwrap() else { panic!("no name") };
            (name.to_string(), offer.field("load").unwrap().to_json(), offer.field("blocks").is_some())
        })
        .collect()
}

fn row(name: &str, kg: &str, blocks: bool) -> (String, String, bool) {
    (name.to_string(), format!("{{\"kg\":{kg}}}"), blocks)
}

#[test]
fn a_first_day_offers_the_lightest_right_bar_at_the_height_of_the_lift() {
    let of = |lift: &str, blocks: &str| {
        let own = [("lift", text(lift)), ("blocks", Value::from_json(blocks).unwrap())];
        offered(&ask("page.first_bars", &[kit().as_slice(), &own].concat()).unwrap())
    };
    assert_eq!(of("box squat", "[]"), [row("bar 8", "8", false), row("bar 20", "20", false)]);
    // The pair of 450 mm holds the bar at 225 mm: 8 + 2 x 10 and 20 + 2 x 10.
    assert_eq!(of("straight-bar pull", "[]"), [row("bar 8", "28", false), row("bar 20", "40", false)]);
    // Discs of 200 mm on blocks of 125 mm do as well: 8 + 2 x 2.5.
    assert_eq!(of("straight-bar pull", r#"[{"mm":125}]"#)[0], row("bar 8", "13", true));
    assert_eq!(of("hex-bar pull", "[]"), [row("frame", "45", false)]);
    assert_eq!(
        ask("page.first_bars", &[kit().as_slice(), &[("lift", text("curl"))]].concat())
            .unwrap_err()
            .code()
            .as_str(),
        "unknown_name"
    );
}

/// A log and a plan of one squat that begins with that bar and load.
fn squat(name: &str, bar: &str, kg: &str) -> (Value, Value) {
    let lift = format!(r#"[{{"lift":"box squat","implement":"{bar}","load":{{"kg":{kg}}}}}]"#);
    let lifter = format!(r#"{{"id":"{name}"}}"#);
    let own = [
        ("lifter", Value::from_json(&lifter).unwrap()),
        ("day", text("2026-01-05")),
        ("lifts", Value::from_json(&lift).unwrap()),
    ];
    let begun = ask("page.begin", &[kit().as_slice(), &own].concat()).unwrap();
    (begun.field("log").unwrap().clone(), begun.field("plan").unwrap().clone())
}

#[test]
fn another_bar_keeps_the_working_load_and_is_never_heavier_than_it() {
    let (log, _) = squat("Ann", "bar 20", "20");
    let with = |bar: &str, log: &Value| {
        ask("page.with_bar", &[("log", log.clone()), ("lift", text("box squat")), ("implement", text(bar))])
    };
    let all = with("bar 8", &log).unwrap().to_json();
    assert!(all.contains(r#""implement":"bar 8""#), "{all}");
    let (light, _) = squat("Bob", "bar 8", "8");
    assert_eq!(with("bar 20", &light).unwrap_err().code().as_str(), "not_loadable");
    assert_eq!(with("frame", &log).unwrap_err().code().as_str(), "not_loadable");
}

#[test]
fn two_at_one_bar_lift_what_is_left_in_the_order_of_the_fewest_moves() {
    let (heavy, light) = (squat("Ann", "bar 20", "40"), squat("Bob", "bar 20", "20"));
    let one = |of: &(Value, Value), done: &str| {
        map(&[
            ("log", of.0.clone()),
            ("plan", of.1.clone()),
            ("lift", text("box squat")),
            ("done", Value::from_json(done).unwrap()),
        ])
    };
    let asked = |done: &str| {
        let lifters = Value::List(vec![one(&heavy, done), one(&light, done)]);
        ask("page.shared", &[("lifters", lifters), ("today", text("2026-01-05"))]).unwrap()
    };
    // Two sets each are done: one of 40 and one of 20 kg are left. Whoever has the empty bar goes first: 10 kg, or
    // twice 5 kg, go on once; the other way round they would have to come off again.
    let last = asked("2");
    let turns = last.field("turns").unwrap();
    assert_eq!(
        list(last.field("left").unwrap()).iter().map(|own| list(own).len()).collect::<Vec<_>>(),
        [1, 1]
    );
    assert_eq!(turns.field("moves_each_end").unwrap().to_json(), "1");
    assert_eq!(list(turns.field("turns").unwrap())[0].field("lifter").unwrap().to_json(), "1");
}

#[test]
fn two_who_pull_from_the_floor_change_the_fewest_discs_and_keep_their_heights() {
    let pull = |name: &str, kg: &str| {
        let lift = format!(r#"[{{"lift":"straight-bar pull","implement":"bar 20","load":{{"kg":{kg}}}}}]"#);
        let lifter = format!(r#"{{"id":"{name}"}}"#);
        let own = [
            ("lifter", Value::from_json(&lifter).unwrap()),
            ("day", text("2026-01-05")),
            ("lifts", Value::from_json(&lift).unwrap()),
        ];
        let begun = ask("page.begin", &[kit().as_slice(), &own].concat()).unwrap();
        map(&[
            ("log", begun.field("log").unwrap().clone()),
            ("plan", begun.field("plan").unwrap().clone()),
            ("lift", text("straight-bar pull")),
            ("done", Value::Number(0.0)),
        ])
    };
    // 50 = 20 + 2 x (10 + 5), 40 = 20 + 2 x 10: the pair of 450 mm is inside for both.
    let lifters = Value::List(vec![pull("Ann", "50"), pull("Bob", "40")]);
    let answer = ask("page.shared", &[("lifters", lifters), ("today", text("2026-01-05"))]).unwrap();
    let turns = answer.field("turns").unwrap();
    // Ann warms up with 40. Bob first: 10 on, which is all for the first round; then 5 on, off, on, and Ann's last set is as it
    // was: 1 + 3. Ann first: 10 on, then 5 on for each of her three and off for each of his last two: 1 + 5.
    assert_eq!(turns.field("moves_each_end").unwrap().to_json(), "4");
    let order = list(turns.field("turns").unwrap());
    assert_eq!(
        order.iter().map(|turn| turn.field("lifter").unwrap().to_json()).collect::<String>(),
        "1010100"
    );
    assert_eq!(order[3].field("moves").unwrap().field("on").map(|on| list(on).len()), Some(1));
}

#[test]
fn what_is_set_comes_back_as_it_was_written() {
    let (log, _) = squat("Ann", "bar 20", "20");
    let Value::Text(log_text) = &log else { panic!("no text") };
    let lifter = ask("page.lifter", &[("log", log.clone())]).unwrap();
    let all = lifter.field("parameters").unwrap();
    assert!(log_text.contains(&all.to_json()), "{all:?}");
    let other = ask("page.with_kit", &[kit().as_slice(), &[("log", log.clone())]].concat()).unwrap();
    assert_eq!(other, *all, "the same bars and discs change nothing");
}

#[test]
fn a_set_that_lost_a_critical_point_asks_for_less_and_a_second_ends_the_lift() {
    let (log, plan) = squat("Ann", "bar 20", "40");
    let lost = r#"{"load":{"kg":40},"reps":5,"marks":{"reps":5,"acceptable":4,"marks":[{"criterion":"brace held","mark":"not_met"}],"rater":"coach"}}"#;
    let after = |sets: usize| {
        let answer = ask(
            "page.after_sets",
            &[
                ("log", log.clone()),
                ("plan", plan.clone()),
                ("lift", text("box squat")),
                ("sets", Value::List(vec![Value::from_json(lost).unwrap(); sets])),
                ("today", text("2026-01-05")),
                ("unit", text("kg")),
            ],
        )
        .unwrap();
        answer.field("next").unwrap().field("then").unwrap().to_json()
    };
    // One loadable step below 40 = 20 + 2 x 10 is 35 = 20 + 2 x (5 + 2.5).
    assert_eq!(after(1), r#"{"down_to":{"kg":35}}"#);
    assert_eq!(after(2), r#""stop""#);
}

/// A log of somebody new whose only settings were taken back, with what else is written after it.
fn without_settings(more: &str) -> Value {
    let first = Value::from_json(LOG).unwrap();
    let Value::Map(fields) = first else { panic!("no log") };
    let mut log: Vec<_> = fields;
    for (key, value) in &mut log {
        if &**key == "events" {
            let first = list(value)[0].to_json();
            let text = format!(
                r#"[{first},{{"sequence":2,"day":"2024-09-02","kind":{{"correction":{{"replaces":1}}}}}}{more}]"#
            );
            *value = Value::from_json(&text).unwrap();
        }
    }
    text(&Value::Map(log).to_json())
}

fn first_line(value: &Value) -> String {
    let Value::Map(fields) = value else { panic!("no answer") };
    let lines = fields.iter().find(|(key, _)| &**key == "lines").unwrap();
    list(&lines.1).first().map(Value::to_json).unwrap_or_default()
}

#[test]
fn a_stop_is_told_without_settings() {
    let today = ("today", text("2024-09-02"));
    let none = ask("page.stops", &[("log", without_settings("")), today.clone()]).unwrap();
    assert_eq!(first_line(&none), "");
    for (kind, words) in [
        (r#"{"symptom_report":{"signs":["chest_pain"]}}"#, "Stop: chest pain"),
        (r#"{"clearance_recorded":{"status":"not_cleared","who":"invented"}}"#, "clearance was not to train"),
        (r#"{"layoff_noted":{"from":"2024-09-01","reason":"ill"}}"#, "new clearance comes first"),
        (r#"{"day_report":{"class":"within","asks":["fever"]}}"#, "Stop: "),
    ] {
        let more = format!(r#",{{"sequence":3,"day":"2024-09-02","kind":{kind}}}"#);
        let told = ask("page.stops", &[("log", without_settings(&more)), today.clone()]).unwrap();
        assert!(first_line(&told).contains(words), "{kind}: {}", first_line(&told));
        let by = Value::from_json(r#"{"correction":{"replaces":3}}"#).unwrap();
        let undone =
            format!(r#"{more},{{"sequence":4,"day":"2024-09-02","kind":{{"correction":{{"replaces":3}}}}}}"#);
        let back = ask("page.stops", &[("log", without_settings(&undone)), today.clone()]).unwrap();
        assert_eq!(first_line(&back), "");
        let asked = [("log", without_settings(&more)), today.clone(), ("unit", text("kg")), ("suppose", by)];
        let opened = ask("page.opens", &asked).unwrap();
        assert!(!opened.to_json().contains(r#""stops":[]"#), "{}", opened.to_json());
    }
}
