//! Published parameters of responses, by name: for teaching, and as a warning about how far apart they lie.

use super::impulse::MORTON_1990;
use super::impulse::{ImpulseResponse, TimeConstants};
use super::variable_response::{BUSSO_2003, VariableResponse};
use crate::error::Error;
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const BUSSO_1994: Source = Source {
    id: "busso-1994",
    citation: "Busso T, Candau R, Lacour JR. Fatigue and fitness modelled from the effects of training on performance. Eur J Appl Physiol 1994;69:50-54",
    doi: None,
};

const HELLARD_2006: Source = Source {
    id: "hellard-2006",
    citation: "Hellard P, Avalos M, Lacoste L, Barale F, Chatard JC, Millet GP. Assessing the limitations of the Banister model in monitoring training. J Sports Sci 2006;24(5):509-520",
    doi: Some("10.1080/02640410500244697"),
};

formula! {
    "dose.illustrative_response",
    /// The numbers that textbooks draw the curve with: 45 and 15 days, gains 1 and 2.
    ///
    /// # Formula
    /// Fixed numbers over the given baseline.
    ///
    /// # Domain
    /// An illustration from running, not a norm for anyone.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range` for the baseline.
    ///
    /// # Source
    /// Recalled as the starting values of Morton, Fitz-Clarke and Banister 1990 for runners; 42 to 45 and 7 to 15 days
    /// circulate.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::illustrative_response(100.0)?.times().fitness_days(), 45.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn illustrative_response(baseline: f64) -> Result<ImpulseResponse, Error> {
        ImpulseResponse::new(baseline, 1.0, 2.0, 45.0, 15.0)
    }
    source: MORTON_1990, place: "starting values", standing: Published, seen: Memory,
    population: "runners, for illustration",
}

formula! {
    "dose.hammer_thrower_times_busso_1994",
    /// Time constants fitted to one hammer thrower: 60 and 13 days.
    ///
    /// # Formula
    /// Fixed numbers.
    ///
    /// # Domain
    /// One athlete.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Busso, Candau and Lacour 1994, as a later article prints it.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::hammer_thrower_times_busso_1994()?.fatigue_days(), 13.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn hammer_thrower_times_busso_1994() -> Result<TimeConstants, Error> {
        TimeConstants::new(60.0, 13.0)
    }
    source: BUSSO_1994, place: "results", standing: Published, seen: Secondary, copies: "one later article",
    population: "one hammer thrower",
}

formula! {
    "dose.mean_variable_response_busso_2003",
    /// Mean parameters of the variable response in six cyclists, over the given baseline in watts.
    ///
    /// # Formula
    /// Fixed numbers: 30.8, 16.8 and 2.3 days; gains 0.031 and 0.000035.
    ///
    /// # Domain
    /// Six untrained people cycling, performance in watts. Recalled; to be checked before use.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range` for the baseline.
    ///
    /// # Source
    /// Busso 2003; recalled, the abstract does not print them.
    ///
    /// # Examples
    /// ```
    /// assert!(bismar::dose::mean_variable_response_busso_2003(250.0).is_ok());
    /// ```
    pub fn mean_variable_response_busso_2003(baseline: f64) -> Result<VariableResponse, Error> {
        VariableResponse::new(baseline, 0.031, 0.000_035, TimeConstants::new(30.8, 16.8)?, 2.3)
    }
    source: BUSSO_2003, place: "mean parameters", standing: Published, seen: Memory,
    population: "6 untrained people, 15 weeks of cycling",
}

/// A fitted number with its bootstrap interval.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DaysWithInterval {
    /// Days.
    pub days: f64,
    /// Interval in days.
    pub interval: Interval,
}

/// How well the times of a response were known in nine swimmers.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TimesSpread {
    /// Time constant of fitness.
    pub fitness: DaysWithInterval,
    /// Time constant of fatigue.
    pub fatigue: DaysWithInterval,
    /// Days to recovery.
    pub recovery: DaysWithInterval,
    /// Days to the peak.
    pub peak: DaysWithInterval,
}

formula! {
    "dose.times_spread_hellard_2006",
    /// How poorly are the times of a response known even for athletes measured for years?
    ///
    /// # Formula
    /// Published means with 95 % bootstrap intervals, in days.
    ///
    /// # Domain
    /// Nine swimmers; R2 0.79. The parameters go together so strongly that no single one may be interpreted.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Hellard et al. 2006, abstract.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::times_spread_hellard_2006()?.fitness.interval.low(), 17.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn times_spread_hellard_2006() -> Result<TimesSpread, Error> {
        let days = |days, low, high| {
            Ok::<_, crate::error::Error>(DaysWithInterval { days, interval: Interval::new(low, high, 0.95)? })
        };
        Ok(TimesSpread {
            fitness: days(38.0, 17.0, 59.0)?,
            fatigue: days(19.0, 6.0, 32.0)?,
            recovery: days(19.0, 7.0, 35.0)?,
            peak: days(43.0, 25.0, 61.0)?,
        })
    }
    source: HELLARD_2006, place: "abstract", standing: Published, seen: Read, population: "9 swimmers",
    error: "R2 0.79 +- 0.13",
}

rows![
    illustrative_response,
    hammer_thrower_times_busso_1994,
    mean_variable_response_busso_2003,
    times_spread_hellard_2006,
];
