//! Does today lie below, within or above the lifter's usual, and is the trend real?
//!
//! Uses error, numeric, source, quantity, statistics. It takes plain readings (day, value, conditions); the log is
//! not its business. Estimates of strength come in as a value with a standard error.
//!
//! | question | function |
//! |---|---|
//! | Does today lie below, within or above the usual? | [`judge_day`] |
//! | What is ordinary for this lifter? | [`baseline`] |
//! | How often do ordinary days look like ones below the usual? | [`false_alarms`] |
//! | Were past verdicts worth anything? | [`calibration`] |
//! | Is the trend real, and where does it lead? | [`trend`] |
//! | Slow drift or sudden drop? | [`drift`] |
//! | How much more on the forgiving variant? | [`variant_ratio`] |

mod own_baseline;
mod alarm;
mod calibrated;
mod day_class;
mod evidence;
mod false_alarm;
mod marker;
mod mixture;
mod ratio;
mod strength;
mod trend_report;
mod verdict;

pub use alarm::{
    DriftAlarm, DriftKind, DriftOptions, DriftReport, SESSIONS_BETWEEN_FALSE_ALARMS, SessionForm, drift,
};
pub use calibrated::{
    CALIBRATION_SESSIONS, CHANCE_LIMIT, ClassCalibration, PastVerdict, VerdictSkill, calibration,
};
pub use day_class::DayClass;
pub use evidence::{EvidenceKind, StrengthEvidence};
pub use false_alarm::{FalseAlarms, false_alarm_of_mean, false_alarms};
pub use marker::{
    Conditions, JUMP_HEIGHT_VARIATION, Marker, MarkerKind, MarkerReading, RATING_STEP,
    RECOVERY_TYPICAL_ERROR, TimeOfDay, VELOCITY_TYPICAL_ERROR,
};
pub use own_baseline::{Baseline, DayOptions, baseline};
pub use ratio::{HEX_TO_STRAIGHT_RATIO, PairedEstimate, RatioPrior, VariantRatio, variant_ratio};
pub use strength::{DAY_TO_DAY_MAXIMUM, TREND_WINDOW, TrendOptions, trend};
pub use trend_report::{Slope, StrengthForecast, StrengthLevel, TrendReport, TrendVerdict};
pub use verdict::{DayAdvice, DayVerdict, MarkerVote, Vote, WarmUpTechnique, judge_day};

pub(crate) static DECLARED: crate::source::Declarations = &[
    marker::DECLARED,
    own_baseline::DECLARED,
    verdict::DECLARED,
    false_alarm::DECLARED,
    calibrated::DECLARED,
    alarm::DECLARED,
    strength::DECLARED,
    ratio::DECLARED,
];
