//! What a coach does: overrule, take or decline a move, move by hand, change rater or role. An act that a guard refuses
//! is kept as refused, so that a later correction never makes a log unreadable.

use super::guard::Situation;
use super::lift::Now;
use super::state::State;
use super::status::{Calibration, OverrideInForce, Purpose, Status};
use super::view::View;
use crate::error::Error;
use crate::quantity::{Day, Name};
use crate::reason::{OverrideEnd, Reason, Restart};
use crate::record::{
    Advance, BarChanged, Event, EventKind, Grant, LiftParameters, Move, Override, Place, Role, RoleSet,
};

impl State {
    pub(crate) fn take_override(
        &mut self,
        given: &Override,
        on: Day,
        (event, unread): (u32, bool),
    ) -> Result<(), Error> {
        let view = self.view(&given.lift, on)?;
        view.all.check_load(&view.lift.set, given.load)?;
        let upward = given.load > view.lift.now.grant.load();
        // Whether it is upward depends on what came before, and a correction may change that: an override that
        // lacks its reason or its end is refused, not an error that would make the log unreadable. So is one whose correction
        // cannot be read: nobody knows whether it still stands.
        let reasoned =
            given.why.as_ref().is_some_and(|why| !why.trim().is_empty()) && given.expires.is_some();
        let held = !super::stop::reasons(&view).is_empty() || view.shared.ill_since.is_some();
        let over_ceiling = view.ceiling().is_some_and(|ceiling| given.load > ceiling);
        let now = &mut self.lift_mut(&given.lift)?.now;
        if upward && (held || over_ceiling || !reasoned || unread) {
            now.refuse_override(event);
            return Ok(());
        }
        match given.expires {
            Some(expires) if expires >= on => {
                now.take_act();
                now.overruled = Some(OverrideInForce {
                    load: given.load,
                    expires,
                    who: given.who.clone(),
                    event,
                    eases: !upward,
                });
            }
            // It allows nothing any more, and nothing that stands is changed by it.
            Some(expires) => now.refuse_past(expires),
            None => {
                now.take_act();
                now.overruled = None;
                let grant = now.grant.with_load(given.load);
                if grant != now.grant {
                    now.stand_at(grant, on);
                    now.forgo_restoring();
                }
            }
        }
        Ok(())
    }

    pub(crate) fn take_acceptance(
        &mut self,
        given: &Advance,
        on: Day,
        (event, told): (u32, u32),
    ) -> Result<(), Error> {
        let view = self.view(&given.lift, on)?;
        // A step that was taken and not yet trained is not asked for again by telling it twice.
        if view.lift.now.has_just_stepped() {
            return Ok(());
        }
        match view.next_grant() {
            Ok(to) => self.attempt(&given.lift, to, on, (event, told)).map(drop),
            Err(_) => {
                self.lift_mut(&given.lift)?.now.refuse(event);
                Ok(())
            }
        }
    }

    pub(crate) fn take_decline(&mut self, given: &Advance, on: Day) -> Result<(), Error> {
        let now = &mut self.lift_mut(&given.lift)?.now;
        if now.status.is_ready() {
            now.take_act();
            now.restart(on, Restart::Declined);
        }
        Ok(())
    }

    /// Takes the move that a coach or the rule accepts, if no guard stands in its way; else keeps it as refused.
    pub(crate) fn attempt(
        &mut self,
        id: &Name,
        to: Grant,
        on: Day,
        (event, told): (u32, u32),
    ) -> Result<bool, Error> {
        if !self.blockers(id, Some(to), on)?.is_empty() {
            self.lift_mut(id)?.now.refuse(event);
            return Ok(false);
        }
        let Some(all) = self.all() else { return Ok(false) };
        let policy = &all.policy;
        let lift = self.lift_mut(id)?;
        let relearning = lift.set.relearning(policy);
        let regions = lift.set.regions.clone();
        let now = &mut lift.now;
        let stood = now.grant.place;
        let rung_changed = to.place.rung != stood.rung;
        let longest = i32::from(policy.window_days.max(policy.cooling_off_days));
        now.moves.retain(|(day, _)| on.since(*day) < longest);
        now.moves.push((on, now.grant.load()));
        let weak = now.weak.take();
        now.take_act();
        now.step_to(to, on);
        now.note_moved(stood, to.place, told);
        now.stepped = true;
        // What was allowed elsewhere, or eased from more, is no leave to go above what is granted here.
        now.keep_easing_only(OverrideEnd::Step, &lift.set, stood);
        super::probe::watch(now, weak, on, policy);
        now.peak = now.peak.max(to.load());
        if rung_changed {
            now.calibration = Calibration::of(relearning);
            now.enter(Status::Learning, on);
        } else {
            now.enter(Status::Consolidating, on);
        }
        let window = i32::from(policy.region_window_days);
        for region in self.shared.regions.iter_mut().filter(|region| regions.contains(&region.id)) {
            region.moves.retain(|day| on.since(*day) < window);
            region.moves.push(on);
        }
        Ok(true)
    }

