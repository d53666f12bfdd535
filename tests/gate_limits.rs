//! The gate at its limits: the last number that is still allowed, and the first that is not.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use bismar::Code;
use bismar::condition::DayClass;
use bismar::gate::{
    Criterion, Evidence, EvidenceRule, Gate, GateFacts, Mark, Missing, Note, Outcome, PassReason, PassRules,
    PassRun, Rater, Requirement, SessionFact, SetMarks, Skill, check_criteria, operating_characteristic,
    session_pass, set_pass,
};
use bismar::quantity::{Day, Name};

fn criteria(count: usize) -> Vec<Criterion> {
    (0..count).map(|at| Criterion::ordinary(&format!("point {at}")).unwrap()).collect()
}

fn fact(day: i32, passed: Outcome, acceptable: u32, scored: u32) -> SessionFact {
    SessionFact::of(Day::from_number(20_000 + day).unwrap(), passed, DayClass::Within)
        .with_acceptable(acceptable)
        .with_scored(scored)
}

fn facts(sessions: Vec<SessionFact>) -> GateFacts {
    GateFacts::default().with_sessions(sessions)
}

fn code<T: std::fmt::Debug>(answer: Result<T, bismar::Error>) -> Code {
    answer.unwrap_err().code()
}

fn test_of_evidence(days: u8) -> Evidence {
    let rule = EvidenceRule::Sequential { poor: 0.7, good: 0.9, false_open: 0.05, false_shut: 0.1 };
    Evidence::new(rule, 60, days).unwrap()
}

fn evidence(days: u8) -> Gate {
    Gate::new(Requirement::Evidence(test_of_evidence(days))).unwrap()
}

#[test]
fn criteria_up_to_their_number() {
    assert_eq!(check_criteria(&criteria(20)), Ok(()));
    assert_eq!(code(check_criteria(&criteria(21))), Code::OutOfRange);
    assert_eq!(code(check_criteria(&criteria(22))), Code::OutOfRange);
    let critical = |count: usize| -> Vec<Criterion> {
        (0..count).map(|at| Criterion::critical(&format!("point {at}")).unwrap()).collect()
    };
    assert_eq!(check_criteria(&critical(3)), Ok(()));
    assert_eq!(code(check_criteria(&critical(4))), Code::TooManyCriticalCriteria);
    assert_eq!(code(check_criteria(&critical(5))), Code::TooManyCriticalCriteria);
}

#[test]
fn repetitions_and_sessions_up_to_their_number() {
    let marks = |reps: u16| SetMarks::unscored(reps, Rater::Coach).check(&[]);
    assert_eq!(marks(200), Ok(()));
    assert_eq!((code(marks(201)), code(marks(202))), (Code::OutOfRange, Code::OutOfRange));
    let failing = |rep: u16| SetMarks::scored(5, 3, Rater::Coach).first_failing(rep).check(&[]);
    assert_eq!((code(failing(0)), code(failing(6))), (Code::OutOfRange, Code::OutOfRange));
    assert_eq!(failing(4), Ok(()));
    let scored = |scored: u32| facts(vec![fact(0, Outcome::Pass, 0, scored)]).check();
    assert_eq!(scored(20_000), Ok(()));
    assert_eq!((code(scored(20_001)), code(scored(20_002))), (Code::OutOfRange, Code::OutOfRange));
    let exceeded = facts(vec![fact(0, Outcome::Pass, 6, 5)]).check();
    assert_eq!(code(exceeded), Code::AcceptableExceedReps);
    let many = |count: i32| facts((0..count).map(|day| fact(day, Outcome::Pass, 5, 5)).collect()).check();
    assert_eq!(many(200), Ok(()));
    assert_eq!((code(many(201)), code(many(202))), (Code::OutOfRange, Code::OutOfRange));
}

