//! A stored state is the state after the log's last event, made by this version of the library, or it is not used: the
//! log is folded anew. Nobody but the fold makes one; whatever was changed in it is refused.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]
#![cfg(feature = "json")]

#[path = "shared/sealed.rs"]
mod sealed;
#[path = "rules/world.rs"]
#[allow(dead_code, reason = "the rules use the rest")]
mod world;

use bismar::Code;
use bismar::condition::DayClass;
use bismar::error::{Error, Given};
use bismar::progression::{STATE_FORMAT, State, StoredState, fold};
use bismar::record::*;
use bismar::value::Value;
use serde_json::{Value as Json, json};

use sealed::sealed;
use world::{World, kg, lift, name, parameters};

/// A log in which everything that a state keeps has happened: a step, an offer, pain and its stop, a clearance with a
/// limit, an ask, an illness and one to come, an override, a body mass, a lift set aside.
fn eventful() -> World {
    let mut all = parameters();
    all.lifts.push(lift("pull", "back", 50.0));
    let mut world = World::new(all);
    world.add(EventKind::ParametersChanged(Box::new(parameters())));
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"));
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    world.passing_day("squat");
    world.override_to("press", 42.0, 30);
    world.pain("knee", 7);
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"))
            .with_limits(vec![ClearanceLimits::default().with_region(name("knee")).with_load(kg(50.0))]),
    ));
    world.add(EventKind::BodyMassRecorded(kg(80.0)));
    world.add(EventKind::LayoffNoted(Layoff::new(world.day, LayoffReason::Ill)));
    let planned = world.day.plus(60).unwrap();
    world.add(EventKind::LayoffNoted(Layoff::new(planned, LayoffReason::Ill)));
    let asks = Some(vec![Ask::Fall]);
    world.add(EventKind::DayReport(DayReport::default().with_asks(asks).with_class(DayClass::BelowSingle)));
    world
}

fn document(state: &State) -> Json {
    serde_json::from_str(&state.to_json().unwrap()).unwrap()
}

/// The stored state with another value at one place.
fn with(state: &State, pointer: &str, value: Json) -> String {
    let mut document = document(state);
    *document.pointer_mut(pointer).unwrap_or_else(|| panic!("no {pointer}")) = value;
    document.to_string()
}

fn refused(state: &State, pointer: &str, value: Json) -> Error {
    State::from_json(&with(state, pointer, value)).unwrap_err()
}

fn told(error: &Error) -> (Code, &str) {
    (error.code(), error.field())
}

/// A mark that the fold would not make, to see whether the stored state was used: events of unknown kinds.
const MARK: u32 = 7;

fn marked(state: &State) -> String {
    sealed(&with(state, "/shared/unknown", json!(MARK)))
}

fn is_used(text: &str, log: &Log) -> bool {
    let state = State::from_json_or_fold(text, log).unwrap();
    if state.unknown_events() != MARK {
        assert!(state == fold(log).unwrap());
    }
    state.unknown_events() == MARK
}

#[test]
fn a_state_comes_back_as_it_was_and_decides_the_same() {
    let world = eventful();
    let state = world.state();
    let text = state.to_json().unwrap();
    let read = State::from_json(&text).unwrap();
    assert!(read == state, "{text}");
    assert_eq!(read.to_json().unwrap(), text);
    let later = world.day.plus(30).unwrap();
    for day in [world.day, later] {
        assert_eq!(read.decide(day), state.decide(day));
    }
    // As another event finds it.
    let kind = EventKind::BlockStarted(name("autumn"));
    let event = Event::new(state.last().unwrap().1 + 1, world.day, kind);
    let (mut one, mut other) = (read, state);
    assert_eq!(one.apply(&event), other.apply(&event));
    assert!(one == other);
    // Before any event too.
    let empty = State::new(Lifter::new(name("nobody yet")));
    assert_eq!(State::from_json(&empty.to_json().unwrap()), Ok(empty));
}

