//! Exact masses.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::decimal::{decimal, split_unit};
use super::rounding::scaled;
use crate::canonical::Canonical;
use crate::error::{Allowed, Code, Error};
use crate::numeric;

/// One pound in nanograms: 0.453 592 37 kg exactly (international yard and pound agreement, 1959).
const NANOGRAMS_PER_POUND: i64 = 453_592_370_000;
const NANOGRAMS_PER_KILOGRAM: i64 = 1_000_000_000_000;

/// The unit a mass is read or shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Unit {
    /// Kilogram.
    Kg,
    /// Avoirdupois pound.
    Lb,
}

impl Unit {
    pub(super) const fn nanograms(self) -> i64 {
        match self {
            Unit::Kg => NANOGRAMS_PER_KILOGRAM,
            Unit::Lb => NANOGRAMS_PER_POUND,
        }
    }

    /// `kg` or `lb`.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Unit::Kg => "kg",
            Unit::Lb => "lb",
        }
    }
}

/// A mass on a bar, exact to the nanogram, from -2000 kg to 2000 kg.
///
/// Invariant: a whole number of nanograms. One pound is 453 592 370 000 of them and so are its eighths exact,
/// so sums of mixed discs never drift. Negative values exist as differences only; what may go on a bar is
/// checked where it is loaded.
///
/// # Reading
///
/// ```
/// use bismar::quantity::Mass;
///
/// assert_eq!("62,5".parse::<Mass>()?, Mass::from_kg(62.5)?);
/// assert_eq!("137.5 lb".parse::<Mass>()?, Mass::from_lb(137.5)?);
/// # Ok::<(), bismar::Error>(())
/// ```
///
/// # Arithmetic
///
/// ```
/// use bismar::quantity::Mass;
///
/// let bar = Mass::from_kg(20.0)?;
/// let disc = Mass::from_lb(45.0)?;
/// let total = bar.plus(disc.times(2)?)?;
/// assert_eq!(total.kg(), 60.8233133);
/// # Ok::<(), bismar::Error>(())
/// ```
///
/// # Source
///
/// The pound: NIST Special Publication 811, appendix B (row `quantity.pound`).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema),
    schemars(
        from = "wire::Wire",
        into = "wire::InKilograms",
        description = "A mass: kilograms or pounds may be given, kilograms are answered. Exact; from -2000 kg to 2000 kg."
    )
)]
pub struct Mass(i64);

impl Canonical for Mass {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}

impl Mass {
    /// No mass at all.
    pub const ZERO: Mass = Mass(0);
    /// The largest mass, 2000 kg: beyond any barbell, and small enough that kilograms as `f64` stay exact.
    pub const MAX: Mass = Mass(2_000 * NANOGRAMS_PER_KILOGRAM);

    /// A mass in kilograms, rounded once to the nearest nanogram.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` beyond 2000 kg either way.
    pub fn from_kg(kilograms: f64) -> Result<Mass, Error> {
        Mass::from_unit(kilograms, Unit::Kg)
    }

    /// A mass in pounds, rounded once to the nearest nanogram.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` beyond 2000 kg either way.
    pub fn from_lb(pounds: f64) -> Result<Mass, Error> {
        Mass::from_unit(pounds, Unit::Lb)
    }

    /// A mass in either unit.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` beyond 2000 kg either way.
    pub fn from_unit(value: f64, unit: Unit) -> Result<Mass, Error> {
        let value = numeric::finite("mass", value)?;
        let highest = Mass::MAX.0 as f64 / unit.nanograms() as f64;
        if numeric::fabs(value) > highest {
            return Err(Error::range(Code::OutOfRange, "mass", value, -highest, highest, unit.symbol()));
        }
        Ok(Mass(scaled(value, unit.nanograms())))
    }

    /// A mass in whole nanograms; none beyond 2000 kg either way.
    pub const fn from_nanograms(nanograms: i64) -> Option<Mass> {
        if nanograms > Mass::MAX.0 || nanograms < -Mass::MAX.0 { None } else { Some(Mass(nanograms)) }
    }

    /// Whole grams, for constants: at most 2000 kg either way, larger values are cut to that.
    #[must_use]
    pub const fn grams(grams: i32) -> Mass {
        const LIMIT: i32 = 2_000_000;
        let grams = if grams > LIMIT {
            LIMIT
        } else if grams < -LIMIT {
            -LIMIT
        } else {
            grams
        };
        Mass(grams as i64 * 1_000_000_000)
    }

    /// The exact number of nanograms.
    #[must_use]
    pub const fn nanograms(self) -> i64 {
        self.0
    }

    /// Kilograms, correctly rounded to the nearest `f64`; reading it back gives the same mass.
    #[must_use]
    pub fn kg(self) -> f64 {
        self.0 as f64 / NANOGRAMS_PER_KILOGRAM as f64
    }

    /// Every digit of it in kilograms, nothing rounded.
    ///
    /// ```
    /// use bismar::quantity::Mass;
    ///
    /// assert_eq!(Mass::from_lb(5.0)?.exact_kg(), "2.26796185");
    /// assert_eq!(Mass::from_kg(-20.0)?.exact_kg(), "-20");
    /// # Ok::<(), bismar::Error>(())
    /// ```
    #[must_use]
    pub fn exact_kg(self) -> String {
        let (sign, all) = (if self.0 < 0 { "-" } else { "" }, self.0.unsigned_abs());
        let unit = NANOGRAMS_PER_KILOGRAM.unsigned_abs();
        let digits = format!("{sign}{}.{:012}", all / unit, all % unit);
        digits.trim_end_matches('0').trim_end_matches('.').into()
    }

