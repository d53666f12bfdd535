//! Rows 72 to 77: sources, stored states, corrections, days, errors, calls by name.

use bismar::Code;
use bismar::answers::{
    SetsToday, block_review, curve, day as of_day, doors, easy_week, handover, missed, next_set, pair,
    raters, review, trend, verdicts, week, year,
};
use bismar::condition::DayClass;
use bismar::prescription::{next_session, next_session_from};
use bismar::progression::State;
use bismar::quantity::Reps;
use bismar::record::*;
use bismar::registry;
use bismar::text;
use bismar::value::Value;

use crate::world::{World, parameters};
use crate::{day, demo, done, kg, log_of, name, session, sets};

/// Whatever an answer over the demo log draws on has a row with a source, and a published one a work that can be found; the
/// session names the version that made it.
#[test]
fn row_72_every_answer_names_rows_that_have_their_source() {
    let (log, today, lift) = (demo(), day("2026-08-28"), name("strict press"));
    let plan = Plan::from_json(include_str!("../../examples/data/demo-plan.json")).unwrap();
    let sources: Vec<Vec<&str>> = vec![
        of_day(&log, today, None).unwrap().sources,
        trend(&log, &lift, today, None).unwrap().sources,
        curve(&log, &lift, today).unwrap().sources,
        week(&log, today).unwrap().sources,
        easy_week(&log, None, today).unwrap().sources,
        missed(&log, &plan, today, None).unwrap().sources,
        pair(&log, &name("front squat"), &name("box squat"), today, None).unwrap().sources,
        verdicts(&log, today).unwrap().sources,
        block_review(&log, today, None).unwrap().sources,
        year(&log, &plan, today, None, None).unwrap().sources,
        raters(&log, None, today).unwrap().sources,
    ];
    for keys in sources {
        assert!(!keys.is_empty());
        for key in keys {
            let row = registry::row(key).unwrap_or_else(|| panic!("no row {key}"));
            assert!(!row.source.citation.is_empty() && !row.place.is_empty(), "{key}");
        }
    }
    assert_eq!(registry::row("loading.step_low").unwrap().source.doi, Some("10.1249/MSS.0b013e3181915670"));
    let session = next_session(&log, &plan, today).unwrap();
    assert_eq!(session.version, env!("CARGO_PKG_VERSION"));
    assert!(!session.parameters.is_empty());
    assert!(review(&log, today).is_ok() && handover(&log, today, today).is_ok());
}

/// Stored and read again, the state decides the same; one that is not the log's own is not used.
#[test]
fn row_73_a_state_is_kept_and_read_again() {
    let log = demo();
    let today = day("2026-08-28");
    let plan = Plan::from_json(include_str!("../../examples/data/demo-plan.json")).unwrap();
    let text = bismar::progression::fold(&log).unwrap().to_json().unwrap();
    let kept = State::from_json(&text).unwrap();
    assert_eq!(next_session_from(&kept, &plan, today), next_session(&log, &plan, today));
    // A state of another version is folded anew from its log. Logs have one format until the first release, so that there is no
    // older one to move to a newer; a log of a format that is not known is refused, never guessed at.
    let older = text.replacen(env!("CARGO_PKG_VERSION"), "0.0.9", 1);
    assert!(older != text && State::from_json(&older).is_err());
    assert!(State::from_json_or_fold(&older, &log).unwrap() == kept);
    let text = log.to_json().unwrap();
    let other = text.replacen("bismar-log", "another-log", 1);
    assert!(other != text);
    assert_eq!(Log::from_json(&other).map(|_| ()).unwrap_err().field(), "format");
}

