//! Easy weeks, missed sessions and the verdicts about past days.

use bismar::answers::{EasyWeek, Lacking, Missed, NextPlanned, Verdicts, easy_week, missed, verdicts};
use bismar::condition::{DayClass, VerdictSkill};
use bismar::dose::{EasyWeekStatus, MissedSession};
use bismar::quantity::Day;
use bismar::record::*;
use bismar::text::Words;

use crate::made::{all_careful, day, log_of, monday, of, sets};
use crate::world::{kg, lift, name, parameters};

fn eased(log: &Log, plan: Option<&Plan>, today: Day) -> EasyWeek {
    let found = easy_week(log, plan, today).unwrap();
    all_careful(&Words::of(&parameters()).easy_week(&found));
    found
}

fn squats(weeks: impl IntoIterator<Item = i32>) -> Vec<(Day, EventKind)> {
    weeks.into_iter().map(|week| (monday(week), of("squat", sets(4, 60.0, 5, 3)))).collect()
}

fn sunday(week: i32) -> Day {
    monday(week).plus(6).unwrap()
}

#[test]
fn an_empty_log_says_what_is_missing() {
    let empty = Log::new(Lifter::new(name("invented")));
    let today = day("2026-03-02");
    assert_eq!(eased(&empty, None, today).missing, [Lacking::Session]);
    let found = past(&empty, today);
    assert_eq!((found.days, found.calibration, found.missing), (0, None, vec![Lacking::Session]));
}

#[test]
fn life_s_breaks_count_as_easy_weeks() {
    let start = |events| log_of(parameters(), events);
    let seven = eased(&start(squats(0..7)), None, sunday(6));
    assert_eq!(seven.status, Some(EasyWeekStatus::Consider { weeks_since: 7 }));
    assert_eq!((seven.last, seven.missing), (None, vec![Lacking::Plan]));
    // Away in week 4; weeks 5 and 6 follow.
    let away = eased(&start(squats([0, 1, 2, 3, 5, 6])), None, sunday(6));
    assert_eq!(away.status, Some(EasyWeekStatus::NotYet { weeks_since: 2 }));
    assert_eq!(away.last, Some(monday(4)));
    // A half week in week 5: 2 of 4 sets, 0.5 of the median, at or below 0.7.
    let mut light = squats([0, 1, 2, 3, 4, 6]);
    light.push((monday(5), of("squat", sets(2, 60.0, 5, 3))));
    let light = eased(&start(light), None, sunday(6));
    assert_eq!(light.status, Some(EasyWeekStatus::NotYet { weeks_since: 1 }));
    // A break noted for ten days on.
    let mut ahead = squats(0..7);
    let break_ahead = Layoff::new(sunday(6).plus(10).unwrap(), LayoffReason::Well);
    ahead.push((sunday(6), EventKind::LayoffNoted(break_ahead)));
    let ahead = eased(&start(ahead), None, sunday(6));
    assert_eq!(ahead.status, Some(EasyWeekStatus::PlannedAbsenceCounts { in_weeks: 1 }));
}

#[test]
fn what_it_would_be_is_never_more_and_says_nothing_while_stopped() {
    let mut log = log_of(parameters(), squats(0..7));
    let plan = Plan::of([name("squat"), name("press")]);
    let found = eased(&log, Some(&plan), sunday(6));
    assert_eq!(found.would_be.len(), 2);
    for lift in &found.would_be {
        assert!(lift.sets <= lift.usual_sets);
    }
    assert!(found.would_be.iter().any(|lift| lift.sets < lift.usual_sets), "{:?}", found.would_be);
    let stop = EventKind::SymptomReport(SymptomReport::new(vec![StopSign::Faint]));
    log.events.push(Event::new(99, sunday(6), stop));
    let stopped = eased(&log, Some(&plan), sunday(6));
    assert!(stopped.would_be.is_empty());
    assert_eq!(stopped.cautions[0], bismar::caution::Caution::EmergencySigns);
}

