//! Single courses that once raised a load or let a stop go.

use super::course::*;
use super::prescription::plan;
use bismar::caution::Caution;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::prescription::{Verdict, next_session_from};
use bismar::progression::MoveOutlook;
use bismar::quantity::{Length, Rir};
use bismar::reason::Reason;
use bismar::record::*;

fn weeks(count: usize) -> Course {
    Course::play(&vec![Step::CleanWeek; count])
}

fn clearance(course: &mut Course, expires: i32) {
    let expires = Some(course.day.plus(expires).unwrap());
    let (status, who) = (ClearanceStatus::Cleared, name("clinic"));
    course.add(EventKind::ClearanceRecorded(Clearance::new(status, who).with_expires(expires)));
}

#[test]
fn a_short_gap_within_a_long_return_restores_nothing() {
    let mut course = weeks(4);
    let before = course.stands(PRESS).grant.load();
    course.step(&Step::Wait(50));
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    let returned = course.stands(PRESS).grant.load();
    assert!(returned <= before.scaled_down(0.8).unwrap());
    course.step(&Step::Wait(13));
    course.clean_week();
    course.clean_week();
    assert!(course.stands(PRESS).grant.load() <= returned);
}

#[test]
fn a_short_break_restores_only_on_a_session_without_pain() {
    let mut course = weeks(4);
    let before = course.stands(PRESS).grant.load();
    course.step(&Step::Wait(10));
    course.session(4, Quality::Clean, Weight::AtLimit, Some(4));
    assert!(course.stands(PRESS).grant.load() < before);
}

#[test]
fn a_second_report_of_the_day_takes_nothing_back() {
    let mut course = weeks(3);
    let fever = DayReport::default().with_asks(vec![Ask::Fever]);
    course.add(EventKind::DayReport(fever));
    course.add(EventKind::DayReport(DayReport::default().with_minutes(40)));
    let session = next_session_from(course.state(), &plan(), course.day).unwrap();
    assert!(session.lifts.iter().all(|lift| lift.verdict == Verdict::Stop));
    // Nor does a night without an answer.
    let tomorrow = course.day.plus(1).unwrap();
    let session = next_session_from(course.state(), &plan(), tomorrow).unwrap();
    assert!(session.lifts.iter().all(|lift| lift.verdict == Verdict::Stop));
    for decision in course.state().decide(tomorrow).unwrap() {
        let MoveOutlook::Blocked { by, .. } = decision.outlook else { panic!("a move on a day with fever") };
        assert!(by.contains(&Reason::AsksFirst { ask: Ask::Fever, since: course.day }));
    }
}

#[test]
fn a_clearance_that_has_run_out_lifts_no_stop() {
    let mut course = weeks(3);
    course.step(&Step::Symptom);
    clearance(&mut course, -1);
    course.step(&Step::SignOff(0));
    assert!(course.all_stand().into_iter().all(|lift| lift.status == STOPPED));
    clearance(&mut course, 10);
    course.step(&Step::Wait(30));
    course.step(&Step::SignOff(0));
    assert!(course.all_stand().into_iter().all(|lift| lift.status == STOPPED));
    clearance(&mut course, 10);
    course.step(&Step::SignOff(0));
    assert!(course.all_stand().into_iter().all(|lift| lift.status == RETURNING));
}

#[test]
fn an_easing_override_never_becomes_a_raise() {
    let mut course = weeks(3);
    course.step(&Step::Override { lift: 2, up: false, days: 19 });
    let eased = course.limit(PRESS);
    for _ in 0..8 {
        course.day = course.day.plus(1).unwrap();
        course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
        assert!(course.limit(PRESS) <= eased);
    }
}

#[test]
fn strict_pain_holds_the_partner_trained_in_the_same_session() {
    let mut course = weeks(3);
    course.session(3, Quality::Clean, Weight::AtLimit, Some(2));
    assert!(course.stands(FORGIVING).partner_pain);
}

#[test]
fn a_rest_does_not_skip_what_was_not_finished() {
    let mut course = Course::new(parameters(1));
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(course.stands(PRESS).status, LEARNING);
    course.step(&Step::Layoff(1));
    course.day = course.day.plus(3).unwrap();
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    assert!(matches!(course.stands(PRESS).status, LEARNING));
}

