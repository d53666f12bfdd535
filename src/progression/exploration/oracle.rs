//! The rules, written apart from the guards: what must hold in every state and at every step.

use std::format;
use std::string::String;
use std::vec::Vec;

use super::super::lift::Lift;
use super::super::region::RegionState;
use super::super::state::State;
use super::super::status::Status;
use super::alphabet::Act;
use super::small_world::{FORGIVING, LIFTS, STRICT, find, kg, today};
use crate::condition::DayClass;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass};
use crate::record::{ClearanceStatus, Grant};

fn ago(day: Day) -> i32 {
    today().since(day)
}

/// The regions that concern a lift: those it loads, and those it had in which something is open.
fn regions<'a>(state: &'a State, lift: &'a Lift) -> impl Iterator<Item = &'a RegionState> {
    let own = |id| lift.set.regions.contains(id) || lift.now.former.contains(id);
    state.shared.regions.iter().filter(move |region| own(&region.id))
}

fn is_loaded(state: &State, region: &RegionState) -> bool {
    state.lifts.iter().any(|lift| lift.set.regions.contains(&region.id))
}

/// Whether pain stops this lift: in a region of its own, or in one that no lift loads.
fn pain_stops(state: &State, lift: &Lift) -> bool {
    let own = regions(state, lift).any(|region| region.stop.is_some());
    own || state.shared.regions.iter().any(|region| region.stop.is_some() && !is_loaded(state, region))
}

/// Whether a limit names a region that a lift once loaded and none loads any more.
fn limit_is_lost(state: &State) -> bool {
    let limited = state.shared.clearance.iter().flat_map(|given| &given.limits);
    limited.filter_map(|limit| limit.region.as_ref()).any(|id| {
        let region = state.shared.regions.iter().find(|region| region.id == *id).unwrap();
        region.lifted && !is_loaded(state, region)
    })
}

fn limited_to(state: &State, lift: &Lift) -> bool {
    let limits = state.shared.clearance.iter().flat_map(|given| &given.limits);
    limits
        .filter_map(|limit| limit.region.as_ref())
        .any(|id| regions(state, lift).any(|region| region.id == *id))
}

fn other_of<'a>(state: &'a State, id: &str) -> Option<&'a Lift> {
    find(state, STRICT)?;
    find(state, if id == STRICT { FORGIVING } else { STRICT })
}

/// Pain on the last three training days: rising, or never below 3.
fn persists(region: &RegionState) -> bool {
    match region.scores.as_slice() {
        [(_, a), (_, b), (_, c)] => (a < b && b < c) || [a, b, c].iter().all(|score| score.score() >= 3),
        _ => false,
    }
}

