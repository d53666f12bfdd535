//! Discs and the stock of them.

use alloc::vec::Vec;

use super::bar::positive;
use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Length, Mass, Unit};

/// A hundredth of a pound, to which faces in pounds are marked; a whole number of nanograms.
const FACE_STEP_IN_POUNDS: i64 = 4_535_923_700;

/// The unit in which a disc, a dumbbell or a plate of that mass is marked: pounds where it is a whole number of their
/// hundredths, else kilograms.
///
/// The exact mass remembers it: no whole number of grams up to 2000 kg is one of hundredths of a pound.
///
/// ```
/// use bismar::loading::face_unit;
/// use bismar::quantity::{Mass, Unit};
///
/// assert_eq!(face_unit(Mass::from_lb(2.5)?), Unit::Lb);
/// assert_eq!(face_unit(Mass::from_kg(1.25)?), Unit::Kg);
/// # Ok::<(), bismar::Error>(())
/// ```
#[must_use]
pub const fn face_unit(face: Mass) -> Unit {
    if face.nanograms() != 0 && face.nanograms() % FACE_STEP_IN_POUNDS == 0 { Unit::Lb } else { Unit::Kg }
}

/// Discs of one kind: what is printed on them, what is known beyond that, and how many there are.
///
/// Written and read with its face in the unit in which it is marked: `{ "lb": 5 }` stays that.
///
/// ```
/// use bismar::loading::Disc;
/// use bismar::quantity::{Length, Mass};
///
/// let discs = Disc::new(Mass::from_kg(20.0)?, 4)?
///     .weighed(Mass::from_kg(20.15)?)?
///     .with_diameter(Length::from_mm(450.0)?)?;
/// assert_eq!(discs.pairs(), 2);
/// assert_eq!(discs.mass().kg(), 20.15);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "wire::Disc"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Disc {
    #[cfg_attr(feature = "serde", serde(serialize_with = "write_face"))]
    #[cfg_attr(feature = "schema", schemars(with = "crate::quantity::Face"))]
    nominal: Mass,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    measured: Option<Mass>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    diameter: Option<Length>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    thickness: Option<Length>,
    count: u16,
}

canonical_fields!(Disc: nominal, measured, diameter, thickness, count);

impl Disc {
    /// The heaviest disc accepted (our choice).
    pub const HEAVIEST: Mass = Mass::grams(100_000);
    /// The most discs of one kind.
    pub const MOST: u16 = 30;

    /// `count` discs with this face value; two of them make a pair, an odd one is of use only where there is
    /// one side (a loading pin).
    ///
    /// # Errors
    /// `out_of_range` for a mass at or below 0 kg or above 100 kg, and for more than 30 discs.
    pub fn new(nominal: Mass, count: u16) -> Result<Disc, Error> {
        let nominal = positive("nominal", nominal, Disc::HEAVIEST)?;
        if count > Disc::MOST {
            return Err(Error::range(Code::OutOfRange, "count", count, 0.0, f64::from(Disc::MOST), "discs"));
        }
        Ok(Disc { nominal, measured: None, diameter: None, thickness: None, count })
    }

    /// The same discs with the mass that a scale showed for each.
    ///
    /// # Errors
    /// `out_of_range` at or below 0 kg or above 100 kg.
    pub fn weighed(mut self, measured: Mass) -> Result<Disc, Error> {
        self.measured = Some(positive("measured", measured, Disc::HEAVIEST)?);
        Ok(self)
    }

    /// The same discs with their outer diameter.
    ///
    /// # Errors
    /// `out_of_range` at or below 0 mm or above 1000 mm.
    pub fn with_diameter(mut self, diameter: Length) -> Result<Disc, Error> {
        self.diameter = Some(between("diameter", diameter, Length::millimetres(1_000))?);
        Ok(self)
    }

    /// The same discs with the room that one takes on the sleeve.
    ///
    /// # Errors
    /// `out_of_range` at or below 0 mm or above 500 mm.
    pub fn with_thickness(mut self, thickness: Length) -> Result<Disc, Error> {
        self.thickness = Some(between("thickness", thickness, Length::millimetres(500))?);
        Ok(self)
    }

    /// Face value of one disc.
    #[must_use]
    pub const fn nominal(&self) -> Mass {
        self.nominal
    }

    /// The unit of its face.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        face_unit(self.nominal)
    }

    /// What a scale showed, where one was used.
    #[must_use]
    pub const fn measured(&self) -> Option<Mass> {
        self.measured
    }

    /// The best known mass of one disc: measured, else its face value.
    #[must_use]
    pub const fn mass(&self) -> Mass {
        match self.measured {
            Some(mass) => mass,
            None => self.nominal,
        }
    }

    /// Outer diameter, where it is known.
    #[must_use]
    pub const fn diameter(&self) -> Option<Length> {
        self.diameter
    }

    /// Room on the sleeve, where it is known.
    #[must_use]
    pub const fn thickness(&self) -> Option<Length> {
        self.thickness
    }

    /// How many there are.
    #[must_use]
    pub const fn count(&self) -> u16 {
        self.count
    }

    /// How many pairs they make.
    #[must_use]
    pub const fn pairs(&self) -> u16 {
        self.count / 2
    }

    /// The same discs in another number.
    ///
    /// # Errors
    /// `out_of_range` for more than 30 discs.
    pub fn counted(self, count: u16) -> Result<Disc, Error> {
        let fresh = Disc::new(self.nominal, count)?;
        Ok(Disc { count: fresh.count, ..self })
    }
}

