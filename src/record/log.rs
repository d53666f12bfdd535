//! The log of one lifter: read whole or not at all, put in order, corrections applied.

use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec::Vec;

use super::correction::Chains;
use super::event::{Event, EventKind};
use super::health::one_answer_a_region;
use super::plan::check_header;
use super::session::at_most;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Name};

/// The format name that every log carries.
pub const FORMAT: &str = "bismar-log";
/// The version of logs that this library writes and reads.
pub const VERSION: u32 = 1;
/// The most events of one log: far more than a lifetime of training.
pub const MAX_EVENTS: usize = 200_000;
/// The longest text a host may attach to an event, in characters.
const LONGEST_NOTE: usize = 2_000;

/// Whose log it is.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Lifter {
    /// An id the host chooses.
    pub id: Name,
    /// Day of birth, for the rules that depend on age.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub born: Option<Day>,
    /// These are invented data.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub invented: bool,
}

/// One lifter's training log.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Log {
    /// Always `bismar-log`.
    pub format: String,
    /// Version of the format.
    pub version: u32,
    /// Whose log it is.
    pub lifter: Lifter,
    /// The events, in any order.
    pub events: Vec<Event>,
}

impl Log {
    /// An empty log.
    #[must_use]
    pub fn new(lifter: Lifter) -> Log {
        Log { format: FORMAT.into(), version: VERSION, lifter, events: Vec::new() }
    }

    /// Reads a log from JSON text and checks it.
    ///
    /// # Errors
    /// What reading and checking report, with the event's number and the path to the field. Nothing is
    /// loaded half.
    #[cfg(feature = "json")]
    pub fn from_json(text: &str) -> Result<Log, Error> {
        use crate::value::Value;
        let document = Value::from_json(text)?;
        let log: Log = document.read().map_err(|error: Error| tie_to_event(error, &document))?;
        log.check()?;
        Ok(log)
    }

    /// Checks every event by itself.
    ///
    /// # Errors
    /// `wrong_format`, `newer_version`, `too_many`, and what an event reports, tied to its number.
    pub fn check(&self) -> Result<(), Error> {
        check_header(&self.format, FORMAT, self.version, VERSION)?;
        at_most("events", self.events.len(), MAX_EVENTS)?;
        for (at, event) in self.events.iter().enumerate() {
            event
                .check()
                .map_err(|error| error.within(&alloc::format!("events[{at}]")).at_event(event.sequence))?;
        }
        Ok(())
    }

    /// The events that count, in order of day and number: the same event twice counts once, and a corrected
    /// event is replaced by what its correction says. The originals stay in the log.
    ///
    /// # Errors
    /// `sequence_reused` where two different events share a number; `correction_of_nothing` and
    /// `correction_cycle`.
    pub fn effective(&self) -> Result<Vec<Cow<'_, Event>>, Error> {
        let events = distinct(&self.events)?;
        let chains = Chains::of(&events)?;
        let mut effective = Vec::with_capacity(events.len());
        for event in events {
            if matches!(event.kind, EventKind::Correction(_)) {
                continue;
            }
            match chains.last_of(event.sequence) {
                None => effective.push(Cow::Borrowed(event)),
                Some(last) => effective.extend(last.applied_to(event).map(Cow::Owned)),
            }
        }
        effective.sort_by_key(|event| (event.day, event.sequence));
        Ok(effective)
    }
}

/// Each number once; the same event twice counts once.
fn distinct(events: &[Event]) -> Result<Vec<&Event>, Error> {
    let mut sorted: Vec<&Event> = events.iter().collect();
    sorted.sort_by_key(|event| event.sequence);
    let mut kept: Vec<&Event> = Vec::with_capacity(sorted.len());
    for event in sorted {
        match kept.last() {
            Some(last) if last.sequence == event.sequence && *last == event => {}
            Some(last) if last.sequence == event.sequence => {
                return Err(Error::new(Code::SequenceReused, "sequence", event.sequence, Allowed::Unstated)
                    .at_event(event.sequence));
            }
            _ => kept.push(event),
        }
    }
    Ok(kept)
}

impl Event {
    /// Checks what the parts alone cannot.
    ///
    /// # Errors
    /// What the part of its kind reports; `too_long` for the host's note.
    pub fn check(&self) -> Result<(), Error> {
        if let Some(note) = &self.note
            && note.chars().count() > LONGEST_NOTE
        {
            return Err(Error::range(
                Code::TooLong,
                "note",
                note.chars().count(),
                0.0,
                LONGEST_NOTE as f64,
                "characters",
            ));
        }
        self.kind.check().map_err(|error| error.within(self.kind.name()).within("kind"))
    }
}

impl EventKind {
    fn check(&self) -> Result<(), Error> {
        match self {
            EventKind::SessionRecorded(session) => session.check(),
            EventKind::ParametersChanged(parameters) => parameters.check(),
            EventKind::NextDayReport(report) => one_answer_a_region(&report.pain),
            EventKind::DayReport(report) => {
                one_answer_a_region(report.pain.as_deref().unwrap_or_default())?;
                report.check()
            }
            EventKind::SymptomReport(report) if report.signs.is_empty() => {
                Err(Error::plain(Code::EmptyList, "signs"))
            }
            EventKind::UsualPainAgreed(usual) => usual.check(),
            EventKind::ClearanceRecorded(clearance) => {
                at_most("limits", clearance.limits.len(), super::health::MOST_LIMITS)
            }
            EventKind::BodyMassRecorded(mass) => {
                crate::numeric::within(Code::OutOfRange, "", mass.kg(), 20.0, 400.0, "kg").map(drop)
            }
            EventKind::FunctionTested(test) => {
                crate::numeric::within(Code::OutOfRange, "result", test.result, 0.0, 1000.0, "").map(drop)
            }
            EventKind::LayoffNoted(layoff) if layoff.to.is_some_and(|to| to < layoff.from) => Err(
                Error::new(Code::IntervalReversed, "to", layoff.from.number(), Allowed::rule("from <= to")),
            ),
            EventKind::Correction(correction) => match correction.with.as_deref() {
                Some(EventKind::Correction(_)) => Err(Error::new(
                    Code::CorrectionCycle,
                    "with",
                    correction.replaces,
                    Allowed::rule("not a correction"),
                )),
                Some(kind) => kind.check().map_err(|error| error.within(kind.name()).within("with")),
                None => Ok(()),
            },
            _ => Ok(()),
        }
    }
}

impl super::health::UsualPain {
    fn check(&self) -> Result<(), Error> {
        let highest = if self.clinician { 3 } else { 2 };
        if self.level.score() > highest {
            return Err(Error::range(
                Code::OutOfRange,
                "level",
                self.level.score(),
                0.0,
                f64::from(highest),
                "",
            ));
        }
        Ok(())
    }
}

/// Finds the number of the event that a reading error's path points into.
#[cfg(feature = "json")]
fn tie_to_event(error: Error, document: &crate::value::Value) -> Error {
    use crate::value::Value;
    let at = error
        .field()
        .strip_prefix("events[")
        .and_then(|rest| rest.split(']').next())
        .and_then(|at| at.parse().ok());
    let Some(Value::List(events)) = document.field("events") else { return error };
    match at.and_then(|at: usize| events.get(at)).and_then(|event| event.field("sequence")) {
        Some(Value::Number(sequence)) if (0.0..=f64::from(u32::MAX)).contains(sequence) => {
            error.at_event(*sequence as u32)
        }
        _ => error,
    }
}
