//! Effort: repetitions in reserve, and the 0-10 rating built on them.

use alloc::vec::Vec;
use core::fmt;

use super::scalar::half_steps;
use crate::canonical::Canonical;
use crate::error::Error;

/// Repetitions in reserve: how many more could have been done, 0 to 30, in half steps.
///
/// A separate type from [`Rpe`], since the two run opposite ways.
///
/// ```
/// use bismar::quantity::Rir;
///
/// assert_eq!(Rir::new(2.0)?.value(), 2.0);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "f64", into = "f64", extend("minimum" = 0, "maximum" = 30, "multipleOf" = 0.5)))]
pub struct Rir(u16);

impl Canonical for Rir {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}

impl Rir {
    /// Nothing left: the set went to its last repetition.
    pub const ZERO: Rir = Rir(0);

    /// Repetitions in reserve.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`, `not_a_half_step`.
    pub fn new(reps: f64) -> Result<Rir, Error> {
        half_steps("rir", reps, 30.0).map(Rir)
    }

    /// Whole repetitions, for constants: at most 30, larger values are cut to that.
    #[must_use]
    pub const fn whole(reps: u8) -> Rir {
        Rir(if reps > 30 { 60 } else { reps as u16 * 2 })
    }

    /// The number of repetitions.
    #[must_use]
    pub fn value(self) -> f64 {
        f64::from(self.0) / 2.0
    }

    /// Twice the number of repetitions.
    #[must_use]
    pub const fn halves(self) -> u16 {
        self.0
    }
}

impl fmt::Display for Rir {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}", self.value())
    }
}

/// Rating of perceived exertion built on repetitions in reserve, 0 to 10 in half steps.
///
/// # Domain
///
/// The published scale gives a number of repetitions in reserve at whole steps from 7 to 10 only; half steps
/// are bands or "load only", 5 to 6 is a band, and below 5 it says nothing about reserve
/// ([`Rpe::reserve`]).
///
/// # Source
///
/// Zourdos et al. 2016, J Strength Cond Res 30:267-275, doi 10.1519/JSC.0000000000001049 (from memory; the
/// anchors at 5, 7 and 9 were read in the abstract of Zourdos et al. 2021).
///
/// ```
/// use bismar::quantity::{Reserve, Rir, Rpe};
///
/// assert_eq!(Rpe::new(8.0)?.reserve(), Reserve::Exactly(Rir::whole(2)));
/// assert_eq!(Rpe::new(9.5)?.reserve(), Reserve::MoreLoadOnly);
/// assert!(Rpe::new(7.3).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "f64", into = "f64", extend("minimum" = 0, "maximum" = 10, "multipleOf" = 0.5)))]
pub struct Rpe(u16);

impl Canonical for Rpe {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}

/// What a rating says about repetitions in reserve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Reserve {
    /// This many.
    Exactly(Rir),
    /// Somewhere from the first to the second.
    Between(Rir, Rir),
    /// No repetition left, though a little more load would have moved (a rating of 9.5).
    MoreLoadOnly,
    /// The scale gives no number here; it must not be turned into one.
    NotAReserve,
}

impl Rpe {
    /// A rating.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`, `not_a_half_step`.
    pub fn new(rating: f64) -> Result<Rpe, Error> {
        half_steps("rpe", rating, 10.0).map(Rpe)
    }

    /// The rating.
    #[must_use]
    pub fn value(self) -> f64 {
        f64::from(self.0) / 2.0
    }

    /// Twice the rating.
    #[must_use]
    pub const fn halves(self) -> u16 {
        self.0
    }

    /// What the published scale says about reserve at this rating.
    ///
    /// 6.5 is not printed on the scale and is given as [`Reserve::NotAReserve`] (our choice).
    #[must_use]
    pub const fn reserve(self) -> Reserve {
        match self.0 {
            20 => Reserve::Exactly(Rir::whole(0)),
            19 => Reserve::MoreLoadOnly,
            18 => Reserve::Exactly(Rir::whole(1)),
            17 => Reserve::Between(Rir::whole(1), Rir::whole(2)),
            16 => Reserve::Exactly(Rir::whole(2)),
            15 => Reserve::Between(Rir::whole(2), Rir::whole(3)),
            14 => Reserve::Exactly(Rir::whole(3)),
            10..=12 => Reserve::Between(Rir::whole(4), Rir::whole(6)),
            _ => Reserve::NotAReserve,
        }
    }

    /// The rating that stands for a reserve, where the scale has one: 0 to 3 whole repetitions.
    #[must_use]
    pub const fn from_reserve(reserve: Rir) -> Option<Rpe> {
        match reserve.halves() {
            0 => Some(Rpe(20)),
            2 => Some(Rpe(18)),
            4 => Some(Rpe(16)),
            6 => Some(Rpe(14)),
            _ => None,
        }
    }
}

impl fmt::Display for Rpe {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}", self.value())
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! Plain numbers in and out.
    use super::{Rir, Rpe};
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    impl Serialize for Rir {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.value().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Rir {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Rir, D::Error> {
            Rir::new(f64::deserialize(from)?).map_err(|error| de::Error::custom(error.named("")))
        }
    }

    impl Serialize for Rpe {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.value().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Rpe {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Rpe, D::Error> {
            Rpe::new(f64::deserialize(from)?).map_err(|error| de::Error::custom(error.named("")))
        }
    }
}
