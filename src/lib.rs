//! Progression maths for barbell lifts: pure, `no_std`, deterministic.
//!
//! A coach rebuilds lifts with adults who mean to keep lifting: a lift is learned light, a load stays until its technique
//! has passed, each day is told against the lifter's own usual. This crate computes what that coach must decide, and says
//! with each number where it comes from and how sure it is. It reads no clock, stores nothing and examines nobody.
//!
//! # Which function answers which question
//!
//! | the coach asks | the answer |
//! |---|---|
//! | What does this lifter do today? | [`prescription::next_session`] |
//! | Why not more today? What would change it? | [`prescription::LiftToday`]: `reasons`, `outlook`, `would_change` |
//! | Where does each lift stand after this log? | [`progression::fold`], [`progression::State::decide`] |
//! | How does a log begin? | [`guide::first_log`] |
//! | How are the commonest things done that an app needs? | [`guide::cookbook`] |
//! | Why is it so, and what changes against doing it by hand? | [`guide::why_it_is_so`], [`guide::by_hand`] |
//! | One more event, please. | [`progression::State::apply`] |
//! | Keep the state for tomorrow? | [`progression::StoredState`]: `State::to_json`, back by `State::from_json_or_fold` |
//! | What goes on each side for 62.5 kg? | [`loading::load()`] |
//! | What can this gym make, and where is the largest gap? | [`loading::reachable()`] |
//! | What does 5 at 60 say about strength, and how sure is that? | [`one_rm::estimate`]; by one equation: [`one_rm::epley_1985`] and its companions |
//! | Did that session pass? | [`gate::session_pass`] |
//! | Is the gate open, and what is missing? | [`gate::Gate::check`] |
//! | How many sets, how heavy, how much in all? | [`dose`] |
//! | Is today below, within or above the usual? | [`condition`] |
//! | Which load is to be kept to a chosen age, and is today on course? | [`horizon`] |
//! | From the log: does today lie below, within or above the usual? | [`answers::day`] |
//! | Is the strength of a lift moving? By which own curve? | [`answers::trend`], [`answers::curve`] |
//! | Was this week a jump? Is an easy week due? | [`answers::week()`], [`answers::easy_week`] |
//! | A session was missed: shift, merge or drop? | [`answers::missed`] |
//! | How do a strict and a forgiving lift stand to each other? | [`answers::pair`] |
//! | Were the verdicts about the day right? | [`answers::verdicts`] |
//! | That set is done: what now? | [`answers::next_set`] |
//! | Do two people mark alike? | [`answers::raters`] |
//! | Was the block right: keep, change, test again, raise the gate? | [`answers::block_review`] |
//! | What is due this year? | [`answers::year`] |
//! | What does another coach need to know? | [`answers::handover`] |
//! | What looks odd in this log? | [`answers::review`] |
//! | How is each load of today made, disc by disc? For several at one bar? | [`answers::rack`], [`answers::share`] |
//! | What was done, what did it come to, and how did the grant move? | [`answers::history`] |
//! | What is in force? What would a correction, an undo or another log open? | [`answers::in_force`], [`answers::opens`] |
//! | In what is another place of a lift harder or easier? | [`answers::compare`] |
//! | Somebody new, or a table of sets from elsewhere: a log? | [`answers::begin`], [`answers::sets_to_log`] |
//! | Which equation do I take? | [`guide::choose_an_equation`] |
//! | The answer in plain sentences, in kilograms or pounds, or in another language? | [`text::Show`] with [`text::Words`], [`text::Translation`] |
//! | What can I not expect of it? | [`guide::not_claimed`] |
//! | Where does this number come from? | [`registry::row`]; all of them: [`guide::provenance`] |
//!
//! # Promises
//!
//! Pure and total: every function takes validated values or returns an [`Error`] that names the field, the value
//! and what is allowed; nothing panics, and no NaN leaves. The same everywhere: the same input gives the same bits on
//! every platform for one version. Replayable: the state is a fold over the log. Careful: a stop is a stop.
//!
//! # Features
//!
//! - `serde` (default): read and write every public type; calls by name.
//! - `json`: JSON text in and out.
//! - `english`: sentences for errors, reasons and cautions.
//! - `rehearsal`: check a plan before anyone lifts; seeded what-if.
//! - `schema`: JSON Schema of every type that is read or written, as serde's attributes say it, for tools.
#![no_std]
#![forbid(unsafe_code)]
#![cfg_attr(docsrs, feature(doc_cfg))]

extern crate alloc;
#[cfg(test)]
extern crate std;

pub mod guide;
pub mod error;
mod numeric;
mod canonical;
pub mod value;
pub mod source;
pub mod quantity;
pub mod caution;
pub mod sign;
pub mod reason;
pub mod statistics;
pub mod one_rm;
pub mod loading;
pub mod dose;
pub mod condition;
pub mod gate;
pub mod record;
pub mod progression;
pub mod prescription;
#[cfg(feature = "rehearsal")]
pub mod rehearsal;
pub mod horizon;
pub mod answers;
pub mod registry;
#[cfg(feature = "english")]
pub mod text;

pub use error::{Code, Error};

/// Version of this library, `major.minor.patch`. Decisions and stored states name it.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The README's Rust code is compiled and run.
#[cfg(all(doctest, feature = "json", feature = "english"))]
#[doc = include_str!("../README.md")]
pub struct Readme;
