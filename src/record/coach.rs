//! What a coach does beside training: sign off, overrule, take or decline a move, move by hand, set roles.

use alloc::string::String;

use super::place::Grant;
use crate::quantity::{Day, Mass, Name};

/// What a sign-off covers.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
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
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct SignOff {
    /// Who.
    pub who: Name,
    /// What.
    pub scope: SignOffScope,
}

/// The coach overrules the gate for one lift. Upward it needs a reason and an end; downward it needs neither,
/// and without an end it lowers the granted load for good.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Override {
    /// Id of the lift.
    pub lift: Name,
    /// The load allowed instead.
    pub load: Mass,
    /// Who.
    pub who: Name,
    /// Why.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub why: Option<String>,
    /// Last day it holds.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub expires: Option<Day>,
}

/// The coach takes or declines the move on offer.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Advance {
    /// Id of the lift.
    pub lift: Name,
    /// Who.
    pub who: Name,
}

/// The coach moves a lift along its ladder or ranges by hand, sideways or down; upward goes through the gate.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Move {
    /// Id of the lift.
    pub lift: Name,
    /// Where to.
    pub to: Grant,
    /// Who.
    pub who: Name,
}

/// Something about a lift changed that makes sessions before and after it hard to compare.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct BarChanged {
    /// Id of the lift; absent means all.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub lift: Option<Name>,
    /// What or who it is now.
    pub now: Name,
}

/// What a lift is for in this block.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
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
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct RoleSet {
    /// Id of the lift.
    pub lift: Name,
    /// Its role from now on.
    pub role: Role,
    /// Maintaining: down to this load it is on plan, as an age expectation may have it; absent means that it stays.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub not_below: Option<Mass>,
}

/// Tests of everyday function.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum FunctionTest {
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
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Measurement {
    /// Which test.
    pub test: FunctionTest,
    /// Its result in the unit of the test.
    pub result: f64,
}
