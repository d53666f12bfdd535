//! Clearance and sign-off: the only way out of a stop. What the limits of a clearance leave of a lift stands in `view`.
//!
//! Days say when something was; numbers, when it was told. A word lifts only what was told before it: whoever gave it did not
//! know of a stop, an illness or a limit that is written down later, though that is of an earlier day.

use alloc::vec::Vec;

use super::shared::{ClearanceInForce, Shared};
use super::state::State;
use super::status::Stop;
use crate::error::Error;
use crate::quantity::{Day, Length};
use crate::reason::SignOffRefusal;
use crate::record::{
    Clearance, ClearanceLimits, ClearanceStatus, MOST_LIMITS, Place, Policy, SignOff, SignOffScope,
};

impl State {
    pub(crate) fn take_clearance(
        &mut self,
        clearance: &Clearance,
        on: Day,
        (event, told): (u32, u32),
    ) -> Result<(), Error> {
        let before: Vec<Place> = self.views(on).map(|view| view.place()).collect();
        self.take_word(clearance, on, (event, told))?;
        let after: Vec<Place> = self.views(on).map(|view| view.place()).collect();
        for (lift, (before, after)) in self.lifts.iter_mut().zip(before.into_iter().zip(after)) {
            lift.now.note_moved(before, after, told);
        }
        Ok(())
    }

    fn take_word(&mut self, clearance: &Clearance, on: Day, (event, told): (u32, u32)) -> Result<(), Error> {
        for (at, limit) in clearance.limits.iter().enumerate() {
            if let Some(region) = &limit.region {
                self.check_region_in("limits", at, region)?;
            }
        }
        let days = self.policy().map_or(Policy::default().clearance_days, |policy| policy.clearance_days);
        let expires = clearance.expires.or_else(|| on.plus(i32::from(days)).ok()).unwrap_or(on);
        let (mut limits, mut told) = (clearance.limits.clone(), told);
        // One that has run out already does not lift the limits before it, nor one that was given before they were told.
        let earlier = self.shared.clearance.take();
        if let Some(earlier) = earlier.filter(|earlier| expires < on || earlier.told > event) {
            limits = joined(limits.into_iter().chain(earlier.limits));
            told = told.max(earlier.told);
        }
        self.shared.clearance =
            Some(ClearanceInForce { status: clearance.status, given: on, expires, told, limits });
        if clearance.status == ClearanceStatus::NotCleared {
            self.stop_everything(&[], on, told);
            return Ok(());
        }
        // One that has run out already clears nothing.
        if expires < on {
            return Ok(());
        }
        self.shared.ill_since.take_if(|(_, told)| *told < event);
        // What needs a clinician's word is closed by an answer that says it is one, and by nothing else.
        self.shared.asks.retain(|open| open.ask.needs_clinician() || open.told > event);
        let regions = self.shared.regions.iter_mut().filter_map(|region| region.stop.as_mut());
        for stop in self.shared.stop.iter_mut().chain(regions) {
            stop.cleared |= stop.told < event;
        }
        Ok(())
    }

    pub(crate) fn take_sign_off(&mut self, given: &SignOff, on: Day, event: u32) -> Result<(), Error> {
        // A sign-off before the clearance does not count, and is told so until one does.
        match &given.scope {
            SignOffScope::Everything => {
                let refusal =
                    self.shared.stop.as_ref().map(|stop| self.shared.sign_off_refusal(stop, on, event));
                match (&mut self.shared.stop, refusal) {
                    (Some(stop), Some(refusal)) => stop.sign(refusal, on),
                    _ => {
                        let regions = self.shared.regions.iter_mut();
                        for stop in regions.filter_map(|region| region.stop.as_mut()) {
                            stop.refused = Some((on, SignOffRefusal::NamesNoRegion));
                        }
                    }
                }
            }
            SignOffScope::Region(id) => {
                self.check_known_region(id)?;
                let stop = self.shared.region(id).and_then(|region| region.stop.as_ref());
                let refusal = stop.map(|stop| self.shared.sign_off_refusal(stop, on, event));
                let stop = self.shared.region_mut(id).and_then(|region| region.stop.as_mut());
                if let (Some(stop), Some(refusal)) = (stop, refusal) {
                    stop.sign(refusal, on);
                }
            }
            SignOffScope::Gate(id) => self.lift_mut(id)?.now.signed_off = true,
        }
        self.reopen(on);
        Ok(())
    }
}

impl Shared {
    /// Why a sign-off of that stop does not count on that day, where it does not.
    fn sign_off_refusal(&self, stop: &Stop, on: Day, event: u32) -> Option<SignOffRefusal> {
        if stop.told > event {
            return Some(SignOffRefusal::ToldLater);
        }
        if stop.cleared && self.is_cleared(true, on) {
            return None;
        }
        let said_no = |given: &ClearanceInForce| given.status == ClearanceStatus::NotCleared;
        Some(match (self.clearance.as_ref().is_some_and(said_no), stop.cleared) {
            (true, _) => SignOffRefusal::NotCleared,
            (false, true) => SignOffRefusal::ClearanceExpired,
            (false, false) => SignOffRefusal::NoClearance,
        })
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
