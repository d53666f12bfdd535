//! What kind of day today is.

/// Today against the lifter's own ordinary days, in five classes.
///
/// A good day never raises a load; it is named so that a bad one can be told from it.
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
    /// Several markers agree that today is below the lifter's ordinary range, or technique dropped on a critical point.
    BadAgreeing,
    /// One marker alone says so: go on, look again after the first work set.
    BadSingle,
    /// Within the lifter's ordinary range.
    Ordinary,
    /// Above the lifter's ordinary range. Adds no load.
    Good,
    /// Too little was asked, or too little is known of this lifter, to say.
    Unknown,
}

impl DayClass {
    /// Every class, from worst to best, unknown last.
    pub const ALL: [DayClass; 5] =
        [DayClass::BadAgreeing, DayClass::BadSingle, DayClass::Ordinary, DayClass::Good, DayClass::Unknown];

    /// Whether a marker called today bad.
    #[must_use]
    pub const fn is_bad(self) -> bool {
        matches!(self, DayClass::BadAgreeing | DayClass::BadSingle)
    }

    /// Whether today is a confirmed bad day, on which a failed set does not count against a pass-run.
    #[must_use]
    pub const fn is_confirmed_bad(self) -> bool {
        matches!(self, DayClass::BadAgreeing)
    }

    /// Whether a step up that was earned may be taken today: not on an unknown day, and not while one marker
    /// still says bad (look again after the first work set).
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
