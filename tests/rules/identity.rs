//! Who is meant: ids, what is not declared, and stops that no change of parameters can lose.

use super::world::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::loading::{Bar, Disc, Implement, Stock};
use bismar::prescription::Verdict;
use bismar::quantity::{Mass, Pain};
use bismar::record::*;

#[test]
fn a_region_that_is_not_declared_is_refused_and_the_declared_ones_are_named() {
    let mut world = World::on_offer("squat");
    let answer =
        PainAnswer::plain(name("Knee"), Pain::new(9).unwrap()).with_features(vec![PainFeature::Numbness]);
    let error = world.turned_away(EventKind::PainReport(answer.clone()));
    assert_eq!(error.code(), Code::UnknownRegion);
    let told = format!("{error}");
    assert!(told.contains("knee") && told.contains("neck"), "{told}");
    let session = |pain| {
        EventKind::SessionRecorded(
            Session::new(vec![LiftSession::as_granted(name("squat"), World::sets(kg(60.0), 2, true))])
                .with_pain(pain),
        )
    };
    assert_eq!(world.turned_away(session(vec![answer])).code(), Code::UnknownRegion);
}

#[test]
fn a_changed_name_changes_nothing_else() {
    let mut world = World::on_offer("squat");
    let before = world.today("squat");
    let mut all = parameters();
    all.lifts[0].name = Some(name("box squat"));
    all.lifts[0].rungs[1].name = Some(name("low box"));
    all.regions[0].name = Some(name("left knee"));
    world.add(EventKind::ParametersChanged(Box::new(all)));
    let after = world.today("squat");
    assert_eq!((before.load, before.outlook, before.status), (after.load, after.outlook, after.status));
}

#[test]
fn reordered_rungs_keep_the_place() {
    let mut world = World::on_offer("squat");
    let mut all = parameters();
    all.lifts[0].rungs.reverse();
    all.lifts[0].start.place = Place::at_rung(0);
    world.add(EventKind::ParametersChanged(Box::new(all)));
    let today = world.today("squat");
    assert_eq!((today.place.rung, today.load), (0, Some(kg(60.0))));
    assert!(world.is_offered("squat"));
}

#[test]
fn a_stop_survives_every_change_of_parameters() {
    let stopped = |world: &World, id: &str| world.today(id).verdict == Verdict::Stop;
    // The lift is given another region: its own stop stays with it, and since no lift loads the knee any more, all stop.
    let mut moved = parameters();
    moved.lifts[0].regions = vec![name("back")];
    // The lift is left out.
    let mut without = parameters();
    without.lifts.remove(0);
    // Both, with the knee no longer declared.
    let mut gone = moved.clone();
    gone.regions.remove(0);
    for changed in [moved, without, gone] {
        let mut world = World::on_offer("squat");
        world.pain("knee", 7);
        assert!(stopped(&world, "squat") && !stopped(&world, "press"));
        world.add(EventKind::ParametersChanged(Box::new(changed)));
        assert!(stopped(&world, "press"), "nobody can tell whom it still concerns");
        world.wait(1).clear();
        world.sign_off(SignOffScope::Everything);
        assert!(stopped(&world, "press"), "another sign-off does not reach it");
        world.sign_off(SignOffScope::Region(name("knee")));
        assert!(!stopped(&world, "press"));
        world.add(EventKind::ParametersChanged(Box::new(parameters())));
        world.day_report(DayClass::Within);
        assert_eq!(world.today("squat").status.as_str(), "returning");
    }
}

#[test]
fn a_stop_of_a_lift_that_is_set_aside_comes_back_with_it() {
    let mut all = parameters();
    all.lifts.push(lift("lunge", "knee", 30.0));
    let mut world = World::new(all.clone());
    world.passing_day("squat");
    world.pain("knee", 8);
    let mut without = all.clone();
    without.lifts.remove(0);
    world.add(EventKind::ParametersChanged(Box::new(without)));
    // The lunge still loads the knee, so the press may go on.
    assert_eq!(world.today("press").verdict, Verdict::Train);
    assert_eq!(world.state().set_aside().next().unwrap().status().as_str(), "stopped_refer");
    world.add(EventKind::ParametersChanged(Box::new(all)));
    assert_eq!(world.today("squat").verdict, Verdict::Stop);
}

#[test]
fn a_limit_whose_region_no_lift_loads_any_more_halts_every_lift() {
    let mut world = World::on_offer("squat");
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic"))
            .with_limits(vec![ClearanceLimits::default().with_region(name("knee")).with_load(kg(40.0))]),
    ));
    assert_eq!(world.today("squat").load, Some(kg(40.0)));
    let mut moved = parameters();
    moved.lifts[0].regions = vec![name("back")];
    world.add(EventKind::ParametersChanged(Box::new(moved)));
    for id in ["squat", "press"] {
        let today = world.today(id);
        assert_eq!(today.verdict, Verdict::Stop, "{id}");
        assert!(says(&today, "limit_without_lift"), "{id}");
    }
    world.clear();
    assert_eq!(world.today("press").verdict, Verdict::Train);
}

