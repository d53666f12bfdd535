//! The rules, written apart from the guards: what must hold in every state and at every step.

use std::format;
use std::string::String;
use std::vec::Vec;

use super::super::state::State;
use super::super::status::Status;
use super::alphabet::{Act, FORGIVING, STRICT, kg, today};
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::quantity::Day;
use crate::record::{ClearanceStatus, Tuple};

fn ago(day: Day) -> i32 {
    today().since(day)
}

/// What must be said about a lift in this state, by the plain reading of the rules.
fn must_say(state: &State, at: usize) -> Vec<&'static str> {
    let lift = &state.lifts[at];
    let other = &state.lifts[1 - at];
    let region = &state.regions[0];
    let mut codes = Vec::new();
    let mut say = |holds: bool, code: &'static str| {
        if holds {
            codes.push(code);
        }
    };
    say(state.stop.is_some(), "symptom_stop");
    say(region.stop.is_some(), "pain_stop");
    say(state.clearance.is_none(), "clearance_missing");
    let clearance = state.clearance.as_ref();
    say(clearance.is_some_and(|given| given.status == ClearanceStatus::NotCleared), "not_cleared");
    let expired = |given: &super::super::state::ClearanceInForce| {
        ago(given.expires) > 0 && given.status != ClearanceStatus::NotCleared
    };
    say(clearance.is_some_and(expired), "clearance_expired");
    say(region.clear_needed > 0, "pain_block");
    let hurts = region.last.is_some_and(|(_, score)| score.score() > 0);
    let usual = region.usual.map(|(_, agreed, steady)| (ago(agreed), steady));
    say(hurts && usual.is_some_and(|(_, steady)| steady < 3), "usual_pain_unsteady");
    say(hurts && usual.is_some_and(|(age, _)| age > 4), "usual_pain_review");
    say(state.ill_since.is_some(), "clearance_after_illness");
    say(lift.partner_pain, "pair_pain");
    say(state.pain_asked != Some(true), "pain_not_asked");
    say(lift.status == Status::Learning, "learning_not_done");
    say(lift.status == Status::Consolidating, "consolidating");
    say(lift.status == Status::SteppingBack, "stepping_back");
    say(lift.status == Status::Returning, "returning");
    say(lift.status == Status::Maintaining, "maintaining");
    say(lift.status == Status::Retired, "retired");
    say(passing_days(state, at) < 2, "gate_not_open");
    let class = state
        .today
        .as_ref()
        .filter(|report| report.day == today())
        .map_or(DayClass::Unknown, |report| report.class);
    say(class == DayClass::Unknown, "day_unknown");
    say(class == DayClass::BadAgreeing, "bad_day");
    say(state.today.as_ref().is_some_and(|report| report.asks_first), "asks_first");
    let passes: Vec<bool> =
        lift.sittings.iter().filter(|each| each.outcome == Outcome::Pass).map(|each| each.bad_day).collect();
    say(!passes.is_empty() && passes.iter().all(|bad| *bad), "qualified_on_bad_days");
    say(lift.last_session.is_none_or(|last| ago(last) > 3), "stale");
    say(lift.moves.last().is_some_and(|(day, _)| ago(*day) < 3), "cooling_off");
    say(region.moves.iter().any(|day| ago(*day) < 2), "region_window");
    say(other.moves.last().is_some_and(|(day, _)| ago(*day) < 2), "pair_window");
    say(lift.fault.is_some() && lift.fault == other.fault, "pair_fault");
    say(at == STRICT && other.proven.is_none_or(|(day, _)| ago(day) > 4), "pair_proof_missing");
    // The next piece is 2 kg up; 24 to 30 is more than a tenth.
    say(lift.tuple.load >= kg(24.0), "no_loadable_step");
    say(at == STRICT && lift.tuple.load == kg(22.0), "ceiling");
    say(lift.unguarded, "alone_without_pins");
    say(state.unknown > 0, "unknown_event_present");
    codes
}

/// Distinct days of confirmed passes in a row, counted back from the last session; fails of one bad day are passed over.
fn passing_days(state: &State, at: usize) -> usize {
    let mut days: Vec<Day> = Vec::new();
    let mut neutral: Option<Day> = None;
    let sittings = &state.lifts[at].sittings;
    for sitting in sittings.iter().rev() {
        // A day counts as a whole: a fail on it spoils its passes.
        let failed = sittings.iter().any(|each| each.day == sitting.day && each.outcome == Outcome::Fail);
        match sitting.outcome {
            Outcome::Pass if failed => {}
            Outcome::Pass if !sitting.confirmed => {}
            Outcome::Pass => {
                if !days.contains(&sitting.day) {
                    days.push(sitting.day);
                }
            }
            Outcome::Fail
                if sitting.bad_day && !sitting.critical && neutral.is_none_or(|day| day == sitting.day) =>
            {
                neutral = Some(sitting.day);
            }
            Outcome::Fail => break,
            Outcome::NotScored => {}
        }
    }
    days.len()
}