#[test]
fn a_state_of_another_version_is_told_by_its_version_alone() {
    let state = eventful().state();
    let own = document(&state)["version"].as_str().unwrap().to_string();
    assert_eq!((own.as_str(), document(&state)["format"].as_str().unwrap()), (state.version(), STATE_FORMAT));
    for version in ["0.0.9", "99.0.0", ""] {
        let of_old_shape =
            json!({"format": STATE_FORMAT, "version": version, "tracks": [], "log": {"long": "gone"}});
        for text in [with(&state, "/version", json!(version)), of_old_shape.to_string()] {
            let error = State::from_json(&text).unwrap_err();
            assert_eq!(told(&error), (Code::OtherVersion, "version"), "{text}");
            assert_eq!(error.given(), &Given::Text(version.into()));
            assert_eq!(error.allowed().to_string(), own);
        }
    }
}

#[test]
fn a_state_of_another_version_is_folded_anew() {
    let world = eventful();
    let state = world.state();
    assert!(is_used(&marked(&state), &world.log));
    for text in [
        with(&state, "/version", json!("0.0.9")),
        json!({"format": STATE_FORMAT, "version": "0.0.9", "tracks": []}).to_string(),
        String::from("not even JSON"),
        String::new(),
    ] {
        assert!(State::from_json_or_fold(&text, &world.log).as_ref() == Ok(&state), "{text}");
    }
    // What is wrong with the log is told, whatever is stored.
    let mut broken = world.log.clone();
    broken.version = 0;
    assert_eq!(State::from_json_or_fold(&marked(&state), &broken).unwrap_err().code(), Code::WrongFormat);
}

#[test]
fn what_is_no_state_is_refused() {
    let state = eventful().state();
    let error = refused(&state, "/format", json!("bismar-log"));
    assert_eq!(
        (told(&error), error.allowed().to_string()),
        ((Code::WrongFormat, "format"), STATE_FORMAT.into())
    );
    assert_eq!(State::from_json("{}").unwrap_err().code(), Code::MissingField);
    assert_eq!(State::from_json("[]").unwrap_err().code(), Code::WrongType);
    assert_eq!(State::from_json("{").unwrap_err().code(), Code::NotJson);
    let mut surplus = document(&state);
    surplus["more"] = json!(1);
    assert_eq!(told(&State::from_json(&surplus.to_string()).unwrap_err()), (Code::UnknownField, "more"));
}

#[test]
fn parameters_that_were_altered_are_refused_and_the_log_is_folded_anew() {
    let world = eventful();
    let state = world.state();
    for (pointer, value) in [
        ("/parameters/lifts/0/step_cap", json!(0.09)),
        ("/parameters/lifts/0/start/work/load/kg", json!(62.0)),
        ("/parameters/policy/pain_stop_above", json!(4)),
        ("/parameters/regions/0/id", json!("left knee")),
        ("/parameters/stock/discs/0/count", json!(2)),
        ("/digest", json!("0000000000000000")),
        ("/digest", json!("")),
    ] {
        let error = refused(&state, pointer, value.clone());
        // The region is named by a lift, which comes first.
        let code = if pointer.contains("regions") { Code::UnknownRegion } else { Code::ParametersAltered };
        assert_eq!(error.code(), code, "{pointer}");
        assert!(!is_used(&with(&state, pointer, value), &world.log), "{pointer}");
    }
    let error = refused(&state, "/digest", json!("0000000000000000"));
    assert_eq!((error.field(), error.given()), ("digest", &Given::Text("0".repeat(16))));
}

