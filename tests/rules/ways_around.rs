//! Ways around a rule: a role that hides a break, kit changed so that no two fails meet, a rung changed on the way back, a plan that
//! asks for less in reserve than a clearance, a load allowed while nobody is cleared.

use bismar::condition::DayClass;
use bismar::gate::Outcome;
use bismar::progression::Status;
use bismar::quantity::{Mass, Rir, Rpe};
use bismar::record::*;

use crate::world::{World, blocked_by, kg, lift, mm, name, parameters, says};

/// Squat and lunge of one region, so that either keeps it loaded.
fn two_of_the_knee() -> World {
    let mut all = parameters();
    all.lifts.push(lift("lunge", "knee", 30.0));
    let mut world = World::new(all);
    (0..2).for_each(|_| world.passing_day("squat"));
    world
}

fn role(world: &mut World, role: Role) {
    world.add(EventKind::RoleSet(RoleSet::new(name("squat"), role)));
}

#[test]
fn a_lift_that_was_rested_or_given_up_has_its_own_break_behind_it() {
    for (unused, left) in [(Role::Rest, 20.0), (Role::Retire, 20.0)] {
        let mut world = two_of_the_knee();
        role(&mut world, unused);
        (0..70).for_each(|_| world.passing_day("lunge"));
        role(&mut world, Role::Train);
        world.day_report(DayClass::Within);
        let today = world.today("squat");
        assert_eq!(today.load, Some(kg(left)), "{unused:?}: 210 days");
        assert!(says(&today, "layoff") && matches!(today.status, Status::Returning { .. }), "{today:?}");
    }
    // A rest of a week is none, and neither is a change between two uses.
    for roles in [[Role::Rest, Role::Train], [Role::Maintain, Role::Train]] {
        let mut world = two_of_the_knee();
        role(&mut world, roles[0]);
        world.passing_day("lunge");
        role(&mut world, roles[1]);
        world.day_report(DayClass::Within);
        assert_eq!(world.today("squat").load, Some(kg(60.0)));
    }
}

fn with_kit(world: &World, kit: &[&str], clean: bool) -> LiftSession {
    let today = world.today("squat");
    let kit = kit.iter().map(|one| name(one)).collect();
    let sets = World::sets(today.load.unwrap(), today.sets, clean);
    LiftSession::as_granted(name("squat"), sets).with_setup(Setup::default().with_kit(Some(kit)))
}

#[test]
fn two_fails_in_a_row_step_back_whatever_is_worn() {
    for kits in [[["belt"].as_slice(), &[]], [&["belt"], &["belt"]]] {
        let mut world = two_of_the_knee();
        for kit in kits {
            world.day_report(DayClass::Within);
            world.train_with(with_kit(&world, kit, false));
            world.morning();
            world.wait(2);
        }
        assert!(matches!(world.today("squat").status, Status::SteppingBack { .. }), "{kits:?}");
    }
    // Nor does a bar between the two hide the first.
    let mut world = two_of_the_knee();
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        world.train("squat", false);
        world.morning();
        world.wait(2);
        world.add(EventKind::BarOrDiscsChanged(
            BarChanged::new(name("other discs")).with_lift(Some(name("squat"))),
        ));
    }
    assert!(matches!(world.today("squat").status, Status::SteppingBack { .. }));
}

#[test]
fn the_passes_of_a_way_back_count_anew_with_another_setup() {
    let passes = |kits: [&[&str]; 2]| {
        let mut world = two_of_the_knee();
        world.wait(30);
        for kit in kits {
            world.day_report(DayClass::Within);
            world.train_with(with_kit(&world, kit, true));
            world.morning();
            world.wait(2);
        }
        matches!(world.today("squat").status, Status::Returning { .. })
    };
    assert!(!passes([&["belt"], &["belt"]]));
    assert!(passes([&["belt"], &[]]), "one pass with a belt and one without are not two alike");
}

#[test]
fn a_rung_taken_on_the_way_back_is_learned_like_any_other() {
    let mut all = parameters();
    // A rung beside the others: neither easier nor harder than any.
    all.lifts[0].rungs.push(Rung::new(name("beside"), vec![]));
    all.lifts[0].learning_sessions = Some(6);
    let mut world = World::new(all);
    (0..6).for_each(|_| world.passing_day("squat"));
    world.wait(30).passing_day("squat");
    let status = world.today("squat").status;
    assert!(matches!(status, Status::Returning { passes: 1, .. }), "{status:?}");
    let granted = world.today("squat").granted;
    let to = granted.with_place(Place::at_rung(2));
    world.add(EventKind::VariantChanged(Move::new(name("squat"), to, name("coach"))));
    let status = world.today("squat").status;
    assert!(matches!(status, Status::Returning { passes: 0, .. }), "{status:?}");
    for _ in 0..2 {
        world.passing_day("squat");
    }
    let today = world.today("squat");
    assert_eq!(today.status, Status::Learning, "the way back is over, and the rung is not learned");
    (0..3).for_each(|_| world.passing_day("squat"));
    assert_ne!(world.today("squat").status, Status::Learning);
}

