//! What the sessions of a lift say about its strength: its sets where they can be compared, an estimate a session.

use alloc::vec::Vec;

use super::diary::{Diary, LiftDone};
use super::evidence::of_set;
use super::trend::SessionEstimate;
use crate::condition::{EvidenceKind, StrengthEvidence};
use crate::error::Error;
use crate::numeric::normal::normal_reach;
use crate::one_rm::{
    CurveForm, EstimateOptions, OwnCurve, ReserveBias, SetEvidence, estimate, estimate_by_own_curve,
    own_curve,
};
use crate::quantity::{Day, Interval, Name};
use crate::record::Place;

/// Own sets that are not older than this speak of the own curve (our choice).
pub(super) const CURVE_DAYS: i32 = 365;
/// The most sets of an own curve, the newest.
pub(super) const MOST_SETS: usize = 200;
/// What own sets must have added before their curve takes the place of published equations (our choice: half of what was
/// uncertain).
pub(super) const LEARNED: f64 = 0.5;
/// For so many days a lifter counts as new to a lift: early gains are mostly learning (our choice: three months).
const NEW_TO_LIFT: i32 = 91;
/// Level of the intervals.
pub(super) const LEVEL: f64 = 0.95;

/// The sessions of one lift that can be compared: those on the rung and in the range of the last one.
pub(super) struct Sessions<'d> {
    pub(super) done: Vec<LiftDone<'d>>,
    /// Where they were done.
    pub(super) place: Option<Place>,
    /// Sessions on another rung or in another range, which say nothing about this one.
    pub(super) elsewhere: u32,
    /// Sets with help whose mass nobody knows.
    pub(super) unweighed: u32,
    first: Option<Day>,
}

/// What one session says.
#[derive(Clone, Copy)]
pub(super) struct Estimated {
    pub(super) day: Day,
    pub(super) value: f64,
    pub(super) interval: Interval,
}

impl Estimated {
    pub(super) fn evidence(&self) -> StrengthEvidence {
        let standard_error = self.interval.width() / (2.0 * normal_reach(self.interval.level()));
        StrengthEvidence {
            day: self.day,
            estimate: self.value,
            standard_error,
            kind: EvidenceKind::RepsAndEffort,
        }
    }
}