#[test]
fn there_is_one_lift_for_each_that_the_parameters_declare() {
    let state = eventful().state();
    let lifts = document(&state)["lifts"].as_array().unwrap().clone();
    assert_eq!(lifts.len(), 2);
    for other in [&lifts[..1], &[]] {
        let error = refused(&state, "/lifts", json!(other));
        assert_eq!(told(&error), (Code::OutOfRange, "lifts"));
        assert_eq!(error.given(), &Given::Number(other.len() as f64));
        assert_eq!(error.allowed().to_string(), "2 to 2 lifts");
    }
    let twice = [&lifts[..], &lifts[..1]].concat();
    assert_eq!(told(&refused(&state, "/lifts", json!(twice))), (Code::DuplicateLift, "lifts[2].lift"));
    let error = refused(&state, "/lifts/0/0", json!("squatt"));
    assert_eq!(
        (told(&error), error.allowed().to_string()),
        ((Code::UnknownLift, "lifts[0].lift"), "squat, press".into())
    );
    let mut without = document(&state);
    without.as_object_mut().unwrap().remove("parameters");
    let error = State::from_json(&without.to_string()).unwrap_err();
    assert_eq!(
        (told(&error), error.allowed().to_string()),
        ((Code::UnknownLift, "lifts[0].lift"), "none is declared".into())
    );
    without["lifts"] = json!([]);
    assert_eq!(State::from_json(&without.to_string()).unwrap_err().code(), Code::ParametersAltered);
}

/// Each lift is found by its id, so that no lift can stand in for another, in whatever order they are written.
#[test]
fn lifts_are_known_by_their_ids() {
    let state = eventful().state();
    let mut turned = document(&state);
    turned["lifts"].as_array_mut().unwrap().reverse();
    assert_ne!(document(&state)["lifts"], turned["lifts"]);
    assert_eq!(State::from_json(&sealed(&turned.to_string())), Ok(state));
}

/// A state that nothing refuses, and that somebody or a disk has changed, is not the one that was stored.
#[test]
fn what_was_altered_is_told_by_the_seal() {
    let world = eventful();
    let state = world.state();
    let text = state.to_json().unwrap();
    assert_eq!(sealed(&text), text);
    let grant = document(&state)["lifts"][1][1]["grant"]["work"]["load"].clone();
    assert_eq!(grant, json!({"kg": 40}));
    let plausible = [
        ("/lifts/1/1/grant/work/load", json!({"kg": 30})),
        ("/lifts/0/1/proven", json!(["2026-01-05", {"kg": 60}])),
        ("/lifts/0/1/calibration/done", json!(3)),
        ("/shared/unknown", json!(1)),
        ("/told", json!(7)),
        ("/seal", json!("0000000000000000")),
        ("/seal", json!("")),
    ];
    for (pointer, value) in plausible {
        let error = refused(&state, pointer, value.clone());
        assert_eq!(told(&error), (Code::StateAltered, "seal"), "{pointer}");
        let altered = with(&state, pointer, value);
        assert!(State::from_json_or_fold(&altered, &world.log).as_ref() == Ok(&state), "{pointer}");
        if pointer != "/seal" {
            assert!(State::from_json(&sealed(&altered)).is_ok(), "{pointer}: nothing but the seal was wrong");
        }
    }
    let mut without = document(&state);
    without.as_object_mut().unwrap().shift_remove("seal");
    assert_eq!(told(&State::from_json(&without.to_string()).unwrap_err()), (Code::StateAltered, "seal"));
}