#[test]
fn a_reordered_ladder_moves_nobody() {
    let mut course = weeks(5);
    let rung = course.stands(PRESS).grant.place.rung;
    let before = parameters(1).lifts[PRESS].rungs[usize::from(rung)].id.clone();
    let mut reordered = parameters(1);
    reordered.lifts[PRESS].rungs.swap(1, 2);
    course.add(EventKind::ParametersChanged(Box::new(reordered.clone())));
    let after = course.stands(PRESS).grant.place.rung;
    // The rung of the same id, wherever it now stands in the list.
    assert_eq!(reordered.lifts[PRESS].rungs[usize::from(after)].id, before);
    assert_ne!(after, rung, "the press stood on one of the two");
}

#[test]
fn before_any_parameters_a_symptom_is_kept_and_no_region_is_known() {
    let mut course = Course::new(parameters(1));
    course.log.events.clear();
    course.states.clear();
    course.add(EventKind::SymptomReport(SymptomReport::new(vec![StopSign::ChestPain])));
    let kind = EventKind::PainReport(Course::pain("hip", 4));
    assert_eq!(super::hand::turned_away(&course, kind), Some(Code::NoParameters));
    course.add(EventKind::ParametersChanged(Box::new(parameters(1))));
    assert!(course.all_stand().iter().all(|lift| lift.status == STOPPED));
}

fn press_in(course: &mut Course, setup: Option<Setup>) {
    let lift = course.lift(PRESS, Quality::Clean, Weight::AtLimit).with_setup(setup);
    course.train(vec![lift], Some(Vec::new()));
    course.day = course.day.plus(1).unwrap();
}

#[test]
fn saying_nothing_of_the_rack_keeps_what_was_last_said() {
    let mut course = weeks(3);
    press_in(&mut course, Some(Setup::default().with_company(ByTheBar::Alone)));
    press_in(&mut course, None);
    assert!(course.stands(PRESS).unguarded);
    press_in(&mut course, Some(Setup::default().with_company(ByTheBar::Spotter)));
    assert!(!course.stands(PRESS).unguarded);
}

#[test]
fn an_eased_lift_leaves_three_in_reserve_whatever_the_plan_says() {
    let mut course = weeks(3);
    let mut plan = plan();
    for lift in &mut plan.lifts {
        lift.reserve = Some(Rir::whole(0));
    }
    course.day_report(DayClass::Below, true);
    let session = next_session_from(course.state(), &plan, course.day).unwrap();
    for lift in &session.lifts {
        assert_eq!((lift.verdict, lift.reserve), (Verdict::EaseOff, Rir::whole(3)));
        assert!(lift.reasons.contains(&Reason::ReserveFloor { reserve: Rir::whole(3) }));
    }
}

#[test]
fn an_effort_limit_of_one_region_is_no_limit_for_another() {
    let mut course = weeks(1);
    let mut limited = |region: Option<&str>| {
        let region = region.map(name);
        let limits = vec![ClearanceLimits::default().with_region(region).with_no_breath_hold(true)];
        let (status, who) = (ClearanceStatus::ClearedWithLimits, name("clinic"));
        course.add(EventKind::ClearanceRecorded(Clearance::new(status, who).with_limits(limits)));
        next_session_from(course.state(), &plan(), course.day).unwrap().cautions
    };
    assert!(limited(Some("hip")).contains(&Caution::NoPressureLimit));
    assert!(!limited(None).contains(&Caution::NoPressureLimit));
}

#[test]
fn a_second_correction_without_a_day_keeps_the_day_of_the_first() {
    let mut course = weeks(1);
    let wrong = course.next_number();
    course.add(EventKind::BodyMassRecorded(kg(81.0)));
    let moved = course.day.plus(-1).unwrap();
    let mass = |value: f64| Some(Box::new(EventKind::BodyMassRecorded(kg(value))));
    course.add(EventKind::Correction(Correction::new(wrong).with_day(moved).with_kind(mass(82.0))));
    let first = course.next_number() - 1;
    course.add(EventKind::Correction(Correction::new(first).with_kind(mass(83.0))));
    assert_eq!(course.state().body_mass(), Some((moved, kg(83.0))));
}

/// Weeks until the press has moved once and stands ready again, which its window of eight weeks does not allow yet.
fn waiting_for_the_window(parameters: Parameters) -> Course {
    let mut course = Course::play_with(parameters, &vec![Step::CleanWeek; 3]);
    while course.stands(PRESS).moves.is_empty() || course.stands(PRESS).status != READY {
        course.clean_week();
    }
    course
}

