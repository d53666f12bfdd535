//! Looks that are due: at a lift that is kept where it is, and at what was weak before a move.

use super::lift::Now;
use super::status::Status;
use super::view::View;
use crate::gate::{Mark, Outcome, SetMarks};
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{LiftParameters, Policy};

/// The next look that is due at a lift, if one is. It moves nothing and blocks nothing; missing it leaves the
/// lift where it is, with a day that has passed.
pub(crate) fn due(view: &View<'_>) -> Option<Reason> {
    let now = &view.lift.now;
    let watched = now.watched.clone().map(|(by, criterion)| (by, Some(criterion)));
    let kept = (now.status == Status::Maintaining).then(|| kept_until(now, view.policy()));
    let (by, criterion) = match (watched, kept.flatten()) {
        (Some(watched), Some(kept)) if kept < watched.0 => (kept, None),
        (Some(watched), _) => watched,
        (None, kept) => (kept?, None),
    };
    // On its last day it is due; from the next on it is late.
    Some(if view.on > by {
        Reason::ProbeOverdue { since: by, criterion }
    } else {
        Reason::ProbeDue { by, criterion }
    })
}

/// Day by which a maintained lift is to be seen at its place again: some weeks after the last session that was
/// marked and passed, and at once after one that failed.
fn kept_until(now: &Now, policy: &Policy) -> Option<Day> {
    let seen = now.sittings.iter().rfind(|sitting| sitting.outcome != Outcome::NotScored);
    let (from, days) = match seen {
        Some(last) if last.outcome == Outcome::Fail => (last.day, 1),
        Some(last) => (last.day, policy.probe_days),
        None => (now.since.max(now.here.1), policy.probe_days),
    };
    from.plus(i32::from(days)).ok()
}

/// After a move, what was weak before it is to be looked at again.
pub(crate) fn watch(now: &mut Now, weak: Option<Name>, on: Day, policy: &Policy) {
    now.watched = weak.and_then(|weak| Some((on.plus(i32::from(policy.probe_days)).ok()?, weak)));
}

/// Whether what is watched was seen in these sets, and held in all of them.
pub(crate) fn watched_held(now: &Now, set: &LiftParameters, marks: &[&SetMarks]) -> bool {
    let Some((_, watched)) = &now.watched else { return false };
    let counts = |sets: &&&SetMarks| set.pass.lifter_marks_count || sets.rater != crate::gate::Rater::Lifter;
    let lost = marks.iter().any(|sets| matches!(sets.mark(watched), Mark::NotMet | Mark::Borderline));
    !lost && marks.iter().filter(counts).any(|sets| sets.mark(watched) == Mark::Met)
}
