//! How long until a cumulative sum cries wolf, and how soon it sees? Average run lengths.

use alloc::vec::Vec;

use super::cusum::CusumDesign;
use super::run_length::{shift_of, solve, wanted};
use crate::error::{Code, Error};
use crate::numeric::normal::{normal_cdf, normal_pdf};
use crate::numeric::quadrature::gauss_legendre;
use crate::numeric::search::root;
use crate::numeric::{ceil, exp, fabs, finite, larger, ln, smaller};
use crate::source::{Source, formula, rows};

const LUCAS_CROSIER_1982: Source = Source {
    id: "lucas-crosier-1982",
    citation: "Lucas JM, Crosier RB. Fast initial response for CUSUM quality-control schemes: give your CUSUM a head start. Technometrics 24:199-205, 1982",
    doi: None,
};
const BROOK_EVANS_1972: Source = Source {
    id: "brook-evans-1972",
    citation: "Brook D, Evans DA. An approach to the probability distribution of CUSUM run length. Biometrika 59:539-549, 1972",
    doi: None,
};
const SIEGMUND_1985: Source = Source {
    id: "siegmund-1985",
    citation: "Siegmund D. Sequential Analysis: Tests and Confidence Intervals. Springer, 1985",
    doi: None,
};

/// One side of a cumulative sum.
///
/// Asking for the run length itself makes the equations singular where a side as good as never signals. A stretch
/// away from 0 is never singular: it ends at 0 or past the threshold, and both its length and the chance of the
/// latter are sums of what is positive.
struct Side {
    /// Signals for each value, from 0: one over the run length.
    rate: f64,
    /// Run length from the head start as a part of that from 0.
    from_head_start: f64,
}

fn one_side(design: CusumDesign, shift: f64) -> Result<Side, Error> {
    let count = smaller(ceil(16.0 + 4.0 * design.threshold), 200.0);
    let points = gauss_legendre(count as u32, 0.0, design.threshold);
    let slack = design.reference - shift;
    let kernel = |from: f64, to: f64| normal_pdf(to - from + slack);
    let past = |from: f64| normal_cdf(from - slack - design.threshold);
    let ends: Vec<f64> = points.iter().map(|(from, _)| past(*from)).collect();
    let stretches = solve(kernel, &points, &[alloc::vec![1.0; points.len()], ends])?;
    // The equation once more carries a solution from the points to any start.
    let carried = |first: f64, from: f64, solution: usize| -> f64 {
        let at = stretches.get(solution).map_or(&[][..], |values| values);
        first + points.iter().zip(at).map(|((to, part), value)| part * kernel(from, *to) * value).sum::<f64>()
    };
    let signals = |from: f64| carried(past(from), from, 1);
    let lasts = |from: f64| carried(1.0, from, 0);
    let rate = finite("threshold", signals(0.0) / lasts(0.0))?;
    let head = design.head_start;
    Ok(Side { rate, from_head_start: finite("head_start", 1.0 - signals(head) + lasts(head) * rate)? })
}

/// Run lengths above this are not resolved.
const MOST_KNOWN: f64 = 1e11;

/// Refused where the digits of the solution are gone.
fn known(length: f64) -> Result<f64, Error> {
    let length = if (0.0..=MOST_KNOWN).contains(&length) { length } else { f64::MAX };
    crate::numeric::within(Code::OutOfRange, "threshold", length, 0.0, MOST_KNOWN, "values between alarms")
}

