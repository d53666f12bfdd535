//! A sentence for every error code, and for every sign, question, state and class.

use std::collections::BTreeSet;

use bismar::Code;
use bismar::condition::DayClass;
use bismar::error::Error;
use bismar::progression::{Status, WayBack};
use bismar::quantity::{Mass, Unit};
use bismar::sign::{Ask, StopSign};
use bismar::text;
use bismar::value::Value;

use crate::careful::is_careful;
use crate::gym::{day, kg};
use crate::variants_of;

#[test]
fn every_error_code_has_a_sentence_of_its_own() {
    let said: BTreeSet<String> = Code::ALL.iter().map(|code| text::error(&Error::plain(*code, ""))).collect();
    assert_eq!(said.len(), Code::ALL.len());
    for said in said {
        assert!(said.len() > 10 && said.ends_with('.') && !said.ends_with(".."), "{said}");
        assert!(said.starts_with(char::is_uppercase), "{said}");
    }
    let error = Error::plain(Code::NeedsRefold, "").at_event(7);
    assert!(text::error(&error).starts_with("Entry 7 of the log. "));
}

#[test]
fn every_sign_and_every_question_is_said() {
    let signs = [
        StopSign::ChestPain,
        StopSign::Faint,
        StopSign::Breathlessness,
        StopSign::Headache,
        StopSign::OneSidedWeakness,
        StopSign::Heartbeat,
        StopSign::Vision,
        StopSign::SaddleNumbness,
    ];
    let written = |sign: &StopSign| match Value::write(sign).unwrap() {
        Value::Text(name) => name.to_string(),
        other => panic!("{other:?}"),
    };
    let named: BTreeSet<String> = signs.iter().map(written).collect();
    assert_eq!(named, variants_of(include_str!("../../src/sign.rs"), "StopSign"));
    let mut said: BTreeSet<&str> = signs.iter().map(|sign| text::stop_sign(*sign)).collect();
    said.extend(Ask::ALL.iter().map(|ask| text::ask(*ask)));
    assert_eq!(said.len(), signs.len() + Ask::ALL.len());
    said.iter().for_each(|said| is_careful(said));
}

#[test]
fn every_state_and_every_class_of_a_day_is_said() {
    let way = WayBack::new(kg(60.0), 1, 12);
    let states = [
        Status::Learning,
        Status::Holding,
        Status::ReadyToAdvance { since: day() },
        Status::Consolidating,
        Status::SteppingBack { from: None, passes: 0 },
        Status::Resting { way: None },
        Status::Returning { way, passes: 0 },
        Status::Maintaining,
        Status::StoppedRefer { way: None },
        Status::Retired,
    ];
    let named: BTreeSet<&str> = states.iter().map(Status::as_str).collect();
    assert_eq!(named, Status::NAMES.into_iter().collect());
    let said: BTreeSet<&str> = states.iter().map(text::status).collect();
    assert_eq!(said.len(), states.len());
    let classes: BTreeSet<&str> = DayClass::ALL.iter().map(|class| text::day_class(*class)).collect();
    assert_eq!(classes.len(), DayClass::ALL.len());
    assert!(classes.iter().all(|class| class.contains("the usual")));
    said.iter().chain(&classes).for_each(|said| is_careful(said));
}

/// What a code means is said by the translation; field, value and what is allowed stay as they are.
#[test]
fn an_error_is_said_by_its_translation() {
    let own =
        text::Translation::new([("error.out_of_range", "Das liegt nicht im erlaubten Bereich.")]).unwrap();
    let words = text::Words::plain().translated(&own);
    let error = bismar::quantity::Rpe::new(11.0).unwrap_err();
    assert_eq!(words.error(&error), "Das liegt nicht im erlaubten Bereich: rpe is 11. Allowed: 0 to 10.");
    let other = Error::plain(Code::MissingField, "log");
    assert_eq!(words.error(&other), text::error(&other));
}

/// By hand: 2000 kg are 4409.2452 lb and 4409.2453 lb are 2000.00002 kg; a bound is cut inwards and what was refused outwards,
/// so that it never lies within what is printed as allowed.
#[test]
fn a_range_of_masses_is_told_in_the_unit() {
    let said = |unit, error: Error| text::Words::plain().in_unit(unit).error(&error);
    let beyond = Mass::from_kg(2_000.000_001).unwrap_err();
    assert!(
        said(Unit::Lb, beyond.clone()).ends_with(": mass is 4409.25. Allowed: -4409.24 to 4409.24 lb."),
        "{}",
        said(Unit::Lb, beyond)
    );
    let pounds = Mass::from_lb(4_409.245_3).unwrap_err();
    assert!(
        said(Unit::Kg, pounds.clone()).ends_with(": mass is 2000.01. Allowed: -2000 to 2000 kg."),
        "{pounds}"
    );
    assert!(said(Unit::Lb, pounds.clone()).contains(": mass is 4409.2453. Allowed: -4409.24"), "{pounds}");
    let below = Mass::from_lb(-4_409.245_3).unwrap_err();
    assert!(said(Unit::Kg, below.clone()).contains(": mass is -2000.01. Allowed"), "{below}");
    // What is no mass stays as it is.
    let rating = bismar::quantity::Rpe::new(11.0).unwrap_err();
    assert_eq!(said(Unit::Lb, rating.clone()), text::error(&rating));
    let number = Mass::from_kg(f64::NAN).unwrap_err();
    assert_eq!(said(Unit::Lb, number.clone()), text::error(&number));
}

/// What another language has of an error is told in the same words as the error itself.
#[test]
fn an_error_of_another_language_is_told_as_the_error() {
    let read = |json: &str| Value::from_json(json).unwrap().read::<text::ToldError>();
    let told = |json: &str| text::error(&read(json).unwrap().to_error().unwrap());
    let error = Mass::from_kg(2500.0).unwrap_err().within("sets[2]").at_event(7);
    let same = r#"{"code":"out_of_range","field":"sets[2].mass","value":2500,"allowed":{"low":-2000,"high":2000,"unit":"kg"},"event":7,"message":"x"}"#;
    assert_eq!(told(same), text::error(&error));
    let unit = r#"{"code":"unknown_unit","field":"mass","value":"stone","allowed":{"one_of":["kg","lb"]}}"#;
    assert_eq!(told(unit), "The unit is not one of those allowed here: mass is \"stone\". Allowed: kg, lb.");
    assert_eq!(
        told(r#"{"code":"not_finite","field":"mass","value":"NaN"}"#),
        text::error(&Mass::from_kg(f64::NAN).unwrap_err())
    );
    let refused = |json: &str| read(json).and_then(|told| told.to_error()).unwrap_err();
    for (json, code, field) in [
        (r#"{"code":"nothing"}"#, Code::UnknownName, "code"),
        (r#"{"field":"x"}"#, Code::MissingField, "code"),
        (r#"{"code":"overflow","allowed":{"low":1}}"#, Code::WrongFormat, "allowed"),
        (r#"{"code":"overflow","allowed":{"rule":"a","one_of":["b"]}}"#, Code::WrongFormat, "allowed"),
        (r#"{"code":"overflow","value":[]}"#, Code::WrongType, "value"),
        (r#"{"code":"overflow","other":1}"#, Code::UnknownField, "other"),
    ] {
        let error = refused(json);
        assert_eq!((error.code(), error.field()), (code, field), "{json}");
    }
}
