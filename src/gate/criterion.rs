//! What is looked at: named criteria, some of them critical.

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use crate::error::{Allowed, Code, Error};
use crate::source::{OURS, constant, rows};

/// Longest name of a criterion or a rater, in characters.
pub const NAME_LENGTH: usize = 40;

/// Most criteria of one lift; more than a person can watch is not a gate.
pub const CRITERIA: usize = 20;

constant! {
    "gate.critical_criteria",
    /// Most critical criteria of one lift: what must be right on every repetition has to stay a short list.
    ///
    /// # Source
    /// Our choice (row `gate.critical_criteria`).
    pub const CRITICAL_CRITERIA: u16 = 3;
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "criteria a lift",
}

fn short_name(field: &'static str, name: String) -> Result<String, Error> {
    let length = name.chars().count();
    if (1..=NAME_LENGTH).contains(&length) && name.trim().len() == name.len() {
        Ok(name)
    } else {
        let rule = "1 to 40 characters, no space at either end";
        Err(Error::new(Code::NameNotAllowed, field, name, Allowed::rule(rule)))
    }
}

macro_rules! short_name {
    ($(#[doc = $doc:expr])* $type:ident, $field:literal) => {
        $(#[doc = $doc])*
        #[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $type(String);

        impl $type {
            /// A name of 1 to 40 characters, without space at either end.
            ///
            /// # Errors
            /// `name_not_allowed`.
            pub fn new(name: impl Into<String>) -> Result<$type, Error> {
                short_name($field, name.into()).map($type)
            }

            /// The name.
            #[must_use]
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $type {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                out.write_str(&self.0)
            }
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.serialize_str(&self.0)
            }
        }

        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<$type, D::Error> {
                $type::new(String::deserialize(from)?).map_err(serde::de::Error::custom)
            }
        }
    };
}

short_name! {
    /// Name of a criterion, in the coach's own words.
    ///
    /// ```
    /// use bismar::gate::CriterionId;
    ///
    /// assert_eq!(CriterionId::new("knees track feet")?.as_str(), "knees track feet");
    /// assert!(CriterionId::new("").is_err());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    CriterionId, "criterion"
}

short_name! {
    /// Name of who gave the marks, chosen by the host.
    RaterId, "rater"
}

/// One thing that is looked at in a lift.
///
/// ```
/// use bismar::gate::Criterion;
///
/// let brace = Criterion::critical("brace held")?;
/// let even = Criterion::ordinary("left-right even")?.in_sets(&[2]);
/// assert!(brace.applies_to(1) && brace.applies_to(2));
/// assert!(!even.applies_to(1) && even.applies_to(2));
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
pub struct Criterion {
    /// Its name.
    pub id: CriterionId,
    /// Whether a single miss of it fails the session.
    pub critical: bool,
    /// Work sets (1 is the first) in which it is judged, such as the one filmed from the side; empty for all.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub sets: Vec<u8>,
}

impl Criterion {
    /// A criterion of which no repetition may miss.
    ///
    /// # Errors
    /// `name_not_allowed`.
    pub fn critical(name: &str) -> Result<Criterion, Error> {
        Ok(Criterion { id: CriterionId::new(name)?, critical: true, sets: Vec::new() })
    }

    /// A criterion that is watched and reported.
    ///
    /// # Errors
    /// `name_not_allowed`.
    pub fn ordinary(name: &str) -> Result<Criterion, Error> {
        Ok(Criterion { id: CriterionId::new(name)?, critical: false, sets: Vec::new() })
    }

    /// The same criterion, judged in these work sets only (1 is the first).
    #[must_use]
    pub fn in_sets(mut self, sets: &[u8]) -> Criterion {
        self.sets = sets.to_vec();
        self
    }

    /// Whether it is judged in the work set of that number (1 is the first).
    #[must_use]
    pub fn applies_to(&self, set: u8) -> bool {
        self.sets.is_empty() || self.sets.contains(&set)
    }
}

/// Refuses a list that no one can mark by: too long, too many critical ones, a name twice, a set number 0.
///
/// # Errors
/// `out_of_range`, `too_many_critical_criteria`, `duplicate_criterion`.
pub fn check_criteria(criteria: &[Criterion]) -> Result<(), Error> {
    if criteria.len() > CRITERIA {
        let highest = CRITERIA as f64;
        return Err(Error::range(Code::OutOfRange, "criteria", criteria.len(), 0.0, highest, "criteria"));
    }
    let critical = criteria.iter().filter(|criterion| criterion.critical).count();
    if critical > usize::from(CRITICAL_CRITERIA) {
        let highest = f64::from(CRITICAL_CRITERIA);
        return Err(Error::range(Code::TooManyCriticalCriteria, "criteria", critical, 0.0, highest, ""));
    }
    for (at, criterion) in criteria.iter().enumerate() {
        if criterion.sets.contains(&0) {
            return Err(Error::range(Code::OutOfRange, "criteria.sets", 0_u8, 1.0, 255.0, ""));
        }
        if criteria.iter().take(at).any(|earlier| earlier.id == criterion.id) {
            let name = criterion.id.as_str();
            return Err(Error::new(Code::DuplicateCriterion, "criteria", name, Allowed::Unstated));
        }
    }
    Ok(())
}

rows![CRITICAL_CRITERIA];
