//! Clearance and sign-off: the only way out of a stop.

use alloc::vec::Vec;

use super::layoff::easier_rung;
use super::loadable::Loadable;
use super::state::{ClearanceInForce, State, Stop};
use super::status::Status;
use crate::quantity::{Day, Length, Mass, Name};
use crate::record::{
    Clearance, ClearanceLimits, ClearanceStatus, MOST_LIMITS, Role, SignOff, SignOffScope, Tuple,
};

impl State {
    pub(crate) fn take_clearance(&mut self, clearance: &Clearance, on: Day, event: u32) {
        let days = self.parameters.as_ref().map_or(365, |parameters| parameters.policy.clearance_days);
        let expires = clearance.expires.or_else(|| on.plus(i32::from(days)).ok()).unwrap_or(on);
        let mut limits = clearance.limits.clone();
        if expires < on {
            // One that has run out already does not lift the limits before it.
            let earlier = self.clearance.take().map(|earlier| earlier.limits).unwrap_or_default();
            limits = joined(limits.into_iter().chain(earlier));
        }
        self.clearance = Some(ClearanceInForce { status: clearance.status, given: on, expires, limits });
        if clearance.status == ClearanceStatus::NotCleared {
            self.stop_everything(on, event);
            return;
        }
        // One that has run out already clears nothing.
        if expires < on {
            return;
        }
        self.ill_since = None;
        if let Some(report) = &mut self.today {
            report.asks_first = false;
        }
        for stop in
            self.stop.iter_mut().chain(self.regions.iter_mut().filter_map(|region| region.stop.as_mut()))
        {
            stop.cleared = true;
        }
    }

    pub(crate) fn take_sign_off(&mut self, given: &SignOff, on: Day) {
        let cleared = self.clearance.as_ref().is_some_and(|clearance| {
            clearance.status != ClearanceStatus::NotCleared && clearance.expires >= on
        });
        match &given.scope {
            SignOffScope::Everything => {
                if let Some(stop) = &mut self.stop {
                    // A sign-off before the clearance says nothing.
                    stop.signed = stop.cleared && cleared;
                }
            }
            SignOffScope::Region(name) => {
                if let Some(stop) = self
                    .regions
                    .iter_mut()
                    .find(|region| region.name == *name)
                    .and_then(|region| region.stop.as_mut())
                {
                    stop.signed = stop.cleared && cleared;
                }
            }
            SignOffScope::Gate(name) => {
                let at = self.parameters.as_ref().and_then(|parameters| parameters.track_at(name));
                if let Some(track) = at.and_then(|at| self.tracks.get_mut(at)) {
                    track.signed_off = true;
                }
            }
        }
        self.reopen(on);
    }

    /// Lifts the stops that have both a clearance and a sign-off, and takes the lifts they held back in.
    fn reopen(&mut self, on: Day) {
        let lifted = |stop: &Option<Stop>| stop.is_some_and(|stop| stop.cleared && stop.signed);
        let everything = lifted(&self.stop);
        if everything {
            self.stop = None;
        }
        let mut regions = Vec::new();
        for region in &mut self.regions {
            if lifted(&region.stop) {
                region.stop = None;
                regions.push(region.name.clone());
            }
        }
        for at in 0..self.tracks.len() {
            let held = self.stop.is_some() || self.stopped_region(at).is_some();
            let stopped = self.tracks.get(at).is_some_and(|track| track.status == Status::StoppedRefer);
            // A lift whose region was renamed while it was stopped is not let go by another region's sign-off.
            let own = everything || self.regions_of(at).iter().any(|region| regions.contains(region));
            if stopped && !held && own {
                let loadable = self.loadable(at);
                self.reopen_lower(at, on, &loadable);
            }
        }
    }

    /// Back on a lower rung, one step easier, returning; a lift that rests or is given up stands there when it is
    /// taken up.
    fn reopen_lower(&mut self, at: usize, on: Day, loadable: &Loadable) {
        let (Some(parameters), Some(track)) = (self.parameters.as_deref(), self.tracks.get_mut(at)) else {
            return;
        };
        let before = track.tuple;
        let load = super::moves::one_step_back(before, at, parameters, loadable).load;
        track.stand_at(Tuple { rung: easier_rung(before.rung, at, parameters), load, ..before }, on);
        track.keep_easing_only();
        let status = match track.role {
            Role::Retire => return track.enter(Status::Retired, on),
            Role::Rest => Status::Resting,
            Role::Train | Role::Maintain => Status::Returning,
        };
        track.enter(status, on);
        track.return_cap = Some(before.load);
        // Two passing sessions lead on from here; the load before is not simply restored.
        track.return_row = track.return_row.max(2);
        track.half_sessions = 2;
    }

