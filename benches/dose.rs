//! How fast rolling metrics and the fit of a response are, beside general-purpose libraries in the same run.
//!
//! `cargo bench --bench dose`; the comparison needs python3 with pandas and scipy and says so where there is none.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    missing_docs,
    reason = "a benchmark may panic"
)]

use std::hint::black_box;
use std::io::Write;
use std::process::{Command, Stdio};
use std::time::Instant;

use bismar::dose::{
    DailyLoad, Fading, FitAnswer, FitOptions, ImpulseResponse, InitialState, MeasuredDay, ResponseFit,
    ResponseForm, TimeConstants, WeightedStart, fit_impulse_response, impulse_response_before_session,
    rolling_load, weighted_load,
};
use criterion::Criterion;
use serde_json::{Value, json};

#[path = "shared/table.rs"]
mod table;
use table::{Row, growth, heading, shortest, time};

/// How many times faster than the peer, and how near.
const ROLLING_RATIO: f64 = 10.0;
const ROLLING_NEARNESS: f64 = 1e-12;
const FIT_RATIO: f64 = 20.0;

/// Ten years of days, and one.
const TEN_YEARS: usize = 3652;
const YEAR: usize = 365;

/// A fixed linear congruential sequence, so that every run sees the same loads.
struct Sequence(u64);

impl Sequence {
    fn uniform(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.uniform()).sum::<f64>() - 6.0
    }
}

/// Invented loads: about four sessions a week, a hard month in three, a holiday now and then.
fn loads(sequence: &mut Sequence, length: usize) -> Vec<f64> {
    let day = |at: usize| {
        let hard = if at / 30 % 3 == 1 { 1.8 } else { 1.0 };
        let off = (at / 14) % 9 == 4 || sequence.uniform() < 0.4;
        if off { 0.0 } else { ((20.0 + 100.0 * sequence.uniform()) * hard * 10.0).round() / 10.0 }
    };
    (0..length).map(day).collect()
}

fn days(loads: &[f64]) -> Vec<DailyLoad> {
    loads.iter().map(|load| DailyLoad::recorded(*load).unwrap()).collect()
}

fn rolling(days: &[DailyLoad]) -> [Vec<Option<f64>>; 4] {
    [
        rolling_load(days, 7).unwrap(),
        rolling_load(days, 28).unwrap(),
        weighted_load(days, Fading::Span(7), WeightedStart::FirstLoad).unwrap(),
        weighted_load(days, Fading::Span(28), WeightedStart::FirstLoad).unwrap(),
    ]
}

/// A record measured on every day, with its true parameters and noise.
struct Record {
    loads: Vec<f64>,
    measured: Vec<MeasuredDay>,
    options: FitOptions,
}

const STARTS: [(f64, f64); 3] = [(30.0, 6.0), (50.0, 12.0), (20.0, 4.0)];

fn record(length: usize) -> Record {
    let mut sequence = Sequence(26);
    let loads = loads(&mut sequence, length);
    let truth = ImpulseResponse::new(120.0, 0.05, 0.09, 42.0, 9.0).unwrap();
    let curve = impulse_response_before_session(&days(&loads), truth, InitialState::NoHistory).unwrap();
    let measured = (1..).zip(curve);
    let measured =
        measured.map(|(day, point)| MeasuredDay::new(day, point.performance + 1.5 * sequence.normal()));
    let mut options = FitOptions::our_choice(ResponseForm::BeforeSession, InitialState::NoHistory);
    options.starts = STARTS.iter().map(|(slow, quick)| TimeConstants::new(*slow, *quick).unwrap()).collect();
    Record { measured: measured.collect(), loads, options }
}

fn fit(days: &[DailyLoad], record: &Record) -> ResponseFit {
    match fit_impulse_response(days, &record.measured, &record.options).unwrap() {
        FitAnswer::Fitted(fit) => *fit,
        FitAnswer::Refused(reasons) => panic!("{reasons:?}"),
    }
}

fn peer(script: &str, question: &Value) -> Option<Value> {
    let path = format!("{}/benches/peers/{script}", env!("CARGO_MANIFEST_DIR"));
    let mut child =
        Command::new("python3").arg(path).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().ok()?;
    child.stdin.take()?.write_all(question.to_string().as_bytes()).ok()?;
    let output = child.wait_with_output().ok()?;
    serde_json::from_slice(&output.stdout).ok()
}