/// What no course of events leaves behind is refused by itself, seal or no seal.
#[test]
fn what_cannot_be_is_refused() {
    let state = eventful().state();
    let later = json!("2030-01-01");
    let way = |row: u8, cap: f64| json!({"cap": {"kg": cap}, "row": row, "gap": 0});
    for (pointer, value, field) in [
        ("/lifts/1/1/since", later.clone(), "lifts[1].since"),
        ("/lifts/1/1/here", json!([0, later]), "lifts[1].here"),
        ("/lifts/0/1/last_session", later.clone(), "lifts[0].last_session"),
        ("/lifts/0/1/last_place/rung", json!(2), "lifts[0].last_place.rung"),
        ("/lifts/0/1/moves/0/0", later.clone(), "lifts[0].moves"),
        ("/lifts/0/1/proven/0", later.clone(), "lifts[0].proven"),
        ("/lifts/1/1/status", json!({"ready_to_advance": {"since": later}}), "lifts[1].status.since"),
        ("/lifts/1/1/status", json!({"stepping_back": {"passes": 11}}), "lifts[1].status.passes"),
        (
            "/lifts/1/1/status",
            json!({"stepping_back": {"passes": 0, "from": {"kg": 30}}}),
            "lifts[1].status.from",
        ),
        (
            "/lifts/1/1/status",
            json!({"returning": {"way": way(1, 40.0), "passes": 11}}),
            "lifts[1].status.passes",
        ),
        (
            "/lifts/1/1/status",
            json!({"returning": {"way": way(1, 30.0), "passes": 0}}),
            "lifts[1].status.way.cap",
        ),
        (
            "/lifts/1/1/status",
            json!({"returning": {"way": way(0, 40.0), "passes": 0}}),
            "lifts[1].status.way.row",
        ),
        ("/lifts/1/1/status", json!({"resting": {"way": way(13, 40.0)}}), "lifts[1].status.way.row"),
        ("/lifts/1/1/status", json!("maintaining"), "lifts[1].status.purpose"),
        ("/lifts/1/1/status", json!("retired"), "lifts[1].status.purpose"),
        ("/lifts/1/1/purpose", json!("rest"), "lifts[1].status.purpose"),
        ("/lifts/1/1/purpose", json!("retire"), "lifts[1].status.purpose"),
        ("/lifts/1/1/fails", json!(11), "lifts[1].fails"),
        ("/lifts/1/1/neutral", json!(6), "lifts[1].neutral"),
        ("/lifts/1/1/half_sessions", json!(3), "lifts[1].half_sessions"),
        ("/lifts/1/1/calibration/needed", json!(31), "lifts[1].calibration.needed"),
        ("/lifts/1/1/peak", json!({"kg": 30}), "lifts[1].peak"),
        ("/lifts/1/1/earlier", json!([2, 1]), "lifts[1].earlier"),
        ("/lifts/0/1/sittings", json!([eventful_sitting()]), "lifts[0].sittings"),
        ("/set_aside/0/1/since", later.clone(), "set_aside[0].since"),
        ("/shared/regions/0/last/0", later.clone(), "shared.regions[0].last"),
        ("/shared/regions/0/flares", json!(2), "shared.regions[0].flares"),
        ("/shared/regions/0/clear_needed", json!(11), "shared.regions[0].clear_needed"),
        ("/shared/regions/0/stop/since", later.clone(), "shared.regions[0].stop.since"),
        ("/shared/regions/0/stop/signed", json!(true), "shared.regions[0].stop.signed"),
        ("/shared/asks/0/since", later.clone(), "shared.asks"),
        ("/shared/ill_since/0", later.clone(), "shared.ill_since"),
        ("/shared/ill_ahead/0/0", document(&state)["last"][0].clone(), "shared.ill_ahead"),
        ("/shared/clearance/given", later.clone(), "shared.clearance.given"),
        ("/shared/body_masses/0/0", later.clone(), "shared.body_masses"),
        ("/shared/today/day", later.clone(), "shared.today"),
        // A stop that nothing has, and a region that a lift loads and no lift ever loaded.
        ("/lifts/1/1/status", json!({"stopped_refer": {}}), "lifts[1].status"),
        ("/shared/regions/0/lifted", json!(false), "shared.regions"),
    ] {
        let error = refused(&state, pointer, value.clone());
        assert_eq!(told(&error), (Code::OutOfRange, field), "{pointer} {value}");
    }
    // Help on a bar, and a limit of a region that nobody ever named.
    let mut helped = document(&state);
    for load in ["/lifts/1/1/grant/work/load", "/lifts/1/1/peak"] {
        *helped.pointer_mut(load).unwrap() = json!({"kg": -40});
    }
    let error = State::from_json(&helped.to_string()).unwrap_err();
    assert_eq!(told(&error), (Code::NegativeLoad, "lifts[1].grant.work.load"));
    let error = refused(&state, "/shared/clearance/limits/0/region", json!("elbow"));
    assert_eq!(told(&error), (Code::UnknownRegion, "shared.clearance.limits"));
    let mut over = document(&state);
    over["lifts"][1][1]["half_after"] = json!([30, 2]);
    assert_eq!(
        told(&State::from_json(&over.to_string()).unwrap_err()),
        (Code::OutOfRange, "lifts[1].half_after")
    );
    over["lifts"][1][1].as_object_mut().unwrap().shift_remove("half_after");
    over["lifts"][1][1]["overruled"] =
        json!({"load": {"kg": 30}, "expires": "2026-01-06", "who": "coach", "event": 2, "eases": true});
    let error = State::from_json(&over.to_string()).unwrap_err();
    assert_eq!(told(&error), (Code::OutOfRange, "lifts[1].overruled.expires"));
}

