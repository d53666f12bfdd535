//! States of a lift: their names, what wakes a rest, overrides, and the last day of what runs out.

use super::course::*;
use super::hand::overrule;
use super::hundred::*;
use bismar::condition::DayClass;
use bismar::progression::{Purpose, State, Status, WayBack};
use bismar::reason::Reason;
use bismar::record::*;
use bismar::value::Value;

#[test]
fn every_state_has_its_name_and_all_but_two_are_trained() {
    let way = WayBack::new(kg(100.0), 2, 30);
    let since = "2025-01-06".parse().unwrap();
    let named = [
        (Status::Learning, "learning", true),
        (Status::Holding, "holding", true),
        (Status::ReadyToAdvance { since }, "ready_to_advance", true),
        (Status::Consolidating, "consolidating", true),
        (Status::SteppingBack { from: Some(kg(105.0)), passes: 1 }, "stepping_back", true),
        (Status::Resting { way: Some(way) }, "resting", true),
        (Status::Returning { way, passes: 1 }, "returning", true),
        (Status::Maintaining, "maintaining", true),
        (Status::StoppedRefer { way: None }, "stopped_refer", false),
        (Status::Retired, "retired", false),
    ];
    assert_eq!(named.each_ref().map(|(_, text, _)| *text), Status::NAMES);
    for (status, text, trained) in named {
        assert_eq!((status.as_str(), status.is_trained()), (text, trained));
        assert_eq!((status.is_stopped(), status.is_ready()), (text == STOPPED, text == READY));
        // What a status carries is written under its name; one that carries nothing is its name.
        let written = Value::write(&status).unwrap();
        let plain = written == Value::Text(text.into());
        assert!(plain || written.field(text).is_some(), "{}", written.to_json());
        assert_eq!(written.read::<Status>(), Ok(status));
    }
}

#[test]
fn a_break_ends_with_the_next_session_where_it_left_off_and_a_rest_with_the_coachs_word() {
    // A session that nobody marks moves nothing by itself.
    for (given, after) in [
        (Role::Train, (Purpose::Train, HOLDING)),
        (Role::Maintain, (Purpose::Maintain { not_below: None }, MAINTAINING)),
    ] {
        let mut course = holding(hundred());
        role(&mut course, PRESS, given);
        course.step(&Step::Layoff(1));
        assert_eq!(lift(&course, PRESS).status, RESTING);
        wait(&mut course, 3);
        course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
        assert_eq!((lift(&course, PRESS).purpose, lift(&course, PRESS).status), after);
    }
    let mut course = holding(hundred());
    role(&mut course, PRESS, Role::Rest);
    wait(&mut course, 3);
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    assert_eq!((lift(&course, PRESS).purpose, lift(&course, PRESS).status), (Purpose::Rest, RESTING));
    role(&mut course, PRESS, Role::Train);
    assert_eq!((lift(&course, PRESS).purpose, lift(&course, PRESS).status), (Purpose::Train, HOLDING));
    // Calibration that was not done goes on.
    let mut course = trained(hundred(), YOUNG);
    role(&mut course, PRESS, Role::Rest);
    wait(&mut course, 3);
    role(&mut course, PRESS, Role::Train);
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    assert_eq!((lift(&course, PRESS).learned, lift(&course, PRESS).status), ((2, 2), LEARNING));
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
fn a_step_back_ends_an_override_upward_and_no_other() {
    for (load, left, limit) in
        [(110.0, None, 95), (100.0, Some(100), 95), (95.0, Some(95), 95), (90.0, Some(90), 90)]
    {
        let mut course = holding(free());
        assert!(overrule(&mut course, load, 60));
        for _ in 0..2 {
            course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
            wait(&mut course, 2);
        }
        assert_eq!((lift(&course, PRESS).status, still_allowed(&course)), (STEPPING_BACK, left), "{load}");
        assert_eq!(kilograms(course.limit(PRESS)), limit, "{load}");
    }
}

#[test]
fn a_stop_ends_an_override_above_the_grant_and_no_other() {
    for (load, left) in [(110.0, None), (100.0, Some(100)), (90.0, Some(90))] {
        let mut course = holding(free());
        assert!(overrule(&mut course, load, 60));
        course.add(EventKind::PainReport(Course::pain("shoulder", 6)));
        assert_eq!((lift(&course, PRESS).status, still_allowed(&course)), (STOPPED, left), "{load}");
    }
}

#[test]
fn a_lift_let_go_one_step_easier_keeps_the_coachs_lower_word() {
    for (load, left, limit) in
        [(100.0, Some(100), 95), (98.0, Some(98), 95), (95.0, Some(95), 95), (90.0, Some(90), 90)]
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
                (lift(&course, PRESS).status, lift(&course, PRESS).grant.load()),
                (RETURNING, kg(95.0))
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
fn a_break_ends_an_override_upward_and_no_other() {
    for (load, left, limit) in [(110.0, None, 90), (95.0, Some(95), 90), (85.0, Some(85), 85)] {
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
            let mut course = course.clone();
            wait(&mut course, days);
            course.day_report(DayClass::Within, true);
            let decision = on(&course, PRESS, course.day);
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
    // Counted from the session that earned it, not from the morning that confirmed it.
    let earned = ready.last_session.unwrap();
    assert_eq!((ready.status, ready.offered()), (READY, Some(earned)));
    let status = |days: i32| {
        let decision = on(&course, PRESS, earned.plus(days).unwrap());
        (decision.status.as_str(), decision.expires.map(|day| day.since(earned)))
    };
    assert_eq!(status(5), (READY, Some(6)));
    assert_eq!(status(6), (HOLDING, None));
}

#[test]
fn every_flag_of_a_session_survives_storing() {
    let mut course = holding(hundred());
    // A confirmed pass, an unconfirmed critical fail on a day below the usual, and work below the grant.
    course.morning(false);
    course.day_report(DayClass::Below, true);
    course.session(4, Quality::CriticalLost, Weight::AtLimit, Some(0));
    wait(&mut course, 1);
    course.session(4, Quality::Clean, Weight::Lighter, Some(0));
    let kept = lift(&course, PRESS).sittings.clone();
    let flags: Vec<[bool; 4]> = kept
        .iter()
        .map(|sitting| [sitting.critical, sitting.below_usual, sitting.confirmed, sitting.at_grant])
        .collect();
    let (yes, no) = (true, false);
    assert_eq!(flags[flags.len() - 3..], [[no, no, yes, yes], [yes, yes, no, yes], [no, no, no, no]]);
    let read = State::from_json(&course.state().to_json().unwrap()).unwrap();
    assert_eq!(stands(&read, PRESS).sittings, kept);
    assert_eq!(stands(&read, PRESS).peak, kg(100.0));
}
