//! The stops in force, from the log alone: whatever is planned, and though no session can be worked out.

use bismar::Error;
use bismar::answers::{Restriction, in_force_from};
use bismar::prescription::{SessionPlan, Verdict, next_session_from};
use bismar::progression::State;
use bismar::quantity::{Day, Name};
use bismar::record::{LiftPlan, Plan};
use bismar::text::Words;
use serde::{Deserialize, Serialize};

use crate::opened::Which;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "StopsAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: Which,
    today: Day,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "StopsAnswer"))]
pub(crate) struct Answer {
    /// What stands above everything else; empty where nothing is stopped.
    lines: Vec<String>,
    /// The lifts that are stopped, each with what stops it. None where no lift is set.
    lifts: Vec<StoppedLift>,
    in_force: Vec<InForce>,
    /// Whether anything is set for the lifts.
    settings: bool,
}

/// A lift that is stopped.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct StoppedLift {
    lift: Name,
    why: String,
}

/// One thing that stops.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "StopsInForce"))]
pub(crate) struct InForce {
    /// Name of its kind, as the library has it.
    kind: &'static str,
    /// What it is, in words.
    pub(crate) what: String,
    pub(crate) since: Day,
}

impl InForce {
    /// None where it narrows and stops nothing.
    pub(crate) fn of(words: &Words<'_>, one: &Restriction) -> Option<InForce> {
        let since = one.stops_since()?;
        Some(InForce { kind: one.kind(), what: words.restriction(one), since })
    }
}

/// A session of every lift there is.
fn session(state: &State, today: Day) -> Result<SessionPlan, Error> {
    let plan = Plan::of([]).with_lifts(state.lifts().map(|lift| LiftPlan::new(lift.id().clone())).collect());
    next_session_from(state, &plan, today)
}

/// The stops of a log.
pub(crate) fn stops(asked: Asked) -> Result<Answer, Error> {
    let opened = asked.log.open()?;
    let state = &opened.state;
    let today = state.last().map_or(asked.today, |(last, _)| asked.today.max(last));
    let settings = state.parameters().is_some();
    let words = state.parameters().map_or_else(Words::plain, Words::of);
    let mut lines = words.stops(&state.stops_on(today), Some(today));
    let mut lifts = Vec::new();
    let halted = state.lifts().any(|lift| lift.status().is_stopped());
    if settings && (halted || !lines.is_empty()) {
        let session = session(state, today)?;
        lines = words.session(&session).stop;
        let stopped = session.lifts.iter().filter(|lift| lift.verdict == Verdict::Stop);
        lifts = stopped
            .map(|lift| StoppedLift { lift: lift.lift.clone(), why: words.stop(lift).unwrap_or_default() })
            .collect();
    }
    let restrictions = in_force_from(state, today)?.restrictions;
    // An illness noted in advance stops nothing yet.
    let in_force = restrictions.iter().filter_map(|one| InForce::of(&words, one));
    let in_force = in_force.filter(|one| one.since <= today).collect();
    Ok(Answer { lines, lifts, in_force, settings })
}
