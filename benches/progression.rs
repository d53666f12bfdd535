//! Speed of the fold: forty years of training, one more event, growth with the length of the log, size of the state.
//!
//! `cargo bench --all-features --bench progression`. Budgets are printed beside what was measured; the machine is
//! named, since absolute times belong to it.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a bench may panic")]
#![allow(clippy::disallowed_methods, reason = "an exponent for people to read")]

use std::hint::black_box;
use std::time::{Duration, Instant};

use bismar::condition::DayClass;
use bismar::progression::{State, fold};
use bismar::record::{DayReport, Event, EventKind, Log};
use bismar::value::Value;

#[path = "shared/table.rs"]
mod table;
use table::{Row, growth, heading, shortest, shortest_told, time};

#[path = "../examples/shared/scenario.rs"]
mod scenario;

#[path = "shared/long_log.rs"]
mod long_log;
use long_log::log;

fn folding(log: &Log) -> Duration {
    shortest(15, || {
        black_box(fold(black_box(log)).unwrap());
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
    line("fold of forty years (8 lifts, 2 a week, 5 sets)", times[2], Duration::from_millis(25));
    for pair in [[0, 1], [1, 2]] {
        let sizes = pair.map(|at| logs[at].1.events.len() as f64);
        growth("fold, events", sizes, pair.map(|at| times[at].as_secs_f64()));
    }

    for (weeks, log) in &logs {
        let state = fold(log).unwrap();
        let (day, last) = state.last().unwrap();
        let report = DayReport::all_well(DayClass::Within);
        let event = Event::new(last + 1, day, EventKind::DayReport(report));
        let mut session = log
            .events
            .iter()
            .rev()
            .find(|event| matches!(event.kind, EventKind::SessionRecorded(_)))
            .unwrap()
            .clone();
        (session.sequence, session.day) = (last + 1, day);
        for (what, event) in [("day report", &event), ("session of eight lifts", &session)] {
            let took = shortest_told(101, || {
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
            black_box(State::from_json(&text).unwrap());
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
