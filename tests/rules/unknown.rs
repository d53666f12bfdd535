//! Height, setup, and what is not known.

use super::world::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::loading::{Disc, Stock};
use bismar::prescription::Verdict;
use bismar::record::*;

/// A pull from the floor at 225 mm; discs of that radius weigh 5 kg and 20 kg, smaller ones 10 kg and less.
fn from_the_floor() -> Parameters {
    let mut all = parameters();
    let disc = |mass: f64, count: u16, across: f64| {
        Disc::new(kg(mass), count).unwrap().with_diameter(mm(across)).unwrap()
    };
    all.stock = Stock::new(vec![
        disc(20.0, 2, 450.0),
        disc(5.0, 2, 450.0),
        disc(10.0, 4, 325.0),
        disc(1.0, 8, 160.0),
    ])
    .unwrap();
    all.lifts[0] = lift("squat", "knee", 60.0)
        .with_starts_from(StartsFrom::Floor)
        .with_ranges(vec![mm(325.0), mm(225.0)])
        .with_start(
            Grant::new(Work::new(2, 5, kg(60.0))).with_place(Place::default().with_rung(1).with_range(1)),
        );
    all
}

#[test]
fn whatever_lightens_a_lift_keeps_its_height() {
    let mut world = World::new(from_the_floor());
    world.passing_day("squat");
    // Work, a day below the usual, technique only, and back after half a year: the bar's centre lies at 225 mm.
    let mut seen = Vec::new();
    let mut look = |world: &World, what: &str| {
        let today = world.today("squat");
        let loaded = today.loaded.clone().unwrap_or_else(|| panic!("{what}: {:?}", today.reasons));
        let blocks = today.blocks.map_or(0.0, |blocks| blocks.mm());
        assert_eq!(loaded.centre_height.unwrap().mm() + blocks, 225.0, "{what}");
        for warm in &today.warm_up {
            assert!(warm.load >= kg(30.0), "{what}: {:?} cannot be made at the height", warm.load);
        }
        seen.push(today.load.unwrap().kg());
    };
    world.day_report(DayClass::Within);
    look(&world, "work");
    let mut below = world.clone();
    below.day_report(DayClass::Below);
    look(&below, "below the usual");
    let mut sore = world.clone();
    sore.pain("knee", 4);
    sore.wait(1);
    assert_eq!(sore.today("squat").verdict, Verdict::TechniqueOnly);
    look(&sore, "technique only");
    world.wait(200).day_report(DayClass::Within);
    look(&world, "after half a year");
    // The lightest at this height: 20 kg of bar and two 5 kg discs of full size.
    assert_eq!(seen, [60.0, 54.0, 30.0, 30.0]);
}

#[test]
fn a_start_that_cannot_be_loaded_at_its_height_is_refused() {
    let mut all = from_the_floor();
    all.lifts[0].start.work.load = kg(25.0);
    let mut world = World::new(parameters());
    let error = world.turned_away(EventKind::ParametersChanged(Box::new(all)));
    assert_eq!(error.code(), Code::NotLoadable);
    assert!(format!("{error}").contains("30"), "{error}");
}

#[test]
fn the_nearest_height_says_by_how_much_it_is_off() {
    let mut all = from_the_floor();
    all.lifts[0].ranges = vec![mm(325.0), mm(240.0)];
    let mut world = World::new(all);
    world.passing_day("squat");
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(
        today
            .reasons
            .iter()
            .any(|reason| matches!(reason, bismar::reason::Reason::HeightNotMade { off_mm, .. } if *off_mm == -15.0)),
        "{:?}",
        today.reasons
    );
    assert!(today.cautions.iter().any(|caution| caution.as_str() == "lower_start"));
}

#[test]
fn a_height_that_creeps_is_a_changed_height() {
    let at = |height: f64| {
        LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true)).with_height(mm(height))
    };
    let mut world = World::on_offer("squat");
    let mut offered = Vec::new();
    for height in [400.0, 393.0, 386.0] {
        world.train_with(at(height));
        world.morning();
        world.day_report(DayClass::Within);
        offered.push(world.is_offered("squat"));
    }
    assert_eq!(offered, [true, true, false], "14 mm lower than where the comparison began");
    assert!(says(&world.today("squat"), "setup_changed"));
}

