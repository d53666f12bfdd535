//! A ladder of rungs, partly ordered: rungs that no chain connects are beside each other.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::lift::LiftParameters;
use super::place::{Dimension, Grant};
use super::session::at_most;
use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};
use crate::quantity::Name;

/// The most rungs of one ladder.
pub(super) const MOST_RUNGS: usize = 24;

/// A rung of a ladder.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Rung {
    /// Its id within the ladder.
    pub id: Name,
    /// What people call it; absent where the id says it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub name: Option<Name>,
    /// Ids of the rungs directly easier than this one; rungs that no chain connects are not comparable.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub harder_than: Vec<Name>,
    /// Load here as a part of the load on the easier rung, from the lifter's own data; absent where unknown.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub own_ratio: Option<f64>,
}

canonical_fields!(Rung: id, name, harder_than, own_ratio);

impl Rung {
    /// A rung that is harder than those, with its id as its name.
    #[must_use]
    pub const fn new(id: Name, harder_than: Vec<Name>) -> Rung {
        Rung { id, name: None, harder_than, own_ratio: None }
    }

    /// What people call it.
    #[must_use]
    pub fn label(&self) -> &Name {
        self.name.as_ref().unwrap_or(&self.id)
    }
}

impl LiftParameters {
    /// Whether rung `harder` lies above rung `easier` on some chain of the ladder.
    #[must_use]
    pub fn is_harder(&self, harder: u8, easier: u8) -> bool {
        let mut reached = alloc::vec![harder];
        let mut at = 0;
        // Each rung enters the list once, so the walk ends.
        while let Some(index) = reached.get(at).copied() {
            at += 1;
            for below in self.easier_rungs(index) {
                if below == easier {
                    return true;
                }
                if !reached.contains(&below) {
                    reached.push(below);
                }
            }
        }
        false
    }

    /// Numbers of the rungs directly easier than that one.
    pub(crate) fn easier_rungs(&self, rung: u8) -> impl Iterator<Item = u8> + '_ {
        let below = self.rungs.get(usize::from(rung)).map(|rung| rung.harder_than.as_slice());
        below.unwrap_or_default().iter().filter_map(|id| self.rung_with(id))
    }

    /// The rung below, or the same where there is none.
    pub(crate) fn easier_rung(&self, rung: u8) -> u8 {
        self.easier_rungs(rung).next().unwrap_or(rung)
    }

    /// The first rung directly harder than this one.
    pub(crate) fn harder_rung(&self, rung: u8) -> Option<u8> {
        (0..self.rungs.len() as u8).find(|harder| self.easier_rungs(*harder).any(|easier| easier == rung))
    }

    /// Number of the rung with that id.
    #[must_use]
    pub fn rung_with(&self, id: &Name) -> Option<u8> {
        self.rungs.iter().position(|rung| rung.id == *id).and_then(|at| u8::try_from(at).ok())
    }

    /// Dimensions in which `to` is harder than `from`. Two grants that are harder in nothing may still differ: a rung that
    /// no chain connects is a step sideways.
    #[must_use]
    pub fn harder_in(&self, from: &Grant, to: &Grant) -> Vec<Dimension> {
        let (at, then) = (&from.place, &to.place);
        [
            (Dimension::Variant, self.is_harder(then.rung, at.rung)),
            (Dimension::Range, then.range > at.range),
            (Dimension::Tempo, then.tempo > at.tempo),
            (Dimension::Sets, to.work.sets > from.work.sets),
            (Dimension::Reps, to.work.reps > from.work.reps),
            (Dimension::Load, to.work.load > from.work.load),
        ]
        .into_iter()
        .filter_map(|(dimension, is_harder)| is_harder.then_some(dimension))
        .collect()
    }

    pub(super) fn check_ladder(&self) -> Result<(), Error> {
        at_most("rungs", self.rungs.len(), MOST_RUNGS)?;
        if self.rungs.is_empty() {
            return Err(Error::plain(Code::EmptyList, "rungs"));
        }
        for (at, rung) in self.rungs.iter().enumerate() {
            let inside = |error: Error| error.within(&alloc::format!("rungs[{at}]"));
            if self.rungs.iter().take(at).any(|earlier| earlier.id == rung.id) {
                return Err(Error::new(Code::DuplicateName, "rungs", rung.id.as_str(), Allowed::Unstated));
            }
            at_most("harder_than", rung.harder_than.len(), MOST_RUNGS).map_err(inside)?;
            for id in &rung.harder_than {
                let rungs = self.rungs.iter().map(|rung| &rung.id);
                super::identity::declared(Code::UnknownName, "harder_than", id, rungs).map_err(inside)?;
            }
            if let Some(ratio) = rung.own_ratio {
                crate::numeric::within(Code::OutOfRange, "own_ratio", ratio, 0.05, 20.0, "")
                    .map_err(inside)?;
            }
            if self.is_harder(at as u8, at as u8) {
                return Err(Error::new(Code::LadderCycle, "rungs", rung.id.as_str(), Allowed::Unstated));
            }
        }
        Ok(())
    }
}
