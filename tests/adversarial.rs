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

#[path = "rules/world.rs"]
#[allow(dead_code, reason = "the rules use the rest")]
mod world;

use std::time::{Duration, Instant};

use bismar::Code;
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::prescription::next_session;
use bismar::progression::{State, fold};
use bismar::quantity::{Day, Length, Mass, Reps};
use bismar::record::*;
use bismar::value::Value;
use world::{World, kg, lift, name, parameters};

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
    Plan::of(["squat", "press"].map(name))
}

/// A lifter of no known birth, so that the log may begin on any day.
fn started() -> World {
    World::of(Lifter::new(name("invented")), parameters())
}

fn missed() -> EventKind {
    EventKind::SessionMissed(SessionMissed::new(name("work")))
}

/// A squat and a press as they start, three sets of five a session, clean, and not scored in every fifth.
fn session(number: u32) -> Session {
    let done = |(id, load): (&str, f64)| {
        let mut sets = World::sets(kg(load), 3, true);
        if number.is_multiple_of(5) {
            sets.iter_mut().for_each(|set| set.marks = None);
        }
        LiftSession::as_granted(name(id), sets)
    };
    let lifts = [("squat", 60.0), ("press", 40.0)].map(done).to_vec();
    Session::new(lifts).with_pain(Vec::new())
}

/// So many weeks of that, three times a week.
fn years(weeks: u32) -> Log {
    let start = started();
    let (mut log, mut sequence) = (start.log, 10);
    for number in 0..weeks * 3 {
        let day = start.day.plus((number * 7 / 3) as i32).unwrap();
        let report = DayReport::default().with_pain(Vec::new());
        for kind in [EventKind::DayReport(report), EventKind::SessionRecorded(session(number))] {
            log.events.push(Event::new(sequence, day, kind));
            sequence += 1;
        }
    }
    log
}

#[test]
fn forty_years_fold_and_give_a_session() {
    let log = years(52 * 40);
    assert!(log.events.len() > 12_000);
    let state = within(30, "forty years, folded", || fold(&log).unwrap());
    let today = state.last().unwrap().0;
    within(5, "forty years, the next session", || next_session(&log, &plan(), today).unwrap());
    let size = state.to_json().unwrap().len();
    assert!(size < 32 * 1024, "a state of {size} bytes");
}

#[test]
#[ignore = "slow: the most events a log may have"]
fn the_most_events_fold() {
    // As many years as days can be counted, then misses.
    let mut log = years(52 * 170);
    let event = |sequence: u32| Event::new(sequence, log.events.last().unwrap().day, missed());
    let next = log.events.last().unwrap().sequence + 1;
    let more: Vec<Event> = (next..).take(MAX_EVENTS - log.events.len()).map(event).collect();
    log.events.extend(more);
    assert_eq!(log.events.len(), MAX_EVENTS);
    within(120, "200 000 events, folded", || fold(&log).unwrap());
    let text = within(60, "200 000 events, written", || Value::write(&log).unwrap().to_json());
    println!("{} MB of JSON", text.len() / 1_000_000);
    let read = within(120, "200 000 events, read", || Log::from_json(&text).unwrap());
    assert_eq!(read, log);
    log.events.push(log.events[0].clone().with_sequence(u32::MAX));
    assert_eq!(fold(&log).unwrap_err().code(), Code::TooMany);
}

#[test]
#[ignore = "slow: a million sets"]
fn a_million_sets_fold() {
    // 16 lifts of 30 sets a session.
    let mut set = parameters();
    set.lifts = (0..16).map(|at| lift(&format!("lift {at}"), "knee", 40.0)).collect();
    let start = World::of(Lifter::new(name("invented")), set);
    let mut log = start.log.clone();
    let done =
        |at: u32| LiftSession::as_granted(name(&format!("lift {at}")), World::sets(kg(40.0), 30, true));
    let lifts: Vec<LiftSession> = (0..16).map(done).collect();
    for number in 0..2_100_u32 {
        let session = Session::new(lifts.clone()).with_pain(Vec::new());
        let (sequence, day) = (10 + number, start.day.plus(number as i32 * 3).unwrap());
        log.events.push(Event::new(sequence, day, EventKind::SessionRecorded(session)));
    }
    within(120, "1 008 000 sets, folded", || fold(&log).unwrap());
}

fn correction(sequence: u32, day: Day, replaces: u32) -> Event {
    let with = Some(Box::new(missed()));
    Event::new(sequence, day, EventKind::Correction(Correction::new(replaces).with_kind(with)))
}

#[test]
fn long_chains_of_corrections_are_followed_once() {
    let mut start = started();
    start.add(missed());
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
        assert_eq!(state.last().unwrap().1, first);
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
    let mut world = started();
    world.passing_day("squat");
    let last = world.log.events.last().unwrap().clone();
    let again = last.with_day(world.day.plus(30).unwrap()).with_kind(missed());
    let mut state = world.state();
    assert_eq!(state.apply(&again).unwrap_err().code(), Code::NeedsRefold);
    world.log.events.push(again);
    assert_eq!(fold(&world.log).unwrap_err().code(), Code::SequenceReused);
}

