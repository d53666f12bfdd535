//! What is lost when training stops, as published.

use alloc::vec::Vec;

use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const LEMMER_2000: Source = Source {
    id: "lemmer-2000",
    citation: "Lemmer JT, Hurlbut DE, Martel GF, et al. Age and gender responses to strength training and detraining. Med Sci Sports Exerc 2000;32:1505-1512",
    doi: Some("10.1097/00005768-200008000-00021"),
};

const BOSQUET_2013: Source = Source {
    id: "bosquet-2013",
    citation: "Bosquet L, Berryman N, Dupuy O, et al. Effect of training cessation on muscular performance: a meta-analysis. Scand J Med Sci Sports 2013;23:e140-149",
    doi: Some("10.1111/sms.12047"),
};

const GRGIC_2022: Source = Source {
    id: "grgic-2022",
    citation: "Grgic J. Use it or lose it? A meta-analysis on the effects of resistance training cessation (detraining) on muscle size in older adults. Int J Environ Res Public Health 2022;19(21):14048",
    doi: Some("10.3390/ijerph192114048"),
};

const YANG_2022: Source = Source {
    id: "yang-2022",
    citation: "Yang Y, et al. Training session and detraining duration affect lower limb muscle strength maintenance in middle-aged and older adults. J Aging Phys Act 2022;30:552-566",
    doi: None,
};

/// The two groups that were compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum BreakGroup {
    /// 20 to 30 years.
    Young,
    /// 65 to 75 years.
    Older,
}

/// Weeks without training in the comparison.
const LEMMER_WEEKS: f64 = 31.0;

/// The week up to which next to nothing was lost.
const LEMMER_KNEE: f64 = 12.0;

/// The part lost between weeks 12 and 31.
const fn late_loss(group: BreakGroup) -> f64 {
    match group {
        BreakGroup::Young => 0.06,
        BreakGroup::Older => 0.13,
    }
}

formula! {
    "dose.strength_loss_lemmer_2000",
    /// What part of the one-repetition maximum was lost after 31 weeks without training?
    ///
    /// # Formula
    /// 8 % at 20 to 30 years, 14 % at 65 to 75 years.
    ///
    /// # Domain
    /// After nine weeks of training, one exercise. Most of both groups' loss came after week 12.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Lemmer et al. 2000, abstract: 8 +- 2 % and 14 +- 2 %.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{BreakGroup, strength_loss_lemmer_2000};
    ///
    /// assert_eq!(strength_loss_lemmer_2000(BreakGroup::Older)?, 0.14);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn strength_loss_lemmer_2000(group: BreakGroup) -> Result<f64, Error> {
        Ok(match group { BreakGroup::Young => 0.08, BreakGroup::Older => 0.14 })
    }
    source: LEMMER_2000, place: "abstract", standing: Published, seen: Read,
    population: "18 adults of 20-30 and 23 of 65-75 years, knee extension", domain: "31 weeks without training",
    error: "2 points of percent either way",
}

formula! {
    "dose.strength_kept_after_break",
    /// What part of strength was kept after so many weeks off, by the two times at which it was measured?
    ///
    /// # Formula
    /// Two straight pieces: from 1 to 0.98 (young) or 0.99 (older) at week 12, and from there to 0.92 or 0.86 at week
    /// 31. The source prints 8 and 14 % lost in 31 weeks, of which 6 and 13 % went in weeks 12 to 31; the rest is left
    /// for the first 12, less than its error.
    ///
    /// # Domain
    /// 0 to 31 weeks, after nine weeks of training, knee extension. Between the two times nobody was measured. Others
    /// lost more: after longer or heavier training, or by the kind of strength; power goes before strength. No forecast
    /// for anyone, and never to be carried on for years.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Follows from Lemmer et al. 2000 by straight lines between its three times.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{BreakGroup, strength_kept_after_break};
    ///
    /// assert!((strength_kept_after_break(31.0, BreakGroup::Young)? - 0.92).abs() < 1e-12);
    /// // Three months off cost the older group about a hundredth.
    /// assert!((strength_kept_after_break(12.0, BreakGroup::Older)? - 0.99).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn strength_kept_after_break(weeks: f64, group: BreakGroup) -> Result<f64, Error> {
        let weeks = numeric::within(Code::OutOfRange, "weeks", weeks, 0.0, LEMMER_WEEKS, "weeks")?;
        let late = late_loss(group);
        let early = strength_loss_lemmer_2000(group)? - late;
        if weeks <= LEMMER_KNEE {
            return Ok(1.0 - early * weeks / LEMMER_KNEE);
        }
        Ok(1.0 - early - late * (weeks - LEMMER_KNEE) / (LEMMER_WEEKS - LEMMER_KNEE))
    }
    source: LEMMER_2000, place: "abstract; straight lines between its three times", standing: Derived,
    seen: NotApplicable,
    population: "18 adults of 20-30 and 23 of 65-75 years, knee extension", domain: "0 to 31 weeks",
}

