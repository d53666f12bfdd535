//! Pain and symptoms: the most cautious matching row wins, and features outrank the score.

use super::state::{RegionState, State, Stop};
use super::status::Status;
use crate::error::{Code, Error};
use crate::quantity::{Day, Name, Pain};
use crate::record::{PainAnswer, PainFeature, Policy, UsualPain};

/// Steady sessions at or below the usual level before it allows a move (published advice gives none; our choice).
pub(crate) const STEADY_SESSIONS: u8 = 3;

/// The most regions of one lifter, so that a state stays small.
const MOST_REGIONS: usize = 96;

/// What one answer about one region asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Zone {
    /// No more than usual and no feature.
    Clear,
    /// A little, or more than usual: no move today.
    Hold,
    /// Enough to ask for clear sessions before a move.
    Block,
    /// Every lift of the region stops.
    Stop,
}

pub(crate) fn zone(answer: &PainAnswer, usual: Pain, policy: &Policy) -> Zone {
    let score = answer.score.score();
    let unusual =
        answer.features.iter().any(|feature| matches!(feature, PainFeature::New | PainFeature::Rising));
    if answer.stops() || score > policy.pain_stop_above {
        Zone::Stop
    } else if (score >= policy.pain_block_from && answer.score > usual) || (unusual && score > 0) {
        Zone::Block
    } else if answer.score > usual {
        Zone::Hold
    } else {
        Zone::Clear
    }
}

impl State {
    /// Takes one answer about one region. Regions that no lift loads are kept too: a stop there is a stop.
    ///
    /// # Errors
    /// `too_many` regions.
    pub(crate) fn take_pain(&mut self, answer: &PainAnswer, on: Day, event: u32) -> Result<(), Error> {
        let policy = self.parameters.as_ref().map(|parameters| parameters.policy.clone()).unwrap_or_default();
        self.room_for(&answer.region)?;
        let region = self.region_mut(&answer.region);
        let zone = zone(answer, region.usual_level(on, policy.usual_review_days), &policy);
        region.note(answer.score, on);
        match zone {
            Zone::Clear => {}
            Zone::Hold => region.clear_needed = region.clear_needed.max(1),
            Zone::Block => region.clear_needed = policy.clear_sessions,
            Zone::Stop => self.stop_region(&answer.region, on, event, policy.clear_sessions),
        }
        Ok(())
    }

    fn stop_region(&mut self, name: &Name, on: Day, event: u32, clear_sessions: u8) {
        let region = self.region_mut(name);
        region.stop = Some(Stop { since: on, event, cleared: false, signed: false });
        region.clear_needed = clear_sessions;
        for at in self.tracks_of(name) {
            self.halt(at, on);
        }
    }

    /// Puts a lift into its stop.
    pub(crate) fn halt(&mut self, at: usize, on: Day) {
        if let Some(track) = self.tracks.get_mut(at)
            && track.status != Status::StoppedRefer
        {
            track.forget_evidence(on);
            track.keep_easing_only();
            track.enter(Status::StoppedRefer, on);
        }
    }

    /// Any one sign halts every lift.
    pub(crate) fn stop_everything(&mut self, on: Day, event: u32) {
        self.stop = Some(Stop { since: on, event, cleared: false, signed: false });
        for at in 0..self.tracks.len() {
            self.halt(at, on);
        }
    }

    pub(crate) fn agree_usual(&mut self, usual: &UsualPain, on: Day) -> Result<(), Error> {
        self.room_for(&usual.region)?;
        let region = self.region_mut(&usual.region);
        region.usual = Some((usual.level, on, 0));
        Ok(())
    }

    /// Refuses a new region beyond the stated number.
    fn room_for(&self, name: &Name) -> Result<(), Error> {
        let known = self.regions.iter().any(|region| region.name == *name);
        if known || self.regions.len() < MOST_REGIONS {
            return Ok(());
        }
        let count = self.regions.len();
        Err(Error::range(Code::TooMany, "region", count, 0.0, MOST_REGIONS as f64, "regions"))
    }

    /// Counts a session in which pain was asked about: clear regions come one session nearer.
    pub(crate) fn count_clear(&mut self, answers: &[PainAnswer], loaded: &[&Name], on: Day) {
        let Some(parameters) = self.parameters.clone() else { return };
        let policy = &parameters.policy;
        for region in &mut self.regions {
            let answer = answers.iter().find(|answer| answer.region == region.name);
            let usual = region.usual_level(on, policy.usual_review_days);
            let clear = answer.is_none_or(|answer| zone(answer, usual, policy) == Zone::Clear);
            if answer.is_none() {
                region.note(Pain::NONE, on);
            }
            if loaded.contains(&&region.name) {
                region.count_steady(on);
            }
            if clear && loaded.contains(&&region.name) {
                region.clear_needed = region.clear_needed.saturating_sub(1);
            }
        }
    }

    /// The region of that name; made where it is new.
    pub(crate) fn region_mut(&mut self, name: &Name) -> &mut RegionState {
        let at = match self.regions.iter().position(|region| region.name == *name) {
            Some(at) => at,
            None => {
                self.regions.push(RegionState::new(name.clone()));
                self.regions.len() - 1
            }
        };
        // The place was found or made just now.
        #[allow(clippy::indexing_slicing, reason = "at is below len")]
        &mut self.regions[at]
    }

    /// Places of the lifts that load that region.
    pub(crate) fn tracks_of(&self, region: &Name) -> alloc::vec::Vec<usize> {
        let tracks =
            self.parameters.as_ref().map(|parameters| parameters.tracks.as_slice()).unwrap_or_default();
        (0_usize..)
            .zip(tracks)
            .filter(|(_, track)| track.regions.contains(region))
            .map(|(at, _)| at)
            .collect()
    }
}

impl RegionState {
    /// Keeps a score; a rise, or more than usual, ends a steady row.
    pub(crate) fn note(&mut self, score: Pain, on: Day) {
        if let Some((level, _, steady)) = &mut self.usual
            && (score > *level || self.last.is_some_and(|(_, last)| score > last))
        {
            *steady = 0;
        }
        self.last = Some((on, score));
    }

    /// Counts a session at or below the usual level; two sessions of one day are one.
    fn count_steady(&mut self, on: Day) {
        if let Some((level, _, steady)) = &mut self.usual
            && self.loaded != Some(on)
            && self.last.is_some_and(|(_, last)| last <= *level)
        {
            *steady = steady.saturating_add(1).min(STEADY_SESSIONS);
        }
    }
}
