//! Moves: the one step up that may be on offer, and the one step back.

use super::lift::Lift;
use super::loadable::Loads;
use crate::quantity::Mass;
use crate::reason::Reason;
use crate::record::{Dimension, Grant, LiftParameters, Place, Policy, StepPolicy, Work};

/// What the moving dimension offers next, or why it offers nothing.
pub(crate) fn next_grant(lift: &Lift, rung_part: f64) -> Result<Grant, Reason> {
    let (set, from) = (&*lift.set, lift.now.grant);
    let Grant { place, work } = from;
    let next = |number: u8, length: usize| match number.checked_add(1) {
        Some(next) if usize::from(next) < length => Ok(next),
        _ => Err(Reason::AtTop),
    };
    match set.moving {
        Dimension::Load => {
            next_load(set, work.load, &lift.loadable.at(place)).map(|load| from.with_load(load))
        }
        Dimension::Reps if set.reps_top.is_some_and(|top| work.reps < top) => {
            Ok(Grant { work: Work { reps: work.reps.saturating_add(1), ..work }, ..from })
        }
        Dimension::Sets if set.sets_top.is_some_and(|top| work.sets < top) => {
            Ok(Grant { work: Work { sets: work.sets.saturating_add(1), ..work }, ..from })
        }
        Dimension::Reps | Dimension::Sets => Err(Reason::AtTop),
        Dimension::Range => {
            let place = Place { range: next(place.range, set.ranges.len())?, ..place };
            no_heavier_at(lift, Grant { place, ..from })
        }
        Dimension::Tempo => {
            let place = Place { tempo: next(place.tempo, set.tempos.len())?, ..place };
            Ok(Grant { place, ..from })
        }
        Dimension::Variant => {
            let rung = set.harder_rung(place.rung).ok_or(Reason::AtTop)?;
            Ok(from.on_rung(rung).with_load(rung_load(lift, rung, rung_part)))
        }
    }
}

/// The same work at another height, no heavier than before: other discs may carry the bar there.
fn no_heavier_at(lift: &Lift, to: Grant) -> Result<Grant, Reason> {
    let loads = lift.loadable.at(to.place);
    match loads.not_above(to.load()) {
        Some(_) => Ok(to),
        None => Err(Reason::NoLoadableStep { cap: to.load(), next: loads.lightest() }),
    }
}

/// The next load within the step and its cap. Where nothing loadable lies within it there is no step: a
/// bigger jump is never taken instead.
fn next_load(set: &LiftParameters, load: Mass, loads: &Loads<'_>) -> Result<Mass, Reason> {
    if loads.lacks_body_mass() {
        return Err(Reason::BodyMassMissing);
    }
    // From what is loaded: a kit that makes less of the load granted makes no larger step of it.
    let load = loads.rounded_down(load);
    let cap = loads.grown(load, set.cap());
    let wanted = match set.step_policy() {
        StepPolicy::Part(part) => loads.grown(load, part),
        StepPolicy::Fixed(step) => load.plus(step).unwrap_or(load),
        StepPolicy::SmallestLoadable => loads.above(load).unwrap_or(load),
    };
    match loads.not_above(wanted.min(cap)) {
        Some(next) if next > load => Ok(next),
        _ => Err(Reason::NoLoadableStep { cap, next: loads.above(load) }),
    }
}

/// Load on a harder rung: a part of the old load, or less where the lifter's own ratio says so.
pub(crate) fn rung_load(lift: &Lift, rung: u8, part: f64) -> Mass {
    let grant = lift.now.grant;
    let own = lift.set.rungs.get(usize::from(rung)).and_then(|rung| rung.own_ratio);
    let part = own.map_or(part, |own| crate::numeric::smaller(part, own));
    let loads = lift.loadable.at(grant.place);
    loads.rounded_down(loads.share(grant.load(), part)).min(grant.load())
}

/// One step easier: the moving dimension one place back, or the load by one step; never by more than the cap or
/// one step of the equipment, whichever is larger, and never above where it was.
pub(crate) fn one_step_back(lift: &Lift, policy: &Policy) -> Grant {
    let (set, from) = (&*lift.set, lift.now.grant);
    let Grant { place, work } = from;
    let start = set.start;
    match set.moving {
        Dimension::Reps if work.reps > start.work.reps => {
            return Grant { work: Work { reps: work.reps - 1, ..work }, ..from };
        }
        Dimension::Sets if work.sets > start.work.sets => {
            return Grant { work: Work { sets: work.sets - 1, ..work }, ..from };
        }
        Dimension::Range if place.range > start.place.range => {
            return Grant { place: Place { range: place.range - 1, ..place }, ..from };
        }
        Dimension::Tempo if place.tempo > start.place.tempo => {
            return Grant { place: Place { tempo: place.tempo - 1, ..place }, ..from };
        }
        _ => {}
    }
    match one_load_back(lift, place, work.load, policy) {
        Some(load) => from.with_load(load),
        // Nothing is lighter: an easier rung; where there is none, the grant stays and nothing is easier.
        None => from.on_rung(set.easier_rung(place.rung)),
    }
}

/// The load one step easier at that place, whatever dimension moves, or the one at the nearest other height; none where
/// nothing is lighter.
pub(crate) fn one_load_back(lift: &Lift, place: Place, load: Mass, policy: &Policy) -> Option<Mass> {
    let loads = lift.loadable.at(place);
    // From what is printed for that load: the same work is no step back.
    let load = loads.not_above(load)?;
    let Some(below) = loads.below(load) else { return loads.beside_below(load) };
    let lowest = loads.not_below(loads.grown(load, -policy.step_back_cap)).unwrap_or(below).min(below);
    let wanted = match lift.set.step_policy() {
        StepPolicy::Part(part) => loads.grown(load, -part),
        StepPolicy::Fixed(step) => load.minus(step).unwrap_or(lowest),
        StepPolicy::SmallestLoadable => below,
    };
    // Where nobody knows what is moved, a part of it is nothing; a step back is at least one step of the equipment.
    // A step past the lightest load is larger than the cap allows, or ends there.
    let step = loads.not_above(wanted.min(below)).unwrap_or(lowest);
    Some(step.max(lowest))
}
