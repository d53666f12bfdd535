//! Clearance and sign-off: what they lift, how long they hold, and how far they let a lift go.

use super::course::*;
use super::hand::*;
use super::prescription::plan;
use crate::sealed::sealed;
use bismar::error::Code;
use bismar::prescription::{Verdict, next_session_from};
use bismar::progression::State;
use bismar::quantity::{Day, Length, Rpe};
use bismar::reason::Reason;
use bismar::record::*;

const HIP_PAIN: Step = ache(HIP, 7);

fn hip() -> SignOffScope {
    SignOffScope::Region(name("hip"))
}

fn gate() -> SignOffScope {
    SignOffScope::Gate(name("press"))
}

fn statuses(course: &Course) -> [&'static str; 3] {
    [STRICT, FORGIVING, PRESS].map(|at| course.stands(at).status)
}

/// A full clearance whose last day lies so many days from now.
fn cleared(course: &mut Course, days: i32) -> Day {
    let last = course.day.plus(days).unwrap();
    let (status, who) = (ClearanceStatus::Cleared, name("clinic"));
    let clearance = Clearance::new(status, who).with_expires(last);
    course.add(EventKind::ClearanceRecorded(clearance));
    last
}

#[test]
fn a_sign_off_before_the_clearance_says_nothing() {
    for (stop, scope) in [(Step::Symptom, SignOffScope::Everything), (HIP_PAIN, hip())] {
        let mut course = Course::play(std::slice::from_ref(&stop));
        // The clearance from before the stop is still in force; it is not one for this stop.
        sign_off(&mut course, scope.clone());
        course.clear(true);
        // A sign-off of something else does not complete the early one.
        sign_off(&mut course, gate());
        assert_eq!(statuses(&course)[STRICT], STOPPED, "{stop:?}");
        sign_off(&mut course, scope);
        assert_eq!(statuses(&course)[STRICT], RETURNING, "{stop:?}");
    }
}

#[test]
fn a_sign_off_counts_only_while_the_clearance_is_in_force() {
    for (stop, scope) in [(Step::Symptom, SignOffScope::Everything), (HIP_PAIN, hip())] {
        let mut course = Course::play(std::slice::from_ref(&stop));
        cleared(&mut course, 3);
        course.day = course.day.plus(4).unwrap();
        sign_off(&mut course, scope.clone());
        course.clear(true);
        sign_off(&mut course, gate());
        assert_eq!(statuses(&course)[STRICT], STOPPED, "{stop:?}");
        // On its last day it is in force.
        cleared(&mut course, 3);
        course.day = course.day.plus(3).unwrap();
        sign_off(&mut course, scope);
        assert_eq!(statuses(&course)[STRICT], RETURNING, "{stop:?}");
    }
}

#[test]
fn a_lift_under_two_stops_needs_both_signed_off() {
    let stopped = || {
        let mut course = Course::play(&[Step::Symptom, HIP_PAIN]);
        course.clear(true);
        course
    };
    let (held, back) = (STOPPED, RETURNING);
    let mut course = stopped();
    sign_off(&mut course, SignOffScope::Everything);
    assert_eq!(statuses(&course), [held, held, back], "the hip still stops its lifts");
    sign_off(&mut course, hip());
    assert_eq!(statuses(&course), [back; 3]);
    let mut course = stopped();
    sign_off(&mut course, hip());
    assert_eq!(statuses(&course), [held; 3], "the symptom still stops everything");
    sign_off(&mut course, SignOffScope::Everything);
    assert_eq!(statuses(&course), [back; 3]);
}

