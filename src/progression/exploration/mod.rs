//! Exhaustive exploration of a small world: every state that any course of events can reach, each checked against
//! rules written apart from the guards, and each guard shown to be needed.
//!
//! Uses the progression itself and what it uses; built for tests only.
//!
//! | file | what it holds |
//! |---|---|
//! | `world` | two lifts, a few loads, short windows, and what the coach may set instead |
//! | `acts`, `events`, `sessions` | what may happen, and the event that a log would hold |
//! | `play` | a course: the state and the notes beside it, one act after another |
//! | `notes`, `telling`, `told_sessions` | what was told, kept from the events and the grants alone |
//! | `oracle`, `steps` | the rules over the notes |
//! | `bytes`, `codec` | canonical bytes and back |
//! | `courses` | ordinary courses to begin from, and the move that each guard is needed for |
//! | `search`, `walks` | breadth first through all that may happen, and far along a few ways |
//! | `standings` | the states of the transition table |
//!
//! States are canonical: days are counted back from today and cut at the largest number of days that any rule of this
//! world compares; counters are cut likewise. What is left is a finite set.
//!
//! # What it cannot show
//!
//! One region hurts at a time, heights are not measured, nothing helps, and windows are days where they are weeks: the
//! invariants draw those. A session or an answer that says something about an earlier day is folded with what it speaks
//! of as one act, as a log that is folded anew has it; such an answer about a day further back is left to the invariants
//! too.

mod acts;
mod bytes;
mod codec;
mod courses;
mod events;
mod notes;
mod oracle;
mod play;
mod search;
mod sessions;
mod shown;
mod standings;
mod steps;
mod telling;
mod told_sessions;
mod walks;
mod world;

pub(super) use acts::Act;
pub(super) use standings::{settled, statuses, world_at};
