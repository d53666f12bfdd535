//! Rows 41, 50 to 53 and 64: the day, the verdicts about it, easy weeks, missed sessions.

use bismar::answers::{DayAnswers, Lacking, NextPlanned, day as of_day, easy_week, missed, verdicts};
use bismar::condition::{Conditions, DayClass, MarkerKind, TimeOfDay, VerdictSkill, Vote, WarmUpTechnique};
use bismar::dose::{EasyWeekStatus, MissedSession};
use bismar::prescription::next_session;
use bismar::quantity::{Day, Reps};
use bismar::record::{DayReport, EventKind, Log, MarkerAnswer, Plan, SessionMissed, WorkSet};

use crate::world::{lift, parameters};
use crate::{day, done, kg, log_of, name, session, sets};

fn start() -> (Day, EventKind) {
    (day("2026-01-05"), EventKind::ParametersChanged(Box::new(parameters())))
}

fn marker(kind: MarkerKind, value: f64, conditions: Conditions) -> MarkerAnswer {
    MarkerAnswer::new(kind, value).with_conditions(conditions)
}

/// Six days on which these markers had this value, all under these conditions.
fn six(kinds: &[MarkerKind], value: f64, conditions: &Conditions) -> Log {
    let report = || {
        DayReport::default()
            .with_markers(kinds.iter().map(|kind| marker(*kind, value, conditions.clone())).collect())
    };
    let days = (0..6).map(|at| (day("2026-02-02").plus(at).unwrap(), EventKind::DayReport(report())));
    log_of(core::iter::once(start()).chain(days))
}

fn today(markers: Vec<MarkerAnswer>) -> DayAnswers {
    DayAnswers::default().with_markers(markers).with_technique(WarmUpTechnique::NotScored)
}

fn plain() -> Conditions {
    Conditions::default()
}

/// Squats on Monday, a session missed on Wednesday, the next squats on Saturday: with two rest days on either side there is no
/// day for it, so it is let go; before Sunday week there is, and the work stays as it was.
#[test]
fn row_41_a_missed_session_is_shifted_merged_or_dropped() {
    let gone = EventKind::SessionMissed(SessionMissed::new(name("travel")));
    let squats = session(vec![done("squat", sets(2, 5, 60.0))], None);
    let log = log_of([start(), (day("2026-03-02"), squats), (day("2026-03-04"), gone)]);
    let plan = Plan::of([name("squat")]);
    let then = |next: &str| {
        let next = NextPlanned::new(day(next), vec![name("squat")]);
        missed(&log, &plan, day("2026-03-05"), Some(&next)).unwrap().lifts[0].then.unwrap()
    };
    assert_eq!(then("2026-03-07"), MissedSession::Drop);
    assert_eq!(then("2026-03-15"), MissedSession::ShiftTo(day("2026-03-05")));
}

/// On Saturday the other lift of the knee is planned: the squats go into that session. Whatever becomes of them, no load, set or
/// repetition is added to what would have been done without the miss.
#[test]
fn row_41_a_missed_session_goes_into_the_next_of_its_region_and_adds_nothing() {
    let mut all = parameters();
    all.lifts.push(lift("box squat", "knee", 50.0));
    let start = (day("2026-01-05"), EventKind::ParametersChanged(Box::new(all)));
    let squats = session(vec![done("squat", sets(2, 5, 60.0))], None);
    let gone = EventKind::SessionMissed(SessionMissed::new(name("travel")));
    let kept = log_of([start.clone(), (day("2026-03-02"), squats.clone())]);
    let log = log_of([start, (day("2026-03-02"), squats), (day("2026-03-04"), gone)]);
    let plan = Plan::of([name("squat"), name("box squat")]);
    let next = NextPlanned::new(day("2026-03-07"), vec![name("box squat")]);
    let found = missed(&log, &plan, day("2026-03-05"), Some(&next)).unwrap();
    assert_eq!(found.lifts[0].then, Some(MissedSession::MergeInto(day("2026-03-07"))));
    for on in ["2026-03-05", "2026-03-07", "2026-03-15"] {
        let asked = |log: &Log| {
            let lifts = next_session(log, &plan, day(on)).unwrap().lifts;
            lifts.into_iter().map(|lift| (lift.load, lift.sets, lift.reps, lift.limit)).collect::<Vec<_>>()
        };
        assert_eq!(asked(&log), asked(&kept), "{on}");
    }
}

/// Always 7, so the spread is the least that is believed, 0.59; 5 lies 2 / 0.59 = 3.39 of them below.
#[test]
fn row_50_a_marker_is_read_against_the_own_baseline() {
    let log = six(&[MarkerKind::Recovery], 7.0, &plain());
    let given = today(vec![marker(MarkerKind::Recovery, 5.0, plain())]);
    let vote = of_day(&log, day("2026-02-10"), Some(&given)).unwrap().verdict.unwrap().votes[0];
    assert!((vote.score.unwrap() + 2.0 / 0.59).abs() < 1e-9);
    assert_eq!(vote.baseline.unwrap().values, 6);
}

