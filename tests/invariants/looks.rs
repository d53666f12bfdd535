//! Looks that are due, and what the last session was good for.

use super::course::*;
use super::hand::{blocked, decision};
use bismar::condition::DayClass;
use bismar::gate::Mark;
use bismar::quantity::Day;
use bismar::reason::{Reason, Shortfall};
use bismar::record::*;

fn weeks(count: usize) -> Course {
    Course::play(&vec![Step::CleanWeek; count])
}

fn reasons(course: &Course, at: usize) -> Vec<Reason> {
    decision(course, at).reasons
}

fn probe(course: &Course, at: usize) -> Option<(Day, Option<String>)> {
    reasons(course, at).into_iter().find_map(|reason| match reason {
        Reason::ProbeDue { by, criterion } => Some((by, criterion.map(|name| name.as_str().into()))),
        _ => None,
    })
}

fn maintained() -> Course {
    let mut course = weeks(4);
    course.step(&Step::Role { lift: 2, role: 1 });
    assert_eq!(course.stands(PRESS).status, MAINTAINING);
    course
}

#[test]
fn a_maintained_lift_is_looked_at_again_after_the_stated_days() {
    let mut course = maintained();
    let last = course.stands(PRESS).last_session.unwrap();
    assert_eq!(probe(&course, PRESS).unwrap(), (last.plus(28).unwrap(), None));
    // Training that nobody marks is training, and no look.
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    assert_eq!(probe(&course, PRESS).unwrap().0, last.plus(28).unwrap());
    course.day = course.day.plus(8).unwrap();
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(probe(&course, PRESS).unwrap().0, course.day.plus(28).unwrap());
}

#[test]
fn a_failed_look_is_due_again_at_once_and_a_second_one_steps_back() {
    let mut course = maintained();
    let before = course.stands(PRESS).grant.load();
    course.day_report(DayClass::Within, true);
    course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
    assert_eq!(probe(&course, PRESS).unwrap().0, course.day.plus(1).unwrap());
    assert_eq!(course.stands(PRESS).status, MAINTAINING);
    course.day = course.day.plus(3).unwrap();
    course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
    assert_eq!(course.stands(PRESS).status, STEPPING_BACK);
    assert!(course.stands(PRESS).grant.load() < before);
    assert!(reasons(&course, PRESS).contains(&Reason::SteppedBack { from: before }));
    course.day = course.day.plus(3).unwrap();
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(course.stands(PRESS).status, MAINTAINING);
    assert!(!reasons(&course, PRESS).contains(&Reason::SteppedBack { from: before }));
}

#[test]
fn a_maintained_lift_drifts_down_within_its_band_and_no_further() {
    let mut course = maintained();
    let before = course.stands(PRESS).grant.load();
    let lowest = before.minus(kg(5.0)).unwrap();
    let role = RoleSet::new(name("press"), Role::Maintain).with_not_below(lowest);
    course.add(EventKind::RoleSet(role));
    assert!(reasons(&course, PRESS).contains(&Reason::MaintainingBand { not_below: lowest }));
    let two_fails = |course: &mut Course| {
        for _ in 0..2 {
            course.day_report(DayClass::Within, true);
            course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
            course.day = course.day.plus(3).unwrap();
        }
        let lift = course.stands(PRESS);
        (lift.grant.load(), lift.status)
    };
    let (lower, status) = two_fails(&mut course);
    assert!(lower < before && status == MAINTAINING);
    let (mut load, mut status) = (lower, status);
    while status == MAINTAINING {
        assert!(load >= lowest);
        (load, status) = two_fails(&mut course);
    }
    assert!(load < lowest && status == STEPPING_BACK);
}

#[test]
fn a_look_that_is_missed_moves_nothing() {
    let mut course = maintained();
    let before = course.stands(PRESS).grant;
    for _ in 0..3 {
        course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
        course.day = course.day.plus(9).unwrap();
    }
    assert_eq!(probe(&course, PRESS), None);
    let late = |reason: &Reason| matches!(reason, Reason::ProbeOverdue { since, .. } if *since < course.day);
    assert!(reasons(&course, PRESS).iter().any(late));
    assert_eq!(course.stands(PRESS).grant, before);
}

/// A session of the press at its grant, with that mark for depth in every set.
fn press(course: &mut Course, depth: Mark) {
    let mut lift = course.lift(PRESS, Quality::Clean, Weight::AtLimit);
    for mark in lift.sets.iter_mut().flat_map(|set| &mut set.marks.as_mut().unwrap().marks) {
        if mark.criterion.as_str() == "depth" {
            mark.mark = depth;
        }
    }
    let session = Session::new(vec![lift]).with_pain(Vec::new());
    course.add(EventKind::SessionRecorded(session));
    course.morning(false);
    course.day = course.day.plus(6).unwrap();
    course.day_report(DayClass::Within, true);
}

