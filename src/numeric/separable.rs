//! Least squares for models that are linear but for a few shape parameters (variable projection).

use alloc::vec::Vec;

use super::fit::{Bound, Certainty, Linearised, Minimum, Problem, minimise};
use super::triangle::{Triangle, dot};
use crate::error::{Code, Error};

/// A model `y = sum c_j column_j(shape)`.
pub(crate) trait Separable {
    /// Columns and their derivatives at a shape; none where the shape is not allowed.
    fn expand(&self, shape: &[f64]) -> Option<Expansion>;
}

/// A model at one shape.
pub(crate) struct Expansion {
    pub(crate) columns: Vec<Vec<f64>>,
    pub(crate) bends: Vec<Bend>,
}

/// How one column changes with one shape parameter; pairs that do not belong together are left out.
pub(crate) struct Bend {
    pub(crate) parameter: usize,
    pub(crate) column: usize,
    pub(crate) values: Vec<f64>,
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

/// One linear solution, seen from the space that its columns leave free: there lengths and angles are those of
/// the projection.
struct Solution {
    coefficients: Vec<f64>,
    residuals: Vec<f64>,
    bends: Vec<Bend>,
}

/// Most columns with a sign bound; every subset is tried.
const MOST_SIGNED: u32 = 4;

impl Bend {
    fn below(mut self, row: usize) -> Bend {
        self.values.drain(..row.min(self.values.len()));
        self
    }
}

/// The derivative of the whole model by one shape parameter.
fn derivative(bends: &[Bend], coefficients: &[f64], parameter: usize, rows: usize) -> Vec<f64> {
    let mut sum = alloc::vec![0.0; rows];
    for bend in bends.iter().filter(|bend| bend.parameter == parameter) {
        let coefficient = coefficients.get(bend.column).copied().unwrap_or(0.0);
        for (sum, value) in sum.iter_mut().zip(&bend.values) {
            *sum += coefficient * value;
        }
    }
    sum
}

impl<M: Separable> Projected<'_, M> {
    /// Solves with the columns used; none where a signed coefficient comes out negative.
    fn solve(&self, expansion: Expansion, used: &[bool]) -> Option<Solution> {
        let kept = expansion.columns.into_iter().zip(used).filter(|(_, used)| **used);
        let kept: Vec<Vec<f64>> = kept.map(|(column, _)| column).collect();
        let (count, bends) = (kept.len(), expansion.bends);
        let (places, mut targets): (Vec<_>, Vec<_>) =
            bends.into_iter().map(|bend| ((bend.parameter, bend.column), bend.values)).unzip();
        targets.push(self.y.to_vec());
        let triangle = Triangle::reduce(kept, &mut targets)?;
        let mut residuals = targets.pop()?;
        let mut solved = triangle.solve(&residuals).into_iter();
        let coefficients: Vec<f64> =
            used.iter().map(|used| if *used { solved.next().unwrap_or(0.0) } else { 0.0 }).collect();
        let allowed = |(coefficient, signed): (&f64, &bool)| !signed || *coefficient >= 0.0;
        residuals.drain(..count.min(residuals.len()));
        let bends = places.into_iter().zip(targets);
        let bends =
            bends.map(|((parameter, column), values)| Bend { parameter, column, values }.below(count));
        let fine = coefficients.iter().zip(self.not_negative).all(allowed)
            && dot(&residuals, &residuals).is_finite();
        fine.then(|| Solution { coefficients, residuals, bends: bends.collect() })
    }

    /// Which columns stay when the signed ones of this pattern are dropped.
    fn without(&self, pattern: u32) -> Vec<bool> {
        let mut bit = 0;
        let stays = |signed: &bool| {
            let dropped = *signed && pattern >> bit & 1 == 1;
            bit += u32::from(*signed);
            !dropped
        };
        self.not_negative.iter().map(stays).collect()
    }

    /// The best solution that keeps the signs: all columns if they do, else the best of the subsets.
    fn best(&self, shape: &[f64]) -> Option<Solution> {
        if let Some(solution) = self.solve(self.model.expand(shape)?, &self.without(0)) {
            return Some(solution);
        }
        let signed = self.not_negative.iter().filter(|signed| **signed).count() as u32;
        let patterns = 1..1_u32 << signed.min(MOST_SIGNED);
        let subsets =
            patterns.filter_map(|pattern| self.solve(self.model.expand(shape)?, &self.without(pattern)));
        let squares = |solution: &Solution| dot(&solution.residuals, &solution.residuals);
        subsets.min_by(|one, other| squares(one).total_cmp(&squares(other)))
    }
}

impl<M: Separable> Problem for Projected<'_, M> {
    fn linearise(&self, shape: &[f64]) -> Option<Linearised> {
        let Solution { coefficients, residuals, bends } = self.best(shape)?;
        let downhill: Vec<f64> = coefficients.iter().map(|coefficient| -coefficient).collect();
        let derivatives =
            (0..shape.len()).map(|at| derivative(&bends, &downhill, at, residuals.len())).collect();
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
    let solution = problem.best(&minimum.parameters);
    let solution = solution.ok_or_else(|| Error::plain(Code::NotIdentified, "columns"))?;
    Ok(SeparableFit { coefficients: solution.coefficients, minimum })
}

impl SeparableFit {
    /// How well coefficients (first) and shape (after them) are known.
    ///
    /// # Errors
    /// As [`Certainty::new`].
    pub(crate) fn certainty<M: Separable>(&self, model: &M, rows: usize) -> Result<Certainty, Error> {
        let expansion = model.expand(&self.minimum.parameters);
        let Expansion { mut columns, bends } =
            expansion.ok_or_else(|| Error::plain(Code::NotIdentified, "columns"))?;
        let shape = 0..self.minimum.parameters.len();
        columns.extend(shape.map(|at| derivative(&bends, &self.coefficients, at, rows)));
        Certainty::new(columns, rows, self.minimum.squares)
    }
}
