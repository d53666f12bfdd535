//! Work that something keeps below what is granted: a limit of a clearance, the ceiling of the plan, the coach's lower word, or a kit
//! that makes no such load. Light work keeps its regions loaded, so that the layoff table alone would give the old load back whole on
//! the day on which that ends, after however many months. The days of it are counted instead, as a break from the work granted; what
//! was lifted last in them is not taken away (both our choice: nobody measured what light work keeps).

use alloc::vec::Vec;

use super::asked::Asked;
use super::judge::Judged;
use super::lift::Lift;
use super::state::State;
use super::view::View;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass};
use crate::reason::Shortfall;
use crate::record::Policy;

/// A kit that makes less than this part of the load granted keeps the lift below it (our choice: as much as the shortest break takes).
const KIT_PART: f64 = 0.9;

/// Days on which something kept a lift below the work granted, since that work was done last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[non_exhaustive]
pub struct Held {
    /// The load granted when it began.
    pub load: Mass,
    /// Days of stretches that are over.
    pub days: u16,
    /// First day of the one that is not.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub since: Option<Day>,
    /// The heaviest load that was not missed of the last session in it that no day eased, as it is made and no more than was allowed;
    /// none where that was done on another rung.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lifted: Option<Mass>,
    /// That was at the granted place, not in less range.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub whole: bool,
}

impl Held {
    /// All days up to that one.
    pub(crate) fn days_by(&self, on: Day) -> u16 {
        let going_on = self.since.and_then(|since| u16::try_from(on.since(since)).ok());
        self.days.saturating_add(going_on.unwrap_or(0))
    }

    /// What was lifted where the lift is to be done: in less range, where a limit still keeps it there.
    pub(crate) fn lifted_where(&self, less_range: bool) -> Option<Mass> {
        self.lifted.filter(|_| self.whole || less_range)
    }

    /// What a session showed: of one that failed only that less was lifted.
    fn show(&mut self, lifted: Option<Mass>, whole: bool, failed: bool) {
        if failed {
            self.lifted = self.lifted.and_then(|before| lifted.map(|lifted| lifted.min(before)));
            self.whole &= whole;
        } else {
            (self.lifted, self.whole) = (lifted, whole);
        }
    }

    fn closed(self, on: Day) -> Held {
        Held { days: self.days_by(on), since: None, ..self }
    }
}

impl View<'_> {
    /// Whether something keeps the lift from the work granted.
    pub(crate) fn is_held(&self) -> bool {
        let lighter = self.limit() < self.lift.now.grant.load() && !self.allows_granted_load();
        lighter || self.is_range_held() || self.is_kit_held()
    }

    /// Whether a limit of range keeps it from the range granted.
    pub(crate) fn is_range_held(&self) -> bool {
        let range = self.lift.now.grant.place.range;
        self.range_limited() && self.range_allowed(range) != Some(range)
    }

    /// Whether nothing nearly so heavy as the load granted is made.
    pub(crate) fn is_kit_held(&self) -> bool {
        let granted = self.lift.now.grant;
        let loads = self.lift.loadable.at(granted.place);
        loads.heaviest().is_some_and(|heaviest| heaviest < loads.share(granted.load(), KIT_PART))
    }

    /// Whether the load granted may be loaded, as printed.
    pub(crate) fn allows_granted_load(&self) -> bool {
        let loads = self.lift.loadable.at(self.lift.now.grant.place);
        loads.within(self.limit()).is_some_and(|allowed| allowed >= self.lift.granted_as_loaded())
    }

    /// The load that is allowed, as it is made.
    pub(crate) fn allowed_as_made(&self) -> Mass {
        self.lift.loadable.at(self.lift.now.grant.place).rounded_down(self.limit())
    }

    /// What a session lifted on the granted rung of what was allowed, as it is made.
    fn lifted(&self, result: &Judged) -> Option<Mass> {
        let loads = self.lift.loadable.at(self.lift.now.grant.place);
        let load = result.completed.filter(|_| result.short != Some(Shortfall::Rung))?;
        let most = self.allowed_as_made();
        Some(if loads.is_as_printed(load, most) { most } else { loads.as_made(load).min(most) })
    }

    /// What a session of a day that asked for so much means for it; none where it ends it: the work granted was done.
    pub(crate) fn held_after(&self, result: &Judged, asked: Asked) -> Option<Held> {
        let now = &self.lift.now;
        let shown = now.status.is_trained() && result.short.is_none() && result.outcome != Outcome::Fail;
        let is_held = self.is_held();
        let mut held = self.noted(is_held).filter(|_| !shown || is_held)?;
        let eased = asked.eased || asked.place != self.place() || self.shared.class_on(self.on).is_below();
        if is_held && !eased {
            held.show(self.lifted(result), !result.elsewhere, result.outcome == Outcome::Fail);
        }
        Some(held)
    }

    /// The days as they stand on this one: they begin, go on or are over.
    fn noted(&self, is_held: bool) -> Option<Held> {
        let (before, load) = (self.lift.now.held, self.lift.now.grant.load());
        if !is_held {
            return before.map(|held| held.closed(self.on));
        }
        let begun = Held { load, days: 0, since: Some(self.on), lifted: None, whole: false };
        let held = before.unwrap_or(begun);
        let lifted = held.lifted.map(|lifted| lifted.min(self.allowed_as_made()));
        Some(Held { load: held.load.max(load), since: held.since.or(Some(self.on)), lifted, ..held })
    }
}

impl Lift {
    /// What a lift that was kept below its work for so long keeps of its load where it leaves its implement; none where it was not.
    pub(crate) fn kept_of(&self, policy: &Policy, on: Day) -> Option<Mass> {
        let first = policy.layoff.first()?.from_days;
        let held = self.now.held.filter(|held| held.days_by(on) >= first)?;
        held.lifted_where(false).or_else(|| self.loadable.at(self.now.grant.place).lightest())
    }

    /// What it kept is noted while its loads are known, where it is left out.
    pub(crate) fn settle_held(&mut self) {
        let lightest = self.loadable.at(self.now.grant.place).lightest();
        if let Some(held) = self.now.held.as_mut().filter(|held| held.lifted_where(false).is_none()) {
            (held.lifted, held.whole) = (lightest, lightest.is_some());
        }
    }
}

impl State {
    /// Notes of every lift whether something keeps it below its work from that day on.
    pub(crate) fn note_held(&mut self, on: Day) {
        let held: Vec<Option<Held>> = self.views(on).map(|view| view.noted(view.is_held())).collect();
        self.lifts.iter_mut().zip(held).for_each(|(lift, held)| lift.now.held = held);
    }

    /// Ends the days of an override that ran out on the day after its last, unless something else keeps the lift there.
    pub(crate) fn end_held(&mut self, ran_out: &[Option<Day>], on: Day) {
        let held: Vec<bool> = self.views(on).map(|view| view.is_held()).collect();
        for ((lift, ran_out), held) in self.lifts.iter_mut().zip(ran_out).zip(held) {
            if let Some(last) = ran_out.filter(|_| !held) {
                let over = last.plus(1).unwrap_or(last);
                lift.now.held = lift.now.held.map(|held| held.closed(over));
            }
        }
    }
}
