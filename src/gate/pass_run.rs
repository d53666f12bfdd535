//! A gate made of consecutive passing sessions on distinct days.

use alloc::vec::Vec;

use super::facts::SessionFact;
use super::marks::REPS_IN_A_SET;
use super::rules::PassRules;
use super::state::{Met, Missing, Note};
use super::verdict::Outcome;
use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Name};
use crate::source::{OURS, constant, rows};

constant! {
    "gate.range_sessions",
    /// Consecutive passing sessions before a step in range, tempo or variant.
    ///
    /// # Source
    /// Our choice (row `gate.range_sessions`): three sessions, as in studies of how long a learnt skill is
    /// kept, by analogy only, since those were not lifts.
    pub const RANGE_SESSIONS: u8 = 3;
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "sessions on distinct days",
}

constant! {
    "gate.load_sessions",
    /// Consecutive passing sessions before a small step in load.
    ///
    /// # Source
    /// Our choice (row `gate.load_sessions`).
    pub const LOAD_SESSIONS: u8 = 2;
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "sessions on distinct days",
}

constant! {
    "gate.neutral_fails",
    /// Fails on confirmed days below the usual in a row that say nothing; the next one counts.
    ///
    /// # Source
    /// Our choice (row `gate.neutral_fails`).
    pub const NEUTRAL_FAILS: u8 = 2;
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "sessions on distinct days",
}

/// Longest run that may be asked for.
const MOST_SESSIONS: u8 = 10;
/// Most fails on days below the usual in a row that any gate may overlook.
const MOST_NEUTRAL_FAILS: u8 = 5;

/// At least `acceptable` of `of` scored repetitions acceptable, in so many passing sessions in a row on
/// distinct days.
///
/// A session counts if its verdict is a pass, at least `of` repetitions were scored, and the acceptable share
/// is at least `acceptable / of`. A session that failed, or whose misses break the share, starts the run
/// again; on a confirmed day below the usual it changes nothing, but no more than `neutral_fails` times in a row, and the
/// loss of a critical criterion always starts the run again. What was not scored changes nothing.
///
/// ```
/// use bismar::gate::PassRun;
///
/// let run = PassRun::new(9, 10, 3)?;
/// assert_eq!(run.sessions(), 3);
/// assert!(PassRun::new(0, 0, 3).is_err());
/// assert!(PassRun::new(11, 10, 3).is_err());
/// assert!(PassRun::new(9, 10, 0).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "wire::PassRun", into = "wire::PassRun")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PassRun {
    acceptable: u16,
    of: u16,
    sessions: u8,
    neutral_fails: u8,
    rater_change_restarts: bool,
}

canonical_fields!(PassRun: acceptable, of, sessions, neutral_fails, rater_change_restarts);

impl PassRun {
    /// A run of `sessions` sessions with at least `acceptable` of `of` repetitions acceptable in each.
    ///
    /// # Errors
    /// `gate_always_open` where nothing is asked for (0 repetitions, 0 sessions); `gate_never_opens` where
    /// more is asked for than there is; `out_of_range` above 200 repetitions or 10 sessions.
    pub fn new(acceptable: u16, of: u16, sessions: u8) -> Result<PassRun, Error> {
        let rule = Allowed::rule("at least 1");
        for (field, given) in [("of", of), ("acceptable", acceptable), ("sessions", u16::from(sessions))] {
            if given == 0 {
                return Err(Error::new(Code::GateAlwaysOpen, field, given, rule));
            }
        }
        if acceptable > of {
            let highest = f64::from(of);
            return Err(Error::range(Code::GateNeverOpens, "acceptable", acceptable, 1.0, highest, "reps"));
        }
        if of > REPS_IN_A_SET {
            return Err(Error::range(Code::OutOfRange, "of", of, 1.0, f64::from(REPS_IN_A_SET), "reps"));
        }
        if sessions > MOST_SESSIONS {
            let highest = f64::from(MOST_SESSIONS);
            return Err(Error::range(Code::OutOfRange, "sessions", sessions, 1.0, highest, "sessions"));
        }
        Ok(PassRun { acceptable, of, sessions, neutral_fails: NEUTRAL_FAILS, rater_change_restarts: false })
    }

