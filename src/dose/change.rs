//! This week against the lifter's own past weeks.

use alloc::vec::Vec;

use super::daily::DailyLoad;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::source::{OURS, default_of, formula, rows};

/// Middle value, or mean of the two middle ones; none of nothing. Sorts the values.
pub(super) fn median(values: &mut [f64]) -> Option<f64> {
    crate::numeric::sort::sort_numbers(values);
    let upper = *values.get(values.len() / 2)?;
    let lower = *values.get(values.len().saturating_sub(1) / 2)?;
    Some((lower + upper) / 2.0)
}

/// How the band is drawn. All numbers are our choice.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct BandOptions {
    /// Past weeks looked at, the latest: 12.
    pub weeks: u16,
    /// Fewest trained weeks among them for a band: 6.
    pub fewest: u16,
    /// Half width of the band in robust standard deviations: 2.
    pub reach: f64,
    /// The deviation is taken as at least this share of the centre, or a steady lifter's band would close: 0.1.
    pub smallest_spread_share: f64,
    /// A past week below this share of the centre is a break, not training: 0.5.
    pub break_share: f64,
    /// So many weeks after a break nothing is said: 2.
    pub quiet_weeks: u16,
}

impl Default for BandOptions {
    fn default() -> BandOptions {
        BandOptions {
            weeks: 12,
            fewest: 6,
            reach: 2.0,
            smallest_spread_share: 0.1,
            break_share: 0.5,
            quiet_weeks: 2,
        }
    }
}

default_of! {
    "dose.band_options_default",
    /// How the band over a lifter's own weeks is made where a caller names nothing else.
    band_options_default: BandOptions;
    source: OURS, place: "a robust band over the lifter's own weeks", standing: OurChoice, seen: NotApplicable,
}

impl BandOptions {
    fn check(&self) -> Result<(), Error> {
        numeric::within(Code::OutOfRange, "reach", self.reach, 0.0, 10.0, "standard deviations")?;
        numeric::within(Code::OutOfRange, "smallest_spread_share", self.smallest_spread_share, 0.0, 1.0, "")?;
        numeric::within(Code::OutOfRange, "break_share", self.break_share, 0.0, 1.0, "")?;
        if self.fewest >= 3 && self.fewest <= self.weeks {
            Ok(())
        } else {
            Err(Error::new(Code::OutOfRange, "fewest", self.fewest, Allowed::rule("from 3 to weeks")))
        }
    }
}

/// Where the week lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum WeekVerdict {
    /// Inside the lifter's own band.
    Usual,
    /// Above it.
    MoreThanUsual,
    /// Below it.
    LessThanUsual,
    /// Nothing is said, for this reason.
    Quiet(QuietReason),
}

/// Why nothing is said about a week.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum QuietReason {
    /// The week has a day that was not recorded.
    NotRecorded,
    /// The week was rested; a rest needs no comment.
    Rested,
    /// Too few trained weeks to know what is usual.
    ShortHistory,
    /// A break ended so recently that any training looks like a jump.
    AfterBreak,
}

/// A week against the band.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WeekChange {
    /// Where the week lies.
    pub verdict: WeekVerdict,
    /// Middle of the trained weeks.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub centre: Option<f64>,
    /// Lower edge of the band.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub low: Option<f64>,
    /// Upper edge of the band.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub high: Option<f64>,
    /// This week over the centre; absent where nothing is said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub times_usual: Option<f64>,
    /// Trained weeks that made the band.
    pub trained_weeks: u16,
}

/// Median absolute deviation to standard deviation of a normal distribution: `1 / Phi^-1(3/4)`.
const NORMAL_CONSISTENCY: f64 = 1.482_602_218_505_602;

/// Centre and half width of a band over trained weeks.
fn band(trained: &[f64], options: &BandOptions) -> Option<(f64, f64)> {
    let mut sorted = trained.to_vec();
    let centre = median(&mut sorted)?;
    let mut distances: Vec<f64> = trained.iter().map(|week| numeric::fabs(week - centre)).collect();
    let spread = median(&mut distances)? * NORMAL_CONSISTENCY;
    Some((centre, options.reach * numeric::larger(spread, options.smallest_spread_share * centre)))
}

