//! A log for somebody new, of lifts from the library's list.

use bismar::Error;
use bismar::loading::{Implement, Stock};
use bismar::prescription::{self, first_lift, first_settings};
use bismar::quantity::{Day, Length, Mass, Name};
use bismar::record::{LiftParameters, Lifter};
use bismar::value::Value;
use serde::{Deserialize, Serialize};

use crate::words::Nothing;

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    lifter: Lifter,
    day: Day,
    lifts: Vec<First>,
    implements: Vec<Implement>,
    stock: Stock,
    /// Heights of the blocks that are there.
    #[serde(default)]
    blocks: Vec<Length>,
    /// Who said that training may begin; absent where nobody has yet.
    #[serde(default)]
    cleared_by: Option<Name>,
}

/// A lift, its implement, its first load.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct First {
    lift: String,
    implement: Name,
    load: Mass,
}

#[derive(Serialize)]
pub(crate) struct Answer {
    log: String,
    plan: String,
}

/// Which lifts there are to begin with.
pub(crate) fn first_lifts(_: Nothing) -> Result<Vec<String>, Error> {
    Ok(prescription::first_lifts().map(ToString::to_string).collect())
}

/// What is set for one more lift.
pub(crate) fn new_lift(first: First) -> Result<LiftParameters, Error> {
    first_lift(&first.lift, first.implement, first.load)
}

/// A log with its first events, and the plan for the first session.
pub(crate) fn begin(asked: Asked) -> Result<Answer, Error> {
    let lifts = asked.lifts.into_iter().map(new_lift).collect::<Result<_, _>>()?;
    let settings = first_settings(lifts, asked.implements, asked.stock)?.with_blocks(asked.blocks);
    let (log, plan) = prescription::begin(asked.lifter, asked.day, settings, asked.cleared_by)?;
    Ok(Answer { log: Value::write(&log)?.to_json(), plan: Value::write(&plan)?.to_json() })
}
