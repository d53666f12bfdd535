//! Tapers: what lifters and endurance athletes report, and three shapes of the way down.

use super::push_up::MeanAndDeviation;
use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{OURS, Source, formula, rows};

const GRGIC_MIKULIC_2017: Source = Source {
    id: "grgic-mikulic-2017",
    citation: "Grgic J, Mikulic P. Tapering practices of Croatian open-class powerlifting champions. J Strength Cond Res 2017;31(9):2371-2378",
    doi: Some("10.1519/JSC.0000000000001699"),
};

const BOSQUET_2007: Source = Source {
    id: "bosquet-2007",
    citation: "Bosquet L, Montpetit J, Arvisais D, Mujika I. Effects of tapering on performance: a meta-analysis. Med Sci Sports Exerc 2007;39:1358-1365",
    doi: Some("10.1249/mss.0b013e31806010e0"),
};

/// What lifters report of their tapers.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TaperPractice {
    /// Part of the volume taken off.
    pub volume_cut: MeanAndDeviation,
    /// Length in days.
    pub days: MeanAndDeviation,
    /// Days from the last session to the meet.
    pub last_session_days_before: MeanAndDeviation,
}

formula! {
    "dose.taper_practice_grgic_2017",
    /// How do champion powerlifters taper?
    ///
    /// # Formula
    /// Published means and standard deviations: volume cut by 50.5 +- 11.7 % over 18 +- 8 days, last session
    /// 3 +- 1 days out.
    ///
    /// # Domain
    /// Ten Croatian open powerlifters, reported afterwards. What they do, not what works best; evidence in strength
    /// sports is thin.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Grgic and Mikulic 2017: the cut and the last session from the abstract; the 18 +- 8 days are recalled.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::taper_practice_grgic_2017()?.days.mean, 18.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn taper_practice_grgic_2017() -> Result<TaperPractice, Error> {
        Ok(TaperPractice {
            volume_cut: MeanAndDeviation { mean: 0.505, deviation: 0.117 },
            days: MeanAndDeviation { mean: 18.0, deviation: 8.0 },
            last_session_days_before: MeanAndDeviation { mean: 3.0, deviation: 1.0 },
        })
    }
    source: GRGIC_MIKULIC_2017, place: "abstract", standing: Published, seen: Read, recalled: "the 18 +- 8 days",
    population: "10 Croatian open powerlifters",
}

/// A taper as a pooled analysis found it to work.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TaperFinding {
    /// Smallest part of the volume taken off.
    pub volume_cut_low: f64,
    /// Largest part of the volume taken off.
    pub volume_cut_high: f64,
    /// About this many days.
    pub days: u16,
}

formula! {
    "dose.taper_finding_bosquet_2007",
    /// Which taper worked best for competitive athletes?
    ///
    /// # Formula
    /// Volume cut by 41 to 60 % over about two weeks, with intensity and frequency kept.
    ///
    /// # Domain
    /// Competitive athletes; swimmers, runners and cyclists, as recalled, and no lifters.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Bosquet et al. 2007, abstract.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::taper_finding_bosquet_2007()?.days, 14);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn taper_finding_bosquet_2007() -> Result<TaperFinding, Error> {
        Ok(TaperFinding { volume_cut_low: 0.41, volume_cut_high: 0.60, days: 14 })
    }
    source: BOSQUET_2007, place: "abstract", standing: Published, seen: Read, population: "competitive athletes",
}

/// The way down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum TaperShape {
    /// The whole cut at once.
    Step,
    /// The same part of usual volume less each day.
    Linear,
    /// The same part of what is left less each day.
    Exponential,
}

/// Longest taper taken, in days.
const LONGEST_TAPER: u16 = 90;

formula! {
    "dose.taper_share",
    /// What part of the usual volume is left on this day of a taper?
    ///
    /// # Formula
    /// With a cut `c` on the last of `n` days: step `1 - c`; linear `1 - c d / n`; exponential `(1 - c)^(d / n)`.
    ///
    /// # Domain
    /// Days 1 to n, at most 90; cuts from 0 to below 1.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// The three types are named in the literature; the formulas are our reading of the names.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{TaperShape, taper_share};
    ///
    /// assert_eq!(taper_share(TaperShape::Linear, 7, 14, 0.5)?, 0.75);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn taper_share(shape: TaperShape, day: u16, days: u16, final_cut: f64) -> Result<f64, Error> {
        let cut = numeric::within(Code::OutOfRange, "final_cut", final_cut, 0.0, 0.99, "of usual volume")?;
        if !(1..=LONGEST_TAPER).contains(&days) {
            return Err(Error::range(Code::OutOfRange, "days", days, 1.0, f64::from(LONGEST_TAPER), ""));
        }
        if !(1..=days).contains(&day) {
            return Err(Error::range(Code::OutOfRange, "day", day, 1.0, f64::from(days), ""));
        }
        let way = f64::from(day) / f64::from(days);
        Ok(match shape {
            TaperShape::Step => 1.0 - cut,
            TaperShape::Linear => 1.0 - cut * way,
            TaperShape::Exponential => numeric::pow(1.0 - cut, way),
        })
    }
    source: OURS, place: "three shapes by their names", standing: OurChoice, seen: NotApplicable,
}

rows![taper_practice_grgic_2017, taper_finding_bosquet_2007, taper_share];
