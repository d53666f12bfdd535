//! Rules 6 and 18: the layoff table, applied once for a gap of a region.

use super::world::*;
use bismar::condition::DayClass;
use bismar::record::*;
use bismar::sign::StopSign;

/// A squat and a hinge that share the back; the squat also loads the knee.
fn sharing() -> Parameters {
    let mut all = parameters();
    all.lifts[0].regions = vec![name("knee"), name("back")];
    all.lifts[1] = lift("hinge", "back", 40.0);
    all
}

fn ordinary_session(world: &mut World, id: &str) {
    world.day_report(DayClass::Within);
    world.train(id, true);
}

fn load(world: &World, id: &str) -> f64 {
    world.today(id).load.unwrap().kg()
}

#[test]
fn rule_06_a_row_is_applied_once_however_often_the_partner_trained() {
    // 30 days without the knee: row 2, a tenth less. The back is trained once, twice or every third day.
    let mut loads = Vec::new();
    for every in [30, 15, 3] {
        let mut world = World::new(sharing());
        ordinary_session(&mut world, "squat");
        let mut day = 0;
        while day + every <= 30 {
            day += every;
            world.wait(every);
            if day < 30 {
                ordinary_session(&mut world, "hinge");
            }
        }
        world.day_report(DayClass::Within);
        loads.push(load(&world, "squat"));
    }
    assert_eq!(loads, [54.0, 54.0, 54.0]);
}

#[test]
fn rule_06_a_gap_that_the_partner_ended_still_counts_once() {
    let mut world = World::new(sharing());
    ordinary_session(&mut world, "hinge");
    ordinary_session(&mut world, "squat");
    // The back rests 25 days and is then trained by the squat alone, three times; the hinge comes back after that.
    world.wait(25);
    for _ in 0..3 {
        ordinary_session(&mut world, "squat");
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    assert_eq!(load(&world, "hinge"), 36.0, "a tenth less, once");
    world.train("hinge", true);
    world.wait(2).day_report(DayClass::Within);
    assert_eq!(load(&world, "hinge"), 36.0, "and not again");
}

#[test]
fn rule_06_the_table_is_followed_exactly() {
    // Rows: from 11 days one step back, 21 a tenth less, 42 a fifth, 84 to 65 %, 182 the lightest.
    for (days, expected) in [
        (10, 60.0),
        (11, 54.0),
        (20, 54.0),
        (21, 54.0),
        (41, 54.0),
        (42, 48.0),
        (83, 48.0),
        (84, 39.0),
        (181, 39.0),
        (182, 20.0),
    ] {
        let mut world = World::new(parameters());
        ordinary_session(&mut world, "squat");
        world.wait(days).day_report(DayClass::Within);
        assert_eq!(load(&world, "squat"), expected, "{days} days");
    }
}

#[test]
fn rule_11_an_unknown_age_counts_as_the_older_row() {
    let with = |lifter: Lifter| {
        let mut world = World::of(lifter, parameters());
        ordinary_session(&mut world, "squat");
        world.wait(21).day_report(DayClass::Within);
        load(&world, "squat")
    };
    let nobody_knows = Lifter::new(name("A"));
    let young = nobody_knows.clone().with_born(Some("1980-01-01".parse().unwrap()));
    let band =
        |from, to| nobody_knows.clone().with_age(Some(AgeBand::new(from, to, "2026-01-01".parse().unwrap())));
    assert_eq!(with(young), 54.0);
    assert_eq!(with(band(50, 59)), 54.0);
    assert_eq!(with(band(60, 75)), 48.0, "the older end counts");
    assert_eq!(with(nobody_knows), 48.0);
}

#[test]
fn rule_18_gap_and_row_are_said_until_the_return_is_over() {
    let mut world = World::new(parameters());
    ordinary_session(&mut world, "squat");
    world.wait(30);
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        assert!(says(&world.today("squat"), "layoff"), "{:?}", world.today("squat").reasons);
        world.train("squat", true);
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    assert!(!says(&world.today("squat"), "layoff"));
}

#[test]
fn a_lift_that_was_set_aside_comes_back_under_its_own_days() {
    let mut world = World::new(sharing());
    ordinary_session(&mut world, "squat");
    let mut without = sharing();
    without.lifts.remove(0);
    world.add(EventKind::ParametersChanged(Box::new(without)));
    for _ in 0..15 {
        world.wait(3);
        ordinary_session(&mut world, "hinge");
    }
    world.wait(1).add(EventKind::ParametersChanged(Box::new(sharing())));
    world.day_report(DayClass::Within);
    // 46 days: a fifth less, though the back was trained all along.
    assert_eq!(load(&world, "squat"), 48.0);
}

/// The same gap and row on every day of the way back, and why it is as it is.
#[test]
fn rule_18_gap_row_and_reasons_stay_the_same_until_the_return_is_over() {
    let mut world = World::of(Lifter::new(name("ageless")), parameters());
    ordinary_session(&mut world, "squat");
    world.wait(30);
    let mut seen = Vec::new();
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        let today = world.today("squat");
        let layoff = today.reasons.iter().find_map(|reason| match reason {
            bismar::reason::Reason::Layoff { gap, row, .. } => Some((*gap, *row)),
            _ => None,
        });
        assert!(says(&today, "age_unknown") && says(&today, "returning"), "{:?}", today.reasons);
        seen.push(layoff);
        world.train("squat", true);
        world.morning();
        world.wait(2);
    }
    // Of an unknown age: the third row in place of the second.
    assert_eq!(seen, [Some((30, 3)); 2]);
    world.day_report(DayClass::Within);
    let over = world.today("squat");
    for code in ["layoff", "age_unknown", "returning"] {
        assert!(!says(&over, code), "{code}");
    }
}

