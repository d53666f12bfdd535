//! What a set of the log says about strength.

use crate::gate::SetMarks;
use crate::one_rm::{SetEffort, SetEvidence, TechniqueVerdict};
use crate::quantity::{Day, Reserve, Rir};
use crate::record::{Effort, WorkSet};

/// A set of that day as evidence.
pub(super) fn of_set(set: &WorkSet, day: Day) -> SetEvidence {
    let effort = match set.effort {
        _ if set.failed => SetEffort::Failure,
        Some(Effort::Rir(left)) => SetEffort::Rir(left),
        Some(Effort::Rpe(rating)) => SetEffort::Rpe(rating),
        None => SetEffort::NotReported,
    };
    let technique = match set.marks.as_ref().and_then(SetMarks::misses) {
        Some(0 | 1) => TechniqueVerdict::Passed,
        Some(_) => TechniqueVerdict::Failed,
        None => TechniqueVerdict::NotScored,
    };
    SetEvidence { load: set.load, reps: set.reps, effort, technique, day: Some(day) }
}

/// Repetitions left in reserve, where they were told; of a band the lower end, and after a missed repetition, or without
/// one, none.
pub(super) fn reserve_of_set(set: &WorkSet) -> Option<Rir> {
    if set.failed || set.reps.halves() == 0 {
        return Some(Rir::whole(0));
    }
    match set.effort? {
        Effort::Rir(left) => Some(left),
        Effort::Rpe(rating) => match rating.reserve() {
            Reserve::Exactly(left) | Reserve::Between(left, _) => Some(left),
            Reserve::MoreLoadOnly => Some(Rir::whole(0)),
            Reserve::NotAReserve => None,
        },
    }
}
