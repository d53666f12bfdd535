//! Looks that are due: at a lift that is kept where it is, and at what was weak before a move.

use super::state::{State, TrackState};
use super::status::Status;
use crate::gate::{Mark, Outcome, SetMarks};
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{Policy, TrackParameters};

impl State {
    /// The next look that is due at a lift, if one is. It moves nothing and blocks nothing; missing it leaves the
    /// lift where it is, with a day that has passed.
    pub(crate) fn probe(&self, at: usize) -> Option<Reason> {
        let (parameters, track) = (self.parameters.as_ref()?, self.tracks.get(at)?);
        let watched = track.watched.clone().map(|(by, criterion)| (by, Some(criterion)));
        let kept = (track.status == Status::Maintaining).then(|| track.kept_until(&parameters.policy));
        let (by, criterion) = match (watched, kept.flatten()) {
            (Some(watched), Some(kept)) if kept < watched.0 => (kept, None),
            (Some(watched), _) => watched,
            (None, kept) => (kept?, None),
        };
        Some(Reason::ProbeDue { by, criterion })
    }
}

impl TrackState {
    /// Day by which a maintained lift is to be seen at its place again: some weeks after the last session that was
    /// marked and passed, and at once after one that failed.
    fn kept_until(&self, policy: &Policy) -> Option<Day> {
        let seen = self.sittings.iter().rfind(|sitting| sitting.outcome != Outcome::NotScored);
        let (from, days) = match seen {
            Some(last) if last.outcome == Outcome::Fail => (last.day, 1),
            Some(last) => (last.day, policy.probe_days),
            None => (self.since.max(self.here.1), policy.probe_days),
        };
        from.plus(i32::from(days)).ok()
    }

    /// After a move, what was weak before it is to be looked at again.
    pub(crate) fn watch(&mut self, weak: Option<Name>, on: Day, policy: &Policy) {
        self.watched = weak.and_then(|weak| Some((on.plus(i32::from(policy.probe_days)).ok()?, weak)));
    }

    /// Whether what is watched was seen in these sets, and held in all of them.
    pub(crate) fn watched_held(&self, set: &TrackParameters, marks: &[&SetMarks]) -> bool {
        let Some((_, watched)) = &self.watched else { return false };
        let counts =
            |sets: &&&SetMarks| set.pass.lifter_marks_count || sets.rater != crate::gate::Rater::Lifter;
        let lost = marks.iter().any(|sets| matches!(sets.mark(watched), Mark::NotMet | Mark::Borderline));
        !lost && marks.iter().filter(counts).any(|sets| sets.mark(watched) == Mark::Met)
    }
}
