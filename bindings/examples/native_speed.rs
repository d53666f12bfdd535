//! The native side of `tests/speed.mjs`: the same work as the package does, in one line of JSON, in nanoseconds.

use std::hint::black_box;
use std::time::Instant;

use bismar::one_rm::{Equation, one_rm_batch};
use bismar::prescription::{next_session, next_session_from};
use bismar::progression::fold;
use bismar::record::{Log, Plan};
use bismar_bindings::flat::{self, Column};

type Failure = Box<dyn std::error::Error>;

/// Rows of a batch, as in `speed.mjs`.
const ROWS: usize = 100_000;

/// The best of so many rounds.
fn best(rounds: u32, mut run: impl FnMut()) -> f64 {
    let once = |run: &mut dyn FnMut()| {
        let start = Instant::now();
        run();
        start.elapsed().as_nanos() as f64
    };
    (0..rounds).map(|_| once(&mut run)).fold(f64::INFINITY, f64::min)
}

fn main() -> Result<(), Failure> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../examples/data");
    let text = |name: &str| std::fs::read_to_string(format!("{folder}/{name}.json"));
    let (log_text, plan_text) = (text("demo-log")?, text("demo-plan")?);
    let (log, plan) = (Log::from_json(&log_text)?, Plan::from_json(&plan_text)?);
    let today = log.events.last().map(|event| event.day).ok_or("an empty log")?;
    let state = fold(&log)?;
    let index =
        flat::TABLE.iter().position(|flat| flat.key == "one_rm.epley_1985").ok_or("no such function")?;
    let columns = [Column::Rows(vec![100.0; ROWS]), Column::Rows(vec![8.0; ROWS])];
    let (loads, halves, mut estimates) = (vec![100.0; ROWS], vec![16_u8; ROWS], vec![0.0; ROWS]);
    let row = 1.0 / ROWS as f64;
    let times = [
        ("batchRow", row * best(50, || drop(black_box(flat::batch(index, black_box(&columns)))))),
        (
            "oneRmBatchRow",
            row * best(50, || {
                _ = black_box(one_rm_batch(
                    Equation::Epley1985,
                    black_box(&loads),
                    black_box(&halves),
                    &mut estimates,
                ));
            }),
        ),
        (
            "nextSessionFrom",
            best(200, || drop(black_box(next_session_from(black_box(&state), &plan, today)))),
        ),
        ("nextSession", best(50, || drop(black_box(next_session(black_box(&log), &plan, today))))),
        (
            "nextSessionFromText",
            best(50, || {
                let log = Log::from_json(black_box(&log_text));
                let plan = Plan::from_json(black_box(&plan_text));
                if let (Ok(log), Ok(plan)) = (log, plan) {
                    drop(black_box(next_session(&log, &plan, today)));
                }
            }),
        ),
    ];
    let fields: Vec<String> = times.iter().map(|(name, time)| format!("\"{name}\":{time:.3}")).collect();
    println!("{{{}}}", fields.join(","));
    Ok(())
}
