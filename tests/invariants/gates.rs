//! What the gate of a lift is given to look at.

use super::course::*;
use super::hand::*;
use bismar::gate::{Evidence, EvidenceRule, Gate, GateState, Met, Missing, PassRun, Requirement};
use bismar::quantity::Rir;
use bismar::record::*;

fn gated(requirement: Requirement) -> Parameters {
    let mut all = parameters(1);
    for lift in &mut all.lifts {
        lift.gate = Gate::new(requirement.clone()).unwrap();
    }
    all
}

fn run_and(other: Requirement) -> Requirement {
    Requirement::All(vec![Requirement::PassRun(PassRun::new(9, 10, 2).unwrap()), other])
}

fn gate(course: &Course, at: usize) -> GateState {
    decision(course, at).gate
}

#[test]
fn a_run_says_how_far_it_is_and_what_broke_it() {
    let mut course = Course::new(parameters(1));
    let (need, restarted, weakest) = (2, None, None);
    press_week(&mut course);
    let missing = gate(&course, PRESS).missing;
    assert_eq!(missing, [Missing::PassingSessions { have: 1, need, restarted, weakest }]);
    press_week(&mut course);
    assert!(gate(&course, PRESS).open);
    assert_eq!(gate(&course, PRESS).met, [Met::PassingSessions { have: 2, need }]);
    let restarted = Some(course.day);
    course.session(4, Quality::CriticalLost, Weight::AtLimit, Some(0));
    let missing = gate(&course, PRESS).missing;
    let weakest = Some(name("brace"));
    assert_eq!(missing, [Missing::PassingSessions { have: 0, need, restarted, weakest }]);
}

#[test]
fn pain_that_waits_for_clear_sessions_is_an_open_block() {
    let blocked = |step: Option<Step>| {
        let mut course = Course::new(gated(run_and(Requirement::NoOpenBlock)));
        step.iter().for_each(|step| course.step(step));
        gate(&course, STRICT).missing.contains(&Missing::OpenBlock { name: name("hip") })
    };
    assert!(!blocked(None));
    let pain = |score: u8, region: u8| Some(ache(region, score));
    assert!(blocked(pain(4, HIP)) && blocked(pain(7, HIP)));
    assert!(!blocked(pain(4, SHOULDER)), "the shoulder is no region of this lift");
}

#[test]
fn a_region_that_hurt_keeps_the_gate_shut_until_its_clear_sessions() {
    let waits = Missing::Region { name: name("hip") };
    let missing = |course: &Course| gate(course, STRICT).missing.contains(&waits);
    for score in [4, 7] {
        let mut course = Course::new(gated(run_and(Requirement::Region)));
        assert!(!missing(&course) && gate(&course, STRICT).met.contains(&Met::Region));
        course.add(EventKind::PainReport(Course::pain("shoulder", score)));
        assert!(!missing(&course), "the shoulder is no region of this lift");
        course.add(EventKind::PainReport(Course::pain("hip", score)));
        assert!(missing(&course), "{score}");
    }
    let mut course = Course::new(gated(run_and(Requirement::Region)));
    course.add(EventKind::PainReport(Course::pain("hip", 4)));
    for clear in 1..=2 {
        assert!(missing(&course), "before clear session {clear}");
        course.day = course.day.plus(3).unwrap();
        course.session(1, Quality::Clean, Weight::AtLimit, Some(0));
    }
    assert!(!missing(&course));
}

#[test]
fn a_stopped_partner_keeps_the_gate_of_a_pair_shut() {
    let mut all = gated(run_and(Requirement::Pair));
    all.lifts[FORGIVING].regions.push(name("knee"));
    let mut course = Course::new(all);
    let waits = Missing::Pair { name: name("forgiving") };
    assert!(!gate(&course, STRICT).missing.contains(&waits));
    course.add(EventKind::PainReport(Course::pain("knee", 7)));
    assert_eq!(course.stands(FORGIVING).status, STOPPED);
    assert_ne!(course.stands(STRICT).status, STOPPED);
    assert!(gate(&course, STRICT).missing.contains(&waits));
}

#[test]
fn misses_of_sessions_that_are_no_longer_listed_still_count() {
    let rule = EvidenceRule::Posterior { rate: 0.8, level: 0.9, prior_acceptable: 1.0, prior_missed: 1.0 };
    let mut course = Course::new(gated(Requirement::Evidence(Evidence::new(rule, 400, 2).unwrap())));
    let misses = |course: &Course| {
        let gate = gate(course, PRESS);
        let met = gate.met.iter().find_map(|met| match met {
            Met::Evidence { misses, .. } => Some(*misses),
            _ => None,
        });
        let missing = gate.missing.iter().find_map(|missing| match missing {
            Missing::Evidence { misses, .. } => Some(*misses),
            _ => None,
        });
        met.or(missing).unwrap()
    };
    // Two sets with three misses each, then more clean sessions than are kept one by one.
    course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
    assert_eq!(misses(&course), 6);
    for _ in 0..15 {
        course.morning(false);
        course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    }
    course.morning(false);
    assert_eq!(course.stands(PRESS).sittings.len(), 12);
    assert_eq!(misses(&course), 6);
}

#[test]
fn two_repetitions_in_reserve_meet_the_cap_on_effort() {
    let capped = |efforts: [Option<u8>; 2]| {
        let mut course = Course::new(gated(run_and(Requirement::EffortCap)));
        let mut lift = course.lift(PRESS, Quality::Clean, Weight::AtLimit);
        for (set, effort) in lift.sets.iter_mut().zip(efforts) {
            set.effort = effort.map(|reserve| Effort::Rir(Rir::whole(reserve)));
        }
        let session = Session::new(vec![lift]).with_pain(Vec::new());
        course.add(EventKind::SessionRecorded(session));
        let gate = gate(&course, PRESS);
        let recorded = gate.missing.iter().find_map(|missing| match missing {
            Missing::EffortCap { recorded } => Some(*recorded),
            _ => None,
        });
        assert_eq!(gate.met.contains(&Met::EffortCap), recorded.is_none());
        recorded
    };
    assert_eq!((capped([Some(2), Some(2)]), capped([Some(4), Some(3)])), (None, None));
    // The hardest set counts, and each must say.
    assert_eq!((capped([Some(4), Some(1)]), capped([Some(1), Some(4)])), (Some(true), Some(true)));
    assert_eq!((capped([Some(4), None]), capped([None, None])), (Some(false), Some(false)));
}