/// Two sessions of one day are one: failed if either failed, bad only where both say so, their repetitions summed.
#[test]
fn two_sessions_of_a_day_are_one() {
    let run = Gate::new(Requirement::PassRun(PassRun::new(9, 10, 2).unwrap())).unwrap();
    let open = |sessions: Vec<SessionFact>| run.check(&facts(sessions)).unwrap().open;
    let pass = |day| fact(day, Outcome::Pass, 10, 10);
    assert!(open(vec![pass(0), pass(1)]));
    assert!(!open(vec![pass(0), pass(0)]), "one day is one session");
    assert!(!open(vec![pass(0), pass(1), fact(1, Outcome::Fail, 10, 10)]));
    assert!(!open(vec![pass(0), fact(1, Outcome::Fail, 10, 10), pass(1)]));
    assert!(open(vec![pass(0), pass(1), fact(1, Outcome::NotScored, 0, 0)]));
    let critical = pass(1).with_critical_fail(true);
    assert!(!open(vec![pass(0), pass(1), critical.clone()]) && !open(vec![pass(0), critical, pass(1)]));
    let pending = pass(1).with_answer_pending(true);
    let state = run.check(&facts(vec![pass(0), pass(1), pending])).unwrap();
    assert!(state.missing.iter().any(|missing| matches!(missing, Missing::NextMorningAnswer { .. })));
    // Repetitions are summed: 10 of 10 and 6 of 10 are 16 of 20, too few for nine in ten.
    assert!(!open(vec![pass(0), pass(1), fact(1, Outcome::Pass, 6, 10)]));
    // A fail on a day below the usual changes nothing; where the other session of the day was ordinary, it is a fail.
    let bad = fact(1, Outcome::Fail, 10, 10).with_day_class(DayClass::Below);
    assert!(open(vec![pass(0), bad.clone(), pass(2)]));
    assert!(!open(vec![pass(0), bad, fact(1, Outcome::Fail, 10, 10), pass(2)]));
}

#[test]
fn evidence_counts_misses_of_every_session_and_passing_days_of_whole_ones() {
    let gate = evidence(2);
    let check = |sessions: Vec<SessionFact>| gate.check(&facts(sessions)).unwrap();
    let pass = |day| fact(day, Outcome::Pass, 10, 10);
    assert!(check(vec![pass(0), pass(1)]).open);
    // Not scored, critical, or failed on a day below the usual: its misses count, its acceptable repetitions do not.
    let critical = fact(1, Outcome::Pass, 10, 10).with_critical_fail(true);
    let bad = fact(1, Outcome::Fail, 10, 10).with_day_class(DayClass::Below);
    for second in [critical, bad, fact(1, Outcome::NotScored, 10, 10)] {
        let state = check(vec![pass(0), second.clone()]);
        let counted = state.missing.iter().find_map(|missing| match missing {
            Missing::Evidence { scored, .. } => Some(*scored),
            _ => None,
        });
        assert_eq!(counted, Some(10), "{second:?}");
        let days =
            state.missing.iter().any(|missing| matches!(missing, Missing::PassingDays { have: 1, need: 2 }));
        assert!(days, "{second:?}: {:?}", state.missing);
    }
    // The last scored session must have passed; one without a score says nothing.
    let last = |sessions: Vec<SessionFact>| {
        let state = check(sessions);
        state.missing.iter().any(|missing| matches!(missing, Missing::LastSessionNotPassed { .. }))
    };
    assert!(last(vec![pass(0), pass(1), fact(2, Outcome::Fail, 9, 10)]));
    assert!(last(vec![pass(0), pass(1), pass(2).with_critical_fail(true)]));
    assert!(!last(vec![pass(0), pass(1), fact(2, Outcome::NotScored, 0, 0)]));
}

#[test]
fn rates_and_chances_of_error_lie_between_their_ends() {
    let sequential = |poor, good, false_open, false_shut| {
        Evidence::new(EvidenceRule::Sequential { poor, good, false_open, false_shut }, 200, 2).map(|_| ())
    };
    assert_eq!(sequential(0.7, 0.9, 0.05, 0.1), Ok(()));
    for outside in [0.0, 1.0, -0.1, 1.1] {
        assert_eq!(code(sequential(outside, 0.9, 0.05, 0.1)), Code::OutOfRange);
        assert_eq!(code(sequential(0.7, outside, 0.05, 0.1)), Code::OutOfRange);
        assert_eq!(code(sequential(0.7, 0.9, outside, 0.1)), Code::OutOfRange);
        assert_eq!(code(sequential(0.7, 0.9, 0.05, outside)), Code::OutOfRange);
    }
    // Errors that add up to one, though neither their product nor their difference does.
    let error = sequential(0.7, 0.9, 0.6, 0.5).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::OutOfRange, "false_open"));
}

#[test]
fn the_day_on_which_the_spacing_is_over_is_enough() {
    let gate = Gate::new(Requirement::Spacing(7)).unwrap();
    let state = |have| gate.check(&GateFacts::default().with_days_since_move(have)).unwrap();
    let late = state(Some(7));
    assert!(late.open && late.missing.is_empty() && late.met.len() == 1);
    let early = state(Some(6));
    assert!(!early.open && early.met.is_empty());
    assert_eq!(early.missing, [Missing::Spacing { have: 6, need: 7 }]);
    assert!(state(None).open);
}

