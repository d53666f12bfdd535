//! The fold over the log: tracks, states, guards, ladders; decides the grant.
//!
//! Uses every module above.

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
