//! Regions under another name: what was known of the old one goes along, above all its stop.

use alloc::vec::Vec;

use super::state::{RegionState, State, Stop};
use super::status::Status;
use crate::quantity::{Day, Name};
use crate::record::Parameters;

impl State {
    /// Where a lift is given other regions, the new ones take over what was known of those that it no longer has.
    pub(crate) fn carry_regions(&mut self, before: &Parameters, after: &Parameters) {
        let earlier = self.regions.clone();
        for set in &after.tracks {
            let Some(was) = before.tracks.iter().find(|was| was.name == set.name) else { continue };
            let added: Vec<&Name> = set.regions.iter().filter(|name| !was.regions.contains(name)).collect();
            let gone = |region: &&RegionState| {
                was.regions.contains(&region.name) && !set.regions.contains(&region.name)
            };
            for old in earlier.iter().filter(gone) {
                added.iter().for_each(|name| self.region_mut(name).inherit(old));
                // Taken from its list without another in its place: the stop stays with the lift.
                if let (true, Some(stop)) = (added.is_empty(), old.stop) {
                    set.regions.iter().for_each(|name| self.region_mut(name).inherit_stop(stop));
                }
            }
        }
    }

    /// A lift that is stopped and whose stop has no region left gets one, since only there it can be signed off.
    pub(crate) fn give_stops_a_region(&mut self, on: Day, event: u32) {
        for at in 0..self.tracks.len() {
            let stopped = self.tracks.get(at).is_some_and(|track| track.status == Status::StoppedRefer);
            if !stopped || self.stop.is_some() || self.stopped_region(at).is_some() {
                continue;
            }
            let since = self.tracks.get(at).map_or(on, |track| track.since);
            for name in self.regions_of(at).to_vec() {
                self.region_mut(&name).inherit_stop(Stop { since, event, cleared: false, signed: false });
            }
        }
    }
}

impl RegionState {
    /// The more cautious of both; an agreed usual level is a permission and does not go along.
    fn inherit(&mut self, old: &RegionState) {
        self.loaded = self.loaded.max(old.loaded);
        self.last = self.last.max(old.last);
        self.clear_needed = self.clear_needed.max(old.clear_needed);
        (self.flares, self.flared) = (self.flares, self.flared).max((old.flares, old.flared));
        self.moves.extend_from_slice(&old.moves);
        self.moves.sort_unstable();
        self.moves.dedup();
        if let Some(stop) = old.stop {
            self.inherit_stop(stop);
        }
    }

    /// The clearance must be given anew, for the region as it is called now; of two stops the later one is kept.
    fn inherit_stop(&mut self, stop: Stop) {
        let later =
            self.stop.filter(|own| (own.since, own.event) >= (stop.since, stop.event)).unwrap_or(stop);
        self.stop = Some(Stop { cleared: false, signed: false, ..later });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stop_that_goes_along_asks_for_clearance_and_sign_off_anew() {
        let since: Day = "2025-01-06".parse().unwrap();
        let mut region = RegionState::new(Name::new("groin").unwrap());
        region.inherit_stop(Stop { since, event: 3, cleared: true, signed: true });
        assert_eq!(region.stop, Some(Stop { since, event: 3, cleared: false, signed: false }));
    }
}
