//! Is the strength of a lift really moving, or do days only scatter?

use alloc::vec::Vec;

use super::diary::Diary;
use super::lacking::Lacking;
use super::strength::{Estimated, LEVEL, Sessions};
use crate::caution::Caution;
use crate::condition::{StrengthEvidence, TrendOptions, TrendReport, TrendVerdict, trend as judge};
use crate::error::Error;
use crate::numeric::normal::normal_reach;
use crate::one_rm::Estimate;
use crate::quantity::{Day, Interval, Mass, Name};
use crate::reason::Reason;
use crate::record::{Log, Place};
use crate::statistics::robust_line;

/// Weeks that a slope is taken over where none are named: a block of eight (our choice).
pub const TREND_WEEKS: u16 = 8;
/// Fewest sessions at one load for the trend of its velocity, and days from first to last (our choice).
const FEWEST_VELOCITIES: usize = 4;
const LEAST_SPAN: i32 = 14;
const WEEK: i32 = 7;

/// One session: its estimate with its range, and the level behind it with its band, kg.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TrendPoint {
    /// The day.
    pub day: Day,
    /// Estimate of that session alone.
    pub value: f64,
    /// Its lower end.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
    /// The level behind it, given all sessions.
    pub level: f64,
    /// Lower end of the level.
    pub level_low: f64,
    /// Upper end of the level.
    pub level_high: f64,
}

/// What the estimates are of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum TrendScale {
    /// The load.
    Load,
    /// The body less the help, for a lift whose implement helps.
    BodyLessHelp,
}

/// By what the sets were turned into estimates.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum EstimatedBy {
    /// Published equations.
    Equations,
    /// The lifter's own curve, which was surer.
    OwnCurve,
}

/// How the velocity at one and the same load moves.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct VelocityTrend {
    /// The load: that with the most sessions in the window.
    pub load: Mass,
    /// Sessions with a velocity at it.
    pub sessions: u32,
    /// Change in m/s a week: the median over all pairs of sessions.
    pub per_week: f64,
    /// Its interval.
    pub interval: Interval,
    /// What the slope says.
    pub verdict: TrendVerdict,
}

/// What the sets of one session say about the maximum by published equations.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SessionEstimate {
    /// The day.
    pub day: Day,
    /// With the reserve as it was called: value, range, and each equation alone.
    pub as_called: Estimate,
    /// What it would be if this lifter left as much unsaid as people do on average
    /// ([`ReserveBias::halperin_2022`](crate::one_rm::ReserveBias::halperin_2022)); nothing is set by it. Absent where no reserve
    /// was called that would make it another.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub with_unsaid: Option<Estimate>,
}

/// The trend of one lift.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Trend {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Id of the lift.
    pub lift: Name,
    /// Weeks that the slope is taken over.
    pub weeks: u16,
    /// Where the sessions were done: on the rung and in the range of the last one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub place: Option<Place>,
    /// What the estimates are of.
    pub scale: TrendScale,
    /// By what they were made.
    pub estimated_by: EstimatedBy,
    /// Verdict, level now, slope with its interval, change that is real, bands ahead; absent without one estimate.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub report: Option<TrendReport>,
    /// Velocity at one load, where it was measured often enough.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub velocity: Option<VelocityTrend>,
    /// The sessions of the window.
    pub points: Vec<TrendPoint>,
    /// The newest session of the window whose sets can speak, equation by equation; absent without one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub newest: Option<SessionEstimate>,
    /// Sessions on another rung or in another range, left out.
    pub elsewhere: u32,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Is the strength of this lift moving, and is the change real?
///
/// # Rules
/// One estimate a session, from sets that passed technique and told their reserve, by published equations or, where it is
/// surer, by the lifter's own curve; only sessions on the rung and in the range of the last one. A helped lift is read as
/// the body less the help, with the body mass last weighed before. As many days again before the window let the level
/// settle (our choice). Velocities are compared at one and the same load only, and make no maximum. The newest session stands
/// there equation by equation, by published ones also where the own curve is surer; what people leave unsaid is counted there
/// beside the value as called, and in no estimate of the trend.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; `unknown_lift`; `out_of_range` for weeks outside 2
/// to 157.
///
/// # Examples
/// ```
/// use bismar::answers::{Lacking, trend};
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let empty = Log::new(Lifter::new(Name::new("A")?));
/// let found = trend(&empty, &Name::new("squat")?, "2026-03-02".parse()?, None)?;
/// assert!(found.report.is_none());
/// assert_eq!(found.missing, [Lacking::SessionOf(Name::new("squat")?)]);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn trend(log: &Log, lift: &Name, today: Day, weeks: Option<u16>) -> Result<Trend, Error> {
    Diary::of(log)?.trend(lift, today, weeks)
}

