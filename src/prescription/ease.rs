//! A lighter load, an easier rung, less of the same, or the lift rests: how a day is eased.

use super::draft::Draft;
use super::lift::Verdict;
use super::stage::Stage;
use crate::progression::Easing;
use crate::quantity::Mass;
use crate::reason::Reason;

/// Sets of technique work (our choice).
const TECHNIQUE_SETS: u8 = 2;

impl Stage<'_> {
    /// One step down from the lower of grant and override.
    pub(super) fn ease(&self, draft: &mut Draft) {
        self.lower(draft, self.below());
    }

    /// The load one step down, where something so light can be made.
    pub(super) fn below(&self) -> Option<Mass> {
        self.view.eased_load(Easing::Step)
    }

    /// The same where it lasts until the lift is trained: one that rested would rest for good, so that where nothing is easier
    /// it is half of the work, or of what is half already.
    pub(super) fn ease_until_trained(&self, draft: &mut Draft) {
        if !self.view.nothing_is_easier() {
            self.ease(draft);
        } else if !self.view.lift.now.nothing_easier {
            self.half_for_lighter(draft);
        }
    }

    /// Whether pain asks for half of the work.
    pub(super) fn pain_halves(&self) -> bool {
        self.view.nothing_is_easier() && self.view.pain_easings().any(|(how, _)| how == Easing::UntilTrained)
    }

    /// Whether a way back asks for easier work, and nothing is easier.
    pub(super) fn way_back_halves(&self) -> bool {
        let now = &self.view.lift.now;
        (now.half_sessions > 0 || now.nothing_easier) && self.view.nothing_is_easier()
    }

    /// Half of the work where easier work is asked for and there is none. Half the sets after a break are that already.
    pub(super) fn half_for_lighter(&self, draft: &mut Draft) {
        if self.view.lift.now.half_sessions == 0 || draft.sets == 1 {
            draft.halve_for_lighter();
        } else {
            draft.at_least(Verdict::EaseOff, Reason::HalfForLighter);
        }
    }

    /// The lightest load at the height, or else at the nearest other one, in few sets.
    pub(super) fn technique(&self, draft: &mut Draft) {
        self.lower(draft, self.view.eased_load(Easing::Technique));
        draft.lower_sets(TECHNIQUE_SETS);
    }

    /// A bar that starts lower than granted is a harder lift, never shown: the lightest load there and technique only, or
    /// nothing today.
    pub(super) fn height(&self, draft: &mut Draft) {
        let Some(lower) = self.view.starts_lower() else { return };
        let loads = self.view.lift.loadable.at(self.decision.grant.place);
        let lightest = loads.lightest().and_then(|lightest| loads.easier(self.from(), lightest));
        draft.at_least(if lightest.is_some() { Verdict::TechniqueOnly } else { Verdict::Rest }, lower);
        draft.lower_sets(TECHNIQUE_SETS);
        draft.lower_load(lightest.unwrap_or(self.from()));
    }

    /// The lower of grant and override.
    pub(super) fn from(&self) -> Mass {
        self.view.eases_from()
    }

    /// Down to that load. Where nothing is lighter: the easier rung at no more load; where there is none, the lift is left
    /// out today. The same work is never called easier.
    pub(super) fn lower(&self, draft: &mut Draft, below: Option<Mass>) {
        let (lift, place) = (self.view.lift, self.decision.grant.place);
        if let Some(below) = below {
            draft.lower_load(below);
            return;
        }
        let rung = lift.set.easier_rung(place.rung);
        match lift.set.rungs.get(usize::from(rung)).filter(|_| rung != place.rung) {
            Some(easier) => {
                draft.easier_rung(rung);
                draft.lower_load(self.from());
                draft.say(Reason::EasierRung { rung: easier.id.clone() });
            }
            None => draft.at_least(Verdict::Rest, Reason::NothingEasier),
        }
    }
}
