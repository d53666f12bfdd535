//! The state: a digest of the log, of bounded size. Only the fold changes it; whoever asks reads, or works on a copy.

use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::asks::OpenAsk;
use super::lift::{Lift, Now};
use super::region::RegionState;
use super::shared::{ClearanceInForce, Shared};
use super::status::{Purpose, Status, Stop};
use super::view::{Partner, View};
use crate::canonical;
use crate::condition::DayClass;
use crate::error::{Code, Error};
use crate::quantity::{Day, Mass, Name};
use crate::record::{
    ClearanceLimits, Event, Grant, LiftParameters, Lifter, Log, Parameters, Policy, VERSION,
};

/// Version of the library, as decisions and states carry it.
pub(crate) const LIBRARY_VERSION: &str = env!("CARGO_PKG_VERSION");

/// Everything the fold knows after the last event. The host keeps the log; this can always be made again.
///
/// What a lift is set to, how it stands and what it can load lie in one value a lift, and a status carries its own
/// numbers, so that they cannot contradict each other. Stored, it is a [`StoredState`](super::StoredState).
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    pub(crate) log_version: u32,
    pub(crate) last: Option<(Day, u32)>,
    pub(crate) told: Told,
    pub(crate) in_force: Option<InForce>,
    pub(crate) shared: Shared,
    pub(crate) lifts: Vec<Lift>,
    /// Lifts that the parameters in force leave out.
    pub(crate) set_aside: Vec<Lift>,
    /// A guard taken out, for the test that each of them is needed.
    #[cfg(test)]
    pub(crate) taken_out: Option<&'static str>,
}

/// By what a stored state is known to be of a log. How a log is written is no part of where the lifts stand, so it makes no two
/// states differ.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Told {
    /// How many different events the log told, corrections too.
    pub(crate) count: u32,
    /// Digest of those that were folded, one after another, each with the number under which it was told.
    pub(crate) events: u64,
}

impl Told {
    /// With that event folded, which the log told under that number, and whether a correction of it could not be read.
    pub(crate) fn and(self, event: &Event, told: u32, unread: bool) -> Told {
        let events = canonical::mixed(canonical::mixed(self.events, event), &told);
        Told { events: if unread { canonical::mixed(events, &unread) } else { events }, ..self }
    }
}

impl PartialEq for Told {
    fn eq(&self, _: &Told) -> bool {
        true
    }
}

/// The parameters in force and their digest.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct InForce {
    pub(crate) parameters: Arc<Parameters>,
    pub(crate) digest: Arc<str>,
}

/// One lift of a state, to look at.
#[derive(Clone, Copy, Debug)]
pub struct LiftState<'a> {
    lift: &'a Lift,
}

impl<'a> LiftState<'a> {
    /// Its id.
    #[must_use]
    pub fn id(&self) -> &'a Name {
        &self.lift.set.id
    }

    /// What the coach set.
    #[must_use]
    pub fn parameters(&self) -> &'a LiftParameters {
        &self.lift.set
    }

    /// Its state.
    #[must_use]
    pub const fn status(&self) -> &'a Status {
        &self.lift.now.status
    }

    /// What it is granted.
    #[must_use]
    pub const fn grant(&self) -> Grant {
        self.lift.now.grant
    }

    /// What it is for in this block.
    #[must_use]
    pub const fn purpose(&self) -> Purpose {
        self.lift.now.purpose
    }

    /// Day of its last session.
    #[must_use]
    pub const fn last_session(&self) -> Option<Day> {
        self.lift.now.last_session
    }

    /// Everything else that is known of it.
    #[must_use]
    pub const fn now(&self) -> &'a Now {
        &self.lift.now
    }
}

impl State {
    /// The state before any event of a log of that lifter, of this version of the format.
    #[must_use]
    pub fn new(lifter: Lifter) -> State {
        State {
            log_version: VERSION,
            last: None,
            told: Told::default(),
            in_force: None,
            shared: Shared::new(lifter),
            lifts: Vec::new(),
            set_aside: Vec::new(),
            #[cfg(test)]
            taken_out: None,
        }
    }

