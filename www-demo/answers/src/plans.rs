//! The plan, between the text in which it is kept and what the page shows and changes.

use bismar::Error;
use bismar::record::Plan;
use bismar::value::Value;
use serde::Deserialize;

/// A plan as JSON text.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Kept {
    plan: String,
}

/// The plan of a text.
pub(crate) fn read(asked: Kept) -> Result<Plan, Error> {
    Plan::from_json(&asked.plan)
}

/// A plan to be kept.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Shown {
    plan: Plan,
}

/// The text in which a plan is kept.
pub(crate) fn text(asked: Shown) -> Result<String, Error> {
    Ok(Value::write(&asked.plan)?.to_json())
}