#[test]
fn what_a_state_says_of_a_lift_fits_the_lift() {
    let state = eventful().state();
    for (pointer, value, field) in [
        ("/lifts/0/1/grant/place/rung", json!(2), "lifts[0].grant.place.rung"),
        ("/lifts/1/1/grant/place/range", json!(1), "lifts[1].grant.place.range"),
        ("/lifts/0/1/grant/work/sets", json!(0), "lifts[0].grant.work.sets"),
        ("/set_aside/0/1/grant/place/rung", json!(2), "set_aside[0].grant.place.rung"),
    ] {
        assert_eq!(told(&refused(&state, pointer, value)), (Code::OutOfRange, field));
    }
    let error = refused(&state, "/set_aside/0/0/step_cap", json!(0.2));
    assert_eq!(told(&error), (Code::OutOfRange, "set_aside[0].step_cap"));
    let error = refused(&state, "/set_aside/0/0/id", json!("squat"));
    assert_eq!(told(&error), (Code::DuplicateName, "set_aside"));
    let error = refused(&state, "/shared/lifter/born", json!("2026-03-01"));
    assert_eq!(told(&error), (Code::BornLater, "shared.lifter.born"));
}

/// A state that says of a region that it is stopped, and of its lift that it is not, would be one that nobody halts.
#[test]
fn a_stop_in_force_halts_its_lifts() {
    let state = eventful().state();
    assert!(state.lift_state(&name("squat")).unwrap().status().is_stopped());
    let error = refused(&state, "/lifts/0/1/status", json!("holding"));
    assert_eq!(told(&error), (Code::OutOfRange, "lifts[0].status"));
    let mut document = document(&state);
    document["shared"]["stop"] = document["shared"]["regions"][0]["stop"].clone();
    let error = State::from_json(&document.to_string()).unwrap_err();
    assert_eq!(told(&error), (Code::OutOfRange, "lifts[1].status"), "a stop of everything");
}

