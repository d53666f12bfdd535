//! A level that wanders, seen through readings that scatter: where is it, and where was it?

use alloc::vec::Vec;

use super::domain::{not_negative, positive};
use super::reading::{Reading, Stop, stops};
use crate::error::Error;
use crate::numeric::sum::{LogProduct, Sum};
use crate::numeric::{fabs, finite, sqrt};
use crate::quantity::Day;
use crate::source::{Source, constant, formula, rows};

const DURBIN_KOOPMAN_2012: Source = Source {
    id: "durbin-koopman-2012",
    citation: "Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012",
    doi: None,
};
const HOLLAND_WELSCH_1977: Source = Source {
    id: "holland-welsch-1977",
    citation: "Holland PW, Welsch RE. Robust regression using iteratively reweighted least-squares. Commun Stat Theory Methods 6:813-827, 1977",
    doi: None,
};

constant! {
    "statistics.clip_at",
    /// Innovations beyond this many standard deviations are clipped: 95 % efficiency where nothing is wrong.
    pub const CLIP_AT: f64 = 1.345;
    source: HOLLAND_WELSCH_1977, place: "95 % efficiency", standing: Published, seen: Memory,
}

constant! {
    "statistics.inflate_at",
    /// Readings beyond this many standard deviations are trusted less.
    pub const INFLATE_AT: f64 = 2.0;
    source: crate::source::OURS, place: "one reweighting step", standing: OurChoice, seen: NotApplicable,
}

/// What to do with a reading far from what was expected.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case", deny_unknown_fields))]
pub enum Outliers {
    /// Nothing: every reading counts by its variance.
    #[default]
    Trusted,
    /// Cut the innovation at so many standard deviations (Huber); [`CLIP_AT`].
    Clipped {
        /// Standard deviations.
        at: f64,
    },
    /// Raise the variance of the reading so that it counts as if it lay at so many; [`INFLATE_AT`].
    Inflated {
        /// Standard deviations.
        at: f64,
    },
    /// Scatter follows a t distribution; each reading is weighted by how far it lies from the smoothed level.
    HeavyTailed {
        /// Degrees of freedom; 4 is usual.
        degrees: f64,
    },
}

impl Outliers {
    fn checked(self) -> Result<Outliers, Error> {
        match self {
            Outliers::Trusted => {}
            Outliers::Clipped { at } | Outliers::Inflated { at } => {
                positive("at", at)?;
            }
            Outliers::HeavyTailed { degrees } => {
                positive("degrees", degrees)?;
            }
        }
        Ok(self)
    }
}

/// One stop of the path: a reading, or a day that was asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LevelStop {
    /// The day.
    pub day: Day,
    /// The reading, if there was one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub reading: Option<f64>,
    /// Level expected before the reading; absent up to the first one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub predicted: Option<f64>,
    /// Its variance.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub predicted_variance: Option<f64>,
    /// Reading less prediction.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub innovation: Option<f64>,
    /// Innovation in standard deviations: today's form.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub standardised: Option<f64>,
    /// What part of its usual weight the reading was given, where it was an outlier.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub weight: Option<f64>,
    /// Level given everything up to here.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub filtered: Option<f64>,
    /// Its variance.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub filtered_variance: Option<f64>,
    /// Level given everything, later readings too.
    pub smoothed: f64,
    /// Its variance.
    pub smoothed_variance: f64,
}

/// The whole path of a level.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LevelPath {
    /// Stops in order of days.
    pub stops: Vec<LevelStop>,
    /// Sum over all readings but the first of the normal log density of the innovation; absent where outliers are
    /// treated. The first reading starts the level and tells nothing about the fit.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub log_likelihood: Option<f64>,
}

/// What the filter knows after one stop.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Known {
    pub(super) predicted: f64,
    pub(super) predicted_variance: f64,
    /// Innovation and its variance.
    pub(super) innovation: Option<(f64, f64)>,
    weight: Option<f64>,
    pub(super) filtered: f64,
    pub(super) filtered_variance: f64,
    /// Whether a reading came at or before this stop.
    pub(super) started: bool,
    /// Whether a reading came before this stop.
    expected: bool,
}

