//! Binomial intervals and sequential tests, control charts, level and trend filters, reliability, robust centre and spread.
//!
//! Uses error, numeric, source, quantity.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
