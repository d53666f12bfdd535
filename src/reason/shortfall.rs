//! In what a session fell short.

/// In what a session fell short of the work granted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Shortfall {
    /// Done on another rung.
    Rung,
    /// Less range.
    Range,
    /// Another tempo.
    Tempo,
    /// Another load.
    Load,
    /// Fewer sets.
    Sets,
    /// Fewer repetitions.
    Reps,
    /// The day allowed less than is granted, so no session could show it.
    Limit,
}
