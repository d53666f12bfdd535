//! Checks that several formulas of this module share.

use crate::error::{Allowed, Code, Error};
use crate::numeric;

/// A number strictly between 0 and 1.
pub(crate) fn open_unit(field: &'static str, value: f64) -> Result<f64, Error> {
    let value = numeric::within(Code::OutOfRange, field, value, 0.0, 1.0, "")?;
    if value > 0.0 && value < 1.0 {
        Ok(value)
    } else {
        Err(Error::range(Code::OutOfRange, field, value, 0.0, 1.0, "(ends excluded)"))
    }
}

/// A probability, 0 and 1 included.
pub(crate) fn unit(field: &'static str, value: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, field, value, 0.0, 1.0, "")
}

/// Largest size of a number this module takes, so that squares and sums stay finite.
pub(crate) const LARGEST: f64 = 1e100;

/// A number of ordinary size.
pub(crate) fn number(field: &'static str, value: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, field, value, -LARGEST, LARGEST, "")
}

/// A number of ordinary size above 0.
pub(crate) fn positive(field: &'static str, value: f64) -> Result<f64, Error> {
    let value = numeric::within(Code::OutOfRange, field, value, 0.0, LARGEST, "")?;
    if value > 0.0 {
        Ok(value)
    } else {
        Err(Error::range(Code::OutOfRange, field, value, 0.0, LARGEST, "(above 0)"))
    }
}

/// A number of ordinary size, 0 or above.
pub(crate) fn not_negative(field: &'static str, value: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, field, value, 0.0, LARGEST, "")
}

/// Largest number of values one call takes; a life of daily readings is a third of it.
pub(crate) const MOST_VALUES: usize = 100_000;

/// Values of ordinary size, at least so many.
pub(crate) fn numbers<'a>(field: &'static str, values: &'a [f64], least: usize) -> Result<&'a [f64], Error> {
    if values.len() < least {
        return Err(Error::new(Code::NotEnoughData, field, values.len(), Allowed::rule(at_least(least))));
    }
    if values.len() > MOST_VALUES {
        return Err(Error::range(Code::OutOfRange, field, values.len(), 0.0, MOST_VALUES as f64, "values"));
    }
    for value in values {
        number(field, *value)?;
    }
    Ok(values)
}

const fn at_least(least: usize) -> &'static str {
    match least {
        0 | 1 => "at least one value",
        2 => "at least two values",
        3 => "at least three values",
        _ => "more values",
    }
}

/// Successes out of at least one trial, as numbers.
pub(crate) fn counts(successes: u32, trials: u32) -> Result<(f64, f64), Error> {
    if trials == 0 {
        return Err(Error::new(Code::NoTrials, "trials", trials, Allowed::rule("at least 1")));
    }
    if successes > trials {
        return Err(Error::range(
            Code::SuccessesExceedTrials,
            "successes",
            successes,
            0.0,
            f64::from(trials),
            "successes",
        ));
    }
    Ok((f64::from(successes), f64::from(trials)))
}