    /// Every reason against a move of that lift on that day: to the given grant, or to the one on offer.
    pub(crate) fn blockers(
        &self,
        id: &Name,
        to: Option<Grant>,
        on: Day,
    ) -> Result<alloc::vec::Vec<Reason>, Error> {
        let view = self.view(id, on)?;
        // A break that asks for a way back holds the lift before it is next trained.
        let back = super::layoff::returned(&view).map(|now| view.lift.standing(now));
        let situation = Situation::new(View { lift: back.as_ref().unwrap_or(view.lift), ..view }, to);
        #[cfg(test)]
        let without = self.taken_out;
        #[cfg(not(test))]
        let without = None;
        Ok(situation.blockers(without))
    }

    /// The coach moves a lift by hand: sideways or down freely, upward through every guard.
    pub(crate) fn take_move(
        &mut self,
        given: &Move,
        on: Day,
        (event, told): (u32, u32),
    ) -> Result<(), Error> {
        let view = self.view(&given.lift, on)?;
        let set = &view.lift.set;
        set.check_grant(&given.to).map_err(|error| error.within("to"))?;
        view.all.check_load(set, given.to.load()).map_err(|error| error.within("to"))?;
        let (from, relearning) = (view.lift.now.grant, set.relearning(view.policy()));
        if !set.harder_in(&from, &given.to).is_empty() {
            return self.attempt(&given.lift, given.to, on, (event, told)).map(drop);
        }
        if given.to == from {
            return Ok(());
        }
        let lift = self.lift_mut(&given.lift)?;
        let now = &mut lift.now;
        now.take_act();
        now.stand_at(given.to, on);
        now.note_moved(from.place, given.to.place, told);
        now.keep_easing_only(OverrideEnd::Move, &lift.set, from.place);
        now.forgo_restoring();
        let free = now.status.is_trained()
            && !matches!(now.status, Status::Returning { .. } | Status::Resting { .. });
        if given.to.place.rung != from.place.rung {
            now.calibration = Calibration::of(relearning.max(now.calibration.left()));
            now.status.forget_passes();
            if free {
                now.enter(Status::Learning, on);
            }
        } else if now.status == Status::Consolidating {
            now.settle(on);
        }
        Ok(())
    }

    pub(crate) fn forget_where_changed(&mut self, changed: &BarChanged, on: Day) -> Result<(), Error> {
        if let Some(id) = &changed.lift {
            self.lift(id)?;
        }
        for lift in self.lifts.iter_mut().chain(&mut self.set_aside) {
            if changed.lift.as_ref().is_none_or(|id| lift.set.id == *id) {
                lift.now.restart(on, Restart::BarChanged);
            }
        }
        Ok(())
    }

    /// Another person gives the marks: where the gate says so the run starts anew, else it is flagged.
    pub(crate) fn take_rater(&mut self, changed: &BarChanged, on: Day) -> Result<(), Error> {
        if let Some(id) = &changed.lift {
            self.lift(id)?;
        }
        for lift in self.lifts.iter_mut().chain(&mut self.set_aside) {
            if changed.lift.as_ref().is_none_or(|id| lift.set.id == *id) {
                lift.now.other_rater = !lift.now.other_rater;
                if lift.set.gate.restarts_with_another_rater() {
                    lift.now.restart(on, Restart::RaterChanged);
                }
            }
        }
        Ok(())
    }

