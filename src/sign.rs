//! Signs that stop everything, and what is asked before anything else on a training day.
//!
//! Uses `canonical`. Both are named in reports and in reasons.

use crate::canonical::canonical_kinds;

/// Signs that stop everything. Any one of them halts every lift until a clearance and the coach's sign-off.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum StopSign {
    /// Chest pain or pressure.
    ChestPain,
    /// Fainting or near-fainting.
    Faint,
    /// Sudden severe breathlessness.
    Breathlessness,
    /// Sudden worst-ever headache.
    Headache,
    /// New weakness or numbness on one side, or trouble speaking.
    OneSidedWeakness,
    /// Heart racing or irregular.
    Heartbeat,
    /// Sudden change in vision.
    Vision,
    /// New bladder or bowel trouble, or numbness between the legs.
    SaddleNumbness,
}

canonical_kinds!(StopSign:
    0 ChestPain, 1 Faint, 2 Breathlessness, 3 Headache, 4 OneSidedWeakness, 5 Heartbeat, 6 Vision, 7 SaddleNumbness);

impl StopSign {
    /// Every sign.
    pub const ALL: [StopSign; 8] = [
        StopSign::ChestPain,
        StopSign::Faint,
        StopSign::Breathlessness,
        StopSign::Headache,
        StopSign::OneSidedWeakness,
        StopSign::Heartbeat,
        StopSign::Vision,
        StopSign::SaddleNumbness,
    ];
}

/// What came with the pain; each outranks the score.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PainFeature {
    /// Not known from before.
    New,
    /// More than the last time.
    Rising,
    /// Sharp.
    Sharp,
    /// Spreads down an arm or a leg.
    Radiating,
    /// The joint locks.
    Locking,
    /// Numbness or weakness.
    Numbness,
    /// A pop with swelling or loss of strength.
    Pop,
}

canonical_kinds!(PainFeature: 0 New, 1 Rising, 2 Sharp, 3 Radiating, 4 Locking, 5 Numbness, 6 Pop);

impl PainFeature {
    /// Whether this alone stops every lift of the region.
    #[must_use]
    pub const fn stops(self) -> bool {
        !matches!(self, PainFeature::New | PainFeature::Rising)
    }
}

/// What is asked before anything else on a training day.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Ask {
    /// Fever.
    Fever,
    /// Dizziness.
    Dizziness,
    /// Palpitations.
    Palpitations,
    /// A fall since last time.
    Fall,
    /// A new or changed medicine since last time.
    NewMedicine,
}

canonical_kinds!(Ask: 0 Fever, 1 Dizziness, 2 Palpitations, 3 Fall, 4 NewMedicine);

impl Ask {
    /// Every question.
    pub const ALL: [Ask; 5] = [Ask::Fever, Ask::Dizziness, Ask::Palpitations, Ask::Fall, Ask::NewMedicine];

    /// The stable name.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Ask::Fever => "fever",
            Ask::Dizziness => "dizziness",
            Ask::Palpitations => "palpitations",
            Ask::Fall => "fall",
            Ask::NewMedicine => "new_medicine",
        }
    }

    /// Whether only a clinician's word closes it. The coach may close a fever that is over (our choice).
    #[must_use]
    pub const fn needs_clinician(self) -> bool {
        !matches!(self, Ask::Fever)
    }
}
