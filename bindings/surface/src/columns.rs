//! A function of numbers over columns that the caller keeps, into a column that the caller keeps.

use bismar::Error;
use bismar::one_rm::{Equation, Tabled};
use bismar::quantity::Mass;

use crate::flat::{self, Column, Flat, in_row, rows};
use crate::wide::{Processor, WHOLE, Wide};

/// Rows that are worked on together: few enough that what one pass over them reads is still in the nearest memory for the
/// next.
const TOGETHER: usize = 1 << 10;

/// Calls a function of the table for every row of the columns.
///
/// # Errors
/// `unknown_function`, or as [`run`].
pub fn batch<C: AsRef<[f64]>>(index: usize, columns: &[Column<C>]) -> Result<Vec<f64>, Error> {
    let flat = flat::TABLE.get(index).ok_or_else(|| flat::unknown(index))?;
    let mut out = vec![0.0; rows(columns)?];
    run(flat, columns, &mut out, None)?;
    Ok(out)
}

/// Runs the function for every row, bit for bit what a call for each would give. Where `refused` is given, a row that
/// the function refuses gets NaN and is counted there; else the first such row is the error.
///
/// # Errors
/// `wrong_type` if the columns differ in length among each other or from `out`; what the function reports, with the row
/// in brackets behind the field.
pub fn run<C: AsRef<[f64]>>(
    flat: &Flat,
    columns: &[Column<C>],
    out: &mut [f64],
    mut refused: Option<&mut usize>,
) -> Result<(), Error> {
    if rows(columns)? != out.len() {
        return Err(flat::uneven(out.len()));
    }
    // The library's table of an equation is worked out once for the whole column.
    let tabled = match equation(flat, columns) {
        Some((equation, loads, reps)) => Some((Ready::new(equation)?, loads, reps)),
        None => None,
    };
    let mut room = Room { processor: Processor::new(), halves: Vec::new(), rounded: Vec::new() };
    for start in (0..out.len()).step_by(TOGETHER) {
        let end = out.len().min(start + TOGETHER);
        let Some(out) = out.get_mut(start..end) else { continue };
        if let Some((tabled, loads, reps)) = &tabled
            && let (Some(loads), Some(reps)) = (loads.get(start..end), reps.get(start..end))
            && (tabled.wide.as_ref().is_some_and(|wide| wide.run(loads, reps, out))
                || room.run(&tabled.narrow, loads, reps, out))
        {
            continue;
        }
        for (row, slot) in (start..end).zip(out) {
            *slot = match (flat::call_row(flat, columns, row), &mut refused) {
                (Ok(number), _) => number,
                (Err(_), Some(count)) => {
                    **count += 1;
                    f64::NAN
                }
                (Err(error), None) => return Err(in_row(&error, row)),
            };
        }
    }
    Ok(())
}

/// The equation behind the function, with its two columns, where it has a batch form in the library.
fn equation<'a, C: AsRef<[f64]>>(
    flat: &Flat,
    columns: &'a [Column<C>],
) -> Option<(Equation, &'a [f64], &'a [f64])> {
    // Elsewhere there is none to be found, and nothing of the batch form is compiled.
    if !cfg!(any(part = "whole", part = "strength")) {
        return None;
    }
    let name = flat.key.strip_prefix("one_rm.")?;
    let equation = Equation::ALL.iter().copied().find(|equation| equation.name() == name)?;
    match columns {
        [Column::Rows(loads), Column::Rows(reps)] => Some((equation, loads.as_ref(), reps.as_ref())),
        _ => None,
    }
}

/// An equation made ready, for rows that are well and for any.
struct Ready {
    wide: Option<Wide>,
    narrow: Tabled,
}

impl Ready {
    fn new(equation: Equation) -> Result<Ready, Error> {
        let narrow = Tabled::new(equation)?;
        Ok(Ready { wide: Wide::new(equation, &narrow)?, narrow })
    }
}

/// Memory that is used again for every run of rows.
struct Room {
    processor: Processor,
    halves: Vec<u8>,
    rounded: Vec<f64>,
}

impl Room {
    /// Runs the library's batch form; not where a row has repetitions that are no half steps or is refused.
    fn run(&mut self, tabled: &Tabled, loads: &[f64], reps: &[f64], out: &mut [f64]) -> bool {
        self.halves.resize(reps.len(), 0);
        if !halved(reps, &mut self.halves) {
            return false;
        }
        if is_dyadic(loads) {
            return tabled.run(loads, &self.halves, out).is_ok();
        }
        self.rounded.resize(loads.len(), 0.0);
        if !self.processor.masses(loads, &mut self.rounded) {
            for (load, rounded) in loads.iter().zip(&mut self.rounded) {
                let Ok(mass) = Mass::from_kg(*load) else { return false };
                *rounded = mass.kg();
            }
        }
        tabled.run(&self.rounded, &self.halves, out).is_ok()
    }
}

/// As [`WHOLE`], for 1024ths.
const PARTS: f64 = 6_597_069_766_656.0; // 1.5 times 2^42

