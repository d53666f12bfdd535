//! Situations that look in order and are not: a height below a clearance, a correction of a day, a question not asked, an
//! illness cleared early, a coach's lower word, a fever that was over by noon, a rise within the usual scores, a rest.

use super::world::*;
use bismar::condition::DayClass;
use bismar::loading::{Disc, Stock};
use bismar::prescription::Verdict;
use bismar::quantity::{Mass, Pain};
use bismar::record::*;
use bismar::sign::Ask;

/// A pull from 325 mm without blocks, with discs that carry the bar at 225 mm.
fn pull() -> Parameters {
    let mut all = parameters();
    let disc = |mass: f64| Disc::new(kg(mass), 4).unwrap().with_diameter(mm(450.0)).unwrap();
    all.stock = Stock::new(vec![disc(20.0), disc(10.0)]).unwrap();
    all.lifts = vec![
        lift("squat", "knee", 60.0)
            .with_starts_from(StartsFrom::Floor)
            .with_ranges(vec![mm(325.0), mm(225.0)])
            .with_start(Grant::new(Work::new(3, 5, kg(60.0)))),
    ];
    all
}

fn limited(world: &mut World, limits: ClearanceLimits) {
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"))
            .with_expires(world.day.plus(300).unwrap())
            .with_limits(vec![limits]),
    ));
}

#[test]
fn no_bar_starts_below_the_height_that_a_clearance_allows() {
    let mut world = World::new(pull());
    world.day_report(DayClass::Within);
    let before = world.today("squat");
    assert!(before.load.is_some() && says(&before, "height_not_made"), "{:?}", before.reasons);
    limited(&mut world, ClearanceLimits::default().with_range(mm(325.0)));
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Rest, None), "{:?}", today.reasons);
    assert!(says(&today, "clearance_range"));
    // Blocks bring the bar to the height.
    let mut raised = pull();
    raised.blocks = vec![mm(100.0)];
    world.add(EventKind::ParametersChanged(Box::new(raised)));
    assert_eq!(world.today("squat").load, Some(kg(60.0)));
}

#[test]
fn a_correction_of_the_day_alone_keeps_what_happened() {
    let mut world = World::on_offer("squat");
    world.pain("knee", 8);
    let report = world.log.events.iter().map(|event| event.sequence).max().unwrap();
    assert_eq!(world.today("squat").verdict, Verdict::Stop);
    let day = Some(world.day.plus(-1).unwrap());
    world.add(EventKind::Correction(Correction::new(report).with_day(day)));
    let today = world.today("squat");
    assert_eq!(today.verdict, Verdict::Stop, "{:?}", today.reasons);
    assert!(says(&today, "pain_stop"));
}

#[test]
fn no_step_before_pain_was_asked_about_today() {
    let mut world = World::on_offer("squat");
    world.wait(1);
    let unasked = DayReport::all_well(DayClass::Within).with_pain(None);
    world.add(EventKind::DayReport(unasked));
    assert!(blocked_by(&world.against("squat"), "pain_not_asked"), "{:?}", world.against("squat"));
    world.day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
}

#[test]
fn an_illness_lasts_until_the_day_that_was_noted_cleared_or_not() {
    let mut world = World::on_offer("squat");
    let (from, to) = (world.day, world.day.plus(5).unwrap());
    world.add(EventKind::LayoffNoted(Layoff::new(from, LayoffReason::Ill).with_to(to)));
    world.wait(2).clear();
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Rest, None), "{:?}", today.reasons);
    assert!(says(&today, "ill_until"));
    assert!(blocked_by(&world.against("squat"), "ill_until"));
    world.wait(4).day_report(DayClass::Within);
    assert!(world.today("squat").load.is_some(), "the day after");
}

#[test]
fn a_planned_break_lasts_from_its_first_day_and_is_not_erased_by_another_note() {
    let layoff = |world: &World, from: i32, to: Option<i32>, reason| {
        let day = |days: i32| world.day.plus(days).unwrap();
        EventKind::LayoffNoted(Layoff::new(day(from), reason).with_to(to.map(day)))
    };
    let mut world = World::on_offer("squat");
    world.add(layoff(&world, 3, Some(9), LayoffReason::Planned));
    world.add(layoff(&world, 20, Some(22), LayoffReason::Well));
    let today = world.today("squat");
    assert!(today.load.is_some() && !says(&today, "resting"), "before it: {:?}", today.reasons);
    world.wait(4).day_report(DayClass::Within);
    assert!(says(&world.today("squat"), "planned_break"));
    world.wait(6).day_report(DayClass::Within);
    let after = world.today("squat");
    assert!(after.load.is_some() && !says(&after, "resting"), "after it: {:?}", after.reasons);
    // Without an end it lasts until training goes on.
    world.add(layoff(&world, 0, None, LayoffReason::Planned));
    assert_eq!(world.today("squat").verdict, Verdict::Rest);
    world.wait(5).day_report(DayClass::Within);
    assert_eq!(world.today("squat").verdict, Verdict::Rest);
    world.add(layoff(&world, -5, Some(-1), LayoffReason::Planned));
    assert!(world.today("squat").load.is_some(), "its end was noted");
}

