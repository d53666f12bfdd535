//! Lifts that the parameters leave out. A state keeps them as they stood, and when there are more than it can keep, of those
//! trained so long ago that nothing of them would be left but the break itself, the day of their last session.

use alloc::vec::Vec;

use super::lift::{Lift, Now};
use super::shared::Shared;
use super::stop::is_halted;
use crate::quantity::{Day, Name};
use crate::record::Parameters;

/// The most lifts that are set aside as they stood, so that a state stays small.
pub(crate) const MOST_SET_ASIDE: usize = 16;
/// The most of which the last day alone is kept.
pub(crate) const MOST_LAID_BY: usize = 64;

impl Shared {
    /// Lays by those trained longest ago until no more are left than are kept as they stood. What a stop in force holds stays,
    /// and what was trained within the longest break of the layoff table.
    pub(crate) fn lay_by(&mut self, set_aside: &mut Vec<Lift>, all: &Parameters, on: Day) {
        let longest = all.policy.layoff.iter().map(|row| i32::from(row.from_days)).max().unwrap_or(0);
        while set_aside.len() > MOST_SET_ASIDE {
            let long_ago = |lift: &Lift| {
                let is_longest = lift.now.last_session.is_none_or(|last| on.since(last) >= longest);
                let open = lift.now.former.iter().any(|region| self.is_open(region));
                is_longest && !open && !is_halted(lift, self, all)
            };
            let eligible = set_aside.iter().enumerate().filter(|(_, lift)| long_ago(lift));
            let first = eligible.min_by_key(|(_, lift)| (lift.now.last_session, &lift.set.id));
            let Some((first, _)) = first else { break };
            let lift = set_aside.remove(first);
            // One that was never trained has nothing to come back to.
            self.laid_by.extend(lift.now.last_session.map(|last| (lift.set.id.clone(), last)));
        }
        self.laid_by.sort_by(|(one, last), (other, other_last)| (last, one).cmp(&(other_last, other)));
        let over = self.laid_by.len().saturating_sub(MOST_LAID_BY);
        self.laid_by.drain(..over);
    }

    /// A new lift, or one that was laid by: it begins at its start, and its break counts.
    pub(crate) fn take_up(&mut self, id: &Name, start: Now, on: Day) -> Now {
        let Some(at) = self.laid_by.iter().position(|(kept, _)| kept == id) else { return start };
        let mut now = Now { last_session: Some(self.laid_by.remove(at).1), ..start };
        now.count_own_gap(on);
        now
    }
}
