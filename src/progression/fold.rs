//! The fold: events in order, one state out.

use alloc::format;
use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::loadable::Loadable;
use super::retraction::Retractions;
use super::session::unknown_track;
use super::state::{OverrideInForce, State, TodayReport, TrackState};
use super::status::Status;
use crate::condition::DayClass;
use crate::error::{Code, Error};
use crate::quantity::{Day, Mass, Name};
use crate::record::{
    Advance, DayReport, Event, EventKind, Layoff, LayoffReason, Log, Move, NextDayReport, Override,
    Parameters, Role, RoleSet, TrackParameters, Tuple,
};

/// Version of the library, as decisions and states carry it.
pub(crate) const LIBRARY_VERSION: &str = env!("CARGO_PKG_VERSION");

/// Folds a whole log into the state after its last event. Order in the list does not matter; day and number do.
///
/// # Errors
/// What [`Log::check`] and [`Log::effective`] report, and `unknown_track`, `no_parameters`,
/// `negative_load` tied to the event. Nothing is folded half.
///
/// ```
/// use bismar::progression::fold;
/// use bismar::record::{Lifter, Log};
/// use bismar::quantity::Name;
///
/// let log = Log::new(Lifter { id: Name::new("A")?, born: None, invented: true });
/// assert!(fold(&log)?.tracks.is_empty());
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn fold(log: &Log) -> Result<State, Error> {
    log.check()?;
    let events = log.effective()?;
    let retractions = Retractions::find(&events);
    let mut state = State::new(log.lifter.born);
    for event in &events {
        state.take(event, &retractions)?;
    }
    Ok(state)
}

impl State {
    /// The state before any event.
    #[must_use]
    pub fn new(born: Option<Day>) -> State {
        State { version: LIBRARY_VERSION.into(), born, ..State::default() }
    }

    /// Applies one more event.
    ///
    /// # Errors
    /// `needs_refold` if the event changes the past: it comes before the last one, its number is not above that
    /// one's, it corrects another, or takes a pass back. Then fold the whole log anew. Else what [`fold`] reports;
    /// the state is unchanged on an error. A state that was read is looked at first, see [`State::check`]. A number that an event before the last one used is seen by [`fold`] only.
    pub fn apply(&mut self, event: &Event) -> Result<(), Error> {
        self.check_if_read()?;
        event.check().map_err(|error| error.at_event(event.sequence))?;
        if self.changes_the_past(event) {
            return Err(Error::plain(Code::NeedsRefold, "event").at_event(event.sequence));
        }
        let mut next = self.clone();
        next.take(event, &Retractions::default())?;
        *self = next;
        Ok(())
    }

    fn changes_the_past(&self, event: &Event) -> bool {
        // A number not above the last one may have been used before; only the whole log knows.
        let late = self.last.is_some_and(|(day, number)| event.day < day || event.sequence <= number);
        late || match &event.kind {
            EventKind::Correction(_) => true,
            EventKind::NextDayReport(report) => !report.pain.is_empty(),
            EventKind::DayReport(report) => report.pain.as_ref().is_some_and(|pain| !pain.is_empty()),
            _ => false,
        }
    }

    /// Takes the next event in order.
    pub(crate) fn take(&mut self, event: &Event, retractions: &Retractions) -> Result<(), Error> {
        self.prepare();
        self.expire(event.day);
        let tied = |error: Error| error.at_event(event.sequence);
        self.take_kind(event, retractions).map_err(tied)?;
        self.accept_where_automatic(event);
        self.last = Some((event.day, event.sequence));
        Ok(())
    }

