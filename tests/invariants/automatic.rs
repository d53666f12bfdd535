//! Moves that are taken without the coach, where the policy says so.

use super::course::*;
use super::hand::*;
use bismar::condition::DayClass;
use bismar::reason::Reason;
use bismar::record::*;

/// The press has passed twice and its second morning is told: its gate is open.
fn open(automatic: bool) -> Course {
    let mut all = parameters(1);
    all.policy.automatic_acceptance = automatic;
    let mut course = Course::new(all);
    press_week(&mut course);
    press_week(&mut course);
    assert_eq!(course.stands(PRESS).status, READY);
    course
}

fn at_43_5(course: &Course) -> bool {
    let press = course.stands(PRESS);
    let moved = press.grant.load() == kg(43.5);
    assert_eq!(press.status == CONSOLIDATING, moved);
    assert!(moved || press.grant.load() == kg(40.0));
    moved
}

#[test]
fn a_report_of_an_ordinary_day_takes_the_move_where_the_policy_says_so() {
    for automatic in [true, false] {
        let mut course = open(automatic);
        assert!(!at_43_5(&course), "the day is not known yet");
        assert_eq!(course.stands(PRESS).refused, None, "waiting is not a refusal");
        course.day_report(DayClass::Within, true);
        assert_eq!(at_43_5(&course), automatic);
    }
}

#[test]
fn a_break_that_asks_for_a_way_back_takes_no_move() {
    for automatic in [true, false] {
        let mut course = open(automatic);
        // Twelve days after the session, and nine before its offer ends.
        course.day = course.stands(PRESS).last_session.unwrap().plus(12).unwrap();
        assert!(blocked(&course, PRESS).contains(&Reason::Returning { at_most: kg(40.0) }));
        course.day_report(DayClass::Within, true);
        assert!(!at_43_5(&course), "by the rule");
        course.accept(2);
        assert!(!at_43_5(&course), "by the coach");
        let to = with(&course.stands(PRESS).grant, |to| to.work.reps = 6);
        assert!(!coach_moves(&course, to), "by hand");
        assert_eq!(course.limit(PRESS), kg(36.0));
    }
}

#[test]
fn a_day_below_the_usual_takes_no_move() {
    let mut course = open(true);
    course.day_report(DayClass::Below, true);
    assert!(!at_43_5(&course));
    assert_eq!(course.stands(PRESS).refused, None);
}

#[test]
fn nothing_but_training_its_answers_and_the_coach_takes_a_move() {
    let mut course = open(true);
    course.add(EventKind::ClearanceExpired(name("clinic")));
    course.day_report(DayClass::Within, true);
    assert!(!at_43_5(&course), "no clearance in force");
    course.clear(true);
    course.step(&Step::Missed);
    course.add(EventKind::BlockStarted(name("block")));
    assert!(blocked(&course, PRESS).is_empty() && !at_43_5(&course));
    sign_off(&mut course, SignOffScope::Gate(name("press")));
    assert!(at_43_5(&course));
}

#[test]
fn a_refusal_of_the_coach_is_not_forgotten_by_waiting() {
    let mut course = open(true);
    // The strict lift has nothing on offer.
    let refused = course.next_number();
    course.accept(0);
    assert_eq!(course.stands(STRICT).refused, Some(refused));
    assert!(decision(&course, STRICT).reasons.contains(&Reason::MoveRefused { event: refused }));
    course.day_report(DayClass::Below, true);
    assert!(!at_43_5(&course));
    assert_eq!(course.stands(STRICT).refused, Some(refused));
}

#[test]
fn a_role_set_during_a_planned_break_leaves_the_lift_at_rest() {
    for role in [Role::Train, Role::Maintain] {
        let mut course = open(false);
        course.step(&Step::Layoff(1));
        course.add(EventKind::RoleSet(RoleSet::new(name("press"), role)));
        assert_eq!(course.stands(PRESS).status, RESTING, "the first session ends the break");
        // A lift that rests by its role is woken by another role.
        let mut course = open(false);
        course.step(&Step::Role { lift: 2, role: 2 });
        assert_eq!(course.stands(PRESS).status, RESTING);
        course.add(EventKind::RoleSet(RoleSet::new(name("press"), role)));
        assert_ne!(course.stands(PRESS).status, RESTING);
    }
}
