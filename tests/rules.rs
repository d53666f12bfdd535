//! The rules, one named test each: what is never done to a lifter, and what is said.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may panic"
)]
#![cfg(feature = "json")]

#[path = "rules/world.rs"]
mod world;

#[path = "rules/easing.rs"]
mod easing;
#[path = "rules/identity.rs"]
mod identity;
#[path = "rules/offers.rs"]
mod offers;
#[path = "rules/returns.rs"]
mod returns;
#[path = "rules/would_change.rs"]
mod would_change;
#[path = "rules/unknown.rs"]
mod unknown;
