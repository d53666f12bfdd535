//! From technique marks to passes, and from passes to an open gate.
//!
//! Uses error, numeric, source, quantity, statistics.
//!
//! | the coach asks | the answer |
//! |---|---|
//! | did that set pass? | [`set_pass`] |
//! | did this session pass, and if not, on what? | [`session_pass`] |

mod criterion;
mod marks;
mod pass;
mod rules;
mod verdict;

pub use criterion::{CRITERIA, CRITICAL_CRITERIA, Criterion, check_criteria};
pub use marks::{CriterionMark, Mark, REPS_IN_A_SET, Rater, SetMarks};
pub use pass::{session_pass, set_pass};
pub use rules::{PassRules, misses_allowed, pass_rules};
pub use verdict::{FailingRep, Outcome, PassReason, SessionVerdict, SetVerdict};

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[criterion::ROWS, rules::ROWS, pass::ROWS];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[criterion::ENTRIES, rules::ENTRIES, pass::ENTRIES];
