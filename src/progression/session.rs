//! What a session means for its lifts.

use alloc::vec::Vec;

use super::loadable::Loadable;
use super::retraction::Retractions;
use super::state::{SITTINGS, Sitting, State, TrackState};
use super::status::Status;
use crate::condition::DayClass;
use crate::error::{Allowed, Code, Error};
use crate::gate::{Mark, Outcome, SetMarks, session_pass_of};
use crate::quantity::{Day, Name, Reserve};
use crate::record::{Effort, LiftSession, Parameters, Session, TrackParameters};

/// A lift of a session with its judgement.
struct Judged {
    at: usize,
    outcome: Outcome,
    critical: bool,
    pain: bool,
    at_grant: bool,
    scored: u16,
    acceptable: u16,
    fault: Option<Name>,
    weak: Option<Name>,
    watched_held: bool,
}

impl State {
    pub(crate) fn take_session(
        &mut self,
        session: &Session,
        on: Day,
        event: u32,
        retractions: &Retractions,
    ) -> Result<(), Error> {
        let parameters =
            self.parameters.clone().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
        let places = places(session, &parameters)?;
        let loaded = loaded_regions(&places, &parameters);
        self.come_back_where_due(&places, &loaded, on);
        if let Some(answers) = &session.pain {
            for answer in answers {
                self.take_pain(answer, on, event)?;
            }
            self.count_clear(answers, &loaded, on);
        }
        self.pain_asked = Some(session.pain.is_some());
        let mut judged = Vec::with_capacity(places.len());
        for (at, lift) in places.iter().zip(&session.lifts) {
            let mut result = self.judge(*at, lift, session, on)?;
            if result.outcome == Outcome::Pass && retractions.holds(event, self.regions_of(*at)) {
                result.outcome = Outcome::Fail;
            }
            self.note_setup(*at, lift);
            judged.push(result);
        }
        for result in &judged {
            self.take_result(result, on, event);
        }
        for result in &judged {
            self.hold_partner(result);
        }
        for region in self.regions.iter_mut().filter(|region| loaded.contains(&&region.name)) {
            region.loaded = Some(on);
        }
        self.note_pairs(on);
        self.layoff = None;
        Ok(())
    }

    /// Every lift that shares a region with the session comes back from its break now, trained today or not.
    fn come_back_where_due(&mut self, places: &[usize], loaded: &[&Name], on: Day) {
        for at in 0..self.tracks.len() {
            let concerned =
                places.contains(&at) || self.regions_of(at).iter().any(|region| loaded.contains(&region));
            if !concerned {
                continue;
            }
            let returned = self.returned(at, on, &self.loadable(at));
            let Some(track) = self.tracks.get_mut(at) else { continue };
            if let Some(returned) = returned {
                *track = returned;
            }
            // Of an illness each lift comes back by itself; one that is stopped or retired has not yet.
            track.ill &= !track.status.is_trained();
        }
    }

    pub(crate) fn regions_of(&self, at: usize) -> &[Name] {
        self.parameters
            .as_ref()
            .and_then(|parameters| parameters.tracks.get(at))
            .map(|track| track.regions.as_slice())
            .unwrap_or_default()
    }

    /// The day's class as the fold uses it: what was reported today, else unknown.
    pub(crate) fn class_on(&self, on: Day) -> DayClass {
        self.today.as_ref().filter(|today| today.day == on).map_or(DayClass::Unknown, |today| today.class)
    }

