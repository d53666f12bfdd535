//! Straight lines and linear models with standard errors.

use alloc::vec::Vec;

use super::domain::numbers;
use crate::error::{Allowed, Code, Error};
use crate::numeric::least_squares::{Fit, least_squares};
use crate::numeric::sqrt;
use crate::numeric::sum::sum;
use crate::source::{Source, formula, rows};

const NIST_STRD: Source =
    Source { id: "nist-strd", citation: "NIST Statistical Reference Datasets", doi: None };

/// Largest number of predictors of a model.
const MOST_PREDICTORS: usize = 32;

/// A fitted straight line.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LinearFit {
    /// Value at `x = 0`; 0 for a line through the origin.
    pub intercept: f64,
    /// Change per unit of `x`.
    pub slope: f64,
    /// Standard error of the intercept; absent where no degree of freedom is left or none was fitted.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub intercept_error: Option<f64>,
    /// Standard error of the slope; absent where no degree of freedom is left.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub slope_error: Option<f64>,
    /// Standard deviation about the line; absent where no degree of freedom is left.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub residual_deviation: Option<f64>,
    /// Sum of squared residuals.
    pub residual_squares: f64,
    /// Sum of squares that the line explains.
    pub explained_squares: f64,
    /// Part of the squares that the line explains; absent where all `y` are equal.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub r_squared: Option<f64>,
    /// Points less fitted coefficients.
    pub degrees: u32,
}

/// A fitted linear model.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LinearModel {
    /// Intercept first, then one coefficient a predictor.
    pub coefficients: Vec<f64>,
    /// Their standard errors; empty where no degree of freedom is left.
    pub standard_errors: Vec<f64>,
    /// Sum of squared residuals.
    pub residual_squares: f64,
    /// Standard deviation about the model; absent where no degree of freedom is left.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub residual_deviation: Option<f64>,
    /// Part of the squares about the mean that the model explains; absent where all `y` are equal.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub r_squared: Option<f64>,
    /// Points less fitted coefficients.
    pub degrees: u32,
}

fn squares_about(y: &[f64], centre: f64) -> f64 {
    sum(y.iter().map(|value| (value - centre) * (value - centre)))
}

fn mean(y: &[f64]) -> f64 {
    sum(y.iter().copied()) / y.len() as f64
}

/// What the model explains of the squares about `centre`.
fn explained(fit: &Fit, y: &[f64], centre: f64) -> f64 {
    sum(y.iter().zip(&fit.residuals).map(|(value, residual)| {
        let fitted = value - residual - centre;
        fitted * fitted
    }))
}

fn share(explained: f64, residual: f64) -> Option<f64> {
    let whole = explained + residual;
    (whole > 0.0).then(|| explained / whole)
}

/// Paired lists of equal length.
pub(super) fn pairs(x: &[f64], y: &[f64], least: usize) -> Result<(), Error> {
    numbers("x", x, least)?;
    numbers("y", y, least)?;
    if x.len() == y.len() {
        Ok(())
    } else {
        Err(Error::new(Code::WrongLength, "y", y.len(), Allowed::rule("as many as x has")))
    }
}

/// Refuses a fit that the values determine so little that its numbers do not fit into `f64`.
fn sound(fit: Fit) -> Result<Fit, Error> {
    let all = |parts: &[f64]| parts.iter().all(|part| part.is_finite());
    let sound = all(&fit.coefficients) && all(&fit.standard_errors) && fit.residual_squares.is_finite();
    if sound { Ok(fit) } else { Err(Error::plain(Code::NotIdentified, "x")) }
}

fn line(fit: &Fit, y: &[f64], centre: Option<f64>) -> Result<LinearFit, Error> {
    let (intercept, slope) = match fit.coefficients.as_slice() {
        [intercept, slope] => (*intercept, *slope),
        [slope] => (0.0, *slope),
        _ => return Err(Error::plain(Code::NotIdentified, "x")),
    };
    let (intercept_error, slope_error) = match fit.standard_errors.as_slice() {
        [intercept, slope] => (Some(*intercept), Some(*slope)),
        [slope] => (None, Some(*slope)),
        _ => (None, None),
    };
    let explained_squares = explained(fit, y, centre.unwrap_or(0.0));
    Ok(LinearFit {
        intercept,
        slope,
        intercept_error,
        slope_error,
        residual_deviation: fit.residual_variance().map(sqrt),
        residual_squares: fit.residual_squares,
        explained_squares,
        r_squared: share(explained_squares, fit.residual_squares),
        degrees: fit.degrees,
    })
}

