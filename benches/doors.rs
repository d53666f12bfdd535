//! Speed of the doors of the log: every question over forty years of eight lifts, from one reading, and each alone.
//!
//! `cargo bench --all-features --bench doors`. Budgets are printed beside what was measured; the machine is named, since
//! absolute times belong to it.

#![allow(clippy::unwrap_used, reason = "a bench may panic")]

use std::hint::black_box;
use std::time::Duration;

use bismar::answers::{Diary, SetsToday, next_set_from, raters, review};
use bismar::progression::fold;
use bismar::quantity::{Day, Name, Reps};
use bismar::record::{Plan, WorkSet};

#[path = "shared/table.rs"]
mod table;
use table::{Row, heading, shortest, time};

#[path = "../examples/shared/scenario.rs"]
mod scenario;

#[path = "shared/long_log.rs"]
mod long_log;

/// Weeks of forty years.
const WEEKS: i32 = 2_080;
const ALL: Duration = Duration::from_millis(100);
const ONE: Duration = Duration::from_millis(1);
const RUNS: usize = 9;

type Ask<'a> = Box<dyn Fn(&Diary<'_>) + 'a>;

fn line(what: &str, took: Duration, most: Duration) {
    let budget = format!("at most {}", time(most.as_secs_f64()));
    let (ours, met) = (time(took.as_secs_f64()), Some(took <= most));
    Row { what, ours, budget, met, ..Row::default() }.print();
}

/// Every door that reads a diary, for every lift that it may be asked of.
fn asks<'a>(today: Day, plan: &'a Plan, lifts: &'a [Name]) -> Vec<(&'static str, Ask<'a>)> {
    let year_ago = today.plus(-365).unwrap();
    let done = |lift: &Name| {
        SetsToday::new(
            lift.clone(),
            vec![WorkSet::done(bismar::quantity::Mass::grams(40_000), Reps::whole(5).unwrap())],
        )
        .with_pain(Vec::new())
    };
    let first = lifts.first().unwrap();
    let second = lifts.get(1).unwrap();
    vec![
        ("day", Box::new(move |diary| drop(black_box(diary.day(today, None).unwrap())))),
        ("trend of a lift", Box::new(move |diary| drop(black_box(diary.trend(first, today, None).unwrap())))),
        ("curve of a lift", Box::new(move |diary| drop(black_box(diary.curve(first, today).unwrap())))),
        ("week", Box::new(move |diary| drop(black_box(diary.week(today).unwrap())))),
        ("easy_week", Box::new(move |diary| drop(black_box(diary.easy_week(Some(plan), today).unwrap())))),
        ("missed", Box::new(move |diary| drop(black_box(diary.missed(plan, today, None).unwrap())))),
        ("pair", Box::new(move |diary| drop(black_box(diary.pair(first, second, today, None).unwrap())))),
        ("verdicts", Box::new(move |diary| drop(black_box(diary.verdicts(today).unwrap())))),
        (
            "next_set",
            Box::new(move |diary| drop(black_box(diary.next_set(plan, today, &done(first)).unwrap()))),
        ),
        ("block_review", Box::new(move |diary| drop(black_box(diary.block_review(today, None).unwrap())))),
        ("year", Box::new(move |diary| drop(black_box(diary.year(plan, today, None, None).unwrap())))),
        ("handover", Box::new(move |diary| drop(black_box(diary.handover(today, year_ago).unwrap())))),
        ("raters", Box::new(move |diary| drop(black_box(diary.raters(None, today).unwrap())))),
        ("review", Box::new(move |diary| drop(black_box(diary.review(today))))),
        ("rack", Box::new(move |diary| drop(black_box(diary.rack(plan, first, today, None).unwrap())))),
    ]
}

fn main() {
    heading();
    let log = long_log::log(WEEKS);
    let diary = Diary::of(&log).unwrap();
    let today = diary.state().last().unwrap().0.plus(2).unwrap();
    let lifts: Vec<Name> = diary.state().lifts().map(|lift| lift.id().clone()).collect();
    let plan = Plan::of(lifts.clone());
    let asks = asks(today, &plan, &lifts);

    let whole = shortest(RUNS, || {
        let diary = Diary::of(&log).unwrap();
        asks.iter().for_each(|(_, ask)| ask(&diary));
        for lift in lifts.iter().skip(1) {
            drop(black_box((diary.trend(lift, today, None).unwrap(), diary.curve(lift, today).unwrap())));
        }
    });
    line("every door over forty years, from the log", whole, ALL);
    let read = shortest(RUNS, || drop(black_box(Diary::of(&log).unwrap())));
    line("of it, the reading", read, ALL);
    line("of it, the fold", shortest(RUNS, || drop(black_box(fold(&log).unwrap()))), ALL);
    for (what, ask) in &asks {
        line(&format!("{what}, from a kept reading"), shortest(RUNS, || ask(&diary)), ONE);
    }
    let state = diary.state();
    let done = SetsToday::new(lifts.first().unwrap().clone(), Vec::new()).with_pain(Vec::new());
    let next = shortest(RUNS, || drop(black_box(next_set_from(state, &plan, today, &done, None).unwrap())));
    line("next_set, from a kept state", next, ONE);
    for (what, took) in [
        ("raters", shortest(RUNS, || drop(black_box(raters(&log, None, today).unwrap())))),
        ("review", shortest(RUNS, || drop(black_box(review(&log, today).unwrap())))),
    ] {
        line(&format!("{what}, from the log"), took, ALL);
    }
}