/// What a pooled effect is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum StoppingOutcome {
    /// Strength below the maximum.
    SubmaximalStrength,
    /// Maximal force.
    MaximalForce,
    /// Power.
    Power,
    /// Muscle size of older adults from before to after training.
    SizeThroughTraining,
    /// Muscle size of older adults from training to after stopping, all durations.
    SizeAfterStopping,
    /// The same after 12 to 24 weeks.
    #[cfg_attr(feature = "serde", serde(rename = "size_after_12_to_24_weeks"))]
    SizeAfter12To24Weeks,
    /// The same after 31 to 52 weeks.
    #[cfg_attr(feature = "serde", serde(rename = "size_after_31_to_52_weeks"))]
    SizeAfter31To52Weeks,
    /// Lower-limb strength kept 4 to 6 weeks after under 24 weeks of high-intensity training.
    #[cfg_attr(feature = "serde", serde(rename = "strength_kept_4_to_6_weeks"))]
    StrengthKept4To6Weeks,
    /// Lower-limb strength kept 8 to 16 weeks after under 24 weeks of high-intensity training.
    #[cfg_attr(feature = "serde", serde(rename = "strength_kept_8_to_16_weeks"))]
    StrengthKept8To16Weeks,
    /// Lower-limb strength kept after 24 weeks or more of low or medium intensity.
    StrengthKeptAfterLongTraining,
}

/// A standardised mean difference with its 95 % interval.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StoppingEffect {
    /// What it is about.
    pub outcome: StoppingOutcome,
    /// Standardised mean difference; below 0 is loss.
    pub effect: f64,
    /// Its interval.
    pub interval: Interval,
}

fn effect(outcome: StoppingOutcome, effect: f64, low: f64, high: f64) -> Result<StoppingEffect, Error> {
    Ok(StoppingEffect { outcome, effect, interval: Interval::new(low, high, 0.95)? })
}

formula! {
    "dose.stopping_effects_bosquet_2013",
    /// How much strength and power is lost when training stops?
    ///
    /// # Formula
    /// Published pooled effects.
    ///
    /// # Domain
    /// 103 studies. The loss grows with the weeks and is larger over 65.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Bosquet et al. 2013, abstract.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::stopping_effects_bosquet_2013()?[1].effect, -0.46);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn stopping_effects_bosquet_2013() -> Result<Vec<StoppingEffect>, Error> {
        Ok(alloc::vec![
            effect(StoppingOutcome::SubmaximalStrength, -0.62, -0.80, -0.45)?,
            effect(StoppingOutcome::MaximalForce, -0.46, -0.54, -0.37)?,
            effect(StoppingOutcome::Power, -0.20, -0.28, -0.13)?,
        ])
    }
    source: BOSQUET_2013, place: "abstract", standing: Published, seen: Read, population: "103 studies",
}

formula! {
    "dose.stopping_effects_grgic_2022",
    /// How much muscle size do older adults gain by training and lose by stopping?
    ///
    /// # Formula
    /// Published pooled effects.
    ///
    /// # Domain
    /// Older adults. No clear loss at 12 to 24 weeks, a clear one at 31 to 52.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Grgic 2022, abstract.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::stopping_effects_grgic_2022()?.len(), 4);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn stopping_effects_grgic_2022() -> Result<Vec<StoppingEffect>, Error> {
        Ok(alloc::vec![
            effect(StoppingOutcome::SizeThroughTraining, 0.99, 0.63, 1.36)?,
            effect(StoppingOutcome::SizeAfterStopping, -0.83, -1.30, -0.36)?,
            effect(StoppingOutcome::SizeAfter12To24Weeks, -0.60, -1.21, 0.01)?,
            effect(StoppingOutcome::SizeAfter31To52Weeks, -1.11, -1.75, -0.47)?,
        ])
    }
    source: GRGIC_2022, place: "abstract", standing: Published, seen: Read, population: "older adults",
}

formula! {
    "dose.stopping_effects_yang_2022",
    /// How much lower-limb strength do middle-aged and older adults keep after stopping?
    ///
    /// # Formula
    /// Published pooled effects against no training.
    ///
    /// # Domain
    /// 15 trials, 383 people. Gains were lost where the break was longer than the training had been.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Yang et al. 2022, abstract.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::stopping_effects_yang_2022()?[2].effect, 1.16);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn stopping_effects_yang_2022() -> Result<Vec<StoppingEffect>, Error> {
        Ok(alloc::vec![
            effect(StoppingOutcome::StrengthKept4To6Weeks, 0.71, 0.34, 1.08)?,
            effect(StoppingOutcome::StrengthKept8To16Weeks, 1.35, 0.66, 2.04)?,
            effect(StoppingOutcome::StrengthKeptAfterLongTraining, 1.16, 0.38, 1.94)?,
        ])
    }
    source: YANG_2022, place: "abstract", standing: Published, seen: Read,
    population: "383 middle-aged and older adults, 15 trials",
}

rows![
    strength_loss_lemmer_2000,
    strength_kept_after_break,
    stopping_effects_bosquet_2013,
    stopping_effects_grgic_2022,
    stopping_effects_yang_2022,
];
