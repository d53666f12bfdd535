//! How long between false alarms, and how soon a true one? Average run lengths of the charts.

use alloc::vec::Vec;

use super::cusum::CusumDesign;
use super::domain::{number, positive};
use super::ewma::weight_of;
use crate::error::{Code, Error};
use crate::numeric::normal::{normal_cdf, normal_pdf};
use crate::numeric::qr::Qr;
use crate::numeric::quadrature::gauss_legendre;
use crate::numeric::search::root;
use crate::numeric::{ceil, exp, fabs, finite, ln, smaller, sqrt};
use crate::source::{Source, formula, rows};

const LUCAS_SACCUCCI_1990: Source = Source {
    id: "lucas-saccucci-1990",
    citation: "Lucas JM, Saccucci MS. Exponentially weighted moving average control schemes: properties and enhancements. Technometrics 32:1-12, 1990",
    doi: None,
};
const MONTGOMERY: Source = Source {
    id: "montgomery",
    citation: "Montgomery DC. Introduction to Statistical Quality Control, chapter 9",
    doi: None,
};
const SIEGMUND_1985: Source = Source {
    id: "siegmund-1985",
    citation: "Siegmund D. Sequential Analysis: Tests and Confidence Intervals. Springer, 1985",
    doi: None,
};

/// Solves `L = 1 + K L` for the run length at each point of the state.
fn solve(
    kernel: impl Fn(f64, f64) -> f64,
    points: &[(f64, f64)],
    atom: Option<&dyn Fn(f64) -> f64>,
) -> Result<Vec<f64>, Error> {
    // Unknowns: the run length at 0 first (where there is an atom), then at the points.
    let mut columns: Vec<Vec<f64>> = Vec::new();
    let states: Vec<f64> = atom.iter().map(|_| 0.0).chain(points.iter().map(|(point, _)| *point)).collect();
    if let Some(atom) = atom {
        columns.push(states.iter().map(|from| -atom(*from)).collect());
    }
    for (to, weight) in points {
        columns.push(states.iter().map(|from| -weight * kernel(*from, *to)).collect());
    }
    for (row, column) in columns.iter_mut().enumerate() {
        if let Some(diagonal) = column.get_mut(row) {
            *diagonal += 1.0;
        }
    }
    Ok(Qr::new(columns)?.solve(alloc::vec![1.0; states.len()]))
}

/// Run length of a two-sided weighted chart from its target, by the integral equation.
fn ewma_exact(weight: f64, width: f64, shift: f64) -> Result<f64, Error> {
    let reach = width * sqrt(weight / (2.0 - weight));
    // A few points for each standard deviation of one step.
    let count = smaller(ceil(16.0 + 5.0 * reach / weight), 200.0);
    let points = gauss_legendre(count as u32, -reach, reach);
    let kernel = |from: f64, to: f64| normal_pdf((to - (1.0 - weight) * from) / weight - shift) / weight;
    let lengths = solve(kernel, &points, None)?;
    let start: f64 =
        points.iter().zip(&lengths).map(|((to, part), length)| part * kernel(0.0, *to) * length).sum();
    finite("width", 1.0 + start)
}

/// Run length of one side of a cumulative sum, by the integral equation.
fn cusum_exact(design: CusumDesign, shift: f64) -> Result<f64, Error> {
    let count = smaller(ceil(16.0 + 4.0 * design.threshold), 200.0);
    let points = gauss_legendre(count as u32, 0.0, design.threshold);
    let slack = design.reference - shift;
    let kernel = |from: f64, to: f64| normal_pdf(to - from + slack);
    let atom = |from: f64| normal_cdf(slack - from);
    let lengths = match solve(kernel, &points, Some(&atom)) {
        // A sum that as good as never leaves 0: the system is singular to the last digit.
        Err(error) if error.code() == Code::NotIdentified => return Ok(NEVER),
        other => other?,
    };
    let Some((at_zero, rest)) = lengths.split_first() else {
        return Err(Error::plain(Code::DidNotConverge, "threshold"));
    };
    let from = design.head_start;
    let inside: f64 =
        points.iter().zip(rest).map(|((to, part), length)| part * kernel(from, *to) * length).sum();
    let length = finite("threshold", 1.0 + at_zero * atom(from) + inside)?;
    // Past this the digits of the solution are gone; the other side decides anyway.
    Ok(if (0.0..=MOST_KNOWN).contains(&length) { length } else { NEVER })
}

