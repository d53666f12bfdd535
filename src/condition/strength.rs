//! Strength over months without ever testing a maximum: level, slope, and whether the slope is real.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::evidence::{StrengthEvidence, readings, tamed};
use super::mixture::{Possibility, above_zero, interval, mean};
use super::trend_report::{Slope, StrengthForecast, StrengthLevel, TrendReport, TrendVerdict};
use crate::error::{Code, Error};
use crate::numeric::normal::normal_reach;
use crate::numeric::{exp, ln, sqrt};
use crate::quantity::{Day, Interval};
use crate::source::{OURS, Source, constant, default_of, formula, rows};
use crate::statistics::{
    CHANGE_MULTIPLIER, CLIP_AT, Outliers, Reading, TrendState, local_level, local_level_fit, trend_end,
};

const BANYARD_2017: Source = Source {
    id: "banyard-2017",
    citation: "Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017",
    doi: Some("10.1519/JSC.0000000000001657"),
};

constant! {
    "condition.day_to_day_maximum",
    /// Standard error of measurement of a tested one-repetition maximum from day to day, in kg, at 140 kg.
    pub const DAY_TO_DAY_MAXIMUM: f64 = 2.9;
    source: BANYARD_2017, place: "abstract: CV 2.1 %, SEM 2.9 kg", standing: Published, seen: Read,
    population: "trained men, back squat",
}

constant! {
    "condition.trend_window",
    /// Days that a slope is taken over: the eight weeks of a block.
    pub const TREND_WINDOW: u32 = 56;
    source: OURS, place: "a block", standing: OurChoice, seen: NotApplicable,
}

/// How a trend is read.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct TrendOptions {
    /// Days up to today that the slope is taken over.
    pub window_days: u32,
    /// Level of all intervals.
    pub level: f64,
    /// Days ahead to look.
    pub forecast_days: Vec<u32>,
}

impl Default for TrendOptions {
    fn default() -> TrendOptions {
        TrendOptions { window_days: TREND_WINDOW, level: 0.95, forecast_days: Vec::from([28, 56, 84]) }
    }
}

default_of! {
    "condition.trend_options_default",
    /// Window, level and days ahead of a trend where a caller names none.
    trend_options_default: TrendOptions;
    source: OURS, place: "level, slope and their intervals", standing: OurChoice, seen: NotApplicable,
}

/// Fewest estimates for a slope.
const LEAST_ESTIMATES: usize = 4;
/// Fewest different days.
const LEAST_DAYS: usize = 3;
/// Fewest days from first to last.
const LEAST_SPAN: i32 = 14;
/// Fewest estimates to learn drift and scatter of the path from.
const LEAST_TO_LEARN: usize = 10;
/// Drift of the path before that, as a part of the variance of an estimate per day: our choice.
const USUAL_DRIFT: f64 = 0.005;

/// How much of the stated variance the estimates may really scatter by: from 1/64 (nearly all of the error is
/// shared by all estimates of the lifter) to 8 (they scatter more than stated). Each as likely before.
const SCALE_POWERS: core::ops::RangeInclusive<i32> = -6..=3;
/// How much the level may wander beside its slope, in variances of an estimate per day, and how likely before.
/// Checked on simulated lifters: intervals of the slope cover as stated.
const DRIFTS: [(f64, f64); 4] = [(0.0, 10.0), (0.001, 1.0), (0.01, 1.0), (0.1, 1.0)];

/// One possibility of scatter and drift with the state at the end of the window under it.
struct Candidate {
    log_weight: f64,
    scale: f64,
    drift: f64,
    state: TrendState,
}

fn mean_variance(readings: &[Reading]) -> f64 {
    crate::numeric::sum::sum(readings.iter().map(|reading| reading.variance)) / readings.len() as f64
}

fn candidates(window: &[Reading]) -> Result<Vec<Candidate>, Error> {
    let unit = mean_variance(window);
    let mut found = Vec::new();
    for power in SCALE_POWERS {
        let scale = exp(f64::from(power) * core::f64::consts::LN_2);
        let scaled: Vec<Reading> =
            window.iter().map(|reading| Reading { variance: scale * reading.variance, ..*reading }).collect();
        for (relative, weight) in DRIFTS {
            let drift = relative * scale * unit;
            let (state, likelihood) = trend_end(&scaled, drift, 0.0)?;
            found.push(Candidate { log_weight: likelihood + ln(weight), scale, drift, state });
        }
    }
    Ok(found)
}

