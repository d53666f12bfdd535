//! Another kind of implement: no number of one kind is carried over to another, and what made a lift easier is not lost.

use super::world::*;
use bismar::condition::DayClass;
use bismar::loading::{Implement, MachineStack};
use bismar::record::*;

/// The squat with dumbbells, from that load in each hand.
pub fn on_bells(start: f64) -> Parameters {
    let mut all = parameters();
    all.lifts[0].implement = name("bells");
    all.lifts[0].start.work.load = kg(start);
    all
}

/// The squat on a stack of plates of 10 kg, the start as it was.
fn on_a_machine() -> Parameters {
    let mut all = parameters();
    let stack = MachineStack::new(name("stack"), kg(10.0), vec![kg(10.0); 12], Vec::new(), 1.0).unwrap();
    all.implements.push(Implement::Machine(stack));
    all.lifts[0].implement = name("stack");
    all
}

pub fn set(world: &mut World, all: Parameters) {
    world.add(EventKind::ParametersChanged(Box::new(all)));
}

fn trained() -> World {
    let mut world = World::new(parameters());
    (0..2).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    world
}

#[test]
fn a_start_left_as_it_was_is_not_taken_for_another_kind_of_implement() {
    let mut world = trained();
    set(&mut world, on_a_machine());
    let today = world.today("squat");
    assert_eq!(today.load, Some(kg(10.0)), "{:?}", today.reasons);
    assert!(says(&today, "other_implement"), "{:?}", today.reasons);
    // Told until it is next trained.
    world.passing_day("squat");
    world.day_report(DayClass::Within);
    assert!(!says(&world.today("squat"), "other_implement"));
}

#[test]
fn a_start_written_anew_is_taken_and_the_change_is_told() {
    let mut world = trained();
    set(&mut world, on_bells(8.0));
    let today = world.today("squat");
    assert_eq!(today.load, Some(kg(8.0)), "{:?}", today.reasons);
    assert!(says(&today, "other_implement"), "{:?}", today.reasons);
}

#[test]
fn the_coachs_lower_word_outlives_another_kind_of_implement() {
    let mut world = trained();
    world.override_to("squat", 40.0, 30);
    set(&mut world, on_a_machine());
    let today = world.today("squat");
    assert_eq!(today.load, Some(kg(10.0)), "{:?}", today.reasons);
    assert!(says(&today, "override_in_force"), "{:?}", today.reasons);
    set(&mut world, parameters());
    let today = world.today("squat");
    assert_eq!(today.load, Some(kg(40.0)), "{:?}", today.reasons);
    // Where nothing is so light it is told as ended.
    let mut world = trained();
    set(&mut world, on_bells(8.0));
    world.override_to("squat", 6.0, 30);
    set(&mut world, parameters());
    let today = world.today("squat");
    assert!(says(&today, "override_ended"), "{:?}", today.reasons);
    assert_eq!(today.load, Some(kg(20.0)), "{:?}", today.reasons);
}

#[test]
fn the_coachs_word_for_more_ends_with_its_kind_of_implement() {
    let mut world = trained();
    world.override_to("squat", 63.0, 30);
    set(&mut world, on_bells(8.0));
    let today = world.today("squat");
    assert!(says(&today, "override_ended") && !says(&today, "override_in_force"), "{:?}", today.reasons);
    assert_eq!(today.limit, kg(8.0));
}

#[test]
fn back_on_the_earlier_kind_it_begins_no_higher_than_where_it_stood_there() {
    // The coach's lower word for good.
    let mut world = trained();
    world.add(EventKind::CoachOverride(Override::new(name("squat"), kg(40.0), name("coach"))));
    set(&mut world, on_bells(8.0));
    world.passing_day("squat");
    set(&mut world, parameters());
    let today = world.today("squat");
    assert_eq!(today.load, Some(kg(40.0)), "{:?}", today.reasons);
    // A step back.
    let mut world = trained();
    for _ in 0..2 {
        world.wait(1).day_report(DayClass::Within);
        world.train("squat", false);
        world.morning();
    }
    world.wait(1).day_report(DayClass::Within);
    let stood = world.today("squat").load.unwrap();
    assert!(stood < kg(60.0), "{stood:?}");
    set(&mut world, on_bells(8.0));
    (0..3).for_each(|_| world.passing_day("squat"));
    set(&mut world, parameters());
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert_eq!(today.load, Some(stood), "{:?}", today.reasons);
}

/// A lower word that has run out by then was what was allowed there all the same.
#[test]
fn back_on_the_earlier_kind_a_lower_word_of_that_time_is_remembered() {
    let mut world = trained();
    world.override_to("squat", 40.0, 30);
    set(&mut world, on_bells(8.0));
    // Three days each, until the word has run out.
    (0..11).for_each(|_| world.passing_day("squat"));
    set(&mut world, parameters());
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(!says(&today, "override_in_force"), "{:?}", today.reasons);
    // Thirty-three days on another kind leave 90 % of it.
    assert_eq!(today.load, Some(kg(36.0)), "{:?}", today.reasons);
}
