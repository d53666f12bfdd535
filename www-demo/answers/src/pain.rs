//! What one answer about pain asks for, with the numbers of the rules that say so.

use bismar::Error;
use bismar::progression::{PainZone, pain_zone};
use bismar::quantity::Pain;
use bismar::record::{PainAnswer, Policy};
use serde::{Deserialize, Serialize};

use crate::opened::Which;

/// The question, for somebody with a log or for anybody.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "PainAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    #[serde(default)]
    log: Option<Which>,
    pain: PainAnswer,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct PainTold {
    zone: PainZone,
    /// From which score it blocks, above which it stops, and the clear sessions before a step up.
    block_from: u8,
    stop_above: u8,
    clear_sessions: u8,
}

/// What it asks for, whatever is usual for that lifter.
pub(crate) fn pain(asked: Asked) -> Result<PainTold, Error> {
    let opened = asked.log.map(|log| log.open()).transpose()?;
    let set = opened.as_ref().and_then(|opened| opened.state.parameters());
    let policy = set.map_or_else(Policy::default, |set| set.policy.clone());
    Ok(PainTold {
        zone: pain_zone(&asked.pain, Pain::NONE, &policy),
        block_from: policy.pain_block_from,
        stop_above: policy.pain_stop_above,
        clear_sessions: policy.clear_sessions,
    })
}
