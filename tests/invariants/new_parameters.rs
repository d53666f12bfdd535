//! A new set of parameters: what a lift keeps of what it has shown, and what it shows anew.

use super::course::*;
use super::hand::*;
use super::moves::crate_cases;
use bismar::gate::{Criterion, Gate, PassRun, Requirement};
use bismar::loading::{Bar, Implement};
use bismar::progression::State;
use bismar::quantity::{Length, Mass};
use bismar::record::*;
use proptest::prelude::*;

fn change(course: &mut Course, set: impl FnOnce(&mut Parameters)) {
    let mut all = course.set().clone();
    set(&mut all);
    course.add(EventKind::ParametersChanged(Box::new(all)));
}

fn longer_run(all: &mut Parameters) {
    let run = Requirement::PassRun(PassRun::new(9, 10, 3).unwrap());
    all.lifts[PRESS].gate = Gate::new(run).unwrap();
}

fn one_more_criterion(all: &mut Parameters) {
    all.lifts[PRESS].criteria.push(Criterion::ordinary("lockout").unwrap());
}

fn stricter_pass(all: &mut Parameters) {
    all.lifts[PRESS].pass.clean_first_reps += 1;
}

fn another_bar(all: &mut Parameters) {
    let bar = Bar::new(name("other bar"), kg(20.0), Mass::ZERO).unwrap();
    all.implements.push(Implement::Bar(bar));
    all.lifts[PRESS].implement = name("other bar");
}

#[test]
fn another_test_or_implement_starts_the_evidence_anew() {
    for set in [longer_run, one_more_criterion, stricter_pass, another_bar] {
        let mut course = ready(|_| {});
        change(&mut course, set);
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.sittings.len()), (HOLDING, 0));
        assert_eq!(press.grant.load(), kg(40.0));
    }
}

#[test]
fn other_numbers_leave_the_evidence() {
    let mut course = ready(|_| {});
    change(&mut course, |all| {
        all.policy.offer_days = 30;
        all.lifts[PRESS].step_cap = Some(0.05);
    });
    let press = course.stands(PRESS);
    assert_eq!((press.status, press.sittings.len()), (READY, 2));
}

#[test]
fn a_lift_that_is_being_learned_goes_on_being_learned() {
    for set in [longer_run, another_bar] {
        let mut course = Course::new(parameters(1));
        press_week(&mut course);
        change(&mut course, set);
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.learned.0, press.sittings.len()), (LEARNING, 1, 0));
    }
}

fn other_rungs(all: &mut Parameters) {
    for rung in &mut all.lifts[PRESS].rungs {
        let other = |old: &bismar::quantity::Name| name(&format!("another {}", old.as_str()));
        rung.harder_than = rung.harder_than.iter().map(other).collect();
        rung.id = other(&rung.id);
    }
}

fn other_ranges(all: &mut Parameters) {
    all.lifts[PRESS].ranges = vec![Length::from_mm(300.0).unwrap()];
}

fn other_tempos(all: &mut Parameters) {
    all.lifts[PRESS].tempos = vec![Tempo::new(3, 0, 1)];
}

#[test]
fn a_place_that_is_gone_is_learned_anew_and_no_heavier() {
    for set in [other_rungs, other_ranges, other_tempos] {
        // Stands below its start of 40 kg, then above it.
        for (stands, starts, after) in [(30.0, 40.0, 30.0), (40.0, 35.0, 35.0)] {
            let mut course = ready(|_| {});
            let eased = Override::new(name("press"), kg(stands), name("coach"));
            course.add(EventKind::CoachOverride(eased));
            change(&mut course, |all| {
                set(all);
                all.lifts[PRESS].start.work.load = kg(starts);
            });
            let press = course.stands(PRESS);
            assert_eq!((press.status, press.learned), (LEARNING, (0, 2)));
            assert_eq!((press.grant.load(), press.sittings.len()), (kg(after), 0));
        }
    }
}

#[test]
fn a_place_that_is_gone_starts_no_lift_that_is_stopped() {
    let mut course = ready(|_| {});
    course.step(&Step::Symptom);
    change(&mut course, other_rungs);
    assert_eq!(course.stands(PRESS).status, STOPPED);
}

#[test]
fn a_place_that_is_gone_ends_no_rest() {
    let role = Step::Role { lift: 2, role: 2 };
    for (rest, after) in [(role, (RESTING, (0, 2))), (Step::Layoff(1), (LEARNING, (1, 2)))] {
        let mut course = ready(|_| {});
        course.step(&rest);
        change(&mut course, other_rungs);
        assert_eq!(course.stands(PRESS).status, RESTING, "{rest:?}");
        // The first session ends a break, and the lift is learned anew; the coach's word that it rests stands.
        course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
        let press = course.stands(PRESS);
        assert_eq!((press.status, press.learned), after, "{rest:?}");
    }
}

