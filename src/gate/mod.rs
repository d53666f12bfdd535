//! From technique marks to passes, and from passes to an open gate.
//!
//! Uses error, numeric, source, quantity, reason, statistics.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