#[test]
fn a_stopped_lift_comes_back_a_rung_and_a_step_easier() {
    let mut course = Course::play(&[Step::Symptom]);
    course.clear(true);
    sign_off(&mut course, SignOffScope::Everything);
    // A tenth off 50 and 40 kg, from the middle of three rungs.
    for (at, before, after) in [(STRICT, 50.0, 45.0), (PRESS, 40.0, 36.0)] {
        let lift = course.stands(at);
        assert_eq!((lift.grant.place.rung, lift.grant.load()), (0, kg(after)));
        assert_eq!((lift.cap(), lift.half_sessions), (Some(kg(before)), 2));
        // It was stopped and let go today; that is no break.
        let said = decision(&course, at).reasons;
        assert!(said.contains(&Reason::Returning { at_most: kg(before) }), "{said:?}");
        assert!(!said.iter().any(|reason| matches!(reason, Reason::Layoff { .. })), "{said:?}");
    }
}

#[test]
fn a_stopped_lift_that_rests_or_was_given_up_is_taken_up_a_rung_and_a_step_easier() {
    for (role, meanwhile, taken_up) in [(Role::Rest, RESTING, RETURNING), (Role::Retire, RETIRED, LEARNING)] {
        let mut course = ready(|_| {});
        course.step(&Step::Symptom);
        let set = |role| EventKind::RoleSet(RoleSet::new(name("press"), role));
        course.add(set(role));
        assert_eq!(statuses(&course)[PRESS], STOPPED);
        course.clear(true);
        sign_off(&mut course, SignOffScope::Everything);
        assert_eq!(statuses(&course)[PRESS], meanwhile);
        course.add(set(Role::Train));
        let press = course.stands(PRESS);
        assert_eq!(
            (press.status, press.grant.place.rung, press.grant.load()),
            (taken_up, 0, kg(36.0)),
            "{role:?}"
        );
    }
}

#[test]
fn what_asks_for_a_clearance_is_lifted_by_one_in_force_alone() {
    let after_illness = |reasons: &[Reason]| reasons.contains(&Reason::ClearanceAfterIllness);
    let asks_first = |reasons: &[Reason]| {
        reasons.iter().any(|reason| matches!(reason, Reason::AsksFirst { ask: Ask::Fever, .. }))
    };
    for (days, lifted) in [(-1, false), (0, true), (5, true)] {
        let mut course = Course::play(&[Step::Layoff(2)]);
        let asks = Some(vec![Ask::Fever]);
        course.add(EventKind::DayReport(DayReport::default().with_asks(asks)));
        let before = blocked(&course, PRESS);
        assert!(after_illness(&before) && asks_first(&before));
        cleared(&mut course, days);
        let after = blocked(&course, PRESS);
        assert_eq!((after_illness(&after), asks_first(&after)), (!lifted, !lifted), "{days}");
    }
}

#[test]
fn a_clearance_holds_through_its_last_day() {
    let mut course = Course::new(parameters(1));
    let last = cleared(&mut course, 3);
    let expired = Reason::ClearanceExpired { on: last };
    course.day = last;
    assert!(!blocked(&course, PRESS).contains(&expired));
    course.day = last.plus(1).unwrap();
    assert!(blocked(&course, PRESS).contains(&expired));
}

#[test]
fn a_clearance_that_is_said_to_have_ended_is_over_at_once() {
    let mut course = Course::play(&[Step::Symptom]);
    course.clear(true);
    let yesterday = course.day.plus(-1).unwrap();
    course.add(EventKind::ClearanceExpired(name("clinic")));
    assert!(blocked(&course, PRESS).contains(&Reason::ClearanceExpired { on: yesterday }));
    sign_off(&mut course, SignOffScope::Everything);
    assert_eq!(statuses(&course), [STOPPED; 3]);
    // Said later, it does not make the clearance any longer.
    course.day = course.day.plus(9).unwrap();
    course.add(EventKind::ClearanceExpired(name("clinic")));
    assert_eq!(course.state().clearance().as_ref().unwrap().expires, yesterday);
}

