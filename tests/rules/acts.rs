//! Rules 4, 5, 7, 10, 11 and 16: what is open stays open, what is over is not said any more, and one day is one.

use super::world::*;
use bismar::condition::DayClass;
use bismar::gate::{Gate, PassRun, Requirement};
use bismar::loading::{Disc, Stock};
use bismar::prescription::{Change, Verdict};
use bismar::progression::MoveOutlook;
use bismar::quantity::Rir;
use bismar::record::*;

fn squat_at(load: f64, clean: bool) -> LiftSession {
    LiftSession::as_granted(name("squat"), World::sets(kg(load), 2, clean))
}

/// The squat passes on a day of fever; on the next day the fever is over, and pain is asked with another lift.
fn passed_in_a_fever(role: Option<Role>) -> World {
    let mut world = World::on_offer("squat");
    let set = |world: &mut World, role| world.add(EventKind::RoleSet(RoleSet::new(name("squat"), role)));
    if let Some(role) = role {
        set(&mut world, role);
    } else {
        let fever = DayReport::all_well(DayClass::Within).with_asks(vec![Ask::Fever]);
        world.add(EventKind::DayReport(fever));
    }
    world.train_with(squat_at(60.0, true));
    world.wait(1);
    match role {
        Some(_) => set(&mut world, Role::Train),
        None => world.add(EventKind::AskAnswered(AskAnswered::new(Ask::Fever, name("coach"), false))),
    }
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_pain(None)));
    let press = LiftSession::as_granted(name("press"), World::sets(kg(40.0), 2, true));
    world.train_all(vec![press], Some(Vec::new()));
    world
}

#[test]
fn rule_04_a_session_done_while_something_was_open_waits_for_its_morning_too() {
    let unheard =
        |role: &Option<Role>| !blocked_by(&passed_in_a_fever(*role).against("squat"), "pass_provisional");
    let unheard: Vec<_> = [None, Some(Role::Rest)].into_iter().filter(unheard).collect();
    assert!(unheard.is_empty(), "nothing waits after {unheard:?}");
    for role in [None, Some(Role::Rest)] {
        let mut world = passed_in_a_fever(role);
        // The answer about that session lets go of it.
        let events = world.log.events.iter();
        let sessions = events.filter(|event| matches!(event.kind, EventKind::SessionRecorded(_)));
        let session = sessions.map(|event| event.sequence).rev().nth(1).unwrap();
        world.add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(Vec::new())));
        let against = world.against("squat");
        assert!(!blocked_by(&against, "pass_provisional"), "{role:?}: {against:?}");
    }
}

fn refused_override(world: &mut World) {
    let without_a_reason = Override::new(name("squat"), kg(70.0), name("coach"));
    world.add(EventKind::CoachOverride(without_a_reason));
    assert!(says(&world.today("squat"), "override_refused"));
}