#[test]
fn pain_in_a_region_that_no_lift_loads_halts_every_lift() {
    let mut world = World::on_offer("squat");
    world.pain("neck", 7);
    for id in ["squat", "press"] {
        assert_eq!(world.today(id).verdict, Verdict::Stop, "{id}");
    }
}

#[test]
fn an_ask_stays_open_whatever_later_reports_leave_out() {
    let mut world = World::on_offer("squat");
    let asks = Some(vec![Ask::NewMedicine]);
    world.add(EventKind::DayReport(DayReport::all_well(DayClass::Within).with_asks(asks)));
    for _ in 0..3 {
        world.wait(1).day_report(DayClass::Within);
        assert_eq!(world.today("squat").verdict, Verdict::Stop);
    }
    let answer =
        |clinician| EventKind::AskAnswered(AskAnswered::new(Ask::NewMedicine, name("somebody"), clinician));
    assert_eq!(world.turned_away(answer(false)).code(), Code::NeedsClinician);
    // Nor does a clearance close it, whoever is said to have given it.
    let by_coach = Clearance::new(ClearanceStatus::Cleared, name("coach"));
    world.add(EventKind::ClearanceRecorded(by_coach));
    world.clear();
    assert_eq!(world.today("squat").verdict, Verdict::Stop);
    world.add(answer(true));
    assert_eq!(world.today("squat").verdict, Verdict::Train);
    // Told once more it closes nothing, and the log stays readable.
    world.add(answer(true));
    assert_eq!(world.today("squat").verdict, Verdict::Train);
}

#[test]
fn an_unknown_kind_of_event_is_kept_only_in_a_log_of_a_newer_version() {
    let unknown = || {
        let body = bismar::value::Value::Map(vec![("signs".into(), bismar::value::Value::List(vec![]))]);
        EventKind::Unknown(UnknownEvent::new("symptom_reprt".into(), body))
    };
    let mut world = World::on_offer("squat");
    assert_eq!(world.turned_away(unknown()).code(), Code::UnknownEvent);
    world.log.version = VERSION + 1;
    world.add(unknown());
    let today = world.today("squat");
    assert!(today.cautions.iter().any(|caution| caution.as_str() == "unknown_events"));
    assert!(blocked_by(&world.against("squat"), "unknown_event_present"));
    let text = r#"{"sequence":1,"day":"2026-01-05","kind":{"symptom_reprt":{"signs":["chest_pain"]}}}"#;
    assert_eq!(Event::from_json(text).unwrap_err().code(), Code::UnknownEvent);
}

#[test]
fn a_limit_stays_with_a_lift_that_leaves_the_region() {
    let mut all = parameters();
    all.lifts.push(lift("lunge", "knee", 30.0));
    let mut world = World::new(all.clone());
    world.passing_day("squat");
    let limit = ClearanceLimits::default().with_region(name("knee")).with_load(kg(40.0));
    world.add(EventKind::ClearanceRecorded(
        Clearance::new(ClearanceStatus::ClearedWithLimits, name("clinic")).with_limits(vec![limit]),
    ));
    assert_eq!(world.today("squat").limit, kg(40.0));
    // The lunge still loads the knee, so that nothing halts; the squat is said to load the back instead.
    all.lifts[0].regions = vec![name("back")];
    world.add(EventKind::ParametersChanged(Box::new(all)));
    assert_eq!((world.today("squat").limit, world.today("press").limit), (kg(40.0), kg(40.0)));
    assert_eq!(world.today("press").verdict, Verdict::Train);
    world.clear();
    assert_eq!(world.today("squat").limit, kg(60.0), "a clearance without the limit lifts it");
}

#[test]
fn a_start_that_cannot_be_loaded_is_refused_with_what_lies_beside_it() {
    let mut world = World::new(parameters());
    let before = world.today("squat").load;
    let mut all = parameters();
    all.lifts[0].start = all.lifts[0].start.with_work(all.lifts[0].start.work.with_load(kg(61.3)));
    let error = world.turned_away(EventKind::ParametersChanged(Box::new(all.clone())));
    assert_eq!((error.code(), error.field()), (Code::NotLoadable, "lifts[0].start.work.load"));
    let told = format!("{error}");
    assert!(told.contains("61 kg") && told.contains("62 kg"), "{told}");
    assert_eq!(world.today("squat").load, before);
    // What somebody wrote down of a load of pounds is that load.
    let pounds = |number: f64| Mass::from_lb(number).unwrap();
    all.implements[0] = Implement::Bar(Bar::new(name("bar"), pounds(45.0), Mass::ZERO).unwrap());
    all.stock = Stock::new(vec![Disc::new(pounds(25.0), 2).unwrap()]).unwrap();
    all.lifts.remove(1);
    all.lifts[0].start.work.load = kg(43.09);
    let world = World::new(all);
    assert_eq!(world.state().lifts().next().unwrap().grant().load(), pounds(95.0));
}