/// Largest relative difference; a value on one side only counts as infinite.
fn farthest(ours: &[Vec<Option<f64>>; 4], theirs: &Value) -> f64 {
    let mut farthest = 0.0_f64;
    for (at, series) in ours.iter().enumerate() {
        for (day, value) in series.iter().enumerate() {
            let apart = match (value, theirs[at][day].as_f64()) {
                (None, None) => 0.0,
                (Some(a), Some(b)) if a.to_bits() == b.to_bits() => 0.0,
                (Some(a), Some(b)) => (a - b).abs() / a.abs().max(b.abs()),
                _ => f64::INFINITY,
            };
            farthest = farthest.max(apart);
        }
    }
    farthest
}

fn compare_rolling() {
    let loads = loads(&mut Sequence(1), TEN_YEARS);
    let days = days(&loads);
    let Some(answer) = peer("dose_rolling.py", &json!({ "loads": loads })) else {
        println!("rolling: no python3 with pandas here, not compared");
        return;
    };
    let ours = shortest(201, || {
        black_box(rolling(black_box(&days)));
    });
    let (theirs, apart) = (answer["seconds"].as_f64().unwrap(), farthest(&rolling(&days), &answer["values"]));
    let ratio = theirs / ours.as_secs_f64();
    Row {
        what: &format!(
            "rolling 7, 28 and fading 7, 28 over {TEN_YEARS} days; furthest value {apart:.1e} relative"
        ),
        ours: time(ours.as_secs_f64()),
        peer: format!("{} {}", answer["peer"].as_str().unwrap(), time(theirs)),
        ratio: Some(ratio),
        budget: format!("{ROLLING_RATIO} times as fast, values within {ROLLING_NEARNESS:e}"),
        met: Some(ratio >= ROLLING_RATIO && apart <= ROLLING_NEARNESS),
    }
    .print();
}

fn compare_fit() {
    let record = record(YEAR);
    let days = days(&record.loads);
    let values: Vec<f64> = record.measured.iter().map(|measured| measured.value).collect();
    let question = json!({ "loads": record.loads, "values": values, "starts": STARTS });
    let Some(answer) = peer("dose_fit.py", &question) else {
        println!("fit: no python3 with scipy here, not compared");
        return;
    };
    let ours = shortest(51, || {
        black_box(fit(black_box(&days), &record));
    });
    let fit = fit(&days, &record);
    let (theirs, squares) = (answer["seconds"].as_f64().unwrap(), answer["squares"].as_f64().unwrap());
    let ratio = theirs / ours.as_secs_f64();
    let derivatives = answer["seconds_derivatives"].as_f64().unwrap();
    // Both stop where the last digits no longer matter.
    let lower = fit.residual_squares <= squares * (1.0 + 1e-12);
    let name = answer["peer"].as_str().unwrap();
    Row {
        what: &format!("fit of {YEAR} days from {} starts, with standard errors and intervals", STARTS.len()),
        ours: time(ours.as_secs_f64()),
        peer: format!("{name} {}", time(theirs)),
        ratio: Some(ratio),
        budget: format!("{FIT_RATIO} times as fast, squares equal or lower"),
        met: Some(ratio >= FIT_RATIO && lower),
    }
    .print();
    Row {
        what: "the same, with derivatives written out for the peer",
        ours: time(ours.as_secs_f64()),
        peer: format!("{name} {}", time(derivatives)),
        ratio: Some(derivatives / ours.as_secs_f64()),
        ..Row::default()
    }
    .print();
}

/// How the fit grows with the length of the record.
fn fit_growth() {
    let lengths = [YEAR, TEN_YEARS, 4 * TEN_YEARS];
    let times = lengths.map(|length| {
        let record = record(length);
        let days = days(&record.loads);
        let run = |_| {
            let start = Instant::now();
            black_box(fit(black_box(&days), &record));
            start.elapsed().as_secs_f64()
        };
        (0..9).map(run).fold(f64::MAX, |a, b| if b < a { b } else { a })
    });
    for at in [0, 1] {
        let sizes = [lengths[at] as f64, lengths[at + 1] as f64];
        growth("fit of a response, days", sizes, [times[at], times[at + 1]]);
    }
}

fn main() {
    let mut criterion = Criterion::default().configure_from_args();
    let decade = days(&loads(&mut Sequence(1), TEN_YEARS));
    criterion.bench_function("rolling and fading means of ten years", |bench| {
        bench.iter(|| rolling(black_box(&decade)));
    });
    let record = record(YEAR);
    let year = days(&record.loads);
    criterion.bench_function("fit of a year", |bench| bench.iter(|| fit(black_box(&year), &record)));
    criterion.final_summary();
    // A test run of the benchmark checks that it works and compares nothing.
    if std::env::args().any(|argument| argument == "--bench") {
        heading();
        compare_rolling();
        compare_fit();
        fit_growth();
    }
}