/// A squat that is still learned: no step is taken.
fn refused_step() -> World {
    let mut world = World::new(parameters());
    world.train("squat", true);
    world.add(EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach"))));
    assert!(says(&world.today("squat"), "move_refused"));
    world
}

fn down_to_50() -> EventKind {
    let to = Grant::new(Work::new(2, 5, kg(50.0))).with_place(Place::at_rung(1));
    EventKind::VariantChanged(Move::new(name("squat"), to, name("coach")))
}

#[test]
fn rule_16_a_load_that_is_taken_replaces_one_whose_last_day_was_past() {
    // A load for good, after an override whose last day was past: that one was not refused, and allows nothing any more.
    let mut world = World::on_offer("squat");
    world.override_to("squat", 70.0, -6);
    assert!(says(&world.today("squat"), "override_past"));
    world.add(EventKind::CoachOverride(Override::new(name("squat"), kg(50.0), name("coach"))));
    assert!(!says(&world.today("squat"), "override_past"), "{:?}", world.today("squat").reasons);
}

/// A step taken a moment ago is not taken twice by telling it twice; after the coach moved the lift down that day it is another
/// one that is asked for, and it is taken or refused by name.
#[test]
fn rule_16_a_step_asked_for_again_after_a_move_down_that_day_is_not_passed_over() {
    let accept = || EventKind::AdvanceAccepted(Advance::new(name("squat"), name("coach")));
    let mut world = World::on_offer("squat");
    world.add(accept());
    let stepped = world.today("squat").granted;
    world.add(accept());
    let today = world.today("squat");
    assert!(!says(&today, "move_refused") && today.granted == stepped, "told twice: {:?}", today.reasons);
    let override_down = EventKind::CoachOverride(Override::new(name("squat"), kg(50.0), name("coach")));
    let to = Grant::new(Work::new(2, 5, kg(50.0))).with_place(Place::at_rung(0));
    let easier_rung = EventKind::VariantChanged(Move::new(name("squat"), to, name("coach")));
    for (how, down) in [("a load", override_down), ("by hand", down_to_50()), ("a rung", easier_rung)] {
        let mut world = world.clone();
        world.add(down);
        let lower = world.today("squat").granted;
        world.add(accept());
        let today = world.today("squat");
        assert!(says(&today, "move_refused") || today.granted != lower, "{how}: {:?}", today.reasons);
    }
}

#[test]
fn rule_16_of_two_acts_that_were_refused_the_later_one_is_said() {
    let mut world = World::on_offer("squat");
    world.override_to("squat", 70.0, -6);
    refused_override(&mut world);
    assert!(!says(&world.today("squat"), "override_past"), "it was not the last word");
    world.override_to("squat", 70.0, -6);
    let today = world.today("squat");
    assert!(says(&today, "override_past") && !says(&today, "override_refused"), "{:?}", today.reasons);
    // A step that was asked for is another matter than a load.
    let mut world = refused_step();
    world.override_to("squat", 70.0, -6);
    let today = world.today("squat");
    assert!(says(&today, "override_past") && says(&today, "move_refused"), "{:?}", today.reasons);
}

#[test]
fn rule_05_a_day_of_learning_is_one_also_where_its_second_session_fails() {
    let mut all = parameters();
    all.lifts[0].learning_sessions = Some(4);
    let done = |world: &World| world.state().lift_state(&name("squat")).unwrap().now().calibration.done;
    let mut world = World::new(all.clone());
    world.train_with(squat_at(60.0, true));
    assert_eq!(done(&world), 1);
    // Other discs between the two, so that they are judged apart.
    all.stock = Stock::new(vec![Disc::new(kg(20.0), 2).unwrap().with_diameter(mm(450.0)).unwrap()]).unwrap();
    all.lifts[1].start.work.load = kg(20.0);
    world.add(EventKind::ParametersChanged(Box::new(all)));
    world.train_with(squat_at(60.0, false));
    assert_eq!(done(&world), 1);
}

/// A press that is the strict lift of a pair with the squat, and shares the knee with it.
fn paired() -> Parameters {
    let mut all = parameters();
    all.lifts[1].regions = vec![name("knee")];
    all.pairs = vec![Pair::new(name("press"), name("squat"))];
    all.policy.region_moves = 4;
    all
}

#[test]
fn rule_07_the_days_to_wait_after_the_partner_are_as_many_as_it_takes() {
    for rest_days in [1, 2, 3] {
        let mut all = paired();
        all.policy.pair_rest_days = rest_days;
        let mut world = World::new(all);
        for _ in 0..4 {
            world.day_report(DayClass::Within);
            world.train("squat", true);
            world.morning();
            world.wait(3);
        }
        world.day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "{:?}", world.against("squat"));
        let press = LiftSession::as_granted(name("press"), World::sets(kg(40.0), 2, true));
        world.train_with(press);
        // On the partner's own day, and on the day after it.
        for _ in 0..2 {
            let changes = world.today("squat").would_change;
            let days = changes.iter().find_map(|change| match change {
                Change::Days { count } => Some(i32::from(*count)),
                _ => None,
            });
            let days = days.unwrap_or_else(|| panic!("{changes:?}"));
            let mut early = world.clone();
            early.wait(days - 1).day_report(DayClass::Within);
            assert!(blocked_by(&early.against("squat"), "pair_rest"), "{rest_days}: {days}");
            let mut then = world.clone();
            then.wait(days).day_report(DayClass::Within);
            assert!(!blocked_by(&then.against("squat"), "pair_rest"), "{rest_days}: {days}");
            world.wait(1).day_report(DayClass::Within);
        }
    }
}

