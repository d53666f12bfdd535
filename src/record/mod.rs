//! The training log as events, and the plan as plain data.
//!
//! Uses error, value, source, quantity, caution, reason, loading.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
