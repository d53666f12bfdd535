//! The morning after: what it takes back, what it confirms, and what counts as usual.

use super::course::*;
use bismar::condition::DayClass;
use bismar::error::Code;
use bismar::gate::Outcome;
use bismar::reason::Reason;
use bismar::record::*;

fn weeks(count: usize) -> Course {
    Course::play(&vec![Step::CleanWeek; count])
}

fn press(course: &mut Course) {
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
}

fn next_day(course: &mut Course) {
    course.day = course.day.plus(1).unwrap();
}

fn day_report(course: &mut Course, pain: Vec<PainAnswer>) {
    let class = Some(DayClass::Within);
    course.add(EventKind::DayReport(
        DayReport::default().with_class(class).with_pain(pain).with_asks(Vec::new()),
    ));
}

fn answer_of(course: &mut Course, session: u32, pain: Vec<PainAnswer>) {
    course.add(EventKind::NextDayReport(NextDayReport::new(session).with_pain(pain)));
}

fn last_sessions(course: &Course, lift: usize) -> Vec<(Outcome, bool)> {
    course.stands(lift).sittings.iter().map(|each| (each.outcome, each.confirmed)).collect()
}

#[test]
fn a_clear_session_between_two_flares_leaves_them_in_a_row() {
    let mut course = weeks(3);
    let before = course.stands(PRESS).grant.load();
    press(&mut course);
    course.morning(true);
    assert_eq!(course.stands(PRESS).grant.load(), before, "the first flare holds");
    next_day(&mut course);
    press(&mut course);
    course.morning(true);
    let after = course.stands(PRESS);
    assert_eq!(after.status, STEPPING_BACK);
    assert_eq!((before, after.grant.load()), (kg(43.5), kg(38.5)), "one step, not two");
}

#[test]
fn a_clear_morning_between_two_flares_parts_them() {
    let mut course = weeks(3);
    let before = course.stands(PRESS).grant.load();
    for flare in [true, false, true] {
        press(&mut course);
        course.morning(flare);
        next_day(&mut course);
    }
    assert_eq!(course.stands(PRESS).grant.load(), before);
}

#[test]
fn one_flare_told_twice_is_one() {
    let mut course = weeks(3);
    let before = course.stands(PRESS).grant.load();
    press(&mut course);
    course.morning(true);
    day_report(&mut course, vec![Course::pain("shoulder", 2)]);
    assert_eq!(course.stands(PRESS).grant.load(), before);
}

#[test]
fn a_flare_told_before_the_next_session_counts_like_one_told_in_the_morning() {
    let mut course = weeks(3);
    press(&mut course);
    next_day(&mut course);
    day_report(&mut course, vec![Course::pain("shoulder", 1)]);
    press(&mut course);
    next_day(&mut course);
    day_report(&mut course, vec![Course::pain("shoulder", 2)]);
    let after = course.stands(PRESS);
    assert_eq!((after.status, after.grant.load()), (STEPPING_BACK, kg(38.5)));
}

#[test]
fn the_second_flare_of_a_region_steps_every_lift_of_it_back() {
    let mut course = weeks(3);
    let before = course.limit(FORGIVING);
    course.session(1, Quality::Clean, Weight::AtLimit, Some(0));
    next_day(&mut course);
    day_report(&mut course, vec![Course::pain("hip", 1)]);
    course.session(2, Quality::Clean, Weight::AtLimit, Some(0));
    next_day(&mut course);
    day_report(&mut course, vec![Course::pain("hip", 2)]);
    assert!(course.limit(FORGIVING) < before);
    assert_eq!(course.stands(STRICT).status, STEPPING_BACK);
}

#[test]
fn the_level_before_the_session_decides_and_not_the_usual_one() {
    let mut course = weeks(3);
    course.step(&Step::Usual(2));
    day_report(&mut course, vec![Course::pain("hip", 1)]);
    course.session(1, Quality::Clean, Weight::AtLimit, Some(1));
    assert_eq!(last_sessions(&course, STRICT).last(), Some(&(Outcome::Pass, false)));
    let session = course.next_number() - 1;
    next_day(&mut course);
    answer_of(&mut course, session, vec![Course::pain("hip", 2)]);
    assert_eq!(last_sessions(&course, STRICT).last().map(|last| last.0), Some(Outcome::Fail));
}

#[test]
fn without_a_level_before_the_session_the_agreed_one_stands_for_it() {
    let mut course = weeks(3);
    course.step(&Step::Usual(2));
    course.session(1, Quality::Clean, Weight::AtLimit, Some(2));
    let session = course.next_number() - 1;
    next_day(&mut course);
    answer_of(&mut course, session, vec![Course::pain("hip", 2)]);
    assert_eq!(last_sessions(&course, STRICT).last(), Some(&(Outcome::Pass, true)));
}

#[test]
fn an_answer_of_the_same_day_is_not_the_morning_after() {
    let mut course = weeks(3);
    press(&mut course);
    let session = course.next_number() - 1;
    answer_of(&mut course, session, Vec::new());
    assert_eq!(last_sessions(&course, PRESS).last(), Some(&(Outcome::Pass, false)));
}

#[test]
fn one_answer_confirms_one_session_and_no_older_one() {
    let mut course = weeks(3);
    for _ in 0..2 {
        press(&mut course);
        next_day(&mut course);
    }
    day_report(&mut course, Vec::new());
    let last = last_sessions(&course, PRESS);
    assert_eq!(last[last.len() - 2..], [(Outcome::Pass, false), (Outcome::Pass, true)]);
}

#[test]
fn a_question_after_the_next_session_says_nothing_of_the_one_before() {
    let mut course = weeks(3);
    press(&mut course);
    next_day(&mut course);
    press(&mut course);
    day_report(&mut course, Vec::new());
    let last = last_sessions(&course, PRESS);
    assert_eq!(last[last.len() - 2..], [(Outcome::Pass, false); 2]);
}

