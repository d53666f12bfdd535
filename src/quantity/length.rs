//! Exact lengths.

use alloc::vec::Vec;
use core::fmt;

use super::decimal::{decimal, split_unit};
use crate::canonical::Canonical;
use crate::error::{Allowed, Code, Error};
use crate::numeric;

const MICROMETRES_PER_MILLIMETRE: f64 = 1_000.0;
/// One inch is 25.4 mm exactly (international yard and pound agreement, 1959).
const MILLIMETRES_PER_INCH: f64 = 25.4;

/// A height, depth or thickness, exact to the micrometre, from -10 m to 10 m.
///
/// ```
/// use bismar::quantity::Length;
///
/// let disc = Length::from_mm(450.0)?;
/// assert_eq!(disc.half().mm(), 225.0);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema),
    schemars(
        from = "wire::Wire",
        into = "wire::Wire",
        description = "A height or thickness in millimetres."
    )
)]
pub struct Length(i32);

impl Canonical for Length {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}

impl Length {
    /// No length.
    pub const ZERO: Length = Length(0);
    const MAX_MILLIMETRES: f64 = 10_000.0;

    /// Millimetres, rounded to the nearest micrometre.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` beyond 10 m either way.
    pub fn from_mm(millimetres: f64) -> Result<Length, Error> {
        let highest = Length::MAX_MILLIMETRES;
        let value = numeric::within(Code::OutOfRange, "length", millimetres, -highest, highest, "mm")?;
        Ok(Length(numeric::round(value * MICROMETRES_PER_MILLIMETRE) as i32))
    }

    /// Inches of 25.4 mm.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` beyond 10 m either way.
    pub fn from_inches(inches: f64) -> Result<Length, Error> {
        Length::from_mm(inches * MILLIMETRES_PER_INCH)
    }

    /// Whole millimetres, for constants.
    #[must_use]
    pub const fn millimetres(millimetres: i16) -> Length {
        let millimetres = millimetres as i32;
        Length(if millimetres > 10_000 {
            10_000_000
        } else if millimetres < -10_000 {
            -10_000_000
        } else {
            millimetres * 1_000
        })
    }

    /// Millimetres.
    #[must_use]
    pub fn mm(self) -> f64 {
        f64::from(self.0) / MICROMETRES_PER_MILLIMETRE
    }

    /// The exact number of micrometres.
    #[must_use]
    pub const fn micrometres(self) -> i32 {
        self.0
    }

    /// Half of it, rounded down to the micrometre: a disc's diameter to the height of its centre.
    #[must_use]
    pub const fn half(self) -> Length {
        Length(self.0.div_euclid(2))
    }

    /// Sum.
    ///
    /// # Errors
    /// `overflow` beyond 10 m.
    pub fn plus(self, other: Length) -> Result<Length, Error> {
        Length::checked(i64::from(self.0) + i64::from(other.0))
    }

    /// Difference; may be negative.
    ///
    /// # Errors
    /// `overflow` beyond 10 m.
    pub fn minus(self, other: Length) -> Result<Length, Error> {
        Length::checked(i64::from(self.0) - i64::from(other.0))
    }

    /// A whole multiple.
    ///
    /// # Errors
    /// `overflow` beyond 10 m.
    pub fn times(self, count: u32) -> Result<Length, Error> {
        Length::checked(i64::from(self.0).saturating_mul(i64::from(count)))
    }

    fn checked(micrometres: i64) -> Result<Length, Error> {
        if micrometres.abs() <= 10_000_000 {
            Ok(Length(micrometres as i32))
        } else {
            Err(Error::range(
                Code::Overflow,
                "length",
                micrometres as f64 / MICROMETRES_PER_MILLIMETRE,
                -10_000.0,
                10_000.0,
                "mm",
            ))
        }
    }
}

impl core::str::FromStr for Length {
    type Err = Error;

    /// Reads `450`, `450 mm`, `45 cm` and `18 in`.
    fn from_str(text: &str) -> Result<Length, Error> {
        let (number, unit) = split_unit(text);
        let value = decimal("length", number)?;
        match unit {
            "" | "mm" => Length::from_mm(value),
            "cm" => Length::from_mm(value * 10.0),
            "in" => Length::from_inches(value),
            other => {
                Err(Error::new(Code::UnknownUnit, "length", other, Allowed::one_of(&["mm", "cm", "in"])))
            }
        }
    }
}

impl fmt::Display for Length {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} mm", self.mm())
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! `{ "mm": 450 }` in and out.
    use super::Length;
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    #[derive(Serialize, Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Wire {
        mm: f64,
    }

    impl Serialize for Length {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            Wire { mm: self.mm() }.serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Length {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Length, D::Error> {
            Length::from_mm(Wire::deserialize(from)?.mm).map_err(|error| de::Error::custom(error.named("")))
        }
    }
}
