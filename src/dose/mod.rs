//! How much work was done and how tired it leaves: volume, session load, rolling load, impulse-response.
//!
//! Uses error, numeric, source, quantity, caution, statistics, one_rm, record.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
