//! Turns a grant and the day into sets, only ever downward, and rounds.
//!
//! Uses every module above. The order is fixed: stops, clearance, layoff, gate, the day, effort, caps, rounding
//! down, caps once more. Nothing here can raise the load above what was granted.

mod change;
mod draft;
mod lift;
mod next;
mod time;
mod warm_up;

pub use change::Change;
pub use lift::{LiftToday, Verdict};
pub use next::{SessionPlan, next_session, next_session_from};
pub use warm_up::WarmUpSet;

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
