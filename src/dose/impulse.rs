//! Fitness and fatigue: two traces that each session leaves, one helping and slow, one hindering and quick.
//!
//! A simulation for teaching. Parameters are always given by the user or fitted to that user's own record; the
//! result is a curve to learn from, never a predicted maximum.

use alloc::vec::Vec;

use super::daily::{DailyLoad, LoadTotal, complete};
use super::set::above_zero;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::source::{Source, formula, rows};

pub(super) const BUSSO_1991: Source = Source {
    id: "busso-1991",
    citation: "Busso T, Carasso C, Lacour JR. Adequacy of a systems structure in the modeling of training effects on performance. J Appl Physiol 1991;71:2044-2049",
    doi: None,
};

pub(super) const MORTON_1990: Source = Source {
    id: "morton-1990",
    citation: "Morton RH, Fitz-Clarke JR, Banister EW. Modeling human performance in running. J Appl Physiol 1990;69:1171-1177",
    doi: None,
};

/// Longest time constant taken, in days.
pub(super) const LONGEST_TIME: f64 = 3660.0;
/// Largest gain taken; any unit of performance fits below.
const LARGEST_GAIN: f64 = 1e9;

/// The two time constants of a response, in days: fitness fades more slowly than fatigue.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Times"))]
pub struct TimeConstants {
    fitness_days: f64,
    fatigue_days: f64,
}

impl TimeConstants {
    /// Time constants in days.
    ///
    /// # Errors
    /// `out_of_range` at 0 or above 3660; `time_constants_out_of_order` unless fitness is the slower.
    pub fn new(fitness_days: f64, fatigue_days: f64) -> Result<TimeConstants, Error> {
        let fitness_days = above_zero("fitness_days", fitness_days, LONGEST_TIME, "days, above 0")?;
        let fatigue_days = above_zero("fatigue_days", fatigue_days, LONGEST_TIME, "days, above 0")?;
        if fitness_days > fatigue_days {
            Ok(TimeConstants { fitness_days, fatigue_days })
        } else {
            let rule = Allowed::rule("above fatigue_days");
            Err(Error::new(Code::TimeConstantsOutOfOrder, "fitness_days", fitness_days, rule))
        }
    }

    /// Days in which fitness falls to 37 %.
    #[must_use]
    pub const fn fitness_days(&self) -> f64 {
        self.fitness_days
    }

    /// Days in which fatigue falls to 37 %.
    #[must_use]
    pub const fn fatigue_days(&self) -> f64 {
        self.fatigue_days
    }
}

/// A two-component response: baseline, gains and time constants.
///
/// Invariant: finite, gains above 0, fitness slower than fatigue.
///
/// ```
/// use bismar::dose::ImpulseResponse;
///
/// assert!(ImpulseResponse::new(0.0, 1.0, 2.0, 45.0, 15.0).is_ok());
/// assert!(ImpulseResponse::new(0.0, 1.0, 2.0, 15.0, 45.0).is_err());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Response"))]
pub struct ImpulseResponse {
    baseline: f64,
    fitness_gain: f64,
    fatigue_gain: f64,
    fitness_days: f64,
    fatigue_days: f64,
}

pub(super) fn baseline_within(baseline: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, "baseline", baseline, -LARGEST_GAIN, LARGEST_GAIN, "")
}

pub(super) fn gain_above_zero(field: &'static str, gain: f64) -> Result<f64, Error> {
    above_zero(field, gain, LARGEST_GAIN, "performance for one unit of load, above 0")
}

impl ImpulseResponse {
    /// A response: baseline performance, the two gains, the two time constants in days.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`; `time_constants_out_of_order`.
    pub fn new(
        baseline: f64,
        fitness_gain: f64,
        fatigue_gain: f64,
        fitness_days: f64,
        fatigue_days: f64,
    ) -> Result<ImpulseResponse, Error> {
        let times = TimeConstants::new(fitness_days, fatigue_days)?;
        Ok(ImpulseResponse {
            baseline: baseline_within(baseline)?,
            fitness_gain: gain_above_zero("fitness_gain", fitness_gain)?,
            fatigue_gain: gain_above_zero("fatigue_gain", fatigue_gain)?,
            fitness_days: times.fitness_days,
            fatigue_days: times.fatigue_days,
        })
    }

    /// Performance without any training.
    #[must_use]
    pub const fn baseline(&self) -> f64 {
        self.baseline
    }