    /// The region of the lift that is stopped, if one is.
    pub(crate) fn stopped_region(&self, at: usize) -> Option<(&Name, Stop)> {
        let regions = &self.parameters.as_ref()?.tracks.get(at)?.regions;
        let stopped = self.regions.iter().filter(|region| regions.contains(&region.name));
        stopped.filter_map(|region| region.stop.map(|stop| (&region.name, stop))).next()
    }

    /// The clearance's limits that concern the lift.
    pub(crate) fn limits(&self, at: usize) -> impl Iterator<Item = &ClearanceLimits> {
        let regions = self
            .parameters
            .as_ref()
            .and_then(|parameters| parameters.tracks.get(at))
            .map(|track| &track.regions);
        let limits = self.clearance.as_ref().map(|clearance| clearance.limits.as_slice()).unwrap_or_default();
        limits.iter().filter(move |limit| match (&limit.region, regions) {
            (Some(region), Some(regions)) => regions.contains(region),
            _ => true,
        })
    }

    /// Whether a limit of effort or breathing is on record for the lift, as blood pressure asks for.
    pub(crate) fn limits_on_record(&self, at: usize) -> bool {
        self.limits(at).any(|limit| limit.effort.is_some() || limit.no_breath_hold)
    }

    /// The place in the lift's ranges that the clearance leaves it, at most `place`: none where not even the easiest
    /// is allowed. A lift whose range is not measured keeps its place.
    pub(crate) fn range_allowed(&self, at: usize, place: u8) -> Option<u8> {
        let ranges =
            self.parameters.as_ref().and_then(|all| all.tracks.get(at)).map(|set| set.ranges.as_slice());
        let ranges = ranges.unwrap_or_default();
        let allowed = |range: Length| {
            self.limits(at).filter_map(|limit| limit.range).all(|limit| reaches(ranges, limit, range))
        };
        let fits = |place: &u8| ranges.get(usize::from(*place)).is_none_or(|range| allowed(*range));
        (0..=place).rev().find(fits)
    }

    /// Whether a clearance limits the range of the lift.
    pub(crate) fn range_limited(&self, at: usize) -> bool {
        self.limits(at).any(|limit| limit.range.is_some())
    }

    /// The lowest load that a clearance limits the lift to.
    pub(crate) fn clearance_load(&self, at: usize) -> Option<Mass> {
        self.limits(at).filter_map(|limit| limit.load).min()
    }
}

/// The same limits in at most two entries a region, since any number of clearances may have run out when they were
/// recorded. Where more regions are named than a state keeps limits, the most careful of all hold everywhere.
fn joined(limits: impl Iterator<Item = ClearanceLimits>) -> Vec<ClearanceLimits> {
    let by_region = joined_by_region(limits);
    if by_region.len() <= MOST_LIMITS {
        return by_region;
    }
    joined_by_region(by_region.into_iter().map(|limit| ClearanceLimits { region: None, ..limit }))
}

/// The lowest load and effort and whatever is ruled out; of the ranges the shortest and the longest, since the list of
/// each lift says which of the two is deeper.
fn joined_by_region(limits: impl Iterator<Item = ClearanceLimits>) -> Vec<ClearanceLimits> {
    let mut regions: Vec<(ClearanceLimits, Option<Length>)> = Vec::new();
    for limit in limits {
        let Some((kept, longest)) = regions.iter_mut().find(|(kept, _)| kept.region == limit.region) else {
            let longest = limit.range;
            regions.push((limit, longest));
            continue;
        };
        kept.load = kept.load.into_iter().chain(limit.load).min();
        kept.effort = kept.effort.into_iter().chain(limit.effort).min();
        kept.range = kept.range.into_iter().chain(limit.range).min();
        *longest = (*longest).max(limit.range);
        kept.no_loaded_flexion |= limit.no_loaded_flexion;
        kept.no_breath_hold |= limit.no_breath_hold;
    }
    let mut joined = Vec::with_capacity(regions.len());
    for (kept, longest) in regions {
        let (region, another) = (kept.region.clone(), longest.filter(|_| longest > kept.range));
        joined.push(kept);
        joined.extend(another.map(|range| ClearanceLimits {
            region,
            range: Some(range),
            ..ClearanceLimits::default()
        }));
    }
    joined
}

/// Whether a range is no deeper than the limit. The list goes from the easiest range to the full one, so that it says
/// itself whether deeper is longer (a depth) or shorter (a height above the floor); where it does not say, only the
/// limit itself is allowed.
fn reaches(ranges: &[Length], limit: Length, range: Length) -> bool {
    let grows = |ordered: fn(&Length, &Length) -> bool| {
        ranges.len() > 1
            && ranges.iter().zip(ranges.iter().skip(1)).all(|(easier, fuller)| ordered(easier, fuller))
    };
    if grows(|easier, fuller| easier < fuller) {
        range <= limit
    } else if grows(|easier, fuller| easier > fuller) {
        range >= limit
    } else {
        range == limit
    }
}
