//! What is said is true on the day: of the step, of the way back, of what was refused, of a stop.

use super::world::*;
use bismar::condition::DayClass;
use bismar::prescription::{Change, Verdict, next_session_from};
use bismar::quantity::Pain;
use bismar::reason::Reason;
use bismar::record::*;
use bismar::sign::{Ask, PainFeature};
use bismar::text::Words;

fn changes(world: &World) -> Vec<Change> {
    world.today("squat").would_change
}

#[test]
fn the_way_back_tells_how_many_passes_are_left() {
    let mut world = World::on_offer("squat");
    // 45 days: the second row of the table and further, two passes, each of one set of five. The gate looks at ten repetitions
    // a session and asks for two such sessions, which come after them.
    world.wait(45).day_report(DayClass::Within);
    assert!(changes(&world).contains(&Change::PassingSessions { count: 4 }), "{:?}", changes(&world));
    assert_eq!(changes(&world).iter().filter(|one| matches!(one, Change::PassingSessions { .. })).count(), 1);
    let said = Words::plain().reason(&Reason::Returning { at_most: kg(60.0) });
    assert!(said.contains("at no place past") && !said.contains("ends at"), "{said}");
}

#[test]
fn too_little_in_reserve_tells_how_many_sessions_with_enough_it_takes() {
    let hard = |world: &mut World, left: u8| {
        world.day_report(DayClass::Within);
        let mut sets = World::sets(kg(60.0), 2, true);
        sets.iter_mut().for_each(|set| set.effort = Some(Effort::Rir(bismar::quantity::Rir::whole(left))));
        world.train_with(LiftSession::as_granted(name("squat"), sets));
        world.morning();
        world.wait(2);
    };
    let mut world = World::on_offer("squat");
    (0..2).for_each(|_| hard(&mut world, 0));
    world.day_report(DayClass::Within);
    assert_eq!(changes(&world), [Change::MoreInReserve { count: 2 }]);
    hard(&mut world, 3);
    world.day_report(DayClass::Within);
    assert_eq!(changes(&world), [Change::MoreInReserve { count: 1 }]);
    hard(&mut world, 3);
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"));
}

#[test]
fn the_pair_in_one_plan_is_parted_by_leaving_one_out() {
    let mut all = parameters();
    all.lifts[1].regions = vec![name("knee")];
    all.pairs = vec![Pair::new(name("press"), name("squat"))];
    let mut world = World::new(all);
    (0..4).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    let today = world.planned(Plan::of([name("squat"), name("press")]));
    assert_eq!(today.would_change, [Change::LeaveOutPartner { partner: name("press") }]);
}

#[test]
fn what_pain_asks_for_today_is_said_only_where_it_is_done() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 4);
    world.wait(3).day_report(DayClass::Within);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Train, Some(kg(60.0))));
    let all = parameters();
    let step = Words::of(&all).one_line(&today);
    assert!(step.contains("comes after 2 sessions") && !step.contains("lower until"), "{step}");
    // Named once: the gate's own block is the same pain.
    assert_eq!(today.would_change, [Change::ClearSessions { region: name("knee"), count: 2 }]);
}

#[test]
fn a_refused_override_says_what_it_lacks() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::CoachOverride(
        Override::new(name("squat"), kg(80.0), name("coach")).with_expires(world.day.plus(9).unwrap()),
    ));
    assert!(says(&world.today("squat"), "override_refused"));
    assert!(!says(&world.today("squat"), "move_refused"));
}

#[test]
fn a_lift_whose_learning_days_are_done_is_not_called_four_of_two() {
    let said = Words::plain().reason(&Reason::LearningNotDone { done: 4, needed: 2 });
    assert!(!said.contains('4'), "{said}");
    let mut all = parameters();
    all.lifts[0].learning_sessions = Some(2);
    let mut world = World::new(all);
    for _ in 0..4 {
        world.day_report(DayClass::Within);
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 1, true)));
        world.morning();
        world.wait(2);
    }
    world.day_report(DayClass::Within);
    let named = changes(&world);
    assert!(!named.iter().any(|change| matches!(change, Change::LearningSessions { .. })), "{named:?}");
}

#[test]
fn a_way_back_names_the_stop_the_illness_and_the_age_that_nobody_told() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 7);
    world.wait(1).clear();
    world.sign_off(SignOffScope::Region(name("knee")));
    world.wait(2).day_report(DayClass::Within);
    assert!(says(&world.today("squat"), "stop_lifted"));
    let mut world = World::on_offer("squat");
    let from = world.day;
    world.add(EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Ill)));
    world.wait(7).clear();
    world.day_report(DayClass::Within);
    assert!(says(&world.today("squat"), "after_illness"));
    let mut world = World::of(Lifter::new(name("ageless")), parameters());
    world.passing_day("squat");
    world.wait(20).day_report(DayClass::Within);
    assert!(says(&world.today("squat"), "age_unknown"));
}

#[test]
fn a_stop_is_the_first_field_of_a_session_and_names_its_sign() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::PainReport(
        PainAnswer::plain(name("knee"), Pain::new(2).unwrap()).with_features(vec![PainFeature::Numbness]),
    ));
    let session = next_session_from(&world.state(), &Plan::of([name("squat")]), world.day).unwrap();
    let json = bismar::value::Value::write(&session).unwrap().to_json_pretty();
    assert!(json.trim_start_matches(['{', '\n', ' ']).starts_with("\"stops\""), "{json}");
    let stop = &session.stops[0];
    assert!(matches!(stop, Reason::PainStop { features, .. } if *features == [PainFeature::Numbness]));
    assert!(Words::plain().session(&session).stop[0].contains("numbness or weakness"));
}

#[test]
fn a_fever_alone_asks_for_the_coachs_word_and_no_clinician() {
    let mut world = World::on_offer("squat");
    let asks = |ask| Some(vec![ask]);
    let mut fall = world.clone();
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(asks(Ask::Fever))));
    fall.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(asks(Ask::Fall))));
    let sees = |world: &World| {
        world.today("squat").cautions.iter().any(|caution| caution.as_str() == "see_clinician_first")
    };
    assert!(!sees(&world) && sees(&fall));
}

#[test]
fn no_step_is_on_offer_beside_less_than_the_whole_work() {
    let world = World::on_offer("squat");
    let short = world.planned(Plan::of([name("squat")]).with_minutes(10));
    assert_eq!(short.sets, 1);
    assert_eq!(short.would_change, [Change::MoreTime]);
    let one = LiftPlan::new(name("squat")).with_sets(1);
    let planned = world.planned(Plan::of([]).with_lifts(vec![one]));
    assert_eq!(planned.would_change, [Change::WholeWork]);
}

#[test]
fn a_lift_left_out_for_time_names_no_number_of_sets() {
    let world = World::on_offer("squat");
    let plan = Plan::of([name("squat"), name("press")]).with_minutes(10);
    let lifts = next_session_from(&world.state(), &plan, world.day).unwrap().lifts;
    let left_out = lifts.iter().find(|lift| lift.verdict == Verdict::Rest).unwrap();
    assert!(says(left_out, "short_of_time") && !says(left_out, "fewer_sets"), "{:?}", left_out.reasons);
}
