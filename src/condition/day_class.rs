//! How today compares with the lifter's usual.

use crate::canonical::canonical_kinds;

/// Today against the lifter's own ordinary days: below, within or above the usual, in five classes.
///
/// A day above the usual never raises a load; it is named so that one below can be told from it.
///
/// ```
/// use bismar::condition::DayClass;
///
/// assert!(DayClass::Below.is_below());
/// assert!(!DayClass::Unknown.allows_advance());
/// ```
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum DayClass {
    /// Below the usual: several markers agree, or technique slipped on a critical point.
    Below,
    /// One marker alone lies below the usual: go on, look again after the first work set.
    BelowSingle,
    /// Within the usual.
    Within,
    /// Above the usual. Adds no load.
    Above,
    /// Too little was asked, or too little is known of this lifter, to say.
    Unknown,
}

canonical_kinds!(DayClass: 0 Below, 1 BelowSingle, 2 Within, 3 Above, 4 Unknown);

impl DayClass {
    /// Every class, from worst to best, unknown last.
    pub const ALL: [DayClass; 5] =
        [DayClass::Below, DayClass::BelowSingle, DayClass::Within, DayClass::Above, DayClass::Unknown];

    /// Whether a marker lies below the usual today.
    #[must_use]
    pub const fn is_below(self) -> bool {
        matches!(self, DayClass::Below | DayClass::BelowSingle)
    }

    /// Whether today lies below the usual by signs that agree; a failed set then does not count against a pass-run.
    #[must_use]
    pub const fn is_confirmed_below(self) -> bool {
        matches!(self, DayClass::Below)
    }

    /// Whether a step up that was earned may be taken today: not on an unknown day, and not while one marker
    /// still lies below the usual (look again after the first work set).
    #[must_use]
    pub const fn allows_advance(self) -> bool {
        matches!(self, DayClass::Within | DayClass::Above)
    }

    /// The stable name.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            DayClass::Below => "below",
            DayClass::BelowSingle => "below_single",
            DayClass::Within => "within",
            DayClass::Above => "above",
            DayClass::Unknown => "unknown",
        }
    }
}
