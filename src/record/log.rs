//! The log of one lifter: read whole or not at all, put in order, corrections applied.

use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::correction::Chains;
use super::event::{Event, EventKind};
use super::plan::check_format;
use super::session::at_most;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Name};

/// The format name that every log carries.
pub const FORMAT: &str = "bismar-log";
/// The version of logs that this library writes and reads.
pub const VERSION: u32 = 1;
/// The most events of one log: far more than a lifetime of training.
pub const MAX_EVENTS: usize = 200_000;

/// Whose log it is.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Lifter {
    /// An id the host chooses.
    pub id: Name,
    /// Day of birth, for the rules that depend on age.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub born: Option<Day>,
    /// An age band instead, where the day of birth is not to be told. Where neither is known, the rules take the older.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub age: Option<AgeBand>,
    /// These are invented data.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "core::ops::Not::not"))]
    pub invented: bool,
}

/// Between which ages somebody was on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct AgeBand {
    /// Years at least.
    pub from: u8,
    /// Years at most.
    pub to: u8,
    /// On that day.
    pub on: Day,
}

impl AgeBand {
    /// Between two ages, in years, on that day.
    #[must_use]
    pub fn new(from: u8, to: u8, on: Day) -> AgeBand {
        AgeBand { from, to, on }
    }
}

impl Lifter {
    /// A lifter of whom nothing but an id is known.
    #[must_use]
    pub const fn new(id: Name) -> Lifter {
        Lifter { id, born: None, age: None, invented: false }
    }

    /// The greatest age in whole years that the lifter may have on that day; none where nothing is known.
    #[must_use]
    pub fn oldest_on(&self, day: Day) -> Option<i32> {
        let years = |from: Day| {
            let ((year, month, date), (then, from_month, from_date)) = (day.calendar(), from.calendar());
            year - then - i32::from((month, date) < (from_month, from_date))
        };
        match (self.born, self.age) {
            (Some(born), _) => Some(years(born)),
            // Whoever was that old may have turned a year older the next day.
            (None, Some(band)) => Some(i32::from(band.to) + years(band.on) + 1),
            (None, None) => None,
        }
    }

    pub(crate) fn check(&self) -> Result<(), Error> {
        match self.age {
            Some(band) if band.from > band.to || band.to > 130 => {
                let rule = Allowed::rule("from <= to <= 130");
                Err(Error::new(Code::IntervalReversed, "to", band.to, rule).within("age").within("lifter"))
            }
            _ => Ok(()),
        }
    }

    /// Nobody is born after the day of an event, nor after one on which a correction puts another.
    pub(crate) fn check_days_of(&self, event: &Event) -> Result<(), Error> {
        self.check_born_by(event.day)?;
        match &event.kind {
            EventKind::Correction(correction) => correction.day.map_or(Ok(()), |day| self.check_born_by(day)),
            _ => Ok(()),
        }
    }

    /// Nobody is born after a day on which they train.
    pub(crate) fn check_born_by(&self, day: Day) -> Result<(), Error> {
        match self.born {
            Some(born) if born > day => {
                let rule = Allowed::Rule(alloc::format!("{day} or earlier, the day of an event").into());
                let given = alloc::format!("{born}");
                Err(Error::new(Code::BornLater, "born", given, rule).within("lifter"))
            }
            _ => Ok(()),
        }
    }
}

/// One lifter's training log.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
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

    /// Writes the log as JSON text that [`Log::from_json`] reads.
    ///
    /// # Errors
    /// None in practice: everything in a log can be written.
    #[cfg(feature = "json")]
    pub fn to_json(&self) -> Result<String, Error> {
        Ok(crate::value::Value::write(self)?.to_json())
    }

    /// Checks every event by itself. A log of a newer version is read as far as this library knows its kinds of event;
    /// a kind that it does not know is an error in a log of its own version.
    ///
    /// # Errors
    /// `wrong_format`, `too_many`, `unknown_event`, and what an event reports, tied to its number.
    pub fn check(&self) -> Result<(), Error> {
        check_format(&self.format, FORMAT, self.version)?;
        at_most("events", self.events.len(), MAX_EVENTS)?;
        self.lifter.check()?;
        for (at, event) in self.events.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("events[{at}]"));
            let checked = event.check_in(self.version).map_err(inside);
            checked
                .and_then(|()| self.lifter.check_days_of(event))
                .map_err(|error| error.at_event(event.sequence))?;
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
        self.as_told().map(|told| told.events)
    }

    /// The same, with what else the log tells of them.
    pub(crate) fn as_told(&self) -> Result<Effective<'_>, Error> {
        let events = distinct(&self.events)?;
        let count = events.len() as u32;
        let chains = Chains::of(&events)?;
        let (mut effective, mut corrected) = (Vec::with_capacity(events.len()), Vec::new());
        for event in events {
            if matches!(event.kind, EventKind::Correction(_)) {
                continue;
            }
            let Some(last) = chains.last_of(event.sequence) else {
                effective.push(Cow::Borrowed(event));
                continue;
            };
            effective.extend(last.applied_to(event).map(Cow::Owned));
            if last.told() != event.sequence || last.is_unread() {
                corrected.push((event.sequence, last.told(), last.is_unread()));
            }
        }
        effective.sort_by_key(|event| (event.day, event.sequence));
        Ok(Effective { events: effective, count, corrected: Corrected(corrected) })
    }
}

/// The events of a log that count, and what it tells of how they were told.
#[derive(Clone, Debug)]
pub(crate) struct Effective<'a> {
    /// In order of day and number.
    pub(crate) events: Vec<Cow<'a, Event>>,
    /// How many different events the log tells, corrections too.
    pub(crate) count: u32,
    pub(crate) corrected: Corrected,
}

/// Of corrected events that open more than before (a stop, an ask, an illness, a limit), the number of the correction: a word that
/// was given before says nothing of it. And whether a correction of a kind that is not known here stands beside one that opens
/// something: that stays, and the unknown is counted.
#[derive(Clone, Debug, Default)]
pub(crate) struct Corrected(Vec<(u32, u32, bool)>);

impl Corrected {
    /// Number under which what the event with that number opens was told: its own, or that of the correction that says it.
    pub(crate) fn told(&self, sequence: u32) -> u32 {
        self.of(sequence).map_or(sequence, |(_, told, _)| *told)
    }

    /// Whether a correction of the event with that number is of a kind that is not known here.
    pub(crate) fn is_unread(&self, sequence: u32) -> bool {
        self.of(sequence).is_some_and(|(_, _, unread)| *unread)
    }

    /// How many such there are.
    pub(crate) fn unread(&self) -> u32 {
        self.0.iter().filter(|(_, _, unread)| *unread).count() as u32
    }

    /// Whether anything of the event with that number was said by a correction that the event itself does not tell.
    pub(crate) fn concerns(&self, sequence: u32) -> bool {
        self.of(sequence).is_some()
    }

    fn of(&self, sequence: u32) -> Option<&(u32, u32, bool)> {
        let at = self.0.binary_search_by_key(&sequence, |(first, _, _)| *first).ok()?;
        self.0.get(at)
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
