//! What a hostile coach would try: to lose a stop, a gap or a pain by changing what is declared, or to bring something back
//! that never counted.

use super::world::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::progression::State;
use bismar::quantity::Pain;
use bismar::record::*;
use bismar::sign::StopSign;
use bismar::value::Value;

fn set(world: &mut World, all: Parameters) {
    world.add(EventKind::ParametersChanged(Box::new(all)));
}

fn without_squat() -> Parameters {
    let mut all = parameters();
    all.lifts.remove(0);
    all
}

#[test]
fn a_stop_reaches_a_lift_that_is_set_aside() {
    let mut world = World::on_offer("squat");
    set(&mut world, without_squat());
    world.add(EventKind::SymptomReport(SymptomReport { signs: vec![StopSign::ChestPain] }));
    assert_eq!(world.state().set_aside().next().unwrap().status().as_str(), "stopped_refer");
    world.clear();
    world.sign_off(SignOffScope::Everything);
    set(&mut world, parameters());
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert_eq!((today.status.as_str(), today.place.rung), ("returning", 0));
    assert!(today.granted.load() < kg(60.0) && !world.is_offered("squat"));
}

#[test]
fn a_stored_state_without_a_declared_region_is_refused() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 4);
    let whole = Value::write(&world.state()).unwrap().to_json();
    let mut stored: serde_json::Value = serde_json::from_str(&whole).unwrap();
    stored["shared"]["regions"] = serde_json::json!([]);
    let stored = stored.to_string();
    let error = State::from_json(&stored).unwrap_err();
    assert_eq!((error.code(), error.field()), (Code::UnknownRegion, "shared.regions"), "{stored}");
}

#[test]
fn a_lift_given_other_regions_keeps_its_gap() {
    let mut all = parameters();
    all.lifts.push(lift("pull", "back", 60.0));
    let mut world = World::new(all.clone());
    world.good_day("squat");
    for _ in 0..26 {
        world.good_day("pull");
        world.wait(5);
    }
    all.lifts[0].regions = vec![name("back")];
    set(&mut world, all);
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(today.load.unwrap() < kg(60.0) && says(&today, "layoff"), "{:?}", today.reasons);
}

#[test]
fn a_morning_that_names_no_session_speaks_of_the_last_one() {
    let mut world = World::new(parameters());
    for _ in 0..3 {
        world.good_day("squat");
    }
    world.day_report(DayClass::Within);
    world.train("squat", true);
    world.wait(1);
    let pain = Some(vec![PainAnswer::plain(name("knee"), Pain::new(2).unwrap())]);
    let outcome = |world: &World| {
        let state = world.state();
        state.lift_state(&name("squat")).unwrap().now().sittings.last().unwrap().outcome
    };
    let report = |pain| EventKind::NextDayReport(NextDayReport { session: 999, pain, soreness: None });
    let mut quiet = world.clone();
    world.add(report(pain.clone()));
    assert_eq!(outcome(&world), bismar::gate::Outcome::Fail);
    // A quiet one answers for nothing: what is said the day after still counts.
    quiet.add(report(Some(Vec::new())));
    quiet.wait(1);
    quiet.add(EventKind::DayReport(DayReport { pain, ..DayReport::all_well(DayClass::Within) }));
    assert_eq!(outcome(&quiet), bismar::gate::Outcome::Fail);
}

#[test]
fn pain_goes_with_a_lift_that_is_given_other_regions() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 2);
    let mut all = parameters();
    all.lifts[0].regions = vec![name("back")];
    all.lifts.push(lift("lunge", "knee", 30.0));
    set(&mut world, all);
    world.wait(1);
    let report = DayReport { pain: None, ..DayReport::all_well(DayClass::Within) };
    world.add(EventKind::DayReport(report));
    assert!(!world.is_offered("squat"), "{:?}", world.against("squat"));
}

#[test]
fn a_region_that_is_no_longer_declared_is_not_counted_clear() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 4);
    let mut all = parameters();
    all.regions.remove(0);
    all.lifts[0].regions = vec![name("back")];
    set(&mut world, all);
    for _ in 0..4 {
        world.wait(2);
        world.good_day("squat");
    }
    world.day_report(DayClass::Within);
    assert!(blocked_by(&world.against("squat"), "pain_block"), "{:?}", world.against("squat"));
    let error = world.turned_away(EventKind::PainReport(PainAnswer::plain(name("knee"), Pain::NONE)));
    assert_eq!(error.code(), Code::UnknownRegion);
    // Declared again, its clear days count.
    set(&mut world, parameters());
    for _ in 0..4 {
        world.wait(2);
        world.good_day("squat");
    }
    assert!(!blocked_by(&world.against("squat"), "pain_block"), "{:?}", world.against("squat"));
}

#[test]
fn edited_lists_lead_to_no_harder_place() {
    let mut all = parameters();
    all.lifts[0].ranges = vec![mm(450.0), mm(350.0)];
    all.lifts[0].tempos = vec![Tempo { down: 2, hold: 0, up: 1 }];
    all.lifts[0].start.place.range = 1;
    let mut world = World::new(all.clone());
    world.good_day("squat");
    let granted = world.today("squat").granted;
    let to = Grant { place: Place { range: 0, ..granted.place }, work: Work::new(1, 3, kg(60.0)) };
    world.add(EventKind::RangeChanged(Move { lift: name("squat"), to, who: name("coach") }));
    all.lifts[0].tempos = vec![Tempo { down: 3, hold: 1, up: 1 }];
    set(&mut world, all);
    let now = world.today("squat").granted;
    assert_eq!((now.place.range, now.work.sets, now.work.reps), (0, 1, 3));
}

#[test]
fn what_was_trained_through_an_illness_does_not_count() {
    let mut world = World::new(parameters());
    world.good_day("squat");
    world.wait(2);
    world.add(EventKind::LayoffNoted(Layoff { from: world.day, to: None, reason: LayoffReason::Ill }));
    let passes = |world: &World| {
        let state = world.state();
        state.lift_state(&name("squat")).unwrap().now().sittings.len()
    };
    let before = passes(&world);
    world.day_report(DayClass::Within);
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true)));
    assert!(passes(&world) <= before);
}

#[test]
fn a_start_taken_before_may_lie_above_what_is_left() {
    let mut world = World::new(parameters());
    let mut all = parameters();
    all.stock = bismar::loading::Stock::new(vec![bismar::loading::Disc::new(kg(5.0), 2).unwrap()]).unwrap();
    all.lifts[1].start.work.load = kg(30.0);
    set(&mut world, all);
    assert_eq!(world.today("squat").load, Some(kg(30.0)));
}
