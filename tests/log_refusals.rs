//! What the fold does not take: ids that nobody declared, kinds that nobody knows, answers that nobody may give, lifters
//! who cannot be, starts that cannot be loaded, more than a log can hold. Each refusal names the event and what is
//! allowed, and leaves the state as it was.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]
#![cfg(feature = "json")]

#[path = "rules/world.rs"]
#[allow(dead_code, reason = "the rules use the rest")]
mod world;

use std::collections::BTreeSet;

use bismar::Code;
use bismar::condition::DayClass;
use bismar::error::{Error, Given};
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::progression::{State, fold};
use bismar::quantity::{Day, Reps};
use bismar::record::*;
use bismar::value::Value;
use serde_json::{Value as Json, json};

use world::{World, kg, lift, mm, name, parameters};

/// Every kind of event that this version knows, each with the ids in it as `LIFT` and `REGION`.
fn every_kind() -> Vec<Json> {
    let grant = json!({"place": {"rung": 1}, "work": {"sets": 2, "reps": 5, "load": {"kg": 40}}});
    let pain = json!([{"region": "REGION", "score": 1, "features": []}]);
    let done = json!({"lift": "LIFT", "sets": [{"load": {"kg": 40}, "reps": 5}]});
    let moved = json!({"lift": "LIFT", "to": grant, "who": "coach"});
    let taken = json!({"lift": "LIFT", "who": "coach"});
    let changed = json!({"lift": "LIFT", "now": "another"});
    vec![
        json!({"session_recorded": {"lifts": [done], "pain": pain}}),
        json!({"next_day_report": {"session": 1, "pain": pain}}),
        json!({"session_missed": {"reason": "work"}}),
        json!({"layoff_noted": {"from": "2026-01-02", "reason": "well"}}),
        json!({"pain_report": {"region": "REGION", "score": 1}}),
        json!({"usual_pain_agreed": {"region": "REGION", "level": 1, "who": "coach"}}),
        json!({"symptom_report": {"signs": ["faint"]}}),
        json!({"day_report": {"pain": pain}}),
        json!({"ask_answered": {"ask": "fever", "who": "coach", "clinician": false}}),
        json!({"coach_sign_off": {"who": "coach", "scope": {"gate": "LIFT"}}}),
        json!({"coach_sign_off": {"who": "coach", "scope": {"region": "REGION"}}}),
        json!({"coach_override": {"lift": "LIFT", "load": {"kg": 30}, "who": "coach"}}),
        json!({"advance_accepted": taken}),
        json!({"advance_declined": taken}),
        json!({"variant_changed": moved}),
        json!({"range_changed": moved}),
        json!({"bar_or_discs_changed": changed}),
        json!({"rater_changed": changed}),
        json!({"body_mass_recorded": {"kg": 80}}),
        json!({"clearance_recorded": {
            "status": "cleared_with_limits", "who": "clinic", "limits": [{"region": "REGION", "load": {"kg": 30}}]
        }}),
        json!({"clearance_expired": "clinic"}),
        json!({"parameters_changed": serde_json::from_str::<Json>(
            &Value::write(&parameters()).unwrap().to_json().replace("\"knee\"]", "\"REGION\"]")
        ).unwrap()}),
        json!({"correction": {"replaces": 1}}),
        json!({"block_started": "one"}),
        json!({"block_ended": "one"}),
        json!({"role_set": {"lift": "LIFT", "role": "rest"}}),
        json!({"function_tested": {"test": "grip", "result": 40}}),
    ]
}

/// The kind with ids in the places for them.
fn with_ids(kind: &Json, lift: &str, region: &str) -> EventKind {
    let text = kind.to_string().replace("\"LIFT\"", &json!(lift).to_string());
    let text = text.replace("\"REGION\"", &json!(region).to_string());
    serde_json::from_str(&text).unwrap()
}

