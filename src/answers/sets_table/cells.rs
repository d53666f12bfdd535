//! Days, loads and numbers as tables spell them.

use alloc::string::String;
use alloc::vec::Vec;

use super::DayOrder;
use super::csv::Row;
use super::head::{Field, Head};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Mass, Reps, Rir, Rpe, Unit, decimal};
use crate::record::Effort;

/// A day as three numbers in the order written, or as the calendar writes it.
enum Spelled {
    Calendar(Day),
    Numbers(u8, u8, i32),
}

fn not_a_day(text: &str) -> Error {
    let rule = Allowed::rule("2026-03-29, 29.3.2026 or 3/29/2026");
    Error::new(Code::NotADate, "day", text, rule)
}

/// The day, and whether a time of day stood behind it.
fn spelled(text: &str) -> Result<(Spelled, bool), Error> {
    let (date, time) = match text.split_once(['T', ' ']) {
        Some((date, time)) if time.starts_with(|letter: char| letter.is_ascii_digit()) => (date, true),
        _ => (text, false),
    };
    if let Ok(day) = date.parse::<Day>() {
        return Ok((Spelled::Calendar(day), time));
    }
    let parts: Vec<&str> = date.split(['/', '.', '-']).collect();
    let number = |text: &str, longest: usize| {
        let digits = (1..=longest).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit());
        digits.then(|| text.parse::<i32>().ok()).flatten()
    };
    match parts.as_slice() {
        [one, two, year] if year.len() == 4 => match (number(one, 2), number(two, 2), number(year, 4)) {
            (Some(one), Some(two), Some(year)) => Ok((Spelled::Numbers(one as u8, two as u8, year), time)),
            _ => Err(not_a_day(text)),
        },
        _ => Err(not_a_day(text)),
    }
}

/// What the days of a table look like.
#[derive(Debug, Default)]
pub(super) struct Days {
    /// Rows whose day can only be read with the day first.
    pub(super) day_first: u32,
    /// Rows whose day can only be read with the month first.
    pub(super) month_first: u32,
    /// Rows whose day can be read both ways.
    either: u32,
    /// Rows with a time of day.
    pub(super) timed: u32,
}

/// The largest number of a month.
const MONTHS: u8 = 12;

impl Days {
    pub(super) fn look(head: &Head, rows: &[Row]) -> Days {
        let mut days = Days::default();
        for row in rows {
            let Some(Ok((day, timed))) = head.cell(&row.cells, Field::Day).map(spelled) else { continue };
            days.timed += u32::from(timed);
            if let Spelled::Numbers(one, two, _) = day {
                match (one > MONTHS, two > MONTHS) {
                    (true, _) => days.day_first += 1,
                    (false, true) => days.month_first += 1,
                    (false, false) => days.either += 1,
                }
            }
        }
        days
    }

    /// The order that the rows show; none where no row needs one.
    pub(super) fn order(&self) -> Result<Option<DayOrder>, Error> {
        match (self.day_first > 0, self.month_first > 0, self.either > 0) {
            (true, false, _) => Ok(Some(DayOrder::DayFirst)),
            (false, true, _) => Ok(Some(DayOrder::MonthFirst)),
            (false, false, false) => Ok(None),
            // Both ways, or nothing that tells: nobody but the host can say.
            _ => Err(Error::plain(Code::MissingField, "day_order").within("reading")),
        }
    }
}

pub(super) fn day(text: &str, order: Option<DayOrder>) -> Result<Day, Error> {
    match (spelled(text)?.0, order) {
        (Spelled::Calendar(day), _) => Ok(day),
        (Spelled::Numbers(day, month, year), Some(DayOrder::DayFirst))
        | (Spelled::Numbers(month, day, year), Some(DayOrder::MonthFirst)) => {
            Day::from_calendar(year, month, day).map_err(|_| not_a_day(text))
        }
        (Spelled::Numbers(..), None) => Err(not_a_day(text)),
    }
}

/// Whether a number is written with a comma. Three digits behind it may as well be thousands, so that nobody can know.
fn comma(field: &'static str, text: &str) -> Result<bool, Error> {
    let Some((_, behind)) = text.split_once(',') else { return Ok(false) };
    let digits = behind.bytes().take_while(u8::is_ascii_digit).count();
    if digits == 3 {
        let rule = Allowed::rule("a number with a point, since 62,500 may be read in two ways");
        return Err(Error::new(Code::NotANumber, field, text, rule));
    }
    Ok(true)
}

/// A load, and how it was read.
pub(super) struct Load {
    pub(super) mass: Mass,
    pub(super) pounds: bool,
    pub(super) comma: bool,
}

/// Printed kilograms and pounds of one load may differ by so much, in kg.
const PRINTED: f64 = 0.002;

