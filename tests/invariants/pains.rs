//! Pain: what each answer asks for, what counts as usual, and regions under another name.

use super::course::*;
use super::hand::{sign_off, turned_away};
use super::hundred::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::progression::{RegionState, Status};
use bismar::record::*;

fn region<'a>(course: &'a Course, label: &str) -> &'a RegionState {
    course.state().regions.iter().find(|region| region.name.as_str() == label).unwrap()
}

/// What one answer leads to: so many clear sessions before a move, or a stop.
#[derive(Debug, PartialEq)]
enum After {
    Clear(u8),
    Stop,
}

#[test]
fn every_answer_falls_into_its_zone() {
    use After::{Clear, Stop};
    use PainFeature::{Locking, New, Numbness, Pop, Radiating, Rising, Sharp};
    let rows: [(Option<u8>, u8, &[PainFeature], After); 24] = [
        (None, 0, &[], Clear(0)),
        (None, 1, &[], Clear(1)),
        (None, 2, &[], Clear(1)),
        (None, 3, &[], Clear(2)),
        (None, 5, &[], Clear(2)),
        (None, 6, &[], Stop),
        (None, 10, &[], Stop),
        // New or rising pain blocks as 3 to 5 does, where there is pain at all.
        (None, 0, &[New], Clear(0)),
        (None, 0, &[Rising], Clear(0)),
        (None, 1, &[New], Clear(2)),
        (None, 2, &[Rising], Clear(2)),
        (None, 6, &[New], Stop),
        // Features outrank the score.
        (None, 0, &[Locking], Stop),
        (None, 1, &[Sharp], Stop),
        (None, 1, &[New, Radiating], Stop),
        (None, 2, &[Numbness], Stop),
        (None, 2, &[Pop], Stop),
        // Up to the agreed level pain is no more than usual.
        (Some(2), 1, &[], Clear(0)),
        (Some(2), 2, &[], Clear(0)),
        (Some(2), 3, &[], Clear(2)),
        (Some(2), 2, &[Rising], Clear(2)),
        (Some(3), 3, &[], Clear(0)),
        (Some(3), 4, &[], Clear(2)),
        (Some(3), 1, &[Sharp], Stop),
    ];
    for (usual, score, features, after) in rows {
        let mut course = Course::new(hundred());
        if let Some(level) = usual {
            agree(&mut course, "hip", level);
        }
        report(&mut course, "hip", score, features);
        let hip = region(&course, "hip");
        let seen = if hip.stop.is_some() { Stop } else { Clear(hip.clear_needed) };
        assert_eq!(seen, after, "usual {usual:?}, {score} {features:?}");
        let stopped = after == Stop;
        let halted = [STRICT, FORGIVING, PRESS].map(|at| lift(&course, at).status == Status::StoppedRefer);
        assert_eq!(halted, [stopped, stopped, false], "usual {usual:?}, {score} {features:?}");
    }
}

#[test]
fn a_lifter_has_at_most_ninety_six_regions() {
    let mut course = Course::new(hundred());
    // The lifts load two.
    for number in 3..=96 {
        report(&mut course, &format!("region {number}"), 1, &[]);
    }
    assert_eq!(course.state().regions.len(), 96);
    let refused = |label: &str| turned_away(&course, EventKind::PainReport(Course::pain(label, 1)));
    assert_eq!(refused("one more"), Some(Code::TooMany));
    assert_eq!([refused("region 96"), refused("hip")], [None, None]);
}

#[test]
fn usual_pain_is_steady_after_three_sessions_without_a_rise() {
    let rows: [(&[u8], u8); 9] = [
        (&[2], 1),
        (&[2, 2], 2),
        (&[2, 2, 2], 3),
        (&[2, 2, 2, 2], 3),
        (&[0, 0, 0], 3),
        // Less than last time is no rise.
        (&[2, 1, 1], 3),
        // A rise below the level begins a new row, and so does more than the level, which is not of the row itself.
        (&[1, 2, 2], 2),
        (&[2, 2, 3], 0),
        (&[2, 3, 2], 1),
    ];
    for (scores, steady) in rows {
        let mut course = Course::new(hundred());
        agree(&mut course, "hip", 2);
        for score in scores {
            wait(&mut course, 2);
            course.session(1, Quality::Clean, Weight::AtLimit, Some(*score));
        }
        assert_eq!(region(&course, "hip").usual.unwrap().2, steady, "{scores:?}");
    }
}

