//! Work that a word keeps below what is granted: a limit of a clearance, the ceiling of the plan, the coach's lower load. Light work
//! keeps its regions loaded, so that the layoff table alone would give the old load back whole on the day on which the word goes,
//! after however many months. The days of the word are counted instead, as a break from the work granted; what was lifted last under
//! it is not taken away (both our choice: nobody measured what light work keeps).

use super::lift::{Lift, Now};
use super::state::State;
use super::view::View;
use crate::quantity::{Day, Mass};

/// Since when a word keeps a lift below the work granted, until that work is done again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[non_exhaustive]
pub struct Held {
    /// First day.
    pub since: Day,
    /// The lightest load of the last session at the granted place since then, as it is made and no more than was allowed; none
    /// before one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lifted: Option<Mass>,
}

impl View<'_> {
    /// Whether a limit, a ceiling or the coach's lower word keeps the lift from the work granted.
    pub(crate) fn is_held(&self) -> bool {
        let lighter = self.limit() < self.lift.now.grant.load() && !self.allows_granted_load();
        lighter || self.is_range_held()
    }

    /// Whether a limit of range keeps it from the range granted.
    pub(crate) fn is_range_held(&self) -> bool {
        let range = self.lift.now.grant.place.range;
        self.range_limited() && self.range_allowed(range) != Some(range)
    }

    /// Whether the load granted may be loaded, as printed.
    pub(crate) fn allows_granted_load(&self) -> bool {
        let loads = self.lift.loadable.at(self.lift.now.grant.place);
        loads.within(self.limit()).is_some_and(|allowed| allowed >= self.lift.granted_as_loaded())
    }

    /// What was lifted of what is allowed, as it can be loaded.
    pub(crate) fn lifted_of(&self, load: Mass, allowed: Mass) -> Mass {
        let loads = self.lift.loadable.at(self.lift.now.grant.place);
        let printed = loads.rounded_down(allowed);
        if loads.is_as_printed(load, printed) { printed } else { loads.as_made(load).min(printed) }
    }

    /// Days since a word began to hold the lift.
    pub(crate) fn held_days(&self) -> Option<i32> {
        self.lift.now.held.map(|held| self.on.since(held.since))
    }
}

impl State {
    /// Notes of every lift that a word holds since when it does.
    pub(crate) fn note_held(&mut self, on: Day) {
        let held: alloc::vec::Vec<bool> = self.views(on).map(|view| view.is_held()).collect();
        for (lift, _) in self.lifts.iter_mut().zip(held).filter(|(_, held)| *held) {
            lift.now.hold(on);
        }
    }
}

impl Now {
    fn hold(&mut self, on: Day) -> &mut Held {
        self.held.get_or_insert(Held { since: on, lifted: None })
    }
}

/// Keeps what a session shows of it: work at the granted place and load ends it, anything else is what was lifted last. A day with
/// several sessions counts for the lightest.
pub(crate) fn note_lifted(lift: &mut Lift, here: bool, lifted: Option<Mass>, (on, again): (Day, bool)) {
    let now = &mut lift.now;
    if here {
        now.held = None;
        return;
    }
    let held = now.hold(on);
    let earlier = held.lifted.filter(|_| again);
    held.lifted = lifted.into_iter().chain(earlier).min().or(held.lifted);
}
