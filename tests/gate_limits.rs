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
    Criterion, Evidence, EvidenceRule, Gate, GateFacts, Mark, Missing, Outcome, PassReason, PassRules,
    PassRun, Rater, Requirement, SessionFact, SetMarks, Skill, check_criteria, operating_characteristic,
    session_pass, set_pass,
};
use bismar::quantity::Day;

fn criteria(count: usize) -> Vec<Criterion> {
    (0..count).map(|at| Criterion::ordinary(&format!("point {at}")).unwrap()).collect()
}

fn fact(day: i32, passed: Outcome, acceptable: u32, scored: u32) -> SessionFact {
    SessionFact {
        day: Day::from_number(20_000 + day).unwrap(),
        passed,
        critical_fail: false,
        acceptable,
        scored,
        day_class: DayClass::Ordinary,
        answer_pending: false,
        weakest: None,
        rater: None,
    }
}

fn facts(sessions: Vec<SessionFact>) -> GateFacts {
    GateFacts { sessions, ..GateFacts::default() }
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
    let critical = SessionFact { critical_fail: true, ..pass(1) };
    assert!(!open(vec![pass(0), pass(1), critical.clone()]) && !open(vec![pass(0), critical, pass(1)]));
    let pending = SessionFact { answer_pending: true, ..pass(1) };
    let state = run.check(&facts(vec![pass(0), pass(1), pending])).unwrap();
    assert!(state.missing.iter().any(|missing| matches!(missing, Missing::NextMorningAnswer { .. })));
    // Repetitions are summed: 10 of 10 and 6 of 10 are 16 of 20, too few for nine in ten.
    assert!(!open(vec![pass(0), pass(1), fact(1, Outcome::Pass, 6, 10)]));
    // A fail on a bad day changes nothing; where the other session of the day was ordinary, it is a fail.
    let bad = SessionFact { day_class: DayClass::BadAgreeing, ..fact(1, Outcome::Fail, 10, 10) };
    assert!(open(vec![pass(0), bad.clone(), pass(2)]));
    assert!(!open(vec![pass(0), bad, fact(1, Outcome::Fail, 10, 10), pass(2)]));
}

#[test]
fn evidence_counts_misses_of_every_session_and_passing_days_of_whole_ones() {
    let gate = evidence(2);
    let check = |sessions: Vec<SessionFact>| gate.check(&facts(sessions)).unwrap();
    let pass = |day| fact(day, Outcome::Pass, 10, 10);
    assert!(check(vec![pass(0), pass(1)]).open);
    // Not scored, critical, or failed on a bad day: its misses count, its acceptable repetitions do not.
    let critical = SessionFact { critical_fail: true, ..fact(1, Outcome::Pass, 10, 10) };
    let bad = SessionFact { day_class: DayClass::BadAgreeing, ..fact(1, Outcome::Fail, 10, 10) };
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
    assert!(last(vec![pass(0), pass(1), SessionFact { critical_fail: true, ..pass(2) }]));
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
    let state = |have| gate.check(&GateFacts { days_since_move: have, ..GateFacts::default() }).unwrap();
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
    let skill = Skill { reps: Some(10), ..Skill::of(0.95) };
    assert!(operating_characteristic(&gate, &skill, 20).is_ok());
    let sure = Skill { critical_met: Some(1.0), ..skill.clone() };
    assert!(operating_characteristic(&gate, &sure, 20).is_ok());
    let unsure = Skill { critical_met: Some(0.9), ..skill };
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
    let lenient = PassRules { critical_borderline_passes: true, ..PassRules::default() };
    let borderline = set(5, Mark::Borderline, Rater::Coach);
    assert!(!judged(&plain, &borderline).reasons.is_empty());
    assert!(judged(&lenient, &borderline).reasons.is_empty());
    // A set of no repetition has no score.
    let none = SetMarks::scored(0, 0, Rater::Coach).with("brace", Mark::Met).unwrap();
    let unscored = judged(&plain, &none);
    assert!(unscored.reasons.iter().any(|reason| matches!(reason, PassReason::SetNotScored { .. })));
    // Four misses of five: one was among the first two. Three of five: perhaps.
    let wide = PassRules { miss_percent: 50, misses_at_least: 5, ..PassRules::default() };
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
    let rules = |misses_at_least| PassRules { misses_at_least, ..PassRules::default() }.check();
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
