//! Recent versus usual load: two numbers first, their quotient only with what was said against it.

use alloc::vec::Vec;

use super::daily::DailyLoad;
use super::rolling::{Fading, WILLIAMS_2017, WeightedStart, rolling_load, weighted_load};
use super::set::above_zero;
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::source::{OURS, Source, default_of, formula, rows};

const WINDT_GABBETT_2019: Source = Source {
    id: "windt-gabbett-2019",
    citation: "Windt J, Gabbett TJ. Is it all for naught? What does mathematical coupling mean for acute:chronic workload ratios? Br J Sports Med 2019;53(16):988-990",
    doi: None,
};

const LOLLI_2019: Source = Source {
    id: "lolli-2019",
    citation: "Lolli L, Batterham AM, Hawkins R, et al. Mathematical coupling causes spurious correlation within the conventional acute-to-chronic workload ratio calculations. Br J Sports Med 2019;53(15):921-922",
    doi: None,
};

/// How recent and usual load are taken.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum RatioMethod {
    /// Plain means; the recent days are part of the usual ones.
    RollingCoupled,
    /// Plain means; usual days end where recent days begin.
    RollingUncoupled,
    /// Means that fade, by span, from this start.
    Weighted(WeightedStart),
}

/// Windows, method and guards of a ratio.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RatioOptions {
    /// Method.
    pub method: RatioMethod,
    /// Days that count as recent.
    pub recent_days: u16,
    /// Days that count as usual, recent ones included; no ratio with fewer days of history.
    pub usual_days: u16,
    /// No ratio while usual load is below this share of the lifter's own typical usual load: 0.75 (our choice).
    pub smallest_usual_share: f64,
    /// Days over which the typical usual load is looked for: 182 (our choice).
    pub typical_days: u16,
}

impl RatioOptions {
    const fn of(method: RatioMethod) -> RatioOptions {
        RatioOptions { method, recent_days: 7, usual_days: 28, smallest_usual_share: 0.75, typical_days: 182 }
    }

    /// Means over 7 and 28 days, the 7 inside the 28.
    #[must_use]
    pub const fn rolling_coupled() -> RatioOptions {
        RatioOptions::of(RatioMethod::RollingCoupled)
    }

    /// Means over 7 days and over the 21 days before them.
    #[must_use]
    pub const fn rolling_uncoupled() -> RatioOptions {
        RatioOptions::of(RatioMethod::RollingUncoupled)
    }

    /// Fading means with spans of 7 and 28 days, started at the first load.
    #[must_use]
    pub const fn weighted_williams_2017() -> RatioOptions {
        RatioOptions::of(RatioMethod::Weighted(WeightedStart::FirstLoad))
    }

    fn check(&self) -> Result<(), Error> {
        numeric::within(Code::OutOfRange, "smallest_usual_share", self.smallest_usual_share, 0.0, 1.0, "")?;
        if self.recent_days >= 1 && self.recent_days < self.usual_days {
            Ok(())
        } else {
            let rule = Allowed::rule("at least 1, and fewer than usual_days");
            Err(Error::new(Code::OutOfRange, "recent_days", self.recent_days, rule))
        }
    }
}

impl Default for RatioOptions {
    fn default() -> RatioOptions {
        RatioOptions::rolling_uncoupled()
    }
}

default_of! {
    "dose.ratio_options_default",
    /// Which recent-versus-usual ratio is taken where a caller names none: the recent days lie outside the usual ones.
    ratio_options_default: RatioOptions;
    source: OURS, place: "which of the published ways", standing: OurChoice, seen: NotApplicable,
}

/// The quotient, or why there is none.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum RatioAnswer {
    /// Recent over usual.
    Value(f64),
    /// None.
    Undefined(RatioGap),
}

/// Why there is no quotient.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum RatioGap {
    /// The last day was not recorded.
    DayNotRecorded,
    /// Fewer days without a gap than usual days.
    ShortHistory,
    /// Usual load is 0.
    UsualLoadZero,
    /// Usual load is small against the lifter's own typical level, as after a holiday.
    UsualLoadSmall,
}

/// Recent and usual load at the end of a series of days.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RecentVersusUsual {
    /// Mean daily load of the recent days.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub recent: Option<f64>,
    /// Mean daily load of the usual days.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub usual: Option<f64>,
    /// Recent over usual, where it means anything.
    pub ratio: RatioAnswer,
    /// Median of the earlier usual loads: the lifter's own typical level.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub typical: Option<f64>,
    /// Days on record without a gap, up to the last.
    pub history_days: u32,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
    /// How it was taken.
    pub options: RatioOptions,
}

/// The days after the last gap.
fn unbroken(days: &[DailyLoad]) -> &[DailyLoad] {
    let start = days.iter().rposition(|day| *day == DailyLoad::NotRecorded).map_or(0, |gap| gap + 1);
    days.get(start..).unwrap_or_default()
}

