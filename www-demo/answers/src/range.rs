//! A longer range: what load does it start at, and how does it begin? Asked of the rules themselves, with a lift that
//! has these two ranges and moves by range.

use bismar::loading::{Implement, Loaded, Prepared, Rounding, Stock};
use bismar::progression::{MoveOutlook, State};
use bismar::quantity::{Day, Length, Mass};
use bismar::record::{Dimension, Event, EventKind, LiftParameters, Lifter, Parameters, Policy as Rules};
use bismar::value::Value;
use bismar::{Code, Error};
use serde::{Deserialize, Serialize};

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    implement: Implement,
    stock: Stock,
    load: Mass,
    from: Length,
    to: Length,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    /// The load at the new range; not above the one before.
    #[serde(skip_serializing_if = "Option::is_none")]
    loaded: Option<Loaded>,
    load: Mass,
    /// Passing sessions that settle the new range before its gate counts again.
    settle: u8,
    /// The part of the load with which a harder rung would start instead.
    rung_part: f64,
}

/// A lift of no name; only its range moves.
const LIFT: &str = include_str!("lifts/box_squat.json");
/// Any day; nothing here depends on it.
const DAY: i32 = 0;
/// One pass ends the settling in (the rule of `Consolidating`).
const SETTLE: u8 = 1;

/// Where a longer range starts.
pub(crate) fn range_step(asked: Asked) -> Result<Answer, Error> {
    if !asked.load.is_positive() {
        let error =
            |field, value| Error::range(Code::NegativeLoad, field, value, 0.0, Mass::MAX.kg(), "kg, above 0");
        return Err(error("load", asked.load.kg()));
    }
    let mut lift: LiftParameters = Value::from_json(LIFT)?.read()?;
    lift.implement = asked.implement.id().clone();
    lift.ranges = vec![asked.from, asked.to];
    lift.moving = Dimension::Range;
    lift.start.work.load = asked.load;
    let (name, rules) = (lift.id.clone(), Rules::default());
    let rung_part = rules.rung_load;
    let lifts = vec![lift];
    let parameters = Parameters::new(
        crate::beginning::regions(&lifts)?,
        lifts,
        vec![asked.implement.clone()],
        asked.stock.clone(),
    )
    .with_policy(rules);
    let day = Day::from_number(DAY)?;
    let kind = EventKind::ParametersChanged(Box::new(parameters));
    let mut state = State::new(Lifter::new(name.clone()));
    state.apply(&Event::new(1, day, kind))?;
    let decision = { state.decide(day)? }.into_iter().find(|decision| decision.lift == name);
    let to = decision.and_then(|decision| match decision.outlook {
        MoveOutlook::OnOffer { to } => Some(to),
        MoveOutlook::Blocked { to, .. } => to,
    });
    let load = to.map_or(asked.load, |to| to.load()).min(asked.load);
    let prepared = Prepared::new(&asked.implement, &asked.stock, asked.load)?;
    Ok(Answer { loaded: prepared.load(load, Rounding::Below).ok(), load, settle: SETTLE, rung_part })
}
