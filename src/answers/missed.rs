//! A session was missed: shift it, merge it, or let it go?

use alloc::vec::Vec;

use derive_setters::Setters;

use super::diary::Diary;
use super::lacking::Lacking;
use crate::caution::Caution;
use crate::dose::{MissedFacts, MissedSession, missed_session};
use crate::error::Error;
use crate::progression::Stop;
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{Event, EventKind, Log, Plan, Session};

/// A missed session older than this is past mending (our choice).
const RECENT: i32 = 7;
/// Weeks before the missed session that a habit is read from, and sessions on one day of the week that make one (our
/// choice).
const HABIT_WEEKS: i32 = 4;
const HABIT: usize = 2;
const WEEK: i32 = 7;

/// The next session that is planned.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct NextPlanned {
    /// Its day.
    pub day: Day,
    /// Ids of its lifts.
    pub lifts: Vec<Name>,
}

impl NextPlanned {
    /// That day with these lifts.
    #[must_use]
    pub fn new(day: Day, lifts: Vec<Name>) -> NextPlanned {
        NextPlanned { day, lifts }
    }
}

/// What becomes of one lift of the missed session.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct MissedLift {
    /// Id of the lift.
    pub lift: Name,
    /// What it was worked out from; absent while the lift is stopped.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub facts: Option<MissedFacts>,
    /// What becomes of it; absent while a stop of it is in force.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub then: Option<MissedSession>,
}

/// What becomes of a missed session. Load and sets stay as planned, always.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Missed {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Day of the missed session, where one of the last seven days is noted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub missed: Option<Day>,
    /// Why, as noted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub reason: Option<Name>,
    /// The next session: as given, else as this lifter usually trains; absent where nobody knows.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub next: Option<NextPlanned>,
    /// The next session is read from the days on which this lifter usually trains.
    pub by_habit: bool,
    /// Each lift of the plan; empty where no session was missed.
    pub lifts: Vec<MissedLift>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the rule is from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// A session was missed: shift, merge or drop, lift by lift?
///
/// # Rules
/// The last session noted as missed within seven days (our choice) and not followed by one that was done. Each lift of the plan
/// goes to the first day that leaves the policy's rest days (one more for the older, or where no age is known) after its
/// regions were last loaded and before the next planned session that loads one of them; else into that session; else it is let
/// go. Nothing is ever added to make up for it. Without a next session given, it is the first day from today on that falls on
/// a day of the week with at least two sessions in the four weeks before the missed one (our choice), with the lifts of the
/// last of them.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; `unknown_lift`; `unknown_name` for an implement
/// called unavailable that is not there; `out_of_range` for a next day before today.
pub fn missed(log: &Log, plan: &Plan, today: Day, next: Option<&NextPlanned>) -> Result<Missed, Error> {
    Diary::of(log)?.missed(plan, today, next)
}

impl Diary<'_> {
    /// A session was missed: shift, merge or drop? See [`missed`].
    ///
    /// # Errors
    /// As [`missed`], but for the fold's.
    pub fn missed(&self, plan: &Plan, today: Day, next: Option<&NextPlanned>) -> Result<Missed, Error> {
        self.check_today(today)?;
        plan.check()?;
        self.state().parameters().map_or(Ok(()), |all| plan.check_against(all))?;
        let (mut missed, mut reason) = (None, None);
        for event in self.events().filter(|event| today.since(event.day) <= RECENT) {
            match &event.kind {
                EventKind::SessionMissed(noted) => {
                    (missed, reason) = (Some(event.day), Some(noted.reason.clone()))
                }
                EventKind::SessionRecorded(_) => (missed, reason) = (None, None),
                _ => {}
            }
        }
        let usual = match (missed, next) {
            (Some(missed), None) => self.usual_next(missed, today)?,
            _ => None,
        };
        let by_habit = usual.is_some();
        let next = next.cloned().or(usual);
        let mut missing = Vec::new();
        missing.extend(missed.is_none().then_some(Lacking::MissedSession));
        missing.extend((missed.is_some() && next.is_none()).then_some(Lacking::NextSession));
        let mut lifts = Vec::new();
        for planned in plan.lifts.iter().filter(|_| missed.is_some()) {
            lifts.push(self.missed_lift(&planned.lift, today, next.as_ref())?);
        }
        Ok(Missed {
            stops: self.state().stops_on(today),
            today,
            missed,
            reason,
            next: next.filter(|_| missed.is_some()),
            by_habit,
            lifts,
            missing,
            sources: alloc::vec!["dose.missed_session", "record.policy_default"],
            cautions: self.cautions(today),
        })
    }

    /// The next day on which this lifter usually trains, and what was done on the last such day.
    fn usual_next(&self, missed: Day, today: Day) -> Result<Option<NextPlanned>, Error> {
        let recent = |event: &Event| (1..=WEEK * HABIT_WEEKS).contains(&missed.since(event.day));
        let before: Vec<(Day, &Session)> = self
            .sessions()
            .filter(|(event, _)| recent(event))
            .map(|(event, session)| (event.day, session))
            .collect();
        for ahead in 0..WEEK {
            let day = today.plus(ahead)?;
            let mut such: Vec<&(Day, &Session)> =
                before.iter().filter(|(on, _)| day.since(*on) % WEEK == 0).collect();
            such.dedup_by_key(|(on, _)| *on);
            if let (Some((_, last)), true) = (such.last(), such.len() >= HABIT && day > missed) {
                let lifts = last.lifts.iter().map(|done| done.lift.clone()).collect();
                return Ok(Some(NextPlanned { day, lifts }));
            }
        }
        Ok(None)
    }

    fn missed_lift(&self, id: &Name, today: Day, next: Option<&NextPlanned>) -> Result<MissedLift, Error> {
        let view = self.state().view(id, today)?;
        let stopped = |stop: Option<&Stop>| stop.is_some();
        if stopped(self.state().stop()) || view.regions().any(|region| stopped(region.stop.as_ref())) {
            return Ok(MissedLift { lift: id.clone(), facts: None, then: None });
        }
        let shares = |other: &Name| {
            let set = view.all.lift(other);
            set.is_some_and(|set| set.regions.iter().any(|region| view.lift.has_region(region)))
        };
        let next = next.filter(|next| next.lifts.iter().any(shares));
        let policy = view.policy();
        let older = view.shared.is_older(policy.older_from_years, today);
        let facts = MissedFacts {
            today,
            last_loaded: view.regions().filter_map(|region| region.loaded).max(),
            next: next.map(|next| next.day),
            next_has_the_lift: next.is_some_and(|next| next.lifts.contains(id)),
            rest_days: policy.pair_rest_days.saturating_add(u8::from(older)),
        };
        Ok(MissedLift { lift: id.clone(), then: Some(missed_session(&facts)?), facts: Some(facts) })
    }
}
