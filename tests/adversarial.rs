//! Sizes that nobody trains but anybody may send: they are answered or refused in bounded time and memory.
//!
//! The slow ones: `cargo test --release --all-features --test adversarial -- --ignored --nocapture`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

mod invariants {
    #[allow(dead_code, reason = "the invariants use the rest")]
    pub mod course;
}

use std::time::{Duration, Instant};

use bismar::Code;
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::prescription::next_session;
use bismar::progression::{State, fold};
use bismar::quantity::{Day, Mass, Reps};
use bismar::record::*;
use bismar::value::Value;
use invariants::course::{Course, Quality, Step, kg, name, parameters};

/// Runs it and holds it to its time, which is many times what it takes: only a wrong growth breaks it.
fn within<T>(seconds: u64, what: &str, work: impl FnOnce() -> T) -> T {
    let began = Instant::now();
    let answer = work();
    let took = began.elapsed();
    println!("{what}: {:.2} s", took.as_secs_f64());
    assert!(took < Duration::from_secs(seconds), "{what} took {took:?}");
    answer
}

fn plan() -> Plan {
    let lift = |label: &str| LiftPlan {
        lift: name(label),
        reserve: None,
        sets: None,
        reps: None,
        reference: None,
        keep: false,
    };
    Plan {
        format: PLAN_FORMAT.into(),
        version: PLAN_VERSION,
        lifts: ["strict", "forgiving", "press"].map(lift).into(),
        unavailable: Vec::new(),
        minutes: None,
        easy_week: false,
    }
}

/// A course whose sessions repeat for so many weeks, three a week, without folding at every step.
fn years(weeks: u32) -> Log {
    let start = Course::play(&[Step::CleanWeek]);
    let lifts = start.log.events.iter().rev().find_map(|event| match &event.kind {
        EventKind::SessionRecorded(session) => Some(session.lifts.clone()),
        _ => None,
    });
    let lifts = lifts.unwrap();
    let (mut log, mut sequence) = (start.log.clone(), start.next_number());
    for number in 0..weeks * 3 {
        let day = start.day.plus((number * 7 / 3) as i32).unwrap();
        let mut add = |day: Day, kind: EventKind| {
            log.events.push(Event { sequence, day, kind, note: None });
            sequence += 1;
        };
        let pain = Some(Vec::new());
        add(day, EventKind::DayReport(DayReport { pain: pain.clone(), ..DayReport::default() }));
        let session = sequence_of_session(number, &lifts, pain);
        add(day, EventKind::SessionRecorded(session));
    }
    log
}

fn sequence_of_session(number: u32, lifts: &[LiftSession], pain: Option<Vec<PainAnswer>>) -> Session {
    let mut lifts = lifts.to_vec();
    if number.is_multiple_of(5) {
        for lift in &mut lifts {
            lift.sets = vec![Course::set(lift.sets[0].load, Quality::Unscored); 3];
        }
    }
    Session { lifts, pain, minutes: None, effort: None }
}

#[test]
fn forty_years_fold_and_give_a_session() {
    let log = years(52 * 40);
    assert!(log.events.len() > 12_000);
    let state = within(30, "forty years, folded", || fold(&log).unwrap());
    let today = state.last.unwrap().0;
    within(5, "forty years, the next session", || next_session(&log, &plan(), today).unwrap());
    let size = Value::write(&state).unwrap().to_json().len();
    assert!(size < 32 * 1024, "a state of {size} bytes");
}

