//! The plan against the parameters.

use alloc::string::ToString;
use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::quantity::Name;
use crate::record::{LiftParameters, LiftPlan, Parameters, Plan};

pub(super) fn look(parameters: &Parameters, plan: &Plan, findings: &mut Vec<Finding>) {
    if let Err(error) = plan.check() {
        let (error, field) = (error.code().as_str().to_string(), error.field().to_string());
        findings.push(Finding::whole(Found::PlanRefused { error, field }));
    }
    for implement in plan.unavailable.iter().filter(|id| parameters.implement(id).is_none()) {
        findings.push(Finding::whole(Found::UnavailableUnknown { implement: implement.clone() }));
    }
    for lift in &plan.lifts {
        match parameters.lift_at(&lift.lift).and_then(|at| parameters.lifts.get(at)) {
            None => findings.push(Finding::about(&lift.lift, Found::UnknownLift)),
            Some(lift) => against_grant(lift, lift, findings),
        }
    }
    let planned = |name: &Name| plan.lifts.iter().any(|lift| lift.lift == *name);
    for lift in parameters.lifts.iter().filter(|lift| !planned(&lift.name)) {
        findings.push(Finding::about(&lift.name, Found::NotPlanned));
    }
    for pair in parameters.pairs.iter().filter(|pair| planned(&pair.strict) && planned(&pair.forgiving)) {
        let forgiving = pair.forgiving.clone();
        findings.push(Finding::about(&pair.strict, Found::PairInOneSession { forgiving }));
    }
}

fn against_grant(lift: &LiftPlan, lift: &LiftParameters, findings: &mut Vec<Finding>) {
    let (granted_sets, granted_reps) = (lift.start.sets, lift.start.reps);
    let (sets, reps) = (lift.sets.unwrap_or(granted_sets), lift.reps.unwrap_or(granted_reps));
    if sets > granted_sets || reps > granted_reps {
        let what = Found::PlanAsksMore { sets, reps, granted_sets, granted_reps };
        findings.push(Finding::about(&lift.lift, what));
    }
    if sets < granted_sets || reps < granted_reps {
        let what = Found::PlanNeverPasses { sets, reps, granted_sets, granted_reps };
        findings.push(Finding::about(&lift.lift, what));
    }
    let start = lift.start.load;
    if let Some(reference) = lift.reference.filter(|reference| *reference >= start) {
        findings.push(Finding::about(&lift.lift, Found::ReferenceNotLighter { reference, start }));
    }
}
