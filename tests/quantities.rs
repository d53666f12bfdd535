//! Quantities at their ends, and the forms in which they, errors and rows are shown.

#![allow(clippy::unwrap_used, clippy::float_cmp, reason = "a test may panic, and these numbers are exact")]

use std::cmp::Ordering;
use std::collections::HashSet;

use bismar::Code;
use bismar::error::{Allowed, Error, Given};
use bismar::quantity::{Day, Interval, Length, Mass, Name, Pain, Reps, Rir, Rpe};
use bismar::registry;
use bismar::value::Value;

#[test]
fn lengths_end_at_ten_metres() {
    let longest = Length::from_mm(10_000.0).unwrap();
    assert_eq!(
        (Length::millimetres(10_001), Length::millimetres(-10_001).micrometres()),
        (longest, -10_000_000)
    );
    assert_eq!(Length::millimetres(225).mm(), 225.0);
    let millimetre = Length::millimetres(1);
    assert_eq!(longest.minus(millimetre).unwrap().plus(millimetre), Ok(longest));
    for beyond in [longest.plus(millimetre), Length::millimetres(-10_000).minus(millimetre), longest.times(2)]
    {
        let error = beyond.unwrap_err();
        assert_eq!((error.code(), error.field()), (Code::Overflow, "length"));
        assert_eq!(error.allowed().to_string(), "-10000 to 10000 mm");
    }
}

#[test]
fn masses_end_at_two_tonnes_and_begin_at_a_nanogram() {
    assert_eq!(Mass::grams(2_000_001), Mass::MAX);
    assert_eq!(Mass::grams(-2_000_001).nanograms(), -Mass::MAX.nanograms());
    let most = Mass::MAX.nanograms();
    assert_eq!(Mass::from_nanograms(most), Some(Mass::MAX));
    assert_eq!((Mass::from_nanograms(most + 1), Mass::from_nanograms(-most - 1)), (None, None));
    // A nanogram is 1e-12 kg; below half of it nothing is left, and half of it counts as one.
    for (kilograms, nanograms) in [(1e-12, 1), (0.4e-12, 0), (1e-40, 0), (0.6e-12, 1), (-0.6e-12, -1)] {
        assert_eq!(Mass::from_kg(kilograms).unwrap().nanograms(), nanograms, "{kilograms}");
    }
}

#[test]
fn counts_and_ratings_end_where_they_say() {
    assert_eq!(Reps::whole(200).unwrap().to_string(), "200");
    assert_eq!(Reps::new(4.5).unwrap().to_string(), "4.5");
    let error = Reps::whole(201).unwrap_err();
    assert_eq!((error.code(), error.allowed().to_string().as_str()), (Code::OutOfRange, "0 to 200"));
    assert_eq!(Pain::new(10).unwrap().score(), 10);
    assert_eq!(Pain::new(11).unwrap_err().to_string(), "out_of_range: pain = 11 (allowed: 0 to 10)");
    assert_eq!(Rpe::new(8.5).unwrap().to_string(), "8.5");
    assert_eq!(Rir::whole(2).to_string(), "2");
    assert_eq!(Interval::new(1.0, 2.0, 0.9).unwrap().level(), 0.9);
    for text in ["2026-02-30", "2026-2-03", "20260203xx", "2026-02-03 ", "²026-02-0"] {
        let error = text.parse::<Day>().unwrap_err();
        assert_eq!((error.code(), error.given()), (Code::NotADate, &Given::Text(text.into())), "{text}");
    }
}

#[test]
fn names_are_compared_and_hashed_as_their_text() {
    let name = |text| Name::new(text).unwrap();
    assert_eq!(name("box").partial_cmp(&name("free")), Some(Ordering::Less));
    assert!(name("left knee of an older invented lifter") > name("left knee"));
    let names: HashSet<Name> = ["hip", "knee", "hip"].map(name).into();
    assert!(names.len() == 2 && names.contains(&name("knee")));
}

#[test]
fn an_error_shows_what_it_has_and_nothing_else() {
    let plain = Error::plain(Code::EmptyList, "sets");
    assert_eq!(plain.to_string(), "empty_list: sets");
    assert_eq!(Error::plain(Code::NotJson, "").to_string(), "not_json");
    let whole = Error::new(Code::UnknownUnit, "mass", "stone", Allowed::one_of(&["kg", "lb"])).at_event(3);
    assert_eq!(whole.to_string(), "event 3: unknown_unit: mass = \"stone\" (allowed: kg, lb)");
    assert_eq!(format!("{whole:?}"), format!("Error({whole})"));
    assert_eq!((Given::Nothing.to_string(), Allowed::Unstated.to_string()), (String::new(), String::new()));
}

#[test]
fn the_registry_knows_its_keys_and_no_other() {
    let error = registry::call("one_rm.nobody_1900", &Value::Map(Vec::new())).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::UnknownFunction, "function"));
    assert_eq!(error.given(), &Given::Text("one_rm.nobody_1900".into()));
    let entry = registry::entries().find(|entry| entry.key == "one_rm.epley_1985").unwrap();
    assert_eq!(format!("{entry:?}"), "Entry(one_rm.epley_1985)");
    assert_eq!(entry.call(&Value::Null).unwrap_err().code(), Code::NullNotAllowed);
}