    fn take_kind(&mut self, event: &Event, retractions: &Retractions) -> Result<(), Error> {
        let (on, number) = (event.day, event.sequence);
        match &event.kind {
            EventKind::SessionRecorded(session) => self.take_session(session, on, number, retractions)?,
            EventKind::NextDayReport(report) => self.take_next_day(report, on, number, retractions)?,
            EventKind::LayoffNoted(layoff) => self.take_layoff(layoff, on),
            EventKind::PainReport(answer) => self.take_pain(answer, on, number)?,
            EventKind::UsualPainAgreed(usual) => self.agree_usual(usual, on)?,
            EventKind::SymptomReport(_) => self.stop_everything(on, number),
            EventKind::DayReport(report) => self.take_day_report(report, on, number, retractions)?,
            EventKind::CoachSignOff(given) => self.take_sign_off(given, on),
            EventKind::CoachOverride(given) => self.take_override(given, on, number)?,
            EventKind::AdvanceAccepted(given) => self.take_acceptance(given, on, number)?,
            EventKind::AdvanceDeclined(given) => self.take_decline(given, on)?,
            EventKind::VariantChanged(given) | EventKind::RangeChanged(given) => {
                self.take_move(given, on, number)?
            }
            EventKind::BarOrDiscsChanged(changed) | EventKind::RaterChanged(changed) => {
                self.forget_where_changed(changed.track.as_ref(), on)?;
            }
            EventKind::BodyMassRecorded(mass) => {
                self.body_mass = Some((on, *mass));
                for loadable in self.loadables.iter_mut().filter(|loadable| loadable.helps()) {
                    Arc::make_mut(loadable).measure_against(*mass);
                }
            }
            EventKind::ClearanceRecorded(clearance) => self.take_clearance(clearance, on, number),
            EventKind::ClearanceExpired(_) => {
                if let Some(clearance) = &mut self.clearance {
                    clearance.expires = clearance.expires.min(on.plus(-1)?);
                }
            }
            EventKind::ParametersChanged(parameters) => self.take_parameters(parameters, on, number)?,
            EventKind::RoleSet(given) => self.take_role(given, on)?,
            EventKind::Unknown(_) => self.unknown = self.unknown.saturating_add(1),
            // Kept in the log; they change no grant.
            EventKind::SessionMissed(_)
            | EventKind::BlockStarted(_)
            | EventKind::BlockEnded(_)
            | EventKind::FunctionTested(_)
            | EventKind::Correction(_) => {}
        }
        Ok(())
    }

    /// Makes the lists of loadable totals where they are missing, as after reading a stored state.
    pub(crate) fn prepare(&mut self) {
        if self.loadables.len() != self.tracks.len() {
            let made: Vec<Arc<Loadable>> = (0..self.tracks.len()).map(|at| self.loadable(at)).collect();
            self.loadables = made;
        }
    }

    pub(crate) fn place(&self, name: &Name) -> Result<usize, Error> {
        self.parameters
            .as_ref()
            .and_then(|parameters| parameters.track_at(name))
            .ok_or_else(|| unknown_track(name))
    }

    fn take_parameters(&mut self, parameters: &Parameters, on: Day, event: u32) -> Result<(), Error> {
        let before = self.parameters.take();
        let mut tracks = Vec::with_capacity(parameters.tracks.len());
        let mut loadables = Vec::with_capacity(parameters.tracks.len());
        for set in &parameters.tracks {
            let body = self.body_mass.map(|(_, mass)| mass);
            loadables.push(Arc::new(
                Loadable::of(set, parameters, body).map_err(|error| error.within(set.name.as_str()))?,
            ));
            let old = before.as_ref().and_then(|before| before.track_at(&set.name));
            let (kept, was) =
                (old.and_then(|at| self.tracks.get(at)), old.and_then(|at| before.as_ref()?.tracks.get(at)));
            let learning = set.learning(&parameters.policy);
            tracks.push(match (kept, was) {
                (Some(kept), Some(was)) => {
                    let mut kept = kept.clone();
                    if parameters.check_load(set, kept.tuple.load).is_err() {
                        // Help in place of a load, or a load in place of help: its numbers say nothing here.
                        kept.forget_loads(set.start, on);
                    }
                    if set.check_tuple(&kept.tuple).is_err() || !same_places(was, set, &kept.tuple) {
                        // The place is gone from the new lists: learn it anew, no heavier than before.
                        let cap = kept.return_cap;
                        kept.stand_at(no_harder_start(was, set, &kept.tuple), on);
                        kept.keep_easing_only();
                        kept.learn_anew(learning);
                        if kept.status == Status::Returning {
                            // On its way back it stays, from where it now stands: its passes are still to come.
                            (kept.return_cap, kept.return_row) = (cap.map(|_| kept.tuple.load), 2);
                            kept.passes = 0;
                        } else if kept.status.is_trained() && kept.status != Status::Resting {
                            kept.enter(Status::Learning, on);
                        }
                    }
                    let other_test =
                        was.gate != set.gate || was.criteria != set.criteria || was.pass != set.pass;
                    if other_test || was.implement != set.implement {
                        kept.forget_evidence(on);
                        if kept.status == Status::ReadyToAdvance {
                            kept.settle(on);
                        }
                    }
                    kept
                }
                _ => TrackState::new(set.start, on, learning),
            });
        }
        self.tracks = tracks;
        self.loadables = loadables;
        self.digest = digest(parameters);
        self.parameters = Some(Arc::new(parameters.clone()));
        for region in parameters.tracks.iter().flat_map(|track| &track.regions) {
            self.region_mut(region);
        }
        if let Some(before) = &before {
            self.carry_regions(before, parameters);
        }
        self.give_stops_a_region(on, event);
        // A stop in force holds the new lifts too.
        for at in 0..self.tracks.len() {
            if self.stop.is_some() || self.stopped_region(at).is_some() {
                self.halt(at, on);
            }
        }
        Ok(())
    }