/// Each list of a state has an end, so a state has one too.
#[test]
fn no_list_of_a_state_is_longer_than_the_fold_makes_it() {
    let state = eventful().state();
    let document = document(&state);
    let repeated = |entry: &Json, count: usize| Json::Array(vec![entry.clone(); count]);
    let limit = &document["shared"]["clearance"]["limits"][0];
    let sitting = eventful_sitting();
    let score = json!(["2026-01-05", 1]);
    for (pointer, entry, most, field) in [
        ("/shared/clearance/limits", limit, 64, "shared.clearance.limits"),
        ("/shared/asks", &document["shared"]["asks"][0], 5, "shared.asks"),
        ("/shared/regions", &document["shared"]["regions"][0], 96, "shared.regions"),
        ("/shared/body_masses", &json!(["2026-01-05", {"kg": 80}]), 28, "shared.body_masses"),
        ("/shared/ill_ahead", &document["shared"]["ill_ahead"][0], 8, "shared.ill_ahead"),
        ("/set_aside", &document["set_aside"][0], 16, "set_aside"),
        ("/shared/regions/0/scores", &score, 3, "shared.regions[0].scores"),
        ("/lifts/0/1/sittings", &sitting, 12, "lifts[0].sittings"),
    ] {
        let error = refused(&state, pointer, repeated(entry, most + 1));
        assert_eq!(told(&error), (Code::TooMany, field));
        assert_eq!(error.allowed().to_string(), format!("0 to {most}"), "{field}");
    }
    // The same thing twice is refused before there are many.
    for (pointer, entry, field) in [
        ("/shared/asks", &document["shared"]["asks"][0], "shared.asks"),
        ("/shared/regions", &document["shared"]["regions"][0], "shared.regions"),
        ("/set_aside", &document["set_aside"][0], "set_aside"),
    ] {
        let error = refused(&state, pointer, repeated(entry, 2));
        assert_eq!(told(&error), (Code::DuplicateName, field));
    }
}

/// A session as a state keeps it.
fn eventful_sitting() -> Json {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    document(&world.state())["lifts"][0][1]["sittings"][0].clone()
}

#[test]
fn a_state_that_is_not_the_one_after_the_log_is_not_used() {
    let world = eventful();
    let text = marked(&world.state());
    assert!(is_used(&text, &world.log));
    // One event more.
    let mut later = world.clone();
    later.add(EventKind::BlockStarted(name("autumn")));
    assert!(!is_used(&text, &later.log));
    assert!(is_used(&marked(&later.state()), &later.log));
    // One event less, another lifter, another version of the format.
    let mut shorter = world.log.clone();
    shorter.events.pop();
    assert!(!is_used(&text, &shorter));
    let mut other = world.log.clone();
    other.lifter.id = name("somebody else");
    assert!(!is_used(&text, &other));
    let mut newer = world.log.clone();
    newer.version = VERSION + 1;
    assert!(!is_used(&text, &newer));
}

/// The last event is the same, and yet the past is another.
#[test]
fn a_correction_or_a_late_event_is_not_overlooked() {
    let world = eventful();
    let text = marked(&world.state());
    let last = world.state().last().unwrap().1;
    let stop = || EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain]));
    let mut corrected = world.log.clone();
    let session = corrected.events.iter().find(|event| matches!(event.kind, EventKind::SessionRecorded(_)));
    let replaces = session.unwrap().sequence;
    let kind = EventKind::Correction(Correction::new(replaces).with_kind(Box::new(stop())));
    corrected.events.push(Event::new(last + 1, world.day, kind));
    assert!(fold(&corrected).unwrap().stop().is_some());
    assert!(!is_used(&text, &corrected), "a correction");
    // From then on the state that knows of it is used.
    assert!(is_used(&marked(&fold(&corrected).unwrap()), &corrected));
    let mut late = world.log.clone();
    let first = late.events.first().unwrap().day;
    late.events.push(Event::new(last + 1, first.plus(2).unwrap(), stop()));
    assert!(!is_used(&text, &late), "an event of an earlier day");
    // Numbers need not follow on each other, so a late event may have a low one too.
    let mut sparse = world.log.clone();
    sparse.events.iter_mut().for_each(|event| event.sequence *= 10);
    for event in &mut sparse.events {
        if let EventKind::NextDayReport(report) = &mut event.kind {
            report.session *= 10;
        }
    }
    let text = marked(&fold(&sparse).unwrap());
    assert!(is_used(&text, &sparse));
    sparse.events.push(Event::new(15, first.plus(2).unwrap(), stop()));
    assert!(!is_used(&text, &sparse), "with a number between two others");
}

