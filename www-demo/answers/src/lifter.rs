//! What is set for a lifter and where each lift stands: the small facts that every view needs, without the history.

use bismar::Error;
use bismar::prescription::sideways;
use bismar::progression::Status;
use bismar::quantity::{Day, Name, Pain};
use bismar::record::{LiftParameters, Parameters, Role, Tuple};
use serde::{Deserialize, Serialize};

use crate::opened::open;

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: String,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    #[serde(skip_serializing_if = "Option::is_none")]
    parameters: Option<Parameters>,
    places: Vec<Place>,
    /// Agreed usual levels of pain.
    usual: Vec<Usual>,
    next_sequence: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    last_day: Option<Day>,
}

/// Where a lift stands.
#[derive(Serialize)]
struct Place {
    lift: Name,
    role: Role,
    status: Status,
    at: Tuple,
    #[serde(skip_serializing_if = "Option::is_none")]
    last_session: Option<Day>,
    /// Rungs that are not harder: for a sore region or a missing implement, never with more load.
    sideways: Vec<Beside>,
}

#[derive(Serialize)]
struct Beside {
    rung: u8,
    name: Name,
}

#[derive(Serialize)]
struct Usual {
    region: Name,
    level: Pain,
    since: Day,
}

fn beside(lift: &LiftParameters, at: Tuple) -> Vec<Beside> {
    let place = |name: Name| {
        let rung = lift.rungs.iter().position(|rung| rung.name == name)?;
        Some(Beside { rung: u8::try_from(rung).ok()?, name })
    };
    sideways(lift, at).into_iter().filter_map(place).collect()
}

/// The small facts of a lifter.
pub(crate) fn lifter(asked: Asked) -> Result<Answer, Error> {
    let opened = open(&asked.log)?;
    let state = &opened.state;
    let parameters = state.parameters.as_deref();
    let lifts = parameters.map(|all| all.lifts.as_slice()).unwrap_or_default();
    let places = lifts.iter().zip(&state.lifts).map(|(set, lift)| Place {
        lift: set.name.clone(),
        role: lift.role,
        status: lift.status,
        at: lift.tuple,
        last_session: lift.last_session,
        sideways: beside(set, lift.tuple),
    });
    let usual = state.regions.iter().filter_map(|region| {
        let (level, since, _) = region.usual?;
        Some(Usual { region: region.name.clone(), level, since })
    });
    let highest = opened.log.events.iter().map(|event| event.sequence).max();
    Ok(Answer {
        parameters: parameters.cloned(),
        places: places.collect(),
        usual: usual.collect(),
        next_sequence: highest.unwrap_or_default().saturating_add(1),
        last_day: state.last.map(|(day, _)| day),
    })
}

/// A log and its last event as it would be with one more.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Longer {
    log: String,
}

/// Whether a log can be read and folded; nothing else, so that writing down is quick.
pub(crate) fn accepts(asked: Longer) -> Result<bool, Error> {
    open(&asked.log).map(|_| true)
}