    fn judge(&self, at: usize, lift: &LiftSession, session: &Session, on: Day) -> Result<Judged, Error> {
        let parameters =
            self.parameters.as_deref().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))?;
        let (Some(set), Some(track)) = (parameters.tracks.get(at), self.tracks.get(at)) else {
            return Err(unknown_track(&lift.track));
        };
        // The sign is the same for all sets, so the two ends speak for those between.
        let loads = || lift.sets.iter().map(|done| done.load);
        for load in [loads().min(), loads().max()].into_iter().flatten() {
            parameters.check_load(set, load).map_err(|error| error.within(set.name.as_str()))?;
        }
        let unscored: Vec<SetMarks> =
            lift.sets.iter().filter(|set| set.marks.is_none()).map(unscored).collect();
        let mut missing = unscored.iter();
        let marks = lift.sets.iter().filter_map(|set| set.marks.as_ref().or_else(|| missing.next()));
        let marks: Vec<&SetMarks> = marks.collect();
        let verdict = session_pass_of(&set.pass, &set.criteria, &marks)?;
        let limit = self.limit(at, on);
        let granted = lift.sets.iter().all(|done| done.load == limit) && lift.sets.len() >= sets_due(track);
        let missed = lift.sets.iter().any(|done| done.failed);
        // Fewer repetitions than granted may be what the plan asked for: no pass, and no fail either.
        let whole = lift.sets.iter().all(|done| done.reps.halves() >= 2 * u16::from(track.tuple.reps));
        let at_grant = granted && whole && limit == track.tuple.load;
        let outcome = match verdict.passed {
            Outcome::Fail => Outcome::Fail,
            _ if missed => Outcome::Fail,
            Outcome::Pass if at_grant => Outcome::Pass,
            _ => Outcome::NotScored,
        };
        let regions = self.regions_of(at);
        let hurts = |score: crate::quantity::Pain| score.score() > 0;
        let pain = session
            .pain
            .iter()
            .flatten()
            .any(|answer| regions.contains(&answer.region) && hurts(answer.score));
        Ok(Judged {
            at,
            outcome,
            critical: verdict.critical_fail,
            pain,
            at_grant,
            scored: u16::try_from(verdict.scored).unwrap_or(u16::MAX),
            acceptable: u16::try_from(verdict.acceptable).unwrap_or(u16::MAX),
            fault: lost_critical(set, &marks),
            watched_held: track.watched_held(set, &marks),
            weak: verdict.weakest,
        })
    }

    fn note_setup(&mut self, at: usize, lift: &LiftSession) {
        let over = self
            .parameters
            .as_ref()
            .and_then(|parameters| parameters.tracks.get(at))
            .is_some_and(|track| track.over_the_body);
        if let Some(track) = self.tracks.get_mut(at) {
            // Nothing said about the rack leaves what was last said.
            let said = lift.setup.as_ref();
            let unguarded = said.map(|setup| setup.alone && !setup.spotter && setup.pins.is_none());
            track.unguarded = over && unguarded.unwrap_or(track.unguarded);
            track.reserve = least_reserve(lift);
        }
    }

    fn take_result(&mut self, result: &Judged, on: Day, event: u32) {
        let Some(parameters) = self.parameters.clone() else { return };
        let policy = &parameters.policy;
        let bad_day = self.class_on(on).is_confirmed_bad();
        let loadable = self.loadable(result.at);
        let Some(track) = self.tracks.get_mut(result.at) else { return };
        track.last_session = Some(on);
        track.fault.clone_from(&result.fault);
        if result.watched_held {
            track.watched = None;
        }
        if result.weak.is_some() {
            track.weak.clone_from(&result.weak);
        }
        if !track.status.is_trained() {
            return;
        }
        if track.status == Status::Resting {
            track.wake(on);
        }
        track.half_sessions = track.half_sessions.saturating_sub(1);
        track.partner_pain = false;
        track.here.0 = track.here.0.saturating_add(1);
        track.remember(Sitting {
            session: event,
            day: on,
            outcome: result.outcome,
            critical: result.critical,
            bad_day,
            at_grant: result.at_grant,
            confirmed: false,
            scored: result.scored,
            acceptable: result.acceptable,
        });
        match result.outcome {
            Outcome::Pass => self.take_pass(result.at, on),
            Outcome::NotScored => self.take_neutral(result.at, on),
            Outcome::Fail => {
                let neutral = bad_day && !result.critical && track.neutral < policy.neutral_fails;
                if neutral {
                    track.neutral += 1;
                    self.take_neutral(result.at, on);
                } else {
                    self.take_fail(result, on, policy.fails_to_step_back, &loadable);
                }
            }
        }
    }

    fn take_pass(&mut self, at: usize, on: Day) {
        let Some(parameters) = self.parameters.clone() else { return };
        let may_restore = self.may_restore(at, on);
        if let Some(track) = self.tracks.get_mut(at) {
            track.fails = 0;
            track.neutral = 0;
            track.passes = track.passes.saturating_add(1);
            match track.status {
                Status::Learning => track.count_learning(on),
                Status::Consolidating => track.settle(on),
                Status::SteppingBack if track.passes >= parameters.policy.step_back_passes => {
                    track.lead_on(on)
                }
                Status::Returning => track.finish_return(at, on, &parameters, may_restore),
                _ => {}
            }
        }
        self.offer_where_open(at, on);
    }

    /// Whether a lift may go back to its load before a short break: no pain, asked; a clearance; no bad day; nothing
    /// on record that is not understood; somebody or pins by the bar.
    fn may_restore(&self, at: usize, on: Day) -> bool {
        let regions = self.regions_of(at);
        let hurts =
            self.regions.iter().any(|region| regions.contains(&region.name) && region.clear_needed > 0);
        let policy_asks =
            self.parameters.as_ref().is_some_and(|parameters| parameters.policy.clearance_required);
        let cleared = self.clearance.as_ref().map_or(!policy_asks, |clearance| clearance.expires >= on);
        let asked = self.pain_asked == Some(true) && self.ill_since.is_none() && !self.asks_first();
        let guarded = self.tracks.get(at).is_some_and(|track| !track.unguarded);
        !hurts && cleared && asked && !self.class_on(on).is_bad() && self.unknown == 0 && guarded
    }

    /// Something was answered that asks for a clinician's word first, and nothing since has lifted it.
    pub(crate) fn asks_first(&self) -> bool {
        self.today.as_ref().is_some_and(|report| report.asks_first)
    }

    fn take_neutral(&mut self, at: usize, on: Day) {
        if let Some(track) = self.tracks.get_mut(at)
            && track.status == Status::Learning
        {
            track.count_learning(on);
        }
    }

    fn take_fail(&mut self, result: &Judged, on: Day, debounce: u8, loadable: &Loadable) {
        let Some(track) = self.tracks.get_mut(result.at) else { return };
        track.fails = track.fails.saturating_add(1);
        track.neutral = 0;
        track.passes = 0;
        if track.status == Status::Learning {
            track.count_learning(on);
        }
        let hurt = track.status == Status::Consolidating && result.critical && result.pain;
        if track.status == Status::ReadyToAdvance {
            track.settle(on);
        }
        if track.fails >= debounce || hurt {
            self.step_back(result.at, on, loadable);
        }
    }

    /// Pain in the strict lift of a pair: the forgiving one holds and starts one step down next time.
    fn hold_partner(&mut self, result: &Judged) {
        if !result.pain {
            return;
        }
        let partner = self.parameters.as_ref().and_then(|parameters| {
            let name = &parameters.tracks.get(result.at)?.name;
            let pair = parameters.pairs.iter().find(|pair| pair.strict == *name)?;
            parameters.track_at(&pair.forgiving)
        });
        if let Some(track) = partner.and_then(|at| self.tracks.get_mut(at)) {
            track.partner_pain = true;
        }
    }
}