/// The same event twice counts once, here too.
#[test]
fn an_event_told_twice_is_no_other_log() {
    let mut world = eventful();
    let text = marked(&world.state());
    let last = world.log.events.last().unwrap().clone();
    world.log.events.push(last);
    assert!(is_used(&text, &world.log));
}

/// One by one or whole, corrected or written right at once: the same state, though the logs are written otherwise.
#[test]
fn how_a_log_is_written_is_no_part_of_where_the_lifts_stand() {
    let world = eventful();
    let mut one_by_one = State::before(&world.log);
    for event in &world.log.events {
        if one_by_one.apply(event).is_err() {
            let known = world.log.events.iter().take_while(|earlier| *earlier != event).cloned();
            let events = known.chain([event.clone()]).collect();
            one_by_one = fold(&world.log.clone().with_events(events)).unwrap();
        }
    }
    assert_eq!(one_by_one.to_json(), world.state().to_json());
}

/// The only way in besides the fold.
#[test]
fn a_stored_state_is_read_and_then_turned_into_one() {
    let state = eventful().state();
    let stored: StoredState = Value::from_json(&state.to_json().unwrap()).unwrap().read().unwrap();
    assert!(stored == StoredState::from(&state));
    assert!(State::try_from(stored) == Ok(state));
}

/// Ten times as much training, and the state is no longer: three lengths of two years of the same weeks.
#[test]
fn a_state_does_not_grow_with_the_log() {
    let mut world = World::new(parameters());
    let mut lengths = Vec::new();
    for block in 0..3 {
        for _ in 0..(if block == 0 { 20 } else { 40 }) {
            world.passing_day("squat");
            world.add(EventKind::BodyMassRecorded(kg(80.0)));
        }
        lengths.push(world.state().to_json().unwrap().len());
    }
    assert!(lengths[2] <= lengths[1] + 40, "{lengths:?}");
}

/// Two devices keep the log of one lifter, equal but for one event in its midst: no state of the one is that of the other.
#[test]
fn a_state_of_another_log_of_the_same_lifter_is_not_used() {
    let world = eventful();
    let at = world.log.events.len() / 2;
    let with = |kind: EventKind| {
        let mut log = world.log.clone();
        let event = log.events[at].clone();
        log.events.iter_mut().filter(|later| later.sequence > event.sequence).for_each(|later| {
            later.sequence += 1;
            if let EventKind::NextDayReport(report) = &mut later.kind
                && report.session > event.sequence
            {
                report.session += 1;
            }
        });
        log.events.insert(at + 1, Event::new(event.sequence + 1, event.day, kind));
        log
    };
    let stopped = with(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
    let other = with(EventKind::BlockStarted(name("autumn")));
    assert!(fold(&stopped).unwrap().stop().is_some() && fold(&other).unwrap().stop().is_none());
    let text = fold(&other).unwrap().to_json().unwrap();
    assert!(State::from_json_or_fold(&text, &stopped).unwrap().stop().is_some());
    assert!(!is_used(&marked(&fold(&other).unwrap()), &stopped));
    assert!(is_used(&marked(&fold(&other).unwrap()), &other));
    // A note is the host's own, and changes nothing.
    let mut noted = other.clone();
    noted.events[at].note = Some("seen".into());
    assert!(is_used(&marked(&fold(&other).unwrap()), &noted));
}

/// Told one by one or whole, a state is known to be of its log.
#[test]
fn a_state_made_one_by_one_is_used() {
    let world = eventful();
    let mut state = fold(&world.log).unwrap();
    let event = Event::new(state.last().unwrap().1 + 1, world.day, EventKind::BlockStarted(name("autumn")));
    state.apply(&event).unwrap();
    let mut log = world.log.clone();
    log.events.push(event);
    assert!(is_used(&marked(&state), &log));
    let last = log.events.last_mut().unwrap();
    last.kind = EventKind::BlockEnded(name("autumn"));
    assert!(!is_used(&marked(&state), &log));
}
