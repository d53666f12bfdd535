//! What an answer holds.

use alloc::vec::Vec;

use super::disc::face_unit;
use crate::quantity::{Length, Mass, Unit};

/// Which load to take where the wanted one can't be made.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Rounding {
    /// The wanted load or an error.
    Exact,
    /// The nearest that is not above it: what is granted is never exceeded.
    #[default]
    Below,
    /// The nearest on either side; of two equally near, the lighter.
    Nearest,
    /// The nearest that is not below it.
    Above,
}

/// One disc in its place on the bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct PlacedDisc {
    /// Its kind: the place in the stock, from 0.
    pub kind: u16,
    /// Face value; written in the unit in which the disc is marked.
    #[cfg_attr(feature = "serde", serde(serialize_with = "super::disc::write_face"))]
    #[cfg_attr(feature = "schema", schemars(with = "crate::quantity::Face"))]
    pub nominal: Mass,
    /// Best known mass.
    pub mass: Mass,
    /// Outer diameter, where it is known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub diameter: Option<Length>,
}

impl PlacedDisc {
    /// The unit of its face.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        face_unit(self.nominal)
    }
}

/// How the load is made.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Setting {
    /// These discs on each end, from the inside out.
    Discs(Vec<PlacedDisc>),
    /// The piece of this mass.
    Piece(Mass),
    /// The selector below this plate (0 for none), with these add-on weights.
    Selected {
        /// Plates that move, counted from the top.
        plates: u16,
        /// Add-on weights hung on.
        add_ons: Vec<Mass>,
    },
}

/// A load that can be made, and how far it lies from the one wanted.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Loaded {
    /// How it is made.
    pub setting: Setting,
    /// The whole load, bar and collars included, from the best known masses. Of one handle or piece where
    /// there are two; below zero for assistance.
    pub total: Mass,
    /// The same by the face values of the discs.
    pub nominal: Mass,
    /// The load made less the load wanted.
    pub difference: Mass,
    /// The difference in percent of the load wanted; none where that is zero.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub difference_percent: Option<f64>,
    /// Height of the bar's centre above the floor it stands on, where there is a disc and every disc's
    /// diameter is known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub centre_height: Option<Length>,
    /// Whether the discs were checked against the room on the sleeve; without sleeve and thickness they
    /// can't be.
    pub fit_checked: bool,
    /// The next load down.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub next_below: Option<Mass>,
    /// The next load up.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub next_above: Option<Mass>,
}

impl Loaded {
    /// The discs on each end from the inside out; empty where the load is not made of discs.
    #[must_use]
    pub fn side(&self) -> &[PlacedDisc] {
        match &self.setting {
            Setting::Discs(discs) => discs,
            _ => &[],
        }
    }
}
