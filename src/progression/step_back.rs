//! One step easier, to look again.

use super::lift::{Lift, Now};
use super::status::{Purpose, Status};
use crate::quantity::Day;
use crate::reason::OverrideEnd;
use crate::record::{Grant, Policy};

/// Goes one step easier and looks again.
pub(crate) fn step_back(lift: &mut Lift, on: Day, policy: &Policy) {
    let before = lift.now.grant;
    let grant = super::moves::one_step_back(lift, policy);
    // Where nothing is lighter a kept lift does not drift within its band: it looks again like any other.
    let on_plan = grant != before && is_within_band(&lift.now, &grant);
    let now = &mut lift.now;
    now.stand_easier(grant, on);
    now.keep_easing_only(OverrideEnd::StepBack, &lift.set, before.place);
    if on_plan {
        return;
    }
    now.forgo_restoring();
    let from = (grant.load() < before.load()).then_some(before.load());
    match &mut now.status {
        Status::Returning { way, passes } => (way.stepped_from, *passes) = (from, 0),
        _ => now.enter(Status::SteppingBack { from, passes: 0 }, on),
    }
}

/// Whether a maintained lift that goes there stays within the band that the coach has set.
fn is_within_band(now: &Now, to: &Grant) -> bool {
    let band = match now.purpose {
        Purpose::Maintain { not_below } if now.status == Status::Maintaining => not_below,
        _ => None,
    };
    band.is_some_and(|lowest| to.load() >= lowest && now.grant.with_load(to.load()) == *to)
}