    /// Performance gained for one unit of fitness.
    #[must_use]
    pub const fn fitness_gain(&self) -> f64 {
        self.fitness_gain
    }

    /// Performance lost for one unit of fatigue.
    #[must_use]
    pub const fn fatigue_gain(&self) -> f64 {
        self.fatigue_gain
    }

    /// The two time constants.
    #[must_use]
    pub const fn times(&self) -> TimeConstants {
        TimeConstants { fitness_days: self.fitness_days, fatigue_days: self.fatigue_days }
    }

    fn performance(&self, fitness: f64, fatigue: f64) -> f64 {
        self.baseline + self.fitness_gain * fitness - self.fatigue_gain * fatigue
    }
}

/// What the lifter brings to the first day, at the end of the day before it.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum InitialState {
    /// No training at all before: false for anyone already trained, whose curve then falls on the first day.
    NoHistory,
    /// The same load every day for a long time before.
    SteadyLoad(LoadTotal),
    /// These traces, in units of load.
    Traces {
        /// Fitness.
        fitness: LoadTotal,
        /// Fatigue.
        fatigue: LoadTotal,
    },
}

impl InitialState {
    /// Traces of fitness and fatigue at the end of day 0.
    pub(super) fn traces(self, fitness: &Fade, fatigue: &Fade) -> (f64, f64) {
        match self {
            InitialState::NoHistory => (0.0, 0.0),
            InitialState::SteadyLoad(load) => (fitness.steady(load.value()), fatigue.steady(load.value())),
            InitialState::Traces { fitness, fatigue } => (fitness.value(), fatigue.value()),
        }
    }
}

/// What is left of a trace after one day.
#[derive(Clone, Copy)]
pub(super) struct Fade(f64);

impl Fade {
    pub(super) fn over(days: f64) -> Fade {
        Fade(numeric::exp(-1.0 / days))
    }

    pub(super) const fn left(self) -> f64 {
        self.0
    }

    /// The trace that a steady daily load holds.
    pub(super) fn steady(self, load: f64) -> f64 {
        load / (1.0 - self.0)
    }
}

/// One day of a simulated response.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ResponseDay {
    /// Trace of fitness, in units of load.
    pub fitness: f64,
    /// Trace of fatigue, in units of load.
    pub fatigue: f64,
    /// Simulated performance, in the unit of the baseline.
    pub performance: f64,
}

/// When on the day the curve is read: before the day's session counts, or after.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ResponseForm {
    /// The load of a day acts from the next day on.
    BeforeSession,
    /// The load of a day acts on that day, undiminished.
    AfterSession,
}

/// The traces of a run of days, in either form.
fn respond(
    days: &[DailyLoad],
    response: &ImpulseResponse,
    start: InitialState,
    form: ResponseForm,
) -> Result<Vec<ResponseDay>, Error> {
    let (slow, quick) = (Fade::over(response.fitness_days), Fade::over(response.fatigue_days));
    let (mut fitness, mut fatigue) = start.traces(&slow, &quick);
    let day = |load: f64| {
        let before = (fitness * slow.left(), fatigue * quick.left());
        (fitness, fatigue) = (before.0 + load, before.1 + load);
        let (fitness, fatigue) =
            if form == ResponseForm::BeforeSession { before } else { (fitness, fatigue) };
        let performance = numeric::finite("performance", response.performance(fitness, fatigue))?;
        Ok(ResponseDay { fitness, fatigue, performance })
    };
    complete(days)?.into_iter().map(day).collect()
}

formula! {
    "dose.impulse_response_before_session",
    /// How do fitness, fatigue and simulated performance run, read each day before its session?
    ///
    /// # Formula
    /// `p(n) = p* + k1 sum_(i<n) w(i) e^(-(n-i)/tau1) - k2 sum_(i<n) w(i) e^(-(n-i)/tau2)`: the load of day i acts
    /// from day i+1. Equals the [after-session form](impulse_response_after_session) of the day before, faded by
    /// one day; the two agree on every day without load and differ by that day's load otherwise.
    ///
    /// # Domain
    /// Complete days. A teaching simulation: double load has double effect, sessions do not interact. In 8
    /// untrained people the fatigue part improved the fit in 2.
    ///
    /// # Errors
    /// `day_not_recorded`.
    ///
    /// # Source
    /// Busso, Carasso and Lacour 1991 (abstract read; the form recalled).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, ImpulseResponse, InitialState, impulse_response_before_session};
    ///
    /// let response = ImpulseResponse::new(0.0, 1.0, 2.0, 45.0, 15.0)?;
    /// let days = [DailyLoad::recorded(100.0)?, DailyLoad::Rested];
    /// let curve = impulse_response_before_session(&days, response, InitialState::NoHistory)?;
    /// assert_eq!(curve[0].performance, 0.0);
    /// assert!((curve[1].performance + 89.299110).abs() < 5e-7);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn impulse_response_before_session(
        days: &[DailyLoad], response: ImpulseResponse, start: InitialState
    ) -> Result<Vec<ResponseDay>, Error> {
        respond(days, &response, start, ResponseForm::BeforeSession)
    }
    source: BUSSO_1991, place: "the model", standing: Published, seen: Memory,
    population: "8 untrained people, endurance", domain: "teaching; fitness slower than fatigue",
}

