//! What is believed of a rate after some trials.

use super::domain::{counts, open_unit, unit};
use crate::error::{Code, Error};
use crate::numeric::beta::{beta_quantile, beta_upper};
use crate::numeric::sqrt;
use crate::source::{OURS, Source, default_of, formula, rows};

const GELMAN_2013: Source = Source {
    id: "gelman-2013",
    citation: "Gelman A, Carlin JB, Stern HS, Dunson DB, Vehtari A, Rubin DB. Bayesian Data Analysis, 3rd ed., 2013",
    doi: None,
};

/// What is believed of a rate before the trials, as a Beta distribution.
///
/// Invariant: both weights above 0 and at most 1,000,000.
///
/// ```
/// use bismar::statistics::BetaPrior;
///
/// assert_eq!(BetaPrior::default(), BetaPrior::UNIFORM);
/// assert!(BetaPrior::new(0.0, 1.0).is_err());
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct BetaPrior {
    successes: f64,
    failures: f64,
}

impl BetaPrior {
    /// Every rate equally likely: one imagined success, one imagined failure.
    pub const UNIFORM: BetaPrior = BetaPrior { successes: 1.0, failures: 1.0 };
    /// Jeffreys' prior: half an imagined trial of each kind.
    pub const JEFFREYS: BetaPrior = BetaPrior { successes: 0.5, failures: 0.5 };

    /// A prior worth so many imagined successes and failures.
    ///
    /// # Errors
    /// `out_of_range` at or below 0, or above 1,000,000.
    pub fn new(successes: f64, failures: f64) -> Result<BetaPrior, Error> {
        let weight = |field, value: f64| {
            let value = crate::numeric::within(Code::OutOfRange, field, value, 0.0, 1e6, "imagined trials")?;
            if value > 0.0 {
                Ok(value)
            } else {
                Err(Error::range(Code::OutOfRange, field, value, 0.0, 1e6, "imagined trials, above 0"))
            }
        };
        Ok(BetaPrior { successes: weight("successes", successes)?, failures: weight("failures", failures)? })
    }

    /// Weight of the imagined successes.
    #[must_use]
    pub const fn successes(&self) -> f64 {
        self.successes
    }

    /// Weight of the imagined failures.
    #[must_use]
    pub const fn failures(&self) -> f64 {
        self.failures
    }

    /// The two weights after real trials.
    fn updated(&self, successes: u32, trials: u32) -> Result<(f64, f64), Error> {
        let (x, n) = if trials == 0 && successes == 0 { (0.0, 0.0) } else { counts(successes, trials)? };
        Ok((self.successes + x, self.failures + (n - x)))
    }
}

impl Default for BetaPrior {
    fn default() -> BetaPrior {
        BetaPrior::UNIFORM
    }
}

default_of! {
    "statistics.beta_prior_default",
    /// What is believed of a rate before the trials where a caller names nothing: every rate equally likely.
    beta_prior_default: BetaPrior;
    source: OURS, place: "the choice among the usual priors", standing: OurChoice, seen: NotApplicable,
}

#[cfg(feature = "serde")]
mod wire {
    use super::BetaPrior;
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "BetaPrior")]
    pub(super) struct Wire {
        successes: f64,
        failures: f64,
    }

    impl<'de> Deserialize<'de> for BetaPrior {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<BetaPrior, D::Error> {
            let wire = Wire::deserialize(from)?;
            BetaPrior::new(wire.successes, wire.failures).map_err(de::Error::custom)
        }
    }
}

/// What is believed of a rate after the trials.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct BetaPosterior {
    /// Weight of successes, imagined and real.
    pub successes: f64,
    /// Weight of failures, imagined and real.
    pub failures: f64,
    /// Mean of the rate: also the probability that the next trial succeeds.
    pub mean: f64,
    /// Standard deviation of the rate.
    pub standard_deviation: f64,
}