#[test]
fn a_clearance_is_missed_only_where_the_policy_asks_for_one() {
    for required in [true, false] {
        let mut all = parameters(1);
        all.policy.clearance_required = required;
        let mut course = Course::new(parameters(1));
        course.log.events.clear();
        course.states.clear();
        course.add(EventKind::ParametersChanged(Box::new(all)));
        assert_eq!(blocked(&course, PRESS).contains(&Reason::ClearanceMissing), required);
        // One that has run out is out of force, asked for or not.
        let last = cleared(&mut course, -1);
        assert!(blocked(&course, PRESS).contains(&Reason::ClearanceExpired { on: last }));
    }
}

#[test]
fn a_limit_on_load_is_allowed_and_nothing_above_it() {
    // The press stands at 40 kg; the next load within a tenth is 43.5 kg.
    for (limit, blocks, lowers) in
        [(43.5, false, false), (43.0, true, false), (40.0, true, false), (39.0, true, true)]
    {
        let mut course = ready(|_| {});
        let load = Some(kg(limit));
        limited(&mut course, 100, vec![ClearanceLimits::default().with_load(load)]);
        let said = Reason::ClearanceLimit { load: kg(limit) };
        assert_eq!(blocked(&course, PRESS).contains(&said), blocks, "{limit}");
        assert_eq!(decision(&course, PRESS).reasons.contains(&said), lowers, "{limit}");
        assert_eq!(course.limit(PRESS), kg(if lowers { limit } else { 40.0 }));
    }
}

#[test]
fn the_lowest_limit_of_a_lift_counts_and_none_of_another_region() {
    let limit = |region: Option<&str>, load: f64| {
        let (region, load) = (region.map(name), Some(kg(load)));
        ClearanceLimits::default().with_region(region).with_load(load)
    };
    let mut course = Course::new(parameters(1));
    limited(&mut course, 100, vec![limit(Some("hip"), 30.0), limit(None, 35.0), limit(Some("knee"), 20.0)]);
    assert_eq!([STRICT, FORGIVING, PRESS].map(|at| course.limit(at)), [kg(30.0), kg(30.0), kg(35.0)]);
}

#[test]
fn only_a_newer_clearance_in_force_lifts_a_limit() {
    let load = Some(kg(30.0));
    let limit = ClearanceLimits::default().with_load(load);
    let mut course = Course::new(parameters(1));
    limited(&mut course, 100, vec![limit]);
    assert_eq!(course.limit(PRESS), kg(30.0));
    // One that had run out when it was written down, as with a wrong year, lifts nothing; its own limits count too.
    cleared(&mut course, -365);
    assert_eq!(course.limit(PRESS), kg(30.0));
    let load = Some(kg(28.0));
    limited(&mut course, -1, vec![ClearanceLimits::default().with_load(load)]);
    assert_eq!((course.limit(PRESS), course.limit(STRICT)), (kg(28.0), kg(28.0)));
    // One that holds today alone is in force.
    cleared(&mut course, 0);
    assert_eq!((course.limit(PRESS), course.limit(STRICT)), (kg(40.0), kg(50.0)));
}

