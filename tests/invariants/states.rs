//! States of a lift: their names, what wakes a rest, overrides, and the last day of what runs out.

use super::course::*;
use super::hand::overrule;
use super::hundred::*;
use bismar::condition::DayClass;
use bismar::progression::Status;
use bismar::quantity::Mass;
use bismar::reason::Reason;
use bismar::record::*;

#[test]
fn every_state_has_its_name_and_all_but_two_are_trained() {
    let named = [
        (Status::Learning, "learning", true),
        (Status::Holding, "holding", true),
        (Status::ReadyToAdvance, "ready_to_advance", true),
        (Status::Consolidating, "consolidating", true),
        (Status::SteppingBack, "stepping_back", true),
        (Status::Resting, "resting", true),
        (Status::Returning, "returning", true),
        (Status::Maintaining, "maintaining", true),
        (Status::StoppedRefer, "stopped_refer", false),
        (Status::Retired, "retired", false),
    ];
    assert_eq!(named.map(|(status, ..)| status), Status::ALL);
    for (status, text, trained) in named {
        assert_eq!((status.as_str(), status.is_trained()), (text, trained));
        let written = bismar::value::Value::write(&status).unwrap().to_json();
        assert_eq!(written, format!("\"{text}\""));
    }
}

#[test]
fn a_rest_ends_with_the_next_session_where_it_left_off() {
    // A session that nobody marks moves nothing by itself.
    for (given, after) in [
        (Role::Train, (Role::Train, Status::Holding)),
        (Role::Maintain, (Role::Maintain, Status::Maintaining)),
    ] {
        let mut course = holding(hundred());
        role(&mut course, PRESS, given);
        course.step(&Step::Layoff(1));
        assert_eq!(lift(&course, PRESS).status, Status::Resting);
        wait(&mut course, 3);
        course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
        assert_eq!((lift(&course, PRESS).role, lift(&course, PRESS).status), after);
    }
    let mut course = holding(hundred());
    role(&mut course, PRESS, Role::Rest);
    wait(&mut course, 3);
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    assert_eq!((lift(&course, PRESS).role, lift(&course, PRESS).status), (Role::Train, Status::Holding));
    // Calibration that was not done goes on.
    let mut course = trained(hundred(), None);
    role(&mut course, PRESS, Role::Rest);
    wait(&mut course, 3);
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    assert_eq!((lift(&course, PRESS).learned, lift(&course, PRESS).status), ((2, 2), Status::Learning));
}

fn free() -> Parameters {
    let mut all = hundred();
    all.lifts[PRESS].ceiling = None;
    all
}

/// What the override still allows, in kilograms.
fn still_allowed(course: &Course) -> Option<i64> {
    lift(course, PRESS).overruled.as_ref().map(|given| kilograms(given.load))
}

#[test]
fn a_step_back_ends_an_override_above_it_and_no_other() {
    for (load, left, limit) in
        [(110.0, None, 95), (100.0, None, 95), (95.0, Some(95), 95), (90.0, Some(90), 90)]
    {
        let mut course = holding(free());
        assert!(overrule(&mut course, load, 60));
        for _ in 0..2 {
            course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
            wait(&mut course, 2);
        }
        assert_eq!(
            (lift(&course, PRESS).status, still_allowed(&course)),
            (Status::SteppingBack, left),
            "{load}"
        );
        assert_eq!(kilograms(course.limit(PRESS)), limit, "{load}");
    }
}

#[test]
fn a_stop_ends_an_override_above_the_grant_and_no_other() {
    for (load, left) in [(110.0, None), (100.0, Some(100)), (90.0, Some(90))] {
        let mut course = holding(free());
        assert!(overrule(&mut course, load, 60));
        course.add(EventKind::PainReport(Course::pain("shoulder", 6)));
        assert_eq!(
            (lift(&course, PRESS).status, still_allowed(&course)),
            (Status::StoppedRefer, left),
            "{load}"
        );
    }
}

