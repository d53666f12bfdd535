//! How long a move stays on offer. Days that a lift only has to wait for its turn do not use the offer up; old
//! evidence does.

use alloc::vec::Vec;

use super::guard::Situation;
use super::state::State;
use super::status::Status;
use crate::quantity::Day;

impl State {
    /// Last day of the move on offer, where one is.
    pub(crate) fn offer_end(&self, at: usize) -> Option<Day> {
        let (track, policy) = (self.tracks.get(at)?, &self.parameters.as_deref()?.policy);
        let offered = track.offered?;
        let days = i32::from(policy.offer_days);
        let plain = offered.plus(days).ok()?;
        let free = self.free_from(at, offered);
        let (Some(free), Some(last)) = (free, track.last_session) else { return Some(plain) };
        let fresh = last.plus(i32::from(policy.freshness_days)).ok()?;
        Some(plain.max(free.plus(days).ok()?.min(fresh)))
    }

    /// The first day from that one on which the lift no longer has to wait for its turn; none where no wait ends it.
    fn free_from(&self, at: usize, from: Day) -> Option<Day> {
        let ends = self.ends_of_windows(at);
        let mut days: Vec<Day> = ends.into_iter().map(|day| day.max(from)).collect();
        days.push(from);
        days.sort_unstable();
        days.dedup();
        days.into_iter().find(|day| Situation::of(self, at, None, *day).is_some_and(|then| !then.waits()))
    }

    /// Days on which a window that counts this lift's, its partner's or its region's moves comes to an end.
    fn ends_of_windows(&self, at: usize) -> Vec<Day> {
        let Some(policy) = self.parameters.as_deref().map(|parameters| &parameters.policy) else {
            return Vec::new();
        };
        let regions = self.regions_of(at);
        let shared = self.regions.iter().filter(|region| regions.contains(&region.name));
        let lifts = [Some(at), self.partner(at)].into_iter().flatten().filter_map(|at| self.tracks.get(at));
        let moved = lifts.flat_map(|track| track.moves.iter().map(|(day, _)| *day));
        let moved: Vec<Day> = moved.chain(shared.flat_map(|region| region.moves.iter().copied())).collect();
        let windows = [policy.cooling_off_days, policy.region_window_days, policy.window_days];
        let ends =
            windows.into_iter().flat_map(|days| moved.iter().map(move |day| day.plus(i32::from(days))));
        ends.filter_map(Result::ok).collect()
    }

    /// Lets offers and overrides run out. Time alone only ever takes permission away.
    pub(crate) fn expire(&mut self, on: Day) {
        for at in 0..self.tracks.len() {
            let over = self.offer_end(at).is_some_and(|end| on > end);
            let Some(track) = self.tracks.get_mut(at) else { continue };
            track.overruled.take_if(|overruled| overruled.expires < on);
            if over && track.status == Status::ReadyToAdvance {
                track.settle(on);
                track.forget_evidence(on);
            }
        }
    }
}