/// What each candidate says of the level so many days on; `shared` is the variance common to all estimates.
fn levels(candidates: &[Candidate], days: f64, unit: f64) -> Vec<Possibility> {
    let one = |candidate: &Candidate| {
        let (mean, variance) = candidate.state.level_ahead(days, candidate.drift, 0.0);
        let variance = variance + shared(candidate.scale, unit);
        Possibility { log_weight: candidate.log_weight, mean, variance }
    };
    candidates.iter().map(one).collect()
}

/// The part of the stated variance that does not show as scatter: an error that all estimates of the lifter share.
fn shared(scale: f64, unit: f64) -> f64 {
    crate::numeric::larger(1.0 - scale, 0.0) * unit
}

fn slopes(candidates: &[Candidate]) -> Vec<Possibility> {
    let one = |candidate: &Candidate| Possibility {
        log_weight: candidate.log_weight,
        mean: candidate.state.slope,
        variance: candidate.state.slope_variance,
    };
    candidates.iter().map(one).collect()
}

const WEEK: f64 = 7.0;

fn slope(candidates: &[Candidate], window: &[Reading], level: f64) -> Result<Slope, Error> {
    let daily = slopes(candidates);
    let range = interval(&daily, level)?;
    let scatter: Vec<Possibility> = candidates
        .iter()
        .map(|one| Possibility {
            log_weight: one.log_weight,
            mean: one.scale * mean_variance(window),
            variance: 1.0,
        })
        .collect();
    Ok(Slope {
        kg_per_week: WEEK * mean(&daily),
        interval: Interval::new(WEEK * range.low(), WEEK * range.high(), level)?,
        probability_rising: above_zero(&daily),
        smallest_real_difference: CHANGE_MULTIPLIER * core::f64::consts::SQRT_2 * sqrt(mean(&scatter)),
        estimates: window.len() as u32,
    })
}

/// Whether the window holds enough to speak of a slope.
fn enough(window: &[Reading]) -> bool {
    let days = window.chunk_by(|a, b| a.day == b.day).count();
    let span = match (window.first(), window.last()) {
        (Some(first), Some(last)) => last.day.since(first.day),
        _ => 0,
    };
    window.len() >= LEAST_ESTIMATES && days >= LEAST_DAYS && span >= LEAST_SPAN
}

/// The level over the whole history: drift and scatter learned where there is enough, outliers clipped.
fn path(readings: &[Reading]) -> Result<(Vec<StrengthLevel>, f64), Error> {
    let unit = mean_variance(readings);
    let learned = (readings.len() >= LEAST_TO_LEARN).then(|| local_level_fit(readings).ok()).flatten();
    // Equal estimates show no scatter at all; the smallest believed is the same as for the slope.
    let least = exp(f64::from(*SCALE_POWERS.start()) * core::f64::consts::LN_2);
    let (scale, drift) = match learned {
        Some(fit) => (crate::numeric::larger(fit.scale, least), fit.drift),
        None => (1.0, USUAL_DRIFT * unit),
    };
    let scaled: Vec<Reading> =
        readings.iter().map(|reading| Reading { variance: scale * reading.variance, ..*reading }).collect();
    let found = local_level(&scaled, drift, Outliers::Clipped { at: CLIP_AT }, &[])?;
    let stop = |stop: &crate::statistics::LevelStop| StrengthLevel {
        day: stop.day,
        level: stop.smoothed,
        standard_error: sqrt(stop.smoothed_variance),
        form: stop.standardised,
    };
    Ok((found.stops.iter().map(stop).collect(), shared(scale, unit)))
}

fn level_now(path: &[StrengthLevel], shared: f64, level: f64) -> Result<Option<Interval>, Error> {
    let Some(last) = path.last() else { return Ok(None) };
    let half = normal_reach(level) * sqrt(last.standard_error * last.standard_error + shared);
    Interval::new(last.level - half, last.level + half, level).map(Some)
}

impl TrendOptions {
    /// Checks what a caller may have named.
    pub(crate) fn check(&self) -> Result<(), Error> {
        checked(self)
    }
}

fn checked(options: &TrendOptions) -> Result<(), Error> {
    crate::statistics::domain::open_unit("level", options.level)?;
    let range = crate::numeric::within;
    range(Code::OutOfRange, "window_days", f64::from(options.window_days), 14.0, 1100.0, "days")?;
    range(
        Code::OutOfRange,
        "forecast_days",
        options.forecast_days.len() as f64,
        0.0,
        60.0,
        "days to look at",
    )?;
    for days in &options.forecast_days {
        range(Code::OutOfRange, "forecast_days", f64::from(*days), 0.0, 3660.0, "days")?;
    }
    Ok(())
}

