//! Moves: the one step up that may be on offer, and the one step back.

use super::loadable::Loadable;
use super::state::{State, TrackState};
use super::status::Status;
use crate::quantity::{Day, Mass};
use crate::reason::Reason;
use crate::record::{Dimension, Parameters, StepPolicy, TrackParameters, Tuple};

/// What the moving dimension offers next, or why it offers nothing.
pub(crate) fn next_tuple(
    track: &TrackParameters,
    policy_rung_load: f64,
    from: Tuple,
    loadable: &Loadable,
) -> Result<Tuple, Reason> {
    let place =
        |next: u8, length: usize| if usize::from(next) < length { Ok(next) } else { Err(Reason::AtTop) };
    match track.moving {
        Dimension::Load => next_load(track, from.load, loadable).map(|load| Tuple { load, ..from }),
        Dimension::Reps if track.reps_top.is_some_and(|top| from.reps < top) => {
            Ok(Tuple { reps: from.reps.saturating_add(1), ..from })
        }
        Dimension::Sets if track.sets_top.is_some_and(|top| from.sets < top) => {
            Ok(Tuple { sets: from.sets.saturating_add(1), ..from })
        }
        Dimension::Reps | Dimension::Sets => Err(Reason::AtTop),
        Dimension::Range => {
            Ok(Tuple { range: place(from.range.saturating_add(1), track.ranges.len())?, ..from })
        }
        Dimension::Tempo => {
            Ok(Tuple { tempo: place(from.tempo.saturating_add(1), track.tempos.len())?, ..from })
        }
        Dimension::Variant => {
            let rung = track.harder_rung(from.rung).ok_or(Reason::AtTop)?;
            let load = rung_load(track, rung, from.load, policy_rung_load, loadable);
            Ok(Tuple { rung, load, ..from })
        }
    }
}

/// The next load within the step and its cap. Where nothing loadable lies within it there is no step: a
/// bigger jump is never taken instead.
fn next_load(track: &TrackParameters, load: Mass, loadable: &Loadable) -> Result<Mass, Reason> {
    if loadable.lacks_body_mass() {
        return Err(Reason::BodyMassMissing);
    }
    let cap = loadable.grown(load, track.cap());
    let wanted = match track.step_policy() {
        StepPolicy::Part(part) => loadable.grown(load, part),
        StepPolicy::Fixed(step) => load.plus(step).unwrap_or(load),
        StepPolicy::SmallestLoadable => loadable.above(load).unwrap_or(load),
    };
    match loadable.not_above(wanted.min(cap)) {
        Some(next) if next > load => Ok(next),
        _ => Err(Reason::NoLoadableStep { cap, next: loadable.above(load) }),
    }
}

/// Load on a harder rung: a part of the old load, or less where the lifter's own ratio says so.
pub(crate) fn rung_load(
    track: &TrackParameters,
    rung: u8,
    load: Mass,
    part: f64,
    loadable: &Loadable,
) -> Mass {
    let own = track.rungs.get(usize::from(rung)).and_then(|rung| rung.own_ratio).unwrap_or(1.0);
    let part = crate::numeric::smaller(part, own);
    loadable.rounded_down(loadable.share(load, part)).min(load)
}

impl TrackParameters {
    /// The first rung directly harder than this one.
    pub(crate) fn harder_rung(&self, rung: u8) -> Option<u8> {
        (0..self.rungs.len() as u8).find(|harder| self.easier_rungs(*harder).any(|easier| easier == rung))
    }

    /// Dimensions in which `to` is harder than `from`, and whether rungs are on one chain.
    pub(crate) fn harder_in(&self, from: &Tuple, to: &Tuple) -> alloc::vec::Vec<Dimension> {
        let mut harder = alloc::vec::Vec::new();
        // A rung that no chain connects is a sideways step, not a harder one.
        if self.is_harder(to.rung, from.rung) {
            harder.push(Dimension::Variant);
        }
        for (dimension, is_harder) in [
            (Dimension::Range, to.range > from.range),
            (Dimension::Tempo, to.tempo > from.tempo),
            (Dimension::Sets, to.sets > from.sets),
            (Dimension::Reps, to.reps > from.reps),
            (Dimension::Load, to.load > from.load),
        ] {
            if is_harder {
                harder.push(dimension);
            }
        }
        harder
    }
}

