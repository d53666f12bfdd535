//! Pain of the morning after against pain before the session: which level counts, and which session is meant.

use super::course::*;
use super::hundred::*;
use bismar::gate::Outcome;
use bismar::record::*;

/// A session of the forgiving lift and the press.
fn train(course: &mut Course) -> u32 {
    course.session(6, Quality::Clean, Weight::AtLimit, None);
    course.next_number() - 1
}

fn answer(course: &mut Course, session: u32, pain: &[(&str, u8)]) {
    let pain = Some(pain.iter().map(|(label, score)| Course::pain(label, *score)).collect());
    course.add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(pain)));
}

/// What the session came to for the lift of the hip and the lift of the shoulder.
fn outcomes(course: &Course, session: u32) -> [Outcome; 2] {
    [FORGIVING, PRESS].map(|at| {
        let mut sittings = lift(course, at).now.sittings.iter();
        sittings.find(|sitting| sitting.session == session).unwrap().outcome
    })
}

/// What the morning after makes of a session before which this was said on its day.
fn after(said: &[(&str, u8)], morning: &[(&str, u8)]) -> [Outcome; 2] {
    let mut course = Course::new(hundred());
    said.iter().for_each(|(label, score)| report(&mut course, label, *score, &[]));
    let session = train(&mut course);
    wait(&mut course, 1);
    answer(&mut course, session, morning);
    outcomes(&course, session)
}

const PASS: Outcome = Outcome::Pass;
const FAIL: Outcome = Outcome::Fail;

#[test]
fn a_report_before_the_session_is_the_level_that_the_morning_is_held_against() {
    assert_eq!(after(&[], &[("hip", 1)]), [FAIL, PASS]);
    assert_eq!(after(&[("hip", 2)], &[("hip", 2)]), [PASS, PASS]);
    assert_eq!(after(&[("hip", 2)], &[("hip", 3)]), [FAIL, PASS]);
    // Each region by itself, whatever was reported after it.
    assert_eq!(after(&[("hip", 2), ("shoulder", 2)], &[("hip", 2), ("shoulder", 2)]), [PASS, PASS]);
    assert_eq!(after(&[("hip", 2), ("shoulder", 2)], &[("hip", 2), ("shoulder", 3)]), [PASS, FAIL]);
    assert_eq!(after(&[("shoulder", 2)], &[("hip", 2), ("shoulder", 2)]), [FAIL, PASS]);
    // The last word about a region counts.
    assert_eq!(after(&[("hip", 2), ("hip", 1)], &[("hip", 2)]), [FAIL, PASS]);
    assert_eq!(after(&[("hip", 1), ("hip", 2)], &[("hip", 2)]), [PASS, PASS]);
}

#[test]
fn a_report_of_an_earlier_day_says_nothing_of_today() {
    let mut course = Course::new(hundred());
    report(&mut course, "hip", 2, &[]);
    wait(&mut course, 1);
    report(&mut course, "shoulder", 2, &[]);
    let session = train(&mut course);
    wait(&mut course, 1);
    answer(&mut course, session, &[("hip", 2), ("shoulder", 2)]);
    assert_eq!(outcomes(&course, session), [FAIL, PASS]);
}

#[test]
fn each_region_has_its_own_usual_level_and_the_last_agreement_counts() {
    let morning = |agreed: &[(&str, u8)]| {
        let mut course = Course::new(hundred());
        agreed.iter().for_each(|(label, level)| agree(&mut course, label, *level));
        let session = train(&mut course);
        wait(&mut course, 1);
        answer(&mut course, session, &[("hip", 2), ("shoulder", 1)]);
        outcomes(&course, session)
    };
    assert_eq!(morning(&[("hip", 2), ("shoulder", 1)]), [PASS, PASS]);
    assert_eq!(morning(&[("hip", 1), ("shoulder", 2)]), [FAIL, PASS]);
    assert_eq!(morning(&[("hip", 2), ("hip", 1)]), [FAIL, FAIL]);
    assert_eq!(morning(&[("hip", 1), ("hip", 2)]), [PASS, FAIL]);
}

#[test]
fn the_parameters_say_for_how_long_a_usual_level_stands() {
    let morning = |review: u16, days: i32| {
        let mut all = hundred();
        all.policy.usual_review_days = review;
        let mut course = Course::new(all);
        agree(&mut course, "hip", 2);
        wait(&mut course, days - 1);
        let session = train(&mut course);
        wait(&mut course, 1);
        answer(&mut course, session, &[("hip", 2)]);
        outcomes(&course, session)[0]
    };
    assert_eq!([morning(30, 30), morning(30, 31)], [PASS, FAIL]);
    assert_eq!([morning(90, 90), morning(90, 91)], [PASS, FAIL]);
    assert_eq!(morning(200, 150), PASS);
}

#[test]
fn an_answer_on_the_day_of_training_takes_nothing_back() {
    let mut course = Course::new(hundred());
    let session = train(&mut course);
    answer(&mut course, session, &[("hip", 2)]);
    assert_eq!(outcomes(&course, session), [PASS, PASS]);
}

#[test]
fn each_of_two_sessions_is_taken_back_by_its_own_morning() {
    let mut course = Course::new(hundred());
    let mut sessions = Vec::new();
    for pain in [[("hip", 1)], [("knee", 1)], [("shoulder", 1)]] {
        let session = train(&mut course);
        wait(&mut course, 1);
        answer(&mut course, session, &pain);
        wait(&mut course, 2);
        sessions.push(session);
    }
    let came_to: Vec<_> = sessions.iter().map(|session| outcomes(&course, *session)).collect();
    assert_eq!(came_to, [[FAIL, PASS], [PASS, PASS], [PASS, FAIL]]);
}

#[test]
fn an_answer_may_speak_of_any_of_the_last_eight_sessions() {
    for (later, came_to) in [(7, [FAIL, PASS]), (8, [PASS, PASS])] {
        let mut course = Course::new(hundred());
        let first = train(&mut course);
        for _ in 0..later {
            wait(&mut course, 2);
            train(&mut course);
        }
        wait(&mut course, 1);
        answer(&mut course, first, &[("hip", 1)]);
        assert_eq!(outcomes(&course, first), came_to, "{later} sessions later");
    }
}
