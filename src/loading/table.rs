//! Every sum that the discs make on one end, each with its best combination.
//!
//! One merge of two sorted lists for each part of each kind of disc (1, 2, 4, ... and the rest, so that any
//! number up to the count is a sum of parts). What makes one combination better than another of the same sum
//! (fewer discs, then larger discs) does not change when the same discs are added to both, so keeping only
//! the best of each sum loses nothing. Where a sleeve limits the thickness, a thinner combination is kept
//! beside a better but thicker one.

use alloc::vec::Vec;
use core::cmp::Ordering;

use super::disc::Stock;
use crate::error::{Allowed, Code, Error};

/// Most entries of a table; a stock that makes more is refused with `stock_too_large`.
pub(super) const MOST_SUMS: usize = 300_000;
/// Bits for the number of discs of one kind: up to 31, more than [`super::Disc::MOST`].
const BITS: u32 = 5;

/// How many discs of each kind, packed; the heaviest kind has the highest bits, so that comparing two packs
/// compares the numbers of the largest disc first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Counts(u128);

impl Counts {
    /// Where the kind of this rank (0 the heaviest) has its bits. A stock has at most 25 kinds: 125 bits.
    const fn shift(rank: usize) -> u32 {
        (Stock::MOST_KINDS - 1).saturating_sub(rank) as u32 * BITS
    }

    /// `count` discs of the kind of this rank, and nothing else.
    pub(super) const fn only(rank: usize, count: u16) -> Counts {
        Counts((count as u128) << Counts::shift(rank))
    }

    /// How many discs of the kind of this rank.
    pub(super) const fn of(self, rank: usize) -> u16 {
        ((self.0 >> Counts::shift(rank)) & ((1 << BITS) - 1)) as u16
    }

    /// Both together.
    pub(super) const fn plus(self, other: Counts) -> Counts {
        Counts(self.0 + other.0)
    }

    /// A plain number in the place of counts, for lists that hold no discs.
    pub(super) const fn index(index: usize) -> Counts {
        Counts(index as u128)
    }

    /// The plain number.
    pub(super) const fn as_index(self) -> usize {
        self.0 as usize
    }
}

/// A kind of disc as the search sees it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Line {
    /// Mass of one disc in nanograms.
    pub(super) mass: i64,
    /// Room that one takes, in micrometres; 0 where there is no limit or it is not known.
    pub(super) thickness: i32,
    /// How many may go on one end.
    pub(super) available: u16,
    /// Its place in the stock.
    pub(super) kind: usize,
}

/// One sum.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Entry {
    /// Mass on one end in nanograms.
    pub(super) sum: i64,
    /// Room taken in micrometres.
    pub(super) thickness: i32,
    /// Number of discs.
    pub(super) discs: u16,
    /// Which discs.
    pub(super) counts: Counts,
}

impl Entry {
    const fn plus(self, part: Entry) -> Entry {
        Entry {
            sum: self.sum + part.sum,
            thickness: self.thickness.saturating_add(part.thickness),
            discs: self.discs + part.discs,
            counts: self.counts.plus(part.counts),
        }
    }

    /// Fewer discs, then larger ones: `Less` is better.
    fn quality(&self, other: &Entry) -> Ordering {
        self.discs.cmp(&other.discs).then(other.counts.cmp(&self.counts))
    }

    fn place(&self, other: &Entry) -> Ordering {
        self.sum.cmp(&other.sum).then(self.thickness.cmp(&other.thickness)).then_with(|| self.quality(other))
    }
}

/// What no entry may exceed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Limits {
    /// Highest sum in nanograms.
    pub(super) highest: i64,
    /// Room on the sleeve in micrometres.
    pub(super) room: i32,
}

/// All sums of these kinds, rising. `lines` are sorted from the heaviest; with `needed`, at least one disc of
/// the first `needed` kinds is in every entry.
pub(super) fn all_sums(lines: &[Line], needed: usize, limits: Limits) -> Result<Vec<Entry>, Error> {
    let mut table = alloc::vec![Entry::default()];
    let mut spare = Vec::new();
    for (rank, line) in lines.iter().enumerate() {
        if rank == needed && needed > 0 {
            table.retain(|entry| entry.discs > 0);
        }
        for count in parts(line.available) {
            merge(&table, part(rank, line, count), limits, &mut spare)?;
            core::mem::swap(&mut table, &mut spare);
        }
    }
    if needed >= lines.len() && needed > 0 {
        table.retain(|entry| entry.discs > 0);
    }
    Ok(table)
}

fn part(rank: usize, line: &Line, count: u16) -> Entry {
    Entry {
        sum: line.mass.saturating_mul(i64::from(count)),
        thickness: line.thickness.saturating_mul(i32::from(count)),
        discs: count,
        counts: Counts::only(rank, count),
    }
}

/// 1, 2, 4, ... and a rest: every number up to `available` is the sum of some of them.
fn parts(available: u16) -> impl Iterator<Item = u16> {
    let mut left = available;
    let mut next = 1;
    core::iter::from_fn(move || {
        let count = next.min(left);
        left -= count;
        next *= 2;
        (count > 0).then_some(count)
    })
}

/// The table with and without the part, in one pass.
fn merge(table: &[Entry], part: Entry, limits: Limits, out: &mut Vec<Entry>) -> Result<(), Error> {
    out.clear();
    let fits = |entry: &Entry| entry.sum <= limits.highest && entry.thickness <= limits.room;
    let mut without = table.iter().copied().peekable();
    let mut with = table.iter().map(|entry| entry.plus(part)).filter(fits).peekable();
    loop {
        let next = match (without.peek(), with.peek()) {
            (Some(a), Some(b)) if a.place(b) != Ordering::Greater => without.next(),
            (_, Some(_)) => with.next(),
            (_, None) => without.next(),
        };
        let Some(next) = next else { return Ok(()) };
        let beaten =
            out.last().is_some_and(|last| last.sum == next.sum && last.quality(&next) != Ordering::Greater);
        if !beaten {
            if out.len() == MOST_SUMS {
                return Err(too_large());
            }
            out.push(next);
        }
    }
}

fn too_large() -> Error {
    let rule =
        Allowed::rule("at most 300000 different sums on one end: fewer kinds of disc, or a lower range");
    Error::new(Code::StockTooLarge, "stock", crate::error::Given::Nothing, rule)
}
