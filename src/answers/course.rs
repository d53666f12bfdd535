//! A log followed event by event: what each session came to, and where each lift stood after each event.

use alloc::vec::Vec;

use super::diary::Diary;
use super::history::{GrantStep, LiftOutcome, SessionDone};
use crate::error::{Code, Error};
use crate::gate::{Outcome, SetMarks, session_pass_of};
use crate::progression::{SITTINGS, State, Status};
use crate::quantity::{Day, Mass, Name};
use crate::record::{Effective, Event, EventKind, LiftSession, Parameters, Session, WorkSet};

/// A log as it was followed, event by event, for its [`history`](super::history()): kept beside a [`Diary`] that grows, it is followed on
/// from where it ended.
///
/// ```
/// use bismar::answers::{Course, Diary};
/// use bismar::quantity::{Mass, Name};
/// use bismar::record::{Event, EventKind, Lifter, Log};
///
/// let mut diary = Diary::of(&Log::new(Lifter::new(Name::new("A")?)))?.into_owned();
/// let course = Course::default().follow(&diary)?;
/// let day = "2026-03-02".parse()?;
/// diary.add(&Event::new(1, day, EventKind::BodyMassRecorded(Mass::from_kg(80.0)?)))?;
/// assert!(course.history(&diary, None, day).is_err()); // one event behind
/// assert!(course.follow(&diary)?.history(&diary, None, day)?.sessions.is_empty());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct Course {
    taken: usize,
    first: Option<Day>,
    /// The state after what was taken; none before the first event.
    state: Option<State>,
    sessions: Vec<SessionDone>,
    steps: Vec<GrantStep>,
    /// Where each lift stood last.
    stood: Vec<(Name, Mass, &'static str)>,
}

impl Course {
    /// Follows the events of the diary that were not taken yet. It is the same diary, grown by events at its end: one whose past was
    /// changed is followed from the beginning, by a course of its own.
    ///
    /// # Errors
    /// None that the diary itself has not given, but for `needs_refold` of a diary with fewer events.
    pub fn follow(mut self, diary: &Diary<'_>) -> Result<Course, Error> {
        let mut state = self.state.take().unwrap_or_else(|| State::before(diary.head()));
        let Effective { events, corrected, .. } = diary.told();
        let later = events.get(self.taken..).ok_or_else(behind)?;
        self.first = self.first.or_else(|| events.first().map(|event| event.day));
        for (at, event) in (self.taken..).zip(later.iter().map(AsRef::as_ref)) {
            let mut before = None;
            if corrected.concerns(event.sequence) || state.changes_the_past(event) {
                // It reaches back, or was told later than it is numbered: the state of the whole beginning, folded anew.
                before = Some(core::mem::replace(&mut state, diary.state_after(at)?));
            } else {
                state = state.applied(event)?;
            }
            if let EventKind::SessionRecorded(session) = &event.kind {
                self.sessions.push(done(event, session, &state));
            }
            if let Some(before) = &before {
                self.judge_again(event, before, &state);
            }
            self.note_steps(event, &state);
        }
        self.taken = events.len();
        self.state = Some(state);
        Ok(self)
    }

    pub(super) fn check_at_the_end(&self, diary: &Diary<'_>) -> Result<(), Error> {
        if self.taken == diary.events().count() { Ok(()) } else { Err(behind()) }
    }

    pub(super) fn sessions(&self) -> &[SessionDone] {
        &self.sessions
    }

    pub(super) fn steps(&self) -> &[GrantStep] {
        &self.steps
    }

    /// Judges the last sessions by the state that came of an event that reaches back: more of them than any can reach.
    fn judge_again(&mut self, event: &Event, before: &State, after: &State) {
        let spoken_of = spoken_of(&event.kind, &self.sessions);
        for session in self.sessions.iter_mut().rev().take(SITTINGS) {
            session.judge(before, after, spoken_of == Some(session.day));
        }
    }

