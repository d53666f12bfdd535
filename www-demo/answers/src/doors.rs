//! The library's doors of a log, over the log's text as the page keeps it.

use bismar::answers::{
    self, DayAnswer, DayAnswers, NextSet, PairAnswer, PairLoads, Rack, SetsToday, Sharing, Slip, Trend, Week,
    share,
};
use bismar::loading::{EndMoves, PlacedDisc, Turn as LibraryTurn};
use bismar::quantity::{Day, Length, Mass, Name, Unit};
use bismar::record::{Plan, WorkSet};
use bismar::{Code, Error};
use serde::{Deserialize, Serialize};

use crate::opened::Which;
use crate::words::spoken;

/// Was this week a jump?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "DoorsOfWeek"))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfWeek {
    log: Which,
    today: Day,
}

pub(crate) fn week(asked: OfWeek) -> Result<Week, Error> {
    asked.log.open()?.diary()?.week(asked.today)
}

/// Does today lie below, within or above the usual?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfDay {
    log: Which,
    today: Day,
    answers: DayAnswers,
}

pub(crate) fn day(asked: OfDay) -> Result<DayAnswer, Error> {
    asked.log.open()?.diary()?.day(asked.today, Some(&asked.answers))
}

/// Is the strength of a lift moving?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfTrend {
    log: Which,
    lift: Name,
    today: Day,
    weeks: u16,
}

pub(crate) fn trend(asked: OfTrend) -> Result<Trend, Error> {
    asked.log.open()?.diary()?.trend(&asked.lift, asked.today, Some(asked.weeks))
}

/// How do the two lifts of a pair stand to each other?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfPair {
    log: Which,
    strict: Name,
    forgiving: Name,
    today: Day,
    #[serde(default)]
    loads: PairLoads,
}

pub(crate) fn pair(asked: OfPair) -> Result<PairAnswer, Error> {
    let OfPair { log, strict, forgiving, today, loads } = asked;
    log.open()?.diary()?.pair(&strict, &forgiving, today, Some(&loads))
}

/// How is each load of today made, disc by disc?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfRack {
    log: Which,
    plan: String,
    lift: Name,
    today: Day,
}

pub(crate) fn rack(asked: OfRack) -> Result<Rack, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    asked.log.open()?.diary()?.rack(&plan, &asked.lift, asked.today, None)
}

/// Does a load look mistyped beside the one that was expected?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct TwoLoads {
    expected: Mass,
    now: Mass,
}

/// How it may have been mistyped.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Mistyped {
    #[serde(skip_serializing_if = "Option::is_none")]
    slip: Option<Slip>,
}

pub(crate) fn load_slip(asked: TwoLoads) -> Result<Mistyped, Error> {
    Ok(Mistyped { slip: answers::load_slip(asked.expected, asked.now) })
}

/// Several at one bar: who goes first, and which discs move, from here on?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfShare {
    lifters: Vec<AtTheBar>,
    today: Day,
}

/// One of them.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
struct AtTheBar {
    log: Which,
    plan: String,
    lift: Name,
    /// Work sets of this lift done today that are not in the log yet.
    done: u8,
}

/// What is left to do, and in which order the fewest discs move.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "DoorsShared"))]
pub(crate) struct Shared {
    /// Loads of each lifter that are still to be lifted.
    left: Vec<Vec<Mass>>,
    /// Turn by turn, by the places in the list given.
    turns: Turns,
}

/// The turns in order, with what is drawn of each.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Turns {
    turns: Vec<Turn>,
    moves_each_end: u32,
    proved: bool,
}

/// One turn at the bar.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "DoorsTurn"))]
struct Turn {
    /// Whose turn: the place in the list given.
    lifter: u16,
    moves: Moved,
    /// Blocks under each end.
    #[serde(skip_serializing_if = "Option::is_none")]
    blocks: Option<Length>,
}

/// Discs that move on each end before a set.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Moved {
    total: Mass,
    off: Vec<PlacedDisc>,
    on: Vec<PlacedDisc>,
}

/// The order with the fewest disc moves for the sets that are left; each lifts what the own log and plan give.
pub(crate) fn shared(asked: OfShare) -> Result<Shared, Error> {
    let sharing = asked.lifters.iter().map(|one| {
        let (log, plan) = (one.log.open()?.log.clone(), Plan::from_json(&one.plan)?);
        Ok(Sharing::new(log, plan, one.lift.clone()).with_done(one.done))
    });
    let answer = share(&sharing.collect::<Result<Vec<_>, Error>>()?, asked.today)?;
    let bar = answer.bar.ok_or_else(|| Error::plain(Code::EmptyList, "lifters"))?;
    let blocks = |turn: &LibraryTurn| {
        let own = answer.lifters.get(usize::from(turn.lifter))?;
        own.blocks.get(usize::from(turn.set)).copied().filter(|height| height.mm() > 0.0)
    };
    let turns = bar.turns.into_iter().map(|turn| {
        let blocks = blocks(&turn);
        let EndMoves { total, off, on, .. } = turn.moves;
        Turn { lifter: turn.lifter, moves: Moved { total, off, on }, blocks }
    });
    let turns = Turns { turns: turns.collect(), moves_each_end: bar.moves_each_end, proved: bar.proved };
    Ok(Shared { left: answer.lifters.into_iter().map(|own| own.loads).collect(), turns })
}

/// What comes after the sets of a lift done so far today?
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfSets {
    log: Which,
    plan: String,
    lift: Name,
    /// Sets that are not in the log yet.
    sets: Vec<WorkSet>,
    today: Day,
    /// In which unit the sentences name loads.
    unit: Unit,
}

/// The answer, with its sentences.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct AfterSets {
    next: NextSet,
    /// What to do, then a sentence for each reason in its order. Stops and what to show beside it stand in the answer.
    why: Vec<String>,
}

pub(crate) fn after_sets(asked: OfSets) -> Result<AfterSets, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    let done = SetsToday::new(asked.lift, asked.sets);
    let opened = asked.log.open()?;
    let next = opened.diary()?.next_set(&plan, asked.today, &done)?;
    let mut bare = next.clone();
    bare.stops.clear();
    bare.cautions.clear();
    Ok(AfterSets { why: spoken(&opened.state, asked.unit).next_set(&bare), next })
}
