//! Lifts that a machine helps with: less help is the way up.

use super::course::*;
use super::hand::{helped, sentence};
use super::moves::crate_cases;
use bismar::error::Code;
use bismar::loading::{Implement, MachineStack};
use bismar::progression::MoveOutlook;
use bismar::quantity::Mass;
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

const BODY_KG: f64 = 80.0;

fn weighed() -> Course {
    let mut course = Course::new(helped(parameters(1)));
    course.add(EventKind::BodyMassRecorded(kg(BODY_KG)));
    course
}

/// Grams of help.
fn help(course: &Course) -> i64 {
    -course.stands(PRESS).grant.load().nanograms() / 1_000_000_000
}

#[test]
fn less_help_is_the_way_up() {
    let mut course = weighed();
    let mut seen = vec![help(&course)];
    for _ in 0..30 {
        course.clean_week();
        if seen.last() != Some(&help(&course)) {
            seen.push(help(&course));
        }
    }
    // Once in eight weeks, since 5 kg of the 60 to 70 that are moved are most of a tenth; never above none.
    assert_eq!(seen[..3], [20_000, 15_000, 10_000]);
}

#[test]
fn without_a_body_mass_no_step_is_measured() {
    let mut course = Course::new(helped(parameters(1)));
    for _ in 0..10 {
        course.clean_week();
    }
    assert_eq!(help(&course), 20_000);
    let decision = &course.state().decide(course.day).unwrap()[PRESS];
    let MoveOutlook::Blocked { by, .. } = &decision.outlook else { panic!("a step nobody can measure") };
    assert!(by.contains(&Reason::BodyMassMissing));
    assert!(sentence(&Reason::BodyMassMissing).is_none_or(|text| text.contains("body mass")));
}

#[test]
fn two_fails_give_more_help() {
    let mut course = weighed();
    for _ in 0..3 {
        course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
        course.day = course.day.plus(3).unwrap();
    }
    assert!(help(&course) >= 25_000 && course.stands(PRESS).status == STEPPING_BACK);
}

#[test]
fn a_step_past_the_most_help_gives_as_much_as_the_cap_allows() {
    // 23 of 80 kg are moved with 57 kg of help; 15 % of them are 3.45, so that the most help, 60 kg, is within the cap.
    for (step, help) in [(1.0, -58.0), (2.0, -59.0), (3.0, -60.0), (4.0, -60.0), (40.0, -60.0)] {
        let mut all = helped(parameters(1));
        let stack =
            MachineStack::new(name("helper"), Mass::ZERO, vec![kg(1.0); 60], Vec::new(), 1.0).unwrap();
        *all.implements.last_mut().unwrap() = Implement::Assistance(stack);
        let press = &mut all.lifts[PRESS];
        (press.start.work.load, press.step) = (kg(-57.0), Some(StepPolicy::Fixed(kg(step))));
        let mut course = Course::new(all);
        course.add(EventKind::BodyMassRecorded(kg(BODY_KG)));
        for _ in 0..2 {
            course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
            course.day = course.day.plus(1).unwrap();
        }
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.grant.load()), (STEPPING_BACK, kg(help)), "{step}");
    }
}

#[test]
fn a_break_gives_more_help_by_what_is_moved() {
    let mut course = weighed();
    course.clean_week();
    course.step(&Step::Wait(25));
    // From four weeks on a tenth of the 60 kg is taken off: 26 kg of help, and the stack makes 30.
    let decision = &course.state().decide(course.day).unwrap()[PRESS];
    assert_eq!((decision.status.as_str(), decision.limit), (RETURNING, kg(-30.0)));
    let back = Reason::SteppedBack { from: kg(-20.0) };
    assert!(sentence(&back).is_none_or(|text| text.contains("20 kg of help")));
}

#[test]
fn the_sign_is_never_guessed() {
    let add = |at: usize, load: f64| {
        let course = weighed();
        let mut lift = course.lift(at, Quality::Clean, Weight::AtLimit);
        lift.sets.iter_mut().for_each(|set| set.load = kg(load));
        let session = Session::new(vec![lift]);
        let kind = EventKind::SessionRecorded(session);
        let event = Event::new(course.next_number(), course.day, kind);
        course.state().clone().apply(&event).err().map(|error| error.code())
    };
    assert_eq!(add(PRESS, -20.0), None);
    assert_eq!(add(PRESS, 20.0), Some(Code::OutOfRange));
    assert_eq!(add(STRICT, -20.0), Some(Code::NegativeLoad));
    let mut wrong = helped(parameters(1));
    wrong.lifts[PRESS].start.work.load = kg(20.0);
    assert_eq!(wrong.check().unwrap_err().code(), Code::OutOfRange);
    wrong.lifts[PRESS].start.work.load = kg(-20.0);
    wrong.lifts[STRICT].start.work.load = kg(-20.0);
    assert_eq!(wrong.check().unwrap_err().code(), Code::NegativeLoad);
}

#[test]
fn help_in_place_of_a_bar_starts_at_its_own_start() {
    let mut course = Course::play(&[Step::CleanWeek, Step::CleanWeek]);
    course.add(EventKind::ParametersChanged(Box::new(helped(parameters(1)))));
    assert_eq!(course.stands(PRESS).grant.load(), kg(-20.0));
    course.add(EventKind::ParametersChanged(Box::new(parameters(1))));
    assert_eq!(course.stands(PRESS).grant.load(), kg(40.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    /// No move takes away more help than a tenth of what was moved, and nothing loads a helped lift.
    #[test]
    fn no_move_is_larger_than_its_cap(steps in any_steps()) {
        let mut course = weighed();
        let helps = |step: &&Step| !matches!(step, Step::Parameters(_) | Step::Between { .. });
        steps.iter().filter(helps).for_each(|step| course.step(step));
        for (at, lift, from, to) in course.upward() {
            if lift == PRESS && to.load() > from.load() {
                let moved = course.states[at - 1].body_mass().unwrap().1.kg() + from.load().kg();
                prop_assert!(to.load().kg() - from.load().kg() <= 0.1 * moved + 1e-9, "{from:?} {to:?}");
            }
        }
        prop_assert!(course.states.iter().all(|state| stands(state, PRESS).grant.load() <= Mass::ZERO));
    }
}
