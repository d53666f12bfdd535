//! A level with a slope, both wandering: is strength rising, and how fast?

use alloc::vec::Vec;

use super::domain::not_negative;
use super::reading::{Reading, Stop, stops};
use super::trend_state::{Added, TrendState, between, through};
use crate::error::{Code, Error};
use crate::numeric::sqrt;
use crate::numeric::sum::{LogProduct, Sum};
use crate::quantity::Day;
use crate::source::{Source, formula, rows};

const DURBIN_KOOPMAN_2012: Source = Source {
    id: "durbin-koopman-2012",
    citation: "Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012",
    doi: None,
};

/// One stop of the path of a trend.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TrendStop {
    /// The day.
    pub day: Day,
    /// The reading, if there was one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub reading: Option<f64>,
    /// Reading less prediction, once there is a prediction.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub innovation: Option<f64>,
    /// Innovation in standard deviations.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub standardised: Option<f64>,
    /// State given everything up to here; absent until readings on two days name a slope.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub filtered: Option<TrendState>,
    /// State given everything, later readings too.
    pub smoothed: TrendState,
}

/// The whole path of a trend.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TrendPath {
    /// Stops in order of days.
    pub stops: Vec<TrendStop>,
    /// Sum of the normal log densities of the innovations; readings that only start level and slope are left out.
    pub log_likelihood: f64,
}

/// What is known at one stop.
#[derive(Clone, Copy, Debug)]
enum Known {
    /// No reading yet.
    Nothing,
    /// Readings on one day only: a level that many days ago, any slope.
    OneDay { first: Day, level: f64, variance: f64 },
    /// Level and slope.
    Both { before: Option<TrendState>, now: TrendState, innovation: Option<(f64, f64)> },
}

#[derive(Clone, Copy, Debug)]
struct Drifts {
    level: f64,
    slope: f64,
}

impl Drifts {
    fn over(&self, days: f64) -> Added {
        Added::over(days, self.level, self.slope)
    }
}

/// The second day with a reading: it names the level, and with the first day the slope.
fn identified(first: (f64, f64), days: f64, reading: (f64, f64), drifts: Drifts) -> TrendState {
    let added = drifts.over(days);
    TrendState {
        level: reading.0,
        slope: (reading.0 - first.0) / days,
        level_variance: reading.1,
        slope_variance: (reading.1 + first.1 + added.level) / (days * days) + added.slope
            - 2.0 * added.both / days,
        covariance: reading.1 / days,
    }
}

fn advance(before: Known, last: Day, stop: &Stop, drifts: Drifts) -> (Known, Option<(f64, f64)>) {
    let days = stop.days_since(last);
    match (before, stop.reading) {
        (Known::Nothing, None) => (Known::Nothing, None),
        (Known::Nothing, Some((level, variance))) => {
            (Known::OneDay { first: stop.day, level, variance }, None)
        }
        (Known::OneDay { .. }, None) => (before, None),
        (Known::OneDay { first, level, variance }, Some((value, spread))) if stop.day == first => {
            let total = variance + spread;
            let found = (value - level, total);
            let level = level + variance / total * found.0;
            (Known::OneDay { first, level, variance: variance * spread / total }, Some(found))
        }
        (Known::OneDay { first, level, variance }, Some(reading)) => {
            let now = identified((level, variance), stop.days_since(first), reading, drifts);
            (Known::Both { before: None, now, innovation: None }, None)
        }
        (Known::Both { now, .. }, reading) => {
            let ahead = now.ahead(days, drifts.over(days));
            let Some((value, variance)) = reading else {
                return (Known::Both { before: Some(ahead), now: ahead, innovation: None }, None);
            };
            let (now, innovation, total) = ahead.seen(0.0, value, variance);
            let found = Some((innovation, total));
            (Known::Both { before: Some(ahead), now, innovation: found }, found)
        }
    }
}

/// Smoothed state at a stop from the smoothed state at the next one.
fn smooth(known: Known, stop: &Stop, next: (&Stop, Known, TrendState), drifts: Drifts) -> TrendState {
    let (next_stop, next_known, later) = next;
    let days = next_stop.days_since(stop.day);
    match (known, next_known) {
        (Known::Both { now, .. }, Known::Both { before: Some(ahead), .. }) => {
            between(now, ahead, later, days)
        }
        // Any slope is possible here: what comes later decides, seen through the drift, and the first day's level.
        (Known::OneDay { first, level, variance }, _) => through(later, days, drifts.over(days), |state| {
            let age = stop.days_since(first);
            let known = drifts.over(age);
            let spread = variance + known.level + age * age * known.slope - 2.0 * age * known.both;
            state.seen(age, level, spread).0
        }),
        _ => through(later, days, drifts.over(days), |state| state),
    }
}

fn forward(stops: &[Stop], drifts: Drifts) -> (Vec<Known>, f64) {
    let mut path: Vec<Known> = Vec::with_capacity(stops.len());
    let (mut squares, mut variances) = (Sum::default(), LogProduct::new());
    let (mut known, mut last) = (Known::Nothing, None);
    for stop in stops {
        let found;
        (known, found) = advance(known, last.unwrap_or(stop.day), stop, drifts);
        if let Some((innovation, variance)) = found {
            squares.add(innovation * innovation / variance);
            variances.multiply(core::f64::consts::TAU * variance);
        }
        last = Some(stop.day);
        path.push(known);
    }
    (path, -0.5 * (squares.value() + variances.value()))
}

