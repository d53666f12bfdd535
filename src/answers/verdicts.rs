//! How often were the verdicts about the day right?

use alloc::vec::Vec;

use super::diary::{Diary, LiftDone};
use super::lacking::Lacking;
use crate::caution::Caution;
use crate::condition::{ClassCalibration, DayClass, PastVerdict, calibration};
use crate::error::Error;
use crate::gate::Outcome;
use crate::quantity::Day;
use crate::reason::Reason;
use crate::record::Log;

/// How good the verdicts about the day were.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Verdicts {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Training days, with and without a verdict.
    pub days: u32,
    /// Hits, false alarms, misses, with their intervals and what chance alone would do; absent without a single verdict.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub calibration: Option<ClassCalibration>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// How often were yesterday's verdicts about the day right, better than chance?
///
/// # Rules
/// Each training day: the class that its report gave before the session, and whether the work sets then fell short: a
/// repetition was missed, the session failed the gate's look at technique, or a set left less in reserve than asked. Fewer sets
/// or less load do not count, since that is what a day below the usual is told to do. Easing off may itself avert a shortfall,
/// so verdicts may be better than they look.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`.
///
/// # Examples
/// ```
/// use bismar::answers::{Lacking, verdicts};
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let empty = Log::new(Lifter::new(Name::new("A")?));
/// let found = verdicts(&empty, "2026-03-02".parse()?)?;
/// assert!(found.calibration.is_none());
/// assert_eq!(found.missing, [Lacking::Session]);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn verdicts(log: &Log, today: Day) -> Result<Verdicts, Error> {
    Diary::of(log)?.verdicts(today)
}

fn fell_short(done: &LiftDone<'_>) -> bool {
    let judged = done.kept.sitting.as_ref();
    done.kept.failed
        || judged.is_some_and(|sitting| sitting.outcome == Outcome::Fail || sitting.short_of_reserve)
}

impl Diary<'_> {
    /// How often were the verdicts about the day right? See [`verdicts`].
    ///
    /// # Errors
    /// `before_last_event`.
    pub fn verdicts(&self, today: Day) -> Result<Verdicts, Error> {
        self.check_today(today)?;
        let mut days: Vec<(Day, PastVerdict)> = Vec::new();
        for done in self.lifts_done() {
            let short = fell_short(&done);
            match days.last_mut().filter(|(day, _)| *day == done.day) {
                Some((_, past)) => past.fell_short |= short,
                None => days.push((done.day, PastVerdict { class: done.kept.class, fell_short: short })),
            }
        }
        let past: Vec<PastVerdict> = days.into_iter().map(|(_, past)| past).collect();
        let known = past.iter().any(|past| past.class != DayClass::Unknown);
        let mut missing = Vec::new();
        if past.is_empty() {
            missing.push(Lacking::Session);
        } else if !known {
            missing.push(Lacking::DayClass);
        }
        Ok(Verdicts {
            stops: self.state().stops_on(today),
            today,
            days: past.len() as u32,
            calibration: if known { Some(calibration(&past)?) } else { None },
            missing,
            sources: alloc::vec!["condition.calibration"],
            cautions: self.cautions(today),
        })
    }
}