formula! {
    "statistics.beta_posterior",
    /// What is believed of a rate after so many successes out of so many?
    ///
    /// # Formula
    /// Beta(a, b) becomes Beta(A, B) with `A = a + x`, `B = b + n - x`; mean `A/(A+B)`, variance
    /// `AB / ((A+B)^2 (A+B+1))`.
    ///
    /// # Domain
    /// Independent trials at a constant rate. No trials at all gives the prior back.
    ///
    /// # Errors
    /// `successes_exceed_trials`.
    ///
    /// # Source
    /// Gelman et al. 2013, chapter 2 (row `statistics.beta_posterior`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{BetaPrior, beta_posterior};
    ///
    /// let posterior = beta_posterior(BetaPrior::UNIFORM, 8, 10)?;
    /// assert_eq!(posterior.mean, 0.75);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn beta_posterior(prior: BetaPrior, successes: u32, trials: u32) -> Result<BetaPosterior, Error> {
        let (a, b) = prior.updated(successes, trials)?;
        let total = a + b;
        let mean = a / total;
        let standard_deviation = sqrt(mean * (b / total) / (total + 1.0));
        Ok(BetaPosterior { successes: a, failures: b, mean, standard_deviation })
    }
    source: GELMAN_2013, place: "chapter 2", standing: Published, seen: Memory,
    domain: "independent trials at a constant rate",
}

formula! {
    "statistics.probability_rate_at_least",
    /// How likely is it that the true rate is at least this high?
    ///
    /// # Formula
    /// `1 - I_p(a + x, b + n - x)`, `I` the regularised incomplete beta integral. With the uniform prior and all
    /// successes, `1 - p^(n+1)`.
    ///
    /// # Domain
    /// As [`beta_posterior`].
    ///
    /// # Errors
    /// `successes_exceed_trials`, `out_of_range` for a rate outside 0 to 1.
    ///
    /// # Source
    /// Gelman et al. 2013, chapter 2 (row `statistics.probability_rate_at_least`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{BetaPrior, probability_rate_at_least};
    ///
    /// let probability = probability_rate_at_least(BetaPrior::UNIFORM, 5, 5, 0.8)?;
    /// assert!((probability - 0.737856).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn probability_rate_at_least(prior: BetaPrior, successes: u32, trials: u32, rate: f64) -> Result<f64, Error> {
        let (a, b) = prior.updated(successes, trials)?;
        Ok(crate::numeric::tidy(beta_upper(a, b, unit("rate", rate)?)?))
    }
    source: GELMAN_2013, place: "chapter 2", standing: Published, seen: Memory,
    domain: "independent trials at a constant rate",
}

formula! {
    "statistics.rate_quantile",
    /// Below which rate does the true one lie with this probability?
    ///
    /// # Formula
    /// The quantile of Beta(a + x, b + n - x).
    ///
    /// # Domain
    /// As [`beta_posterior`].
    ///
    /// # Errors
    /// `successes_exceed_trials`, `out_of_range` for a probability at or outside 0 and 1.
    ///
    /// # Source
    /// Gelman et al. 2013, chapter 2 (row `statistics.rate_quantile`).
    ///
    /// # Examples
    /// ```
    /// use bismar::statistics::{BetaPrior, rate_quantile};
    ///
    /// let low = rate_quantile(BetaPrior::UNIFORM, 28, 28, 0.05)?;
    /// assert!((low - 0.901855372323).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn rate_quantile(prior: BetaPrior, successes: u32, trials: u32, probability: f64) -> Result<f64, Error> {
        let (a, b) = prior.updated(successes, trials)?;
        let p = open_unit("probability", probability)?;
        Ok(beta_quantile(a, b, p, 1.0 - p)?.0)
    }
    source: GELMAN_2013, place: "chapter 2", standing: Published, seen: Memory,
    domain: "independent trials at a constant rate",
}

rows![beta_posterior, probability_rate_at_least, rate_quantile, beta_prior_default];