    fn take_next_day(
        &mut self,
        report: &NextDayReport,
        on: Day,
        event: u32,
        retractions: &Retractions,
    ) -> Result<(), Error> {
        for answer in &report.pain {
            self.take_pain(answer, on, event)?;
        }
        self.take_flares(retractions.flare(event), on);
        let trained = self.day_of(report.session).filter(|trained| *trained < on);
        self.calm_regions(trained);
        self.confirm(|sitting| sitting.session == report.session && sitting.day < on, on);
        Ok(())
    }

    fn take_day_report(
        &mut self,
        report: &DayReport,
        on: Day,
        event: u32,
        retractions: &Retractions,
    ) -> Result<(), Error> {
        let class = report.class.unwrap_or(DayClass::Unknown);
        for answer in report.pain.iter().flatten() {
            self.take_pain(answer, on, event)?;
        }
        // Two reports of one day are one: the more cautious answer stands.
        let earlier = self.today.take().filter(|earlier| earlier.day == on);
        let class = earlier.as_ref().map_or(class, |earlier| earlier.class.min(class));
        let asks_first =
            !report.asks.is_empty() || earlier.as_ref().is_some_and(|earlier| earlier.asks_first);
        let pain_asked = report.pain.is_some() || earlier.as_ref().is_some_and(|earlier| earlier.pain_asked);
        let minutes = report.minutes.or(earlier.and_then(|earlier| earlier.minutes));
        self.today = Some(TodayReport { day: on, class, asks_first, pain_asked, minutes });
        // The same question before the next session stands for the next-morning answer.
        if report.pain.is_some() {
            self.take_flares(retractions.flare(event), on);
            let trained = self.last_trained().filter(|trained| *trained < on);
            self.calm_regions(trained);
            self.confirm(|sitting| Some(sitting.day) == trained, on);
        }
        Ok(())
    }

    fn take_layoff(&mut self, layoff: &Layoff, on: Day) {
        if layoff.reason == LayoffReason::Ill {
            self.ill_since = Some(layoff.from);
            self.tracks.iter_mut().for_each(|track| track.ill = true);
        }
        // An illness noted earlier is not forgotten for a holiday noted later.
        let keep = self.layoff.as_ref().is_some_and(|before| before.reason == LayoffReason::Ill);
        if !keep {
            self.layoff = Some(layoff.clone());
        }
        if layoff.reason == LayoffReason::Planned {
            let rests =
                |track: &&mut TrackState| track.status.is_trained() && track.status != Status::SteppingBack;
            for track in self.tracks.iter_mut().filter(rests) {
                track.enter(Status::Resting, on);
            }
        }
    }

