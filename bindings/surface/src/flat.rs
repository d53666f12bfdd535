//! Numbers in, number out: a door without objects for functions of numbers only.
//!
//! Which functions have one follows from their rows: every argument and the result is a number or a quantity
//! that one number says. Masses are in kg, lengths in mm, days in days from 1970-01-01.

#![cfg_attr(part = "english", allow(dead_code, reason = "a part of sentences has no function of numbers"))]

use bismar::error::Allowed;
use bismar::quantity::{Day, Fraction, Kilograms, Length, Mass, Pain, Reps, Rir, Rpe};
use bismar::{Code, Error};

/// One function of numbers.
#[derive(Debug)]
pub struct Flat {
    /// Its key in the dispatch table.
    pub key: &'static str,
    /// Its arguments in order.
    pub names: &'static [&'static str],
    /// Checks the numbers, calls the function.
    pub call: fn(&[f64]) -> Result<f64, Error>,
}

include!(concat!(env!("OUT_DIR"), "/flat.rs"));

/// A column of a batch: a number for every row, or one number for all.
#[derive(Debug)]
pub enum Column<C = Vec<f64>> {
    /// One number a row.
    Rows(C),
    /// The same number in every row.
    Same(f64),
}

impl<C: AsRef<[f64]>> Column<C> {
    fn at(&self, row: usize) -> Option<f64> {
        match self {
            Column::Rows(numbers) => numbers.as_ref().get(row).copied(),
            Column::Same(number) => Some(*number),
        }
    }
}

/// The most arguments a flat function may have.
pub const MOST_ARGUMENTS: usize = 8;

/// Calls a function of the table once.
///
/// # Errors
/// `unknown_function`, or what the function reports.
pub fn call(index: usize, given: &[f64]) -> Result<f64, Error> {
    match TABLE.get(index) {
        Some(flat) => (flat.call)(given),
        None => Err(unknown(index)),
    }
}

/// Calls the function for one row of the columns.
pub(crate) fn call_row<C: AsRef<[f64]>>(
    flat: &Flat,
    columns: &[Column<C>],
    row: usize,
) -> Result<f64, Error> {
    let mut given = [0.0; MOST_ARGUMENTS];
    for (slot, column) in given.iter_mut().zip(columns) {
        *slot = column.at(row).unwrap_or(f64::NAN);
    }
    (flat.call)(given.get(..columns.len()).unwrap_or_default())
}

pub(crate) fn unknown(index: usize) -> Error {
    crate::calls::unknown(index)
}

pub(crate) fn in_row(error: &Error, row: usize) -> Error {
    let field = format!("{}[{row}]", error.field());
    Error::new(error.code(), "", error.given().clone(), error.allowed().clone()).within(&field)
}

pub(crate) fn rows<C: AsRef<[f64]>>(columns: &[Column<C>]) -> Result<usize, Error> {
    let mut lengths = columns.iter().filter_map(|column| match column {
        Column::Rows(numbers) => Some(numbers.as_ref().len()),
        Column::Same(_) => None,
    });
    let Some(first) = lengths.next() else { return Ok(1) };
    match lengths.find(|length| *length != first) {
        None => Ok(first),
        Some(other) => Err(uneven(other)),
    }
}

pub(crate) fn uneven(other: usize) -> Error {
    Error::new(Code::WrongType, "", other, Allowed::rule("columns of one length"))
}

/// What one number can say.
trait FromNumber: Sized {
    fn from_number(number: f64) -> Result<Self, Error>;
}

/// What can be said in one number.
trait ToNumber {
    fn to_number(self) -> f64;
}

fn take<T: FromNumber>(name: &'static str, number: f64) -> Result<T, Error> {
    T::from_number(number).map_err(|error| error.named(name))
}

fn give<T: ToNumber>(result: T) -> f64 {
    result.to_number()
}

fn count(wanted: usize, given: &[f64]) -> Error {
    Error::new(Code::WrongType, "", given.len(), Allowed::Rule(format!("{wanted} numbers").into()))
}

fn finite(number: f64) -> Result<f64, Error> {
    if number.is_finite() {
        Ok(number)
    } else {
        Err(Error::new(Code::NotFinite, "", number, Allowed::Unstated))
    }
}

impl FromNumber for f64 {
    fn from_number(number: f64) -> Result<f64, Error> {
        finite(number)
    }
}

impl ToNumber for f64 {
    fn to_number(self) -> f64 {
        // A result of -0.0 leaves as 0.0, as it does through the objects.
        self + 0.0
    }
}

macro_rules! quantity {
    ($($type:ident $read:expr, $write:expr);+ $(;)?) => {$(
        impl FromNumber for $type {
            fn from_number(number: f64) -> Result<$type, Error> {
                $read(number)
            }
        }
        impl ToNumber for $type {
            fn to_number(self) -> f64 {
                $write(self) + 0.0
            }
        }
    )+};
}

quantity! {
    Mass Mass::from_kg, Mass::kg;
    Kilograms Kilograms::new, Kilograms::value;
    Length Length::from_mm, Length::mm;
    Reps Reps::new, Reps::value;
    Rir Rir::new, Rir::value;
    Rpe Rpe::new, Rpe::value;
    Fraction Fraction::new, Fraction::value;
    Pain |number| Pain::new(whole(number)?), |pain: Pain| f64::from(pain.score());
    Day |number| Day::from_number(whole(number)?), |day: Day| f64::from(day.number());
}

/// Whole numbers that `f64` carries exactly.
const EXACT_WHOLE: f64 = 9_007_199_254_740_992.0;

fn whole<T: TryFrom<i64>>(number: f64) -> Result<T, Error> {
    let number = finite(number)?;
    let integer = number as i64;
    if number.abs() > EXACT_WHOLE || (integer as f64).total_cmp(&(number + 0.0)).is_ne() {
        return Err(Error::new(Code::NotWhole, "", number, Allowed::rule("a whole number")));
    }
    T::try_from(integer).map_err(|_| Error::new(Code::WrongType, "", number, Allowed::Unstated))
}

macro_rules! integer {
    ($($type:ident),+) => {$(
        impl FromNumber for $type {
            fn from_number(number: f64) -> Result<$type, Error> {
                whole(number)
            }
        }
        impl ToNumber for $type {
            fn to_number(self) -> f64 {
                self as f64
            }
        }
    )+};
}

integer!(u8, u16, u32, u64, i32, i64);