    /// The run that asks of `reps` repetitions a session no more than the pass rules do.
    ///
    /// # Errors
    /// As [`PassRun::new`], and `out_of_range` for rules that let more than half be missed.
    pub fn from_rules(rules: &PassRules, reps: u16, sessions: u8) -> Result<PassRun, Error> {
        rules.check()?;
        let misses = u16::try_from(rules.allowed_of(u32::from(reps))).unwrap_or(u16::MAX);
        PassRun::new(reps.saturating_sub(misses), reps, sessions)
    }

    /// The same run with another number of fails on days below the usual in a row that change nothing.
    ///
    /// # Errors
    /// `out_of_range` above 5.
    pub fn with_neutral_fails(mut self, fails: u8) -> Result<PassRun, Error> {
        if fails > MOST_NEUTRAL_FAILS {
            let highest = f64::from(MOST_NEUTRAL_FAILS);
            return Err(Error::range(Code::OutOfRange, "neutral_fails", fails, 0.0, highest, "fails"));
        }
        self.neutral_fails = fails;
        Ok(self)
    }

    /// The same run, started again (instead of flagged) when another person gives the marks.
    #[must_use]
    pub fn restarted_by_another_rater(mut self, restarts: bool) -> PassRun {
        self.rater_change_restarts = restarts;
        self
    }

    /// Acceptable repetitions asked for.
    #[must_use]
    pub const fn acceptable(&self) -> u16 {
        self.acceptable
    }

    /// Out of this many scored.
    #[must_use]
    pub const fn of(&self) -> u16 {
        self.of
    }

    /// Sessions in a row.
    #[must_use]
    pub const fn sessions(&self) -> u8 {
        self.sessions
    }

    /// Fails on confirmed days below the usual in a row that change nothing.
    #[must_use]
    pub const fn neutral_fails(&self) -> u8 {
        self.neutral_fails
    }

    /// Whether it starts anew when another person gives the marks.
    #[must_use]
    pub const fn rater_restarts(&self) -> bool {
        self.rater_change_restarts
    }

    /// Whether the misses alone break the share asked for, even if repetitions up to `of` were still to come.
    fn falls_short(&self, day: &SessionFact) -> bool {
        let reps = u64::from(day.scored.max(u32::from(self.of)));
        u64::from(day.misses()) * u64::from(self.of) > u64::from(self.of - self.acceptable) * reps
    }

    fn judge(&self, day: &SessionFact, neutral_in_a_row: u8) -> Effect {
        let short = self.falls_short(day);
        if day.critical_fail {
            return Effect::Restarts;
        }
        match day.passed {
            Outcome::NotScored if !short => Effect::Nothing,
            Outcome::Pass if !short && day.scored < u32::from(self.of) => Effect::TooFew,
            Outcome::Pass if !short => Effect::Counts,
            _ if day.day_class.is_confirmed_below() && neutral_in_a_row < self.neutral_fails => {
                Effect::Neutral
            }
            _ => Effect::Restarts,
        }
    }

    /// Where the run stands after these days.
    fn standing(&self, days: &[SessionFact]) -> Standing {
        let mut standing = Standing::default();
        let mut neutral_in_a_row = 0_u8;
        for day in days {
            match self.judge(day, neutral_in_a_row) {
                Effect::Counts => {
                    neutral_in_a_row = 0;
                    standing.count(day, self.rater_change_restarts);
                }
                Effect::Nothing => standing.weak(day),
                Effect::TooFew => standing.too_few = Some((day.day, day.scored)),
                Effect::Neutral => {
                    neutral_in_a_row += 1;
                    standing.weak(day);
                }
                Effect::Restarts => {
                    neutral_in_a_row = 0;
                    standing = Standing { restarted: Some(day.day), ..Standing::default() };
                    standing.weak(day);
                }
            }
        }
        standing
    }
}

