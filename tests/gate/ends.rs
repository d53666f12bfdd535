//! Evidence, runs and facts at their ends.

use super::*;

#[test]
fn evidence_up_to_its_number_of_repetitions_and_days() {
    let rule = EvidenceRule::Posterior { rate: 0.8, level: 0.9, prior_acceptable: 1.0, prior_missed: 1.0 };
    let built = |most_reps, days| Evidence::new(rule.clone(), most_reps, days);
    assert_eq!(built(1_000, 10).unwrap().rule(), &rule);
    assert_eq!((code(built(1_001, 2)), code(built(200, 11))), (Code::OutOfRange, Code::OutOfRange));
    assert_eq!((code(built(0, 2)), code(built(200, 0))), (Code::GateAlwaysOpen, Code::GateAlwaysOpen));
    // A uniform prior is sure that the rate is above a half with a chance of a half, before anyone lifts.
    let sure = EvidenceRule::Posterior { rate: 0.5, level: 0.49, prior_acceptable: 1.0, prior_missed: 1.0 };
    assert_eq!(code(Evidence::new(sure, 200, 2)), Code::GateAlwaysOpen);
    // After n clean repetitions the rate is above 0.8 with 1 - 0.8^(n + 1): 0.8926 at nine, 0.9141 at ten.
    assert_eq!(code(built(9, 1)), Code::GateNeverOpens);
    assert!(built(10, 1).is_ok());
    for wait in [Requirement::DwellSessions, Requirement::DwellDays, Requirement::Spacing] {
        assert!(Gate::new(wait(3_660)).is_ok());
        assert_eq!(code(Gate::new(wait(3_661))), Code::OutOfRange);
    }
    let skill = |reps| Skill::of(0.9).with_reps(reps);
    let held = |reps| operating_characteristic(&evidence(2), &skill(reps), 4).map(|_| ());
    assert_eq!(held(200), Ok(()));
    assert_eq!((code(held(0)), code(held(201))), (Code::OutOfRange, Code::OutOfRange));
}

#[test]
fn a_run_asks_no_more_than_the_rules_of_a_session() {
    // A tenth may be missed, rounded down, and always one: 1 of 15, 3 of 30.
    let rules = PassRules::default();
    for (reps, acceptable) in [(5, 4), (15, 14), (30, 27)] {
        let run = PassRun::from_rules(&rules, reps, 3).unwrap();
        assert_eq!((run.acceptable(), run.of(), run.sessions()), (acceptable, reps, 3));
    }
    assert_eq!(code(PassRun::from_rules(&rules, 201, 3)), Code::OutOfRange);
    assert_eq!(code(PassRun::from_rules(&rules, 1, 3)), Code::GateAlwaysOpen, "its one miss is all of it");
    let most = PassRun::new(9, 10, 2).unwrap().with_neutral_fails(5).unwrap();
    assert_eq!(most.neutral_fails(), 5);
}

#[test]
fn a_session_becomes_a_fact_with_its_counts() {
    let criteria = [Criterion::critical("brace").unwrap(), Criterion::ordinary("depth").unwrap()];
    let marked = |acceptable, depth| {
        let set = SetMarks::scored(5, acceptable, Rater::Coach).with("brace", Mark::Met).unwrap();
        set.with("depth", depth).unwrap()
    };
    let sets = [marked(5, Mark::Met), marked(4, Mark::Borderline).first_failing(5)];
    let verdict = session_pass(&PassRules::default(), &criteria, &sets).unwrap();
    let today = Day::from_number(20_000).unwrap();
    let made = SessionFact::new(today, &verdict, DayClass::Above);
    let weakest = Some(criteria[1].id.clone());
    let expected = fact(0, Outcome::Pass, 9, 10).with_day_class(DayClass::Above).with_weakest(weakest);
    assert_eq!(made, expected);

    let mut twice = marked(5, Mark::Met);
    twice.marks.push(twice.marks[0].clone());
    let rules = PassRules::default();
    assert_eq!(code(set_pass(&rules, &criteria, 1, &twice)), Code::DuplicateCriterion);
    assert_eq!(code(set_pass(&rules, &criteria, 0, &sets[0])), Code::OutOfRange);
}
