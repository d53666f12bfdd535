//! Where nothing lighter is made at the height: the nearest height with its caution, else the easier rung, else nothing
//! today. The same work is never called easier.

use super::world::*;
use bismar::condition::DayClass;
use bismar::loading::{Disc, Stock};
use bismar::prescription::{LiftToday, Verdict};
use bismar::record::*;

/// A pull at 225 mm: of discs that high only 20 kg ones, so 60 kg is the lightest; the 10 kg ones reach 162.5 mm.
fn pull(small: bool, rung: u8, blocks: &[f64]) -> Parameters {
    let mut all = parameters();
    let disc = |mass: f64, count: u16, across: f64| {
        Disc::new(kg(mass), count).unwrap().with_diameter(mm(across)).unwrap()
    };
    let mut discs = vec![disc(20.0, 2, 450.0)];
    if small {
        discs.extend([disc(10.0, 4, 325.0), disc(2.5, 2, 190.0)]);
    }
    all.stock = Stock::new(discs).unwrap();
    all.blocks = blocks.iter().map(|height| mm(*height)).collect();
    all.lifts = vec![
        lift("squat", "knee", 60.0)
            .with_starts_from(StartsFrom::Floor)
            .with_ranges(vec![mm(225.0)])
            .with_start(Grant::new(Work::new(3, 5, kg(60.0))).with_place(Place::default().with_rung(rung)))
            .with_gate(
                bismar::gate::Gate::new(bismar::gate::Requirement::PassRun(
                    bismar::gate::PassRun::new(9, 10, 2).unwrap(),
                ))
                .unwrap(),
            ),
    ];
    all
}

/// What lightens the lift: a day below the usual, pain, technique only, breaks, a stop that was lifted, a step back.
fn lightened(all: &Parameters) -> Vec<(&'static str, LiftToday)> {
    let mut usual = World::new(all.clone());
    (0..2).for_each(|_| usual.passing_day("squat"));
    let after = |change: fn(&mut World)| {
        let mut world = usual.clone();
        change(&mut world);
        world.today("squat")
    };
    vec![
        ("a day below the usual", after(|world| world.day_report(DayClass::Below))),
        (
            "pain",
            after(|world| {
                world.day_report(DayClass::Within);
                world.pain("knee", 4);
            }),
        ),
        (
            "technique only",
            after(|world| {
                world.pain("knee", 4);
                world.wait(1);
            }),
        ),
        ("47 days", after(|world| world.wait(47).day_report(DayClass::Within))),
        ("250 days", after(|world| world.wait(250).day_report(DayClass::Within))),
        (
            "a stop that was lifted",
            after(|world| {
                world.pain("knee", 7);
                world.wait(1).clear();
                world.sign_off(SignOffScope::Region(name("knee")));
                world.wait(1).day_report(DayClass::Within);
            }),
        ),
        (
            "a step back",
            after(|world| {
                for _ in 0..2 {
                    world.day_report(DayClass::Within);
                    world.train("squat", false);
                    world.morning();
                    world.wait(2);
                }
                world.day_report(DayClass::Within);
            }),
        ),
    ]
}

#[test]
fn the_nearest_height_above_is_taken_and_says_by_how_much_it_is_off() {
    for (what, today) in lightened(&pull(true, 0, &[90.0])) {
        // 20 kg of bar and two of 10 kg on blocks, 27.5 mm higher.
        assert_eq!(
            (today.load, today.blocks),
            (Some(kg(40.0)), Some(mm(90.0))),
            "{what}: {:?}",
            today.reasons
        );
        assert!(says(&today, "height_off"), "{what}");
        assert!(today.cautions.iter().any(|caution| caution.as_str() == "lower_start"), "{what}");
    }
}

#[test]
fn a_lighter_bar_that_starts_lower_is_not_called_easier() {
    for (what, today) in lightened(&pull(true, 0, &[])) {
        // Two of 10 kg would carry the bar 62.5 mm lower.
        assert_ne!(today.load, Some(kg(40.0)), "{what}: {:?}", today.reasons);
        assert!(says(&today, "nothing_easier") || says(&today, "half_for_lighter"), "{what}");
    }
}

#[test]
fn blocks_that_come_near_are_used() {
    for (what, today) in lightened(&pull(true, 0, &[60.0, 65.0])) {
        assert_eq!((today.load, today.blocks), (Some(kg(40.0)), Some(mm(65.0))), "{what}");
        assert!(says(&today, "height_off"), "{what}");
    }
}