/// What must be said about a lift in this state, by the plain reading of the rules.
fn must_say(state: &State, id: &str) -> Vec<&'static str> {
    let Some(lift) = find(state, id) else { return Vec::new() };
    let (now, shared) = (&lift.now, &state.shared);
    let other = other_of(state, id).map(|other| &other.now);
    let own: Vec<&RegionState> = regions(state, lift).collect();
    let mut codes = Vec::new();
    let mut say = |holds: bool, code: &'static str| {
        if holds {
            codes.push(code);
        }
    };
    say(shared.stop.is_some(), "symptom_stop");
    say(pain_stops(state, lift), "pain_stop");
    say(limit_is_lost(state), "limit_without_lift");
    say(shared.clearance.is_none(), "clearance_missing");
    let clearance = shared.clearance.as_ref();
    say(clearance.is_some_and(|given| given.status == ClearanceStatus::NotCleared), "not_cleared");
    let expired = |given: &super::super::shared::ClearanceInForce| {
        ago(given.expires) > 0 && given.status != ClearanceStatus::NotCleared
    };
    say(clearance.is_some_and(expired), "clearance_expired");
    say(own.iter().any(|region| region.clear_needed > 0), "pain_block");
    say(own.iter().any(|region| persists(region)), "pain_persists");
    let hurting = |region: &&&RegionState| region.last.is_some_and(|(_, score)| score.score() > 0);
    let usual: Vec<(i32, u8)> = own
        .iter()
        .filter(hurting)
        .filter_map(|region| region.usual.map(|(_, agreed, steady)| (ago(agreed), steady)))
        .collect();
    say(usual.iter().any(|(_, steady)| *steady < 3), "usual_pain_unsteady");
    say(usual.iter().any(|(age, _)| *age > 4), "usual_pain_review");
    say(shared.ill_since.is_some(), "clearance_after_illness");
    say(now.partner_pain, "pair_pain");
    say(shared.pain_asked != Some(true), "pain_not_asked");
    say(now.status == Status::Learning, "learning_not_done");
    say(now.status == Status::Consolidating, "consolidating");
    say(matches!(now.status, Status::SteppingBack { .. }), "stepping_back");
    say(matches!(now.status, Status::Returning { .. }), "returning");
    say(matches!(now.status, Status::Resting { .. }), "resting");
    say(now.status == Status::Maintaining, "maintaining");
    say(now.status == Status::Retired, "retired");
    say(passing_days(lift) < 2, "gate_not_open");
    say(now.sittings.last().is_some_and(|last| !last.confirmed), "pass_provisional");
    say(now.short.is_some(), "not_at_grant");
    let hard = now.sittings.iter().rev().take(3).filter(|sitting| sitting.short_of_reserve).count();
    say(hard >= 2, "reserve_short");
    let report = shared.today.as_ref().filter(|report| report.day == today());
    let class = report.map_or(DayClass::Unknown, |report| report.class);
    say(class == DayClass::Unknown, "day_unknown");
    say(class == DayClass::BadAgreeing, "bad_day");
    say(!shared.asks.is_empty(), "asks_first");
    say(report.is_none_or(|report| !report.asks_asked), "asks_not_asked");
    let passes: Vec<bool> =
        now.sittings.iter().filter(|each| each.outcome == Outcome::Pass).map(|each| each.bad_day).collect();
    say(!passes.is_empty() && passes.iter().all(|bad| *bad), "qualified_on_bad_days");
    say(now.last_session.is_none(), "never_trained");
    say(now.last_session.is_some_and(|last| ago(last) > 3), "stale");
    say(now.moves.last().is_some_and(|(day, _)| ago(*day) < 3), "cooling_off");
    say(own.iter().any(|region| region.moves.iter().any(|day| ago(*day) < 2)), "region_window");
    if let Some(other) = other {
        say(other.moves.last().is_some_and(|(day, _)| ago(*day) < 2), "pair_window");
        say(now.fault.is_some() && now.fault == other.fault, "pair_fault");
        say(id == STRICT && other.proven.is_none_or(|(day, _)| ago(day) > 4), "pair_proof_missing");
        // One full day of rest between the lifts of a pair.
        say(other.last_session.is_some_and(|day| ago(day) < 2), "pair_rest");
    }
    // The next piece is 2 kg up; 24 to 30 is more than a tenth, and the bar's discs end at 24.
    say(now.grant.load() >= kg(24.0), "no_loadable_step");
    say(id == STRICT && now.grant.load() == kg(22.0), "ceiling");
    say(now.unguarded, "alone_without_pins");
    say(shared.unknown > 0, "unknown_event_present");
    codes
}

