//! Nonlinear least squares within bounds.
//!
//! Levenberg-Marquardt with the damping rule of Nielsen 1999 and scaling by column norms; a parameter on a bound
//! that the gradient pushes outwards is held there. Models with a linear part are reduced by variable
//! projection (Golub and Pereyra 1973, with the shorter Jacobian of Kaufman 1975) in `separable`.

use alloc::vec::Vec;

use super::triangle::{Triangle, dot, norm};
use super::{fabs, larger, smaller, sqrt};
use crate::error::{Allowed, Code, Error};

/// Residuals at a point, and the derivative of the residuals by each parameter.
#[derive(Clone, Debug)]
pub(crate) struct Linearised {
    pub(crate) residuals: Vec<f64>,
    pub(crate) derivatives: Vec<Vec<f64>>,
}

/// A question for the fitter: which parameters make the residuals smallest?
pub(crate) trait Problem {
    /// Residuals and derivatives; none where the model is not defined.
    fn linearise(&self, parameters: &[f64]) -> Option<Linearised>;
}

/// Lowest and highest value of one parameter.
pub(crate) type Bound = (f64, f64);

/// Where a fit came to rest.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Minimum {
    pub(crate) parameters: Vec<f64>,
    pub(crate) squares: f64,
    /// Parameters that rest on a bound.
    pub(crate) on_bound: Vec<bool>,
    pub(crate) iterations: u32,
}

const MOST_ITERATIONS: u32 = 200;
const MOST_TRIALS: u32 = 40;
/// The first step is no longer than this many times the start (scaled), or a flat far region may catch it.
const FIRST_REACH: f64 = 1.0;
const FIRST_DAMPING: f64 = 1e-3;
/// Steps smaller than this part of a parameter end the search.
const STEP_TOLERANCE: f64 = 1e-11;
/// So does a gradient as near to a right angle with the residuals as this.
const ANGLE_TOLERANCE: f64 = 1e-12;

/// A step that promised to take off less than this part of the squares is the last.
const PROMISE_TOLERANCE: f64 = 1e-14;

struct State {
    parameters: Vec<f64>,
    point: Linearised,
    squares: f64,
    scales: Vec<f64>,
    damping: f64,
    growth: f64,
    is_first: bool,
}

/// What one iteration found.
enum Move {
    Made,
    AtRest,
}

fn clip(value: f64, bound: &Bound) -> f64 {
    larger(bound.0, smaller(bound.1, value))
}

/// Finds a minimum near `start`, within the bounds.
///
/// # Errors
/// `wrong_length` where start and bounds differ in number; `not_finite` where the model is not defined at the
/// start; `did_not_converge` after 200 iterations.
pub(crate) fn minimise<P: Problem>(problem: &P, start: &[f64], bounds: &[Bound]) -> Result<Minimum, Error> {
    if start.len() != bounds.len() {
        return Err(Error::new(Code::WrongLength, "start", start.len(), Allowed::rule("one for each bound")));
    }
    let parameters: Vec<f64> = start.iter().zip(bounds).map(|(value, bound)| clip(*value, bound)).collect();
    let point = problem.linearise(&parameters).ok_or_else(|| Error::plain(Code::NotFinite, "start"))?;
    let squares = super::finite("start", dot(&point.residuals, &point.residuals))?;
    let scales = alloc::vec![0.0; parameters.len()];
    let mut state =
        State { parameters, point, squares, scales, damping: FIRST_DAMPING, growth: 2.0, is_first: true };
    for iteration in 0..MOST_ITERATIONS {
        if let Move::AtRest = state.advance(problem, bounds) {
            return Ok(state.rest(bounds, iteration));
        }
    }
    Err(Error::new(
        Code::DidNotConverge,
        "start",
        MOST_ITERATIONS,
        Allowed::rule("a start nearer to the answer"),
    ))
}

impl State {
    fn rest(self, bounds: &[Bound], iterations: u32) -> Minimum {
        let near = |value: f64, edge: f64| fabs(value - edge) <= 1e-9 * larger(fabs(edge), 1e-300);
        let on_bound = self
            .parameters
            .iter()
            .zip(bounds)
            .map(|(value, bound)| near(*value, bound.0) || near(*value, bound.1));
        let on_bound = on_bound.collect();
        Minimum { parameters: self.parameters, squares: self.squares, on_bound, iterations }
    }

    /// Which parameters may move: not those that the gradient pushes out through their
    /// bound, nor those without any effect.
    fn free(&self, bounds: &[Bound]) -> Vec<bool> {
        let pushed = |(derivative, (value, bound)): (&Vec<f64>, (&f64, &Bound))| {
            let slope = dot(derivative, &self.point.residuals);
            let idle = derivative.iter().all(|entry| *entry == 0.0);
            !(idle || (slope > 0.0 && *value <= bound.0) || (slope < 0.0 && *value >= bound.1))
        };
        self.point.derivatives.iter().zip(self.parameters.iter().zip(bounds)).map(pushed).collect()
    }

