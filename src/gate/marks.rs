//! What was seen of one set: repetitions, how many were acceptable, a mark for each criterion.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::criterion::Criterion;
use crate::canonical::{canonical_fields, canonical_kinds};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Length, Name};

/// Most repetitions of one set, as in [`crate::quantity::Reps`].
pub const REPS_IN_A_SET: u16 = 200;

/// Result of one criterion in one set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Mark {
    /// Held throughout the set.
    Met,
    /// Neither clearly held nor clearly lost.
    Borderline,
    /// Lost at least once.
    NotMet,
    /// Nobody looked, or the view hid it. Never counts as met.
    #[default]
    NotSeen,
}

canonical_kinds!(Mark: 0 Met, 1 Borderline, 2 NotMet, 3 NotSeen);

/// Who gave the marks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Rater {
    /// The coach, watching.
    Coach,
    /// The lifter; training, not toward the gate, unless the rules say otherwise.
    Lifter,
    /// Somebody other than the lifter, from video.
    Video,
}

canonical_kinds!(Rater: 0 Coach, 1 Lifter, 2 Video);

/// One criterion with its mark.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct CriterionMark {
    /// Which criterion.
    pub criterion: Name,
    /// Its mark.
    pub mark: Mark,
}

canonical_fields!(CriterionMark: criterion, mark);

impl CriterionMark {
    /// That mark of that criterion.
    #[must_use]
    pub fn new(criterion: Name, mark: Mark) -> CriterionMark {
        CriterionMark { criterion, mark }
    }
}

/// What was seen of one work set.
///
/// ```
/// use bismar::gate::{Mark, Rater, SetMarks};
///
/// let set = SetMarks::scored(5, 4, Rater::Coach).first_failing(5).with("brace held", Mark::Met)?;
/// assert_eq!(set.misses(), Some(1));
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SetMarks {
    /// Repetitions done.
    pub reps: u16,
    /// How many of them were acceptable; absent if nobody counted, which is not the same as none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub acceptable: Option<u16>,
    /// Number of the first repetition that was not acceptable, 1 being the first of the set.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub first_failing_rep: Option<u16>,
    /// Marks, at most one a criterion. A criterion that is not named was not seen.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub marks: Vec<CriterionMark>,
    /// Range reached, measured as the lift's rung measures it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub range_reached: Option<Length>,
    /// Who gave the marks.
    pub rater: Rater,
    /// Which person that was.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub rater_id: Option<Name>,
}

canonical_fields!(SetMarks: reps, acceptable, first_failing_rep, marks, range_reached, rater, rater_id);

impl SetMarks {
    /// A set that was done and not scored.
    #[must_use]
    pub const fn unscored(reps: u16, rater: Rater) -> SetMarks {
        SetMarks {
            reps,
            acceptable: None,
            first_failing_rep: None,
            marks: Vec::new(),
            range_reached: None,
            rater,
            rater_id: None,
        }
    }

    /// A set of which so many repetitions were acceptable.
    #[must_use]
    pub fn scored(reps: u16, acceptable: u16, rater: Rater) -> SetMarks {
        SetMarks { acceptable: Some(acceptable), ..SetMarks::unscored(reps, rater) }
    }

    /// The same set with its first failing repetition.
    #[must_use]
    pub fn first_failing(mut self, rep: u16) -> SetMarks {
        self.first_failing_rep = Some(rep);
        self
    }

    /// Its mark for each of these criteria, in their order.
    pub(super) fn marks_of(&self, criteria: &[Criterion]) -> Vec<Mark> {
        criteria.iter().map(|criterion| self.mark(&criterion.id)).collect()
    }

    /// The same set with one more mark.
    ///
    /// # Errors
    /// `not_a_name`.
    pub fn with(mut self, criterion: &str, mark: Mark) -> Result<SetMarks, Error> {
        self.marks.push(CriterionMark { criterion: Name::new(criterion)?, mark });
        Ok(self)
    }

    /// The mark of a criterion; not seen if it is not named.
    #[must_use]
    pub fn mark(&self, criterion: &Name) -> Mark {
        self.marks.iter().find(|mark| mark.criterion == *criterion).map_or(Mark::NotSeen, |mark| mark.mark)
    }

    /// Takes over what another person saw lost in the same set, and nothing better.
    pub(crate) fn take_losses(&mut self, other: &SetMarks) {
        for lost in other.marks.iter().filter(|each| each.mark == Mark::NotMet) {
            match self.marks.iter_mut().find(|own| own.criterion == lost.criterion) {
                Some(own) => own.mark = Mark::NotMet,
                None => self.marks.push(lost.clone()),
            }
        }
        if let (Some(own), Some(misses)) = (self.misses(), other.misses())
            && misses > own
        {
            self.acceptable = Some(self.reps.saturating_sub(misses));
            // Where it was lost first nobody can tell of sets of different length.
            self.first_failing_rep = other.first_failing_rep.filter(|_| other.reps == self.reps);
        }
    }

    /// Repetitions that were not acceptable, if they were counted.
    #[must_use]
    pub fn misses(&self) -> Option<u16> {
        self.acceptable.map(|acceptable| self.reps.saturating_sub(acceptable))
    }

    /// Refuses marks that contradict themselves or name a criterion that is not on the list.
    ///
    /// # Errors
    /// `out_of_range`, `acceptable_exceed_reps`, `first_failing_rep_contradicts`, `duplicate_criterion`,
    /// `unknown_criterion`.
    pub fn check(&self, criteria: &[Criterion]) -> Result<(), Error> {
        if self.reps > REPS_IN_A_SET {
            let highest = f64::from(REPS_IN_A_SET);
            return Err(Error::range(Code::OutOfRange, "reps", self.reps, 0.0, highest, ""));
        }
        self.check_counts()?;
        self.check_names(criteria)
    }

    fn check_counts(&self) -> Result<(), Error> {
        let reps = f64::from(self.reps);
        if let Some(acceptable) = self.acceptable.filter(|acceptable| *acceptable > self.reps) {
            return Err(Error::range(Code::AcceptableExceedReps, "acceptable", acceptable, 0.0, reps, ""));
        }
        let Some(rep) = self.first_failing_rep else { return Ok(()) };
        if rep < 1 || rep > self.reps {
            return Err(Error::range(Code::OutOfRange, "first_failing_rep", rep, 1.0, reps, ""));
        }
        // Every repetition before the first failing one was acceptable, and that one was not.
        match self.acceptable {
            Some(acceptable) if acceptable == self.reps || acceptable < rep - 1 => {
                let rule =
                    "at most one more than the acceptable repetitions, and absent if all were acceptable";
                Err(Error::new(
                    Code::FirstFailingRepContradicts,
                    "first_failing_rep",
                    rep,
                    Allowed::rule(rule),
                ))
            }
            _ => Ok(()),
        }
    }

    fn check_names(&self, criteria: &[Criterion]) -> Result<(), Error> {
        for (at, mark) in self.marks.iter().enumerate() {
            let name = &mark.criterion;
            if self.marks.iter().take(at).any(|earlier| earlier.criterion == *name) {
                return Err(Error::new(Code::DuplicateCriterion, "marks", name.as_str(), Allowed::Unstated));
            }
            if !criteria.iter().any(|criterion| criterion.id == *name) {
                let rule = Allowed::rule("a criterion of this lift");
                return Err(Error::new(Code::UnknownCriterion, "marks", name.as_str(), rule));
            }
        }
        Ok(())
    }
}
