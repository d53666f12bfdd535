//! The way back after a break: what it takes, and what goes back to the load before it.

use super::course::*;
use super::hand::limited;
use super::hundred::*;
use bismar::condition::DayClass;
use bismar::gate::Outcome;
use bismar::progression::Purpose;
use bismar::reason::Reason;
use bismar::record::*;

/// Twelve days after a session: the first row, and one step back.
pub fn short_break(set: impl FnOnce(&mut Parameters)) -> Course {
    let mut all = hundred();
    set(&mut all);
    // Calibration is over, so that a return leads on to holding.
    let mut course = holding(all);
    after_session(&mut course, 12);
    assert_eq!(course.limit(PRESS), kg(95.0));
    course
}

fn press(course: &mut Course, pain: Option<u8>) {
    course.session(4, Quality::Clean, Weight::AtLimit, pain);
}

/// The same on a day on which the questions were asked, and nothing was said.
fn asked(course: &mut Course, pain: Option<u8>) {
    course.add(EventKind::DayReport(DayReport::default().with_asks(Vec::new())));
    press(course, pain);
}

#[test]
fn one_pass_after_a_short_break_goes_back_to_the_load_before_it() {
    let mut course = short_break(|_| {});
    asked(&mut course, Some(0));
    let after = lift(&course, PRESS);
    assert_eq!((after.status, after.grant.load()), (HOLDING, kg(100.0)));
    assert_eq!((after.cap(), after.row()), (None, None));
    assert_eq!((after.grant.place.rung, after.grant.work.sets, after.grant.work.reps), (1, 2, 5));
}

