//! What a load is made on, beyond the bar.

use alloc::vec::Vec;
use core::cmp::Ordering;

use super::bar::{Bar, not_negative, positive};
use super::disc::{between, face_unit};
use crate::canonical::{canonical_fields, canonical_kinds};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Length, Mass, Name, Unit};

/// The most pieces, plates or add-on weights in a list.
const LONGEST_LIST: usize = 100;
/// The most add-on weights of a machine; each may be on or off, so there are two to this power of settings.
const MOST_ADD_ONS: usize = 4;

/// What the load is made on.
///
/// Loads of all of them lie on one line where more is harder. Assistance lies below zero on it: a stack of
/// 20 kg that lifts along is a load of -20 kg, and "not above" means at least that much help.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Implement {
    /// A bar with discs on two sleeves.
    Bar(Bar),
    /// One or two short handles with discs on both ends; the load is that of one handle.
    Handle(Handle),
    /// Dumbbells or kettlebells of fixed mass; the load is that of one piece.
    Pieces(Pieces),
    /// A machine with a stack of plates.
    Machine(MachineStack),
    /// A machine whose stack helps: more plates, less load.
    Assistance(MachineStack),
    /// A pin or a belt with discs on its one end.
    Pin(Pin),
}

canonical_kinds!(Implement:
    0 Bar(bar),
    1 Handle(handle),
    2 Pieces(pieces),
    3 Machine(stack),
    4 Assistance(stack),
    5 Pin(pin),
);

impl Implement {
    /// The unit in which most of its own pieces or plates are marked; none where discs are hung on it, or no more are in one.
    #[cfg_attr(not(feature = "english"), expect(dead_code, reason = "only sentences ask for it"))]
    pub(crate) fn own_unit(&self) -> Option<Unit> {
        let faces = match self {
            Implement::Pieces(pieces) => pieces.masses(),
            Implement::Machine(stack) | Implement::Assistance(stack) => stack.plates.as_slice(),
            Implement::Bar(_) | Implement::Handle(_) | Implement::Pin(_) => return None,
        };
        let pounds = faces.iter().filter(|face| face_unit(**face) == Unit::Lb).count();
        match (2 * pounds).cmp(&faces.len()) {
            Ordering::Greater => Some(Unit::Lb),
            Ordering::Less => Some(Unit::Kg),
            Ordering::Equal => None,
        }
    }

    /// What kind of implement it is: a load on one says nothing about a load on another.
    pub(crate) const fn kind(&self) -> &'static str {
        match self {
            Implement::Bar(_) => "bar",
            Implement::Handle(_) => "handle",
            Implement::Pieces(_) => "pieces",
            Implement::Machine(_) => "machine",
            Implement::Assistance(_) => "assistance",
            Implement::Pin(_) => "pin",
        }
    }

    /// Its name.
    #[must_use]
    pub const fn id(&self) -> &Name {
        match self {
            Implement::Bar(bar) => bar.id(),
            Implement::Handle(handle) => &handle.id,
            Implement::Pieces(pieces) => &pieces.id,
            Implement::Machine(stack) | Implement::Assistance(stack) => &stack.id,
            Implement::Pin(pin) => &pin.id,
        }
    }
}

/// One or two adjustable dumbbell handles, loaded alike.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "wire::Handle"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Handle {
    id: Name,
    mass: Mass,
    collar: Mass,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    sleeve: Option<Length>,
    pub(super) handles: u8,
}

canonical_fields!(Handle: id, mass, collar, sleeve, handles);

impl Handle {
    /// A handle of this mass with two collars of `collar` each; `handles` of them are loaded alike.
    ///
    /// # Errors
    /// `out_of_range` for masses as for a bar, room at or below 0 mm or above 2000 mm, or a number other than
    /// 1 or 2.
    pub fn new(
        id: Name,
        mass: Mass,
        collar: Mass,
        sleeve: Option<Length>,
        handles: u8,
    ) -> Result<Handle, Error> {
        let mass = positive("mass", mass, Bar::HEAVIEST)?;
        let collar = not_negative("collar", collar, Bar::HEAVIEST_COLLAR)?;
        let sleeve = sleeve.map(|room| between("sleeve", room, Length::millimetres(2_000))).transpose()?;
        if !(1..=2).contains(&handles) {
            return Err(Error::range(Code::OutOfRange, "handles", handles, 1.0, 2.0, ""));
        }
        Ok(Handle { id, mass, collar, sleeve, handles })
    }