    fn is_stationary(&self, free: &[bool]) -> bool {
        let size = sqrt(self.squares);
        let flat = |derivative: &Vec<f64>| {
            fabs(dot(derivative, &self.point.residuals)) <= ANGLE_TOLERANCE * size * norm(derivative)
        };
        self.point.derivatives.iter().zip(free).all(|(derivative, free)| !free || flat(derivative))
    }

    fn advance<P: Problem>(&mut self, problem: &P, bounds: &[Bound]) -> Move {
        let free = self.free(bounds);
        if self.squares <= 0.0 || self.is_stationary(&free) {
            return Move::AtRest;
        }
        for (scale, derivative) in self.scales.iter_mut().zip(&self.point.derivatives) {
            *scale = larger(*scale, norm(derivative));
        }
        let slope = Slope::of(self, &free);
        for _ in 0..MOST_TRIALS {
            let trial = slope.step(self, bounds);
            let moved: Vec<f64> = trial.iter().zip(&self.parameters).map(|(to, from)| to - from).collect();
            let still =
                |(step, value): (&f64, &f64)| fabs(*step) <= STEP_TOLERANCE * (fabs(*value) + STEP_TOLERANCE);
            if moved.iter().zip(&self.parameters).all(still) {
                return Move::AtRest;
            }
            if self.is_first && self.is_far(&moved) {
                self.damping *= 2.0;
                continue;
            }
            let promise = slope.promise(&moved);
            let is_last = promise <= PROMISE_TOLERANCE * self.squares;
            if self.accept(problem, trial, promise) {
                return if is_last { Move::AtRest } else { Move::Made };
            }
        }
        Move::AtRest
    }

    /// Whether a first step goes further than the start can vouch for, in scaled parameters.
    fn is_far(&self, moved: &[f64]) -> bool {
        let length = |values: &[f64]| {
            sqrt(values.iter().zip(&self.scales).map(|(value, scale)| value * value * scale * scale).sum())
        };
        let start = length(&self.parameters);
        start > 0.0 && length(moved) > FIRST_REACH * start
    }

    /// Takes the trial if it is better, and sets the damping by how well the promise was kept.
    fn accept<P: Problem>(&mut self, problem: &P, trial: Vec<f64>, promise: f64) -> bool {
        // Most trials are better, so derivatives are not wasted on them.
        let point = problem.linearise(&trial);
        let better = point.map(|point| (dot(&point.residuals, &point.residuals), point));
        let better = better.filter(|(squares, _)| *squares < self.squares);
        let Some((squares, point)) = better else {
            self.damping *= self.growth;
            self.growth *= 2.0;
            return false;
        };
        let kept = if promise > 0.0 { (self.squares - squares) / promise } else { 1.0 };
        let miss = 2.0 * kept - 1.0;
        self.damping *= larger(1.0 / 3.0, 1.0 - miss * miss * miss);
        self.growth = 2.0;
        self.is_first = false;
        (self.parameters, self.point, self.squares) = (trial, point, squares);
        true
    }
}

/// The linear model of one iteration, reduced to a triangle over the free parameters.
struct Slope {
    triangle: Triangle,
    target: Vec<f64>,
    free: Vec<bool>,
}

impl Slope {
    fn of(state: &State, free: &[bool]) -> Slope {
        let kept = state.point.derivatives.iter().zip(free).filter(|(_, free)| **free);
        let columns: Vec<Vec<f64>> = kept.map(|(column, _)| column.clone()).collect();
        let count = columns.len();
        let mut target = [state.point.residuals.iter().map(|residual| -residual).collect::<Vec<f64>>()];
        let triangle = Triangle::reduce_any(columns, &mut target);
        let [mut target] = target;
        target.truncate(count);
        Slope { triangle, target, free: free.to_vec() }
    }

    fn only_free<'a>(&'a self, values: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
        values.iter().zip(&self.free).filter(|(_, free)| **free).map(|(value, _)| *value)
    }

    /// The damped step from where the state is, cut at the bounds.
    fn step(&self, state: &State, bounds: &[Bound]) -> Vec<f64> {
        let root = sqrt(state.damping);
        let diagonal: Vec<f64> = self.only_free(&state.scales).map(|scale| root * scale).collect();
        let mut target = self.target.clone();
        target.resize(2 * diagonal.len(), 0.0);
        let mut target = [target];
        let step: Vec<f64> = Triangle::reduce(self.triangle.stacked_on(&diagonal), &mut target)
            .map(|triangle| target.iter().flat_map(|target| triangle.solve(target)).collect())
            .unwrap_or_default();
        let mut step = step.into_iter();
        let moved = state.parameters.iter().zip(bounds).zip(&self.free).map(|((value, bound), free)| {
            let by = if *free { step.next().unwrap_or(0.0) } else { 0.0 };
            clip(value + by, bound)
        });
        moved.collect()
    }

    /// By how much the linear model says the squares will fall.
    fn promise(&self, moved: &[f64]) -> f64 {
        let steps: Vec<f64> = self.only_free(moved).collect();
        let reached = self.triangle.times(&steps);
        let left: f64 = reached.iter().zip(&self.target).map(|(r, t)| (r - t) * (r - t)).sum();
        dot(&self.target, &self.target) - left
    }
}

