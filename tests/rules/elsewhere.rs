//! What is done elsewhere than where a lift stands says nothing of standing there.

use bismar::condition::DayClass;
use bismar::gate::{Gate, Mark, PassRun, Rater, Requirement, SetMarks};
use bismar::quantity::{Reps, Rir};
use bismar::record::*;

use crate::world::{World, blocked_by, kg, lift, name, parameters};

fn on_rung(load: f64, rung: u8) -> LiftSession {
    let sets = World::sets(kg(load), 2, true);
    LiftSession::as_granted(name("squat"), sets).with_place(Place::at_rung(rung))
}

fn day(world: &mut World, done: LiftSession) {
    world.day_report(DayClass::Within);
    world.train_with(done);
    world.morning();
    world.wait(2);
}

fn here(world: &World) -> (u16, u8) {
    let state = world.state();
    let now = state.lift_state(&name("squat")).unwrap().now();
    (now.here.0, now.calibration.done)
}

#[test]
fn sessions_on_another_rung_are_none_at_this_place() {
    let mut all = parameters();
    let run = Requirement::PassRun(PassRun::new(9, 10, 2).unwrap());
    let dwell = Requirement::DwellSessions(6);
    all.lifts[0].gate = Gate::new(Requirement::All(vec![run, dwell])).unwrap();
    let mut world = World::new(all);
    (0..4).for_each(|_| day(&mut world, on_rung(60.0, 0)));
    assert_eq!(here(&world), (0, 0), "no day at this place, and none of its calibration");
    (0..3).for_each(|_| day(&mut world, on_rung(60.0, 1)));
    assert_eq!(here(&world).0, 3);
    world.day_report(DayClass::Within);
    assert!(!world.is_offered("squat"), "three of six");
    assert!(blocked_by(&world.against("squat"), "gate_not_open"));
    // Nor is a lighter load the work at this place and load.
    day(&mut world, on_rung(40.0, 1));
    assert_eq!(here(&world).0, 3);
    (0..3).for_each(|_| day(&mut world, on_rung(60.0, 1)));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
}

/// A day counts once, whatever its parts were done at.
#[test]
fn a_day_in_two_parts_counts_once_at_most() {
    let parted = |first: u8, then: u8, fails: bool| {
        let mut world = World::new(parameters());
        world.day_report(DayClass::Within);
        world.train_with(on_rung(60.0, first));
        world.pain("knee", 1);
        let sets = World::sets(kg(60.0), 2, !fails);
        world.train_with(LiftSession::as_granted(name("squat"), sets).with_place(Place::at_rung(then)));
        here(&world).0
    };
    assert_eq!((parted(1, 1, false), parted(1, 1, true)), (1, 1));
    assert_eq!((parted(1, 0, true), parted(0, 0, true), parted(0, 1, true)), (1, 0, 1));
}

#[test]
fn a_look_after_a_step_is_not_ended_elsewhere() {
    let mut all = parameters();
    all.lifts[0] =
        lift("squat", "knee", 60.0).with_criteria(vec![bismar::gate::Criterion::ordinary("depth").unwrap()]);
    let sets = |load: f64, mark: Mark| {
        let marks = SetMarks::scored(5, 5, Rater::Coach).with("depth", mark).unwrap();
        let effort = Some(Effort::Rir(Rir::whole(3)));
        let set = WorkSet::done(kg(load), Reps::whole(5).unwrap()).with_effort(effort).with_marks(marks);
        vec![set.clone(), set]
    };
    let done = |load: f64, rung: u8, mark: Mark| {
        LiftSession::as_granted(name("squat"), sets(load, mark)).with_place(Place::at_rung(rung))
    };
    let mut world = World::new(all);
    day(&mut world, done(60.0, 1, Mark::Met));
    (0..3).for_each(|_| day(&mut world, done(60.0, 1, Mark::Borderline)));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    let watched = |world: &World| world.state().lift_state(&name("squat")).unwrap().now().watched.is_some();
    assert!(watched(&world));
    let load = world.state().lift_state(&name("squat")).unwrap().now().grant.load().kg();
    world.wait(1);
    day(&mut world, done(load, 0, Mark::Met));
    assert!(watched(&world), "on the easier rung nobody looked");
    day(&mut world, done(load - 10.0, 1, Mark::Met));
    assert!(watched(&world), "nor at a lighter load");
    day(&mut world, done(load, 1, Mark::Met));
    assert!(!watched(&world), "here it held");
}

/// What the forgiving lift of a pair had shown where it stood caps the strict one no longer when a coach moves it elsewhere.
#[test]
fn a_proof_of_the_forgiving_lift_does_not_outlive_its_place() {
    let mut all = parameters();
    all.lifts[1].rungs.push(Rung::new(name("beside"), Vec::new()));
    all.pairs = vec![Pair::new(name("squat"), name("press"))];
    let mut world = World::new(all);
    (0..2).for_each(|_| world.passing_day("press"));
    let proven = |world: &World| world.state().lift_state(&name("press")).unwrap().now().proven.is_some();
    assert!(proven(&world));
    world.day_report(DayClass::Within);
    assert!(!blocked_by(&world.against("squat"), "pair_proof_missing"));
    // Less work at the same place leaves it.
    let to = |rung: u8, load: f64| Grant::new(Work::new(2, 5, kg(load))).with_place(Place::at_rung(rung));
    let mut lighter = world.clone();
    lighter.add(EventKind::VariantChanged(Move::new(name("press"), to(1, 35.0), name("coach"))));
    assert!(proven(&lighter));
    for rung in [2, 0] {
        let mut moved = world.clone();
        moved.add(EventKind::VariantChanged(Move::new(name("press"), to(rung, 40.0), name("coach"))));
        assert!(!proven(&moved), "rung {rung}");
        assert!(blocked_by(&moved.against("squat"), "pair_proof_missing"));
    }
}
