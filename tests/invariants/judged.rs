//! What one session comes to: work granted, fails on days below the usual, calibration, pain of a partner, what is kept of it.

use super::course::*;
use super::hand::blocked;
use super::hundred::*;
use bismar::condition::DayClass;
use bismar::gate::{Mark, Outcome, Rater, SetMarks};
use bismar::quantity::{Rir, Rpe};
use bismar::reason::Reason;
use bismar::record::*;

fn outcome(course: &Course, at: usize) -> Outcome {
    lift(course, at).now.sittings.last().unwrap().outcome
}

#[test]
fn a_pass_is_all_the_work_that_was_granted() {
    let five = |load: f64| set_of(kg(load), 5);
    let rows = [
        ("as granted", vec![five(100.0), five(100.0)], Outcome::Pass),
        ("one set more", vec![five(100.0); 3], Outcome::Pass),
        ("more repetitions", vec![set_of(kg(100.0), 6), five(100.0)], Outcome::Pass),
        ("one set less", vec![five(100.0)], Outcome::NotScored),
        ("one repetition less", vec![five(100.0), set_of(kg(100.0), 4)], Outcome::NotScored),
        ("one set lighter", vec![five(100.0), five(95.0)], Outcome::NotScored),
        ("all lighter", vec![five(95.0), five(95.0)], Outcome::NotScored),
        ("heavier", vec![five(105.0), five(105.0)], Outcome::NotScored),
        ("tried and missed", vec![five(100.0), five(100.0).with_failed(true)], Outcome::Fail),
        ("missed while lighter", vec![five(95.0).with_failed(true)], Outcome::Fail),
    ];
    for (what, done, expected) in rows {
        let mut course = Course::new(hundred());
        sets(&mut course, PRESS, done, Some(Vec::new()));
        assert_eq!(outcome(&course, PRESS), expected, "{what}");
        let at_grant = lift(&course, PRESS).sittings.last().unwrap().at_grant;
        assert_eq!(
            at_grant,
            ["as granted", "one set more", "more repetitions", "tried and missed"].contains(&what)
        );
    }
}

#[test]
fn work_at_an_eased_load_is_no_pass_at_the_grant() {
    let mut course = Course::new(hundred());
    let (who, load, expires) = (name("coach"), kg(90.0), Some(course.day.plus(7).unwrap()));
    let given = Override::new(name("press"), load, who).with_expires(expires);
    course.add(EventKind::CoachOverride(given));
    assert_eq!(course.limit(PRESS), kg(90.0));
    course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
    assert_eq!(outcome(&course, PRESS), Outcome::NotScored);
}

/// Ten scored repetitions with two misses late in the second set, then so many that nobody marked.
fn two_misses_and(unmarked: u8) -> Outcome {
    let mut course = Course::new(hundred());
    let mut second = set_of(kg(100.0), 5);
    let marks = second.marks.as_mut().unwrap();
    (marks.acceptable, marks.first_failing_rep) = (Some(3), Some(4));
    let third = set_of(kg(100.0), unmarked).with_marks(None);
    sets(&mut course, PRESS, vec![set_of(kg(100.0), 5), second, third], Some(Vec::new()));
    outcome(&course, PRESS)
}

#[test]
fn repetitions_that_nobody_marked_might_still_have_mended_two_misses_of_twenty() {
    // A tenth of nineteen is one, a tenth of twenty two.
    assert_eq!(two_misses_and(9), Outcome::Fail);
    assert_eq!(two_misses_and(10), Outcome::NotScored);
}

fn fails_after(course: &mut Course, class: DayClass, quality: Quality) -> (u8, u8) {
    course.day_report(class, true);
    course.session(4, quality, Weight::AtLimit, Some(0));
    wait(course, 2);
    (lift(course, PRESS).fails, lift(course, PRESS).neutral)
}

#[test]
fn two_fails_on_confirmed_days_below_the_usual_say_nothing_and_the_third_counts() {
    let mut course = holding(hundred());
    let mut bad = |quality| fails_after(&mut course, DayClass::Below, quality);
    assert_eq!(bad(Quality::ManyMisses), (0, 1));
    assert_eq!(bad(Quality::ManyMisses), (0, 2));
    assert_eq!(bad(Quality::ManyMisses), (1, 0));
    assert_eq!(lift(&course, PRESS).status, HOLDING);
}

