//! Does today lie below, within or above the usual?

use bismar::answers::{DayAnswer, DayAnswers, Lacking, day as asked_day};
use bismar::condition::{Conditions, DayClass, MarkerKind, TimeOfDay, Vote, WarmUpTechnique};
use bismar::quantity::{Day, Reps};
use bismar::record::*;
use bismar::text::Words;

use crate::made::{all_careful, day, log_of};
use crate::world::{kg, name, parameters};

fn answer(kind: MarkerKind, value: f64, conditions: &Conditions) -> MarkerAnswer {
    MarkerAnswer::new(kind, value).with_conditions(conditions.clone())
}

fn report(markers: Vec<MarkerAnswer>) -> EventKind {
    EventKind::DayReport(DayReport::default().with_markers(markers))
}

fn unsaid() -> Conditions {
    Conditions::default()
}

/// 40 kg for 5 in the morning, without caffeine.
fn fixed_set() -> Conditions {
    Conditions::default()
        .with_lift(name("squat"))
        .with_load(kg(40.0))
        .with_reps(Reps::whole(5).unwrap())
        .with_time_of_day(TimeOfDay::Morning)
        .with_caffeine(false)
}

fn asked(log: &Log, today: Day, answers: Option<&DayAnswers>) -> DayAnswer {
    let found = asked_day(log, today, answers).unwrap();
    all_careful(&Words::of(&parameters()).day_answer(&found));
    found
}

/// Six days: recovery 7, 6, 8, 7, 7, 7 and sleep 7 each time.
fn usual() -> Log {
    let one = |recovery| {
        report(vec![
            answer(MarkerKind::Recovery, recovery, &unsaid()),
            answer(MarkerKind::Sleep, 7.0, &unsaid()),
        ])
    };
    let values = [7.0, 6.0, 8.0, 7.0, 7.0, 7.0];
    log_of(
        parameters(),
        (0..).zip(values).map(|(at, value)| (day("2026-02-02").plus(at).unwrap(), one(value))),
    )
}

#[test]
fn an_empty_log_and_an_unanswered_day_have_no_verdict() {
    let empty = asked(&Log::new(Lifter::new(name("invented"))), day("2026-03-02"), None);
    assert_eq!((empty.verdict, empty.missing), (None, vec![Lacking::DayAnswers]));
    let silent = asked(&usual(), day("2026-02-10"), None);
    assert_eq!((silent.days, silent.verdict, silent.missing), (6, None, vec![Lacking::DayAnswers]));
}

/// Recovery: centre 7, median distance 0, so the floor 0.59; 4 lies (4 - 7) / 0.59 = 5.08 spreads below. Sleep: centre 7, floor
/// half a step; 5 lies 4 spreads below. Two agree: below. With sleep as usual only one does.
#[test]
fn two_signs_make_a_day_below_the_usual_and_one_does_not() {
    for (sleep, class) in [(5.0, DayClass::Below), (7.0, DayClass::BelowSingle)] {
        let markers =
            vec![answer(MarkerKind::Recovery, 4.0, &unsaid()), answer(MarkerKind::Sleep, sleep, &unsaid())];
        let given =
            DayAnswers::default().with_markers(markers.clone()).with_technique(WarmUpTechnique::NotScored);
        let verdict = asked(&usual(), day("2026-02-10"), Some(&given)).verdict.unwrap();
        assert_eq!(verdict.class, class);
        assert!((verdict.votes[0].score.unwrap() + 3.0 / 0.59).abs() < 1e-9);
        assert!(verdict.false_alarms.any > verdict.false_alarms.agreeing);
        // The same, written into the log.
        let mut log = usual();
        log.events.push(Event::new(99, day("2026-02-10"), report(markers)));
        assert_eq!(asked(&log, day("2026-02-10"), None).verdict.unwrap(), verdict);
    }
}