    fn take_override(&mut self, given: &Override, on: Day, event: u32) -> Result<(), Error> {
        let at = self.place(&given.track)?;
        self.check_load(at, given.load)?;
        let upward = self.tracks.get(at).is_some_and(|track| given.load > track.tuple.load);
        // Whether it is upward depends on what came before, and a correction may change that: an override that
        // lacks its reason or its end is refused, not an error that would make the log unreadable.
        let reasoned =
            given.why.as_ref().is_some_and(|why| !why.trim().is_empty()) && given.expires.is_some();
        let held = self.stop.is_some() || self.stopped_region(at).is_some() || self.ill_since.is_some();
        let over_ceiling = given.load > self.ceiling(at);
        if upward && (held || over_ceiling || !reasoned) {
            self.refused = Some(event);
            return Ok(());
        }
        let Some(track) = self.tracks.get_mut(at) else { return Ok(()) };
        match given.expires {
            Some(expires) if expires >= on => {
                track.overruled =
                    Some(OverrideInForce { load: given.load, expires, who: given.who.clone(), event });
            }
            Some(_) => {}
            None => {
                track.overruled = None;
                let tuple = crate::record::Tuple { load: given.load, ..track.tuple };
                if tuple != track.tuple {
                    track.stand_at(tuple, on);
                    track.forgo_restoring();
                    if track.status == Status::ReadyToAdvance {
                        track.settle(on);
                    }
                }
            }
        }
        Ok(())
    }

    /// Refuses a load that the implement of a lift has no sign for.
    pub(crate) fn check_load(&self, at: usize, load: Mass) -> Result<(), Error> {
        let parameters = self.parameters.as_deref();
        let set = parameters.and_then(|all| Some((all, all.tracks.get(at)?)));
        set.map_or(Ok(()), |(all, set)| all.check_load(set, load))
    }

    /// The lowest of the ceilings that no override passes.
    fn ceiling(&self, at: usize) -> Mass {
        let coach = self.parameters.as_ref().and_then(|parameters| parameters.tracks.get(at)?.ceiling);
        [coach, self.clearance_load(at)].into_iter().flatten().min().unwrap_or(Mass::MAX)
    }

    fn take_acceptance(&mut self, given: &Advance, on: Day, event: u32) -> Result<(), Error> {
        let at = self.place(&given.track)?;
        let offered = self.offered_tuple(at);
        match offered {
            Some(to) => self.attempt(at, to, on, event),
            None => self.refused = Some(event),
        }
        Ok(())
    }

    fn offered_tuple(&self, at: usize) -> Option<crate::record::Tuple> {
        let parameters = self.parameters.as_deref()?;
        let (set, track) = (parameters.tracks.get(at)?, self.tracks.get(at)?);
        super::moves::next_tuple(set, parameters.policy.rung_load, track.tuple, &self.loadable(at)).ok()
    }

    fn take_decline(&mut self, given: &Advance, on: Day) -> Result<(), Error> {
        let at = self.place(&given.track)?;
        if let Some(track) = self.tracks.get_mut(at)
            && track.status == Status::ReadyToAdvance
        {
            track.settle(on);
            track.forget_evidence(on);
        }
        Ok(())
    }

    /// The coach moves a lift by hand: sideways or down freely, upward through every guard.
    fn take_move(&mut self, given: &Move, on: Day, event: u32) -> Result<(), Error> {
        let at = self.place(&given.track)?;
        let set = self.parameters.as_ref().and_then(|all| Some((all.tracks.get(at)?, &all.policy)));
        let (Some((set, policy)), Some(track)) = (set, self.tracks.get(at)) else { return Ok(()) };
        let relearning = set.relearning(policy);
        set.check_tuple(&given.to).map_err(|error| error.within("to"))?;
        self.check_load(at, given.to.load)?;
        let from = track.tuple;
        if !set.harder_in(&from, &given.to).is_empty() {
            self.attempt(at, given.to, on, event);
            return Ok(());
        }
        let Some(track) = self.tracks.get_mut(at) else { return Ok(()) };
        if given.to == from {
            return Ok(());
        }
        track.stand_at(given.to, on);
        track.keep_easing_only();
        track.forgo_restoring();
        let free = !matches!(
            track.status,
            Status::StoppedRefer | Status::Retired | Status::Returning | Status::Resting
        );
        if free && given.to.rung != from.rung {
            track.learned = (0, relearning);
            track.enter(Status::Learning, on);
        } else if track.status == Status::ReadyToAdvance || track.status == Status::Consolidating {
            track.settle(on);
        }
        Ok(())
    }

    fn forget_where_changed(&mut self, name: Option<&Name>, on: Day) -> Result<(), Error> {
        let only = name.map(|name| self.place(name)).transpose()?;
        for (at, track) in (0_usize..).zip(&mut self.tracks) {
            if only.is_none_or(|only| only == at) {
                track.forget_evidence(on);
                if track.status == Status::ReadyToAdvance {
                    track.settle(on);
                }
            }
        }
        Ok(())
    }

