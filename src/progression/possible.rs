//! What no course of events leaves behind, however a stored state was written: a day after the last event, a list out of order, a
//! counter beyond what any rules ask for, a status beside a purpose that it cannot have, more granted than ever was.

use super::layoff::HALF_SESSIONS;
use super::lift::{Lift, Now};
use super::morning::FLARES_TO_STEP_BACK;
use super::pain::STEADY_SESSIONS;
use super::region::RegionState;
use super::shared::Shared;
use super::state::State;
use super::status::{Purpose, Status, Stop, WayBack};
use crate::error::{Allowed, Code, Error};
use crate::quantity::Day;

/// The most that any policy may ask for, of fails and of passes in a row (the limits of `Policy::check`).
const MOST_IN_A_ROW: u8 = 10;
/// The most fails in a row that any policy may take as no information.
const MOST_NEUTRAL: u8 = 5;
/// The most sessions of calibration that any policy may ask for.
const MOST_LEARNING: u8 = 30;
/// The most rows that a layoff table may have.
const MOST_ROWS: u8 = 12;

/// Holds against the day of the last event.
#[derive(Clone, Copy)]
struct Until(Option<Day>);

impl Until {
    fn past(self, field: &'static str, day: Day) -> Result<(), Error> {
        if self.0.is_some_and(|last| day <= last) {
            return Ok(());
        }
        let rule = Allowed::rule("no later than the last event");
        Err(Error::new(Code::OutOfRange, field, alloc::format!("{day}"), rule))
    }

    /// Each day of a list, none before the one ahead of it.
    fn in_order(self, field: &'static str, days: impl Iterator<Item = Day>) -> Result<(), Error> {
        let mut before: Option<Day> = None;
        for day in days {
            self.past(field, day)?;
            if before.is_some_and(|before| day < before) {
                let rule = Allowed::rule("no earlier than the entry before it");
                return Err(Error::new(Code::OutOfRange, field, alloc::format!("{day}"), rule));
            }
            before = Some(day);
        }
        Ok(())
    }

    /// Each day of a list after the last event, and after the one ahead of it.
    fn to_come(self, field: &'static str, days: impl Iterator<Item = Day>) -> Result<(), Error> {
        let mut before = self.0;
        for day in days {
            if before.is_none_or(|before| day <= before) {
                let rule = Allowed::rule("later than the last event and than the entry before it");
                return Err(Error::new(Code::OutOfRange, field, alloc::format!("{day}"), rule));
            }
            before = Some(day);
        }
        Ok(())
    }
}

fn at_most(field: &'static str, count: u8, most: u8) -> Result<(), Error> {
    if count <= most {
        return Ok(());
    }
    Err(Error::range(Code::OutOfRange, field, count, 0.0, f64::from(most), ""))
}

fn holds(holds: bool, field: &'static str, given: &str, rule: &'static str) -> Result<(), Error> {
    if holds { Ok(()) } else { Err(Error::new(Code::OutOfRange, field, given, Allowed::rule(rule))) }
}

impl State {
    /// Refuses what no course of events leaves behind.
    ///
    /// # Errors
    /// `out_of_range`.
    pub(super) fn check_possible(&self) -> Result<(), Error> {
        let until = Until(self.last.map(|(day, _)| day));
        self.shared.check_possible(until).map_err(|error| error.within("shared"))?;
        for (list, lifts) in [("lifts", &self.lifts), ("set_aside", &self.set_aside)] {
            for (at, lift) in lifts.iter().enumerate() {
                lift.check_possible(until).map_err(|error| error.within(&alloc::format!("{list}[{at}]")))?;
            }
        }
        // An override that is over is forgotten with the next event; one set aside is looked at when it is taken back.
        for (at, lift) in self.lifts.iter().enumerate() {
            let over = lift.now.overruled.as_ref().filter(|given| Some(given.expires) < until.0);
            if let Some(given) = over {
                let rule = Allowed::rule("no earlier than the last event");
                let error =
                    Error::new(Code::OutOfRange, "expires", alloc::format!("{}", given.expires), rule);
                return Err(error.within("overruled").within(&alloc::format!("lifts[{at}]")));
            }
        }
        Ok(())
    }
}