fn then(log: &Log, plan: &[&str], today: &str, next: Option<(&str, &[&str])>) -> Missed {
    let named = |lifts: &[&str]| lifts.iter().map(|lift| name(lift)).collect::<Vec<_>>();
    let next = next.map(|(on, lifts)| NextPlanned::new(day(on), named(lifts)));
    let found = missed(log, &Plan::of(named(plan)), day(today), next.as_ref()).unwrap();
    all_careful(&Words::of(&parameters()).missed(&found));
    found
}

/// Squats on Monday 2 March, a session missed on the 4th. Nobody knows the age, so two full rest days are left: the 5th is the
/// first day. Before the 9th there is room (4 days, 3 needed); before the 7th there is none.
#[test]
fn a_missed_session_is_shifted_merged_or_let_go_and_nothing_is_added() {
    let mut all = parameters();
    all.lifts.push(lift("box squat", "knee", 50.0));
    let gone = EventKind::SessionMissed(SessionMissed::new(name("travel")));
    let log = log_of(all, [(day("2026-03-02"), of("squat", sets(2, 60.0, 5, 3))), (day("2026-03-04"), gone)]);
    let becomes = |next| then(&log, &["squat"], "2026-03-05", next).lifts[0].then.unwrap();
    assert_eq!(becomes(Some(("2026-03-09", &["squat"][..]))), MissedSession::ShiftTo(day("2026-03-05")));
    assert_eq!(becomes(Some(("2026-03-07", &["squat"][..]))), MissedSession::Drop);
    assert_eq!(
        becomes(Some(("2026-03-07", &["box squat"][..]))),
        MissedSession::MergeInto(day("2026-03-07"))
    );
    // A session that loads other regions is no reason to wait.
    assert_eq!(becomes(Some(("2026-03-06", &["press"][..]))), MissedSession::ShiftTo(day("2026-03-05")));
    let found = then(&log, &["squat"], "2026-03-05", None);
    assert_eq!((found.missed, found.missing), (Some(day("2026-03-04")), vec![Lacking::NextSession]));
}

/// Squats on Mondays and Thursdays for four weeks; that of Monday 9 February is missed. On Tuesday the next is taken to be on
/// Thursday; of one session on a Saturday nothing is made.
#[test]
fn the_next_session_is_read_from_the_habit_where_nobody_says_it() {
    let mut events = Vec::new();
    for week in 0..4 {
        events.push((monday(week), of("squat", sets(2, 60.0, 5, 3))));
        events.push((monday(week).plus(3).unwrap(), of("press", sets(2, 40.0, 5, 3))));
    }
    events.push((monday(3).plus(5).unwrap(), of("squat", sets(2, 60.0, 5, 3))));
    let missed_on = monday(4);
    events.push((missed_on, EventKind::SessionMissed(SessionMissed::new(name("travel")))));
    let log = log_of(parameters(), events);
    let today = missed_on.plus(1).unwrap();
    let found = missed(&log, &Plan::of([name("squat")]), today, None).unwrap();
    let thursday = NextPlanned::new(missed_on.plus(3).unwrap(), vec![name("press")]);
    assert_eq!((found.next.as_ref(), found.by_habit), (Some(&thursday), true));
    assert!(found.missing.is_empty(), "{:?}", found.missing);
    // The press loads no region of the squat, so it can be done today: three days after the last squats.
    assert_eq!(found.lifts[0].then, Some(MissedSession::ShiftTo(today)));
    let said = Words::of(&parameters()).missed(&found);
    assert_eq!(said[1], "The next session is taken to be on 12 Feb 2026, as usual.");
    all_careful(&said);
    // What is said comes before what is usual.
    let given = NextPlanned::new(missed_on.plus(2).unwrap(), vec![name("squat")]);
    let found = missed(&log, &Plan::of([name("squat")]), today, Some(&given)).unwrap();
    assert_eq!((found.next, found.by_habit), (Some(given), false));
}

