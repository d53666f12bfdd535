//! The doors of the log as plain sentences.
//!
//! Uses answers, and the phrases and words of the module above.

mod common;
mod compare;
mod days;
mod gate;
mod handover;
mod history;
mod in_force;
mod next_set;
mod rack;
mod raters;
mod review;
mod sets_table;
mod strength;
mod week;
mod years;

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::words::Words;
use crate::answers::{
    BlockReview, Comparison, DayAnswer, EasyWeek, Handover, History, InForce, LiftCurve, Missed, NextSet,
    Opens, PairAnswer, Rack, Raters, Review, SetsToLog, Share, Trend, Verdicts, Week, Year,
};
use crate::prescription::SessionPlan;

/// Every list of phrases, a line a door.
pub(super) const LISTS: &[super::phrases::Phrases] = &[
    common::COMMON,
    compare::COMPARE,
    days::DAYS,
    gate::GATE,
    handover::HANDOVER,
    history::HISTORY,
    in_force::IN_FORCE,
    next_set::NEXT_SET,
    rack::RACK,
    raters::RATERS,
    review::REVIEW,
    sets_table::SETS_TABLE,
    strength::STRENGTH,
    week::WEEK,
    years::YEARS,
    super::change::CHANGES,
    super::missing::MISSING,
    super::session::COURSE,
    super::session::LINES,
    super::stop::STOPS,
    super::stop::SIGN_OFFS,
    super::sign::SIGNS,
    super::reason::RESTARTS,
    super::reason::OVERRIDE_ENDS,
    super::reason::SHORTFALLS,
    super::reason::UNASKED,
    super::place::PLACES,
    super::loading::LOADING,
    super::day::DAYS_AND_LENGTHS,
    super::error::REFUSALS,
];

/// An answer that can be said: the whole of it as plain sentences, in the unit and with the names of the words.
///
/// ```
/// use bismar::answers::review;
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
/// use bismar::text::{Show, Words};
///
/// let review = review(&Log::new(Lifter::new(Name::new("A")?)), "2026-03-02".parse()?)?;
/// assert_eq!(review.show(&Words::plain())[0], "No session is in the log.");
/// # Ok::<(), bismar::Error>(())
/// ```
pub trait Show {
    /// The sentences, in the order in which they are to be read.
    fn show(&self, words: &Words<'_>) -> Vec<String>;
}

macro_rules! shown {
    ($($answer:ty: $by:ident,)+) => {
        $(impl Show for $answer {
            fn show(&self, words: &Words<'_>) -> Vec<String> {
                words.$by(self)
            }
        })+
    };
}

shown! {
    BlockReview: block_review,
    Comparison: comparison,
    LiftCurve: curve,
    DayAnswer: day_answer,
    EasyWeek: easy_week,
    Handover: handover,
    History: history,
    InForce: in_force,
    Missed: missed,
    NextSet: next_set,
    Opens: opens,
    PairAnswer: pair_answer,
    Rack: rack,
    Raters: raters,
    Review: review,
    SetsToLog: sets_to_log,
    Share: share,
    Trend: trend,
    Verdicts: verdicts,
    Week: week,
    Year: year,
}

impl Show for SessionPlan {
    fn show(&self, words: &Words<'_>) -> Vec<String> {
        let lines = words.session(self).lines(words);
        let lines = lines.iter().flat_map(|line| line.lines()).map(str::trim);
        lines.filter(|line| !line.is_empty()).map(ToString::to_string).collect()
    }
}