fn backward(stops: &[Stop], path: &[Known], drifts: Drifts) -> Vec<TrendState> {
    let mut smoothed = alloc::vec![TrendState::default(); path.len()];
    let mut next: Option<(&Stop, Known, TrendState)> = None;
    for ((stop, known), out) in stops.iter().zip(path).zip(smoothed.iter_mut()).rev() {
        *out = match (next, known) {
            (Some(next), known) => smooth(*known, stop, next, drifts),
            (None, Known::Both { now, .. }) => *now,
            (None, _) => TrendState::default(),
        };
        next = Some((stop, *known, *out));
    }
    smoothed
}

/// The log likelihood alone, for fitting.
pub(super) fn trend_likelihood(stops: &[Stop], level_drift: f64, slope_drift: f64) -> f64 {
    forward(stops, Drifts { level: level_drift, slope: slope_drift }).1
}

/// State at the last reading and the log likelihood, for callers that try many drifts.
pub(crate) fn trend_end(
    readings: &[Reading],
    level_drift: f64,
    slope_drift: f64,
) -> Result<(TrendState, f64), Error> {
    on_two_days(readings)?;
    let (path, likelihood) =
        forward(&stops(readings, &[], 2)?, Drifts { level: level_drift, slope: slope_drift });
    match path.last() {
        Some(Known::Both { now, .. }) => Ok((checked(*now)?, told(likelihood)?)),
        _ => Err(Error::plain(Code::NotEnoughData, "readings")),
    }
}

/// Whether readings fall on two days at least.
pub(super) fn on_two_days(readings: &[Reading]) -> Result<(), Error> {
    let first = readings.first().map(|reading| reading.day);
    if readings.iter().any(|reading| Some(reading.day) != first) {
        Ok(())
    } else {
        Err(Error::new(
            Code::NotEnoughData,
            "readings",
            readings.len(),
            crate::error::Allowed::rule("readings on two days"),
        ))
    }
}

/// Refuses what rounding has left nothing of, as where one reading is a million times as sure as another.
fn told(value: f64) -> Result<f64, Error> {
    if value.is_finite() { Ok(value) } else { Err(Error::plain(Code::NotIdentified, "readings")) }
}

fn checked(state: TrendState) -> Result<TrendState, Error> {
    for part in [state.level, state.slope, state.level_variance, state.slope_variance, state.covariance] {
        told(part)?;
    }
    Ok(state)
}

formula! {
    "statistics.local_trend",
    /// Where are level and slope, and where were they, given scattered readings on irregular days?
    ///
    /// # Formula
    /// Day by day: `level += slope + N(0, level_drift)`, `slope += N(0, slope_drift)`; readings see the level with the
    /// variance of each. Over `d` days the added variance is `d s_l + s_s (d-1)d(2d-1)/6` for the level, `d s_s` for
    /// the slope, `s_s d(d-1)/2` between them. Exact diffuse start.
    ///
    /// # Domain
    /// Readings on at least two days. `also` names days to answer for without a reading.
    ///
    /// # Errors
    /// `not_enough_data` with readings on fewer than two days; `out_of_range` for a variance at or below 0, a drift
    /// below 0, or values beyond 1e100; `not_finite`; `not_identified` where variances differ so much that rounding
    /// leaves nothing of the answer.
    ///
    /// # Source
    /// Durbin & Koopman 2012, chapter 3 (row `statistics.local_trend`).
    ///
    /// # Examples
    /// ```
    /// use bismar::quantity::Day;
    /// use bismar::statistics::{Reading, local_trend};
    ///
    /// let readings = [
    ///     Reading::new(Day::from_number(0)?, 100.0, 4.0),
    ///     Reading::new(Day::from_number(2)?, 101.5, 4.0),
    /// ];
    /// let path = local_trend(&readings, 0.05, 0.0005, &[])?;
    /// let slope = path.stops.last().and_then(|stop| stop.filtered).map(|state| state.slope);
    /// assert_eq!(slope, Some(0.75));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn local_trend(readings: &[Reading], level_drift: f64, slope_drift: f64, also: &[Day]) -> Result<TrendPath, Error> {
        let drifts = Drifts {
            level: not_negative("level_drift", level_drift)?,
            slope: not_negative("slope_drift", slope_drift)?,
        };
        on_two_days(readings)?;
        let stops = stops(readings, also, 2)?;
        let (path, likelihood) = forward(&stops, drifts);
        let smoothed = backward(&stops, &path, drifts);
        let mut out = Vec::with_capacity(stops.len());
        for ((stop, known), smoothed) in stops.iter().zip(&path).zip(smoothed) {
            let (filtered, found) = match known {
                Known::Both { now, innovation, .. } => (Some(checked(*now)?), *innovation),
                _ => (None, None),
            };
            out.push(TrendStop {
                day: stop.day,
                reading: stop.reading.map(|(value, _)| value),
                innovation: found.map(|(innovation, _)| innovation),
                standardised: found.map(|(innovation, variance)| innovation / sqrt(variance)),
                filtered,
                smoothed: checked(smoothed)?,
            });
        }
        Ok(TrendPath { stops: out, log_likelihood: told(likelihood)? })
    }
    source: DURBIN_KOOPMAN_2012, place: "chapter 3", standing: Published, seen: Memory,
    domain: "readings on at least two days",
}

rows![local_trend];
