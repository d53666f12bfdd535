//! Stops in force and what is known of pain, as a handover tells them.

use alloc::borrow::Cow;
use alloc::vec::Vec;

use super::handed_on::{PainNow, StopNow};
use crate::progression::{State, fold, fold_on};
use crate::quantity::{Day, Pain};
use crate::reason::Reason;
use crate::record::{Event, Log};

pub(super) fn stops(state: &State) -> Vec<StopNow> {
    let regions = state.regions().iter().map(|region| (Some(region.id.clone()), region.stop.as_ref()));
    let all = core::iter::once((None, state.stop())).chain(regions);
    let now = all.filter_map(|(region, stop)| {
        let stop = stop?;
        let (signs, features) = (stop.signs.clone(), stop.features.clone());
        let (since, cleared, signed) = (stop.since, stop.cleared, stop.signed);
        Some(StopNow { region, since, signs, features, cleared, signed })
    });
    now.collect()
}

/// The same as reasons, of a log whose events may not all be taken in order: what cannot be is left out, and whatever the
/// others stop is told.
pub(super) fn stops_as_far_as_read(log: &Log, today: Day) -> Vec<Reason> {
    if let Ok(state) = fold(log) {
        return state.stops_on(today);
    }
    let mut state = State::before(log);
    let Ok(told) = log.as_told() else { return state.stops_on(today) };
    let mut taken: Vec<Cow<'_, Event>> = Vec::new();
    for event in told.events {
        if event.check_in(log.version).is_err() {
            continue;
        }
        let corrected = told.corrected.concerns(event.sequence);
        let again = corrected || state.changes_the_past(&event);
        let alone = if again { None } else { Some(state.clone().applied(&event)) };
        taken.push(event);
        match alone.unwrap_or_else(|| fold_on(State::before(log), 0, &taken, &told.corrected)) {
            Ok(next) => state = next,
            Err(_) => drop(taken.pop()),
        }
    }
    state.stops_on(today)
}

pub(super) fn pain(state: &State, today: Day) -> Vec<PainNow> {
    let policy = state.parameters().map(|all| &all.policy);
    let told = state.regions().iter().filter_map(|region| {
        let last = region.last?;
        let speaks = last.1 > Pain::NONE || region.usual.is_some() || region.is_open();
        speaks.then(|| PainNow {
            region: region.id.clone(),
            last,
            usual: region.usual.map(|(level, agreed, _)| (agreed, level)),
            clear_needed: region.clear_needed,
            persists: policy.is_some_and(|policy| region.persists(policy, today)),
        })
    });
    told.collect()
}
