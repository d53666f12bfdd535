//! Regions by id: what a changed name changes, and what goes with a lift whose list of regions changes.

use super::course::*;
use super::hand::{blocked, sign_off, turned_away};
use super::hundred::*;
use super::pains::region;
use super::prescription::plan;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::prescription::{Verdict, next_session_from};
use bismar::quantity::Name;
use bismar::reason::Reason;
use bismar::record::*;

const DECLARED: [&str; 5] = ["hip", "shoulder", "knee", "back", "groin"];

fn weeks(count: usize) -> Course {
    Course::play(&vec![Step::CleanWeek; count])
}

fn ids(regions: &[&str]) -> Vec<Name> {
    regions.iter().map(|id| name(id)).collect()
}

/// Other regions for the strict lift, the forgiving one and the press from now on, all of them declared.
fn regions_of(course: &mut Course, lists: [&[&str]; 3]) {
    let mut all = course.set().clone();
    all.regions = regions(&DECLARED);
    for (lift, list) in all.lifts.iter_mut().zip(lists) {
        lift.regions = ids(list);
    }
    course.add(EventKind::ParametersChanged(Box::new(all)));
}

/// Other regions for the pair.
fn pair_of(course: &mut Course, list: &[&str]) {
    regions_of(course, [list, list, &["shoulder"]]);
}

fn signed(course: &mut Course, id: &str) {
    sign_off(course, SignOffScope::Region(name(id)));
}

fn statuses(course: &Course) -> [&'static str; 3] {
    [STRICT, FORGIVING, PRESS].map(|at| course.stands(at).status)
}

#[test]
fn a_changed_name_changes_nothing() {
    for happened in [ache(HIP, 7), ache(HIP, 4), ache(SHOULDER, 2), Step::Usual(2), Step::CleanWeek] {
        let mut course = weeks(3);
        course.step(&happened);
        let mut renamed = course.clone();
        renamed.step(&Step::Parameters(Change::Names));
        course.step(&Step::Missed);
        assert_eq!(course.all_stand(), renamed.all_stand(), "{happened:?}");
        assert_eq!(course.state().regions(), renamed.state().regions(), "{happened:?}");
        assert_ne!(course.state().digest(), renamed.state().digest());
        assert_eq!(renamed.set().lifts[STRICT].label().as_str(), "strict by another name");
        // Events go on naming ids.
        course.clear(true);
        signed(&mut course, "hip");
        renamed.clear(true);
        signed(&mut renamed, "hip");
        assert_eq!(course.all_stand(), renamed.all_stand(), "{happened:?}");
    }
}

#[test]
fn a_lift_without_its_stopped_region_stays_stopped_until_that_is_signed_off() {
    let mut course = weeks(3);
    course.step(&ache(HIP, 7));
    regions_of(&mut course, [&["shoulder"], &["hip"], &["shoulder"]]);
    assert_eq!(course.stands(STRICT).former, ids(&["hip"]));
    course.clear(true);
    signed(&mut course, "shoulder");
    sign_off(&mut course, SignOffScope::Gate(name("strict")));
    assert_eq!(statuses(&course)[..2], [STOPPED; 2]);
    let session = next_session_from(course.state(), &plan(), course.day).unwrap();
    let strict = &session.lifts[STRICT];
    assert_eq!((strict.verdict, strict.load), (Verdict::Stop, None));
    assert!(strict.reasons.contains(&Reason::PainStop {
        region: name("hip"),
        since: course.day,
        features: Vec::new()
    }));
    signed(&mut course, "hip");
    assert_eq!(statuses(&course)[..2], [RETURNING; 2]);
    // Its clear sessions are still to come; then the hip is the lift's no longer.
    assert_eq!(course.stands(STRICT).former, ids(&["hip"]));
    for _ in 0..2 {
        course.day = course.day.plus(2).unwrap();
        course.session(1, Quality::Clean, Weight::AtLimit, Some(0));
    }
    assert_eq!(course.stands(STRICT).former, ids(&[]));
}

#[test]
fn a_clearance_counts_for_the_region_that_stopped_whatever_its_lifts_load_now() {
    let mut course = weeks(3);
    course.step(&ache(HIP, 7));
    course.clear(true);
    pair_of(&mut course, &["groin"]);
    signed(&mut course, "groin");
    assert_eq!(statuses(&course), [STOPPED; 3], "no lift loads the hip, so nobody knows whom it concerns");
    signed(&mut course, "hip");
    assert_eq!(statuses(&course), [RETURNING; 3]);
}

