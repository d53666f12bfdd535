//! The capabilities, a test for each that is named after it: every one works from a log.
//!
//! What is asked of them in detail is held by the tests of each part; here each has one answer that can be worked out by
//! hand, over the invented demo log or a smaller one.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may panic, and exact sums are exact"
)]

#[path = "rows/count.rs"]
mod count;
#[path = "rows/days.rs"]
mod days;
#[path = "rows/gates.rs"]
mod gates;
#[path = "rows/keeping.rs"]
mod keeping;
#[path = "rows/loading.rs"]
mod loading;
#[path = "rows/strength.rs"]
mod strength;
#[path = "rows/week.rs"]
mod week;
#[allow(dead_code, reason = "the world is shared with other tests")]
#[path = "rules/world.rs"]
mod world;

use bismar::quantity::{Day, Mass, Name, Reps, Rpe};
use bismar::record::{Event, EventKind, LiftSession, Lifter, Log, Session, WorkSet};

/// The demo log.
pub fn demo() -> Log {
    Log::from_json(include_str!("../examples/data/demo-log.json")).unwrap()
}

/// A day.
pub fn day(text: &str) -> Day {
    text.parse().unwrap()
}

/// An id.
pub fn name(text: &str) -> Name {
    Name::new(text).unwrap()
}

/// A load.
pub fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

/// A log of an invented lifter: these events, each with its day.
pub fn log_of(events: impl IntoIterator<Item = (Day, EventKind)>) -> Log {
    let mut log = Log::new(Lifter::new(name("invented")));
    for (sequence, (day, kind)) in (1..).zip(events) {
        log.events.push(Event::new(sequence, day, kind));
    }
    log
}

/// So many sets of so many repetitions at that load.
pub fn sets(count: usize, reps: u16, load: f64) -> Vec<WorkSet> {
    vec![WorkSet::done(kg(load), Reps::whole(reps).unwrap()); count]
}

/// A lift as it was granted.
pub fn done(lift: &str, sets: Vec<WorkSet>) -> LiftSession {
    LiftSession::as_granted(name(lift), sets)
}

/// A session of these lifts, with its rating and minutes where they are given.
pub fn session(lifts: Vec<LiftSession>, rated: Option<(f64, u16)>) -> EventKind {
    let effort = rated.map(|(rating, _)| Rpe::new(rating).unwrap());
    EventKind::SessionRecorded(
        Session::new(lifts)
            .with_pain(Vec::new())
            .with_minutes(rated.map(|(_, minutes)| minutes))
            .with_effort(effort),
    )
}
