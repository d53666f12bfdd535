//! The shapes that published decline takes, and carrying one person's strength along them.
//!
//! Every shape is relative: it says what part of the strength at its start is left at an age. Strength is carried
//! from one age to another by the difference of two logarithms, so that forward and back are exact inverses.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::{Age, AnnualLoss};
use crate::error::{Allowed, Code, Error};
use crate::numeric;

/// A yearly loss that holds between two ages.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LossBand {
    /// First age.
    pub from: Age,
    /// Last age.
    pub to: Age,
    /// Part of the present strength lost in each year.
    pub loss: AnnualLoss,
}

impl LossBand {
    /// That loss a year between two ages.
    #[must_use]
    pub fn new(from: Age, to: Age, loss: AnnualLoss) -> LossBand {
        LossBand { from, to, loss }
    }
}

/// A strength at an age, as tables and centile curves give it.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct AgePoint {
    /// The age.
    pub age: Age,
    /// Strength there, above 0, in any unit; only its ratio to the other points counts.
    pub strength: f64,
}

impl AgePoint {
    /// That strength at that age.
    #[must_use]
    pub fn new(age: Age, strength: f64) -> AgePoint {
        AgePoint { age, strength }
    }
}

/// A course of strength over age.
///
/// Percent of what is left (compound) and percent of the strength at the start (line) are never mixed: at 2 % they
/// differ by 7 points of the starting strength after 20 years.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Curve {
    /// A part of the present strength each year, by bands of age that join without a gap.
    Compound(Vec<LossBand>),
    /// A yearly loss that rises in a straight line with age: a quadratic in the logarithm of strength.
    RisingLoss {
        /// First age.
        from: Age,
        /// Yearly loss there.
        from_loss: AnnualLoss,
        /// Last age.
        to: Age,
        /// Yearly loss there.
        to_loss: AnnualLoss,
    },
    /// The same amount each year: a part of the strength at the first age.
    Line {
        /// First age; a change point, for instance.
        from: Age,
        /// Last age.
        to: Age,
        /// Part of the strength at `from` lost in each year.
        loss: AnnualLoss,
    },
    /// `1 - linear t - square t^2`, with `t` years after the first age.
    Quadratic {
        /// First age.
        from: Age,
        /// Last age.
        to: Age,
        /// Part of the strength at `from`, for each year; 0 to 1.
        linear: f64,
        /// Part of the strength at `from`, for each year squared; 0 to 1.
        square: f64,
    },
    /// `1 - exp((age - zero) / time_constant)`: slow at first, then ever faster, to nothing at the age `zero`.
    Saturating {
        /// First age.
        from: Age,
        /// Age at which nothing is left.
        zero: Age,
        /// Time constant in years, above 0.
        time_constant: f64,
    },
    /// A table or centile curve, read between its points in a straight line.
    Points(Vec<AgePoint>),
}

impl Curve {
    /// First and last age.
    ///
    /// # Errors
    /// `curve_broken` if there are none, or the first is not below the last.
    pub fn ages(&self) -> Result<(Age, Age), Error> {
        let ends = match self {
            Curve::Compound(bands) => {
                bands.first().zip(bands.last()).map(|(first, last)| (first.from, last.to))
            }
            Curve::Points(points) => {
                points.first().zip(points.last()).map(|(first, last)| (first.age, last.age))
            }
            Curve::RisingLoss { from, to, .. }
            | Curve::Line { from, to, .. }
            | Curve::Quadratic { from, to, .. } => Some((*from, *to)),
            Curve::Saturating { from, zero, .. } => Some((*from, *zero)),
        };
        ends.filter(|(from, to)| from < to).ok_or_else(|| broken("a first age below the last"))
    }

