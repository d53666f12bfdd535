//! How fast does the level wander, and how much do the readings scatter? Maximum likelihood.

use alloc::vec::Vec;

use super::domain::{not_negative, open_unit, positive};
use super::level_filter::{Known, forward, log_likelihood};
use super::reading::{Reading, Stop, stops};
use crate::error::{Code, Error};
use crate::numeric::normal::normal_reach;
use crate::numeric::search::lowest;
use crate::numeric::sum::LogProduct;
use crate::numeric::{exp, fabs, finite, ln, sqrt};
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const DURBIN_KOOPMAN_2012: Source = Source {
    id: "durbin-koopman-2012",
    citation: "Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012",
    doi: None,
};

/// Maximum-likelihood variances of a wandering level.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LevelFit {
    /// Factor on the variances of the readings; 1 where they were taken as known.
    pub scale: f64,
    /// Variance by which the level moves per day.
    pub drift: f64,
    /// Log likelihood there, first reading left out.
    pub log_likelihood: f64,
    /// Whether the best drift is none at all: the readings show no movement of the level.
    pub drift_at_zero: bool,
}

/// Fewest readings to estimate variances from.
const LEAST: usize = 3;

/// Scale that fits best at a drift given relative to it, and the concentrated log likelihood without constants.
fn concentrated(path: &[Known]) -> Option<(f64, f64)> {
    let (mut squares, mut variances, mut count) = (0.0, LogProduct::new(), 0.0);
    for (innovation, variance) in path.iter().filter_map(|known| known.innovation) {
        squares += innovation * innovation / variance;
        variances.multiply(variance);
        count += 1.0;
    }
    let scale = squares / count;
    (scale > 0.0).then(|| (scale, -0.5 * (count * ln(scale) + variances.value())))
}

fn no_scatter() -> Error {
    Error::plain(Code::ZeroSpread, "readings")
}

formula! {
    "statistics.local_level_concentrated",
    /// How well does a drift, relative to the scatter of the readings, explain them?
    ///
    /// # Formula
    /// `-(N ln(s) + sum ln F) / 2`, `s = sum(v^2 / F) / N` over the `N` innovations `v` with variances `F` at unit
    /// scale; constants left out.
    ///
    /// # Domain
    /// At least two readings whose innovations are not all 0. Variances of the readings count as relative.
    ///
    /// # Errors
    /// `not_enough_data`, `zero_spread`, `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Durbin & Koopman 2012, table 2.1 (row `statistics.local_level_concentrated`).
    ///
    /// # Examples
    /// ```
    /// use bismar::quantity::Day;
    /// use bismar::statistics::{Reading, local_level_concentrated};
    ///
    /// let reading = |day, value| Ok::<_, bismar::Error>(Reading::new(Day::from_number(day)?, value, 1.0));
    /// let readings = [reading(0, 1.0)?, reading(1, 3.0)?, reading(2, 2.0)?];
    /// assert!(local_level_concentrated(&readings, 0.1)?.is_finite());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn local_level_concentrated(readings: &[Reading], relative_drift: f64) -> Result<f64, Error> {
        let path = forward(
            &stops(readings, &[], 2)?,
            not_negative("relative_drift", relative_drift)?,
            super::Outliers::Trusted,
        );
        let (_, value) = concentrated(&path).ok_or_else(no_scatter)?;
        finite("readings", value)
    }
    source: DURBIN_KOOPMAN_2012, place: "table 2.1", standing: Published, seen: Memory,
}

/// The best drift by `height` (lower is better): a coarse look over all sizes, then golden section.
fn best_drift(typical: f64, mut height: impl FnMut(f64) -> Result<f64, Error>) -> Result<f64, Error> {
    // From a thousand-millionth of the scatter per day up to a thousand times it.
    const LOWEST: i32 = -21;
    const HIGHEST: i32 = 7;
    let mut best = (height(0.0)?, None);
    for step in LOWEST..=HIGHEST {
        let found = height(typical * exp(f64::from(step)))?;
        // Rounding alone must not find a drift.
        if found < best.0 - 1e-9 * (1.0 + fabs(best.0)) {
            best = (found, Some(step));
        }
    }
    let Some(step) = best.1 else { return Ok(0.0) };
    let middle = f64::from(step);
    let power = lowest(|power| height(typical * exp(power)), middle - 1.0, middle + 1.0, 1e-10)?;
    Ok(typical * exp(power))
}

fn mean_variance(stops: &[Stop]) -> f64 {
    let variances: Vec<f64> =
        stops.iter().filter_map(|stop| stop.reading.map(|(_, variance)| variance)).collect();
    crate::numeric::sum::sum(variances.iter().copied()) / variances.len() as f64
}

