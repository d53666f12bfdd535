//! What single guards say, and when they say nothing.

use super::course::*;
use super::hand::*;
use super::prescription::plan;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::prescription::{Change, Verdict, next_session_from};
use bismar::reason::Reason;
use bismar::record::*;

#[test]
fn an_agreed_level_is_spoken_of_only_while_it_hurts() {
    let said = |score: u8, days: i32| {
        let mut course = Course::play(&[Step::Usual(2)]);
        course.day = course.day.plus(days).unwrap();
        course.session(1, Quality::Clean, Weight::AtLimit, Some(score));
        let by = blocked(&course, STRICT);
        let unsteady = by.iter().any(|reason| matches!(reason, Reason::UsualPainUnsteady { .. }));
        (unsteady, by.iter().any(|reason| matches!(reason, Reason::UsualPainReview { .. })))
    };
    // One session is not yet a steady row of three; after more than 90 days the level is due for a look.
    assert_eq!((said(1, 0), said(0, 0)), ((true, false), (false, false)));
    assert_eq!((said(1, 90), said(0, 90)), ((true, false), (false, false)));
    assert_eq!((said(1, 91), said(0, 91)), ((true, true), (false, false)));
}

#[test]
fn a_session_waits_for_its_morning_whatever_it_came_to() {
    let provisional = |quality: Quality| {
        let mut course = ready(|_| {});
        let session = course.next_number();
        course.session(4, quality, Weight::AtLimit, Some(0));
        let before = blocked(&course, PRESS).contains(&Reason::PassProvisional { session });
        course.morning(false);
        let after = blocked(&course, PRESS).contains(&Reason::PassProvisional { session });
        (before, after)
    };
    // A worse session never permits what a better one would have to wait for.
    for quality in [Quality::Clean, Quality::ManyMisses, Quality::Unscored] {
        assert_eq!(provisional(quality), (true, false), "{quality:?}");
    }
}

#[test]
fn after_a_session_that_did_not_pass_no_move_is_taken_however_open_the_gate() {
    // A fail on a confirmed day below the usual, and a session that nobody marked, leave the two passes before them.
    for (quality, class) in [
        (Quality::Unscored, DayClass::Within),
        (Quality::ManyMisses, DayClass::Below),
        (Quality::Clean, DayClass::Within),
    ] {
        let passed = quality == Quality::Clean;
        let mut course = ready(|_| {});
        course.day = course.day.plus(1).unwrap();
        course.day_report(class, true);
        course.session(4, quality, Weight::AtLimit, Some(0));
        course.morning(false);
        course.day_report(DayClass::Within, true);
        assert!(decision(&course, PRESS).gate.open, "{quality:?}");
        let expected = if passed { Vec::new() } else { vec![Reason::GateNotOpen] };
        assert_eq!(blocked(&course, PRESS), expected, "{quality:?}");
        let session = next_session_from(course.state(), &plan(), course.day).unwrap();
        let change = if passed { Change::CoachAccepts } else { Change::PassingSessions { count: 1 } };
        assert_eq!(session.lifts[PRESS].would_change, [change], "{quality:?}");
        let to = with(&course.stands(PRESS).grant, |to| to.work.reps = 6);
        assert_eq!(coach_moves(&course, to), passed, "{quality:?}");
        course.accept(PRESS as u8);
        assert_eq!(course.limit(PRESS) == kg(43.5), passed, "{quality:?}");
    }
}

#[test]
fn no_decision_is_made_about_the_past() {
    let course = Course::play(&[Step::CleanWeek]);
    let last = course.state().last().unwrap().0;
    assert!(course.state().decide(last).is_ok());
    let error = course.state().decide(last.plus(-1).unwrap()).unwrap_err();
    assert_eq!(error.code(), Code::BeforeLastEvent);
}

