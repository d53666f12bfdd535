//! Sets by region: which sets count for which part of the body, and how much.

use alloc::collections::BTreeMap;
use alloc::string::String;
use alloc::vec::Vec;

use derive_setters::Setters;

use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{OURS, Source, default_of, formula, rows};

const PELLAND_2024: Source = Source {
    id: "pelland-2024",
    citation: "Pelland JC, Remmert JF, Robinson ZP, Hinson S, Zourdos MC. The resistance training dose-response: meta-regressions. SportRxiv 2024",
    doi: None,
};

/// Sets of one exercise, with the regions it trains directly and indirectly.
///
/// For muscle size, "direct" means that the region is the prime mover; for strength, that the set is specific to
/// the lift that is tested.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct RegionSets {
    /// Work sets done.
    pub sets: u16,
    /// Regions trained directly.
    pub direct: Vec<String>,
    /// Regions that help.
    #[cfg_attr(feature = "serde", serde(default))]
    pub indirect: Vec<String>,
}

impl RegionSets {
    /// So many sets that load these regions directly and none indirectly.
    #[must_use]
    pub fn new(sets: u16, direct: Vec<String>) -> RegionSets {
        RegionSets { sets, direct, indirect: Vec::new() }
    }
}

/// How much a set counts for a region that only helps.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SetCounting {
    /// Weight of an indirect set, 0 to 1.
    pub indirect: f64,
}

impl SetCounting {
    /// Half: the weight that fitted group results best (Pelland et al. 2024). A modelling weight, not a
    /// measurement of anyone.
    #[must_use]
    pub const fn fractional() -> SetCounting {
        SetCounting { indirect: 0.5 }
    }

    /// Every set counts in full wherever it works.
    #[must_use]
    pub const fn total() -> SetCounting {
        SetCounting { indirect: 1.0 }
    }

    /// Only direct sets count.
    #[must_use]
    pub const fn direct_only() -> SetCounting {
        SetCounting { indirect: 0.0 }
    }
}

impl Default for SetCounting {
    fn default() -> SetCounting {
        SetCounting::fractional()
    }
}

default_of! {
    "dose.set_counting_default",
    /// How much a set counts for a region that only helps, where a caller names nothing else.
    set_counting_default: SetCounting;
    source: OURS, place: "the fractional way of Pelland et al. 2024", standing: OurChoice, seen: NotApplicable,
}

/// Sets counted for one region.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RegionCount {
    /// The region.
    pub region: String,
    /// Counted sets.
    pub sets: f64,
}

formula! {
    "dose.fractional_sets",
    /// How many sets did each region get, counting helpers in part?
    ///
    /// # Formula
    /// `sum sets * w`; `w` 1 where direct, the chosen weight where indirect ([`SetCounting`]). A region named both
    /// ways by one exercise counts as direct. Regions come out in alphabetical order.
    ///
    /// # Domain
    /// Weights 0 to 1. In 67 studies of 2058 people counting halves had the strongest support, with ever smaller
    /// returns; nothing of it was in people over 65, so it is no target for an older lifter.
    ///
    /// # Errors
    /// `out_of_range` for the weight.
    ///
    /// # Source
    /// Pelland et al. 2024, abstract.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{RegionSets, SetCounting, fractional_sets};
    ///
    /// let bench = RegionSets::new(4, vec!["chest".into()]).with_indirect(vec!["triceps".into()]);
    /// let extension = RegionSets::new(3, vec!["triceps".into()]);
    /// let counts = fractional_sets(&[bench, extension], SetCounting::fractional())?;
    /// assert_eq!(counts[1].sets, 5.0); // triceps
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn fractional_sets(exercises: &[RegionSets], counting: SetCounting) -> Result<Vec<RegionCount>, Error> {
        let weight = numeric::within(Code::OutOfRange, "counting.indirect", counting.indirect, 0.0, 1.0, "")?;
        let mut counts: BTreeMap<&str, f64> = BTreeMap::new();
        for exercise in exercises {
            for (region, share) in regions(exercise, weight) {
                *counts.entry(region).or_default() += share * f64::from(exercise.sets);
            }
        }
        Ok(counts.into_iter().map(|(region, sets)| RegionCount { region: region.into(), sets }).collect())
    }
    source: PELLAND_2024, place: "abstract", standing: Published, seen: Read,
    population: "67 studies, 2058 people, mostly young",
}

/// Each region of an exercise once, with its weight; direct wins.
fn regions(exercise: &RegionSets, indirect: f64) -> BTreeMap<&str, f64> {
    let helpers = exercise.indirect.iter().map(|region| (region.as_str(), indirect));
    helpers.chain(exercise.direct.iter().map(|region| (region.as_str(), 1.0))).collect()
}

rows![fractional_sets, set_counting_default];
