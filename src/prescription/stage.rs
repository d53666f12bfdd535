//! One lift on its way through the stages: stop, clearance, layoff and gate (the decision), pain, the day, effort, less by
//! plan, and the load that can be made.

use super::change::changes;
use super::draft::Draft;
use super::equipment::{Equipment, round};
use super::lift::{LiftToday, Verdict};
use super::warm_up::warm_up;
use crate::caution::Caution;
use crate::condition::DayClass;
use crate::error::Error;
use crate::progression::{
    Decision, Easing, MoveOutlook, Purpose, RESERVE, RESERVE_ALONE, Status, View, gap, reserve_of_limit,
    rest_missing,
};
use crate::quantity::{Day, Rir};
use crate::reason::Reason;
use crate::record::{Dimension, Grant, LiftPlan, Place, Plan};

/// More in reserve in an easy week (our choice).
const EASY_WEEK_RESERVE: Rir = Rir::whole(4);
/// A break of so many full days is an easy week already (our choice). Once a week leaves six between two sessions.
const BREAK_COUNTS_DAYS: u16 = 7;

/// One lift on its way through the stages.
pub(super) struct Stage<'a> {
    pub(super) view: View<'a>,
    pub(super) plan: &'a Plan,
    pub(super) lift: &'a LiftPlan,
    pub(super) decision: Decision,
    pub(super) today: Day,
}

