//! The week: its load, how alike its days were, and the two multiplied.

use super::daily::{DailyLoad, LoadTotal, complete};
use super::session::FOSTER_2001;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::source::{formula, rows};

/// Which standard deviation.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Deviation {
    /// Divided by the number of values (7 for a week): the default.
    #[default]
    Population,
    /// Divided by one less (6): smaller monotony by `sqrt(6/7)`.
    Sample,
}

/// Over which values the mean and the deviation were taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum WeekBasis {
    /// Seven day totals, rest days 0: the text of the 1998 paper, as recalled.
    Days,
    /// The sessions as listed, rest days absent unless listed.
    ListedSessions,
}

/// Mean over deviation, or why there is none.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Monotony {
    /// The ratio.
    Value(f64),
    /// All values are equal, so there is nothing to divide by: neither infinite nor 0.
    UndefinedAllEqual,
}

/// A week in numbers, with the conventions that made them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WeekLoad {
    /// Sum of the week's daily loads.
    pub total: f64,
    /// Mean of the values.
    pub mean: f64,
    /// Standard deviation of the values.
    pub deviation: f64,
    /// Mean over deviation.
    pub monotony: Monotony,
    /// Total times monotony; absent where monotony is undefined.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub strain: Option<f64>,
    /// Values above 0.
    pub training_values: u16,
    /// The largest monotony that so many training days allow; absent for sessions, and where no limit exists.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub largest_possible: Option<f64>,
    /// Which standard deviation was used. Never mix two within one history.
    pub deviation_kind: Deviation,
    /// Over which values.
    pub basis: WeekBasis,
}

const DAYS_PER_WEEK: usize = 7;

/// Sum and mean of squares around the mean; two passes, so that a large mean does no harm.
fn spread(values: &[f64], kind: Deviation) -> (f64, f64, f64) {
    let count = values.len() as f64;
    let total: f64 = values.iter().sum();
    let mean = total / count;
    let squares: f64 = values.iter().map(|value| (value - mean) * (value - mean)).sum();
    let divisor = match kind {
        Deviation::Population => count,
        Deviation::Sample => count - 1.0,
    };
    (total, mean, numeric::sqrt(squares / divisor))
}

fn all_equal(values: &[f64]) -> bool {
    values
        .windows(2)
        .all(|pair| pair.first().map(|value| value.to_bits()) == pair.last().map(|value| value.to_bits()))
}

fn week(values: &[f64], kind: Deviation, basis: WeekBasis) -> Result<WeekLoad, Error> {
    let (total, mean, deviation) = spread(values, kind);
    let monotony = if all_equal(values) || deviation <= 0.0 {
        Monotony::UndefinedAllEqual
    } else {
        Monotony::Value(numeric::finite("monotony", mean / deviation)?)
    };
    let strain = match monotony {
        Monotony::Value(value) => Some(numeric::finite("strain", total * value)?),
        Monotony::UndefinedAllEqual => None,
    };
    let training_values = values.iter().filter(|value| **value > 0.0).count() as u16;
    let limit = |days| monotony_limit(days, kind).ok();
    let largest_possible = if basis == WeekBasis::Days { limit(training_values) } else { None };
    Ok(WeekLoad {
        total,
        mean,
        deviation,
        monotony,
        strain,
        training_values,
        largest_possible,
        deviation_kind: kind,
        basis,
    })
}

formula! {
    "dose.weekly_load",
    /// How large was the week, or any run of days?
    ///
    /// # Formula
    /// The sum of the day totals; rested days are 0.
    ///
    /// # Domain
    /// Complete days only.
    ///
    /// # Errors
    /// `day_not_recorded`: a day that nobody wrote down is not a rest day.
    ///
    /// # Source
    /// Foster et al. 2001.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, weekly_load};
    ///
    /// let days = [DailyLoad::recorded(400.0)?, DailyLoad::Rested, DailyLoad::recorded(300.0)?];
    /// assert_eq!(weekly_load(&days)?.value(), 700.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn weekly_load(days: &[DailyLoad]) -> Result<LoadTotal, Error> {
        LoadTotal::new(complete(days)?.iter().sum())
    }
    source: FOSTER_2001, place: "method", standing: Published, seen: Read,
}

