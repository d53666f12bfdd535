//! Pain: what each answer asks for, and what counts as usual.

use super::course::*;
use super::hundred::*;
use super::prescription::plan;
use bismar::prescription::{Verdict, next_session_from};
use bismar::progression::RegionState;
use bismar::record::*;

pub fn region<'a>(course: &'a Course, label: &str) -> &'a RegionState {
    course.state().region(&name(label)).unwrap()
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
        let halted = [STRICT, FORGIVING, PRESS].map(|at| lift(&course, at).status == STOPPED);
        assert_eq!(halted, [stopped, stopped, false], "usual {usual:?}, {score} {features:?}");
    }
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
fn a_list_of_the_morning_is_an_answer_about_every_region_of_that_day() {
    let verdict = |pain: Option<Vec<PainAnswer>>| {
        let mut course = trained(hundred(), YOUNG);
        wait(&mut course, 2);
        course.session(4, Quality::Clean, Weight::AtLimit, Some(4));
        course.next_day(pain);
        next_session_from(course.state(), &plan(), course.day).unwrap().lifts[PRESS].verdict
    };
    assert_eq!(verdict(None), Verdict::TechniqueOnly, "nobody asked");
    assert_eq!(verdict(Some(Vec::new())), Verdict::Train, "none anywhere");
    assert_eq!(verdict(Some(vec![Course::pain("hip", 1)])), Verdict::Train, "none in the shoulder");
    assert_eq!(verdict(Some(vec![Course::pain("shoulder", 1)])), Verdict::Train);
    assert_eq!(verdict(Some(vec![Course::pain("shoulder", 4)])), Verdict::EaseOff);
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