#[test]
fn steady_means_three_sessions_and_not_three_answers() {
    let mut course = weeks(3);
    course.step(&Step::Usual(2));
    for _ in 0..3 {
        day_report(&mut course, vec![Course::pain("hip", 1)]);
    }
    course.session(1, Quality::Clean, Weight::AtLimit, Some(1));
    next_day(&mut course);
    day_report(&mut course, vec![Course::pain("hip", 1)]);
    let unsteady = |course: &Course| {
        let decision = course.state().decide(course.day).unwrap().swap_remove(STRICT);
        let bismar::progression::MoveOutlook::Blocked { by, .. } = decision.outlook else { return false };
        by.iter().any(|reason| matches!(reason, Reason::UsualPainUnsteady { .. }))
    };
    assert!(unsteady(&course));
    course.session(1, Quality::Clean, Weight::AtLimit, Some(1));
    course.session(1, Quality::Clean, Weight::AtLimit, Some(1));
    assert!(unsteady(&course), "two sessions of one day are one");
    next_day(&mut course);
    course.session(1, Quality::Clean, Weight::AtLimit, Some(1));
    assert!(!unsteady(&course));
}

#[test]
fn two_answers_about_one_region_are_refused() {
    let twice = || vec![Course::pain("hip", 4), Course::pain("hip", 0)];
    let course = weeks(1);
    let kinds = [
        EventKind::DayReport(DayReport::default().with_pain(twice())),
        EventKind::NextDayReport(NextDayReport::new(4).with_pain(twice())),
        EventKind::SessionRecorded(
            Session::new(vec![course.lift(PRESS, Quality::Clean, Weight::AtLimit)]).with_pain(twice()),
        ),
    ];
    for kind in kinds {
        let event = Event::new(course.next_number(), course.day, kind);
        let error = course.state().clone().apply(&event).unwrap_err();
        assert_eq!((error.code(), error.field().ends_with("pain")), (Code::DuplicateName, true));
    }
}

#[test]
fn an_answer_on_the_day_of_training_does_not_part_two_flares() {
    let mut course = weeks(3);
    let before = course.stands(PRESS).grant.load();
    // Nobody marks these sessions, so that no fail in a row steps the lift back.
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    course.morning(true);
    next_day(&mut course);
    let session = course.next_number();
    course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
    // Told the same evening: no morning has come yet.
    answer_of(&mut course, session, Vec::new());
    course.morning(true);
    let after = course.stands(PRESS);
    assert_eq!(after.status, STEPPING_BACK);
    assert_eq!((before, after.grant.load()), (kg(43.5), kg(38.5)));
}

#[test]
fn a_flare_counts_against_a_session_whatever_it_came_to() {
    for (quality, weight) in [
        (Quality::Clean, Weight::AtLimit),
        (Quality::ManyMisses, Weight::AtLimit),
        (Quality::Unscored, Weight::AtLimit),
        (Quality::Clean, Weight::Lighter),
    ] {
        let mut course = weeks(3);
        course.session(4, quality, weight, Some(0));
        course.morning(true);
        let last = last_sessions(&course, PRESS).last().copied();
        assert_eq!(
            (course.stands(PRESS).fails, last),
            (1, Some((Outcome::Fail, true))),
            "{quality:?} {weight:?}"
        );
    }
}

#[test]
fn a_day_below_the_usual_cancels_no_flare() {
    for class in [DayClass::Below, DayClass::Within] {
        let mut course = weeks(3);
        course.day_report(class, true);
        press(&mut course);
        course.morning(true);
        let after = course.stands(PRESS);
        assert_eq!((after.fails, after.neutral), (1, 0), "{class:?}");
        // Nor does the run of passes go on over it.
        next_day(&mut course);
        press(&mut course);
        assert_eq!(super::hand::decision(&course, PRESS).gate.met, [], "{class:?}");
    }
}

#[test]
fn a_lift_at_rest_is_left_where_it_is() {
    let mut course = weeks(3);
    course.step(&Step::Role { lift: 0, role: 2 });
    let before = [STRICT, FORGIVING].map(|at| course.stands(at).grant.load());
    for _ in 0..2 {
        course.session(2, Quality::Clean, Weight::AtLimit, Some(0));
        course.morning(true);
        next_day(&mut course);
    }
    let after = [STRICT, FORGIVING].map(|at| course.stands(at));
    assert_eq!((after[0].status, after[0].grant.load()), (RESTING, before[0]));
    assert_eq!(after[1].status, STEPPING_BACK);
    assert!(after[1].grant.load() < before[1]);
}

#[test]
fn two_flares_step_a_lift_back_that_was_stepping_back_already() {
    let mut course = weeks(2);
    for _ in 0..2 {
        course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
        next_day(&mut course);
    }
    assert_eq!(course.stands(PRESS).grant.load(), kg(36.0));
    for _ in 0..2 {
        course.session(4, Quality::Unscored, Weight::AtLimit, Some(0));
        course.morning(true);
        next_day(&mut course);
    }
    // Those are other sessions than the fails: nine tenths of 36 kg are 32.4, and 32 can be loaded.
    assert_eq!(course.stands(PRESS).grant.load(), kg(32.0));
}

#[test]
fn another_rater_between_training_and_its_morning_is_no_step_back() {
    let mut course = weeks(2);
    for _ in 0..2 {
        press(&mut course);
        course.step(&Step::Rater);
        course.morning(true);
        next_day(&mut course);
    }
    let after = course.stands(PRESS);
    assert_eq!((after.status, after.grant.load()), (STEPPING_BACK, kg(36.0)));
}