#[test]
fn what_is_stopped_is_not_made_up_and_without_a_missed_session_nothing_is_said() {
    let gone = EventKind::SessionMissed(SessionMissed::new(name("travel")));
    let hurt = PainAnswer::plain(name("knee"), bismar::quantity::Pain::new(8).unwrap());
    let first = (day("2026-03-02"), of("squat", sets(2, 60.0, 5, 3)));
    let log = log_of(
        parameters(),
        [first.clone(), (day("2026-03-04"), gone), (day("2026-03-04"), EventKind::PainReport(hurt))],
    );
    let found = then(&log, &["squat", "press"], "2026-03-05", None);
    assert_eq!((found.lifts[0].then, found.lifts[0].facts), (None, None));
    assert_eq!(found.lifts[1].then, Some(MissedSession::ShiftTo(day("2026-03-05"))));
    let none = then(&log_of(parameters(), [first]), &["squat"], "2026-03-05", None);
    assert_eq!((none.missed, none.lifts.len()), (None, 0));
    assert_eq!(none.missing, [Lacking::MissedSession]);
}

fn past(log: &Log, today: Day) -> Verdicts {
    let found = verdicts(log, today).unwrap();
    all_careful(&Words::of(&parameters()).verdicts(&found));
    found
}

/// Twenty days, five called below the usual on which a repetition was missed, fifteen within it that went well. Of all ways to
/// call five days of twenty, one in C(20, 5) = 15504 catches all five.
#[test]
fn verdicts_that_were_right_are_better_than_chance() {
    let log = judged(20, |at| (at % 4 == 3, at % 4 == 3));
    let found = past(&log, day("2026-06-30")).calibration.unwrap();
    assert_eq!((found.hits, found.false_alarms, found.misses, found.quiet), (5, 0, 0, 15));
    assert!((found.chance.unwrap() - 1.0 / 15_504.0).abs() < 1e-12);
    assert_eq!(found.skill, VerdictSkill::BetterThanChance);
}

/// Ten days called below, ten not, five short in each: as chance would have it.
#[test]
fn verdicts_by_the_toss_of_a_coin_are_no_better_than_chance() {
    let log = judged(20, |at| (at % 2 == 0, at % 4 < 2));
    let found = past(&log, day("2026-06-30")).calibration.unwrap();
    assert_eq!((found.hits, found.false_alarms, found.misses, found.quiet), (5, 5, 5, 5));
    assert_eq!(found.skill, VerdictSkill::NoBetterThanChance);
}

#[test]
fn days_that_nobody_judged_are_named() {
    let log = log_of(parameters(), squats(0..3));
    let found = past(&log, sunday(3));
    assert_eq!((found.days, found.calibration, found.missing), (3, None, vec![Lacking::DayClass]));
}

/// A squat every fourth day; whether it was called below the usual, and whether a repetition was missed.
fn judged(days: i32, called: impl Fn(i32) -> (bool, bool)) -> Log {
    let mut events = Vec::new();
    for at in 0..days {
        let on = day("2026-02-02").plus(4 * at).unwrap();
        let (below, short) = called(at);
        let class = if below { DayClass::Below } else { DayClass::Within };
        events.push((on, EventKind::DayReport(DayReport::all_well(class))));
        let set = WorkSet::done(kg(60.0), bismar::quantity::Reps::whole(5).unwrap()).with_failed(short);
        events.push((on, of("squat", vec![set; 2])));
    }
    log_of(parameters(), events)
}

/// One more week like those before never takes back that an easy week is worth a thought.
#[test]
fn more_weeks_of_the_same_never_take_an_easy_week_back() {
    let mut due = 0;
    for weeks in 1..=13 {
        let status = eased(&log_of(parameters(), squats(0..weeks)), None, sunday(weeks - 1)).status.unwrap();
        let since = u16::try_from(weeks).unwrap();
        match status {
            EasyWeekStatus::NotYet { weeks_since } => assert_eq!((weeks_since, due), (since, 0)),
            EasyWeekStatus::Consider { weeks_since } => {
                assert_eq!(weeks_since, since);
                due += 1;
            }
            other => panic!("{other:?}"),
        }
    }
    assert!(due > 0);
}
