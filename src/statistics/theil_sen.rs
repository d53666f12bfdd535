//! A line that a gross outlier cannot turn.

use alloc::vec::Vec;

use super::domain::open_unit;
use super::regression::pairs;
use super::robust::{median_of, quantile_of_sorted, sorted};
use crate::error::{Code, Error};
use crate::numeric::normal::normal_quantile;
use crate::numeric::{fabs, finite, round, sqrt};
use crate::quantity::Interval;
use crate::source::{Source, formula, rows};

const SEN_1968: Source = Source {
    id: "sen-1968",
    citation: "Sen PK. Estimates of the regression coefficient based on Kendall's tau. J Am Stat Assoc 63:1379-1389, 1968",
    doi: None,
};

/// Most points: their number of pairs grows with the square.
const MOST_POINTS: usize = 1000;

/// A line through the middle of all pairs.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RobustLine {
    /// Median of all pairwise slopes.
    pub slope: f64,
    /// Interval of the slope.
    pub slope_interval: Interval,
    /// Median of `y` less slope times median of `x`.
    pub intercept: f64,
    /// Median of `y - slope x`.
    pub joint_intercept: f64,
}

fn pairwise_slopes(x: &[f64], y: &[f64]) -> Vec<f64> {
    let points: Vec<(f64, f64)> = x.iter().copied().zip(y.iter().copied()).collect();
    let mut slopes = Vec::new();
    for (at, (x1, y1)) in points.iter().enumerate() {
        for (x2, y2) in points.iter().skip(at + 1) {
            let run = x2 - x1;
            if fabs(run) > 0.0 {
                slopes.push((y2 - y1) / run);
            }
        }
    }
    sorted(&slopes)
}

/// What ties take from the variance of the concordance count: `k (k-1) (2k+5)` for each group of `k` equals.
fn tie_term(values: &[f64]) -> f64 {
    let sorted = sorted(values);
    let groups = sorted.chunk_by(|a, b| a.total_cmp(b).is_eq());
    groups.map(|group| group.len() as f64).map(|k| k * (k - 1.0) * (2.0 * k + 5.0)).sum()
}

/// Rounds halves to even, as the reference library does.
fn half_to_even(value: f64) -> f64 {
    let rounded = round(value);
    let is_half = fabs(value - crate::numeric::floor(value) - 0.5) <= 0.0;
    if is_half { 2.0 * round(value / 2.0) } else { rounded }
}

fn slope_interval(slopes: &[f64], x: &[f64], y: &[f64], level: f64) -> Result<Interval, Error> {
    let n = x.len() as f64;
    let variance = (n * (n - 1.0) * (2.0 * n + 5.0) - tie_term(x) - tie_term(y)) / 18.0;
    let reach = -normal_quantile(0.5 * (1.0 - level)) * sqrt(crate::numeric::larger(variance, 0.0));
    let pairs = slopes.len() as f64;
    let last = slopes.len().saturating_sub(1);
    let high = (half_to_even((pairs + reach) / 2.0) as usize).min(last);
    let low = (half_to_even((pairs - reach) / 2.0) - 1.0) as usize;
    match (slopes.get(low), slopes.get(high)) {
        (Some(low), Some(high)) => Interval::new(*low, *high, level),
        _ => Err(Error::plain(Code::NotEnoughData, "x")),
    }
}

formula! {
    "statistics.robust_line",
    /// Which line follows most of the points, whatever a few of them do?
    ///
    /// # Formula
    /// Slope: median of `(y_j - y_i) / (x_j - x_i)` over all pairs with different `x`. Its interval: the sorted
    /// slopes at `(N -+ z s)/2`, `s^2 = (n(n-1)(2n+5) - ties)/18`, `N` the number of slopes.
    ///
    /// # Domain
    /// 2 to 1000 points, not all at one `x`. Up to 29 % of the points may be wrong.
    ///
    /// # Errors
    /// `not_enough_data`, `wrong_length`, `not_identified` where all `x` are equal, `out_of_range` above 1000
    /// points, beyond 1e100, or for a level at or outside 0 and 1; `not_finite`.
    ///
    /// # Source
    /// Theil 1950; Sen 1968 (row `statistics.robust_line`).
    ///
    /// # Examples
    /// ```
    /// let line = bismar::statistics::robust_line(
    ///     &[1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0],
    ///     &[100.0, 101.5, 99.0, 103.0, 102.5, 120.0, 105.5],
    ///     0.95,
    /// )?;
    /// assert_eq!(line.slope, 1.0); // least squares would say 2.04
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn robust_line(x: &[f64], y: &[f64], level: f64) -> Result<RobustLine, Error> {
        pairs(x, y, 2)?;
        open_unit("level", level)?;
        if x.len() > MOST_POINTS {
            return Err(Error::range(Code::OutOfRange, "x", x.len(), 2.0, MOST_POINTS as f64, "points"));
        }
        let slopes = pairwise_slopes(x, y);
        let slope = quantile_of_sorted(&slopes, 0.5).ok_or_else(|| Error::plain(Code::NotIdentified, "x"))?;
        let offsets: Vec<f64> = x.iter().zip(y).map(|(x, y)| y - slope * x).collect();
        let middle = |values: &[f64]| median_of(values).ok_or_else(|| Error::plain(Code::NotEnoughData, "x"));
        Ok(RobustLine {
            slope: finite("slope", slope)?,
            slope_interval: slope_interval(&slopes, x, y, level)?,
            intercept: finite("intercept", middle(y)? - slope * middle(x)?)?,
            joint_intercept: finite("joint_intercept", middle(&offsets)?)?,
        })
    }
    source: SEN_1968, place: "p 1379-1389", standing: Published, seen: Memory,
    domain: "2 to 1000 points; breakdown 29.3 %",
}

rows![robust_line];
