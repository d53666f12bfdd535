//! The fewest disc moves through a row of loads: a shortest path over stacks of discs.
//!
//! A disc comes off only after those outside it, so a stack is a path in a tree and moving from one stack to
//! another costs the steps between them in that tree. For each load of the row the stacks that make it are
//! listed, fewest discs first; two sweeps over the tree then carry the cheapest way forward. Stacks keep the
//! heavier disc inside the lighter one.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

use super::loaded::{Loaded, PlacedDisc};
use super::prepared::Prepared;
use crate::error::Error;
use crate::quantity::Mass;

/// Most stacks listed for one load of the row.
const MOST_STACKS: usize = 4_000;
/// Most places looked at while listing the stacks for one load.
const MOST_LOOKS: u32 = 400_000;
/// Most discs on one end.
const MOST_DISCS: u16 = 30;
/// How many discs beyond the fewest are tried before anything is known about the number of moves.
const FIRST_EXTRA: u16 = 1;

/// Sums on one end that will do, and the one aimed at, in nanograms.
#[derive(Clone, Copy, Debug)]
pub(super) struct Band {
    pub(super) low: i64,
    pub(super) high: i64,
    pub(super) aim: i64,
}

/// One stack for each load of the row, as ranks from the inside out.
#[derive(Clone, Debug)]
pub(super) struct Route {
    pub(super) stacks: Vec<Vec<usize>>,
    pub(super) moves: u32,
    /// Sum of the distances from the sums aimed at, in nanograms.
    pub(super) distance: i64,
    /// No route has fewer moves; false where a list of stacks was cut off.
    pub(super) proved: bool,
}

/// The way with the fewest moves from `start` through all bands, then with the smallest sum of distances
/// from the loads aimed at. None if a band holds no sum; the caller has looked.
pub(super) fn fewest_moves(prepared: &Prepared, start: &[usize], bands: &[Band]) -> Option<Route> {
    let fewest: Vec<u16> = bands.iter().map(|band| prepared.fewest_discs(band)).collect::<Option<_>>()?;
    let few: Vec<Listed> = bands
        .iter()
        .zip(&fewest)
        .map(|(band, fewest)| list(prepared, band, *fewest, fewest.saturating_add(FIRST_EXTRA)))
        .collect();
    let first = cheapest(start, &few)?;
    // A stack can't hold more discs than were on at the start and went on since.
    let most = (start.len() as u32).saturating_add(first.moves).min(u32::from(MOST_DISCS)) as u16;
    let all: Vec<Listed> =
        bands.iter().zip(&fewest).map(|(band, fewest)| list(prepared, band, *fewest, most)).collect();
    let second = cheapest(start, &all)?;
    let proved = all.iter().all(|listed| !listed.cut_off);
    let cost = |route: &Route| (route.moves, route.distance);
    let better = if cost(&second) > cost(&first) { first } else { second };
    Some(Route { proved, ..better })
}

/// The stacks that make one load.
#[derive(Default)]
struct Listed {
    stacks: Vec<(Vec<usize>, i64)>,
    cut_off: bool,
}

fn list(prepared: &Prepared, band: &Band, fewest: u16, most: u16) -> Listed {
    let mut listing = Listing { prepared, band, looks: MOST_LOOKS, found: Listed::default() };
    for discs in fewest..=most {
        listing.extend(0, discs, &mut Vec::new(), 0, 0);
    }
    listing.found
}

struct Listing<'a> {
    prepared: &'a Prepared,
    band: &'a Band,
    looks: u32,
    found: Listed,
}

