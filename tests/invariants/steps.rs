//! The one step up that is offered, the one step back, and what is remembered of moves.

use super::course::*;
use super::hand::*;
use super::moves::crate_cases;
use bismar::loading::{Disc, Stock};
use bismar::quantity::Length;
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

/// Where the press would move from its start, or why nowhere.
fn offered(set: impl FnOnce(&mut LiftParameters)) -> Result<Grant, Vec<Reason>> {
    let mut all = parameters(1);
    set(&mut all.lifts[PRESS]);
    let course = Course::new(all);
    next(&course, PRESS).ok_or_else(|| blocked(&course, PRESS))
}

fn start() -> Grant {
    parameters(1).lifts[PRESS].start
}

fn at_top(outcome: Result<Grant, Vec<Reason>>) -> bool {
    outcome.is_err_and(|by| by.contains(&Reason::AtTop))
}

#[test]
fn one_more_repetition_or_set_up_to_the_top() {
    let reps = |reps: u8, top: Option<u8>| {
        offered(|press| (press.moving, press.start.work.reps, press.reps_top) = (Dimension::Reps, reps, top))
    };
    assert_eq!(reps(5, Some(8)), Ok(with(&start(), |to| to.work.reps = 6)));
    assert_eq!(reps(7, Some(8)), Ok(with(&start(), |to| to.work.reps = 8)));
    assert!(at_top(reps(8, Some(8))) && at_top(reps(9, Some(8))) && at_top(reps(5, None)));
    let sets = |sets: u8, top: Option<u8>| {
        offered(|press| (press.moving, press.start.work.sets, press.sets_top) = (Dimension::Sets, sets, top))
    };
    assert_eq!(sets(2, Some(4)), Ok(with(&start(), |to| to.work.sets = 3)));
    assert_eq!(sets(3, Some(4)), Ok(with(&start(), |to| to.work.sets = 4)));
    assert!(at_top(sets(4, Some(4))) && at_top(sets(5, Some(4))) && at_top(sets(2, None)));
}

fn two_ranges(press: &mut LiftParameters) {
    press.ranges = [300.0, 400.0].map(|mm| Length::from_mm(mm).unwrap()).to_vec();
    press.moving = Dimension::Range;
}

fn two_tempos(press: &mut LiftParameters) {
    press.tempos = [2, 3].map(|down| Tempo::new(down, 0, 1)).to_vec();
    press.moving = Dimension::Tempo;
}

#[test]
fn the_next_range_or_tempo_up_to_the_last() {
    assert_eq!(offered(two_ranges), Ok(with(&start(), |to| to.place.range = 1)));
    assert!(at_top(offered(|press| {
        two_ranges(press);
        press.start.place.range = 1;
    })));
    assert!(at_top(offered(|press| press.moving = Dimension::Range)), "no range is measured");
    assert_eq!(offered(two_tempos), Ok(with(&start(), |to| to.place.tempo = 1)));
    assert!(at_top(offered(|press| {
        two_tempos(press);
        press.start.place.tempo = 1;
    })));
    assert!(at_top(offered(|press| press.moving = Dimension::Tempo)), "no tempo is prescribed");
}

#[test]
fn the_next_rung_at_four_fifths_of_the_load_or_less() {
    let rung = |rung: u8, own_ratio: Option<f64>| {
        offered(|press| {
            (press.moving, press.start.place.rung) = (Dimension::Variant, rung);
            press.rungs.iter_mut().for_each(|rung| rung.own_ratio = own_ratio);
        })
    };
    assert_eq!(
        rung(0, None),
        Ok(with(&start(), |to| {
            to.place.rung = 1;
            to.work.load = kg(32.0);
        }))
    );
    assert_eq!(
        rung(1, None),
        Ok(with(&start(), |to| {
            to.place.rung = 2;
            to.work.load = kg(32.0);
        }))
    );
    assert!(at_top(rung(2, None)));
    // The lifter's own ratio counts where it is lower.
    assert_eq!(
        rung(1, Some(0.75)),
        Ok(with(&start(), |to| {
            to.place.rung = 2;
            to.work.load = kg(30.0);
        }))
    );
    assert_eq!(
        rung(1, Some(0.9)),
        Ok(with(&start(), |to| {
            to.place.rung = 2;
            to.work.load = kg(32.0);
        }))
    );
}

