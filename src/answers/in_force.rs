//! What is in force, whatever is planned: what stops, and what keeps a lift below what it would be without it.

use alloc::collections::BTreeSet;
use alloc::vec::Vec;

use super::diary::Diary;
use super::lacking::Lacking;
use super::{cautions_of, check_today};
use crate::caution::Caution;
use crate::error::Error;
use crate::prescription::{SessionPlan, next_session_from};
use crate::progression::{Purpose, State};
use crate::quantity::{Day, Mass, Name};
use crate::reason::Reason;
use crate::record::{ClearanceLimits, ClearanceStatus, LiftPlan, Log, Place, Plan};
use crate::sign::{Ask, StopSign};

/// One thing that stops lifts, or keeps a lift below what it would be without it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Restriction {
    /// A sign stops every lift.
    Sign {
        /// Which.
        sign: StopSign,
        /// Since when signs stop.
        since: Day,
    },
    /// The answer about clearance was not to train.
    NotToTrain {
        /// Since when.
        since: Day,
    },
    /// Pain stops every lift of a region.
    Pain {
        /// Where.
        region: Name,
        /// Since when.
        since: Day,
    },
    /// A clearance limits a region that no lift loads any more, which stops every lift.
    LimitWithoutLift {
        /// The region.
        region: Name,
        /// Day of the clearance.
        since: Day,
    },
    /// An illness or an operation, after which a new clearance comes first.
    Illness {
        /// Its first day; one noted in advance stops nothing before it.
        since: Day,
    },
    /// What was said when asked before training waits for an answer.
    Asked {
        /// What.
        ask: Ask,
        /// Since when.
        since: Day,
    },
    /// One part of a limit of a clearance: of load, of effort, of range, of bending or of breath-holding.
    Limit {
        /// The part, with its region.
        limit: ClearanceLimits,
    },
    /// A planned break, of today or noted for later.
    PlannedBreak {
        /// Its last day, where one was noted.
        until: Option<Day>,
    },
    /// An illness with a last day, of today or noted for later.
    IllUntil {
        /// Its last day.
        until: Day,
    },
    /// A lift rests by its role, or is retired.
    Rest {
        /// Which.
        lift: Name,
    },
    /// The coach's word keeps the load of a lift below what is granted.
    Word {
        /// Whose word.
        who: Name,
        /// The lift.
        lift: Name,
        /// Where the lift is granted.
        place: Place,
        /// Load allowed by it.
        load: Mass,
        /// Its last day, where it has one.
        until: Option<Day>,
    },
    /// The coach allows no higher load of a lift, at any place.
    Ceiling {
        /// The lift.
        lift: Name,
        /// The highest load.
        load: Mass,
    },
    /// Entries of a newer version, which cannot be read here: a stop may be among them, and no lift takes a step.
    UnknownEvents,
}

impl Restriction {
    /// The stable code of its kind.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        match self {
            Restriction::Sign { .. } => "sign",
            Restriction::NotToTrain { .. } => "not_to_train",
            Restriction::Pain { .. } => "pain",
            Restriction::LimitWithoutLift { .. } => "limit_without_lift",
            Restriction::Illness { .. } => "illness",
            Restriction::Asked { .. } => "asked",
            Restriction::Limit { .. } => "limit",
            Restriction::PlannedBreak { .. } => "planned_break",
            Restriction::IllUntil { .. } => "ill_until",
            Restriction::Rest { .. } => "rest",
            Restriction::Word { .. } => "word",
            Restriction::Ceiling { .. } => "ceiling",
            Restriction::UnknownEvents => "unknown_events",
        }
    }

    /// Since when it stops, the first day of an illness noted in advance among them; none where it narrows and stops nothing.
    #[must_use]
    pub const fn stops_since(&self) -> Option<Day> {
        match self {
            Restriction::Sign { since, .. }
            | Restriction::NotToTrain { since }
            | Restriction::Pain { since, .. }
            | Restriction::LimitWithoutLift { since, .. }
            | Restriction::Illness { since }
            | Restriction::Asked { since, .. } => Some(*since),
            _ => None,
        }
    }
}

