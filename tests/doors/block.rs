//! A block of weeks, looked back on.

use bismar::answers::{BlockAdvice, BlockLift, BlockReview, Lacking, block_review};
use bismar::condition::{DayClass, TrendVerdict};
use bismar::record::*;
use bismar::text::Words;

use crate::careful::is_careful;
use crate::world::{World, kg, name, parameters};

fn asked(world: &World) -> (BlockReview, Vec<String>) {
    let answer = block_review(&world.log, world.day, None).unwrap();
    let said = Words::of(&parameters()).block_review(&answer);
    for said in &said {
        is_careful(said);
        assert!(!said.contains(['{', '}']), "{said}");
    }
    (answer, said)
}

fn squat(review: &BlockReview) -> &BlockLift {
    review.lifts.iter().find(|lift| lift.lift == name("squat")).unwrap()
}

/// A block of sessions at the granted load, three days apart, each clean or not.
fn block(sessions: &[bool]) -> World {
    let mut world = World::new(parameters());
    world.add(EventKind::BlockStarted(name("spring")));
    for clean in sessions {
        world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within)));
        world.train("squat", *clean);
        world.morning();
        world.wait(2);
    }
    world
}

#[test]
fn row_67_the_card_of_a_block() {
    let mut world = block(&[true; 8]);
    world.add(EventKind::BlockEnded(name("spring")));
    let (answer, said) = asked(&world);
    let lift = squat(&answer);
    assert_eq!((lift.sessions, lift.passed, lift.not_passed, lift.unmarked), (8, 8, 0, 0));
    assert_eq!((lift.acceptable, lift.scored), (80, 80));
    assert_eq!(lift.advice, [BlockAdvice::Keep]);
    assert_eq!(answer.block.as_ref().unwrap().to, world.day);
    let trend = lift.trend;
    assert_eq!(trend, TrendVerdict::WithinNoise);
    let expected = [
        "Block spring, 5 Jan 2026 to 29 Jan 2026.",
        "Squat: 8 sessions; 8 passed, 0 did not, 0 not marked in full.",
        "At 2 x 5 at 60 kg (full) throughout.",
        "24 days at this place and load.",
        "Strength: no change that can be told from noise, which is no fault.",
    ];
    assert_eq!(said[..5], expected.map(String::from), "{said:#?}");
    assert_eq!(said[6], "Keep: nothing speaks for a change.");
}

/// Ten sessions without a miss say the gate may ask for more; nine do not, nor ten of which one had a miss.
#[test]
fn the_gate_is_raised_after_ten_clean_sessions() {
    let advice = |sessions: &[bool]| squat(&asked(&block(sessions)).0).advice.clone();
    assert!(!advice(&[true; 9]).contains(&BlockAdvice::RaiseGate { sessions: 9 }));
    assert!(advice(&[true; 10]).contains(&BlockAdvice::RaiseGate { sessions: 10 }));
    let mut one = [true; 11];
    one[4] = false;
    assert!(!advice(&one).iter().any(|advice| matches!(advice, BlockAdvice::RaiseGate { .. })));
}

/// One pass in six marked sessions is less than a quarter; two in eight are not, where the place stayed.
#[test]
fn few_passes_or_an_easier_place_ask_for_a_change() {
    let (answer, _) = asked(&block(&[false, true, false, false, false, false]));
    let lift = squat(&answer);
    assert_eq!((lift.passed, lift.not_passed), (1, 5));
    assert!(lift.advice.contains(&BlockAdvice::Change { passed: 1, marked: 6 }));
    assert!(!lift.advice.contains(&BlockAdvice::Keep));
    // Two fails in a row step the lift back: easier at the end than at the beginning.
    let (answer, _) = asked(&block(&[true, false, false]));
    assert!(squat(&answer).to.load() < kg(60.0));
    assert_eq!(squat(&answer).advice, [BlockAdvice::Change { passed: 1, marked: 3 }]);
}

