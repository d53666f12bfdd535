//! The arithmetic at the rack: bars, discs, exact loads, heights, warm-up steps, a shared bar.
//!
//! Uses error, numeric, source, quantity, caution, reason.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