impl Lift {
    fn check_possible(&self, until: Until) -> Result<(), Error> {
        let now = &self.now;
        if let Some(place) = &now.last_place {
            self.set.check_place(place).map_err(|error| error.within("last_place"))?;
        }
        if let Some((_, place)) = &now.moved {
            self.set.check_place(place).map_err(|error| error.within("moved"))?;
        }
        now.check_days(until)?;
        now.check_status(until).map_err(|error| error.within("status"))?;
        at_most("fails", now.fails, MOST_IN_A_ROW)?;
        at_most("neutral", now.neutral, MOST_NEUTRAL)?;
        at_most("half_sessions", now.half_sessions, HALF_SESSIONS)?;
        at_most("calibration.needed", now.calibration.needed, MOST_LEARNING)?;
        let after = now.half_after.is_none() || now.half_sessions > 0;
        holds(after, "half_after", "a break", "none without sessions that have half the sets")?;
        // A session elsewhere is listed and no day at this place.
        let here = now.sittings.iter().filter(|sitting| sitting.at_grant).count();
        holds(here <= usize::from(now.here.0), "sittings", "more", "no more than days at this place")?;
        let scored = now.sittings.iter().all(|sitting| sitting.acceptable <= sitting.scored);
        holds(scored, "sittings", "more acceptable", "no more acceptable than scored")?;
        holds(
            now.earlier.0 <= now.earlier.1,
            "earlier",
            "more acceptable",
            "no more acceptable than scored",
        )?;
        let granted = now.grant.load();
        holds(granted <= now.peak, "peak", "less", "no less than what is granted")
    }
}

impl Now {
    fn check_days(&self, until: Until) -> Result<(), Error> {
        until.past("since", self.since)?;
        until.past("here", self.here.1)?;
        // Days at this place are counted from the first on.
        holds(
            self.here_on.is_some() == (self.here.0 > 0),
            "here_on",
            "another day",
            "a day where days are counted",
        )?;
        until.in_order("sittings", self.sittings.iter().map(|sitting| sitting.day))?;
        until.in_order("moves", self.moves.iter().map(|(day, _)| *day))?;
        let setup = self.setup.as_deref();
        for (field, day) in [
            ("last_session", self.last_session),
            ("here_on", self.here_on),
            ("held", self.held.map(|held| held.stretch.1)),
            ("unanswered", self.unanswered.map(|(_, day)| day)),
            ("proven", self.proven.map(|(day, _)| day)),
            ("restarted", self.restarted.map(|(day, _)| day)),
            ("closed_since", self.closed_since.map(|(day, _)| day)),
            ("override_past", self.override_past),
            ("setup.changed", setup.and_then(|seen| seen.changed)),
            ("setup.pins_moved", setup.and_then(|seen| seen.pins_moved).map(|(day, _)| day)),
        ] {
            day.map_or(Ok(()), |day| until.past(field, day))?;
        }
        let shown = self.sittings.last().map(|sitting| sitting.day) <= self.last_session;
        holds(shown, "last_session", "earlier", "no earlier than the last session listed")?;
        let done = self.last_place.is_none() || self.last_session.is_some();
        holds(done, "last_place", "a place", "none without a session")
    }