formula! {
    "statistics.linear_fit",
    /// Which straight line fits best, and how sure are its slope and intercept?
    ///
    /// # Formula
    /// Least squares by orthogonal factorisation with refined residuals; standard errors from the residual variance
    /// with `n - 2` below.
    ///
    /// # Domain
    /// At least two points with different `x`; standard errors need three.
    ///
    /// # Errors
    /// `not_enough_data`, `wrong_length`, `not_identified` where all `x` are equal, `not_finite`, `out_of_range`
    /// beyond 1e100.
    ///
    /// # Source
    /// Ordinary least squares, held against the NIST Statistical Reference Datasets (row `statistics.linear_fit`).
    ///
    /// # Examples
    /// ```
    /// let fit = bismar::statistics::linear_fit(&[0.0, 1.0, 2.0], &[1.0, 3.0, 5.0])?;
    /// assert!((fit.slope - 2.0).abs() < 1e-12 && (fit.intercept - 1.0).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn linear_fit(x: &[f64], y: &[f64]) -> Result<LinearFit, Error> {
        pairs(x, y, 2)?;
        let ones = alloc::vec![1.0; x.len()];
        line(&sound(least_squares(&[&ones, x], y)?)?, y, Some(mean(y)))
    }
    source: NIST_STRD, place: "linear regression, Norris", standing: Published, seen: Secondary,
    copies: "test files of open numerical libraries, one library for a data set",
}

formula! {
    "statistics.linear_fit_through_origin",
    /// Which line through the origin fits best?
    ///
    /// # Formula
    /// Least squares with the slope alone; the explained part is of the squares about 0, not about the mean.
    ///
    /// # Domain
    /// At least one point with `x` other than 0; a standard error needs two.
    ///
    /// # Errors
    /// `not_enough_data`, `wrong_length`, `not_identified` where all `x` are 0, `not_finite`, `out_of_range` beyond
    /// 1e100.
    ///
    /// # Source
    /// Held against the NIST Statistical Reference Datasets (row `statistics.linear_fit_through_origin`).
    ///
    /// # Examples
    /// ```
    /// let fit = bismar::statistics::linear_fit_through_origin(&[1.0, 2.0], &[3.0, 6.0])?;
    /// assert!((fit.slope - 3.0).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn linear_fit_through_origin(x: &[f64], y: &[f64]) -> Result<LinearFit, Error> {
        pairs(x, y, 1)?;
        line(&sound(least_squares(&[x], y)?)?, y, None)
    }
    source: NIST_STRD, place: "linear regression, NoInt1", standing: Published, seen: Secondary,
    copies: "test files of open numerical libraries, one library for a data set",
}

formula! {
    "statistics.linear_model",
    /// How does a value depend on several others at once?
    ///
    /// # Formula
    /// `y = b0 + b1 x1 + ...`, least squares by orthogonal factorisation with refined residuals.
    ///
    /// # Domain
    /// 1 to 32 predictors, each a list as long as `y`; more points than predictors.
    ///
    /// # Errors
    /// `not_enough_data`, `wrong_length`, `not_identified` where predictors repeat each other, `out_of_range` with
    /// more than 32 predictors or beyond 1e100, `not_finite`.
    ///
    /// # Source
    /// Held against the NIST Statistical Reference Datasets (row `statistics.linear_model`).
    ///
    /// # Examples
    /// ```
    /// let model = bismar::statistics::linear_model(&[vec![0.0, 1.0, 2.0, 3.0], vec![0.0, 1.0, 4.0, 9.0]], &[1.0, 3.0, 7.0, 13.0])?;
    /// assert!(model.coefficients.iter().all(|b| (b - 1.0).abs() < 1e-9));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn linear_model(predictors: &[Vec<f64>], y: &[f64]) -> Result<LinearModel, Error> {
        if predictors.len() > MOST_PREDICTORS {
            let most = MOST_PREDICTORS as f64;
            return Err(Error::range(Code::OutOfRange, "predictors", predictors.len(), 1.0, most, "predictors"));
        }
        numbers("y", y, 1)?;
        for predictor in predictors {
            numbers("predictors", predictor, 1)?;
        }
        let ones = alloc::vec![1.0; y.len()];
        let columns: Vec<&[f64]> =
            core::iter::once(ones.as_slice()).chain(predictors.iter().map(Vec::as_slice)).collect();
        let fit = sound(least_squares(&columns, y)?)?;
        let centre = mean(y);
        let r_squared = (squares_about(y, centre) > 0.0)
            .then(|| share(explained(&fit, y, centre), fit.residual_squares))
            .flatten();
        Ok(LinearModel {
            residual_deviation: fit.residual_variance().map(sqrt),
            r_squared,
            residual_squares: fit.residual_squares,
            degrees: fit.degrees,
            coefficients: fit.coefficients,
            standard_errors: fit.standard_errors,
        })
    }
    source: NIST_STRD, place: "linear regression, Longley and Wampler1", standing: Published, seen: Secondary,
    copies: "test files of open numerical libraries, one library for a data set",
}

rows![linear_fit, linear_fit_through_origin, linear_model];