#[test]
#[ignore = "slow: the most events a log may have"]
fn the_most_events_fold() {
    // As many years as days can be counted, then misses.
    let mut log = years(52 * 170);
    let missed = |sequence: u32| Event {
        sequence,
        day: log.events.last().unwrap().day,
        kind: EventKind::SessionMissed(SessionMissed { reason: name("work") }),
        note: None,
    };
    let next = log.events.last().unwrap().sequence + 1;
    let more: Vec<Event> = (next..).take(MAX_EVENTS - log.events.len()).map(missed).collect();
    log.events.extend(more);
    assert_eq!(log.events.len(), MAX_EVENTS);
    within(120, "200 000 events, folded", || fold(&log).unwrap());
    let text = within(60, "200 000 events, written", || Value::write(&log).unwrap().to_json());
    println!("{} MB of JSON", text.len() / 1_000_000);
    let read = within(120, "200 000 events, read", || Log::from_json(&text).unwrap());
    assert_eq!(read, log);
    log.events.push(Event { sequence: u32::MAX, ..log.events[0].clone() });
    assert_eq!(fold(&log).unwrap_err().code(), Code::TooMany);
}

#[test]
#[ignore = "slow: a million sets"]
fn a_million_sets_fold() {
    // 16 lifts of 30 sets a session.
    let mut set = parameters(1);
    let press = set.lifts[2].clone();
    set.pairs.clear();
    set.lifts =
        (0..16).map(|at| LiftParameters { name: name(&format!("lift {at}")), ..press.clone() }).collect();
    let start = Course::new(set);
    let mut log = start.log.clone();
    let lift = |at: u32| LiftSession {
        lift: name(&format!("lift {at}")),
        sets: vec![Course::set(kg(40.0), Quality::Clean); 30],
        setup: None,
        cue: None,
    };
    let lifts: Vec<LiftSession> = (0..16).map(lift).collect();
    for number in 0..2_100_u32 {
        let session = Session { lifts: lifts.clone(), pain: Some(Vec::new()), minutes: None, effort: None };
        let (sequence, day) = (10 + number, start.day.plus(number as i32 * 3).unwrap());
        log.events.push(Event { sequence, day, kind: EventKind::SessionRecorded(session), note: None });
    }
    within(120, "1 008 000 sets, folded", || fold(&log).unwrap());
}

fn correction(sequence: u32, day: Day, replaces: u32) -> Event {
    let with = Some(Box::new(EventKind::SessionMissed(SessionMissed { reason: name("work") })));
    Event { sequence, day, kind: EventKind::Correction(Correction { replaces, day: None, with }), note: None }
}

#[test]
fn long_chains_of_corrections_are_followed_once() {
    let start = Course::play(&[Step::Missed]);
    let last = start.log.events.last().unwrap().clone();
    let (first, many) = (last.sequence, 40_000);
    for backward in [false, true] {
        let mut log = start.log.clone();
        for number in 1..=many {
            // Each corrects the one before it; or, numbered the other way round, the one after it.
            let (own, replaces) = if backward {
                (first + number, if number == many { first } else { first + number + 1 })
            } else {
                (first + number, first + number - 1)
            };
            log.events.push(correction(own, last.day, replaces));
        }
        let state = within(20, "40 000 corrections of one event", || fold(&log).unwrap());
        assert_eq!(state.last.unwrap().1, first);
    }
    let mut log = start.log.clone();
    for number in 1..=many {
        log.events.push(correction(
            first + number,
            last.day,
            if number == many { first + 1 } else { first + number + 1 },
        ));
    }
    let error = within(20, "40 000 corrections in a circle", || fold(&log).unwrap_err());
    assert_eq!(error.code(), Code::CorrectionCycle);
    // Many events, each with its own correction.
    let mut log = years(2_000);
    let end = log.events.last().unwrap().clone();
    let sessions: Vec<u32> = log
        .events
        .iter()
        .filter(|event| event.kind.name() == "day_report")
        .map(|event| event.sequence)
        .collect();
    for (sequence, replaces) in (end.sequence + 1..).zip(sessions) {
        log.events.push(correction(sequence, end.day, replaces));
    }
    within(30, "every report corrected", || fold(&log).unwrap());
}

