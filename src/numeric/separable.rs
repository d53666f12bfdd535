//! Least squares for models that are linear but for a few shape parameters (variable projection).

use alloc::vec::Vec;

use super::fit::{Bound, Certainty, Linearised, Minimum, Problem, minimise};
use super::triangle::{Triangle, dot};
use crate::error::{Code, Error};

/// A model `y = sum c_j column_j(shape)`.
pub(crate) trait Separable {
    /// The columns at a shape; none where the shape is not allowed.
    fn columns(&self, shape: &[f64]) -> Option<Vec<Vec<f64>>>;

    /// The derivative of the whole model by each shape parameter, with these coefficients.
    fn derivatives(&self, shape: &[f64], coefficients: &[f64]) -> Vec<Vec<f64>>;
}

/// A fitted separable model.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SeparableFit {
    /// One for each column; 0 where a sign bound holds it there.
    pub(crate) coefficients: Vec<f64>,
    /// Shape parameters, their squares and iterations.
    pub(crate) minimum: Minimum,
}

/// The projected problem: only the shape is left to find.
struct Projected<'a, M> {
    model: &'a M,
    y: &'a [f64],
    /// Columns whose coefficient may not fall below zero.
    not_negative: &'a [bool],
}

/// One linear solution: coefficients, the columns used, and what is left of `y` and of other targets below them.
struct Solution {
    coefficients: Vec<f64>,
    used: Vec<bool>,
    squares: f64,
}

/// Most columns with a sign bound; every subset is tried.
const MOST_SIGNED: u32 = 4;

fn pick(columns: &[Vec<f64>], used: &[bool]) -> Vec<Vec<f64>> {
    columns.iter().zip(used).filter(|(_, used)| **used).map(|(column, _)| column.clone()).collect()
}

fn tail(target: &[f64], from: usize) -> &[f64] {
    target.get(from..).unwrap_or_default()
}

impl<M: Separable> Projected<'_, M> {
    /// Solves with the columns used; none where a signed coefficient comes out negative.
    fn solve(&self, columns: &[Vec<f64>], used: &[bool]) -> Option<Solution> {
        let mut target = [self.y.to_vec()];
        let kept = pick(columns, used);
        let count = kept.len();
        let triangle = Triangle::reduce(kept, &mut target)?;
        let [target] = &target;
        let mut solved = triangle.solve(target).into_iter();
        let coefficients: Vec<f64> =
            used.iter().map(|used| if *used { solved.next().unwrap_or(0.0) } else { 0.0 }).collect();
        let allowed = |(coefficient, signed): (&f64, &bool)| !signed || *coefficient >= 0.0;
        let squares = dot(tail(target, count), tail(target, count));
        (coefficients.iter().zip(self.not_negative).all(allowed) && squares.is_finite()).then(|| Solution {
            coefficients,
            used: used.to_vec(),
            squares,
        })
    }

    /// The best solution that keeps the signs: all columns if they do, else the best of the subsets.
    fn best(&self, columns: &[Vec<f64>]) -> Option<Solution> {
        let everything = alloc::vec![true; columns.len()];
        if let Some(solution) = self.solve(columns, &everything) {
            return Some(solution);
        }
        let signed = self.not_negative.iter().filter(|signed| **signed).count() as u32;
        let subsets = (1..1_u32 << signed.min(MOST_SIGNED)).filter_map(|mask| {
            let mut bit = 0;
            let used: Vec<bool> = self
                .not_negative
                .iter()
                .map(|signed| {
                    let dropped = *signed && mask >> bit & 1 == 1;
                    bit += u32::from(*signed);
                    !dropped
                })
                .collect();
            self.solve(columns, &used)
        });
        subsets.min_by(|one, other| one.squares.total_cmp(&other.squares))
    }
}

impl<M: Separable> Problem for Projected<'_, M> {
    fn squares(&self, shape: &[f64]) -> Option<f64> {
        self.best(&self.model.columns(shape)?).map(|solution| solution.squares)
    }

    fn linearise(&self, shape: &[f64]) -> Option<Linearised> {
        let columns = self.model.columns(shape)?;
        let solution = self.best(&columns)?;
        let kept = pick(&columns, &solution.used);
        let count = kept.len();
        // Seen from the space that the columns leave free, lengths and angles are those of the projection.
        let mut targets = self.model.derivatives(shape, &solution.coefficients);
        targets.push(self.y.to_vec());
        Triangle::reduce(kept, &mut targets)?;
        let residuals = tail(&targets.pop()?, count).to_vec();
        let derivatives =
            targets.iter().map(|target| tail(target, count).iter().map(|d| -d).collect()).collect();
        Some(Linearised { residuals, derivatives })
    }
}

/// Fits shape and coefficients from one start of the shape.
///
/// # Errors
/// As [`minimise`]; `not_identified` where the columns repeat each other at the answer.
pub(crate) fn fit_separable<M: Separable>(
    model: &M,
    y: &[f64],
    not_negative: &[bool],
    start: &[f64],
    bounds: &[Bound],
) -> Result<SeparableFit, Error> {
    let problem = Projected { model, y, not_negative };
    let minimum = minimise(&problem, start, bounds)?;
    let solution = model.columns(&minimum.parameters).and_then(|columns| problem.best(&columns));
    let solution = solution.ok_or_else(|| Error::plain(Code::NotIdentified, "columns"))?;
    Ok(SeparableFit { coefficients: solution.coefficients, minimum })
}

impl SeparableFit {
    /// How well coefficients (first) and shape (after them) are known.
    ///
    /// # Errors
    /// As [`Certainty::new`].
    pub(crate) fn certainty<M: Separable>(&self, model: &M, rows: usize) -> Result<Certainty, Error> {
        let mut derivatives = model.columns(&self.minimum.parameters).unwrap_or_default();
        derivatives.extend(model.derivatives(&self.minimum.parameters, &self.coefficients));
        Certainty::new(derivatives, rows, self.minimum.squares)
    }
}