impl Diary<'_> {
    /// Is the strength of this lift moving? See [`trend`].
    ///
    /// # Errors
    /// `before_last_event`; `unknown_lift`; `out_of_range`.
    pub fn trend(&self, lift: &Name, today: Day, weeks: Option<u16>) -> Result<Trend, Error> {
        self.check_today(today)?;
        self.check_lift(lift)?;
        let weeks = weeks.unwrap_or(TREND_WEEKS);
        let days = WEEK * i32::from(weeks);
        let options = TrendOptions { window_days: days.unsigned_abs(), ..TrendOptions::default() };
        options.check()?;
        let sessions = Sessions::of(self, lift);
        let (found, by_curve) = sessions.surest(today.plus(-2 * days)?, today)?;
        let evidence: Vec<StrengthEvidence> = found.iter().map(Estimated::evidence).collect();
        let report = if found.is_empty() { None } else { Some(judge(&evidence, today, &options)?) };
        let from = today.plus(-days)?;
        let points = report.as_ref().map(|report| points(&found, report, from)).unwrap_or_default();
        let helped = sessions.done.last().is_some_and(|done| done.is_helped());
        let mut missing = Vec::new();
        if sessions.done.is_empty() {
            missing.push(Lacking::SessionOf(lift.clone()));
        } else if found.is_empty() {
            missing.push(Lacking::UsableSet(lift.clone()));
        }
        missing.extend((sessions.unweighed > 0).then_some(Lacking::BodyMass));
        let mut cautions = self.cautions(today);
        cautions.push(Caution::EstimatesAreRanges);
        if !self.is_stopped() {
            cautions.push(Caution::HoldingIsGood);
        }
        let newest = sessions.newest(from);
        let mut sources = alloc::vec![
            "condition.trend",
            if by_curve { "one_rm.own_curve" } else { "one_rm.estimate" },
            "statistics.robust_line",
        ];
        sources.extend((by_curve && newest.is_some()).then_some("one_rm.estimate"));
        let unsaid = newest.as_ref().is_some_and(|newest| newest.with_unsaid.is_some());
        sources.extend(unsaid.then_some("one_rm.halperin_2022_under_call"));
        Ok(Trend {
            stops: self.state().stops_on(today),
            today,
            lift: lift.clone(),
            weeks,
            place: sessions.place,
            scale: if helped { TrendScale::BodyLessHelp } else { TrendScale::Load },
            estimated_by: if by_curve { EstimatedBy::OwnCurve } else { EstimatedBy::Equations },
            report,
            velocity: velocity(&sessions, from, today)?,
            points,
            newest,
            elsewhere: sessions.elsewhere,
            missing,
            sources,
            cautions,
        })
    }
}

/// The sessions of the window, each beside the level that all of them give.
fn points(found: &[Estimated], report: &TrendReport, from: Day) -> Vec<TrendPoint> {
    let reach = normal_reach(LEVEL);
    let both = found.iter().zip(&report.path).filter(|(one, _)| one.day >= from);
    both.map(|(one, path)| TrendPoint {
        day: one.day,
        value: one.value,
        low: one.interval.low(),
        high: one.interval.high(),
        level: path.level,
        level_low: path.level - reach * path.standard_error,
        level_high: path.level + reach * path.standard_error,
    })
    .collect()
}

/// The fastest set of each session of the window at the load that has the most of them.
fn velocity(sessions: &Sessions<'_>, from: Day, today: Day) -> Result<Option<VelocityTrend>, Error> {
    let mut loads: Vec<(Mass, Vec<(Day, f64)>)> = Vec::new();
    for done in sessions.done.iter().filter(|done| (from..=today).contains(&done.day)) {
        for (load, velocity) in done.lift.sets.iter().filter_map(|set| Some((set.load, set.velocity?))) {
            let at = match loads.iter().position(|(known, _)| *known == load) {
                Some(at) => at,
                None => {
                    loads.push((load, Vec::new()));
                    loads.len() - 1
                }
            };
            let Some((_, days)) = loads.get_mut(at) else { continue };
            match days.last_mut().filter(|(day, _)| *day == done.day) {
                Some((_, fastest)) => *fastest = crate::numeric::larger(*fastest, velocity),
                None => days.push((done.day, velocity)),
            }
        }
    }
    let Some((load, days)) = loads.into_iter().max_by_key(|(load, days)| (days.len(), *load)) else {
        return Ok(None);
    };
    let span = days.last().zip(days.first()).map_or(0, |(last, first)| last.0.since(first.0));
    if days.len() < FEWEST_VELOCITIES || span < LEAST_SPAN {
        return Ok(None);
    }
    let first = days.first().map_or(today, |(day, _)| *day);
    let weeks: Vec<f64> = days.iter().map(|(day, _)| f64::from(day.since(first)) / f64::from(WEEK)).collect();
    let velocities: Vec<f64> = days.iter().map(|(_, velocity)| *velocity).collect();
    let line = robust_line(&weeks, &velocities, LEVEL)?;
    let verdict = if line.slope_interval.low() > 0.0 {
        TrendVerdict::Rising
    } else if line.slope_interval.high() < 0.0 {
        TrendVerdict::Falling
    } else {
        TrendVerdict::WithinNoise
    };
    Ok(Some(VelocityTrend {
        load,
        sessions: days.len() as u32,
        per_week: line.slope,
        interval: line.slope_interval,
        verdict,
    }))
}
