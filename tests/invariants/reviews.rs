//! Looks at a pair and at a kept lift: from which day, and which of two looks is named.

use super::course::*;
use super::hundred::*;
use bismar::condition::DayClass;
use bismar::gate::Mark;
use bismar::progression::MoveOutlook;
use bismar::quantity::Day;
use bismar::reason::Reason;
use bismar::record::*;

fn week(course: &mut Course, play: impl Fn(&mut Course)) {
    course.day_report(DayClass::Within, true);
    for at in 0..3_u8 {
        let decision = on(course, usize::from(at), course.day);
        if matches!(decision.outlook, MoveOutlook::OnOffer { .. }) {
            course.accept(at);
        }
    }
    play(course);
    course.morning(false);
    wait(course, 6);
}

/// The strict lift is never marked; the forgiving one has grown from 100 kg to so many.
fn grown_to(load: f64) -> Course {
    let mut all = hundred();
    all.policy.pair_review_growth = 0.05;
    all.lifts[FORGIVING].ceiling = Some(kg(load));
    let mut course = Course::new(all);
    for _ in 0..12 {
        week(&mut course, |course| {
            course.session(1, Quality::Unscored, Weight::AtLimit, Some(0));
            course.session(2, Quality::Clean, Weight::AtLimit, Some(0));
        });
    }
    assert_eq!(lift(&course, FORGIVING).proven.unwrap().1, kg(load));
    assert_eq!(lift(&course, STRICT).closed_since.unwrap().1, kg(100.0));
    course
}

fn reviewed(course: &Course, at: usize, day: Day) -> bool {
    on(course, at, day).reasons.contains(&Reason::PairReview)
}

#[test]
fn a_pair_is_looked_at_after_more_days_and_more_growth_than_stated() {
    for (load, at_last) in [(100.0, false), (105.0, false), (110.0, true)] {
        let course = grown_to(load);
        let since = lift(&course, STRICT).closed_since.unwrap().0;
        let days = [85, 200].map(|days| reviewed(&course, STRICT, since.plus(days).unwrap()));
        assert_eq!(days, [at_last; 2], "grown by a twentieth or less: {load}");
        assert_eq!(reviewed(&course, FORGIVING, since.plus(85).unwrap()), at_last);
        assert!(!reviewed(&course, PRESS, since.plus(200).unwrap()));
        assert!(!reviewed(&course, STRICT, since.plus(84).unwrap()), "twelve weeks are not more than twelve");
    }
}

#[test]
fn an_open_gate_and_a_stopped_lift_have_no_closed_gate() {
    let mut course = Course::new(hundred());
    let mut ready = 0;
    for _ in 0..6 {
        week(&mut course, |course| course.session(7, Quality::Clean, Weight::AtLimit, Some(0)));
        if lift(&course, STRICT).status == READY {
            assert_eq!(lift(&course, STRICT).closed_since, None);
            ready += 1;
        }
    }
    assert!(ready >= 2, "at the second of them a session has found the gate open");
    course.add(EventKind::PainReport(Course::pain("hip", 6)));
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(lift(&course, STRICT).closed_since, None);
}

/// Marks of depth in two clean sets of the press.
fn press(course: &mut Course, depth: [Mark; 2]) {
    let mut lift = course.lift(PRESS, Quality::Clean, Weight::AtLimit);
    for (set, depth) in lift.sets.iter_mut().zip(depth) {
        let marks = &mut set.marks.as_mut().unwrap().marks;
        marks.iter_mut().filter(|mark| mark.criterion.as_str() == "depth").for_each(|mark| mark.mark = depth);
    }
    let session = Session::new(vec![lift]).with_pain(Vec::new());
    course.add(EventKind::SessionRecorded(session));
}

/// The press has just moved with depth to be looked at within four weeks, and is kept where it is from then on.
fn moved_and_kept() -> Course {
    let mut all = hundred();
    all.lifts[PRESS].ceiling = Some(kg(105.0));
    let mut course = Course::new(all);
    while lift(&course, PRESS).moves.is_empty() {
        course.day_report(DayClass::Within, true);
        course.accept(2);
        if lift(&course, PRESS).moves.is_empty() {
            press(&mut course, [Mark::NotMet; 2]);
            course.morning(false);
            wait(&mut course, 6);
        }
    }
    role(&mut course, PRESS, Role::Maintain);
    // The move has still to be seen to hold.
    assert_eq!((lift(&course, PRESS).status, course.limit(PRESS)), (CONSOLIDATING, kg(105.0)));
    course
}

fn due(course: &Course) -> Option<(Day, Option<String>)> {
    on(course, PRESS, course.day).reasons.into_iter().find_map(|reason| match reason {
        Reason::ProbeDue { by, criterion } => Some((by, criterion.map(|name| name.as_str().into()))),
        _ => None,
    })
}

#[test]
fn of_two_looks_the_earlier_is_named_and_of_two_on_one_day_the_one_that_says_at_what() {
    let mut course = moved_and_kept();
    let (moved, depth) = (course.day, Some(String::from("depth")));
    let by = moved.plus(28).unwrap();
    assert_eq!(due(&course), Some((by, depth.clone())));
    // Passed two days later, the lift by itself would be looked at later than its depth.
    wait(&mut course, 2);
    press(&mut course, [Mark::Borderline; 2]);
    assert_eq!(due(&course), Some((by, depth.clone())));
    // A fail asks for a look at the whole lift at once.
    wait(&mut course, 2);
    let mut missed = course.lift(PRESS, Quality::ManyMisses, Weight::AtLimit);
    for set in &mut missed.sets {
        let marks = &mut set.marks.as_mut().unwrap().marks;
        marks.retain(|mark| mark.criterion.as_str() != "depth");
    }
    sets(&mut course, PRESS, missed.sets, Some(Vec::new()));
    assert_eq!(due(&course), Some((course.day.plus(1).unwrap(), None)));
}

#[test]
fn what_is_watched_is_held_when_it_is_seen_and_lost_in_no_set() {
    let watched = |depth: [Mark; 2]| {
        let mut course = moved_and_kept();
        wait(&mut course, 2);
        press(&mut course, depth);
        lift(&course, PRESS).watched.is_some()
    };
    assert!(watched([Mark::NotSeen, Mark::NotSeen]));
    assert!(watched([Mark::Met, Mark::Borderline]));
    assert!(watched([Mark::NotMet, Mark::Met]));
    assert!(!watched([Mark::Met, Mark::NotSeen]));
    assert!(!watched([Mark::Met, Mark::Met]));
}
