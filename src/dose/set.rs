//! Plain inputs: sets that were done.

use derive_setters::Setters;

use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Fraction, Length, Mass, Reps};

fn one() -> u16 {
    1
}

/// One set that was done, or several equal ones: the load, and the repetitions of each.
///
/// ```
/// use bismar::dose::SetDone;
/// use bismar::quantity::{Mass, Reps};
///
/// let three_by_eight = SetDone::new(Mass::from_kg(65.0)?, Reps::whole(8)?).times(3);
/// assert_eq!(three_by_eight.sets, 3);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SetDone {
    /// What was lifted; the whole bar, not one side.
    pub load: Mass,
    /// Repetitions of each set.
    pub reps: Reps,
    /// How many such sets; 1 where left out.
    #[cfg_attr(feature = "serde", serde(default = "one"))]
    pub sets: u16,
}

impl SetDone {
    /// One set.
    #[must_use]
    pub const fn new(load: Mass, reps: Reps) -> SetDone {
        SetDone { load, reps, sets: 1 }
    }

    /// The same set so many times.
    #[must_use]
    pub const fn times(self, sets: u16) -> SetDone {
        SetDone { sets, ..self }
    }
}

/// A set known by its part of the one-repetition maximum instead of its load.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RelativeSet {
    /// Part of the one-repetition maximum: 0.75 is 75 %.
    pub fraction: Fraction,
    /// Repetitions of each set.
    pub reps: Reps,
    /// How many such sets; 1 where left out.
    #[cfg_attr(feature = "serde", serde(default = "one"))]
    pub sets: u16,
}

impl RelativeSet {
    /// One set.
    #[must_use]
    pub const fn new(fraction: Fraction, reps: Reps) -> RelativeSet {
        RelativeSet { fraction, reps, sets: 1 }
    }

    /// The same set so many times.
    #[must_use]
    pub const fn times(self, sets: u16) -> RelativeSet {
        RelativeSet { sets, ..self }
    }

    /// Repetitions of all its sets together.
    #[must_use]
    pub fn repetitions(&self) -> f64 {
        self.reps.value() * f64::from(self.sets)
    }
}

/// A set with the height that the load was raised at each repetition.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SetMoved {
    /// What was lifted.
    pub load: Mass,
    /// Repetitions of each set.
    pub reps: Reps,
    /// How many such sets; 1 where left out.
    #[cfg_attr(feature = "serde", serde(default = "one"))]
    pub sets: u16,
    /// Height of one repetition, lowest to highest point.
    pub displacement: Length,
}

impl SetMoved {
    /// One set at that load, each repetition moving it so far.
    #[must_use]
    pub fn new(load: Mass, reps: Reps, displacement: Length) -> SetMoved {
        SetMoved { load, reps, sets: one(), displacement }
    }
}

/// Exact sums over sets: half repetitions, and nanograms times half repetitions.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Totals {
    half_reps: i128,
    nanogram_half_reps: i128,
}

impl Totals {
    /// Adds up; a load below nothing is refused, for assistance is not volume.
    pub(super) fn of(sets: &[SetDone]) -> Result<Totals, Error> {
        let mut totals = Totals::default();
        for (at, set) in sets.iter().enumerate() {
            totals.add(set).map_err(|error| error.within(&alloc::format!("sets[{at}]")))?;
        }
        Ok(totals)
    }

    /// Adds one entry.
    pub(super) fn add(&mut self, set: &SetDone) -> Result<(), Error> {
        let load = not_negative(set.load)?;
        let half_reps = i128::from(set.reps.halves()) * i128::from(set.sets);
        self.half_reps += half_reps;
        self.nanogram_half_reps += half_reps * i128::from(load.nanograms());
        Ok(())
    }

    /// Repetitions.
    pub(super) fn reps(self) -> f64 {
        self.half_reps as f64 / 2.0
    }

    /// Load times repetitions in kg.
    pub(super) fn volume_load(self) -> f64 {
        self.nanogram_half_reps as f64 / 2e12
    }

    /// Repetitions where there are any; dividing by none is no average.
    pub(super) fn some_reps(self) -> Result<f64, Error> {
        if self.half_reps > 0 { Ok(self.reps()) } else { Err(Error::plain(Code::NoRepetitions, "sets")) }
    }
}

/// A load of zero or more.
pub(super) fn not_negative(load: Mass) -> Result<Mass, Error> {
    if load < Mass::ZERO {
        Err(Error::range(Code::LoadOutOfDomain, "load", load.kg(), 0.0, Mass::MAX.kg(), "kg"))
    } else {
        Ok(load)
    }
}

/// A mass above nothing, as kg.
pub(super) fn positive(field: &'static str, mass: Mass) -> Result<f64, Error> {
    if mass.is_positive() {
        Ok(mass.kg())
    } else {
        Err(Error::range(Code::LoadOutOfDomain, field, mass.kg(), 0.0, Mass::MAX.kg(), "kg, above 0"))
    }
}

/// A number above zero.
pub(super) fn above_zero(
    field: &'static str,
    value: f64,
    high: f64,
    unit: &'static str,
) -> Result<f64, Error> {
    let value = numeric::within(Code::OutOfRange, field, value, 0.0, high, unit)?;
    if value > 0.0 { Ok(value) } else { Err(Error::range(Code::OutOfRange, field, value, 0.0, high, unit)) }
}
