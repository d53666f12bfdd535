//! Kilograms and pounds: the same log in either is the same log, and a load is the one that was printed in whichever of
//! them it was written down.

use super::course::*;
use super::moves::crate_cases;
use bismar::progression::fold;
use bismar::quantity::Mass;
use bismar::record::*;
use bismar::value::Value;
use proptest::prelude::*;

/// By definition.
const KG_PER_LB: f64 = 0.453_592_37;

/// Every mass of a document in pounds.
fn in_pounds(value: &Value) -> Value {
    match value {
        Value::List(items) => Value::List(items.iter().map(in_pounds).collect()),
        Value::Map(fields) => match fields.as_slice() {
            [(unit, Value::Number(kilograms))] if unit == "kg" => {
                Value::Map(vec![("lb".into(), Value::Number(kilograms / KG_PER_LB))])
            }
            _ => Value::Map(fields.iter().map(|(key, value)| (key.clone(), in_pounds(value))).collect()),
        },
        other => other.clone(),
    }
}

/// The log with what was on the bar written down otherwise.
fn written(log: &Log, otherwise: impl Fn(Mass) -> Mass) -> Log {
    let mut log = log.clone();
    for event in &mut log.events {
        if let EventKind::SessionRecorded(session) = &mut event.kind {
            for set in session.lifts.iter_mut().flat_map(|lift| &mut lift.sets) {
                set.load = otherwise(set.load);
            }
        }
    }
    log
}

fn bytes(log: &Log) -> Vec<u8> {
    Value::write(&fold(log).unwrap()).unwrap().canonical_bytes()
}

fn half_kilograms(load: Mass) -> Mass {
    kg((load.kg() * 2.0).round() / 2.0)
}

fn whole_pounds(load: Mass) -> Mass {
    Mass::from_lb(load.lb().round()).unwrap()
}

/// What a fold leaves but the digest of what was told, which is of the log as it was written, and the seal over both.
fn but_as_written(log: &Log) -> Vec<u8> {
    let Value::Map(mut fields) = Value::write(&fold(log).unwrap()).unwrap() else { panic!("a map") };
    let before = fields.len();
    fields.retain(|(key, _)| key != "events" && key != "seal");
    assert_eq!(fields.len() + 2, before);
    Value::Map(fields).canonical_bytes()
}

/// Days after the last event, on which the answers are held against each other.
const DAYS: [i32; 3] = [0, 5, 40];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    /// The same load given in pounds and in kilograms is the same load to the nanogram.
    #[test]
    fn invariant_28_a_load(pounds in 30_u32..400) {
        let text = format!("{{\"lb\":{pounds}}}");
        let from_pounds: Mass = Value::from_json(&text).unwrap().read().unwrap();
        let written = Value::write(&from_pounds).unwrap();
        prop_assert!(written.field("kg").is_some());
        let from_kilograms: Mass = Value::from_json(&written.to_json()).unwrap().read().unwrap();
        prop_assert_eq!(from_pounds, from_kilograms);
        prop_assert_eq!(from_pounds.nanograms(), i64::from(pounds) * 453_592_370_000);
    }

    /// A whole log in pounds, parameters and discs and all, is the same log and has the same state and answers.
    #[test]
    fn invariant_28_unit_invariance(drawn in any_course()) {
        let course = Course::of(&drawn);
        let pounds = in_pounds(&Value::write(&course.log).unwrap()).to_json();
        prop_assert!(pounds.contains("\"lb\":") && !pounds.contains("\"kg\":"));
        let read = Log::from_json(&pounds).unwrap();
        prop_assert_eq!(&read, &course.log);
        prop_assert_eq!(bytes(&read), bytes(&course.log));
    }

    /// What was printed and written down in half kilograms or in whole pounds is what was printed: same state, same loads.
    #[test]
    fn invariant_28_written_in_either_unit(drawn in any_course()) {
        let course = Course::of(&drawn);
        for otherwise in [half_kilograms, whole_pounds] {
            let log = written(&course.log, otherwise);
            prop_assert_eq!(but_as_written(&log), but_as_written(&course.log));
            for days in DAYS {
                let today = course.day.plus(days).unwrap();
                prop_assert_eq!(fold(&log).unwrap().decide(today), course.state().decide(today));
            }
        }
    }
}
