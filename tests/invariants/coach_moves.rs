//! Moves that a coach asks for by hand: one step is taken, more than one is refused.

use super::course::*;
use super::hand::*;
use bismar::quantity::Length;
use bismar::reason::Reason;
use bismar::record::*;

fn with_choices(all: &mut Parameters) {
    let press = &mut all.lifts[PRESS];
    press.ranges = [300.0, 400.0, 500.0].map(|mm| Length::from_mm(mm).unwrap()).to_vec();
    press.tempos = [1, 2, 3].map(|down| Tempo::new(down, 0, 1)).to_vec();
}

#[test]
fn one_step_in_one_dimension_is_taken() {
    let course = ready(with_choices);
    let from = course.stands(PRESS).grant;
    for to in [
        with(&from, |to| to.place.range = 1),
        with(&from, |to| to.place.tempo = 1),
        with(&from, |to| to.work.sets = 3),
        with(&from, |to| to.work.reps = 6),
        with(&from, |to| to.work.load = kg(43.5)),
        // A harder rung at four fifths of the load, or less.
        with(&from, |to| {
            to.place.rung = 2;
            to.work.load = kg(32.0);
        }),
        with(&from, |to| {
            to.place.rung = 2;
            to.work.load = kg(25.0);
        }),
        // Easier in one thing, one step harder in another.
        with(&from, |to| {
            to.place.rung = 0;
            to.work.reps = 6;
        }),
        with(&from, |to| {
            to.work.load = kg(36.0);
            to.work.reps = 6;
        }),
    ] {
        assert!(coach_moves(&course, to), "{to:?}");
    }
}

#[test]
fn more_than_one_step_is_refused() {
    let course = ready(with_choices);
    let from = course.stands(PRESS).grant;
    for to in [
        with(&from, |to| to.place.range = 2),
        with(&from, |to| to.place.tempo = 2),
        with(&from, |to| to.work.sets = 4),
        with(&from, |to| to.work.reps = 7),
        with(&from, |to| {
            to.place.range = 1;
            to.place.tempo = 1;
        }),
        with(&from, |to| {
            to.place.tempo = 1;
            to.work.load = kg(43.5);
        }),
        with(&from, |to| {
            to.place.range = 1;
            to.work.load = kg(43.5);
        }),
        with(&from, |to| {
            to.work.sets = 3;
            to.work.reps = 6;
        }),
        with(&from, |to| {
            to.work.sets = 3;
            to.work.load = kg(43.5);
        }),
        with(&from, |to| to.place.rung = 2),
        with(&from, |to| {
            to.place.rung = 2;
            to.work.load = kg(33.0);
        }),
        with(&from, |to| {
            to.place.rung = 2;
            to.work.load = kg(32.0);
            to.work.reps = 6;
        }),
        with(&from, |to| {
            to.place.rung = 0;
            to.work.sets = 3;
            to.work.reps = 6;
        }),
    ] {
        assert!(!coach_moves(&course, to), "{to:?}");
    }
}

#[test]
fn no_rung_is_skipped() {
    let course = ready(|all| all.lifts[PRESS].start.place.rung = 0);
    let from = course.stands(PRESS).grant;
    assert!(coach_moves(
        &course,
        with(&from, |to| {
            to.place.rung = 1;
            to.work.load = kg(20.0);
        })
    ));
    assert!(!coach_moves(
        &course,
        with(&from, |to| {
            to.place.rung = 2;
            to.work.load = kg(20.0);
        })
    ));
}

#[test]
fn a_rung_on_no_chain_is_sideways() {
    let course = ready(|all| all.lifts[PRESS].rungs[2].harder_than.clear());
    let from = course.stands(PRESS).grant;
    assert!(coach_moves(&course, with(&from, |to| to.place.rung = 2)), "the load stays");
    assert!(coach_moves(
        &course,
        with(&from, |to| {
            to.place.rung = 2;
            to.work.reps = 6;
        })
    ));
    assert!(!coach_moves(
        &course,
        with(&from, |to| {
            to.place.rung = 2;
            to.work.reps = 7;
        })
    ));
}

#[test]
fn a_load_above_the_step_or_between_two_loads_is_refused() {
    // The window allows a fifth, the step a tenth: 44 kg.
    let course = ready(|all| all.policy.window_cap = 0.20);
    let from = course.stands(PRESS).grant;
    let moves = |load: f64| coach_moves(&course, with(&from, |to| to.work.load = kg(load)));
    assert!(moves(43.5) && moves(41.0));
    // With discs of 0.5 and 1.25 kg no pair makes 42.2 or 44 kg; 44.5 and 46 kg can be made.
    assert!(!moves(42.2) && !moves(44.0) && !moves(44.5) && !moves(46.0));
}

#[test]
fn a_load_that_stays_need_not_be_loadable() {
    // A load that no disc makes any more: what moves is something else.
    let mut course = ready(|all| all.lifts[PRESS].start.work.load = kg(41.0));
    lose_smallest_discs(&mut course);
    let from = course.stands(PRESS).grant;
    assert!(coach_moves(&course, with(&from, |to| to.work.reps = 6)));
}

#[test]
fn the_whole_window_may_be_used_and_no_more() {
    let ready_at_50 = |window: f64| {
        ready(|all| {
            all.lifts[PRESS].start.work.load = kg(50.0);
            all.policy.window_cap = window;
        })
    };
    // A tenth of 50 kg is a step of its own; so is the window.
    assert!(coach_moves(&ready_at_50(0.10), with(&at_50(), |to| to.work.load = kg(55.0))));
    assert!(blocked(&ready_at_50(0.10), PRESS).is_empty());
    let short = ready_at_50(0.09);
    let by = blocked(&short, PRESS);
    assert!(matches!(by[..], [Reason::WindowCap { load, .. }] if load == kg(54.5)), "{by:?}");
    assert!(!coach_moves(&short, with(&at_50(), |to| to.work.load = kg(55.0))));
}

