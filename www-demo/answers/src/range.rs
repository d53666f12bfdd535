//! Limits beside a question: which concern a lift, and at what load does a longer range start under them?

use bismar::Error;
use bismar::loading::{Implement, Stock};
use bismar::prescription::{LongerRange, limits_for, longer_range, longer_range_of};
use bismar::quantity::{Length, Mass, Name};
use bismar::record::ClearanceLimits;
use serde::{Deserialize, Serialize};

use crate::opened::Which;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "RangeAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    implement: Implement,
    stock: Stock,
    load: Mass,
    from: Length,
    to: Length,
    /// Whose lift it is, where it is somebody's.
    #[serde(default)]
    of: Option<Limited>,
}

/// A lift of somebody: one of the log, or another.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Limited {
    log: Which,
    lift: Name,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "RangeAnswer"))]
pub(crate) struct Answer {
    /// Absent under a limit of range.
    #[serde(skip_serializing_if = "Option::is_none")]
    step: Option<LongerRange>,
}

/// Where a longer range starts.
pub(crate) fn range_step(asked: Asked) -> Result<Answer, Error> {
    let Asked { implement, stock, load, from, to, of } = asked;
    let step = match of {
        Some(Limited { log, lift }) => {
            longer_range_of(&log.open()?.state, &lift, &implement, &stock, load, from, to)?
        }
        None => Some(longer_range(&implement, &stock, load, from, to)?),
    };
    Ok(Answer { step })
}

/// The limits of a lift.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Limits {
    limits: Vec<ClearanceLimits>,
    /// The lowest load of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    load: Option<Mass>,
}

/// Which limits concern a lift.
pub(crate) fn limits(asked: Limited) -> Result<Limits, Error> {
    let limits = limits_for(&asked.log.open()?.state, &asked.lift);
    Ok(Limits { load: limits.iter().filter_map(|limit| limit.load).min(), limits })
}
