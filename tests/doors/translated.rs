//! A translation of every phrase leaves nothing in English: what a sentence says beside its phrases is found here.

use std::collections::BTreeSet;

use bismar::answers::{Diary, SetsToday, handover, in_force, next_set, opens};
use bismar::prescription::next_session;
use bismar::quantity::{Mass, Pain, Unit};
use bismar::record::*;
use bismar::sign::{Ask, PainFeature, StopSign};
use bismar::text::{Show, Translation, Words, phrases};
use bismar::value::Value;

use crate::words::{demo, questions};
use crate::world::{World, kg, name, parameters};

/// Every phrase as its values alone, in a language without letters.
fn without_letters() -> Translation {
    let wordless = |text: &str| {
        let values: Vec<String> = text
            .split('{')
            .skip(1)
            .filter_map(|rest| Some(format!("{{{}}}", rest.split_once('}')?.0)))
            .collect();
        format!("\u{25a0}{}", values.join("\u{b7}"))
    };
    let all: Vec<(String, String)> =
        phrases().into_iter().map(|(key, text)| (key, wordless(&text))).collect();
    Translation::new(all.iter().map(|(key, text)| (key.as_str(), text.as_str()))).unwrap()
}

/// The texts of the log itself, which nobody translates, word by word: names, cues, notes.
fn own_words(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Text(text) => found.extend(words_of(text)),
        Value::List(items) => items.iter().for_each(|item| own_words(item, found)),
        Value::Map(fields) => fields.iter().for_each(|(_, value)| own_words(value, found)),
        _ => {}
    }
}

fn words_of(text: &str) -> impl Iterator<Item = String> {
    text.split(|letter: char| !letter.is_ascii_alphabetic())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
}

/// Signs of units, and the cross between sets and repetitions.
const SIGNS: [&str; 4] = ["kg", "lb", "mm", "x"];

fn english_left(said: &[String], log: &Log) -> Vec<String> {
    english_beside(said, &[Value::write(log).unwrap()])
}

/// What is left of English beside the texts of what was given.
fn english_beside(said: &[String], given: &[Value]) -> Vec<String> {
    let mut own: BTreeSet<String> = SIGNS.map(String::from).into();
    given.iter().for_each(|one| own_words(one, &mut own));
    said.iter().filter(|line| words_of(line).any(|word| !own.contains(&word))).cloned().collect()
}

#[test]
fn every_door_of_the_demo_log_is_translated_whole() {
    let (log, plan, today) = demo();
    let (own, state) = (without_letters(), bismar::progression::fold(&log).unwrap());
    let words = Words::of(state.parameters().unwrap()).in_unit(Unit::Lb).translated(&own);
    for (key, given, answer) in questions(&log, &plan, today) {
        // A table's own words, and the names under which the log's format knows its columns, are nobody's to translate.
        let table = given.iter().find(|(name, _)| *name == "table").map(|(_, table)| table.clone());
        let columns = table.is_some().then(|| Value::Text("day lift load".into()));
        let own: Vec<Value> = [Value::write(&log).ok(), table, columns].into_iter().flatten().collect();
        assert_eq!(english_beside(&answer.show(&words), &own), Vec::<String>::new(), "{key}");
    }
    let session = next_session(&log, &plan, today).unwrap();
    let said = Value::write(&words.said(&session)).unwrap();
    let mut lines = Vec::new();
    all_texts(&said, &mut lines);
    assert!(lines.len() > 20);
    assert_eq!(english_left(&lines, &log), Vec::<String>::new());
}

fn all_texts(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::Text(text) => found.push(text.to_string()),
        Value::List(items) => items.iter().for_each(|item| all_texts(item, found)),
        Value::Map(fields) => fields.iter().for_each(|(_, value)| all_texts(value, found)),
        _ => {}
    }
}

