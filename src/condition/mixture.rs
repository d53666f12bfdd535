//! Averages over what is not known: how much the level wanders, and how far the standard errors can be believed.

use alloc::vec::Vec;

use crate::error::Error;
use crate::numeric::normal::{normal_cdf, normal_reach};
use crate::numeric::search::root;
use crate::numeric::{exp, larger, smaller, sqrt};
use crate::quantity::Interval;

/// One possibility: its log weight, and a normal answer under it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Possibility {
    pub(super) log_weight: f64,
    pub(super) mean: f64,
    pub(super) variance: f64,
}

/// Weights that add to 1.
fn weights(possibilities: &[Possibility]) -> Vec<f64> {
    let top = possibilities.iter().map(|one| one.log_weight).fold(f64::MIN, larger);
    let raw: Vec<f64> = possibilities.iter().map(|one| exp(one.log_weight - top)).collect();
    let total: f64 = raw.iter().sum();
    raw.into_iter().map(|weight| weight / total).collect()
}

/// Mean of the mixture.
pub(super) fn mean(possibilities: &[Possibility]) -> f64 {
    weights(possibilities).iter().zip(possibilities).map(|(weight, one)| weight * one.mean).sum()
}

/// The point below which the mixture lies with probability `p`.
fn quantile(possibilities: &[Possibility], weights: &[f64], p: f64) -> Result<f64, Error> {
    let below = |x: f64| {
        let part =
            |(weight, one): (&f64, &Possibility)| weight * normal_cdf((x - one.mean) / sqrt(one.variance));
        Ok(weights.iter().zip(possibilities).map(part).sum::<f64>() - p)
    };
    // Each part's own quantile; the mixture's lies between the outermost.
    let z = normal_reach(1.0 - 2.0 * smaller(p, 1.0 - p)) * if p < 0.5 { -1.0 } else { 1.0 };
    let ends = possibilities.iter().map(|one| one.mean + z * sqrt(one.variance));
    let (low, high) =
        ends.fold((f64::MAX, f64::MIN), |(low, high), end| (smaller(low, end), larger(high, end)));
    let margin = 1e-9 * (1.0 + larger(crate::numeric::fabs(low), crate::numeric::fabs(high)));
    root(below, low - margin, high + margin, "level")
}

/// Equal-tailed interval of the mixture.
pub(super) fn interval(possibilities: &[Possibility], level: f64) -> Result<Interval, Error> {
    let weights = weights(possibilities);
    let tail = 0.5 * (1.0 - level);
    Interval::new(
        quantile(possibilities, &weights, tail)?,
        quantile(possibilities, &weights, 1.0 - tail)?,
        level,
    )
}

/// Probability that the answer lies above 0.
pub(super) fn above_zero(possibilities: &[Possibility]) -> f64 {
    let part = |(weight, one): (&f64, &Possibility)| weight * normal_cdf(one.mean / sqrt(one.variance));
    let sum: f64 = weights(possibilities).iter().zip(possibilities).map(part).sum();
    larger(smaller(sum, 1.0), 0.0)
}
