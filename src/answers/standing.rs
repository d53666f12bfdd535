//! Stops in force and what is known of pain, as a handover tells them.

use alloc::vec::Vec;

use super::handover::{PainNow, StopNow};
use crate::progression::State;
use crate::quantity::{Day, Pain};

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