/// What the world's log says to the event, whole and one by one, which is the same.
fn refused(world: &World, kind: &EventKind) -> Error {
    let before = world.state();
    let sequence = before.last().unwrap().1 + 1;
    let event = Event::new(sequence, world.day, kind.clone());
    let mut log = world.log.clone();
    log.events.push(event.clone());
    let error = fold(&log).unwrap_err();
    assert_eq!(error.event(), Some(sequence), "{error}");
    let mut state = before.clone();
    let alone = state.apply(&event).unwrap_err();
    assert_eq!(state, before, "a refusal changes nothing");
    // Pain that is told afterwards may take a pass back: only the whole log knows.
    let looks_back = matches!(kind, EventKind::NextDayReport(_) | EventKind::DayReport(_));
    let expected = if looks_back { Code::NeedsRefold } else { error.code() };
    assert_eq!((alone.code(), alone.event()), (expected, error.event()));
    error
}

fn told(error: &Error) -> (Code, &str) {
    (error.code(), error.field())
}

#[test]
fn every_kind_of_event_is_here() {
    let kinds = every_kind();
    let names: BTreeSet<String> =
        kinds.iter().flat_map(|kind| kind.as_object().unwrap().keys().cloned()).collect();
    assert_eq!(names, EventKind::NAMES.iter().map(|name| name.to_string()).collect());
}

