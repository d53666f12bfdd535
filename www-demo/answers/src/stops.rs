//! The stops in force, from the log alone: whatever is planned, and though no session can be worked out.

use bismar::Error;
use bismar::prescription::{SessionPlan, Verdict, next_session_from};
use bismar::progression::{PainZone, State, pain_zone};
use bismar::quantity::{Day, Name, Pain};
use bismar::record::{ClearanceStatus, Event, EventKind, LiftPlan, Log, PainAnswer, Plan, Policy};
use bismar::text::{self, Words};
use serde::{Deserialize, Serialize};

use crate::opened::{Opened, Which};

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
#[derive(Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct InForce {
    /// Name of its kind: sign, refused, pain, illness or ask.
    kind: &'static str,
    /// What it is, in words.
    what: String,
    since: Day,
    /// Where it hurts.
    #[serde(skip)]
    region: Option<Name>,
}

/// A stop that is in force here and would not be with a file.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct StopGone {
    what: String,
    since: Day,
    /// What reported it is not in the file any more, or says something else there.
    taken_back: bool,
}

/// Each thing that stops, by what it is.
pub(crate) fn in_force(state: &State, today: Day) -> Vec<InForce> {
    let words = state.parameters().map_or_else(Words::plain, Words::of);
    let mut all = Vec::new();
    if let Some(stop) = state.stop() {
        let since = stop.since;
        let mut add =
            |kind, what: &str| all.push(InForce { kind, what: what.to_string(), since, region: None });
        stop.signs.iter().for_each(|sign| add("sign", text::stop_sign(*sign)));
        if stop.signs.is_empty() {
            add("refused", "the answer about clearance was not to train");
        }
    }
    all.extend(state.regions().iter().filter_map(|region| {
        let stop = region.stop.as_ref()?;
        let what = format!("pain in the {}", words.region_name(&region.id));
        Some(InForce { kind: "pain", what, since: stop.since, region: Some(region.id.clone()) })
    }));
    all.extend(state.ill_since_on(today).map(|since| InForce {
        kind: "illness",
        what: "an illness or operation, with no new clearance yet".to_string(),
        since,
        region: None,
    }));
    all.extend(state.asks().iter().map(|open| InForce {
        kind: "ask",
        what: text::ask(open.ask).to_string(),
        since: open.since,
        region: None,
    }));
    all
}

/// What is in force in one state on that day and not in the other, whenever it was reported.
pub(crate) fn opened(before: &State, after: &State, today: Day) -> Vec<InForce> {
    let still = in_force(after, today);
    let gone = |one: &InForce| !still.iter().any(|other| (other.kind, &other.what) == (one.kind, &one.what));
    in_force(before, today).into_iter().filter(gone).collect()
}

/// What an event tells of pain.
fn pains(kind: &EventKind) -> &[PainAnswer] {
    match kind {
        EventKind::PainReport(answer) => std::slice::from_ref(answer),
        EventKind::DayReport(report) => report.pain.as_deref().unwrap_or_default(),
        EventKind::SessionRecorded(session) => session.pain.as_deref().unwrap_or_default(),
        EventKind::NextDayReport(report) => report.pain.as_deref().unwrap_or_default(),
        _ => &[],
    }
}

/// Whether an event reports that.
fn reports(event: &Event, one: &InForce, policy: &Policy) -> bool {
    match &event.kind {
        EventKind::SymptomReport(report) => {
            one.kind == "sign" && report.signs.iter().any(|sign| text::stop_sign(*sign) == one.what)
        }
        EventKind::ClearanceRecorded(clearance) => {
            one.kind == "refused" && clearance.status == ClearanceStatus::NotCleared
        }
        EventKind::LayoffNoted(_) if one.kind == "illness" => true,
        EventKind::DayReport(report) if one.kind == "ask" => {
            report.asks.iter().flatten().any(|ask| text::ask(*ask) == one.what)
        }
        kind => {
            let stops = |answer: &PainAnswer| pain_zone(answer, Pain::NONE, policy) == PainZone::Stop;
            pains(kind).iter().any(|answer| one.region.as_ref() == Some(&answer.region) && stops(answer))
        }
    }
}

/// The stops in force here that would be gone with a file's log.
pub(crate) fn gone(here: &Opened, there: &Log, state: &State) -> Result<Vec<StopGone>, Error> {
    let (own, others) = (here.log.effective()?, there.effective()?);
    // An illness that is noted here in advance would be gone as well.
    let to_come = own.iter().filter_map(|event| match &event.kind {
        EventKind::LayoffNoted(layoff) => Some(layoff.from),
        _ => None,
    });
    let Some(last) = own.last().map(|event| event.day) else { return Ok(Vec::new()) };
    let opens = opened(&here.state, state, to_come.fold(last, Day::max));
    if opens.is_empty() {
        return Ok(Vec::new());
    }
    let policy = here.state.parameters().map(|all| all.policy.clone()).unwrap_or_default();
    let stays = |event: &Event, one: &InForce| {
        others.iter().any(|other| {
            other.sequence == event.sequence
                && if one.kind == "pain" { other.kind == event.kind } else { reports(other, one, &policy) }
        })
    };
    Ok(opens
        .into_iter()
        .map(|one| {
            let taken_back = own.iter().any(|event| reports(event, &one, &policy) && !stays(event, &one));
            StopGone { taken_back, what: one.what, since: one.since }
        })
        .collect())
}

/// A session of every lift there is.
pub(crate) fn session(state: &State, today: Day) -> Result<SessionPlan, Error> {
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
    Ok(Answer { lines, lifts, in_force: in_force(state, today), settings })
}
