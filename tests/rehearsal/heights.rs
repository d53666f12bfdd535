//! Starts from the floor: what the discs hold there, what a step is there, and what recording would refuse.

use super::*;

fn found(setup: &Setup) -> Vec<Found> {
    check(&setup.parameters, None).into_iter().map(|finding| finding.what).collect()
}

fn squat_alone(setup: &mut Setup) {
    setup.parameters.lifts.truncate(1);
    setup.parameters.regions.truncate(1);
}

fn recorded(setup: &Setup) -> Result<(), bismar::Error> {
    let kind = EventKind::ParametersChanged(Box::new(setup.parameters.clone()));
    let day = Day::from_number(20_000).unwrap();
    State::new(Lifter::new(name("invented"))).apply(&Event::new(1, day, kind))
}

/// Only the pair of 20 kg holds the bar at 225 mm, so that 60 kg is the lightest; at the rack it would be 20 kg. With every
/// disc on it the bar weighs 120 kg.
#[test]
fn a_start_that_cannot_be_loaded_is_refused_when_it_is_recorded() {
    for (load, refused) in [
        (59.0, true),
        (60.0, false),
        (60.04, false),
        (60.1, true),
        (62.7, true),
        (120.0, false),
        (120.5, true),
    ] {
        let mut setup = clean();
        from_the_floor(&mut setup, &[225], 450);
        setup.squat().start.work.load = kg(load);
        let said = found(&setup).iter().any(|what| matches!(what, Found::StartNotLoadable { .. }));
        assert_eq!(said, refused, "{load} kg");
        let error = recorded(&setup).err();
        assert_eq!(error.map(|error| error.code()), refused.then_some(Code::NotLoadable), "{load} kg");
    }
}

#[test]
fn a_start_between_two_loads_is_refused_and_both_are_named() {
    let mut setup = clean();
    from_the_floor(&mut setup, &[225], 450);
    setup.squat().start.work.load = kg(62.7);
    assert_eq!(
        found(&setup),
        [Found::StartNotLoadable { load: kg(62.7), below: Some(kg(62.5)), above: Some(kg(63.0)) }]
    );
}

/// Discs of 450 mm lie with their centre at 225 mm. At 310 mm they want blocks of 85 mm; without, the nearest way lies
/// 85 mm below. Those of 200 mm would lie lower still.
#[test]
fn a_height_that_nothing_holds_is_named_with_the_millimetres() {
    let mut setup = clean();
    from_the_floor(&mut setup, &[310, 225], 450);
    assert_eq!(found(&setup), [Found::HeightOff { height: Length::millimetres(310), mm: -85.0 }]);
    setup.parameters.blocks = vec![Length::millimetres(85)];
    assert_eq!(found(&setup), []);
}

/// From 60 kg at 5 % the cap is 63 kg. Beside the 20 kg discs there are only tens: 80 kg is next. A pair of up to
/// 1.25 kg gives a load in between, one of 2.5 kg does not.
#[test]
fn discs_that_help_at_the_height_are_named() {
    let mut setup = clean();
    let disc =
        |mass, large| Disc::new(kg(mass), 2).unwrap().with_diameter(Length::millimetres(large)).unwrap();
    from_the_floor(&mut setup, &[225], 450);
    squat_alone(&mut setup);
    setup.parameters.stock = Stock::new(vec![disc(20.0, 450), disc(10.0, 325)]).unwrap();
    setup.squat().start.work.load = kg(60.0);
    let discs = [0.125, 0.25, 0.5, 0.75, 1.0, 1.25].map(kg).to_vec();
    let (load, cap, next) = (kg(60.0), kg(63.0), Some(kg(80.0)));
    assert_eq!(found(&setup), [Found::StuckAtStart { load, cap, next, discs }]);
}

/// Where the range moves, from blocks of 85 mm to the floor, nothing lighter than 60 kg lies on the floor, and on the
/// blocks the 10 kg discs of 300 mm do as well: 310 mm is 160 mm of blocks and half of 300 mm.
#[test]
fn a_way_down_to_the_floor_ends_where_nothing_so_light_lies_there() {
    let disc =
        |mass, large| Disc::new(kg(mass), 2).unwrap().with_diameter(Length::millimetres(large)).unwrap();
    let mut setup = clean();
    from_the_floor(&mut setup, &[310, 225], 450);
    squat_alone(&mut setup);
    setup.parameters.stock = Stock::new(vec![disc(20.0, 450), disc(10.0, 300)]).unwrap();
    setup.parameters.blocks = [85, 160].map(Length::millimetres).to_vec();
    setup.squat().moving = Dimension::Range;
    setup.squat().start.work.load = kg(60.0);
    assert_eq!(found(&setup), []);
    setup.squat().start.work.load = kg(40.0);
    let (load, cap, next) = (kg(40.0), kg(40.0), Some(kg(60.0)));
    assert_eq!(found(&setup), [Found::StuckAtStart { load, cap, next, discs: Vec::new() }]);
}

/// A lifter who misses nothing takes steps from the floor too, all of them at its height.
#[test]
fn a_lift_from_the_floor_can_be_rehearsed() {
    let mut setup = clean();
    from_the_floor(&mut setup, &[225], 450);
    let mut model = model(1.0);
    (model.below_usual, model.missed_session) = (0.0, 0.0);
    model.lifts = ["squat", "press"].map(|id| LiftSkill::of(name(id), 1.0)).to_vec();
    let played = simulate(&setup.parameters, &setup.plan, &model, 26, 1, 1).unwrap();
    assert!(played.lifts[0].moves.half.unwrap() >= 3);
}

/// A pair trained with one rest day between. The rules ask for one, from 70 for two, and of unknown age as from 70.
#[test]
fn an_age_that_is_not_told_counts_as_older() {
    let mut setup = clean();
    pair(&mut setup, "squat", "press");
    setup.parameters.pairs[0].ratio_cap = 2.0;
    // The press stays where it is, so that the squat never waits for its turn.
    setup.parameters.lifts[1].ceiling = Some(kg(30.0));
    setup.week = vec![TrainingDay::new(0, vec![name("press")]), TrainingDay::new(2, vec![name("squat")])];
    let moves = |age: Option<u8>| {
        let mut model = model(1.0).with_week(setup.week.clone()).with_age(age);
        (model.below_usual, model.missed_session) = (0.0, 0.0);
        model.lifts = ["squat", "press"].map(|id| LiftSkill::of(name(id), 1.0)).to_vec();
        simulate(&setup.parameters, &setup.plan, &model, 26, 1, 1).unwrap().lifts[0].moves.half.unwrap()
    };
    assert!(moves(Some(57)) > 0);
    assert_eq!((moves(Some(75)), moves(None)), (0, 0));
    let old = model(1.0).with_age(101);
    let error = simulate(&setup.parameters, &setup.plan, &old, 1, 1, 1).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::OutOfRange, "age"));
}
