//! The demo log: what the generator makes, and on its last day one lift of each kind that a newcomer should see.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may panic")]

use bismar::prescription::{LiftToday, Verdict, next_session};
use bismar::progression::{MoveOutlook, Status, fold};
use bismar::reason::Reason;
use bismar::record::{Dimension, EventKind, Log, Plan, StartsFrom};
use bismar::rehearsal::{Severity, check};
use scenario::{Wanted, make};

#[path = "../examples/shared/scenario.rs"]
mod scenario;

const LOG: &str = include_str!("../examples/data/demo-log.json");
const PLAN: &str = include_str!("../examples/data/demo-plan.json");
/// The day that the README asks for.
const TODAY: &str = "2026-08-27";

fn log() -> Log {
    Log::from_json(LOG).unwrap()
}

fn lifts() -> Vec<LiftToday> {
    let plan = Plan::from_json(PLAN).unwrap();
    next_session(&log(), &plan, TODAY.parse().unwrap()).unwrap().lifts
}

fn lift(id: &str) -> LiftToday {
    lifts().into_iter().find(|lift| lift.lift.as_str() == id).unwrap()
}

#[test]
fn row_80_the_committed_demo_is_what_the_generator_makes() {
    let made = make(&Wanted::default()).unwrap();
    assert!(made.log_json == LOG, "examples/data/demo-log.json: run examples/generate_log");
    assert!(made.plan_json == PLAN, "examples/data/demo-plan.json: run examples/generate_log");
    assert_eq!(made.last_day.to_string(), TODAY);
    assert!(include_str!("../README.md").contains(TODAY));
}

#[test]
fn one_lift_is_held() {
    let held = lift("box squat");
    assert_eq!((held.verdict, held.status.clone()), (Verdict::Train, Status::Holding));
    let MoveOutlook::Blocked { by, .. } = &held.outlook else { panic!("{:?}", held.outlook) };
    assert_eq!(by.first(), Some(&Reason::GateNotOpen));
    assert!(held.load.is_some());
}

#[test]
fn one_lift_has_a_step_on_offer() {
    let offered = lift("supported row");
    let MoveOutlook::OnOffer { to } = offered.outlook else { panic!("{:?}", offered.outlook) };
    assert_eq!(offered.verdict, Verdict::Train);
    assert!(to.load() > offered.granted.load());
    // Until the coach takes it, the load stays.
    assert!(offered.load.unwrap() <= offered.granted.load());
}

#[test]
fn one_lift_is_eased() {
    let eased = lift("strict press");
    assert_eq!((eased.verdict, eased.status.clone()), (Verdict::EaseOff, Status::Holding));
    let shoulder =
        |reason: &Reason| matches!(reason, Reason::PainBlock { region, .. } if region.as_str() == "shoulder");
    assert!(eased.reasons.iter().any(shoulder), "{:?}", eased.reasons);
    assert!(eased.load.unwrap() < eased.granted.load());
}

#[test]
fn one_lift_comes_back_after_a_break_at_its_height() {
    let back = lift("deadlift");
    let Status::Returning { way, .. } = &back.status else { panic!("{:?}", back.status) };
    assert_eq!((way.gap, way.row), (35, 2));
    assert!(back.load.unwrap() < way.cap);
    assert_eq!(back.height.map(bismar::quantity::Length::mm), Some(225.0));
}

#[test]
fn the_log_shows_what_a_log_may_hold() {
    let log = log();
    assert!(log.lifter.invented);
    let EventKind::DayReport(report) = &log.events.last().unwrap().kind else { panic!("no questions") };
    assert_eq!(report.asks, Some(Vec::new()));
    assert_eq!(report.pain.as_ref().unwrap().len(), 1);
    let kinds: std::collections::BTreeSet<&str> = log.events.iter().map(|event| event.kind.name()).collect();
    for kind in [
        "advance_accepted",
        "clearance_recorded",
        "coach_override",
        "correction",
        "layoff_noted",
        "next_day_report",
        "parameters_changed",
        "session_missed",
    ] {
        assert!(kinds.contains(kind), "{kind}");
    }
    let state = fold(&log).unwrap();
    assert!(state.asks().is_empty());
    assert!(state.clearance().is_some_and(|given| given.expires >= TODAY.parse().unwrap()));
    let all = state.parameters().unwrap();
    let deadlift = all.lifts.iter().find(|lift| lift.starts_from == StartsFrom::Floor).unwrap();
    // It came down from the blocks to the floor; since then its load moves.
    assert_eq!((deadlift.ranges.len(), deadlift.moving), (3, Dimension::Load));
    assert!(!all.blocks.is_empty());
}

/// An override that the coach gave in the demo lowers the load, whatever its reason.
#[test]
fn the_demo_overrules_downward_only() {
    let log = log();
    for (at, event) in log.events.iter().enumerate() {
        let EventKind::CoachOverride(given) = &event.kind else { continue };
        let before = log.clone().with_events(log.events[..at].to_vec());
        let granted = fold(&before).unwrap().lift_state(&given.lift).unwrap().grant().load();
        assert!(given.load < granted, "{given:?}");
    }
}

#[test]
fn nothing_blocks_the_demo_before_anyone_lifts() {
    let parameters = scenario::parameters(Wanted::default().lifts).unwrap();
    let blocking = |finding: &bismar::rehearsal::Finding| finding.severity == Severity::Blocks;
    let found: Vec<_> = check(&parameters, None).into_iter().filter(blocking).collect();
    assert_eq!(found, []);
}
