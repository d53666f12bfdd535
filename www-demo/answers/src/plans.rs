//! The plan, between the text in which it is kept and what the page shows and changes.

use bismar::Error;
use bismar::quantity::Name;
use bismar::record::{LiftPlan, Plan};
use bismar::rehearsal::{TrainingDay, check_week};
use bismar::text::Words;
use bismar::value::Value;
use serde::Deserialize;

use crate::opened::Which;

/// A plan as JSON text.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Kept {
    plan: String,
}

/// The plan of a text.
pub(crate) fn read(asked: Kept) -> Result<Plan, Error> {
    Plan::from_json(&asked.plan)
}

/// The text of a plan without what tells of health.
pub(crate) fn without_health(asked: Kept) -> Result<String, Error> {
    Ok(Value::write(&Plan::from_json(&asked.plan)?.without_health()?)?.to_json())
}

/// A plan to be kept.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Shown {
    plan: Plan,
}

/// The text in which a plan is kept.
pub(crate) fn text(asked: Shown) -> Result<String, Error> {
    Ok(Value::write(&asked.plan)?.to_json())
}

/// A log and the plan beside it.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "PlansOfWeek"))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfWeek {
    log: Which,
    plan: Plan,
}

/// What the planned week has against it, gravest first; nothing where no day is named. A lift without a day is meant for
/// any, so nothing is said of it.
pub(crate) fn week(asked: OfWeek) -> Result<Vec<String>, Error> {
    let opened = asked.log.open()?;
    let Some(parameters) = opened.state.parameters() else { return Ok(Vec::new()) };
    let known = |lift: &LiftPlan| parameters.lift(&lift.lift).is_some();
    let days: Vec<TrainingDay> = (0..7_u8)
        .map(|weekday| {
            let meant = asked.plan.lifts.iter().filter(|lift| known(lift) && lift.days.contains(&weekday));
            TrainingDay::new(weekday, meant.map(|lift| lift.lift.clone()).collect())
        })
        .collect();
    let named = |id: &Name| days.iter().any(|day| day.lifts.contains(id));
    let words = Words::of(parameters);
    let found = check_week(parameters, &days)?;
    Ok(found
        .iter()
        .filter(|one| one.lift.as_ref().is_some_and(named))
        .map(|one| words.finding(one))
        .collect())
}