#[test]
fn a_lift_or_region_that_nobody_declared_is_refused_by_every_kind_that_names_one() {
    let world = World::new(parameters());
    let (mut with_lift, mut with_region) = (Vec::new(), Vec::new());
    for kind in every_kind() {
        let text = kind.to_string();
        let known = with_ids(&kind, "squat", "knee");
        if text.contains("LIFT") {
            let error = refused(&world, &with_ids(&kind, "pull", "knee"));
            assert_eq!(error.code(), Code::UnknownLift, "{text}");
            assert_eq!(error.given(), &Given::Text("pull".into()), "{text}");
            assert_eq!(error.allowed().to_string(), "squat, press", "{text}");
            with_lift.push((known.name(), error.field().to_string()));
        }
        if text.contains("REGION") {
            let error = refused(&world, &with_ids(&kind, "squat", "elbow"));
            assert_eq!(error.code(), Code::UnknownRegion, "{text}");
            assert_eq!(error.given(), &Given::Text("elbow".into()), "{text}");
            assert_eq!(error.allowed().to_string(), "knee, back, shoulder, neck", "{text}");
            with_region.push((known.name(), error.field().to_string()));
        }
    }
    let pairs = |list: &[(&'static str, &str)]| -> Vec<(&'static str, String)> {
        list.iter().map(|(kind, field)| (*kind, field.to_string())).collect()
    };
    let lifts = [
        ("session_recorded", "lifts[0].lift"),
        ("coach_sign_off", "lift"),
        ("coach_override", "lift"),
        ("advance_accepted", "lift"),
        ("advance_declined", "lift"),
        ("variant_changed", "lift"),
        ("range_changed", "lift"),
        ("bar_or_discs_changed", "lift"),
        ("rater_changed", "lift"),
        ("role_set", "lift"),
    ];
    assert_eq!(with_lift, pairs(&lifts));
    let regions = [
        ("session_recorded", "pain[0].region"),
        ("next_day_report", "pain[0].region"),
        ("pain_report", "region"),
        ("usual_pain_agreed", "region"),
        ("day_report", "pain[0].region"),
        ("coach_sign_off", "region"),
        ("clearance_recorded", "limits[0].region"),
        ("parameters_changed", "events[2].kind.parameters_changed.lifts[0].regions"),
    ];
    assert_eq!(with_region, pairs(&regions));
}

#[test]
fn what_a_correction_puts_in_the_place_of_an_event_is_held_to_the_same() {
    let mut world = World::new(parameters());
    world.day_report(DayClass::Within);
    let corrected = world.state().last().unwrap().1;
    let with = with_ids(&json!({"advance_accepted": {"lift": "LIFT", "who": "coach"}}), "pull", "");
    let correction = Correction::new(corrected).with_kind(Box::new(with));
    let error = world.turned_away(EventKind::Correction(correction));
    assert_eq!((told(&error), error.event()), ((Code::UnknownLift, "lift"), Some(corrected)));
}

#[test]
fn without_parameters_nothing_can_be_named() {
    let mut log = Log::new(Lifter::new(name("invented")));
    for kind in every_kind() {
        let text = kind.to_string();
        let names = text.contains("LIFT") || text.contains("REGION");
        if !names || text.contains("parameters_changed") {
            continue;
        }
        let kind = with_ids(&kind, "squat", "knee");
        log.events = vec![Event::new(1, "2026-01-05".parse().unwrap(), kind)];
        let error = fold(&log).unwrap_err();
        assert_eq!((told(&error), error.event()), ((Code::NoParameters, "parameters"), Some(1)), "{text}");
    }
}

fn unknown() -> EventKind {
    EventKind::Unknown(UnknownEvent::new("of_a_newer_version".into(), Value::Bool(true)))
}

/// A log of the version, with one event of a kind that nobody knows yet.
fn log_with_unknown(version: u32) -> Log {
    let mut log = World::new(parameters()).log;
    log.version = version;
    log.events.push(Event::new(9, "2026-01-05".parse().unwrap(), unknown()));
    log
}

#[test]
fn an_unknown_kind_of_event_is_refused_in_a_log_of_this_version() {
    let log = log_with_unknown(VERSION);
    for error in [
        fold(&log).unwrap_err(),
        log.check().unwrap_err(),
        Log::from_json(&log.to_json().unwrap()).unwrap_err(),
    ] {
        assert_eq!(told(&error), (Code::UnknownEvent, "events[2].kind"));
        assert_eq!(error.event(), Some(9));
        assert_eq!(error.given(), &Given::Text("of_a_newer_version".into()));
        assert_eq!(error.allowed().to_string(), EventKind::NAMES.join(", "));
    }
    let event = log.events.last().unwrap();
    let mut state = World::new(parameters()).state();
    assert_eq!(state.apply(event).unwrap_err().code(), Code::UnknownEvent);
    // Nor as what a correction puts in the place of another.
    let mut world = World::new(parameters());
    let with = Some(Box::new(unknown()));
    let error = world.turned_away(EventKind::Correction(Correction::new(2).with_kind(with)));
    assert_eq!(error.code(), Code::UnknownEvent);
}

#[test]
fn an_unknown_kind_of_event_is_kept_and_counted_in_a_log_of_a_newer_version() {
    let log = log_with_unknown(VERSION + 1);
    let read = Log::from_json(&log.to_json().unwrap()).unwrap();
    assert_eq!(read, log);
    let state = fold(&read).unwrap();
    assert_eq!(state.unknown_events(), 1);
    // One by one it is the same, as long as the state knows of which version the log is.
    let mut one_by_one = State::before(&log);
    log.events.iter().for_each(|event| one_by_one.apply(event).unwrap());
    assert_eq!(one_by_one, state);
    let corrected = Correction::new(9).with_kind(Box::new(unknown()));
    let mut log = log;
    let kind = EventKind::Correction(corrected);
    log.events.push(Event::new(10, "2026-01-05".parse().unwrap(), kind));
    assert_eq!(fold(&log).unwrap().unknown_events(), 1);
}

#[test]
fn a_single_event_is_read_as_strictly_as_a_log_of_this_version() {
    let text = |kind: &str| format!(r#"{{"sequence":7,"day":"2026-01-05","kind":{kind}}}"#);
    let event = Event::from_json(&text(r#"{"body_mass_recorded":{"kg":80}}"#)).unwrap();
    assert_eq!((event.sequence, &event.kind), (7, &EventKind::BodyMassRecorded(kg(80.0))));
    assert_eq!(Event::from_json(&event.to_json().unwrap()), Ok(event));
    let refused = |kind| Event::from_json(&text(kind)).unwrap_err();
    let error = refused(r#"{"of_a_newer_version":{"kg":80}}"#);
    assert_eq!((told(&error), error.event()), ((Code::UnknownEvent, "kind"), Some(7)));
    let error = refused(r#"{"body_mass_recorded":{"kg":8}}"#);
    assert_eq!((told(&error), error.event()), ((Code::OutOfRange, "kind.body_mass_recorded"), Some(7)));
    let error = refused(r#"{"body_mass_recorded":{"kg":80,"lb":1}}"#);
    assert_eq!(told(&error), (Code::WrongType, "kind.body_mass_recorded"));
    let error =
        Event::from_json(r#"{"sequence":7,"day":"2026-01-05","kind":{"block_ended":"a"},"why":"so"}"#)
            .unwrap_err();
    assert_eq!(told(&error), (Code::UnknownField, "why"));
    assert_eq!(Event::from_json("{").unwrap_err().code(), Code::NotJson);
}

#[test]
fn a_log_has_the_name_of_its_format_and_a_version() {
    let refused = |change: &dyn Fn(&mut Log)| {
        let mut log = World::new(parameters()).log;
        change(&mut log);
        log.check().unwrap_err()
    };
    let error = refused(&|log| log.format = PLAN_FORMAT.into());
    assert_eq!((told(&error), error.allowed().to_string()), ((Code::WrongFormat, "format"), FORMAT.into()));
    assert_eq!(told(&refused(&|log| log.version = 0)), (Code::WrongFormat, "version"));
}

#[test]
fn nobody_is_born_after_a_day_of_their_log() {
    let log = |born: &str| {
        let mut log = World::new(parameters()).log;
        log.lifter.born = Some(born.parse().unwrap());
        log
    };
    assert!(fold(&log("2026-01-05")).is_ok(), "the day itself");
    let error = fold(&log("2026-01-06")).unwrap_err();
    assert_eq!(told(&error), (Code::BornLater, "lifter.born"));
    assert_eq!((error.event(), error.given()), (Some(1), &Given::Text("2026-01-06".into())));
    assert!(error.allowed().to_string().starts_with("2026-01-05 or earlier"), "{error}");
    assert_eq!(Log::from_json(&log("2026-01-06").to_json().unwrap()), Err(error.clone()));
    // One by one it is no different.
    let log = log("2026-01-06");
    assert_eq!(State::before(&log).apply(&log.events[0]), Err(error));
}

/// A correction puts an entry on no day on which an entry of its own is refused, and in no other words; one that a later
/// correction moves on is refused all the same, as an entry is that was taken back.
#[test]
fn a_correction_puts_nothing_before_the_birth() {
    let day = |text: &str| -> Day { text.parse().unwrap() };
    let mut world = World::new(parameters());
    world.log.lifter.born = Some(day("2026-01-03"));
    world.add(EventKind::BodyMassRecorded(kg(80.0)));
    let to = |on: &str| Correction::new(3).with_day(day(on));
    let mass = || Box::new(EventKind::BodyMassRecorded(kg(81.0)));
    assert!(world.clone().try_add(EventKind::Correction(to("2026-01-03"))).is_ok(), "the day itself");
    for said in [to("2026-01-02"), to("2026-01-02").with_kind(Some(mass()))] {
        let kind = EventKind::Correction(said);
        let mut log = world.log.clone();
        log.events.push(Event::new(4, world.day, kind.clone()));
        log.events.push(Event::new(5, world.day, EventKind::Correction(to("2026-01-05"))));
        let mut direct = world.log.clone();
        direct.events.push(Event::new(4, day("2026-01-02"), EventKind::BodyMassRecorded(kg(80.0))));
        let error = fold(&direct).unwrap_err();
        assert_eq!((told(&error), error.event()), ((Code::BornLater, "lifter.born"), Some(4)));
        assert_eq!(fold(&log).unwrap_err(), error);
        assert_eq!(Log::from_json(&log.to_json().unwrap()), Err(error.clone()));
        // One by one it is no different.
        assert_eq!(State::before(&world.log).apply(&log.events[3]), Err(error));
    }
}

/// What a correction says is checked as the entry that it stands for, and so is the last day there is.
#[test]
fn a_correction_is_checked_as_what_it_stands_for() {
    let world = World::new(parameters());
    let mut none = parameters();
    none.lifts.clear();
    let mut twice = parameters();
    twice.lifts.push(twice.lifts[0].clone());
    let mut nowhere = parameters();
    nowhere.lifts[0].start.place.rung = 40;
    for wrong in [none, twice, nowhere] {
        let kind = || EventKind::ParametersChanged(Box::new(wrong.clone()));
        let read = |kind: EventKind| {
            let mut log = world.log.clone();
            log.events.push(Event::new(3, world.day, kind));
            Log::from_json(&log.to_json().unwrap()).map(drop)
        };
        let (alone, inside) =
            (read(kind()), read(EventKind::Correction(Correction::new(1).with_kind(Some(Box::new(kind()))))));
        let (alone, inside) = (alone.unwrap_err(), inside.unwrap_err());
        assert_eq!((inside.code(), inside.event()), (alone.code(), Some(3)), "{alone}");
        let field = alone.field().replace("kind.", "kind.correction.with.");
        assert_eq!((inside.field(), inside.given()), (field.as_str(), alone.given()));
    }
    // Read whole, what refers to another lift of the log is refused in both as well.
    let mut gone = parameters();
    gone.lifts[0].implement = name("a bar that is not there");
    let kind = EventKind::ParametersChanged(Box::new(gone));
    let alone = world.clone().turned_away(kind.clone());
    let inside =
        world.clone().turned_away(EventKind::Correction(Correction::new(1).with_kind(Some(Box::new(kind)))));
    assert_eq!(alone.code(), inside.code());
    let last: Day = "2199-12-31".parse().unwrap();
    let mass = || EventKind::BodyMassRecorded(kg(80.0));
    let mut direct = world.log.clone();
    direct.events.push(Event::new(3, last, mass()));
    let mut moved = world.log.clone();
    moved.events.push(Event::new(3, world.day, mass()));
    moved.events.push(Event::new(4, world.day, EventKind::Correction(Correction::new(3).with_day(last))));
    let (direct, moved) = (fold(&direct).unwrap(), fold(&moved).unwrap());
    assert_eq!((direct.last(), direct.stops_on(last)), (moved.last(), moved.stops_on(last)));
    for beyond in ["2200-01-01", "9999-12-31", "2026-02-30"] {
        let said = json!({"sequence": 4, "day": "2026-01-05", "kind": {"correction": {"replaces": 3, "day": beyond}}});
        let alone = json!({"sequence": 4, "day": beyond, "kind": {"body_mass_recorded": {"kg": 80}}});
        let code = |event: Json| Event::from_json(&event.to_string()).unwrap_err().code();
        assert_eq!(code(said), code(alone));
    }
}

#[test]
fn an_age_band_runs_from_the_younger_to_the_older() {
    let log = |from, to| {
        let mut log = World::new(parameters()).log;
        log.lifter.born = None;
        log.lifter.age = Some(AgeBand::new(from, to, "2025-06-01".parse().unwrap()));
        log
    };
    for (from, to) in [(60, 69), (65, 65), (0, 130)] {
        assert_eq!(log(from, to).check(), Ok(()), "{from} to {to}");
    }
    for (from, to) in [(70, 69), (60, 131)] {
        let error = log(from, to).check().unwrap_err();
        let log = log(from, to);
        assert_eq!(State::before(&log).apply(&log.events[0]), Err(error.clone()), "one by one");
        assert_eq!(told(&error), (Code::IntervalReversed, "lifter.age.to"), "{from} to {to}");
        assert_eq!(error.given(), &Given::Number(f64::from(to)));
        assert_eq!(error.allowed().to_string(), "from <= to <= 130");
    }
}

/// Who is by the bar is one answer, so two cannot be given.
#[test]
fn nobody_is_alone_with_a_spotter() {
    let setup = |setup: Json| {
        let lifts = json!([{"lift": "squat", "sets": [{"load": {"kg": 40}, "reps": 5}], "setup": setup}]);
        let kind = json!({"session_recorded": {"lifts": lifts}});
        Event::from_json(&json!({"sequence": 1, "day": "2026-01-05", "kind": kind}).to_string())
    };
    for one in ["alone", "others", "spotter"] {
        assert!(setup(json!({"company": one})).is_ok(), "{one}");
    }
    let at = |field: &str| format!("kind.session_recorded.lifts[0].setup{field}");
    for (two, code, field) in [
        (json!({"company": ["alone", "spotter"]}), Code::WrongType, ".company"),
        (json!({"company": {"alone": true, "spotter": true}}), Code::WrongType, ".company"),
        (json!({"company": "alone and spotter"}), Code::UnknownVariant, ".company"),
        (json!({"alone": true, "spotter": true}), Code::UnknownField, ".alone"),
    ] {
        let error = setup(two.clone()).unwrap_err();
        assert_eq!(told(&error), (code, at(field).as_str()), "{two}");
    }
    let twice = r#"{"sequence":1,"day":"2026-01-05","kind":{"session_recorded":{"lifts":[{"lift":"squat","sets":[
        {"load":{"kg":40},"reps":5}],"setup":{"company":"alone","company":"spotter"}}]}}}"#;
    assert_eq!(Event::from_json(twice).unwrap_err().code(), Code::DuplicateField);
}

/// A squat whose start is that load, with what the bar stands on.
fn starting(load: f64, starts_from: StartsFrom) -> EventKind {
    let mut parameters = parameters();
    let squat = &mut parameters.lifts[0];
    squat.start.work.load = kg(load);
    if starts_from != StartsFrom::Rack {
        squat.starts_from = starts_from;
        squat.ranges = vec![mm(225.0)];
    }
    EventKind::ParametersChanged(Box::new(parameters))
}

/// The bar is 20 kg. All discs, 20.0 x 4 + 10 x 4 + 5 x 2 + 2.5 x 2 + 2 x 4 + 1 x 4 kg, make 147 kg more. From the floor
/// with its centre at 225 mm it stands on discs of 450 mm, of which a pair of 20 kg each is the lightest.
#[test]
fn a_start_that_cannot_be_loaded_is_refused() {
    let world = World::new(parameters());
    let cases =
        [(StartsFrom::Rack, 20.0, 167.0), (StartsFrom::Pins, 20.0, 167.0), (StartsFrom::Floor, 60.0, 167.0)];
    for (from, lightest, heaviest) in cases {
        for load in [lightest, heaviest] {
            assert_eq!(world.clone().try_add(starting(load, from)), Ok(()), "{from:?} {load}");
        }
        for load in [lightest - 0.5, heaviest + 0.5] {
            let error = refused(&world, &starting(load, from));
            assert_eq!(told(&error), (Code::NotLoadable, "lifts[0].start.work.load"), "{from:?} {load}");
            assert_eq!(error.given(), &Given::Number(load));
            let allowed = format!("{lightest} to {heaviest} kg at the height of the start");
            assert_eq!(error.allowed().to_string(), allowed);
        }
    }
}

/// The same lifts on other equipment: their loads are those of the equipment that is there now.
#[test]
fn a_start_is_held_against_the_equipment_that_it_comes_with() {
    let mut on_blocks = parameters();
    on_blocks.lifts[0].starts_from = StartsFrom::Floor;
    on_blocks.lifts[0].ranges = vec![mm(275.0)];
    on_blocks.lifts[0].start.work.load = kg(60.0);
    on_blocks.blocks = vec![mm(50.0)];
    let changed = |from: &Parameters, change: &dyn Fn(&mut Parameters)| {
        let mut all = from.clone();
        change(&mut all);
        let error = refused(&World::new(from.clone()), &EventKind::ParametersChanged(Box::new(all)));
        assert_eq!(told(&error), (Code::NotLoadable, "lifts[0].start.work.load"));
        error.allowed().to_string()
    };
    // One that the log has taken already is held against what there is now, as any other.
    let few = Stock::new(vec![Disc::new(kg(5.0), 2).unwrap()]).unwrap();
    let mut light = parameters();
    light.lifts.iter_mut().for_each(|lift| lift.start.work.load = kg(30.0));
    light.lifts[0].start.work.load = kg(60.0);
    assert_eq!(changed(&light, &|all| all.stock = few.clone()), "20 to 30 kg at the height of the start");
    let allowed = changed(&parameters(), &|all| {
        all.stock = few.clone();
        all.lifts[0].start.work.load = kg(59.0);
    });
    assert_eq!(allowed, "20 to 30 kg at the height of the start");
    let heavy = Implement::Bar(Bar::new(name("bar"), kg(65.0), kg(0.0)).unwrap());
    let allowed = changed(&parameters(), &|all| all.implements[0] = heavy.clone());
    assert_eq!(allowed, "65 to 212 kg at the height of the start");
    // Without its blocks the nearest that the bar comes to 275 mm is on the largest discs.
    let without = |all: &mut Parameters| (all.blocks, all.lifts[0].start.work.load) = (Vec::new(), kg(59.5));
    assert_eq!(changed(&on_blocks, &without), "60 to 167 kg at the height of the start");
}

fn answered(ask: Ask, clinician: bool) -> EventKind {
    let who = name(if clinician { "clinic" } else { "coach" });
    EventKind::AskAnswered(AskAnswered::new(ask, who, clinician))
}

#[test]
fn only_a_clinician_closes_more_than_a_fever() {
    for ask in Ask::ALL {
        let mut world = World::new(parameters());
        world.add(EventKind::DayReport(DayReport::default().with_asks(vec![ask])));
        assert_eq!(world.state().asks().len(), 1);
        if ask == Ask::Fever {
            assert_eq!(world.clone().try_add(answered(ask, false)), Ok(()));
        } else {
            let error = world.turned_away(answered(ask, false));
            assert_eq!(error.code(), Code::NeedsClinician, "{ask:?}");
            assert!(error.field().ends_with("kind.ask_answered.clinician"), "{error}");
            assert_eq!(error.given(), &Given::Text("false".into()));
        }
        world.add(answered(ask, true));
        assert!(world.state().asks().is_empty(), "{ask:?}");
    }
}

/// Whether something was open depends on what is told late or corrected, so an answer that closes nothing is kept: what is true
/// could not be entered otherwise.
#[test]
fn an_answer_that_closes_nothing_makes_no_log_unreadable() {
    let mut world = World::new(parameters());
    let asked = || EventKind::DayReport(DayReport::default().with_asks(vec![Ask::Fall]));
    world.add(answered(Ask::Fall, true));
    world.add(asked());
    let report = world.state().last().unwrap().1;
    let stays_open = world.clone();
    assert_eq!(stays_open.state().asks().len(), 1, "an answer before the question answers nothing");
    world.wait(2).add(answered(Ask::Fall, true));
    let before = world.state();
    world.add(answered(Ask::Fall, true));
    assert!(before.asks().is_empty() && world.state().asks().is_empty(), "told twice");
    // The report is taken back; a clearance of the day before the answer is entered late.
    let mut corrected = world.clone();
    corrected.add(EventKind::Correction(Correction::new(report)));
    assert!(corrected.state().asks().is_empty());
    let mut late = world.clone();
    late.wait(-1).clear();
    assert!(late.state().asks().is_empty());
    // One by one it is the same.
    let mut state = world.state();
    let event = Event::new(state.last().unwrap().1 + 1, world.day, answered(Ask::NewMedicine, true));
    state.apply(&event).unwrap();
    assert_eq!(state.asks(), world.state().asks());
}

/// The coach signs a region off that is no longer declared and in which something is open; then what opened it is taken back.
#[test]
fn a_sign_off_of_what_is_no_longer_open_makes_no_log_unreadable() {
    let mut world = World::new(parameters());
    world.pain("neck", 7);
    let pain = world.state().last().unwrap().1;
    let mut without = parameters();
    without.regions.retain(|region| region.id != name("neck"));
    world.add(EventKind::ParametersChanged(Box::new(without)));
    world.clear();
    world.sign_off(SignOffScope::Region(name("neck")));
    world.add(EventKind::Correction(Correction::new(pain)));
    assert!(world.state().regions().iter().all(|region| region.stop.is_none()));
    // One that never was is refused all the same.
    let unknown = SignOffScope::Region(name("elbow"));
    let error = world.turned_away(EventKind::CoachSignOff(SignOff::new(name("coach"), unknown)));
    assert_eq!(error.code(), Code::UnknownRegion);
}

#[test]
fn a_lifter_has_at_most_so_many_regions_and_lifts() {
    let with = |regions: usize, lifts: usize| {
        let mut parameters = parameters();
        let more = (parameters.regions.len()..regions).map(|at| Region::new(name(&format!("region {at}"))));
        parameters.regions.extend(more);
        let more = (parameters.lifts.len()..lifts).map(|at| lift(&format!("lift {at}"), "knee", 40.0));
        parameters.lifts.extend(more);
        parameters.check()
    };
    assert_eq!(with(48, 16), Ok(()));
    for (regions, lifts, field, most) in [(49, 2, "regions", 48), (4, 17, "lifts", 16)] {
        let error = with(regions, lifts).unwrap_err();
        assert_eq!(told(&error), (Code::TooMany, field));
        assert_eq!(error.given(), &Given::Number(f64::from(most + 1)));
        assert_eq!(error.allowed().to_string(), format!("0 to {most}"));
    }
}

/// Parameters with these lifts alone, numbered.
fn numbered(lifts: std::ops::Range<usize>) -> EventKind {
    let lifts = lifts.map(|at| lift(&format!("lift {at:02}"), "knee", 40.0)).collect();
    EventKind::ParametersChanged(Box::new(parameters().with_lifts(lifts)))
}

/// A session of these lifts.
fn trained(lifts: std::ops::Range<usize>) -> EventKind {
    let sets = || vec![WorkSet::done(kg(40.0), Reps::whole(5).unwrap())];
    let lifts = lifts.map(|at| LiftSession::as_granted(name(&format!("lift {at:02}")), sets())).collect();
    EventKind::SessionRecorded(Session::new(lifts))
}

#[test]
fn at_most_sixteen_lifts_are_set_aside_within_the_longest_break() {
    let mut world = World::new(parameters().with_lifts(vec![lift("lift 00", "knee", 40.0)]));
    world.add(numbered(0..16));
    world.add(trained(0..16));
    world.add(numbered(16..32));
    world.add(trained(16..32));
    assert_eq!(world.state().set_aside().len(), 16);
    let error = refused(&world, &numbered(17..33));
    assert_eq!(told(&error), (Code::TooMany, "lifts set aside"));
    assert_eq!(error.allowed().to_string(), "0 to 16");
    // One that comes back makes room for one that goes.
    let mut kept = numbered(17..32);
    if let EventKind::ParametersChanged(parameters) = &mut kept {
        parameters.lifts.push(lift("lift 00", "knee", 40.0));
    }
    world.add(kept);
    assert_eq!((world.state().set_aside().len(), world.state().laid_by().len()), (16, 0));
    // After the longest break of the layoff table the day of the last session is all that is kept of them.
    world.wait(182);
    world.add(numbered(33..49));
    assert_eq!((world.state().set_aside().len(), world.state().laid_by().len()), (16, 16));
}

/// A state keeps what was said of every region that was ever declared, so there is an end to them.
#[test]
fn at_most_ninety_six_regions_are_ever_declared() {
    let declared = |regions: std::ops::Range<usize>| {
        let regions = regions.map(|at| Region::new(name(&format!("region {at:02}")))).collect::<Vec<_>>();
        let lifts = vec![lift("squat", regions[0].id.as_str(), 40.0)];
        parameters().with_regions(regions).with_lifts(lifts)
    };
    let mut world = World::new(declared(0..48));
    world.add(EventKind::ParametersChanged(Box::new(declared(48..96))));
    assert_eq!(world.state().regions().len(), 96);
    let error = refused(&world, &EventKind::ParametersChanged(Box::new(declared(49..97))));
    assert_eq!(told(&error), (Code::TooMany, "regions"));
    assert_eq!(error.allowed().to_string(), "0 to 96");
    world.add(EventKind::ParametersChanged(Box::new(declared(20..68))));
}

#[test]
fn what_is_asked_is_written_by_its_name() {
    for ask in Ask::ALL {
        assert_eq!(Value::write(&ask), Ok(Value::Text(ask.as_str().into())));
    }
}
