//! The next session: each lift of the plan through the stages, in their fixed order.

use alloc::string::String;
use alloc::vec::Vec;

use super::draft::Draft;
use super::lift::{LiftToday, Verdict};
use super::stage::Stage;
use super::time;
use crate::caution::Caution;
use crate::condition::DayClass;
use crate::error::Error;
use crate::progression::{State, fold};
use crate::quantity::Day;
use crate::reason::Reason;
use crate::record::{Log, Plan};

/// Today's session: for each lift of the plan what to do, and why.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SessionPlan {
    /// Every stop of the lifter, whatever is planned, the gravest first; then what stops a lift of the plan beyond them. Each
    /// once; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// What to show beside all of it.
    pub cautions: Vec<Caution>,
    /// The day it is for.
    pub today: Day,
    /// Class of the day, as reported.
    pub day: DayClass,
    /// The lifts in the order of the plan.
    pub lifts: Vec<LiftToday>,
    /// Library version.
    pub version: String,
    /// Digest of the parameters in force.
    pub parameters: String,
}

/// Today's session from a whole log.
///
/// # Errors
/// What [`fold`] and [`next_session_from`] report.
pub fn next_session(log: &Log, plan: &Plan, today: Day) -> Result<SessionPlan, Error> {
    next_session_from(&fold(log)?, plan, today)
}

/// Today's session from a folded state.
///
/// # Errors
/// `before_last_event`, `no_parameters`, `unknown_lift`; `unknown_name` for an implement called unavailable that is not there;
/// and what [`Plan::check`] reports.
pub fn next_session_from(state: &State, plan: &Plan, today: Day) -> Result<SessionPlan, Error> {
    plan.check()?;
    state.check_today(today)?;
    let then = state.as_of(today);
    plan.check_against(then.declared()?)?;
    let mut stages = Vec::with_capacity(plan.lifts.len());
    for (at, lift) in plan.lifts.iter().enumerate() {
        let view =
            then.view(&lift.lift, today).map_err(|error| error.within(&alloc::format!("lifts[{at}]")))?;
        stages.push(Stage { view, plan, lift, decision: then.decision(&view), today });
    }
    let mut drafts: Vec<(Draft, bool)> =
        stages.iter().map(|stage| (stage.draft(true), stage.lift.keep)).collect();
    let mut uneased: Vec<(Draft, bool)> =
        stages.iter().zip(&drafts).map(|(stage, (draft, keep))| (stage.uneased(draft), *keep)).collect();
    // Of what the plan says and what the day says the more careful counts.
    if let Some(minutes) = plan.minutes.into_iter().chain(then.minutes_on(today)).min() {
        let short = short_for_whole(&stages, &drafts, minutes);
        time::fit(&mut drafts, minutes);
        drafts.iter_mut().zip(short).for_each(|((draft, _), short)| draft.short_for_whole = short);
        time::fit(&mut uneased, minutes);
    }
    for ((stage, (draft, _)), (uneased, _)) in stages.iter().zip(&mut drafts).zip(&uneased) {
        stage.ease_the_same(draft, uneased);
    }
    let lifts: Result<Vec<LiftToday>, Error> =
        stages.iter().zip(drafts).map(|(stage, (draft, _))| stage.finish(draft)).collect();
    let (version, parameters) = then.names();
    let lifts = lifts?;
    let stops = stops(&then, &lifts);
    let cautions = session_cautions(today, &then, &stages, stops.is_empty());
    Ok(SessionPlan { stops, cautions, today, day: then.class_on(today), lifts, version, parameters })
}

/// Of each lift of which the plan or an easy week asks less, whether the whole of its work would not fit into the time there is.
fn short_for_whole(stages: &[Stage<'_>], drafts: &[(Draft, bool)], minutes: u16) -> Vec<bool> {
    let cut = |reason: &Reason| matches!(reason, Reason::FewerSets { .. } | Reason::ShortOfTime);
    let less = |reason: &Reason| matches!(reason, Reason::PlanAsksLess | Reason::EasyWeek);
    let short = |at: usize, stage: &Stage<'_>, draft: &Draft| {
        if !draft.against.iter().any(less) {
            return false;
        }
        let mut whole = drafts.to_vec();
        if let Some((own, _)) = whole.get_mut(at) {
            *own = stage.draft(false);
        }
        time::fit(&mut whole, minutes);
        whole.get(at).is_some_and(|(own, _)| own.against.iter().any(cut))
    };
    stages.iter().zip(drafts).enumerate().map(|(at, (stage, (draft, _)))| short(at, stage, draft)).collect()
}

fn stops(state: &State, lifts: &[LiftToday]) -> Vec<Reason> {
    let mut stops = state.stops();
    let halted = lifts.iter().filter(|lift| lift.verdict == Verdict::Stop);
    for reason in halted.flat_map(|lift| &lift.reasons).filter(|reason| reason.stops_lift()) {
        if !stops.contains(reason) {
            stops.push(reason.clone());
        }
    }
    stops
}

/// What to show beside the whole session: a stop comes first, with the emergency line where a sign asks for it, and then
/// nothing about good results.
fn session_cautions(today: Day, state: &State, stages: &[Stage<'_>], nothing_stops: bool) -> Vec<Caution> {
    let mut cautions = Vec::new();
    let stopped = state.stop().is_some() || state.regions().iter().any(|region| region.stop.is_some());
    if stopped {
        cautions.extend(Caution::OF_A_STOP);
    }
    cautions.push(Caution::ExaminesNobody);
    if !state.asks().is_empty() {
        cautions.push(Caution::AskBeforeToday);
    }
    if state.clearance().is_none() {
        cautions.push(Caution::AskBeforeStarting);
    }
    // A limit of one region says nothing about the others.
    if stages.is_empty() || !stages.iter().all(|stage| stage.view.limits_on_record()) {
        cautions.push(Caution::NoPressureLimit);
    }
    if state.fallen_mass(today).is_some() {
        cautions.push(Caution::MassFalling);
    }
    if state.unknown_events() > 0 {
        cautions.push(Caution::UnknownEvents);
    }
    if nothing_stops {
        cautions.push(Caution::HoldingIsGood);
    }
    cautions
}
