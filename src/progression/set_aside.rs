//! Lifts that the parameters leave out. A state keeps them as they stood, and when there are more than it can keep, of those
//! trained so long ago that nothing of them would be left but the break itself, the day of their last session.

use alloc::vec::Vec;

use super::lift::{Lift, Now};
use super::shared::Shared;
use super::status::Purpose;
use super::stop::is_halted;
use crate::error::Error;
use crate::quantity::{Day, Name};
use crate::record::{Parameters, at_most};

/// The most lifts that are set aside as they stood, so that a state stays small.
pub(crate) const MOST_SET_ASIDE: usize = 16;
/// The most of which the last day alone is kept.
pub(crate) const MOST_LAID_BY: usize = 64;

impl Shared {
    /// Lays by those trained longest ago until no more are left than are kept as they stood: those of which a break leaves the
    /// lightest load alone. What a stop holds stays; what a coach made easier than its start, rests, keeps or gave up goes last.
    ///
    /// # Errors
    /// `too_many` where more were left out than even their last days are kept of: none of them is forgotten.
    pub(crate) fn lay_by(
        &mut self,
        set_aside: &mut Vec<Lift>,
        all: &Parameters,
        on: Day,
    ) -> Result<(), Error> {
        let restarts = all.policy.layoff.iter().filter(|row| row.restart);
        let longest = restarts.map(|row| i32::from(row.from_days)).min();
        while set_aside.len() > MOST_SET_ASIDE {
            // One that was never trained has nothing to come back to but what a stop has left of it.
            let over = |lift: &Lift| match lift.now.last_session {
                Some(last) => longest.is_some_and(|days| on.since(last) >= days),
                None => !lift.now.status.is_stopped(),
            };
            let open = |lift: &Lift| lift.now.former.iter().any(|region| self.is_open(region));
            let held = |lift: &Lift| open(lift) || is_halted(lift, self, all);
            let may_go = |lift: &Lift| over(lift) && !held(lift);
            let eligible = set_aside.iter().enumerate().filter(|(_, lift)| may_go(lift));
            // Of what a coach made easier something would be lost, so that it goes when nothing else can.
            let order = |lift: &Lift| (is_eased(lift, on), lift.now.last_session);
            let first = eligible
                .min_by(|(_, one), (_, other)| (order(one), &one.set.id).cmp(&(order(other), &other.set.id)));
            let Some((first, _)) = first else { break };
            let lift = set_aside.remove(first);
            self.laid_by.extend(lift.now.last_session.map(|last| (lift.set.id.clone(), last)));
        }
        self.laid_by.sort_by(|(one, last), (other, other_last)| (last, one).cmp(&(other_last, other)));
        at_most("lifts laid by", self.laid_by.len(), MOST_LAID_BY)
    }

    /// A new lift, or one that was laid by: it begins at its start, and its break counts.
    pub(crate) fn take_up(&mut self, id: &Name, start: Now, on: Day) -> Now {
        let Some(at) = self.laid_by.iter().position(|(kept, _)| kept == id) else { return start };
        let mut now = Now { last_session: Some(self.laid_by.remove(at).1), ..start };
        now.count_own_gap(on);
        now
    }
}

/// Whether a coach made it easier than it began, for now or for good, or has it rest, kept or given up.
fn is_eased(lift: &Lift, on: Day) -> bool {
    let (now, start) = (&lift.now, &lift.set.start);
    let (place, from) = (now.grant.place, start.place);
    let easier_place =
        lift.set.is_harder(from.rung, place.rung) || place.range < from.range || place.tempo < from.tempo;
    let less = now.grant.work.sets < start.work.sets || now.grant.work.reps < start.work.reps;
    let overruled = now.overruled.as_ref().is_some_and(|overruled| overruled.expires >= on);
    let lowered = now.last_session.is_none() && now.grant.load() < start.load();
    now.purpose != Purpose::Train || overruled || easier_place || less || lowered
}