#[test]
fn clearances_that_had_run_out_add_up_to_the_most_careful_of_each_region() {
    let mut all = parameters(1);
    all.lifts[PRESS].ranges = [300.0, 400.0, 500.0].map(length).to_vec();
    all.lifts[STRICT].ranges = [500.0, 400.0, 300.0].map(length).to_vec();
    all.lifts.iter_mut().filter(|lift| !lift.ranges.is_empty()).for_each(|lift| lift.start.place.range = 2);
    let mut course = Course::new(all);
    let everywhere = ClearanceLimits::default;
    let hip = || everywhere().with_region(name("hip"));
    // The lowest load is neither the first nor the last of its region; the hip's does not hold for the press.
    for at in 0..100 {
        let more = f64::from((at - 50_i32).abs()) / 10.0;
        limited(&mut course, -1, vec![everywhere().with_load(kg(35.0 + more))]);
        limited(&mut course, -1, vec![hip().with_load(kg(30.0 + more))]);
    }
    // A depth is to be no more than every limit, a height no less: both ends of the limits are kept.
    for range in [400.0, 450.0, 350.0] {
        limited(&mut course, -1, vec![everywhere().with_range(length(range))]);
    }
    let effort = |rating| Some(Rpe::new(rating).unwrap());
    limited(&mut course, -1, vec![hip().with_effort(effort(6.0)).with_no_breath_hold(true)]);
    limited(&mut course, -1, vec![hip().with_effort(effort(7.0)).with_no_loaded_flexion(true)]);
    assert_eq!([STRICT, FORGIVING, PRESS].map(|at| course.limit(at)), [kg(30.0), kg(30.0), kg(35.0)]);
    let session = next_session_from(course.state(), &plan(), course.day).unwrap();
    assert_eq!([STRICT, PRESS].map(|at| session.lifts[at].granted.place.range), [0, 0]);
    let limits = &course.state().clearance().as_ref().unwrap().limits;
    let of_hip: Vec<_> = limits.iter().filter(|limit| limit.region.is_some()).cloned().collect();
    let load = Some(kg(30.0));
    let both =
        hip().with_load(load).with_effort(effort(6.0)).with_no_breath_hold(true).with_no_loaded_flexion(true);
    assert_eq!((of_hip, limits.len()), (vec![both], 3), "one of the hip; two ranges of everywhere");
}

/// The usual lifts, and as many regions beside theirs as may be declared.
fn with_forty_eight_regions() -> Course {
    let mut all = parameters(1);
    all.regions.extend((0..45).map(|at| Region::new(numbered(at))));
    assert_eq!(all.regions.len(), MAX_REGIONS);
    Course::new(all)
}

fn numbered(at: usize) -> bismar::quantity::Name {
    name(&format!("region {at}"))
}

#[test]
fn limits_up_to_their_number() {
    let course = with_forty_eight_regions();
    let limit =
        |at: usize| ClearanceLimits::default().with_region(numbered(at % 45)).with_no_breath_hold(true);
    for (count, refused) in [(64, None), (65, Some(Code::TooMany))] {
        let (status, who, limits) =
            (ClearanceStatus::ClearedWithLimits, name("clinic"), (0..count).map(limit));
        let clearance = Clearance::new(status, who).with_limits(limits.collect());
        assert_eq!(turned_away(&course, EventKind::ClearanceRecorded(clearance)), refused);
    }
    // Nor does a stored state hold more.
    let mut course = course;
    limited(&mut course, 100, (0..63).map(limit).collect());
    let text = course.state().to_json().unwrap();
    for (more, refused) in [("", None), ("{},", None), ("{},{},", Some(Code::TooMany))] {
        let longer = text.replacen("\"limits\":[", &format!("\"limits\":[{more}"), 1);
        assert_eq!(State::from_json(&sealed(&longer)).err().map(|error| error.code()), refused, "{more}");
    }
}

#[test]
fn of_more_limits_than_are_kept_the_most_careful_of_all_holds_everywhere() {
    let mut course = with_forty_eight_regions();
    let load =
        |region: &str, load: f64| ClearanceLimits::default().with_region(name(region)).with_load(kg(load));
    limited(&mut course, 100, vec![load("hip", 30.0)]);
    // Two of each region: its shortest range and its longest.
    let both_ends = |at: usize| {
        let to = |mm| load(&format!("region {at}"), 45.0).with_range(length(mm));
        vec![to(300.0), to(400.0)]
    };
    for at in 0..31 {
        limited(&mut course, -1, both_ends(at));
    }
    assert_eq!(course.state().clearance().unwrap().limits.len(), 63);
    assert_eq!([STRICT, PRESS].map(|at| course.limit(at)), [kg(30.0), kg(40.0)]);
    for at in 31..45 {
        limited(&mut course, -1, both_ends(at));
    }
    assert_eq!([STRICT, PRESS].map(|at| course.limit(at)), [kg(30.0), kg(30.0)]);
    assert!(course.state().clearance().unwrap().limits.len() <= 64);
    assert_eq!(State::from_json(&course.state().to_json().unwrap()).as_ref(), Ok(course.state()));
}

