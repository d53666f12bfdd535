//! A missed session: shift it, merge it, or let it go. Never more load or double sets to make up for it.

use derive_setters::Setters;

use crate::error::{Code, Error};
use crate::quantity::Day;
use crate::source::{COMMON_PRACTICE, formula, rows};

/// What becomes of a missed session. The load and the sets stay as planned, always.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum MissedSession {
    /// Do it on this day, as planned.
    ShiftTo(Day),
    /// Do its lift, as planned, within the session of this day, which does not have it yet.
    MergeInto(Day),
    /// Let it go and carry on with the plan.
    Drop,
}

/// What is known around a missed session.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct MissedFacts {
    /// Today.
    pub today: Day,
    /// Last day on which the region was loaded.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub last_loaded: Option<Day>,
    /// Next planned day that loads the region.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub next: Option<Day>,
    /// Whether that next day has the missed lift already.
    pub next_has_the_lift: bool,
    /// Full rest days between two days that load the region.
    pub rest_days: u8,
}

impl MissedFacts {
    /// That day with no earlier and no later session known.
    #[must_use]
    pub fn new(today: Day, next_has_the_lift: bool, rest_days: u8) -> MissedFacts {
        MissedFacts { today, last_loaded: None, next: None, next_has_the_lift, rest_days }
    }
}

formula! {
    "dose.missed_session",
    /// A session was missed: shift, merge or drop?
    ///
    /// # Formula
    /// Shift to the first day that leaves the rest days on both sides; where there is none, merge into the next day
    /// of the region if that does not have the lift; else drop. Nothing is ever added to make up for it.
    ///
    /// # Domain
    /// Any days; the next planned day must not lie before today.
    ///
    /// # Errors
    /// `out_of_range` for a next day before today or a last day after it.
    ///
    /// # Source
    /// Common practice; the order of the three is our choice.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{MissedFacts, MissedSession, missed_session};
    ///
    /// let facts = MissedFacts::new("2026-03-04".parse()?, true, 1)
    ///     .with_last_loaded(Some("2026-03-01".parse()?))
    ///     .with_next(Some("2026-03-06".parse()?));
    /// assert_eq!(missed_session(&facts)?, MissedSession::ShiftTo("2026-03-04".parse()?));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn missed_session(facts: &MissedFacts) -> Result<MissedSession, Error> {
        let step = i32::from(facts.rest_days) + 1;
        let misplaced = |field, day: Day, rule| {
            Error::new(Code::OutOfRange, field, day.number(), crate::error::Allowed::rule(rule))
        };
        if let Some(next) = facts.next.filter(|next| *next < facts.today) {
            return Err(misplaced("next", next, "today or later"));
        }
        if let Some(last) = facts.last_loaded.filter(|last| *last > facts.today) {
            return Err(misplaced("last_loaded", last, "today or earlier"));
        }
        let rested = match facts.last_loaded { Some(last) => last.plus(step)?, None => facts.today };
        let earliest = rested.max(facts.today);
        Ok(match facts.next {
            Some(next) if next.since(earliest) >= step => MissedSession::ShiftTo(earliest),
            None => MissedSession::ShiftTo(earliest),
            Some(next) if !facts.next_has_the_lift => MissedSession::MergeInto(next),
            Some(_) => MissedSession::Drop,
        })
    }
    source: COMMON_PRACTICE, place: "missed work is never made up by load or double sets", standing: CommonPractice,
    seen: NotApplicable,
}

rows![missed_session];
