//! Many sets at once: the same bits as one by one, without an allocation for each.
//!
//! Whole and half repetitions are a small set, so nothing transcendental runs for an element: the multiplier of
//! every half repetition is worked out once, into a table on the stack.

use alloc::format;

use super::classic::cummings_finn;
use super::equation::Equation;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Mass, Reps};

/// One entry a value of the index type, so that no index can miss.
type Table = [f64; 256];

/// Sets that are checked and then written together; small enough to stay near the processor.
const BLOCK: usize = 1024;

/// Half repetitions that an equation answers at: every one from 1 repetition to its highest.
struct Range {
    low: u8,
    high: u8,
}

impl Range {
    fn of(equation: Equation) -> Range {
        Range { low: 2, high: (equation.highest_reps() * 2.0) as u8 }
    }

    fn holds(&self, halves: u8) -> bool {
        self.low <= halves && halves <= self.high
    }
}

fn table(range: &Range, value: impl Fn(f64) -> Result<f64, Error>) -> Result<Table, Error> {
    let mut table = [0.0; 256];
    for (halves, entry) in (0..=u8::MAX).zip(&mut table) {
        if range.holds(halves) {
            *entry = value(f64::from(halves) / 2.0)?;
        }
    }
    Ok(table)
}

fn entry(table: &Table, halves: u8) -> f64 {
    // Every `u8` has an entry; the compiler sees it and drops the check.
    table.get(usize::from(halves)).copied().unwrap_or(0.0)
}

/// A block without a set out of range; loads above 0 and not above the heaviest mass.
fn clean(loads: &[f64], halves: &[u8], range: &Range) -> bool {
    let heaviest = Mass::MAX.kg();
    let loads_fit = loads.iter().fold(true, |fit, load| fit & (*load > 0.0) & (*load <= heaviest));
    loads_fit & halves.iter().fold(true, |fit, halves| fit & range.holds(*halves))
}

/// Estimates for many sets to failure: loads in kg, repetitions in halves (16 for 8 repetitions).
///
/// Gives, bit for bit, what [`Equation::one_rm`] gives for each set whose load is a [`Mass`] in kilograms. Nothing
/// is written from the first block of 1024 on that holds a bad set, and the error names the first bad set.
///
/// # Errors
/// `wrong_length` where the lists differ in length; `not_finite`, `load_out_of_domain`, `reps_out_of_domain` for the
/// first bad set, with its position.
///
/// # Examples
/// ```
/// use bismar::one_rm::{Equation, one_rm_batch};
///
/// let mut estimates = [0.0; 2];
/// one_rm_batch(Equation::Brzycki1993, &[100.0, 80.0], &[16, 20], &mut estimates)?;
/// assert!((estimates[0] - 124.138).abs() < 0.0005 && (estimates[1] - 106.667).abs() < 0.0005);
///
/// let error = one_rm_batch(Equation::Brzycki1993, &[100.0, 80.0], &[16, 74], &mut estimates).unwrap_err();
/// assert_eq!(error.to_string(), "reps_out_of_domain: [1].reps = 37 (allowed: 1 to 36.5)");
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn one_rm_batch(
    equation: Equation,
    loads: &[f64],
    half_reps: &[u8],
    estimates: &mut [f64],
) -> Result<(), Error> {
    if loads.len() != half_reps.len() || loads.len() != estimates.len() {
        let rule = Allowed::rule("loads, repetitions and estimates of one length");
        return Err(Error::new(Code::WrongLength, "half_reps", half_reps.len(), rule));
    }
    let range = Range::of(equation);
    if equation.is_scale_free() {
        let table = table(&range, |reps| equation.multiplier_at(reps))?;
        each_block(equation, &range, loads, half_reps, estimates, |load, halves| load * entry(&table, halves))
    } else {
        let table = table(&range, |reps| Ok(cummings_finn::added(reps)))?;
        let one = |load: f64, halves| cummings_finn::LOAD * load + entry(&table, halves);
        each_block(equation, &range, loads, half_reps, estimates, one)
    }
}

fn each_block(
    equation: Equation,
    range: &Range,
    loads: &[f64],
    half_reps: &[u8],
    estimates: &mut [f64],
    one: impl Fn(f64, u8) -> f64,
) -> Result<(), Error> {
    let blocks = loads.chunks(BLOCK).zip(half_reps.chunks(BLOCK)).zip(estimates.chunks_mut(BLOCK));
    for (block, ((loads, halves), estimates)) in blocks.enumerate() {
        // Only an additive equation can give nothing for a load above nothing.
        let none = || loads.iter().zip(halves).any(|(load, halves)| one(*load, *halves) <= 0.0);
        if !clean(loads, halves, range) || (!equation.is_scale_free() && none()) {
            return Err(first_bad(equation, block * BLOCK, loads, halves));
        }
        for ((load, halves), estimate) in loads.iter().zip(halves).zip(estimates) {
            *estimate = one(*load, *halves);
        }
    }
    Ok(())
}

/// The error of the first bad set of a block, as the scalar form reports it.
fn first_bad(equation: Equation, start: usize, loads: &[f64], half_reps: &[u8]) -> Error {
    let scalar = |load: f64, halves: u8| {
        let load = Mass::from_kg(load)?;
        equation.one_rm(load, Reps::from_halves(u16::from(halves))?)
    };
    let bad = |(at, (load, halves)): (usize, (&f64, &u8))| {
        scalar(*load, *halves).err().map(|error| error.within(&format!("[{}]", start + at)))
    };
    let found = loads.iter().zip(half_reps).enumerate().find_map(bad);
    found.unwrap_or_else(|| Error::plain(Code::LoadOutOfDomain, "loads"))
}
