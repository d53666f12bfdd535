//! What a coach may overrule, for how long, and what no coach overrules.

use super::course::*;
use super::hand::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::quantity::Mass;
use bismar::reason::Reason;
use bismar::record::*;

/// The press was trained today and stands at 40 kg.
fn trained() -> Course {
    let mut course = Course::new(parameters(1));
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(course.limit(PRESS), kg(40.0));
    course
}

/// The limit so many days later, on a day on which everything was asked.
fn limit_after(course: &Course, days: i32) -> Mass {
    let mut later = course.clone();
    later.day = later.day.plus(days).unwrap();
    later.day_report(DayClass::Within, true);
    later.limit(PRESS)
}

#[test]
fn an_override_counts_to_its_last_day_and_no_longer() {
    for load in [42.0, 35.0] {
        let mut course = trained();
        assert!(overrule(&mut course, load, 5));
        assert_eq!((limit_after(&course, 0), limit_after(&course, 5)), (kg(load), kg(load)));
        assert_eq!(limit_after(&course, 6), kg(40.0));
        assert_eq!(course.stands(PRESS).grant.load(), kg(40.0), "the grant itself stays");
        let until = Some(course.day.plus(5).unwrap());
        let said = Reason::OverrideInForce { load: kg(load), who: name("coach"), until };
        assert!(decision(&course, PRESS).reasons.contains(&said));
        course.day = course.day.plus(6).unwrap();
        assert!(!decision(&course, PRESS).reasons.contains(&said));
    }
}

#[test]
fn an_override_upward_needs_a_reason_and_an_end() {
    let course = trained();
    let end = Some(course.day.plus(5).unwrap());
    for (why, expires) in [(None, end), (Some(" "), end), (Some("to see"), None), (None, None)] {
        let mut course = course.clone();
        let event = course.next_number();
        course.add(EventKind::CoachOverride(given(42.0, why, expires)));
        let lift = course.stands(PRESS);
        assert_eq!((lift.grant.load(), lift.overruled.is_none()), (kg(40.0), true), "{why:?} {expires:?}");
        assert_eq!(course.limit(PRESS), kg(40.0));
        assert!(decision(&course, PRESS).reasons.contains(&Reason::OverrideRefused { event }));
        // Said until the lift is next trained.
        course.step(&Step::Missed);
        course.session(1, Quality::Clean, Weight::AtLimit, Some(0));
        assert!(decision(&course, PRESS).reasons.contains(&Reason::OverrideRefused { event }));
        course.day = course.day.plus(1).unwrap();
        course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
        assert!(!decision(&course, PRESS).reasons.contains(&Reason::OverrideRefused { event }));
    }
}

#[test]
fn an_override_to_the_granted_load_ends_an_earlier_one() {
    let mut course = trained();
    assert!(overrule(&mut course, 42.0, 5));
    let sittings = course.stands(PRESS).sittings.clone();
    course.add(EventKind::CoachOverride(given(40.0, None, None)));
    let lift = course.stands(PRESS);
    assert!(lift.overruled.is_none() && lift.refused.is_none());
    assert_eq!((course.limit(PRESS), &lift.sittings), (kg(40.0), &sittings), "nothing else changes");
}

#[test]
fn an_override_that_has_ended_already_does_nothing() {
    let mut course = trained();
    let before = course.state().clone();
    assert!(overrule(&mut course, 42.0, -1));
    // Nothing but that it was refused.
    let past = course.day.plus(-1).ok();
    assert_eq!(course.stands(PRESS).override_past, past);
    let said = with(stands(&before, PRESS).now, |now| now.override_past = past);
    assert_eq!(*course.stands(PRESS).now, said);
    // Nor does it take the place of one in force, which is lower.
    assert!(overrule(&mut course, 30.0, 10));
    overrule(&mut course, 36.0, -1);
    assert_eq!((limit_after(&course, 0), limit_after(&course, 10)), (kg(30.0), kg(30.0)));
}

#[test]
fn no_override_passes_the_lowest_ceiling() {
    let with = |ceiling: Option<f64>, limit: Option<f64>| {
        let mut all = parameters(1);
        all.lifts[PRESS].ceiling = ceiling.map(kg);
        let mut course = Course::new(all);
        course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
        if let Some(load) = limit {
            let load = Some(kg(load));
            limited(&mut course, 100, vec![ClearanceLimits::default().with_load(load)]);
        }
        course
    };
    for (ceiling, limit, lowest) in [
        (Some(45.0), None, 45.0),
        (None, Some(45.0), 45.0),
        (Some(45.0), Some(43.0), 43.0),
        (Some(43.0), Some(45.0), 43.0),
    ] {
        let course = with(ceiling, limit);
        for (load, taken) in [(42.0, true), (lowest, true), (lowest + 1.0, false), (60.0, false)] {
            let mut course = course.clone();
            assert_eq!(overrule(&mut course, load, 5), taken, "{load} under {ceiling:?} and {limit:?}");
            assert_eq!(limit_after(&course, 0), kg(if taken { load } else { 40.0 }));
        }
    }
    assert!(overrule(&mut with(None, None), 60.0, 5), "nothing caps it");
}

#[test]
fn no_override_passes_a_stop_or_an_illness() {
    // The press does not load the hip.
    for (step, taken) in [
        (Step::Symptom, false),
        (ache(SHOULDER, 7), false),
        (ache(HIP, 7), true),
        (Step::Layoff(2), false),
        (Step::Layoff(0), true),
    ] {
        let mut course = trained();
        course.step(&step);
        assert_eq!(overrule(&mut course, 42.0, 5), taken, "{step:?}");
        assert_eq!(course.stands(PRESS).overruled.is_some(), taken);
        // Down is always allowed.
        assert!(overrule(&mut course, 35.0, 5));
    }
}

#[test]
fn a_load_of_the_wrong_sign_is_turned_away() {
    let course = trained();
    let end = Some(course.day.plus(5).unwrap());
    assert_eq!(turned_away(&course, EventKind::CoachOverride(given(42.0, Some("to see"), end))), None);
    let below = EventKind::CoachOverride(given(-20.0, Some("to see"), end));
    assert_eq!(turned_away(&course, below), Some(Code::NegativeLoad));
    let to = with(&course.stands(PRESS).grant, |to| to.work.load = kg(-20.0));
    let moved = EventKind::VariantChanged(Move::new(name("press"), to, name("coach")));
    assert_eq!(turned_away(&course, moved), Some(Code::NegativeLoad));
}

#[test]
fn an_override_down_without_an_end_is_the_new_place() {
    let mut course = ready(|_| {});
    course.add(EventKind::CoachOverride(given(30.0, None, None)));
    let lift = course.stands(PRESS);
    assert_eq!((lift.grant.load(), lift.overruled.is_none()), (kg(30.0), true));
    // Technique shown at 40 kg does not carry over, and nothing is on offer any more.
    assert!(lift.sittings.is_empty());
    assert_eq!(lift.status, HOLDING);
}
