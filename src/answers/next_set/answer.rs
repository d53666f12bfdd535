//! What is asked after a set, and what is answered.

use alloc::vec::Vec;

use derive_setters::Setters;

use crate::caution::Caution;
use crate::loading::Loaded;
use crate::quantity::{Day, Kilograms, Length, Mass, Name, Pain, Rir, Rpe};
use crate::reason::Reason;
use crate::record::{PainAnswer, Place, SetRule, WorkSet};

/// The sets of one lift done so far today.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SetsToday {
    /// Id of the lift.
    pub lift: Name,
    /// Work sets in order; empty before the first.
    pub sets: Vec<WorkSet>,
    /// Pain now. Absent means not asked; a list means asked, and regions not named have none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub pain: Option<Vec<PainAnswer>>,
}

impl SetsToday {
    /// These sets of that lift, with nothing asked about pain.
    #[must_use]
    pub fn new(lift: Name, sets: Vec<WorkSet>) -> SetsToday {
        SetsToday { lift, sets, pain: None }
    }
}

/// What to do after that set.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Then {
    /// The first set of today.
    Begin,
    /// The same load again.
    Same,
    /// Less.
    DownTo(Mass),
    /// More, within what the day allows.
    UpTo(Mass),
    /// Another rung, directly easier.
    EasierRung(Name),
    /// The lift is over for today.
    Stop,
}

/// The work of the next set.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SetWork {
    /// Where it is done.
    pub place: Place,
    /// With what.
    pub load: Mass,
    /// How the load is made.
    pub loaded: Loaded,
    /// Blocks under each end of the bar, where they hold the height.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub blocks: Option<Length>,
    /// Repetitions.
    pub reps: u8,
    /// Repetitions to leave in reserve.
    pub reserve: Rir,
}

/// What comes after the sets of a lift done so far today.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct NextSet {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Id of the lift.
    pub lift: Name,
    /// Sets done so far.
    pub done: u8,
    /// Sets of today in all.
    pub sets: u8,
    /// By which rule.
    pub rule: SetRule,
    /// What to do.
    pub then: Then,
    /// The next set; none where the lift is over.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub work: Option<SetWork>,
    /// Today's load: nothing goes above it.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub limit: Option<Mass>,
    /// A rung to practise instead, where technique ended the lift and there is an easier one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub instead: Option<Name>,
    /// Why, in the order in which the rules spoke.
    pub reasons: Vec<SetReason>,
    /// Rows of the registry that the numbers come from: those of the rule, and of the relation that it changes a load by.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

macro_rules! set_reasons {
    ($($(#[doc = $doc:literal])+ $variant:ident $({ $($(#[doc = $field_doc:literal])+ $field:ident : $type:ty),+ $(,)? })? $text:literal,)+) => {
        /// Why the next set is what it is.
        #[non_exhaustive]
        #[derive(Clone, Debug, PartialEq)]
        #[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum SetReason {
            $($(#[doc = $doc])+ $variant $({ $($(#[doc = $field_doc])+ $field: $type),+ })?,)+
        }

        impl SetReason {
            /// Every code of this version.
            pub const CODES: &'static [&'static str] = &[$($text),+];

            /// The stable code.
            #[must_use]
            pub const fn code(&self) -> &'static str {
                match self { $(SetReason::$variant { .. } => $text,)+ }
            }
        }
    };
}

set_reasons! {
    /// Today's answer for the lift is to rest or to stop; its own reasons say why.
    NotToday "not_today",
    /// Nothing done yet: today's load.
    FirstSet "first_set",
    /// Pain that stops the lift.
    PainStops {
        /// Where.
        region: Name,
        /// How much.
        score: Pain,
    } "pain_stops",
    /// Pain for which less is done.
    PainEases {
        /// Where.
        region: Name,
        /// How much.
        score: Pain,
    } "pain_eases",
    /// Some pain, as known from before: nothing goes up.
    PainHolds {
        /// Where.
        region: Name,
        /// How much.
        score: Pain,
    } "pain_holds",
    /// Nobody asked about pain since the set: nothing goes up.
    PainNotAsked "pain_not_asked",
    /// A critical point was lost in the last set.
    CriticalFault {
        /// Which.
        criterion: Name,
    } "critical_fault",
    /// A repetition was missed in the last set.
    RepetitionMissed "repetition_missed",
    /// Two sets of today lost a critical point or missed a repetition.
    TwoFaults "two_faults",
    /// Nobody marked technique of the last set: nothing goes up.
    NotMarked "not_marked",
    /// All sets of today are done.
    AllSetsDone {
        /// How many.
        sets: u8,
    } "all_sets_done",
    /// Nobody said how hard the last set was.
    EffortNotSaid "effort_not_said",
    /// The effort said of the last set gives no number of repetitions that can be reckoned with.
    EffortSaysNothing "effort_says_nothing",
    /// The last set left as much as asked.
    AsAsked "as_asked",
    /// The last set left less than asked, or more: what the rule makes of it.
    ByEffort {
        /// Left, by what was said.
        left: Rir,
        /// Asked for.
        asked: Rir,
        /// Change of the load that the rule asks for, as a part of it.
        part: f64,
        /// By the lifter's own curve; else by a published relation or by the part that the plan sets.
        own_curve: bool,
    } "by_effort",
    /// The last set left less than the least that holds today.
    BelowReserve {
        /// Left, by what was said.
        left: Rir,
        /// The least.
        least: Rir,
    } "below_reserve",
    /// By this rule only technique, pain and missed repetitions change the load.
    ByTechnique "by_technique",
    /// A set ended below the bottom of the range.
    BelowRange {
        /// Fewest repetitions.
        bottom: u8,
    } "below_range",
    /// Within the range: more repetitions come before more load.
    WithinRange {
        /// Most repetitions.
        top: u8,
    } "within_range",
    /// The top of the range in every set: whether the load moves is for the gate to say, not for this session.
    TopOfRange {
        /// Most repetitions.
        top: u8,
    } "top_of_range",
    /// The table of repetitions asks for a change of the load between these two.
    ByTable {
        /// The smaller increase, or the larger decrease.
        least: Kilograms,
        /// The larger increase, or the smaller decrease.
        most: Kilograms,
    } "by_table",
    /// A set reached the rating that ends the lift.
    RatingReached {
        /// The rating.
        rating: Rpe,
    } "rating_reached",
    /// The rating that ends the lift is not reached yet.
    RatingNotReached {
        /// The rating.
        rating: Rpe,
    } "rating_not_reached",
    /// The first set is done: the others are lighter by this part.
    BackOff {
        /// Part of the first set's load.
        reduction: f64,
    } "back_off",
    /// The rule asked for more than today's load, or the last set was lifted above it.
    Limited {
        /// Today's load.
        to: Mass,
    } "limited",
    /// Nothing lighter can be loaded within one step.
    NothingLighter "nothing_lighter",
}
