//! A log for somebody new, of lifts from the library's list.

use bismar::Error;
use bismar::answers::{self, FirstLift};
use bismar::loading::{Implement, Stock};
use bismar::prescription::{self, first_lift};
use bismar::quantity::{Day, Length, Name};
use bismar::record::{LiftParameters, Lifter};
use bismar::value::Value;
use serde::{Deserialize, Serialize};

use crate::words::Nothing;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "BeginningAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    lifter: Lifter,
    day: Day,
    lifts: Vec<FirstLift>,
    implements: Vec<Implement>,
    stock: Stock,
    /// Heights of the blocks that are there.
    #[serde(default)]
    blocks: Vec<Length>,
    /// Who said that training may begin; absent where nobody has yet.
    #[serde(default)]
    cleared_by: Option<Name>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "BeginningAnswer"))]
pub(crate) struct Answer {
    log: String,
    plan: String,
}

/// Which lifts there are to begin with.
pub(crate) fn first_lifts(_: Nothing) -> Result<Vec<String>, Error> {
    Ok(prescription::first_lifts().map(ToString::to_string).collect())
}

/// What is set for one more lift.
pub(crate) fn new_lift(first: FirstLift) -> Result<LiftParameters, Error> {
    first_lift(&first.lift, first.implement, first.load)
}

/// A log with its first events, and the plan for the first session.
pub(crate) fn begin(asked: Asked) -> Result<Answer, Error> {
    let Asked { lifter, day, lifts, implements, stock, blocks, cleared_by } = asked;
    let begun = answers::begin(&lifter, day, &lifts, &implements, &stock, &blocks, cleared_by.as_ref())?;
    Ok(Answer { log: Value::write(&begun.log)?.to_json(), plan: Value::write(&begun.plan)?.to_json() })
}
