//! Starts and steps that the equipment cannot load, and caps that contradict each other.

use alloc::string::ToString;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::finding::{Finding, Found};
use crate::error::Error;
use crate::loading::{Disc, Implement, Stock};
use crate::progression::{Lift, Loadable, Now, next_grant};
use crate::quantity::{Day, Mass};
use crate::reason::Reason;
use crate::record::{Dimension, Grant, LiftParameters, Parameters, StepPolicy};

/// Steps looked at on the way up.
const MOST_STEPS: usize = 400;
/// How far up to look where no ceiling is set: so many times the start load (our choice).
const UP_TO_TIMES: u32 = 2;
/// Discs that a gym could add, in grams: the light ones that shops sell (common practice).
const ADDED_DISCS: [i32; 7] = [125, 250, 500, 750, 1_000, 1_250, 2_500];

pub(super) fn look(parameters: &Parameters, set: &LiftParameters, findings: &mut Vec<Finding>) {
    let Some(implement) = parameters.implement(&set.implement) else { return };
    let lift = match planned(parameters, set) {
        Ok(lift) => lift,
        Err(error) => {
            let (error, field) = (error.code().as_str().to_string(), error.field().to_string());
            findings.push(Finding::about(&set.id, Found::ParametersRefused { error, field }));
            return;
        }
    };
    let mut say = |what| findings.push(Finding::about(&set.id, what));
    if let Some(out) = not_loadable(&lift) {
        return say(out);
    }
    if lift.loadable.at(set.start.place).lacks_body_mass() {
        return say(Found::HelpNeedsBodyMass);
    }
    let start = set.start.load();
    if let Some(ceiling) = set.ceiling.filter(|ceiling| *ceiling < start) {
        return say(Found::CeilingBelowStart { ceiling, start });
    }
    step_above_cap(&lift).into_iter().for_each(&mut say);
    climb(parameters, implement, lift).into_iter().for_each(&mut say);
}

/// The lift as it stands on the day on which the parameters are recorded.
fn planned(parameters: &Parameters, set: &LiftParameters) -> Result<Lift, Error> {
    let now = Now::new(set.start, Day::from_number(0)?, set.learning(&parameters.policy));
    let loadable = Arc::new(Loadable::of(set, parameters, None)?);
    Ok(Lift { set: Arc::new(set.clone()), now, loadable })
}

/// Whether the equipment does not make the start load at the height of the start.
fn not_loadable(lift: &Lift) -> Option<Found> {
    let load = lift.set.start.load();
    let loads = lift.loadable.at(lift.set.start.place);
    let (below, above) = (loads.below(load), loads.above(load));
    loads.written_as(load).is_none().then_some(Found::StartNotLoadable { load, below, above })
}

fn step_above_cap(lift: &Lift) -> Option<Found> {
    let start = lift.set.start.load();
    let loads = lift.loadable.at(lift.set.start.place);
    let wanted = match lift.set.step? {
        StepPolicy::Part(part) => loads.grown(start, part),
        StepPolicy::Fixed(step) => start.plus(step).ok()?,
        StepPolicy::SmallestLoadable => return None,
    };
    let cap = loads.grown(start, lift.set.cap());
    (lift.set.moving == Dimension::Load && wanted > cap).then_some(Found::StepAboveCap { wanted, cap })
}

/// Goes up step by step, as the rules would, to the ceiling; the first thing that stops it.
fn climb(parameters: &Parameters, implement: &Implement, mut lift: Lift) -> Option<Found> {
    let set = Arc::clone(&lift.set);
    let start = set.start;
    let top = set.ceiling.or_else(|| start.load().times(UP_TO_TIMES).ok()).unwrap_or(start.load());
    for _ in 0..MOST_STEPS {
        let from = lift.now.grant;
        match next_grant(&lift, parameters.policy.rung_load) {
            Err(Reason::NoLoadableStep { cap, next }) => {
                // Where the ceiling comes before the next load there is nothing left to reach.
                let reached = set.ceiling.is_some_and(|ceiling| next.is_some_and(|next| next > ceiling));
                let discs = || helping(parameters, implement, &lift);
                return (from == start || !reached)
                    .then(|| stuck(from == start, from.load(), cap, next, discs()));
            }
            Err(_) if from == start => return Some(Found::NothingToMove { moving: set.moving }),
            Err(_) => return None,
            Ok(to) => {
                if set.ceiling.is_some_and(|ceiling| to.load() > ceiling) {
                    return (from == start).then_some(Found::NothingToMove { moving: set.moving });
                }
                if let Some(found) = window(parameters, &lift, to) {
                    return Some(found);
                }
                if set.moving == Dimension::Load && to.load() >= top {
                    return None;
                }
                lift.now.grant = to;
            }
        }
    }
    None
}

fn window(parameters: &Parameters, lift: &Lift, to: Grant) -> Option<Found> {
    let from = lift.now.grant;
    let window = lift.loadable.at(from.place).grown(from.load(), parameters.policy.window_cap);
    let beyond = to.load() > window && to.load() > from.load();
    beyond.then(|| Found::WindowBelowStep { load: from.load(), to: to.load(), window })
}

fn stuck(at_start: bool, load: Mass, cap: Mass, next: Option<Mass>, discs: Vec<Mass>) -> Found {
    if at_start {
        Found::StuckAtStart { load, cap, next, discs }
    } else {
        Found::StuckLater { load, cap, next, discs }
    }
}

/// Discs of which one more for each end would make a step from where the lift stands.
fn helping(parameters: &Parameters, implement: &Implement, lift: &Lift) -> Vec<Mass> {
    let helps = |disc: &Mass| {
        let more = with_one_more(parameters, implement, *disc)?;
        let loadable = Arc::new(Loadable::of(&lift.set, &more, None)?);
        let lift = Lift { loadable, ..lift.clone() };
        Ok::<bool, Error>(next_grant(&lift, parameters.policy.rung_load).is_ok())
    };
    // A stock that is full already takes no further kind.
    ADDED_DISCS.map(Mass::grams).into_iter().filter(|disc| helps(disc).unwrap_or(false)).collect()
}

/// The same equipment with as many new discs as the implement loads alike. A light disc is as small as the smallest that
/// is there, so that it carries no bar.
fn with_one_more(parameters: &Parameters, implement: &Implement, mass: Mass) -> Result<Parameters, Error> {
    let count = match implement {
        Implement::Handle(handle) => handle.ends(),
        Implement::Pin(_) => 1,
        _ => 2,
    };
    let mut discs = parameters.stock.discs().to_vec();
    let smallest = discs.iter().filter_map(Disc::diameter).min();
    let new = Disc::new(mass, count)?;
    discs.push(smallest.map_or(Ok(new), |diameter| new.with_diameter(diameter))?);
    Ok(Parameters { stock: Stock::new(discs)?, ..parameters.clone() })
}