/// One step easier: the moving dimension one place back, or the load by one step; never by more than the cap or
/// one step of the equipment, whichever is larger, and never above where it was.
pub(crate) fn one_step_back(from: Tuple, at: usize, parameters: &Parameters, loadable: &Loadable) -> Tuple {
    let Some(track) = parameters.tracks.get(at) else { return from };
    let start = track.start;
    match track.moving {
        Dimension::Reps if from.reps > start.reps => return Tuple { reps: from.reps - 1, ..from },
        Dimension::Sets if from.sets > start.sets => return Tuple { sets: from.sets - 1, ..from },
        Dimension::Range if from.range > start.range => return Tuple { range: from.range - 1, ..from },
        Dimension::Tempo if from.tempo > start.tempo => return Tuple { tempo: from.tempo - 1, ..from },
        _ => {}
    }
    match load_one_back(track, from.load, parameters.policy.step_back_cap, loadable) {
        Some(load) => Tuple { load, ..from },
        // Below the lightest implement: an easier rung, or the same place unloaded by the coach.
        None => Tuple { rung: super::layoff::easier_rung(from.rung, at, parameters), ..from },
    }
}

/// The load one step easier, whatever dimension moves.
pub(crate) fn one_load_back(from: Tuple, at: usize, parameters: &Parameters, loadable: &Loadable) -> Mass {
    let track = parameters.tracks.get(at);
    track
        .and_then(|track| load_one_back(track, from.load, parameters.policy.step_back_cap, loadable))
        .unwrap_or(from.load)
}

fn load_one_back(track: &TrackParameters, load: Mass, cap: f64, loadable: &Loadable) -> Option<Mass> {
    let below = loadable.below(load)?;
    let lowest = loadable.not_below(loadable.grown(load, -cap)).unwrap_or(below).min(below);
    let wanted = match track.step_policy() {
        StepPolicy::Part(part) => loadable.grown(load, -part),
        StepPolicy::Fixed(step) => load.minus(step).unwrap_or(lowest),
        StepPolicy::SmallestLoadable => below,
    };
    // Where nobody knows what is moved, a part of it is nothing; a step back is at least one step of the equipment.
    // A step past the lightest load is larger than the cap allows, or ends there.
    let step = loadable.not_above(wanted.min(below)).unwrap_or(lowest);
    Some(step.max(lowest))
}

impl State {
    /// Takes the move that a coach or the rule accepts, if no guard stands in its way.
    pub(crate) fn attempt(&mut self, at: usize, to: Tuple, on: Day, event: u32) {
        let blocked = self.blockers(at, Some(to), on);
        if !blocked.is_empty() {
            self.refused = Some(event);
            return;
        }
        let (Some(parameters), Some(track)) = (self.parameters.as_deref(), self.tracks.get_mut(at)) else {
            return;
        };
        let policy = &parameters.policy;
        let rung_changed = to.rung != track.tuple.rung;
        let relearning = parameters.tracks.get(at).map_or(0, |set| set.relearning(policy));
        let longest = i32::from(policy.window_days.max(policy.cooling_off_days));
        track.moves.retain(|(day, _)| on.since(*day) < longest);
        track.moves.push((on, track.tuple.load));
        let weak = track.weak.take();
        track.stand_at(to, on);
        track.watch(weak, on, policy);
        track.peak = track.peak.max(to.load);
        if rung_changed {
            track.learned = (0, relearning);
            track.enter(Status::Learning, on);
        } else {
            track.enter(Status::Consolidating, on);
        }
        let window = i32::from(policy.region_window_days);
        let regions = parameters.tracks.get(at).map(|track| track.regions.as_slice()).unwrap_or_default();
        for region in self.regions.iter_mut().filter(|region| regions.contains(&region.name)) {
            region.moves.retain(|day| on.since(*day) < window);
            region.moves.push(on);
        }
    }

    /// Goes one step easier and looks again.
    pub(crate) fn step_back(&mut self, at: usize, on: Day, loadable: &Loadable) {
        let (Some(parameters), Some(track)) = (self.parameters.as_deref(), self.tracks.get_mut(at)) else {
            return;
        };
        let before = track.tuple.load;
        let tuple = one_step_back(track.tuple, at, parameters, loadable);
        let on_plan = track.is_within_band(&tuple);
        track.stand_at(tuple, on);
        if on_plan {
            track.keep_easing_only();
            return;
        }
        track.stepped_from = (tuple.load < before).then_some(before);
        track.keep_easing_only();
        track.forgo_restoring();
        if track.status != Status::Returning {
            track.enter(Status::SteppingBack, on);
        }
    }
}

impl TrackState {
    /// Whether a maintained lift that goes there stays within the band that the coach has set.
    fn is_within_band(&self, to: &Tuple) -> bool {
        let band = self.not_below.filter(|_| self.status == Status::Maintaining);
        band.is_some_and(|lowest| to.load >= lowest && Tuple { load: to.load, ..self.tuple } == *to)
    }

    /// The load of which the growth over the window is counted.
    pub(crate) fn load_before_window(&self, on: Day, window: u16) -> Mass {
        let first =
            self.moves.iter().filter(|(day, _)| on.since(*day) < i32::from(window)).map(|(_, load)| *load);
        first.min().unwrap_or(self.tuple.load).min(self.tuple.load)
    }
}