#[test]
fn a_changed_setup_is_said_and_starts_the_comparison_anew() {
    let with = |kit: &[&str]| {
        let kit = Some(kit.iter().map(|word| name(word)).collect());
        LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true))
            .with_setup(Setup::default().with_kit(kit))
    };
    let mut world = World::on_offer("squat");
    world.train_with(with(&["flat shoes"]));
    world.morning();
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "the first word about it is no change");
    world.train_with(with(&["flat shoes", "belt"]));
    world.morning();
    world.day_report(DayClass::Within);
    assert!(!world.is_offered("squat"));
    assert!(says(&world.today("squat"), "setup_changed"));
    assert!(blocked_by(&world.against("squat"), "gate_not_open"));
}

#[test]
fn less_reach_or_another_height_is_training_and_no_pass() {
    let mut world = World::new(from_the_floor());
    (0..3).for_each(|_| world.passing_day("squat"));
    let sets = || World::sets(kg(60.0), 2, true);
    let higher = LiftSession::as_granted(name("squat"), sets()).with_height(mm(260.0));
    world.train_with(higher);
    world.morning();
    let today = world.today("squat");
    assert!(
        today.reasons.iter().any(|reason| matches!(
            reason,
            bismar::reason::Reason::NotAtGrant { short: bismar::reason::Shortfall::Range }
        )),
        "{:?}",
        today.reasons
    );
}

#[test]
fn what_came_with_pain_is_taken_as_new_where_nobody_asked() {
    let needed = |features| {
        let mut world = World::on_offer("squat");
        let plain = PainAnswer::plain(name("knee"), bismar::quantity::Pain::new(1).unwrap());
        world.add(EventKind::PainReport(plain.with_features(features)));
        world.state().region(&name("knee")).unwrap().clear_needed
    };
    assert_eq!((needed(Some(vec![])), needed(None)), (1, 2));
}

#[test]
fn pain_said_before_the_session_is_not_cleared_by_the_session_of_the_same_day() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::DayReport(
        DayReport::all_well(DayClass::Within)
            .with_pain(vec![PainAnswer::plain(name("knee"), bismar::quantity::Pain::new(2).unwrap())]),
    ));
    world.train("squat", true);
    assert_eq!(world.state().region(&name("knee")).unwrap().clear_needed, 1);
    world.morning();
    world.wait(2).day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "pain_block"), "{:?}", world.against("squat"));
    world.train("squat", true);
    assert_eq!(world.state().region(&name("knee")).unwrap().clear_needed, 0);
}

#[test]
fn nobody_asked_is_no_answer() {
    let mut world = World::on_offer("squat");
    world.wait(1).add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(None)));
    assert!(blocked_by(&world.against("squat"), "asks_not_asked"));
    let mut quiet = World::on_offer("squat");
    quiet.train("squat", true);
    let session = quiet.log.events.last().unwrap().sequence;
    quiet.wait(1).add(EventKind::NextDayReport(NextDayReport::new(session)));
    assert!(blocked_by(&quiet.against("squat"), "pass_provisional"));
}

#[test]
fn rule_11_another_rater_restarts_only_where_the_gate_says_so() {
    use bismar::gate::{Gate, PassRun, Requirement};
    let offered_after = |restarts: bool| {
        let mut all = parameters();
        let run = PassRun::new(9, 10, 2).unwrap().restarted_by_another_rater(restarts);
        all.lifts[0].gate = Gate::new(Requirement::PassRun(run)).unwrap();
        let mut world = World::new(all);
        (0..4).for_each(|_| world.passing_day("squat"));
        world.add(EventKind::RaterChanged(BarChanged::new(name("another coach"))));
        world.day_report(DayClass::Within);
        world.is_offered("squat")
    };
    assert_eq!((offered_after(false), offered_after(true)), (true, false));
}

#[test]
fn rule_12_a_fall_in_body_mass_is_said_beside_the_answer() {
    let said = |masses: &[(i32, f64)]| {
        let mut world = World::on_offer("squat");
        for (days, mass) in masses {
            world.wait(*days).add(EventKind::BodyMassRecorded(kg(*mass)));
        }
        let plan = Plan::of([name("squat")]);
        let session = bismar::prescription::next_session_from(&world.state(), &plan, world.day).unwrap();
        session.cautions.iter().any(|caution| caution.as_str() == "mass_falling")
    };
    assert!(said(&[(0, 80.0), (100, 78.0), (80, 76.0)]), "a twentieth within half a year");
    assert!(!said(&[(0, 80.0), (100, 78.0), (80, 76.1)]), "a little less than that");
    assert!(!said(&[(0, 80.0), (184, 76.0)]), "over a longer time");
    assert!(!said(&[(0, 80.0), (50, 74.0), (50, 79.0)]), "and back again");
}
