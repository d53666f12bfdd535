//! What is looked at: named criteria, some of them critical.

use alloc::vec::Vec;

use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};
use crate::quantity::Name;
use crate::source::{OURS, constant, rows};

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
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Criterion {
    /// Its name, in the coach's own words.
    pub id: Name,
    /// Whether a single miss of it fails the session.
    pub critical: bool,
    /// Work sets (1 is the first) in which it is judged, such as the one filmed from the side; empty for all.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub sets: Vec<u8>,
}

canonical_fields!(Criterion: id, critical, sets);

impl Criterion {
    /// A criterion of which no repetition may miss.
    ///
    /// # Errors
    /// `not_a_name`.
    pub fn critical(name: &str) -> Result<Criterion, Error> {
        Ok(Criterion { id: Name::new(name)?, critical: true, sets: Vec::new() })
    }

    /// A criterion that is watched and reported.
    ///
    /// # Errors
    /// `not_a_name`.
    pub fn ordinary(name: &str) -> Result<Criterion, Error> {
        Ok(Criterion { id: Name::new(name)?, critical: false, sets: Vec::new() })
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
            let error = Error::range(Code::OutOfRange, "sets", 0_u8, 1.0, 255.0, "");
            return Err(error.within(&alloc::format!("criteria[{at}]")));
        }
        if criteria.iter().take(at).any(|earlier| earlier.id == criterion.id) {
            let name = criterion.id.as_str();
            return Err(Error::new(Code::DuplicateCriterion, "criteria", name, Allowed::Unstated));
        }
    }
    Ok(())
}

rows![CRITICAL_CRITERIA];