    /// Natural logarithm of the part left at an age.
    fn log_left(&self, field: &'static str, age: Age) -> Result<f64, Error> {
        let (from, to) = self.ages()?;
        if age < from || age > to {
            let (low, high) = (from.years(), to.years());
            return Err(Error::range(Code::AgeOutOfDomain, field, age.years(), low, high, "years"));
        }
        let after = age.years() - from.years();
        match self {
            Curve::Compound(bands) => compound(bands, age),
            Curve::RisingLoss { from_loss, to_loss, .. } => {
                let rise = (to_loss.value() - from_loss.value()) / (2.0 * (to.years() - from.years()));
                Ok(-(from_loss.value() * after + rise * after * after))
            }
            Curve::Line { loss, .. } => left(field, age, 1.0 - loss.value() * after),
            Curve::Quadratic { linear, square, .. } => {
                let linear = numeric::within(Code::OutOfRange, "linear", *linear, 0.0, 1.0, "a year")?;
                let square =
                    numeric::within(Code::OutOfRange, "square", *square, 0.0, 1.0, "a year squared")?;
                left(field, age, 1.0 - linear * after - square * after * after)
            }
            Curve::Saturating { zero, time_constant, .. } => {
                let constant = above_zero("time_constant", *time_constant)?;
                left(field, age, 1.0 - numeric::exp((age.years() - zero.years()) / constant))
            }
            Curve::Points(points) => between_points(points, age),
        }
    }

    /// Natural logarithm of strength at `to` over strength at `from`; the ages may come in either order.
    pub(super) fn log_change(&self, from: Age, to: Age) -> Result<f64, Error> {
        Ok(self.log_left("to", to)? - self.log_left("from", from)?)
    }
}

fn broken(rule: &'static str) -> Error {
    Error::new(Code::CurveBroken, "curve", crate::error::Given::Nothing, Allowed::rule(rule))
}

/// Largest strength taken, in any unit: far beyond newtons on any machine.
const STRONGEST: f64 = 1e6;

/// A finite number above 0.
pub(super) fn above_zero(field: &'static str, value: f64) -> Result<f64, Error> {
    let value = numeric::within(Code::OutOfRange, field, value, 0.0, STRONGEST, "above 0")?;
    if value > 0.0 {
        Ok(value)
    } else {
        Err(Error::range(Code::OutOfRange, field, value, 0.0, STRONGEST, "above 0"))
    }
}

pub(super) fn left(field: &'static str, age: Age, part: f64) -> Result<f64, Error> {
    if part > 0.0 {
        Ok(numeric::ln(part))
    } else {
        let rule = Allowed::rule("an age at which the curve has strength left");
        Err(Error::new(Code::StrengthUsedUp, field, age.years(), rule))
    }
}

fn compound(bands: &[LossBand], age: Age) -> Result<f64, Error> {
    let mut log = 0.0;
    let mut reached = bands.first().map(|band| band.from);
    for band in bands {
        let joined = reached.is_some_and(|end| end.years().total_cmp(&band.from.years()).is_eq());
        if !joined || band.to <= band.from {
            return Err(broken("bands that follow one another without gap or overlap"));
        }
        let years = numeric::smaller(age.years(), band.to.years()) - band.from.years();
        if years > 0.0 {
            log += years * numeric::ln_1p(-band.loss.value());
        }
        reached = Some(band.to);
    }
    Ok(log)
}

fn between_points(points: &[AgePoint], age: Age) -> Result<f64, Error> {
    let mut found = None;
    for pair in points.windows(2) {
        let [lower, upper] = pair else { continue };
        let low = above_zero("strength", lower.strength)?;
        let high = above_zero("strength", upper.strength)?;
        if upper.age <= lower.age {
            return Err(broken("points in order of age"));
        }
        if found.is_none() && age <= upper.age {
            let share = (age.years() - lower.age.years()) / (upper.age.years() - lower.age.years());
            found = Some(low + share * (high - low));
        }
    }
    found.map(numeric::ln).ok_or_else(|| broken("at least two points"))
}
