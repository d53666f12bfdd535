//! Reason codes with their numbers: why a decision is what it is.
//!
//! Uses error, quantity.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