    /// The state before the first event of that log.
    #[must_use]
    pub fn before(log: &Log) -> State {
        State { log_version: log.version, ..State::new(log.lifter.clone()) }
    }

    /// Library version that made it.
    #[must_use]
    pub const fn version(&self) -> &'static str {
        LIBRARY_VERSION
    }

    /// Day and number of the last event applied.
    #[must_use]
    pub const fn last(&self) -> Option<(Day, u32)> {
        self.last
    }

    /// Whose log it is.
    #[must_use]
    pub const fn lifter(&self) -> &Lifter {
        &self.shared.lifter
    }

    /// The parameters in force.
    #[must_use]
    pub fn parameters(&self) -> Option<&Parameters> {
        self.in_force.as_ref().map(|in_force| &*in_force.parameters)
    }

    /// Digest of the parameters in force, in hexadecimal; empty where there are none.
    #[must_use]
    pub fn digest(&self) -> &str {
        self.in_force.as_ref().map_or("", |in_force| &in_force.digest)
    }

    /// The lifts, in the order of the parameters.
    pub fn lifts(&self) -> impl ExactSizeIterator<Item = LiftState<'_>> {
        self.lifts.iter().map(|lift| LiftState { lift })
    }

    /// The lift with that id.
    #[must_use]
    pub fn lift_state(&self, id: &Name) -> Option<LiftState<'_>> {
        self.lifts().find(|lift| lift.id() == id)
    }

    /// The limits of the clearance in force that concern that lift; absent for a lift that is not set.
    #[must_use]
    pub fn limits_of(&self, id: &Name) -> Option<Vec<ClearanceLimits>> {
        let lift = self.lifts.iter().find(|lift| lift.set.id == *id)?;
        Some(self.shared.limits_of(lift).cloned().collect())
    }

    /// Lifts that the parameters in force leave out, by id. They come back as they stood, under the layoff table.
    pub fn set_aside(&self) -> impl ExactSizeIterator<Item = LiftState<'_>> {
        self.set_aside.iter().map(|lift| LiftState { lift })
    }

    /// Lifts left out so long ago that they are kept no more as they stood, each with the day of its last session if there was
    /// one. Declared again they begin at their start, at no harder place than they stood, under the layoff table.
    pub fn laid_by(&self) -> impl ExactSizeIterator<Item = (&Name, Option<Day>)> {
        self.shared.laid_by.iter().map(|kept| (&kept.id, kept.last))
    }

    /// Every region that was ever declared.
    #[must_use]
    pub fn regions(&self) -> &[RegionState] {
        &self.shared.regions
    }

    /// The region with that id.
    #[must_use]
    pub fn region(&self, id: &Name) -> Option<&RegionState> {
        self.shared.region(id)
    }

    /// A symptom stop in force.
    #[must_use]
    pub const fn stop(&self) -> Option<&Stop> {
        self.shared.stop.as_ref()
    }

    /// The clearance last given, expired or not.
    #[must_use]
    pub const fn clearance(&self) -> Option<&ClearanceInForce> {
        self.shared.clearance.as_ref()
    }

    /// What was said when asked before training and waits for an answer.
    #[must_use]
    pub fn asks(&self) -> &[OpenAsk] {
        &self.shared.asks
    }

    /// First day of an illness after which a new clearance is needed, as the last event left it.
    #[must_use]
    pub fn ill_since(&self) -> Option<Day> {
        self.shared.ill_since.map(|(since, _)| since)
    }

    /// The same on that day: an illness that was noted in advance needs it from its first day on.
    #[must_use]
    pub fn ill_since_on(&self, day: Day) -> Option<Day> {
        self.shared.ill_on(day)
    }

    /// The last body mass recorded.
    #[must_use]
    pub fn body_mass(&self) -> Option<(Day, Mass)> {
        self.shared.body_mass()
    }

    /// Part of the body mass lost within half a year up to that day, where it is a twentieth or more.
    #[must_use]
    pub fn fallen_mass(&self, on: Day) -> Option<f64> {
        self.shared.fallen_mass(on)
    }

    /// Events of kinds that this version does not know.
    #[must_use]
    pub const fn unknown_events(&self) -> u32 {
        self.shared.unknown
    }

    /// Whether the last session asked about pain; none before the first.
    #[must_use]
    pub const fn pain_asked(&self) -> Option<bool> {
        self.shared.pain_asked
    }

    /// The day's class as reported; unknown where nobody reported it.
    #[must_use]
    pub fn class_on(&self, day: Day) -> DayClass {
        self.shared.class_on(day)
    }

    /// Minutes that the day's report says there are.
    #[must_use]
    pub fn minutes_on(&self, day: Day) -> Option<u16> {
        self.shared.report_on(day).and_then(|report| report.minutes)
    }

    /// The parameters in force, to hold on to while the state changes.
    pub(crate) fn all(&self) -> Option<Arc<Parameters>> {
        self.in_force.as_ref().map(|in_force| Arc::clone(&in_force.parameters))
    }

    pub(crate) fn policy(&self) -> Option<&Policy> {
        self.parameters().map(|all| &all.policy)
    }

    /// The lift with that id, or what is declared.
    pub(crate) fn lift(&self, id: &Name) -> Result<&Lift, Error> {
        self.lifts.iter().find(|lift| lift.set.id == *id).ok_or_else(|| self.unknown(id))
    }

    pub(crate) fn lift_mut(&mut self, id: &Name) -> Result<&mut Lift, Error> {
        match self.lifts.iter().position(|lift| lift.set.id == *id) {
            Some(at) => self.lifts.get_mut(at).ok_or_else(no_lift),
            None => Err(self.unknown(id)),
        }
    }

    /// What is wrong with an id that no lift has.
    fn unknown(&self, id: &Name) -> Error {
        match self.parameters().map(|all| all.check_id(id)) {
            Some(Err(error)) => error,
            Some(Ok(())) => no_lift(),
            None => Error::plain(Code::NoParameters, "parameters"),
        }
    }

    /// The parameters in force.
    ///
    /// # Errors
    /// `no_parameters` before the first ones.
    pub(crate) fn declared(&self) -> Result<&Parameters, Error> {
        self.parameters().ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))
    }

    /// Refuses a region that is not declared.
    pub(crate) fn check_region(&self, id: &Name) -> Result<(), Error> {
        self.declared()?.check_region("region", id)
    }

    /// The same for an entry of a list.
    pub(crate) fn check_region_in(&self, list: &str, at: usize, id: &Name) -> Result<(), Error> {
        let inside = |error: Error| error.within(&alloc::format!("{list}[{at}]"));
        self.declared()?.check_region("region", id).map_err(inside)
    }

    /// The same, but for one that was declared once: something may have been open in it, and whether it was depends on what is
    /// told late or corrected.
    pub(crate) fn check_known_region(&self, id: &Name) -> Result<(), Error> {
        self.shared.region(id).map_or_else(|| self.check_region(id), |_| Ok(()))
    }

    /// One lift with everything that a rule may look at.
    pub(crate) fn view(&self, id: &Name, on: Day) -> Result<View<'_>, Error> {
        let lift = self.lift(id)?;
        Ok(self.view_of(lift, self.declared()?, on))
    }

    fn view_of<'a>(&'a self, lift: &'a Lift, all: &'a Parameters, on: Day) -> View<'a> {
        let partner = all.pair_of(&lift.set.id).and_then(|pair| {
            let other = pair.other(&lift.set.id);
            self.lifts.iter().find(|lift| lift.set.id == *other).map(|lift| Partner { lift, pair })
        });
        View { shared: &self.shared, all, lift, partner, on }
    }

    /// Every lift with everything that a rule may look at, in the order of the parameters.
    pub(crate) fn views(&self, on: Day) -> impl Iterator<Item = View<'_>> {
        let all = self.parameters();
        self.lifts.iter().filter_map(move |lift| all.map(|all| self.view_of(lift, all, on)))
    }

    /// Library version and digest, as a decision names them.
    pub(crate) fn names(&self) -> (String, String) {
        (LIBRARY_VERSION.into(), self.digest().into())
    }
}

/// Parameters and lifts name the same ids, so this is never seen.
fn no_lift() -> Error {
    Error::plain(Code::UnknownLift, "lift")
}
