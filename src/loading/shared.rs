//! One bar for several lifters.

use alloc::format;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::bar::Bar;
use super::disc::Stock;
use super::implement::Implement;
use super::loaded::{Loaded, PlacedDisc};
use super::prepared::Prepared;
use super::stacks::{Band, EndMoves, Route, fewest_moves};
use crate::error::{Allowed, Code, Error};
use crate::quantity::Mass;
use crate::source::{ARITHMETIC, formula, rows};

/// Most lifters at one bar; all orders of them are tried.
const MOST_LIFTERS: usize = 4;
/// Most sets of one lifter.
const MOST_SETS: usize = 12;

/// One set at a shared bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SharedSet {
    /// The load wanted; never exceeded.
    pub load: Mass,
    /// How far below it the load may be to save disc handling.
    pub tolerance: Mass,
}

impl SharedSet {
    /// A set at that load, give or take.
    #[must_use]
    pub fn new(load: Mass, tolerance: Mass) -> SharedSet {
        SharedSet { load, tolerance }
    }
}

/// The sets of one lifter, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SharedLifter {
    /// The sets.
    pub sets: Vec<SharedSet>,
}

impl SharedLifter {
    /// These sets in this order.
    #[must_use]
    pub fn new(sets: Vec<SharedSet>) -> SharedLifter {
        SharedLifter { sets }
    }

    /// These loads alone, whatever discs make them.
    pub(crate) fn of_loads(loads: &[Loaded]) -> SharedLifter {
        SharedLifter::new(loads.iter().map(|load| SharedSet::new(load.total, Mass::ZERO)).collect())
    }
}

/// One turn at the bar.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Turn {
    /// Whose turn: the place in the list of lifters.
    pub lifter: u16,
    /// Which of their sets.
    pub set: u16,
    /// The load and the discs that move.
    pub moves: EndMoves,
}

/// The turns in order.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SharedBar {
    /// The turns.
    pub turns: Vec<Turn>,
    /// Discs handled on each end, off and on together, from the empty bar to the last set.
    pub moves_each_end: u32,
    /// Whether no way with fewer moves exists for any order of the lifters, among stacks with the heavier
    /// disc inside; false where the search was cut off at its stated bound.
    pub proved: bool,
}

