//! How fast loads are found, beside a general-purpose solver on the same problems in the same run.
//!
//! `cargo bench --bench loading`; the comparison needs python3 with scipy and says so where there is none.
//! `BISMAR_STOCKS` sets the number of random stocks (1000).

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs,
    reason = "a benchmark may panic"
)]

use std::collections::BTreeMap;
use std::hint::black_box;
use std::io::Write;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use bismar::loading::{Bar, Disc, Implement, Prepared, Rounding, Stock, reachable, warm_up, warm_up_steps};
use bismar::quantity::{Mass, Name};
use criterion::Criterion;

#[path = "shared/table.rs"]
mod table;
use table::{Row, heading, shortest, time};

/// A `reachable` table up to 400 kg.
const TABLE_BUDGET: Duration = Duration::from_millis(50);
/// How many times faster than the general solver one question must be.
const RATIO_BUDGET: f64 = 2_000.0;

fn kg(value: f64) -> Mass {
    Mass::from_kg(value).unwrap()
}

fn bar() -> Bar {
    Bar::new(Name::new("bar 20").unwrap(), kg(20.0), Mass::ZERO).unwrap()
}

/// Seven kinds in kilograms and seven in pounds, six pairs of each.
fn mixed_stock() -> Stock {
    let kilograms = [25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 1.25].map(kg);
    let pounds = [45.0, 35.0, 25.0, 10.0, 5.0, 2.5, 1.25].map(|lb| Mass::from_lb(lb).unwrap());
    let discs = kilograms.into_iter().chain(pounds).map(|mass| Disc::new(mass, 12).unwrap());
    Stock::new(discs.collect()).unwrap()
}

fn tables(criterion: &mut Criterion) {
    let (implement, stock) = (Implement::Bar(bar()), mixed_stock());
    let found = reachable(&implement, &stock, Mass::ZERO, kg(400.0)).unwrap();
    println!("reachable up to 400 kg, 14 kinds x 6 pairs: {} totals", found.totals.len());
    criterion.bench_function("reachable table to 400 kg", |bench| {
        bench.iter(|| reachable(black_box(&implement), &stock, Mass::ZERO, kg(400.0)).unwrap());
    });
    let prepared = Prepared::new(&implement, &stock, kg(400.0)).unwrap();
    criterion.bench_function("prepare to 400 kg", |bench| {
        bench.iter(|| Prepared::new(black_box(&implement), &stock, kg(400.0)).unwrap());
    });
    criterion.bench_function("one question", |bench| {
        bench.iter(|| prepared.load(black_box(kg(182.5)), Rounding::Below).unwrap());
    });
    let (work, empty) = (kg(140.0), kg(20.0));
    let steps = warm_up_steps(empty, work, None).unwrap();
    let small = Stock::new(mixed_stock().discs()[..7].to_vec()).unwrap();
    criterion.bench_function("warm-up to 140 kg", |bench| {
        bench.iter(|| warm_up(&bar(), black_box(&small), work, &steps).unwrap());
    });
}

fn table_budget() {
    let (implement, stock) = (Implement::Bar(bar()), mixed_stock());
    let took = shortest(11, || {
        black_box(reachable(&implement, &stock, Mass::ZERO, kg(400.0)).unwrap());
    });
    let (took, budget) = (took.as_secs_f64(), TABLE_BUDGET.as_secs_f64());
    Row {
        what: "every total to 400 kg, 14 kinds of disc, 6 pairs of each",
        ours: time(took),
        budget: format!("at most {}", time(budget)),
        met: Some(took < budget),
        ..Row::default()
    }
    .print();
}

/// Masses without a common measure: as many different sums as there can be. Refusals must come quickly too.
fn worst_case() {
    let discs = (0..25_i64).map(|kind| {
        let mass = Mass::from_nanograms(1_000_000_000_000 + kind * kind * 7_919_000_003).unwrap();
        Disc::new(mass, 30).unwrap()
    });
    let stock = Stock::new(discs.collect()).unwrap();
    let implement = Implement::Bar(bar());
    for highest in [24.0, 26.0, 28.0, 30.0, 400.0] {
        let start = Instant::now();
        let found = Prepared::new(&implement, &stock, kg(highest));
        let took = start.elapsed().as_secs_f64();
        let outcome = found.map_or_else(|error| error.code().as_str().to_string(), |_| "prepared".into());
        let what = format!("25 kinds without a common measure, 15 pairs, to {highest} kg: `{outcome}`");
        Row { what: &what, ours: time(took), ..Row::default() }.print();
    }
}

/// A fixed linear congruential sequence, so that every run sees the same stocks.
struct Sequence(u64);

impl Sequence {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }
}

/// 8 to 14 kinds: in kilograms, in pounds, or mixed, in quarters; 1 to 6 pairs.
fn random_stock(sequence: &mut Sequence) -> Stock {
    let style = sequence.below(3);
    let kinds = 8 + sequence.below(7);
    let discs = (0..kinds).map(|kind| {
        let quarters = 1 + sequence.below(100);
        let in_pounds = style == 1 || (style == 2 && kind % 2 == 0);
        let value = quarters as f64 / 4.0;
        let mass = if in_pounds { Mass::from_lb(value) } else { Mass::from_kg(value) };
        Disc::new(mass.unwrap(), 2 * (1 + sequence.below(6)) as u16).unwrap()
    });
    Stock::new(discs.collect()).unwrap()
}

/// One problem with our answer.
struct Problem {
    line: String,
    masses: Vec<i64>,
    room: i64,
    ours: i64,
    query: f64,
    preparation: f64,
}

