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
    mod cases;
    mod caution;
    mod help;
    mod history;
    pub mod hundred;
    mod layoffs;
    mod looks;
    mod mornings;
    mod moves;
    mod prescription;
    mod reasons;
    mod returns;
}
