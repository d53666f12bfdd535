//! The contract of the progression: one property test for each invariant, over courses of events.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::unreachable,
    reason = "a test may panic"
)]

mod invariants {
    pub mod course;
    mod automatic;
    mod cases;
    mod caution;
    mod clearances;
    mod coach_moves;
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
    mod mornings;
    mod moves;
    mod new_parameters;
    mod nothing_skipped;
    mod overrides;
    mod pains;
    mod prescription;
    mod reasons;
    mod returns;
    mod reviews;
    mod states;
    mod steps;
}
