//! Events: what happened, in the order in which it counts.

use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::absence::{Layoff, SessionMissed};
use super::coach::{Advance, BarChanged, Measurement, Move, Override, RoleSet, SignOff};
use super::day::{AskAnswered, DayReport};
use super::health::{Clearance, NextDayReport, PainAnswer, SymptomReport, UsualPain};
use super::parameters::Parameters;
use super::session::Session;
use crate::canonical::{Canonical, canonical_fields, canonical_kinds};
use crate::quantity::{Day, Mass, Name};

/// One event of a log.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Event {
    /// Number of the event, in the order in which events are told; orders events of one day and never repeats. What a word
    /// lifts or closes (a clearance, a sign-off, an answer) was told before it, under a lower number.
    pub sequence: u32,
    /// The day in the lifter's own calendar.
    pub day: Day,
    /// What happened.
    pub kind: EventKind,
    /// The host's own words, never interpreted.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub note: Option<String>,
}

impl Canonical for Event {
    fn put(&self, out: &mut Vec<u8>) {
        // The note is the host's own, and changes nothing.
        let Event { sequence, day, kind, note: _ } = self;
        (*sequence).put(out);
        (*day).put(out);
        kind.put(out);
    }
}

impl Event {
    /// That happened on that day.
    #[must_use]
    pub fn new(sequence: u32, day: Day, kind: EventKind) -> Event {
        Event { sequence, day, kind, note: None }
    }
}

