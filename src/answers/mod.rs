//! The doors of the log: one file a question, from log, plan and day to a typed answer.
//!
//! Uses every module above.
//!
//! Each door is a function of a [`Log`](crate::record::Log) and a day (some of a plan too). Those that read the log through a
//! [`Diary`] are methods of it as well, so that many questions cost one reading. An answer is a struct of its own: the
//! value with its interval and what led to it, `missing` for what nobody wrote down ([`Lacking`]; never a nought in its
//! place), `sources` for the rows that the numbers come from, `cautions` for what to show beside it. `doors` lists them
//! for calls by name.
//!
//! | the coach asks | the answer |
//! |---|---|
//! | Does today lie below, within or above the usual? | [`day`] |
//! | Is the strength of this lift moving? | [`trend`] |
//! | What is this lifter's own curve, and is there enough for one? | [`curve`] |
//! | Was this week a jump? | [`week`] |
//! | Is an easy week due, and what would it be? | [`easy_week`] |
//! | A session was missed: shift, merge or drop? | [`missed`] |
//! | How do a strict and a forgiving lift stand to each other? | [`pair`] |
//! | How often were the verdicts about the day right? | [`verdicts`] |
//! | That set is done: what now? | [`next_set`] |
//! | Do two people mark alike? | [`raters`] |
//! | Was the block right? | [`block_review`] |
//! | What is due this year? | [`year`] |
//! | What does another coach need to know? | [`handover`] |
//! | What looks odd in this log? | [`review`] |
//! | Does this one load look mistyped? | [`load_slip`] |
//! | How is each load of today made, disc by disc? | [`rack`] |
//! | Several of us, one bar: who goes first? | [`share`] |
//! | In what is another place of this lift harder or easier? | [`compare`] |
//! | What was done, what did it come to, and how did the grant move? | [`history`] |
//! | What is in force, whatever is planned? | [`in_force`] |
//! | What would a correction, an undo, one more event or another log open? | [`opens`] |
//! | What does a table of sets from elsewhere add to this log? | [`sets_to_log`] |
//! | Somebody new: a log that begins? | [`begin`] |
//!
//! Any of them is told in sentences by `text::Show`, in kilograms or pounds and with the names that the log has for its lifts.

mod beginning;
mod block_review;
mod compare;
mod course;
mod curve;
mod dates;
mod day;
mod diary;
#[cfg(feature = "serde")]
mod door;
mod easy_week;
mod evidence;
mod followed;
mod handed_on;
mod handover;
mod history;
mod in_force;
mod lacking;
mod load_slip;
mod missed;
mod next_set;
mod oddity;
mod opens;
mod pair;
mod rack;
mod raters;
mod reported;
mod review;
mod sets_table;
mod share;
mod standing;
mod strength;
mod trend;
mod verdicts;
mod week;
#[cfg(feature = "serde")]
mod without_health;
mod year;

pub use beginning::{Beginning, FirstLift, begin};
pub use block_review::{Block, BlockAdvice, BlockLift, BlockReview, block_review};
pub use compare::{Comparison, compare};
pub use course::Course;
pub use curve::{LiftCurve, RefusedSets, curve};
pub use day::{DayAnswer, DayAnswers, day};
pub use diary::Diary;
#[cfg(all(feature = "serde", feature = "english"))]
pub(crate) use door::door;
#[cfg(feature = "serde")]
pub use door::{Door, OF_BEGINNINGS, OF_COPIES, OF_DAYS, OF_SESSIONS, OF_TABLES, OF_YEARS, doors};
pub use easy_week::{EasyLift, EasyWeek, easy_week};
pub use handed_on::{LastDone, OverrideNow, PainNow, StopNow};
pub use handover::{ActSince, ChangedSince, Handover, LiftHandover, LiftMoved, handover};
pub use history::{GrantStep, History, LiftOutcome, SessionDone, history};
pub use in_force::{InForce, Restriction, in_force, in_force_from};
pub use lacking::Lacking;
pub use load_slip::load_slip;
pub use missed::{Missed, MissedLift, NextPlanned, missed};
pub use next_set::{NextSet, SetReason, SetWork, SetsToday, Then, next_set, next_set_from};
pub use oddity::{Odd, Oddity, Slip};
pub use opens::{HigherLoad, Opens, StopGone, opens};
pub use pair::{PairAnswer, PairLoads, PairPlace, pair};
pub use rack::{Rack, RackSet, rack};
pub use raters::{Alike, RaterPair, Raters, WhoMarks, raters};
pub use review::{Review, review};
pub use sets_table::{
    DayOrder, LiftSpelling, RowLeftOut, SetsTable, SetsToLog, TableGuess, TableReading, TableRows,
    sets_to_log,
};
pub use share::{Share, SharedLoads, Sharing, share};
pub use trend::{
    EstimatedBy, SessionEstimate, TREND_WEEKS, Trend, TrendPoint, TrendScale, VelocityTrend, trend,
};
pub use verdicts::{Verdicts, verdicts};
pub use week::{Week, WeekDone, WeekFelt, WeekMeasure, WeekPart, week};
pub use year::{KeptLoad, TestedFunction, Year, year};

use alloc::vec::Vec;

use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::prescription::{LiftToday, Verdict};
use crate::progression::State;
use crate::quantity::{Day, Name};

/// Refuses a day before the last event: nobody may look back past a stop.
fn check_today(state: &State, today: Day) -> Result<(), Error> {
    match state.last() {
        Some((last, _)) if today < last => {
            let rule = Allowed::Rule(alloc::format!("{last} or later").into());
            Err(Error::new(Code::BeforeLastEvent, "today", alloc::format!("{today}"), rule))
        }
        _ => Ok(()),
    }
}

/// What to show beside any answer: a stop comes first.
fn cautions_of(state: &State, today: Day) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if state.stop().is_some() || state.regions().iter().any(|region| region.stop.is_some()) {
        cautions.extend(Caution::OF_A_STOP);
    }
    cautions.push(Caution::ExaminesNobody);
    if !state.asks().is_empty() {
        cautions.push(Caution::AskBeforeToday);
    }
    if state.fallen_mass(today).is_some() {
        cautions.push(Caution::MassFalling);
    }
    if state.unknown_events() > 0 {
        cautions.push(Caution::UnknownEvents);
    }
    cautions
}

/// What to show beside an answer about one lift of today: where it is stopped, what stops and the emergency line come first.
fn cautions_of_lift(state: &State, of_today: &LiftToday, today: Day) -> Vec<Caution> {
    let said = of_today.cautions.clone();
    if of_today.verdict != Verdict::Stop {
        return said;
    }
    let mut cautions = cautions_of(state, today);
    cautions.retain(|caution| !said.contains(caution));
    cautions.extend(said);
    cautions.sort_by_key(|caution| !Caution::OF_A_STOP.contains(caution));
    cautions
}

/// A lift that is asked about is none of the plan.
fn not_in_plan(lift: &Name) -> Error {
    Error::new(Code::UnknownLift, "lift", lift.as_str(), Allowed::rule("a lift of the plan"))
}