pub(super) fn load(head: &Head, cells: &[String], unit: Option<Unit>) -> Result<Load, Error> {
    let read = |field: Field, name: &'static str, unit: Option<Unit>| -> Result<Option<Load>, Error> {
        let Some(text) = head.cell(cells, field) else { return Ok(None) };
        let own = text.chars().any(char::is_alphabetic);
        let written = comma(name, text)?;
        let mass = match (own, unit) {
            (true, _) => text.parse::<Mass>(),
            (false, Some(unit)) => decimal(name, text).and_then(|number| Mass::from_unit(number, unit)),
            (false, None) => return Err(Error::plain(Code::MissingField, "unit").within("reading")),
        };
        let mass = mass.map_err(|error| error.named(name))?;
        // Of the units that were read above only pounds are written with this letter.
        let pounds = if own { text.contains(['b', 'B']) } else { unit == Some(Unit::Lb) };
        Ok(Some(Load { mass, pounds, comma: written }))
    };
    let kilograms = read(Field::Kilograms, "load_kg", Some(Unit::Kg))?;
    let pounds = read(Field::Pounds, "load_lb", Some(Unit::Lb))?;
    let found = match (kilograms, pounds) {
        (Some(kilograms), Some(pounds)) => {
            let apart = kilograms.mass.kg() - pounds.mass.kg();
            if !(-PRINTED..=PRINTED).contains(&apart) {
                let rule = Allowed::rule("the load that load_kg says");
                return Err(Error::new(Code::OutOfRange, "load_lb", pounds.mass.lb(), rule));
            }
            // Of two printed forms the one in whole quarters of its unit is what was on the bar.
            if !quarters(kilograms.mass, Unit::Kg) && quarters(pounds.mass, Unit::Lb) {
                Some(pounds)
            } else {
                Some(kilograms)
            }
        }
        (one, other) => one.or(other),
    };
    let found = match found {
        Some(found) => Some(found),
        None => read(Field::Load, "load", unit)?,
    };
    let found = found.ok_or_else(|| Error::plain(Code::MissingField, "load"))?;
    if found.mass.nanograms() < 0 {
        return Err(Error::new(Code::NegativeLoad, "load", found.mass.kg(), Allowed::rule("0 or more")));
    }
    Ok(found)
}

fn quarters(mass: Mass, unit: Unit) -> bool {
    let quarter = Mass::from_unit(0.25, unit).map(Mass::nanograms);
    quarter.is_ok_and(|quarter| mass.nanograms().checked_rem(quarter) == Some(0))
}

/// A number, and whether it is written with a comma.
pub(super) fn number(field: &'static str, text: &str) -> Result<(f64, bool), Error> {
    let written = comma(field, text)?;
    decimal(field, text).map(|number| (number, written))
}

pub(super) fn reps(text: &str) -> Result<Reps, Error> {
    let reps = Reps::new(number("reps", text)?.0).map_err(|error| error.named("reps"))?;
    if reps.is_whole() {
        Ok(reps)
    } else {
        Err(Error::new(Code::NotWhole, "reps", reps.value(), Allowed::rule("whole repetitions")))
    }
}

/// How often the set was done: a row may stand for several equal ones.
pub(super) fn times(text: &str, most: u8) -> Result<u8, Error> {
    let (number, _) = number("sets", text)?;
    let whole = number as u8;
    if f64::from(whole).total_cmp(&number).is_eq() && (1..=most).contains(&whole) {
        Ok(whole)
    } else {
        Err(Error::range(Code::OutOfRange, "sets", number, 1.0, f64::from(most), ""))
    }
}

/// Yes or no, as tables spell it.
pub(super) fn flag(field: &'static str, text: &str) -> Result<bool, Error> {
    match text.to_lowercase().as_str() {
        "1" | "yes" | "true" | "x" => Ok(true),
        "0" | "no" | "false" => Ok(false),
        _ => Err(Error::new(
            Code::WrongType,
            field,
            text,
            Allowed::one_of(&["1", "0", "yes", "no", "true", "false", "x"]),
        )),
    }
}

pub(super) fn effort(head: &Head, cells: &[String]) -> Result<Option<Effort>, Error> {
    let reserve = head.cell(cells, Field::Reserve);
    let rating = head.cell(cells, Field::Rating);
    match (reserve, rating) {
        (Some(text), None) => {
            let (number, _) = number("reps_in_reserve", text)?;
            Rir::new(number).map(|rir| Some(Effort::Rir(rir))).map_err(|error| error.named("reps_in_reserve"))
        }
        (None, Some(text)) => {
            let (number, _) = number("rating", text)?;
            Rpe::new(number).map(|rpe| Some(Effort::Rpe(rpe))).map_err(|error| error.named("rating"))
        }
        (None, None) => Ok(None),
        (Some(_), Some(text)) => {
            let rule = Allowed::rule("one of reps_in_reserve and rating: they run opposite ways");
            Err(Error::new(Code::DuplicateField, "rating", text, rule))
        }
    }
}
