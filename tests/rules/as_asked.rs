//! Rules 4 and 9: what is done is held against what the day asked for. More than that earns nothing, and less in reserve counts.

use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::quantity::{Pain, Rir};
use bismar::record::*;

use crate::world::*;

fn at(load: f64, left: u8) -> LiftSession {
    let mut sets = World::sets(kg(load), 2, true);
    sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(Rir::whole(left))));
    LiftSession::as_granted(name("squat"), sets)
}

fn next_day(world: &mut World) {
    world.morning();
    world.wait(2).day_report(DayClass::Within);
}

/// A step of the squat is earned; the strict press beside it hurt three days ago, so that today asks for a step down.
fn beside_a_sore_press() -> World {
    let mut all = parameters();
    all.pairs = vec![Pair::new(name("press"), name("squat"))];
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    let press = LiftSession::as_granted(name("press"), World::sets(kg(40.0), 2, true));
    let sore = PainAnswer::plain(name("shoulder"), Pain::new(3).unwrap());
    world.train_all(vec![press], Some(vec![sore]));
    next_day(&mut world);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::EaseOff, Some(kg(54.0))));
    world
}

#[test]
fn rule_04_more_than_an_eased_day_asks_for_earns_no_more_than_what_it_asks_for() {
    let done = |load: f64| {
        let mut world = beside_a_sore_press();
        world.train_with(at(load, 3));
        next_day(&mut world);
        world
    };
    let (as_asked, more) = (done(54.0), done(60.0));
    assert!(!as_asked.is_offered("squat"));
    assert!(!more.is_offered("squat"), "the easing was passed over, and a step is on offer");
    assert!(blocked_by(&more.against("squat"), "not_at_grant"), "{:?}", more.against("squat"));
    // One passing day as asked leads on from both.
    for mut world in [as_asked, more] {
        world.train_with(at(60.0, 3));
        next_day(&mut world);
        assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    }
}

#[test]
fn rule_04_the_whole_load_on_a_day_on_which_its_own_region_hurts_is_no_pass() {
    let mut world = World::on_offer("squat");
    world.wait(1);
    let knee = PainAnswer::plain(name("knee"), Pain::new(3).unwrap());
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(vec![knee.clone()])));
    assert_eq!(world.today("squat").load, Some(kg(54.0)));
    world.train_all(vec![at(60.0, 3)], Some(vec![knee]));
    let now = world.state().lift_state(&name("squat")).unwrap().now().clone();
    assert_eq!(now.sittings.last().unwrap().outcome, bismar::gate::Outcome::NotScored);
    assert!(says(&world.today("squat"), "not_at_grant"), "{:?}", world.today("squat").reasons);
}

/// After two sessions that left so many of what the day asked for, and said nothing of what that was.
fn after_two(world: &World, left: u8) -> Vec<bismar::reason::Reason> {
    let mut world = world.clone();
    for _ in 0..2 {
        world.train_with(at(60.0, left));
        next_day(&mut world);
    }
    world.against("squat")
}

#[test]
fn rule_09_what_is_printed_is_what_is_held_where_a_session_says_nothing_of_it() {
    let world = World::on_offer("squat");
    assert_eq!(world.today("squat").reserve, Rir::whole(3));
    assert!(!blocked_by(&after_two(&world, 3), "reserve_short"));
    assert!(blocked_by(&after_two(&world, 2), "reserve_short"), "{:?}", after_two(&world, 2));
}

#[test]
fn rule_09_what_a_clearance_or_being_alone_asks_to_leave_is_held_too() {
    let effort = ClearanceLimits::default().with_effort(bismar::quantity::Rpe::new(6.0).unwrap());
    let mut world = World::on_offer("squat");
    let limited = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"));
    let expires = world.day.plus(300).unwrap();
    world.add(EventKind::ClearanceRecorded(limited.with_expires(expires).with_limits(vec![effort])));
    assert_eq!(world.today("squat").reserve, Rir::whole(4));
    assert!(blocked_by(&after_two(&world, 3), "reserve_short"), "{:?}", after_two(&world, 3));
    assert!(!blocked_by(&after_two(&world, 4), "reserve_short"));
}
