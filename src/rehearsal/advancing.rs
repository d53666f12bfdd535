//! Lifts that would move in one region, and pairs that start apart from their rule.

use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::quantity::{Mass, Name};
use crate::record::{LiftParameters, Pair, Parameters, Plan};

pub(super) fn look(parameters: &Parameters, plan: Option<&Plan>, findings: &mut Vec<Finding>) {
    let is_planned = |set: &&LiftParameters| {
        plan.is_none_or(|plan| plan.lifts.iter().any(|planned| planned.lift == set.id))
    };
    let moving: Vec<&LiftParameters> = parameters.lifts.iter().filter(is_planned).collect();
    regions(parameters, &moving, findings);
    without_lift(parameters, findings);
    for pair in &parameters.pairs {
        let named = |id: &Name| moving.iter().any(|lift| lift.id == *id);
        if named(&pair.strict) && named(&pair.forgiving) {
            let partner = pair.forgiving.clone();
            findings.push(Finding::about(&pair.strict, Found::PairBothMove { partner }));
        }
        start_above_cap(parameters, pair, findings);
    }
}

/// Every region that two lifts load which are no pair of each other.
fn regions(parameters: &Parameters, moving: &[&LiftParameters], findings: &mut Vec<Finding>) {
    let mut seen: Vec<&Name> = Vec::new();
    for region in moving.iter().flat_map(|lift| &lift.regions) {
        if seen.contains(&region) {
            continue;
        }
        seen.push(region);
        let lifts: Vec<Name> =
            moving.iter().filter(|lift| lift.regions.contains(region)).map(|lift| lift.id.clone()).collect();
        let apart = lifts
            .iter()
            .enumerate()
            .any(|(at, one)| lifts.iter().skip(at + 1).any(|other| !is_pair(parameters, one, other)));
        if apart {
            findings.push(Finding::whole(Found::RegionShared { region: region.clone(), lifts }));
        }
    }
}

/// Regions that reports may name and no lift loads. A stop in one of them halts every lift.
fn without_lift(parameters: &Parameters, findings: &mut Vec<Finding>) {
    let loaded = |id: &Name| parameters.lifts.iter().any(|lift| lift.regions.contains(id));
    for region in parameters.regions.iter().filter(|region| !loaded(&region.id)) {
        findings.push(Finding::whole(Found::RegionWithoutLift { region: region.id.clone() }));
    }
}

fn is_pair(parameters: &Parameters, one: &Name, other: &Name) -> bool {
    let same = |pair: &Pair| {
        (pair.strict == *one && pair.forgiving == *other) || (pair.strict == *other && pair.forgiving == *one)
    };
    parameters.pairs.iter().any(same)
}

fn start_above_cap(parameters: &Parameters, pair: &Pair, findings: &mut Vec<Finding>) {
    let load = |id| parameters.lift(id).map(|lift| lift.start.load());
    let (Some(start), Some(forgiving)) = (load(&pair.strict), load(&pair.forgiving)) else { return };
    let cap = forgiving.scaled_down(pair.ratio_cap).unwrap_or(Mass::ZERO);
    if start > cap {
        findings.push(Finding::about(&pair.strict, Found::PairStartAboveCap { start, cap }));
    }
}
