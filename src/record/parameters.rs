//! The whole set of parameters in force: regions, lifts, pairs, equipment, policy.

use alloc::format;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::identity::{Region, declared};
use super::lift::{LiftParameters, StartsFrom};
use super::policy::Policy;
use super::session::at_most;
use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};
use crate::loading::{Implement, Stock};
use crate::quantity::{Length, Mass, Name};

/// The most lifts of one lifter.
pub const MAX_LIFTS: usize = 16;
/// The most regions of one lifter.
pub const MAX_REGIONS: usize = 48;
const MOST_PAIRS: usize = 8;
const MOST_BLOCKS: usize = 16;

/// The whole set of parameters in force from an event on. A new set replaces the old one whole.
///
/// What is left out is set aside, not forgotten: a lift comes back under its id with its place, its last day, its stop
/// and its limits, and a region keeps what was said of it.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "RecordParameters"))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Parameters {
    /// The regions that reports, limits and sign-offs may name, at most 48. One that no lift loads may stand here too.
    pub regions: Vec<Region>,
    /// The lifts, at most 16.
    pub lifts: Vec<LiftParameters>,
    /// Strict and forgiving lifts that belong together.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub pairs: Vec<Pair>,
    /// Bars, dumbbells, machines.
    pub implements: Vec<Implement>,
    /// The discs.
    pub stock: Stock,
    /// Heights that blocks under each end of a bar can have, stacked ones by their sum.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub blocks: Vec<Length>,
    /// Numbers of the rules.
    #[cfg_attr(feature = "serde", serde(default))]
    pub policy: Policy,
}

impl Parameters {
    /// These lifts with what they load and what they are loaded with, by the default policy.
    #[must_use]
    pub fn new(
        regions: Vec<Region>,
        lifts: Vec<LiftParameters>,
        implements: Vec<Implement>,
        stock: Stock,
    ) -> Parameters {
        Parameters {
            regions,
            lifts,
            pairs: Vec::new(),
            implements,
            stock,
            blocks: Vec::new(),
            policy: Policy::default(),
        }
    }
}

canonical_fields!(Parameters: regions, lifts, pairs, implements, stock, blocks, policy);

/// A strict lift and the forgiving lift trained beside it.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Pair {
    /// Id of the strict lift.
    pub strict: Name,
    /// Id of the forgiving lift.
    pub forgiving: Name,
    /// The strict load may be at most this part of the forgiving lift's proven load.
    #[cfg_attr(feature = "serde", serde(default = "whole_ratio"))]
    pub ratio_cap: f64,
}

impl Pair {
    /// That strict lift with that forgiving one, up to its whole proven load.
    #[must_use]
    pub fn new(strict: Name, forgiving: Name) -> Pair {
        Pair { strict, forgiving, ratio_cap: whole_ratio() }
    }
}

canonical_fields!(Pair: strict, forgiving, ratio_cap);

const fn whole_ratio() -> f64 {
    1.0
}

impl Parameters {
    /// Checks what the parts alone cannot. Whether the start of a lift can be loaded is looked at when the parameters
    /// are taken into a log, since that needs every load that the equipment makes.
    ///
    /// # Errors
    /// `too_many`, `empty_list`, `duplicate_name`, `unknown_name`, `negative_load`, and what the parts report.
    pub fn check(&self) -> Result<(), Error> {
        at_most("regions", self.regions.len(), MAX_REGIONS)?;
        at_most("lifts", self.lifts.len(), MAX_LIFTS)?;
        at_most("pairs", self.pairs.len(), MOST_PAIRS)?;
        at_most("blocks", self.blocks.len(), MOST_BLOCKS)?;
        if self.lifts.is_empty() {
            return Err(Error::plain(Code::EmptyList, "lifts"));
        }
        self.check_ids()?;
        for (at, lift) in self.lifts.iter().enumerate() {
            self.check_lift(lift).map_err(|error| error.within(&format!("lifts[{at}]")))?;
        }
        self.check_blocks()?;
        self.check_pairs()?;
        self.policy.check().map_err(|error| error.within("policy"))
    }

