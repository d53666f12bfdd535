//! What a set says about strength, and what load asks for a given effort.
//!
//! Uses `quantity`, `source`, `numeric`, `statistics`. Takes its own plain set evidence; knows no log.

mod classic;

pub use classic::epley_1985;

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[classic::ROWS];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[classic::ENTRIES];
