//! How much more goes on the forgiving variant than on the strict one, for this lifter?

use crate::error::{Code, Error};
use crate::numeric::normal::normal_reach;
use crate::numeric::{exp, larger, ln, sqrt};
use crate::quantity::Interval;
use crate::source::{OURS, Source, constant, formula, rows};

const SWINTON_2011: Source = Source {
    id: "swinton-2011",
    citation: "Swinton PA, Stewart A, Agouris I, Keogh JWL, Lloyd R. A biomechanical analysis of straight and hexagonal barbell deadlifts using submaximal loads. J Strength Cond Res 25:2000-2009, 2011",
    doi: Some("10.1519/JSC.0b013e3181e73f87"),
};

constant! {
    "condition.hex_to_straight_ratio",
    /// Hex bar over straight bar one-repetition maximum: 265 kg over 245 kg.
    pub const HEX_TO_STRAIGHT_RATIO: f64 = 265.0 / 245.0;
    source: SWINTON_2011, place: "265 over 245 kg, both in the abstract", standing: Derived, seen: NotApplicable,
    population: "19 male powerlifters",
}

/// What is believed of a ratio before the lifter's own data: 95 % between two ends, on a logarithmic scale.
///
/// Invariant: `0 < low < high`, both at most 10.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct RatioPrior {
    low: f64,
    high: f64,
}

impl RatioPrior {
    /// Hex bar over straight bar: 0.95 to 1.25, wide around the published 1.06 to 1.08 of young strong lifters.
    pub const HEX_OVER_STRAIGHT: RatioPrior = RatioPrior { low: 0.95, high: 1.25 };

    /// A prior with 95 % between the two ends.
    ///
    /// # Errors
    /// `out_of_range` at or below 0, above 10, or where `low` is not below `high`.
    pub fn new(low: f64, high: f64) -> Result<RatioPrior, Error> {
        let low = crate::numeric::within(Code::OutOfRange, "low", low, 0.01, 10.0, "")?;
        let high = crate::numeric::within(Code::OutOfRange, "high", high, 0.01, 10.0, "")?;
        if low < high {
            Ok(RatioPrior { low, high })
        } else {
            Err(Error::range(Code::OutOfRange, "low", low, 0.01, high, "(below high)"))
        }
    }

    /// Mean and variance of the logarithm.
    fn log_normal(self) -> (f64, f64) {
        let (low, high) = (ln(self.low), ln(self.high));
        let spread = (high - low) / (2.0 * normal_reach(0.95));
        (0.5 * (low + high), spread * spread)
    }
}

#[cfg(feature = "serde")]
mod wire {
    use super::RatioPrior;
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "RatioPrior")]
    pub(super) struct Wire {
        low: f64,
        high: f64,
    }

    impl<'de> Deserialize<'de> for RatioPrior {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<RatioPrior, D::Error> {
            let wire = Wire::deserialize(from)?;
            RatioPrior::new(wire.low, wire.high).map_err(de::Error::custom)
        }
    }
}

/// Estimates of both variants from the same days or weeks, in kg with standard errors.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct PairedEstimate {
    /// The strict variant.
    pub strict: f64,
    /// Its standard error.
    pub strict_error: f64,
    /// The forgiving variant.
    pub forgiving: f64,
    /// Its standard error.
    pub forgiving_error: f64,
}

/// Forgiving over strict.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct VariantRatio {
    /// The ratio most believed.
    pub ratio: f64,
    /// Its interval.
    pub interval: Interval,
    /// How much of it is the lifter's own: 0 is the prior alone, 1 the own data alone.
    pub own_weight: f64,
    /// Pairs used.
    pub pairs: u32,
}

/// Log ratio of one pair and its variance.
fn log_ratio(pair: &PairedEstimate) -> Result<(f64, f64), Error> {
    let range = |field, value, low| crate::numeric::within(Code::OutOfRange, field, value, low, 2000.0, "kg");
    let strict = range("strict", pair.strict, 0.1)?;
    let forgiving = range("forgiving", pair.forgiving, 0.1)?;
    let strict_part = range("strict_error", pair.strict_error, 0.001)? / strict;
    let forgiving_part = range("forgiving_error", pair.forgiving_error, 0.001)? / forgiving;
    Ok((ln(forgiving / strict), strict_part * strict_part + forgiving_part * forgiving_part))
}

/// Mean and variance over the pairs; scatter beyond the stated errors widens it (never narrows).
fn pooled(pairs: &[(f64, f64)]) -> (f64, f64) {
    let weight: f64 = pairs.iter().map(|(_, variance)| 1.0 / variance).sum();
    let mean = pairs.iter().map(|(value, variance)| value / variance).sum::<f64>() / weight;
    let scatter: f64 = pairs.iter().map(|(value, variance)| (value - mean) * (value - mean) / variance).sum();
    let excess = if pairs.len() > 1 { scatter / (pairs.len() as f64 - 1.0) } else { 1.0 };
    (mean, larger(excess, 1.0) / weight)
}

/// Most pairs of one call.
const MOST_PAIRS: usize = 10_000;

formula! {
    "condition.variant_ratio",
    /// How much does this lifter lift on the forgiving variant for each kg on the strict one?
    ///
    /// # Formula
    /// Logarithm of forgiving over strict, pairs weighted by their variances (widened by their scatter), then weighted
    /// against the prior: `m = (m0/v0 + x/v) / (1/v0 + 1/v)`.
    ///
    /// # Domain
    /// Pairs from the same days or weeks. Without pairs it is the prior. Never a reason to raise a load by itself.
    ///
    /// # Errors
    /// `out_of_range` for an estimate, an error or the level outside its range, or more than 10,000 pairs; `not_finite`.
    ///
    /// # Source
    /// Shrinkage of the own ratio to a published one; the prior's width is this project's choice (row
    /// `condition.variant_ratio`).
    ///
    /// # Examples
    /// ```
    /// use bismar::condition::{RatioPrior, variant_ratio};
    ///
    /// let belief = RatioPrior::new(0.9, 2.5)?;
    /// let found = variant_ratio(&[], belief, 0.95)?;
    /// assert!((found.interval.low() - 0.9).abs() < 1e-9 && found.own_weight == 0.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn variant_ratio(pairs: &[PairedEstimate], prior: RatioPrior, level: f64) -> Result<VariantRatio, Error> {
        let most = MOST_PAIRS as f64;
        crate::numeric::within(Code::OutOfRange, "pairs", pairs.len() as f64, 0.0, most, "pairs")?;
        crate::statistics::domain::open_unit("level", level)?;
        let logs = pairs.iter().map(log_ratio).collect::<Result<alloc::vec::Vec<_>, Error>>()?;
        let (prior_mean, prior_variance) = prior.log_normal();
        let (mean, variance, own_weight) = if logs.is_empty() {
            (prior_mean, prior_variance, 0.0)
        } else {
            let (own, own_variance) = pooled(&logs);
            let weight = prior_variance / (prior_variance + own_variance);
            (prior_mean + weight * (own - prior_mean), weight * own_variance, weight)
        };
        let half = normal_reach(level) * sqrt(variance);
        Ok(VariantRatio {
            ratio: crate::numeric::finite("pairs", exp(mean))?,
            interval: Interval::new(exp(mean - half), exp(mean + half), level)?,
            own_weight,
            pairs: logs.len() as u32,
        })
    }
    source: OURS, place: "shrinkage to the prior", standing: OurChoice, seen: NotApplicable,
    domain: "a strict and a forgiving variant of one lift",
}

rows![HEX_TO_STRAIGHT_RATIO, variant_ratio];