#[test]
fn a_used_number_is_not_taken_again() {
    let mut course = Course::play(&[Step::CleanWeek]);
    let last = course.log.events.last().unwrap().clone();
    let kind = EventKind::SessionMissed(SessionMissed { reason: name("work") });
    let again = Event { sequence: last.sequence, day: course.day.plus(30).unwrap(), kind, note: None };
    let mut state: State = course.state().clone();
    assert_eq!(state.apply(&again).unwrap_err().code(), Code::NeedsRefold);
    course.log.events.push(again);
    assert_eq!(fold(&course.log).unwrap_err().code(), Code::SequenceReused);
}

#[test]
fn deep_and_wide_ladders_are_walked_in_bounded_time() {
    let mut set = parameters(1);
    let rungs = |below: &dyn Fn(usize) -> Vec<usize>| -> Vec<Rung> {
        let label = |at: usize| name(&format!("rung {at}"));
        (0..24)
            .map(|at| Rung {
                name: label(at),
                harder_than: below(at).into_iter().map(label).collect(),
                own_ratio: None,
            })
            .collect()
    };
    // Each rung above every one below it, named a thousand times over: more paths than there are atoms.
    set.lifts[0].rungs = rungs(&|at| (0..at).collect::<Vec<_>>());
    set.lifts[0].moving = Dimension::Variant;
    within(5, "a dense ladder", || Course::new(set.clone()));
    assert!(set.lifts[0].is_harder(23, 0) && !set.lifts[0].is_harder(0, 23));
    set.lifts[0].rungs = rungs(&|at| vec![(at + 1) % 24]);
    assert_eq!(set.check().unwrap_err().code(), Code::LadderCycle);
    set.lifts[0].rungs = rungs(&|at| vec![at.saturating_sub(1); if at == 0 { 0 } else { 100_000 }]);
    let error = within(5, "a rung that names the one below it 100 000 times", || set.check().unwrap_err());
    assert_eq!(error.code(), Code::TooMany);
    set.lifts[0].rungs = vec![set.lifts[0].rungs[0].clone(); 25];
    assert_eq!(set.check().unwrap_err().code(), Code::TooMany);
}

#[test]
fn the_largest_parameters_are_taken_many_times() {
    // The stock with the most sums that are still accepted, on every lift.
    let mut set = parameters(1);
    let discs = (0..12).map(|at| Disc::new(Mass::grams(1_000 + (1 << at)), 4).unwrap()).collect();
    set.stock = Stock::new(discs).unwrap();
    let press = set.lifts[2].clone();
    set.pairs.clear();
    set.lifts =
        (0..16).map(|at| LiftParameters { name: name(&format!("lift {at}")), ..press.clone() }).collect();
    let bar = Bar::new(name("bar"), kg(20.0), Mass::ZERO).unwrap();
    set.implements = vec![Implement::Bar(bar)];
    let mut course = Course::new(set.clone());
    assert_eq!(course.state().lifts.len(), 16);
    within(20, "20 changes of the largest parameters", || {
        for _ in 0..20 {
            course.add(EventKind::ParametersChanged(Box::new(set.clone())));
        }
    });
}

#[test]
fn criteria_that_no_session_could_be_marked_by_are_refused_at_once() {
    let mut set = parameters(1);
    let critical = |at: usize| bismar::gate::Criterion::critical(&format!("point {at}")).unwrap();
    set.lifts[0].criteria = (0..4).map(critical).collect();
    assert_eq!(set.check().unwrap_err().code(), Code::TooManyCriticalCriteria);
    set.lifts[0].criteria = vec![critical(0), critical(0)];
    assert_eq!(set.check().unwrap_err().code(), Code::DuplicateCriterion);
    let mut set = parameters(1);
    set.lifts[0].pass.miss_percent = 100;
    assert_eq!(set.check().unwrap_err().code(), Code::OutOfRange);
}