fn problem(sequence: &mut Sequence) -> Problem {
    let stock = random_stock(sequence);
    let target = kg(40.0 + sequence.below(640) as f64 / 4.0);
    let implement = Implement::Bar(bar());
    let start = Instant::now();
    let prepared = Prepared::new(&implement, &stock, kg(200.0)).unwrap();
    let preparation = start.elapsed().as_secs_f64();
    let runs = 40_u32;
    let query = shortest(5, || {
        for _ in 0..runs {
            black_box(prepared.load(black_box(target), Rounding::Below).unwrap());
        }
    });
    let query = query.as_secs_f64() / f64::from(runs);
    let ours = prepared.load(target, Rounding::Below).unwrap().total.nanograms();
    let room = (target.nanograms() - kg(20.0).nanograms()) / 2;
    let masses: Vec<i64> = stock.discs().iter().map(|disc| disc.mass().nanograms()).collect();
    let in_kg: Vec<f64> = stock.discs().iter().map(|disc| disc.mass().kg()).collect();
    let pairs: Vec<u16> = stock.discs().iter().map(Disc::pairs).collect();
    let line = format!(r#"{{"masses":{in_kg:?},"pairs":{pairs:?},"room":{:?}}}"#, room as f64 / 1e12);
    Problem { line, masses, room, ours, query, preparation }
}

/// What the peer answered to one problem.
struct Answer {
    counts: Vec<i64>,
    seconds: f64,
    proved: bool,
}

/// The peer's answers; none where it can't run.
fn peer(problems: &[Problem]) -> Option<Vec<Answer>> {
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/benches/peers/loading_milp.py");
    let mut child =
        Command::new("python3").arg(script).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().ok()?;
    let mut stdin = child.stdin.take()?;
    let input: String = problems.iter().map(|problem| format!("{}\n", problem.line)).collect();
    let writer = std::thread::spawn(move || stdin.write_all(input.as_bytes()));
    let output = child.wait_with_output().ok()?;
    writer.join().ok()?.ok()?;
    let text = String::from_utf8_lossy(&output.stdout).into_owned();
    let mut lines = text.lines().filter_map(|line| line.strip_prefix("answer "));
    println!("peer: {}", lines.next()?);
    let answer = |line: &str| {
        let answer: serde_json::Value = serde_json::from_str(line).ok()?;
        let counts = answer["counts"].as_array()?.iter().filter_map(serde_json::Value::as_i64).collect();
        Some(Answer { counts, seconds: answer["seconds"].as_f64()?, proved: answer["proved"].as_bool()? })
    };
    lines.map(answer).collect()
}

/// Whether both found the same, in words that the report counts.
fn outcome(problem: &Problem, answer: &Answer) -> &'static str {
    // The peer works in floating point: its discs are summed exactly before they are compared.
    let sum: i64 = problem.masses.iter().zip(&answer.counts).map(|(mass, count)| mass * count).sum();
    let ours = (problem.ours - kg(20.0).nanograms()) / 2;
    if sum == ours {
        "the same optimum"
    } else if sum > problem.room {
        "peer above the target, within its own tolerance"
    } else if ours < sum {
        "OURS FURTHER OFF"
    } else if answer.proved {
        "ours nearer, within the peer's tolerance"
    } else {
        "ours nearer, the peer out of time"
    }
}

fn comparison() {
    let stocks = std::env::var("BISMAR_STOCKS").ok().and_then(|text| text.parse().ok()).unwrap_or(1_000);
    let mut sequence = Sequence(20_26);
    let problems: Vec<Problem> = (0..stocks).map(|_| problem(&mut sequence)).collect();
    let Some(answers) = peer(&problems) else {
        println!("comparison: no python3 with scipy here, not compared");
        return;
    };
    if answers.len() != problems.len() {
        println!("comparison: {} answers to {} problems, not compared", answers.len(), problems.len());
        return;
    }
    let mut outcomes: BTreeMap<&str, usize> = BTreeMap::new();
    for (problem, answer) in problems.iter().zip(&answers) {
        *outcomes.entry(outcome(problem, answer)).or_default() += 1;
    }
    println!("{stocks} stocks: {outcomes:?}");
    let ours = spread(problems.iter().map(|problem| problem.query));
    let preparation = spread(problems.iter().map(|problem| problem.preparation));
    let theirs = spread(answers.iter().map(|answer| answer.seconds));
    let further_off = outcomes.contains_key("OURS FURTHER OFF");
    let row = |what: &str, ours: f64, theirs: f64, budget: Option<f64>| {
        let ratio = theirs / ours;
        Row {
            what: &format!("one load on a prepared stock, {stocks} random stocks{what}"),
            ours: time(ours),
            peer: format!("scipy milp, processor time, {}", time(theirs)),
            ratio: Some(ratio),
            budget: budget.map_or(String::new(), |budget| format!("{budget} times as fast, same optimum")),
            met: budget.map(|budget| ratio >= budget && !further_off),
        }
        .print();
    };
    row(", medians", ours.0, theirs.0, Some(RATIO_BUDGET));
    row(", means", ours.1, theirs.1, None);
    row(", medians, its preparation counted", ours.0 + preparation.0, theirs.0, None);
}

/// Median and mean.
fn spread(values: impl Iterator<Item = f64>) -> (f64, f64) {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    (values[values.len() / 2], values.iter().sum::<f64>() / values.len() as f64)
}

fn main() {
    let mut criterion = Criterion::default().configure_from_args();
    tables(&mut criterion);
    criterion.final_summary();
    // A test run of the benchmark checks that it works and compares nothing.
    if std::env::args().any(|argument| argument == "--bench") {
        heading();
        table_budget();
        worst_case();
        comparison();
    }
}
