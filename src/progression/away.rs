//! Planned breaks and illnesses as noted: nothing is trained on their days, until training goes on.

use alloc::vec::Vec;

use super::shared::Shared;
use super::state::State;
use super::status::Purpose;
use crate::error::Error;
use crate::quantity::Day;
use crate::reason::{OverrideEnd, Reason};
use crate::record::{Layoff, LayoffReason, at_most};

/// The most breaks kept, so that a state stays small.
pub(crate) const MOST_LAYOFFS: usize = 8;

/// A planned break or an illness, as noted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Away {
    /// Its last day, where one was noted.
    pub(crate) until: Option<Day>,
    pub(crate) ill: bool,
}

impl Away {
    /// Why nothing is trained.
    pub(crate) fn reason(self) -> Reason {
        match self.until.filter(|_| self.ill) {
            Some(until) => Reason::IllUntil { until },
            None => Reason::PlannedBreak { until: self.until },
        }
    }
}

impl State {
    pub(crate) fn take_layoff(&mut self, layoff: &Layoff, on: Day, told: u32) -> Result<(), Error> {
        self.shared.note_layoff(layoff, on)?;
        if layoff.reason == LayoffReason::Ill {
            self.shared.note_illness(layoff.from, told);
            self.begin_illnesses(on);
            at_most("layoff_noted", self.shared.ill_ahead.len(), MOST_LAYOFFS)?;
        }
        // One that is still to come, or is over, leaves the lifts as they stand.
        let now = layoff.from <= on && layoff.to.is_none_or(|to| on <= to);
        if layoff.reason == LayoffReason::Planned && now {
            for lift in &mut self.lifts {
                let now = &mut lift.now;
                // One that a role rests is at rest already, since longer.
                let rests = now.purpose == Purpose::Rest;
                if now.status.is_trained() && !now.status.is_to_be_seen() && !rests {
                    now.rest(on);
                }
            }
        }
        Ok(())
    }

    /// First days of breaks and illnesses as noted, past ones among them.
    pub(crate) fn away_from(&self) -> impl Iterator<Item = Day> {
        let breaks = self.shared.layoffs.iter().map(|layoff| layoff.from);
        breaks.chain(self.shared.ill_ahead.iter().map(|(since, _)| *since))
    }

    /// Begins the illnesses whose first day has come: what was noted in advance stops nothing before it, and no word that was given
    /// before it answers it.
    pub(crate) fn begin_illnesses(&mut self, on: Day) {
        let to_come = |(since, _): &(Day, u32)| *since > on;
        let (ahead, begun) = core::mem::take(&mut self.shared.ill_ahead).into_iter().partition(to_come);
        self.shared.ill_ahead = ahead;
        let begun: Vec<(Day, u32)> = begun;
        for (since, told) in begun {
            let earlier = self.shared.ill_since.map_or(0, |(_, told)| told);
            self.shared.ill_since = Some((since, told.max(earlier)));
            let all = self.lifts.iter_mut().chain(&mut self.set_aside);
            for lift in all {
                lift.now.ill = true;
                // What was allowed above the grant was allowed to somebody well. What ran out before was ended by time.
                lift.now.overruled.take_if(|given| given.expires < since);
                let stands = lift.now.grant.place;
                lift.now.keep_easing_only(OverrideEnd::Illness, &lift.set, stands);
            }
        }
    }
}

impl Shared {
    /// First day of the illness after which a new clearance is needed on that day; of several the last to begin.
    pub(crate) fn ill_on(&self, on: Day) -> Option<Day> {
        let begun = self.ill_ahead.iter().rev().find(|(since, _)| *since <= on);
        begun.or(self.ill_since.as_ref()).map(|(since, _)| *since)
    }

    /// Keeps an illness until its first day; one that begins on the same day is told anew.
    fn note_illness(&mut self, since: Day, told: u32) {
        match self.ill_ahead.iter_mut().find(|(from, _)| *from == since) {
            Some((_, before)) => *before = told.max(*before),
            None => self.ill_ahead.push((since, told)),
        }
        self.ill_ahead.sort_unstable();
    }

    /// The planned break or the illness within whose dates that day lies; of several the one that ends last. A planned
    /// break without an end lasts until training goes on.
    pub(crate) fn away_on(&self, on: Day) -> Option<Away> {
        let covers = |layoff: &&Layoff| match layoff.reason {
            LayoffReason::Well => false,
            LayoffReason::Planned => layoff.from <= on && layoff.to.is_none_or(|to| on <= to),
            LayoffReason::Ill => layoff.from <= on && layoff.to.is_some_and(|to| on <= to),
        };
        let away = |layoff: &Layoff| Away { until: layoff.to, ill: layoff.reason == LayoffReason::Ill };
        self.layoffs.iter().filter(covers).map(away).max_by_key(|away| (away.until.is_none(), away.until))
    }

    /// Keeps a planned break or an illness; one of the same kind that begins on the same day is noted anew. An illness without an
    /// end is told by the lifts themselves, and of planned breaks without one the first to begin tells all. Of more than a state
    /// keeps those that are over are forgotten.
    ///
    /// # Errors
    /// `too_many` where more with an end are under way or to come.
    fn note_layoff(&mut self, layoff: &Layoff, on: Day) -> Result<(), Error> {
        if layoff.reason == LayoffReason::Well {
            return Ok(());
        }
        self.layoffs.retain(|kept| (kept.reason, kept.from) != (layoff.reason, layoff.from));
        let told = layoff.to.is_none()
            && (layoff.reason == LayoffReason::Ill
                || self.layoffs.iter().any(|kept| kept.to.is_none() && kept.from < layoff.from));
        if told {
            return Ok(());
        }
        if layoff.to.is_none() {
            self.layoffs.retain(|kept| kept.to.is_some());
        }
        self.layoffs.push(layoff.clone());
        if self.layoffs.len() > MOST_LAYOFFS {
            self.layoffs.retain(|kept| kept.to.is_none_or(|to| on <= to));
        }
        at_most("layoff_noted", self.layoffs.len(), MOST_LAYOFFS)
    }

    /// Training on that day ends the breaks that have begun.
    pub(crate) fn end_layoffs(&mut self, on: Day) {
        self.layoffs.retain(|layoff| layoff.from > on);
    }
}
