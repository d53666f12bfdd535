//! Illness noted in advance, as before a planned operation: nothing is stopped until its first day, and no word that is given
//! before that day answers it.

use bismar::condition::DayClass;
use bismar::prescription::{LiftToday, Verdict};
use bismar::quantity::Day;
use bismar::reason::Reason;
use bismar::record::*;

use crate::world::{World, name, parameters, says};

fn note(world: &mut World, from: Day, to: Option<Day>, reason: LayoffReason) {
    world.add(EventKind::LayoffNoted(Layoff::new(from, reason).with_to(to)));
}

/// Calibrated, on 5 January and the days after.
fn trained() -> World {
    let mut world = World::new(parameters());
    (0..4).for_each(|_| world.passing_day("squat"));
    world
}

fn in_days(world: &World, days: i32) -> Day {
    world.day.plus(days).unwrap()
}

fn is_ill(world: &World) -> bool {
    let stopped = world.state().stops_on(world.day).contains(&Reason::ClearanceAfterIllness);
    assert_eq!(stopped, says(&world.today("squat"), "clearance_after_illness"));
    assert_eq!(stopped, world.state().ill_since_on(world.day).is_some());
    stopped
}

/// What the day says of the squat, without the numbers of events.
fn said(world: &World) -> (Verdict, Option<bismar::quantity::Mass>, u8, Vec<Reason>) {
    let LiftToday { verdict, load, sets, reasons, .. } = world.today("squat");
    (verdict, load, sets, reasons)
}

/// Training for three weeks, and an illness of 25 days after it, noted that many days ahead and with a clearance on the day after
/// the noting: told the same as one that is noted when it begins.
#[test]
fn an_illness_noted_in_advance_is_answered_by_no_clearance_before_it() {
    let course = |ahead: bool| {
        let mut world = trained();
        let (from, to) = (in_days(&world, 22), in_days(&world, 46));
        if ahead {
            note(&mut world, from, Some(to), LayoffReason::Ill);
        }
        world.wait(1).clear();
        let mut between = vec![said(&world)];
        for _ in 0..6 {
            assert!(!is_ill(&world), "nothing is stopped before its first day");
            world.passing_day("squat");
            between.push(said(&world));
        }
        // Nobody writes anything down until it is over.
        let mut asked = world.clone();
        asked.wait(from.since(world.day) - 1);
        assert!(!is_ill(&asked));
        asked.wait(1);
        if ahead {
            assert!(is_ill(&asked), "on its first day");
            assert_eq!(said(&asked).0, Verdict::Stop);
        }
        asked.wait(26);
        if !ahead {
            asked = world.clone();
            asked.wait(from.since(world.day));
            note(&mut asked, from, Some(to), LayoffReason::Ill);
            asked.wait(26);
        }
        assert!(is_ill(&asked), "after it, without a word since");
        let uncleared = said(&asked);
        asked.clear();
        assert!(!is_ill(&asked), "a word given since answers it");
        asked.day_report(DayClass::Within);
        (between, uncleared, said(&asked), way_back(&asked))
    };
    let (ahead, begun) = (course(true), course(false));
    assert_eq!(ahead, begun);
    // Two rows further down than the gap alone asks for.
    let mut well = trained();
    well.wait(1);
    (0..6).for_each(|_| well.passing_day("squat"));
    well.wait(29).day_report(DayClass::Within);
    let rows = u8::try_from(parameters().policy.layoff.len()).unwrap();
    let (gap_alone, _) = way_back(&well);
    assert_eq!(ahead.3, ((gap_alone + 2).min(rows), true));
    assert_ne!(ahead.3.0, gap_alone);
}

/// The row of the way back as it stands on that day, and whether it is after an illness.
fn way_back(world: &World) -> (u8, bool) {
    use bismar::progression::Status;
    let decided = world.state().decide(world.day).unwrap();
    match &decided.iter().find(|decision| decision.lift == name("squat")).unwrap().status {
        Status::Returning { way, .. } => (way.row, way.after_illness),
        status => panic!("{status:?}"),
    }
}

