//! Where a lift stands and how much is done there: two different things. What a session shows of a place is judged in
//! `progression/judge.rs`, where a day asks for it in `progression/asked.rs`.

use derive_setters::Setters;

use crate::canonical::{canonical_fields, canonical_kinds};
use crate::quantity::Mass;

/// The one thing that may move at a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Dimension {
    /// Another rung of the ladder.
    Variant,
    /// A longer range.
    Range,
    /// A harder tempo.
    Tempo,
    /// One more set.
    Sets,
    /// One more repetition.
    Reps,
    /// More load.
    Load,
}

canonical_kinds!(Dimension: 0 Variant, 1 Range, 2 Tempo, 3 Sets, 4 Reps, 5 Load);

/// How large a step in load is.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum StepPolicy {
    /// A part of the load, 0.025 being 2.5 %.
    Part(f64),
    /// A fixed mass.
    Fixed(Mass),
    /// Whatever the equipment loads next.
    SmallestLoadable,
}

canonical_kinds!(StepPolicy: 0 Part(part), 1 Fixed(mass), 2 SmallestLoadable);

/// Where a lift stands: rung, range and tempo, as numbers in the lists of its parameters, from 0. Technique is judged
/// at a place and does not carry over to another.
///
/// Height belongs to the place: a range of a lift from the floor or from pins is the height of the bar's centre, and
/// whatever makes the lift lighter keeps it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Place {
    /// Number in the list of rungs.
    pub rung: u8,
    /// Number in the list of ranges, easiest first.
    pub range: u8,
    /// Number in the list of tempos, easiest first.
    pub tempo: u8,
}

canonical_fields!(Place: rung, range, tempo);

impl Place {
    /// That rung, in its easiest range and tempo.
    #[must_use]
    pub const fn at_rung(rung: u8) -> Place {
        Place { rung, range: 0, tempo: 0 }
    }
}

/// How much is done at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Work {
    /// Work sets.
    pub sets: u8,
    /// Repetitions a set.
    pub reps: u8,
    /// Load; below zero for help.
    pub load: Mass,
}

canonical_fields!(Work: sets, reps, load);

impl Work {
    /// So many sets of so many repetitions at that load.
    #[must_use]
    pub const fn new(sets: u8, reps: u8, load: Mass) -> Work {
        Work { sets, reps, load }
    }
}

/// What a lift is granted: this work at this place. A pass belongs to both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Grant {
    /// Where.
    #[cfg_attr(feature = "serde", serde(default))]
    pub place: Place,
    /// How much.
    pub work: Work,
}

impl Grant {
    /// That work on the first rung, range and tempo.
    #[must_use]
    pub fn new(work: Work) -> Grant {
        Grant { place: Place::default(), work }
    }
}

canonical_fields!(Grant: place, work);

impl Grant {
    /// The same place with another load.
    #[must_use]
    pub const fn with_load(self, load: Mass) -> Grant {
        Grant { work: Work { load, ..self.work }, ..self }
    }

    /// The same work on another rung.
    #[must_use]
    pub const fn on_rung(self, rung: u8) -> Grant {
        Grant { place: Place { rung, ..self.place }, ..self }
    }

    /// The load.
    #[must_use]
    pub const fn load(&self) -> Mass {
        self.work.load
    }
}
