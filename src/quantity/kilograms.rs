//! Calculated masses.

use super::mass::Mass;
use crate::error::Error;
use crate::numeric;

/// A calculated mass in kilograms: an estimate, a mean, a difference. Not a mass on a bar.
///
/// Invariant: finite, and never `-0.0`.
///
/// ```
/// use bismar::quantity::Kilograms;
///
/// assert_eq!(Kilograms::new(126.5)?.value(), 126.5);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema),
    schemars(
        from = "super::mass::wire::Wire",
        into = "super::mass::wire::InKilograms",
        description = "A calculated mass, such as an estimate: kilograms or pounds may be given, kilograms are answered."
    )
)]
pub struct Kilograms(f64);

impl Kilograms {
    /// A calculated mass.
    ///
    /// # Errors
    /// `not_finite`.
    pub fn new(kilograms: f64) -> Result<Kilograms, Error> {
        numeric::finite("kg", kilograms).map(Kilograms)
    }

    /// The number of kilograms.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }

    /// As a mass to put on a bar, rounded to the nearest nanogram.
    ///
    /// # Errors
    /// `out_of_range` beyond 2000 kg either way.
    pub fn to_mass(self) -> Result<Mass, Error> {
        Mass::from_kg(self.0)
    }
}

impl From<Mass> for Kilograms {
    fn from(mass: Mass) -> Self {
        Kilograms(mass.kg())
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! `{ "kg": 62.5 }` or `{ "lb": 137.5 }` in; kilograms out.
    use super::{Kilograms, Mass};
    use crate::quantity::mass::wire::Wire;
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    impl Serialize for Kilograms {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            Wire::Kg(self.value()).serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Kilograms {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Kilograms, D::Error> {
            match Wire::deserialize(from)? {
                Wire::Kg(value) => Kilograms::new(value),
                Wire::Lb(value) => Mass::from_lb(value).map(Kilograms::from),
            }
            .map_err(|error| de::Error::custom(error.named("")))
        }
    }
}
