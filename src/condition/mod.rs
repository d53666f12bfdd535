//! Is today a good or a bad day, and is the trend real?
//!
//! Uses error, numeric, source, quantity, caution, reason, statistics, one_rm, record.

mod day_class;

pub use day_class::DayClass;

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
