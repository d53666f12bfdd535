//! What is set for a lifter and where each lift stands: the small facts that every view needs, without the history.

use bismar::Error;
use bismar::prescription::sideways;
use bismar::progression::{LiftState, Purpose, State};
use bismar::quantity::{Day, Mass, Name, Pain};
use bismar::record::{Ask, ClearanceLimits, EventKind, Grant, LiftParameters, Log, Parameters};
use serde::{Deserialize, Serialize};

use crate::opened::Which;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "LifterAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: Which,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "LifterAnswer"))]
pub(crate) struct Answer {
    #[serde(skip_serializing_if = "Option::is_none")]
    parameters: Option<Parameters>,
    places: Vec<Place>,
    /// Agreed usual levels of pain.
    usual: Vec<Usual>,
    /// What was said when asked before training and still waits for an answer.
    asks: Vec<Ask>,
    /// What the clearance in force limits.
    limits: Vec<ClearanceLimits>,
    /// Every mass that limits the load of a lift: of a clearance, a ceiling, the coach's word.
    most: Vec<Mass>,
    /// The last session, as long as nobody has said how the morning after it was.
    #[serde(skip_serializing_if = "Option::is_none")]
    morning: Option<Morning>,
    next_sequence: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    last_day: Option<Day>,
    /// The last event ends a day: a session, a missed one, or the morning after.
    day_over: bool,
}

fn limits(state: &State) -> Vec<ClearanceLimits> {
    state.clearance().map(|clearance| clearance.limits.clone()).unwrap_or_default()
}

fn most(state: &State) -> Vec<Mass> {
    let cleared = limits(state).into_iter().filter_map(|limit| limit.load);
    let of_lift =
        |lift: LiftState<'_>| [lift.parameters().ceiling, lift.now().overruled.as_ref().map(|by| by.load)];
    cleared.chain(state.lifts().flat_map(of_lift).flatten()).collect()
}

/// A session whose morning after is not told.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "LifterMorning"))]
struct Morning {
    session: u32,
    day: Day,
}

/// The last session in force, unless a report of the morning after names it.
fn open_morning(log: &Log) -> Result<Option<Morning>, Error> {
    let mut open = None;
    for event in log.effective()? {
        match &event.kind {
            EventKind::SessionRecorded(_) => {
                open = Some(Morning { session: event.sequence, day: event.day });
            }
            EventKind::NextDayReport(report) => {
                open = open.filter(|morning| morning.session != report.session);
            }
            _ => {}
        }
    }
    Ok(open)
}

/// Where a lift stands.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "LifterPlace"))]
struct Place {
    lift: Name,
    /// What it is for: train, maintain, rest or retire.
    role: &'static str,
    /// Name of its state.
    status: &'static str,
    at: Grant,
    /// Largest step as a part of the load.
    step_cap: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    last_session: Option<Day>,
    /// Rungs that are not harder: for a sore region or a missing implement, never with more load.
    sideways: Vec<Beside>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Beside {
    rung: u8,
    name: Name,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Usual {
    region: Name,
    level: Pain,
    since: Day,
}

fn beside(lift: &LiftParameters, at: Grant) -> Vec<Beside> {
    let place = |id: Name| {
        let rung = lift.rung_with(&id)?;
        let name = lift.rungs.get(usize::from(rung))?.label().clone();
        Some(Beside { rung, name })
    };
    sideways(lift, at.place).into_iter().filter_map(place).collect()
}

/// The small facts of a lifter.
pub(crate) fn lifter(asked: Asked) -> Result<Answer, Error> {
    let opened = asked.log.open()?;
    let state = &opened.state;
    let places = state.lifts().map(|lift| Place {
        lift: lift.id().clone(),
        role: match lift.purpose() {
            Purpose::Train => "train",
            Purpose::Maintain { .. } => "maintain",
            Purpose::Rest => "rest",
            Purpose::Retire => "retire",
        },
        status: lift.status().as_str(),
        at: lift.grant(),
        step_cap: lift.parameters().cap(),
        last_session: lift.last_session(),
        sideways: beside(lift.parameters(), lift.grant()),
    });
    let usual = state.regions().iter().filter_map(|region| {
        let (level, since, _) = region.usual?;
        Some(Usual { region: region.id.clone(), level, since })
    });
    Ok(Answer {
        parameters: state.parameters().cloned(),
        places: places.collect(),
        usual: usual.collect(),
        limits: limits(state),
        most: most(state),
        morning: open_morning(&opened.log)?,
        asks: state.asks().iter().map(|open| open.ask).collect(),
        next_sequence: opened.next(),
        last_day: state.last().map(|(day, _)| day),
        day_over: opened.log.events.last().is_some_and(|event| {
            matches!(
                event.kind,
                EventKind::SessionRecorded(_) | EventKind::SessionMissed(_) | EventKind::NextDayReport(_)
            )
        }),
    })
}