formula! {
    "loading.shared_bar",
    /// Several lifters, one bar: who goes first, and which discs move between the sets?
    ///
    /// # Formula
    /// The lifters take turns in one order that stays the same in every round (who has no sets left is
    /// skipped), so everybody rests alike. Of all orders and all stacks that make each load within its
    /// tolerance below: the fewest discs handled, then the smallest sum of distances from the loads, then
    /// the order given.
    ///
    /// # Domain
    /// 1 to 4 lifters, up to 12 sets each. Heavier discs stay inside lighter ones.
    ///
    /// # Errors
    /// `not_loadable` where nothing within the tolerance of a set can be made; `out_of_range` for too many
    /// lifters or sets, or a negative tolerance; `stock_too_large`.
    ///
    /// # Source
    /// Arithmetic (row `loading.shared_bar`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, SharedLifter, SharedSet, Stock, shared_bar};
    /// use bismar::quantity::{Name, Mass};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let stock = Stock::new(vec![Disc::new(Mass::from_kg(20.0)?, 2)?, Disc::new(Mass::from_kg(10.0)?, 4)?])?;
    /// let sets = |kg: f64| -> Result<SharedLifter, bismar::Error> {
    ///     let set = SharedSet::new(Mass::from_kg(kg)?, Mass::ZERO);
    ///     Ok(SharedLifter::new(vec![set; 2]))
    /// };
    /// let shared = shared_bar(&bar, &stock, &[sets(80.0)?, sets(60.0)?])?;
    /// // The lighter lifter begins: 20 on; 10 on; 10 off; 10 on.
    /// assert_eq!(shared.turns.first().map(|turn| turn.lifter), Some(1));
    /// assert_eq!(shared.moves_each_end, 4);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn shared_bar(bar: &Bar, stock: &Stock, lifters: &[SharedLifter]) -> Result<SharedBar, Error> {
        check(lifters)?;
        let heaviest = lifters.iter().flat_map(|lifter| &lifter.sets).map(|set| set.load).max();
        let heaviest = heaviest.unwrap_or(Mass::ZERO);
        let prepared = Prepared::new(&Implement::Bar(bar.clone()), stock, heaviest)?;
        let bands = bands(&prepared, lifters)?;
        let mut best: Option<(Vec<(usize, usize)>, Route)> = None;
        let mut proved = true;
        for order in orders(lifters.len()) {
            let turns = turns(&order, lifters);
            let row: Vec<Band> =
                turns.iter().filter_map(|(lifter, set)| bands.get(*lifter)?.get(*set)).copied().collect();
            let Some(route) = fewest_moves(&prepared, &[], &row) else { continue };
            proved &= route.proved;
            let cost = |route: &Route| (route.moves, route.distance);
            if best.as_ref().is_none_or(|(_, known)| cost(&route) < cost(known)) {
                best = Some((turns, route));
            }
        }
        let (turns, route) = best.ok_or_else(|| Error::plain(Code::NotLoadable, "lifters"))?;
        answer(&prepared, lifters, &turns, &route, proved)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

fn answer(
    prepared: &Prepared,
    lifters: &[SharedLifter],
    turns: &[(usize, usize)],
    route: &Route,
    proved: bool,
) -> Result<SharedBar, Error> {
    let mut answer = SharedBar { turns: Vec::new(), moves_each_end: route.moves, proved };
    let mut before: &[usize] = &[];
    for ((lifter, set), stack) in turns.iter().zip(&route.stacks) {
        let wanted = lifters.get(*lifter).and_then(|lifter| lifter.sets.get(*set));
        let moves = prepared.end_moves(before, stack, wanted.map_or(Mass::ZERO, |set| set.load))?;
        answer.turns.push(Turn { lifter: *lifter as u16, set: *set as u16, moves });
        before = stack;
    }
    Ok(answer)
}

/// The same where the discs of each load are given, as where they carry the bar at a height: of all orders that with the fewest
/// discs handled, then the order given. No other stack is looked for, so nothing is proved.
pub(crate) fn shared_bar_as_loaded(lifters: &[Vec<Loaded>]) -> Result<SharedBar, Error> {
    let all: Vec<SharedLifter> = lifters.iter().map(|loads| SharedLifter::of_loads(loads)).collect();
    check(&all)?;
    let in_order = orders(lifters.len()).into_iter().map(|order| as_loaded(lifters, &turns(&order, &all)));
    let fewest = in_order.min_by_key(|shared| shared.moves_each_end);
    fewest.ok_or_else(|| Error::plain(Code::NotLoadable, "lifters"))
}

/// From stack to stack: what both have from the inside out stays on.
fn as_loaded(lifters: &[Vec<Loaded>], turns: &[(usize, usize)]) -> SharedBar {
    let mut answer = SharedBar { turns: Vec::new(), moves_each_end: 0, proved: false };
    let mut before: &[PlacedDisc] = &[];
    for (lifter, set) in turns {
        let Some(loaded) = lifters.get(*lifter).and_then(|loads| loads.get(*set)) else { continue };
        let moves = EndMoves::between(before, loaded);
        answer.moves_each_end += (moves.off.len() + moves.on.len()) as u32;
        answer.turns.push(Turn { lifter: *lifter as u16, set: *set as u16, moves });
        before = loaded.side();
    }
    answer
}

fn check(lifters: &[SharedLifter]) -> Result<(), Error> {
    let most = MOST_LIFTERS as f64;
    if lifters.is_empty() || lifters.len() > MOST_LIFTERS {
        return Err(Error::range(Code::OutOfRange, "lifters", lifters.len(), 1.0, most, "lifters"));
    }
    for (index, lifter) in lifters.iter().enumerate() {
        if lifter.sets.is_empty() || lifter.sets.len() > MOST_SETS {
            let most = MOST_SETS as f64;
            let error = Error::range(Code::OutOfRange, "sets", lifter.sets.len(), 1.0, most, "sets");
            return Err(error.within(&format!("lifters[{index}]")));
        }
    }
    Ok(())
}

/// The sums that will do for each set of each lifter.
fn bands(prepared: &Prepared, lifters: &[SharedLifter]) -> Result<Vec<Vec<Band>>, Error> {
    let mut all = Vec::new();
    for (at, lifter) in lifters.iter().enumerate() {
        let mut row = Vec::new();
        for (index, set) in lifter.sets.iter().enumerate() {
            let place = |error: Error| error.within(&format!("lifters[{at}].sets[{index}]"));
            let tolerance = super::bar::not_negative("tolerance", set.tolerance, Mass::MAX).map_err(place)?;
            let low = set.load.minus(tolerance).unwrap_or(Mass::ZERO);
            let band = prepared.band(low, set.load, set.load);
            let refuse = || place(Error::new(Code::NotLoadable, "load", set.load.kg(), Allowed::Unstated));
            row.push(band.ok_or_else(refuse)?);
        }
        all.push(row);
    }
    Ok(all)
}

/// Every order of the lifters, the given one first.
fn orders(lifters: usize) -> Vec<Vec<usize>> {
    let mut orders = alloc::vec![Vec::new()];
    for _ in 0..lifters {
        orders = orders
            .iter()
            .flat_map(|begun: &Vec<usize>| {
                (0..lifters).filter(|next| !begun.contains(next)).map(|next| {
                    let mut longer = begun.clone();
                    longer.push(next);
                    longer
                })
            })
            .collect();
    }
    orders
}

/// Round after round in the same order, those without sets left skipped.
fn turns(order: &[usize], lifters: &[SharedLifter]) -> Vec<(usize, usize)> {
    let rounds = lifters.iter().map(|lifter| lifter.sets.len()).max().unwrap_or(0);
    let has = |lifter: usize, round: usize| lifters.get(lifter).is_some_and(|own| round < own.sets.len());
    (0..rounds)
        .flat_map(|round| order.iter().map(move |lifter| (*lifter, round)))
        .filter(|(lifter, round)| has(*lifter, *round))
        .collect()
}

rows![shared_bar];