#[test]
fn the_next_load_by_its_step_and_never_above_the_cap() {
    let load = |step: StepPolicy| offered(|press| press.step = Some(step)).map(|to| to.load());
    assert_eq!(offered(|_| {}).map(|to| to.load()), Ok(kg(43.5)), "a tenth is 44 kg; 43.5 can be loaded");
    assert_eq!(load(StepPolicy::Part(0.05)), Ok(kg(42.0)));
    assert_eq!(load(StepPolicy::Fixed(kg(1.5))), Ok(kg(41.0)));
    assert_eq!(load(StepPolicy::Fixed(kg(10.0))), Ok(kg(43.5)));
    assert_eq!(load(StepPolicy::SmallestLoadable), Ok(kg(41.0)));
    let none = Reason::NoLoadableStep { cap: kg(44.0), next: Some(kg(41.0)) };
    assert!(load(StepPolicy::Part(0.01)).is_err_and(|by| by.contains(&none)));
}

fn fail_twice(course: &mut Course) {
    for _ in 0..2 {
        course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
        course.day = course.day.plus(1).unwrap();
    }
}

#[test]
fn a_step_back_takes_back_what_moved_before_it_takes_load() {
    for (moving, moved) in [
        (Dimension::Reps, with(&start(), |to| to.work.reps = 6)),
        (Dimension::Sets, with(&start(), |to| to.work.sets = 3)),
        (Dimension::Range, with(&start(), |to| to.place.range = 1)),
        (Dimension::Tempo, with(&start(), |to| to.place.tempo = 1)),
    ] {
        let mut course = ready(|all| {
            two_ranges(&mut all.lifts[PRESS]);
            two_tempos(&mut all.lifts[PRESS]);
            all.lifts[PRESS].moving = moving;
        });
        course.accept(PRESS as u8);
        assert_eq!(course.stands(PRESS).grant, moved);
        fail_twice(&mut course);
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.grant), (STEPPING_BACK, start()));
        assert_eq!(press.stepped_from(), None, "the load is what it was");
        fail_twice(&mut course);
        let press = course.stands(PRESS);
        assert_eq!(press.grant, with(&start(), |to| to.work.load = kg(36.0)));
        assert_eq!(press.stepped_from(), Some(kg(40.0)));
    }
}

fn after_two_fails(set: impl FnOnce(&mut Parameters)) -> Grant {
    let mut all = parameters(1);
    set(&mut all);
    let mut course = Course::new(all);
    fail_twice(&mut course);
    course.stands(PRESS).grant
}

#[test]
fn a_step_back_in_load_is_one_step_within_its_cap() {
    let load = |step: StepPolicy| after_two_fails(|all| all.lifts[PRESS].step = Some(step)).load();
    assert_eq!(load(StepPolicy::SmallestLoadable), kg(39.5));
    assert_eq!(load(StepPolicy::Part(0.05)), kg(37.5), "38 cannot be loaded");
    assert_eq!(load(StepPolicy::Fixed(kg(3.0))), kg(37.0));
    // 15 % of 40 kg are 6: not below 34, and 34.5 is the first load from there on.
    assert_eq!(load(StepPolicy::Fixed(kg(10.0))), kg(34.5));
    // A step of the equipment may be larger than the cap.
    let coarse = |all: &mut Parameters| {
        all.stock = Stock::new(vec![Disc::new(kg(10.0), 4).unwrap()]).unwrap();
        all.lifts[..2].iter_mut().for_each(|lift| lift.start.work.load = kg(40.0));
    };
    assert_eq!(after_two_fails(coarse).load(), kg(20.0));
}

