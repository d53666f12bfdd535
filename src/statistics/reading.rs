//! Dated readings with the variance of each.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::domain::{MOST_VALUES, number, positive};
use crate::error::{Code, Error};
use crate::quantity::Day;

/// One value measured or estimated on one day, and how far it may be off.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Reading {
    /// The day.
    pub day: Day,
    /// The value, such as an estimated one-repetition maximum in kg.
    pub value: f64,
    /// Its variance (square of its standard error), above 0.
    pub variance: f64,
}

impl Reading {
    /// That value on that day, with its variance.
    #[must_use]
    pub fn new(day: Day, value: f64, variance: f64) -> Reading {
        Reading { day, value, variance }
    }
}

/// One stop of a filter: a reading, or a day on which only an answer is wanted.
#[derive(Clone, Copy, Debug)]
pub(super) struct Stop {
    pub(super) day: Day,
    pub(super) reading: Option<(f64, f64)>,
}

impl Stop {
    /// Whole days since an earlier stop.
    pub(super) fn days_since(&self, earlier: Day) -> f64 {
        f64::from(self.day.since(earlier))
    }
}

/// Readings checked and put in order of days, readings of one day in the order given; days without a reading
/// that are asked for in between.
pub(super) fn stops(readings: &[Reading], also: &[Day], least: usize) -> Result<Vec<Stop>, Error> {
    if readings.len() < least.max(1) {
        return Err(Error::plain(Code::NotEnoughData, "readings"));
    }
    for (field, count) in [("readings", readings.len()), ("also", also.len())] {
        if count > MOST_VALUES {
            return Err(Error::range(Code::OutOfRange, field, count, 0.0, MOST_VALUES as f64, "values"));
        }
    }
    let mut stops = Vec::with_capacity(readings.len());
    for reading in readings {
        let pair = (number("value", reading.value)?, positive("variance", reading.variance)?);
        stops.push(Stop { day: reading.day, reading: Some(pair) });
    }
    in_order(&mut stops);
    if also.is_empty() {
        return Ok(stops);
    }
    let mut asked = also.to_vec();
    crate::numeric::sort::sort(&mut asked);
    asked.dedup();
    Ok(joined(stops, asked))
}

/// Readings and days asked for, both in order, as one; a day with a reading is answered by that.
fn joined(stops: Vec<Stop>, asked: Vec<Day>) -> Vec<Stop> {
    let mut all = Vec::with_capacity(stops.len() + asked.len());
    let mut asked = asked.into_iter().peekable();
    for stop in stops {
        while let Some(day) = asked.next_if(|day| *day < stop.day) {
            all.push(Stop { day, reading: None });
        }
        asked.next_if_eq(&stop.day);
        all.push(stop);
    }
    all.extend(asked.map(|day| Stop { day, reading: None }));
    all
}

/// The standard sort: the lists are as long as a life, and mostly in order.
#[inline(never)]
fn in_order(stops: &mut [Stop]) {
    stops.sort_by_key(|stop| stop.day);
}