fn gap_and_row(world: &World) -> Option<(u16, u8)> {
    world.today("squat").reasons.iter().find_map(|reason| match reason {
        bismar::reason::Reason::Layoff { gap, row, .. } => Some((*gap, *row)),
        _ => None,
    })
}

fn back_after(days: i32) -> World {
    let mut world = World::new(parameters());
    ordinary_session(&mut world, "squat");
    world.wait(days).day_report(DayClass::Within);
    world
}

#[test]
fn rule_18_a_row_stays_that_of_its_gap_though_its_load_is_not_given_back() {
    let mut world = back_after(12);
    assert_eq!(gap_and_row(&world), Some((12, 1)));
    // Two fails step back once more.
    for _ in 0..2 {
        world.day_report(DayClass::Within);
        world.train("squat", false);
        world.wait(2);
    }
    assert!(says(&world.today("squat"), "stepped_back"), "{:?}", world.today("squat").reasons);
    assert_eq!(gap_and_row(&world), Some((12, 1)));
    // One pass gives nothing back any more, two lead on.
    let before = world.today("squat").granted.load();
    world.day_report(DayClass::Within);
    world.train("squat", true);
    world.wait(2).day_report(DayClass::Within);
    assert_eq!((world.today("squat").granted.load(), gap_and_row(&world)), (before, Some((12, 1))));

    // The coach moves it by hand on its way.
    let mut moved = back_after(12);
    moved.train("squat", false);
    let to = Grant::new(Work::new(2, 5, kg(50.0))).with_place(Place::at_rung(1));
    moved.add(EventKind::VariantChanged(Move::new(name("squat"), to, name("coach"))));
    assert_eq!(gap_and_row(&moved), Some((12, 1)));

    // A stop on the way, lifted again.
    let mut stopped = back_after(12);
    stopped.train("squat", false);
    stopped.pain("knee", 7);
    stopped.clear();
    stopped.sign_off(SignOffScope::Region(name("knee")));
    assert_eq!(stopped.today("squat").status.as_str(), "returning");
    assert_eq!(gap_and_row(&stopped), Some((12, 1)));
}

#[test]
fn rule_18_a_lift_that_begins_anew_on_its_way_back_keeps_its_gap_and_row() {
    let mut world = back_after(100);
    assert_eq!(gap_and_row(&world), Some((100, 4)));
    world.train("squat", false);
    let mut all = parameters();
    all.lifts[0].implement = name("bells");
    all.lifts[0].start.work.load = kg(6.0);
    world.add(EventKind::ParametersChanged(Box::new(all)));
    assert_eq!(world.today("squat").status.as_str(), "returning");
    assert_eq!(gap_and_row(&world), Some((100, 4)));
}

#[test]
fn rule_18_of_two_gaps_that_meet_the_larger_row_is_said_with_its_own_days() {
    // (first gap, second gap, what is said)
    for (first, second, said) in [
        (30, 12, (30, 2)),
        (12, 30, (30, 2)),
        (50, 30, (50, 3)),
        (30, 25, (30, 2)),
        (25, 30, (30, 2)),
        (12, 14, (14, 1)),
    ] {
        let mut world = back_after(first);
        world.train("squat", false);
        world.wait(second).day_report(DayClass::Within);
        // Half the sets, as after any break.
        assert!(says(&world.today("squat"), "half_sets"));
        assert_eq!(gap_and_row(&world), Some(said), "{first} days, then {second}");
        world.train("squat", true);
        world.wait(2).day_report(DayClass::Within);
        assert_eq!(gap_and_row(&world), Some(said), "{first} days, then {second}: after one pass");
    }
}

/// Days of training that pass until the lift holds.
fn days_until_holding(world: &mut World) -> usize {
    for days in 1..40 {
        world.passing_day("squat");
        let state = world.state();
        let status = state.lift_state(&name("squat")).unwrap().status().as_str();
        if ["holding", "ready_to_advance"].contains(&status) {
            return days;
        }
    }
    panic!("{:?}", world.today("squat"));
}

/// A lift that was given up is taken up as a new one, whatever stopped it meanwhile.
#[test]
fn a_stop_does_not_shorten_the_way_back_of_a_lift_that_was_given_up() {
    let mut all = parameters();
    all.lifts[0].learning_sessions = Some(6);
    let role = |role| EventKind::RoleSet(RoleSet::new(name("squat"), role));
    let sign = || EventKind::SymptomReport(SymptomReport::new(vec![StopSign::Faint]));
    let taken_up = |stop: Option<usize>| {
        let mut world = World::new(all.clone());
        (0..7).for_each(|_| world.passing_day("squat"));
        // The sign comes before it is given up, while it is, or when it is taken up again.
        for (at, kind) in [role(Role::Retire), role(Role::Train)].into_iter().enumerate() {
            if stop == Some(at) {
                world.add(sign());
            }
            world.wait(1).add(kind);
        }
        if stop == Some(2) {
            world.add(sign());
        }
        world.wait(1).clear();
        world.sign_off(SignOffScope::Everything);
        days_until_holding(&mut world)
    };
    let as_new = taken_up(None);
    assert_eq!(as_new, 6);
    for at in 0..3 {
        assert!(taken_up(Some(at)) >= as_new, "{at}: {} days", taken_up(Some(at)));
    }
}
