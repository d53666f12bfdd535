//! When nobody asked about pain.

/// When nobody asked about pain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Unasked {
    /// No session has been recorded that could have asked.
    NoSessionYet,
    /// Not in the last session; today it was asked.
    LastSession,
    /// Not today; in the last session it was asked.
    Today,
    /// Neither in the last session nor today.
    LastSessionAndToday,
}
