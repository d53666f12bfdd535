//! What a log does not hold, so that a door has no answer or a part of one.

use crate::condition::MarkerKind;
use crate::quantity::Name;

/// What nobody wrote down. An answer names it in place of a number; it is never taken as nought.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Lacking {
    /// Any session.
    Session,
    /// A session of that lift.
    SessionOf(Name),
    /// Any weighing of the lifter.
    BodyMass,
    /// Rating or minutes of so many sessions.
    SessionRating {
        /// How many.
        sessions: u32,
    },
    /// Anything in so many weeks; they are taken as weeks without training.
    Weeks {
        /// How many.
        weeks: u32,
    },
    /// A set that two people marked.
    SecondRater,
    /// A set of that lift that can speak about strength: passed technique, told its reserve, near enough to failure.
    UsableSet(Name),
    /// Three usable sets of that lift, three repetitions to failure apart, as an own curve needs.
    SetsForCurve {
        /// The lift.
        lift: Name,
        /// Usable sets that there are.
        usable: u32,
    },
    /// Any answer about today.
    DayAnswers,
    /// The load at which that marker was read.
    Conditions(MarkerKind),
    /// The class of the day, on any training day.
    DayClass,
    /// A missed session within the last days.
    MissedSession,
    /// The next planned session.
    NextSession,
    /// A plan.
    Plan,
    /// Lifts and equipment.
    Parameters,
    /// A clearance.
    Clearance,
    /// A test of everyday function.
    FunctionTest,
    /// The day of birth.
    Birthday,
    /// A session of that lift that passed.
    PassOf(Name),
    /// A block of weeks that was begun.
    Block,
}
