//! Slow drift and sudden drop: alarms on the form of the day, as rare as the coach wants them when nothing is wrong.

use alloc::vec::Vec;

use derive_setters::Setters;

use crate::error::{Allowed, Code, Error};
use crate::numeric::{fabs, larger, sqrt};
use crate::quantity::Day;
use crate::source::{OURS, constant, default_of, formula, rows};
use crate::statistics::{
    CusumDesign, Side, cusum_run_length, cusum_threshold_for, ewma_run_length, ewma_width_for,
};

constant! {
    "condition.sessions_between_false_alarms",
    /// Sessions between false alarms: about one a year at three sessions a week.
    pub const SESSIONS_BETWEEN_FALSE_ALARMS: f64 = 156.0;
    source: OURS, place: "one false alarm a year", standing: OurChoice, seen: NotApplicable,
}

/// How the alarms are set.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DriftOptions {
    /// Sessions between false alarms, both alarms together.
    pub sessions_between_false_alarms: f64,
    /// Weight of the newest session in the slow alarm.
    pub weight: f64,
    /// Slack of the sudden alarm, in standard deviations: half the drop to find.
    pub reference: f64,
}

impl DriftOptions {
    /// One false alarm in 156 sessions, weight 0.1, slack 0.5.
    pub const STANDARD: DriftOptions = DriftOptions {
        sessions_between_false_alarms: SESSIONS_BETWEEN_FALSE_ALARMS,
        weight: 0.1,
        reference: 0.5,
    };

    /// One false alarm a year at that many sessions a week.
    ///
    /// # Errors
    /// `out_of_range` outside 0.5 to 14 sessions a week.
    pub fn once_a_year(sessions_a_week: f64) -> Result<DriftOptions, Error> {
        const WEEKS: f64 = 52.0;
        let field = "sessions_a_week";
        let sessions = crate::numeric::within(Code::OutOfRange, field, sessions_a_week, 0.5, 14.0, "a week")?;
        Ok(DriftOptions { sessions_between_false_alarms: WEEKS * sessions, ..DriftOptions::STANDARD })
    }
}

impl Default for DriftOptions {
    fn default() -> DriftOptions {
        DriftOptions::STANDARD
    }
}

default_of! {
    "condition.drift_options_default",
    /// How the alarms are set where a caller names nothing else.
    drift_options_default: DriftOptions;
    source: OURS, place: "two charts on the innovations", standing: OurChoice, seen: NotApplicable,
}

/// The form of one session: reading less prediction, in standard deviations.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SessionForm {
    /// The day.
    pub day: Day,
    /// Standardised innovation, as the level filter gives it.
    pub form: f64,
}

impl SessionForm {
    /// That form on that day.
    #[must_use]
    pub fn new(day: Day, form: f64) -> SessionForm {
        SessionForm { day, form }
    }
}

/// Which alarm rang.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum DriftKind {
    /// The weighted mean of the form has wandered off.
    Slow,
    /// The form has shifted.
    Sudden,
}

/// An alarm.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DriftAlarm {
    /// When it rang.
    pub day: Day,
    /// Which alarm.
    pub kind: DriftKind,
    /// Whether the values ran high or low.
    pub side: Side,
    /// First day of the sessions that made it ring.
    pub since: Day,
}

/// The alarms and how they were set.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DriftReport {
    /// Alarms in order; after one, its sum starts anew.
    pub alarms: Vec<DriftAlarm>,
    /// Threshold of the sudden alarm, in standard deviations.
    pub threshold: f64,
    /// Limit of the slow alarm's weighted mean, in standard deviations of one session.
    pub limit: f64,
    /// Sessions that the sudden alarm takes on average to see a shift of one standard deviation.
    pub sessions_to_see_sudden: f64,
    /// Sessions that the slow alarm takes on average to see a lasting shift of half a standard deviation.
    pub sessions_to_see_slow: f64,
}

/// Both alarms while they run.
struct Running {
    mean: f64,
    mean_since: Option<Day>,
    sums: [(f64, Option<Day>); 2],
}

/// Adds to one sum; the day it left 0 is kept.
fn add((sum, since): &mut (f64, Option<Day>), excess: f64, day: Day) {
    *sum = larger(*sum + excess, 0.0);
    *since = if *sum > 0.0 { since.or(Some(day)) } else { None };
}

impl Running {
    fn take(&mut self, session: &SessionForm, weight: f64, slack: f64) {
        self.mean = weight * session.form + (1.0 - weight) * self.mean;
        self.mean_since = self.mean_since.or(Some(session.day));
        let [up, down] = &mut self.sums;
        add(up, session.form - slack, session.day);
        add(down, -session.form - slack, session.day);
    }