#[test]
fn rule_10_no_offer_in_an_easy_week_that_a_break_has_made_already() {
    for days in [8, 9, 10] {
        let mut world = World::on_offer("squat");
        // The last session lies three days back.
        world.wait(days - 3).day_report(DayClass::Within);
        assert!(world.is_offered("squat"), "{days}: {:?}", world.against("squat"));
        let today = world.planned(Plan::of([name("squat")]).with_easy_week(true));
        let MoveOutlook::Blocked { by, .. } = &today.outlook else {
            panic!("{days}: a step in an easy week")
        };
        assert!(blocked_by(by, "break_counts"), "{by:?}");
        assert!(today.would_change.contains(&Change::EasyWeekOver), "{:?}", today.would_change);
        // The break was the easy week: the work itself is the usual.
        assert_eq!((today.verdict, today.load), (Verdict::Train, Some(kg(60.0))));
    }
}

#[test]
fn rule_11_of_the_plans_minutes_and_the_days_the_fewer_count() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_minutes(0)));
    let today = world.planned(Plan::of([name("squat")]).with_minutes(60));
    assert_eq!((today.verdict, today.load, today.sets), (Verdict::Rest, None, 0));

    let mut world = World::on_offer("squat");
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_minutes(60)));
    let today = world.planned(Plan::of([name("squat")]).with_minutes(0));
    assert_eq!((today.verdict, today.load, today.sets), (Verdict::Rest, None, 0));

    // Six minutes and four for each set.
    let mut world = World::on_offer("squat");
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_minutes(10)));
    assert_eq!(world.planned(Plan::of([name("squat")]).with_minutes(60)).sets, 1);
}

/// A squat of one set, with a gate that one set can open.
pub fn of_one_set() -> Parameters {
    let mut all = parameters();
    all.lifts[0].start.work.sets = 1;
    all.lifts[0].gate = Gate::new(Requirement::PassRun(PassRun::new(4, 5, 2).unwrap())).unwrap();
    all
}

/// What is printed: where, how much, and how hard.
fn printed(world: &World, plan: Plan) -> (Verdict, impl PartialEq + std::fmt::Debug) {
    let today = world.planned(plan);
    (today.verdict, (today.place, today.load, today.sets, today.reps, today.reserve))
}