/// Repetitions in halves; whether every one is such a number of halves below 256.
fn halved(reps: &[f64], halves: &mut [u8]) -> bool {
    let mut wrong = 0;
    for (half, reps) in halves.iter_mut().zip(reps) {
        let doubled = reps * 2.0;
        let shifted = doubled + WHOLE;
        *half = shifted.to_bits() as u8;
        wrong |= (shifted - WHOLE).to_bits() ^ doubled.to_bits();
        wrong |= (shifted.to_bits() ^ WHOLE.to_bits()) >> 8;
    }
    wrong == 0
}

/// Whether every load is so many 1024ths of a kilogram, and with that a whole number of nanograms.
fn is_dyadic(loads: &[f64]) -> bool {
    let wrong = |load: &f64| ((load + PARTS) - PARTS).to_bits() ^ load.to_bits();
    loads.iter().fold(0, |all, load| all | wrong(load)) == 0
}

#[cfg(part = "whole")]
#[cfg(test)]
mod tests {
    use super::*;

    fn reps(rows: usize) -> Vec<f64> {
        (0..rows).map(|row| 1.0 + (row % 18) as f64 * 0.5).collect()
    }

    fn columns(rows: usize) -> (Vec<f64>, Vec<f64>) {
        ((0..rows).map(|row| 20.0 + (row % 480) as f64 * 0.25).collect(), reps(rows))
    }

    fn same_bits(loads: &[f64], reps: &[f64]) -> usize {
        same_bits_below("", loads, reps)
    }

    fn same_bits_below(prefix: &str, loads: &[f64], reps: &[f64]) -> usize {
        let given = [Column::Rows(loads), Column::Rows(reps)];
        let mut equations = 0;
        let wanted = |flat: &&Flat| flat.names.len() == 2 && flat.key.starts_with(prefix);
        for flat in flat::TABLE.iter().filter(wanted) {
            let (mut out, mut refused) = (vec![0.0; loads.len()], 0);
            run(flat, &given, &mut out, Some(&mut refused)).unwrap();
            equations += usize::from(equation(flat, &given).is_some());
            for ((load, reps), found) in loads.iter().zip(reps).zip(&out) {
                let one = (flat.call)(&[*load, *reps]).unwrap_or(f64::NAN);
                assert_eq!(one.to_bits(), found.to_bits(), "{} of {load} and {reps}", flat.key);
            }
        }
        equations
    }

    #[test]
    fn every_function_of_two_numbers_gives_the_bits_of_single_calls() {
        let (loads, reps) = columns(2_500);
        // Thirteen equations have a flat function and a batch form.
        assert_eq!(same_bits(&loads, &reps), 13);
        assert!(is_dyadic(&loads));
    }

    #[test]
    fn loads_in_decimals_and_pounds_give_the_bits_of_single_calls() {
        let tenths: Vec<f64> = (0..1_500).map(|row| f64::from(row + 200) / 10.0).collect();
        assert!(!is_dyadic(&tenths));
        same_bits(&tenths, &reps(tenths.len()));
        let pounds: Vec<f64> = (0..1_500).map(|row| f64::from(row + 45) / 2.204_622_621_848_775_8).collect();
        same_bits(&pounds, &reps(pounds.len()));
    }

    #[test]
    fn loads_whose_rounding_no_product_shows_give_the_bits_of_single_calls() {
        // Half a nanogram, and thirds.
        let halves: Vec<f64> = (0..1_500).map(|row| (f64::from(row) + 0.5) * 1e-12 + 1.0).collect();
        same_bits_below("one_rm.", &halves, &reps(halves.len()));
        let thirds: Vec<f64> = (0..1_500).map(|row| f64::from(row + 61) / 3.0).collect();
        same_bits_below("one_rm.", &thirds, &reps(thirds.len()));
    }

    #[test]
    fn what_is_no_half_step_or_no_mass_is_seen() {
        let mut halves = [0];
        for reps in [0.25, -1.0, -0.0, 128.0, 1e300, f64::NAN, f64::INFINITY, 1.0 + 1e-15] {
            assert!(!halved(&[reps], &mut halves), "{reps}");
        }
        assert!(halved(&[127.5], &mut halves) && halves == [255]);
        assert!(!is_dyadic(&[0.000_1]) && !is_dyadic(&[-0.0]) && is_dyadic(&[1999.5, 0.0]));
    }

    #[test]
    fn the_first_refused_row_is_named_or_counted() {
        let (mut loads, reps) = columns(3_000);
        loads[2_000] = -1.0;
        loads[2_500] = f64::NAN;
        let flat = crate::calls::flat("one_rm.brzycki_1993").unwrap();
        let mut out = vec![0.0; loads.len()];
        let given = [Column::Rows(&loads), Column::Rows(&reps)];
        let error = run(flat, &given, &mut out, None).unwrap_err();
        assert!(error.field().ends_with("[2000]"), "{error}");
        let mut refused = 0;
        run(flat, &given, &mut out, Some(&mut refused)).unwrap();
        assert_eq!((refused, out[2_000].is_nan(), out[2_001].is_nan()), (2, true, false));
        assert!(run(flat, &given, &mut out[1..], None).is_err());
    }
}
