//! What a session means for its lifts.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::asked::Asked;
use super::foreseen::Foreseen;
use super::judge::{Said, judge};
use super::layoff::returned;
use super::lift::Lift;
use super::result::{Facts, take_result};
use super::setup::{note_rack, note_setup};
use super::shared::Shared;
use super::state::State;
use super::view::View;
use crate::error::{Code, Error};
use crate::gate::Outcome;
use crate::quantity::{Day, Name};
use crate::record::{LiftSession, Session};

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
        self.come_back_where_due(session, &loaded, on, (event, foreseen));
        // What is said in the session eases nothing that was asked before it.
        let asked = self.asked_of(session, on, event)?;
        if let Some(answers) = &session.pain {
            self.take_pain_list(answers, on, foreseen.told(event))?;
        }
        self.count_clear(session.pain.is_some(), &loaded, on);
        self.shared.pain_asked = Some(session.pain.is_some());
        for (done, asked) in session.lifts.iter().zip(asked) {
            // A second session of the lift on that day was judged with the first: one civil day is one.
            if !foreseen.is_later_part(event, &done.lift) {
                self.take_lift((done, asked), session, on, event, foreseen)?;
            } else if is_unclear(self.lift(&done.lift)?, &self.shared, on) {
                self.hold_partner(&done.lift);
            }
            self.lift_mut(&done.lift)?.now.last_place = Some(done.place.unwrap_or(asked.place));
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

    /// What the day asks of each lift of a session.
    fn asked_of(&self, session: &Session, on: Day, event: u32) -> Result<Vec<Asked>, Error> {
        session.lifts.iter().map(|done| Ok(self.view(&done.lift, on)?.asked_of(done, event))).collect()
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

    /// The lifts of the session come back from their breaks; the others, and those trained in spite of a stop or after
    /// they were retired, remember the gap that it ended for a region of theirs. A later part of a day comes back from nothing:
    /// the day was begun.
    fn come_back_where_due(
        &mut self,
        session: &Session,
        loaded: &[Name],
        on: Day,
        (event, foreseen): (u32, &Foreseen),
    ) {
        let trained = |lift: &Lift| {
            lift.now.status.is_trained()
                && session.lifts.iter().any(|done| done.lift == lift.set.id)
                && !foreseen.is_later_part(event, &lift.set.id)
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
                lift.now = now;
            }
            lift.now.missed = 0;
            // Of an illness each lift comes back by itself; one that is stopped or retired has not yet.
            lift.now.ill = false;
        }
    }

    fn take_lift(
        &mut self,
        (done, asked): (&LiftSession, Asked),
        session: &Session,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        let all = self.all().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
        let view = self.view(&done.lift, on)?;
        // Nothing was told before a later part that asks for another place.
        let there = |part| Asked { place: view.asked_of(part, event).place, ..asked };
        let later = foreseen.later_parts(event, &done.lift).map(|part| (part, there(part)));
        let said = Said::new(core::iter::once((done, asked)).chain(later));
        let own = view.lift;
        let later = foreseen.hurt_later(event, &done.lift).any(|region| own.has_region(region));
        let hurts = later || hurts(own, session);
        // What is said of the setup is known before the session is judged: a change starts the comparison anew, and alone
        // without pins nothing is given back.
        note_setup(&mut self.lift_mut(&done.lift)?.now, &said, on);
        note_rack(self.lift_mut(&done.lift)?, &said);
        let view = self.view(&done.lift, on)?;
        let flared = foreseen.retracts(event, view.lift.regions());
        let judged = |view: &View<'_>| {
            let mut result = judge(view, &said, hurts).map_err(|error| error.within("sets"))?;
            // Nothing that is missing from a session makes the flare after it count for less.
            if flared {
                result.outcome = Outcome::Fail;
            }
            Ok::<_, Error>(result)
        };
        let mut result = judged(&view)?;
        // What a later part of the day does not show takes back what an earlier one led to; it is judged as the day began.
        let again = view.lift.now.last_session == Some(on);
        let begun = view.lift.now.without_the_day().filter(|_| again && result.takes_back());
        let begun = begun.map(|now| view.lift.standing(now));
        if let Some(begun) = &begun {
            result = judged(&View { lift: begun, ..view })?;
        }
        let begun = begun.filter(|_| result.takes_back()).map(|lift| lift.now);
        let strict_hurt = view.lift.now.partner_pain && partner_hurt_today(&view);
        let facts = Facts {
            // A day below the usual excuses technique, not pain.
            below_usual: view.shared.class_on(on).is_confirmed_below() && !flared,
            may_restore: may_restore(&view),
            first: comes_first(&view),
            all: Arc::clone(&all),
        };
        let held = view.held_after(&result);
        let parted = !again && result.outcome == Outcome::Pass && foreseen.is_parted(event, &done.lift);
        let lift = self.lift_mut(&done.lift)?;
        begun.into_iter().for_each(|begun| lift.now = begun);
        let before = parted.then(|| lift.now.clone());
        take_result(lift, &result, on, event, &facts);
        lift.now.held = held;
        if !again {
            lift.now.began_as(before);
        }
        lift.now.partner_pain |= strict_hurt;
        self.offer_where_open(&done.lift, on)?;
        // Pain that is agreed to be usual is no news for the partner either.
        if is_unclear(self.lift(&done.lift)?, &self.shared, on) {
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

/// Whether more than the usual was said on that day of a region of the lift.
fn is_unclear(lift: &Lift, shared: &Shared, on: Day) -> bool {
    shared.regions.iter().any(|region| region.unclear == Some(on) && lift.has_region(&region.id))
}

/// Whether the strict lift beside this one hurt more than usual on this day, trained or where this one loads nothing: the
/// forgiving lift's own work of the day ends no hold, in whatever order the two were done.
fn partner_hurt_today(view: &View<'_>) -> bool {
    let Some(partner) = view.partner.filter(|partner| partner.pair.strict == partner.lift.set.id) else {
        return false;
    };
    let trained = partner.lift.now.last_session == Some(view.on);
    let strict = |id: &Name| partner.lift.has_region(id) && (trained || !view.lift.has_region(id));
    view.shared.regions.iter().any(|region| strict(&region.id) && region.unclear == Some(view.on))
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

/// Whether a lift may go back to its load before a short break: no pain, and nothing that comes first, asked; a clearance; no
/// day below the usual; nothing on record that is not understood; somebody or pins by the bar.
fn may_restore(view: &View<'_>) -> bool {
    let shared = view.shared;
    let hurts = view.regions().any(|region| region.clear_needed > 0);
    let asked = shared.pain_asked == Some(true)
        && shared.report_on(view.on).is_some_and(|report| report.asks_asked)
        && shared.ill_since.is_none()
        && shared.asks.is_empty();
    !hurts
        && shared.is_cleared(view.policy().clearance_required, view.on)
        && asked
        && !shared.class_on(view.on).is_below()
        && shared.unknown == 0
        && view.is_guarded()
}
