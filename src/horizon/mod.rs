//! Decades: decline, floors to stay above, scenarios, relative strength, the yearly card.
//!
//! Uses error, numeric, source, quantity, caution, statistics, one_rm, record.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
