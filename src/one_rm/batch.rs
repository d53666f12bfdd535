//! Many sets at once: the same bits as one by one, without an allocation for each.
//!
//! Whole and half repetitions are a small set, so nothing transcendental runs for an element: the multiplier of
//! every half repetition is worked out once, into a table on the stack.

use alloc::format;

use super::cummings_finn;
use super::equation::Equation;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Mass, Reps};

/// Below this many kg the offset of an additive equation may leave no maximum (4.29787 / 1.175, rounded up).
const LEAST_ADDITIVE: f64 = 4.0;

/// One entry a value of the index type, so that no index can miss.
type Table = [f64; 256];

/// Sets that are checked and then written together: few enough that the check costs no second trip to memory.
const GROUP: usize = 16;

/// Half repetitions that an equation answers at: every one from 1 repetition to its highest.
#[derive(Clone, Copy, Debug)]
struct Range {
    low: u8,
    high: u8,
}

impl Range {
    fn of(equation: Equation) -> Range {
        Range { low: 2, high: (equation.highest_reps() * 2.0) as u8 }
    }

    fn holds(&self, halves: u8) -> bool {
        // One comparison instead of two: below `low` wraps round to the top.
        halves.wrapping_sub(self.low) <= self.high - self.low
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

/// What one call needs to know of its equation.
struct Batch<F> {
    equation: Equation,
    range: Range,
    /// Loads up to this one are looked at one by one.
    least: f64,
    /// The estimate of one set.
    one: F,
}

impl<F: Fn(f64, u8) -> f64> Batch<F> {
    /// Loads above the least and not above the heaviest mass, repetitions in range.
    #[inline(always)]
    fn clean(&self, loads: &[f64], half_reps: &[u8]) -> bool {
        let heaviest = Mass::MAX.kg();
        let Range { low, high } = self.range;
        let loads_fit = loads.iter().fold(true, |fit, load| fit & (*load > self.least) & (*load <= heaviest));
        // The highest step above `low`; a repetition below it wraps round to the top.
        let highest = half_reps.iter().fold(0, |highest, halves| halves.wrapping_sub(low).max(highest));
        loads_fit & (highest <= high - low)
    }

    // Inlined, so that a full group has a length the compiler knows: measured a third faster.
    #[inline(always)]
    fn group(
        &self,
        start: usize,
        loads: &[f64],
        half_reps: &[u8],
        estimates: &mut [f64],
    ) -> Result<(), Error> {
        if !self.clean(loads, half_reps) {
            // A light load may do for an additive equation: the scalar form decides.
            self.first_bad(start, loads, half_reps)?;
        }
        let (loads, last_loads) = loads.as_chunks::<8>();
        let (half_reps, last_reps) = half_reps.as_chunks::<8>();
        let (estimates, last_estimates) = estimates.as_chunks_mut::<8>();
        for ((loads, halves), estimates) in loads.iter().zip(half_reps).zip(estimates) {
            // Eight repetitions in one read, taken off byte by byte.
            let mut word = u64::from_le_bytes(*halves);
            for (load, estimate) in loads.iter().zip(estimates) {
                *estimate = (self.one)(*load, word as u8);
                word >>= 8;
            }
        }
        for ((load, halves), estimate) in last_loads.iter().zip(last_reps).zip(last_estimates) {
            *estimate = (self.one)(*load, *halves);
        }
        Ok(())
    }

    fn run(&self, loads: &[f64], half_reps: &[u8], estimates: &mut [f64]) -> Result<(), Error> {
        let (groups, last_loads) = loads.as_chunks::<GROUP>();
        let (rep_groups, last_reps) = half_reps.as_chunks::<GROUP>();
        let (estimate_groups, last_estimates) = estimates.as_chunks_mut::<GROUP>();
        for (at, ((loads, halves), estimates)) in
            groups.iter().zip(rep_groups).zip(estimate_groups).enumerate()
        {
            self.group(at * GROUP, loads, halves, estimates)?;
        }
        self.group(groups.len() * GROUP, last_loads, last_reps, last_estimates)
    }

    /// The error of the first bad set, as the scalar form reports it.
    #[cold]
    fn first_bad(&self, start: usize, loads: &[f64], half_reps: &[u8]) -> Result<(), Error> {
        for (at, (load, halves)) in loads.iter().zip(half_reps).enumerate() {
            let scalar = Mass::from_kg(*load)
                .and_then(|load| self.equation.one_rm(load, Reps::from_halves(u16::from(*halves))?));
            scalar.map_err(|error| error.within(&format!("[{}]", start + at)))?;
        }
        Ok(())
    }
}

/// An equation with its table, for who gives many sets in several pieces: the table is worked out once.
///
/// # Examples
/// ```
/// use bismar::one_rm::{Equation, Tabled};
///
/// let tabled = Tabled::new(Equation::Epley1985)?;
/// let mut estimates = [0.0; 2];
/// tabled.run(&[100.0, 90.0], &[30, 30], &mut estimates)?; // 15 repetitions each
/// assert_eq!(estimates, [150.0, 135.0]);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Tabled {
    equation: Equation,
    range: Range,
    table: Table,
}

impl Tabled {
    /// Works out what the equation makes of every half repetition in its domain.
    ///
    /// # Errors
    /// None in practice: the table holds only what the equation answers.
    pub fn new(equation: Equation) -> Result<Tabled, Error> {
        let range = Range::of(equation);
        let table = if equation.is_scale_free() {
            table(&range, |reps| equation.multiplier_at(reps))?
        } else {
            table(&range, |reps| Ok(cummings_finn::added(reps)))?
        };
        Ok(Tabled { equation, range, table })
    }

    /// As [`one_rm_batch`].
    ///
    /// # Errors
    /// As [`one_rm_batch`].
    pub fn run(&self, loads: &[f64], half_reps: &[u8], estimates: &mut [f64]) -> Result<(), Error> {
        if loads.len() != half_reps.len() || loads.len() != estimates.len() {
            let rule = Allowed::rule("loads, repetitions and estimates of one length");
            return Err(Error::new(Code::WrongLength, "half_reps", half_reps.len(), rule));
        }
        let Tabled { equation, range, ref table } = *self;
        if equation.is_scale_free() {
            let one = |load: f64, halves| load * entry(table, halves);
            Batch { equation, range, least: 0.0, one }.run(loads, half_reps, estimates)
        } else {
            let one = |load: f64, halves| cummings_finn::LOAD * load + entry(table, halves);
            Batch { equation, range, least: LEAST_ADDITIVE, one }.run(loads, half_reps, estimates)
        }
    }
}

/// Estimates for many sets to failure: loads in kg, repetitions in halves (16 for 8 repetitions).
///
/// Gives, bit for bit, what [`Equation::one_rm`] gives for each set whose load is a [`Mass`] in kilograms. Nothing
/// is written from the first group of 16 on that holds a bad set, and the error names the first bad set.
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
    Tabled::new(equation)?.run(loads, half_reps, estimates)
}
