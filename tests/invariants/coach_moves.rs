//! Moves that a coach asks for by hand: one step is taken, more than one is refused.

use super::course::*;
use super::hand::*;
use bismar::progression::Status;
use bismar::quantity::Length;
use bismar::reason::Reason;
use bismar::record::*;

fn with_choices(all: &mut Parameters) {
    let press = &mut all.lifts[PRESS];
    press.ranges = [300.0, 400.0, 500.0].map(|mm| Length::from_mm(mm).unwrap()).to_vec();
    press.tempos = [1, 2, 3].map(|down| Tempo { down, hold: 0, up: 1 }).to_vec();
}

#[test]
fn one_step_in_one_dimension_is_taken() {
    let course = ready(with_choices);
    let from = course.state().lifts[PRESS].tuple;
    for to in [
        Tuple { range: 1, ..from },
        Tuple { tempo: 1, ..from },
        Tuple { sets: 3, ..from },
        Tuple { reps: 6, ..from },
        Tuple { load: kg(43.5), ..from },
        // A harder rung at four fifths of the load, or less.
        Tuple { rung: 2, load: kg(32.0), ..from },
        Tuple { rung: 2, load: kg(25.0), ..from },
        // Easier in one thing, one step harder in another.
        Tuple { rung: 0, reps: 6, ..from },
        Tuple { load: kg(36.0), reps: 6, ..from },
    ] {
        assert!(coach_moves(&course, to), "{to:?}");
    }
}

#[test]
fn more_than_one_step_is_refused() {
    let course = ready(with_choices);
    let from = course.state().lifts[PRESS].tuple;
    for to in [
        Tuple { range: 2, ..from },
        Tuple { tempo: 2, ..from },
        Tuple { sets: 4, ..from },
        Tuple { reps: 7, ..from },
        Tuple { range: 1, tempo: 1, ..from },
        Tuple { tempo: 1, load: kg(43.5), ..from },
        Tuple { range: 1, load: kg(43.5), ..from },
        Tuple { sets: 3, reps: 6, ..from },
        Tuple { sets: 3, load: kg(43.5), ..from },
        Tuple { rung: 2, ..from },
        Tuple { rung: 2, load: kg(33.0), ..from },
        Tuple { rung: 2, load: kg(32.0), reps: 6, ..from },
        Tuple { rung: 0, sets: 3, reps: 6, ..from },
    ] {
        assert!(!coach_moves(&course, to), "{to:?}");
    }
}

#[test]
fn no_rung_is_skipped() {
    let course = ready(|all| all.lifts[PRESS].start.rung = 0);
    let from = course.state().lifts[PRESS].tuple;
    assert!(coach_moves(&course, Tuple { rung: 1, load: kg(20.0), ..from }));
    assert!(!coach_moves(&course, Tuple { rung: 2, load: kg(20.0), ..from }));
}

#[test]
fn a_rung_on_no_chain_is_sideways() {
    let course = ready(|all| all.lifts[PRESS].rungs[2].harder_than.clear());
    let from = course.state().lifts[PRESS].tuple;
    assert!(coach_moves(&course, Tuple { rung: 2, ..from }), "the load stays");
    assert!(coach_moves(&course, Tuple { rung: 2, reps: 6, ..from }));
    assert!(!coach_moves(&course, Tuple { rung: 2, reps: 7, ..from }));
}

#[test]
fn a_load_above_the_step_or_between_two_loads_is_refused() {
    // The window allows a fifth, the step a tenth: 44 kg.
    let course = ready(|all| all.policy.window_cap = 0.20);
    let from = course.state().lifts[PRESS].tuple;
    let moves = |load: f64| coach_moves(&course, Tuple { load: kg(load), ..from });
    assert!(moves(43.5) && moves(41.0));
    // With discs of 0.5 and 1.25 kg no pair makes 42.2 or 44 kg; 44.5 and 46 kg can be made.
    assert!(!moves(42.2) && !moves(44.0) && !moves(44.5) && !moves(46.0));
}

#[test]
fn a_load_that_stays_need_not_be_loadable() {
    // A start that no disc makes: what moves is something else.
    let course = ready(|all| all.lifts[PRESS].start.load = kg(40.3));
    let from = course.state().lifts[PRESS].tuple;
    assert!(coach_moves(&course, Tuple { reps: 6, ..from }));
}

