//! What a fit of a response asks for and what it answers: a curve with its uncertainty, or why there is none.

use alloc::boxed::Box;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::impulse::{ImpulseResponse, InitialState, LONGEST_TIME, ResponseForm, TimeConstants};
use super::set::above_zero;
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::Interval;

/// Performance measured on one day, in any unit that stays the same.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct MeasuredDay {
    /// Which day of the loads; 1 is the first.
    pub day: u32,
    /// What was measured.
    pub value: f64,
}

impl MeasuredDay {
    /// That value on that day.
    #[must_use]
    pub fn new(day: u32, value: f64) -> MeasuredDay {
        MeasuredDay { day, value }
    }
}

/// From how many days to how many.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DaysRange {
    /// The fewest days.
    pub low: f64,
    /// The most days.
    pub high: f64,
}

impl DaysRange {
    fn check(&self, field: &'static str) -> Result<(), Error> {
        above_zero(field, self.low, LONGEST_TIME, "days, above 0")?;
        above_zero(field, self.high, LONGEST_TIME, "days, above 0")?;
        if self.low < self.high {
            Ok(())
        } else {
            Err(Error::new(Code::IntervalReversed, field, self.low, Allowed::rule("low below high")))
        }
    }
}

/// How a response is fitted, and when the fit is refused.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FitOptions {
    /// Whether performance was measured before or after the day's session.
    pub form: ResponseForm,
    /// What the lifter brought to the first day.
    pub start: InitialState,
    /// Where the time constant of fitness is looked for.
    pub fitness_days: DaysRange,
    /// Where the time constant of fatigue is looked for.
    pub fatigue_days: DaysRange,
    /// Time constants to start from; a grid over the ranges where none are given.
    #[cfg_attr(feature = "serde", serde(default))]
    pub starts: Vec<TimeConstants>,
    /// Level of the prediction intervals.
    pub level: f64,
    /// Refused with fewer measurements.
    pub fewest_measurements: u32,
    /// Refused where a standard error is larger than this share of a gain or time constant.
    pub largest_relative_error: f64,
    /// Refused where one component fits as well: largest p value of the second.
    pub largest_p_value: f64,
    /// Refused where two parameters go together more than this.
    pub largest_correlation: f64,
}

impl FitOptions {
    /// Limits of this project (our choice): fitness 10 to 120 days, fatigue 1 to 40, 25 measurements, standard
    /// errors up to half the value, p up to 0.05, correlations up to 0.999, intervals of 95 %.
    #[must_use]
    pub const fn our_choice(form: ResponseForm, start: InitialState) -> FitOptions {
        FitOptions {
            form,
            start,
            fitness_days: DaysRange { low: 10.0, high: 120.0 },
            fatigue_days: DaysRange { low: 1.0, high: 40.0 },
            starts: Vec::new(),
            level: 0.95,
            fewest_measurements: 25,
            largest_relative_error: 0.5,
            largest_p_value: 0.05,
            largest_correlation: 0.999,
        }
    }

    pub(super) fn check(&self) -> Result<(), Error> {
        self.fitness_days.check("fitness_days")?;
        self.fatigue_days.check("fatigue_days")?;
        Interval::new(0.0, 0.0, self.level)?;
        numeric::within(
            Code::OutOfRange,
            "largest_relative_error",
            self.largest_relative_error,
            0.0,
            1e9,
            "",
        )?;
        numeric::within(Code::OutOfRange, "largest_p_value", self.largest_p_value, 0.0, 1.0, "")?;
        numeric::within(Code::OutOfRange, "largest_correlation", self.largest_correlation, 0.0, 1.0, "")?;
        // One more than the five parameters, or there is no standard error at all.
        if self.fewest_measurements < 6 {
            let rule = Allowed::rule("at least 6");
            return Err(Error::new(Code::OutOfRange, "fewest_measurements", self.fewest_measurements, rule));
        }
        if self.starts.len() > MOST_STARTS {
            return Err(Error::new(
                Code::OutOfRange,
                "starts",
                self.starts.len(),
                Allowed::rule("at most 64"),
            ));
        }
        Ok(())
    }
}

