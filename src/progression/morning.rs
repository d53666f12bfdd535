//! The morning after: flares in a row, and mornings that raised nothing.

use super::foreseen::Foreseen;
use super::lift::Now;
use super::region::RegionState;
use super::retraction::Flare;
use super::state::State;
use super::status::Status;
use crate::error::Error;
use crate::gate::Outcome;
use crate::quantity::{Day, Name};
use crate::record::NextDayReport;

/// Flares in a row that step the lifts of a region back.
pub(super) const FLARES_TO_STEP_BACK: u8 = 2;

impl State {
    pub(crate) fn take_next_day(
        &mut self,
        report: &NextDayReport,
        on: Day,
        event: u32,
        foreseen: &Foreseen,
    ) -> Result<(), Error> {
        // Not asked is no answer.
        let Some(pain) = &report.pain else { return Ok(()) };
        self.take_pain_list(pain, on, foreseen.told(event))?;
        self.take_flares(foreseen.flare(event), on);
        let trained = self.day_of(report.session).filter(|trained| *trained < on);
        self.calm_regions(trained);
        self.confirm(trained, on);
        Ok(())
    }

    /// A flare holds; a second one in a row steps back. One that is told twice counts once.
    pub(crate) fn take_flares(&mut self, flare: Option<&Flare>, on: Day) {
        let Some(flare) = flare else { return };
        for id in &flare.regions {
            let Some(region) = self.shared.region_mut(id) else { continue };
            region.clear_needed = region.clear_needed.max(1);
            if region.flared.replace(flare.trained) == Some(flare.trained) {
                continue;
            }
            region.flares = region.flares.saturating_add(1);
            if region.flares >= FLARES_TO_STEP_BACK {
                region.flares = 0;
                self.step_region_back(id, flare.trained, on);
            }
        }
    }

    fn step_region_back(&mut self, id: &Name, trained: Day, on: Day) {
        let Some(all) = self.all() else { return };
        // One that is set aside steps back too: it loads nothing now, and comes back a load lighter.
        let all_lifts = self.lifts.iter_mut().chain(&mut self.set_aside);
        for lift in all_lifts.filter(|lift| lift.has_region(id)) {
            let now = &lift.now;
            let rests = !now.status.is_trained() || matches!(now.status, Status::Resting { .. });
            if !rests && !went_back_since(now, trained) {
                super::step_back::step_back(lift, on, &all.policy);
            }
        }
    }

    /// A morning without a flare ends the row of flares of what was trained the day before it.
    pub(crate) fn calm_regions(&mut self, trained: Option<Day>) {
        let calm = |region: &&mut RegionState| region.loaded == trained && region.flared != trained;
        if trained.is_some() {
            self.shared.regions.iter_mut().filter(calm).for_each(|region| region.flares = 0);
        }
    }

    /// Whether an answer of that day may be the first about the morning after the last training.
    pub(crate) fn morning_is_open(&self, on: Day) -> bool {
        let trained = self.last_trained().is_some_and(|trained| trained < on);
        trained && self.shared.answered.is_none_or(|answered| answered >= on)
    }

    /// The last day on which anything was trained.
    pub(crate) fn last_trained(&self) -> Option<Day> {
        let lifts = self.lifts.iter().chain(&self.set_aside).filter_map(|lift| lift.now.last_session);
        lifts.chain(self.shared.last_trained()).max()
    }

    /// The day of a session that is still remembered.
    pub(crate) fn day_of(&self, session: u32) -> Option<Day> {
        let sittings = self.lifts.iter().flat_map(|lift| &lift.now.sittings);
        let sittings = sittings.map(|sitting| (sitting.session, sitting.day));
        let unlisted = self.lifts.iter().filter_map(|lift| lift.now.unanswered);
        let mut known = self.shared.sessions.iter().copied().chain(sittings).chain(unlisted);
        known.find(|(number, _)| *number == session).map(|(_, day)| day)
    }

    /// The morning after that day raised nothing: passes of its sessions now count.
    pub(crate) fn confirm(&mut self, trained: Option<Day>, on: Day) {
        if trained.is_some() && trained == self.last_trained() {
            self.shared.answered.get_or_insert(on);
        }
        for lift in &mut self.lifts {
            confirm(&mut lift.now, trained);
        }
        self.offer_all_open(on);
    }
}

fn confirm(now: &mut Now, trained: Option<Day>) {
    now.unanswered.take_if(|(_, day)| Some(*day) == trained);
    let mut proven = None;
    for sitting in now.sittings.iter_mut().filter(|sitting| Some(sitting.day) == trained) {
        sitting.confirmed = true;
        if sitting.outcome == Outcome::Pass {
            proven = Some(sitting.day);
        }
    }
    // A late answer about an older session does not make the proof older.
    if let Some(day) = proven.filter(|day| now.proven.is_none_or(|(before, _)| before <= *day)) {
        now.proven = Some((day, now.grant.load()));
    }
}

/// Whether the lift already went a step easier for the session of that day, as after two fails in a row.
fn went_back_since(now: &Now, trained: Day) -> bool {
    let lowered = matches!(now.status, Status::SteppingBack { .. } | Status::Returning { .. });
    lowered && now.here.0 == 0 && now.here.1 >= trained
}
