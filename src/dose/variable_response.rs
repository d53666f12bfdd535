//! Fitness and fatigue where hard recent days make the next one cost more.

use alloc::vec::Vec;

use super::daily::{DailyLoad, complete};
use super::impulse::{Fade, LONGEST_TIME, TimeConstants, baseline_within, gain_above_zero};
use super::set::above_zero;
use crate::error::Error;
use crate::numeric;
use crate::source::{Source, formula, rows};

pub(super) const BUSSO_2003: Source = Source {
    id: "busso-2003",
    citation: "Busso T. Variable dose-response relationship between exercise training and performance. Med Sci Sports Exerc 2003;35(7):1188-1195",
    doi: Some("10.1249/01.MSS.0000074465.13621.37"),
};

/// A response whose fatigue gain grows with recent load.
///
/// Invariant: finite, gains and time constants above 0, fitness slower than fatigue.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct VariableResponse {
    baseline: f64,
    fitness_gain: f64,
    fatigue_gain_rate: f64,
    fitness_days: f64,
    fatigue_days: f64,
    gain_days: f64,
}

impl VariableResponse {
    /// Baseline; fitness gain `k1`; rate `k3` at which the fatigue gain grows; time constants of fitness, fatigue
    /// and of that growth, in days.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`; `time_constants_out_of_order`.
    pub fn new(
        baseline: f64,
        fitness_gain: f64,
        fatigue_gain_rate: f64,
        times: TimeConstants,
        gain_days: f64,
    ) -> Result<VariableResponse, Error> {
        Ok(VariableResponse {
            baseline: baseline_within(baseline)?,
            fitness_gain: gain_above_zero("fitness_gain", fitness_gain)?,
            fatigue_gain_rate: gain_above_zero("fatigue_gain_rate", fatigue_gain_rate)?,
            fitness_days: times.fitness_days(),
            fatigue_days: times.fatigue_days(),
            gain_days: above_zero("gain_days", gain_days, LONGEST_TIME, "days, above 0")?,
        })
    }
}

/// One day of a simulated variable response, read before its session.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct VariableDay {
    /// Trace of fitness, in units of load.
    pub fitness: f64,
    /// What fatigue takes off performance.
    pub fatigue: f64,
    /// The gain with which this day's load enters fatigue.
    pub fatigue_gain: f64,
    /// Simulated performance, in the unit of the baseline.
    pub performance: f64,
}

formula! {
    "dose.variable_response_busso_2003",
    /// How does simulated performance run where hard recent days make the next one cost more?
    ///
    /// # Formula
    /// `p(n) = p* + k1 sum_(i<n) w(i) e^(-(n-i)/tau1) - sum_(i<n) k2(i) w(i) e^(-(n-i)/tau2)` with
    /// `k2(i) = k3 sum_(j<=i) w(j) e^(-(i-j)/tau3)`; before the session, no history.
    ///
    /// # Domain
    /// Complete days. A teaching simulation. Daily load then has an inverted U: more helps up to a point. Measured
    /// in 6 untrained people over 15 weeks of cycling (standard error 6.47 W against 9.20 to 10.31 W without it).
    ///
    /// # Errors
    /// `day_not_recorded`.
    ///
    /// # Source
    /// Busso 2003 (abstract read; formula recalled).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, TimeConstants, VariableResponse, variable_response_busso_2003};
    ///
    /// let response = VariableResponse::new(200.0, 0.031, 0.000035, TimeConstants::new(30.8, 16.8)?, 2.3)?;
    /// let days = [DailyLoad::recorded(100.0)?, DailyLoad::Rested];
    /// let curve = variable_response_busso_2003(&days, response)?;
    /// assert!((curve[0].fatigue_gain - 0.0035).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn variable_response_busso_2003(days: &[DailyLoad], response: VariableResponse) -> Result<Vec<VariableDay>, Error> {
        let (slow, quick) = (Fade::over(response.fitness_days).left(), Fade::over(response.fatigue_days).left());
        let memory = Fade::over(response.gain_days).left();
        let (mut fitness, mut fatigue, mut recent) = (0.0, 0.0, 0.0);
        let day = |load: f64| {
            let before = (fitness * slow, fatigue * quick);
            recent = recent * memory + load;
            let fatigue_gain = response.fatigue_gain_rate * recent;
            (fitness, fatigue) = (before.0 + load, before.1 + fatigue_gain * load);
            let performance = response.baseline + response.fitness_gain * before.0 - before.1;
            let performance = numeric::finite("performance", performance)?;
            Ok(VariableDay { fitness: before.0, fatigue: before.1, fatigue_gain, performance })
        };
        complete(days)?.into_iter().map(day).collect()
    }
    source: BUSSO_2003, place: "the model", standing: Published, seen: Memory,
    population: "6 untrained people, 15 weeks of cycling", domain: "teaching", error: "standard error 6.47 W",
}

rows![variable_response_busso_2003];

#[cfg(feature = "serde")]
mod wire {
    //! Checked on the way in.
    use super::{TimeConstants, VariableResponse};
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "VariableResponse")]
    pub(super) struct Wire {
        baseline: f64,
        fitness_gain: f64,
        fatigue_gain_rate: f64,
        fitness_days: f64,
        fatigue_days: f64,
        gain_days: f64,
    }

    impl<'de> Deserialize<'de> for VariableResponse {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<VariableResponse, D::Error> {
            let wire = Wire::deserialize(from)?;
            let times =
                TimeConstants::new(wire.fitness_days, wire.fatigue_days).map_err(de::Error::custom)?;
            VariableResponse::new(
                wire.baseline,
                wire.fitness_gain,
                wire.fatigue_gain_rate,
                times,
                wire.gain_days,
            )
            .map_err(de::Error::custom)
        }
    }
}
