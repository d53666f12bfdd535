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
    for planned in &plan.lifts {
        match parameters.lift(&planned.lift) {
            None => findings.push(Finding::about(&planned.lift, Found::UnknownLift)),
            Some(set) => against_start(planned, set, findings),
        }
    }
    let is_planned = |id: &Name| plan.lifts.iter().any(|planned| planned.lift == *id);
    for lift in parameters.lifts.iter().filter(|lift| !is_planned(&lift.id)) {
        findings.push(Finding::about(&lift.id, Found::NotPlanned));
    }
    for pair in parameters.pairs.iter().filter(|pair| is_planned(&pair.strict) && is_planned(&pair.forgiving))
    {
        let forgiving = pair.forgiving.clone();
        findings.push(Finding::about(&pair.strict, Found::PairInOneSession { forgiving }));
    }
}

fn against_start(planned: &LiftPlan, set: &LiftParameters, findings: &mut Vec<Finding>) {
    let granted = set.start.work;
    let (granted_sets, granted_reps) = (granted.sets, granted.reps);
    let (sets, reps) = (planned.sets.unwrap_or(granted_sets), planned.reps.unwrap_or(granted_reps));
    if sets > granted_sets || reps > granted_reps {
        let what = Found::PlanAsksMore { sets, reps, granted_sets, granted_reps };
        findings.push(Finding::about(&planned.lift, what));
    }
    if sets < granted_sets || reps < granted_reps {
        let what = Found::PlanNeverPasses { sets, reps, granted_sets, granted_reps };
        findings.push(Finding::about(&planned.lift, what));
    }
    let start = granted.load;
    if let Some(reference) = planned.reference.filter(|reference| *reference >= start) {
        findings.push(Finding::about(&planned.lift, Found::ReferenceNotLighter { reference, start }));
    }
}