/// Usual loads, day by day.
fn usual_series(days: &[DailyLoad], options: &RatioOptions) -> Result<Vec<Option<f64>>, Error> {
    match options.method {
        RatioMethod::RollingCoupled => rolling_load(days, options.usual_days),
        RatioMethod::RollingUncoupled => {
            let mut earlier = rolling_load(days, options.usual_days - options.recent_days)?;
            let shift = usize::from(options.recent_days).min(earlier.len());
            earlier.rotate_right(shift);
            earlier.iter_mut().take(shift).for_each(|usual| *usual = None);
            Ok(earlier)
        }
        RatioMethod::Weighted(start) => weighted_load(days, Fading::Span(options.usual_days), start),
    }
}

fn recent_series(days: &[DailyLoad], options: &RatioOptions) -> Result<Vec<Option<f64>>, Error> {
    match options.method {
        RatioMethod::Weighted(start) => weighted_load(days, Fading::Span(options.recent_days), start),
        _ => rolling_load(days, options.recent_days),
    }
}

/// Middle of the usual loads before today, over the days chosen; none before there is any.
fn typical_level(usual: &[Option<f64>], options: &RatioOptions) -> Option<f64> {
    let full = usize::from(options.usual_days) - 1;
    let earlier = usual.get(full..usual.len().saturating_sub(1)).unwrap_or_default();
    let skipped = earlier.len().saturating_sub(usize::from(options.typical_days));
    let mut values: Vec<f64> = earlier.iter().skip(skipped).filter_map(|value| *value).collect();
    super::change::median(&mut values)
}

fn quotient(recent: f64, usual: f64, typical: Option<f64>, options: &RatioOptions) -> RatioAnswer {
    let small = typical.is_some_and(|typical| usual < options.smallest_usual_share * typical);
    let ratio = recent / usual;
    if usual <= 0.0 {
        RatioAnswer::Undefined(RatioGap::UsualLoadZero)
    } else if small || !ratio.is_finite() {
        RatioAnswer::Undefined(RatioGap::UsualLoadSmall)
    } else {
        RatioAnswer::Value(numeric::tidy(ratio))
    }
}

/// Weighted means carry less than 5 % of their start after this many spans (our choice): `exp(-2 * 1.5)`.
const SPANS_TO_FORGET_START: f64 = 1.5;

fn cautions(answer: RatioAnswer, history: u32, options: &RatioOptions) -> Vec<Caution> {
    let mut list = Vec::new();
    match options.method {
        RatioMethod::RollingUncoupled => {}
        RatioMethod::RollingCoupled => list.push(Caution::SharedDays),
        RatioMethod::Weighted(_) => {
            list.push(Caution::SharedDays);
            if f64::from(history) < SPANS_TO_FORGET_START * f64::from(options.usual_days) {
                list.push(Caution::StartValueMatters);
            }
        }
    }
    list.extend([Caution::RescaledRecentLoad, Caution::NotCheckedInLifting]);
    match answer {
        RatioAnswer::Undefined(RatioGap::ShortHistory) => list.push(Caution::ShortHistory),
        RatioAnswer::Undefined(RatioGap::UsualLoadSmall | RatioGap::UsualLoadZero) => {
            list.push(Caution::UsualLoadSmall);
        }
        _ => {}
    }
    list
}

formula! {
    "dose.recent_versus_usual",
    /// How does the load of the last days compare with what is usual for this lifter?
    ///
    /// # Formula
    /// `recent` and `usual` are means of daily load (plain or fading, see [`RatioMethod`]); the ratio is their
    /// quotient. By default usual days end where recent days begin.
    ///
    /// # Domain
    /// No ratio without a full history free of gaps, at a usual load of 0, or while usual load is small against
    /// the lifter's own typical level: after a holiday it would rise by construction. Coupled over 7 and 28 days
    /// it cannot exceed 4. No level of it is called good or bad, and it foretells nothing.
    ///
    /// # Errors
    /// `out_of_range` for windows or the guard.
    ///
    /// # Source
    /// Williams et al. 2017 for fading means (their form recalled); coupled and uncoupled windows as in Windt and Gabbett 2019.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, RatioAnswer, RatioOptions, recent_versus_usual};
    ///
    /// let mut days = vec![DailyLoad::recorded(100.0)?; 21];
    /// days.extend([DailyLoad::recorded(150.0)?; 7]);
    /// let answer = recent_versus_usual(&days, RatioOptions::rolling_uncoupled())?;
    /// assert_eq!(answer.ratio, RatioAnswer::Value(1.5));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn recent_versus_usual(days: &[DailyLoad], options: RatioOptions) -> Result<RecentVersusUsual, Error> {
        options.check()?;
        let run = unbroken(days);
        let history = u32::try_from(run.len()).unwrap_or(u32::MAX);
        let usual_all = usual_series(run, &options)?;
        let recent = recent_series(run, &options)?.last().copied().flatten();
        let usual = usual_all.last().copied().flatten();
        let typical = typical_level(&usual_all, &options);
        let ratio = match (recent, usual) {
            _ if days.last() == Some(&DailyLoad::NotRecorded) => RatioAnswer::Undefined(RatioGap::DayNotRecorded),
            (Some(recent), Some(usual)) if history >= u32::from(options.usual_days) => {
                quotient(recent, usual, typical, &options)
            }
            _ => RatioAnswer::Undefined(RatioGap::ShortHistory),
        };
        let cautions = cautions(ratio, history, &options);
        Ok(RecentVersusUsual { recent, usual, ratio, typical, history_days: history, cautions, options })
    }
    source: WILLIAMS_2017, place: "ratio of two of its means; guards our choice", standing: Derived, seen: NotApplicable,
    domain: "at least 28 days without a gap",
}