    fn alarms(&mut self, day: Day, limit: f64, threshold: f64) -> Vec<DriftAlarm> {
        let mut alarms = Vec::new();
        for (sum, side) in self.sums.iter_mut().zip([Side::Up, Side::Down]) {
            if sum.0 > threshold {
                alarms.push(DriftAlarm { day, kind: DriftKind::Sudden, side, since: sum.1.unwrap_or(day) });
                *sum = (0.0, None);
            }
        }
        if fabs(self.mean) > limit {
            let side = if self.mean > 0.0 { Side::Up } else { Side::Down };
            let since = self.mean_since.take().unwrap_or(day);
            alarms.push(DriftAlarm { day, kind: DriftKind::Slow, side, since });
            self.mean = 0.0;
        }
        alarms
    }
}

/// Most sessions of one call.
const MOST_SESSIONS: usize = 20_000;
/// No innovation is believed beyond this; a typing error must not ring for weeks.
const LARGEST_FORM: f64 = 1e6;

fn checked(sessions: &[SessionForm]) -> Result<(), Error> {
    let most = MOST_SESSIONS as f64;
    crate::numeric::within(Code::OutOfRange, "sessions", sessions.len() as f64, 0.0, most, "sessions")?;
    for session in sessions {
        let (low, high) = (-LARGEST_FORM, LARGEST_FORM);
        crate::numeric::within(Code::OutOfRange, "form", session.form, low, high, "standard deviations")?;
    }
    let in_order = sessions.windows(2).all(|pair| matches!(pair, [a, b] if a.day <= b.day));
    if in_order {
        Ok(())
    } else {
        Err(Error::new(Code::OutOfRange, "sessions", "days", Allowed::rule("in order of days")))
    }
}

formula! {
    "condition.drift",
    /// Has the lifter's form drifted slowly or dropped suddenly, with false alarms as rare as the coach wants?
    ///
    /// # Formula
    /// On standardised innovations: a two-sided cumulative sum (sudden) and an exponentially weighted mean (slow). Each
    /// is set to ring without cause once in twice the wanted number of sessions, so that together they ring about once
    /// in it. After an alarm its sum starts anew.
    ///
    /// # Domain
    /// Up to 20,000 sessions in order of days; 10 to 100,000 sessions between false alarms; innovations independent, as a
    /// fitted filter's are.
    ///
    /// # Errors
    /// `out_of_range`, `did_not_converge`, `not_finite`.
    ///
    /// # Source
    /// This project's choice of two published charts (row `condition.drift`).
    ///
    /// # Examples
    /// ```
    /// use bismar::condition::{DriftKind, DriftOptions, SessionForm, drift};
    /// use bismar::quantity::Day;
    ///
    /// let mut sessions = Vec::new();
    /// for number in 0..12 {
    ///     let form = if number < 6 { 0.3 } else { -1.8 };
    ///     sessions.push(SessionForm::new(Day::from_number(3 * number)?, form));
    /// }
    /// let report = drift(&sessions, DriftOptions::STANDARD)?;
    /// assert!(report.alarms.iter().any(|alarm| alarm.kind == DriftKind::Sudden));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn drift(sessions: &[SessionForm], options: DriftOptions) -> Result<DriftReport, Error> {
        checked(sessions)?;
        let field = "sessions_between_false_alarms";
        let wanted = options.sessions_between_false_alarms;
        let each = 2.0 * crate::numeric::within(Code::OutOfRange, field, wanted, 10.0, 1e5, "sessions")?;
        let threshold = cusum_threshold_for(options.reference, each)?;
        let width = ewma_width_for(options.weight, each)?;
        let limit = width * sqrt(options.weight / (2.0 - options.weight));
        let mut running = Running { mean: 0.0, mean_since: None, sums: [(0.0, None); 2] };
        let mut alarms = Vec::new();
        for session in sessions {
            running.take(session, options.weight, options.reference);
            alarms.extend(running.alarms(session.day, limit, threshold));
        }
        let design = CusumDesign { reference: options.reference, threshold, head_start: 0.0 };
        Ok(DriftReport {
            alarms,
            threshold,
            limit,
            sessions_to_see_sudden: cusum_run_length(design, 1.0)?,
            sessions_to_see_slow: ewma_run_length(options.weight, width, 0.5)?,
        })
    }
    source: OURS, place: "two charts on the innovations", standing: OurChoice, seen: NotApplicable,
    domain: "independent standard normal innovations",
}

rows![SESSIONS_BETWEEN_FALSE_ALARMS, drift, drift_options_default];