#[test]
fn without_anything_lighter_the_easier_rung_or_half_of_the_work() {
    for (what, today) in lightened(&pull(false, 1, &[])) {
        assert_eq!((today.place.rung, today.load), (0, Some(kg(60.0))), "{what}: {:?}", today.reasons);
        assert_ne!(today.verdict, Verdict::Rest, "{what}");
    }
    for (what, today) in lightened(&pull(false, 0, &[])) {
        // What asks for easier work today, and there is none: nothing today.
        if ["a day below the usual", "pain", "technique only"].contains(&what) {
            assert_eq!((today.verdict, today.load), (Verdict::Rest, None), "{what}: {:?}", today.reasons);
            assert!(says(&today, "nothing_easier"), "{what}");
            continue;
        }
        // A way back leads somewhere.
        let sets = today.granted.work.sets;
        assert_eq!(
            (today.verdict, today.load),
            (Verdict::EaseOff, Some(kg(60.0))),
            "{what}: {:?}",
            today.reasons
        );
        assert!(sets > 1 && today.sets == sets.div_ceil(2), "{what}: {} of {sets} sets", today.sets);
        assert!(says(&today, "half_for_lighter"), "{what}");
    }
}

#[test]
fn smaller_discs_bought_later_make_the_work_easier_that_a_stop_asks_for() {
    let mut world = World::new(pull(false, 0, &[]));
    (0..2).for_each(|_| world.passing_day("squat"));
    world.pain("knee", 7);
    world.wait(1).clear();
    world.sign_off(SignOffScope::Region(name("knee")));
    world.wait(1).day_report(DayClass::Within);
    assert_eq!(world.today("squat").load, Some(kg(60.0)));
    world.add(EventKind::ParametersChanged(Box::new(pull(true, 0, &[65.0]))));
    assert_eq!(world.today("squat").load, Some(kg(40.0)));
}

/// A pull from 325 mm toward the floor, with blocks that hold every height and without.
fn from_blocks(blocks: &[f64]) -> Parameters {
    let mut all = parameters();
    let disc = |mass: f64, across: f64| Disc::new(kg(mass), 2).unwrap().with_diameter(mm(across)).unwrap();
    let discs = [disc(20.0, 450.0), disc(10.0, 450.0), disc(5.0, 230.0), disc(2.5, 200.0), disc(1.25, 160.0)];
    all.stock = Stock::new(discs.to_vec()).unwrap();
    all.blocks = blocks.iter().map(|height| mm(*height)).collect();
    all.lifts = vec![
        lift("squat", "knee", 60.0)
            .with_starts_from(StartsFrom::Floor)
            .with_ranges(vec![mm(325.0), mm(275.0), mm(225.0)])
            .with_start(Grant::new(Work::new(3, 5, kg(60.0)))),
    ];
    all.lifts[0].moving = Dimension::Range;
    all
}

/// Two passes at 325 mm on blocks: a step to 275 mm is on offer.
fn passed_on_blocks() -> World {
    let mut world = World::new(from_blocks(&[50.0, 100.0]));
    (0..3).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    world
}

#[test]
fn without_the_blocks_the_lower_start_is_technique_only_and_no_step_is_on_offer() {
    let mut world = passed_on_blocks();
    world.add(EventKind::ParametersChanged(Box::new(from_blocks(&[]))));
    let today = world.today("squat");
    assert_eq!(
        (today.verdict, today.load),
        (Verdict::TechniqueOnly, Some(kg(40.0))),
        "the lightest that starts 100 mm lower: {:?}",
        today.reasons
    );
    let not_made =
        |height: f64, off_mm: f64| bismar::reason::Reason::HeightNotMade { height: mm(height), off_mm };
    assert!(today.reasons.contains(&not_made(325.0, -100.0)), "{:?}", today.reasons);
    let by = world.against("squat");
    assert!(by.contains(&not_made(325.0, -100.0)) && by.contains(&not_made(275.0, -50.0)), "{by:?}");
    for height in [325.0, 275.0] {
        let found = bismar::prescription::Change::BlocksOrDiscs { height: mm(height) };
        assert!(today.would_change.contains(&found), "{:?}", today.would_change);
    }
    // Asked for all the same, it is refused.
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    assert_eq!(world.today("squat").granted.place.range, 0);
    // The blocks are found again.
    world.add(EventKind::ParametersChanged(Box::new(from_blocks(&[50.0, 100.0]))));
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Train, Some(kg(60.0))), "{:?}", today.reasons);
}

/// The height of the step is that of the work granted, and neither is made.
#[test]
fn no_step_of_load_is_taken_from_a_height_that_is_not_made() {
    let of_load = |blocks: &[f64]| {
        let mut all = from_blocks(blocks);
        all.lifts[0].moving = Dimension::Load;
        all
    };
    let mut world = World::new(of_load(&[100.0]));
    (0..3).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
    let mut without = world.clone();
    without.add(EventKind::ParametersChanged(Box::new(of_load(&[]))));
    for (world, goes_up) in [(&mut without, false), (&mut world, true)] {
        world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
        assert_eq!(world.today("squat").granted.load() > kg(60.0), goes_up, "{:?}", world.against("squat"));
    }
}