#[test]
fn pain_asks_for_another_rung_and_for_no_test() {
    let mut world = block(&[true; 3]);
    world.pain("knee", 4);
    let (answer, _) = asked(&world);
    assert_eq!(squat(&answer).advice, [BlockAdvice::ChangeForPain { region: name("knee") }]);
}

/// Without effort no set says anything about strength.
#[test]
fn too_few_estimates_ask_for_repetitions_in_reserve() {
    let mut world = World::new(parameters());
    world.add(EventKind::BlockStarted(name("spring")));
    for _ in 0..5 {
        let sets = World::sets(kg(60.0), 2, true).into_iter().map(|set| set.with_effort(None));
        world.train_with(LiftSession::as_granted(name("squat"), sets.collect()));
        world.wait(4);
    }
    let (answer, said) = asked(&world);
    assert_eq!(squat(&answer).advice, [BlockAdvice::Keep, BlockAdvice::Retest { estimates: 0 }]);
    assert_eq!(squat(&answer).trend, TrendVerdict::NotEnoughHistory);
    assert!(said.iter().any(|line| line.contains("never a true maximum")));
    assert!(said[0].ends_with("not ended."));
}

#[test]
fn without_a_block_nothing_is_said_of_lifts() {
    let log = Log::new(Lifter::new(name("invented")));
    let answer = block_review(&log, "2026-01-05".parse().unwrap(), None).unwrap();
    assert_eq!((answer.block, answer.missing, answer.lifts), (None, vec![Lacking::Block], Vec::new()));
    let mut world = World::new(parameters());
    world.passing_day("squat");
    assert_eq!(asked(&world).0.missing, [Lacking::Block]);
    world.add(EventKind::BlockStarted(name("spring")));
    assert_eq!(asked(&world).0.missing, [Lacking::Session]);
}

/// What came before the block and after its end is not counted.
#[test]
fn only_the_block_is_counted_and_a_name_finds_an_older_one() {
    let mut world = World::new(parameters());
    (0..2).for_each(|_| world.passing_day("squat"));
    world.add(EventKind::BlockStarted(name("winter")));
    (0..3).for_each(|_| world.passing_day("squat"));
    world.add(EventKind::BlockEnded(name("winter")));
    world.passing_day("squat");
    world.add(EventKind::BlockStarted(name("spring")));
    (0..4).for_each(|_| world.passing_day("squat"));
    assert_eq!(squat(&asked(&world).0).sessions, 4);
    let winter = block_review(&world.log, world.day, Some(&name("winter"))).unwrap();
    assert_eq!(squat(&winter).sessions, 3);
    let none = block_review(&world.log, world.day, Some(&name("autumn"))).unwrap();
    assert_eq!(none.missing, [Lacking::Block]);
}

#[test]
fn a_harder_rung_with_less_load_is_no_easier_place() {
    let mut all = parameters();
    all.lifts[0].start.place = Place::at_rung(0);
    all.lifts[0].moving = Dimension::Variant;
    let mut world = World::new(all);
    world.add(EventKind::BlockStarted(name("spring")));
    (0..4).for_each(|_| world.passing_day("squat"));
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within)));
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    let (answer, _) = asked(&world);
    let lift = squat(&answer);
    assert_eq!((lift.from.unwrap().place.rung, lift.to.place.rung), (0, 1));
    assert!(lift.to.load() < lift.from.unwrap().load());
    assert!(lift.advice.contains(&BlockAdvice::Keep), "{:?}", lift.advice);
}

/// A block that goes on in the same way, a session every three days: the interval of its slope becomes narrower.
#[test]
fn a_longer_block_never_widens_its_slope() {
    let width = |sessions: usize| {
        let (answer, _) = asked(&block(&vec![true; sessions]));
        squat(&answer).slope.map(|slope| slope.interval.width())
    };
    let widths: Vec<f64> = (6..=16).step_by(2).filter_map(width).collect();
    assert!(widths.len() >= 5, "{widths:?}");
    assert!(widths.windows(2).all(|two| two[1] < two[0]), "{widths:?}");
}
