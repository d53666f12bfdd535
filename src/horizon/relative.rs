//! Strength compared across body mass by a power law.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass};
use crate::source::{Source, constant, formula, rows};

const JARIC_2002: Source = Source {
    id: "jaric-2002",
    citation: "Jaric S. Muscle strength testing: use of normalisation for body size. Sports Medicine \
               2002;32(10):615-631",
    doi: Some("10.2165/00007256-200232100-00002"),
};

/// Who the exponents were proposed for.
const JARIC_POPULATION: &str = "healthy adults in strength tests; theory of body size, checked in 77 men";

/// The lightest and heaviest person these formulas take, kg: beyond every adult competitor on record.
const BODY_MASS_RANGE: (f64, f64) = (20.0, 350.0);

/// Strength divided by a power of body mass.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ScaledStrength {
    /// Kilograms lifted for each kilogram of body mass to the power of `exponent`.
    pub value: f64,
    /// The power of body mass. An index means nothing without it.
    pub exponent: f64,
    /// Who the scaling was measured in.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// A body mass inside `low..=high` kg.
pub(super) fn body_mass_within(mass: Mass, low: f64, high: f64) -> Result<f64, Error> {
    numeric::within(Code::BodyMassOutOfDomain, "body_mass", mass.kg(), low, high, "kg")
}

/// A load above nothing, kg.
pub(super) fn positive_load(field: &'static str, load: Mass) -> Result<f64, Error> {
    if load.is_positive() {
        Ok(load.kg())
    } else {
        Err(Error::range(Code::LoadOutOfDomain, field, load.kg(), 0.0, Mass::MAX.kg(), "kg, above 0"))
    }
}

/// Exponents from 0 (no scaling) to 1 (plain ratio); a higher one has no meaning for strength.
fn exponent_within(exponent: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, "exponent", exponent, 0.0, 1.0, "")
}

constant! {
    "horizon.force_exponent",
    /// Power of body mass that maximal force grows with, so weights lifted and dynamometer readings.
    pub const FORCE_EXPONENT: f64 = 0.67;
    source: JARIC_2002, place: "abstract", standing: Published, seen: Read,
    population: "healthy adults in strength tests; theory of body size, checked in 77 men",
}

constant! {
    "horizon.torque_exponent",
    /// Power of body mass that maximal torque about a joint grows with.
    pub const TORQUE_EXPONENT: f64 = 1.0;
    source: JARIC_2002, place: "abstract", standing: Published, seen: Read,
    population: "healthy adults in strength tests; theory of body size, checked in 77 men",
}

formula! {
    "horizon.scaled_strength",
    /// How strong is this lift for a body of this mass?
    ///
    /// # Formula
    /// `S / m^b`; `S` load in kg, `m` body mass in kg, `b` the exponent: 0.67 for loads and forces, 1 for torques.
    ///
    /// # Domain
    /// Body mass 20 to 350 kg. An exponent of 1 (plain ratio) makes heavy people look weaker than they are;
    /// leaner groups fit 0.66, fatter groups lower values.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`; `out_of_range` for an exponent outside
    /// 0 to 1.
    ///
    /// # Source
    /// Jaric 2002 (row `horizon.scaled_strength`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{FORCE_EXPONENT, scaled_strength};
    /// use bismar::quantity::Mass;
    ///
    /// let index = scaled_strength(Mass::from_kg(100.0)?, Mass::from_kg(80.0)?, FORCE_EXPONENT)?;
    /// assert!((index.value - 5.308).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn scaled_strength(load: Mass, body_mass: Mass, exponent: f64) -> Result<ScaledStrength, Error> {
        let load = positive_load("load", load)?;
        let mass = body_mass_within(body_mass, BODY_MASS_RANGE.0, BODY_MASS_RANGE.1)?;
        let exponent = exponent_within(exponent)?;
        Ok(ScaledStrength {
            value: numeric::finite("value", load / numeric::pow(mass, exponent))?,
            exponent,
            population: Cow::Borrowed(JARIC_POPULATION),
            cautions: vec![Caution::NotAPrognosis, Caution::OtherPopulation],
        })
    }
    source: JARIC_2002, place: "abstract", standing: Published, seen: Read,
    population: "healthy adults in strength tests; theory of body size, checked in 77 men",
    domain: "body mass 20 to 350 kg",
}

formula! {
    "horizon.equivalent_load",
    /// What load would be the same feat for a person of another body mass?
    ///
    /// # Formula
    /// `L2 = L1 (m2 / m1)^b`; loads and masses in kg, `b` the exponent.
    ///
    /// # Domain
    /// Both body masses 20 to 350 kg.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`; `out_of_range` for an exponent outside
    /// 0 to 1.
    ///
    /// # Source
    /// Jaric 2002; follows from the index by arithmetic (row `horizon.equivalent_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{FORCE_EXPONENT, equivalent_load};
    /// use bismar::quantity::Mass;
    ///
    /// let at_sixty = equivalent_load(
    ///     Mass::from_kg(120.0)?, Mass::from_kg(80.0)?, Mass::from_kg(60.0)?, FORCE_EXPONENT)?;
    /// assert!((at_sixty.value() - 98.96).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn equivalent_load(load: Mass, body_mass: Mass, other_body_mass: Mass, exponent: f64) -> Result<Kilograms, Error> {
        let load = positive_load("load", load)?;
        let (low, high) = BODY_MASS_RANGE;
        let from = body_mass_within(body_mass, low, high)?;
        let to = body_mass_within(other_body_mass, low, high).map_err(|error| error.named("other_body_mass"))?;
        Kilograms::new(load * numeric::pow(to / from, exponent_within(exponent)?))
    }
    source: JARIC_2002, place: "abstract", standing: Derived, seen: NotApplicable,
    population: "healthy adults in strength tests; theory of body size, checked in 77 men",
    domain: "body mass 20 to 350 kg",
}

rows![FORCE_EXPONENT, TORQUE_EXPONENT, scaled_strength, equivalent_load];
