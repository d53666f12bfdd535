//! How long between false alarms, and how soon a true one? Average run lengths of single values and weighted charts.

use alloc::vec::Vec;

use super::domain::{number, positive};
use super::ewma::weight_of;
use crate::error::{Code, Error};
use crate::numeric::normal::{normal_cdf, normal_pdf};
use crate::numeric::qr::Qr;
use crate::numeric::quadrature::gauss_legendre;
use crate::numeric::search::root;
use crate::numeric::{ceil, finite, ln, smaller, sqrt};
use crate::source::{Source, formula, rows};

const LUCAS_SACCUCCI_1990: Source = Source {
    id: "lucas-saccucci-1990",
    citation: "Lucas JM, Saccucci MS. Exponentially weighted moving average control schemes: properties and enhancements. Technometrics 32:1-12, 1990",
    doi: None,
};
/// Solves `L = f + K L` at each point of the state, for each `f`.
pub(super) fn solve(
    kernel: impl Fn(f64, f64) -> f64,
    points: &[(f64, f64)],
    sides: &[Vec<f64>],
) -> Result<Vec<Vec<f64>>, Error> {
    let mut columns: Vec<Vec<f64>> = points
        .iter()
        .map(|(to, weight)| points.iter().map(|(from, _)| -weight * kernel(*from, *to)).collect())
        .collect();
    for (row, column) in columns.iter_mut().enumerate() {
        if let Some(diagonal) = column.get_mut(row) {
            *diagonal += 1.0;
        }
    }
    let system = Qr::new(columns)?;
    Ok(sides.iter().map(|side| system.solve(side.clone())).collect())
}

/// Run length of a two-sided weighted chart from its target, by the integral equation.
fn ewma_exact(weight: f64, width: f64, shift: f64) -> Result<f64, Error> {
    let reach = width * sqrt(weight / (2.0 - weight));
    // A few points for each standard deviation of one step.
    let count = smaller(ceil(16.0 + 5.0 * reach / weight), 200.0);
    let points = gauss_legendre(count as u32, -reach, reach);
    let kernel = |from: f64, to: f64| normal_pdf((to - (1.0 - weight) * from) / weight - shift) / weight;
    let lengths = solve(kernel, &points, &[alloc::vec![1.0; points.len()]])?;
    let start: f64 = points
        .iter()
        .zip(lengths.iter().flatten())
        .map(|((to, part), length)| part * kernel(0.0, *to) * length)
        .sum();
    finite("width", 1.0 + start)
}

/// Widest chart that a run length is computed for; beyond it no alarm is ever seen.
const WIDEST: f64 = 6.0;
/// Lightest weight: below it the integral equation wants too many points.
const LIGHTEST: f64 = 0.02;
/// Largest shift, in standard deviations.
const LARGEST_SHIFT: f64 = 10.0;

pub(super) fn shift_of(shift: f64) -> Result<f64, Error> {
    crate::numeric::within(
        Code::OutOfRange,
        "shift",
        shift,
        -LARGEST_SHIFT,
        LARGEST_SHIFT,
        "standard deviations",
    )
}

fn ewma_domain(weight: f64, width: f64) -> Result<(f64, f64), Error> {
    let weight = crate::numeric::within(Code::OutOfRange, "weight", weight_of(weight)?, LIGHTEST, 1.0, "")?;
    let width = positive("width", width)?;
    Ok((
        weight,
        crate::numeric::within(Code::OutOfRange, "width", width, 0.0, WIDEST, "standard deviations")?,
    ))
}

formula! {
    "statistics.ewma_run_length",
    /// How many values until a weighted chart signals, on average, after a shift (or without one)?
    ///
    /// # Formula
    /// `L(u) = 1 + integral of L(y) phi((y - (1-w) u)/w - shift)/w dy` inside the long-run limits, from the target;
    /// solved by Gauss-Legendre points.
    ///
    /// # Domain
    /// Weight 0.02 to 1, width above 0 to 6, shift -10 to 10 standard deviations; normal values that do not resemble
    /// their neighbours.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Lucas & Saccucci 1990 (row `statistics.ewma_run_length`).
    ///
    /// # Examples
    /// ```
    /// let without_shift = bismar::statistics::ewma_run_length(0.2, 2.962, 0.0)?;
    /// assert!((without_shift - 500.0).abs() < 0.5);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn ewma_run_length(weight: f64, width: f64, shift: f64) -> Result<f64, Error> {
        let (weight, width) = ewma_domain(weight, width)?;
        if weight >= 1.0 {
            return shewhart(width, shift_of(shift)?);
        }
        ewma_exact(weight, width, shift_of(shift)?)
    }
    source: LUCAS_SACCUCCI_1990, place: "table of run lengths", standing: Published, seen: Secondary,
    copies: "the documentation of one statistical package, with table numbers",
    domain: "independent normal values",
}

/// Without memory every value stands alone.
fn shewhart(width: f64, shift: f64) -> Result<f64, Error> {
    finite("width", 1.0 / (normal_cdf(-width - shift) + normal_cdf(-width + shift)))
}

formula! {
    "statistics.shewhart_run_length",
    /// How many values until one lies beyond so many standard deviations, on average?
    ///
    /// # Formula
    /// `1 / (Phi(-k - shift) + Phi(-k + shift))`.
    ///
    /// # Domain
    /// Width above 0 to 6, shift -10 to 10 standard deviations; independent normal values.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Follows from the normal distribution (row `statistics.shewhart_run_length`).
    ///
    /// # Examples
    /// ```
    /// assert!((bismar::statistics::shewhart_run_length(3.0, 0.0)? - 370.3983).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn shewhart_run_length(width: f64, shift: f64) -> Result<f64, Error> {
        shewhart(ewma_domain(1.0, width)?.1, shift_of(shift)?)
    }
    source: crate::source::ARITHMETIC, place: "normal tails", standing: Derived, seen: NotApplicable,
    domain: "independent normal values",
}

/// A run length to aim at: from 2 values to a million.
pub(super) fn wanted(run_length: f64) -> Result<f64, Error> {
    let value = number("run_length", run_length)?;
    crate::numeric::within(Code::OutOfRange, "run_length", value, 2.0, 1e6, "values")
}

formula! {
    "statistics.ewma_width_for",
    /// Which width of a weighted chart gives one false alarm in so many values, as the coach chooses?
    ///
    /// # Formula
    /// The width at which [`ewma_run_length`] without a shift equals the wanted length.
    ///
    /// # Domain
    /// Weight 0.02 to 1; 2 to 1,000,000 values between false alarms.
    ///
    /// # Errors
    /// `out_of_range`; `did_not_converge` where no width from 0.1 to 6 gives it.
    ///
    /// # Source
    /// Inverse of [`ewma_run_length`] (row `statistics.ewma_width_for`).
    ///
    /// # Examples
    /// ```
    /// let width = bismar::statistics::ewma_width_for(0.2, 500.0)?;
    /// assert!((width - 2.962).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn ewma_width_for(weight: f64, run_length: f64) -> Result<f64, Error> {
        let (weight, _) = ewma_domain(weight, 3.0)?;
        let target = ln(wanted(run_length)?);
        root(|width| Ok(ln(ewma_run_length(weight, width, 0.0)?) - target), 0.1, WIDEST, "run_length")
    }
    source: crate::source::ARITHMETIC, place: "inverse of the run length", standing: Derived, seen: NotApplicable,
    domain: "independent normal values",
}

rows![ewma_run_length, shewhart_run_length, ewma_width_for];