/// Run lengths above this are not resolved.
const MOST_KNOWN: f64 = 1e11;
/// Stands for a side that does not signal.
const NEVER: f64 = 1e300;

/// Both sides together.
fn two_sided(up: f64, down: f64) -> f64 {
    1.0 / (1.0 / up + 1.0 / down)
}

/// Widest chart and threshold that a run length is computed for; beyond it no alarm is ever seen.
const WIDEST: f64 = 6.0;
const HIGHEST_THRESHOLD: f64 = 20.0;
/// Lightest weight: below it the integral equation wants too many points.
const LIGHTEST: f64 = 0.02;
/// Largest shift, in standard deviations.
const LARGEST_SHIFT: f64 = 10.0;

fn shift_of(shift: f64) -> Result<f64, Error> {
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

fn cusum_domain(design: CusumDesign) -> Result<CusumDesign, Error> {
    let design = design.checked()?;
    let high = HIGHEST_THRESHOLD;
    crate::numeric::within(
        Code::OutOfRange,
        "threshold",
        design.threshold,
        0.0,
        high,
        "standard deviations",
    )?;
    crate::numeric::within(Code::OutOfRange, "reference", design.reference, 0.0, 3.0, "standard deviations")?;
    Ok(design)
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
    pub fn ewma_run_length(weight: f64, width: f64, shift: f64) -> f64 {
        let (weight, width) = ewma_domain(weight, width)?;
        if weight >= 1.0 {
            return shewhart(width, shift_of(shift)?);
        }
        ewma_exact(weight, width, shift_of(shift)?)
    }
    source: LUCAS_SACCUCCI_1990, place: "table of run lengths", standing: Published, seen: Memory,
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
    pub fn shewhart_run_length(width: f64, shift: f64) -> f64 {
        shewhart(ewma_domain(1.0, width)?.1, shift_of(shift)?)
    }
    source: crate::source::ARITHMETIC, place: "normal tails", standing: Derived, seen: NotApplicable,
    domain: "independent normal values",
}

formula! {
    "statistics.cusum_run_length",
    /// How many values until a two-sided cumulative sum signals, on average, after a shift (or without one)?
    ///
    /// # Formula
    /// `1/L = 1/L+ + 1/L-`, each side from `L(u) = 1 + L(0) Phi(k - u) + integral of L(y) phi(y - u + k) dy` over 0 to the
    /// threshold, `k` slack less shift; solved by Gauss-Legendre points.
    ///
    /// # Domain
    /// Slack 0 to 3, threshold above 0 to 20, shift -10 to 10 standard deviations; independent normal values. With a
    /// head start the sum of both sides is an approximation.
    ///
    /// # Errors
    /// `out_of_range`, also where the answer passes 1e11 values; `not_finite`.
    ///
    /// # Source
    /// Montgomery, chapter 9 (row `statistics.cusum_run_length`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{CusumDesign, cusum_run_length};
    ///
    /// let design = CusumDesign { threshold: 4.0, ..CusumDesign::STANDARD };
    /// assert!((cusum_run_length(design, 0.0)? - 168.0).abs() < 0.5);
    /// assert!((cusum_run_length(design, 1.0)? - 8.38).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cusum_run_length(design: CusumDesign, shift: f64) -> f64 {
        let (design, shift) = (cusum_domain(design)?, shift_of(shift)?);
        let length = two_sided(cusum_exact(design, shift)?, cusum_exact(design, -shift)?);
        crate::numeric::within(Code::OutOfRange, "threshold", length, 0.0, MOST_KNOWN, "values between alarms")
    }
    source: MONTGOMERY, place: "chapter 9, table of run lengths", standing: Published, seen: Memory,
    domain: "independent normal values",
}