#[test]
fn a_critical_loss_counts_on_any_day_and_an_unconfirmed_day_below_the_usual_cancels_nothing() {
    assert_eq!(fails_after(&mut holding(hundred()), DayClass::Below, Quality::CriticalLost), (1, 0));
    for class in [DayClass::BelowSingle, DayClass::Within, DayClass::Above, DayClass::Unknown] {
        assert_eq!(fails_after(&mut holding(hundred()), class, Quality::ManyMisses), (1, 0), "{class:?}");
    }
}

#[test]
fn a_fail_on_a_day_below_the_usual_takes_back_no_earlier_fail_and_a_pass_does() {
    let mut course = holding(hundred());
    assert_eq!(fails_after(&mut course, DayClass::Within, Quality::ManyMisses), (1, 0));
    assert_eq!(fails_after(&mut course, DayClass::Below, Quality::ManyMisses), (1, 1));
    assert_eq!(fails_after(&mut course, DayClass::Within, Quality::Clean), (0, 0));
}

/// What counts is the row of passes that opens the gate, not an older pass that a fail has made worthless.
#[test]
fn a_pass_on_a_usual_day_before_a_fail_does_not_qualify_two_passes_below_the_usual() {
    let qualified = |between: &[(DayClass, Quality)]| {
        let mut course = holding(hundred());
        fails_after(&mut course, DayClass::Within, Quality::ManyMisses);
        fails_after(&mut course, DayClass::Within, Quality::Clean);
        for (class, quality) in between {
            fails_after(&mut course, *class, *quality);
        }
        fails_after(&mut course, DayClass::Below, Quality::Clean);
        fails_after(&mut course, DayClass::Below, Quality::Clean);
        !blocked(&course, PRESS).contains(&Reason::QualifiedBelowUsual)
    };
    assert!(qualified(&[]));
    assert!(qualified(&[(DayClass::Below, Quality::ManyMisses)]), "a fail below the usual is excused");
    assert!(!qualified(&[(DayClass::Within, Quality::ManyMisses)]));
    assert!(!qualified(&[(DayClass::Below, Quality::CriticalLost)]));
}

#[test]
fn no_policy_but_its_own_number_makes_fails_of_days_below_the_usual_neutral() {
    for (allowed, expected) in [(0, (1, 0)), (1, (0, 1))] {
        let mut all = hundred();
        all.policy.neutral_fails = allowed;
        let mut course = trained(all, YOUNG);
        wait(&mut course, 2);
        assert_eq!(fails_after(&mut course, DayClass::Below, Quality::ManyMisses), expected);
    }
}

#[test]
fn calibration_counts_every_session_and_ends_with_a_pass() {
    let mut course = Course::new(hundred());
    let mut learned = |quality| {
        course.session(4, quality, Weight::AtLimit, Some(0));
        wait(&mut course, 2);
        (lift(&course, PRESS).status, lift(&course, PRESS).learned)
    };
    assert_eq!(learned(Quality::Unscored), (LEARNING, (1, 2)));
    assert_eq!(learned(Quality::ManyMisses), (LEARNING, (2, 2)));
    assert_eq!(learned(Quality::Unscored), (LEARNING, (3, 2)));
    assert_eq!(learned(Quality::Clean), (HOLDING, (4, 2)));
    // From then on sessions are no calibration.
    assert_eq!(learned(Quality::Unscored), (HOLDING, (4, 2)));
    assert_eq!(learned(Quality::ManyMisses), (HOLDING, (4, 2)));
}

#[test]
fn a_step_back_ends_after_the_passes_that_the_policy_asks_for() {
    for needed in [1, 2] {
        let mut all = hundred();
        all.policy.step_back_passes = needed;
        let mut course = trained(all, YOUNG);
        for quality in [Quality::ManyMisses, Quality::ManyMisses] {
            wait(&mut course, 2);
            course.session(4, quality, Weight::AtLimit, Some(0));
        }
        for passes in 0..=needed {
            let after = lift(&course, PRESS);
            assert_eq!(after.status == HOLDING, passes == needed, "{passes} of {needed}");
            assert_eq!(after.grant.load(), kg(95.0));
            wait(&mut course, 2);
            course.session(4, Quality::Clean, Weight::AtLimit, Some(0));
        }
    }
}

