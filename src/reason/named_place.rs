//! A place by what it is, not by its number in lists that may change.

use crate::quantity::{Length, Name, Tempo};

/// Where a lift was done, whatever its lists of rungs, ranges and tempos hold by now.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct NamedPlace {
    /// Id of the rung; absent where the lift has none.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub rung: Option<Name>,
    /// The range; absent where it is not measured.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub range: Option<Length>,
    /// Seconds down, held and up; absent where the lift has no tempo.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub tempo: Option<Tempo>,
}

impl NamedPlace {
    /// That rung, range and tempo.
    pub(crate) const fn new(rung: Option<Name>, range: Option<Length>, tempo: Option<Tempo>) -> NamedPlace {
        NamedPlace { rung, range, tempo }
    }
}