#[test]
fn a_new_lift_under_a_stop_is_stopped() {
    let stopped = |step: Step| {
        let mut course = Course::play(&[step]);
        change(&mut course, |all| {
            let mut fourth = all.lifts[STRICT].clone();
            fourth.id = name("fourth");
            all.lifts.push(fourth);
        });
        course.stands(3).status
    };
    assert_eq!(stopped(Step::Symptom), STOPPED);
    assert_eq!(stopped(ache(HIP, 7)), STOPPED);
    assert_eq!(stopped(ache(SHOULDER, 7)), LEARNING);
}

#[test]
fn a_place_that_is_gone_leaves_no_older_load_to_go_back_to() {
    let mut course = ready(|_| {});
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    course.day = course.day.plus(12).unwrap();
    course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
    assert_eq!(course.stands(PRESS).status, RETURNING);
    change(&mut course, other_rungs);
    course.day = course.day.plus(1).unwrap();
    press_week(&mut course);
    press_week(&mut course);
    let press = course.stands(PRESS);
    assert_eq!((press.grant.load(), press.cap()), (kg(36.0), None));
    // Another short break: back to where it stood before this one, not to the load before the first.
    course.day = course.day.plus(6).unwrap();
    assert_eq!(course.limit(PRESS), kg(32.0));
    course.day_report(bismar::condition::DayClass::Within, true);
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(course.limit(PRESS), kg(36.0));
}

/// What the coach set for the lift with that id, in force or set aside.
fn set_of<'a>(state: &'a State, id: &bismar::quantity::Name) -> Option<&'a LiftParameters> {
    let mut known = state.lifts().chain(state.set_aside());
    known.find(|lift| lift.id() == id).map(|lift| lift.parameters())
}

/// Whether two implements of these courses are of one kind: a number on one says something about the other.
fn one_kind(one: &str, other: &str) -> bool {
    let bar = |id: &str| ["bar", "lighter bar"].contains(&id);
    one == other || (bar(one) && bar(other))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    /// Whatever is changed, no lift stands at more load or on a harder rung than before, while its load says something.
    #[test]
    fn no_new_parameters_grant_more(drawn in any_course()) {
        let course = Course::of(&drawn);
        for at in 1..course.states.len() {
            if !matches!(course.log.events[at].kind, EventKind::ParametersChanged(_)) { continue; }
            let (before, after) = (&course.states[at - 1], &course.states[at]);
            for lift in after.lifts() {
                let (id, set) = (lift.id(), lift.parameters());
                let Some((was, old)) = stands_of(before, id).zip(set_of(before, id)) else { continue };
                let rung = &old.rungs[usize::from(was.grant.place.rung)].id;
                let there = set.rungs.iter().position(|other| other.id == *rung);
                let harder = there.is_some_and(|there| set.is_harder(lift.grant().place.rung, there as u8));
                prop_assert!(!harder, "{id} at {at}");
                if one_kind(old.implement.as_str(), set.implement.as_str()) {
                    prop_assert!(lift.grant().load() <= was.grant.load(), "{id} at {at}: {:?} {:?}", was.grant, lift.grant());
                }
            }
        }
    }

    /// A stop goes on halting whom it concerns, and where no lift loads its region every lift; what it began with stays said.
    #[test]
    fn no_stop_is_lost_whatever_is_declared(drawn in any_course()) {
        let course = Course::of(&drawn);
        for (at, state) in course.states.iter().enumerate() {
            let stops = |state: &State| -> Vec<_> {
                state.regions().iter().filter(|region| region.stop.is_some()).map(|region| region.id.clone()).collect()
            };
            if at > 0 && matches!(course.log.events[at].kind, EventKind::ParametersChanged(_)) {
                let before = &course.states[at - 1];
                prop_assert_eq!(stops(before), stops(state));
                prop_assert_eq!(before.stop(), state.stop());
                prop_assert_eq!(before.asks(), state.asks());
            }
            for region in stops(state) {
                let loaded = state.lifts().any(|lift| lift.parameters().regions.contains(&region));
                for lift in state.lifts() {
                    let own = lift.parameters().regions.contains(&region) || lift.now().former.contains(&region);
                    if own || !loaded { prop_assert!(lift.status().is_stopped(), "{} by {}", lift.id(), region); }
                }
            }
            if state.stop().is_some() { prop_assert!(state.lifts().all(|lift| lift.status().is_stopped())); }
        }
    }
}
