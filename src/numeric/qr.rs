//! Orthogonal factorisation of a tall matrix, kept as columns.

use alloc::vec::Vec;

use super::sqrt;
use super::sum::Sum;
use crate::error::{Code, Error};

/// Householder reflections below the diagonal, the triangle above it, its diagonal apart.
#[derive(Clone, Debug)]
pub(crate) struct Qr {
    columns: Vec<Vec<f64>>,
    diagonal: Vec<f64>,
    /// Squared length of each reflection.
    lengths: Vec<f64>,
}

/// A column is taken as a mix of earlier ones if this part of it or less is left over.
const RANK_TOLERANCE: f64 = 1e-12;

fn squares(values: &[f64]) -> f64 {
    let mut squares = Sum::default();
    for value in values {
        squares.add_product(*value, *value);
    }
    squares.value()
}

/// Reflects `target` in the plane normal to `mirror`; both start at the same row. `length` is the mirror's square.
fn reflect(mirror: &[f64], length: f64, target: &mut [f64]) {
    if length <= 0.0 {
        return;
    }
    let mut along = Sum::default();
    for (m, t) in mirror.iter().zip(target.iter()) {
        along.add_product(*m, *t);
    }
    let scale = 2.0 * along.value() / length;
    for (m, t) in mirror.iter().zip(target.iter_mut()) {
        *t -= scale * m;
    }
}

fn below(column: &[f64], row: usize) -> &[f64] {
    column.get(row..).unwrap_or(&[])
}

fn below_mut(column: &mut [f64], row: usize) -> &mut [f64] {
    column.get_mut(row..).unwrap_or(&mut [])
}

impl Qr {
    /// Factorises columns of equal length, at least as long as there are columns.
    ///
    /// # Errors
    /// `not_identified` where a column is zero or repeats the others.
    pub(crate) fn new(mut columns: Vec<Vec<f64>>) -> Result<Qr, Error> {
        let mut diagonal = Vec::with_capacity(columns.len());
        let mut lengths = Vec::with_capacity(columns.len());
        let mut rest = columns.as_mut_slice();
        while let Some((pivot, later)) = rest.split_first_mut() {
            let row = diagonal.len();
            let size = sqrt(squares(pivot));
            let mirror = below_mut(pivot, row);
            let length = sqrt(squares(mirror));
            if length <= RANK_TOLERANCE * size || length <= 0.0 {
                return Err(Error::plain(Code::NotIdentified, "columns"));
            }
            let first = mirror.first().copied().unwrap_or(0.0);
            // Away from the first entry, so that nothing cancels.
            let turned = if first > 0.0 { -length } else { length };
            if let Some(first) = mirror.first_mut() {
                *first -= turned;
            }
            let mirrored = squares(mirror);
            for column in later.iter_mut() {
                reflect(mirror, mirrored, below_mut(column, row));
            }
            lengths.push(mirrored);
            diagonal.push(turned);
            rest = later;
        }
        Ok(Qr { columns, diagonal, lengths })
    }

    /// `Q' y`, in place.
    pub(crate) fn rotate(&self, y: &mut [f64]) {
        for (row, (column, length)) in self.columns.iter().zip(&self.lengths).enumerate() {
            reflect(below(column, row), *length, below_mut(y, row));
        }
    }

    /// Solves `R x = rotated`, with the first rows of a rotated right-hand side.
    pub(crate) fn back_substitute(&self, rotated: &[f64]) -> Vec<f64> {
        let mut left: Vec<f64> = rotated.iter().copied().take(self.diagonal.len()).collect();
        for (row, (column, diagonal)) in self.columns.iter().zip(&self.diagonal).enumerate().rev() {
            let Some((last, above)) = left.get_mut(..=row).and_then(<[f64]>::split_last_mut) else {
                continue;
            };
            *last /= diagonal;
            for (entry, coefficient) in above.iter_mut().zip(column) {
                *entry -= *last * coefficient;
            }
        }
        left
    }

    /// Least-squares solution for one right-hand side.
    pub(crate) fn solve(&self, mut y: Vec<f64>) -> Vec<f64> {
        self.rotate(&mut y);
        self.back_substitute(&y)
    }

    /// Diagonal of the inverse of `X' X`.
    pub(crate) fn inverse_diagonal(&self) -> Vec<f64> {
        let size = self.diagonal.len();
        let mut total = alloc::vec![0.0; size];
        for unit in 0..size {
            let mut rotated = alloc::vec![0.0; size];
            if let Some(one) = rotated.get_mut(unit) {
                *one = 1.0;
            }
            for (sum, entry) in total.iter_mut().zip(self.back_substitute(&rotated)) {
                *sum += entry * entry;
            }
        }
        total
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solves_a_square_system() {
        let qr = Qr::new(alloc::vec![
            alloc::vec![2.0, 1.0, 0.0],
            alloc::vec![1.0, 3.0, 1.0],
            alloc::vec![0.0, 1.0, 4.0]
        ])
        .unwrap();
        let solution = qr.solve(alloc::vec![4.0, 10.0, 14.0]);
        for (got, expected) in solution.iter().zip([1.0, 2.0, 3.0]) {
            assert!((got - expected).abs() < 1e-14);
        }
    }

    #[test]
    fn a_repeated_column_is_refused() {
        let column = alloc::vec![1.0, 2.0, 3.0];
        let twice = alloc::vec![column.clone(), column.iter().map(|x| 3.0 * x).collect()];
        assert_eq!(Qr::new(twice).unwrap_err().code(), Code::NotIdentified);
        assert_eq!(Qr::new(alloc::vec![alloc::vec![0.0, 0.0]]).unwrap_err().code(), Code::NotIdentified);
    }
}