#[test]
fn deep_and_wide_ladders_are_walked_in_bounded_time() {
    let mut set = parameters();
    let rungs = |below: &dyn Fn(usize) -> Vec<usize>| -> Vec<Rung> {
        let label = |at: usize| name(&format!("rung {at}"));
        (0..24).map(|at| Rung::new(label(at), below(at).into_iter().map(label).collect())).collect()
    };
    // Each rung above every one below it, named a thousand times over: more paths than there are atoms.
    set.lifts[0].rungs = rungs(&|at| (0..at).collect::<Vec<_>>());
    set.lifts[0].moving = Dimension::Variant;
    within(5, "a dense ladder", || World::new(set.clone()));
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
    let mut set = parameters();
    let discs = (0..12).map(|at| Disc::new(Mass::grams(1_000 + (1 << at)), 4).unwrap()).collect();
    set.stock = Stock::new(discs).unwrap();
    set.lifts = (0..16).map(|at| lift(&format!("lift {at}"), "knee", 40.0)).collect();
    let bar = Bar::new(name("bar"), kg(20.0), Mass::ZERO).unwrap();
    set.implements = vec![Implement::Bar(bar)];
    let mut world = World::new(set.clone());
    assert_eq!(world.state().lifts().len(), 16);
    let next = world.state().last().unwrap().1 + 1;
    let day = world.day;
    world.log.events.extend((next..next + 20).map(|sequence| {
        // Other equipment each time, so that no list of loads can be kept.
        let blocks = if sequence.is_multiple_of(2) { vec![Length::millimetres(50)] } else { Vec::new() };
        let set = set.clone().with_blocks(blocks);
        Event::new(sequence, day, EventKind::ParametersChanged(Box::new(set)))
    }));
    within(20, "20 changes of the largest parameters", || fold(&world.log).unwrap());
}

/// As many heights as there may be, on every lift: each has a list of loads of its own, on the floor and on every block.
#[test]
fn the_most_heights_are_taken() {
    let mut set = parameters();
    let disc = |at: u16| {
        let across = Length::millimetres(450 - 4 * i16::try_from(at).unwrap());
        Disc::new(Mass::grams(1_000 + (1 << at)), 4).unwrap().with_diameter(across).unwrap()
    };
    set.stock = Stock::new((0..12).map(disc).collect()).unwrap();
    set.blocks = (1..=16).map(|at| Length::millimetres(2 * at)).collect();
    let heights: Vec<Length> = (0..24).map(|at| Length::millimetres(250 - at)).collect();
    set.lifts = (0..16).map(|at| lift(&format!("lift {at}"), "knee", 40.0)).collect();
    for lift in &mut set.lifts {
        lift.starts_from = StartsFrom::Floor;
        lift.ranges = heights.clone();
    }
    let world = within(60, "384 heights", || World::new(set));
    let state = world.state();
    let size = state.to_json().unwrap().len();
    assert!(size < 128 * 1024, "a state of {size} bytes");
    within(60, "384 heights, read again", || State::from_json(&state.to_json().unwrap()).unwrap());
    within(60, "384 heights, a session", || next_session(&world.log, &plan_of_sixteen(), world.day).unwrap());
}

fn plan_of_sixteen() -> Plan {
    Plan::of((0..16).map(|at| name(&format!("lift {at}"))))
}

#[test]
fn criteria_that_no_session_could_be_marked_by_are_refused_at_once() {
    let mut set = parameters();
    let critical = |at: usize| bismar::gate::Criterion::critical(&format!("point {at}")).unwrap();
    set.lifts[0].criteria = (0..4).map(critical).collect();
    assert_eq!(set.check().unwrap_err().code(), Code::TooManyCriticalCriteria);
    set.lifts[0].criteria = vec![critical(0), critical(0)];
    assert_eq!(set.check().unwrap_err().code(), Code::DuplicateCriterion);
    let mut set = parameters();
    set.lifts[0].pass.miss_percent = 100;
    assert_eq!(set.check().unwrap_err().code(), Code::OutOfRange);
}

#[test]
fn the_longest_texts_are_kept_and_longer_ones_refused() {
    let mut log = started().log;
    let long = "ü".repeat(2_000);
    log.events[0].note = Some(long.clone());
    assert_eq!(Log::from_json(&log.to_json().unwrap()), Ok(log.clone()));
    log.events[0].note = Some(format!("{long}."));
    assert_eq!(fold(&log).unwrap_err().code(), Code::TooLong);
    log.events[0].note = None;
    // An unknown event of ten megabytes, in a log of a newer version, is kept as it is.
    log.version = VERSION + 1;
    let body = Value::List(vec![Value::Text("x".repeat(1_000_000).into()); 10]);
    let kind = EventKind::Unknown(UnknownEvent::new("of_a_newer_version".into(), body));
    log.events.push(Event::new(9, log.events[0].day, kind));
    let text = within(10, "ten megabytes unknown, written", || log.to_json().unwrap());
    let read = within(10, "ten megabytes unknown, read", || Log::from_json(&text).unwrap());
    assert!(read == log);
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
