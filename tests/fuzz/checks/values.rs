//! Texts and numbers as people type them: masses, lengths, days, effort, names, JSON.

use std::fmt::Display;
use std::str::FromStr;

use bismar::quantity::{Day, Fraction, Interval, Kilograms, Length, Mass, Name, Pain, Reps, Rir, Rpe, Unit};
use bismar::value::Value;

use super::bytes::Bytes;
use super::session::spoken;

/// The first byte chooses between text and numbers.
pub fn check(data: &[u8]) {
    let mut bytes = Bytes::new(data);
    if bytes.flag() {
        if let Some(text) = bytes.text() {
            texts(text);
        }
    } else {
        while !bytes.is_empty() {
            numbers(f64::from_bits(bytes.u64()), f64::from_bits(bytes.u64()), bytes.u32());
        }
    }
}

fn texts(text: &str) {
    shown_is_read::<Mass>(text);
    shown_is_read::<Length>(text);
    shown_is_read::<Day>(text);
    shown_is_read::<Name>(text);
    match Value::from_json(text) {
        Ok(tree) => {
            assert_eq!(Value::from_json(&tree.to_json()).expect("written by us"), tidied(&tree));
            read_any(&tree);
        }
        Err(error) => spoken(&error),
    }
    if let Ok(day) = text.parse::<Day>() {
        let (year, month, of_month) = day.calendar();
        assert_eq!(Day::from_calendar(year, month, of_month), Ok(day));
    }
}

fn shown_is_read<T: FromStr<Err = bismar::Error> + Display + PartialEq + std::fmt::Debug>(text: &str) {
    match text.parse::<T>() {
        Ok(value) => assert_eq!(value.to_string().parse::<T>().expect("what is shown is read"), value),
        Err(error) => spoken(&error),
    }
}

/// Whole numbers are written without a sign for zero.
fn tidied(value: &Value) -> Value {
    match value {
        Value::Number(number) if *number == 0.0 => Value::Number(0.0),
        Value::List(items) => Value::List(items.iter().map(tidied).collect()),
        Value::Map(fields) => {
            Value::Map(fields.iter().map(|(key, inner)| (key.clone(), tidied(inner))).collect())
        }
        other => other.clone(),
    }
}

/// A value that reads as a type is written as the same value again.
macro_rules! again {
    ($tree:expr, $($type:ty),+) => {$(
        if let Ok(value) = $tree.read::<$type>() {
            let written = Value::write(&value).expect("no NaN");
            assert_eq!(written.read::<$type>().expect("what is written is read"), value);
        }
    )+};
}

fn read_any(tree: &Value) {
    again!(tree, Mass, Length, Day, Reps, Rir, Rpe, Pain, Fraction, Interval, Kilograms, Name);
}

fn numbers(one: f64, two: f64, count: u32) {
    if let Ok(mass) = Mass::from_kg(one) {
        assert_eq!(Mass::from_kg(mass.kg()), Ok(mass), "{one} kg");
        for unit in [Unit::Kg, Unit::Lb] {
            let near = Mass::from_unit(mass.in_unit(unit), unit).map(Mass::nanograms);
            assert!(near.is_ok_and(|near| near.abs_diff(mass.nanograms()) <= 1), "{one}");
        }
        _ = mass.times(count).map(|many| assert!(many.nanograms() == mass.nanograms() * i64::from(count)));
        if let Ok(part) = mass.scaled_down(two) {
            assert!(
                mass < Mass::ZERO || !(0.0..=1.0).contains(&two) || part <= mass,
                "{mass} scaled by {two}"
            );
        }
        assert!(mass.half().nanograms() <= mass.nanograms().max(0));
        if let Ok(other) = Mass::from_lb(two)
            && let Ok(sum) = mass.plus(other)
        {
            assert_eq!(sum.minus(other), Ok(mass));
        }
    }
    _ = Length::from_mm(one).map(|length| assert_eq!(Length::from_mm(length.mm()), Ok(length)));
    _ = Length::from_inches(one).map_err(|error| spoken(&error));
    _ = Reps::new(one).map(|reps| assert_eq!(Reps::new(reps.value()), Ok(reps)));
    _ = Rir::new(one).map(|rir| assert_eq!(Rir::new(rir.value()), Ok(rir)));
    _ = Rpe::new(one).map(|rpe| assert_eq!(Rpe::new(rpe.value()), Ok(rpe)));
    _ = Fraction::new(one).map(|part| assert!(part.percent().is_finite()));
    if let Ok(interval) = Interval::new(one, two, 0.95) {
        assert!(interval.low() <= interval.high() && interval.width().is_finite());
    }
    let day = Day::from_number(count as i32);
    if let Ok(day) = day {
        assert_eq!(day.to_string().parse::<Day>(), Ok(day));
        _ = day.plus(one as i32).map(|later| assert_eq!(later.since(day), later.number() - day.number()));
    }
    let tree = Value::List(vec![Value::Number(if one.is_finite() { one } else { 0.0 })]);
    assert_eq!(Value::from_json(&tree.to_json()), Ok(tidied(&tree)), "{one} in JSON");
}
