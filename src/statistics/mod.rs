//! Binomial intervals and sequential tests, control charts, level and trend filters, reliability, robust centre and spread.
//!
//! Uses error, numeric, source, quantity.
//!
//! | question | function |
//! |---|---|
//! | How well is a rate known? | [`wilson_interval`], [`jeffreys_interval`], [`clopper_pearson_interval`] |
//! | Decide after each repetition | [`sequential_decision`], [`sequential_counts`] |
//! | How likely is the rate at least this? | [`probability_rate_at_least`] |
//! | How many clean repetitions prove it? | [`success_run_trials`] |

mod posterior;
mod binomial_interval;
#[allow(dead_code, reason = "the rest of the module uses it")]
pub(crate) mod domain;
mod sequential;
mod success_run;

pub use binomial_interval::{
    agresti_coull_interval, clopper_pearson_interval, clopper_pearson_lower, jeffreys_interval,
    mid_p_interval, proportion_score, simple_interval, wilson_corrected_interval, wilson_interval,
    wilson_lower,
};
pub use posterior::{BetaPosterior, BetaPrior, beta_posterior, probability_rate_at_least, rate_quantile};
pub use sequential::{
    SequentialCounts, SequentialDecision, SequentialLines, SequentialTest, sequential_acceptance,
    sequential_average_trials, sequential_counts, sequential_decision, sequential_lines,
};
pub use success_run::{
    no_event_upper, rule_of_three, success_run_trials, success_run_trials_with_uniform_prior,
};

pub(crate) static ROWS: &[&[&crate::source::Row]] =
    &[sequential::ROWS, binomial_interval::ROWS, posterior::ROWS, success_run::ROWS];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] =
    &[sequential::ENTRIES, binomial_interval::ENTRIES, posterior::ENTRIES, success_run::ENTRIES];
