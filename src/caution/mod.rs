//! Keys of safety texts: what to show beside an answer, worded elsewhere.
//!
//! Uses error.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
