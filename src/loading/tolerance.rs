//! How far a true mass may lie from its face value.

use super::presets::{IPF, IWF};
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::Mass;
use crate::source::{formula, rows};

/// The least and the most that something may weigh.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct MassBand {
    /// The least.
    pub low: Mass,
    /// The most.
    pub high: Mass,
}

/// Which rule limits the error of bars, collars and discs that nobody weighed.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Tolerance {
    /// Weightlifting rules ([`iwf_tolerance`]).
    Iwf,
    /// Powerlifting rules ([`powerlifting_tolerance`]).
    Powerlifting,
    /// This part of the face value either way, 0 to 0.2: what the coach expects of unmarked iron.
    Part(f64),
}

impl Tolerance {
    /// The band around a face value.
    ///
    /// # Errors
    /// `not_finite` or `out_of_range` for a part outside 0 to 0.2; those of the rules.
    pub fn band(self, face: Mass) -> Result<MassBand, Error> {
        match self {
            Tolerance::Iwf => iwf_tolerance(face),
            Tolerance::Powerlifting => powerlifting_tolerance(face),
            Tolerance::Part(part) => {
                let part = numeric::within(Code::OutOfRange, "part", part, 0.0, 0.2, "of the face value")?;
                let error = face.max(Mass::ZERO).scaled_down(part)?;
                around(face, error, error)
            }
        }
    }
}

fn around(face: Mass, below: Mass, above: Mass) -> Result<MassBand, Error> {
    Ok(MassBand { low: face.minus(below)?, high: face.plus(above)? })
}

/// A ten-thousandth part, times `count`.
fn ten_thousandths(mass: Mass, count: i64) -> Mass {
    Mass::from_nanograms(mass.nanograms().saturating_mul(count).div_euclid(10_000)).unwrap_or(Mass::ZERO)
}

/// A face value: not below nothing.
fn face_value(face: Mass) -> Result<Mass, Error> {
    super::bar::not_negative("face", face, Mass::grams(1_000_000))
}

formula! {
    "loading.iwf_tolerance",
    /// What may a weightlifting bar, collar or disc weigh by the rules?
    ///
    /// # Formula
    /// Above 5 kg: from 0.05 % below to 0.1 % above the face value; up to 5 kg: from nothing below to 10 g
    /// above.
    ///
    /// # Domain
    /// One component of up to 1000 kg; limits of several add up.
    ///
    /// # Errors
    /// `out_of_range` below 0 kg or above 1000 kg.
    ///
    /// # Source
    /// IWF rules, section 3.3, recalled; their text was not seen (row `loading.iwf_tolerance`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::iwf_tolerance, quantity::Mass};
    ///
    /// let band = iwf_tolerance(Mass::from_kg(25.0)?)?;
    /// assert_eq!((band.low.kg(), band.high.kg()), (24.9875, 25.025));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn iwf_tolerance(face: Mass) -> Result<MassBand, Error> {
        let face = face_value(face)?;
        if face > Mass::grams(5_000) {
            around(face, ten_thousandths(face, 5), ten_thousandths(face, 10))
        } else {
            around(face, Mass::ZERO, Mass::grams(10))
        }
    }
    source: IWF, place: "section 3.3; recalled", standing: CommonPractice, seen: Memory,
}

formula! {
    "loading.powerlifting_tolerance",
    /// What may a powerlifting bar, collar or disc weigh by the rules?
    ///
    /// # Formula
    /// 0.25 % or 10 g either way; that the larger of the two holds is our reading.
    ///
    /// # Domain
    /// One component of up to 1000 kg; limits of several add up. The 10 g count below 4 kg.
    ///
    /// # Errors
    /// `out_of_range` below 0 kg or above 1000 kg.
    ///
    /// # Source
    /// IPF rules, Bars and Discs, as a translation quotes them (row `loading.powerlifting_tolerance`).
    ///
    /// # Examples
    /// ```
    /// use bismar::{loading::powerlifting_tolerance, quantity::Mass};
    ///
    /// let band = powerlifting_tolerance(Mass::from_kg(25.0)?)?;
    /// assert_eq!((band.low.kg(), band.high.kg()), (24.9375, 25.0625));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn powerlifting_tolerance(face: Mass) -> Result<MassBand, Error> {
        let face = face_value(face)?;
        let error = ten_thousandths(face, 25).max(Mass::grams(10)).min(face);
        around(face, error, error)
    }
    source: IPF, place: "Bars and Discs", standing: Standard, seen: Secondary, copies: "one translation of the rules",
}

rows![iwf_tolerance, powerlifting_tolerance];
