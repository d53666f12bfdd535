//! Two curves with two coefficients each, by least squares.

use alloc::vec::Vec;

use super::regression::pairs;
use crate::error::{Code, Error};
use crate::numeric::qr::Qr;
use crate::numeric::sum::sum;
use crate::numeric::{exp, fabs, finite, ln, pow, sqrt};
use crate::source::{Source, formula, rows};

const NIST_STRD: Source =
    Source { id: "nist-strd", citation: "NIST Statistical Reference Datasets", doi: None };

/// A fitted curve.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct CurveFit {
    /// Factor in front: what the curve is scaled by.
    pub scale: f64,
    /// The coefficient inside: rate or exponent.
    pub shape: f64,
    /// Standard error of the factor; absent where no degree of freedom is left.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub scale_error: Option<f64>,
    /// Standard error of the coefficient inside; absent where no degree of freedom is left.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub shape_error: Option<f64>,
    /// Sum of squared residuals.
    pub residual_squares: f64,
}

/// Value of a curve and its two derivatives: by scale, by shape.
type Point = (f64, f64, f64);

/// The residuals and the two columns of derivatives at one candidate.
struct Tangent {
    residuals: Vec<f64>,
    by_scale: Vec<f64>,
    by_shape: Vec<f64>,
    squares: f64,
}

fn tangent(curve: impl Fn(f64, f64, f64) -> Point, x: &[f64], y: &[f64], at: (f64, f64)) -> Tangent {
    let (mut residuals, mut by_scale, mut by_shape) = (Vec::new(), Vec::new(), Vec::new());
    for (x, y) in x.iter().zip(y) {
        let (value, scale, shape) = curve(*x, at.0, at.1);
        residuals.push(y - value);
        by_scale.push(scale);
        by_shape.push(shape);
    }
    let squares = sum(residuals.iter().map(|residual| residual * residual));
    Tangent { residuals, by_scale, by_shape, squares }
}

/// One damped step: least squares of the tangent with two more rows that hold the step back.
fn step(tangent: &Tangent, damping: f64) -> Option<(f64, f64)> {
    let size = |column: &[f64]| sqrt(sum(column.iter().map(|entry| entry * entry)));
    let hold = |column: &[f64]| sqrt(damping) * size(column);
    let mut by_scale = tangent.by_scale.clone();
    by_scale.extend([hold(&tangent.by_scale), 0.0]);
    let mut by_shape = tangent.by_shape.clone();
    by_shape.extend([0.0, hold(&tangent.by_shape)]);
    let mut residuals = tangent.residuals.clone();
    residuals.extend([0.0, 0.0]);
    match Qr::new(alloc::vec![by_scale, by_shape]).ok()?.solve(residuals).as_slice() {
        [scale, shape] if scale.is_finite() && shape.is_finite() => Some((*scale, *shape)),
        _ => None,
    }
}

/// The factor that fits best while the coefficient inside stays put: the curve is linear in it.
fn best_scale(
    curve: impl Fn(f64, f64, f64) -> Point,
    x: &[f64],
    y: &[f64],
    shape: f64,
) -> Result<f64, Error> {
    let shapes: Vec<f64> = x.iter().map(|x| curve(*x, 0.0, shape).1).collect();
    let size = sum(shapes.iter().map(|value| value * value));
    converged(sum(shapes.iter().zip(y).map(|(value, y)| value * y)) / size)
}

/// Refuses a number that did not come out as one: the fit has run away, or never could begin.
fn converged(value: f64) -> Result<f64, Error> {
    if value.is_finite() { Ok(value) } else { Err(Error::plain(Code::DidNotConverge, "start_shape")) }
}

/// Levenberg-Marquardt from a start, at most this many tangents.
const MOST_STEPS: u32 = 500;
/// Ends where no coefficient moves by more than this part of itself.
const SETTLED: f64 = 1e-11;

fn fit(
    curve: impl Fn(f64, f64, f64) -> Point + Copy,
    x: &[f64],
    y: &[f64],
    start_shape: f64,
) -> Result<CurveFit, Error> {
    pairs(x, y, 2)?;
    let start_shape = finite("start_shape", start_shape)?;
    let mut at = (best_scale(curve, x, y, start_shape)?, start_shape);
    let mut here = tangent(curve, x, y, at);
    let mut damping = 1e-3;
    for _ in 0..MOST_STEPS {
        let Some((scale, shape)) = step(&here, damping) else {
            damping *= 10.0;
            continue;
        };
        let next = (at.0 + scale, at.1 + shape);
        let there = tangent(curve, x, y, next);
        let settled = fabs(scale) <= SETTLED * fabs(next.0) && fabs(shape) <= SETTLED * fabs(next.1);
        if there.squares.is_finite() && there.squares <= here.squares {
            (at, here) = (next, there);
            damping = crate::numeric::larger(damping / 10.0, 1e-12);
        } else if !settled {
            damping *= 10.0;
        }
        if settled {
            return finish(&here, at);
        }
    }
    Err(Error::plain(Code::DidNotConverge, "start_shape"))
}