/// The press has just moved up, or holds after a pass.
fn placed(consolidating: bool) -> Course {
    let mut all = hundred();
    all.lifts[PRESS].ceiling = consolidating.then(|| kg(105.0)).or(Some(kg(100.0)));
    let mut course = Course::new(all);
    while lift(&course, PRESS).moves.is_empty() && (consolidating || lift(&course, PRESS).here.0 < 3) {
        clean(&mut course, 4, DayClass::Within);
        course.morning(false);
        wait(&mut course, 2);
        course.day_report(DayClass::Within, true);
        course.accept(2);
    }
    course
}

#[test]
fn one_critical_fail_with_pain_steps_back_right_after_a_move_and_nothing_less_does() {
    let after = |consolidating: bool, quality, pain| {
        let mut course = placed(consolidating);
        let before = lift(&course, PRESS).status;
        assert_eq!(before == CONSOLIDATING, consolidating);
        course.session(4, quality, Weight::AtLimit, Some(pain));
        (lift(&course, PRESS).status, kilograms(lift(&course, PRESS).grant.load()))
    };
    assert_eq!(after(true, Quality::CriticalLost, 1), (STEPPING_BACK, 95));
    assert_eq!(after(true, Quality::CriticalLost, 0), (CONSOLIDATING, 105));
    assert_eq!(after(true, Quality::ManyMisses, 1), (CONSOLIDATING, 105));
    // Elsewhere one fail never does, with pain or without.
    assert_eq!(after(false, Quality::CriticalLost, 1), (HOLDING, 100));
    assert_eq!(after(false, Quality::ManyMisses, 0), (HOLDING, 100));
}

/// Whether each lift is held by its partner's pain after a session of these lifts with these answers.
fn held(lifts: u8, pain: Vec<PainAnswer>) -> [bool; 3] {
    let mut course = trained(hundred(), YOUNG);
    wait(&mut course, 2);
    let lifts = [STRICT, FORGIVING, PRESS]
        .into_iter()
        .filter(|at| lifts >> at & 1 == 1)
        .map(|at| course.lift(at, Quality::Clean, Weight::AtLimit));
    let lifts = lifts.collect();
    course.train(lifts, Some(pain));
    [STRICT, FORGIVING, PRESS].map(|at| lift(&course, at).partner_pain)
}

#[test]
fn only_pain_in_the_strict_lift_holds_and_only_the_forgiving_one() {
    assert_eq!(held(1, vec![Course::pain("hip", 1)]), [false, true, false]);
    assert_eq!(held(2, vec![Course::pain("hip", 1)]), [false; 3]);
    assert_eq!(held(4, vec![Course::pain("shoulder", 1)]), [false; 3]);
    // An answer of none, or pain where the strict lift loads nothing.
    assert_eq!(held(1, vec![Course::pain("hip", 0)]), [false; 3]);
    assert_eq!(held(1, vec![Course::pain("shoulder", 2)]), [false; 3]);
}

/// Sessions of one day after the day on which all were trained: which lifts, and whether the hip hurt.
fn held_after(day: &[(u8, u8)]) -> bool {
    let mut course = trained(hundred(), YOUNG);
    wait(&mut course, 2);
    for (lifts, pain) in day {
        let lifts = course
            .chosen(*lifts)
            .iter()
            .map(|at| course.lift(*at, Quality::Clean, Weight::AtLimit))
            .collect();
        course.train(lifts, Some(vec![Course::pain("hip", *pain)]));
    }
    lift(&course, FORGIVING).partner_pain
}

#[test]
fn the_forgiving_lift_of_the_same_day_ends_no_hold() {
    // The strict lift, the forgiving one, or both in one session, in every order.
    for day in [
        &[(3, 2)][..],
        &[(1, 2), (2, 0)],
        &[(2, 0), (1, 2)],
        &[(1, 2), (2, 2)],
        &[(1, 2), (2, 0), (2, 0)],
        &[(1, 0), (2, 0), (1, 2)],
    ] {
        assert!(held_after(day), "{day:?}");
    }
    // A day later it does.
    let mut course = trained(hundred(), YOUNG);
    wait(&mut course, 2);
    course.session(1, Quality::Clean, Weight::AtLimit, Some(2));
    wait(&mut course, 1);
    course.session(2, Quality::Clean, Weight::AtLimit, Some(0));
    assert!(!lift(&course, FORGIVING).partner_pain);
}