#[test]
fn an_agreed_level_counts_up_to_the_day_of_its_review() {
    for (days, clear_needed) in [(90, 0), (91, 1)] {
        let mut course = Course::new(hundred());
        agree(&mut course, "hip", 2);
        wait(&mut course, days);
        report(&mut course, "hip", 2, &[]);
        assert_eq!(region(&course, "hip").clear_needed, clear_needed, "after {days} days");
    }
}

/// Two lifts of the hip and the press of the shoulder, with other regions for the first two from now on.
fn renamed(course: &mut Course, strict: &[&str], forgiving: &[&str]) {
    let mut all = hundred();
    for (at, regions) in [(STRICT, strict), (FORGIVING, forgiving)] {
        all.lifts[at].regions = regions.iter().map(|region| name(region)).collect();
    }
    course.add(EventKind::ParametersChanged(Box::new(all)));
}

#[test]
fn a_region_takes_over_from_the_one_its_own_lift_no_longer_has() {
    let mut course = trained(hundred(), None);
    report(&mut course, "hip", 3, &[]);
    renamed(&mut course, &["groin"], &["hip"]);
    let needed = ["groin", "hip", "shoulder"].map(|label| region(&course, label).clear_needed);
    assert_eq!(needed, [2, 2, 0], "the shoulder is of another lift");
    let mut course = trained(hundred(), None);
    report(&mut course, "shoulder", 3, &[]);
    renamed(&mut course, &["groin"], &["hip"]);
    let needed = ["groin", "hip", "shoulder"].map(|label| region(&course, label).clear_needed);
    assert_eq!(needed, [0, 0, 2], "the shoulder is not gone");
}

#[test]
fn a_stop_without_a_region_left_gets_the_next_one_that_the_lift_has() {
    let mut course = trained(hundred(), None);
    report(&mut course, "hip", 6, &[]);
    renamed(&mut course, &[], &["hip"]);
    renamed(&mut course, &["knee"], &["hip"]);
    assert!(region(&course, "knee").stop.is_some());
    course.clear(true);
    sign_off(&mut course, SignOffScope::Region(name("knee")));
    assert_eq!(lift(&course, STRICT).status, Status::Returning);
    assert_eq!(lift(&course, FORGIVING).status, Status::StoppedRefer);
}

#[test]
fn a_stop_that_has_its_region_is_given_to_no_other() {
    let mut course = trained(hundred(), None);
    renamed(&mut course, &["hip", "back"], &["hip"]);
    report(&mut course, "hip", 6, &[]);
    renamed(&mut course, &["hip", "back"], &["hip"]);
    assert!(region(&course, "hip").stop.is_some() && region(&course, "back").stop.is_none());
    // A symptom stops every lift without a region, and stays one stop.
    let mut course = trained(hundred(), None);
    course.step(&Step::Symptom);
    renamed(&mut course, &["hip"], &["hip"]);
    assert!(course.state().regions.iter().all(|region| region.stop.is_none()));
    // Lifts that go on get none.
    let mut course = trained(hundred(), None);
    renamed(&mut course, &["hip", "back"], &["hip"]);
    assert!(course.state().regions.iter().all(|region| region.stop.is_none()));
}

#[test]
fn flares_go_along_with_the_new_name_and_never_become_fewer() {
    let mut course = trained(hundred(), None);
    let day = course.day;
    course.morning(true);
    let flares = |course: &Course, label: &str| (region(course, label).flares, region(course, label).flared);
    assert_eq!(flares(&course, "hip"), (1, Some(day)));
    renamed(&mut course, &["groin"], &["calm"]);
    assert_eq!([flares(&course, "groin"), flares(&course, "calm")], [(1, Some(day)); 2]);
    // A region that never flared takes nothing off one that did.
    let mut course = trained(hundred(), None);
    renamed(&mut course, &["hip"], &["calm"]);
    wait(&mut course, 2);
    clean(&mut course, 1, DayClass::Ordinary);
    let day = course.day;
    course.morning(true);
    assert_eq!([flares(&course, "hip"), flares(&course, "calm")], [(1, Some(day)), (0, None)]);
    renamed(&mut course, &["hip"], &["hip"]);
    assert_eq!(flares(&course, "hip"), (1, Some(day)));
}
