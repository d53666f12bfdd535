//! What happened to a lift, where a reason names it.

/// What ended the coach's override upward.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum OverrideEnd {
    /// A break.
    Break,
    /// Time in which the lift was kept below its work.
    HeldLower,
    /// An illness.
    Illness,
    /// A stop.
    Stop,
    /// A step back.
    StepBack,
    /// A step up.
    Step,
    /// The coach moved the lift by hand.
    Move,
    /// New parameters no longer have its place.
    PlaceGone,
    /// The implement became another kind.
    OtherImplement,
}

/// Why the coach's sign-off lifted no stop.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SignOffRefusal {
    /// No clearance that allows training had been given since the stop by then.
    NoClearance,
    /// The clearance said not to train.
    NotCleared,
    /// The clearance given since the stop had run out.
    ClearanceExpired,
    /// It was for everything; what is stopped is a region, which it did not name.
    NamesNoRegion,
    /// What stops was told after it: it was given by somebody who did not know of it.
    ToldLater,
}

/// Why sessions at a place are counted anew, though the lift stands where it stood.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Restart {
    /// The coach declined the step on offer.
    Declined,
    /// The step on offer was not taken by its last day.
    OfferEnded,
    /// The bar or the discs changed.
    BarChanged,
    /// Another person gives the marks.
    RaterChanged,
    /// Height, stance, box, shoes, belt or straps changed.
    SetupChanged,
    /// The gate, its criteria or its rules changed.
    GateChanged,
    /// The implement or where the lift starts from changed.
    EquipmentChanged,
}