/// A marker that this lifter is asked and that is not answered counts among those asked, and never as good.
#[test]
fn what_is_usually_asked_and_missing_today_stands_in_the_answer() {
    let given = DayAnswers::default()
        .with_markers(vec![answer(MarkerKind::Recovery, 10.0, &unsaid())])
        .with_technique(WarmUpTechnique::NotScored);
    let verdict = asked(&usual(), day("2026-02-10"), Some(&given)).verdict.unwrap();
    assert_eq!((verdict.asked, verdict.usable), (2, 1));
    assert_eq!(verdict.votes[1].vote, Vote::NotAnswered);
    assert_eq!(verdict.class, DayClass::Within);
}

/// Five mornings without caffeine at effort 3; 6 is (6 - 3) / 0.5 = 6 spreads worse. With caffeine, another load or another
/// time of day there is nothing to compare with.
#[test]
fn the_fixed_warm_up_set_is_compared_under_equal_conditions_only() {
    let morning = || report(vec![answer(MarkerKind::WarmUpEffort, 3.0, &fixed_set())]);
    let log = log_of(parameters(), (0..5).map(|at| (day("2026-02-02").plus(at).unwrap(), morning())));
    let vote = |conditions: Conditions| {
        let given = DayAnswers::default()
            .with_markers(vec![answer(MarkerKind::WarmUpEffort, 6.0, &conditions)])
            .with_technique(WarmUpTechnique::NotScored);
        let found = asked(&log, day("2026-02-10"), Some(&given));
        assert!(found.missing.is_empty());
        found.verdict.unwrap().votes[0]
    };
    let same = vote(fixed_set());
    assert_eq!((same.vote, same.score), (Vote::Below, Some(-6.0)));
    for other in [
        fixed_set().with_caffeine(true),
        fixed_set().with_load(kg(42.0)),
        fixed_set().with_reps(Reps::whole(3).unwrap()),
        fixed_set().with_time_of_day(TimeOfDay::Evening),
        fixed_set().with_other(vec![name("belt")]),
    ] {
        assert_eq!(vote(other).vote, Vote::NotEnoughHistory);
    }
}

#[test]
fn a_warm_up_set_of_an_unsaid_load_is_named() {
    let given = DayAnswers::default()
        .with_markers(vec![answer(MarkerKind::WarmUpEffort, 6.0, &unsaid())])
        .with_technique(WarmUpTechnique::NotScored);
    let found = asked(&usual(), day("2026-02-10"), Some(&given));
    assert_eq!(found.missing, [Lacking::Conditions(MarkerKind::WarmUpEffort)]);
}

#[test]
fn a_critical_drop_decides_alone() {
    let given = DayAnswers::default().with_technique(WarmUpTechnique::CriticalDrop);
    let verdict = asked(&usual(), day("2026-02-10"), Some(&given)).verdict.unwrap();
    assert_eq!((verdict.class, verdict.technique_decided), (DayClass::Below, true));
}

/// More of the same days never widen what is usual, and never make an ordinary day look like one below it more often.
#[test]
fn more_of_the_same_days_never_widen_what_is_usual() {
    let today = day("2026-07-01");
    let found = |rounds: i32| {
        let values = [7.0, 5.0, 8.0, 6.0, 7.0, 9.0];
        let one = |at: i32| {
            let value = values[at.rem_euclid(6) as usize];
            let markers =
                [MarkerKind::Recovery, MarkerKind::Sleep].map(|kind| answer(kind, value, &unsaid()));
            (day("2026-02-02").plus(at).unwrap(), report(markers.to_vec()))
        };
        let given = DayAnswers::default()
            .with_markers(vec![
                answer(MarkerKind::Recovery, 7.0, &unsaid()),
                answer(MarkerKind::Sleep, 7.0, &unsaid()),
            ])
            .with_technique(WarmUpTechnique::NotScored);
        let log = log_of(parameters(), (0..6 * rounds).map(one));
        let verdict = asked(&log, today, Some(&given)).verdict.unwrap();
        let baseline = verdict.votes[0].baseline.unwrap();
        assert!(!baseline.floored);
        (baseline.spread, verdict.false_alarms)
    };
    let all: Vec<_> = (1..=8).map(found).collect();
    for two in all.windows(2) {
        assert!(two[1].0 <= two[0].0, "{two:?}");
        assert!(two[1].1.any <= two[0].1.any && two[1].1.agreeing <= two[0].1.agreeing, "{two:?}");
    }
}
