//! Linear least squares with standard errors.

use alloc::vec::Vec;

use super::qr::Qr;
use super::sum::{Sum, sum};
use super::{fabs, larger, sqrt};
use crate::error::{Allowed, Code, Error};

/// A fitted linear model.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fit {
    /// One coefficient a column.
    pub(crate) coefficients: Vec<f64>,
    /// Standard error of each coefficient; empty where no degree of freedom is left.
    pub(crate) standard_errors: Vec<f64>,
    /// Sum of squared residuals.
    pub(crate) residual_squares: f64,
    /// Rows less columns.
    pub(crate) degrees: u32,
    /// Residuals in the order of the rows.
    pub(crate) residuals: Vec<f64>,
    /// Diagonal of the inverse of `X' X`.
    pub(crate) inverse_diagonal: Vec<f64>,
}

impl Fit {
    /// Residual variance, where a degree of freedom is left.
    pub(crate) fn residual_variance(&self) -> Option<f64> {
        (self.degrees > 0).then(|| self.residual_squares / f64::from(self.degrees))
    }
}

/// The residuals of a candidate, each with the rounding errors of its products kept.
fn residuals(columns: &[&[f64]], coefficients: &[f64], y: &[f64]) -> Vec<f64> {
    let mut sums: Vec<Sum> = y.iter().map(|value| core::iter::once(*value).collect()).collect();
    for (column, coefficient) in columns.iter().zip(coefficients) {
        for (sum, x) in sums.iter_mut().zip(*column) {
            sum.add_product(-coefficient, *x);
        }
    }
    sums.into_iter().map(Sum::value).collect()
}

fn scales(columns: &[&[f64]]) -> Vec<f64> {
    columns.iter().map(|column| column.iter().fold(0.0, |size, x| larger(size, fabs(*x)))).collect()
}

/// Fits `y` as a sum of the columns (put a column of ones first for an intercept).
///
/// Orthogonal factorisation of the scaled columns, then two rounds of refinement with compensated residuals.
///
/// # Errors
/// `not_enough_data` with fewer rows than columns or none; `wrong_length` where lengths differ;
/// `not_identified` where the columns repeat each other; `not_finite` where the sums overflow.
pub(crate) fn least_squares(columns: &[&[f64]], y: &[f64]) -> Result<Fit, Error> {
    const REFINEMENTS: u32 = 2;
    if let Some(odd) = columns.iter().find(|column| column.len() != y.len()) {
        return Err(Error::new(Code::WrongLength, "columns", odd.len(), Allowed::rule("as many as y has")));
    }
    if columns.is_empty() || y.len() < columns.len() {
        return Err(Error::new(Code::NotEnoughData, "y", y.len(), Allowed::rule("a row for each column")));
    }
    let scales = scales(columns);
    if scales.iter().any(|scale| *scale <= 0.0) {
        return Err(Error::plain(Code::NotIdentified, "columns"));
    }
    let scaled =
        columns.iter().zip(&scales).map(|(column, scale)| column.iter().map(|x| x / scale).collect());
    let qr = Qr::new(scaled.collect())?;
    let mut coefficients: Vec<f64> = alloc::vec![0.0; columns.len()];
    for _ in 0..=REFINEMENTS {
        let step = qr.solve(residuals(columns, &coefficients, y));
        for ((coefficient, step), scale) in coefficients.iter_mut().zip(step).zip(&scales) {
            *coefficient += step / scale;
        }
    }
    let residuals = residuals(columns, &coefficients, y);
    let inverse_diagonal: Vec<f64> =
        qr.inverse_diagonal().iter().zip(&scales).map(|(entry, scale)| entry / (scale * scale)).collect();
    finish(coefficients, residuals, inverse_diagonal)
}