/// A plan may ask for less in reserve than usual, never for less than a clearance allows or than somebody alone needs.
#[test]
fn a_reserve_that_was_asked_for_is_no_lower_than_what_a_clearance_leaves() {
    let done = |asked: Option<u8>, left: u8| {
        let mut world = World::new(parameters());
        let limit = ClearanceLimits::default().with_region(name("knee")).with_effort(Rpe::new(6.0).unwrap());
        let given = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"));
        world.add(EventKind::ClearanceRecorded(given.with_limits(vec![limit])));
        for _ in 0..5 {
            world.day_report(DayClass::Within);
            let today = world.today("squat");
            let sets = World::sets(today.load.unwrap(), today.sets, true);
            let sets = sets.into_iter().map(|set| set.with_effort(Effort::Rir(Rir::whole(left)))).collect();
            let lift = LiftSession::as_granted(name("squat"), sets);
            world.train_with(lift.with_reserve_asked(asked.map(Rir::whole)));
            world.morning();
            world.wait(2);
        }
        world.day_report(DayClass::Within);
        world.against("squat")
    };
    assert!(blocked_by(&done(Some(1), 1), "reserve_short"), "{:?}", done(Some(1), 1));
    assert!(blocked_by(&done(None, 1), "reserve_short"));
    assert!(!blocked_by(&done(Some(1), 4), "reserve_short"));
}

/// The range in a set's marks is as good a measure as the one beside the lift.
#[test]
fn less_range_is_less_range_wherever_it_was_written() {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(200.0), mm(400.0)];
    all.lifts[0].start.place.range = 1;
    let mut world = World::new(all);
    world.passing_day("squat");
    let outcome = |world: &World, range: Option<f64>| {
        let mut world = world.clone();
        world.day_report(DayClass::Within);
        let today = world.today("squat");
        let mut sets = World::sets(today.load.unwrap(), today.sets, true);
        sets[1].marks.as_mut().unwrap().range_reached = range.map(mm);
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        let state = world.state();
        state.lifts().next().unwrap().now().sittings.last().unwrap().outcome
    };
    assert_eq!(outcome(&world, None), Outcome::Pass);
    assert_eq!(outcome(&world, Some(400.0)), Outcome::Pass);
    assert_eq!(outcome(&world, Some(250.0)), Outcome::NotScored);
}

/// Without a clearance, or with one that ran out, nobody steps up, and nobody is allowed more by hand.
#[test]
fn rule_01_an_override_upward_waits_while_nobody_is_cleared() {
    let printed = |days: i32| -> (Option<Mass>, bool) {
        let mut world = World::new(parameters());
        world.passing_day("squat");
        world.add(EventKind::ClearanceRecorded(
            Clearance::new(ClearanceStatus::Cleared, name("clinic"))
                .with_expires(world.day.plus(days).unwrap()),
        ));
        world.wait(2).override_to("squat", 70.0, 10);
        world.day_report(DayClass::Within);
        let today = world.today("squat");
        (today.load, says(&today, "override_suspended"))
    };
    assert_eq!(printed(30), (Some(kg(70.0)), false));
    assert_eq!(printed(1), (Some(kg(60.0)), true), "it ran out yesterday");
}

/// A break noted while a role rests the lift, or a stop that is lifted meanwhile, begins its rest no later.
#[test]
fn a_rest_by_a_role_is_as_long_as_it_is_whatever_comes_between() {
    let planned = |world: &mut World| {
        let over = world.day.plus(2).unwrap();
        let layoff = Layoff::new(world.day, LayoffReason::Planned).with_to(over);
        world.add(EventKind::LayoffNoted(layoff));
        world.wait(3);
    };
    let stopped = |world: &mut World| {
        world.pain("knee", 8);
        world.clear();
        world.sign_off(SignOffScope::Region(name("knee")));
    };
    let between: [&dyn Fn(&mut World); 2] = [&planned, &stopped];
    for between in between {
        let mut world = two_of_the_knee();
        role(&mut world, Role::Rest);
        (0..70).for_each(|_| world.passing_day("lunge"));
        between(&mut world);
        role(&mut world, Role::Train);
        world.day_report(DayClass::Within);
        let load = world.today("squat").load;
        assert!(load <= Some(kg(20.0)), "{load:?}");
    }
}

/// What is printed is what is held, whatever floor a policy sets.
#[test]
fn a_floor_of_reserve_is_printed_where_no_plan_names_one() {
    let mut all = parameters();
    all.policy = all.policy.with_reserve_floor(Rir::whole(4));
    let mut world = World::new(all);
    world.day_report(DayClass::Within);
    assert_eq!(world.today("squat").reserve, Rir::whole(4));
    (0..5).for_each(|_| world.passing_day("squat"));
    assert!(!blocked_by(&world.against("squat"), "reserve_short"));
}

/// An override that had run out was not ended by an illness that began later.
#[test]
fn what_ran_out_was_ended_by_time() {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    world.override_to("squat", 70.0, 4);
    let from = world.day.plus(9).unwrap();
    let ill = Layoff::new(from, LayoffReason::Ill).with_to(from.plus(1).unwrap());
    world.add(EventKind::LayoffNoted(ill));
    world.wait(12).day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(!says(&today, "override_ended"), "{:?}", today.reasons);
}
