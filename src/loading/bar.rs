//! Bars.

use crate::canonical::{canonical_fields, canonical_kinds};
use crate::error::{Code, Error};
use crate::quantity::{Length, Mass, Name};

/// The shape of a bar.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum BarKind {
    /// Gripped on the line through the centres of the discs.
    #[default]
    Straight,
    /// A frame around the lifter, gripped at handles.
    Hex {
        /// Height of the low handles above the centre line of the discs.
        low_handle: Length,
        /// Height of the high handles above the centre line, where the bar has them.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        high_handle: Option<Length>,
    },
}

canonical_kinds!(BarKind: 0 Straight, 1 Hex { low_handle, high_handle });

/// A bar with two sleeves. Its collars are always stated, never assumed: zero is a statement too.
///
/// ```
/// use bismar::loading::{Bar};
/// use bismar::quantity::{Name, Length, Mass};
///
/// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::from_kg(2.5)?)?
///     .with_sleeve(Length::from_mm(415.0)?)?;
/// assert_eq!(bar.empty()?.kg(), 25.0);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "wire::Bar"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Bar {
    id: Name,
    mass: Mass,
    collar: Mass,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    sleeve: Option<Length>,
    kind: BarKind,
}

canonical_fields!(Bar: id, mass, collar, sleeve, kind);

impl Bar {
    /// The heaviest bar accepted, without collars (our choice: beyond any bar or sled frame).
    pub const HEAVIEST: Mass = Mass::grams(200_000);
    /// The heaviest single collar accepted (our choice).
    pub const HEAVIEST_COLLAR: Mass = Mass::grams(20_000);

    /// A straight bar of this mass, with two collars of `collar` each (zero for none).
    ///
    /// # Errors
    /// `out_of_range` for a bar at or below 0 kg or above 200 kg, a collar below 0 kg or above 20 kg.
    pub fn new(id: Name, mass: Mass, collar: Mass) -> Result<Bar, Error> {
        let mass = positive("mass", mass, Bar::HEAVIEST)?;
        let collar = not_negative("collar", collar, Bar::HEAVIEST_COLLAR)?;
        Ok(Bar { id, mass, collar, sleeve: None, kind: BarKind::Straight })
    }

    /// The same bar with this much room for discs on each sleeve, collar room already taken off.
    ///
    /// # Errors
    /// `out_of_range` at or below 0 mm or above 2000 mm.
    pub fn with_sleeve(mut self, room: Length) -> Result<Bar, Error> {
        let room = super::disc::between("sleeve", room, Length::millimetres(2_000))?;
        self.sleeve = Some(room);
        Ok(self)
    }

    /// The same bar in another shape.
    ///
    /// # Errors
    /// `out_of_range` for a handle more than 1 m from the centre line; `interval_reversed` if the high handle
    /// lies below the low one.
    pub fn shaped(mut self, kind: BarKind) -> Result<Bar, Error> {
        if let BarKind::Hex { low_handle, high_handle } = kind {
            let high = high_handle.unwrap_or(low_handle);
            for (field, handle) in [("low_handle", low_handle), ("high_handle", high)] {
                if handle.micrometres().abs() > 1_000_000 {
                    return Err(Error::range(Code::OutOfRange, field, handle.mm(), -1000.0, 1000.0, "mm"));
                }
            }
            if high < low_handle {
                return Err(Error::plain(Code::IntervalReversed, "high_handle"));
            }
        }
        self.kind = kind;
        Ok(self)
    }

    /// Its name.
    #[must_use]
    pub const fn id(&self) -> &Name {
        &self.id
    }

    /// Mass of the bar alone.
    #[must_use]
    pub const fn mass(&self) -> Mass {
        self.mass
    }

    /// Mass of one collar.
    #[must_use]
    pub const fn collar(&self) -> Mass {
        self.collar
    }

    /// Room for discs on each sleeve, where it is known.
    #[must_use]
    pub const fn sleeve(&self) -> Option<Length> {
        self.sleeve
    }

    /// Its shape.
    #[must_use]
    pub const fn kind(&self) -> BarKind {
        self.kind
    }

    /// The bar with both collars and no disc: the lightest load it can make.
    ///
    /// # Errors
    /// None for a bar that was built; the sum is checked all the same.
    pub fn empty(&self) -> Result<Mass, Error> {
        self.mass.plus(self.collar.times(2)?)
    }
}

/// A mass above nothing and at most `highest`.
pub(super) fn positive(field: &'static str, mass: Mass, highest: Mass) -> Result<Mass, Error> {
    if mass.is_positive() {
        return not_negative(field, mass, highest);
    }
    Err(Error::range(Code::OutOfRange, field, mass.kg(), 0.0, highest.kg(), "kg, above 0"))
}

/// A mass from nothing to `highest`.
pub(super) fn not_negative(field: &'static str, mass: Mass, highest: Mass) -> Result<Mass, Error> {
    if mass < Mass::ZERO || mass > highest {
        return Err(Error::range(Code::OutOfRange, field, mass.kg(), 0.0, highest.kg(), "kg"));
    }
    Ok(mass)
}

#[cfg(feature = "serde")]
mod wire {
    //! As it is read; building it checks it.
    use super::{BarKind, Error, Length, Mass, Name};

    #[derive(serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Bar {
        id: Name,
        mass: Mass,
        collar: Mass,
        #[serde(default)]
        sleeve: Option<Length>,
        #[serde(default)]
        kind: BarKind,
    }

    impl TryFrom<Bar> for super::Bar {
        type Error = Error;

        fn try_from(wire: Bar) -> Result<super::Bar, Error> {
            let bar = super::Bar::new(wire.id, wire.mass, wire.collar)?.shaped(wire.kind)?;
            match wire.sleeve {
                Some(room) => bar.with_sleeve(room),
                None => Ok(bar),
            }
        }
    }
}