/// Distinct days of confirmed passes in a row, counted back from the last session; fails of one day below the usual are
/// passed over.
fn passing_days(lift: &Lift) -> usize {
    let mut days: Vec<Day> = Vec::new();
    let mut neutral: Option<Day> = None;
    let sittings = &lift.now.sittings;
    for sitting in sittings.iter().rev() {
        // A day counts as a whole: a fail on it spoils its passes.
        let failed = sittings.iter().any(|each| each.day == sitting.day && each.outcome == Outcome::Fail);
        match sitting.outcome {
            Outcome::Pass if failed || !sitting.confirmed => {}
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
    // A break asks for its way back before anything is said about a move.
    let state = &state.as_of(today());
    for view in state.views(today()) {
        let id = view.lift.set.id.as_str();
        let blockers = state.blockers(&view.lift.set.id, None, today()).unwrap();
        let said: Vec<&str> = blockers.iter().map(|reason| reason.code()).collect();
        if let Some(code) = must_say(state, id).into_iter().find(|code| !said.contains(code)) {
            return Some(format!("{code} holds and is not said"));
        }
    }
    for lift in &state.lifts {
        let (now, load) = (&lift.now, lift.now.grant.load());
        if matches!(now.status, Status::Returning { way, .. } if load > way.cap) {
            return Some("a return above the load before the break".into());
        }
        let upward = now.overruled.as_ref().is_some_and(|given| given.load > load);
        if upward && now.status.is_stopped() {
            return Some("an override upward across a stop".into());
        }
        if now.status.is_ready() && !now.last_passed() {
            return Some("an offer after a session that was not the work granted, or did not pass".into());
        }
        let stopped = state.shared.stop.is_some() || pain_stops(state, lift);
        if stopped != now.status.is_stopped() {
            return Some(format!("stopped: {stopped}, and the lift is {}", now.status.as_str()));
        }
    }
    None
}

fn harder(from: &Grant, to: &Grant) -> Vec<&'static str> {
    let mut up = Vec::new();
    if to.place.rung > from.place.rung {
        up.push("rung");
    }
    if to.place.range > from.place.range {
        up.push("range");
    }
    if to.load() > from.load() {
        up.push("load");
    }
    up
}

/// What must hold of a step from one state to the next.
pub(super) fn step_rule(before: &State, act: Act, after: &State) -> Option<String> {
    for id in LIFTS {
        let (Some(was), Some(is)) = (find(before, id), find(after, id)) else { continue };
        let up = harder(&was.now.grant, &is.now.grant);
        let back = was.now.status.way_back().is_some_and(|way| is.now.grant.load() <= way.cap);
        let returned = back && is.now.grant.place == was.now.grant.place;
        // Another kind of implement begins at its start, whatever the number on the old one was.
        let anew =
            matches!(act, Act::OtherImplement | Act::SameParameters | Act::StrictLeftOut | Act::OtherRegion);
        let starts = anew && is.now.grant == is.set.start;
        if !up.is_empty()
            && !returned
            && !starts
            && let Some(rule) = move_rule(before, was, act, &is.now.grant, &up)
        {
            return Some(rule);
        }
        let left = was.now.status.is_stopped() && !is.now.status.is_stopped();
        if left && !matches!(act, Act::SignOff | Act::SignOffRegion | Act::SignOffNeck) && !anew {
            return Some(format!("left its stop by: {act}"));
        }
        let waits = matches!(act, Act::WaitOne | Act::WaitThree);
        if waits && is.now.grant.load() > was.now.grant.load() {
            return Some("time alone raised a load".into());
        }
    }
    lost(before, act, after)
}

/// No act but a sign-off, a clearance or its own answer ends what is open.
fn lost(before: &State, act: Act, after: &State) -> Option<String> {
    let signs_off = matches!(act, Act::SignOff | Act::SignOffRegion | Act::SignOffNeck);
    let stops = |state: &State| -> Vec<bool> {
        let regions = state.shared.regions.iter().map(|region| region.stop.is_some());
        core::iter::once(state.shared.stop.is_some()).chain(regions).collect()
    };
    let ended = stops(before).iter().zip(stops(after)).any(|(was, is)| *was && !is);
    if ended && !signs_off {
        return Some(format!("a stop was lost by: {act}"));
    }
    let answers = matches!(act, Act::FeverOver | Act::FallCleared | Act::Cleared | Act::Limited);
    let asks = |state: &State| state.shared.asks.len();
    if asks(after) < asks(before) && !answers {
        return Some(format!("an ask was lost by: {act}"));
    }
    None
}

fn move_rule(before: &State, was: &Lift, act: Act, to: &Grant, up: &[&str]) -> Option<String> {
    let (now, shared) = (&was.now, &before.shared);
    let id = was.set.id.as_str();
    let from = &now.grant;
    let own: Vec<&RegionState> = regions(before, was).collect();
    let report = shared.today.as_ref().filter(|report| report.day == today());
    let other = other_of(before, id).map(|other| &other.now);
    let ceiling = if id == STRICT { kg(22.0) } else { kg(24.0) };
    let clearance = shared.clearance.as_ref();
    let calm = |region: &&RegionState| {
        region.last.is_none_or(|(_, score)| score.score() == 0)
            || region.usual.is_some_and(|(_, agreed, steady)| ago(agreed) <= 4 && steady >= 3)
    };
    let hard = now.sittings.iter().rev().take(3).filter(|sitting| sitting.short_of_reserve).count();
    let checks = [
        (up.len() == 1, "two dimensions at once"),
        (
            !up.contains(&"rung") || to.load().kg() <= from.load().kg() * 0.8,
            "a harder rung with too much load",
        ),
        (to.load().kg() <= from.load().kg() * 1.1 + 1e-9, "a step above its cap"),
        (to.load() <= ceiling, "above the ceiling"),
        (passing_days(was) >= 2, "without the gate"),
        (now.last_passed() && now.short.is_none(), "after a session that showed something else"),
        (now.sittings.last().is_some_and(|last| last.confirmed), "before the morning after"),
        (hard < 2, "with too little in reserve"),
        (
            matches!(now.status, Status::Holding | Status::ReadyToAdvance { .. }),
            "from a state that does not move",
        ),
        (shared.stop.is_none() && !pain_stops(before, was), "under a stop"),
        (!limit_is_lost(before), "under a limit that no lift has any more"),
        (own.iter().all(|region| region.clear_needed == 0), "with pain"),
        (own.iter().all(|region| !persists(region)), "with pain that stays"),
        (own.iter().all(calm), "with pain that is not a steady usual"),
        (shared.ill_since.is_none(), "after an illness without a clearance"),
        (shared.pain_asked == Some(true), "without an answer about pain"),
        (report.is_some_and(|report| report.class == DayClass::Ordinary), "on a day that is not ordinary"),
        (report.is_some_and(|report| report.asks_asked), "on a day on which nobody asked"),
        (shared.asks.is_empty(), "before what was asked is answered"),
        (now.last_session.is_some_and(|last| ago(last) <= 3), "on old evidence"),
        (now.moves.last().is_none_or(|(day, _)| ago(*day) >= 3), "too soon after the last move"),
        (own.iter().all(|region| region.moves.iter().all(|day| ago(*day) >= 2)), "too soon in the region"),
        (
            other.is_none_or(|other| other.moves.last().is_none_or(|(day, _)| ago(*day) >= 2)),
            "too soon in the pair",
        ),
        (
            other.is_none_or(|other| other.last_session.is_none_or(|day| ago(day) >= 2)),
            "without a day of rest in the pair",
        ),
        (
            other.is_none_or(|other| now.fault.is_none() || now.fault != other.fault),
            "with the fault of its pair",
        ),
        (
            clearance
                .is_some_and(|given| ago(given.expires) <= 0 && given.status != ClearanceStatus::NotCleared),
            "without a clearance",
        ),
        (!limited_to(before, was) || to.load() <= kg(20.0), "above a clearance's limit"),
        (!now.unguarded, "alone without pins"),
        (shared.unknown == 0, "with unknown events"),
        (window_fits(now.moves.as_slice(), from, to), "more growth than the window allows"),
        (
            id == FORGIVING
                || other.is_none_or(|other| {
                    other.proven.is_some_and(|(day, proven)| ago(day) <= 4 && to.load() <= proven)
                }),
            "above the forgiving lift",
        ),
    ];
    checks.iter().find(|(holds, _)| !holds).map(|(_, rule)| format!("moved {rule} (by: {act})"))
}

/// Growth over four days of at most a tenth.
fn window_fits(moves: &[(Day, Mass)], from: &Grant, to: &Grant) -> bool {
    let before =
        moves.iter().filter(|(day, _)| ago(*day) < 4).map(|(_, load)| *load).min().unwrap_or(from.load());
    to.load() <= from.load() || to.load().kg() <= before.min(from.load()).kg() * 1.1 + 1e-9
}