impl Stage<'_> {
    /// Today's work; the whole of what is granted where the plan may neither ask for less nor for an easy week.
    pub(super) fn draft(&self, as_planned: bool) -> Draft {
        let mut draft = self.worked_out(as_planned, true);
        // What a break, a stop or the plan left may be half of the work already: pain lowers that once more.
        let eased = draft.verdict == Verdict::EaseOff && self.pain_halves();
        if eased && !draft.is_easier_than(&self.worked_out(as_planned, false)) {
            draft.halve_work();
        }
        draft
    }

    /// The same, as it is with the pain there is or would be without it.
    fn worked_out(&self, as_planned: bool, pain: bool) -> Draft {
        let decision = &self.decision;
        let mut draft = Draft::new(decision.limit, decision.grant, RESERVE);
        self.stops(&mut draft);
        // Of limits that are missing a caution speaks, once for all lifts.
        for reason in decision.reasons.iter().filter(|reason| **reason != Reason::NoLimitsOnRecord) {
            draft.say(reason.clone());
        }
        self.height(&mut draft);
        if pain {
            self.pain(&mut draft);
        }
        self.day(&mut draft);
        self.effort(&mut draft);
        self.less(&mut draft, as_planned);
        // A plan may ask for less in reserve, but not of a lift that is eased.
        if draft.verdict > Verdict::Train {
            draft.keep_in_reserve(RESERVE);
        }
        // The plan may ask for as little already.
        let eased = draft.verdict == Verdict::EaseOff && self.way_back_halves();
        if eased && !draft.is_easier_than(&self.planned(as_planned)) {
            draft.halve_for_lighter();
        }
        draft
    }

    /// What is planned of the work granted, or the whole of it, with nothing that eases it.
    fn planned(&self, as_planned: bool) -> Draft {
        let mut draft = Draft::new(self.decision.limit, self.decision.grant, RESERVE);
        self.effort(&mut draft);
        if as_planned {
            self.asked_less(&mut draft);
        }
        draft
    }

    /// What would be done today if nothing asked for easier work; a lift that is left out is left out of it too.
    pub(super) fn uneased(&self, draft: &Draft) -> Draft {
        if draft.verdict >= Verdict::Rest {
            return draft.clone();
        }
        self.planned(true)
    }

    /// One set cannot be halved, four in reserve may be the plan already, and two loads may be made of the same discs: what is
    /// printed as without any easing is never called easier.
    pub(super) fn ease_the_same(&self, draft: &mut Draft, uneased: &Draft) {
        let loads = self.view.lift.loadable.at(self.decision.grant.place);
        let made = |draft: &Draft| Draft { load: loads.rounded_down(draft.load), ..draft.clone() };
        let both_train = draft.verdict == Verdict::EaseOff && uneased.verdict < Verdict::Rest;
        if !both_train || made(draft).is_easier_than(&made(uneased)) {
            return;
        }
        // A lift that rests until it is trained rests for good.
        if self.pain_halves() || self.way_back_halves() {
            draft.halve_for_lighter();
        } else {
            self.ease(draft);
        }
    }

    fn stops(&self, draft: &mut Draft) {
        for reason in &self.decision.reasons {
            let stops = matches!(
                reason,
                Reason::SymptomStop { .. } | Reason::PainStop { .. } | Reason::LimitWithoutLift { .. }
            );
            if stops {
                draft.at_least(Verdict::Stop, reason.clone());
            }
        }
        if self.decision.status.is_stopped() && draft.verdict < Verdict::Stop {
            draft.at_least(Verdict::Stop, Reason::Stopped);
        }
        if self.view.shared.ill_since.is_some() {
            draft.at_least(Verdict::Stop, Reason::ClearanceAfterIllness);
        }
        for open in &self.view.shared.asks {
            draft.at_least(Verdict::Stop, Reason::AsksFirst { ask: open.ask, since: open.since });
        }
        if self.view.limits().any(|limit| limit.no_loaded_flexion) {
            draft.say(Reason::NoLoadedFlexion);
        }
        match (&self.decision.status, self.view.lift.now.purpose) {
            (Status::Retired, _) => draft.at_least(Verdict::Rest, Reason::Retired),
            (Status::Resting { .. }, Purpose::Rest) => draft.at_least(Verdict::Rest, Reason::Resting),
            _ => {}
        }
        if let Some(away) = self.view.shared.away_on(self.today) {
            draft.at_least(Verdict::Rest, away.reason());
        }
        // The break, the stop or the step back asks for easier work, and nothing is lighter: less of the same.
        if self.view.lift.now.nothing_easier || self.view.halves_repetitions() {
            self.half_for_lighter(draft);
        }
        // Not even the easiest range is within the clearance.
        if self.view.range_allowed(self.view.lift.now.grant.place.range).is_none() {
            draft.at_least(Verdict::Rest, Reason::ClearanceRange);
        }
        match &self.view.shared.clearance {
            None if self.view.policy().clearance_required => draft.say(Reason::ClearanceMissing),
            Some(clearance) if clearance.expires < self.today => {
                draft.say(Reason::ClearanceExpired { on: clearance.expires });
            }
            _ => {}
        }
    }

    fn pain(&self, draft: &mut Draft) {
        for (how, reason) in self.view.pain_easings() {
            match how {
                Easing::Step => {
                    draft.at_least(Verdict::EaseOff, reason);
                    self.ease(draft);
                }
                Easing::UntilTrained => {
                    draft.at_least(Verdict::EaseOff, reason);
                    self.ease_until_trained(draft);
                }
                Easing::Technique => {
                    draft.at_least(Verdict::TechniqueOnly, reason);
                    self.technique(draft);
                }
            }
        }
    }

    fn day(&self, draft: &mut Draft) {
        match self.view.shared.class_on(self.today) {
            DayClass::Below => {
                draft.at_least(Verdict::EaseOff, Reason::DayBelow);
                self.ease(draft);
                draft.halve_sets();
            }
            DayClass::BelowSingle => draft.say(Reason::DayBelowSingle),
            DayClass::Above => draft.say(Reason::DayAbove),
            DayClass::Unknown => draft.say(Reason::DayUnknown),
            DayClass::Within => {}
        }
    }

    fn effort(&self, draft: &mut Draft) {
        draft.reserve = self.lift.reserve.unwrap_or(draft.reserve);
        // Less than the floor needs the coach's override in force: one that allows more, and does not wait.
        if !self.view.overruled_upward() || self.view.override_waits() {
            draft.keep_in_reserve(self.view.policy().reserve_floor);
        }
        for reserve in self.view.limits().filter_map(reserve_of_limit) {
            draft.keep_in_reserve(reserve);
        }
        if let Some(alone) = self.view.alone() {
            draft.say(alone);
            draft.keep_in_reserve(RESERVE_ALONE);
        }
    }

    /// What the plan asks for less than the work granted.
    fn asked_less(&self, draft: &mut Draft) {
        let asked = (self.lift.sets.unwrap_or(draft.sets), self.lift.reps.unwrap_or(draft.reps));
        if asked.0 < draft.sets || asked.1 < draft.reps {
            draft.no_step(Reason::PlanAsksLess);
            draft.lower_sets(asked.0);
            draft.lower_reps(asked.1);
        }
    }

    fn less(&self, draft: &mut Draft, as_planned: bool) {
        let half = self.decision.reasons.iter().find(|reason| matches!(reason, Reason::HalfSets { .. }));
        if let Some(half) = half {
            draft.at_least(Verdict::EaseOff, half.clone());
            draft.halve_sets();
        }
        if as_planned {
            self.asked_less(draft);
        }
        if self.plan.easy_week && as_planned {
            // From one day of training to the next lies one full day less than that.
            let days = gap(&self.view).and_then(|gap| u16::try_from(gap - 1).ok()).unwrap_or_default();
            match days {
                BREAK_COUNTS_DAYS.. => draft.no_step(Reason::BreakCounts { days }),
                _ => {
                    draft.at_least(Verdict::EaseOff, Reason::EasyWeek);
                    draft.halve_sets();
                    draft.keep_in_reserve(EASY_WEEK_RESERVE);
                }
            }
        }
        let implement = &self.view.lift.set.implement;
        if self.plan.unavailable.contains(implement) {
            draft.at_least(Verdict::Rest, Reason::ImplementUnavailable { implement: implement.clone() });
        }
        if let Some(ask) = self.view.shared.asked_and_answered(self.today) {
            draft.no_step(Reason::AskOfToday { ask });
        }
        // Both lifts of a pair in one plan leave no rest between them.
        let partner = self.view.partner.map(|partner| &partner.lift.set.id);
        let together = partner.is_some_and(|id| self.plan.lifts.iter().any(|lift| lift.lift == *id));
        if let Some(rest) = rest_missing(&self.view) {
            draft.no_step(rest);
        } else if let Some(partner) = partner.filter(|_| together) {
            draft.no_step(Reason::PairTogether { partner: partner.clone() });
        }
        // An upward override waits while the lift is eased.
        let granted = self.view.lift.now.grant.load();
        if draft.verdict > Verdict::Train && draft.load > granted {
            draft.say(Reason::OverrideSuspended { load: draft.load });
            draft.lower_load(granted);
        }
    }

    pub(super) fn finish(&self, mut draft: Draft) -> Result<LiftToday, Error> {
        let place = Place { rung: draft.rung, ..self.decision.grant.place };
        let equipment = Equipment::of(&self.view, place)?;
        let lifts = draft.verdict < Verdict::Rest;
        let made = if lifts { round(&mut draft, &equipment) } else { None };
        draft.say_height_once(self.view.height_not_made(place));
        // Lighter may mean another height: never one that the clearance rules out.
        let made = made.filter(|made| self.view.height_allowed(place.range, Some(made.off_by_mm)));
        if lifts && made.is_none() && draft.verdict < Verdict::Rest {
            draft.at_least(Verdict::Rest, Reason::ClearanceRange);
        }
        // What cannot be loaded stands against a step too.
        let decision = self.without_offer_beside(&draft);
        decision.outlook.tell(&mut draft.reasons, self.view.lift.now.here.0);
        let warm_up = made
            .as_ref()
            .map(|made| warm_up(made.loaded.total, self.lift.reference, |load| equipment.below(load)))
            .unwrap_or_default();
        let lifts = draft.verdict < Verdict::Rest;
        let load = made.as_ref().map(|made| made.loaded.total).filter(|_| lifts);
        let (loaded, blocks) =
            made.filter(|_| lifts).map_or((None, None), |made| (Some(made.loaded), made.blocks));
        Ok(LiftToday {
            would_change: changes(&decision, &self.view, draft.short_for_whole),
            lift: decision.lift,
            verdict: draft.verdict,
            status: decision.status,
            granted: Grant { place: decision.grant.place, work: self.view.lift.now.grant.work },
            limit: decision.limit,
            place,
            height: self.view.lift.set.start_height(place),
            load,
            loaded,
            blocks,
            sets: if lifts { draft.sets } else { 0 },
            reps: if lifts { draft.reps } else { 0 },
            reserve: draft.reserve,
            warm_up: if lifts { warm_up } else { alloc::vec::Vec::new() },
            cautions: self.cautions(&draft),
            reasons: draft.reasons,
            outlook: decision.outlook,
            gate: decision.gate,
            evidence: decision.evidence,
        })
    }

    /// The decision as today leaves it: no step is on offer beside less than the whole work, or beside the other lift of
    /// a pair.
    fn without_offer_beside(&self, draft: &Draft) -> Decision {
        let mut decision = self.decision.clone();
        match &mut decision.outlook {
            MoveOutlook::OnOffer { to } if !draft.against.is_empty() => {
                let (by, to) = (draft.against.clone(), Some(*to));
                decision.outlook = MoveOutlook::Blocked { by, to };
            }
            MoveOutlook::OnOffer { .. } => {}
            // Beside what stands in the way anyway: nothing of today is left to be found out later.
            MoveOutlook::Blocked { by, .. } => {
                let of_today = draft.against.iter().filter(|reason| !by.contains(reason));
                let of_today: alloc::vec::Vec<Reason> = of_today.cloned().collect();
                by.extend(of_today);
            }
        }
        decision
    }

    fn cautions(&self, draft: &Draft) -> alloc::vec::Vec<Caution> {
        let mut cautions = alloc::vec::Vec::new();
        // A fever that is over is the coach's word.
        let coach =
            |reason: &Reason| matches!(reason, Reason::AsksFirst { ask, .. } if !ask.needs_clinician());
        let stops = |reason: &&Reason| reason.stops_lift() && !coach(reason);
        if draft.verdict == Verdict::Stop && draft.reasons.iter().any(|reason| stops(&reason)) {
            cautions.push(Caution::SeeClinicianFirst);
        }
        if self.view.shared.unknown > 0 {
            cautions.push(Caution::UnknownEvents);
        }
        if self.view.alone().is_some() {
            cautions.push(Caution::AloneWithoutPins);
        }
        let elsewhere = |reason: &Reason| {
            matches!(reason, Reason::HeightOff { .. } | Reason::HeightNotMade { .. } | Reason::HeightUnknown)
        };
        if draft.reasons.iter().any(elsewhere) {
            cautions.push(Caution::LowerStart);
        }
        if draft.reasons.iter().any(|reason| matches!(reason, Reason::PainPersists { .. })) {
            cautions.push(Caution::SeeClinicianFirst);
        }
        if self.view.limits().any(|limit| limit.no_breath_hold) {
            cautions.push(Caution::BreathingPlan);
        }
        if self.view.lift.set.moving == Dimension::Load && draft.verdict == Verdict::Train {
            cautions.push(Caution::GatesUnproven);
        }
        cautions.extend(super::mind::of_reasons(&self.view, draft));
        let mut once: alloc::vec::Vec<Caution> = alloc::vec::Vec::with_capacity(cautions.len());
        for caution in cautions {
            if !once.contains(&caution) {
                once.push(caution);
            }
        }
        once
    }
}
