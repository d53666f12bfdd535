//! What may look odd in a log: each kind with its numbers.

use crate::loading::UnitSlip;
use crate::quantity::{Day, Mass, Name};
use crate::reason::NamedPlace;
use crate::record::Effort;
use crate::sign::Ask;

/// How a number may have been mistyped. To be asked about, never corrected in silence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Slip {
    /// The number of pounds stands as kilograms: 2.2 times what was expected.
    PoundsAsKilograms,
    /// The number of kilograms stands as pounds: 0.45 times what was expected.
    KilogramsAsPounds,
    /// The decimal point is one place off.
    DecimalPoint,
}

impl From<UnitSlip> for Slip {
    fn from(slip: UnitSlip) -> Slip {
        match slip {
            UnitSlip::PoundsReadAsKilograms => Slip::PoundsAsKilograms,
            UnitSlip::KilogramsReadAsPounds => Slip::KilogramsAsPounds,
        }
    }
}

/// Something that looks odd: where, and what.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Oddity {
    /// The day that it concerns; of a stretch, its last day.
    pub day: Day,
    /// Number of the event, where one event is meant.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub event: Option<u32>,
    /// The lift, where one is meant.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub lift: Option<Name>,
    /// Where the lift was done or stood, where a load of it is meant and the log can be followed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub place: Option<NamedPlace>,
    /// What.
    pub what: Odd,
}

impl Oddity {
    /// That on that day, with neither an event nor a lift named.
    #[must_use]
    pub const fn new(day: Day, what: Odd) -> Oddity {
        Oddity { day, event: None, lift: None, place: None, what }
    }
}

macro_rules! odds {
    ($($(#[doc = $doc:literal])+ $variant:ident $({ $($(#[doc = $field_doc:literal])+ $field:ident : $type:ty),+ $(,)? })? $text:literal,)+) => {
        /// What looks odd. Each is a question to the coach; nothing is changed by it.
        #[non_exhaustive]
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum Odd {
            $($(#[doc = $doc])+ $variant $({ $($(#[doc = $field_doc])+ $field: $type),+ })?,)+
        }

        impl Odd {
            /// Every code of this version.
            pub const CODES: &'static [&'static str] = &[$($text),+];

            /// The stable code.
            #[must_use]
            pub const fn code(&self) -> &'static str {
                match self { $(Odd::$variant { .. } => $text,)+ }
            }
        }
    };
}

odds! {
    /// Body mass fell by a twentieth or more within half a year; if nobody meant it to, a talk with a clinician is worth it.
    MassFalling {
        /// The highest of the half year.
        from: Mass,
        /// Its day.
        since: Day,
        /// The last one.
        to: Mass,
        /// Part that was lost.
        part: f64,
    } "mass_falling",
    /// Body mass differs by a tenth or more from the weighing before: a likely slip of the pen.
    MassJump {
        /// The weighing before.
        from: Mass,
        /// Its day.
        since: Day,
        /// This one.
        to: Mass,
        /// Change as a part of the one before; negative where it is less.
        part: f64,
        /// How it may have been mistyped, where the numbers say so.
        slip: Option<Slip>,
    } "mass_jump",
    /// A load of a session or an override looks like a slip, beside the load that was expected.
    LoadSlip {
        /// The load as it stands.
        load: Mass,
        /// The heaviest of the session before, or the lift's first load.
        expected: Mass,
        /// How it may have been mistyped.
        slip: Slip,
    } "load_slip",
    /// Every scored repetition was acceptable and no mark was in doubt for so many sessions that the gate tells nothing.
    PerfectScores {
        /// Sessions in a row.
        sessions: u32,
        /// The first of them.
        since: Day,
    } "perfect_scores",
    /// The coach overruled the gate often, so that it decides little.
    ManyOverrides {
        /// Overrides since that day.
        overrides: u32,
        /// Of these, those that name no last day.
        without_end: u32,
        /// Sessions of the lift since that day.
        sessions: u32,
        /// The first of these sessions.
        since: Day,
    } "many_overrides",
    /// Nobody marked technique in many of the last sessions; what is not scored never passes.
    Unscored {
        /// Sessions without a mark.
        unscored: u32,
        /// Of so many.
        sessions: u32,
        /// The first of these sessions.
        since: Day,
    } "unscored",
    /// Only the lifter marked technique in the last sessions that were marked.
    OnlyOwnMarks {
        /// Sessions in a row.
        sessions: u32,
        /// The first of them.
        since: Day,
    } "only_own_marks",
    /// A repetition was missed, and yet the set is said to have left some in reserve: rating and reserve may be mixed up.
    MissedWithReserve {
        /// As it stands.
        effort: Effort,
    } "missed_with_reserve",
    /// Two sessions of one day say exactly the same.
    SameSessionTwice {
        /// The event that says so first.
        other: u32,
    } "same_session_twice",
    /// An event lies after today.
    AfterToday {
        /// By so many days.
        days: u32,
    } "after_today",
    /// An event was written down between others of a quite different time.
    OutOfLine {
        /// Day of the event written down before it, or after it where it is the first.
        beside: Day,
        /// Days between the two.
        days: u32,
    } "out_of_line",
    /// Nothing stands in the log for years: a break, or a year mistyped.
    LongGap {
        /// The last day before it.
        since: Day,
        /// Its length in days.
        days: u32,
    } "long_gap",
    /// A clearance or an override ended before the day on which it was given.
    EndsBeforeItBegins {
        /// Its last day.
        end: Day,
    } "ends_before_it_begins",
    /// Something is answered that nobody had said before training, or that was answered already: it closed nothing.
    AnswerWithoutQuestion {
        /// What the answer is about.
        ask: Ask,
    } "answer_without_question",
    /// An age for which no rule here was made: below 18 or above 100.
    OddAge {
        /// Years, at most.
        years: i32,
    } "odd_age",
    /// Events of kinds that this version cannot read.
    UnknownEvents {
        /// How many.
        count: u32,
    } "unknown_events",
}
