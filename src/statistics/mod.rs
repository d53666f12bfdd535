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
mod curve_fit;
pub(crate) mod domain;
mod individual_change;
mod level_filter;
mod level_fit;
mod moments;
mod reading;
mod regression;
mod reliability;
pub(crate) mod robust;
mod theil_sen;
mod trend_filter;
mod trend_fit;
mod sequential;
mod success_run;
mod symmetry;

pub use binomial_interval::{
    agresti_coull_interval, clopper_pearson_interval, clopper_pearson_lower, jeffreys_interval,
    mid_p_interval, proportion_score, simple_interval, wilson_corrected_interval, wilson_interval,
    wilson_lower,
};
pub use curve_fit::{CurveFit, power_fit, saturating_fit};
pub use individual_change::{
    ChangeChances, change_chances, individual_response_deviation, responding_share, true_change_interval,
    true_value_interval,
};
pub use level_filter::{CLIP_AT, INFLATE_AT, LevelPath, LevelStop, Outliers, local_level};
pub use level_fit::{LevelFit, level_forecast, local_level_concentrated, local_level_drift, local_level_fit};
pub use moments::{Summary, compensated_sum, lag_one_correlation, summary};
pub use posterior::{BetaPosterior, BetaPrior, beta_posterior, probability_rate_at_least, rate_quantile};
pub use reading::Reading;
pub use regression::{LinearFit, LinearModel, linear_fit, linear_fit_through_origin, linear_model};
pub use reliability::{
    CHANGE_MULTIPLIER, COMPETITION_EFFECT, IntraclassCorrelation, SMALL_EFFECT, TestRetest,
    intraclass_correlation, minimal_detectable_change, smallest_worthwhile_change,
    standard_error_of_measurement, test_retest, typical_error_percent,
};
pub use robust::{DEVIATION_TO_SPREAD, median, quantile, robust_spread};
pub use sequential::{
    SequentialCounts, SequentialDecision, SequentialLines, SequentialTest, sequential_acceptance,
    sequential_average_trials, sequential_counts, sequential_decision, sequential_lines,
};
pub use success_run::{
    no_event_upper, rule_of_three, success_run_trials, success_run_trials_with_uniform_prior,
};
pub use theil_sen::{RobustLine, robust_line};
pub use trend_filter::{TrendPath, TrendState, TrendStop, local_trend};
pub use trend_fit::{TrendFit, local_trend_fit, trend_forecast};

pub use symmetry::{
    asymmetry_impellizzeri_2007, asymmetry_kobayashi_2013, asymmetry_robinson_1987, asymmetry_shorter_2008,
    asymmetry_sugiyama_2014, limb_symmetry_deficit, limb_symmetry_index, percentage_difference_bishop_2018,
    symmetry_angle_zifchock_2008,
};

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[
    sequential::ROWS,
    binomial_interval::ROWS,
    posterior::ROWS,
    success_run::ROWS,
    robust::ROWS,
    theil_sen::ROWS,
    moments::ROWS,
    regression::ROWS,
    curve_fit::ROWS,
    reliability::ROWS,
    individual_change::ROWS,
    symmetry::ROWS,
    level_filter::ROWS,
    level_fit::ROWS,
    trend_filter::ROWS,
    trend_fit::ROWS,
];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[
    sequential::ENTRIES,
    binomial_interval::ENTRIES,
    posterior::ENTRIES,
    success_run::ENTRIES,
    robust::ENTRIES,
    theil_sen::ENTRIES,
    moments::ENTRIES,
    regression::ENTRIES,
    curve_fit::ENTRIES,
    reliability::ENTRIES,
    individual_change::ENTRIES,
    symmetry::ENTRIES,
    level_filter::ENTRIES,
    level_fit::ENTRIES,
    trend_filter::ENTRIES,
    trend_fit::ENTRIES,
];
