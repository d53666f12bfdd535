//! What is known of strength on one day: an estimate with its standard error.

use alloc::vec::Vec;

use derive_setters::Setters;

use crate::error::{Code, Error};
use crate::numeric::{larger, smaller, sqrt};
use crate::quantity::Day;
use crate::statistics::Reading;
use crate::statistics::robust::median_of;

/// Where an estimate comes from.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum EvidenceKind {
    /// A set with repetitions and effort.
    RepsAndEffort,
    /// Bar speed.
    Velocity,
    /// A heavy single or a tested maximum.
    Test,
}

/// An estimate of the one-repetition maximum on one day.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct StrengthEvidence {
    /// The day.
    pub day: Day,
    /// The estimate in kg.
    pub estimate: f64,
    /// Its standard error in kg.
    pub standard_error: f64,
    /// Where it comes from.
    pub kind: EvidenceKind,
}

impl StrengthEvidence {
    /// An estimate of that day with its standard error.
    #[must_use]
    pub fn new(day: Day, estimate: f64, standard_error: f64, kind: EvidenceKind) -> StrengthEvidence {
        StrengthEvidence { day, estimate, standard_error, kind }
    }
}

/// Most estimates of one call.
const MOST_EVIDENCE: usize = 20_000;
/// Largest estimate and standard error in kg.
const HEAVIEST: f64 = 2000.0;
/// Smallest standard error in kg: no estimate is known better than a gram.
const FINEST: f64 = 0.001;

/// Estimates as readings for the filters, in the order given.
pub(super) fn readings(evidence: &[StrengthEvidence]) -> Result<Vec<Reading>, Error> {
    let most = MOST_EVIDENCE as f64;
    crate::numeric::within(Code::OutOfRange, "evidence", evidence.len() as f64, 0.0, most, "estimates")?;
    let mut readings = Vec::with_capacity(evidence.len());
    for (at, one) in evidence.iter().enumerate() {
        let place = |error: Error| error.within(&alloc::format!("evidence[{at}]"));
        let range = crate::numeric::within;
        let value = range(Code::OutOfRange, "estimate", one.estimate, 0.0, HEAVIEST, "kg").map_err(place)?;
        let error = range(Code::OutOfRange, "standard_error", one.standard_error, FINEST, HEAVIEST, "kg");
        let error = error.map_err(place)?;
        readings.push(Reading { day: one.day, value, variance: error * error });
    }
    crate::numeric::sort::sort_by_key(&mut readings, |reading| reading.day);
    Ok(readings)
}

/// Estimates looked at on each side of one.
const NEIGHBOURS: usize = 3;
/// Fewest neighbours to judge one by.
const LEAST_NEIGHBOURS: usize = 3;
/// Neighbours further away than this many days say nothing.
const NEAR: i32 = 60;
/// An estimate further from the middle of its neighbours than this many of its standard errors is a slip of the pen.
const GROSS: f64 = 4.0;

/// Readings with gross outliers brought to the edge of what is believable, and how many there were.
///
/// A typing error would otherwise pass for scatter and widen everything (Hampel's identifier, with the stated error
/// in place of the spread).
pub(super) fn tamed(readings: &[Reading]) -> (Vec<Reading>, u32) {
    let mut count = 0;
    let mut tamed = Vec::with_capacity(readings.len());
    for (at, reading) in readings.iter().enumerate() {
        let from = at.saturating_sub(NEIGHBOURS);
        let around: Vec<f64> = readings
            .iter()
            .enumerate()
            .skip(from)
            .take(at - from + NEIGHBOURS + 1)
            .filter(|(other, one)| *other != at && one.day.since(reading.day).abs() <= NEAR)
            .map(|(_, one)| one.value)
            .collect();
        let middle = (around.len() >= LEAST_NEIGHBOURS).then(|| median_of(&around)).flatten();
        let reach = GROSS * sqrt(reading.variance);
        let value = middle
            .map_or(reading.value, |middle| smaller(larger(reading.value, middle - reach), middle + reach));
        count += u32::from(value.total_cmp(&reading.value).is_ne());
        tamed.push(Reading { value, ..*reading });
    }
    (tamed, count)
}
