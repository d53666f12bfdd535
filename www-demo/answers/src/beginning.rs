//! A log for somebody new: lifts from a short list, each at its first load, and a gate that takes its time.

use bismar::Error;
use bismar::error::Allowed;
use bismar::loading::{Implement, Stock};
use bismar::quantity::{Day, Length, Mass, Name, Rir};
use bismar::record::{
    Clearance, ClearanceStatus, Event, EventKind, LiftParameters, LiftPlan, Lifter, Log, Pair, Parameters,
    Plan, Region,
};
use bismar::value::Value;
use serde::{Deserialize, Serialize};

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

/// Lifts to begin with; every gate asks for 9 of 10 repetitions on three days (our choice).
const LIFTS: [(&str, &str); 8] = [
    ("front squat", include_str!("lifts/front_squat.json")),
    ("box squat", include_str!("lifts/box_squat.json")),
    ("straight-bar pull", include_str!("lifts/straight_bar_pull.json")),
    ("hex-bar pull", include_str!("lifts/hex_bar_pull.json")),
    ("strict press", include_str!("lifts/strict_press.json")),
    ("seated press", include_str!("lifts/seated_press.json")),
    ("bench press", include_str!("lifts/bench_press.json")),
    ("supported row", include_str!("lifts/supported_row.json")),
];

/// A strict lift and the forgiving one beside it.
const PAIRS: [(&str, &str); 2] = [("front squat", "box squat"), ("strict press", "seated press")];

/// Regions that a report can name although none of the lifts above loads them.
const OTHER_REGIONS: [&str; 6] = ["neck", "upper back", "elbow", "wrist", "ankle", "groin"];

/// A lift of the first list as it begins, whatever bar it is done with.
pub(crate) fn standard_lift(name: &str) -> Result<LiftParameters, Error> {
    let (_, text) = LIFTS.iter().find(|(known, _)| *known == name).ok_or_else(|| {
        let names: Vec<&str> = LIFTS.iter().map(|(name, _)| *name).collect();
        Error::new(bismar::Code::UnknownName, "lift", name, Allowed::one_of(&names))
    })?;
    Value::from_json(text)?.read()
}

fn lift(first: &First) -> Result<LiftParameters, Error> {
    let mut lift = standard_lift(&first.lift)?;
    lift.implement = first.implement.clone();
    lift.start.work.load = first.load;
    Ok(lift)
}

/// What is set for one more lift.
pub(crate) fn new_lift(first: First) -> Result<LiftParameters, Error> {
    lift(&first)
}

fn pairs(lifts: &[LiftParameters]) -> Result<Vec<Pair>, Error> {
    let has = |name: &str| lifts.iter().any(|lift| lift.id.as_str() == name);
    let both = PAIRS.iter().filter(|(strict, forgiving)| has(strict) && has(forgiving));
    both.map(|(strict, forgiving)| Ok(Pair::new(Name::new(strict)?, Name::new(forgiving)?))).collect()
}

/// The regions of these lifts, and those that a report may name besides.
pub(crate) fn regions(lifts: &[LiftParameters]) -> Result<Vec<Region>, Error> {
    let mut ids: Vec<Name> = Vec::new();
    let others = OTHER_REGIONS.iter().map(|name| Name::new(name)).collect::<Result<Vec<_>, _>>()?;
    for id in lifts.iter().flat_map(|lift| lift.regions.clone()).chain(others) {
        if !ids.contains(&id) {
            ids.push(id);
        }
    }
    Ok(ids.into_iter().map(Region::new).collect())
}

/// A log with its first events, and the plan for the first session.
pub(crate) fn begin(asked: Asked) -> Result<Answer, Error> {
    let lifts: Vec<LiftParameters> = asked.lifts.iter().map(lift).collect::<Result<_, _>>()?;
    let planned = lifts.iter().map(|lift| LiftPlan::new(lift.id.clone()).with_reserve(Rir::whole(4)));
    let plan = Plan::of([]).with_lifts(planned.collect());
    let pairs = pairs(&lifts)?;
    let parameters = Parameters::new(regions(&lifts)?, lifts, asked.implements, asked.stock)
        .with_pairs(pairs)
        .with_blocks(asked.blocks);
    let mut log = Log::new(asked.lifter);
    let mut kinds = vec![EventKind::ParametersChanged(Box::new(parameters))];
    if let Some(who) = asked.cleared_by {
        let clearance = Clearance::new(ClearanceStatus::Cleared, who);
        kinds.push(EventKind::ClearanceRecorded(clearance));
    }
    for (sequence, kind) in (1..).zip(kinds) {
        log.events.push(Event::new(sequence, asked.day, kind));
    }
    log.check()?;
    bismar::progression::fold(&log)?;
    Ok(Answer { log: Value::write(&log)?.to_json(), plan: Value::write(&plan)?.to_json() })
}