    /// Every status with what belongs to it.
    fn check_status(&self, until: Until) -> Result<(), Error> {
        let status = &self.status;
        let fits = match (self.purpose, status) {
            // A stop comes before whatever the lift is for.
            (_, Status::StoppedRefer { .. }) => true,
            (Purpose::Retire, status) => *status == Status::Retired,
            (Purpose::Rest, status) => matches!(status, Status::Resting { .. }),
            (_, Status::Retired)
            | (Purpose::Train, Status::Maintaining)
            | (Purpose::Maintain { .. }, Status::Holding | Status::ReadyToAdvance { .. }) => false,
            _ => true,
        };
        holds(fits, "purpose", status.as_str(), "one that goes with the status")?;
        if let Some(way) = status.way_back() {
            way.check_possible(until).map_err(|error| error.within("way"))?;
        }
        match status {
            Status::ReadyToAdvance { since } => until.past("since", *since),
            Status::SteppingBack { from, passes } => {
                at_most("passes", *passes, MOST_IN_A_ROW)?;
                let lower = from.is_none_or(|from| from >= self.grant.load());
                holds(lower, "from", "less", "no less than what is granted")
            }
            Status::Returning { way, passes } => {
                at_most("passes", *passes, MOST_IN_A_ROW)?;
                holds(way.cap >= self.grant.load(), "way.cap", "less", "no less than what is granted")
            }
            Status::Learning
            | Status::Holding
            | Status::Consolidating
            | Status::Resting { .. }
            | Status::Maintaining
            | Status::StoppedRefer { .. }
            | Status::Retired => Ok(()),
        }
    }
}

impl WayBack {
    fn check_possible(&self, until: Until) -> Result<(), Error> {
        if !(1..=MOST_ROWS).contains(&self.row) {
            return Err(Error::range(Code::OutOfRange, "row", self.row, 1.0, f64::from(MOST_ROWS), ""));
        }
        self.reopened.map_or(Ok(()), |day| until.past("reopened", day))
    }
}

impl Stop {
    /// One that was cleared and then signed off is over.
    fn check_possible(&self, until: Until) -> Result<(), Error> {
        until.past("since", self.since)?;
        self.refused.map_or(Ok(()), |(day, _)| until.past("refused", day))?;
        holds(!self.is_lifted(), "signed", "true", "not both cleared and signed off")
    }
}

impl Shared {
    fn check_possible(&self, until: Until) -> Result<(), Error> {
        until.in_order("body_masses", self.body_masses.iter().map(|(day, _)| *day))?;
        until.in_order("sessions", self.sessions.iter().map(|(_, day)| *day))?;
        until.in_order("laid_by", self.laid_by.iter().filter_map(|kept| kept.last))?;
        until.to_come("ill_ahead", self.ill_ahead.iter().map(|(since, _)| *since))?;
        for open in &self.asks {
            until.past("asks", open.since)?;
        }
        for (field, day) in [
            ("today", self.today.as_ref().map(|today| today.day)),
            ("clearance.given", self.clearance.as_ref().map(|given| given.given)),
            ("pain_on", self.pain_on),
            ("ill_since", self.ill_since.map(|(since, _)| since)),
            ("answered", self.answered),
        ] {
            day.map_or(Ok(()), |day| until.past(field, day))?;
        }
        if let Some(stop) = &self.stop {
            stop.check_possible(until).map_err(|error| error.within("stop"))?;
        }
        for (at, region) in self.regions.iter().enumerate() {
            region.check_possible(until).map_err(|error| error.within(&alloc::format!("regions[{at}]")))?;
        }
        Ok(())
    }
}

impl RegionState {
    fn check_possible(&self, until: Until) -> Result<(), Error> {
        until.in_order("scores", self.scores.iter().map(|(day, _)| *day))?;
        until.in_order("moves", self.moves.iter().copied())?;
        for (field, day) in [
            ("loaded", self.loaded),
            ("last", self.last.map(|(day, _)| day)),
            ("lowered", self.lowered),
            ("unclear", self.unclear),
            ("cleared", self.cleared),
            ("usual", self.usual.map(|(_, agreed, _)| agreed)),
            ("flared", self.flared),
        ] {
            day.map_or(Ok(()), |day| until.past(field, day))?;
        }
        at_most("usual", self.usual.map_or(0, |(_, _, steady)| steady), STEADY_SESSIONS)?;
        at_most("clear_needed", self.clear_needed, MOST_IN_A_ROW)?;
        at_most("flares", self.flares, FLARES_TO_STEP_BACK - 1)?;
        self.stop
            .as_ref()
            .map_or(Ok(()), |stop| stop.check_possible(until).map_err(|error| error.within("stop")))
    }
}
