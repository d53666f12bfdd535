//! How today compares with the lifter's usual.

/// Today against the lifter's own ordinary days: below, within or above the usual, in five classes.
///
/// A day above the usual never raises a load; it is named so that one below can be told from it.
///
/// ```
/// use bismar::condition::DayClass;
///
/// assert!(DayClass::BadAgreeing.is_bad());
/// assert!(!DayClass::Unknown.allows_advance());
/// ```
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum DayClass {
    /// Below the usual: several markers agree, or technique slipped on a critical point.
    BadAgreeing,
    /// One marker alone lies below the usual: go on, look again after the first work set.
    BadSingle,
    /// Within the usual.
    Ordinary,
    /// Above the usual. Adds no load.
    Good,
    /// Too little was asked, or too little is known of this lifter, to say.
    Unknown,
}

impl DayClass {
    /// Every class, from worst to best, unknown last.
    pub const ALL: [DayClass; 5] =
        [DayClass::BadAgreeing, DayClass::BadSingle, DayClass::Ordinary, DayClass::Good, DayClass::Unknown];

    /// Whether a marker lies below the usual today.
    #[must_use]
    pub const fn is_bad(self) -> bool {
        matches!(self, DayClass::BadAgreeing | DayClass::BadSingle)
    }

    /// Whether today lies below the usual by signs that agree; a failed set then does not count against a pass-run.
    #[must_use]
    pub const fn is_confirmed_bad(self) -> bool {
        matches!(self, DayClass::BadAgreeing)
    }

    /// Whether a step up that was earned may be taken today: not on an unknown day, and not while one marker
    /// still lies below the usual (look again after the first work set).
    #[must_use]
    pub const fn allows_advance(self) -> bool {
        matches!(self, DayClass::Ordinary | DayClass::Good)
    }

    /// The stable name.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            DayClass::BadAgreeing => "bad_agreeing",
            DayClass::BadSingle => "bad_single",
            DayClass::Ordinary => "ordinary",
            DayClass::Good => "good",
            DayClass::Unknown => "unknown",
        }
    }
}
