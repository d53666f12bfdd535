//! What a trend of strength says: verdict, level, slope and bands ahead.

use alloc::vec::Vec;

use crate::quantity::{Day, Interval};

/// What the slope says.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum TrendVerdict {
    /// Too few estimates, or over too few days.
    NotEnoughHistory,
    /// No change that can be told from noise. Holding is a success.
    WithinNoise,
    /// Rising.
    Rising,
    /// Falling.
    Falling,
}

/// The latent level at one day.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StrengthLevel {
    /// The day.
    pub day: Day,
    /// Level in kg, given all estimates.
    pub level: f64,
    /// Its standard error in kg, what all estimates share not included.
    pub standard_error: f64,
    /// That day's form: estimate less what was expected, in standard deviations.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub form: Option<f64>,
}

/// The slope over the window.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Slope {
    /// Change in kg a week.
    pub kg_per_week: f64,
    /// Its interval in kg a week.
    pub interval: Interval,
    /// Probability that strength is rising.
    pub probability_rising: f64,
    /// Two estimates closer than this, in kg, do not differ for certain (95 %).
    pub smallest_real_difference: f64,
    /// Estimates in the window.
    pub estimates: u32,
}

/// Where the level may lie later.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StrengthForecast {
    /// The day.
    pub day: Day,
    /// Most likely level in kg if the trend goes on.
    pub level: f64,
    /// Its band in kg.
    pub band: Interval,
}

/// The trend of one lift.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TrendReport {
    /// What the slope says.
    pub verdict: TrendVerdict,
    /// Level at the last estimate, with what all estimates share.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub level_now: Option<Interval>,
    /// The slope, where there is enough history.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub slope: Option<Slope>,
    /// The level at each estimate, over the whole history.
    pub path: Vec<StrengthLevel>,
    /// Bands ahead, where there is enough history.
    pub forecast: Vec<StrengthForecast>,
    /// Whether estimates of different kinds are mixed in the window: part of a change may be the change of method.
    pub mixed_kinds: bool,
    /// Estimates far from their neighbours that were taken in only as far as believable: look at them.
    pub outliers: u32,
}
