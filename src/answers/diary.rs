//! A log read once for many questions: its events in order, the state after the last, and each lift of each session with
//! what it was granted and what became of it.

use alloc::borrow::Cow;
use alloc::collections::BTreeMap;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::raters::Marked;
use crate::caution::Caution;
use crate::condition::DayClass;
use crate::error::Error;
use crate::gate::Outcome;
use crate::loading::Implement;
use crate::progression::{OPEN_SESSIONS, Sitting, State, When, fold_on, fold_told};
use crate::quantity::{Day, Mass, Name};
use crate::reason::NamedPlace;
use crate::record::{
    Corrected, Effective, Event, EventKind, LiftSession, Log, Parameters, Place, Session, WorkSet,
};

/// A log that was read and folded once, to be asked many questions. Each door is a function of a log, and the same as a
/// method here.
///
/// ```
/// use bismar::answers::Diary;
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let log = Log::new(Lifter::new(Name::new("A")?));
/// let diary = Diary::of(&log)?;
/// assert!(diary.week("2026-03-02".parse()?)?.total.is_none()); // nothing is written: missing, not nought
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Diary<'a> {
    /// Whose log it is, and of which version; where the diary owns what it read, without the events.
    head: Cow<'a, Log>,
    events: Vec<Cow<'a, Event>>,
    corrected: Corrected,
    state: State,
    done: Vec<Done>,
    /// For each lift that was ever done the places of its sessions among all, in order.
    of_lift: BTreeMap<Name, Vec<usize>>,
    /// The state on the way, before every so many events.
    passed: Vec<State>,
}

/// Events between two states that are kept on the way.
const STRIDE: usize = 64;

/// What is kept of one lift of a session beside the event itself.
#[derive(Clone, Debug)]
pub(super) struct Done {
    event: usize,
    lift: usize,
    parameters: Arc<Parameters>,
    /// Where it was done: as recorded, else where the day asked for it.
    place: Place,
    /// Its implement helps, so that its loads lie below zero.
    helped: bool,
    /// A set of it was missed.
    pub(super) failed: bool,
    /// Whether it has sets, and whether one of them was marked by more than one person.
    marked: Marked,
    /// Class of the day, as reported before the session.
    pub(super) class: DayClass,
    /// What the session came to for the gate, where it counted.
    pub(super) sitting: Option<Sitting>,
    /// The body mass last recorded, with its day.
    pub(super) body: Option<(Day, Mass)>,
}

/// One lift of one session.
#[derive(Clone, Copy)]
pub(super) struct LiftDone<'d> {
    pub(super) day: Day,
    pub(super) lift: &'d LiftSession,
    pub(super) kept: &'d Done,
}

impl<'a> Diary<'a> {
    /// Reads and folds a log.
    ///
    /// # Errors
    /// What [`fold`](crate::progression::fold) reports.
    pub fn of(log: &'a Log) -> Result<Diary<'a>, Error> {
        log.check()?;
        Diary::of_told(log, log.as_told()?)
    }

    /// The same of the events of a log which count.
    fn of_told(log: &'a Log, told: Effective<'a>) -> Result<Diary<'a>, Error> {
        let (mut done, mut passed): (Vec<Done>, Vec<State>) = (Vec::new(), Vec::new());
        let state = fold_told(log, &told, |state, at, event, when| {
            if when == When::Before && at.is_multiple_of(STRIDE) {
                passed.push(state.clone());
            }
            let EventKind::SessionRecorded(session) = &event.kind else { return };
            match when {
                When::Before => done.extend(found(state, at, event.day, session)),
                When::After => left(&mut done, state, at, event.sequence, session),
            }
        })?;
        let Effective { events, corrected, .. } = told;
        let mut of_lift: BTreeMap<Name, Vec<usize>> = BTreeMap::new();
        for (number, kept) in done.iter().enumerate() {
            if let Some(lift) = lift_of(&events, kept) {
                note(&mut of_lift, &lift.lift, number);
            }
        }
        Ok(Diary { head: Cow::Borrowed(log), events, corrected, state, done, of_lift, passed })
    }

