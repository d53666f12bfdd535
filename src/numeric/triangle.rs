//! Plain orthogonal triangularisation for the inner loop of a fit, where speed counts more than the last digit.

use alloc::vec::Vec;

use super::{fabs, sqrt};

/// An upper triangle, column by column; the last entry of each column is on the diagonal.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Triangle {
    columns: Vec<Vec<f64>>,
}

/// A column is taken as a mix of earlier ones if this part of it or less is left over.
const RANK_TOLERANCE: f64 = 1e-11;

/// Sum of products, in four interleaved sums: four times as fast as one, and the same order everywhere.
pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let length = a.len().min(b.len());
    let (a, b) = (a.get(..length).unwrap_or_default(), b.get(..length).unwrap_or_default());
    let (fours, rest) = a.as_chunks::<4>();
    let (other_fours, other_rest) = b.as_chunks::<4>();
    let mut sums = [0.0; 4];
    for (x, y) in fours.iter().zip(other_fours) {
        for ((sum, x), y) in sums.iter_mut().zip(x).zip(y) {
            *sum += x * y;
        }
    }
    let [one, two, three, four] = sums;
    let rest: f64 = rest.iter().zip(other_rest).map(|(x, y)| x * y).sum();
    (one + two) + (three + four) + rest
}

pub(crate) fn norm(values: &[f64]) -> f64 {
    sqrt(dot(values, values))
}

fn from_row(values: &mut [f64], row: usize) -> &mut [f64] {
    values.get_mut(row..).unwrap_or(&mut [])
}

fn reflect(mirror: &[f64], double_over_squares: f64, target: &mut [f64]) {
    let scale = double_over_squares * dot(mirror, target);
    for (t, m) in target.iter_mut().zip(mirror) {
        *t -= scale * m;
    }
}

/// One Householder reflection that clears the mirror below its first entry; gives the diagonal.
fn turn(mirror: &mut [f64], row: usize, later: &mut [Vec<f64>], targets: &mut [Vec<f64>]) -> f64 {
    let length = norm(mirror);
    let Some(first) = mirror.first_mut().filter(|_| length > 0.0) else { return 0.0 };
    // Away from the first entry, so that nothing cancels.
    let turned = if *first > 0.0 { -length } else { length };
    *first -= turned;
    let double_over_squares = 1.0 / (length * fabs(*first));
    for column in later.iter_mut().chain(targets.iter_mut()) {
        reflect(mirror, double_over_squares, from_row(column, row));
    }
    turned
}

impl Triangle {
    /// Reduces the columns to a triangle and turns each target with them. None where a column is zero or
    /// repeats earlier ones.
    pub(crate) fn reduce(columns: Vec<Vec<f64>>, targets: &mut [Vec<f64>]) -> Option<Triangle> {
        let sizes: Vec<f64> = columns.iter().map(|column| norm(column)).collect();
        let triangle = Triangle::reduce_any(columns, targets);
        let diagonals = triangle.columns.iter().filter_map(|column| column.last());
        let independent = |(diagonal, size): (&f64, &f64)| fabs(*diagonal) > RANK_TOLERANCE * size;
        diagonals.zip(&sizes).all(independent).then_some(triangle)
    }

    /// The same whether or not columns repeat each other; then the diagonal has zeros, or nearly.
    pub(crate) fn reduce_any(mut columns: Vec<Vec<f64>>, targets: &mut [Vec<f64>]) -> Triangle {
        let mut row = 0;
        let mut rest = columns.as_mut_slice();
        while let Some((pivot, later)) = rest.split_first_mut() {
            let turned = turn(from_row(pivot, row), row, later, targets);
            pivot.truncate(row);
            pivot.push(turned);
            row += 1;
            rest = later;
        }
        Triangle { columns }
    }

    /// Solves `R x = target` with the first entries of the target.
    pub(crate) fn solve(&self, target: &[f64]) -> Vec<f64> {
        let mut left: Vec<f64> = target.iter().copied().take(self.columns.len()).collect();
        for (row, column) in self.columns.iter().enumerate().rev() {
            let Some((last, above)) = left.get_mut(..=row).and_then(<[f64]>::split_last_mut) else {
                continue;
            };
            let Some((diagonal, coefficients)) = column.split_last() else { continue };
            *last /= diagonal;
            for (entry, coefficient) in above.iter_mut().zip(coefficients) {
                *entry -= *last * coefficient;
            }
        }
        left
    }

    /// Solves `R' x = target`.
    pub(crate) fn solve_transposed(&self, target: &[f64]) -> Vec<f64> {
        let mut solved: Vec<f64> = Vec::with_capacity(self.columns.len());
        for (column, value) in self.columns.iter().zip(target) {
            let Some((diagonal, coefficients)) = column.split_last() else { continue };
            solved.push((value - dot(coefficients, &solved)) / diagonal);
        }
        solved
    }

    /// `R x`.
    pub(crate) fn times(&self, x: &[f64]) -> Vec<f64> {
        let mut product = alloc::vec![0.0; self.columns.len()];
        for (column, x) in self.columns.iter().zip(x) {
            for (sum, entry) in product.iter_mut().zip(column) {
                *sum += entry * x;
            }
        }
        product
    }

    /// `R` with `diagonal` below it, as columns of twice the height.
    pub(crate) fn stacked_on(&self, diagonal: &[f64]) -> Vec<Vec<f64>> {
        let size = self.columns.len();
        let stacked = self.columns.iter().zip(diagonal).enumerate().map(|(at, (column, entry))| {
            let mut tall = column.clone();
            tall.resize(2 * size, 0.0);
            if let Some(place) = tall.get_mut(size + at) {
                *place = *entry;
            }
            tall
        });
        stacked.collect()
    }

    /// The inverse of `R' R`, row by row.
    pub(crate) fn inverse_of_squares(&self) -> Vec<Vec<f64>> {
        let size = self.columns.len();
        let unit = |at| (0..size).map(|row| f64::from(u8::from(row == at))).collect::<Vec<f64>>();
        (0..size).map(|at| self.solve(&self.solve_transposed(&unit(at)))).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn solves_both_ways() {
        let columns = alloc::vec![alloc::vec![2.0, 1.0, 0.0], alloc::vec![1.0, 3.0, 1.0]];
        let mut target = [alloc::vec![4.0, 7.0, 2.0]];
        let triangle = Triangle::reduce(columns, &mut target).unwrap();
        let solution = triangle.solve(&target[0]);
        assert!((solution[0] - 1.0).abs() < 1e-14 && (solution[1] - 2.0).abs() < 1e-14);
        let inverse = triangle.inverse_of_squares();
        // X'X = [5 5; 5 11], determinant 30.
        for (got, expected) in
            inverse.iter().flatten().zip([11.0 / 30.0, -5.0 / 30.0, -5.0 / 30.0, 5.0 / 30.0])
        {
            assert!((got - expected).abs() < 1e-14, "{got} {expected}");
        }
    }

    #[test]
    fn a_repeated_column_is_refused() {
        let columns = alloc::vec![alloc::vec![1.0, 2.0], alloc::vec![2.0, 4.0]];
        assert_eq!(Triangle::reduce(columns, &mut []), None);
    }
}
