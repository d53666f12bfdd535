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
    let (one, other) = (one.as_str(), other.as_str());
    let given = [("log", LOG), ("lift", "front squat"), ("one", one), ("other", other), ("unit", "kg")];
    words(&ask("page.compare", &given).unwrap())
}

#[test]
fn two_places_compare_the_same_from_both_sides() {
    let [low, high] = [r#"{"rung":0,"range":0,"tempo":0}"#, r#"{"rung":2,"range":0,"tempo":0}"#];
    let (light, heavy) = (format!("{high} 20"), format!("{low} 30"));
    for (one, other, facts, said) in [
        (&heavy, &light, r#""harder":["variant"],"easier":["load"]"#, r#""Harder: rung.","Easier: load."]"#),
        (&light, &heavy, r#""harder":["load"],"easier":["variant"]"#, r#""Harder: load.","Easier: rung."]"#),
        (&light, &light, r#""harder":[],"easier":[]"#, r#"in anything that is compared."]"#),
    ] {
        let found = compared(one, other);
        assert!(found.contains(facts) && found.contains(said) && found.contains("from 3 x 5 at"), "{found}");
    }
}

/// What is added to a log that is open, and what the log says that is read anew with it.
#[test]
fn an_open_log_that_grows_answers_as_the_log_that_is_read_anew() {
    const ASKED: [&str; 6] =
        ["page.curve", "page.trend", "page.easy_week", "page.verdicts", "page.raters", "page.missed"];
    let open = ask("page.open", &[("log", LOG)]).unwrap();
    let number = format!("json:{}", open.to_json());
    let answers = |log: &str| -> Vec<String> {
        let of = |key: &&str| {
            let mut given = vec![("log", log), ("today", "2026-08-28")];
            given.extend(match *key {
                "page.curve" => vec![("lift", "front squat"), ("unit", "kg")],
                "page.trend" => vec![("lift", "front squat"), ("weeks", "json:8")],
                "page.easy_week" | "page.missed" => vec![("plan", PLAN), ("unit", "kg")],
                _ => vec![("unit", "kg")],
            });
            ask(key, &given).unwrap().to_json()
        };
        ASKED.iter().map(of).collect()
    };
    assert_eq!(answers(&number), answers(LOG));
    let set = r#"{"load":{"kg":33.5},"reps":5,"effort":{"rir":3}}"#;
    let session = format!(
        r#"{{"session_recorded":{{"lifts":[{{"lift":"front squat","sets":[{set},{set}]}}],"pain":[]}}}}"#
    );
    let missed = r#"{"session_missed":{"reason":"travel"}}"#;
    let taken_back = r#"{"correction":{"replaces":704}}"#;
    let (mut all, mut said) = (String::new(), Vec::new());
    for (kind, sequence) in [(session.as_str(), 704), (missed, 705), (taken_back, 706)] {
        let json = format!("json:{kind}");
        let added = ask("page.append", &[("log", &number), ("day", "2026-08-28"), ("kind", &json)]).unwrap();
        let Some(Value::Text(text)) = added.field("text") else { panic!("no text") };
        assert_eq!(words(added.field("sequence").unwrap()), sequence.to_string());
        all = if all.is_empty() { text.to_string() } else { format!("{all},{text}") };
        let grown = answers(&number);
        assert_eq!(grown, answers(&with(&all)), "{kind}");
        said.push(grown);
    }
    assert_ne!(said[0], said[2]);
    // What is supposed is kept nowhere.
    let plan = [("plan", PLAN), ("today", TODAY), ("unit", "kg")];
    let pain = r#"json:{"pain_report":{"region":"knee","score":7,"features":[]}}"#;
    let today = |log: &str, more: &[(&'static str, &str)]| {
        ask("page.today", &[&[("log", log)], plan.as_slice(), more].concat()).unwrap().to_json()
    };
    let before = today(&number, &[]);
    assert_eq!(today(&number, &[("suppose", pain)]), today(&with(&all), &[("suppose", pain)]));
    assert_ne!(today(&number, &[("suppose", pain)]), before);
    assert_eq!(today(&number, &[]), before);
}

#[test]
fn pain_is_held_against_the_numbers_of_the_rules() {
    let zone = |score: u8, features: &str| {
        let pain = format!(r#"json:{{"region":"knee","score":{score},"features":[{features}]}}"#);
        words(ask("page.pain", &[("pain", &pain)]).unwrap().field("zone").unwrap())
    };
    assert_eq!(
        [zone(0, ""), zone(2, ""), zone(3, ""), zone(6, "")],
        [r#""clear""#, r#""hold""#, r#""block""#, r#""stop""#]
    );
    assert_eq!([zone(1, r#""new""#), zone(1, r#""numbness""#)], [r#""block""#, r#""stop""#]);
}

/// Counted natively; every device has to come to the same. Anew with `BISMAR_UPDATE=1`.
#[test]
fn every_bit_of_what_is_counted_here_is_written_down() {
    let counted = ask("page.same_bits", &[]).unwrap();
    let Some(Value::Text(digest)) = counted.field("digest") else { panic!("no digest") };
    if std::env::var_os("BISMAR_UPDATE").is_some() {
        let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/same_bits.txt");
        std::fs::write(file, format!("{digest}\n")).unwrap();
    } else {
        assert_eq!(&**digest, include_str!("same_bits.txt").trim(), "BISMAR_UPDATE=1 writes it anew");
    }
    let count = |field: &str| counted.field(field).unwrap().to_json();
    println!("{} answers of {} functions", count("answers"), count("functions"));
    assert_eq!(
        ask("page.exact", &[("mass", r#"json:{"lb":155}"#)]).unwrap(),
        Value::Text("70.30681735".into())
    );
}