    /// The same with all that it read its own, for a host that keeps a log open: asked many questions, read once.
    ///
    /// ```
    /// use bismar::answers::Diary;
    /// use bismar::quantity::{Mass, Name};
    /// use bismar::record::{Event, EventKind, Lifter, Log};
    ///
    /// let mut diary = {
    ///     let log = Log::new(Lifter::new(Name::new("A")?));
    ///     Diary::of(&log)?.into_owned()
    /// };
    /// let weighed = EventKind::BodyMassRecorded(Mass::from_kg(80.0)?);
    /// diary.add(&Event::new(1, "2026-03-02".parse()?, weighed))?;
    /// assert_eq!(diary.state().last().map(|(_, number)| number), Some(1));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    #[must_use]
    pub fn into_owned(self) -> Diary<'static> {
        let head = Cow::Owned(self.log_of(Vec::new()));
        let Diary { events, corrected, state, done, of_lift, passed, .. } = self;
        let events = events.into_iter().map(|event| Cow::Owned(event.into_owned())).collect();
        Diary { head, events, corrected, state, done, of_lift, passed }
    }

    /// Takes one more event at the end, without reading the others again: the same as reading a log that has it too.
    ///
    /// # Errors
    /// What [`State::apply`] reports, `needs_refold` among it for what changes the past: read the log anew. What is refused
    /// changes nothing.
    pub fn add(&mut self, event: &Event) -> Result<(), Error> {
        let at = self.events.len();
        let session = match &event.kind {
            EventKind::SessionRecorded(session) => Some(session),
            _ => None,
        };
        let done = session.map(|session| found(&self.state, at, event.day, session)).unwrap_or_default();
        let passed = at.is_multiple_of(STRIDE).then(|| self.state.clone());
        self.state.apply(event)?;
        self.events.push(Cow::Owned(event.clone()));
        self.passed.extend(passed);
        for kept in done {
            if let Some(lift) = lift_of(&self.events, &kept) {
                note(&mut self.of_lift, &lift.lift, self.done.len());
            }
            self.done.push(kept);
        }
        if let Some(session) = session {
            left(&mut self.done, &self.state, at, event.sequence, session);
        }
        Ok(())
    }

    /// The state at the end of that day, as the log up to it leaves it.
    ///
    /// # Errors
    /// None that the whole log does not give.
    pub(super) fn state_on(&self, day: Day) -> Result<State, Error> {
        let events =
            self.events.get(..self.events.partition_point(|event| event.day <= day)).unwrap_or_default();
        // Later answers reach back over the last sessions, never further, so a state before those is as they found it.
        let trained = events
            .iter()
            .enumerate()
            .rev()
            .filter(|(_, event)| matches!(event.kind, EventKind::SessionRecorded(_)));
        let mut last_day: Option<Day> = None;
        let in_reach = trained.enumerate().take_while(|(count, (_, event))| {
            let on_the_last_day = *last_day.get_or_insert(event.day) == event.day;
            *count < OPEN_SESSIONS || on_the_last_day
        });
        let out_of_reach = in_reach.last().map_or(0, |(_, (at, _))| at);
        let before = self.passed.get(out_of_reach / STRIDE).cloned();
        let from = before.as_ref().map_or(0, |_| out_of_reach / STRIDE * STRIDE);
        fold_on(before.unwrap_or_else(|| State::before(&self.head)), from, events, &self.corrected)
    }

    /// The state after the event at that place.
    pub(super) fn state_after(&self, at: usize) -> Result<State, Error> {
        let events = self.events.get(..=at).unwrap_or(&self.events);
        fold_on(State::before(&self.head), 0, events, &self.corrected)
    }

    /// The state after the last event.
    #[must_use]
    pub const fn state(&self) -> &State {
        &self.state
    }

    /// Whose log it is, and of which version; its events are those of the diary.
    pub(super) fn head(&self) -> &Log {
        &self.head
    }

    /// The same of that log, which has some of these events, as they were told.
    pub(super) fn of_some<'b>(&self, log: &'b Log) -> Result<Diary<'b>, Error> {
        Diary::of_told(log, self.as_told(log.events.iter().map(Cow::Borrowed).collect()))
    }

    /// The log with other events, in the same order.
    pub(super) fn log_of(&self, events: Vec<Event>) -> Log {
        let (format, lifter) = (self.head.format.clone(), self.head.lifter.clone());
        Log { format, version: self.head.version, lifter, events }
    }

    /// The events that count, with what of them was told by corrections.
    pub(super) fn told(&self) -> Effective<'_> {
        self.as_told(self.events().map(Cow::Borrowed).collect())
    }

    fn as_told<'b>(&self, events: Vec<Cow<'b, Event>>) -> Effective<'b> {
        Effective { count: events.len() as u32, events, corrected: self.corrected.clone() }
    }

    /// The events that count, in order.
    pub(super) fn events(&self) -> impl DoubleEndedIterator<Item = &Event> {
        self.events.iter().map(AsRef::as_ref)
    }

    /// Every session, in order.
    pub(super) fn sessions(&self) -> impl DoubleEndedIterator<Item = (&Event, &Session)> {
        self.events().filter_map(|event| match &event.kind {
            EventKind::SessionRecorded(session) => Some((event, session)),
            _ => None,
        })
    }

    /// The sessions of one day.
    pub(super) fn sessions_on(&self, day: Day) -> impl Iterator<Item = (&Event, &Session)> {
        let from = self.events.partition_point(|event| event.day < day);
        let events = self.events.get(from..).unwrap_or_default().iter().map(AsRef::as_ref);
        events.take_while(move |event: &&Event| event.day == day).filter_map(|event| match &event.kind {
            EventKind::SessionRecorded(session) => Some((event, session)),
            _ => None,
        })
    }

    /// Every lift of every session, in order.
    pub(super) fn lifts_done(&self) -> impl DoubleEndedIterator<Item = LiftDone<'_>> {
        self.done.iter().filter_map(|kept| self.as_done(kept))
    }

    /// Every session of one lift, in order.
    pub(super) fn sessions_of(&self, lift: &Name) -> impl DoubleEndedIterator<Item = LiftDone<'_>> {
        let of_lift = self.of_lift.get(lift).map(Vec::as_slice).unwrap_or_default();
        of_lift.iter().filter_map(|number| self.as_done(self.done.get(*number)?))
    }

    /// Sets up to that day, of one lift or of all, that belong to what more than one person marked; none where there are no
    /// sets at all.
    pub(super) fn marked_by_several(&self, lift: Option<&Name>, last: Day) -> Option<Vec<&WorkSet>> {
        let end = self.events.partition_point(|event| event.day <= last);
        let kept: Vec<&Done> = match lift {
            None => self.done.iter().take_while(|kept| kept.event < end).collect(),
            Some(lift) => {
                let of_lift = self.of_lift.get(lift).map(Vec::as_slice).unwrap_or_default();
                let kept = of_lift.iter().filter_map(|number| self.done.get(*number));
                kept.take_while(|kept| kept.event < end).collect()
            }
        };
        kept.iter().any(|kept| kept.marked != Marked::NoSets).then(|| {
            let several = kept.iter().filter(|kept| kept.marked == Marked::BySeveral);
            several.filter_map(|kept| lift_of(&self.events, kept)).flat_map(|lift| &lift.sets).collect()
        })
    }

    fn as_done<'d>(&'d self, kept: &'d Done) -> Option<LiftDone<'d>> {
        let day = self.events.get(kept.event)?.day;
        Some(LiftDone { day, lift: lift_of(&self.events, kept)?, kept })
    }

    /// Day of the first session.
    pub(super) fn first_session(&self) -> Option<Day> {
        self.sessions().next().map(|(event, _)| event.day)
    }

    /// Refuses a day before the last event: nobody may look back past a stop.
    pub(super) fn check_today(&self, today: Day) -> Result<(), Error> {
        super::check_today(&self.state, today)
    }

    /// Refuses a lift that the log never named.
    pub(super) fn check_lift(&self, id: &Name) -> Result<(), Error> {
        let laid_by = self.state.laid_by().any(|(kept, _)| kept == id);
        let ever = laid_by || self.state.lifts().chain(self.state.set_aside()).any(|lift| lift.id() == id);
        match self.state.parameters() {
            Some(all) if !ever => all.check_id(id),
            _ => Ok(()),
        }
    }

    /// Whether a stop of everything or of a region is in force.
    pub(super) fn is_stopped(&self) -> bool {
        self.state.stop().is_some() || self.state.regions().iter().any(|region| region.stop.is_some())
    }

    /// What to show beside any answer: a stop comes first.
    pub(super) fn cautions(&self, today: Day) -> Vec<Caution> {
        super::cautions_of(&self.state, today)
    }
}

