//! The contract of the progression: one property test for each invariant, over courses of events.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::unreachable,
    reason = "a test may panic"
)]

#[path = "shared/sealed.rs"]
mod sealed;

mod invariants {
    pub mod course;
    mod automatic;
    mod blockers;
    mod cases;
    mod caution;
    pub mod changes;
    mod clearances;
    mod comes_back;
    mod coach_moves;
    pub mod compare;
    mod drawn;
    mod flares;
    mod gates;
    mod guards;
    mod hand;
    mod help;
    mod history;
    pub mod hundred;
    mod judged;
    mod layoffs;
    mod looks;
    mod made;
    mod mornings;
    mod moves;
    mod new_parameters;
    mod nothing_skipped;
    mod overrides;
    pub mod pains;
    mod prescription;
    mod reasons;
    mod regions;
    mod returns;
    mod reviews;
    mod states;
    pub mod step;
    mod steps;
    mod units;
    #[cfg(feature = "english")]
    mod verdicts;
    mod would_change;
    pub mod world;
    mod worse;
}