#[test]
fn rule_02_easier_is_what_is_printed_easier_than_without_the_easing() {
    let squat = || LiftPlan::new(name("squat"));
    let plan_of = |lift: LiftPlan| Plan::of([]).with_lifts(vec![lift]);
    let trained = |all: Parameters| {
        let mut world = World::new(all);
        world.passing_day("squat");
        world.wait(-1).day_report(DayClass::Within);
        world
    };
    // Alone without pins four are left in reserve anyway.
    let mut alone = of_one_set();
    alone.lifts[0].over_the_body = true;
    // A clearance asks for as much.
    let mut limited = trained(of_one_set());
    let effort = ClearanceLimits::default().with_effort(bismar::quantity::Rpe::new(6.0).unwrap());
    limited.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"))
            .with_expires(limited.day.plus(300).unwrap())
            .with_limits(vec![effort]),
    ));
    // 62 and the granted 61 are both made of 60.
    let mut rounds = World::granted_what_is_no_longer_made();
    rounds.day_report(DayClass::Within);
    rounds.override_to("squat", 62.0, 9);
    let four = || squat().with_reserve(Rir::whole(4));
    let situations = [
        ("alone without pins", trained(alone), plan_of(squat())),
        ("an effort that a clearance limits", limited, plan_of(squat())),
        ("one set by plan", trained(parameters()), plan_of(four().with_sets(1))),
        ("one set by time", trained(parameters()), plan_of(four()).with_minutes(10)),
        ("one rounded load", rounds, plan_of(four().with_sets(1))),
    ];
    let mut the_same = Vec::new();
    for (why, world, plan) in situations {
        let (usual, easy) = (printed(&world, plan.clone()), printed(&world, plan.with_easy_week(true)));
        assert_eq!(usual.0, Verdict::Train, "{why}");
        assert!(easy.0 > Verdict::Train, "{why}");
        if usual.1 == easy.1 {
            the_same.push(why);
        }
    }
    assert!(the_same.is_empty(), "the same work is called easier: {the_same:?}");
}

/// The squat stands at the empty bar on its lowest rung: nothing is lighter there.
fn at_the_lightest() -> World {
    let mut all = parameters();
    all.lifts[0].start = Grant::new(Work::new(4, 5, kg(20.0)));
    let mut world = World::new(all);
    (0..2).for_each(|_| world.passing_day("squat"));
    world.day_report(DayClass::Within);
    world
}

fn half_of_the_work_is_over_after_passes(mut world: World, why: &str) {
    world.wait(2).day_report(DayClass::Within);
    assert!(says(&world.today("squat"), "half_for_lighter"), "{why}: {:?}", world.today("squat").reasons);
    for _ in 0..6 {
        world.passing_day("squat");
    }
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(!says(&today, "half_for_lighter"), "{why}: {:?} {:?}", today.status, today.reasons);
    assert_eq!((today.verdict, today.sets), (Verdict::Train, 4), "{why}");
}

#[test]
fn rule_02_half_of_the_work_is_no_state_for_good() {
    let role = |world: &mut World, role| world.add(EventKind::RoleSet(RoleSet::new(name("squat"), role)));
    // Given up on its way back from a stop, and taken up again.
    let mut retired = at_the_lightest();
    retired.pain("knee", 8);
    retired.clear();
    retired.sign_off(SignOffScope::Region(name("knee")));
    role(&mut retired, Role::Retire);
    role(&mut retired, Role::Train);
    assert_eq!(retired.today("squat").status.as_str(), "learning");
    half_of_the_work_is_over_after_passes(retired, "given up and taken up again");
    // Kept within a band, with two fails in a row.
    let mut kept = at_the_lightest();
    let band = RoleSet::new(name("squat"), Role::Maintain).with_not_below(kg(20.0));
    kept.add(EventKind::RoleSet(band));
    for _ in 0..2 {
        kept.train("squat", false);
        kept.morning();
        kept.wait(2).day_report(DayClass::Within);
    }
    half_of_the_work_is_over_after_passes(kept, "kept within its band");
}

/// A clean session while a fall waits for its answer counts as a day of calibration, and ends none.
#[test]
fn calibration_does_not_end_while_something_comes_first() {
    for ask in [Ask::Fall, Ask::NewMedicine] {
        let mut all = parameters();
        all.lifts[0].learning_sessions = Some(2);
        let mut world = World::new(all);
        world.passing_day("squat");
        world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(vec![ask])));
        world.train_with(squat_at(60.0, true));
        assert_eq!(world.today("squat").status.as_str(), "learning");
        // Answered, the next clean session ends it.
        world.wait(2).clear();
        world.add(EventKind::AskAnswered(AskAnswered::new(ask, name("clinic"), true)));
        world.passing_day("squat");
        assert_ne!(world.today("squat").status.as_str(), "learning");
    }
}
