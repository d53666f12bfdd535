//! Arithmetic that gives the same bits everywhere (private).
//!
//! Uses `error`. Every transcendental function of the crate comes through here, from `libm`; the versions of
//! the standard library may differ in the last bit between platforms and are banned by lint.
//!
//! | file | what is there |
//! |---|---|
//! | `normal` | density, distribution, quantile, reach of an interval |
//! | `gamma`, `beta`, `binomial`, `student` | log gamma, incomplete beta and its inverse, binomial, t |
//! | `sum`, `moments` | compensated sums and exact products; mean and variance in one pass |
//! | `qr`, `least_squares` | orthogonal factorisation; linear fit with standard errors |
//! | `fit`, `separable`, `triangle` | nonlinear least squares within bounds, with and without a linear part |
//! | `search` | root in a bracket, lowest point of a curve or surface |
//! | `sort` | one sort for every type |
//! | `quadrature` | Gauss-Legendre points and weights |
//! | `generator` | the one seeded generator |

pub(crate) mod beta;
pub(crate) mod binomial;
#[cfg(test)]
mod certified_fits;
pub(crate) mod fit;
pub(crate) mod gamma;
pub(crate) mod generator;
pub(crate) mod least_squares;
pub(crate) mod moments;
pub(crate) mod normal;
pub(crate) mod qr;
pub(crate) mod quadrature;
pub(crate) mod search;
pub(crate) mod separable;
pub(crate) mod sort;
pub(crate) mod student;
pub(crate) mod sum;
pub(crate) mod triangle;

use crate::error::{Code, Error};

#[allow(unused_imports, reason = "a front: some functions wait for the module that needs them")]
pub(crate) use libm::{
    atan, ceil, exp, expm1 as exp_m1, fabs, floor, log as ln, log1p as ln_1p, log10, pow, round, sqrt,
};

/// `-0.0` becomes `0.0`; everything else stays. Two results that compare equal then have equal bits.
pub(crate) fn tidy(value: f64) -> f64 {
    if value == 0.0 { 0.0 } else { value }
}

/// Whether a number within the 64-bit integers is whole. By two conversions, which every machine has; `floor` is a call.
pub(crate) fn is_whole(value: f64) -> bool {
    fabs(value - (value as i64) as f64) <= 0.0
}

/// The smaller of two numbers that are not NaN.
pub(crate) fn smaller(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// The larger of two numbers that are not NaN.
pub(crate) fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// The number itself, tidied, or `not_finite` naming the field.
pub(crate) fn finite(field: &'static str, value: f64) -> Result<f64, Error> {
    if value.is_finite() {
        Ok(tidy(value))
    } else {
        Err(Error::new(Code::NotFinite, field, value, crate::error::Allowed::Unstated))
    }
}

/// The number itself if it lies in `low..=high`, else an error with `code`.
pub(crate) fn within(
    code: Code,
    field: &'static str,
    value: f64,
    low: f64,
    high: f64,
    unit: &'static str,
) -> Result<f64, Error> {
    let value = finite(field, value)?;
    if value < low || value > high {
        Err(Error::range(code, field, value, low, high, unit))
    } else {
        Ok(value)
    }
}
