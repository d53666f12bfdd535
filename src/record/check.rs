//! What an event says must hold together before it is taken.

#[cfg(feature = "json")]
use alloc::string::String;

use super::absence::Layoff;
use super::event::{Event, EventKind};
use super::health::one_answer_a_region;
use super::log::VERSION;
use crate::error::{Allowed, Code, Error};

/// The longest text a host may attach to an event, in characters.
const LONGEST_NOTE: usize = 2_000;

impl Event {
    /// Reads one event of this version from JSON text and checks it: the strict door for a service that takes events one
    /// by one.
    ///
    /// # Errors
    /// What reading and checking report; `unknown_event` for a kind that this version does not have.
    #[cfg(feature = "json")]
    pub fn from_json(text: &str) -> Result<Event, Error> {
        let event: Event = crate::value::Value::from_json(text)?.read()?;
        event.check().map_err(|error| error.at_event(event.sequence))?;
        Ok(event)
    }

    /// Writes the event as JSON text that [`Event::from_json`] reads.
    ///
    /// # Errors
    /// None in practice.
    #[cfg(feature = "json")]
    pub fn to_json(&self) -> Result<String, Error> {
        Ok(crate::value::Value::write(self)?.to_json())
    }

    /// Checks what the parts alone cannot, for a log of this version.
    ///
    /// # Errors
    /// What the part of its kind reports; `unknown_event` for a kind that this version does not have; `too_long` for the
    /// host's note.
    pub fn check(&self) -> Result<(), Error> {
        self.check_in(VERSION)
    }

    /// The same for a log of that version.
    pub(crate) fn check_in(&self, version: u32) -> Result<(), Error> {
        if let (EventKind::Unknown(unknown), true) = (self.kind.told(), version <= VERSION) {
            let known = EventKind::NAMES.join(", ");
            return Err(Error::new(
                Code::UnknownEvent,
                "kind",
                unknown.kind.as_str(),
                Allowed::Rule(known.into()),
            ));
        }
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
    /// What is told to have happened: of a correction, what stands in the place of the event.
    fn told(&self) -> &EventKind {
        match self {
            EventKind::Correction(correction) => correction.with.as_deref().unwrap_or(self),
            _ => self,
        }
    }

    fn check(&self) -> Result<(), Error> {
        match self {
            EventKind::SessionRecorded(session) => session.check(),
            EventKind::ParametersChanged(parameters) => parameters.check(),
            EventKind::NextDayReport(report) => {
                one_answer_a_region(report.pain.as_deref().unwrap_or_default())
            }
            EventKind::DayReport(report) => report.check(),
            EventKind::AskAnswered(answer) => answer.check(),
            EventKind::SymptomReport(report) if report.signs.is_empty() => {
                Err(Error::plain(Code::EmptyList, "signs"))
            }
            EventKind::UsualPainAgreed(usual) => usual.check(),
            EventKind::ClearanceRecorded(clearance) => clearance.check(),
            EventKind::BodyMassRecorded(mass) => {
                crate::numeric::within(Code::OutOfRange, "", mass.kg(), 20.0, 400.0, "kg").map(drop)
            }
            EventKind::FunctionTested(test) => {
                crate::numeric::within(Code::OutOfRange, "result", test.result, 0.0, 1000.0, "").map(drop)
            }
            EventKind::LayoffNoted(Layoff { from, to: Some(to), .. }) if to < from => {
                let rule = Allowed::Rule(alloc::format!("{from} or later").into());
                Err(Error::new(Code::IntervalReversed, "to", alloc::format!("{to}"), rule))
            }
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