/// A length above nothing and at most `highest`.
pub(crate) fn between(field: &'static str, length: Length, highest: Length) -> Result<Length, Error> {
    if length <= Length::ZERO || length > highest {
        return Err(Error::range(Code::OutOfRange, field, length.mm(), 0.0, highest.mm(), "mm, above 0"));
    }
    Ok(length)
}

/// The discs at hand, kilogram and pound ones together.
///
/// Invariant: at most [`Stock::MOST_KINDS`] kinds. The place of a kind in the list is its name in answers.
///
/// ```
/// use bismar::loading::{Disc, Stock};
/// use bismar::quantity::Mass;
///
/// let stock = Stock::new(vec![Disc::new(Mass::from_kg(20.0)?, 2)?, Disc::new(Mass::from_lb(10.0)?, 4)?])?;
/// assert_eq!(stock.discs().len(), 2);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "wire::Stock"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Stock {
    discs: Vec<Disc>,
}

canonical_fields!(Stock: discs);

impl Stock {
    /// The most kinds of disc in one stock.
    pub const MOST_KINDS: usize = 25;

    /// A stock.
    ///
    /// # Errors
    /// `stock_too_large` with more than 25 kinds.
    pub fn new(discs: Vec<Disc>) -> Result<Stock, Error> {
        if discs.len() > Stock::MOST_KINDS {
            let rule = Allowed::rule("at most 25 kinds of disc");
            return Err(Error::new(Code::StockTooLarge, "discs", discs.len(), rule));
        }
        Ok(Stock { discs })
    }

    /// The same stock as the discs are marked, measured masses left out.
    ///
    /// Loads are made from the best known masses, so that one disc a little over its face value can put a
    /// round target out of reach. Who wants the round number loads by face value and reads the true total
    /// with [`read_bar`](super::read_bar).
    #[must_use]
    pub fn by_face_value(&self) -> Stock {
        Stock { discs: self.discs.iter().map(|disc| Disc { measured: None, ..*disc }).collect() }
    }

    /// The kinds, in the order given.
    #[must_use]
    pub fn discs(&self) -> &[Disc] {
        &self.discs
    }
}

/// Writes a face in the unit in which it is marked.
#[cfg(feature = "serde")]
pub(super) fn write_face<S: serde::Serializer>(face: &Mass, to: S) -> Result<S::Ok, S::Error> {
    let unit = face_unit(*face);
    to.serialize_newtype_variant("Mass", unit as u32, unit.symbol(), &face.in_unit(unit))
}

#[cfg(feature = "serde")]
mod wire {
    //! As they are read; building them checks them.
    use super::{Error, Length, Mass, Vec};

    #[derive(serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Disc {
        nominal: Mass,
        #[serde(default)]
        measured: Option<Mass>,
        #[serde(default)]
        diameter: Option<Length>,
        #[serde(default)]
        thickness: Option<Length>,
        count: u16,
    }

    #[derive(serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Stock {
        discs: Vec<super::Disc>,
    }

    impl TryFrom<Disc> for super::Disc {
        type Error = Error;

        fn try_from(wire: Disc) -> Result<super::Disc, Error> {
            let mut disc = super::Disc::new(wire.nominal, wire.count)?;
            if let Some(mass) = wire.measured {
                disc = disc.weighed(mass)?;
            }
            if let Some(diameter) = wire.diameter {
                disc = disc.with_diameter(diameter)?;
            }
            match wire.thickness {
                Some(thickness) => disc.with_thickness(thickness),
                None => Ok(disc),
            }
        }
    }

    impl TryFrom<Stock> for super::Stock {
        type Error = Error;

        fn try_from(wire: Stock) -> Result<super::Stock, Error> {
            super::Stock::new(wire.discs)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `k x 4_535_923_700 = g x 10^9` needs `10^7` to divide `k`, since 45 359 237 is divisible by neither 2 nor 5: the first
    /// such mass is 100 000 lb.
    #[test]
    fn no_face_in_grams_is_one_in_pounds() {
        assert_eq!(FACE_STEP_IN_POUNDS, Mass::from_lb(0.01).unwrap().nanograms());
        let lb = FACE_STEP_IN_POUNDS / 100;
        assert!(lb % 2 != 0 && lb % 5 != 0);
        for grams in (1..=100_000).step_by(7) {
            assert_eq!(face_unit(Mass::grams(grams)), Unit::Kg, "{grams} g");
        }
        for hundredths in 1..=20_000 {
            let face = Mass::from_lb(f64::from(hundredths) / 100.0).unwrap();
            assert_eq!(face_unit(face), Unit::Lb, "{hundredths} hundredths");
        }
    }
}
