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
//! | Is this value unusual for its series? | [`individuals_chart`], [`western_electric_rules`], [`nelson_rules`] |
//! | Has the series drifted or shifted? | [`ewma_chart`], [`cusum_chart`] |
//! | How often does a chart cry wolf, how soon does it see? | [`ewma_run_length`], [`cusum_run_length`], [`cusum_threshold_for`] |
//! | Where is a wandering level, and where was it? | [`local_level`], [`local_level_fit`], [`level_forecast`] |
//! | Level and slope? | [`local_trend`], [`local_trend_fit`], [`trend_forecast`] |
//! | Which line? | [`linear_fit`], [`linear_model`], [`robust_line`], [`saturating_fit`], [`power_fit`] |
//! | How much does a test wander? | [`test_retest`], [`intraclass_correlation`], [`minimal_detectable_change`] |
//! | Did this person change? | [`change_chances`], [`true_change_interval`], [`reliable_change`] |
//! | Is the mean of several trials better? | [`reliability_of_mean`], [`trials_for_reliability`], [`error_of_mean`] |
//! | Centre and spread | [`summary`], [`median`], [`robust_spread`] |
//! | Left against right | [`percentage_difference_bishop_2018`] and eight others |

mod posterior;
mod binomial_exact;
mod binomial_interval;
mod curve_fit;
mod cusum;
mod cusum_lengths;
pub(crate) mod domain;
mod ewma;
mod individual_change;
mod individuals;
mod level_filter;
mod level_fit;
mod moments;
mod reading;
mod regression;
mod reliability;
mod repeated_trials;
pub(crate) mod robust;
mod theil_sen;
mod trend_filter;
mod trend_fit;
mod trend_state;
mod run_length;
mod run_rules;
mod sequential;
mod sequential_test;
mod success_run;
mod symmetry;

pub use binomial_exact::{clopper_pearson_interval, clopper_pearson_lower, mid_p_interval};
pub use binomial_interval::{
    agresti_coull_interval, jeffreys_interval, proportion_score, simple_interval, wilson_corrected_interval,
    wilson_interval, wilson_lower,
};
pub use curve_fit::{CurveFit, power_fit, saturating_fit};
pub use cusum::{CUSUM_REFERENCE, CUSUM_THRESHOLD, CusumDesign, CusumPoint, Side, cusum_chart};
pub use cusum_lengths::{
    cusum_run_length, cusum_run_length_one_sided, cusum_run_length_siegmund, cusum_threshold_for,
};
pub use ewma::{EwmaChart, EwmaPoint, ewma_chart, ewma_weight_over, steady_weight};
pub use individual_change::{
    ChangeChances, change_chances, individual_response_deviation, responding_share, true_change_interval,
    true_value_interval,
};
pub use individuals::{IndividualsChart, RANGE_LIMIT, RANGE_TO_SPREAD, individuals_chart};
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
pub use repeated_trials::{
    ReliableChange, error_of_mean, reliability_of_mean, reliable_change, trials_for_reliability,
};
pub use robust::{DEVIATION_TO_SPREAD, median, quantile, robust_spread};
pub use run_length::{ewma_run_length, ewma_width_for, shewhart_run_length};
pub use run_rules::{RunRule, RunSignal, nelson_rules, western_electric_rules, western_electric_run_length};
pub use sequential::{
    SequentialCounts, SequentialDecision, SequentialLines, sequential_acceptance, sequential_average_trials,
    sequential_counts, sequential_decision, sequential_lines,
};
pub use sequential_test::SequentialTest;
pub use success_run::{
    no_event_upper, rule_of_three, success_run_trials, success_run_trials_with_uniform_prior,
};
pub use theil_sen::{RobustLine, robust_line};
pub(crate) use trend_filter::trend_end;
pub use trend_filter::{TrendPath, TrendStop, local_trend};
pub use trend_fit::{TrendFit, local_trend_fit, trend_forecast};
pub use trend_state::TrendState;

pub use symmetry::{
    asymmetry_impellizzeri_2007, asymmetry_kobayashi_2013, asymmetry_robinson_1987, asymmetry_shorter_2008,
    asymmetry_sugiyama_2014, limb_symmetry_deficit, limb_symmetry_index, percentage_difference_bishop_2018,
    symmetry_angle_zifchock_2008,
};

pub(crate) static DECLARED: crate::source::Declarations = &[
    sequential::DECLARED,
    binomial_interval::DECLARED,
    binomial_exact::DECLARED,
    posterior::DECLARED,
    success_run::DECLARED,
    robust::DECLARED,
    theil_sen::DECLARED,
    moments::DECLARED,
    regression::DECLARED,
    curve_fit::DECLARED,
    reliability::DECLARED,
    repeated_trials::DECLARED,
    individual_change::DECLARED,
    symmetry::DECLARED,
    individuals::DECLARED,
    ewma::DECLARED,
    cusum::DECLARED,
    run_length::DECLARED,
    cusum_lengths::DECLARED,
    run_rules::DECLARED,
    level_filter::DECLARED,
    level_fit::DECLARED,
    trend_filter::DECLARED,
    trend_fit::DECLARED,
];