/// Highest threshold that a run length is computed for; beyond it no alarm is ever seen.
const HIGHEST_THRESHOLD: f64 = 20.0;

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
    "statistics.cusum_run_length",
    /// How many values until a two-sided cumulative sum signals, on average, after a shift (or without one)?
    ///
    /// # Formula
    /// `(A L- + L+ B - L+ L-) / (L+ + L-)`: `L+`, `L-` run lengths of the two sides from 0, `A`, `B` from the head start,
    /// as in [`cusum_run_length_one_sided`]. Without a head start that is `1/L = 1/L+ + 1/L-`.
    ///
    /// # Domain
    /// Slack 0 to 3, threshold above 0 to 20, shift -10 to 10 standard deviations; independent normal values. Exact
    /// since one side stands at 0 whenever the other signals; a head start above half the threshold and the slack
    /// would break that and is refused.
    ///
    /// # Errors
    /// `out_of_range`, also where the answer passes 1e11 values; `not_finite`.
    ///
    /// # Source
    /// Lucas & Crosier 1982, table 1 (row `statistics.cusum_run_length`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{CusumDesign, cusum_run_length};
    ///
    /// let design = CusumDesign::STANDARD.with_threshold(4.0);
    /// assert!((cusum_run_length(design, 0.0)? - 168.0).abs() < 0.5);
    /// assert!((cusum_run_length(design, 1.0)? - 8.38).abs() < 0.005);
    /// let quick = design.with_head_start(2.0);
    /// assert!((cusum_run_length(quick, 0.0)? - 149.0).abs() < 0.5);
    /// assert!((cusum_run_length(quick, 1.0)? - 5.29).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cusum_run_length(design: CusumDesign, shift: f64) -> Result<f64, Error> {
        let (design, shift) = (cusum_domain(design)?, shift_of(shift)?);
        let most = design.threshold / 2.0 + design.reference;
        let unit = "standard deviations: half the threshold and the slack";
        crate::numeric::within(Code::OutOfRange, "head_start", design.head_start, 0.0, most, unit)?;
        let (up, down) = (one_side(design, shift)?, one_side(design, -shift)?);
        known((up.from_head_start + down.from_head_start - 1.0) / (up.rate + down.rate))
    }
    source: LUCAS_CROSIER_1982, place: "table 1", standing: Published, seen: Secondary,
    copies: "the documentation of one statistical package, with table numbers",
    domain: "independent normal values; head start up to half the threshold and the slack",
}

formula! {
    "statistics.cusum_run_length_one_sided",
    /// How many values until the upper side of a cumulative sum signals, on average, after a shift (or without one)?
    ///
    /// # Formula
    /// `L(u) = 1 + L(0) Phi(k - u) + integral of L(y) phi(y - u + k) dy` over 0 to the threshold, `k` slack less shift, from
    /// the head start; solved by Gauss-Legendre points as the length of a stretch away from 0 over the chance that it
    /// ends in a signal.
    ///
    /// # Domain
    /// Slack 0 to 3, threshold above 0 to 20, shift -10 to 10 standard deviations, above 0 towards the side; independent
    /// normal values.
    ///
    /// # Errors
    /// `out_of_range`, also where the answer passes 1e11 values; `not_finite`.
    ///
    /// # Source
    /// Brook & Evans 1972 (row `statistics.cusum_run_length_one_sided`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{CusumDesign, cusum_run_length_one_sided};
    ///
    /// let design = CusumDesign::STANDARD.with_threshold(3.0);
    /// assert!((cusum_run_length_one_sided(design, 0.0)? - 117.60).abs() < 0.005);
    /// assert!((cusum_run_length_one_sided(design, 1.5)? - 3.75).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cusum_run_length_one_sided(design: CusumDesign, shift: f64) -> Result<f64, Error> {
        let side = one_side(cusum_domain(design)?, shift_of(shift)?)?;
        known(side.from_head_start / side.rate)
    }
    source: BROOK_EVANS_1972, place: "table of average run lengths", standing: Published, seen: Secondary,
    copies: "the documentation of one statistical package, with table numbers",
    domain: "one side; independent normal values",
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
    pub fn cusum_run_length_siegmund(reference: f64, threshold: f64, shift: f64) -> Result<f64, Error> {
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
    pub fn cusum_threshold_for(reference: f64, run_length: f64) -> Result<f64, Error> {
        let reference = crate::numeric::within(Code::OutOfRange, "reference", reference, 0.1, 3.0, "")?;
        let target = ln(wanted(run_length)?);
        let excess = |threshold: f64| {
            let side = one_side(CusumDesign { reference, threshold, head_start: 0.0 }, 0.0)?;
            // A side that the digits no longer show to signal is far past any length that may be wanted.
            Ok(-ln(2.0 * larger(side.rate, 1.0 / MOST_KNOWN)) - target)
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

rows![cusum_run_length, cusum_run_length_one_sided, cusum_run_length_siegmund, cusum_threshold_for];