/// Each stop there is: signs, pain with and without what came with it, what is asked first, a limit of a region.
#[test]
fn every_stop_is_translated_whole() {
    let own = without_letters();
    let report = |signs: &[StopSign]| EventKind::SymptomReport(SymptomReport::new(signs.to_vec()));
    let pain = |features: &[PainFeature]| {
        let answer = PainAnswer::plain(name("knee"), Pain::new(8).unwrap());
        EventKind::PainReport(answer.with_features(features.to_vec()))
    };
    let asked = |ask: Ask| EventKind::DayReport(DayReport::default().with_asks(vec![ask]));
    let mut events: Vec<EventKind> = StopSign::ALL.iter().map(|sign| report(&[*sign])).collect();
    events.extend([report(&StopSign::ALL), pain(&[]), pain(&[PainFeature::Locking, PainFeature::Pop])]);
    events.extend(Ask::ALL.iter().map(|ask| asked(*ask)));
    for event in events {
        let mut world = World::new(parameters());
        world.add(event.clone());
        for day in [world.day, world.day.plus(1).unwrap()] {
            let (plan, none) = (Plan::of([name("squat"), name("press")]), Plan::of([]));
            let state = world.state();
            let words = Words::of(state.parameters().unwrap()).translated(&own);
            for plan in [&plan, &none] {
                let session = next_session(&world.log, plan, day).unwrap();
                assert!(!session.stops.is_empty(), "{event:?}");
                let mut lines = session.show(&words);
                lines.extend(session.lifts.iter().map(|lift| words.lift_line(lift)));
                lines.extend(session.lifts.iter().map(|lift| words.one_line(lift)));
                lines.extend(handover(&world.log, day, world.day).unwrap().show(&words));
                lines.extend(Diary::of(&world.log).unwrap().review(day).show(&words));
                assert_eq!(english_left(&lines, &world.log), Vec::<String>::new(), "{event:?}");
            }
        }
    }
}

/// Whatever is in force, and its end.
#[test]
fn every_restriction_is_translated_whole() {
    let own = without_letters();
    let limit = || ClearanceLimits::default();
    let limits = vec![
        limit().with_region(name("knee")).with_load(kg(30.0)).with_range(crate::world::mm(400.0)),
        limit().with_effort(bismar::quantity::Rpe::new(6.0).unwrap()).with_no_breath_hold(true),
        limit().with_no_loaded_flexion(true),
    ];
    let given = |status| Clearance::new(status, name("clinic"));
    let day = World::new(parameters()).day;
    let away = |reason| Layoff::new(day, reason);
    let mut ceiling = parameters();
    ceiling.lifts[0].ceiling = Some(kg(70.0));
    let events = [
        EventKind::ClearanceRecorded(given(ClearanceStatus::ClearedWithLimits).with_limits(limits)),
        EventKind::ClearanceRecorded(given(ClearanceStatus::NotCleared)),
        EventKind::LayoffNoted(away(LayoffReason::Planned)),
        EventKind::LayoffNoted(away(LayoffReason::Planned).with_to(day)),
        EventKind::LayoffNoted(away(LayoffReason::Ill).with_to(day)),
        EventKind::LayoffNoted(Layoff::new(day.plus(9).unwrap(), LayoffReason::Ill)),
        EventKind::Unknown(UnknownEvent::new("of_a_newer_version".into(), Value::Bool(true))),
        EventKind::RoleSet(RoleSet::new(name("squat"), Role::Rest)),
        EventKind::CoachOverride(Override::new(name("squat"), kg(40.0), name("coach"))),
        EventKind::ParametersChanged(Box::new(ceiling)),
        EventKind::SymptomReport(SymptomReport::new(StopSign::ALL.to_vec())),
        EventKind::PainReport(PainAnswer::plain(name("knee"), Pain::new(8).unwrap())),
        EventKind::DayReport(DayReport::default().with_asks(Ask::ALL.to_vec())),
    ];
    for event in events {
        let mut world = World::new(parameters());
        world.log.version += 1;
        world.add(event.clone());
        let undo = EventKind::Correction(Correction::new(world.log.events.last().unwrap().sequence));
        let state = world.state();
        let words = Words::of(state.parameters().unwrap()).translated(&own);
        let opens = opens(&world.log, day, Some(&undo), None).unwrap();
        assert!(!opens.is_empty(), "{event:?}");
        let lines = [opens.show(&words), in_force(&world.log, day).unwrap().show(&words)].concat();
        assert_eq!(english_left(&lines, &world.log), Vec::<String>::new(), "{event:?}");
    }
}

/// Without names of the log rungs, ranges and tempos are counted, and a load below nothing is help.
#[test]
fn places_and_help_are_translated_whole() {
    let (own, world) = (without_letters(), World::new(parameters()));
    let words = Words::plain().translated(&own);
    let squat = name("squat");
    let done = SetsToday::new(squat.clone(), Vec::new()).with_pain(Vec::new());
    let mut lines = next_set(&world.log, &Plan::of([squat.clone()]), world.day, &done).unwrap().show(&words);
    lines.push(words.mass(Mass::from_kg(-20.0).unwrap()));
    lines.push(words.at_most(kg(-20.1)));
    let mut place = Place::at_rung(1);
    (place.range, place.tempo) = (2, 3);
    lines.push(words.place(&squat, place));
    lines.push(words.rung_name(&squat, 3));
    lines.push(words.error(&Mass::from_kg(9_000.0).unwrap_err().within("gym").at_event(3)));
    // The path of an error is its own.
    lines.iter_mut().for_each(|line| *line = line.replace("gym.mass", ""));
    assert_eq!(english_left(&lines, &world.log), Vec::<String>::new());
}