formula! {
    "condition.trend",
    /// Is the lifter getting stronger, or is it noise?
    ///
    /// # Formula
    /// An estimate more than 4 standard errors from the median of its neighbours (3 each side, within 60 days) counts as
    /// if it lay there. Level over the whole history: wandering level with clipped outliers, drift and scatter by maximum likelihood.
    /// Slope over the window: level with a constant slope that also wanders, averaged over ten sizes of scatter and four
    /// of drift by how well they explain the estimates. Rising or falling if the interval of the slope leaves out 0.
    ///
    /// # Domain
    /// At least 4 estimates on 3 days over 14 days in the window, up to 20,000 in all. Estimates later than `today` are
    /// left out. In the first weeks of a new lift, gains are mostly learning.
    ///
    /// # Errors
    /// `out_of_range` for an estimate or standard error outside its range or options outside theirs; `not_finite`.
    ///
    /// # Source
    /// This project's choice of published parts (row `condition.trend`).
    ///
    /// # Examples
    /// ```
    /// use bismar::condition::{EvidenceKind, StrengthEvidence, TrendOptions, TrendVerdict, trend};
    /// use bismar::quantity::Day;
    ///
    /// let mut evidence = Vec::new();
    /// for (week, estimate) in (0..).zip([100.0, 101.5, 103.0, 104.0, 106.0, 107.0, 108.5]) {
    ///     let day = Day::from_number(7 * week)?;
    ///     let kind = EvidenceKind::RepsAndEffort;
    ///     evidence.push(StrengthEvidence::new(day, estimate, 3.0, kind));
    /// }
    /// let report = trend(&evidence, Day::from_number(45)?, &TrendOptions::default())?;
    /// assert_eq!(report.verdict, TrendVerdict::Rising);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn trend(evidence: &[StrengthEvidence], today: Day, options: &TrendOptions) -> Result<TrendReport, Error> {
        checked(options)?;
        let past: Vec<StrengthEvidence> = evidence.iter().filter(|one| one.day <= today).copied().collect();
        let (all, outliers) = tamed(&readings(&past)?);
        let begins = |day: Day| today.since(day) <= options.window_days as i32;
        let kinds: Vec<_> = past.iter().filter(|one| begins(one.day)).map(|one| one.kind).collect();
        let mixed_kinds = kinds.windows(2).any(|pair| matches!(pair, [a, b] if a != b));
        let window: Vec<Reading> = all.iter().filter(|reading| begins(reading.day)).copied().collect();
        let (path, common) = if all.is_empty() { (Vec::new(), 0.0) } else { path(&all)? };
        let mut report = TrendReport {
            verdict: TrendVerdict::NotEnoughHistory,
            level_now: level_now(&path, common, options.level)?,
            slope: None,
            path,
            forecast: Vec::new(),
            mixed_kinds,
            outliers,
        };
        if enough(&window) {
            judge(&mut report, &window, today, options)?;
        }
        Ok(report)
    }
    source: OURS, place: "level, slope and their intervals", standing: OurChoice, seen: NotApplicable,
    domain: "at least 4 estimates over 14 days",
}

fn judge(
    report: &mut TrendReport,
    window: &[Reading],
    today: Day,
    options: &TrendOptions,
) -> Result<(), Error> {
    let candidates = candidates(window)?;
    let slope = slope(&candidates, window, options.level)?;
    report.verdict = if slope.interval.low() > 0.0 {
        TrendVerdict::Rising
    } else if slope.interval.high() < 0.0 {
        TrendVerdict::Falling
    } else {
        TrendVerdict::WithinNoise
    };
    report.slope = Some(slope);
    let last = window.last().map_or(today, |reading| reading.day);
    for days in &options.forecast_days {
        let day = today.plus(*days as i32)?;
        let ahead = levels(&candidates, f64::from(day.since(last)), mean_variance(window));
        report.forecast.push(StrengthForecast {
            day,
            level: mean(&ahead),
            band: interval(&ahead, options.level)?,
        });
    }
    Ok(())
}

rows![DAY_TO_DAY_MAXIMUM, TREND_WINDOW, trend, trend_options_default];
