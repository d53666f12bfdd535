//! Where a day asks for a lift to be done: at the granted place within what a clearance allows, or on an easier rung of it where
//! the day eases the lift and nothing is lighter. Today's session is made of this, and a session that leaves its place out was
//! done there. What it came to is judged in `judge`. (What a lifter is asked before training is `asks`.)

use super::region::RegionState;
use super::view::View;
use crate::condition::DayClass;
use crate::quantity::{Mass, Pain, Rir};
use crate::reason::Reason;
use crate::record::{ClearanceLimits, LiftSession, Place, Policy};

/// Repetitions left in reserve where the plan names none (common practice).
pub(crate) const RESERVE: Rir = Rir::whole(3);
/// Repetitions left in reserve alone under a bar without pins (our choice).
pub(crate) const RESERVE_ALONE: Rir = Rir::whole(4);

/// What a day asks of a lift before a session of it, as far as the log says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Asked {
    /// Where it is to be done.
    pub(crate) place: Place,
    /// Pain asks for less than the work granted.
    pub(crate) eased: bool,
    /// What is to be left in reserve where no plan names a number.
    pub(crate) reserve: Rir,
    /// What is to be left whatever a plan names: by a limit of effort, and alone under a bar without pins.
    pub(crate) reserve_least: Rir,
}

/// How far a day eases a lift.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Easing {
    /// One step down.
    Step,
    /// One step down that lasts until the lift is trained.
    UntilTrained,
    /// The lightest load, technique only.
    Technique,
}

impl View<'_> {
    /// Where the day asks for the lift to be done, as far as the log says. A plan may ask for an easier rung still, in an easy
    /// week of one set where nothing is lighter: who leaves the place out of such a session says that it was here.
    pub(crate) fn asked_place(&self) -> Place {
        let place = self.place();
        let Some(easier) = self.easier_rung_of(place) else { return place };
        let nothing_lighter = |how: Easing| self.eased_load(how).is_none();
        let below = self.shared.class_on(self.on) == DayClass::Below;
        let on_rung = self.pain_easings().any(|(how, _)| nothing_lighter(how))
            || ((below || self.halves_one_set()) && nothing_lighter(Easing::Step));
        if on_rung { easier } else { place }
    }

    /// What the day asks of the lift, as far as the log says.
    pub(crate) fn asked(&self) -> Asked {
        let eased = self.pain_easings().next().is_some();
        let reserve_least = self.reserve_least();
        let usual = RESERVE.max(self.policy().reserve_to_advance);
        Asked { place: self.asked_place(), eased, reserve: usual.max(reserve_least), reserve_least }
    }

    /// What it asked of what was done in the session of that number.
    pub(crate) fn asked_of(&self, done: &LiftSession, event: u32) -> Asked {
        Asked { place: self.asked_place_of(done, event), ..self.asked() }
    }

    /// What is to be left in reserve whatever a plan names: as today's session says it.
    fn reserve_least(&self) -> Rir {
        let alone = self.alone().map(|_| RESERVE_ALONE);
        let floors = self.limits().filter_map(reserve_of_limit).chain(alone);
        floors.fold(self.policy().reserve_floor, Rir::max)
    }

    /// Where it asked for that. Who left the place out knew nothing of a move that was told later,
    /// though of an earlier day: it puts nobody where it leads.
    fn asked_place_of(&self, done: &LiftSession, event: u32) -> Place {
        let later = self.lift.now.moved.filter(|(told, _)| done.place.is_none() && *told > event);
        later.map_or_else(|| self.asked_place(), |(_, before)| before)
    }

    /// The same place on the rung that is directly easier, where there is one.
    fn easier_rung_of(&self, place: Place) -> Option<Place> {
        let rung = self.lift.set.easier_rung(place.rung);
        (rung != place.rung).then_some(Place { rung, ..place })
    }

    /// Half of one set is one set, so that the lift is eased otherwise.
    fn halves_one_set(&self) -> bool {
        let now = &self.lift.now;
        now.half_sessions > 0 && now.grant.work.sets == 1 && !now.nothing_easier
    }

    /// Whether the way back asks for half of the repetitions: of one set half is one set, and nothing is easier.
    pub(crate) fn halves_repetitions(&self) -> bool {
        let now = &self.lift.now;
        let half = now.nothing_easier || (now.half_sessions > 0 && self.nothing_is_easier());
        half && now.grant.work.sets == 1
    }

    /// Neither a lighter load nor an easier rung.
    pub(crate) fn nothing_is_easier(&self) -> bool {
        self.eased_load(Easing::Step).is_none() && self.easier_rung_of(self.place()).is_none()
    }

    /// What was said of pain, in its regions or of the strict lift beside it, that eases the lift on this day.
    pub(crate) fn pain_easings(&self) -> impl Iterator<Item = (Easing, Reason)> {
        let strict = super::pair::strict_hurt(self).map(|hurt| (Easing::UntilTrained, hurt));
        self.regions().filter_map(|region| self.easing_of(region)).chain(strict)
    }

    /// Whether pain eases the next session of the lift: that of the strict lift beside it, or pain that stays and is not gone.
    pub(crate) fn next_is_eased(&self) -> bool {
        let stays = |region: &RegionState| self.hurts_and_stays(region);
        self.lift.now.partner_pain || self.regions().any(stays)
    }

    fn hurts_and_stays(&self, region: &RegionState) -> bool {
        region.last.is_some_and(|(_, score)| score > Pain::NONE) && region.persists(self.policy(), self.on)
    }

    fn easing_of(&self, region: &RegionState) -> Option<(Easing, Reason)> {
        let (policy, (day, score)) = (self.policy(), region.last?);
        let asked = self.shared.report_on(self.on).is_some_and(|report| report.pain_asked);
        let usual = region.usual_level(self.on, policy.usual_review_days);
        let high = score.score() >= policy.pain_block_from && score > usual;
        if (high && day == self.on) || region.lowered == Some(self.on) {
            Some((Easing::Step, region.block()))
        } else if high && !asked {
            Some((Easing::Technique, Reason::PainMissingAfterHigh { region: region.id.clone() }))
        } else if self.hurts_and_stays(region) {
            // No half of the work either, whatever is agreed to be usual, and where a policy lets pain block only later.
            let blocks = policy.pain_block_from.min(Policy::default().pain_block_from);
            let how = if score.score() >= blocks { Easing::Step } else { Easing::UntilTrained };
            Some((how, Reason::PainPersists { region: region.id.clone() }))
        } else {
            None
        }
    }

    /// The load of a day that eases the lift so far: a step down from the lower of grant and override, or the lightest at the
    /// height or else at the nearest other one; none where nothing is lighter.
    pub(crate) fn eased_load(&self, how: Easing) -> Option<Mass> {
        let (lift, place) = (self.lift, self.place());
        let from = self.eases_from();
        match how {
            Easing::Step | Easing::UntilTrained => {
                super::moves::one_load_back(lift, place, from, self.policy())
            }
            Easing::Technique => {
                let loads = lift.loadable.at(place);
                loads.easier(from, loads.lightest().unwrap_or(from))
            }
        }
    }

    /// The lower of grant and override.
    pub(crate) fn eases_from(&self) -> Mass {
        self.limit().min(self.lift.now.grant.load())
    }
}

/// What a clearance's limit of effort leaves in reserve.
pub(crate) fn reserve_of_limit(limit: &ClearanceLimits) -> Option<Rir> {
    let halves = 20_u16.saturating_sub(limit.effort?.halves());
    Some(Rir::new(f64::from(halves) / 2.0).unwrap_or(RESERVE_ALONE))
}
