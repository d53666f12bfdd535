//! A sequential test: two rates to tell apart and two mistakes to keep rare.

use super::domain::open_unit;
use crate::error::{Allowed, Code, Error};
use crate::numeric::{ln, ln_1p};

/// Two fault rates to tell apart, and how often each mistake may happen.
///
/// Invariant: `0 < acceptable_rate < unacceptable_rate < 1`, both error rates above 0, their sum below 1.
///
/// ```
/// use bismar::statistics::SequentialTest;
///
/// let test = SequentialTest::new(0.01, 0.10, 0.05, 0.10)?;
/// assert_eq!(test.unacceptable_rate(), 0.10);
/// assert!(SequentialTest::new(0.10, 0.01, 0.05, 0.10).is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct SequentialTest {
    acceptable_rate: f64,
    unacceptable_rate: f64,
    false_rejection: f64,
    false_acceptance: f64,
}

impl SequentialTest {
    /// A test: reject at most `false_rejection` of the time where the fault rate is `acceptable_rate`, accept at
    /// most `false_acceptance` of the time where it is `unacceptable_rate`.
    ///
    /// # Errors
    /// `out_of_range` for a rate outside 0 to 1 (ends excluded), rates in the wrong order, or error rates that
    /// add to 1 or more.
    pub fn new(
        acceptable_rate: f64,
        unacceptable_rate: f64,
        false_rejection: f64,
        false_acceptance: f64,
    ) -> Result<SequentialTest, Error> {
        let acceptable_rate = open_unit("acceptable_rate", acceptable_rate)?;
        let unacceptable_rate = open_unit("unacceptable_rate", unacceptable_rate)?;
        let false_rejection = open_unit("false_rejection", false_rejection)?;
        let false_acceptance = open_unit("false_acceptance", false_acceptance)?;
        if unacceptable_rate <= acceptable_rate {
            let rule = Allowed::rule("above acceptable_rate");
            return Err(Error::new(Code::OutOfRange, "unacceptable_rate", unacceptable_rate, rule));
        }
        if false_rejection + false_acceptance >= 1.0 {
            let rule = Allowed::rule("together with false_rejection below 1");
            return Err(Error::new(Code::OutOfRange, "false_acceptance", false_acceptance, rule));
        }
        Ok(SequentialTest { acceptable_rate, unacceptable_rate, false_rejection, false_acceptance })
    }

    /// The fault rate that should be accepted.
    #[must_use]
    pub const fn acceptable_rate(&self) -> f64 {
        self.acceptable_rate
    }

    /// The fault rate that should be rejected.
    #[must_use]
    pub const fn unacceptable_rate(&self) -> f64 {
        self.unacceptable_rate
    }

    /// Probability of rejecting at the acceptable rate.
    #[must_use]
    pub const fn false_rejection(&self) -> f64 {
        self.false_rejection
    }

    /// Probability of accepting at the unacceptable rate.
    #[must_use]
    pub const fn false_acceptance(&self) -> f64 {
        self.false_acceptance
    }

    /// What a fault adds to the log likelihood ratio.
    pub(super) fn fault_weight(&self) -> f64 {
        ln(self.unacceptable_rate / self.acceptable_rate)
    }

    /// What a good repetition adds to the log likelihood ratio (below 0).
    pub(super) fn good_weight(&self) -> f64 {
        ln_1p(-self.unacceptable_rate) - ln_1p(-self.acceptable_rate)
    }

    /// Upper limit of the log likelihood ratio: reject at or above it.
    pub(super) fn reject_limit(&self) -> f64 {
        ln((1.0 - self.false_acceptance) / self.false_rejection)
    }

    /// Lower limit of the log likelihood ratio: accept at or below it.
    pub(super) fn accept_limit(&self) -> f64 {
        ln(self.false_acceptance / (1.0 - self.false_rejection))
    }
}

#[cfg(feature = "serde")]
mod wire {
    use super::SequentialTest;
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "SequentialTest")]
    pub(super) struct Wire {
        acceptable_rate: f64,
        unacceptable_rate: f64,
        false_rejection: f64,
        false_acceptance: f64,
    }

    impl<'de> Deserialize<'de> for SequentialTest {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<SequentialTest, D::Error> {
            let wire = Wire::deserialize(from)?;
            SequentialTest::new(
                wire.acceptable_rate,
                wire.unacceptable_rate,
                wire.false_rejection,
                wire.false_acceptance,
            )
            .map_err(de::Error::custom)
        }
    }
}