#[test]
fn a_lift_let_go_one_step_easier_keeps_no_override_above_that() {
    for (load, left, limit) in
        [(100.0, None, 95), (98.0, None, 95), (95.0, Some(95), 95), (90.0, Some(90), 90)]
    {
        // Given before the stop, then during it.
        for before in [true, false] {
            let mut course = holding(free());
            if before {
                overrule(&mut course, load, 60);
            }
            course.add(EventKind::PainReport(Course::pain("shoulder", 6)));
            if !before {
                overrule(&mut course, load, 60);
            }
            course.clear(true);
            course.step(&Step::SignOff(2));
            assert_eq!(
                (lift(&course, PRESS).status, lift(&course, PRESS).tuple.load),
                (Status::Returning, kg(95.0))
            );
            assert_eq!(
                (still_allowed(&course), kilograms(course.limit(PRESS))),
                (left, limit),
                "{load} {before}"
            );
        }
    }
}

#[test]
fn a_break_ends_an_override_above_what_it_leaves() {
    for (load, left, limit) in [(110.0, None, 90), (95.0, None, 90), (85.0, Some(85), 85)] {
        let mut course = holding(free());
        assert!(overrule(&mut course, load, 60));
        after_session(&mut course, 30);
        assert_eq!(kilograms(course.limit(PRESS)), limit, "{load}");
        course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
        assert_eq!(still_allowed(&course), left, "{load}");
    }
}

#[test]
fn an_override_holds_up_to_its_last_day() {
    for (load, easing) in [(90.0, 90), (110.0, 110)] {
        let mut course = holding(free());
        assert!(overrule(&mut course, load, 5));
        let said = |course: &Course, days: i32| {
            let decision = on(course, PRESS, course.day.plus(days).unwrap());
            let named =
                decision.reasons.iter().any(|reason| matches!(reason, Reason::OverrideInForce { .. }));
            (kilograms(decision.limit), named)
        };
        assert_eq!([0, 4, 5].map(|days| said(&course, days)), [(easing, true); 3]);
        assert_eq!([6, 8].map(|days| said(&course, days)), [(100, false); 2]);
        // What happens on the last day finds it still in force, and on the day after no longer.
        wait(&mut course, 5);
        course.add(EventKind::BodyMassRecorded(kg(80.0)));
        assert_eq!(still_allowed(&course), Some(easing));
        wait(&mut course, 1);
        course.add(EventKind::BodyMassRecorded(kg(80.0)));
        assert_eq!(still_allowed(&course), None);
    }
}

#[test]
fn an_offer_stands_up_to_its_last_day() {
    let mut all = hundred();
    all.policy.offer_days = 5;
    // A window that no move has opened makes nothing wait.
    let mut course = holding(all);
    course.morning(false);
    let ready = lift(&course, PRESS);
    assert_eq!((ready.status, ready.offered), (Status::ReadyToAdvance, Some(course.day)));
    let status = |days: i32| {
        let decision = on(&course, PRESS, course.day.plus(days).unwrap());
        (decision.status, decision.expires.map(|day| day.since(course.day)))
    };
    assert_eq!(status(5), (Status::ReadyToAdvance, Some(6)));
    assert_eq!(status(6), (Status::Holding, None));
}

#[test]
fn every_flag_of_a_session_survives_storing() {
    let mut course = holding(hundred());
    // A confirmed pass, an unconfirmed critical fail on a bad day, and work below the grant.
    course.morning(false);
    course.day_report(DayClass::BadAgreeing, true);
    course.session(4, Quality::CriticalLost, Weight::AtLimit, Some(0));
    wait(&mut course, 1);
    course.session(4, Quality::Clean, Weight::Lighter, Some(0));
    let kept = lift(&course, PRESS).sittings.clone();
    let flags: Vec<[bool; 4]> = kept
        .iter()
        .map(|sitting| [sitting.critical, sitting.bad_day, sitting.confirmed, sitting.at_grant])
        .collect();
    let (yes, no) = (true, false);
    assert_eq!(flags[flags.len() - 3..], [[no, no, yes, yes], [yes, yes, no, yes], [no, no, no, no]]);
    let text = bismar::value::Value::write(course.state()).unwrap().to_json();
    let read: bismar::progression::State = bismar::value::Value::from_json(&text).unwrap().read().unwrap();
    assert_eq!(read.lifts[PRESS].sittings, kept);
    assert_eq!(read.lifts[PRESS].peak, Mass::from_kg(100.0).unwrap());
}