    /// Handle and both collars.
    pub(super) fn empty(&self) -> Result<Mass, Error> {
        self.mass.plus(self.collar.times(2)?)
    }

    pub(super) const fn sleeve(&self) -> Option<Length> {
        self.sleeve
    }

    /// Ends that must be loaded alike: two on each handle.
    pub(crate) const fn ends(&self) -> u16 {
        2 * self.handles as u16
    }
}

/// Dumbbells or kettlebells of fixed mass.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "wire::Pieces"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Pieces {
    id: Name,
    masses: Vec<Mass>,
}

canonical_fields!(Pieces: id, masses);

impl Pieces {
    /// The masses at hand, in rising order; for work with two, list only those that are there twice.
    ///
    /// # Errors
    /// `out_of_range` for an empty list, more than 100 pieces, a mass at or below 0 kg or above 200 kg, or
    /// a mass that is not above the one before it.
    pub fn new(id: Name, masses: Vec<Mass>) -> Result<Pieces, Error> {
        let most = LONGEST_LIST as f64;
        if masses.is_empty() || masses.len() > LONGEST_LIST {
            return Err(Error::range(Code::OutOfRange, "masses", masses.len(), 1.0, most, "pieces"));
        }
        let mut last = Mass::ZERO;
        for mass in &masses {
            positive("masses", *mass, Bar::HEAVIEST)?;
            if *mass <= last {
                let rule = Allowed::rule("rising masses, each once");
                return Err(Error::new(Code::OutOfRange, "masses", mass.kg(), rule));
            }
            last = *mass;
        }
        Ok(Pieces { id, masses })
    }

    /// The masses at hand.
    #[must_use]
    pub fn masses(&self) -> &[Mass] {
        &self.masses
    }
}

/// A machine with a stack of plates and a selector.
///
/// Its numbers mean something on this machine only: pulleys and friction differ.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(try_from = "wire::MachineStack")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct MachineStack {
    id: Name,
    start: Mass,
    plates: Vec<Mass>,
    add_ons: Vec<Mass>,
    ratio: f64,
}

canonical_fields!(MachineStack: id, start, plates, add_ons, ratio);

impl MachineStack {
    /// The largest part of the stack's mass that may reach the handle.
    pub const HIGHEST_RATIO: f64 = 4.0;

    /// A stack: what moves before any plate is chosen, the plates from the top, add-on weights (such as half
    /// plates), and the part of their mass that reaches the handle (1 for a plain pulley, 0.5 where the
    /// handle travels twice as far as the plates).
    ///
    /// # Errors
    /// `out_of_range` for more than 100 plates or none, more than 4 add-ons, masses outside 0 to 200 kg, a
    /// ratio at or below 0 or above 4; `not_finite`; `overflow` if all together exceed 2000 kg.
    pub fn new(
        id: Name,
        start: Mass,
        plates: Vec<Mass>,
        add_ons: Vec<Mass>,
        ratio: f64,
    ) -> Result<MachineStack, Error> {
        let start = not_negative("start", start, Bar::HEAVIEST)?;
        let most = LONGEST_LIST as f64;
        if plates.is_empty() || plates.len() > LONGEST_LIST {
            return Err(Error::range(Code::OutOfRange, "plates", plates.len(), 1.0, most, "plates"));
        }
        if add_ons.len() > MOST_ADD_ONS {
            let most = MOST_ADD_ONS as f64;
            return Err(Error::range(Code::OutOfRange, "add_ons", add_ons.len(), 0.0, most, "weights"));
        }
        let highest = MachineStack::HIGHEST_RATIO;
        let ratio = numeric::within(Code::OutOfRange, "ratio", ratio, 0.0, highest, "of the stack")?;
        if ratio <= 0.0 {
            return Err(Error::range(
                Code::OutOfRange,
                "ratio",
                ratio,
                0.0,
                highest,
                "of the stack, above 0",
            ));
        }
        let mut all = start;
        for (field, masses) in [("plates", &plates), ("add_ons", &add_ons)] {
            for mass in masses {
                all = all.plus(positive(field, *mass, Bar::HEAVIEST)?)?;
            }
        }
        all.scaled_down(ratio)?;
        Ok(MachineStack { id, start, plates, add_ons, ratio })
    }