fn finish(coefficients: Vec<f64>, residuals: Vec<f64>, inverse_diagonal: Vec<f64>) -> Result<Fit, Error> {
    let residual_squares = super::finite("y", sum(residuals.iter().map(|residual| residual * residual)))?;
    for coefficient in &coefficients {
        super::finite("coefficient", *coefficient)?;
    }
    let degrees = (residuals.len() - coefficients.len()) as u32;
    let standard_errors = if degrees == 0 {
        Vec::new()
    } else {
        let variance = residual_squares / f64::from(degrees);
        inverse_diagonal.iter().map(|entry| sqrt(variance * entry)).collect()
    };
    Ok(Fit { coefficients, standard_errors, residual_squares, degrees, residuals, inverse_diagonal })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(got: f64, expected: f64, digits: f64) {
        assert!((got / expected - 1.0).abs() < libm::pow(10.0, -digits), "{got} instead of {expected}");
    }

    /// Rows of the Longley set: response, then six predictors.
    const LONGLEY: [[f64; 7]; 16] = [
        [60323.0, 83.0, 234_289.0, 2356.0, 1590.0, 107_608.0, 1947.0],
        [61122.0, 88.5, 259_426.0, 2325.0, 1456.0, 108_632.0, 1948.0],
        [60171.0, 88.2, 258_054.0, 3682.0, 1616.0, 109_773.0, 1949.0],
        [61187.0, 89.5, 284_599.0, 3351.0, 1650.0, 110_929.0, 1950.0],
        [63221.0, 96.2, 328_975.0, 2099.0, 3099.0, 112_075.0, 1951.0],
        [63639.0, 98.1, 346_999.0, 1932.0, 3594.0, 113_270.0, 1952.0],
        [64989.0, 99.0, 365_385.0, 1870.0, 3547.0, 115_094.0, 1953.0],
        [63761.0, 100.0, 363_112.0, 3578.0, 3350.0, 116_219.0, 1954.0],
        [66019.0, 101.2, 397_469.0, 2904.0, 3048.0, 117_388.0, 1955.0],
        [67857.0, 104.6, 419_180.0, 2822.0, 2857.0, 118_734.0, 1956.0],
        [68169.0, 108.4, 442_769.0, 2936.0, 2798.0, 120_445.0, 1957.0],
        [66513.0, 110.8, 444_546.0, 4681.0, 2637.0, 121_950.0, 1958.0],
        [68655.0, 112.6, 482_704.0, 3813.0, 2552.0, 123_366.0, 1959.0],
        [69564.0, 114.2, 502_601.0, 3931.0, 2514.0, 125_368.0, 1960.0],
        [69331.0, 115.7, 518_173.0, 4806.0, 2572.0, 127_852.0, 1961.0],
        [70551.0, 116.9, 554_894.0, 4007.0, 2827.0, 130_081.0, 1962.0],
    ];

    // Source: NIST Statistical Reference Datasets, Longley.
    #[test]
    fn certified_longley() {
        let y: Vec<f64> = LONGLEY.iter().map(|row| row[0]).collect();
        let ones = alloc::vec![1.0; y.len()];
        let predictors: Vec<Vec<f64>> =
            (1..7).map(|at| LONGLEY.iter().map(|row| row[at]).collect()).collect();
        let columns: Vec<&[f64]> =
            core::iter::once(ones.as_slice()).chain(predictors.iter().map(Vec::as_slice)).collect();
        let fit = least_squares(&columns, &y).unwrap();
        let expected = [
            -3_482_258.634_595_82,
            15.061_872_271_373_3,
            -0.358_191_792_925_91E-01,
            -2.020_229_803_816_83,
            -1.033_226_867_173_59,
            -0.511_041_056_535_807E-01,
            1_829.151_464_613_55,
        ];
        let spread = [
            890_420.383_607_373,
            84.914_925_774_766_9,
            0.334_910_077_722_432E-01,
            0.488_399_681_651_699,
            0.214_274_163_161_675,
            0.226_073_200_069_370,
            455.478_499_142_212,
        ];
        for (got, expected) in fit.coefficients.iter().zip(expected) {
            close(*got, expected, 11.5);
        }
        for (got, expected) in fit.standard_errors.iter().zip(spread) {
            close(*got, expected, 9.0);
        }
        close(fit.residual_squares, 836_424.055_505_915, 11.0);
    }

    // Source: NIST Statistical Reference Datasets, Wampler1.
    #[test]
    fn certified_wampler() {
        let x: Vec<f64> = (0..21).map(f64::from).collect();
        let powers: Vec<Vec<f64>> =
            (0..6).map(|k| x.iter().map(|x| libm::pow(*x, f64::from(k))).collect()).collect();
        let y: Vec<f64> = (0..21).map(|at| powers.iter().map(|power| power[at]).sum()).collect();
        let columns: Vec<&[f64]> = powers.iter().map(Vec::as_slice).collect();
        let fit = least_squares(&columns, &y).unwrap();
        for coefficient in &fit.coefficients {
            close(*coefficient, 1.0, 13.0);
        }
        assert!(fit.residual_squares < 1e-15);
    }

    #[test]
    fn refuses_what_does_not_determine_an_answer() {
        let x = [1.0, 2.0, 3.0];
        assert_eq!(least_squares(&[&x, &x], &x).unwrap_err().code(), Code::NotIdentified);
        assert_eq!(least_squares(&[], &x).unwrap_err().code(), Code::NotEnoughData);
        assert_eq!(least_squares(&[&x[..2]], &x).unwrap_err().code(), Code::WrongLength);
        assert_eq!(least_squares(&[&[0.0; 3]], &x).unwrap_err().code(), Code::NotIdentified);
        let exact = least_squares(&[&[1.0, 1.0], &[1.0, 2.0]], &[3.0, 5.0]).unwrap();
        assert!(exact.standard_errors.is_empty() && exact.residual_variance().is_none());
    }
}
