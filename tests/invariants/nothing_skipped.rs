//! No break, rest, stop or new list takes the place of sessions that were still to come.

use super::course::*;
use super::hundred::*;
use super::returns::short_break;
use bismar::condition::DayClass;
use bismar::record::*;

fn press(course: &mut Course, quality: Quality) {
    course.session(4, quality, Weight::AtLimit, Some(0));
}

/// Break after break, none of them followed by a pass: the load that is left is not given back by one.
#[test]
fn short_breaks_in_a_row_are_no_short_break() {
    let mut course = short_break(|_| {});
    press(&mut course, Quality::Unscored);
    wait(&mut course, 12);
    assert_eq!(course.limit(PRESS), kg(90.0));
    press(&mut course, Quality::Clean);
    let after = lift(&course, PRESS);
    assert_eq!((after.status, after.grant.load(), after.passes()), (RETURNING, kg(90.0), 1));
    wait(&mut course, 2);
    press(&mut course, Quality::Clean);
    let after = lift(&course, PRESS);
    assert_eq!((after.status, after.grant.load()), (HOLDING, kg(90.0)));
}

/// What blocks every upward move blocks this one too.
#[test]
fn nothing_is_given_back_where_the_log_is_not_understood_or_nobody_stands_by() {
    let mut course = short_break(|_| {});
    course.step(&Step::Unknown);
    course.day_report(DayClass::Within, true);
    press(&mut course, Quality::Clean);
    assert_eq!(lift(&course, PRESS).grant.load(), kg(95.0));

    for (pins, given_back) in [(None, false), (Some(bismar::quantity::Length::millimetres(700)), true)] {
        let mut course = short_break(|all| all.lifts[PRESS].over_the_body = true);
        let mut done = course.lift(PRESS, Quality::Clean, Weight::AtLimit);
        done.setup = Some(Setup::default().with_company(ByTheBar::Alone).with_pins(pins));
        let pain = Some(vec![Course::pain("shoulder", 0)]);
        course.day_report(DayClass::Within, true);
        course.train(vec![done], pain);
        assert_eq!(lift(&course, PRESS).grant.load() == kg(100.0), given_back, "{pins:?}");
    }
}

/// A session in spite of a stop ends no break: the weeks before it count when the lift is let go.
#[test]
fn a_session_during_a_stop_makes_no_break_shorter() {
    let left = |trained: bool| {
        let mut course = holding(hundred());
        report(&mut course, "shoulder", 7, &[]);
        after_session(&mut course, 90);
        if trained {
            press(&mut course, Quality::Clean);
        }
        course.clear(true);
        course.step(&Step::SignOff(2));
        let decision = on(&course, PRESS, course.day);
        (decision.status.as_str(), decision.grant.place.rung, kilograms(decision.limit))
    };
    // One step down for the stop, and of that what twelve weeks leave.
    assert_eq!(left(false), (RETURNING, 0, 60));
    assert_eq!(left(true), left(false));
}

/// Two fails while a lift is being learned, then the pass that ends the step back: the sessions left are still to come.
#[test]
fn a_step_back_leaves_calibration_where_it_was() {
    let mut all = hundred();
    all.lifts[PRESS].learning_sessions = Some(8);
    let mut course = Course::of_lifter_born(all, YOUNG);
    for quality in [Quality::ManyMisses, Quality::ManyMisses] {
        press(&mut course, quality);
        wait(&mut course, 3);
    }
    let back = lift(&course, PRESS);
    assert_eq!((back.status, back.grant.load()), (STEPPING_BACK, kg(95.0)));
    let done = back.learned.0;
    press(&mut course, Quality::Clean);
    let after = lift(&course, PRESS);
    assert_eq!((after.status, after.learned), (LEARNING, (done, 8)));
}

/// A rest is no pass: what was to be looked at one step easier is looked at on the way back.
#[test]
fn a_rest_does_not_end_a_step_back() {
    let mut course = short_break(|_| {});
    course.day_report(DayClass::Within, true);
    press(&mut course, Quality::Clean);
    wait(&mut course, 3);
    for _ in 0..2 {
        press(&mut course, Quality::ManyMisses);
        wait(&mut course, 3);
    }
    assert_eq!((lift(&course, PRESS).status, course.limit(PRESS)), (STEPPING_BACK, kg(95.0)));
    role(&mut course, PRESS, Role::Rest);
    role(&mut course, PRESS, Role::Train);
    assert_eq!((lift(&course, PRESS).status, course.limit(PRESS)), (RETURNING, kg(95.0)));
    press(&mut course, Quality::Clean);
    assert_eq!(lift(&course, PRESS).status, RETURNING);
    wait(&mut course, 3);
    press(&mut course, Quality::Clean);
    assert_eq!((lift(&course, PRESS).status, course.limit(PRESS)), (HOLDING, kg(95.0)));
}

/// Nor does a short break, where the coach asks for more than one pass after a step back.
#[test]
fn a_short_break_does_not_shorten_a_step_back() {
    let mut course = short_break(|all| all.policy.step_back_passes = 3);
    press(&mut course, Quality::Clean);
    wait(&mut course, 3);
    for _ in 0..2 {
        press(&mut course, Quality::ManyMisses);
        wait(&mut course, 3);
    }
    wait(&mut course, 12);
    let limit = course.limit(PRESS);
    assert!(limit < kg(95.0));
    for passes in 1..=3 {
        assert_eq!(course.limit(PRESS), limit);
        press(&mut course, Quality::Clean);
        let expected = if passes == 3 { HOLDING } else { RETURNING };
        assert_eq!((lift(&course, PRESS).status, lift(&course, PRESS).grant.load()), (expected, limit));
        wait(&mut course, 3);
    }
}

/// New lists without the place at which a lift stands put it on no harder rung, and leave the passes of its return.
#[test]
fn a_place_that_is_gone_is_no_way_up_from_a_return() {
    let range = |all: &mut Parameters, millimetres| {
        all.lifts[PRESS].ranges = vec![bismar::quantity::Length::millimetres(millimetres)];
    };
    let mut course = short_break(|all| range(all, 600));
    press(&mut course, Quality::Clean);
    wait(&mut course, 50);
    press(&mut course, Quality::Clean);
    let before_state = course.state().clone();
    let before = stands(&before_state, PRESS);
    assert_eq!((before.status, before.grant.place.rung, before.passes()), (RETURNING, 1, 1));
    let mut all = hundred();
    range(&mut all, 700);
    all.lifts[PRESS].start.place.rung = 2;
    course.add(EventKind::ParametersChanged(Box::new(all)));
    let after = lift(&course, PRESS);
    assert_eq!((after.status, after.grant.place.rung, after.passes()), (RETURNING, 1, 0));
    assert_eq!(after.grant.load(), before.grant.load());
    wait(&mut course, 3);
    press(&mut course, Quality::Clean);
    assert_eq!(lift(&course, PRESS).status, RETURNING);
}
