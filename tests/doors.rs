//! The doors of the log: numbers worked out by hand beside each case.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may panic, and exact sums are exact"
)]

#[path = "text/careful.rs"]
mod careful;
#[path = "doors/copies.rs"]
mod copies;
#[path = "doors/day.rs"]
mod day;
#[path = "doors/made.rs"]
mod made;
#[path = "text/never.rs"]
mod never;
#[cfg(feature = "json")]
#[path = "doors/beginning.rs"]
mod beginning;
#[path = "doors/block.rs"]
mod block;
#[path = "doors/compare.rs"]
mod compare;
#[path = "doors/drawn.rs"]
mod drawn;
#[path = "doors/evidence.rs"]
mod evidence;
#[path = "doors/handover.rs"]
mod handover;
#[path = "doors/history.rs"]
mod history;
#[path = "doors/kept.rs"]
mod kept;
#[path = "doors/next_set.rs"]
mod next_set;
#[path = "doors/one_verdict.rs"]
mod one_verdict;
#[path = "doors/opens.rs"]
mod opens;
#[path = "doors/places.rs"]
mod places;
#[path = "doors/plans.rs"]
mod plans;
#[path = "doors/raters.rs"]
mod raters;
#[path = "doors/review.rs"]
mod review;
#[path = "doors/strength.rs"]
mod strength;
#[path = "doors/show.rs"]
mod show;
#[path = "doors/table.rs"]
mod table;
#[path = "doors/translated.rs"]
mod translated;
#[path = "doors/stops.rs"]
mod stops;
#[path = "doors/week.rs"]
mod week;
#[path = "doors/words.rs"]
mod words;
#[path = "doors/year.rs"]
mod year;
#[allow(dead_code, reason = "the world is shared with other tests")]
#[path = "rules/world.rs"]
mod world;
