//! Is today a good or a bad day, and is the trend real?
//!
//! Uses error, numeric, source, quantity, statistics. It takes plain readings (day, value, conditions); the log is
//! not its business. Estimates of strength come in as a value with a standard error.
//!
//! | question | function |
//! |---|---|
//! | Is today a good or a bad day? | [`judge_day`] |
//! | What is ordinary for this lifter? | [`baseline`] |
//! | How often do ordinary days look bad? | [`false_alarms`] |
//! | Were past verdicts worth anything? | [`calibration`] |

mod own_baseline;
mod calibrated;
mod day_class;
mod false_alarm;
mod marker;
mod verdict;

pub use calibrated::{
    CALIBRATION_SESSIONS, CHANCE_LIMIT, Calibration, PastVerdict, VerdictSkill, calibration,
};
pub use day_class::DayClass;
pub use false_alarm::{FalseAlarms, false_alarm_of_mean, false_alarms};
pub use marker::{
    Conditions, JUMP_HEIGHT_VARIATION, Marker, MarkerKind, MarkerReading, RATING_STEP,
    RECOVERY_TYPICAL_ERROR, TimeOfDay, VELOCITY_TYPICAL_ERROR,
};
pub use own_baseline::{Baseline, DayOptions, baseline};
pub use verdict::{DayAdvice, DayVerdict, MarkerVote, Vote, WarmUpTechnique, judge_day};

pub(crate) static ROWS: &[&[&crate::source::Row]] =
    &[marker::ROWS, own_baseline::ROWS, verdict::ROWS, false_alarm::ROWS, calibrated::ROWS];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] =
    &[marker::ENTRIES, own_baseline::ENTRIES, verdict::ENTRIES, false_alarm::ENTRIES, calibrated::ENTRIES];
