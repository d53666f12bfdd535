//! What a session means for its lifts.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::foreseen::Foreseen;
use super::judge::{Judged, Said, judge};
use super::layoff::returned;
use super::lift::Lift;
use super::setup::{note_rack, note_setup};
use super::sitting::Sitting;
use super::state::State;
use super::status::{Purpose, Status};
use super::view::View;
use crate::error::{Code, Error};
use crate::gate::Outcome;
use crate::quantity::{Day, Mass, Name};
use crate::reason::OverrideEnd;
use crate::record::{LiftSession, Parameters, Policy, Session};

impl State {
    pub(crate) fn take_session(
        &mut self,
        session: &Session,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        self.check_session(session)?;
        let loaded = self.loaded_regions(session);
        self.come_back_where_due(session, &loaded, on);
        if let Some(answers) = &session.pain {
            self.take_pain_list(answers, on, event)?;
            self.count_clear(answers, &loaded, on);
        }
        self.shared.pain_asked = Some(session.pain.is_some());
        for done in &session.lifts {
            // A second session of the lift on that day was judged with the first: one civil day is one.
            if !foreseen.is_later_part(event, &done.lift) {
                self.take_lift(done, session, on, event, foreseen)?;
            } else if hurts(self.lift(&done.lift)?, session) {
                self.hold_partner(&done.lift);
            }
        }
        for region in self.shared.regions.iter_mut().filter(|region| loaded.contains(&region.id)) {
            region.loaded = Some(on);
        }
        self.note_pairs(on);
        self.shared.end_layoffs(on);
        self.shared.note_session(event, on);
        Ok(())
    }

    /// Everything that a session names must be there, before any of it is taken.
    fn check_session(&self, session: &Session) -> Result<(), Error> {
        let all = self.declared()?;
        for (at, done) in session.lifts.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("lifts[{at}]"));
            let lift = self.lift(&done.lift).map_err(inside)?;
            if let Some(place) = &done.place {
                lift.set.check_place(place).map_err(|error| inside(error.within("place")))?;
            }
            // The sign is the same for all sets, so the two ends speak for those between.
            let loads = || done.sets.iter().map(|set| set.load);
            for (number, marks) in (0..)
                .zip(&done.sets)
                .flat_map(|(number, set)| set.also_marked.iter().map(move |one| (number, one)))
            {
                let field = alloc::format!("sets[{number}].also_marked");
                marks.check(&lift.set.criteria).map_err(|error| inside(error.within(&field)))?;
            }
            for load in [loads().min(), loads().max()].into_iter().flatten() {
                all.check_load(&lift.set, load).map_err(|error| inside(error.within("sets")))?;
            }
        }
        Ok(())
    }

    /// The regions that the lifts of a session load.
    fn loaded_regions(&self, session: &Session) -> Vec<Name> {
        let mut regions: Vec<Name> = Vec::new();
        let done = |lift: &&Lift| session.lifts.iter().any(|done| done.lift == lift.set.id);
        for region in self.lifts.iter().filter(done).flat_map(Lift::regions) {
            if !regions.contains(region) {
                regions.push(region.clone());
            }
        }
        regions
    }

    /// The lifts of the session come back from their breaks; the others, and those trained in spite of a stop, remember the
    /// gap that it ended for a region of theirs.
    fn come_back_where_due(&mut self, session: &Session, loaded: &[Name], on: Day) {
        let trained = |lift: &Lift| {
            !lift.now.status.is_stopped() && session.lifts.iter().any(|done| done.lift == lift.set.id)
        };
        let back: Vec<_> = self.views(on).map(|view| trained(view.lift).then(|| returned(&view))).collect();
        let regions = &self.shared.regions;
        for (lift, back) in self.lifts.iter_mut().zip(back) {
            let Some(back) = back else {
                let ended = regions
                    .iter()
                    .filter(|region| loaded.contains(&region.id) && lift.set.regions.contains(&region.id));
                let longest = ended.filter_map(|region| region.loaded).map(|day| on.since(day)).max();
                let gap = longest.and_then(|gap| u16::try_from(gap).ok()).unwrap_or(0);
                if lift.now.last_session.is_some() {
                    lift.now.missed = lift.now.missed.max(gap);
                }
                continue;
            };
            if let Some(now) = back {
                let rests = lift.now.purpose == Purpose::Rest;
                lift.now = now;
                // The coach's word that it rests stands, whatever was trained in spite of it.
                if rests {
                    lift.now.rest(on);
                }
            }
            lift.now.missed = 0;
            // Of an illness each lift comes back by itself; one that is stopped or retired has not yet.
            lift.now.ill &= !lift.now.status.is_trained();
        }
    }

    fn take_lift(
        &mut self,
        done: &LiftSession,
        session: &Session,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        let all = self.all().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
        let said = Said::new(done, foreseen.later_parts(event, &done.lift));
        let own = self.lift(&done.lift)?;
        let later = foreseen.hurt_later(event, &done.lift).any(|region| own.has_region(region));
        let hurts = later || hurts(own, session);
        // What is said of the setup is known before the session is judged: a change starts the comparison anew, and alone
        // without pins nothing is given back.
        note_setup(&mut self.lift_mut(&done.lift)?.now, &said, on);
        note_rack(self.lift_mut(&done.lift)?, &said);
        let view = self.view(&done.lift, on)?;
        let mut result = judge(&view, &said, hurts).map_err(|error| error.within("sets"))?;
        // Nothing that is missing from a session makes the flare after it count for less.
        let flared = foreseen.retracts(event, view.lift.regions());
        if flared {
            result.outcome = Outcome::Fail;
        }
        let held = view.lift.now.partner_pain && partner_hurt_today(&view);
        let facts = Facts {
            // A day below the usual excuses technique, not pain.
            below_usual: view.shared.class_on(on).is_confirmed_below() && !flared,
            may_restore: may_restore(&view),
            first: comes_first(&view),
            all: Arc::clone(&all),
        };
        let lift = self.lift_mut(&done.lift)?;
        lift.now.reserve = result.reserve;
        take_result(lift, &result, on, event, &facts);
        lift.now.partner_pain |= held;
        self.offer_where_open(&done.lift, on)?;
        if result.pain {
            self.hold_partner(&done.lift);
        }
        Ok(())
    }

    /// Pain in the strict lift of a pair: the forgiving one holds and starts one step down next time.
    pub(crate) fn hold_partner(&mut self, strict: &Name) {
        let pair =
            self.parameters().and_then(|all| all.pair_of(strict)).filter(|pair| pair.strict == *strict);
        let forgiving = pair.map(|pair| pair.forgiving.clone());
        for lift in self.lifts.iter_mut().filter(|lift| Some(&lift.set.id) == forgiving.as_ref()) {
            lift.now.partner_pain = true;
        }
    }
}

