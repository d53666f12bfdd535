//! What was done, what it came to, and how the granted load moved, in the order in which it counts.

use alloc::vec::Vec;

use super::course::Course;
use super::diary::Diary;
use super::lacking::Lacking;
use crate::caution::Caution;
use crate::error::Error;
use crate::gate::Outcome;
use crate::progression::Status;
use crate::quantity::{Day, Mass, Name};
use crate::reason::{NamedPlace, Reason};
use crate::record::Log;

/// A session that was done.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SessionDone {
    /// Number of its event.
    pub event: u32,
    /// Its day.
    pub day: Day,
    /// Days from it to the day asked about.
    pub days_ago: i32,
    /// Its lifts, in order.
    pub lifts: Vec<LiftOutcome>,
}

/// What one lift of a session came to.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LiftOutcome {
    /// The lift.
    pub lift: Name,
    /// Where it was done; absent where its parameters were not known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub place: Option<NamedPlace>,
    /// Heaviest work set; absent without one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub load: Option<Mass>,
    /// A load of it is one of two, one in each hand.
    pub each_hand: bool,
    /// What it came to in the end: what was told the next morning may take a pass back. Of a session that counted toward no gate, what
    /// its marks say, whoever gave them; with a set that was missed, a fail.
    pub outcome: Outcome,
    /// By its marks it passed, and an answer about its pain took that back.
    pub taken_back: bool,
    /// Repetitions that were acceptable, of those scored.
    pub acceptable: u32,
    /// Repetitions scored.
    pub scored: u32,
    /// The criterion that was lost most.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub weakest: Option<Name>,
}

/// Where a lift stood after an event that moved it, or in which it was trained: as the log up to that event had it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GrantStep {
    /// Number of the event.
    pub event: u32,
    /// Its day.
    pub day: Day,
    /// Days from the first event of the log to it, for drawing.
    pub days_in: i32,
    /// Kind of the event, by the name that logs have for it.
    pub cause: &'static str,
    /// The lift.
    pub lift: Name,
    /// The granted place.
    pub place: NamedPlace,
    /// The granted load.
    pub load: Mass,
    /// It is one of two, one in each hand.
    pub each_hand: bool,
    /// Where the lift stands in its course.
    pub status: Status,
}

/// The history of a lift, or of all.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct History {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Every session, oldest first.
    pub sessions: Vec<SessionDone>,
    /// Where each lift stood, oldest first.
    pub steps: Vec<GrantStep>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// What was done of a lift (of all where none is named), what did it come to, and how did what is granted move?
///
/// # Rules
/// The log is followed event by event, as it was known then: a later answer changes where a lift stands from its own event on, while
/// the outcome of a session is the one that holds in the end. A step is told for each event after which a lift stands at another
/// load or in another state, and for each session of it.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; `unknown_lift` for a lift that the log never named.
///
/// # Examples
/// ```
/// use bismar::answers::{FirstLift, begin, history};
/// use bismar::loading::{Bar, Implement, Stock};
/// use bismar::quantity::{Day, Mass, Name, Reps};
/// use bismar::record::{Event, EventKind, LiftSession, Lifter, Session, WorkSet};
///
/// let (bar, load, day): (_, _, Day) = (Name::new("bar")?, Mass::from_kg(20.0)?, "2026-01-05".parse()?);
/// let bars = [Implement::Bar(Bar::new(bar.clone(), load, Mass::ZERO)?)];
/// let (lifter, lift) = (Lifter::new(Name::new("A")?), Name::new("seated press")?);
/// let first = [FirstLift::new(lift.as_str(), bar, load)];
/// let mut log = begin(&lifter, day, &first, &bars, &Stock::new(Vec::new())?, &[], None)?.log;
/// let done = LiftSession::as_granted(lift.clone(), vec![WorkSet::done(load, Reps::whole(5)?)]);
/// log.events.push(Event::new(2, day, EventKind::SessionRecorded(Session::new(vec![done]))));
///
/// let found = history(&log, Some(&lift), day)?;
/// assert_eq!(found.sessions[0].lifts[0].load, Some(load));
/// let steps: Vec<_> = found.steps.iter().map(|step| (step.cause, step.load)).collect();
/// assert_eq!(steps, [("parameters_changed", load), ("session_recorded", load)]);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn history(log: &Log, lift: Option<&Name>, today: Day) -> Result<History, Error> {
    Diary::of(log)?.history(lift, today)
}

impl Diary<'_> {
    /// What was done of a lift, or of all? See [`history`]; a host that keeps a log open keeps its [`Course`] too.
    ///
    /// # Errors
    /// `before_last_event`; `unknown_lift`.
    pub fn history(&self, lift: Option<&Name>, today: Day) -> Result<History, Error> {
        Course::default().follow(self)?.history(self, lift, today)
    }
}

impl Course {
    /// The history of that diary, which it has followed to its end. See [`history`].
    ///
    /// # Errors
    /// `before_last_event`; `unknown_lift`; `needs_refold` where it has not followed all of the diary.
    pub fn history(&self, diary: &Diary<'_>, lift: Option<&Name>, today: Day) -> Result<History, Error> {
        self.check_at_the_end(diary)?;
        diary.check_today(today)?;
        lift.map_or(Ok(()), |lift| diary.check_lift(lift))?;
        let asked = |one: &Name| lift.is_none_or(|lift| lift == one);
        let sessions = self.sessions().iter().filter_map(|session| {
            let lifts: Vec<_> = session.lifts.iter().filter(|one| asked(&one.lift)).cloned().collect();
            let (event, day, days_ago) = (session.event, session.day, today.since(session.day));
            (lift.is_none() || !lifts.is_empty()).then_some(SessionDone { event, day, days_ago, lifts })
        });
        let sessions: Vec<SessionDone> = sessions.collect();
        let none = || lift.map_or(Lacking::Session, |lift| Lacking::SessionOf(lift.clone()));
        Ok(History {
            stops: diary.state().stops_on(today),
            today,
            missing: sessions.is_empty().then(none).into_iter().collect(),
            sessions,
            steps: self.steps().iter().filter(|step| asked(&step.lift)).cloned().collect(),
            cautions: diary.cautions(today),
        })
    }
}
