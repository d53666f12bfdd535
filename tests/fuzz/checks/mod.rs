//! What each fuzz target checks: bytes in, a panic where a promise is broken.
//!
//! Included by the targets (`tests/fuzz/targets`) and by the plain test that replays the kept corpora
//! (`tests/fuzz_corpus.rs`), so nothing here needs more than the crate itself.
#![allow(dead_code, reason = "each target uses its own part")]

pub mod bytes;
pub mod documents;
pub mod events;
pub mod mutate;
pub mod session;
pub mod stock;
pub mod values;

/// One target's check: it panics where a promise is broken.
type Check = fn(&[u8]);

/// Every target by the name of its corpus.
pub const TARGETS: &[(&str, Check)] = &[
    ("log", documents::log),
    ("plan", documents::plan),
    ("state", documents::state),
    ("functions", documents::functions),
    ("stock", stock::check),
    ("values", values::check),
    ("events", events::check),
];
