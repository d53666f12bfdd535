//! Several at one bar where a lift starts from the floor: the discs that carry the bar at its height are those of each
//! lifter's own day, so only the order is looked for.

use bismar::loading::{PlacedDisc, Setting};
use bismar::prescription::next_session_from;
use bismar::progression::State;
use bismar::quantity::{Day, Length, Mass, Name};
use bismar::record::{Plan, StartsFrom};
use bismar::{Code, Error};
use serde::Serialize;

/// Discs that move on each end before a set.
#[derive(Clone, Serialize)]
pub(crate) struct Moved {
    /// The load afterwards.
    pub(crate) total: Mass,
    /// Discs that come off, the outermost first.
    pub(crate) off: Vec<PlacedDisc>,
    /// Discs that go on, the innermost first.
    pub(crate) on: Vec<PlacedDisc>,
}

/// One turn at the bar.
#[derive(Clone, Serialize)]
pub(crate) struct Turn {
    /// Whose turn: the place in the list given.
    pub(crate) lifter: u16,
    pub(crate) moves: Moved,
    /// Blocks under each end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) blocks: Option<Length>,
}

/// The turns in order.
#[derive(Clone, Serialize)]
pub(crate) struct Turns {
    pub(crate) turns: Vec<Turn>,
    /// Discs handled on each end, off and on together.
    pub(crate) moves_each_end: u32,
    /// Whether no order and no stack needs fewer; false where the stacks were given by the height.
    pub(crate) proved: bool,
}

/// What one of them still lifts, the same discs each time.
pub(crate) struct Own {
    load: Mass,
    side: Vec<PlacedDisc>,
    blocks: Option<Length>,
    sets: u8,
}

/// Whether the discs carry the bar of that lift at its height.
pub(crate) fn carries(state: &State, lift: &Name) -> bool {
    let set = state.parameters().and_then(|all| all.lift(lift));
    set.is_some_and(|set| set.starts_from == StartsFrom::Floor)
}

/// The work sets of a lift that are left today; none where nothing is lifted.
pub(crate) fn own(state: &State, plan: &Plan, lift: &Name, today: Day, done: u8) -> Result<Own, Error> {
    let session = next_session_from(state, plan, today)?;
    let unknown = || Error::plain(Code::UnknownLift, "lift");
    let of_today = session.lifts.iter().find(|one| one.lift == *lift).ok_or_else(unknown)?;
    let side = match of_today.loaded.as_ref().map(|loaded| &loaded.setting) {
        Some(Setting::Discs(side)) => side.clone(),
        _ => Vec::new(),
    };
    let load = of_today.load.unwrap_or(Mass::ZERO);
    let sets = if of_today.load.is_some() { of_today.sets.saturating_sub(done) } else { 0 };
    Ok(Own { load, side, blocks: of_today.blocks, sets })
}

/// Most lifters at one bar, as the library takes for a bar from a rack; all orders of them are tried.
const MOST_LIFTERS: usize = 4;

/// The loads of each that are left.
pub(crate) fn loads(own: &[Own]) -> Vec<Vec<Mass>> {
    own.iter().map(|one| vec![one.load; usize::from(one.sets)]).collect()
}

/// Turns in an order that stays the same in every round: of all orders that with the fewest discs handled, from the empty
/// bar on; where several need as few, the first in the order given.
pub(crate) fn turns(own: &[Own]) -> Result<Turns, Error> {
    if own.len() > MOST_LIFTERS {
        let (length, most) = (own.len() as u32, MOST_LIFTERS as f64);
        return Err(Error::range(Code::OutOfRange, "lifters", length, 1.0, most, ""));
    }
    let all = orders(own.len()).into_iter().map(|order| in_order(own, &order));
    all.min_by_key(|turns| turns.moves_each_end).ok_or_else(|| Error::plain(Code::EmptyList, "lifters"))
}

fn in_order(own: &[Own], order: &[usize]) -> Turns {
    let rounds = own.iter().map(|one| one.sets).max().unwrap_or_default();
    let mut answer = Turns { turns: Vec::new(), moves_each_end: 0, proved: false };
    let mut bar: Vec<PlacedDisc> = Vec::new();
    for round in 0..rounds {
        for at in order {
            let Some(one) = own.get(*at).filter(|one| round < one.sets) else { continue };
            let same = bar.iter().zip(&one.side).take_while(|(now, then)| now.kind == then.kind).count();
            let off: Vec<PlacedDisc> = bar.iter().skip(same).rev().copied().collect();
            let on: Vec<PlacedDisc> = one.side.iter().skip(same).copied().collect();
            answer.moves_each_end = answer.moves_each_end.saturating_add((off.len() + on.len()) as u32);
            bar.clone_from(&one.side);
            let moves = Moved { total: one.load, off, on };
            answer.turns.push(Turn { lifter: *at as u16, moves, blocks: one.blocks });
        }
    }
    answer
}

/// Every order of so many, that of the list first.
fn orders(count: usize) -> Vec<Vec<usize>> {
    let mut found: Vec<Vec<usize>> = vec![Vec::new()];
    for _ in 0..count {
        found = found
            .iter()
            .flat_map(|order| {
                let left = (0..count).filter(|at| !order.contains(at));
                left.map(|at| [order.as_slice(), &[at]].concat()).collect::<Vec<_>>()
            })
            .collect();
    }
    found
}