#[test]
fn only_a_gate_with_one_count_has_an_operating_characteristic() {
    let run = || Requirement::PassRun(PassRun::new(9, 10, 2).unwrap());
    let both = Requirement::All(vec![run(), Requirement::Any(vec![run(), Requirement::SignOff])]);
    let gate = Gate::new(both).unwrap();
    assert_eq!(code(operating_characteristic(&gate, &Skill::of(0.9), 20)), Code::GateNotSingle);
    let gate = evidence(2);
    let skill = Skill::of(0.95).with_reps(10);
    assert!(operating_characteristic(&gate, &skill, 20).is_ok());
    let sure = skill.clone().with_critical_met(1.0);
    assert!(operating_characteristic(&gate, &sure, 20).is_ok());
    let unsure = skill.with_critical_met(0.9);
    assert_eq!(code(operating_characteristic(&gate, &unsure, 20)), Code::OutOfRange);
}

#[test]
fn marks_that_decide_a_set() {
    let list = [Criterion::critical("brace").unwrap()];
    let judged = |rules: &PassRules, set: &SetMarks| set_pass(rules, &list, 1, set).unwrap();
    let set = |acceptable: u16, mark: Mark, rater: Rater| {
        SetMarks::scored(5, acceptable, rater).with("brace", mark).unwrap()
    };
    let plain = PassRules::default();
    // What the lifter alone saw well is not seen; what the lifter alone saw lost is lost.
    let own = judged(&plain, &set(5, Mark::Met, Rater::Lifter));
    assert!(own.reasons.iter().any(|reason| matches!(reason, PassReason::CriticalNotSeen { .. })));
    let lost = judged(&plain, &set(5, Mark::NotMet, Rater::Lifter));
    assert!(lost.reasons.iter().any(|reason| matches!(reason, PassReason::CriticalNotMet { .. })));
    // Borderline on a critical criterion passes only where the rules say so.
    let lenient = PassRules::default().with_critical_borderline_passes(true);
    let borderline = set(5, Mark::Borderline, Rater::Coach);
    assert!(!judged(&plain, &borderline).reasons.is_empty());
    assert!(judged(&lenient, &borderline).reasons.is_empty());
    // A set of no repetition has no score.
    let none = SetMarks::scored(0, 0, Rater::Coach).with("brace", Mark::Met).unwrap();
    let unscored = judged(&plain, &none);
    assert!(unscored.reasons.iter().any(|reason| matches!(reason, PassReason::SetNotScored { .. })));
    // Four misses of five: one was among the first two. Three of five: perhaps.
    let wide = PassRules::default().with_miss_percent(50).with_misses_at_least(5);
    let early = |acceptable: u16| judged(&wide, &set(acceptable, Mark::Met, Rater::Coach)).reasons;
    let certain = |reasons: &[PassReason]| {
        reasons.iter().any(|reason| matches!(reason, PassReason::EarlyMiss { rep: None, .. }))
    };
    let possible = |reasons: &[PassReason]| {
        reasons.iter().any(|reason| matches!(reason, PassReason::EarlyMissPossible { .. }))
    };
    assert!(certain(&early(0)) && certain(&early(1)));
    assert!(possible(&early(2)) && !certain(&early(2)));
}

#[test]
fn numbers_of_the_rules_up_to_their_ends() {
    let rules = |misses_at_least| PassRules::default().with_misses_at_least(misses_at_least).check();
    assert_eq!(rules(200), Ok(()));
    assert_eq!((code(rules(201)), code(rules(202))), (Code::OutOfRange, Code::OutOfRange));
    let neutral = |fails| PassRun::new(9, 10, 2).unwrap().with_neutral_fails(fails);
    assert!(neutral(5).is_ok());
    assert_eq!((code(neutral(6)), code(neutral(7))), (Code::OutOfRange, Code::OutOfRange));
    for nothing in [Requirement::DwellSessions(0), Requirement::DwellDays(0), Requirement::Spacing(0)] {
        assert_eq!(code(Gate::new(nothing)), Code::GateAlwaysOpen);
    }
    let sets = |count| {
        let set = SetMarks::unscored(5, Rater::Coach);
        session_pass(&PassRules::default(), &[], &vec![set; count]).map(|_| ())
    };
    assert_eq!(sets(100), Ok(()));
    assert_eq!((code(sets(101)), code(sets(102))), (Code::OutOfRange, Code::OutOfRange));
    let posterior = |rate, level| {
        let rule = EvidenceRule::Posterior { rate, level, prior_acceptable: 1.0, prior_missed: 1.0 };
        Evidence::new(rule, 200, 2).map(|_| ())
    };
    assert_eq!(posterior(0.8, 0.9), Ok(()));
    for outside in [0.0, 1.0, -0.1, 1.1] {
        assert_eq!(
            (code(posterior(outside, 0.9)), code(posterior(0.8, outside))),
            (Code::OutOfRange, Code::OutOfRange)
        );
    }
}