impl Listing<'_> {
    /// Every way to put `left` more discs of the kinds from `from` on outside the stack.
    fn extend(&mut self, from: usize, left: u16, stack: &mut Vec<usize>, sum: i64, thickness: i32) {
        if left == 0 {
            return self.keep(stack, sum);
        }
        let lines = &self.prepared.lines;
        let lightest = lines.last().map_or(0, |line| line.mass);
        for (rank, line) in lines.iter().enumerate().skip(from) {
            if self.looks == 0 {
                self.found.cut_off = true;
                return;
            }
            self.looks -= 1;
            if sum + line.mass.saturating_mul(i64::from(left)) < self.band.low {
                return;
            }
            let at_least = sum + line.mass + lightest.saturating_mul(i64::from(left - 1));
            let thicker = thickness.saturating_add(line.thickness);
            let on = stack.iter().filter(|other| **other == rank).count();
            let taken = on >= usize::from(line.available);
            let after = sum + line.mass;
            if taken || at_least > self.band.high || thicker > self.prepared.room() || !self.may_end(after) {
                continue;
            }
            stack.push(rank);
            self.extend(rank, left - 1, stack, after, thicker);
            stack.pop();
        }
    }

    /// Whether any combination at all leads from this sum into the band.
    fn may_end(&self, sum: i64) -> bool {
        self.prepared.has_sum_between(self.band.low - sum, self.band.high - sum)
    }

    fn keep(&mut self, stack: &[usize], sum: i64) {
        if sum < self.band.low || sum > self.band.high {
            return;
        }
        if self.found.stacks.len() == MOST_STACKS {
            self.found.cut_off = true;
            return;
        }
        self.found.stacks.push((stack.to_vec(), (sum - self.band.aim).abs()));
    }
}

/// Moves so far, then the sum of distances from the loads aimed at.
type Cost = (u32, i64);

/// What is known at one place of the tree: the cheapest way there, and the place of the stack it comes from.
type Reached = Option<(Cost, usize)>;

fn cheapest(start: &[usize], listed: &[Listed]) -> Option<Route> {
    let mut tree = Tree::new();
    let mut here = alloc::vec![(tree.place(start), (0, 0))];
    let rows: Vec<Vec<usize>> =
        listed.iter().map(|row| row.stacks.iter().map(|(stack, _)| tree.place(stack)).collect()).collect();
    // For each load of the row: a stack that makes it, and the stack before it on the cheapest way there.
    let mut legs: Vec<BTreeMap<usize, usize>> = Vec::new();
    for (row, listed) in rows.iter().zip(listed) {
        let reached = tree.spread(&here);
        let mut leg = BTreeMap::new();
        let arrive = |(place, (_, away)): (&usize, &(Vec<usize>, i64))| {
            let ((moves, distance), from) = reached.get(*place).copied().flatten()?;
            leg.insert(*place, from);
            Some((*place, (moves, distance.saturating_add(*away))))
        };
        here = row.iter().zip(&listed.stacks).filter_map(arrive).collect();
        legs.push(leg);
    }
    let (mut place, (moves, distance)) = here.into_iter().min_by_key(|(_, cost)| *cost)?;
    let mut last_first = Vec::new();
    for leg in legs.iter().rev() {
        last_first.push(tree.stack(place));
        place = *leg.get(&place)?;
    }
    let stacks = last_first.into_iter().rev().collect();
    Some(Route { stacks, moves, distance, proved: false })
}

/// All stacks and what lies inside them; the root is the empty end.
struct Tree {
    /// Parent and rank of each place; a parent always stands before its children.
    places: Vec<(usize, usize)>,
    children: BTreeMap<(usize, usize), usize>,
}

impl Tree {
    fn new() -> Tree {
        Tree { places: alloc::vec![(0, usize::MAX)], children: BTreeMap::new() }
    }

    /// The place of this stack, made if it is new.
    fn place(&mut self, stack: &[usize]) -> usize {
        stack.iter().fold(0, |parent, rank| {
            let next = self.places.len();
            let place = *self.children.entry((parent, *rank)).or_insert(next);
            if place == next {
                self.places.push((parent, *rank));
            }
            place
        })
    }

    /// The ranks on the way from the root.
    fn stack(&self, mut place: usize) -> Vec<usize> {
        let mut outermost_first = Vec::new();
        while place > 0 {
            let Some((parent, rank)) = self.places.get(place) else { break };
            outermost_first.push(*rank);
            place = *parent;
        }
        outermost_first.into_iter().rev().collect()
    }

