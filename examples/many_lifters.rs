//! Scores a table of many lifters' sets with the batch form, on all processors.
//!
//! `cargo run --release --example many_lifters` makes a table of invented sets; `-- FILE` reads yours: a line a set,
//! `lifter,load in kg,repetitions to failure`, lines of one lifter together. The crate itself starts no threads: a
//! batch is a plain function over slices, so the host cuts the table where it likes. Each lifter's best estimate
//! comes with the spread over equations, since no single equation is right for everybody.

use std::time::Instant;

use bismar::Error;
use bismar::one_rm::{Equation, one_rm_batch};
use rayon::prelude::*;

const EQUATIONS: [Equation; 4] =
    [Equation::Epley1985, Equation::Brzycki1993, Equation::Mayhew1992, Equation::Lombardi1989];
const LIFTERS: usize = 2_000;
const SETS: usize = 250;

/// One lifter's sets by columns, as the batch form takes them: loads in kg, repetitions in halves.
struct Sets {
    lifter: String,
    loads: Vec<f64>,
    half_reps: Vec<u8>,
}

#[derive(Default)]
struct Table {
    lifters: Vec<Sets>,
}

/// What one lifter's best set says, by the most careful and the boldest of the equations.
#[derive(Clone, PartialEq)]
struct Best {
    lifter: String,
    lowest: f64,
    highest: f64,
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let table = match std::env::args().nth(1) {
        Some(path) => Table::read(&std::fs::read_to_string(path)?)?,
        None => Table::invented(),
    };
    let start = Instant::now();
    let alone: Result<Vec<Best>, Error> = table.lifters.iter().map(Sets::best).collect();
    let one = start.elapsed();
    let start = Instant::now();
    let together: Result<Vec<Best>, Error> = table.lifters.par_iter().map(Sets::best).collect();
    let all = start.elapsed();
    let (alone, together) = (alone?, together?);
    // However the work is shared out, the bits are the same.
    assert!(alone == together, "threads changed an answer");
    for best in together.iter().take(5) {
        println!(
            "{}: {:.1} to {:.1} kg over {} equations",
            best.lifter,
            best.lowest,
            best.highest,
            EQUATIONS.len()
        );
    }
    println!(
        "{} lifters, {} sets, {} equations: one thread {one:.1?}, {} threads {all:.1?}, the same bits",
        table.lifters.len(),
        table.lifters.iter().map(|sets| sets.loads.len()).sum::<usize>(),
        EQUATIONS.len(),
        rayon::current_num_threads()
    );
    Ok(())
}

impl Table {
    fn add(&mut self, lifter: &str, load: f64, half_reps: u8) {
        match self.lifters.last_mut() {
            Some(sets) if sets.lifter == lifter => {
                sets.loads.push(load);
                sets.half_reps.push(half_reps);
            }
            _ => self.lifters.push(Sets {
                lifter: lifter.into(),
                loads: vec![load],
                half_reps: vec![half_reps],
            }),
        }
    }

    fn read(text: &str) -> Result<Table, Box<dyn std::error::Error>> {
        let mut table = Table::default();
        for (at, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
            let mut fields = line.split(',').map(str::trim);
            let (Some(lifter), Some(load), Some(reps), None) =
                (fields.next(), fields.next(), fields.next(), fields.next())
            else {
                return Err(format!("line {}: lifter,load,repetitions", at + 1).into());
            };
            let reps: u8 = reps.parse().map_err(|_| format!("line {}: {reps} repetitions", at + 1))?;
            let halves = reps.checked_mul(2).ok_or_else(|| format!("line {}: {reps} repetitions", at + 1))?;
            table.add(lifter, load.parse().map_err(|_| format!("line {}: load {load}", at + 1))?, halves);
        }
        Ok(table)
    }

    /// Invented sets: loads in steps of 2.5 kg, 1 to 10 repetitions.
    fn invented() -> Table {
        let mut table = Table::default();
        let mut state = 2026_u64;
        let mut below = |limit: u64| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) % limit
        };
        for lifter in 1..=LIFTERS {
            let name = format!("invented {lifter}");
            let strength = 10 + below(40);
            for _ in 0..SETS {
                table.add(&name, 2.5 * (strength + below(12)) as f64, 2 * (1 + below(10)) as u8);
            }
        }
        table
    }
}

impl Sets {
    /// Every equation over the lifter's sets; the best set by each.
    fn best(&self) -> Result<Best, Error> {
        let mut estimates = vec![0.0; self.loads.len()];
        let mut bests = Vec::with_capacity(EQUATIONS.len());
        for equation in EQUATIONS {
            one_rm_batch(equation, &self.loads, &self.half_reps, &mut estimates)
                .map_err(|error| error.within(&self.lifter))?;
            bests.extend(estimates.iter().copied().max_by(f64::total_cmp));
        }
        bests.sort_by(f64::total_cmp);
        let (lowest, highest) = (bests.first().copied(), bests.last().copied());
        Ok(Best {
            lifter: self.lifter.clone(),
            lowest: lowest.unwrap_or_default(),
            highest: highest.unwrap_or_default(),
        })
    }
}