#[test]
fn the_weakest_criterion_has_most_losses_then_most_borderline_marks() {
    use Mark::{Borderline, Met, NotMet};
    let list = criteria(3);
    let weakest = |sets: &[[Mark; 3]]| {
        let sets: Vec<SetMarks> = sets
            .iter()
            .map(|marks| {
                list.iter().zip(marks).fold(SetMarks::scored(5, 5, Rater::Coach), |set, (criterion, mark)| {
                    set.with(criterion.id.as_str(), *mark).unwrap()
                })
            })
            .collect();
        let verdict = session_pass(&PassRules::default(), &list, &sets).unwrap();
        verdict.weakest.map(|name| name.as_str().to_owned())
    };
    assert_eq!(weakest(&[[Met, Met, Met], [Met, Met, Met]]), None);
    assert_eq!(weakest(&[[Met, Borderline, Met], [Met, Met, Met]]), Some("point 1".into()));
    assert_eq!(weakest(&[[Borderline, Borderline, Met], [Met, Borderline, Met]]), Some("point 1".into()));
    assert_eq!(weakest(&[[Borderline, Borderline, Met], [Met, Met, Met]]), Some("point 0".into()));
    assert_eq!(weakest(&[[Borderline, Met, NotMet], [Borderline, Met, Met]]), Some("point 2".into()));
    assert_eq!(weakest(&[[NotMet, NotMet, Met], [Met, Borderline, Met]]), Some("point 1".into()));
}

#[test]
fn misses_fail_a_session_with_unscored_sets_where_no_score_of_theirs_could_mend_them() {
    // Ten scored repetitions, two of them missed late in the second set; then sets that nobody scored.
    let outcome = |allowed: u8, unscored: &[u16]| {
        let rules = PassRules::default().with_unscored_sets_allowed(allowed);
        let mut sets =
            vec![SetMarks::scored(5, 5, Rater::Coach), SetMarks::scored(5, 3, Rater::Coach).first_failing(4)];
        sets.extend(unscored.iter().map(|reps| SetMarks::unscored(*reps, Rater::Coach)));
        session_pass(&rules, &[], &sets).unwrap().passed
    };
    // A tenth of nineteen is one, a tenth of twenty two.
    assert_eq!(outcome(0, &[9]), Outcome::Fail);
    assert_eq!(outcome(0, &[10]), Outcome::NotScored);
    assert_eq!(outcome(0, &[4, 5]), Outcome::Fail);
    assert_eq!(outcome(0, &[5, 5]), Outcome::NotScored);
    // Sets that may be left unscored are left out altogether: two misses of ten.
    assert_eq!(outcome(1, &[10]), Outcome::Fail);
    assert_eq!(outcome(1, &[5, 5]), Outcome::NotScored);
    assert_eq!(outcome(2, &[5, 5]), Outcome::Fail);
}

/// Whether a run of two sessions with 7 of 10 acceptable is open, and its day of a new start where it is not.
fn run_of_two(sessions: Vec<SessionFact>) -> (bool, Option<i32>) {
    let gate = Gate::new(Requirement::PassRun(PassRun::new(7, 10, 2).unwrap())).unwrap();
    let state = gate.check(&facts(sessions)).unwrap();
    let restarted = state.missing.iter().find_map(|missing| match missing {
        Missing::PassingSessions { restarted, .. } => *restarted,
        _ => None,
    });
    (state.open, restarted.map(|day| day.since(Day::from_number(20_000).unwrap())))
}