impl LiftDone<'_> {
    /// Where it was done: as recorded, else where the day asked for it.
    pub(super) const fn place(&self) -> Place {
        self.kept.place
    }

    /// The same by rung, range and tempo as they were then.
    pub(super) fn named_place(&self) -> Option<NamedPlace> {
        Some(self.kept.parameters.lift(&self.lift.lift)?.named_place(self.place()))
    }

    /// Whether it passed.
    pub(super) fn passed(&self) -> bool {
        self.kept.sitting.is_some_and(|sitting| sitting.outcome == Outcome::Pass)
    }

    /// Ids of the regions it loaded.
    pub(super) fn regions(&self) -> &[Name] {
        let set = self.kept.parameters.lift(&self.lift.lift);
        set.map(|set| set.regions.as_slice()).unwrap_or_default()
    }

    /// Whether its implement helps, so that its loads lie below zero.
    pub(super) const fn is_helped(&self) -> bool {
        self.kept.helped
    }

    /// What a set moved: the load, or the body less the help; none where nobody was weighed, or the help outweighs.
    pub(super) fn moved(&self, load: Mass) -> Option<Mass> {
        if !self.is_helped() {
            return Some(load);
        }
        let (_, body) = self.kept.body?;
        body.plus(load).ok().filter(|moved| *moved >= Mass::ZERO)
    }
}