    /// Every setting: plates chosen, add-ons hung, load at the handle. Plates first, then fewer add-ons.
    pub(super) fn settings(&self) -> Result<Vec<(u16, Vec<Mass>, Mass)>, Error> {
        let mut all = Vec::new();
        for pattern in 0..1_u32 << self.add_ons.len() {
            let hung: Vec<Mass> = (0_u32..)
                .zip(&self.add_ons)
                .filter(|(bit, _)| pattern >> bit & 1 == 1)
                .map(|(_, mass)| *mass)
                .collect();
            let mut moving = self.start;
            for mass in &hung {
                moving = moving.plus(*mass)?;
            }
            all.push((0, hung.clone(), moving.scaled_down(self.ratio)?));
            for (chosen, plate) in (1_u16..).zip(&self.plates) {
                moving = moving.plus(*plate)?;
                all.push((chosen, hung.clone(), moving.scaled_down(self.ratio)?));
            }
        }
        Ok(all)
    }
}

/// A loading pin, or a belt with a chain: discs on one end only, odd ones included.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(try_from = "wire::Pin"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Pin {
    id: Name,
    mass: Mass,
    collar: Mass,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    room: Option<Length>,
}

canonical_fields!(Pin: id, mass, collar, room);

impl Pin {
    /// A pin of this mass with one collar (zero for none), and the room for discs on it where it is known.
    ///
    /// # Errors
    /// `out_of_range` for a negative mass or one above 200 kg, a collar above 20 kg, room at or below 0 mm or
    /// above 2000 mm.
    pub fn new(id: Name, mass: Mass, collar: Mass, room: Option<Length>) -> Result<Pin, Error> {
        let mass = not_negative("mass", mass, Bar::HEAVIEST)?;
        let collar = not_negative("collar", collar, Bar::HEAVIEST_COLLAR)?;
        let room = room.map(|room| between("room", room, Length::millimetres(2_000))).transpose()?;
        Ok(Pin { id, mass, collar, room })
    }

    pub(super) fn empty(&self) -> Result<Mass, Error> {
        self.mass.plus(self.collar)
    }

    pub(super) const fn room(&self) -> Option<Length> {
        self.room
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! As they are read; building them checks them.
    use super::{Error, Length, Mass, Name, Vec};

    #[derive(serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Handle {
        id: Name,
        mass: Mass,
        collar: Mass,
        #[serde(default)]
        sleeve: Option<Length>,
        handles: u8,
    }

    #[derive(serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Pieces {
        id: Name,
        masses: Vec<Mass>,
    }

    #[derive(serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct MachineStack {
        id: Name,
        start: Mass,
        plates: Vec<Mass>,
        add_ons: Vec<Mass>,
        ratio: f64,
    }

    #[derive(serde::Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields)]
    pub(super) struct Pin {
        id: Name,
        mass: Mass,
        collar: Mass,
        #[serde(default)]
        room: Option<Length>,
    }

    impl TryFrom<Handle> for super::Handle {
        type Error = Error;

        fn try_from(wire: Handle) -> Result<super::Handle, Error> {
            super::Handle::new(wire.id, wire.mass, wire.collar, wire.sleeve, wire.handles)
        }
    }

    impl TryFrom<Pieces> for super::Pieces {
        type Error = Error;

        fn try_from(wire: Pieces) -> Result<super::Pieces, Error> {
            super::Pieces::new(wire.id, wire.masses)
        }
    }

    impl TryFrom<MachineStack> for super::MachineStack {
        type Error = Error;

        fn try_from(wire: MachineStack) -> Result<super::MachineStack, Error> {
            super::MachineStack::new(wire.id, wire.start, wire.plates, wire.add_ons, wire.ratio)
        }
    }

    impl TryFrom<Pin> for super::Pin {
        type Error = Error;

        fn try_from(wire: Pin) -> Result<super::Pin, Error> {
            super::Pin::new(wire.id, wire.mass, wire.collar, wire.room)
        }
    }
}