/// Recent and usual days as numbers, recent fewer.
fn windows(recent_days: u16, usual_days: u16) -> Result<(f64, f64), Error> {
    let options = RatioOptions { recent_days, usual_days, ..RatioOptions::default() };
    options.check()?;
    Ok((f64::from(recent_days), f64::from(usual_days)))
}

formula! {
    "dose.uncoupled_from_coupled",
    /// What would a coupled ratio be if the recent days were left out of the usual ones?
    ///
    /// # Formula
    /// `(c - a) r / (c - a r)` with `a` recent and `c` usual days; `3 r / (4 - r)` for 7 and 28.
    ///
    /// # Domain
    /// Coupled ratios from 0 to below `c / a`, their ceiling. The two carry the same information.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Algebra; the point is made by Windt and Gabbett 2019.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::uncoupled_from_coupled;
    ///
    /// assert!((uncoupled_from_coupled(1.3, 7, 28)? - 1.4444).abs() < 5e-5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn uncoupled_from_coupled(ratio: f64, recent_days: u16, usual_days: u16) -> Result<f64, Error> {
        let (recent, usual) = windows(recent_days, usual_days)?;
        let ratio = numeric::within(Code::OutOfRange, "ratio", ratio, 0.0, usual / recent, "")?;
        let left = above_zero("ratio", usual - recent * ratio, usual, "below the ceiling usual_days / recent_days")
            .map_err(|_| Error::range(Code::OutOfRange, "ratio", ratio, 0.0, usual / recent, "(ceiling excluded)"))?;
        numeric::finite("ratio", (usual - recent) * ratio / left)
    }
    source: WINDT_GABBETT_2019, place: "algebra of the two ratios", standing: Derived, seen: NotApplicable,
}

formula! {
    "dose.coupled_from_uncoupled",
    /// What would an uncoupled ratio be with the recent days counted among the usual ones?
    ///
    /// # Formula
    /// `c r / (c - a + a r)`; `4 r / (3 + r)` for 7 and 28 days.
    ///
    /// # Domain
    /// Ratios of 0 and more.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Algebra; the point is made by Windt and Gabbett 2019.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::coupled_from_uncoupled;
    ///
    /// assert_eq!(coupled_from_uncoupled(3.0, 7, 28)?, 2.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn coupled_from_uncoupled(ratio: f64, recent_days: u16, usual_days: u16) -> Result<f64, Error> {
        let (recent, usual) = windows(recent_days, usual_days)?;
        let ratio = numeric::within(Code::OutOfRange, "ratio", ratio, 0.0, 1e9, "")?;
        numeric::finite("ratio", usual * ratio / (usual - recent + recent * ratio))
    }
    source: WINDT_GABBETT_2019, place: "algebra of the two ratios", standing: Derived, seen: NotApplicable,
}

formula! {
    "dose.coupling_correlation",
    /// How strongly do recent and coupled usual load go together when the weeks have nothing to do with each other?
    ///
    /// # Formula
    /// `sqrt(a / c)` for independent days of equal variance: 0.5 for 7 and 28 days.
    ///
    /// # Domain
    /// Fewer recent days than usual ones.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Theory behind Lolli et al. 2019, whose simulation of 1000 athletes gave 0.52.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::coupling_correlation(7, 28)?, 0.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn coupling_correlation(recent_days: u16, usual_days: u16) -> Result<f64, Error> {
        let (recent, usual) = windows(recent_days, usual_days)?;
        Ok(numeric::sqrt(recent / usual))
    }
    source: LOLLI_2019, place: "simulation; theory by arithmetic", standing: Derived, seen: NotApplicable,
}

rows![
    recent_versus_usual,
    uncoupled_from_coupled,
    coupled_from_uncoupled,
    coupling_correlation,
    ratio_options_default,
];