/// Whether a region of the lift hurt in that session.
fn hurts(lift: &Lift, session: &Session) -> bool {
    let mut answers = session.pain.iter().flatten();
    answers.any(|answer| answer.score.score() > 0 && lift.has_region(&answer.region))
}

/// Whether the strict lift beside this one hurt on this day, trained or where this one loads nothing: the forgiving lift's own work of the day ends
/// no hold, in whatever order the two were done.
fn partner_hurt_today(view: &View<'_>) -> bool {
    let Some(partner) = view.partner.filter(|partner| partner.pair.strict == partner.lift.set.id) else {
        return false;
    };
    let trained = partner.lift.now.last_session == Some(view.on);
    let strict = |id: &Name| partner.lift.has_region(id) && (trained || !view.lift.has_region(id));
    view.shared.regions.iter().any(|region| strict(&region.id) && region.hurts_on(view.on))
}

/// What a result needs to know beside the lift itself.
struct Facts {
    below_usual: bool,
    may_restore: bool,
    /// Something comes before training.
    first: bool,
    all: Arc<Parameters>,
}

/// Whether something comes before training: what was said and is open, or was said on this day; an illness that nobody has
/// cleared; a limit of which nobody can tell whom it concerns.
fn comes_first(view: &View<'_>) -> bool {
    let shared = view.shared;
    !shared.asks.is_empty()
        || shared.asked_and_answered(view.on).is_some()
        || shared.ill_since.is_some()
        || shared.limits_without_lift(view.all).next().is_some()
}

/// Whether a lift may go back to its load before a short break: no pain, asked; a clearance; no day below the usual;
/// nothing on record that is not understood; somebody or pins by the bar.
fn may_restore(view: &View<'_>) -> bool {
    let shared = view.shared;
    let hurts = view.regions().any(|region| region.clear_needed > 0);
    let asked = shared.pain_asked == Some(true) && shared.ill_since.is_none() && shared.asks.is_empty();
    !hurts
        && shared.is_cleared(view.policy().clearance_required, view.on)
        && asked
        && !shared.class_on(view.on).is_below()
        && shared.unknown == 0
        && view.is_guarded()
}