#[test]
fn a_step_back_past_the_lightest_load_goes_down_to_its_cap() {
    let load = |from: f64, step: f64| {
        after_two_fails(|all| {
            let press = &mut all.lifts[PRESS];
            (press.start.work.load, press.step) = (kg(from), Some(StepPolicy::Fixed(kg(step))));
        })
        .load()
    };
    // The bar is 20 kg; 15 % of 22.5 kg are 3.375, so that the bar itself is within the cap.
    assert_eq!([2.5, 3.0, 50.0].map(|step| load(22.5, step)), [kg(20.0); 3]);
    // 15 % of 25 kg are 3.75: not below 21.25, and 22 is the first load from there on.
    assert_eq!([2.5, 3.0, 10.0, 50.0].map(|step| load(25.0, step)), [22.5, 22.0, 22.0, 22.0].map(kg));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    #[test]
    fn a_larger_step_never_steps_back_less(
        from in prop::sample::select(vec![21.0, 22.0, 22.5, 25.0, 30.0, 40.0]), small in 1_u32..80, more in 0_u32..80,
    ) {
        let after = |step| after_two_fails(|all| {
            (all.lifts[PRESS].start.work.load, all.lifts[PRESS].step) = (kg(from), Some(step));
        }).load();
        let fixed = |halves| after(StepPolicy::Fixed(kg(0.5).times(halves).unwrap()));
        prop_assert!(fixed(small + more) <= fixed(small));
        let part = |step: u32| after(StepPolicy::Part(f64::from(step) / 1600.0));
        prop_assert!(part(small + more) <= part(small));
        // No step is smaller than one of the equipment.
        let least = after(StepPolicy::SmallestLoadable);
        prop_assert!(fixed(small) <= least && part(small) <= least && least < kg(from));
    }
}

#[test]
fn below_the_lightest_load_lies_an_easier_rung() {
    let mut all = parameters(1);
    all.lifts[PRESS].start.work.load = kg(20.0);
    let mut course = Course::new(all);
    for _ in 0..2 {
        fail_twice(&mut course);
        // There is no rung below the first.
        assert_eq!(
            course.stands(PRESS).grant,
            with(&start(), |to| {
                to.place.rung = 0;
                to.work.load = kg(20.0);
            })
        );
    }
}

/// The press moves on this day and again a fortnight later.
fn two_moves(window_days: u16) -> Course {
    let mut course = ready(|all| (all.policy.window_days, all.policy.window_cap) = (window_days, 0.20));
    let first = course.day;
    course.accept(PRESS as u8);
    press_week(&mut course);
    press_week(&mut course);
    course.day_report(bismar::condition::DayClass::Within, true);
    course.accept(PRESS as u8);
    assert_eq!((course.day.since(first), course.stands(PRESS).refused), (14, None));
    course
}

#[test]
fn moves_are_kept_through_their_windows_and_no_longer() {
    let course = two_moves(56);
    let (first, second) = (course.day.plus(-14).unwrap(), course.day);
    // Each with the load before it.
    assert_eq!(course.stands(PRESS).moves, [(first, kg(40.0)), (second, kg(43.5))]);
    assert_eq!(two_moves(15).stands(PRESS).moves.len(), 2);
    let course = two_moves(14);
    assert_eq!(course.stands(PRESS).moves, [(second, kg(43.5))], "the first has left the window");
    // The region's window is a fortnight.
    let shoulder = course.state().region(&name("shoulder")).unwrap();
    assert_eq!(shoulder.moves, [second]);
}

#[test]
fn a_region_counts_the_moves_of_all_its_lifts() {
    let mut all = parameters(1);
    all.pairs.clear();
    all.policy.region_moves = 2;
    for lift in &mut all.lifts {
        lift.regions = vec![name("hip")];
    }
    let mut course = Course::new(all);
    for _ in 0..2 {
        course.session(7, Quality::Clean, Weight::AtLimit, Some(0));
        course.morning(false);
        course.day = course.day.plus(6).unwrap();
    }
    course.day_report(bismar::condition::DayClass::Within, true);
    let window = Reason::RegionWindow { region: name("hip"), days_left: 14 };
    for at in [0, 1] {
        assert!(!blocked(&course, PRESS).contains(&window));
        course.accept(at);
    }
    assert_eq!(course.state().region(&name("hip")).unwrap().moves, [course.day; 2]);
    assert!(blocked(&course, PRESS).contains(&window));
    course.accept(2);
    assert_eq!(course.stands(PRESS).grant.load(), kg(40.0));
}

#[test]
fn a_harder_rung_is_learned_in_half_of_the_sessions_and_at_least_two() {
    for (own, policy, half) in [(Some(8), 6, 4), (Some(2), 6, 2), (None, 10, 5), (None, 3, 2)] {
        let mut course = ready(|all| {
            let press = &mut all.lifts[PRESS];
            (press.moving, press.learning_sessions) = (Dimension::Variant, own);
            all.policy.learning_sessions = policy;
        });
        course.accept(PRESS as u8);
        let press = course.stands(PRESS);
        assert_eq!((press.grant.place.rung, press.grant.load()), (2, kg(32.0)));
        assert_eq!((press.status, press.learned), (LEARNING, (0, half)), "{own:?} {policy}");
    }
}

