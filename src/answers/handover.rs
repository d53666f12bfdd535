//! Everything that another coach needs in a minute.

use alloc::string::String;
use alloc::vec::Vec;

use super::diary::Diary;
use super::handed_on::{LastDone, OverrideNow, PainNow, StopNow};
use super::lacking::Lacking;
use super::standing::{pain, stops};
use crate::caution::Caution;
use crate::error::Error;
use crate::gate::{Criterion, Gate, GateState};
use crate::progression::{
    ClearanceInForce, Decision, LiftState, MoveOutlook, OpenAsk, Purpose, SetupSeen, State, Status,
};
use crate::quantity::{Day, Length, Mass, Name};
use crate::reason::{NamedPlace, Reason};
use crate::record::{
    BarChanged, ClearanceLimits, Dimension, Event, EventKind, Grant, LiftSession, Log, SignOffScope,
};

/// One lift, to be handed on.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LiftHandover {
    /// Its id.
    pub lift: Name,
    /// Where it stands in its course.
    pub status: Status,
    /// What it is for in this block.
    pub purpose: Purpose,
    /// Granted place and work; the place as far as a clearance allows it.
    pub granted: Grant,
    /// Highest load allowed today.
    pub limit: Mass,
    /// Height of the bar's centre at the start, where the lift begins from the floor or from pins.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub height: Option<Length>,
    /// What moves in this block.
    pub moving: Dimension,
    /// Highest load that the coach allows at all.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub ceiling: Option<Mass>,
    /// The gate as it is defined.
    pub gate: Gate,
    /// What it has, and what it misses.
    pub gate_state: GateState,
    /// What technique is judged by.
    pub criteria: Vec<Criterion>,
    /// Whether a step is earned, and what stands in its way as far as the log says. Whether it is for today the session of
    /// today says, which has the plan.
    pub outlook: MoveOutlook,
    /// An override in force.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub overruled: Option<OverrideNow>,
    /// The clearance's limits that concern the lift.
    pub limits: Vec<ClearanceLimits>,
    /// How it was last said to be set up.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub setup: Option<SetupSeen>,
    /// When the rack was last spoken of, the lifter was alone under the bar without pins.
    pub unguarded: bool,
    /// The last session; absent before the first.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub last: Option<LastDone>,
}

/// How a lift stood on the day asked about, and stands now.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LiftMoved {
    /// Its id.
    pub lift: Name,
    /// Place, work and status then; absent where the lift was not there yet.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub from: Option<(Grant, Status)>,
    /// Place, work and status now.
    pub to: (Grant, Status),
}

/// Something that a coach, a clinician or the lifter did beside training.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ActSince {
    /// When.
    pub day: Day,
    /// Number of the event.
    pub event: u32,
    /// Its kind, as it is written.
    pub kind: &'static str,
    /// The lift, where it concerns one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub lift: Option<Name>,
    /// What was written beside it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub note: Option<String>,
}

/// What changed since a day.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ChangedSince {
    /// The end of this day is what is compared with.
    pub since: Day,
    /// Sessions after it.
    pub sessions: u32,
    /// Lifts that stand otherwise than then.
    pub lifts: Vec<LiftMoved>,
    /// What was done beside training, oldest first.
    pub acts: Vec<ActSince>,
}

/// Everything that another coach needs.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Handover {
    /// Every stop of the lifter; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Whose log it is.
    pub lifter: Name,
    /// The greatest age in whole years that the log allows; absent where nothing is known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub age: Option<i32>,
    /// Stops by signs and by pain, and what of their reopening is there: everything first.
    pub reopening: Vec<StopNow>,
    /// What was said when asked before training, and is not answered.
    pub asks: Vec<OpenAsk>,
    /// First day of an illness after which a new clearance is needed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub ill_since: Option<Day>,
    /// The clearance last given, expired or not.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub clearance: Option<ClearanceInForce>,
    /// The last body mass, and its day.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub body_mass: Option<(Day, Mass)>,
    /// Regions of which a score above 0 is the last, or of which something is agreed or open.
    pub pain: Vec<PainNow>,
    /// The lifts in the order of the parameters.
    pub lifts: Vec<LiftHandover>,
    /// What changed since the day asked about.
    pub changed: ChangedSince,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
    /// Library version.
    pub version: String,
    /// Digest of the parameters in force.
    pub parameters: String,
}

/// Everything that another coach needs in a minute: where each lift stands, its gate and what is missing, overrides and
/// limits in force, pain, what was done and said last, and what changed since the end of a day.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`.
pub fn handover(log: &Log, today: Day, since: Day) -> Result<Handover, Error> {
    Diary::of(log)?.handover(today, since)
}

