//! Pain: the most cautious matching row wins, and features outrank the score.

use super::foreseen::Foreseen;
use super::region::RegionState;
use super::state::State;
use crate::error::{Code, Error};
use crate::quantity::{Day, Name, Pain};
use crate::record::{PainAnswer, Policy, UsualPain};

/// Steady training days at or below the usual level before it allows a move (published advice gives none; our choice).
pub(crate) const STEADY_SESSIONS: u8 = 3;

/// What one answer about pain in one region asks for, the least first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum PainZone {
    /// No more than usual and no feature.
    Clear,
    /// A little, or more than usual: no move today.
    Hold,
    /// Enough to ask for clear sessions before a move.
    Block,
    /// Every lift of the region stops.
    Stop,
}

/// What does this answer about pain ask for: go on, hold, ease off until it is clear again, or stop?
///
/// # Rules
/// A feature that stops by itself, or a score above `pain_stop_above`: stop. A score of `pain_block_from` and more than
/// usual, and pain that is new or rising or of which nobody asked: ease off, and `clear_sessions` before a move. More than
/// usual: hold. The most cautious row that matches wins; features outrank the score.
///
/// ```
/// use bismar::progression::{PainZone, pain_zone};
/// use bismar::quantity::{Name, Pain};
/// use bismar::record::{PainAnswer, Policy};
///
/// let knee = |score| -> Result<PainAnswer, bismar::Error> {
///     Ok(PainAnswer::plain(Name::new("knee")?, Pain::new(score)?))
/// };
/// let asks = |answer: &PainAnswer| pain_zone(answer, Pain::NONE, &Policy::default());
/// assert_eq!(asks(&knee(2)?), PainZone::Hold);
/// assert_eq!(asks(&knee(4)?), PainZone::Block);
/// assert_eq!(asks(&knee(6)?), PainZone::Stop);
/// # Ok::<(), bismar::Error>(())
/// ```
#[must_use]
pub fn pain_zone(answer: &PainAnswer, usual: Pain, policy: &Policy) -> PainZone {
    let score = answer.score.score();
    if answer.stops() || score > policy.pain_stop_above {
        PainZone::Stop
    } else if (score >= policy.pain_block_from && answer.score > usual) || answer.is_unusual() {
        PainZone::Block
    } else if answer.score > usual {
        PainZone::Hold
    } else {
        PainZone::Clear
    }
}

impl State {
    /// Takes answers about regions, each of them declared.
    ///
    /// # Errors
    /// `unknown_region`; then none is taken.
    pub(crate) fn take_pains(&mut self, answers: &[PainAnswer], on: Day, told: u32) -> Result<(), Error> {
        for (at, answer) in answers.iter().enumerate() {
            self.check_region_in("pain", at, &answer.region)?;
        }
        answers.iter().try_for_each(|answer| self.take_pain(answer, on, told))
    }

    /// Takes what was said of one region unasked: told after a day of training it may be the morning after.
    pub(crate) fn take_pain_report(
        &mut self,
        answer: &PainAnswer,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        self.check_region(&answer.region)?;
        self.take_pains(core::slice::from_ref(answer), on, foreseen.told(event))?;
        self.take_flares(foreseen.flare(event), on);
        Ok(())
    }

    /// Takes a list of answers: who was asked so has none in the declared regions that it does not name.
    ///
    /// # Errors
    /// `unknown_region`; then none is taken.
    pub(crate) fn take_pain_list(&mut self, answers: &[PainAnswer], on: Day, told: u32) -> Result<(), Error> {
        self.take_pains(answers, on, told)?;
        self.shared.pain_on = Some(on);
        for region in self.declared_regions() {
            if !answers.iter().any(|answer| answer.region == region.id) {
                region.note(Pain::NONE, on);
            }
        }
        Ok(())
    }

    /// The regions that are asked about: one that is no longer declared waits until it is again.
    fn declared_regions(&mut self) -> impl Iterator<Item = &mut RegionState> {
        let all = self.in_force.as_ref().map(|in_force| &in_force.parameters);
        let declared = move |region: &&mut RegionState| all.is_some_and(|all| all.declares(&region.id));
        self.shared.regions.iter_mut().filter(declared)
    }

    fn take_pain(&mut self, answer: &PainAnswer, on: Day, told: u32) -> Result<(), Error> {
        let all = self.all().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
        let policy = &all.policy;
        let region = self.shared.known_mut(&answer.region)?;
        let zone = pain_zone(answer, region.usual_level(on, policy.usual_review_days), policy);
        region.note(answer.score, on);
        // Told after the training of that day it is of that day all the same.
        if region.loaded == Some(on) {
            region.keep_worst_of(on, false);
        }
        if zone > PainZone::Clear {
            region.unclear = Some(on);
            // A day that was taken as a clear one is none.
            if region.cleared.take_if(|day| *day == on).is_some() {
                region.clear_needed = region.clear_needed.saturating_add(1);
            }
        }
        if zone >= PainZone::Block {
            region.lowered = Some(on);
        }
        match zone {
            PainZone::Clear => {}
            PainZone::Hold => region.clear_needed = region.clear_needed.max(1),
            PainZone::Block => region.clear_needed = region.clear_needed.max(policy.clear_sessions),
            PainZone::Stop => {
                region.clear_needed = region.clear_needed.max(policy.clear_sessions);
                self.stop_region(answer, on, told)?;
            }
        }
        if zone > PainZone::Clear {
            self.hold_partners_in(&answer.region);
        }
        Ok(())
    }

    /// Pain where the strict lift of a pair loads and the forgiving one does not: that one holds, whoever said so and when.
    /// In a region of both it is the forgiving lift's own pain.
    fn hold_partners_in(&mut self, region: &Name) {
        let Some(all) = self.all() else { return };
        let loads = |id: &Name| self.lift(id).is_ok_and(|lift| lift.has_region(region));
        let sore = all.pairs.iter().filter(|pair| loads(&pair.strict) && !loads(&pair.forgiving));
        let sore: alloc::vec::Vec<&Name> = sore.map(|pair| &pair.strict).collect();
        sore.into_iter().for_each(|id| self.hold_partner(id));
    }

    pub(crate) fn agree_usual(&mut self, usual: &UsualPain, on: Day) -> Result<(), Error> {
        self.check_region(&usual.region)?;
        self.shared.known_mut(&usual.region)?.usual = Some((usual.level, on, 0));
        Ok(())
    }

    /// Counts a session after its answers were taken: the worst that was told of the day stands for each region that it
    /// loaded, and where it asked about pain clear regions come one training day nearer.
    pub(crate) fn count_clear(&mut self, asked: bool, loaded: &[Name], on: Day) {
        for region in self.declared_regions().filter(|region| loaded.contains(&region.id)) {
            region.keep_worst_of(on, asked);
            // One civil day is one, however many sessions it had.
            if !asked || region.loaded == Some(on) {
                continue;
            }
            region.count_steady();
            // What was said on that day before the session counts as well.
            if region.unclear != Some(on) && region.clear_needed > 0 {
                region.clear_needed -= 1;
                region.cleared = Some(on);
            }
        }
    }
}

impl RegionState {
    /// Keeps the worst that was told of a training day, in its session or outside. That it did not hurt before a session
    /// which asked nothing ends no row of pain.
    fn keep_worst_of(&mut self, on: Day, asked: bool) {
        let Some((_, told)) = self.last.filter(|(day, _)| *day == on) else { return };
        let hurt = self.scores.last().is_some_and(|(_, score)| *score > Pain::NONE);
        if asked || told > Pain::NONE || !hurt {
            self.keep_score(told, on);
        }
    }

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
