//! Rules 1, 2, 5, 8 and 9 within one day: what a later part of it shows or tells is of the day, in whatever order it was told.

use bismar::condition::DayClass;
use bismar::prescription::Verdict;
use bismar::progression::Now;
use bismar::quantity::{Pain, Rir};
use bismar::record::*;

use crate::world::*;

fn knee(score: u8) -> PainAnswer {
    PainAnswer::plain(name("knee"), Pain::new(score).unwrap())
}

fn now(world: &World) -> Now {
    world.state().lift_state(&name("squat")).unwrap().now().clone()
}

fn part(load: bismar::quantity::Mass, sets: u8, clean: bool) -> LiftSession {
    LiftSession::as_granted(name("squat"), World::sets(load, sets, clean))
}

/// What so many passing days lead up to, then a day in two parts: as printed and clean, what is told between, and a part that
/// loses the critical point.
fn parted(before: &World, told: Option<EventKind>) -> World {
    let mut world = before.clone();
    let today = world.today("squat");
    let (load, sets) = (today.load.unwrap(), today.sets);
    world.train_with(part(load, sets, true));
    told.into_iter().for_each(|told| world.add(told));
    world.train_with(part(load, sets, false));
    world
}

fn trained_before() -> World {
    let mut world = World::new(parameters());
    world.passing_day("squat");
    world
}

/// More is never granted, and no state is further on, where pain was told between the parts of a day.
fn is_no_better_with_pain_between(before: &World, why: &str) {
    let whole = now(&parted(before, None));
    let told = now(&parted(before, Some(EventKind::PainReport(knee(1)))));
    assert_eq!(told.grant, whole.grant, "{why}");
    assert_eq!(told.status, whole.status, "{why}");
    assert_eq!((told.fails, told.calibration), (whole.fails, whole.calibration), "{why}");
}

#[test]
fn rule_04_a_failed_part_takes_back_the_return_that_an_earlier_part_of_the_day_ended() {
    let mut world = trained_before();
    world.wait(9).day_report(DayClass::Within);
    assert_eq!(world.today("squat").load, Some(kg(54.0)));
    let mut passed = world.clone();
    passed.train("squat", true);
    assert_eq!(now(&passed).grant.load(), kg(60.0), "one pass gives the load back");
    let failed = parted(&world, Some(EventKind::PainReport(knee(1))));
    assert_eq!((now(&failed).grant.load(), now(&failed).status.as_str()), (kg(54.0), "returning"));
    is_no_better_with_pain_between(&world, "the shortest break");
    // On the last day of a longer way back.
    let mut world = trained_before();
    world.wait(27).day_report(DayClass::Within);
    world.train("squat", true);
    world.morning();
    world.wait(2).day_report(DayClass::Within);
    assert_eq!(world.today("squat").status.as_str(), "returning");
    is_no_better_with_pain_between(&world, "a longer break");
}

#[test]
fn rule_05_a_failed_part_takes_back_what_an_earlier_part_of_the_day_passed() {
    // A fail before it is not forgotten by the pass of a day that fails.
    let mut world = World::on_offer("squat");
    world.train("squat", false);
    world.morning();
    world.wait(2).day_report(DayClass::Within);
    assert_eq!(now(&world).fails, 1);
    is_no_better_with_pain_between(&world, "a fail before it");
    // A step back, and a step that was taken.
    let mut back = world.clone();
    back.train("squat", false);
    for _ in 0..4 {
        back.morning();
        back.wait(2).day_report(DayClass::Within);
        assert_eq!(back.today("squat").status.as_str(), "stepping_back");
        is_no_better_with_pain_between(&back, "a step back");
        back.train("squat", true);
        if now(&back).status.as_str() != "stepping_back" {
            break;
        }
    }
    let mut stepped = World::on_offer("squat");
    stepped.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    assert_eq!(stepped.today("squat").status.as_str(), "consolidating");
    is_no_better_with_pain_between(&stepped, "a step up");
    // The last day of calibration.
    let mut learning = World::new(parameters());
    learning.day_report(DayClass::Within);
    is_no_better_with_pain_between(&learning, "calibration");
}