/// What happens on the day of the return up to its session, and whether the load before the break is given back.
type Return = (&'static str, fn(&mut Parameters), fn(&mut Course), bool);

const RETURNS: [Return; 15] = [
    ("nobody asked anything before training", |_| {}, |course| press(course, Some(0)), false),
    (
        "what comes before training was not asked",
        |_| {},
        |course| {
            course.add(EventKind::DayReport(DayReport::default().with_class(DayClass::Within)));
            press(course, Some(0));
        },
        false,
    ),
    ("pain was not asked about", |_| {}, |course| asked(course, None), false),
    ("pain in the region", |_| {}, |course| asked(course, Some(1)), false),
    (
        "pain elsewhere",
        |_| {},
        |course| {
            course.add(EventKind::PainReport(Course::pain("hip", 4)));
            asked(course, Some(0));
        },
        true,
    ),
    (
        "a confirmed day below the usual",
        |_| {},
        |course| {
            course.day_report(DayClass::Below, true);
            press(course, Some(0));
        },
        false,
    ),
    (
        "one bad marker",
        |_| {},
        |course| {
            course.day_report(DayClass::BelowSingle, true);
            press(course, Some(0));
        },
        false,
    ),
    (
        "an ordinary day",
        |_| {},
        |course| {
            course.day_report(DayClass::Within, true);
            press(course, Some(0));
        },
        true,
    ),
    (
        "a fever, asked first",
        |_| {},
        |course| {
            let fever = DayReport::default().with_asks(vec![Ask::Fever]);
            course.add(EventKind::DayReport(fever));
            press(course, Some(0));
        },
        false,
    ),
    (
        "a clearance that ran out",
        |_| {},
        |course| {
            limited(course, -1, Vec::new());
            asked(course, Some(0));
        },
        false,
    ),
    (
        "the last day of a clearance",
        |_| {},
        |course| {
            limited(course, 0, Vec::new());
            asked(course, Some(0));
        },
        true,
    ),
    (
        "an illness without a clearance, where the table has one row",
        |all| all.policy.layoff.truncate(1),
        |course| {
            course.step(&Step::Layoff(2));
            asked(course, Some(0));
        },
        false,
    ),
    (
        "an illness with a clearance, where the table has one row",
        |all| all.policy.layoff.truncate(1),
        |course| {
            course.step(&Step::Layoff(2));
            course.clear(true);
            asked(course, Some(0));
        },
        true,
    ),
    (
        "fewer repetitions",
        |_| {},
        |course| {
            course.day_report(DayClass::Within, true);
            sets(course, PRESS, vec![set_of(kg(95.0), 4)], Some(vec![]));
        },
        false,
    ),
    ("a set tried and missed", |_| {}, missed_set, false),
];

fn missed_set(course: &mut Course) {
    course.day_report(DayClass::Within, true);
    let missed = set_of(kg(95.0), 5).with_failed(true);
    sets(course, PRESS, vec![missed], Some(Vec::new()));
}

#[test]
fn a_short_break_gives_the_load_back_only_with_everything_in_order() {
    for (what, set, play, given_back) in RETURNS {
        let mut course = short_break(set);
        play(&mut course);
        let after = lift(&course, PRESS);
        let expected = if given_back { (HOLDING, kg(100.0)) } else { (RETURNING, kg(95.0)) };
        assert_eq!((after.status, after.grant.load()), expected, "{what}");
    }
}

#[test]
fn a_short_break_of_which_the_load_may_not_be_given_back_ends_as_a_longer_one() {
    let mut course = short_break(|_| {});
    for passes in 1..=2 {
        // Nobody asks about pain, so that the load before the break is not given back.
        press(&mut course, None);
        let after = lift(&course, PRESS);
        let expected = if passes == 2 { HOLDING } else { RETURNING };
        assert_eq!((after.status, after.grant.load()), (expected, kg(95.0)), "after {passes} passes");
        wait(&mut course, 2);
    }
    // Once it is over, the load before it is earned anew.
    press(&mut course, Some(0));
    assert_eq!(lift(&course, PRESS).grant.load(), kg(95.0));
}

#[test]
fn without_a_clearance_on_record_the_policy_says_whether_one_is_needed() {
    for (required, load) in [(true, 95.0), (false, 100.0)] {
        let mut all = hundred();
        all.policy.clearance_required = required;
        let mut course = Course::new(all.clone());
        course.log.events.clear();
        course.states.clear();
        course.add(EventKind::ParametersChanged(Box::new(all)));
        press(&mut course, Some(0));
        wait(&mut course, 12);
        asked(&mut course, Some(0));
        assert_eq!(lift(&course, PRESS).grant.load(), kg(load), "required: {required}");
    }
}

#[test]
fn a_short_break_within_a_return_that_went_back_again_restores_nothing() {
    let mut course = short_break(|_| {});
    // Two failed sessions at 95 kg go one step further back.
    for _ in 0..2 {
        course.session(4, Quality::ManyMisses, Weight::AtLimit, Some(0));
        wait(&mut course, 2);
    }
    assert_eq!((lift(&course, PRESS).status, course.limit(PRESS)), (RETURNING, kg(90.0)));
    for passes in 1..=2 {
        wait(&mut course, 2);
        press(&mut course, Some(0));
        let after = lift(&course, PRESS);
        assert_eq!(after.grant.load(), kg(90.0), "after {passes} passes");
        assert_eq!(after.status == HOLDING, passes == 2, "after {passes} passes");
    }
}

/// One session of calibration, which the first one is, so that a return leads on to holding.
fn learnt() -> Parameters {
    let mut all = hundred();
    all.lifts[PRESS].learning_sessions = Some(1);
    all
}

#[test]
fn a_longer_return_takes_two_passes_and_goes_on_from_where_it_stands() {
    // Whatever the day: a day below the usual only keeps the load before a short break from being given back.
    for class in [DayClass::Within, DayClass::BelowSingle] {
        let mut course = trained(learnt(), YOUNG);
        after_session(&mut course, 30);
        for passes in 0..2 {
            assert_eq!((on(&course, PRESS, course.day).status.as_str(), passes), (RETURNING, passes));
            clean(&mut course, 4, class);
            wait(&mut course, 3);
        }
        let after = lift(&course, PRESS);
        assert_eq!((after.status, after.grant.load()), (HOLDING, kg(90.0)));
        assert_eq!((after.cap(), after.row()), (None, None));
    }
}

#[test]
fn after_twelve_weeks_every_criterion_is_learnt_anew_in_half_the_sessions() {
    // Half of the one session of its own would be none; it takes two at least.
    for (gap, after, learned) in [(83, HOLDING, (1, 1)), (84, LEARNING, (0, 2))] {
        let mut course = trained(learnt(), YOUNG);
        after_session(&mut course, gap);
        for _ in 0..2 {
            clean(&mut course, 4, DayClass::Within);
            wait(&mut course, 3);
        }
        assert_eq!((lift(&course, PRESS).status, lift(&course, PRESS).learned), (after, learned), "{gap}");
    }
    // Two fails on the way back take a step and leave the row of the table as it was.
    let mut course = trained(learnt(), YOUNG);
    after_session(&mut course, 84);
    for quality in [Quality::ManyMisses, Quality::ManyMisses, Quality::Clean, Quality::Clean] {
        course.session(4, quality, Weight::AtLimit, Some(0));
        wait(&mut course, 3);
    }
    let after = lift(&course, PRESS);
    assert_eq!((after.status, after.learned, after.grant.load()), (LEARNING, (0, 2), kg(60.0)));
}

#[test]
fn a_kept_lift_stays_kept_and_one_set_to_rest_at_rest() {
    let kept = Purpose::Maintain { not_below: None };
    for (given, gap, after, status) in [
        (Role::Maintain, 30, kept, MAINTAINING),
        (Role::Maintain, 12, kept, MAINTAINING),
        (Role::Rest, 30, Purpose::Rest, RESTING),
        (Role::Rest, 12, Purpose::Rest, RESTING),
    ] {
        let mut course = short_break(|_| {});
        role(&mut course, PRESS, given);
        after_session(&mut course, gap);
        for _ in 0..2 {
            clean(&mut course, 4, DayClass::Within);
            wait(&mut course, 3);
        }
        assert_eq!((lift(&course, PRESS).purpose, lift(&course, PRESS).status), (after, status), "{given:?}");
    }
}

#[test]
fn the_first_two_sessions_have_half_the_sets_rounded_up() {
    let mut all = hundred();
    all.lifts[PRESS].start.work.sets = 3;
    let mut course = trained(all, YOUNG);
    after_session(&mut course, 30);
    let outcome = |course: &mut Course, count: usize| {
        let load = course.limit(PRESS);
        sets(course, PRESS, vec![set_of(load, 5); count], Some(Vec::new()));
        wait(course, 2);
        lift(course, PRESS).sittings.last().unwrap().outcome
    };
    let halves = |course: &Course| {
        let reasons = on(course, PRESS, course.day).reasons;
        reasons.iter().find_map(|reason| match reason {
            Reason::HalfSets { sessions } => Some(*sessions),
            _ => None,
        })
    };
    assert_eq!(halves(&course), Some(2));
    assert_eq!(outcome(&mut course, 1), Outcome::NotScored);
    assert_eq!(halves(&course), Some(1));
    assert_eq!(outcome(&mut course, 2), Outcome::Pass);
    assert_eq!(halves(&course), None);
    assert_eq!(outcome(&mut course, 2), Outcome::NotScored);
    assert_eq!(outcome(&mut course, 3), Outcome::Pass);
}

#[test]
fn a_gap_that_its_partner_ended_counts_once_when_the_lift_is_next_trained() {
    let mut course = trained(hundred(), YOUNG);
    after_session(&mut course, 42);
    clean(&mut course, 1, DayClass::Within);
    let loads =
        |course: &Course| [STRICT, FORGIVING, PRESS].map(|at| kilograms(lift(course, at).grant.load()));
    let statuses = |course: &Course| [STRICT, FORGIVING, PRESS].map(|at| lift(course, at).status);
    assert_eq!((loads(&course), statuses(&course)), ([80, 100, 100], [RETURNING, LEARNING, LEARNING]));
    assert_eq!((lift(&course, STRICT).missed, lift(&course, FORGIVING).missed), (0, 42));
    // However often the strict lift is trained meanwhile, the forgiving one has been away for six weeks.
    for _ in 0..3 {
        wait(&mut course, 3);
        clean(&mut course, 1, DayClass::Within);
    }
    wait(&mut course, 3);
    let decision = on(&course, FORGIVING, course.day);
    assert_eq!((decision.status.as_str(), kilograms(decision.limit)), (RETURNING, 80));
    assert!(decision.reasons.contains(&Reason::Layoff { gap: 42, row: 3, load: kg(80.0) }));
    clean(&mut course, 2, DayClass::Within);
    assert_eq!((lift(&course, FORGIVING).status, lift(&course, FORGIVING).missed), (RETURNING, 0));
    wait(&mut course, 3);
    assert_eq!(kilograms(course.limit(FORGIVING)), 80, "once");
}

#[test]
fn a_retired_lift_keeps_its_illness_until_it_comes_back_itself() {
    let mut course = trained(hundred(), YOUNG);
    role(&mut course, FORGIVING, Role::Retire);
    course.step(&Step::Layoff(2));
    course.clear(true);
    after_session(&mut course, 12);
    clean(&mut course, 1, DayClass::Within);
    assert_eq!([STRICT, FORGIVING, PRESS].map(|at| lift(&course, at).ill), [false, true, true]);
    role(&mut course, FORGIVING, Role::Train);
    wait(&mut course, 1);
    // Two rows down for the illness, and one for the twelve days that the strict lift ended: the hip was loaded a day
    // ago, but not by this lift.
    assert_eq!(
        (on(&course, FORGIVING, course.day).status.as_str(), course.limit(FORGIVING)),
        (RETURNING, kg(80.0))
    );
    clean(&mut course, 2, DayClass::Within);
    assert!(!lift(&course, FORGIVING).ill);
}
