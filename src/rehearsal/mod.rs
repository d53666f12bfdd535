//! Checks a plan before anyone lifts, and plays it through with a seeded lifter.
//!
//! Uses every module above.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