impl Diary<'_> {
    /// Everything that another coach needs in a minute. See [`handover`].
    ///
    /// # Errors
    /// As [`handover`].
    pub fn handover(&self, today: Day, since: Day) -> Result<Handover, Error> {
        self.check_today(today)?;
        let state = self.state();
        let events: Vec<&Event> = self.events().collect();
        let then = self.state_on(since)?;
        let (named, mut missing) = (state.parameters().is_some(), Vec::new());
        let decisions = if named { state.decide(today)? } else { Vec::new() };
        if !named {
            missing.push(Lacking::Parameters);
        }
        if state.clearance().is_none() {
            missing.push(Lacking::Clearance);
        }
        if state.body_mass().is_none() {
            missing.push(Lacking::BodyMass);
        }
        let lifts: Vec<LiftHandover> =
            decisions.into_iter().filter_map(|decision| lift(self, decision, &events, today)).collect();
        missing.extend(
            lifts.iter().filter(|lift| lift.last.is_none()).map(|lift| Lacking::SessionOf(lift.lift.clone())),
        );
        let (version, parameters) = state.names();
        Ok(Handover {
            stops: state.stops_on(today),
            today,
            lifter: self.head().lifter.id.clone(),
            age: self.head().lifter.oldest_on(today),
            reopening: stops(state),
            asks: state.asks().to_vec(),
            ill_since: state.ill_since_on(today),
            clearance: state.clearance().cloned(),
            body_mass: state.body_mass(),
            pain: pain(state, today),
            changed: changed(&then, state, &events, since),
            lifts,
            missing,
            cautions: self.cautions(today),
            version,
            parameters,
        })
    }
}

fn lift(diary: &Diary<'_>, decision: Decision, events: &[&Event], today: Day) -> Option<LiftHandover> {
    let state = diary.state();
    let stands = state.lift_state(&decision.lift)?;
    let (set, now) = (stands.parameters(), stands.now());
    let limits = state.view(&decision.lift, today).ok()?.limits().cloned().collect();
    let overruled = now.overruled.as_ref().filter(|given| given.expires >= today).map(|given| OverrideNow {
        load: given.load,
        until: given.expires,
        waits: decision.reasons.iter().any(|reason| matches!(reason, Reason::OverrideSuspended { .. })),
        who: given.who.clone(),
        why: events.iter().rev().find(|event| event.sequence == given.event).and_then(|event| {
            match &event.kind {
                EventKind::CoachOverride(said) => said.why.clone(),
                _ => None,
            }
        }),
    });
    let done_at = diary.sessions_of(&decision.lift).next_back().and_then(|done| done.named_place());
    Some(LiftHandover {
        purpose: stands.purpose(),
        height: set.start_height(decision.grant.place),
        moving: set.moving,
        ceiling: set.ceiling,
        gate: set.gate.clone(),
        criteria: set.criteria.clone(),
        overruled,
        limits,
        setup: now.setup.as_deref().cloned(),
        unguarded: set.over_the_body && now.unguarded,
        last: last_done(stands, events, done_at),
        lift: decision.lift,
        status: decision.status,
        granted: decision.grant,
        limit: decision.limit,
        gate_state: decision.gate,
        outlook: decision.outlook,
    })
}

fn last_done(stands: LiftState<'_>, events: &[&Event], place: Option<NamedPlace>) -> Option<LastDone> {
    let (event, done): (&Event, &LiftSession) = events.iter().rev().find_map(|event| match &event.kind {
        EventKind::SessionRecorded(session) => {
            session.lifts.iter().find(|done| done.lift == *stands.id()).map(|done| (*event, done))
        }
        _ => None,
    })?;
    let now = stands.now();
    let sitting = now.sittings.last().filter(|last| last.day == event.day && !last.asked_first);
    Some(LastDone {
        day: event.day,
        event: event.sequence,
        place,
        sets: done.sets.clone(),
        outcome: sitting.map(|sitting| sitting.outcome),
        short: now.short,
        cue: done.cue.clone(),
        note: event.note.clone(),
    })
}

fn changed(then: &State, now: &State, events: &[&Event], since: Day) -> ChangedSince {
    let after = || events.iter().filter(|event| event.day > since);
    let moved = now.lifts().filter_map(|lift| {
        let to = (lift.grant(), lift.status().clone());
        let from = then.lift_state(lift.id()).map(|lift| (lift.grant(), lift.status().clone()));
        (from.as_ref() != Some(&to)).then(|| LiftMoved { lift: lift.id().clone(), from, to })
    });
    let sessions = after().filter(|event| matches!(event.kind, EventKind::SessionRecorded(_))).count();
    ChangedSince {
        since,
        sessions: u32::try_from(sessions).unwrap_or(u32::MAX),
        lifts: moved.collect(),
        acts: after().filter_map(|event| act(event)).collect(),
    }
}

/// What is done beside training and the day's questions.
fn act(event: &Event) -> Option<ActSince> {
    let lift = match &event.kind {
        EventKind::SessionRecorded(_)
        | EventKind::NextDayReport(_)
        | EventKind::DayReport(_)
        | EventKind::PainReport(_)
        | EventKind::BodyMassRecorded(_) => return None,
        EventKind::CoachOverride(given) => Some(given.lift.clone()),
        EventKind::AdvanceAccepted(given) | EventKind::AdvanceDeclined(given) => Some(given.lift.clone()),
        EventKind::VariantChanged(given) | EventKind::RangeChanged(given) => Some(given.lift.clone()),
        EventKind::BarOrDiscsChanged(BarChanged { lift, .. })
        | EventKind::RaterChanged(BarChanged { lift, .. }) => lift.clone(),
        EventKind::RoleSet(given) => Some(given.lift.clone()),
        EventKind::CoachSignOff(given) => match &given.scope {
            SignOffScope::Gate(lift) => Some(lift.clone()),
            _ => None,
        },
        _ => None,
    };
    let (day, sequence, kind, note) = (event.day, event.sequence, event.kind.name(), event.note.clone());
    Some(ActSince { day, event: sequence, kind, lift, note })
}
