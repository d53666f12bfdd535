//! Were past verdicts worth anything?

use derive_setters::Setters;

use super::day_class::DayClass;
use crate::error::{Code, Error};
use crate::numeric::exp;
use crate::numeric::gamma::ln_gamma;
use crate::quantity::Interval;
use crate::source::{OURS, Source, constant, formula, rows};
use crate::statistics::wilson_interval;

const FISHER_1922: Source = Source {
    id: "fisher-1922",
    citation: "Fisher RA. On the interpretation of chi-square from contingency tables, and the calculation of P. J R Stat Soc 85:87-94, 1922",
    doi: None,
};

constant! {
    "condition.calibration_sessions",
    /// Sessions with a verdict before anything is said about how good the verdicts are.
    pub const CALIBRATION_SESSIONS: u32 = 20;
    source: OURS, place: "hit rate after 20 sessions", standing: OurChoice, seen: NotApplicable,
}

constant! {
    "condition.chance_limit",
    /// Verdicts are called better than chance if chance would do as well less often than this.
    pub const CHANCE_LIMIT: f64 = 0.05;
    source: OURS, place: "one-sided test", standing: OurChoice, seen: NotApplicable,
}

/// A verdict of the past and what the work sets then showed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct PastVerdict {
    /// What was said before the work sets.
    pub class: DayClass,
    /// Whether the work sets fell short of the plan.
    pub fell_short: bool,
}

impl PastVerdict {
    /// What was said of a day, and whether the lifter fell short on it.
    #[must_use]
    pub fn new(class: DayClass, fell_short: bool) -> PastVerdict {
        PastVerdict { class, fell_short }
    }
}

/// How good the verdicts were.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum VerdictSkill {
    /// Too few sessions to say.
    NotEnoughSessions,
    /// All sessions went the same way, or all verdicts were the same: nothing to tell apart.
    NothingToCompare,
    /// No better than chance: do not steer by it.
    NoBetterThanChance,
    /// Better than chance.
    BetterThanChance,
}

/// The four counts and what follows.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ClassCalibration {
    /// Called below the usual, fell short.
    pub hits: u32,
    /// Called below the usual, went well.
    pub false_alarms: u32,
    /// Not called below the usual, fell short.
    pub misses: u32,
    /// Not called below the usual, went well.
    pub quiet: u32,
    /// Sessions of unknown class, left out.
    pub unknown: u32,
    /// Part of the verdicts that were right.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub right: Option<Interval>,
    /// Part of the days that fell short which were called below the usual, 95 %.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub caught: Option<Interval>,
    /// Part of the days that went well which were called below the usual, 95 %.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub wrongly_called: Option<Interval>,
    /// How often chance alone would catch as many.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub chance: Option<f64>,
    /// Whether the verdicts were better than chance.
    pub skill: VerdictSkill,
}

/// `ln` of the number of ways to choose.
fn ln_choose(n: u32, k: u32) -> f64 {
    let ln_factorial = |count: u32| ln_gamma(f64::from(count) + 1.0);
    ln_factorial(n) - ln_factorial(k) - ln_factorial(n - k)
}

/// Chance of at least `hits` short days among the `called`, of `total` days of which `short` fell short.
fn chance_of(hits: u32, called: u32, short: u32, total: u32) -> f64 {
    let least = (called + short).saturating_sub(total);
    let most = called.min(short);
    let whole = ln_choose(total, called);
    let part = |k: u32| exp(ln_choose(short, k) + ln_choose(total - short, called - k) - whole);
    let sum = crate::numeric::sum::sum((hits.max(least)..=most).map(part));
    crate::numeric::smaller(sum, 1.0)
}

fn share(part: u32, whole: u32) -> Result<Option<Interval>, Error> {
    if whole == 0 { Ok(None) } else { wilson_interval(part, whole, 0.95).map(Some) }
}

/// Most sessions of one call.
const MOST_SESSIONS: usize = 20_000;

formula! {
    "condition.calibration",
    /// Did the verdicts before the work sets agree with what the work sets showed, better than chance?
    ///
    /// # Formula
    /// Days called below the usual (either class) against days that fell short; chance from the hypergeometric
    /// distribution, at least as many hits (one-sided). Better than chance below 0.05. Shares with Wilson intervals at 95 %.
    ///
    /// # Domain
    /// From 20 sessions with a verdict; unknown days are left out. Easing off on such a day may itself avert a
    /// shortfall: then the verdicts look worse than they are.
    ///
    /// # Errors
    /// `out_of_range` with more than 20,000 sessions.
    ///
    /// # Source
    /// Fisher 1922, recalled, for the test; the limits are this project's choice (row `condition.calibration`).
    ///
    /// # Examples
    /// ```
    /// use bismar::condition::{DayClass, PastVerdict, VerdictSkill, calibration};
    ///
    /// let day = |class, fell_short| PastVerdict::new(class, fell_short);
    /// let mut past = vec![day(DayClass::Within, false); 15];
    /// past.extend([day(DayClass::Below, true); 5]);
    /// assert_eq!(calibration(&past)?.skill, VerdictSkill::BetterThanChance);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn calibration(past: &[PastVerdict]) -> Result<ClassCalibration, Error> {
        let most = MOST_SESSIONS as f64;
        crate::numeric::within(Code::OutOfRange, "past", past.len() as f64, 0.0, most, "sessions")?;
        let count = |called: bool, short: bool| {
            let known = past.iter().filter(|day| day.class != DayClass::Unknown);
            known.filter(|day| day.class.is_below() == called && day.fell_short == short).count() as u32
        };
        let (hits, false_alarms) = (count(true, true), count(true, false));
        let (misses, quiet) = (count(false, true), count(false, false));
        let (called, short) = (hits + false_alarms, hits + misses);
        let total = called + misses + quiet;
        let comparable = called > 0 && called < total && short > 0 && short < total;
        let chance = comparable.then(|| chance_of(hits, called, short, total));
        let skill = match chance {
            _ if total < CALIBRATION_SESSIONS => VerdictSkill::NotEnoughSessions,
            None => VerdictSkill::NothingToCompare,
            Some(chance) if chance < CHANCE_LIMIT => VerdictSkill::BetterThanChance,
            Some(_) => VerdictSkill::NoBetterThanChance,
        };
        Ok(ClassCalibration {
            hits,
            false_alarms,
            misses,
            quiet,
            unknown: past.len() as u32 - total,
            right: share(hits + quiet, total)?,
            caught: share(hits, short)?,
            wrongly_called: share(false_alarms, total - short)?,
            chance,
            skill,
        })
    }
    source: FISHER_1922, place: "exact test", standing: Published, seen: Memory,
    domain: "from 20 sessions",
}

rows![CALIBRATION_SESSIONS, CHANCE_LIMIT, calibration];
