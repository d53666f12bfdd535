//! Steps that the equipment cannot load, and caps that contradict each other.

use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::loading::buy;
use crate::progression::{Loadable, next_tuple};
use crate::quantity::Mass;
use crate::reason::Reason;
use crate::record::{Dimension, LiftParameters, Parameters, StepPolicy, Tuple};

/// Steps looked at on the way up.
const MOST_STEPS: usize = 400;
/// How far up to look where no ceiling is set: so many times the start load (our choice).
const UP_TO_TIMES: u32 = 2;
/// Discs that a gym could add, in grams: the light ones that shops sell (common practice).
const ADDED_DISCS: [i32; 7] = [125, 250, 500, 750, 1_000, 1_250, 2_500];

pub(super) fn look(parameters: &Parameters, lift: &LiftParameters, findings: &mut Vec<Finding>) {
    let mut say = |what| findings.push(Finding::about(&lift.name, what));
    let Ok(loadable) = Loadable::of(lift, parameters, None) else { return };
    if loadable.lightest().is_none() {
        return;
    }
    let start = lift.start.load;
    let made = loadable.not_above(start) == Some(start);
    if !made {
        let (below, above) = (loadable.below(start), loadable.above(start));
        say(Found::StartNotLoadable { load: start, below, above });
    }
    if loadable.lacks_body_mass() {
        say(Found::HelpNeedsBodyMass);
        return;
    }
    if let Some(ceiling) = lift.ceiling.filter(|ceiling| *ceiling < start) {
        say(Found::CeilingBelowStart { ceiling, start });
        return;
    }
    step_above_cap(lift, &loadable).into_iter().for_each(&mut say);
    if made {
        climb(parameters, lift, &loadable).into_iter().for_each(&mut say);
    }
}

fn step_above_cap(lift: &LiftParameters, loadable: &Loadable) -> Option<Found> {
    let start = lift.start.load;
    let wanted = match lift.step? {
        StepPolicy::Part(part) => loadable.grown(start, part),
        StepPolicy::Fixed(step) => start.plus(step).ok()?,
        StepPolicy::SmallestLoadable => return None,
    };
    let cap = loadable.grown(start, lift.cap());
    (lift.moving == Dimension::Load && wanted > cap).then_some(Found::StepAboveCap { wanted, cap })
}

/// Goes up step by step, as the rules would, to the ceiling; the first thing that stops it.
fn climb(parameters: &Parameters, lift: &LiftParameters, loadable: &Loadable) -> Option<Found> {
    let start = lift.start;
    let top = lift.ceiling.or_else(|| start.load.times(UP_TO_TIMES).ok()).unwrap_or(start.load);
    let mut at = start;
    for _ in 0..MOST_STEPS {
        match next_tuple(lift, parameters.policy.rung_load, at, loadable) {
            Err(Reason::NoLoadableStep { cap, next }) => {
                // Where the ceiling comes before the next load there is nothing left to reach.
                let reached = lift.ceiling.is_some_and(|ceiling| next.is_some_and(|next| next > ceiling));
                return (at.load == start.load || !reached)
                    .then(|| stuck(parameters, lift, at.load, cap, next));
            }
            Err(_) if at == start => return Some(Found::NothingToMove { moving: lift.moving }),
            Err(_) => return None,
            Ok(to) => {
                if lift.ceiling.is_some_and(|ceiling| to.load > ceiling) {
                    return (at == start).then_some(Found::NothingToMove { moving: lift.moving });
                }
                if let Some(found) = window(parameters, at, to, loadable) {
                    return Some(found);
                }
                if lift.moving != Dimension::Load || to.load >= top {
                    return None;
                }
                at = to;
            }
        }
    }
    None
}

fn window(parameters: &Parameters, at: Tuple, to: Tuple, loadable: &Loadable) -> Option<Found> {
    let window = loadable.grown(at.load, parameters.policy.window_cap);
    (to.load > window && to.load > at.load).then_some(Found::WindowBelowStep {
        load: at.load,
        to: to.load,
        window,
    })
}

fn stuck(parameters: &Parameters, lift: &LiftParameters, load: Mass, cap: Mass, next: Option<Mass>) -> Found {
    let discs = helping(parameters, lift, load, cap);
    if load == lift.start.load {
        Found::StuckAtStart { load, cap, next, discs }
    } else {
        Found::StuckLater { load, cap, next, discs }
    }
}

/// Discs of which one more pair makes a load above this one and within the cap.
fn helping(parameters: &Parameters, lift: &LiftParameters, load: Mass, cap: Mass) -> Vec<Mass> {
    let Some(implement) = parameters.implement(&lift.implement) else { return Vec::new() };
    let offered = ADDED_DISCS.map(Mass::grams);
    // A step to the cap itself is allowed: look a nanogram further, so that it counts as a step in between.
    let beyond = Mass::from_nanograms(1).and_then(|least| cap.plus(least).ok()).unwrap_or(cap);
    let Ok(advice) = buy(implement, &parameters.stock, load, beyond, &offered) else { return Vec::new() };
    let now = advice.now.map(|gap| gap.size);
    let helps = advice.offers.iter().filter(|offer| offer.largest_gap.map(|gap| gap.size) < now);
    helps.map(|offer| offer.disc).collect()
}