#[test]
fn two_stops_of_one_lift_are_lifted_one_by_one() {
    for before in [["shoulder"].as_slice(), &["shoulder", "hip"]] {
        let mut course = weeks(3);
        regions_of(&mut course, [&["hip"], &["hip"], before]);
        course.step(&ache(HIP, 7));
        course.clear(true);
        course.day = course.day.plus(1).unwrap();
        course.step(&ache(SHOULDER, 7));
        regions_of(&mut course, [&["hip"], &["hip"], &["hip"]]);
        signed(&mut course, "hip");
        signed(&mut course, "shoulder");
        let both = |course: &Course| [STRICT, PRESS].map(|at| course.stands(at).status);
        assert_eq!(both(&course), [STOPPED; 2], "no clearance since the shoulder stopped");
        assert!(region(&course, "hip").stop.is_none());
        assert_eq!(region(&course, "shoulder").stop.as_ref().unwrap().since, course.day);
        course.clear(true);
        assert_eq!(both(&course), [STOPPED; 2], "no sign-off since then");
        signed(&mut course, "hip");
        assert_eq!(both(&course), [STOPPED; 2], "that of the hip is not that of the shoulder");
        signed(&mut course, "shoulder");
        assert_eq!(both(&course), [RETURNING; 2]);
    }
}

#[test]
fn a_stop_without_a_lift_halts_every_lift_and_outlives_its_region() {
    let mut course = weeks(3);
    pair_of(&mut course, &["hip", "back"]);
    course.step(&ache(HIP, 7));
    assert_eq!(statuses(&course), [STOPPED, STOPPED, HOLDING]);
    for list in [["back"].as_slice(), &[]] {
        pair_of(&mut course, list);
        assert_eq!(statuses(&course), [STOPPED; 3]);
    }
    // Not even declared any more.
    let mut all = course.set().clone();
    all.regions = regions(&["shoulder"]);
    course.add(EventKind::ParametersChanged(Box::new(all)));
    for at in [STRICT, FORGIVING, PRESS] {
        assert!(blocked(&course, at).iter().any(|reason| matches!(reason, Reason::PainStop { .. })));
    }
    let since = region(&course, "hip").stop.as_ref().unwrap().since;
    let session = next_session_from(course.state(), &plan(), course.day).unwrap();
    for lift in &session.lifts {
        assert_eq!(lift.verdict, Verdict::Stop);
        assert!(lift.reasons.contains(&Reason::PainStop {
            region: name("hip"),
            since,
            features: Vec::new()
        }));
    }
    let answer = EventKind::PainReport(Course::pain("hip", 0));
    assert_eq!(turned_away(&course, answer), Some(Code::UnknownRegion));
    course.clear(true);
    assert_eq!(statuses(&course), [STOPPED; 3]);
    signed(&mut course, "hip");
    assert_eq!(statuses(&course), [RETURNING; 3]);
}

#[test]
fn a_lift_halted_for_a_region_without_a_lift_waits_for_its_sign_off_whatever_loads_it_later() {
    let mut course = weeks(3);
    course.step(&ache(HIP, 7));
    pair_of(&mut course, &["groin"]);
    assert_eq!(statuses(&course), [STOPPED; 3]);
    pair_of(&mut course, &["hip"]);
    assert_eq!(statuses(&course), [STOPPED; 3], "new parameters let nothing go");
    sign_off(&mut course, SignOffScope::Gate(name("press")));
    assert_eq!(statuses(&course), [STOPPED; 3], "nor does a sign-off of something else");
    let since = region(&course, "hip").stop.as_ref().unwrap().since;
    assert!(blocked(&course, PRESS).contains(&Reason::PainStop {
        region: name("hip"),
        since,
        features: Vec::new()
    }));
    course.clear(true);
    signed(&mut course, "hip");
    assert_eq!(statuses(&course), [RETURNING; 3]);
}

#[test]
fn pain_in_a_region_that_no_lift_loads_halts_every_lift() {
    let mut course = weeks(3);
    let before = statuses(&course);
    course.step(&ache(KNEE, 5));
    assert_eq!(statuses(&course), before);
    course.step(&ache(KNEE, 6));
    assert_eq!(statuses(&course), [STOPPED; 3]);
    course.clear(true);
    signed(&mut course, "knee");
    assert_eq!(statuses(&course), [RETURNING; 3]);
}