fn clear_needed(world: &World) -> u8 {
    world.state().region(&name("knee")).unwrap().clear_needed
}

/// A knee of 3 asks for two clear days; the day after is one of them, until more is told of it.
fn with_one_clear_day() -> World {
    let mut world = World::on_offer("squat");
    world.pain("knee", 3);
    assert_eq!(clear_needed(&world), 2);
    world.wait(3).day_report(DayClass::Within);
    world
}

#[test]
fn rule_05_a_day_is_no_clear_one_where_pain_is_told_later_on_it() {
    let clear = |world: &mut World| {
        world.train("squat", true);
        assert_eq!(clear_needed(world), 1);
    };
    for score in [1, 2] {
        // Before the session it counts; so it does after it.
        let mut before = with_one_clear_day();
        before.pain("knee", score);
        before.train("squat", true);
        assert_eq!(clear_needed(&before), 2, "told before: {score}");
        let mut after = with_one_clear_day();
        clear(&mut after);
        after.pain("knee", score);
        assert_eq!(clear_needed(&after), 2, "told after: {score}");
        // Told twice it is given back once.
        after.pain("knee", score);
        assert_eq!(clear_needed(&after), 2, "told twice: {score}");
        let mut again = with_one_clear_day();
        clear(&mut again);
        again.train_all(vec![part(kg(60.0), 1, true)], Some(vec![knee(score)]));
        assert_eq!(clear_needed(&again), 2, "in a second session: {score}");
        again.morning();
        again.wait(2).day_report(DayClass::Within);
        again.train("squat", true);
        assert_eq!(clear_needed(&again), 1, "the next day is clear: {score}");
    }
    // Where nobody asked in the session, its day was none of them.
    let mut unasked = with_one_clear_day();
    unasked.train_all(vec![part(kg(60.0), 2, true)], None);
    unasked.pain("knee", 2);
    assert_eq!(clear_needed(&unasked), 2);
}

/// Fever, and the coach's word that it is over, on one day.
fn fever_over(world: &mut World) {
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(vec![Ask::Fever])));
    world.add(EventKind::AskAnswered(AskAnswered::new(Ask::Fever, name("coach"), false)));
}

#[test]
fn rule_01_an_override_upward_waits_on_a_day_of_fever_that_was_answered() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 120.0, 5);
    fever_over(&mut world);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Train, Some(kg(60.0))));
    assert!(says(&today, "override_suspended"), "{:?}", today.reasons);
    world.wait(1).day_report(DayClass::Within);
    assert_eq!(world.today("squat").load, Some(kg(120.0)), "the next day it is in force");
}

fn leaving(left: Option<u8>) -> LiftSession {
    let mut sets = World::sets(kg(60.0), 2, true);
    sets.iter_mut().for_each(|set| set.effort = left.map(|left| Effort::Rir(Rir::whole(left))));
    LiftSession::as_granted(name("squat"), sets)
}

#[test]
fn rule_09_what_a_session_on_a_day_of_fever_left_in_reserve_counts() {
    let after = |left: [Option<u8>; 2], fever: [bool; 2]| {
        let mut world = World::on_offer("squat");
        for (left, fever) in left.into_iter().zip(fever) {
            world.day_report(DayClass::Within);
            if fever {
                fever_over(&mut world);
            }
            world.train_with(leaving(left));
            world.morning();
            world.wait(2);
        }
        world.day_report(DayClass::Within);
        world.against("squat")
    };
    for fever in [[false, true], [true, false], [true, true]] {
        let against = after([Some(0), Some(0)], fever);
        assert!(blocked_by(&against, "reserve_short"), "{fever:?}: {against:?}");
        let against = after([None, None], fever);
        assert!(blocked_by(&against, "effort_not_said"), "{fever:?}: {against:?}");
        // Enough in reserve, that day: nothing is held against it, and nothing is shown by it.
        let against = after([Some(3), Some(3)], fever);
        assert!(!blocked_by(&against, "reserve_short"), "{fever:?}: {against:?}");
    }
}