/// What is in force.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct InForce {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Each thing by itself: what stops on that day first, then illnesses noted in advance, limits, rests, breaks and words of the coach,
    /// ceilings, and entries that cannot be read.
    pub restrictions: Vec<Restriction>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// What is in force on that day, whatever is planned: what stops, and what keeps a lift below what it would be without it?
///
/// # Rules
/// Stops are those of [`State::stops_on`], each sign by itself. A limit of a clearance is told in its parts. Planned breaks and
/// illnesses are told from the day on which they are noted, ahead of their first day; a word of the coach only where
/// it allows less than what is granted. What follows from training itself (a lift that holds, a layoff, pain that blocks a step)
/// is no restriction of this list: the session says it.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`.
///
/// # Examples
/// ```
/// use bismar::answers::{Restriction, in_force};
/// use bismar::quantity::Name;
/// use bismar::record::{Event, EventKind, Lifter, Log, SymptomReport};
/// use bismar::sign::StopSign;
///
/// let mut log = Log::new(Lifter::new(Name::new("A")?));
/// let told = EventKind::SymptomReport(SymptomReport::new(vec![StopSign::Faint]));
/// log.events.push(Event::new(1, "2026-03-02".parse()?, told));
/// let found = in_force(&log, "2026-03-05".parse()?)?;
/// let since = "2026-03-02".parse()?;
/// assert_eq!(found.restrictions, [Restriction::Sign { sign: StopSign::Faint, since }]);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn in_force(log: &Log, today: Day) -> Result<InForce, Error> {
    in_force_from(&crate::progression::fold(log)?, today)
}

/// The same by the state of a log that was folded before.
///
/// # Errors
/// `before_last_event`.
pub fn in_force_from(state: &State, today: Day) -> Result<InForce, Error> {
    check_today(state, today)?;
    let days = days(state, today);
    let mut restrictions = stopping(state, today);
    restrictions.extend(illnesses_ahead(state, today, &days));
    restrictions.extend(parts(state));
    restrictions.extend(narrowing(state, &sessions(state, &days)));
    restrictions.extend(ceilings(state));
    restrictions.extend(unread(state));
    Ok(InForce {
        stops: state.stops_on(today),
        today,
        restrictions,
        missing: missing(state),
        cautions: cautions_of(state, today),
    })
}

impl Diary<'_> {
    /// What is in force on that day? See [`in_force`].
    ///
    /// # Errors
    /// `before_last_event`.
    pub fn in_force(&self, today: Day) -> Result<InForce, Error> {
        in_force_from(self.state(), today)
    }
}

/// Without a clearance nobody has said what limits there are, and without parameters there are no ceilings and no rests.
pub(super) fn missing(state: &State) -> Vec<Lacking> {
    let mut missing = Vec::new();
    missing.extend(state.parameters().is_none().then_some(Lacking::Parameters));
    missing.extend(state.clearance().is_none().then_some(Lacking::Clearance));
    missing
}

/// What stops on that day, each by itself.
pub(super) fn stopping(state: &State, on: Day) -> Vec<Restriction> {
    let mut all = Vec::new();
    for stop in state.stops_on(on) {
        match stop {
            Reason::SymptomStop { signs, since } => {
                // Signs that were told later take the place of a refusal in the stop, and not in the clearance.
                let refused = refusal(state).or(signs.is_empty().then_some(since));
                all.extend(signs.into_iter().map(|sign| Restriction::Sign { sign, since }));
                all.extend(refused.map(|since| Restriction::NotToTrain { since }));
            }
            Reason::PainStop { region, since, .. } => all.push(Restriction::Pain { region, since }),
            Reason::LimitWithoutLift { region } => {
                let since = state.clearance().map_or(on, |clearance| clearance.given);
                all.push(Restriction::LimitWithoutLift { region, since });
            }
            Reason::ClearanceAfterIllness => {
                all.extend(state.ill_since_on(on).map(|since| Restriction::Illness { since }));
            }
            Reason::AsksFirst { ask, since } => all.push(Restriction::Asked { ask, since }),
            _ => {}
        }
    }
    all
}