/// 600 kg was meant to be 60: corrected, the week is 2 x 5 x 60 = 600 kg, and the log still holds what was written first.
#[test]
fn row_74_a_correction_speaks_and_nothing_is_lost() {
    let start = (day("2026-01-05"), EventKind::ParametersChanged(Box::new(parameters())));
    let typo = session(vec![done("squat", sets(2, 5, 600.0))], None);
    let meant = session(vec![done("squat", sets(2, 5, 60.0))], None);
    let correction = EventKind::Correction(Correction::new(2).with_kind(Box::new(meant.clone())));
    let on = day("2026-02-02");
    let log = log_of([start.clone(), (on, typo.clone()), (day("2026-02-03"), correction)]);
    let volume =
        |log: &Log| week(log, day("2026-02-03")).unwrap().total.unwrap().volume_load.unwrap().value();
    assert_eq!(volume(&log), 600.0);
    assert_eq!(volume(&log), volume(&log_of([start, (on, meant)])));
    assert_eq!(log.events[1].kind, typo);
    assert_eq!(log.events.len(), 3);
}

/// From 8 March to 29 March are 21 days, with a clock that was put forward in between; 2028 has its 29 February.
#[test]
fn row_75_days_are_counted_without_a_clock() {
    assert_eq!(day("2026-03-29").since(day("2026-03-08")), 21);
    assert_eq!(day("2028-03-01").since(day("2028-02-28")), 2);
    assert!("2027-02-29".parse::<bismar::quantity::Day>().is_err());
    let mut all = parameters();
    all.lifts[0].step_cap = Some(0.05);
    let mut world = World::new(all);
    world.day = day("2026-03-08");
    world.clear();
    world.train("squat", true);
    // A step of 5 % less after twenty days, nine tenths after twenty-one.
    for (on, load) in [("2026-03-28", 57.0), ("2026-03-29", 54.0)] {
        let mut world = world.clone();
        world.day = day(on);
        world.day_report(DayClass::Within);
        assert_eq!(world.today("squat").load, Some(kg(load)), "{on}");
    }
}

/// By name, as the bindings call, a function and a door of the log give what they give in Rust, to the last bit. That the same bits
/// come natively, in Node and in a browser is for the tests of the package (`row_77` there).
#[test]
fn row_77_one_function_one_number_by_every_way_in() {
    let given = Value::from_json(r#"{"load":{"kg":100},"reps":7}"#).unwrap();
    let direct = bismar::one_rm::epley_1985(kg(100.0), Reps::whole(7).unwrap()).unwrap();
    let by_name = registry::call("one_rm.epley_1985", &given).unwrap();
    assert_eq!(by_name, Value::write(&direct).unwrap());
    let (log, today) = (demo(), day("2026-08-28"));
    let door = doors().find(|door| door.key == "answers.trend").unwrap();
    let given = Value::Map(vec![
        ("log".into(), Value::write(&log).unwrap()),
        ("lift".into(), Value::Text("box squat".into())),
        ("today".into(), Value::Text("2026-08-28".into())),
    ]);
    let direct = trend(&log, &name("box squat"), today, None).unwrap();
    assert_eq!((door.call)(&given).unwrap(), Value::write(&direct).unwrap());
}

/// What is wrong has its code, its field and a sentence.
#[test]
fn row_76_an_error_says_what_where_and_what_would_do() {
    let json = |reps: &str| {
        format!(
            r#"{{"format":"bismar-log","version":1,"lifter":{{"id":"A"}},"events":[{{"sequence":1,"day":"2026-01-05","kind":
            {{"session_recorded":{{"lifts":[{{"lift":"squat","sets":[{{"load":{{"kg":60}},"reps":{reps}}}]}}]}}}}}}]}}"#
        )
    };
    let error = Log::from_json(&json("5.25")).unwrap_err();
    assert!(error.field().contains("reps"), "{error:?}");
    let said = text::error(&error);
    assert!(said.contains("reps") && said.ends_with('.'), "{said}");
    // A lift that nobody declared.
    let mut world = World::new(parameters());
    let error = world.turned_away(session(vec![done("deadlift", sets(1, 5, 60.0))], None));
    assert_eq!((error.code(), error.code().as_str()), (Code::UnknownLift, "unknown_lift"));
    let asked = SetsToday::new(name("deadlift"), Vec::new());
    let error = next_set(&world.log, &Plan::of([name("squat")]), world.day, &asked).unwrap_err();
    assert_eq!(error.code(), Code::UnknownLift);
    assert!(Reps::new(5.25).is_err());
}