/// How well the parameters are known at a minimum.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Certainty {
    triangle: Triangle,
    /// Rows less parameters.
    pub(crate) degrees: u32,
    /// Residual variance.
    pub(crate) variance: f64,
}

impl Certainty {
    /// From the derivatives of the residuals at the minimum.
    ///
    /// # Errors
    /// `not_enough_data` without a degree of freedom; `not_identified` where parameters cannot be told apart.
    pub(crate) fn new(derivatives: Vec<Vec<f64>>, rows: usize, squares: f64) -> Result<Certainty, Error> {
        let degrees = rows.saturating_sub(derivatives.len()) as u32;
        if degrees == 0 {
            return Err(Error::new(
                Code::NotEnoughData,
                "rows",
                rows,
                Allowed::rule("more rows than parameters"),
            ));
        }
        let triangle = Triangle::reduce(derivatives, &mut [])
            .ok_or_else(|| Error::plain(Code::NotIdentified, "parameters"))?;
        Ok(Certainty { triangle, degrees, variance: squares / f64::from(degrees) })
    }

    /// Variance of a quantity with this gradient by the parameters.
    pub(crate) fn variance_along(&self, gradient: &[f64]) -> f64 {
        let turned = self.triangle.solve_transposed(gradient);
        self.variance * dot(&turned, &turned)
    }

    /// Standard error of each parameter.
    pub(crate) fn standard_errors(&self) -> Vec<f64> {
        let inverse = self.triangle.inverse_of_squares();
        let entry = |(at, row): (usize, &Vec<f64>)| sqrt(self.variance * row.get(at).copied().unwrap_or(0.0));
        inverse.iter().enumerate().map(entry).collect()
    }

    /// The two parameters that go together most, and their correlation.
    pub(crate) fn strongest_correlation(&self) -> Option<(usize, usize, f64)> {
        let inverse = self.triangle.inverse_of_squares();
        let entry = |a: usize, b: usize| inverse.get(a).and_then(|row| row.get(b)).copied().unwrap_or(0.0);
        let pairs = (0..inverse.len()).flat_map(|a| (0..a).map(move |b| (b, a)));
        let pairs = pairs.map(|(a, b)| (a, b, entry(a, b) / sqrt(entry(a, a) * entry(b, b))));
        pairs.max_by(|one, other| fabs(one.2).total_cmp(&fabs(other.2)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::vec;

    /// One residual, `exp(-x)`: it falls for ever and has no lowest point.
    struct Endless;

    impl Problem for Endless {
        fn linearise(&self, parameters: &[f64]) -> Option<Linearised> {
            let residual = crate::numeric::exp(-parameters[0]);
            Some(Linearised { residuals: vec![residual], derivatives: vec![vec![-residual]] })
        }
    }

    /// `x - 3`, defined above 1 alone.
    struct AboveOne;

    impl Problem for AboveOne {
        fn linearise(&self, parameters: &[f64]) -> Option<Linearised> {
            let x = parameters[0];
            (x > 1.0).then(|| Linearised { residuals: vec![x - 3.0], derivatives: vec![vec![1.0]] })
        }
    }

    const WIDE: Bound = (-1e9, 1e9);

    #[test]
    fn a_fit_ends_in_its_lowest_point_on_its_bound_or_in_an_error() {
        let found = minimise(&AboveOne, &[2.0], &[WIDE]).unwrap();
        assert!((found.parameters[0] - 3.0).abs() < 1e-9 && !found.on_bound[0]);
        let held = minimise(&AboveOne, &[2.0], &[(1.5, 2.5)]).unwrap();
        assert!((held.parameters[0] - 2.5).abs() < 1e-12 && held.on_bound[0]);
        let code = |answer: Result<Minimum, Error>| answer.unwrap_err().code();
        assert_eq!(code(minimise(&AboveOne, &[2.0, 2.0], &[WIDE])), Code::WrongLength);
        assert_eq!(code(minimise(&AboveOne, &[0.5], &[WIDE])), Code::NotFinite);
        assert_eq!(code(minimise(&Endless, &[0.0], &[WIDE])), Code::DidNotConverge);
    }

    #[test]
    fn what_is_known_of_a_fit_asks_for_rows_to_spare_and_for_parameters_apart() {
        let code = |columns: Vec<Vec<f64>>, rows| Certainty::new(columns, rows, 1.0).err().unwrap().code();
        assert_eq!(code(vec![vec![1.0, 0.0], vec![0.0, 1.0]], 2), Code::NotEnoughData);
        assert_eq!(code(vec![vec![1.0, 1.0, 1.0], vec![2.0, 2.0, 2.0]], 3), Code::NotIdentified);
        let known = Certainty::new(vec![vec![2.0, 0.0, 0.0], vec![0.0, 1.0, 0.0]], 3, 4.0).unwrap();
        // One degree of freedom, variance 4: standard errors 2 / 2 and 2 / 1.
        let errors = known.standard_errors();
        assert!((errors[0] - 1.0).abs() < 1e-12 && (errors[1] - 2.0).abs() < 1e-12);
    }
}