/// What the coach allowed above the grant stands until the illness begins.
#[test]
fn an_override_stands_until_the_illness_begins() {
    let mut world = trained();
    world.override_to("squat", 64.0, 20);
    let before = said(&world);
    let overruled =
        |world: &World| world.state().lift_state(&name("squat")).unwrap().now().overruled.is_some();
    let from = in_days(&world, 5);
    note(&mut world, from, None, LayoffReason::Ill);
    assert!(overruled(&world));
    assert_eq!(said(&world), before);
    world.wait(4).clear();
    assert!(overruled(&world));
    world.wait(1).clear();
    assert!(!overruled(&world), "it was allowed to somebody well");
}

/// One to come opens nothing now and closes nothing that is open; each is answered by a word of its own time.
#[test]
fn an_illness_to_come_leaves_the_one_that_is_open_as_it_is() {
    let mut world = trained();
    let (now, next, last) = (world.day, in_days(&world, 20), in_days(&world, 40));
    note(&mut world, now, None, LayoffReason::Ill);
    note(&mut world, last, None, LayoffReason::Ill);
    note(&mut world, next, None, LayoffReason::Ill);
    assert!(is_ill(&world));
    world.wait(3).clear();
    assert!(!is_ill(&world));
    for days in [17, 20] {
        world.wait(days - 1);
        assert!(!is_ill(&world), "{}", world.day);
        world.wait(1);
        assert!(is_ill(&world), "{}", world.day);
        world.clear();
        assert!(!is_ill(&world), "{}", world.day);
    }
    world.wait(60);
    assert!(!is_ill(&world));
}

/// More than a state keeps are refused, and a state with as many comes back.
#[test]
fn no_more_illnesses_to_come_are_noted_than_a_state_keeps() {
    let mut world = trained();
    for weeks in 1..=8 {
        let from = in_days(&world, 7 * weeks);
        note(&mut world, from, None, LayoffReason::Ill);
        // Told again it is the same one.
        note(&mut world, from, None, LayoffReason::Ill);
    }
    let one_more = Layoff::new(in_days(&world, 70), LayoffReason::Ill);
    let error = world.turned_away(EventKind::LayoffNoted(one_more));
    assert_eq!(error.code(), bismar::Code::TooMany);
    assert!(!is_ill(&world));
    world.wait(100);
    assert!(is_ill(&world));
    world.clear();
    assert!(!is_ill(&world));
}

/// A clearance after an illness that is corrected to have lain later, or to have lasted longer, did not know of that.
#[test]
fn an_illness_that_is_corrected_to_lie_later_or_last_longer_is_told_when_it_is_corrected() {
    let said = |from: i32, to: Option<i32>| {
        let begun: Day = "2026-01-05".parse().unwrap();
        let day = |days: i32| begun.plus(days).unwrap();
        EventKind::LayoffNoted(Layoff::new(day(from), LayoffReason::Ill).with_to(to.map(day)))
    };
    let cases = [
        ((1, Some(3)), (1, Some(3)), false),
        ((1, Some(3)), (0, Some(2)), false),
        ((1, None), (1, Some(4)), false),
        ((1, Some(3)), (1, Some(4)), true),
        ((1, Some(3)), (1, None), true),
        ((1, Some(4)), (2, Some(3)), true),
        ((1, None), (2, None), true),
        ((1, Some(3)), (6, Some(9)), true),
    ];
    for ((from, to), (later, until), told) in cases {
        let mut world = World::new(parameters());
        world.wait(5).add(said(from, to));
        let first = world.log.events.last().unwrap().sequence;
        world.wait(2).clear();
        assert!(!is_ill(&world));
        world.wait(10);
        let with = Some(Box::new(said(later, until)));
        world.add(EventKind::Correction(Correction::new(first).with_kind(with)));
        assert_eq!(is_ill(&world), told, "{from}, {to:?} to {later}, {until:?}");
    }
}