    /// Each id names one thing.
    fn check_ids(&self) -> Result<(), Error> {
        let once = |field: &'static str, ids: &[&Name]| {
            let twice =
                ids.iter().enumerate().find(|(at, id)| ids.iter().take(*at).any(|other| other == *id));
            twice.map_or(Ok(()), |(_, id)| {
                Err(Error::new(Code::DuplicateName, field, id.as_str(), Allowed::rule("each id once")))
            })
        };
        once("regions", &self.regions.iter().map(|region| &region.id).collect::<Vec<_>>())?;
        once("lifts", &self.lifts.iter().map(|lift| &lift.id).collect::<Vec<_>>())
    }

    fn check_lift(&self, lift: &LiftParameters) -> Result<(), Error> {
        lift.check()?;
        for region in &lift.regions {
            self.check_region("regions", region)?;
        }
        let ids = self.implements.iter().map(Implement::id);
        declared(Code::UnknownName, "implement", &lift.implement, ids)?;
        let bar = matches!(self.implement(&lift.implement), Some(Implement::Bar(_)));
        if lift.starts_from == StartsFrom::Floor && !bar {
            let rule = Allowed::rule("a bar, whose discs carry it");
            return Err(Error::new(Code::WrongType, "implement", lift.implement.as_str(), rule));
        }
        self.check_load(lift, lift.start.work.load).map_err(|error| error.within("work").within("start"))
    }

    fn check_blocks(&self) -> Result<(), Error> {
        for (at, height) in self.blocks.iter().enumerate() {
            if *height <= Length::ZERO || *height > Length::millimetres(500) {
                return Err(Error::range(Code::OutOfRange, "height", height.mm(), 0.0, 500.0, "mm")
                    .within(&format!("blocks[{at}]")));
            }
        }
        Ok(())
    }

    fn check_pairs(&self) -> Result<(), Error> {
        for (at, pair) in self.pairs.iter().enumerate() {
            let inside = |error: Error| error.within(&format!("pairs[{at}]"));
            for (field, id) in [("strict", &pair.strict), ("forgiving", &pair.forgiving)] {
                declared(Code::UnknownName, field, id, self.lifts.iter().map(|lift| &lift.id))
                    .map_err(inside)?;
                let twice = |other: &Pair| other.strict == *id || other.forgiving == *id;
                if self.pairs.iter().take(at).any(twice) {
                    let rule = Allowed::rule("a lift belongs to one pair");
                    return Err(inside(Error::new(Code::DuplicateName, field, id.as_str(), rule)));
                }
            }
            if pair.strict == pair.forgiving {
                let id = pair.forgiving.as_str();
                return Err(inside(Error::new(Code::DuplicateName, "forgiving", id, Allowed::Unstated)));
            }
            crate::numeric::within(Code::OutOfRange, "ratio_cap", pair.ratio_cap, 0.1, 2.0, "")
                .map_err(inside)?;
        }
        Ok(())
    }

    /// Whether the implement of a lift has a sign for that load: help counts below zero, everything else above it.
    ///
    /// # Errors
    /// `negative_load` for a load below zero without help, `out_of_range` for one above zero with it.
    pub fn check_load(&self, lift: &LiftParameters, load: Mass) -> Result<(), Error> {
        let helps = matches!(self.implement(&lift.implement), Some(Implement::Assistance(_)));
        let (code, low, high) = match helps {
            true if load > Mass::ZERO => (Code::OutOfRange, -Mass::MAX.kg(), 0.0),
            false if load < Mass::ZERO => (Code::NegativeLoad, 0.0, Mass::MAX.kg()),
            _ => return Ok(()),
        };
        Err(Error::range(code, "load", load.kg(), low, high, "kg"))
    }

    /// The lift with that id.
    #[must_use]
    pub fn lift(&self, id: &Name) -> Option<&LiftParameters> {
        self.lifts.iter().find(|lift| lift.id == *id)
    }

    /// The region with that id.
    #[must_use]
    pub fn region(&self, id: &Name) -> Option<&Region> {
        self.regions.iter().find(|region| region.id == *id)
    }

    /// The pair that the lift belongs to.
    #[must_use]
    pub fn pair_of(&self, id: &Name) -> Option<&Pair> {
        self.pairs.iter().find(|pair| pair.strict == *id || pair.forgiving == *id)
    }

    /// Refuses a lift that is not declared, and says which are.
    pub(crate) fn check_id(&self, id: &Name) -> Result<(), Error> {
        declared(Code::UnknownLift, "lift", id, self.lifts.iter().map(|lift| &lift.id))
    }

    /// Refuses a region that is not declared, and says which are.
    pub(crate) fn check_region(&self, field: &'static str, id: &Name) -> Result<(), Error> {
        declared(Code::UnknownRegion, field, id, self.regions.iter().map(|region| &region.id))
    }

    /// Whether that region is declared.
    pub(crate) fn declares(&self, id: &Name) -> bool {
        self.regions.iter().any(|region| region.id == *id)
    }

    /// The implement with that id.
    #[must_use]
    pub fn implement(&self, id: &Name) -> Option<&Implement> {
        self.implements.iter().find(|implement| implement.id() == id)
    }
}

impl Pair {
    /// The other lift of the pair.
    #[must_use]
    pub fn other(&self, id: &Name) -> &Name {
        if self.strict == *id { &self.forgiving } else { &self.strict }
    }
}
