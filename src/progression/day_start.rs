//! How a lift stood before the first session of a day that has another one, judged apart: what that one does not show takes back
//! what the first one led to. Both are in one log, so that this is known only while the log is folded, and never stored.

use alloc::boxed::Box;

use super::lift::Now;
use super::status::Status;
use crate::record::Grant;

/// How the lift stood before the day, and what its first session led to. It is no part of where the lift stands, so that it makes
/// no two states differ.
#[derive(Clone, Debug, Default)]
pub(crate) struct DayStart(Option<Box<(Now, Status, Grant)>>);

impl PartialEq for DayStart {
    fn eq(&self, _: &DayStart) -> bool {
        true
    }
}

impl Now {
    /// Keeps how it stood before the session that has just been taken.
    pub(crate) fn began_as(&mut self, before: Option<Now>) {
        let (status, grant) = (self.status.clone(), self.grant);
        self.day_start = DayStart(before.map(|before| Box::new((before, status, grant))));
    }

    /// As it would stand now if the day had shown nothing yet; none where its first session led nowhere, or it was moved since.
    pub(crate) fn without_the_day(&self) -> Option<Now> {
        let (before, status, grant) = self.day_start.0.as_deref()?;
        // An offer is made by what the session showed.
        let led = |status: &Status| if status.is_ready() { Status::Holding } else { status.clone() };
        if self.grant != *grant || led(&self.status) != led(status) {
            return None;
        }
        let mut back = self.clone();
        back.day_start = DayStart::default();
        (back.status, back.since) = (before.status.clone(), before.since);
        (back.fails, back.neutral) = (before.fails, before.neutral);
        back.nothing_easier = before.nothing_easier;
        // A day of calibration is one, whatever it showed.
        if before.status != Status::Learning {
            back.calibration = before.calibration;
        }
        if before.grant != self.grant {
            back.grant = before.grant;
            (back.sittings, back.earlier) = (before.sittings.clone(), before.earlier);
            (back.here, back.here_on, back.restarted) = (before.here, before.here_on, before.restarted);
            (back.signed_off, back.watched) = (before.signed_off, before.watched.clone());
        }
        Some(back)
    }
}