fn take_result(lift: &mut Lift, result: &Judged, on: Day, event: u32, facts: &Facts) {
    let now = &mut lift.now;
    now.last_session = Some(on);
    now.short = result.short;
    now.refused = None;
    now.override_ended = None;
    now.override_past = None;
    now.below_band = result.heaviest.filter(|load| lies_below_band(now.purpose, *load));
    now.fault.clone_from(&result.fault);
    if result.watched_held {
        now.watched = None;
    }
    if result.weak.is_some() {
        now.weak.clone_from(&result.weak);
    }
    if !now.status.is_trained() {
        return;
    }
    if matches!(now.status, Status::Resting { .. }) {
        if now.purpose == Purpose::Rest {
            return;
        }
        now.wake(on);
    }
    // Done while something that comes first is open or was said today: a pass says nothing and ends nothing; what is worse
    // counts.
    if facts.first && result.outcome == Outcome::Pass {
        if now.status == Status::Learning {
            count_learning(lift, on);
        }
        return;
    }
    if !facts.first {
        now.half_sessions = now.half_sessions.saturating_sub(1);
        now.partner_pain = false;
    }
    now.here.0 = now.here.0.saturating_add(1);
    let asked = facts.all.policy.reserve_to_advance.halves();
    now.remember(Sitting {
        session: event,
        day: on,
        outcome: result.outcome,
        critical: result.critical,
        below_usual: facts.below_usual,
        at_grant: result.short.is_none(),
        confirmed: false,
        short_of_reserve: result.least_said.is_some_and(|left| left < asked),
        effort_unsaid: result.effort_unsaid,
        miss_unplaced: result.miss_unplaced,
        other_rater: now.other_rater,
        scored: result.scored,
        acceptable: result.acceptable,
    });
    match result.outcome {
        Outcome::Pass => take_pass(lift, on, facts),
        Outcome::NotScored => take_neutral(lift, on),
        Outcome::Fail
            if facts.below_usual && !result.critical && now.neutral < facts.all.policy.neutral_fails =>
        {
            now.neutral += 1;
            take_neutral(lift, on);
        }
        Outcome::Fail => take_fail(lift, result, on, &facts.all.policy),
    }
}

fn take_pass(lift: &mut Lift, on: Day, facts: &Facts) {
    let now = &mut lift.now;
    now.fails = 0;
    now.neutral = 0;
    match &mut now.status {
        Status::Learning => count_learning(lift, on),
        Status::Consolidating => now.settle(on),
        Status::ReadyToAdvance { since } => *since = on,
        Status::SteppingBack { passes, .. } => {
            *passes = passes.saturating_add(1);
            if *passes >= facts.all.policy.step_back_passes {
                now.lead_on(on);
            }
        }
        Status::Returning { passes, .. } => {
            *passes = passes.saturating_add(1);
            super::layoff::finish_return(lift, on, &facts.all.policy, facts.may_restore);
        }
        _ => {}
    }
}

/// A session that is neither a pass nor a fail: an offer does not outlast it, and calibration counts its day.
fn take_neutral(lift: &mut Lift, on: Day) {
    lift.now.withdraw_offer(on);
    if lift.now.status == Status::Learning {
        count_learning(lift, on);
    }
}

fn take_fail(lift: &mut Lift, result: &Judged, on: Day, policy: &Policy) {
    let now = &mut lift.now;
    now.fails = now.fails.saturating_add(1);
    now.neutral = 0;
    now.withdraw_offer(on);
    let hurt = now.status == Status::Consolidating && result.critical && result.pain;
    match &mut now.status {
        Status::Learning => count_learning(lift, on),
        Status::SteppingBack { passes, .. } | Status::Returning { passes, .. } => *passes = 0,
        _ => {}
    }
    if lift.now.fails >= policy.fails_to_step_back || hurt {
        step_back(lift, on, policy);
    }
}

/// Calibration ends when its days are done and the last session passed.
fn count_learning(lift: &mut Lift, on: Day) {
    let now = &mut lift.now;
    now.calibration.done = now.calibration.done.saturating_add(1);
    if !now.calibration.is_open() && now.last_passed() {
        now.settle(on);
    }
}

/// Goes one step easier and looks again.
pub(crate) fn step_back(lift: &mut Lift, on: Day, policy: &Policy) {
    let before = lift.now.grant;
    let grant = super::moves::one_step_back(lift, policy);
    let on_plan = is_within_band(&lift.now, &grant);
    let now = &mut lift.now;
    now.stand_easier(grant, on);
    now.keep_easing_only(OverrideEnd::StepBack);
    if on_plan {
        return;
    }
    now.forgo_restoring();
    let from = (grant.load() < before.load()).then_some(before.load());
    match &mut now.status {
        Status::Returning { passes, .. } => {
            *passes = 0;
            now.stepped_from = from;
        }
        _ => now.enter(Status::SteppingBack { from, passes: 0 }, on),
    }
}

/// Whether a load lies below the band of a maintained lift.
fn lies_below_band(purpose: Purpose, load: Mass) -> bool {
    matches!(purpose, Purpose::Maintain { not_below: Some(lowest) } if load < lowest)
}

/// Whether a maintained lift that goes there stays within the band that the coach has set.
fn is_within_band(now: &super::lift::Now, to: &crate::record::Grant) -> bool {
    let band = match now.purpose {
        Purpose::Maintain { not_below } if now.status == Status::Maintaining => not_below,
        _ => None,
    };
    band.is_some_and(|lowest| to.load() >= lowest && now.grant.with_load(to.load()) == *to)
}
