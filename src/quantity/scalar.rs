//! Repetitions, parts of the maximum, pain.

use alloc::vec::Vec;
use core::fmt;

use crate::canonical::Canonical;
use crate::error::{Code, Error};
use crate::numeric;

/// Reads a number that must be whole or end in .5, as twice its value.
pub(super) fn half_steps(field: &'static str, value: f64, highest: f64) -> Result<u16, Error> {
    let value = numeric::within(Code::OutOfRange, field, value, 0.0, highest, "")?;
    let doubled = value * 2.0;
    if !numeric::is_whole(doubled) {
        return Err(Error::new(Code::NotAHalfStep, field, value, crate::error::Allowed::Unstated));
    }
    Ok(doubled as u16)
}

/// Repetitions, from 0 to 200, whole or half.
///
/// A set that was done has whole repetitions (the record refuses others). Halves arise where a reserve of
/// "1 to 2" is added to repetitions done.
///
/// ```
/// use bismar::quantity::Reps;
///
/// assert_eq!(Reps::whole(8)?.value(), 8.0);
/// assert_eq!(Reps::new(8.5)?.halves(), 17);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "f64", into = "f64", extend("minimum" = 0, "maximum" = 200, "multipleOf" = 0.5)))]
pub struct Reps(u16);

impl Reps {
    const HIGHEST: u16 = 200;

    /// Repetitions as a number.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`, `not_a_half_step`.
    pub fn new(reps: f64) -> Result<Reps, Error> {
        half_steps("reps", reps, f64::from(Reps::HIGHEST)).map(Reps)
    }

    /// Whole repetitions.
    ///
    /// # Errors
    /// `out_of_range` above 200.
    pub fn whole(reps: u16) -> Result<Reps, Error> {
        if reps > Reps::HIGHEST {
            return Err(Error::range(Code::OutOfRange, "reps", reps, 0.0, f64::from(Reps::HIGHEST), ""));
        }
        Ok(Reps(reps * 2))
    }

    /// Twice the number of repetitions.
    ///
    /// # Errors
    /// `out_of_range` above 200 repetitions.
    pub fn from_halves(halves: u16) -> Result<Reps, Error> {
        Reps::new(f64::from(halves) / 2.0)
    }

    /// Twice the number of repetitions.
    #[must_use]
    pub const fn halves(self) -> u16 {
        self.0
    }

    /// The number of repetitions.
    #[must_use]
    pub fn value(self) -> f64 {
        f64::from(self.0) / 2.0
    }

    /// Whether it is a whole number.
    #[must_use]
    pub const fn is_whole(self) -> bool {
        self.0.is_multiple_of(2)
    }
}

impl fmt::Display for Reps {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}", self.value())
    }
}

/// Part of the one-repetition maximum: 0.8 is 80 %. Above 0 and at most 1.5.
///
/// ```
/// use bismar::quantity::Fraction;
///
/// assert_eq!(Fraction::new(0.8)?.percent(), 80.0);
/// assert!(Fraction::new(80.0).is_err()); // percent given as a fraction
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "f64", into = "f64", extend("exclusiveMinimum" = 0, "maximum" = 1.5)))]
pub struct Fraction(f64);

impl Fraction {
    /// A part of the maximum.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` at or below 0 and above 1.5.
    pub fn new(fraction: f64) -> Result<Fraction, Error> {
        let value = numeric::within(Code::OutOfRange, "fraction", fraction, 0.0, 1.5, "of 1RM")?;
        if value > 0.0 {
            Ok(Fraction(value))
        } else {
            Err(Error::range(Code::OutOfRange, "fraction", fraction, 0.0, 1.5, "of 1RM, above 0"))
        }
    }

    /// The part, 1 being the maximum itself.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// In percent.
    #[must_use]
    pub fn percent(self) -> f64 {
        self.0 * 100.0
    }
}

/// Pain as the lifter rates it, whole numbers from 0 (none) to 10 (worst imaginable).
///
/// ```
/// use bismar::quantity::Pain;
///
/// assert!(Pain::new(3)? > Pain::NONE);
/// assert!(Pain::new(11).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "u8", into = "u8", extend("maximum" = 10)))]
pub struct Pain(u8);

impl Pain {
    /// No pain.
    pub const NONE: Pain = Pain(0);

    /// A rating.
    ///
    /// # Errors
    /// `out_of_range` above 10.
    pub fn new(score: u8) -> Result<Pain, Error> {
        if score > 10 {
            Err(Error::range(Code::OutOfRange, "pain", score, 0.0, 10.0, ""))
        } else {
            Ok(Pain(score))
        }
    }

    /// The rating.
    #[must_use]
    pub const fn score(self) -> u8 {
        self.0
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! Plain numbers in and out.
    use super::{Fraction, Pain, Reps};
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    impl Serialize for Reps {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.value().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Reps {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Reps, D::Error> {
            Reps::new(f64::deserialize(from)?).map_err(|error| de::Error::custom(error.named("")))
        }
    }

    impl Serialize for Fraction {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.value().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Fraction {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Fraction, D::Error> {
            Fraction::new(f64::deserialize(from)?).map_err(|error| de::Error::custom(error.named("")))
        }
    }

    impl Serialize for Pain {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.score().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Pain {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Pain, D::Error> {
            Pain::new(u8::deserialize(from)?).map_err(|error| de::Error::custom(error.named("")))
        }
    }
}

impl Canonical for Reps {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}

impl Canonical for Pain {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}
