//! Limits of a clearance: none is lost by leaving it out, none is passed by work above it, and one of which nobody can tell
//! whether it is kept holds the lift.

use bismar::Code;
use bismar::condition::DayClass;
use bismar::gate::Outcome;
use bismar::prescription::{Change, Verdict, next_session_from};
use bismar::quantity::Rpe;
use bismar::reason::Shortfall;
use bismar::record::*;
use bismar::text::Words;

use crate::world::{World, kg, lift, mm, name, parameters, says};

fn limited(limits: Vec<ClearanceLimits>) -> EventKind {
    let given = Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"));
    EventKind::ClearanceRecorded(given.with_limits(limits))
}

fn knee() -> ClearanceLimits {
    ClearanceLimits::default().with_region(name("knee"))
}

#[test]
fn a_clearance_with_limits_says_them_and_each_limits_something() {
    let mut world = World::new(parameters());
    world.add(limited(vec![knee().with_load(kg(30.0))]));
    world.wait(1).day_report(DayClass::Within);
    let before = world.today("squat").load;
    assert_eq!(before, Some(kg(30.0)));
    let refusals = [
        (vec![], Code::EmptyList, "kind.clearance_recorded.limits"),
        (vec![knee()], Code::MissingField, "kind.clearance_recorded.limits[0]"),
        (
            vec![knee().with_load(kg(40.0)), ClearanceLimits::default()],
            Code::MissingField,
            "kind.clearance_recorded.limits[1]",
        ),
    ];
    for (limits, code, field) in refusals {
        let error = world.turned_away(limited(limits));
        assert_eq!(error.code(), code);
        assert!(error.field().ends_with(field), "{}", error.field());
        assert_eq!(world.today("squat").load, before);
    }
    // Nor is a limit of any other clearance an empty one.
    let all_clear = Clearance::new(ClearanceStatus::Cleared, name("clinic")).with_limits(vec![knee()]);
    assert_eq!(world.turned_away(EventKind::ClearanceRecorded(all_clear)).code(), Code::MissingField);
    for limit in [
        knee().with_load(kg(40.0)),
        knee().with_effort(Rpe::new(7.0).unwrap()),
        knee().with_no_breath_hold(true),
        knee().with_no_loaded_flexion(true),
        knee().with_range(mm(300.0)),
    ] {
        world.add(limited(vec![limit]));
    }
    // The newer clearance that says so ends them.
    world.clear();
    assert_eq!(world.today("squat").load, Some(kg(60.0)));
}

/// The empty bar weighs 20 kg, and no more than 10 kg is allowed.
#[test]
fn no_work_above_a_limit_is_a_pass_where_nothing_is_so_light() {
    let with = |kind: &dyn Fn(&World) -> EventKind| {
        let mut all = parameters();
        all.lifts[0].start.work.load = kg(20.0);
        let mut world = World::new(all);
        world.add(kind(&world));
        world.day_report(DayClass::Within);
        assert_eq!(world.today("squat").verdict, Verdict::Rest);
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(20.0), 2, true)));
        world
    };
    let lower = |world: &World| {
        let given = Override::new(name("squat"), kg(10.0), name("coach"));
        EventKind::CoachOverride(given.with_expires(world.day.plus(20).unwrap()))
    };
    for world in [with(&|_| limited(vec![knee().with_load(kg(10.0))])), with(&lower)] {
        let state = world.state();
        let now = state.lift_state(&name("squat")).unwrap().now();
        assert_eq!(now.sittings.last().unwrap().outcome, Outcome::NotScored);
        assert_eq!(now.short, Some(Shortfall::Limit));
    }
}

/// How deep a lift goes that names no ranges nobody can tell.
#[test]
fn a_lift_without_ranges_waits_under_a_limit_of_range() {
    let mut world = World::new(parameters());
    world.add(limited(vec![knee().with_range(mm(300.0))]));
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert_eq!((today.verdict, today.load, today.sets), (Verdict::Rest, None, 0));
    assert!(says(&today, "clearance_range"), "{:?}", today.reasons);
    // Either is enough, and both are said.
    assert!(today.would_change.contains(&Change::ClearanceOrRanges), "{:?}", today.would_change);
    let said = Words::plain().change(&Change::ClearanceOrRanges);
    assert!(["ranges", "clearance", ", or "].iter().all(|part| said.contains(part)), "{said}");
    assert!(!today.would_change.contains(&Change::Clearance), "{:?}", today.would_change);
    let mut cleared = world.clone();
    cleared.clear();
    assert_eq!(cleared.today("squat").verdict, Verdict::Train);
    let sheet = |world: &World| {
        let state = world.state();
        let session = next_session_from(&state, &Plan::of([name("squat")]), world.day).unwrap();
        Words::of(state.parameters().unwrap()).session(&session).to_string()
    };
    let why = "declares no ranges";
    assert!(sheet(&world).contains(why), "{}", sheet(&world));
    // The lift of another region trains.
    assert_eq!(world.today("press").verdict, Verdict::Train);
    // Once its ranges are declared it trains within the limit.
    let mut all = parameters();
    all.lifts[0] = lift("squat", "knee", 60.0).with_ranges(vec![mm(300.0), mm(500.0)]);
    world.add(EventKind::ParametersChanged(Box::new(all)));
    world.day_report(DayClass::Within);
    assert!(world.today("squat").load.is_some());
    // Of one that declares them it is not said.
    all = parameters();
    all.lifts[0] = lift("squat", "knee", 60.0).with_ranges(vec![mm(500.0), mm(700.0)]);
    world.add(EventKind::ParametersChanged(Box::new(all)));
    world.day_report(DayClass::Within);
    let today = world.today("squat");
    assert!(says(&today, "clearance_range") && !sheet(&world).contains(why), "{}", sheet(&world));
    assert!(today.would_change.contains(&Change::Clearance), "{:?}", today.would_change);
}

/// What is done in spite of a limit that no range is known to keep shows nothing.
#[test]
fn no_work_is_a_pass_while_no_range_is_known_to_keep_the_limit() {
    let mut deep = parameters();
    deep.lifts[0].ranges = vec![mm(200.0), mm(100.0)];
    for all in [parameters(), deep] {
        let mut world = World::new(all);
        world.add(limited(vec![knee().with_range(mm(300.0))]));
        world.day_report(DayClass::Within);
        assert_eq!(world.today("squat").verdict, Verdict::Rest);
        world.train_with(LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true)));
        let state = world.state();
        let now = state.lift_state(&name("squat")).unwrap().now();
        assert_eq!(now.sittings.last().unwrap().outcome, Outcome::NotScored);
        assert_eq!(now.short, Some(Shortfall::Limit));
    }
}
