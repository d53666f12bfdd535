//! What the JavaScript package costs, beside the same work done natively in the same run.
//!
//! `cargo bench --all-features --bench package`; needs Node and the built package (`cargo run -p bismar-build --
//! package`), and says so where one is missing. Here "ours" is the package and the peer is the native library.

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
use std::time::Instant;

use bismar::one_rm::epley_1985;
use bismar::prescription::{next_session, next_session_from};
use bismar::progression::fold;
use bismar::quantity::{Mass, Reps};
use bismar::record::{Log, Plan};
use serde_json::Value;

#[path = "shared/table.rs"]
mod table;
use table::{Row, heading, time};

/// A flat call in Node, in seconds.
const CALL_BUDGET: f64 = 200e-9;
/// Part of the native speed that a batch must keep.
const BATCH_BUDGET: f64 = 0.7;
/// Part of the native speed that a session of a kept state must keep.
const SESSION_BUDGET: f64 = 0.5;
/// The same in the part that is built for speed: at most 4.5 times the native time.
const QUICK_BUDGET: f64 = 0.222;

/// Best of some rounds, in seconds a piece.
fn best(rounds: usize, pieces: usize, mut run: impl FnMut()) -> f64 {
    let round = |_| {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() / pieces as f64
    };
    (0..rounds).map(round).fold(f64::MAX, |a, b| if b < a { b } else { a })
}

fn package() -> Option<Value> {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/bindings/tests/speed.mjs");
    let output = Command::new("node").args([script, "--json"]).output().ok()?;
    serde_json::from_slice(&output.stdout).ok()
}

fn row(what: &str, ours: f64, native: Option<f64>, budget: Option<f64>) {
    let ratio = native.map(|native| native / ours);
    Row {
        what,
        ours: time(ours),
        peer: native.map_or(String::new(), |native| format!("native {}", time(native))),
        ratio,
        budget: budget.map_or(String::new(), |budget| format!("{budget} of native speed")),
        met: budget.and_then(|budget| ratio.map(|ratio| ratio >= budget)),
    }
    .print();
}

fn main() {
    // A test run of the benchmark has no package yet.
    if !std::env::args().any(|argument| argument == "--bench") {
        return;
    }
    let Some(package) = package() else {
        println!("no Node or no package here, not measured");
        return;
    };
    let ours = |name: &str| package[name].as_f64().unwrap() * 1e-9;
    let log = Log::from_json(include_str!("../examples/data/demo-log.json")).unwrap();
    let plan = Plan::from_json(include_str!("../examples/data/demo-plan.json")).unwrap();
    let today = log.events.last().unwrap().day;
    let state = fold(&log).unwrap();
    let (loads, reps) = (vec![100.0; 100_000], vec![8.0; 100_000]);

    heading();
    let call = ours("call");
    Row {
        what: "flat call of a function of two numbers, in Node",
        ours: time(call),
        budget: format!("at most {}", time(CALL_BUDGET)),
        met: Some(call <= CALL_BUDGET),
        ..Row::default()
    }
    .print();
    let batch = best(30, loads.len(), || {
        let estimate = |(load, reps): (&f64, &f64)| {
            epley_1985(Mass::from_kg(*load).unwrap(), Reps::new(*reps).unwrap()).unwrap().value()
        };
        black_box(black_box(&loads).iter().zip(black_box(&reps)).map(estimate).collect::<Vec<f64>>());
    });
    row(
        "the same in a batch, a row; natively a loop over validated values",
        ours("batch"),
        Some(batch),
        Some(BATCH_BUDGET),
    );
    let session = best(200, 1, || {
        black_box(next_session_from(black_box(&state), &plan, today).unwrap());
    });
    row("today's session of a kept state, demo log", ours("session"), Some(session), Some(SESSION_BUDGET));
    if let Some(quick) = package["quick"].as_f64() {
        let what = "the same in the part for sessions, which is built for speed";
        row(what, quick * 1e-9, Some(session), Some(QUICK_BUDGET));
    }
    let folding = best(20, 1, || {
        black_box(fold(black_box(&log)).unwrap());
    });
    row("fold of the demo log, handed over as an object", ours("fold"), Some(folding), None);
    let whole = best(20, 1, || {
        black_box(next_session(black_box(&log), &plan, today).unwrap());
    });
    row("today's session from the whole demo log", ours("whole"), Some(whole), None);
}