fn finish(here: &Tangent, at: (f64, f64)) -> Result<CurveFit, Error> {
    let qr = Qr::new(alloc::vec![here.by_scale.clone(), here.by_shape.clone()])?;
    let degrees = here.residuals.len().saturating_sub(2) as f64;
    let error =
        |entry: f64| (degrees > 0.0).then(|| converged(sqrt(entry * here.squares / degrees))).transpose();
    let (scale_error, shape_error) = match qr.inverse_diagonal().as_slice() {
        [scale, shape] => (error(*scale)?, error(*shape)?),
        _ => (None, None),
    };
    Ok(CurveFit {
        scale: converged(at.0)?,
        shape: converged(at.1)?,
        scale_error,
        shape_error,
        residual_squares: converged(here.squares)?,
    })
}

formula! {
    "statistics.saturating_fit",
    /// Which curve rises towards a ceiling and fits best?
    ///
    /// # Formula
    /// `y = scale (1 - exp(-shape x))`, least squares by damped Gauss-Newton steps from a start for the shape (the scale follows).
    ///
    /// # Domain
    /// At least two points. One over the middle of `x` serves as a start.
    ///
    /// # Errors
    /// `did_not_converge` after 500 steps or from a start that leads nowhere, `not_enough_data`, `wrong_length`, `not_identified`, `not_finite`,
    /// `out_of_range` beyond 1e100.
    ///
    /// # Source
    /// Held against the NIST Statistical Reference Datasets (row `statistics.saturating_fit`).
    ///
    /// # Examples
    /// ```
    /// let fit = bismar::statistics::saturating_fit(
    ///     &[1.0, 2.0, 3.0, 5.0, 7.0, 10.0],
    ///     &[109.0, 149.0, 149.0, 191.0, 213.0, 224.0],
    ///     0.75,
    /// )?;
    /// assert!((fit.scale - 213.80940889).abs() < 1e-6);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn saturating_fit(x: &[f64], y: &[f64], start_shape: f64) -> Result<CurveFit, Error> {
        let curve = |x: f64, scale: f64, shape: f64| {
            let left = exp(-shape * x);
            (scale * (1.0 - left), 1.0 - left, scale * x * left)
        };
        fit(curve, x, y, start_shape)
    }
    source: NIST_STRD, place: "nonlinear regression, Misra1a and BoxBOD", standing: Published, seen: Secondary,
    copies: "test files of open numerical libraries, one library for a data set",
}

formula! {
    "statistics.power_fit",
    /// Which power of `x` fits best?
    ///
    /// # Formula
    /// `y = scale x^shape`, least squares by damped Gauss-Newton steps from a start for the shape (the scale follows).
    ///
    /// # Domain
    /// At least two points, all `x` above 0.
    ///
    /// # Errors
    /// `out_of_range` for an `x` at or below 0 or beyond 1e100; `did_not_converge` after 500 steps or from a start
    /// that leads nowhere,
    /// `not_enough_data`, `wrong_length`, `not_identified`, `not_finite`.
    ///
    /// # Source
    /// Held against the NIST Statistical Reference Datasets (row `statistics.power_fit`).
    ///
    /// # Examples
    /// ```
    /// let fit = bismar::statistics::power_fit(&[1.0, 2.0, 4.0], &[3.0, 12.0, 48.0], 1.0)?;
    /// assert!((fit.shape - 2.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn power_fit(x: &[f64], y: &[f64], start_shape: f64) -> Result<CurveFit, Error> {
        for x in x {
            super::domain::positive("x", *x)?;
        }
        let curve = |x: f64, scale: f64, shape: f64| {
            let power = pow(x, shape);
            (scale * power, power, scale * power * ln(x))
        };
        fit(curve, x, y, start_shape)
    }
    source: NIST_STRD, place: "nonlinear regression, DanWood", standing: Published, seen: Secondary,
    copies: "test files of open numerical libraries, one library for a data set",
}

rows![saturating_fit, power_fit];