formula! {
    "dose.week_monotony",
    /// How large was the week, how alike were its days, and how large is their product (strain)?
    ///
    /// # Formula
    /// `monotony = mean / deviation` and `strain = total * monotony` over seven day totals, rest days 0.
    ///
    /// # Domain
    /// Seven complete days. Equal days have no monotony. With few training days the value is limited from above
    /// ([`monotony_limit`]), so a level quoted for people who train daily cannot be reached by most lifters; none
    /// is shown. That high values came before illness was seen in 25 athletes afterwards, with no comparison (Foster
    /// 1998, recalled): it foretells nothing.
    ///
    /// # Errors
    /// `out_of_range` unless there are seven days; `day_not_recorded`.
    ///
    /// # Source
    /// Foster 1998 (recalled) defines it over days; which deviation is left open. The one complete week found (Foster et al.
    /// 2001, table 5) was made with the population deviation over its listed sessions
    /// ([`sessions_monotony`]), not over days as its text says. The default here follows the text, with the
    /// population deviation.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, Deviation, Monotony, week_monotony};
    ///
    /// let day = DailyLoad::recorded;
    /// let rest = DailyLoad::Rested;
    /// let week = [day(400.0)?, rest, day(300.0)?, rest, day(500.0)?, day(200.0)?, rest];
    /// let answer = week_monotony(&week, Deviation::Population)?;
    /// assert!(matches!(answer.monotony, Monotony::Value(value) if (value - 1.037749).abs() < 5e-7));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn week_monotony(days: &[DailyLoad], deviation: Deviation) -> Result<WeekLoad, Error> {
        if days.len() != DAYS_PER_WEEK {
            return Err(Error::new(Code::OutOfRange, "days", days.len(), Allowed::rule("seven days")));
        }
        week(&complete(days)?, deviation, WeekBasis::Days)
    }
    source: FOSTER_2001, place: "method", standing: Published, seen: Read,
    population: "not said in the part read", domain: "seven complete days",
}

formula! {
    "dose.sessions_monotony",
    /// Total, monotony and strain over listed sessions instead of days.
    ///
    /// # Formula
    /// As [`week_monotony`], over the sessions as listed; a rest day counts only if it is listed with 0.
    ///
    /// # Domain
    /// At least two sessions. For comparing with records kept that way: the values are not those of
    /// [`week_monotony`] and must not be mixed with them. The table this reproduces multiplies the total by the
    /// already rounded monotony to get strain; here nothing is rounded.
    ///
    /// # Errors
    /// `not_enough_data` below two sessions.
    ///
    /// # Source
    /// Foster et al. 2001, table 5.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{Deviation, LoadTotal, sessions_monotony};
    ///
    /// let sessions = [LoadTotal::new(100.0)?, LoadTotal::new(300.0)?];
    /// assert_eq!(sessions_monotony(&sessions, Deviation::Population)?.strain, Some(800.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sessions_monotony(sessions: &[LoadTotal], deviation: Deviation) -> Result<WeekLoad, Error> {
        let values: alloc::vec::Vec<f64> = sessions.iter().map(|load| load.value()).collect();
        if values.len() < 2 || values.len() > usize::from(u16::MAX) {
            return Err(Error::range(Code::NotEnoughData, "sessions", values.len(), 2.0, f64::from(u16::MAX), ""));
        }
        week(&values, deviation, WeekBasis::ListedSessions)
    }
    source: FOSTER_2001, place: "table 5", standing: Published, seen: Read,
}

formula! {
    "dose.monotony_limit",
    /// How high can monotony be with so many training days in a week?
    ///
    /// # Formula
    /// `sqrt(k / (7 - k))` for `k` equal training days and the population deviation; the sample deviation gives
    /// `sqrt(6/7)` of it.
    ///
    /// # Domain
    /// 1 to 6 training days; with none or seven there is no limit to give.
    ///
    /// # Errors
    /// `out_of_range` outside 1 to 6.
    ///
    /// # Source
    /// Algebra: for given days trained, equal sessions have the smallest deviation.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{Deviation, monotony_limit};
    ///
    /// assert!((monotony_limit(3, Deviation::Population)? - 0.8660).abs() < 5e-5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn monotony_limit(training_days: u16, deviation: Deviation) -> Result<f64, Error> {
        if !(1..=6).contains(&training_days) {
            return Err(Error::range(Code::OutOfRange, "training_days", training_days, 1.0, 6.0, "days of 7"));
        }
        let days = f64::from(training_days);
        let limit = numeric::sqrt(days / (7.0 - days));
        Ok(match deviation {
            Deviation::Population => limit,
            Deviation::Sample => limit * numeric::sqrt(6.0 / 7.0),
        })
    }
    source: crate::source::ARITHMETIC, place: "equal sessions on k of 7 days", standing: Derived,
    seen: NotApplicable,
}

formula! {
    "dose.monotony_of",
    /// Monotony from a mean and a deviation that someone else printed.
    ///
    /// # Formula
    /// `mean / deviation`.
    ///
    /// # Domain
    /// A mean of 0 or more and a deviation above 0.
    ///
    /// # Errors
    /// `out_of_range`; `zero_spread` for a deviation of 0.
    ///
    /// # Source
    /// Foster et al. 2001; first in Foster 1998 (recalled).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::monotony_of;
    ///
    /// assert!((monotony_of(790.0, 897.0)? - 0.88).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn monotony_of(mean: f64, deviation: f64) -> Result<f64, Error> {
        let mean = numeric::within(Code::OutOfRange, "mean", mean, 0.0, f64::MAX, "")?;
        let deviation = numeric::within(Code::OutOfRange, "deviation", deviation, 0.0, f64::MAX, "")?;
        if deviation <= 0.0 {
            return Err(Error::plain(Code::ZeroSpread, "deviation"));
        }
        numeric::finite("monotony", mean / deviation)
    }
    source: FOSTER_2001, place: "method and table 5", standing: Published, seen: Read,
}

rows![weekly_load, week_monotony, sessions_monotony, monotony_limit, monotony_of];
