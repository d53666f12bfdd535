//! What reaches the bar, and how it is explained.

use super::course::*;
use super::hand::{limited, sentence};
use super::hundred::*;
use super::moves::crate_cases;
use bismar::condition::DayClass;
use bismar::prescription::{Change, LiftToday, Verdict, next_session_from, sideways};
use bismar::progression::{MoveOutlook, Status};
use bismar::quantity::Mass;
use bismar::reason::Reason;
use bismar::record::*;
use proptest::prelude::*;

pub fn plan() -> Plan {
    Plan::of(["strict", "forgiving", "press"].map(name))
}

/// Every lift of the course as it is granted.
pub fn whole_plan(course: &Course) -> Plan {
    Plan::of(course.set().lifts.iter().map(|lift| lift.id.clone()))
}

pub fn loads(course: &Course) -> Vec<Option<Mass>> {
    let session = next_session_from(course.state(), &whole_plan(course), course.day).unwrap();
    session.lifts.iter().map(|lift| lift.load).collect()
}

/// With a sore region or a missing implement: easier rungs and those that no chain compares, never a harder one.
#[test]
fn beside_a_rung_there_is_nothing_harder() {
    let mut lift = parameters(1).lifts[STRICT].clone();
    let beside = |lift: &LiftParameters, rung| {
        let names = sideways(lift, lift.start.place.with_rung(rung));
        names.iter().map(|name| name.as_str().to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(beside(&lift, 0), [""; 0]);
    assert_eq!(beside(&lift, 1), ["easy"]);
    assert_eq!(beside(&lift, 2), ["easy", "middle"]);
    lift.rungs.push(Rung::new(name("on one leg"), Vec::new()));
    assert_eq!(beside(&lift, 0), ["on one leg"]);
    assert_eq!(beside(&lift, 3), ["easy", "middle", "hard"]);
}

/// Forty, sixty and eighty parts of a hundred of the work load, by fewer repetitions each.
#[test]
fn a_warm_up_rises_to_the_work_load() {
    let course = trained(hundred(), YOUNG);
    let session = next_session_from(course.state(), &plan(), course.day).unwrap();
    let press = &session.lifts[PRESS];
    assert_eq!(press.load, Some(kg(100.0)));
    let sets: Vec<_> = press.warm_up.iter().map(|set| (set.load, set.reps, set.reference)).collect();
    assert_eq!(sets, [(kg(40.0), 5, false), (kg(60.0), 3, false), (kg(80.0), 2, false)]);
}

/// What would change a lift's place names the clearance that has run out, and nothing asks for one that holds.
#[test]
fn a_clearance_that_ran_out_is_among_what_would_change() {
    for (days, asked) in [(-1, true), (0, false)] {
        let mut course = trained(hundred(), YOUNG);
        limited(&mut course, days, Vec::new());
        let session = next_session_from(course.state(), &plan(), course.day).unwrap();
        assert_eq!(session.lifts[PRESS].would_change.contains(&Change::Clearance), asked, "{days}");
    }
}

/// What stands against a step of that lift by what anybody can read of the state, whatever the guards list.
fn due(course: &Course, lift: &LiftToday) -> Vec<&'static str> {
    let (state, today) = (course.state(), course.day);
    let stands = state.lift_state(&lift.lift).unwrap();
    let regions = || stands.parameters().regions.iter().filter_map(|id| state.region(id));
    let given = state.clearance().unwrap();
    let refused = given.status == ClearanceStatus::NotCleared;
    let class = match state.class_on(today) {
        DayClass::Below => Some("day_below"),
        DayClass::BelowSingle => Some("day_below_single"),
        DayClass::Within | DayClass::Above => None,
        _ => Some("day_unknown"),
    };
    let status = match stands.status() {
        Status::Consolidating => Some("consolidating"),
        Status::SteppingBack { .. } => Some("stepping_back"),
        Status::Returning { .. } => Some("returning"),
        Status::Maintaining => Some("maintaining"),
        Status::StoppedRefer { .. } => Some("stopped"),
        Status::Retired => Some("retired"),
        _ => None,
    };
    // A break changes how a lift stands when it is next looked at.
    let status = status.filter(|_| lift.status.as_str() == stands.status().as_str());
    let held = [
        (state.stop().is_some(), "symptom_stop"),
        (regions().any(|region| region.stop.is_some()), "pain_stop"),
        (regions().any(|region| region.clear_needed > 0), "pain_block"),
        (!state.asks().is_empty(), "asks_first"),
        (state.ill_since().is_some(), "clearance_after_illness"),
        (refused, "not_cleared"),
        (!refused && given.expires < today, "clearance_expired"),
        (state.unknown_events() > 0, "unknown_event_present"),
        (state.pain_asked() != Some(true), "pain_not_asked"),
    ];
    let held = held.into_iter().filter_map(|(holds, code)| holds.then_some(code));
    held.chain(class).chain(status).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate_cases()))]

    /// Nothing after the gate raises the load above what the gate granted.
    #[test]
    fn nothing_exceeds_the_grant(drawn in any_course(), days in 0_i32..60, minutes in prop::option::of(5_u16..90), easy in any::<bool>()) {
        let course = Course::of(&drawn);
        let today = course.day.plus(days).unwrap();
        let mut plan = whole_plan(&course);
        plan.minutes = minutes;
        plan.easy_week = easy;
        let session = next_session_from(course.state(), &plan, today).unwrap();
        for (lift, decision) in session.lifts.iter().zip(course.state().decide(today).unwrap()) {
            prop_assert!(lift.load.is_none_or(|load| load <= decision.limit));
            prop_assert!(lift.sets <= decision.grant.work.sets && lift.reps <= decision.grant.work.reps);
            prop_assert!(lift.warm_up.iter().all(|set| lift.load.is_some_and(|load| set.load <= load)));
            prop_assert!(lift.loaded.as_ref().is_none_or(|loaded| Some(loaded.total) == lift.load));
            if lift.status.is_stopped() { prop_assert_eq!(lift.verdict, Verdict::Stop); }
            prop_assert!(lift.verdict < Verdict::Rest || lift.load.is_none());
        }
    }

    #[test]
    fn invariant_32_explainable(drawn in any_course()) {
        let course = Course::of(&drawn);
        let session = next_session_from(course.state(), &whole_plan(&course), course.day).unwrap();
        for lift in &session.lifts {
            prop_assert!(!lift.reasons.is_empty(), "{} has no reason", lift.lift);
            prop_assert!(!lift.would_change.is_empty());
            match &lift.outlook {
                MoveOutlook::Blocked { by, .. } => {
                    prop_assert!(!by.is_empty());
                    let listed: Vec<&str> = by.iter().map(Reason::code).collect();
                    for code in due(&course, lift) {
                        prop_assert!(listed.contains(&code), "{code} is not among {listed:?}");
                    }
                    for reason in by { prop_assert!(sentence(reason).is_none_or(|text| !text.is_empty()), "{} has no sentence", reason.code()); }
                }
                MoveOutlook::OnOffer { to } => {
                    prop_assert!(due(&course, lift).is_empty(), "on offer in spite of {:?}", due(&course, lift));
                    prop_assert!(to.load() >= lift.granted.load() || to.place != lift.granted.place);
                }
            }
            for reason in &lift.reasons { prop_assert!(sentence(reason).is_none_or(|text| !text.is_empty()), "{} has no sentence", reason.code()); }
        }
        prop_assert_eq!(&session.parameters, &course.state().digest());
    }
}