/// 2.5 mm lower is near enough for an easier start, and below what a clearance allows.
#[test]
fn a_lighter_load_that_starts_below_a_clearance_is_not_done() {
    let mut world = World::new(pull(true, 0, &[60.0]));
    (0..2).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Below);
    assert_eq!(world.today("squat").load, Some(kg(40.0)), "{:?}", world.today("squat").reasons);
    let limits = vec![ClearanceLimits::default().with_range(mm(225.0))];
    let clearance = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"));
    let until = world.day.plus(300).unwrap();
    world.add(EventKind::ClearanceRecorded(clearance.with_expires(until).with_limits(limits)));
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Rest, None), "{:?}", today.reasons);
    assert!(says(&today, "clearance_range"), "{:?}", today.reasons);
}

#[test]
fn no_step_leads_to_a_height_that_is_not_made() {
    let mut world = passed_on_blocks();
    world.add(EventKind::ParametersChanged(Box::new(from_blocks(&[100.0]))));
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Train, Some(kg(60.0))), "{:?}", today.reasons);
    let by = world.against("squat");
    assert!(blocked_by(&by, "height_not_made"), "{by:?}");
}

#[test]
fn a_session_as_granted_counts_no_pass_where_the_height_is_not_made() {
    let mut all = from_blocks(&[]);
    all.lifts[0].learning_sessions = Some(0);
    let mut world = World::new(all);
    for _ in 0..3 {
        world.day_report(DayClass::Within);
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 3, true)));
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    let by = world.against("squat");
    assert!(blocked_by(&by, "gate_not_open") && blocked_by(&by, "not_at_grant"), "{by:?}");
    // Measured at its height, whatever it stood on, it counts.
    for _ in 0..2 {
        let mut done = LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 3, true));
        done.height = Some(mm(325.0));
        world.train_with(done);
        world.morning();
        world.wait(2).day_report(DayClass::Within);
    }
    let by = world.against("squat");
    assert!(!blocked_by(&by, "gate_not_open") && blocked_by(&by, "height_not_made"), "{by:?}");
}

#[test]
fn pain_and_a_break_leave_no_more_than_the_lightest_at_a_lower_start() {
    for gap in [false, true] {
        let mut world = passed_on_blocks();
        world.add(EventKind::ParametersChanged(Box::new(from_blocks(&[]))));
        if gap {
            world.wait(47).day_report(DayClass::Within);
        } else {
            world.pain("knee", 4);
        }
        let today = world.today("squat");
        assert_eq!(
            (today.verdict, today.load),
            (Verdict::TechniqueOnly, Some(kg(40.0))),
            "gap {gap}: {:?}",
            today.reasons
        );
    }
}

#[test]
fn a_lower_start_without_anything_lighter_is_left_out() {
    let mut world = passed_on_blocks();
    let mut all = from_blocks(&[]);
    all.stock = Stock::new(vec![Disc::new(kg(20.0), 2).unwrap().with_diameter(mm(450.0)).unwrap()]).unwrap();
    world.add(EventKind::ParametersChanged(Box::new(all)));
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Rest, None), "{:?}", today.reasons);
    assert!(says(&today, "height_not_made"));
}

#[cfg(feature = "english")]
#[test]
fn a_height_that_is_not_made_is_told_once() {
    let mut world = passed_on_blocks();
    world.add(EventKind::ParametersChanged(Box::new(from_blocks(&[]))));
    let plan = Plan::of([name("squat")]);
    let session = bismar::prescription::next_session_from(&world.state(), &plan, world.day).unwrap();
    let said = bismar::text::Words::of(world.state().parameters().unwrap()).session(&session).to_string();
    // Of the place where it stands; the step leads to another height.
    assert_eq!(said.matches("100 mm too low").count(), 1, "{said}");
    assert!(session.lifts[0].cautions.iter().any(|caution| caution.as_str() == "lower_start"));
    // Nearest too high: technique there is as it was, and it is told once as well.
    let mut world = passed_on_blocks();
    world.add(EventKind::ParametersChanged(Box::new(from_blocks(&[150.0]))));
    let session = bismar::prescription::next_session_from(&world.state(), &plan, world.day).unwrap();
    let said = bismar::text::Words::of(world.state().parameters().unwrap()).session(&session).to_string();
    assert_eq!(said.matches("50 mm too high").count(), 1, "{said}");
    assert!(session.lifts[0].cautions.iter().any(|caution| caution.as_str() == "lower_start"));
}