formula! {
    "statistics.cusum_run_length_siegmund",
    /// About how many values until one side of a cumulative sum signals, in closed form?
    ///
    /// # Formula
    /// `(exp(-2 D b) + 2 D b - 1) / (2 D^2)`, `D = shift - slack`, `b = threshold + 1.166`; `b^2` at `D = 0`.
    ///
    /// # Domain
    /// One side, no head start; within a few percent of the exact value.
    ///
    /// # Errors
    /// `out_of_range`, `not_finite`.
    ///
    /// # Source
    /// Siegmund 1985 (row `statistics.cusum_run_length_siegmund`).
    ///
    /// # Examples
    /// ```
    /// assert!((bismar::statistics::cusum_run_length_siegmund(0.5, 5.0, 0.0)? - 938.2).abs() < 0.05);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cusum_run_length_siegmund(reference: f64, threshold: f64, shift: f64) -> f64 {
        let design = cusum_domain(CusumDesign { reference, threshold, head_start: 0.0 })?;
        let apart = shift_of(shift)? - design.reference;
        let bound = design.threshold + 1.166;
        if fabs(apart) < 1e-6 {
            return Ok(bound * bound);
        }
        let twice = 2.0 * apart * bound;
        finite("threshold", (exp(-twice) + twice - 1.0) / (2.0 * apart * apart))
    }
    source: SIEGMUND_1985, place: "corrected diffusion approximation", standing: Published, seen: Memory,
    domain: "one side",
}

/// A run length to aim at: from 2 values to a million.
fn wanted(run_length: f64) -> Result<f64, Error> {
    let value = number("run_length", run_length)?;
    crate::numeric::within(Code::OutOfRange, "run_length", value, 2.0, 1e6, "values")
}

formula! {
    "statistics.cusum_threshold_for",
    /// Which threshold gives one false alarm in so many values, as the coach chooses?
    ///
    /// # Formula
    /// The threshold at which [`cusum_run_length`] without a shift equals the wanted length.
    ///
    /// # Domain
    /// Slack 0.1 to 3; 2 to 1,000,000 values between false alarms. "One a year" at three sessions a week is 156.
    ///
    /// # Errors
    /// `out_of_range`; `did_not_converge` where no threshold from 0.01 to 20 gives it.
    ///
    /// # Source
    /// Inverse of [`cusum_run_length`] (row `statistics.cusum_threshold_for`).
    ///
    /// # Examples
    /// ```
    /// let threshold = bismar::statistics::cusum_threshold_for(0.5, 370.0)?;
    /// assert!((threshold - 4.77).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cusum_threshold_for(reference: f64, run_length: f64) -> f64 {
        let reference = crate::numeric::within(Code::OutOfRange, "reference", reference, 0.1, 3.0, "")?;
        let target = ln(wanted(run_length)?);
        let excess = |threshold: f64| {
            let one_side = cusum_exact(CusumDesign { reference, threshold, head_start: 0.0 }, 0.0)?;
            Ok(ln(0.5 * one_side) - target)
        };
        // The run length grows about exponentially: look for the first whole threshold that is enough.
        let mut high = 0.5;
        while high < HIGHEST_THRESHOLD && excess(high)? < 0.0 {
            high += 0.5;
        }
        root(excess, if high > 0.5 { high - 0.5 } else { 0.01 }, high, "run_length")
    }
    source: crate::source::ARITHMETIC, place: "inverse of the run length", standing: Derived, seen: NotApplicable,
    domain: "independent normal values",
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
    pub fn ewma_width_for(weight: f64, run_length: f64) -> f64 {
        let (weight, _) = ewma_domain(weight, 3.0)?;
        let target = ln(wanted(run_length)?);
        root(|width| Ok(ln(ewma_run_length(weight, width, 0.0)?) - target), 0.1, WIDEST, "run_length")
    }
    source: crate::source::ARITHMETIC, place: "inverse of the run length", standing: Derived, seen: NotApplicable,
    domain: "independent normal values",
}

rows![
    ewma_run_length,
    shewhart_run_length,
    cusum_run_length,
    cusum_run_length_siegmund,
    cusum_threshold_for,
    ewma_width_for,
];