#[test]
fn a_lift_taken_up_again_is_learned_as_a_new_one() {
    for (own, whole) in [(Some(8), 8), (None, 6)] {
        // Straight away, or after a rest.
        for roles in [&[3, 0][..], &[3, 1], &[3, 2, 0], &[3, 2, 1]] {
            let mut course = ready(|all| all.lifts[PRESS].learning_sessions = own);
            for role in roles {
                course.step(&Step::Role { lift: 2, role: *role });
            }
            let press = course.stands(PRESS);
            assert_eq!((press.status, press.learned), (LEARNING, (0, whole)), "{own:?} {roles:?}");
            assert!(press.sittings.is_empty());
        }
    }
}

#[test]
fn a_long_break_is_learned_in_half_of_the_sessions_and_at_least_two() {
    for (own, half) in [(Some(8), 4), (None, 3)] {
        let mut course = ready(|all| all.lifts[PRESS].learning_sessions = own);
        // From 84 days on every criterion is looked at anew, after two passes on the way back.
        course.day = course.day.plus(90).unwrap();
        for _ in 0..2 {
            assert_eq!(decision(&course, PRESS).status.as_str(), RETURNING);
            press_week(&mut course);
        }
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.learned), (LEARNING, (0, half)), "{own:?}");
    }
}

#[test]
fn a_lift_given_up_on_its_way_back_has_no_load_to_go_back_to() {
    let mut course = ready(|_| {});
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    course.day = course.day.plus(12).unwrap();
    // A break of twelve days: one step back, and one pass away from the load before it.
    course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
    let press = course.stands(PRESS);
    assert_eq!((press.status, press.grant.load()), (RETURNING, kg(36.0)));
    for role in [3, 0] {
        course.step(&Step::Role { lift: 2, role });
    }
    press_week(&mut course);
    press_week(&mut course);
    for role in [2, 0] {
        course.step(&Step::Role { lift: 2, role });
    }
    press_week(&mut course);
    let press = course.stands(PRESS);
    assert_eq!((press.cap(), press.grant.load()), (None, kg(36.0)));
}

#[test]
fn a_rest_on_the_way_back_makes_no_short_break_of_it() {
    let after = |course: &Course, rest: &Step| {
        let mut course = course.clone();
        course.step(rest);
        course.day = course.day.plus(12).unwrap();
        course.day_report(bismar::condition::DayClass::Within, true);
        course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
        let press = course.stands(PRESS);
        (press.status, press.grant.load())
    };
    let mut long_break = ready(|_| {});
    long_break.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    let mut stop = long_break.clone();
    long_break.day = long_break.day.plus(50).unwrap();
    long_break.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(long_break.stands(PRESS).grant.load(), kg(32.0), "seven weeks leave four fifths");
    stop.step(&Step::Symptom);
    stop.clear(true);
    sign_off(&mut stop, SignOffScope::Everything);
    assert_eq!(stop.stands(PRESS).grant.load(), kg(36.0));
    // Twelve days more: a step below that, and no way straight back to 40 kg.
    for rest in [Step::Role { lift: 2, role: 2 }, Step::Layoff(1), Step::Wait(0)] {
        let status = if matches!(rest, Step::Role { .. }) { RESTING } else { RETURNING };
        assert_eq!(after(&long_break, &rest), (status, kg(28.5)), "{rest:?}");
        assert_eq!(after(&stop, &rest), (status, kg(32.0)), "{rest:?}");
    }
}

#[test]
fn no_way_back_skips_the_sessions_of_calibration() {
    let fresh = || {
        let mut all = parameters(1);
        all.lifts[PRESS].learning_sessions = Some(8);
        let mut course = Course::new(all);
        press_week(&mut course);
        course
    };
    let mut short = fresh();
    short.day = short.day.plus(6).unwrap();
    press_week(&mut short);
    let mut long = fresh();
    long.day = long.day.plus(30).unwrap();
    let mut stop = fresh();
    stop.step(&Step::Symptom);
    stop.clear(true);
    sign_off(&mut stop, SignOffScope::Everything);
    for course in [&mut long, &mut stop] {
        press_week(course);
        assert_eq!(course.stands(PRESS).status, RETURNING);
        press_week(course);
    }
    for course in [&short, &long, &stop] {
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.learned, press.cap()), (LEARNING, (1, 8), None));
    }
}
