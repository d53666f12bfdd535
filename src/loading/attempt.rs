//! How much to add between the sets that lead to a test of the maximum.

use super::tolerance::MassBand;
use crate::error::{Code, Error};
use crate::quantity::Mass;
use crate::source::{Source, formula, rows};

const ESSENTIALS: Source = Source {
    id: "haff-triplett-2016",
    citation: "Haff GG, Triplett NT, eds. Essentials of Strength Training and Conditioning, 4th ed. Human \
               Kinetics, 2016, 1RM testing protocol",
    doi: None,
};

/// Which half of the body a lift is done with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum BodyHalf {
    /// Presses and pulls.
    Upper,
    /// Squats and deadlifts.
    Lower,
}

/// How much to add, both ways in which the protocol puts it. For light lifters the two disagree (10 lb on
/// 40 lb are 25 %): take the percentage, and a load that can be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct AttemptStep {
    /// 5 to 10 % of the load for the upper body, 10 to 20 % for the lower.
    pub by_percent: MassBand,
    /// 10 to 20 lb for the upper body, 30 to 40 lb for the lower.
    pub by_pounds: MassBand,
}

formula! {
    "loading.attempt_step",
    /// How much is added between the sets that lead to a test of the maximum?
    ///
    /// # Formula
    /// Upper body: 5 to 10 % of the load, or 10 to 20 lb. Lower body: 10 to 20 %, or 30 to 40 lb. After a
    /// miss the protocol takes off half as much.
    ///
    /// # Domain
    /// Trained, supervised adults; the maximum within 3 to 5 testing sets. Nobody has to test one.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Haff and Triplett 2016, recalled (row `loading.attempt_step`). A public restatement has the same steps, but takes
    /// off the whole step after a miss.
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{BodyHalf, attempt_step};
    /// use bismar::quantity::Mass;
    ///
    /// let step = attempt_step(Mass::from_kg(60.0)?, BodyHalf::Upper)?;
    /// assert_eq!((step.by_percent.low.kg(), step.by_percent.high.kg()), (3.0, 6.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn attempt_step(load: Mass, half: BodyHalf) -> Result<AttemptStep, Error> {
        if !load.is_positive() {
            let high = Mass::MAX.kg();
            return Err(Error::range(Code::LoadOutOfDomain, "load", load.kg(), 0.0, high, "kg, above 0"));
        }
        // Percent and pounds of the protocol.
        let (percent, pounds) = match half {
            BodyHalf::Upper => ([5, 10], [10.0, 20.0]),
            BodyHalf::Lower => ([10, 20], [30.0, 40.0]),
        };
        let hundredths = |count: i64| Mass::from_nanograms(load.nanograms().saturating_mul(count).div_euclid(100));
        let [low, high] = percent.map(|count| hundredths(count).unwrap_or(Mass::ZERO));
        let [least, most] = pounds.map(Mass::from_lb);
        Ok(AttemptStep { by_percent: MassBand { low, high }, by_pounds: MassBand { low: least?, high: most? } })
    }
    source: ESSENTIALS, place: "1RM testing protocol", standing: Published, seen: Memory,
    population: "trained adults", domain: "sets that lead to a supervised test",
}

rows![attempt_step];