#[test]
fn a_session_counts_up_to_the_share_of_misses_and_starts_the_run_anew_beyond_it() {
    let second = |acceptable, scored| {
        run_of_two(vec![fact(0, Outcome::Pass, 10, 10), fact(1, Outcome::Pass, acceptable, scored)])
    };
    for (acceptable, scored) in [(7, 10), (10, 10), (14, 20), (21, 30), (8, 11)] {
        assert_eq!(second(acceptable, scored), (true, None), "{acceptable} of {scored}");
    }
    for (acceptable, scored) in [(6, 10), (13, 20), (20, 30), (7, 11), (0, 10), (1, 5)] {
        assert_eq!(second(acceptable, scored), (false, Some(1)), "{acceptable} of {scored}");
    }
    // Too few to count; three misses might still have been three of ten.
    for (acceptable, scored) in [(9, 9), (5, 8), (2, 5)] {
        assert_eq!(second(acceptable, scored), (false, None), "{acceptable} of {scored}");
    }
}

#[test]
fn what_was_not_scored_changes_nothing_unless_its_misses_break_the_share() {
    let between = |acceptable, scored| {
        let middle = fact(1, Outcome::NotScored, acceptable, scored);
        run_of_two(vec![fact(0, Outcome::Pass, 10, 10), middle, fact(2, Outcome::Pass, 10, 10)])
    };
    for (acceptable, scored) in [(0, 0), (5, 5), (10, 10), (7, 10), (2, 5)] {
        assert_eq!(between(acceptable, scored), (true, None), "{acceptable} of {scored}");
    }
    for (acceptable, scored) in [(6, 10), (1, 5), (13, 20)] {
        assert_eq!(between(acceptable, scored), (false, Some(1)), "{acceptable} of {scored}");
    }
    // By itself it is no session of the run.
    let alone = vec![fact(0, Outcome::Pass, 10, 10), fact(1, Outcome::NotScored, 10, 10)];
    assert_eq!(run_of_two(alone), (false, None));
}

#[test]
fn another_rater_is_one_where_both_are_named_and_differ() {
    let run = PassRun::new(9, 10, 3).unwrap();
    let said = |restarts: bool, raters: [Option<&str>; 3]| {
        let run = run.clone().restarted_by_another_rater(restarts);
        let sessions = (0..).zip(raters).map(|(day, rater)| {
            fact(day, Outcome::Pass, 10, 10).with_rater(rater.map(|rater| Name::new(rater).unwrap()))
        });
        let gate = Gate::new(Requirement::PassRun(run)).unwrap();
        gate.check(&facts(sessions.collect())).unwrap()
    };
    let (ann, ben) = (Some("Ann (invented)"), Some("Ben (invented)"));
    for raters in [[None; 3], [ann; 3], [None, ann, ann], [ann, None, ann], [ann, ann, None]] {
        for restarts in [false, true] {
            let state = said(restarts, raters);
            assert!(state.open && state.notes.is_empty(), "{raters:?}");
        }
    }
    for (raters, day) in
        [([ann, ann, ben], 2), ([ann, ben, ben], 1), ([ann, None, ben], 2), ([ann, ben, ann], 2)]
    {
        let day = Day::from_number(20_000 + day).unwrap();
        let flagged = said(false, raters);
        assert_eq!((flagged.open, flagged.notes), (true, vec![Note::RaterChanged { day }]), "{raters:?}");
        let anew = said(true, raters);
        let have = if raters == [ann, ben, ben] { 2 } else { 1 };
        let missing = Missing::PassingSessions { have, need: 3, restarted: Some(day), weakest: None };
        assert_eq!((anew.open, anew.missing), (false, vec![missing]), "{raters:?}");
    }
}

#[path = "gate/ends.rs"]
mod ends;

/// A miss that the lifter marked is believed, but nobody who counts has looked: a point is not seen by it, whatever the mark.
#[test]
fn a_point_that_only_the_lifter_marked_is_not_seen() {
    let criteria = [Criterion::ordinary("tempo as planned").unwrap()];
    let rules = PassRules::default().with_unscored_sets_allowed(1);
    let verdict = |mark: Mark| {
        let mut own = SetMarks::scored(5, 5, Rater::Lifter);
        own.acceptable = None;
        let sets = [SetMarks::scored(5, 5, Rater::Coach), own.with("tempo as planned", mark).unwrap()];
        session_pass(&rules, &criteria, &sets).unwrap()
    };
    for mark in [Mark::NotSeen, Mark::Met, Mark::Borderline, Mark::NotMet] {
        let found = verdict(mark);
        assert_eq!(found.passed, Outcome::NotScored, "{mark:?}");
        let unseen = PassReason::CriterionNotSeen { criterion: criteria[0].id.clone() };
        assert!(found.reasons.contains(&unseen), "{mark:?}: {:?}", found.reasons);
    }
}
