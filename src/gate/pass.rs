//! From marks to a set pass and a session pass.

use alloc::vec::Vec;

use super::criterion::{Criterion, check_criteria};
use super::marks::{Mark, Rater, SetMarks};
use super::rules::PassRules;
use super::verdict::{FailingRep, Outcome, PassReason, SessionVerdict, SetVerdict, outcome_of};
use crate::error::{Code, Error};
use crate::quantity::Name;
use crate::source::{OURS, formula, rows};

/// Most work sets of one lift in one session.
const WORK_SETS: usize = 100;

/// One work set with its number and whether its marks count.
struct Work<'a> {
    number: u8,
    set: &'a SetMarks,
    /// Its mark for each criterion of the lift, in their order: names are compared once.
    marks: &'a [Mark],
    counts: bool,
}

impl<'a> Work<'a> {
    fn new(rules: &PassRules, number: u8, set: &'a SetMarks, marks: &'a [Mark]) -> Work<'a> {
        Work { number, set, marks, counts: rules.lifter_marks_count || set.rater != Rater::Lifter }
    }

    /// The mark as it was given to the criterion at that place.
    fn given(&self, at: usize) -> Mark {
        self.marks.get(at).copied().unwrap_or_default()
    }

    /// The mark as the gate sees it. A loss is believed whoever marked it; nothing better is taken from a
    /// rater who does not count.
    fn mark(&self, at: usize) -> Mark {
        match self.given(at) {
            Mark::NotMet => Mark::NotMet,
            mark if self.counts => mark,
            _ => Mark::NotSeen,
        }
    }

    /// Repetitions and misses, if somebody who counts has counted them.
    fn score(&self) -> Option<(u32, u32)> {
        let misses = self.set.misses().filter(|_| self.counts && self.set.reps > 0)?;
        Some((u32::from(self.set.reps), u32::from(misses)))
    }

    fn unscored(&self) -> Option<PassReason> {
        let set = self.number;
        match self.score() {
            Some(_) => None,
            None if self.counts => Some(PassReason::SetNotScored { set }),
            None => Some(PassReason::LifterMarksOnly { set }),
        }
    }

    fn critical(&self, rules: &PassRules, criteria: &[Criterion], reasons: &mut Vec<PassReason>) {
        let set = self.number;
        let judged = criteria.iter().enumerate().filter(|(_, each)| each.critical && each.applies_to(set));
        for (at, criterion) in judged {
            let criterion = || criterion.id.clone();
            match self.mark(at) {
                Mark::Met => {}
                Mark::NotMet => reasons.push(PassReason::CriticalNotMet { set, criterion: criterion() }),
                Mark::Borderline if rules.critical_borderline_passes => {}
                Mark::Borderline => {
                    reasons.push(PassReason::CriticalBorderline { set, criterion: criterion() })
                }
                Mark::NotSeen => reasons.push(PassReason::CriticalNotSeen { set, criterion: criterion() }),
            }
        }
    }

    /// A miss among the first repetitions of the first work set: certain, possible or excluded.
    fn early(&self, rules: &PassRules) -> Option<PassReason> {
        let (clean, (reps, misses)) = (rules.clean_first_reps, self.score()?);
        if self.number != 1 || misses == 0 || clean == 0 {
            return None;
        }
        match self.set.first_failing_rep {
            Some(rep) if rep <= clean => Some(PassReason::EarlyMiss { rep: Some(rep), clean }),
            Some(_) => None,
            // More misses than there are later repetitions: one must have been early.
            None if misses > reps.saturating_sub(u32::from(clean)) => {
                Some(PassReason::EarlyMiss { rep: None, clean })
            }
            None => Some(PassReason::EarlyMissPossible { clean }),
        }
    }
}