formula! {
    "dose.impulse_response_after_session",
    /// How do fitness, fatigue and simulated performance run, read each day after its session?
    ///
    /// # Formula
    /// `g(t) = g(t-1) e^(-1/tau1) + w(t)`, `h(t) = h(t-1) e^(-1/tau2) + w(t)`, `p(t) = p* + k1 g(t) - k2 h(t)`: the
    /// load of a day acts undiminished on that day.
    ///
    /// # Domain
    /// As [`impulse_response_before_session`]. Mixing up the two forms shifts a curve by one day; each has its name.
    ///
    /// # Errors
    /// `day_not_recorded`.
    ///
    /// # Source
    /// Morton, Fitz-Clarke and Banister 1990, recalled.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, ImpulseResponse, InitialState, impulse_response_after_session};
    ///
    /// let response = ImpulseResponse::new(0.0, 1.0, 2.0, 45.0, 15.0)?;
    /// let days = [DailyLoad::recorded(100.0)?, DailyLoad::Rested];
    /// let curve = impulse_response_after_session(&days, response, InitialState::NoHistory)?;
    /// assert_eq!(curve[0].performance, -100.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn impulse_response_after_session(
        days: &[DailyLoad], response: ImpulseResponse, start: InitialState
    ) -> Result<Vec<ResponseDay>, Error> {
        respond(days, &response, start, ResponseForm::AfterSession)
    }
    source: MORTON_1990, place: "the recursion", standing: Published, seen: Memory,
    domain: "teaching; fitness slower than fatigue",
}

formula! {
    "dose.steady_trace",
    /// Which trace does the same load every day hold in the end?
    ///
    /// # Formula
    /// `w / (1 - e^(-1/tau))`, after the session.
    ///
    /// # Domain
    /// Time constants above 0, to 3660 days.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Sum of the geometric series.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{LoadTotal, steady_trace};
    ///
    /// assert!((steady_trace(LoadTotal::new(100.0)?, 45.0)? - 4550.185).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn steady_trace(daily_load: LoadTotal, time_constant: f64) -> Result<f64, Error> {
        let days = above_zero("time_constant", time_constant, LONGEST_TIME, "days, above 0")?;
        numeric::finite("daily_load", Fade::over(days).steady(daily_load.value()))
    }
    source: crate::source::ARITHMETIC, place: "geometric series", standing: Derived, seen: NotApplicable,
}

rows![impulse_response_before_session, impulse_response_after_session, steady_trace];

#[cfg(feature = "serde")]
mod wire {
    //! Checked on the way in.
    use super::{ImpulseResponse, TimeConstants};
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "TimeConstants")]
    pub(super) struct Times {
        fitness_days: f64,
        fatigue_days: f64,
    }

    impl<'de> Deserialize<'de> for TimeConstants {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<TimeConstants, D::Error> {
            let wire = Times::deserialize(from)?;
            TimeConstants::new(wire.fitness_days, wire.fatigue_days).map_err(de::Error::custom)
        }
    }

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "ImpulseResponse")]
    pub(super) struct Response {
        baseline: f64,
        fitness_gain: f64,
        fatigue_gain: f64,
        fitness_days: f64,
        fatigue_days: f64,
    }

    impl<'de> Deserialize<'de> for ImpulseResponse {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<ImpulseResponse, D::Error> {
            let wire = Response::deserialize(from)?;
            ImpulseResponse::new(
                wire.baseline,
                wire.fitness_gain,
                wire.fatigue_gain,
                wire.fitness_days,
                wire.fatigue_days,
            )
            .map_err(de::Error::custom)
        }
    }
}
