//! A sentence for every error code, and for every sign, question, state and class.

use std::collections::BTreeSet;

use bismar::Code;
use bismar::condition::DayClass;
use bismar::error::Error;
use bismar::progression::{Status, WayBack};
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