#[test]
fn pain_that_asks_for_clear_sessions_goes_along_with_the_lift() {
    let mut course = weeks(3);
    course.step(&ache(HIP, 4));
    pair_of(&mut course, &["groin"]);
    let waits = |course: &Course, sessions: u8| {
        let block = |reason: &Reason| {
            matches!(reason, Reason::PainBlock { region, clear_sessions, .. }
                if *region == name("hip") && *clear_sessions == sessions)
        };
        blocked(course, STRICT).iter().any(block)
    };
    assert!(waits(&course, 2));
    for left in [1, 0] {
        course.day = course.day.plus(2).unwrap();
        course.session(1, Quality::Clean, Weight::AtLimit, Some(0));
        assert_eq!(waits(&course, left), left > 0);
        assert_eq!(course.stands(STRICT).former.is_empty(), left == 0);
    }
    // A lift that never had the hip never waited for it.
    let mut course = weeks(3);
    course.step(&ache(HIP, 4));
    pair_of(&mut course, &["groin"]);
    assert!(!blocked(&course, PRESS).iter().any(|reason| matches!(reason, Reason::PainBlock { .. })));
}

#[test]
fn a_region_takes_over_nothing_from_another() {
    let mut course = trained(hundred(), YOUNG);
    report(&mut course, "hip", 3, &[]);
    course.morning(true);
    let day = lift(&course, STRICT).last_session;
    regions_of(&mut course, [&["groin"], &["hip"], &["shoulder"]]);
    let needed = ["groin", "hip", "shoulder"].map(|id| region(&course, id).clear_needed);
    assert_eq!(needed, [0, 2, 1]);
    let flares = ["groin", "hip"].map(|id| (region(&course, id).flares, region(&course, id).flared));
    assert_eq!(flares, [(0, None), (1, day)]);
    // Both lifts of before wait for the hip: the one by its list, the other by what is still open.
    assert_eq!((&*lift(&course, STRICT).former, lift(&course, FORGIVING).former.len()), (&*ids(&["hip"]), 0));
}

#[test]
fn a_second_flare_steps_back_a_lift_that_lost_its_region_meanwhile() {
    let mut course = trained(hundred(), YOUNG);
    course.morning(true);
    // Two clear sessions to come, of which the next is one.
    report(&mut course, "hip", 3, &[]);
    regions_of(&mut course, [&["groin"], &["hip"], &["shoulder"]]);
    wait(&mut course, 2);
    clean(&mut course, 1, DayClass::Within);
    course.morning(true);
    assert_eq!([STRICT, FORGIVING].map(|at| lift(&course, at).status), [STEPPING_BACK; 2]);
    // Once its clear sessions are done the hip is no matter of it.
    let mut course = trained(hundred(), YOUNG);
    course.morning(true);
    regions_of(&mut course, [&["groin"], &["hip"], &["shoulder"]]);
    wait(&mut course, 2);
    clean(&mut course, 1, DayClass::Within);
    wait(&mut course, 2);
    assert!(lift(&course, STRICT).former.is_empty());
    clean(&mut course, 2, DayClass::Within);
    course.morning(true);
    assert_ne!(lift(&course, STRICT).status, STEPPING_BACK);
}

#[test]
fn forty_eight_regions_are_declared_and_ninety_six_ever() {
    let declare = |course: &mut Course, from: usize, to: usize| {
        let mut all = hundred();
        all.regions = regions(&["hip", "shoulder"]);
        all.regions.extend((from..to).map(|at| Region::new(name(&format!("region {at}")))));
        let event = EventKind::ParametersChanged(Box::new(all));
        let refused = turned_away(course, event.clone());
        if refused.is_none() {
            course.add(event);
        }
        refused
    };
    // The world of the course has a knee besides.
    let mut course = Course::new(hundred());
    assert_eq!(declare(&mut course, 0, 47), Some(Code::TooMany), "47 and two are one too many");
    assert_eq!(declare(&mut course, 0, 46), None);
    assert_eq!(declare(&mut course, 46, 92), None);
    assert_eq!(course.state().regions().len(), 95);
    assert_eq!(declare(&mut course, 92, 94), Some(Code::TooMany));
    assert_eq!(declare(&mut course, 92, 93), None);
    assert_eq!((course.state().regions().len(), declare(&mut course, 0, 46)), (96, None));
    // What is not declared is turned away, with or without a number to spare.
    let unknown = EventKind::PainReport(Course::pain("one more", 1));
    assert_eq!(turned_away(&course, unknown), Some(Code::UnknownRegion));
}
