//! From technique marks to passes, and from passes to an open gate.
//!
//! Uses error, numeric, source, quantity, statistics, condition (the class of a day).
//!
//! | the coach asks | the answer |
//! |---|---|
//! | did that set pass? | [`set_pass`] |
//! | did this session pass, and if not, on what? | [`session_pass`] |
//! | with this gate, how long will it hold a lifter of this skill? | [`operating_characteristic`] |
//! | do two people mark alike? | [`rater_agreement`] |
//! | can we go up, and what is still missing? | [`Gate::check`], [`Gate`] over [`GateFacts`] |

mod acceptable_reps;
mod agreement;
mod answer;
mod attempt;
mod criterion;
mod evidence;
mod facts;
mod marks;
mod operating;
mod pass;
mod pass_run;
mod requirement;
mod rules;
mod state;
mod verdict;

pub use acceptable_reps::session_chance;
pub use agreement::{Agreement, AgreementWeights, cohen_kappa, rater_agreement};
pub use criterion::{CRITERIA, CRITICAL_CRITERIA, Criterion, check_criteria};
pub use evidence::{Evidence, EvidenceRule, MOST_REPS, usual_evidence};
pub use facts::{GateFacts, NamedCondition, SESSIONS, SessionFact};
pub use marks::{CriterionMark, Mark, REPS_IN_A_SET, Rater, SetMarks};
pub use operating::{OperatingCharacteristic, Skill, operating_characteristic};
pub(crate) use pass::session_pass_of;
pub use pass::{session_pass, set_pass};
pub use pass_run::{LOAD_SESSIONS, NEUTRAL_FAILS, PassRun, RANGE_SESSIONS};
pub use requirement::{Gate, Requirement, SPACING_DAYS};
pub use rules::{PassRules, misses_allowed, pass_rules};
pub use state::{GateState, Met, Missing, Note};
pub use verdict::{FailingRep, Outcome, PassReason, SessionVerdict, SetVerdict};

pub(crate) static DECLARED: crate::source::Declarations = &[
    criterion::DECLARED,
    rules::DECLARED,
    pass::DECLARED,
    pass_run::DECLARED,
    evidence::DECLARED,
    requirement::DECLARED,
    answer::DECLARED,
    acceptable_reps::DECLARED,
    operating::DECLARED,
    agreement::DECLARED,
];
