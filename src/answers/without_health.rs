//! A copy of a log to hand on, without health detail.

use crate::error::Error;
use crate::progression::fold;
use crate::record::{Log, Plan, WithoutHealth};

/// A copy of a log that was followed once: see [`Log::without_health`].
///
/// # Errors
/// What [`fold`] reports of the copy: of a log that can be followed, none.
pub(super) fn log_without_health(log: &Log) -> Result<WithoutHealth, Error> {
    let copy = log.without_health()?;
    fold(&copy.log)?;
    Ok(copy)
}

/// See [`Plan::without_health`].
///
/// # Errors
/// None that a plan which was read gives.
pub(super) fn plan_without_health(plan: &Plan) -> Result<Plan, Error> {
    plan.without_health()
}
