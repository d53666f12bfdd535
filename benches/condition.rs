//! How fast is the filter and smoother of a wandering level, against statsmodels in the same run?
//!
//! 10,000 days on a daily grid with gaps, one reading a day, exact diffuse start on both sides, equal values to 1e-9.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::disallowed_methods,
    missing_docs,
    reason = "a bench may panic"
)]

use std::fmt::Write as _;
use std::hint::black_box;
use std::process::Command;
use std::time::Instant;

use bismar::quantity::Day;
use bismar::statistics::{LevelPath, Outliers, Reading, local_level};
use criterion::{Criterion, criterion_group, criterion_main};

#[path = "shared/table.rs"]
mod table;
use table::{Row, growth, heading, time};

const DAYS: i32 = 10_000;
const VARIANCE: f64 = 4.0;
const DRIFT: f64 = 0.05;
/// The peer may take so many times longer.
const BUDGET: f64 = 200.0;

/// A wandering level seen on three days out of five, one reading a day.
fn series(days: i32) -> (Vec<Reading>, Vec<Day>) {
    let (mut readings, mut gaps) = (Vec::new(), Vec::new());
    let mut state = 12_345_u64;
    let mut draw = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 11) as f64 / 9_007_199_254_740_992.0 - 0.5
    };
    let mut level = 100.0;
    for number in 0..days {
        let day = Day::from_number(number).unwrap();
        level += 0.7 * draw();
        if number == 0 || number % 5 < 3 {
            readings.push(Reading::new(day, level + 7.0 * draw(), VARIANCE));
        } else {
            gaps.push(day);
        }
    }
    (readings, gaps)
}

fn ours(readings: &[Reading], gaps: &[Day]) -> LevelPath {
    local_level(readings, DRIFT, Outliers::Trusted, gaps).unwrap()
}

/// Best of many runs, in seconds.
fn best(readings: &[Reading], gaps: &[Day]) -> f64 {
    let run = |_| {
        let start = Instant::now();
        black_box(ours(black_box(readings), black_box(gaps)));
        start.elapsed().as_secs_f64()
    };
    (0..50).map(run).fold(f64::MAX, |a, b| if b < a { b } else { a })
}

fn peer(path: &LevelPath) -> Option<(f64, String, f64)> {
    let folder = std::env::temp_dir();
    let values = folder.join(format!("level-{}.txt", std::process::id()));
    let smoothed = folder.join(format!("smoothed-{}.txt", std::process::id()));
    let mut text = String::new();
    for stop in &path.stops {
        match stop.reading {
            Some(value) => writeln!(text, "{value:?}").unwrap(),
            None => text.push('\n'),
        }
    }
    std::fs::write(&values, text).unwrap();
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/benches/peers/condition.py");
    let output = Command::new("python3")
        .arg(script)
        .args([&values, &smoothed])
        .args([VARIANCE.to_string(), DRIFT.to_string(), "7".to_string()])
        .output()
        .ok()?;
    let printed = String::from_utf8_lossy(&output.stdout).trim().to_string();
    let (seconds, version) = printed.split_once(' ')?;
    let theirs = std::fs::read_to_string(&smoothed).ok()?;
    let mut furthest = 0.0;
    assert_eq!(theirs.lines().count(), path.stops.len());
    for (stop, line) in path.stops.iter().zip(theirs.lines()) {
        let (filtered, smoothed) = line.split_once(' ').unwrap();
        for (mine, other) in [(stop.filtered.unwrap(), filtered), (stop.smoothed, smoothed)] {
            let other: f64 = other.parse().unwrap();
            let apart = (mine / other - 1.0).abs();
            furthest = if apart > furthest { apart } else { furthest };
        }
    }
    let _ = (std::fs::remove_file(&values), std::fs::remove_file(&smoothed));
    Some((seconds.parse().ok()?, version.to_string(), furthest))
}

fn level(criterion: &mut Criterion) {
    let (readings, gaps) = series(DAYS);
    let path = ours(&readings, &gaps);
    criterion.bench_function("condition/level_10000_days", |bench| bench.iter(|| ours(&readings, &gaps)));
    let mine = best(&readings, &gaps);
    heading();
    let what = format!("filter and smoother of a wandering level, {DAYS} days");
    match peer(&path) {
        Some((seconds, version, apart)) => {
            let ratio = seconds / mine;
            Row {
                what: &format!("{what}; furthest value {apart:.1e} relative"),
                ours: time(mine),
                peer: format!("{version} {}", time(seconds)),
                ratio: Some(ratio),
                budget: format!("{BUDGET} times as fast, values within 1e-9"),
                met: Some(ratio >= BUDGET && apart <= 1e-9),
            }
            .print();
        }
        None => Row { what: &what, ours: time(mine), peer: "not available".into(), ..Row::default() }.print(),
    }
    let sizes = [DAYS / 10, DAYS, DAYS * 4];
    let times = sizes.map(|days| {
        let (readings, gaps) = series(days);
        best(&readings, &gaps)
    });
    for at in [0, 1] {
        let pair = [f64::from(sizes[at]), f64::from(sizes[at + 1])];
        growth("filter and smoother, days", pair, [times[at], times[at + 1]]);
    }
}

criterion_group!(benches, level);
criterion_main!(benches);