/// Illnesses and operations noted in advance: they stop from their first day on.
fn illnesses_ahead(state: &State, today: Day, days: &[Day]) -> impl Iterator<Item = Restriction> {
    let begun = days.iter().filter_map(|day| state.ill_since_on(*day).filter(|since| since > &today));
    let days: BTreeSet<Day> = begun.collect();
    days.into_iter().map(|since| Restriction::Illness { since })
}

/// Entries that cannot be read.
pub(super) fn unread(state: &State) -> Option<Restriction> {
    (state.unknown_events() > 0).then_some(Restriction::UnknownEvents)
}

/// Day of the last clearance, where its answer was not to train.
pub(super) fn refusal(state: &State) -> Option<Day> {
    let given = state.clearance()?;
    (given.status == ClearanceStatus::NotCleared).then_some(given.given)
}

/// The limits in force, which hold until a newer clearance, its last day or not.
pub(super) fn limits(state: &State) -> &[ClearanceLimits] {
    state.clearance().map(|clearance| clearance.limits.as_slice()).unwrap_or_default()
}

/// The same in parts.
pub(super) fn parts(state: &State) -> impl Iterator<Item = Restriction> {
    limits(state).iter().flat_map(parts_of).map(|limit| Restriction::Limit { limit })
}

/// The parts of a limit, each as a limit of its own.
fn parts_of(limit: &ClearanceLimits) -> Vec<ClearanceLimits> {
    let none = ClearanceLimits::default().with_region(limit.region.clone());
    let mut all = Vec::new();
    all.extend(limit.load.map(|load| none.clone().with_load(load)));
    all.extend(limit.effort.map(|effort| none.clone().with_effort(effort)));
    all.extend(limit.range.map(|range| none.clone().with_range(range)));
    all.extend(limit.no_loaded_flexion.then(|| none.clone().with_no_loaded_flexion(true)));
    all.extend(limit.no_breath_hold.then(|| none.clone().with_no_breath_hold(true)));
    all
}

/// That day, and the first day of each break and illness noted for later.
pub(super) fn days(state: &State, today: Day) -> Vec<Day> {
    let noted: BTreeSet<Day> = state.away_from().filter(|from| *from > today).collect();
    core::iter::once(today).chain(noted).collect()
}

/// A session of every lift on each of these days; none where no session can be worked out, which keeps nothing else from
/// being compared.
pub(super) fn sessions(state: &State, days: &[Day]) -> Vec<Option<SessionPlan>> {
    let lifts = state.lifts().map(|lift| LiftPlan::new(lift.id().clone())).collect();
    let plan = Plan::of([]).with_lifts(lifts);
    days.iter().map(|day| next_session_from(state, &plan, *day).ok()).collect()
}

/// What rests, what breaks there are, and what was said of a day: each as it narrows, whatever is planned.
pub(super) fn narrowing(state: &State, sessions: &[Option<SessionPlan>]) -> Vec<Restriction> {
    let rests = state.lifts().filter(|lift| matches!(lift.purpose(), Purpose::Rest | Purpose::Retire));
    let rests = rests.map(|lift| Restriction::Rest { lift: lift.id().clone() });
    let said = sessions.iter().flatten().flat_map(|session| &session.lifts).flat_map(|today| {
        today.reasons.iter().filter_map(|reason| match reason {
            Reason::OverrideInForce { load, who, until } if *load < today.granted.load() => {
                let (who, lift, place) = (who.clone(), today.lift.clone(), today.granted.place);
                Some(Restriction::Word { who, lift, place, load: *load, until: *until })
            }
            Reason::PlannedBreak { until } => Some(Restriction::PlannedBreak { until: *until }),
            Reason::IllUntil { until } => Some(Restriction::IllUntil { until: *until }),
            _ => None,
        })
    });
    each_once(rests.chain(said))
}

/// Each of these where it is first met.
pub(super) fn each_once(found: impl Iterator<Item = Restriction>) -> Vec<Restriction> {
    let mut all = Vec::new();
    for one in found {
        if !all.contains(&one) {
            all.push(one);
        }
    }
    all
}

/// The ceilings of the lifts.
pub(super) fn ceilings(state: &State) -> impl Iterator<Item = Restriction> {
    state.lifts().filter_map(|lift| {
        let load = lift.parameters().ceiling?;
        Some(Restriction::Ceiling { lift: lift.id().clone(), load })
    })
}