#[test]
fn a_break_is_named_until_the_lift_has_come_back() {
    let breaks = |course: &Course| {
        let mut said = decision(course, PRESS).reasons;
        said.retain(|reason| matches!(reason, Reason::Layoff { .. } | Reason::HalfSets { .. }));
        said
    };
    let mut course = ready(|_| {});
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(breaks(&course), []);
    course.day = course.day.plus(5).unwrap();
    assert_eq!(breaks(&course), [], "five days are no break");
    course.day = course.day.plus(20).unwrap();
    // 25 days: the second row, nine tenths of 40 kg.
    let half = Reason::HalfSets { sessions: 2 };
    let layoff = || Reason::Layoff { gap: 25, row: 2, load: kg(36.0) };
    assert_eq!(breaks(&course), [layoff(), half]);
    // It is named until the way back is over, with the days that it had then.
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(breaks(&course), [layoff(), Reason::HalfSets { sessions: 1 }]);
    course.day = course.day.plus(2).unwrap();
    assert_eq!(breaks(&course), [layoff(), Reason::HalfSets { sessions: 1 }]);
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(breaks(&course), [], "two passes end it");
}

#[test]
fn pain_once_asked_about_today_has_been_asked_about() {
    // After pain of 4 a day on which nobody asks is one for technique alone.
    let was_asked = |course: &Course| {
        let session = next_session_from(course.state(), &plan(), course.day).unwrap();
        session.lifts[PRESS].verdict != Verdict::TechniqueOnly
    };
    let hurt = || {
        let mut course = Course::play(&[Step::CleanWeek, ache(SHOULDER, 4)]);
        course.day = course.day.plus(1).unwrap();
        course
    };
    let asked = |reports: &[bool]| {
        let mut course = hurt();
        reports.iter().for_each(|asked| course.day_report(DayClass::Within, *asked));
        was_asked(&course)
    };
    assert!(asked(&[true]) && asked(&[true, false]) && asked(&[false, true]));
    assert!(!asked(&[false]) && !asked(&[false, false]));
    let mut course = hurt();
    let again = Some(vec![Course::pain("shoulder", 4)]);
    course.add(EventKind::DayReport(DayReport::default().with_pain(again)));
    course.day = course.day.plus(1).unwrap();
    course.day_report(DayClass::Within, false);
    assert!(!was_asked(&course), "that was yesterday");
}

#[test]
fn an_illness_is_not_forgotten_for_a_holiday() {
    let noted = |reasons: &[LayoffReason]| {
        let mut course = Course::new(parameters(1));
        for reason in reasons {
            let (from, reason) = (course.day, *reason);
            course.add(EventKind::LayoffNoted(Layoff::new(from, reason)));
        }
        let ill = course.stands(PRESS).ill;
        assert_eq!(blocked(&course, PRESS).contains(&Reason::ClearanceAfterIllness), ill);
        assert_eq!(course.state().ill_since().is_some(), ill);
        ill
    };
    use LayoffReason::{Ill, Planned, Well};
    assert!([&[Ill, Planned], &[Ill, Well], &[Planned, Ill]].iter().all(|reasons| noted(*reasons)));
    assert!(!noted(&[Well, Planned]));
}

#[test]
fn a_strict_lift_may_reach_its_share_of_the_forgiving_one_and_no_more() {
    // The strict lift stands at 50 kg; its step goes to 55.
    for (forgiving, ratio, cap, held) in
        [(55.0, 1.0, 55.0, false), (53.5, 1.0, 53.5, true), (60.0, 0.9, 54.0, true), (50.0, 1.1, 55.0, false)]
    {
        let mut all = parameters(1);
        all.lifts[FORGIVING].start.work.load = kg(forgiving);
        all.pairs[0].ratio_cap = ratio;
        let mut course = Course::new(all);
        for _ in 0..2 {
            course.session(3, Quality::Clean, Weight::AtLimit, Some(0));
            course.morning(false);
            course.day = course.day.plus(6).unwrap();
        }
        course.day_report(DayClass::Within, true);
        let said = blocked(&course, STRICT);
        assert_eq!(said, if held { vec![Reason::PairCap { load: kg(cap) }] } else { Vec::new() });
    }
}
