//! A lift out of use: left out of the parameters, rested or given up by a role, or stopped. Nobody looks after it meanwhile, so that
//! its own days make a break, whatever else loaded its regions.

use super::lift::Now;
use super::status::{Purpose, Status};
use crate::quantity::Day;

impl Now {
    /// Takes the days since its own last session, or since a later day, for the gap to come back from.
    pub(crate) fn count_own_gap(&mut self, since: Option<Day>, on: Day) {
        let since = self.last_session.map(|last| since.map_or(last, |since| since.max(last)));
        let own = since.and_then(|since| u16::try_from(on.since(since)).ok());
        self.missed = self.missed.max(own.unwrap_or(0));
    }

    /// As it stands once a role that kept it out of use is over.
    pub(crate) fn taken_up(&self, on: Day) -> Now {
        let mut now = self.clone();
        now.count_own_gap(Some(self.since), on);
        now.purpose = Purpose::Train;
        if now.status == Status::Retired {
            now.enter(Status::Learning, on)
        } else {
            now.wake(on)
        }
        now
    }
}