impl PassRun {
    /// Whether nothing is missing after these days.
    pub(super) fn is_open(&self, days: &[SessionFact]) -> bool {
        let standing = self.standing(days);
        standing.run >= u32::from(self.sessions) && standing.pending.is_none()
    }

    /// What is met or missing after these days, and what else to know.
    pub(super) fn outcome(&self, days: &[SessionFact]) -> (Result<Met, Vec<Missing>>, Vec<Note>) {
        let standing = self.standing(days);
        let notes = standing.notes(self.of);
        let (have, need) = (standing.run, u32::from(self.sessions));
        let missing = match standing.pending {
            _ if have < need => {
                let Standing { restarted, weakest, .. } = standing;
                Missing::PassingSessions { have, need, restarted, weakest }
            }
            Some(day) => Missing::NextMorningAnswer { day },
            None => return (Ok(Met::PassingSessions { have, need }), notes),
        };
        (Err([missing].into()), notes)
    }
}

/// What one day does to the run.
enum Effect {
    Counts,
    Nothing,
    TooFew,
    Neutral,
    Restarts,
}

/// Where a run stands.
#[derive(Default)]
struct Standing {
    run: u32,
    restarted: Option<Day>,
    pending: Option<Day>,
    weakest: Option<Name>,
    rater_changed: Option<Day>,
    too_few: Option<(Day, u32)>,
    rater: Option<Name>,
}

impl Standing {
    fn count(&mut self, day: &SessionFact, restart_on_change: bool) {
        let changed = day.rater.is_some() && self.rater.is_some() && day.rater != self.rater;
        if changed {
            self.rater_changed = Some(day.day);
            if restart_on_change {
                *self = Standing { restarted: Some(day.day), ..Standing::default() };
            }
        }
        self.run += 1;
        if day.answer_pending {
            self.pending = Some(day.day);
        }
        if day.rater.is_some() {
            self.rater.clone_from(&day.rater);
        }
        self.weak(day);
    }

    fn weak(&mut self, day: &SessionFact) {
        if day.weakest.is_some() {
            self.weakest.clone_from(&day.weakest);
        }
    }

    fn notes(&self, of: u16) -> Vec<Note> {
        let changed = self.rater_changed.map(|day| Note::RaterChanged { day });
        let need = u32::from(of);
        let few = self.too_few.map(|(day, scored)| Note::TooFewScored { day, scored, need });
        changed.into_iter().chain(few).collect()
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! The run as written: the rarer settings only where they differ from the default.
    use super::{Error, NEUTRAL_FAILS};

    #[derive(Clone, serde::Serialize, serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct PassRun {
        acceptable: u16,
        of: u16,
        sessions: u8,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        neutral_fails: Option<u8>,
        #[serde(default, skip_serializing_if = "core::ops::Not::not")]
        rater_change_restarts: bool,
    }

    impl TryFrom<PassRun> for super::PassRun {
        type Error = Error;

        fn try_from(wire: PassRun) -> Result<super::PassRun, Error> {
            let run = super::PassRun::new(wire.acceptable, wire.of, wire.sessions)?;
            let run = run.restarted_by_another_rater(wire.rater_change_restarts);
            run.with_neutral_fails(wire.neutral_fails.unwrap_or(NEUTRAL_FAILS))
        }
    }

    impl From<super::PassRun> for PassRun {
        fn from(run: super::PassRun) -> PassRun {
            PassRun {
                acceptable: run.acceptable,
                of: run.of,
                sessions: run.sessions,
                neutral_fails: (run.neutral_fails != NEUTRAL_FAILS).then_some(run.neutral_fails),
                rater_change_restarts: run.rater_change_restarts,
            }
        }
    }
}

rows![RANGE_SESSIONS, LOAD_SESSIONS, NEUTRAL_FAILS];