const MOST_STARTS: usize = 64;

/// One of the five parameters of a response.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum ResponseParameter {
    /// Performance without training.
    Baseline,
    /// Gain of fitness.
    FitnessGain,
    /// Gain of fatigue.
    FatigueGain,
    /// Time constant of fitness.
    FitnessDays,
    /// Time constant of fatigue.
    FatigueDays,
}

impl ResponseParameter {
    /// In the order of the fit: linear ones first.
    pub(super) const ALL: [ResponseParameter; 5] = [
        ResponseParameter::Baseline,
        ResponseParameter::FitnessGain,
        ResponseParameter::FatigueGain,
        ResponseParameter::FitnessDays,
        ResponseParameter::FatigueDays,
    ];
}

/// Why the data cannot carry a fit, with the numbers.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum RefusalReason {
    /// Too few days were measured.
    TooFewMeasurements {
        /// Measured.
        given: u32,
        /// Needed.
        needed: u32,
    },
    /// Every day had the same load, or every measurement the same value.
    NothingVaries,
    /// No start led to an answer.
    NoAnswerFound,
    /// The best value lies on the edge of where it was looked for.
    OnEdge {
        /// Which parameter.
        parameter: ResponseParameter,
        /// The edge.
        value: f64,
    },
    /// The best fit leaves this component out.
    NoSuchComponent {
        /// Its gain.
        parameter: ResponseParameter,
    },
    /// One component fits as well as two.
    OneComponentSuffices {
        /// Approximate p value of the second component (F test).
        p_value: f64,
    },
    /// A parameter is hardly known.
    TooUncertain {
        /// Which parameter.
        parameter: ResponseParameter,
        /// Its best value.
        value: f64,
        /// Its standard error.
        standard_error: f64,
    },
    /// Two parameters cannot be told apart.
    Inseparable {
        /// One.
        first: ResponseParameter,
        /// The other.
        second: ResponseParameter,
        /// Their correlation.
        correlation: f64,
    },
}

/// Standard errors of the five parameters.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ResponseErrors {
    /// Of the baseline.
    pub baseline: f64,
    /// Of the gain of fitness.
    pub fitness_gain: f64,
    /// Of the gain of fatigue.
    pub fatigue_gain: f64,
    /// Of the time constant of fitness.
    pub fitness_days: f64,
    /// Of the time constant of fatigue.
    pub fatigue_days: f64,
}

/// Two parameters and how they go together.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ParameterCorrelation {
    /// One parameter of the pair.
    pub first: ResponseParameter,
    /// The other one.
    pub second: ResponseParameter,
    /// Their correlation.
    pub correlation: f64,
}

/// One day of a fitted curve.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SimulatedDay {
    /// Which day; 1 is the first.
    pub day: u32,
    /// Simulated performance.
    pub value: f64,
    /// Where a measurement on that day would lie if the model were true.
    pub interval: Interval,
}

/// A fitted response. A simulation for teaching: a curve through one person's past, not a promise.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ResponseFit {
    /// The parameters.
    pub response: ImpulseResponse,
    /// Their standard errors (linear approximation).
    pub standard_errors: ResponseErrors,
    /// Sum of squared residuals.
    pub residual_squares: f64,
    /// Residual standard deviation, in the unit of the measurements.
    pub residual_deviation: f64,
    /// Measurements less parameters.
    pub degrees: u32,
    /// Share of the variance explained.
    pub explained: f64,
    /// Approximate p value of the second component.
    pub one_component_p_value: f64,
    /// The two parameters that go together most: no single value of them may be interpreted.
    pub strongest_correlation: ParameterCorrelation,
    /// The curve with prediction intervals, one entry for each day of the loads, days to come included.
    pub curve: Vec<SimulatedDay>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// A fit, or why there is none.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum FitAnswer {
    /// The data carry it.
    Fitted(Box<ResponseFit>),
    /// They do not; every reason found.
    Refused(Vec<RefusalReason>),
}