macro_rules! kinds {
    ($($(#[doc = $doc:literal])+ $variant:ident($body:ty) $tag:literal,)+) => {
        /// What happened.
        #[non_exhaustive]
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum EventKind {
            $($(#[doc = $doc])+ $variant($body),)+
            /// A kind of a newer version, in a log that says it is of one: kept, counted, and a block on every upward move.
            #[cfg_attr(feature = "serde", serde(untagged))]
            // Nobody can say here what a newer version writes.
            #[cfg_attr(feature = "schema", schemars(skip, !untagged))]
            Unknown(UnknownEvent),
        }

        impl EventKind {
            /// Every kind by its name in JSON.
            pub const NAMES: &'static [&'static str] = &[$($tag),+];

            /// The kind's name in JSON; `unknown` where this version has none.
            #[must_use]
            pub fn name(&self) -> &'static str {
                match self {
                    $(EventKind::$variant(_) => $tag,)+
                    EventKind::Unknown(_) => "unknown",
                }
            }
        }

        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for EventKind {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<EventKind, D::Error> {
                struct Tagged;

                impl<'de> serde::de::Visitor<'de> for Tagged {
                    type Value = EventKind;

                    fn expecting(&self, out: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                        out.write_str("a map with one named kind of event")
                    }

                    fn visit_map<A: serde::de::MapAccess<'de>>(self, mut map: A) -> Result<EventKind, A::Error> {
                        let one = "exactly one named kind of event";
                        let Some(tag) = map.next_key::<String>()? else {
                            return Err(serde::de::Error::invalid_length(0, &one));
                        };
                        let kind = match tag.as_str() {
                            $($tag => EventKind::$variant(map.next_value()?),)+
                            _ => EventKind::Unknown(UnknownEvent { kind: tag, body: map.next_value()? }),
                        };
                        match map.next_key::<String>()? {
                            None => Ok(kind),
                            Some(_) => Err(serde::de::Error::invalid_length(2, &one)),
                        }
                    }
                }

                from.deserialize_map(Tagged)
            }
        }
    };
}

kinds! {
    /// Training was done.
    SessionRecorded(Session) "session_recorded",
    /// The answers of the morning after.
    NextDayReport(NextDayReport) "next_day_report",
    /// A planned session did not happen.
    SessionMissed(SessionMissed) "session_missed",
    /// A break, noted before or after it.
    LayoffNoted(Layoff) "layoff_noted",
    /// Pain outside a session.
    PainReport(PainAnswer) "pain_report",
    /// An agreed usual level of pain.
    UsualPainAgreed(UsualPain) "usual_pain_agreed",
    /// A sign that stops everything.
    SymptomReport(SymptomReport) "symptom_report",
    /// The day's questions before training.
    DayReport(DayReport) "day_report",
    /// The answer that closes what was asked on an earlier day.
    AskAnswered(AskAnswered) "ask_answered",
    /// The coach signs something off.
    CoachSignOff(SignOff) "coach_sign_off",
    /// The coach overrules the gate, with a reason and an end.
    CoachOverride(Override) "coach_override",
    /// The coach takes the move on offer.
    AdvanceAccepted(Advance) "advance_accepted",
    /// The coach declines the move on offer.
    AdvanceDeclined(Advance) "advance_declined",
    /// The lift moves to another rung of its ladder.
    VariantChanged(Move) "variant_changed",
    /// The lift moves to another range.
    RangeChanged(Move) "range_changed",
    /// Bar or discs changed, so heights or masses differ.
    BarOrDiscsChanged(BarChanged) "bar_or_discs_changed",
    /// Somebody else marks technique from now on.
    RaterChanged(BarChanged) "rater_changed",
    /// Body mass.
    BodyMassRecorded(Mass) "body_mass_recorded",
    /// A clearance was given, limited or refused.
    ClearanceRecorded(Clearance) "clearance_recorded",
    /// The clearance in force ends.
    ClearanceExpired(Name) "clearance_expired",
    /// The whole set of parameters, from now on.
    ParametersChanged(Box<Parameters>) "parameters_changed",
    /// An earlier event was wrong.
    Correction(Correction) "correction",
    /// A block of weeks begins.
    BlockStarted(Name) "block_started",
    /// A block of weeks ends.
    BlockEnded(Name) "block_ended",
    /// What a lift is for in this block.
    RoleSet(RoleSet) "role_set",
    /// A test of everyday function.
    FunctionTested(Measurement) "function_tested",
}

canonical_kinds!(EventKind:
    0 SessionRecorded(body),
    1 NextDayReport(body),
    2 SessionMissed(body),
    3 LayoffNoted(body),
    4 PainReport(body),
    5 UsualPainAgreed(body),
    6 SymptomReport(body),
    7 DayReport(body),
    8 AskAnswered(body),
    9 CoachSignOff(body),
    10 CoachOverride(body),
    11 AdvanceAccepted(body),
    12 AdvanceDeclined(body),
    13 VariantChanged(body),
    14 RangeChanged(body),
    15 BarOrDiscsChanged(body),
    16 RaterChanged(body),
    17 BodyMassRecorded(body),
    18 ClearanceRecorded(body),
    19 ClearanceExpired(body),
    20 ParametersChanged(body),
    21 Correction(body),
    22 BlockStarted(body),
    23 BlockEnded(body),
    24 RoleSet(body),
    25 FunctionTested(body),
    26 Unknown(body)
);
canonical_fields!(UnknownEvent: kind, body);
canonical_fields!(Correction: replaces, day, with);

/// An event of a kind that this version does not know.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct UnknownEvent {
    /// Its kind.
    pub kind: String,
    /// Its content, kept whole.
    pub body: crate::value::Value,
}

impl UnknownEvent {
    /// An event of a kind that this version does not know.
    #[must_use]
    pub fn new(kind: String, body: crate::value::Value) -> UnknownEvent {
        UnknownEvent { kind, body }
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for UnknownEvent {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_map([(&self.kind, &self.body)])
    }
}

/// An earlier event was wrong: what stands in its place, or nothing.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Correction {
    /// Sequence number of the event it replaces; that may be an earlier correction. Whichever of them is named, what was said last of
    /// the event is corrected.
    pub replaces: u32,
    /// The day it really happened, if that was wrong too.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub day: Option<Day>,
    /// What happened instead. Absent beside a day, what happened stays and only its day was wrong; absent without one, it did
    /// not happen at all. A kind that this version does not know is counted as unknown, and takes back no stop, pain, question,
    /// illness, limit or end of a clearance, and no word, day or session for less, that it stands in the place of.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into, rename = "with_kind")]
    pub with: Option<Box<EventKind>>,
}

impl Correction {
    /// That event did not happen at all.
    #[must_use]
    pub const fn new(replaces: u32) -> Correction {
        Correction { replaces, day: None, with: None }
    }
}