/// Notes one more session of a lift by its place among all.
fn note(of_lift: &mut BTreeMap<Name, Vec<usize>>, lift: &Name, number: usize) {
    match of_lift.get_mut(lift) {
        Some(all) => all.push(number),
        None => drop(of_lift.insert(lift.clone(), alloc::vec![number])),
    }
}

/// The lift of the session that is kept.
fn lift_of<'e>(events: &'e [Cow<'_, Event>], kept: &Done) -> Option<&'e LiftSession> {
    let EventKind::SessionRecorded(session) = &events.get(kept.event)?.kind else { return None };
    session.lifts.get(kept.lift)
}

/// What the lifts of a session found.
fn found(state: &State, at: usize, day: Day, session: &Session) -> Vec<Done> {
    let lifts = session.lifts.iter().enumerate();
    lifts
        .filter_map(|(lift, done)| {
            let (parameters, stands) = (state.all()?, state.lift_state(&done.lift)?);
            let implement = parameters.implement(&stands.parameters().implement);
            let helped = matches!(implement, Some(Implement::Assistance(_)));
            Some(Done {
                event: at,
                lift,
                helped,
                failed: done.sets.iter().any(|set| set.failed),
                marked: Marked::of(done),
                parameters,
                place: done.place.unwrap_or(stands.grant().place),
                class: state.class_on(day),
                sitting: None,
                body: state.body_mass(),
            })
        })
        .collect()
}

/// What the session left of its lifts.
fn left(done: &mut [Done], state: &State, at: usize, sequence: u32, session: &Session) {
    for kept in done.iter_mut().rev().take_while(|kept| kept.event == at) {
        let id = session.lifts.get(kept.lift).map(|lift| &lift.lift);
        let now = id.and_then(|id| state.lift_state(id)).map(|lift| lift.now());
        kept.place = now.and_then(|now| now.last_place).unwrap_or(kept.place);
        kept.sitting =
            now.and_then(|now| now.sittings.last()).copied().filter(|last| last.session == sequence);
    }
}