#[test]
fn what_was_weak_before_a_move_is_looked_at_after_it() {
    let mut course = Course::new(parameters(1));
    let start = course.limit(PRESS);
    for _ in 0..6 {
        press(&mut course, Mark::NotMet);
        if course.stands(PRESS).status == READY {
            break;
        }
    }
    assert_eq!(probe(&course, PRESS), None);
    course.accept(2);
    assert!(course.limit(PRESS) > start);
    let by = course.day.plus(28).unwrap();
    assert_eq!(probe(&course, PRESS), Some((by, Some("depth".into()))));
    press(&mut course, Mark::Borderline);
    assert_eq!(probe(&course, PRESS), Some((by, Some("depth".into()))));
    press(&mut course, Mark::Met);
    assert_eq!(probe(&course, PRESS), None);
}

/// Weeks in which the strict lift is trained and not marked, and the forgiving one passes and moves.
fn forgiving_runs_ahead(count: usize) -> Course {
    let mut course = weeks(3);
    for _ in 0..count {
        course.day_report(DayClass::Within, true);
        if course.stands(FORGIVING).status == READY {
            course.accept(1);
        }
        course.session(1, Quality::Unscored, Weight::AtLimit, Some(0));
        course.session(2, Quality::Clean, Weight::AtLimit, Some(0));
        course.morning(false);
        course.day = course.day.plus(6).unwrap();
    }
    course
}

#[test]
fn a_forgiving_lift_far_ahead_asks_for_a_look_at_the_pair() {
    let early = forgiving_runs_ahead(9);
    assert!(!reasons(&early, STRICT).contains(&Reason::PairReview));
    let late = forgiving_runs_ahead(40);
    let before = early.stands(STRICT).grant;
    assert_eq!(late.stands(STRICT).grant, before);
    for at in [STRICT, FORGIVING] {
        assert!(reasons(&late, at).contains(&Reason::PairReview));
        assert!(!blocked(&late, at).contains(&Reason::PairReview));
    }
    assert!(!reasons(&late, PRESS).contains(&Reason::PairReview));
    // Where the forgiving lift has hardly grown, time alone asks for nothing.
    let mut still = forgiving_runs_ahead(9);
    for _ in 0..20 {
        still.day_report(DayClass::Within, true);
        still.session(3, Quality::Unscored, Weight::AtLimit, Some(0));
        still.day = still.day.plus(7).unwrap();
    }
    assert!(!reasons(&still, STRICT).contains(&Reason::PairReview));
}

#[test]
fn an_agreed_usual_level_allows_a_move_only_until_it_is_due_to_be_looked_at() {
    let mut course = Course::new(parameters(1));
    course.step(&Step::Usual(2));
    let agreed = course.day;
    let week = |course: &mut Course| {
        let pain = vec![Course::pain("hip", 2)];
        let report = DayReport::default().with_class(DayClass::Within).with_pain(pain);
        course.add(EventKind::DayReport(report));
        course.session(2, Quality::Clean, Weight::AtLimit, Some(2));
        course.day = course.day.plus(7).unwrap();
    };
    let review = Reason::UsualPainReview { region: name("hip"), agreed };
    while course.day.since(agreed) <= 80 {
        week(&mut course);
        assert!(!reasons(&course, FORGIVING).contains(&review));
    }
    assert_eq!(course.stands(FORGIVING).status, READY);
    course.day = agreed.plus(91).unwrap();
    course.day_report(DayClass::Within, true);
    assert!(reasons(&course, FORGIVING).contains(&review));
    // The level no longer counts: the same pain holds now.
    course.add(EventKind::PainReport(Course::pain("hip", 2)));
    let by = blocked(&course, FORGIVING);
    assert!(by.contains(&review) && by.iter().any(|reason| matches!(reason, Reason::PainBlock { .. })));
    course.step(&Step::Usual(2));
    assert!(!reasons(&course, FORGIVING).contains(&review));
    assert!(!blocked(&course, FORGIVING).contains(&review));
}

#[test]
fn a_usual_level_past_its_review_takes_back_passes_as_none_would() {
    let flare = |days: i32| {
        let mut course = Course::new(parameters(1));
        course.step(&Step::Usual(2));
        course.day = course.day.plus(days).unwrap();
        course.session(2, Quality::Clean, Weight::AtLimit, Some(0));
        course.morning(true);
        course.stands(FORGIVING).fails
    };
    assert_eq!((flare(60), flare(95)), (0, 1));
}

#[test]
fn the_last_session_says_why_it_does_not_count() {
    let mut course = weeks(4);
    assert!(
        !reasons(&course, PRESS)
            .iter()
            .any(|reason| matches!(reason, Reason::NotScored | Reason::NotAtGrant { .. }))
    );
    course.session(4, Quality::Clean, Weight::Lighter, Some(0));
    assert!(reasons(&course, PRESS).contains(&Reason::NotAtGrant { short: Shortfall::Load }));
    course.day = course.day.plus(2).unwrap();
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    assert!(reasons(&course, PRESS).contains(&Reason::NotScored));
    assert!(!reasons(&course, PRESS).contains(&Reason::NotAtGrant { short: Shortfall::Load }));
}

#[test]
fn limits_that_nobody_has_set_are_never_passed_over_in_silence() {
    let mut course = weeks(1);
    assert!(reasons(&course, PRESS).contains(&Reason::NoLimitsOnRecord));
    let limit = ClearanceLimits::default().with_no_breath_hold(true);
    course.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]),
    ));
    assert!(!reasons(&course, PRESS).contains(&Reason::NoLimitsOnRecord));
}
