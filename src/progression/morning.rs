//! The morning after: flares in a row, and mornings that raised nothing.

use super::retraction::Flare;
use super::state::{Sitting, State, TrackState};
use super::status::Status;
use crate::gate::Outcome;
use crate::quantity::{Day, Name};

/// Flares in a row that step the lifts of a region back.
const FLARES_TO_STEP_BACK: u8 = 2;

impl State {
    /// A flare holds; a second one in a row steps back. One that is told twice counts once.
    pub(crate) fn take_flares(&mut self, flare: Option<&Flare>, on: Day) {
        let Some(flare) = flare else { return };
        for name in &flare.regions {
            let region = self.region_mut(name);
            region.clear_needed = region.clear_needed.max(1);
            if region.flared.replace(flare.trained) == Some(flare.trained) {
                continue;
            }
            region.flares = region.flares.saturating_add(1);
            if region.flares >= FLARES_TO_STEP_BACK {
                region.flares = 0;
                self.step_region_back(name, flare.trained, on);
            }
        }
    }

    fn step_region_back(&mut self, name: &Name, trained: Day, on: Day) {
        for at in self.tracks_of(name) {
            let Some(track) = self.tracks.get(at) else { continue };
            let rests = !track.status.is_trained() || track.status == Status::Resting;
            if !rests && !track.went_back_since(trained) {
                let loadable = self.loadable(at);
                self.step_back(at, on, &loadable);
            }
        }
    }

    /// A morning without a flare ends the row of flares of what was trained the day before it.
    pub(crate) fn calm_regions(&mut self, trained: Option<Day>) {
        let calm =
            |region: &&mut super::state::RegionState| region.loaded == trained && region.flared != trained;
        if trained.is_some() {
            self.regions.iter_mut().filter(calm).for_each(|region| region.flares = 0);
        }
    }

    /// The last day on which anything was trained.
    pub(crate) fn last_trained(&self) -> Option<Day> {
        let lifts = self.tracks.iter().filter_map(|track| track.last_session);
        lifts.chain(self.regions.iter().filter_map(|region| region.loaded)).max()
    }

    /// The day of a session that a lift still remembers.
    pub(crate) fn day_of(&self, session: u32) -> Option<Day> {
        let mut sittings = self.tracks.iter().flat_map(|track| &track.sittings);
        sittings.find(|sitting| sitting.session == session).map(|sitting| sitting.day)
    }

    /// The morning after raised nothing: passes of these sessions now count.
    pub(crate) fn confirm(&mut self, spoken_of: impl Fn(&Sitting) -> bool, on: Day) {
        for at in 0..self.tracks.len() {
            let Some(track) = self.tracks.get_mut(at) else { continue };
            let mut proven = None;
            for sitting in track.sittings.iter_mut().filter(|sitting| spoken_of(sitting)) {
                sitting.confirmed = true;
                if sitting.outcome == Outcome::Pass {
                    proven = Some(sitting.day);
                }
            }
            // A late answer about an older session does not make the proof older.
            if let Some(day) = proven.filter(|day| track.proven.is_none_or(|(before, _)| before <= *day)) {
                track.proven = Some((day, track.tuple.load));
            }
            self.offer_where_open(at, on);
        }
    }
}

impl TrackState {
    /// Whether the lift already went a step easier for the session of that day, as after two fails in a row.
    fn went_back_since(&self, trained: Day) -> bool {
        let lowered = matches!(self.status, Status::SteppingBack | Status::Returning);
        lowered && self.here.0 == 0 && self.here.1 >= trained
    }
}