    /// Pounds, correctly rounded to the nearest `f64`.
    #[must_use]
    pub fn lb(self) -> f64 {
        self.0 as f64 / NANOGRAMS_PER_POUND as f64
    }

    /// In the given unit.
    #[must_use]
    pub fn in_unit(self, unit: Unit) -> f64 {
        self.0 as f64 / unit.nanograms() as f64
    }

    /// Sum.
    ///
    /// # Errors
    /// `overflow` beyond 2000 kg.
    pub fn plus(self, other: Mass) -> Result<Mass, Error> {
        Mass::checked(self.0.checked_add(other.0))
    }

    /// Difference; may be negative.
    ///
    /// # Errors
    /// `overflow` beyond 2000 kg.
    pub fn minus(self, other: Mass) -> Result<Mass, Error> {
        Mass::checked(self.0.checked_sub(other.0))
    }

    /// A whole multiple.
    ///
    /// # Errors
    /// `overflow` beyond 2000 kg.
    pub fn times(self, count: u32) -> Result<Mass, Error> {
        Mass::checked(self.0.checked_mul(i64::from(count)))
    }

    /// Part of a mass, rounded down to the nanogram: the safe direction for a load.
    ///
    /// # Errors
    /// `not_finite`; `overflow` beyond 2000 kg.
    pub fn scaled_down(self, factor: f64) -> Result<Mass, Error> {
        let factor = numeric::finite("factor", factor)?;
        let product = numeric::floor(self.0 as f64 * factor);
        if numeric::fabs(product) > Mass::MAX.0 as f64 {
            return Err(Error::new(
                Code::Overflow,
                "mass",
                product / NANOGRAMS_PER_KILOGRAM as f64,
                Allowed::Unstated,
            ));
        }
        Ok(Mass(product as i64))
    }

    /// Half, rounded down to the nanogram.
    #[must_use]
    pub const fn half(self) -> Mass {
        Mass(self.0.div_euclid(2))
    }

    /// Whether it is more than nothing.
    #[must_use]
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    fn checked(sum: Option<i64>) -> Result<Mass, Error> {
        match sum {
            Some(nanograms) if nanograms.abs() <= Mass::MAX.0 => Ok(Mass(nanograms)),
            _ => {
                Err(Error::range(Code::Overflow, "mass", crate::error::Given::Nothing, -2000.0, 2000.0, "kg"))
            }
        }
    }
}

impl core::str::FromStr for Mass {
    type Err = Error;

    /// Reads `62.5`, `62,5` (kilograms), `62.5 kg` and `137.5 lb`.
    fn from_str(text: &str) -> Result<Mass, Error> {
        let (number, unit) = split_unit(text);
        let unit = match unit {
            "" | "kg" | "Kg" | "KG" => Unit::Kg,
            "lb" | "lbs" | "Lb" | "LB" => Unit::Lb,
            other => {
                return Err(Error::new(Code::UnknownUnit, "mass", other, Allowed::one_of(&["kg", "lb"])));
            }
        };
        Mass::from_unit(decimal("mass", number)?, unit)
    }
}

impl fmt::Display for Mass {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{} kg", self.kg())
    }
}

#[cfg(feature = "serde")]
pub(super) mod wire {
    //! `{ "kg": 62.5 }` or `{ "lb": 137.5 }` in; kilograms out.
    use super::Mass;
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    #[derive(Serialize, Deserialize)]
    #[cfg_attr(
        feature = "schema",
        derive(schemars::JsonSchema),
        schemars(
            rename = "Face",
            description = "The face value of a disc: answered in the unit in which the disc is marked."
        )
    )]
    #[serde(deny_unknown_fields)]
    pub(crate) enum Wire {
        #[serde(rename = "kg")]
        Kg(f64),
        #[serde(rename = "lb")]
        Lb(f64),
    }

    /// What is answered of a mass.
    #[cfg(feature = "schema")]
    #[derive(schemars::JsonSchema)]
    #[schemars(deny_unknown_fields)]
    #[allow(dead_code, reason = "it is described, not made")]
    pub(in crate::quantity) struct InKilograms {
        kg: f64,
    }

    impl Wire {
        fn read<'de, D: Deserializer<'de>>(from: D) -> Result<Mass, D::Error> {
            match Wire::deserialize(from)? {
                Wire::Kg(value) => Mass::from_kg(value),
                Wire::Lb(value) => Mass::from_lb(value),
            }
            .map_err(|error| de::Error::custom(error.named("")))
        }
    }

    impl Serialize for Mass {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            Wire::Kg(self.kg()).serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Mass {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Mass, D::Error> {
            Wire::read(from)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn halves_round_away_from_zero() {
        // 2^-13 kg is 122070312.5 ng.
        assert_eq!(Mass::from_kg(1.0 / 8192.0).map(Mass::nanograms), Ok(122_070_313));
        assert_eq!(Mass::from_kg(-1.0 / 8192.0).map(Mass::nanograms), Ok(-122_070_313));
    }
}
