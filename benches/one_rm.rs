//! One million sets through each classic equation, beside numpy and beside a plain loop over the same bytes.
//!
//! `cargo bench --all-features --bench one_rm`. The peer (`benches/peers/one_rm.py`) is started by this run, so
//! that both numbers come from the same machine at the same time; the table at the end gives the shortest of several
//! runs on both sides, and ratios.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs,
    reason = "a bench may panic"
)]

use std::hint::black_box;
use std::process::Command;

use bismar::one_rm::{Equation, one_rm_batch};
use criterion::{Criterion, Throughput};
use serde_json::Value;

#[path = "shared/table.rs"]
mod table;
use table::{Row, heading, shortest, time};

const COUNT: usize = 1_000_000;
const RUNS: usize = 41;

/// Equation, and how many times as fast as numpy it is to be.
const BUDGETS: &[(Equation, f64)] = &[
    (Equation::Epley1985, 1.0),
    (Equation::Brzycki1993, 1.0),
    (Equation::Brzycki1993Decimal, 1.0),
    (Equation::Lander1985, 1.0),
    (Equation::Lombardi1989, 3.0),
    (Equation::Mayhew1992, 3.0),
    (Equation::OConner1989, 1.0),
    (Equation::Wathan1994, 3.0),
    (Equation::Brown1992, 1.0),
    (Equation::Adams1998, 1.0),
    (Equation::Berger1961, 3.0),
    (Equation::CummingsFinn1998, 1.0),
];

/// At most this many times the plain loop that reads and writes the same bytes.
const FLOOR_BUDGET: f64 = 2.0;

struct Sets {
    loads: Vec<f64>,
    half_reps: Vec<u8>,
    estimates: Vec<f64>,
}

impl Sets {
    fn new() -> Sets {
        Sets {
            loads: (0..COUNT).map(|at| 20.0 + (at * 7919 % 3600) as f64 * 0.05).collect(),
            half_reps: (0..COUNT).map(|at| (2 + at * 31 % 29) as u8).collect(),
            estimates: vec![0.0; COUNT],
        }
    }

    fn ours(&mut self, equation: Equation) {
        one_rm_batch(equation, &self.loads, &self.half_reps, &mut self.estimates).unwrap();
        black_box(&mut self.estimates);
    }

    /// Reads every load and every repetition, writes every estimate, and does the least with them.
    fn floor(&mut self) {
        for ((load, halves), estimate) in self.loads.iter().zip(&self.half_reps).zip(&mut self.estimates) {
            *estimate = *load + f64::from(*halves);
        }
        black_box(&mut self.estimates);
    }
}

/// Nanoseconds a set.
fn each(sets: &mut Sets, run: impl Fn(&mut Sets)) -> f64 {
    shortest(RUNS, || run(sets)).as_nanos() as f64 / COUNT as f64
}

fn peer() -> Option<Value> {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/benches/peers/one_rm.py");
    let output =
        Command::new("python3").args([script, &COUNT.to_string(), &RUNS.to_string()]).output().ok()?;
    if !output.status.success() {
        eprintln!("{}", String::from_utf8_lossy(&output.stderr));
        return None;
    }
    serde_json::from_slice(&output.stdout).ok()
}

fn table(sets: &mut Sets) {
    heading();
    let Some(peer) = peer() else {
        println!("no numpy to compare with");
        return;
    };
    println!("numpy {}, features {}", peer["version"], peer["features"]);
    for (equation, budget) in BUDGETS {
        let floor = each(sets, Sets::floor);
        let ours = each(sets, |sets| sets.ours(*equation));
        let row = &peer["equations"][equation.name()];
        let numpy = row["nanoseconds"].as_f64().unwrap();
        let mean = sets.estimates.iter().sum::<f64>() / COUNT as f64;
        let theirs = row["mean"].as_f64().unwrap();
        assert!((mean / theirs - 1.0).abs() < 1e-9, "both sides must give the same answers");
        let floor_ratio = ours / floor;
        Row {
            what: &format!(
                "batch `{}`, a set of {COUNT}; {floor_ratio:.2} times a loop that only reads and writes",
                equation.name()
            ),
            ours: time(ours * 1e-9),
            peer: format!("numpy {} {}", peer["version"].as_str().unwrap_or(""), time(numpy * 1e-9)),
            ratio: Some(numpy / ours),
            budget: format!("{budget} times as fast, at most {FLOOR_BUDGET} times the loop"),
            met: Some(numpy / ours >= *budget && floor_ratio <= FLOOR_BUDGET),
        }
        .print();
    }
}

fn main() {
    let mut criterion = Criterion::default().sample_size(20).configure_from_args();
    let mut sets = Sets::new();
    let mut group = criterion.benchmark_group("one_rm batch of a million");
    group.throughput(Throughput::Elements(COUNT as u64));
    group.bench_function("floor", |bench| bench.iter(|| sets.floor()));
    for equation in [Equation::Epley1985, Equation::Lombardi1989, Equation::CummingsFinn1998] {
        group.bench_function(equation.name(), |bench| bench.iter(|| sets.ours(equation)));
    }
    group.finish();
    table(&mut sets);
    criterion.final_summary();
}
