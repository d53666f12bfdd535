//! How fast do level and slope wander? Maximum likelihood.

use super::domain::{not_negative, open_unit};
use super::reading::{Reading, stops};
use super::trend_filter::{on_two_days, trend_likelihood};
use super::trend_state::TrendState;
use crate::error::{Code, Error};
use crate::numeric::normal::normal_reach;
use crate::numeric::search::lowest_corner;
use crate::numeric::{exp, finite, sqrt};
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const DURBIN_KOOPMAN_2012: Source = Source {
    id: "durbin-koopman-2012",
    citation: "Durbin J, Koopman SJ. Time Series Analysis by State Space Methods, 2nd ed. Oxford University Press, 2012",
    doi: None,
};

/// Maximum-likelihood drifts of a trend.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TrendFit {
    /// Variance by which the level moves per day beside its slope.
    pub level_drift: f64,
    /// Variance by which the slope moves per day.
    pub slope_drift: f64,
    /// Log likelihood there.
    pub log_likelihood: f64,
}

/// Fewest readings to estimate two drifts from.
const LEAST: usize = 5;
/// Steps of the search.
const MOST_STEPS: u32 = 600;
/// Drifts below this part of the readings' variance per day count as none.
const LEAST_POWER: f64 = -30.0;

/// `exp(power)` times the unit, 0 where the power is very low, so that the search may find "none".
fn drift(unit: f64, power: f64) -> f64 {
    if power < LEAST_POWER { 0.0 } else { unit * exp(crate::numeric::smaller(power, -LEAST_POWER)) }
}

formula! {
    "statistics.local_trend_fit",
    /// What drifts of level and slope explain the readings best, if their variances are known?
    ///
    /// # Formula
    /// Maximum of the log likelihood of [`local_trend`](super::local_trend) over both drifts, by the method of Nelder &
    /// Mead on their logarithms.
    ///
    /// # Domain
    /// At least five readings on at least two days. With few readings a drift of none is common.
    ///
    /// # Errors
    /// `not_enough_data`, `did_not_converge`, `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Durbin & Koopman 2012, chapter 7 (row `statistics.local_trend_fit`).
    ///
    /// # Examples
    /// ```
    /// use bismar::quantity::Day;
    /// use bismar::statistics::{Reading, local_trend_fit};
    ///
    /// let mut readings = Vec::new();
    /// for (day, value) in (0..).zip([100.0, 101.1, 102.0, 103.2, 103.9, 105.0]) {
    ///     readings.push(Reading::new(Day::from_number(day)?, value, 0.04));
    /// }
    /// assert!(local_trend_fit(&readings)?.slope_drift < 0.01);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn local_trend_fit(readings: &[Reading]) -> Result<TrendFit, Error> {
        on_two_days(readings)?;
        let stops = stops(readings, &[], LEAST)?;
        let variances = stops.iter().filter_map(|stop| stop.reading.map(|(_, variance)| variance));
        let unit = crate::numeric::sum::sum(variances) / readings.len() as f64;
        let height = |powers: &[f64]| -> Result<f64, Error> {
            let (level, slope) = match powers {
                [level, slope] => (drift(unit, *level), drift(unit, *slope)),
                _ => (0.0, 0.0),
            };
            Ok(-trend_likelihood(&stops, level, slope))
        };
        let start = [-4.0, -9.0];
        let (powers, found) = lowest_corner(height, &start, 2.0, 1e-12, MOST_STEPS)?;
        let (level, slope) = match powers.as_slice() {
            [level, slope] => (*level, *slope),
            _ => (LEAST_POWER, LEAST_POWER),
        };
        Ok(TrendFit {
            level_drift: finite("readings", drift(unit, level))?,
            slope_drift: finite("readings", drift(unit, slope))?,
            log_likelihood: finite("readings", -found)?,
        })
    }
    source: DURBIN_KOOPMAN_2012, place: "chapter 7", standing: Published, seen: Memory,
    domain: "at least five readings",
}

formula! {
    "statistics.trend_forecast",
    /// Where will the level lie so many days on if the trend goes on, with a band that widens as it should?
    ///
    /// # Formula
    /// `level + days * slope +- z sqrt(V + R)`; `V` variance of the level ahead (level, slope, their covariance, and what
    /// both drifts add over the days), `R` variance of a reading (0 for the level itself).
    ///
    /// # Domain
    /// 0 to 36,525 days. No trend of training goes on for long: the band says how little is known, not what limits it.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Durbin & Koopman 2012, chapter 3 (row `statistics.trend_forecast`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{TrendState, trend_forecast};
    ///
    /// let now = TrendState::default()
    ///     .with_level(100.0)
    ///     .with_slope(0.1)
    ///     .with_level_variance(1.0)
    ///     .with_slope_variance(0.0025)
    ///     .with_covariance(0.0);
    /// let band = trend_forecast(now, 0.0, 0.0, 20, 0.0, 0.95)?;
    /// assert!((band.low() + band.high() - 204.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn trend_forecast(
        state: TrendState,
        level_drift: f64,
        slope_drift: f64,
        days: u32,
        reading_variance: f64,
        probability: f64
    ) -> Result<Interval, Error> {
        const MOST_DAYS: u32 = 36_525;
        if days > MOST_DAYS {
            return Err(Error::range(Code::OutOfRange, "days", days, 0.0, f64::from(MOST_DAYS), "days"));
        }
        let drifts = (not_negative("level_drift", level_drift)?, not_negative("slope_drift", slope_drift)?);
        let (level, variance) = state.level_ahead(f64::from(days), drifts.0, drifts.1);
        let total = not_negative("state", variance)? + not_negative("reading_variance", reading_variance)?;
        let half = normal_reach(open_unit("probability", probability)?) * sqrt(total);
        Interval::new(level - half, level + half, probability)
    }
    source: DURBIN_KOOPMAN_2012, place: "chapter 3", standing: Published, seen: Memory,
}

rows![local_trend_fit, trend_forecast];