#[test]
fn a_ceiling_is_allowed_and_nothing_above_it() {
    for (ceiling, blocks, lowers) in
        [(43.5, false, false), (43.0, true, false), (40.0, true, false), (39.0, true, true)]
    {
        let mut course = ready(|_| {});
        let mut all = parameters(1);
        all.lifts[PRESS].ceiling = Some(kg(ceiling));
        course.add(EventKind::ParametersChanged(Box::new(all)));
        let said = Reason::Ceiling { load: kg(ceiling) };
        assert_eq!(blocked(&course, PRESS).contains(&said), blocks, "{ceiling}");
        assert_eq!(decision(&course, PRESS).reasons.contains(&said), lowers, "{ceiling}");
        assert_eq!(course.limit(PRESS), kg(if lowers { ceiling } else { 40.0 }));
    }
}

fn length(mm: f64) -> Length {
    Length::from_mm(mm).unwrap()
}

/// The press at that place of these ranges, with its range limited.
fn limited_range(ranges: &[f64], place: u8, limit: f64) -> Course {
    let mut course = ready(|all| {
        all.lifts[PRESS].ranges = ranges.iter().copied().map(length).collect();
        all.lifts[PRESS].start.place.range = place;
    });
    let range = Some(length(limit));
    limited(&mut course, 100, vec![ClearanceLimits::default().with_range(range)]);
    course
}

#[test]
fn a_limit_on_range_blocks_moves_of_a_lift_beyond_it_only() {
    let blocks = |ranges: &[f64], place, limit| {
        blocked(&limited_range(ranges, place, limit), PRESS).contains(&Reason::ClearanceRange)
    };
    let depths = [300.0, 400.0];
    assert!(!blocks(&depths, 1, 400.0) && !blocks(&depths, 0, 350.0));
    assert!(blocks(&depths, 1, 350.0) && blocks(&depths, 0, 250.0));
    // Heights above the floor: deeper is lower.
    let heights = [200.0, 100.0];
    assert!(!blocks(&heights, 1, 100.0) && !blocks(&heights, 0, 150.0));
    assert!(blocks(&heights, 1, 150.0) && blocks(&heights, 0, 250.0));
    // Where the range is not measured, nobody can say that it is within.
    assert!(blocks(&[], 0, 400.0));
}

#[test]
fn ranges_that_do_not_say_which_way_is_deeper_allow_the_limit_alone() {
    let trains = |ranges: &[f64], limit| {
        let course = limited_range(ranges, 0, limit);
        next_session_from(course.state(), &plan(), course.day).unwrap().lifts[PRESS].verdict != Verdict::Rest
    };
    for ranges in [&[300.0][..], &[300.0, 500.0, 400.0], &[300.0, 400.0, 350.0]] {
        assert!(trains(ranges, 300.0), "{ranges:?}");
        assert!(!trains(ranges, 500.0) && !trains(ranges, 200.0), "{ranges:?}");
    }
}

#[test]
fn a_stop_on_the_way_back_from_a_long_break_does_not_shorten_the_way() {
    let mut course = ready(|_| {});
    course.day = course.day.plus(90).unwrap();
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(statuses(&course)[PRESS], RETURNING);
    course.step(&Step::Symptom);
    course.clear(true);
    sign_off(&mut course, SignOffScope::Everything);
    course.day = course.day.plus(1).unwrap();
    press_week(&mut course);
    press_week(&mut course);
    // After twelve weeks every criterion is looked at anew.
    assert_eq!(statuses(&course)[PRESS], LEARNING);
}