#[test]
fn an_offer_waits_while_only_the_window_of_weeks_blocks_it() {
    let mut course = waiting_for_the_window(parameters(1));
    let (moved, offered) = (course.stands(PRESS).moves[0].0, course.stands(PRESS).offered().unwrap());
    while course.day.since(moved) < 56 {
        let decision = course.state().decide(course.day).unwrap().swap_remove(PRESS);
        assert_eq!(decision.status.as_str(), READY, "{} days after the move", course.day.since(moved));
        assert!(decision.expires.unwrap() > course.day);
        course.clean_week();
    }
    assert!(course.day.since(offered) > i32::from(Policy::default().offer_days));
    course.clean_week();
    assert_eq!(course.stands(PRESS).grant.load(), kg(47.5), "taken as soon as the window allows it");
}

#[test]
fn an_offer_that_waits_still_goes_when_its_evidence_is_old() {
    let mut set = parameters(1);
    set.policy.layoff = Vec::new();
    let mut course = waiting_for_the_window(set);
    for _ in 0..3 {
        course.clean_week();
    }
    let decided = |days: i32| {
        let today = course.day.plus(days).unwrap();
        course.state().decide(today).unwrap().swap_remove(PRESS)
    };
    let expires = decided(0).expires.unwrap();
    let last = course.stands(PRESS).last_session.unwrap();
    assert_eq!(expires, last.plus(i32::from(Policy::default().freshness_days) + 1).unwrap());
    let left = expires.since(course.day);
    assert_eq!(decided(left - 1).expires, Some(expires));
    assert!(decided(left).expires.is_none() && decided(left).status.as_str() == HOLDING);
}

#[test]
fn an_illness_counts_for_every_lift_that_comes_back_later() {
    let mut course = weeks(3);
    let before = course.stands(PRESS).grant.load();
    course.step(&Step::Layoff(2));
    course.step(&Step::Wait(5));
    course.clear(true);
    course.session(3, Quality::Clean, Weight::AtLimit, Some(0));
    course.step(&Step::Wait(1));
    assert!(course.limit(PRESS) < before, "two rows down after an illness, whatever came back first");
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    let press = course.stands(PRESS);
    assert_eq!((press.status, press.ill), (RETURNING, false));
}

/// Three clean weeks at the fuller of two ranges, then a clearance that limits the range: where the lift stands, what
/// it does today, whether the range is among the reasons, and whether a move is on offer.
fn limited_range(ranges: [f64; 2], limit: f64) -> (u8, Verdict, bool, bool) {
    let mut all = parameters(1);
    for lift in &mut all.lifts {
        lift.ranges = ranges.iter().map(|range| Length::from_mm(*range).unwrap()).collect();
        lift.start.place.range = 1;
    }
    let mut course = Course::play_with(all, &vec![Step::CleanWeek; 3]);
    let limits = vec![ClearanceLimits::default().with_range(Length::from_mm(limit).unwrap())];
    let (status, who) = (ClearanceStatus::ClearedWithLimits, name("clinic"));
    course.add(EventKind::ClearanceRecorded(Clearance::new(status, who).with_limits(limits)));
    let session = next_session_from(course.state(), &plan(), course.day).unwrap();
    let lift = &session.lifts[STRICT];
    let offered = matches!(lift.outlook, MoveOutlook::OnOffer { .. });
    (lift.granted.place.range, lift.verdict, lift.reasons.contains(&Reason::ClearanceRange), offered)
}

#[test]
fn a_clearance_on_range_holds_a_lift_that_stands_deeper() {
    let depths = [300.0, 400.0];
    assert_eq!(limited_range(depths, 400.0), limited_range(depths, 450.0), "within");
    assert_eq!(limited_range(depths, 400.0).0, 1);
    assert_eq!(limited_range(depths, 350.0), (0, Verdict::Train, true, false), "the easier range, no move");
    assert_eq!(limited_range(depths, 200.0), (0, Verdict::Rest, true, false), "not even the easier one");
    // Heights above the floor: deeper is shorter.
    let heights = [200.0, 100.0];
    assert!(!limited_range(heights, 100.0).2);
    assert_eq!(limited_range(heights, 150.0), (0, Verdict::Train, true, false));
    assert_eq!(limited_range(heights, 250.0), (0, Verdict::Rest, true, false));
}