    pub(crate) fn take_role(&mut self, given: &RoleSet, on: Day) -> Result<(), Error> {
        let Some(all) = self.all() else { return self.lift(&given.lift).map(drop) };
        let lift = self.lift_mut(&given.lift)?;
        let learning = lift.set.learning(&all.policy);
        let now = &mut lift.now;
        let before = now.purpose;
        now.purpose = match given.role {
            Role::Train => Purpose::Train,
            Role::Maintain => Purpose::Maintain { not_below: given.not_below },
            Role::Rest => Purpose::Rest,
            Role::Retire => Purpose::Retire,
        };
        let unused_since = Some(now.since).filter(|_| before.is_unused() && !now.status.is_stopped());
        // While it was not used nobody looked after it: those days count, whatever else loaded its regions.
        if before.is_unused() && !now.purpose.is_unused() {
            now.count_own_gap(unused_since, on);
        }
        match (now.purpose, &now.status) {
            // Taken up again while it is stopped: when it is let go its sessions of calibration are still to come.
            (purpose, Status::StoppedRefer { .. }) if before == Purpose::Retire && purpose != before => {
                now.calibration = Calibration::of(learning);
            }
            (_, Status::StoppedRefer { .. }) => {}
            (Purpose::Retire, _) => now.enter(Status::Retired, on),
            // Taken up again, or to be after a rest: as a new lift.
            (purpose, Status::Retired) => {
                now.calibration = Calibration::of(learning);
                now.forget_evidence(on);
                let rests = purpose == Purpose::Rest;
                now.enter(if rests { Status::Resting { way: None } } else { Status::Learning }, on);
            }
            (Purpose::Rest, _) => now.rest(on),
            // A move that has still to be seen to hold is seen first, as a step back, a return or calibration is.
            (Purpose::Maintain { .. }, Status::Holding | Status::ReadyToAdvance { .. })
            | (Purpose::Train, Status::Maintaining) => now.settle(on),
            (Purpose::Train | Purpose::Maintain { .. }, Status::Resting { .. })
                if before == Purpose::Rest =>
            {
                now.wake(on);
            }
            _ => {}
        }
        // Given up after a rest, or the other way round, it is unused all the while.
        if let Some(since) = unused_since.filter(|_| now.purpose.is_unused()) {
            now.since = since;
        }
        Ok(())
    }

    /// Where the policy says so, a session or an answer after it takes the move on offer.
    pub(crate) fn accept_where_automatic(&mut self, event: &Event, told: u32) -> Result<(), Error> {
        let automatic = self.policy().is_some_and(|policy| policy.automatic_acceptance);
        let moves = matches!(
            event.kind,
            EventKind::SessionRecorded(_)
                | EventKind::NextDayReport(_)
                | EventKind::DayReport(_)
                | EventKind::CoachSignOff(_)
        );
        if !automatic || !moves {
            return Ok(());
        }
        let ready = self.views(event.day).filter(|view| view.lift.now.status.is_ready());
        let offers: alloc::vec::Vec<(Name, Grant)> =
            ready.filter_map(|view| Some((view.lift.set.id.clone(), view.next_grant().ok()?))).collect();
        for (id, to) in offers {
            let now = &self.lift(&id)?.now;
            let refused = (now.refused, now.override_refused);
            if !self.attempt(&id, to, event.day, (event.sequence, told))? {
                // Waiting is not a refusal.
                let now = &mut self.lift_mut(&id)?.now;
                (now.refused, now.override_refused) = refused;
            }
        }
        Ok(())
    }
}

impl Now {
    /// Whether a step was taken, and the lift stands there and was not trained since.
    fn has_just_stepped(&self) -> bool {
        self.stepped && matches!(self.status, Status::Consolidating | Status::Learning)
    }

    /// Drops an override that allows more than is granted; one that allows less stays in force. It was for the place at which
    /// the lift stood.
    pub(crate) fn keep_easing_only(&mut self, by: OverrideEnd, set: &LiftParameters, stood: Place) {
        let granted = self.grant.load();
        let ended = self.overruled.take_if(|overruled| !overruled.eases && overruled.load > granted);
        if let Some(ended) = ended {
            self.override_ended = Some((ended.load, by, set.named_place(stood)));
        }
    }

    /// Keeps that a step was refused.
    fn refuse(&mut self, event: u32) {
        (self.refused, self.override_refused) = (Some(event), false);
    }

    /// Keeps that an override was refused, which is the last word for another load now.
    fn refuse_override(&mut self, event: u32) {
        (self.refused, self.override_refused, self.override_past) = (Some(event), true, None);
    }

    /// Keeps that the last day of an override was past, which is the last word for another load now.
    fn refuse_past(&mut self, last_day: Day) {
        self.override_past = Some(last_day);
        self.refused.take_if(|_| self.override_refused);
    }

    /// An act was taken: a load whose last day was past is not the last word any more. What was refused stays told until the next
    /// session.
    const fn take_act(&mut self) {
        self.override_past = None;
    }
}