impl<'d> Sessions<'d> {
    pub(super) fn of(diary: &'d Diary<'_>, lift: &Name) -> Sessions<'d> {
        let all: Vec<LiftDone<'d>> = diary.sessions_of(lift).collect();
        let place = all.last().map(LiftDone::place);
        Sessions::chosen(all, place)
    }

    /// Those up to that day, on the rung and in the range of the last of them.
    pub(super) fn until(diary: &'d Diary<'_>, lift: &Name, last: Day) -> Sessions<'d> {
        let up_to = diary.sessions_of(lift).filter(|done| done.day <= last);
        let all: Vec<LiftDone<'d>> = up_to.collect();
        let place = all.last().map(LiftDone::place);
        Sessions::chosen(all, place)
    }

    /// Those on that rung and in that range.
    pub(super) fn at(diary: &'d Diary<'_>, lift: &Name, place: Place) -> Sessions<'d> {
        Sessions::chosen(diary.sessions_of(lift).collect(), Some(place))
    }

    fn chosen(all: Vec<LiftDone<'d>>, place: Option<Place>) -> Sessions<'d> {
        let first = all.first().map(|done| done.day);
        let count = all.len();
        let here = |done: &LiftDone<'_>| {
            place.is_some_and(|place| {
                let at = done.place();
                (at.rung, at.range) == (place.rung, place.range)
            })
        };
        let done: Vec<LiftDone<'d>> = all.into_iter().filter(here).collect();
        let without =
            |done: &LiftDone<'_>| done.lift.sets.iter().filter(|set| done.moved(set.load).is_none()).count();
        let unweighed = done.iter().map(without).sum::<usize>() as u32;
        Sessions { elsewhere: (count - done.len()) as u32, done, place, unweighed, first }
    }

    /// The sets of a session as evidence; a helped set with the body less the help.
    fn sets(done: &LiftDone<'_>) -> Vec<SetEvidence> {
        let weighed = |set| {
            let evidence = of_set(set, done.day);
            Some(SetEvidence { load: done.moved(evidence.load)?, ..evidence })
        };
        done.lift.sets.iter().filter_map(weighed).collect()
    }

    /// The newest sets from which an own curve may be read on that day.
    pub(super) fn of_curve(&self, today: Day) -> Vec<SetEvidence> {
        let recent = self.done.iter().filter(|done| today.since(done.day) <= CURVE_DAYS);
        let mut sets: Vec<SetEvidence> = recent.flat_map(Self::sets).collect();
        sets.drain(..sets.len().saturating_sub(MOST_SETS));
        sets
    }

    fn options(&self, day: Day) -> EstimateOptions {
        let new_to_lift = self.first.is_some_and(|first| day.since(first) < NEW_TO_LIFT);
        EstimateOptions { level: LEVEL, new_to_lift, ..EstimateOptions::default() }
    }

    /// One estimate for each session since that day whose sets can speak, by published equations or by the own curve.
    pub(super) fn estimates(&self, since: Day, curve: Option<&OwnCurve>) -> Result<Vec<Estimated>, Error> {
        let mut found = Vec::new();
        for done in self.done.iter().filter(|done| done.day >= since) {
            let (sets, options) = (Self::sets(done), self.options(done.day));
            let answer = match curve {
                Some(curve) => estimate_by_own_curve(&sets, curve, &options),
                None => estimate(&sets, &options).map(|one| (one.value, one.interval)),
            };
            // A session whose sets cannot speak is no error: most are trained far from failure.
            if let Ok((value, interval)) = answer {
                found.push(Estimated { day: done.day, value: value.value(), interval });
            }
        }
        Ok(found)
    }

    /// The newest session since that day whose sets can speak, by published equations: as its reserve was called, and with the
    /// published mean of what people leave beyond it.
    pub(super) fn newest(&self, since: Day) -> Option<SessionEstimate> {
        self.done.iter().rev().filter(|done| done.day >= since).find_map(|done| {
            let (sets, options) = (Self::sets(done), self.options(done.day));
            let as_called = estimate(&sets, &options).ok()?;
            let options = EstimateOptions { bias: ReserveBias::halperin_2022(), ..options };
            let with_unsaid = estimate(&sets, &options).ok().filter(|one| one.value != as_called.value);
            Some(SessionEstimate { day: done.day, as_called, with_unsaid })
        })
    }

    /// The estimates by whatever is surer over all of them, and whether that is the own curve.
    pub(super) fn surest(&self, since: Day, today: Day) -> Result<(Vec<Estimated>, bool), Error> {
        let published = self.estimates(since, None)?;
        let Some(curve) = enough_of_a_curve(&self.of_curve(today)) else {
            return Ok((published, false));
        };
        let own = self.estimates(since, Some(&curve))?;
        let width = |all: &[Estimated]| all.iter().map(|one| one.interval.width() / one.value).sum::<f64>();
        if own.len() == published.len() && width(&own) < width(&published) {
            Ok((own, true))
        } else {
            Ok((published, false))
        }
    }
}

/// The own curve of these sets, where they tell enough to take the place of published equations.
pub(super) fn enough_of_a_curve(sets: &[SetEvidence]) -> Option<OwnCurve> {
    own_curve_of(sets).filter(|curve| curve.learned >= LEARNED)
}

/// The own curve of these sets, where they can tell one.
pub(super) fn own_curve_of(sets: &[SetEvidence]) -> Option<OwnCurve> {
    let form = CurveForm::Exponential;
    own_curve(sets, form, form.prior(), &EstimateOptions::default()).ok()
}
