//! What a coach does beside training: sign off, overrule, take or decline a move, move by hand, set roles.

use alloc::string::String;

use derive_setters::Setters;

use super::place::Grant;
use crate::canonical::{canonical_fields, canonical_kinds};
use crate::quantity::{Day, Mass, Name};

/// What a sign-off covers.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum SignOffScope {
    /// Every lift, after a symptom stop.
    Everything,
    /// Every lift of the region with that id, after a pain stop.
    Region(Name),
    /// The gate of the lift with that id, where its gate asks for a sign-off.
    Gate(Name),
}

/// The coach signs something off.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SignOff {
    /// Who.
    pub who: Name,
    /// What.
    pub scope: SignOffScope,
}

canonical_fields!(SignOff: who, scope);

impl SignOff {
    /// That person signs that off.
    #[must_use]
    pub fn new(who: Name, scope: SignOffScope) -> SignOff {
        SignOff { who, scope }
    }
}

/// The coach overrules the gate for one lift. Upward it needs a reason and an end; downward it needs neither,
/// and without an end it lowers the granted load for good.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Override {
    /// Id of the lift.
    pub lift: Name,
    /// The load allowed instead.
    pub load: Mass,
    /// Who.
    pub who: Name,
    /// Why.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub why: Option<String>,
    /// Last day it holds.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub expires: Option<Day>,
}

canonical_fields!(Override: lift, load, who, why, expires);

impl Override {
    /// That load by that person, with neither words nor an end.
    #[must_use]
    pub fn new(lift: Name, load: Mass, who: Name) -> Override {
        Override { lift, load, who, why: None, expires: None }
    }
}

/// The coach takes or declines the move on offer.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Advance {
    /// Id of the lift.
    pub lift: Name,
    /// Who.
    pub who: Name,
}

canonical_fields!(Advance: lift, who);

impl Advance {
    /// That lift, by that person.
    #[must_use]
    pub fn new(lift: Name, who: Name) -> Advance {
        Advance { lift, who }
    }
}

/// The coach moves a lift along its ladder or ranges by hand, sideways or down; upward goes through the gate.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Move {
    /// Id of the lift.
    pub lift: Name,
    /// Where to.
    pub to: Grant,
    /// Who.
    pub who: Name,
}

canonical_fields!(Move: lift, to, who);

impl Move {
    /// That lift goes there.
    #[must_use]
    pub fn new(lift: Name, to: Grant, who: Name) -> Move {
        Move { lift, to, who }
    }
}

/// Something about a lift changed that makes sessions before and after it hard to compare.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct BarChanged {
    /// Id of the lift; absent means all.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub lift: Option<Name>,
    /// What or who it is now.
    pub now: Name,
}

canonical_fields!(BarChanged: lift, now);

impl BarChanged {
    /// That implement now, for every lift.
    #[must_use]
    pub fn new(now: Name) -> BarChanged {
        BarChanged { lift: None, now }
    }
}

/// What a lift is for in this block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Role {
    /// To be learned or advanced through its gate.
    Train,
    /// Deliberately kept where it is.
    Maintain,
    /// Not trained for now.
    Rest,
    /// No longer used.
    Retire,
}

/// A lift gets another role.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct RoleSet {
    /// Id of the lift.
    pub lift: Name,
    /// Its role from now on.
    pub role: Role,
    /// Maintaining: down to this load it is on plan, as an age expectation may have it; absent means that it stays.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub not_below: Option<Mass>,
}

canonical_fields!(RoleSet: lift, role, not_below);

impl RoleSet {
    /// That role of that lift.
    #[must_use]
    pub fn new(lift: Name, role: Role) -> RoleSet {
        RoleSet { lift, role, not_below: None }
    }
}

/// Tests of everyday function.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum EverydayTest {
    /// Five chair rises, seconds.
    ChairRiseSeconds,
    /// Chair rises in 30 s, count.
    ChairRiseCount,
    /// Walking speed, m/s.
    GaitSpeed,
    /// Grip, kg.
    Grip,
    /// Rising from the floor, seconds.
    FloorRise,
}

/// A measured test of everyday function.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Measurement {
    /// Which test.
    pub test: EverydayTest,
    /// Its result in the unit of the test.
    pub result: f64,
}

canonical_fields!(Measurement: test, result);

impl Measurement {
    /// That result of that test.
    #[must_use]
    pub fn new(test: EverydayTest, result: f64) -> Measurement {
        Measurement { test, result }
    }
}

canonical_kinds!(SignOffScope: 0 Everything, 1 Region(id), 2 Gate(id));
canonical_kinds!(Role: 0 Train, 1 Maintain, 2 Rest, 3 Retire);
canonical_kinds!(EverydayTest: 0 ChairRiseSeconds, 1 ChairRiseCount, 2 GaitSpeed, 3 Grip, 4 FloorRise);
