//! Pain: the most cautious matching row wins, and features outrank the score.

use super::region::RegionState;
use super::state::State;
use crate::error::Error;
use crate::quantity::{Day, Name, Pain};
use crate::record::{PainAnswer, Policy, UsualPain};

/// Steady training days at or below the usual level before it allows a move (published advice gives none; our choice).
pub(crate) const STEADY_SESSIONS: u8 = 3;

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
    if answer.stops() || score > policy.pain_stop_above {
        Zone::Stop
    } else if (score >= policy.pain_block_from && answer.score > usual) || answer.is_unusual() {
        Zone::Block
    } else if answer.score > usual {
        Zone::Hold
    } else {
        Zone::Clear
    }
}

impl State {
    /// Takes answers about regions, each of them declared.
    ///
    /// # Errors
    /// `unknown_region`; then none is taken.
    pub(crate) fn take_pains(&mut self, answers: &[PainAnswer], on: Day, event: u32) -> Result<(), Error> {
        for (at, answer) in answers.iter().enumerate() {
            self.check_region_in("pain", at, &answer.region)?;
        }
        answers.iter().for_each(|answer| self.take_pain(answer, on, event));
        Ok(())
    }

    /// Takes a list of answers: who was asked so has none in the regions that it does not name.
    ///
    /// # Errors
    /// `unknown_region`; then none is taken.
    pub(crate) fn take_pain_list(
        &mut self,
        answers: &[PainAnswer],
        on: Day,
        event: u32,
    ) -> Result<(), Error> {
        self.take_pains(answers, on, event)?;
        for region in &mut self.shared.regions {
            if !answers.iter().any(|answer| answer.region == region.id) {
                region.note(Pain::NONE, on);
            }
        }
        Ok(())
    }

    fn take_pain(&mut self, answer: &PainAnswer, on: Day, event: u32) {
        let Some(all) = self.all() else { return };
        let policy = &all.policy;
        let Some(region) = self.shared.region_mut(&answer.region) else { return };
        let zone = zone(answer, region.usual_level(on, policy.usual_review_days), policy);
        region.note(answer.score, on);
        match zone {
            Zone::Clear => {}
            Zone::Hold => region.clear_needed = region.clear_needed.max(1),
            Zone::Block => region.clear_needed = region.clear_needed.max(policy.clear_sessions),
            Zone::Stop => {
                region.clear_needed = region.clear_needed.max(policy.clear_sessions);
                self.stop_region(&answer.region, on, event);
            }
        }
    }

    pub(crate) fn agree_usual(&mut self, usual: &UsualPain, on: Day) -> Result<(), Error> {
        self.check_region(&usual.region)?;
        if let Some(region) = self.shared.region_mut(&usual.region) {
            region.usual = Some((usual.level, on, 0));
        }
        Ok(())
    }

    /// Counts a session in which pain was asked about: clear regions come one training day nearer.
    pub(crate) fn count_clear(&mut self, answers: &[PainAnswer], loaded: &[Name], on: Day) {
        let Some(all) = self.all() else { return };
        let policy = &all.policy;
        for region in &mut self.shared.regions {
            let answer = answers.iter().find(|answer| answer.region == region.id);
            let usual = region.usual_level(on, policy.usual_review_days);
            let clear = answer.is_none_or(|answer| zone(answer, usual, policy) == Zone::Clear);
            if !loaded.contains(&region.id) {
                continue;
            }
            region.keep_score(answer.map_or(Pain::NONE, |answer| answer.score), on);
            // What was said before the session, on the same day, counts as well: the worse of them stands.
            let clear = clear && region.last.is_none_or(|(day, worst)| day != on || worst <= usual);
            // One civil day is one, however many sessions it had.
            if region.loaded == Some(on) {
                continue;
            }
            region.count_steady();
            if clear {
                region.clear_needed = region.clear_needed.saturating_sub(1);
            }
        }
    }
}

impl RegionState {
    /// Keeps a score; a rise, or more than usual, ends a steady row. Of two answers of one day the worse stands.
    fn note(&mut self, score: Pain, on: Day) {
        let score = match self.last {
            Some((day, earlier)) if day == on => score.max(earlier),
            _ => score,
        };
        if let Some((level, _, steady)) = &mut self.usual
            && (score > *level || self.last.is_some_and(|(_, last)| score > last))
        {
            *steady = 0;
        }
        self.last = Some((on, score));
    }

    /// Counts a training day at or below the usual level.
    fn count_steady(&mut self) {
        if let Some((level, _, steady)) = &mut self.usual
            && self.last.is_some_and(|(_, last)| last <= *level)
        {
            *steady = steady.saturating_add(1).min(STEADY_SESSIONS);
        }
    }
}
