//! A first day, and another bar: which bars are right for a lift, and the lightest load of each at the lift's height.

use bismar::Error;
use bismar::loading::{Implement, Stock};
use bismar::prescription::{self, BarOffer};
use bismar::quantity::{Length, Name};
use bismar::record::Parameters;
use serde::{Deserialize, Serialize};

use crate::opened::Which;

/// The question for a lift of the first list.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct First {
    lift: String,
    implements: Vec<Implement>,
    stock: Stock,
    #[serde(default)]
    blocks: Vec<Length>,
    /// Of somebody whose clearance may limit it.
    #[serde(default)]
    log: Option<Which>,
}

/// The question for a lift of a log.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Another {
    log: Which,
    lift: Name,
}

/// The answer: the lightest first; those at the height before those that cannot be brought there.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Bars {
    offers: Vec<BarOffer>,
}

/// With which bar, and which load, does a lift begin?
pub(crate) fn first_bars(asked: First) -> Result<Bars, Error> {
    let First { lift, implements, stock, blocks, log } = asked;
    let offers = match log {
        Some(log) => prescription::first_bars_of(&log.open()?.state, &lift, &implements, &stock, &blocks)?,
        None => prescription::first_bars(&lift, &implements, &stock, &blocks)?,
    };
    Ok(Bars { offers })
}

/// Which other bar may a lift be done with?
pub(crate) fn other_bars(asked: Another) -> Result<Bars, Error> {
    Ok(Bars { offers: prescription::other_bars(&asked.log.open()?.state, &asked.lift)? })
}

/// The question: what is set, with another bar for one lift.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct WithBar {
    log: Which,
    lift: Name,
    implement: Name,
}

/// What is set, with that bar for that lift.
pub(crate) fn with_bar(asked: WithBar) -> Result<Parameters, Error> {
    prescription::with_bar(&asked.log.open()?.state, &asked.lift, &asked.implement)
}

/// The question: what is set, with other bars, discs and blocks.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct WithKit {
    log: Which,
    implements: Vec<Implement>,
    stock: Stock,
    #[serde(default)]
    blocks: Vec<Length>,
}

/// What is set, with these bars, discs and blocks.
pub(crate) fn with_kit(asked: WithKit) -> Result<Parameters, Error> {
    let here: Vec<Name> = asked.implements.iter().map(|one| one.id().clone()).collect();
    let mut all =
        prescription::with_kit(&asked.log.open()?.state, asked.implements, asked.stock, asked.blocks)?;
    // A bar of another gym stays only as long as a lift is done with it.
    let used: Vec<Name> = all.lifts.iter().map(|lift| lift.implement.clone()).collect();
    all.implements.retain(|one| here.contains(one.id()) || used.contains(one.id()));
    Ok(all)
}