formula! {
    "statistics.local_level_fit",
    /// What drift and what scatter explain the readings best, if their variances are known only in proportion?
    ///
    /// # Formula
    /// Maximum of [`local_level_concentrated`] over the relative drift; the scale follows.
    ///
    /// # Domain
    /// At least three readings, not all equal. Some dozens are needed for a drift worth having.
    ///
    /// # Errors
    /// `not_enough_data`, `zero_spread`, `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Durbin & Koopman 2012, chapter 2 (row `statistics.local_level_fit`).
    ///
    /// # Examples
    /// ```
    /// use bismar::quantity::Day;
    /// use bismar::statistics::{Reading, local_level_fit};
    ///
    /// let values = [100.0, 102.0, 99.0, 102.0, 99.0, 101.0];
    /// let mut readings = Vec::new();
    /// for (day, value) in (0..).zip(values) {
    ///     readings.push(Reading::new(Day::from_number(day)?, value, 1.0));
    /// }
    /// assert!(local_level_fit(&readings)?.drift_at_zero);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn local_level_fit(readings: &[Reading]) -> Result<LevelFit, Error> {
        let stops = stops(readings, &[], LEAST)?;
        let run = |drift: f64| forward(&stops, drift, super::Outliers::Trusted);
        concentrated(&run(0.0)).ok_or_else(no_scatter)?;
        let height = |drift: f64| concentrated(&run(drift)).map(|(_, value)| -value).ok_or_else(no_scatter);
        let relative = best_drift(mean_variance(&stops), height)?;
        let (scale, value) = concentrated(&run(relative)).ok_or_else(no_scatter)?;
        let count = readings.len() as f64 - 1.0;
        let constant = 0.5 * count * (ln(core::f64::consts::TAU) + 1.0);
        Ok(LevelFit {
            scale: finite("readings", scale)?,
            drift: finite("readings", relative * scale)?,
            log_likelihood: finite("readings", value - constant)?,
            drift_at_zero: relative <= 0.0,
        })
    }
    source: DURBIN_KOOPMAN_2012, place: "chapter 2", standing: Published, seen: Memory,
}

formula! {
    "statistics.local_level_drift",
    /// How fast does the level wander, if the variances of the readings are known?
    ///
    /// # Formula
    /// Maximum of the log likelihood of [`local_level`](super::local_level) over the drift.
    ///
    /// # Domain
    /// At least three readings.
    ///
    /// # Errors
    /// `not_enough_data`, `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Durbin & Koopman 2012, chapter 2 (row `statistics.local_level_drift`).
    ///
    /// # Examples
    /// ```
    /// use bismar::quantity::Day;
    /// use bismar::statistics::{Reading, local_level_drift};
    ///
    /// let mut readings = Vec::new();
    /// for (day, value) in (0..).zip([100.0, 105.0, 110.0, 116.0, 119.0]) {
    ///     readings.push(Reading::new(Day::from_number(day)?, value, 1.0));
    /// }
    /// assert!(local_level_drift(&readings)?.drift > 10.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn local_level_drift(readings: &[Reading]) -> Result<LevelFit, Error> {
        let stops = stops(readings, &[], LEAST)?;
        let run = |drift: f64| log_likelihood(&forward(&stops, drift, super::Outliers::Trusted));
        let drift = best_drift(mean_variance(&stops), |drift| Ok(-run(drift)))?;
        Ok(LevelFit {
            scale: 1.0,
            drift: finite("readings", drift)?,
            log_likelihood: finite("readings", run(drift))?,
            drift_at_zero: drift <= 0.0,
        })
    }
    source: DURBIN_KOOPMAN_2012, place: "chapter 2", standing: Published, seen: Memory,
}

formula! {
    "statistics.level_forecast",
    /// Where will a wandering level lie so many days on, with a band that widens as it should?
    ///
    /// # Formula
    /// `level +- z sqrt(P + drift * days + R)`; `P` variance of the level now, `R` variance of a reading (0 for the
    /// level itself).
    ///
    /// # Domain
    /// 0 to 36,525 days.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Durbin & Koopman 2012, section 2.8 (row `statistics.level_forecast`).
    ///
    /// # Examples
    /// ```
    /// let band = bismar::statistics::level_forecast(100.0, 1.0, 0.05, 60, 0.0, 0.95)?;
    /// assert!((band.high() - 103.92).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn level_forecast(
        level: f64,
        level_variance: f64,
        drift: f64,
        days: u32,
        reading_variance: f64,
        probability: f64
    ) -> Result<Interval, Error> {
        const MOST_DAYS: u32 = 36_525;
        if days > MOST_DAYS {
            return Err(Error::range(Code::OutOfRange, "days", days, 0.0, f64::from(MOST_DAYS), "days"));
        }
        let level = super::domain::number("level", level)?;
        let wander = not_negative("drift", drift)? * f64::from(days);
        let spread = positive("level_variance", level_variance)? + not_negative("reading_variance", reading_variance)?;
        let half = normal_reach(open_unit("probability", probability)?) * sqrt(wander + spread);
        Interval::new(level - half, level + half, probability)
    }
    source: DURBIN_KOOPMAN_2012, place: "section 2.8", standing: Published, seen: Memory,
}

rows![local_level_concentrated, local_level_fit, local_level_drift, level_forecast];