    fn take_role(&mut self, given: &RoleSet, on: Day) -> Result<(), Error> {
        let at = self.place(&given.track)?;
        let parameters = self.parameters.as_deref();
        let set = parameters.and_then(|all| Some((all.tracks.get(at)?, &all.policy)));
        let learning = set.map_or(0, |(set, policy)| set.learning(policy));
        let Some(track) = self.tracks.get_mut(at) else { return Ok(()) };
        let before = track.role;
        track.role = given.role;
        track.not_below = given.not_below.filter(|_| given.role == Role::Maintain);
        if track.status == Status::StoppedRefer {
            return Ok(());
        }
        // Taken up again, or to be after a rest: as a new lift.
        if track.status == Status::Retired && given.role != Role::Retire {
            track.learn_anew(learning);
            track.forget_evidence(on);
        }
        match (given.role, track.status) {
            (Role::Retire, _) => track.enter(Status::Retired, on),
            (Role::Rest, _) => track.rest(on),
            (_, Status::Retired) => track.enter(Status::Learning, on),
            (Role::Maintain, Status::Holding | Status::ReadyToAdvance | Status::Consolidating) => {
                track.settle(on)
            }
            (Role::Train, Status::Maintaining) => track.settle(on),
            (Role::Train | Role::Maintain, Status::Resting) if before == Role::Rest => track.wake(on),
            _ => {}
        }
        Ok(())
    }

    /// Where the policy says so, a session or an answer after it takes the move on offer.
    fn accept_where_automatic(&mut self, event: &Event) {
        let automatic =
            self.parameters.as_ref().is_some_and(|parameters| parameters.policy.automatic_acceptance);
        let moves = matches!(
            event.kind,
            EventKind::SessionRecorded(_)
                | EventKind::NextDayReport(_)
                | EventKind::DayReport(_)
                | EventKind::CoachSignOff(_)
        );
        if !automatic || !moves {
            return;
        }
        for at in 0..self.tracks.len() {
            let ready = self.tracks.get(at).is_some_and(|track| track.status == Status::ReadyToAdvance);
            if let (true, Some(to)) = (ready, self.offered_tuple(at)) {
                let refused = self.refused;
                self.attempt(at, to, event.day, event.sequence);
                // Waiting is not a refusal.
                self.refused = refused;
            }
        }
    }
}

/// The start of the new set with no more load, and on no harder rung, than the lift stood on.
fn no_harder_start(was: &TrackParameters, set: &TrackParameters, stood: &Tuple) -> Tuple {
    let name = was.rungs.get(usize::from(stood.rung)).map(|rung| &rung.name);
    let same =
        set.rungs.iter().position(|rung| Some(&rung.name) == name).and_then(|at| u8::try_from(at).ok());
    let rung = same.filter(|rung| set.is_harder(set.start.rung, *rung)).unwrap_or(set.start.rung);
    Tuple { rung, load: set.start.load.min(stood.load), ..set.start }
}

/// Whether the place of a lift means the same in both sets: the same rung, range and tempo stand there.
fn same_places(was: &TrackParameters, set: &TrackParameters, tuple: &Tuple) -> bool {
    let at = |place: u8| usize::from(place);
    let rung = |track: &TrackParameters| track.rungs.get(at(tuple.rung)).map(|rung| rung.name.clone());
    rung(was) == rung(set)
        && was.ranges.get(at(tuple.range)) == set.ranges.get(at(tuple.range))
        && was.tempos.get(at(tuple.tempo)) == set.tempos.get(at(tuple.tempo))
}

/// Digest of a set of parameters: 64-bit FNV-1a over its canonical bytes, in hexadecimal.
pub(crate) fn digest(parameters: &Parameters) -> String {
    #[cfg(feature = "serde")]
    let bytes =
        crate::value::Value::write(parameters).map(|value| value.canonical_bytes()).unwrap_or_default();
    #[cfg(not(feature = "serde"))]
    let bytes = format!("{parameters:?}").into_bytes();
    let hash = bytes.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3)
    });
    format!("{hash:016x}")
}
