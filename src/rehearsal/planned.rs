//! The plan against the parameters.

use alloc::string::ToString;
use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::quantity::Name;
use crate::record::{LiftPlan, Parameters, Plan, TrackParameters};

pub(super) fn look(parameters: &Parameters, plan: &Plan, findings: &mut Vec<Finding>) {
    if let Err(error) = plan.check() {
        let (error, field) = (error.code().as_str().to_string(), error.field().to_string());
        findings.push(Finding::whole(Found::PlanRefused { error, field }));
    }
    for implement in plan.unavailable.iter().filter(|id| parameters.implement(id).is_none()) {
        findings.push(Finding::whole(Found::UnavailableUnknown { implement: implement.clone() }));
    }
    for lift in &plan.lifts {
        match parameters.track_at(&lift.track).and_then(|at| parameters.tracks.get(at)) {
            None => findings.push(Finding::about(&lift.track, Found::UnknownTrack)),
            Some(track) => against_grant(lift, track, findings),
        }
    }
    let planned = |name: &Name| plan.lifts.iter().any(|lift| lift.track == *name);
    for track in parameters.tracks.iter().filter(|track| !planned(&track.name)) {
        findings.push(Finding::about(&track.name, Found::NotPlanned));
    }
    for pair in parameters.pairs.iter().filter(|pair| planned(&pair.strict) && planned(&pair.forgiving)) {
        let forgiving = pair.forgiving.clone();
        findings.push(Finding::about(&pair.strict, Found::PairInOneSession { forgiving }));
    }
}

fn against_grant(lift: &LiftPlan, track: &TrackParameters, findings: &mut Vec<Finding>) {
    let (granted_sets, granted_reps) = (track.start.sets, track.start.reps);
    let (sets, reps) = (lift.sets.unwrap_or(granted_sets), lift.reps.unwrap_or(granted_reps));
    if sets > granted_sets || reps > granted_reps {
        let what = Found::PlanAsksMore { sets, reps, granted_sets, granted_reps };
        findings.push(Finding::about(&lift.track, what));
    }
    if sets < granted_sets || reps < granted_reps {
        let what = Found::PlanNeverPasses { sets, reps, granted_sets, granted_reps };
        findings.push(Finding::about(&lift.track, what));
    }
    let start = track.start.load;
    if let Some(reference) = lift.reference.filter(|reference| *reference >= start) {
        findings.push(Finding::about(&lift.track, Found::ReferenceNotLighter { reference, start }));
    }
}