#[test]
fn a_load_above_the_window_may_stay_while_something_else_moves() {
    let mut course = ready(|_| {});
    course.accept(PRESS as u8);
    press_week(&mut course);
    press_week(&mut course);
    // 3 % of 40 kg from here on, where the lift has gone up to 43.5 already.
    let mut all = parameters(1);
    all.policy.window_cap = 0.03;
    course.add(EventKind::ParametersChanged(Box::new(all)));
    course.day_report(bismar::condition::DayClass::Within, true);
    let by = blocked(&course, PRESS);
    assert!(matches!(by[..], [Reason::WindowCap { load, .. }] if load == kg(41.2)), "{by:?}");
    let from = course.stands(PRESS).grant;
    assert!(coach_moves(&course, with(&from, |to| to.work.reps = 6)));
    assert!(!coach_moves(&course, with(&from, |to| to.work.load = kg(44.5))));
}

fn at_50() -> Grant {
    with(&parameters(1).lifts[PRESS].start, |to| to.work.load = kg(50.0))
}

fn down(course: &mut Course, change: impl FnOnce(&mut Grant)) {
    let to = with(&course.stands(PRESS).grant, change);
    course.add(EventKind::VariantChanged(Move::new(name("press"), to, name("coach"))));
    assert_eq!(course.stands(PRESS).grant, to);
}

#[test]
fn another_rung_is_learned_in_half_of_the_sessions_and_at_least_two() {
    for (own, policy, half) in [(Some(8), 6, 4), (Some(2), 6, 2), (None, 10, 5), (None, 3, 2)] {
        let mut all = parameters(1);
        (all.lifts[PRESS].learning_sessions, all.policy.learning_sessions) = (own, policy);
        let mut course = Course::new(all.clone());
        for _ in 0..own.unwrap_or(policy) {
            press_week(&mut course);
        }
        assert_ne!(course.stands(PRESS).status, LEARNING);
        down(&mut course, |to| to.place.rung = 0);
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.learned), (LEARNING, (0, half)), "{own:?} {policy}");
        // A lift that was never learned is not learned in half of them by a move.
        let mut course = Course::new(all);
        down(&mut course, |to| to.place.rung = 0);
        let press = course.stands(PRESS);
        assert_eq!(
            (press.status, press.learned),
            (LEARNING, (0, own.unwrap_or(policy).max(2))),
            "{own:?} {policy}"
        );
    }
}

#[test]
fn an_easier_load_on_the_same_rung_is_not_learned_anew() {
    let mut course = ready(|_| {});
    down(&mut course, |to| to.work.load = kg(36.0));
    let press = course.stands(PRESS);
    assert_eq!((press.status, press.learned.0, press.sittings.len()), (HOLDING, 2, 0));
    let mut learning = Course::new(parameters(1));
    press_week(&mut learning);
    down(&mut learning, |to| to.work.load = kg(36.0));
    assert_eq!(learning.stands(PRESS).status, LEARNING);
}

#[test]
fn a_stopped_lift_that_is_made_easier_stays_stopped() {
    let mut course = Course::play(&[Step::Symptom]);
    down(&mut course, |to| to.place.rung = 0);
    assert_eq!(course.stands(PRESS).status, STOPPED);
}

#[test]
fn a_declined_move_is_earned_anew() {
    let decline = |course: &mut Course| {
        let advance = Advance::new(name("press"), name("coach"));
        course.add(EventKind::AdvanceDeclined(advance));
        let press = course.stands(PRESS);
        (press.status, press.sittings.len(), press.grant.load())
    };
    assert_eq!(decline(&mut ready(|_| {})), (HOLDING, 0, kg(40.0)));
    // Nothing is on offer while the lift is being learned.
    let mut learning = Course::new(parameters(1));
    press_week(&mut learning);
    assert_eq!(decline(&mut learning), (LEARNING, 1, kg(40.0)));
}

#[test]
fn another_rater_or_other_discs_start_the_evidence_of_the_lifts_named_anew() {
    let changed = |lift: Option<&str>, ready: &Course| {
        let mut course = ready.clone();
        let (lift, now) = (lift.map(name), name("another"));
        course.add(EventKind::BarOrDiscsChanged(BarChanged::new(now).with_lift(lift)));
        [STRICT, PRESS].map(|at| {
            let lift = course.stands(at);
            (lift.status, lift.sittings.len())
        })
    };
    let mut course = ready(|_| {});
    course.session(1, Quality::Clean, Weight::AtLimit, Some(0));
    let (strict, press) = ((LEARNING, 1), (READY, 2));
    assert_eq!(changed(Some("forgiving"), &course), [strict, press]);
    assert_eq!(changed(Some("press"), &course), [strict, (HOLDING, 0)]);
    assert_eq!(changed(None, &course), [(LEARNING, 0), (HOLDING, 0)]);
}

#[test]
fn a_maintained_lift_that_is_trained_again_holds() {
    let mut course = ready(|_| {});
    for (role, status) in [(1, MAINTAINING), (0, HOLDING), (0, HOLDING)] {
        course.step(&Step::Role { lift: 2, role });
        assert_eq!(course.stands(PRESS).status, status);
    }
}
