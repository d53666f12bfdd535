//! What a gate looks at: plain values, filled in by whoever keeps the log.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::verdict::{Outcome, SessionVerdict};
use crate::condition::DayClass;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Name};

/// Most sessions that a gate is shown; older ones are to be left out.
pub const SESSIONS: usize = 200;

/// Highest number of repetitions of one session.
const REPS_IN_A_SESSION: u32 = 20_000;

/// One session of a lift as a gate sees it.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SessionFact {
    /// The day it was done.
    pub day: Day,
    /// Pass, fail or not scored.
    pub passed: Outcome,
    /// A critical criterion was lost.
    pub critical_fail: bool,
    /// Acceptable repetitions among those scored.
    pub acceptable: u32,
    /// Repetitions scored by somebody whose marks count.
    pub scored: u32,
    /// What kind of day it was.
    pub day_class: DayClass,
    /// The question about the next morning is not answered yet, so a pass is provisional.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub answer_pending: bool,
    /// The criterion that held worst.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub weakest: Option<Name>,
    /// Who gave the marks.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub rater: Option<Name>,
}

impl SessionFact {
    /// A session with that outcome of which nothing else is known.
    #[must_use]
    pub fn of(day: Day, passed: Outcome, day_class: DayClass) -> SessionFact {
        SessionFact {
            day,
            passed,
            critical_fail: false,
            acceptable: 0,
            scored: 0,
            day_class,
            answer_pending: false,
            weakest: None,
            rater: None,
        }
    }
}

impl SessionFact {
    /// A session with its verdict; no answer is pending and no rater is named.
    #[must_use]
    pub fn new(day: Day, verdict: &SessionVerdict, day_class: DayClass) -> SessionFact {
        SessionFact {
            day,
            passed: verdict.passed,
            critical_fail: verdict.critical_fail,
            acceptable: verdict.acceptable,
            scored: verdict.scored,
            day_class,
            answer_pending: false,
            weakest: verdict.weakest.clone(),
            rater: None,
        }
    }

    /// Scored repetitions that were not acceptable.
    #[must_use]
    pub const fn misses(&self) -> u32 {
        self.scored.saturating_sub(self.acceptable)
    }

    /// Two sessions of one day count as one: failed if either failed, and on a day below the usual by signs that
    /// agree only if both were.
    fn merge(&mut self, later: &SessionFact) {
        self.passed = match (self.passed, later.passed) {
            (Outcome::Fail, _) | (_, Outcome::Fail) => Outcome::Fail,
            (Outcome::Pass, _) | (_, Outcome::Pass) => Outcome::Pass,
            _ => Outcome::NotScored,
        };
        self.critical_fail |= later.critical_fail;
        self.acceptable += later.acceptable;
        self.scored += later.scored;
        self.answer_pending |= later.answer_pending;
        if self.day_class.is_confirmed_below() {
            self.day_class = later.day_class;
        }
        self.weakest = later.weakest.clone().or_else(|| self.weakest.take());
        self.rater = later.rater.clone().or_else(|| self.rater.take());
    }

    fn check(&self) -> Result<(), Error> {
        let highest = f64::from(REPS_IN_A_SESSION);
        if self.scored > REPS_IN_A_SESSION {
            return Err(Error::range(Code::OutOfRange, "scored", self.scored, 0.0, highest, "reps"));
        }
        if self.acceptable > self.scored {
            let (given, highest) = (self.acceptable, f64::from(self.scored));
            return Err(Error::range(Code::AcceptableExceedReps, "acceptable", given, 0.0, highest, "reps"));
        }
        Ok(())
    }
}

/// A condition with a name that holds or does not.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct NamedCondition {
    /// What it is called, such as the other lift of a pair or a region.
    pub name: Name,
    /// Whether it holds.
    pub holds: bool,
}

impl NamedCondition {
    /// That condition holds, or it does not.
    #[must_use]
    pub fn new(name: Name, holds: bool) -> NamedCondition {
        NamedCondition { name, holds }
    }
}

/// Everything a gate may look at, for one lift at one tuple of variant, range, tempo, sets, repetitions, load.
///
/// The default is a lift of which nothing is known: no gate is open on it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(default, deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct GateFacts {
    /// Sessions at the present tuple, the earliest first.
    pub sessions: Vec<SessionFact>,
    /// Sessions done at the present tuple.
    pub dwell_sessions: u32,
    /// Days since the first session at the present tuple.
    pub dwell_days: u32,
    /// Days since the last step up of this lift; absent if there was none.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub days_since_move: Option<u32>,
    /// Blocks that are open, such as pain in a region.
    pub open_blocks: Vec<Name>,
    /// Whether the coach has signed off.
    pub signed_off: bool,
    /// Conditions set by the other lift of a pair.
    pub pair: Vec<NamedCondition>,
    /// Conditions set by the regions of the lift.
    pub region: Vec<NamedCondition>,
    /// Whether the qualifying sessions stayed under the effort cap; absent if effort was not recorded.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub effort_cap_met: Option<bool>,
}

impl GateFacts {
    /// Refuses facts that contradict themselves.
    ///
    /// # Errors
    /// `out_of_range`, `acceptable_exceed_reps`, `days_out_of_order`.
    pub fn check(&self) -> Result<(), Error> {
        if self.sessions.len() > SESSIONS {
            let highest = SESSIONS as f64;
            return Err(Error::range(Code::OutOfRange, "sessions", self.sessions.len(), 0.0, highest, ""));
        }
        let mut last: Option<Day> = None;
        for session in &self.sessions {
            session.check().map_err(|error| error.within("sessions"))?;
            if last.is_some_and(|last| session.day < last) {
                let rule = Allowed::rule("not before the session listed ahead of it");
                return Err(Error::new(
                    Code::DaysOutOfOrder,
                    "sessions.day",
                    alloc::format!("{}", session.day),
                    rule,
                ));
            }
            last = Some(session.day);
        }
        Ok(())
    }

    /// One entry a day.
    pub(super) fn days(&self) -> Vec<SessionFact> {
        let mut days: Vec<SessionFact> = Vec::new();
        for session in &self.sessions {
            match days.last_mut() {
                Some(last) if last.day == session.day => last.merge(session),
                _ => days.push(session.clone()),
            }
        }
        days
    }
}