/// One reading taken in: the exact diffuse start, then the usual update.
fn update(known: &mut Known, (value, variance): (f64, f64), outliers: Outliers) {
    if !known.started {
        (known.filtered, known.filtered_variance, known.started) = (value, variance, true);
        return;
    }
    let mut innovation = value - known.predicted;
    let mut trusted = variance;
    let mut total = known.predicted_variance + trusted;
    known.innovation = Some((innovation, total));
    let limit = match outliers {
        Outliers::Clipped { at } | Outliers::Inflated { at } => Some(at),
        Outliers::Trusted | Outliers::HeavyTailed { .. } => None,
    };
    if let Some(at) = limit {
        let distance = fabs(innovation) / sqrt(total);
        if distance > at {
            let weight = at / distance;
            known.weight = Some(weight);
            if matches!(outliers, Outliers::Inflated { .. }) {
                trusted = variance / weight;
                total = known.predicted_variance + trusted;
            } else {
                innovation *= weight;
            }
        }
    }
    known.filtered = known.predicted + known.predicted_variance / total * innovation;
    known.filtered_variance = known.predicted_variance * trusted / total;
}

/// Forward through all stops.
pub(super) fn forward(stops: &[Stop], drift: f64, outliers: Outliers) -> Vec<Known> {
    let mut path = Vec::with_capacity(stops.len());
    let mut before: Option<(Day, Known)> = None;
    for stop in stops {
        let mut known = Known::default();
        if let Some((day, earlier)) = before {
            known.started = earlier.started;
            known.expected = earlier.started;
            known.predicted = earlier.filtered;
            known.predicted_variance = earlier.filtered_variance + drift * stop.days_since(day);
            (known.filtered, known.filtered_variance) = (known.predicted, known.predicted_variance);
        }
        if let Some(reading) = stop.reading {
            update(&mut known, reading, outliers);
        }
        before = Some((stop.day, known));
        path.push(known);
    }
    path
}

/// Log density of the innovations, in the order of the readings.
pub(super) fn log_likelihood(path: &[Known]) -> f64 {
    let (mut squares, mut variances) = (Sum::default(), LogProduct::new());
    for (innovation, variance) in path.iter().filter_map(|known| known.innovation) {
        squares.add(innovation * innovation / variance);
        variances.multiply(core::f64::consts::TAU * variance);
    }
    -0.5 * (squares.value() + variances.value())
}

/// Backward through all stops (Rauch, Tung & Striebel): smoothed level and variance.
fn backward(stops: &[Stop], path: &[Known], drift: f64) -> Vec<(f64, f64)> {
    let mut smoothed = alloc::vec![(0.0, 0.0); path.len()];
    // (day, predicted, predicted variance, smoothed, its variance) of the stop after
    let mut after: Option<(Day, f64, f64, f64, f64)> = None;
    for ((stop, known), out) in stops.iter().zip(path).zip(smoothed.iter_mut()).rev() {
        *out = match after {
            None => (known.filtered, known.filtered_variance),
            // Before the first reading there is nothing but what came after.
            Some((day, _, _, mean, variance)) if !known.started => {
                (mean, variance + drift * f64::from(day.since(stop.day)))
            }
            Some((_, predicted, predicted_variance, mean, variance)) => {
                let gain = known.filtered_variance / predicted_variance;
                let back = gain * gain * (variance - predicted_variance);
                (known.filtered + gain * (mean - predicted), known.filtered_variance + back)
            }
        };
        after = Some((stop.day, known.predicted, known.predicted_variance, out.0, out.1));
    }
    smoothed
}

/// Rounds of reweighting; the weights settle long before.
const MOST_ROUNDS: u32 = 100;

/// Divides the variances by the weights of a t distribution about the smoothed level, until they settle.
fn reweighted(stops: &[Stop], drift: f64, degrees: f64) -> (Vec<Stop>, Vec<Option<f64>>) {
    let mut weighted: Vec<Stop> = stops.to_vec();
    let mut weights: Vec<Option<f64>> = alloc::vec![None; stops.len()];
    for _ in 0..MOST_ROUNDS {
        let path = forward(&weighted, drift, Outliers::Trusted);
        let smoothed = backward(&weighted, &path, drift);
        let mut moved = 0.0;
        for (((plain, stop), weight), (mean, spread)) in
            stops.iter().zip(&mut weighted).zip(&mut weights).zip(smoothed)
        {
            let Some((value, variance)) = plain.reading else { continue };
            let apart = (value - mean) * (value - mean) + spread;
            let now = (degrees + 1.0) / (degrees + apart / variance);
            moved = crate::numeric::larger(moved, fabs(now - weight.unwrap_or(1.0)));
            *weight = Some(now);
            stop.reading = Some((value, variance / now));
        }
        if moved < 1e-10 {
            break;
        }
    }
    (weighted, weights)
}