#[test]
fn the_longest_texts_are_kept_and_longer_ones_refused() {
    let mut course = Course::play(&[Step::Missed]);
    let long = "ü".repeat(2_000);
    course.log.events[0].note = Some(long.clone());
    let text = Value::write(&course.log).unwrap().to_json();
    assert_eq!(Log::from_json(&text).unwrap(), course.log);
    course.log.events[0].note = Some(format!("{long}."));
    assert_eq!(fold(&course.log).unwrap_err().code(), Code::TooLong);
    course.log.events[0].note = None;
    // An unknown event of ten megabytes is kept as it is.
    let body = Value::List(vec![Value::Text("x".repeat(1_000_000).into()); 10]);
    course.add(EventKind::Unknown(UnknownEvent { kind: "of_a_newer_version".into(), body }));
    let text = within(10, "ten megabytes unknown, written", || Value::write(&course.log).unwrap().to_json());
    let read = within(10, "ten megabytes unknown, read", || Log::from_json(&text).unwrap());
    assert_eq!(read, course.log);
}

#[test]
fn json_is_read_in_time_that_grows_with_its_length() {
    // Many fields: a look at all earlier ones for each would take minutes.
    let fields: Vec<String> = (0..100_000).map(|at| format!("\"k{at}\":1")).collect();
    let wide = format!("{{{}}}", fields.join(","));
    let tree = within(10, "100 000 fields", || Value::from_json(&wide).unwrap());
    let error = within(10, "100 000 fields read as a log", || tree.read::<Log>().unwrap_err());
    assert_eq!(error.code(), Code::UnknownField);
    for again in ["k5", "k31", "k32", "k33", "k99999"] {
        let text = format!("{{{},\"{again}\":2}}", fields.join(","));
        let error = Value::from_json(&text).unwrap_err();
        assert_eq!((error.code(), error.field()), (Code::DuplicateField, again));
    }
    let again = "{\"a\":1,\"b\":{\"c\":1,\"c\":2}}";
    assert_eq!(Value::from_json(again).unwrap_err().code(), Code::DuplicateField);
    // Nesting beyond what any document of ours has is refused before the stack is at its end.
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let deep = format!("{}1{}", open.repeat(100_000), close.repeat(100_000));
        assert_eq!(Value::from_json(&deep).unwrap_err().code(), Code::NotJson);
        let enough = format!("{}1{}", open.repeat(100), close.repeat(100));
        assert!(Value::from_json(&enough).is_ok());
    }
    for number in
        ["1e309", "-1e309", &"9".repeat(400), "1e-400", "123456789012345678901234567890", "0.1e-99999999999"]
    {
        match Value::from_json(number) {
            Ok(Value::Number(number)) => assert!(number.is_finite()),
            Ok(other) => panic!("{other:?}"),
            Err(error) => assert!(matches!(error.code(), Code::NotJson | Code::NotFinite), "{error}"),
        }
    }
}

#[test]
fn numbers_beyond_their_types_are_refused_with_their_place() {
    for (text, field) in [
        (r#"{"format":"bismar-log","version":4294967296,"lifter":{"id":"x"},"events":[]}"#, "version"),
        (r#"{"format":"bismar-log","version":-1,"lifter":{"id":"x"},"events":[]}"#, "version"),
        (r#"{"format":"bismar-log","version":1.5,"lifter":{"id":"x"},"events":[]}"#, "version"),
        (
            r#"{"format":"bismar-log","version":1,"lifter":{"id":"x"},"events":[{"sequence":1e300,"day":"2025-01-06","kind":{"body_mass_recorded":{"kg":80}}}]}"#,
            "events[0].sequence",
        ),
        (
            r#"{"format":"bismar-log","version":1,"lifter":{"id":"x"},"events":[{"sequence":1,"day":"2025-01-06","kind":{"body_mass_recorded":{"kg":1e300}}}]}"#,
            "events[0].kind.body_mass_recorded",
        ),
    ] {
        let error = Log::from_json(text).unwrap_err();
        assert_eq!(error.field(), field, "{error}");
    }
    let widest = bismar::quantity::Interval::new(f64::MIN, f64::MAX, 0.95);
    assert_eq!(widest.unwrap_err().code(), Code::Overflow);
    assert!(Reps::new(1e300).is_err() && Mass::from_kg(f64::MAX).is_err());
}