#[test]
fn pain_in_the_second_session_of_a_day_is_pain_of_that_day() {
    assert!(held_after(&[(1, 0), (1, 2)]));
    assert!(!held_after(&[(1, 0), (1, 0)]));
    // Right after a move a critical loss with pain steps back, whichever session of the day says so.
    for pains in [[0, 1], [1, 0]] {
        let mut course = placed(true);
        wait(&mut course, 2);
        for pain in pains {
            course.session(4, Quality::CriticalLost, Weight::AtLimit, Some(pain));
        }
        assert_eq!(lift(&course, PRESS).status, STEPPING_BACK, "{pains:?}");
    }
}

#[test]
fn twelve_sessions_are_kept_and_those_before_them_counted_where_they_were_judged() {
    let mut course = Course::new(hundred());
    let mut train = |quality, weight| {
        course.session(4, quality, weight, Some(0));
        wait(&mut course, 2);
        (lift(&course, PRESS).sittings.len(), lift(&course, PRESS).earlier)
    };
    // Nine of ten acceptable; then ten of ten at a lighter load, which is not judged.
    assert_eq!(train(Quality::OneMiss, Weight::AtLimit), (1, (0, 0)));
    train(Quality::Clean, Weight::Lighter);
    for kept in 3..=12 {
        assert_eq!(train(Quality::Unscored, Weight::AtLimit), (kept, (0, 0)));
    }
    assert_eq!(train(Quality::Unscored, Weight::AtLimit), (12, (9, 10)));
    assert_eq!(train(Quality::Unscored, Weight::AtLimit), (12, (9, 10)));
}

#[test]
fn the_critical_criterion_that_was_lost_is_kept() {
    let fault = |brace: Mark, depth: Mark| {
        let mut lost = set_of(kg(100.0), 5);
        let marks = SetMarks::scored(5, 5, Rater::Coach).with("brace", brace).unwrap();
        lost.marks = Some(marks.with("depth", depth).unwrap());
        // Lost in the second set alone, and in both.
        [set_of(kg(100.0), 5), lost.clone()].map(|first| {
            let mut course = Course::new(hundred());
            sets(&mut course, PRESS, vec![first, lost.clone()], Some(Vec::new()));
            lift(&course, PRESS).fault.as_ref().map(|fault| fault.as_str().to_owned())
        })
    };
    let brace = Some(String::from("brace"));
    assert_eq!(fault(Mark::NotMet, Mark::Met), [brace.clone(), brace.clone()]);
    assert_eq!(fault(Mark::NotMet, Mark::NotMet), [brace.clone(), brace]);
    assert_eq!(fault(Mark::Met, Mark::NotMet), [None, None]);
    assert_eq!(fault(Mark::Borderline, Mark::Met), [None, None]);
}

#[test]
fn the_least_reserve_of_a_session_is_known_where_every_set_has_one() {
    let rir = |half: u16| Some(Effort::Rir(Rir::new(f64::from(half) / 2.0).unwrap()));
    let rpe = |rating: f64| Some(Effort::Rpe(Rpe::new(rating).unwrap()));
    // In half repetitions.
    let rows = [
        (vec![rir(6), rir(4)], Some(4)),
        (vec![rir(5), rir(8)], Some(5)),
        (vec![rpe(8.0), rir(6)], Some(4)),
        (vec![rpe(10.0), rir(6)], Some(0)),
        // Half steps are bands, of which the lower end is taken; 9.5 is no repetition.
        (vec![rpe(8.5)], Some(2)),
        (vec![rpe(7.5)], Some(4)),
        (vec![rpe(6.0)], Some(8)),
        (vec![rpe(9.5)], Some(0)),
        // Below the scale a rating is none, and a set without effort leaves the whole unknown.
        (vec![rpe(4.0), rir(4)], None),
        (vec![rir(4), None], None),
    ];
    for (efforts, least) in rows {
        let mut course = Course::new(hundred());
        let done = efforts.iter().map(|effort| set_of(kg(100.0), 5).with_effort(*effort));
        sets(&mut course, PRESS, done.collect(), Some(Vec::new()));
        assert_eq!(lift(&course, PRESS).reserve, least, "{efforts:?}");
    }
}