#[test]
fn the_whole_window_may_be_used_and_no_more() {
    let ready_at_50 = |window: f64| {
        ready(|all| {
            all.lifts[PRESS].start.load = kg(50.0);
            all.policy.window_cap = window;
        })
    };
    // A tenth of 50 kg is a step of its own; so is the window.
    assert!(coach_moves(&ready_at_50(0.10), Tuple { load: kg(55.0), ..at_50() }));
    assert!(blocked(&ready_at_50(0.10), PRESS).is_empty());
    let short = ready_at_50(0.09);
    assert_eq!(blocked(&short, PRESS), [Reason::WindowCap { load: kg(54.5) }]);
    assert!(!coach_moves(&short, Tuple { load: kg(55.0), ..at_50() }));
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
    course.day_report(bismar::condition::DayClass::Ordinary, true);
    assert_eq!(blocked(&course, PRESS), [Reason::WindowCap { load: kg(41.2) }]);
    let from = course.state().lifts[PRESS].tuple;
    assert!(coach_moves(&course, Tuple { reps: 6, ..from }));
    assert!(!coach_moves(&course, Tuple { load: kg(44.5), ..from }));
}

fn at_50() -> Tuple {
    Tuple { load: kg(50.0), ..parameters(1).lifts[PRESS].start }
}

fn down(course: &mut Course, to: impl FnOnce(&mut Tuple)) {
    let mut tuple = course.state().lifts[PRESS].tuple;
    to(&mut tuple);
    let moved = Move { lift: name("press"), to: tuple, who: name("coach") };
    course.add(EventKind::VariantChanged(moved));
    assert_eq!(course.state().lifts[PRESS].tuple, tuple);
}

#[test]
fn another_rung_is_learned_in_half_of_the_sessions_and_at_least_two() {
    for (own, policy, half) in [(Some(8), 6, 4), (Some(2), 6, 2), (None, 10, 5), (None, 3, 2)] {
        let mut all = parameters(1);
        (all.lifts[PRESS].learning_sessions, all.policy.learning_sessions) = (own, policy);
        let mut course = Course::new(all);
        down(&mut course, |to| to.rung = 0);
        let press = &course.state().lifts[PRESS];
        assert_eq!((press.status, press.learned), (Status::Learning, (0, half)), "{own:?} {policy}");
    }
}

#[test]
fn an_easier_load_on_the_same_rung_is_not_learned_anew() {
    let mut course = ready(|_| {});
    down(&mut course, |to| to.load = kg(36.0));
    let press = &course.state().lifts[PRESS];
    assert_eq!((press.status, press.learned.0, press.sittings.len()), (Status::Holding, 2, 0));
    let mut learning = Course::new(parameters(1));
    press_week(&mut learning);
    down(&mut learning, |to| to.load = kg(36.0));
    assert_eq!(learning.state().lifts[PRESS].status, Status::Learning);
}

#[test]
fn a_stopped_lift_that_is_made_easier_stays_stopped() {
    let mut course = Course::play(&[Step::Symptom]);
    down(&mut course, |to| to.rung = 0);
    assert_eq!(course.state().lifts[PRESS].status, Status::StoppedRefer);
}

#[test]
fn a_declined_move_is_earned_anew() {
    let decline = |course: &mut Course| {
        let advance = Advance { lift: name("press"), who: name("coach") };
        course.add(EventKind::AdvanceDeclined(advance));
        let press = &course.state().lifts[PRESS];
        (press.status, press.sittings.len(), press.tuple.load)
    };
    assert_eq!(decline(&mut ready(|_| {})), (Status::Holding, 0, kg(40.0)));
    // Nothing is on offer while the lift is being learned.
    let mut learning = Course::new(parameters(1));
    press_week(&mut learning);
    assert_eq!(decline(&mut learning), (Status::Learning, 1, kg(40.0)));
}

#[test]
fn another_rater_or_other_discs_start_the_evidence_of_the_lifts_named_anew() {
    let changed = |lift: Option<&str>, ready: &Course| {
        let mut course = ready.clone();
        let (lift, now) = (lift.map(name), name("another"));
        course.add(EventKind::BarOrDiscsChanged(BarChanged { lift, now }));
        [STRICT, PRESS].map(|at| {
            let lift = &course.state().lifts[at];
            (lift.status, lift.sittings.len())
        })
    };
    let mut course = ready(|_| {});
    course.session(1, Quality::Clean, Weight::AtLimit, Some(0));
    let (strict, press) = ((Status::Learning, 1), (Status::ReadyToAdvance, 2));
    assert_eq!(changed(Some("forgiving"), &course), [strict, press]);
    assert_eq!(changed(Some("press"), &course), [strict, (Status::Holding, 0)]);
    assert_eq!(changed(None, &course), [(Status::Learning, 0), (Status::Holding, 0)]);
}

#[test]
fn a_maintained_lift_that_is_trained_again_holds() {
    let mut course = ready(|_| {});
    for (role, status) in [(1, Status::Maintaining), (0, Status::Holding), (0, Status::Holding)] {
        course.step(&Step::Role { lift: 2, role });
        assert_eq!(course.state().lifts[PRESS].status, status);
    }
}