/// Whether one of the latest weeks was a break: rested, unknown, or far below the centre.
fn after_break(past: &[DailyLoad], centre: f64, options: &BandOptions) -> bool {
    let is_break = |week: &DailyLoad| week.value().is_none_or(|load| load < options.break_share * centre);
    past.iter().rev().take(usize::from(options.quiet_weeks)).any(is_break)
}

fn verdict(load: f64, low: f64, high: f64) -> WeekVerdict {
    if load > high {
        WeekVerdict::MoreThanUsual
    } else if load < low {
        WeekVerdict::LessThanUsual
    } else {
        WeekVerdict::Usual
    }
}

formula! {
    "dose.week_change",
    /// Is this week's total out of the ordinary for this lifter?
    ///
    /// # Formula
    /// Band: median of the lifter's own trained weeks, plus and minus `reach` times the larger of 1.4826 times
    /// their median absolute deviation and a share of the median. Rested weeks and weeks far below the centre are
    /// breaks and make no part of the band.
    ///
    /// # Domain
    /// Nothing is said with few trained weeks, in a rested or incomplete week, or soon after a break, when any
    /// training looks like a jump against a small denominator. More or less than usual is a description, not a
    /// warning.
    ///
    /// # Errors
    /// `out_of_range` for the options.
    ///
    /// # Source
    /// Our choice; the median absolute deviation and its factor are standard.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{BandOptions, DailyLoad, WeekVerdict, week_change};
    ///
    /// let past = [900.0, 1000.0, 1100.0, 950.0, 1050.0, 1000.0].map(|load| DailyLoad::recorded(load));
    /// let past = past.into_iter().collect::<Result<Vec<_>, _>>()?;
    /// let change = week_change(&past, DailyLoad::recorded(1500.0)?, BandOptions::default())?;
    /// assert_eq!(change.verdict, WeekVerdict::MoreThanUsual);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn week_change(past: &[DailyLoad], week: DailyLoad, options: BandOptions) -> Result<WeekChange, Error> {
        options.check()?;
        let skipped = past.len().saturating_sub(usize::from(options.weeks));
        let past = past.get(skipped..).unwrap_or_default();
        let known: Vec<f64> = past.iter().filter_map(|week| week.value()).filter(|load| *load > 0.0).collect();
        let first = median(&mut known.clone()).unwrap_or(0.0);
        let trained: Vec<f64> = known.into_iter().filter(|load| *load >= options.break_share * first).collect();
        let trained_weeks = trained.len() as u16;
        let silent = |reason| WeekChange {
            verdict: WeekVerdict::Quiet(reason), centre: None, low: None, high: None, times_usual: None, trained_weeks,
        };
        let Some((centre, reach)) = band(&trained, &options).filter(|_| trained_weeks >= options.fewest) else {
            return Ok(silent(QuietReason::ShortHistory));
        };
        let (low, high) = (numeric::larger(centre - reach, 0.0), centre + reach);
        let known_band = |quiet| WeekChange { centre: Some(centre), low: Some(low), high: Some(high), ..silent(quiet) };
        Ok(match week {
            DailyLoad::NotRecorded => known_band(QuietReason::NotRecorded),
            DailyLoad::Rested => known_band(QuietReason::Rested),
            DailyLoad::Recorded(_) if after_break(past, centre, &options) => known_band(QuietReason::AfterBreak),
            DailyLoad::Recorded(load) => WeekChange {
                verdict: verdict(load.value(), low, high),
                times_usual: Some(numeric::finite("week", load.value() / centre)?),
                ..known_band(QuietReason::Rested)
            },
        })
    }
    source: OURS, place: "a robust band over the lifter's own weeks", standing: OurChoice, seen: NotApplicable,
}

rows![week_change, band_options_default];