    /// Lifts that stand elsewhere than before, or were trained.
    fn note_steps(&mut self, event: &Event, state: &State) {
        let days_in = self.first.map_or(0, |first| event.day.since(first));
        let trained = |lift: &Name| match &event.kind {
            EventKind::SessionRecorded(session) => session.lifts.iter().any(|done| done.lift == *lift),
            _ => false,
        };
        let mut stood = Vec::new();
        for lift in state.lifts() {
            let (grant, status): (_, &Status) = (lift.grant(), lift.status());
            let now = (lift.id().clone(), grant.load(), status.as_str());
            if trained(lift.id()) || !self.stood.contains(&now) {
                self.steps.push(GrantStep {
                    event: event.sequence,
                    day: event.day,
                    days_in,
                    cause: event.kind.name(),
                    lift: lift.id().clone(),
                    place: lift.parameters().named_place(grant.place),
                    load: grant.load(),
                    each_hand: is_each_hand(state.parameters(), lift.id()),
                    status: status.clone(),
                });
            }
            stood.push(now);
        }
        self.stood = stood;
    }
}

fn behind() -> Error {
    Error::plain(Code::NeedsRefold, "course")
}

/// What a session of a lift came to for its gate, as the state has it.
fn outcome(state: &State, lift: &Name, session: u32) -> Option<Outcome> {
    let sittings = &state.lift_state(lift)?.now().sittings;
    sittings.iter().rev().find(|sitting| sitting.session == session).map(|sitting| sitting.outcome)
}

/// The day of training that an answer about pain speaks of.
fn spoken_of(kind: &EventKind, sessions: &[SessionDone]) -> Option<Day> {
    let mut sessions = sessions.iter().rev();
    let of = match kind {
        EventKind::NextDayReport(report) => sessions.find(|session| session.event == report.session),
        EventKind::DayReport(_) | EventKind::PainReport(_) => sessions.next(),
        _ => None,
    };
    of.map(|session| session.day)
}

impl SessionDone {
    /// Judges it by the state that came of a later event; `spoken_of` is whether that was an answer about its pain.
    fn judge(&mut self, before: &State, after: &State, spoken_of: bool) {
        for lift in &mut self.lifts {
            let passed = outcome(before, &lift.lift, self.event) == Some(Outcome::Pass);
            // A lift that went a step back over it remembers nothing of its old place.
            let now = outcome(after, &lift.lift, self.event)
                .or_else(|| (spoken_of && passed).then_some(Outcome::Fail));
            let Some(now) = now else { continue };
            lift.taken_back = now != Outcome::Pass && (lift.taken_back || (spoken_of && passed));
            lift.outcome = now;
        }
    }
}

/// Whether a load of that lift is one of two, one in each hand.
fn is_each_hand(set: Option<&Parameters>, lift: &Name) -> bool {
    let implement = set.and_then(|all| all.implement(&all.lift(lift)?.implement));
    implement.is_some_and(crate::loading::Implement::is_one_of_two)
}

fn done(event: &Event, session: &Session, state: &State) -> SessionDone {
    let lifts = session.lifts.iter().map(|lift| lift_done(lift, event.sequence, state)).collect();
    // How long ago it was is told when it is asked about.
    SessionDone { event: event.sequence, day: event.day, days_ago: 0, lifts }
}

fn lift_done(lift: &LiftSession, session: u32, state: &State) -> LiftOutcome {
    let set = state.parameters().and_then(|all| all.lift(&lift.lift));
    // As a session is judged for its gate: what anybody saw lost is lost, and a set that nobody marked is not scored.
    let careful: Vec<_> = lift.sets.iter().map(WorkSet::careful_marks_or_unscored).collect();
    let marks: Vec<&SetMarks> = careful.iter().map(AsRef::as_ref).collect();
    let verdict = set.and_then(|set| session_pass_of(&set.pass, &set.criteria, &marks).ok());
    let place = lift.place.or_else(|| state.lift_state(&lift.lift)?.now().last_place);
    let missed = lift.sets.iter().any(|set| set.failed).then_some(Outcome::Fail);
    let judged = missed.or(verdict.as_ref().map(|verdict| verdict.passed));
    LiftOutcome {
        lift: lift.lift.clone(),
        place: set.zip(place).map(|(set, place)| set.named_place(place)),
        load: lift.sets.iter().map(|set| set.load).max(),
        each_hand: is_each_hand(state.parameters(), &lift.lift),
        outcome: outcome(state, &lift.lift, session).or(judged).unwrap_or(Outcome::NotScored),
        taken_back: false,
        acceptable: verdict.as_ref().map_or(0, |verdict| verdict.acceptable),
        scored: verdict.as_ref().map_or(0, |verdict| verdict.scored),
        weakest: verdict.and_then(|verdict| verdict.weakest),
    }
}
