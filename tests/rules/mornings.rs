//! The morning after, by whoever tells it: asked, or named unasked because it hurts.

use super::world::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::Outcome;
use bismar::quantity::Pain;
use bismar::record::*;

/// What the squat's last session came to.
fn outcome(world: &World) -> Outcome {
    let state = world.state();
    state.lift_state(&name("squat")).unwrap().now().sittings.last().unwrap().outcome
}

/// A squat that passed before, and passed today.
fn trained_today() -> World {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    world.day_report(DayClass::Within);
    world.train("squat", true);
    world
}

#[test]
fn pain_told_unasked_the_next_morning_takes_the_pass_back() {
    let told = |as_report: bool, score: u8| {
        let mut world = trained_today();
        world.wait(1);
        let answer = PainAnswer::plain(name("knee"), Pain::new(score).unwrap());
        let asked = DayReport::all_well(DayClass::Within).with_pain(Some(vec![answer.clone()]));
        world.add(if as_report { EventKind::PainReport(answer) } else { EventKind::DayReport(asked) });
        outcome(&world)
    };
    assert_eq!(told(true, 2), Outcome::Fail, "told unasked");
    assert_eq!(told(false, 2), Outcome::Fail, "told when asked");
    assert_eq!(told(true, 0), Outcome::Pass, "nothing hurts");
}

#[test]
fn a_kept_state_does_not_take_a_morning_that_changes_what_it_counted() {
    let mut world = trained_today();
    let applied = |world: &World, score: u8| {
        let sequence = world.log.events.last().unwrap().sequence + 1;
        let answer = PainAnswer::plain(name("knee"), Pain::new(score).unwrap());
        world.state().apply(&Event::new(sequence, world.day, EventKind::PainReport(answer)))
    };
    applied(&world, 2).unwrap();
    world.wait(1);
    assert_eq!(applied(&world, 2).unwrap_err().code(), Code::NeedsRefold);
    applied(&world, 0).unwrap();
    world.morning();
    assert_eq!(applied(&world, 2).unwrap_err().code(), Code::NeedsRefold, "of the same morning");
    world.wait(1);
    applied(&world, 2).unwrap();
}

#[test]
fn pain_told_after_the_morning_was_answered_takes_nothing_back() {
    let mut world = trained_today();
    world.morning();
    // Of the same day still: it is that morning.
    let mut same_day = world.clone();
    same_day.pain("knee", 2);
    assert_eq!(outcome(&same_day), Outcome::Fail);
    world.wait(1);
    world.pain("knee", 2);
    assert_eq!(outcome(&world), Outcome::Pass);
    // And pain of the training day itself is no morning after.
    world.wait(1);
    world.day_report(DayClass::Within);
    world.train("squat", true);
    let before = outcome(&world);
    world.pain("knee", 2);
    assert_eq!(outcome(&world), before);
}

#[test]
fn a_second_morning_of_pain_told_unasked_steps_back() {
    let mut world = World::on_offer("squat");
    for _ in 0..2 {
        world.wait(2);
        world.day_report(DayClass::Within);
        world.train("squat", true);
        world.wait(1);
        world.pain("knee", 2);
    }
    assert!(world.state().lift_state(&name("squat")).unwrap().grant().load() < kg(60.0));
}

/// An answer told once more does not open the morning again: pain days later is no part of it, event by event as in a whole fold.
#[test]
fn a_morning_answered_twice_is_open_on_the_first_day_alone() {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    let session = world.log.events.iter().rev().nth(1).unwrap().sequence;
    world.wait(4);
    world.add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(Vec::new())));
    let mut one_by_one = world.state();
    world.pain("knee", 1);
    one_by_one.apply(world.log.events.last().unwrap()).unwrap();
    assert!(one_by_one == world.state());
}