    /// The cheapest way to every place: one sweep toward the root, one away from it.
    fn spread(&self, here: &[(usize, Cost)]) -> Vec<Reached> {
        let mut reached = alloc::vec![None; self.places.len()];
        for (place, cost) in here {
            offer(&mut reached, *place, Some((*cost, *place)), 0);
        }
        for (place, (parent, _)) in self.places.iter().enumerate().skip(1).rev() {
            let from = reached.get(place).copied().flatten();
            offer(&mut reached, *parent, from, 1);
        }
        for (place, (parent, _)) in self.places.iter().enumerate().skip(1) {
            let from = reached.get(*parent).copied().flatten();
            offer(&mut reached, place, from, 1);
        }
        reached
    }
}

/// Takes the way over `from` with `moves` more, if it is cheaper than what is known.
fn offer(reached: &mut [Reached], place: usize, from: Reached, moves: u32) {
    let (Some(known), Some(((so_far, distance), origin))) = (reached.get_mut(place), from) else { return };
    let cost = (so_far.saturating_add(moves), distance);
    if known.is_none_or(|(best, _)| cost < best) {
        *known = Some((cost, origin));
    }
}

impl Prepared {
    fn sums_from(&self, low: i64) -> &[super::table::Entry] {
        let start = self.table.partition_point(|entry| entry.sum < low);
        self.table.get(start..).unwrap_or_default()
    }

    fn has_sum_between(&self, low: i64, high: i64) -> bool {
        self.sums_from(low).first().is_some_and(|entry| entry.sum <= high)
    }

    /// The fewest discs that make a sum of the band.
    fn fewest_discs(&self, band: &Band) -> Option<u16> {
        let inside = self.sums_from(band.low).iter().take_while(|entry| entry.sum <= band.high);
        inside.map(|entry| entry.discs).min()
    }
}

/// What happens on each end on the way to one load of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EndMoves {
    /// The whole load afterwards.
    pub total: Mass,
    /// The load made less the load wanted.
    pub difference: Mass,
    /// Discs that come off each end, the outermost first.
    pub off: Vec<PlacedDisc>,
    /// Discs that go on each end, the innermost first.
    pub on: Vec<PlacedDisc>,
    /// The discs on each end afterwards, from the inside out.
    pub side: Vec<PlacedDisc>,
}

impl EndMoves {
    /// From the discs that are on each end to those of a load: what both have from the inside out stays on.
    pub(crate) fn between(before: &[PlacedDisc], after: &Loaded) -> EndMoves {
        let side = after.side();
        let kept = before.iter().zip(side).take_while(|(old, new)| old.kind == new.kind).count();
        EndMoves {
            total: after.total,
            difference: after.difference,
            off: before.iter().skip(kept).rev().copied().collect(),
            on: side.iter().skip(kept).copied().collect(),
            side: side.to_vec(),
        }
    }
}

impl Prepared {
    /// The moves from one stack to the next along a route.
    pub(super) fn end_moves(
        &self,
        before: &[usize],
        after: &[usize],
        wanted: Mass,
    ) -> Result<EndMoves, Error> {
        let kept = before.iter().zip(after).take_while(|(a, b)| a == b).count();
        let named = |ranks: &[usize]| -> Vec<PlacedDisc> {
            ranks.iter().filter_map(|rank| self.disc(*rank)).collect()
        };
        let taken = before.get(kept..).unwrap_or_default();
        let sum = after.iter().filter_map(|rank| self.lines.get(*rank)).map(|line| line.mass).sum();
        let total = self.total_of(sum)?;
        Ok(EndMoves {
            total,
            difference: total.minus(wanted)?,
            off: taken.iter().rev().filter_map(|rank| self.disc(*rank)).collect(),
            on: named(after.get(kept..).unwrap_or_default()),
            side: named(after),
        })
    }

    /// The band of sums on one end for totals from `low` to `high`; none if it lies below the empty bar.
    pub(super) fn band(&self, low: Mass, high: Mass, aim: Mass) -> Option<Band> {
        let sum = |total: Mass| total.nanograms().saturating_sub(self.base);
        let band = Band {
            low: (sum(low) + self.ends - 1).div_euclid(self.ends).max(0),
            high: sum(high).div_euclid(self.ends),
            aim: sum(aim).div_euclid(self.ends),
        };
        (band.low <= band.high && self.has_sum_between(band.low, band.high)).then_some(band)
    }
}