/// Every state must say all that stands in the way.
pub(super) fn state_rule(state: &State) -> Option<String> {
    for at in [STRICT, FORGIVING] {
        let said: Vec<&str> = state.blockers(at, None, today()).iter().map(|reason| reason.code()).collect();
        let missing = must_say(state, at).into_iter().find(|code| !said.contains(code));
        if let Some(code) = missing {
            return Some(format!("{code} holds and is not said"));
        }
    }
    for lift in &state.lifts {
        if lift.return_cap.is_some_and(|cap| lift.status == Status::Returning && lift.tuple.load > cap) {
            return Some("a return above the load before the break".into());
        }
        if lift
            .overruled
            .as_ref()
            .is_some_and(|given| given.load > lift.tuple.load && lift.status == Status::StoppedRefer)
        {
            return Some("an override upward across a stop".into());
        }
    }
    if (state.stop.is_some() || state.regions[0].stop.is_some())
        && state.lifts.iter().any(|lift| lift.status != Status::StoppedRefer)
    {
        return Some("a lift goes on under a stop".into());
    }
    None
}

fn harder(from: &Tuple, to: &Tuple) -> Vec<&'static str> {
    let mut up = Vec::new();
    if to.rung > from.rung {
        up.push("rung");
    }
    if to.range > from.range {
        up.push("range");
    }
    if to.load > from.load {
        up.push("load");
    }
    up
}

/// What must hold of a step from one state to the next.
pub(super) fn step_rule(before: &State, act: Act, after: &State) -> Option<String> {
    for (at, (was, is)) in before.lifts.iter().zip(&after.lifts).enumerate() {
        let up = harder(&was.tuple, &is.tuple);
        let returned = was.return_cap.is_some_and(|cap| is.tuple.load <= cap)
            && is.tuple.rung == was.tuple.rung
            && is.tuple.range == was.tuple.range;
        if !up.is_empty()
            && !returned
            && let Some(rule) = move_rule(before, at, act, &was.tuple, &is.tuple, &up)
        {
            return Some(rule);
        }
        let left = was.status == Status::StoppedRefer && is.status != Status::StoppedRefer;
        if left && !matches!(act, Act::SignOff | Act::SignOffRegion) {
            return Some(format!("left its stop by: {act}"));
        }
        let waits = matches!(act, Act::WaitOne | Act::WaitThree);
        if waits && is.tuple.load > was.tuple.load {
            return Some("time alone raised a load".into());
        }
    }
    None
}

fn move_rule(before: &State, at: usize, act: Act, from: &Tuple, to: &Tuple, up: &[&str]) -> Option<String> {
    let lift = &before.lifts[at];
    let region = &before.regions[0];
    let class = before.today.as_ref().filter(|report| report.day == today()).map(|report| report.class);
    let other = &before.lifts[1 - at];
    let ceiling = if at == STRICT { kg(22.0) } else { kg(24.0) };
    let clearance = before.clearance.as_ref();
    let checks = [
        (up.len() == 1, "two dimensions at once"),
        (!up.contains(&"rung") || to.load.kg() <= from.load.kg() * 0.8, "a harder rung with too much load"),
        (to.load.kg() <= from.load.kg() * 1.1 + 1e-9, "a step above its cap"),
        (to.load <= ceiling, "above the ceiling"),
        (passing_days(before, at) >= 2, "without the gate"),
        (matches!(lift.status, Status::Holding | Status::ReadyToAdvance), "from a state that does not move"),
        (before.stop.is_none() && region.stop.is_none(), "under a stop"),
        (region.clear_needed == 0, "with pain"),
        (
            region.last.is_none_or(|(_, score)| score.score() == 0)
                || region.usual.is_some_and(|(_, agreed, steady)| ago(agreed) <= 4 && steady >= 3),
            "with pain that is not a steady usual",
        ),
        (before.ill_since.is_none(), "after an illness without a clearance"),
        (before.pain_asked == Some(true), "without an answer about pain"),
        (class == Some(DayClass::Ordinary), "on a day that is not ordinary"),
        (lift.last_session.is_some_and(|last| ago(last) <= 3), "on old evidence"),
        (lift.moves.last().is_none_or(|(day, _)| ago(*day) >= 3), "too soon after the last move"),
        (region.moves.iter().all(|day| ago(*day) >= 2), "too soon in the region"),
        (other.moves.last().is_none_or(|(day, _)| ago(*day) >= 2), "too soon in the pair"),
        (clearance.is_some_and(|given| ago(given.expires) <= 0), "without a clearance"),
        (
            clearance.is_none_or(|given| given.limits.is_empty() || to.load <= kg(20.0)),
            "above a clearance's limit",
        ),
        (!lift.unguarded, "alone without pins"),
        (before.unknown == 0, "with unknown events"),
        (before.today.as_ref().is_none_or(|report| !report.asks_first), "before a clinician was asked"),
        (window_fits(lift.moves.as_slice(), from, to), "more growth than the window allows"),
        (
            at == FORGIVING || other.proven.is_some_and(|(_, proven)| to.load <= proven),
            "above the forgiving lift",
        ),
    ];
    checks.iter().find(|(holds, _)| !holds).map(|(_, rule)| format!("moved {rule} (by: {act})"))
}

/// Growth over four days of at most a tenth.
fn window_fits(moves: &[(Day, crate::quantity::Mass)], from: &Tuple, to: &Tuple) -> bool {
    let before =
        moves.iter().filter(|(day, _)| ago(*day) < 4).map(|(_, load)| *load).min().unwrap_or(from.load);
    to.load <= from.load || to.load.kg() <= before.min(from.load).kg() * 1.1 + 1e-9
}