/// Where each lift of a session stands in the parameters.
fn places(session: &Session, parameters: &Parameters) -> Result<Vec<usize>, Error> {
    let place =
        |lift: &LiftSession| parameters.track_at(&lift.track).ok_or_else(|| unknown_track(&lift.track));
    session.lifts.iter().map(place).collect()
}

/// The regions that these lifts load.
fn loaded_regions<'a>(places: &[usize], parameters: &'a Parameters) -> Vec<&'a Name> {
    let mut regions: Vec<&Name> = Vec::new();
    for region in places.iter().filter_map(|at| parameters.tracks.get(*at)).flat_map(|track| &track.regions) {
        if !regions.contains(&region) {
            regions.push(region);
        }
    }
    regions
}

impl TrackState {
    /// Keeps a session; older ones at this place become counts.
    fn remember(&mut self, sitting: Sitting) {
        self.sittings.push(sitting);
        if self.sittings.len() > SITTINGS {
            let oldest = self.sittings.remove(0);
            let counts = oldest.outcome != Outcome::NotScored;
            if counts {
                self.earlier.0 = self.earlier.0.saturating_add(u32::from(oldest.acceptable));
                self.earlier.1 = self.earlier.1.saturating_add(u32::from(oldest.scored));
            }
        }
    }

    /// Calibration ends when its sessions are done and the last one passed.
    fn count_learning(&mut self, on: Day) {
        self.learned.0 = self.learned.0.saturating_add(1);
        let passed = self.sittings.last().is_some_and(|last| last.outcome == Outcome::Pass);
        if self.learned.0 >= self.learned.1 && passed {
            self.settle(on);
        }
    }
}

fn sets_due(track: &TrackState) -> usize {
    let sets = usize::from(track.tuple.sets);
    if track.half_sessions > 0 { sets.div_ceil(2) } else { sets }
}

/// The marks of a set that was not scored.
fn unscored(set: &crate::record::WorkSet) -> SetMarks {
    SetMarks::unscored(set.reps.halves() / 2, crate::gate::Rater::Coach)
}

fn lost_critical(track: &TrackParameters, marks: &[&SetMarks]) -> Option<Name> {
    // Most sessions lose nothing, and then no names need be compared.
    if !marks.iter().any(|set| set.marks.iter().any(|each| each.mark == Mark::NotMet)) {
        return None;
    }
    let critical = track.criteria.iter().filter(|criterion| criterion.critical);
    critical
        .map(|criterion| &criterion.id)
        .find(|id| marks.iter().any(|set| set.mark(id) == Mark::NotMet))
        .cloned()
}

/// The least reserve of the sets, in half repetitions, where every set says one.
fn least_reserve(lift: &LiftSession) -> Option<u16> {
    let halves = lift.sets.iter().map(|set| match set.effort? {
        Effort::Rir(reserve) => Some(reserve.halves()),
        Effort::Rpe(rating) => match rating.reserve() {
            Reserve::Exactly(reserve) | Reserve::Between(reserve, _) => Some(reserve.halves()),
            Reserve::MoreLoadOnly => Some(0),
            Reserve::NotAReserve => None,
        },
    });
    halves.collect::<Option<Vec<u16>>>().and_then(|all| all.into_iter().min())
}

pub(crate) fn unknown_track(name: &Name) -> Error {
    Error::new(Code::UnknownTrack, "track", name.as_str(), Allowed::rule("a lift of the parameters in force"))
}
