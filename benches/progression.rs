//! Speed of the fold: forty years of training, one more event, growth with the length of the log, size of the state.
//!
//! `cargo bench --all-features --bench progression`. Budgets are printed beside what was measured; the machine is
//! named, since absolute times belong to it.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a bench may panic")]
#![allow(clippy::disallowed_methods, reason = "an exponent for people to read")]

use std::hint::black_box;
use std::time::{Duration, Instant};

use bismar::condition::DayClass;
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::progression::{State, fold};
use bismar::quantity::{Day, Name, Reps};
use bismar::record::{
    Clearance, ClearanceStatus, DayReport, Event, EventKind, LiftSession, Lifter, Log, NextDayReport,
    Session, WorkSet,
};
use bismar::value::Value;

#[path = "shared/table.rs"]
mod table;
use table::{Row, growth, heading, time};

#[path = "../examples/shared/scenario.rs"]
mod scenario;

const LIFTS: u32 = 8;
const SETS: usize = 5;

/// A log of so many weeks: eight lifts, two sessions a week each, five sets a session.
fn log(weeks: i32) -> Log {
    let parameters = scenario::parameters(LIFTS).unwrap();
    let lifter = Lifter { invented: true, ..Lifter::new(Name::new("invented").unwrap()) };
    let mut log = Log::new(lifter);
    let first = Day::from_calendar(1985, 1, 7).unwrap();
    let add = |log: &mut Log, day: Day, kind: EventKind| {
        let sequence = log.events.len() as u32 + 1;
        log.events.push(Event { sequence, day, kind, note: None });
    };
    add(&mut log, first, EventKind::ParametersChanged(Box::new(parameters.clone())));
    for week in 0..weeks {
        if week % 50 == 0 {
            let who = Name::new("clinic").unwrap();
            let status = ClearanceStatus::Cleared;
            let clearance = Clearance { status, who, expires: None, limits: Vec::new() };
            add(&mut log, first.plus(week * 7).unwrap(), EventKind::ClearanceRecorded(clearance));
        }
        for offset in [0, 3] {
            let day = first.plus(week * 7 + offset).unwrap();
            add(&mut log, day, EventKind::DayReport(DayReport::all_well(DayClass::Ordinary)));
            let lifts = parameters.lifts.iter().enumerate().map(|(at, lift)| {
                let clean = !(week as usize + at).is_multiple_of(3);
                let sets = (0..SETS).map(|_| {
                    let mut marks = SetMarks::scored(5, if clean { 5 } else { 3 }, Rater::Coach);
                    marks.first_failing_rep = (!clean).then_some(4);
                    for criterion in &lift.criteria {
                        marks = marks.with(criterion.id.as_str(), Mark::Met).unwrap();
                    }
                    let reps = Reps::whole(5).unwrap();
                    WorkSet { load: lift.start.load(), reps, effort: None, failed: false, marks: Some(marks) }
                });
                LiftSession::as_granted(lift.id.clone(), sets.collect())
            });
            let session =
                Session { lifts: lifts.collect(), pain: Some(Vec::new()), minutes: Some(60), effort: None };
            add(&mut log, day, EventKind::SessionRecorded(session));
            let session = log.events.len() as u32;
            let report = NextDayReport { session, pain: Some(Vec::new()), soreness: None };
            add(&mut log, day.plus(1).unwrap(), EventKind::NextDayReport(report));
        }
    }
    log
}

/// Shortest of several runs: what other work on the machine disturbs least.
fn shortest(runs: usize, mut run: impl FnMut() -> Duration) -> Duration {
    (0..runs).map(|_| run()).min().unwrap()
}

fn folding(log: &Log) -> Duration {
    shortest(15, || {
        let start = Instant::now();
        black_box(fold(black_box(log)).unwrap());
        start.elapsed()
    })
}

fn line(what: &str, took: Duration, budget: Duration) {
    let (took, budget) = (took.as_secs_f64(), budget.as_secs_f64());
    Row {
        what,
        ours: time(took),
        budget: format!("at most {}", time(budget)),
        met: Some(took <= budget),
        ..Row::default()
    }
    .print();
}

fn main() {
    heading();
    let logs: Vec<(i32, Log)> = [21, 208, 2_080].into_iter().map(|weeks| (weeks, log(weeks))).collect();
    let times: Vec<Duration> = logs.iter().map(|(_, log)| folding(log)).collect();
    line("fold of forty years (8 lifts, 2 a week, 5 sets)", times[2], Duration::from_millis(50));
    for pair in [[0, 1], [1, 2]] {
        let sizes = pair.map(|at| logs[at].1.events.len() as f64);
        growth("fold, events", sizes, pair.map(|at| times[at].as_secs_f64()));
    }

    for (weeks, log) in &logs {
        let state = fold(log).unwrap();
        let (day, last) = state.last().unwrap();
        let report = DayReport::all_well(DayClass::Ordinary);
        let event = Event { sequence: last + 1, day, kind: EventKind::DayReport(report), note: None };
        let mut session = log
            .events
            .iter()
            .rev()
            .find(|event| matches!(event.kind, EventKind::SessionRecorded(_)))
            .unwrap()
            .clone();
        (session.sequence, session.day) = (last + 1, day);
        for (what, event) in [("day report", &event), ("session of eight lifts", &session)] {
            let took = shortest(101, || {
                let mut state = state.clone();
                let start = Instant::now();
                state.apply(black_box(event)).unwrap();
                let took = start.elapsed();
                black_box(state);
                took
            });
            line(&format!("one more event after {weeks} weeks: {what}"), took, Duration::from_micros(10));
        }
        let text = Value::write(&state).unwrap().to_json();
        let took = shortest(11, || {
            let start = Instant::now();
            black_box(State::from_json(&text).unwrap());
            start.elapsed()
        });
        Row {
            what: &format!("stored state after {weeks} weeks, read in {}", time(took.as_secs_f64())),
            ours: format!("{} bytes", text.len()),
            budget: "below 16384 bytes".into(),
            met: Some(text.len() < 16 * 1024),
            ..Row::default()
        }
        .print();
    }
}
