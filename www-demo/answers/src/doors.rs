//! The library's doors of a log, over the log's text as the page keeps it.

use std::rc::Rc;

use bismar::answers::{
    DayAnswer, DayAnswers, Diary, NextSet, PairAnswer, PairLoads, Rack, SetsToday, Sharing, Trend, Week,
    share,
};
use bismar::loading::{Bar, EndMoves, Implement, SharedBar, Stock, Turn as LibraryTurn};
use bismar::progression::State;
use bismar::quantity::{Day, Mass, Name, Unit};
use bismar::record::{Plan, WorkSet};
use bismar::text::Words;
use bismar::{Code, Error};
use serde::{Deserialize, Serialize};

use crate::floor::{self, Moved, Turn, Turns};
use crate::opened::{Opened, Which};

/// Was this week a jump?
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct OfWeek {
    log: Which,
    today: Day,
}

pub(crate) fn week(asked: OfWeek) -> Result<Week, Error> {
    Diary::of(&asked.log.open()?.log)?.week(asked.today)
}

/// Does today lie below, within or above the usual?
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct OfDay {
    log: Which,
    today: Day,
    answers: DayAnswers,
}

pub(crate) fn day(asked: OfDay) -> Result<DayAnswer, Error> {
    Diary::of(&asked.log.open()?.log)?.day(asked.today, Some(&asked.answers))
}

/// Is the strength of a lift moving?
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct OfTrend {
    log: Which,
    lift: Name,
    today: Day,
    weeks: u16,
}

pub(crate) fn trend(asked: OfTrend) -> Result<Trend, Error> {
    Diary::of(&asked.log.open()?.log)?.trend(&asked.lift, asked.today, Some(asked.weeks))
}

/// How do the two lifts of a pair stand to each other?
#[derive(Deserialize)]
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
    Diary::of(&log.open()?.log)?.pair(&strict, &forgiving, today, Some(&loads))
}

/// How is each load of today made, disc by disc?
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct OfRack {
    log: Which,
    plan: String,
    lift: Name,
    today: Day,
}

pub(crate) fn rack(asked: OfRack) -> Result<Rack, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    Diary::of(&asked.log.open()?.log)?.rack(&plan, &asked.lift, asked.today, None)
}

/// Several at one bar: who goes first, and which discs move, from here on?
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct OfShare {
    lifters: Vec<AtTheBar>,
    today: Day,
}

/// One of them.
#[derive(Deserialize)]
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
pub(crate) struct Shared {
    /// Loads of each lifter that are still to be lifted.
    left: Vec<Vec<Mass>>,
    /// Turn by turn, by the places in the list given.
    turns: Turns,
}

/// The turns of the library at a bar from a rack.
fn from_rack(bar: SharedBar) -> Turns {
    let turn = |turn: LibraryTurn| {
        let EndMoves { total, off, on, .. } = turn.moves;
        Turn { lifter: turn.lifter, moves: Moved { total, off, on }, blocks: None }
    };
    let (moves_each_end, proved) = (bar.moves_each_end, bar.proved);
    Turns { turns: bar.turns.into_iter().map(turn).collect(), moves_each_end, proved }
}

fn bar_and_stock(state: &State, lift: &Name) -> Option<(Bar, Stock)> {
    let all = state.parameters()?;
    match all.implement(&all.lift(lift)?.implement)? {
        Implement::Bar(bar) => Some((bar.clone(), all.stock.clone())),
        _ => None,
    }
}

/// The order with the fewest disc moves for the sets that are left; each lifts what the own log and plan give.
pub(crate) fn shared(asked: OfShare) -> Result<Shared, Error> {
    let opened = asked.lifters.iter().map(|one| one.log.open()).collect::<Result<Vec<_>, _>>()?;
    if asked.lifters.iter().zip(&opened).any(|(one, opened)| floor::carries(&opened.state, &one.lift)) {
        return at_height(&asked, &opened);
    }
    let sharing = asked.lifters.iter().zip(&opened).map(|(one, opened)| {
        let (log, plan) = (opened.log.clone(), Plan::from_json(&one.plan)?);
        Ok(Sharing::new(log, plan, one.lift.clone()).with_done(one.done))
    });
    let answer = share(&sharing.collect::<Result<Vec<_>, Error>>()?, asked.today)?;
    let turns = from_rack(answer.bar.ok_or_else(|| Error::plain(Code::EmptyList, "lifters"))?);
    Ok(Shared { left: answer.lifters.into_iter().map(|own| own.loads).collect(), turns })
}

/// The same where a lift starts from the floor: each with the discs of the own day.
fn at_height(asked: &OfShare, opened: &[Rc<Opened>]) -> Result<Shared, Error> {
    let all = asked.lifters.iter().zip(opened);
    let racks: Vec<_> = all.clone().map(|(one, opened)| bar_and_stock(&opened.state, &one.lift)).collect();
    if racks.iter().any(|rack| rack.is_none() || Some(rack) != racks.first()) {
        return Err(Error::plain(Code::NotInStock, "implement"));
    }
    let own = |(one, opened): (&AtTheBar, &Rc<Opened>)| {
        floor::own(&opened.state, &Plan::from_json(&one.plan)?, &one.lift, asked.today, one.done)
    };
    let own = all.map(own).collect::<Result<Vec<_>, Error>>()?;
    Ok(Shared { left: floor::loads(&own), turns: floor::turns(&own)? })
}

/// What comes after the sets of a lift done so far today?
#[derive(Deserialize)]
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
pub(crate) struct AfterSets {
    next: NextSet,
    why: Vec<String>,
}

pub(crate) fn after_sets(asked: OfSets) -> Result<AfterSets, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    let done = SetsToday::new(asked.lift, asked.sets);
    let opened = asked.log.open()?;
    let next = Diary::of(&opened.log)?.next_set(&plan, asked.today, &done)?;
    let words = opened.state.parameters().map_or_else(Words::plain, Words::of).in_unit(asked.unit);
    Ok(AfterSets { why: words.next_set(&next), next })
}