fn assemble(stops: &[Stop], path: &[Known], smoothed: &[(f64, f64)]) -> Result<Vec<LevelStop>, Error> {
    let mut out = Vec::with_capacity(stops.len());
    for ((stop, known), (mean, variance)) in stops.iter().zip(path).zip(smoothed) {
        let after = |value: f64| known.started.then_some(value);
        let before = |value: f64| known.expected.then_some(value);
        out.push(LevelStop {
            day: stop.day,
            reading: stop.reading.map(|(value, _)| value),
            predicted: before(known.predicted),
            predicted_variance: before(known.predicted_variance),
            innovation: known.innovation.map(|(innovation, _)| innovation),
            standardised: known.innovation.map(|(innovation, variance)| innovation / sqrt(variance)),
            weight: known.weight,
            filtered: after(known.filtered),
            filtered_variance: after(known.filtered_variance),
            smoothed: finite("readings", *mean)?,
            smoothed_variance: finite("readings", *variance)?,
        });
    }
    Ok(out)
}

formula! {
    "statistics.local_level",
    /// Where is a slowly wandering level, and where was it, given scattered readings on irregular days?
    ///
    /// # Formula
    /// `y = m + e`, `e ~ N(0, variance of the reading)`; `m` moves by `N(0, drift * days)` between days. Kalman filter
    /// forward, Rauch-Tung-Striebel smoother backward; exact diffuse start (the first reading is the level).
    ///
    /// # Domain
    /// Readings in any order, several a day, days missing at will; `also` names days to answer for without a reading.
    ///
    /// # Errors
    /// `not_enough_data` without a reading; `out_of_range` for a variance at or below 0, a drift below 0, a threshold
    /// at or below 0, more than 100,000 readings, or values beyond 1e100; `not_finite`.
    ///
    /// # Source
    /// Durbin & Koopman 2012, chapter 2; robust forms after Huber 1964, Holland & Welsch 1977, Masreliez & Martin 1977, West 1981 (row
    /// `statistics.local_level`).
    ///
    /// # Examples
    /// ```
    /// use bismar::quantity::Day;
    /// use bismar::statistics::{Outliers, Reading, local_level};
    ///
    /// let day = |number| Day::from_number(number);
    /// let readings = [
    ///     Reading::new(day(0)?, 100.0, 4.0),
    ///     Reading::new(day(2)?, 101.5, 4.0),
    /// ];
    /// let path = local_level(&readings, 0.05, Outliers::Trusted, &[])?;
    /// let last = path.stops.last().ok_or(bismar::Error::plain(bismar::Code::NotEnoughData, ""))?;
    /// assert!((last.smoothed - 100.759259259259).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn local_level(readings: &[Reading], drift: f64, outliers: Outliers, also: &[Day]) -> Result<LevelPath, Error> {
        let drift = not_negative("drift", drift)?;
        let plain = stops(readings, also, 1)?;
        if let Outliers::HeavyTailed { degrees } = outliers.checked()? {
            let (weighted, weights) = reweighted(&plain, drift, degrees);
            let mut path = forward(&weighted, drift, Outliers::Trusted);
            for (known, weight) in path.iter_mut().zip(weights) {
                known.weight = weight;
            }
            let smoothed = backward(&weighted, &path, drift);
            return Ok(LevelPath { stops: assemble(&plain, &path, &smoothed)?, log_likelihood: None });
        }
        let path = forward(&plain, drift, outliers);
        let smoothed = backward(&plain, &path, drift);
        let log_likelihood = match outliers {
            Outliers::Trusted => Some(finite("readings", log_likelihood(&path))?),
            _ => None,
        };
        Ok(LevelPath { stops: assemble(&plain, &path, &smoothed)?, log_likelihood })
    }
    source: DURBIN_KOOPMAN_2012, place: "chapter 2", standing: Published, seen: Memory,
    domain: "a level without a trend of its own",
}

rows![CLIP_AT, INFLATE_AT, local_level];