/// 5, 6, 7, 7, 8, 9: the middle is 7, the distances from it are 2, 1, 0, 0, 1, 2 with the middle 1, so the spread is 1.4826 and
/// 4 lies (4 - 7) / 1.4826 = -2.0235 of them below. Moved by one it is the same; of stress, where more is worse, 7 against
/// 2 to 6 is as far below; and a lifter who scatters twice as much is half as far below with the same 3.
#[test]
fn row_50_a_day_is_measured_by_the_own_scatter() {
    let score = |kind, values: [f64; 6], now: f64| {
        let report = |value: f64| {
            EventKind::DayReport(DayReport::default().with_markers(vec![marker(kind, value, plain())]))
        };
        let days = (0..).zip(values).map(|(at, value)| (day("2026-02-02").plus(at).unwrap(), report(value)));
        let log = log_of(core::iter::once(start()).chain(days));
        let given = today(vec![marker(kind, now, plain())]);
        let vote = of_day(&log, day("2026-02-10"), Some(&given)).unwrap().verdict.unwrap().votes[0];
        assert!(!vote.baseline.unwrap().floored);
        (vote.score.unwrap(), vote.vote)
    };
    let own = [5.0, 9.0, 7.0, 6.0, 7.0, 8.0];
    for (kind, values, now) in [
        (MarkerKind::Recovery, own, 4.0),
        (MarkerKind::Recovery, own.map(|value| value - 1.0), 3.0),
        (MarkerKind::Stress, own.map(|value| value - 3.0), 7.0),
    ] {
        let (score, vote) = score(kind, values, now);
        assert!((score + 3.0 / 1.4826).abs() < 1e-3, "{kind:?}: {score}");
        assert_eq!(vote, Vote::Below);
    }
    let (wide, vote) = score(MarkerKind::Recovery, [3.0, 9.0, 6.0, 4.0, 6.0, 8.0], 3.0);
    assert!((wide + 3.0 / (2.0 * 1.4826)).abs() < 1e-3, "{wide}");
    assert_eq!(vote, Vote::Within);
}

/// One sign below is one sign; two agree; with most of them unanswered nothing is known, and nothing is good.
#[test]
fn row_51_markers_vote_and_what_is_missing_is_never_good() {
    let kinds = [MarkerKind::Recovery, MarkerKind::Sleep, MarkerKind::Mood];
    let log = six(&kinds, 7.0, &plain());
    let class = |values: &[f64]| {
        let markers = kinds.iter().zip(values).map(|(kind, value)| marker(*kind, *value, plain())).collect();
        of_day(&log, day("2026-02-10"), Some(&today(markers))).unwrap().verdict.unwrap().class
    };
    assert_eq!(class(&[3.0, 7.0, 7.0]), DayClass::BelowSingle);
    assert_eq!(class(&[3.0, 3.0, 7.0]), DayClass::Below);
    assert_eq!(class(&[10.0]), DayClass::Unknown);
    let silent = of_day(&log, day("2026-02-10"), None).unwrap();
    assert_eq!((silent.verdict, silent.missing), (None, vec![Lacking::DayAnswers]));
}

/// Every second day called below the usual, every second pair of days short: a coin would do as well.
#[test]
fn row_52_verdicts_that_are_chance_are_called_chance() {
    let mut events = vec![start()];
    for at in 0..24 {
        let on = day("2026-02-02").plus(4 * at).unwrap();
        let class = if at % 2 == 0 { DayClass::Below } else { DayClass::Within };
        let set = WorkSet::done(kg(60.0), Reps::whole(5).unwrap()).with_failed(at % 4 < 2);
        events.push((on, EventKind::DayReport(DayReport::all_well(class))));
        events.push((on, session(vec![done("squat", vec![set])], None)));
    }
    let found = verdicts(&log_of(events), day("2026-06-30")).unwrap().calibration.unwrap();
    assert_eq!((found.hits, found.false_alarms, found.misses, found.quiet), (6, 6, 6, 6));
    assert_eq!(found.skill, VerdictSkill::NoBetterThanChance);
}

/// The fixed set of the morning without caffeine is compared with such mornings, and with nothing else.
#[test]
fn row_53_the_fixed_set_is_compared_under_equal_conditions() {
    let morning = Conditions::default()
        .with_lift(name("squat"))
        .with_load(kg(40.0))
        .with_reps(Reps::whole(5).unwrap())
        .with_time_of_day(TimeOfDay::Morning)
        .with_caffeine(false);
    let log = six(&[MarkerKind::WarmUpEffort], 3.0, &morning);
    let vote = |conditions| {
        let given = today(vec![marker(MarkerKind::WarmUpEffort, 6.0, conditions)]);
        of_day(&log, day("2026-02-10"), Some(&given)).unwrap().verdict.unwrap().votes[0].vote
    };
    assert_eq!(vote(morning.clone()), Vote::Below);
    assert_eq!(vote(morning.clone().with_caffeine(true)), Vote::NotEnoughHistory);
    assert_eq!(vote(morning.with_load(kg(45.0))), Vote::NotEnoughHistory);
}

/// Seven weeks without a pause may be thought of; a week away in between was one.
#[test]
fn row_64_an_easy_week_counts_what_life_gave() {
    let status = |weeks: &[i32]| {
        let one = |week: &i32| {
            let on = day("2026-01-12").plus(7 * week).unwrap();
            (on, session(vec![done("squat", sets(4, 5, 60.0))], None))
        };
        let log = log_of(core::iter::once(start()).chain(weeks.iter().map(one)));
        easy_week(&log, None, day("2026-01-18").plus(42).unwrap()).unwrap().status.unwrap()
    };
    assert_eq!(status(&[0, 1, 2, 3, 4, 5, 6]), EasyWeekStatus::Consider { weeks_since: 7 });
    assert_eq!(status(&[0, 1, 2, 4, 5, 6]), EasyWeekStatus::NotYet { weeks_since: 3 });
}