#[test]
fn other_notes_do_not_push_an_illness_out() {
    let mut world = World::on_offer("squat");
    let note = |world: &mut World, days: (i32, i32), reason| {
        let day = |days: i32| world.day.plus(days).unwrap();
        let layoff = Layoff::new(day(days.0), reason).with_to(day(days.1));
        world.try_add(EventKind::LayoffNoted(layoff))
    };
    note(&mut world, (0, 40), LayoffReason::Ill).unwrap();
    (1..12).for_each(|day| note(&mut world, (day, day + 1), LayoffReason::Well).unwrap());
    // More breaks to come than are kept are turned away.
    let taken = (1..12).filter(|day| note(&mut world, (*day, *day + 1), LayoffReason::Planned).is_ok());
    assert_eq!(taken.count(), 7);
    world.wait(30).clear();
    world.day_report(DayClass::Within);
    assert!(says(&world.today("squat"), "ill_until"), "{:?}", world.today("squat").reasons);
}

#[test]
fn the_coachs_lower_word_outlasts_a_break() {
    let mut world = World::on_offer("squat");
    let granted = world.today("squat").granted.work.load;
    let lower = Mass::from_kg(granted.kg() - 5.0).unwrap();
    world.override_to("squat", lower.kg(), 60);
    world.wait(30).day_report(DayClass::Within);
    (0..3).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(says(&today, "override_in_force"), "{:?}", today.reasons);
    assert!(today.load.is_some_and(|load| load <= lower));
    assert!(!world.is_offered("squat"));
}

#[test]
fn no_step_on_the_day_of_a_fever_and_no_pass_in_one() {
    let mut world = World::on_offer("squat");
    world.wait(1);
    let fever = DayReport::all_well(DayClass::Within).with_asks(vec![Ask::Fever]);
    world.add(EventKind::DayReport(fever.clone()));
    world.add(EventKind::AskAnswered(AskAnswered::new(Ask::Fever, name("coach"), false)));
    assert!(blocked_by(&world.against("squat"), "ask_of_today"), "{:?}", world.against("squat"));
    world.wait(1).day_report(DayClass::Within);
    assert!(world.is_offered("squat"), "the day after: {:?}", world.against("squat"));

    let passes = |world: &World| world.today("squat").evidence.len();
    let mut ill = World::new(parameters());
    (0..2).for_each(|_| ill.passing_day("squat"));
    let before = passes(&ill);
    ill.wait(1);
    ill.add(EventKind::DayReport(fever));
    let load = ill.state().lift_state(&name("squat")).unwrap().grant().load();
    ill.train_with(LiftSession::as_granted(name("squat"), World::sets(load, 3, true)));
    assert_eq!(passes(&ill), before);
}

#[test]
fn pain_that_rises_is_eased_though_each_score_is_small() {
    let mut world = World::on_offer("squat");
    for score in [0, 1, 2] {
        world.wait(2).day_report(DayClass::Within);
        let load = world.today("squat").granted.work.load;
        let pain = PainAnswer::plain(name("knee"), Pain::new(score).unwrap());
        let done = LiftSession::as_granted(name("squat"), World::sets(load, 3, true));
        world.train_all(vec![done], Some(vec![pain]));
        world.wait(1);
    }
    world.wait(1);
    let today = world.today("squat");
    assert!(says(&today, "pain_persists"), "{:?}", today.reasons);
    assert_eq!(today.verdict, Verdict::EaseOff);
    assert!(today.load.is_none_or(|load| load < today.granted.work.load));
}

#[test]
fn a_lift_that_the_coach_set_to_rest_rests_though_it_was_trained() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::RoleSet(RoleSet::new(name("squat"), Role::Rest)));
    let load = world.today("squat").granted.work.load;
    world.wait(1).day_report(DayClass::Within);
    world.train_with(LiftSession::as_granted(name("squat"), World::sets(load, 3, true)));
    world.morning();
    world.wait(2).day_report(DayClass::Within);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load), (Verdict::Rest, None));
    assert!(says(&today, "resting") && !world.is_offered("squat"));
}