/// The criterion with the most losses, then the most borderline marks; the first of the list among equals.
fn weakest(criteria: &[Criterion], work: &[Work<'_>]) -> Option<Name> {
    let tally = |at: usize, criterion: &Criterion| {
        let marks = work.iter().filter(|each| criterion.applies_to(each.number));
        marks.fold((0_u32, 0_u32), |(lost, unsure), each| match each.given(at) {
            Mark::NotMet => (lost + 1, unsure),
            Mark::Borderline => (lost, unsure + 1),
            _ => (lost, unsure),
        })
    };
    let mut worst = ((0, 0), None);
    for (at, criterion) in criteria.iter().enumerate() {
        let count = tally(at, criterion);
        if count > worst.0 {
            worst = (count, Some(&criterion.id));
        }
    }
    worst.1.cloned()
}

/// What stands against a set by itself.
fn set_reasons(rules: &PassRules, criteria: &[Criterion], work: &Work<'_>) -> Vec<PassReason> {
    let mut reasons = Vec::new();
    reasons.extend(work.unscored());
    work.critical(rules, criteria, &mut reasons);
    reasons.extend(work.early(rules));
    let allowed = rules.allowed_of(u32::from(work.set.reps));
    let misses = work.score().map(|(_, misses)| misses);
    if let Some(misses) = misses.filter(|misses| *misses > allowed) {
        reasons.push(PassReason::TooManyMisses { misses, allowed });
    }
    reasons
}

fn judge_set(rules: &PassRules, criteria: &[Criterion], work: &Work<'_>) -> SetVerdict {
    let reasons = set_reasons(rules, criteria, work);
    let allowed = rules.allowed_of(u32::from(work.set.reps));
    let misses = work.score().map(|(_, misses)| misses);
    let passed = outcome_of(&reasons);
    let weakest = weakest(criteria, core::slice::from_ref(work));
    SetVerdict {
        passed,
        marginal: passed == Outcome::Pass && (misses.is_some_and(|misses| misses > 0) || weakest.is_some()),
        critical_fail: reasons.iter().any(PassReason::is_critical),
        misses,
        misses_allowed: allowed,
        first_failing_rep: work.set.first_failing_rep,
        weakest,
        reasons,
    }
}

formula! {
    "gate.set_pass",
    /// Did that set pass, and if not, on what?
    ///
    /// # Domain
    /// `number` is the number of the work set, 1 being the first one, done cold. Passed: every critical
    /// criterion judged in this set was met, misses are within what the set may have, and none was among the
    /// first repetitions of the first set. What was not seen is neither a pass nor a fail.
    ///
    /// # Errors
    /// Those of [`SetMarks::check`] and [`check_criteria`]; `out_of_range` for a set number 0.
    ///
    /// # Source
    /// Our choice (row `gate.set_pass`).
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{Criterion, Mark, Outcome, PassRules, Rater, SetMarks, set_pass};
    ///
    /// let criteria = [Criterion::critical("brace held")?];
    /// let set = SetMarks::scored(5, 5, Rater::Coach).with("brace held", Mark::Met)?;
    /// assert_eq!(set_pass(&PassRules::default(), &criteria, 1, &set)?.passed, Outcome::Pass);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn set_pass(rules: &PassRules, criteria: &[Criterion], number: u8, set: &SetMarks) -> Result<SetVerdict, Error> {
        rules.check()?;
        check_criteria(criteria)?;
        set.check(criteria)?;
        if number == 0 {
            return Err(Error::range(Code::OutOfRange, "number", number, 1.0, WORK_SETS as f64, ""));
        }
        Ok(judge_set(rules, criteria, &Work::new(rules, number, set, &set.marks_of(criteria))))
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "one work set of up to 200 repetitions",
}

/// Misses over the session. Where sets are missing, only what no score of theirs could mend counts as failed.
fn too_many(rules: &PassRules, work: &[Work<'_>], scored: u32, misses: u32) -> Option<PassReason> {
    let unscored: u32 =
        work.iter().filter(|each| each.score().is_none()).map(|each| u32::from(each.set.reps)).sum();
    let forgiven =
        work.iter().filter(|each| each.score().is_none()).count() <= usize::from(rules.unscored_sets_allowed);
    let allowed = rules.allowed_of(if forgiven { scored } else { scored + unscored });
    (misses > allowed).then_some(PassReason::TooManyMisses { misses, allowed })
}

/// What stands against the session in one set, taken as part of the whole.
fn against(rules: &PassRules, reason: PassReason, first: bool, forgiven: bool) -> Option<PassReason> {
    let by_itself = first && rules.first_set_must_pass;
    match reason {
        PassReason::TooManyMisses { misses, allowed } => {
            by_itself.then_some(PassReason::FirstSetMisses { misses, allowed })
        }
        reason if forgiven && reason.outcome() == Outcome::NotScored => None,
        reason => Some(reason),
    }
}

fn unseen(rules: &PassRules, criteria: &[Criterion], work: &[Work<'_>]) -> Vec<PassReason> {
    let seen = |at: usize, criterion: &Criterion| {
        let mut judged = work.iter().filter(|each| criterion.applies_to(each.number));
        // A loss is believed whoever marked it, but it is no look of somebody who counts.
        judged.any(|each| each.counts && each.given(at) != Mark::NotSeen)
    };
    let wanted = criteria.iter().enumerate().filter(|(_, each)| each.critical || rules.every_criterion_seen);
    let missing = wanted.filter(|(at, criterion)| !seen(*at, criterion));
    missing.map(|(_, criterion)| PassReason::CriterionNotSeen { criterion: criterion.id.clone() }).collect()
}

fn judge_session(rules: &PassRules, criteria: &[Criterion], work: &[Work<'_>]) -> SessionVerdict {
    let later_unscored = work.iter().skip(1).filter(|each| each.score().is_none()).count();
    let forgive = later_unscored <= usize::from(rules.unscored_sets_allowed);
    let mut reasons = Vec::new();
    if work.is_empty() {
        reasons.push(PassReason::NoWorkSet);
    }
    for each in work {
        let first = each.number == 1;
        let forgiven = !first && forgive && each.score().is_none();
        let own = set_reasons(rules, criteria, each);
        reasons.extend(own.into_iter().filter_map(|reason| against(rules, reason, first, forgiven)));
    }
    let (scored, misses) = work
        .iter()
        .filter_map(Work::score)
        .fold((0, 0), |(reps, misses), (more, missed)| (reps + more, misses + missed));
    reasons.extend(too_many(rules, work, scored, misses));
    reasons.extend(unseen(rules, criteria, work));
    SessionVerdict {
        passed: outcome_of(&reasons),
        critical_fail: reasons.iter().any(PassReason::is_critical),
        acceptable: scored - misses,
        scored,
        misses_allowed: rules.allowed_of(scored),
        weakest: weakest(criteria, work),
        first_failing: work
            .iter()
            .find_map(|each| each.set.first_failing_rep.map(|rep| FailingRep { set: each.number, rep })),
        reasons,
    }
}

formula! {
    "gate.session_pass",
    /// Did the session pass, and if not, what stood against it?
    ///
    /// # Formula
    /// Passed if no reason stands against it: misses over all scored repetitions at most
    /// [`PassRules::allowed_of`] them, every critical criterion met in each set in which it is judged, every
    /// criterion seen, the first work set passed by itself with its first repetitions clean, every set scored.
    /// Failed if one of these is broken whatever the missing marks would say; not scored otherwise.
    ///
    /// # Domain
    /// The work sets of one lift in one session in the order done, warm-ups left out; up to 100.
    ///
    /// # Errors
    /// Those of [`SetMarks::check`], with the number of the set, and of [`check_criteria`].
    ///
    /// # Source
    /// Our choice; that the first set counts by itself rests on learning being shown by a delayed test (row
    /// `gate.session_pass`).
    ///
    /// # Examples
    /// ```
    /// use bismar::gate::{Criterion, Mark, Outcome, PassRules, Rater, SetMarks, session_pass};
    ///
    /// let criteria = [Criterion::critical("brace held")?];
    /// let good = SetMarks::scored(5, 5, Rater::Coach).with("brace held", Mark::Met)?;
    /// let late_miss = SetMarks::scored(5, 4, Rater::Coach).first_failing(5).with("brace held", Mark::Met)?;
    /// let rules = PassRules::default();
    /// let verdict = session_pass(&rules, &criteria, &[good.clone(), late_miss.clone()])?;
    /// assert_eq!((verdict.passed, verdict.acceptable, verdict.scored), (Outcome::Pass, 9, 10));
    ///
    /// let verdict = session_pass(&rules, &criteria, &[late_miss.clone(), late_miss])?;
    /// assert_eq!(verdict.passed, Outcome::Fail);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn session_pass(rules: &PassRules, criteria: &[Criterion], sets: &[SetMarks]) -> Result<SessionVerdict, Error> {
        let sets: Vec<&SetMarks> = sets.iter().collect();
        session_pass_of(rules, criteria, &sets)
    }
    source: OURS, place: "technique gate", standing: OurChoice, seen: NotApplicable,
    domain: "the work sets of one lift in one session",
}

/// The same for sets that lie apart, so that a fold need not copy them.
pub(crate) fn session_pass_of(
    rules: &PassRules,
    criteria: &[Criterion],
    sets: &[&SetMarks],
) -> Result<SessionVerdict, Error> {
    rules.check()?;
    check_criteria(criteria)?;
    if sets.len() > WORK_SETS {
        return Err(Error::range(Code::OutOfRange, "sets", sets.len(), 0.0, WORK_SETS as f64, "sets"));
    }
    let mut marks = Vec::with_capacity(sets.len() * criteria.len());
    for (number, set) in (1_u8..).zip(sets) {
        set.check(criteria).map_err(|error| error.within(&alloc::format!("sets[{}]", number - 1)))?;
        marks.extend(criteria.iter().map(|criterion| set.mark(&criterion.id)));
    }
    let rows = |at: usize| marks.get(at * criteria.len()..(at + 1) * criteria.len()).unwrap_or_default();
    let numbered = (1_u8..).zip(sets).enumerate();
    let work: Vec<Work<'_>> =
        numbered.map(|(at, (number, set))| Work::new(rules, number, set, rows(at))).collect();
    Ok(judge_session(rules, criteria, &work))
}

rows![set_pass, session_pass];
