//! A new load on a bar that is not empty: which discs stay.

use alloc::vec::Vec;

use super::disc::Stock;
use super::implement::Implement;
use super::loaded::{Loaded, PlacedDisc, Rounding};
use super::prepared::Prepared;
use super::table::{Counts, Entry};
use crate::error::Error;
use crate::quantity::Mass;
use crate::source::{ARITHMETIC, formula, rows};

/// Most places that the search for the discs that may stay looks at. Ordinary stocks need a few dozen.
const MOST_LOOKS: u32 = 100_000;

/// A load, and how the ends get there from what is on them.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DiscChange {
    /// The load.
    pub loaded: Loaded,
    /// Discs that come off each end, the outermost first.
    pub off: Vec<PlacedDisc>,
    /// Discs that go on each end, the innermost first.
    pub on: Vec<PlacedDisc>,
    /// Whether the search ended by itself; if not (only with very many kinds that are nearly alike), fewer
    /// changes may be possible. Load and number of discs are the best there is in any case.
    pub proved: bool,
}

/// What the rest of an end must still hold.
#[derive(Clone, Copy)]
struct Need {
    sum: i64,
    discs: u16,
    room: i32,
}

impl Prepared {
    /// What goes on for this load, with as many of the discs that are on as possible left in place?
    ///
    /// `on_bar` names the kinds on each end from the inside out. Difference and number of discs come first;
    /// of the combinations that are equally good, the one with the fewest discs off and on is taken, then
    /// the one with the largest discs inside.
    ///
    /// # Errors
    /// As [`Prepared::load`]; `not_in_stock` for discs on the bar that the stock does not have.
    pub fn load_from(&self, target: Mass, policy: Rounding, on_bar: &[u16]) -> Result<DiscChange, Error> {
        let standing = self.ranks("on_bar", on_bar)?;
        let entry = self.choose(target, policy)?;
        let mut looks = MOST_LOOKS;
        let (kept, rest) = self.keep_most(&entry, &standing, &mut looks);
        let now: Vec<PlacedDisc> = standing.iter().filter_map(|rank| self.disc(*rank)).collect();
        let mut placed: Vec<PlacedDisc> = now.iter().take(kept).copied().collect();
        let times = |rank: usize| core::iter::repeat_n(rank, usize::from(rest.of(rank)));
        let on: Vec<PlacedDisc> =
            (0..self.lines.len()).flat_map(times).filter_map(|rank| self.disc(rank)).collect();
        placed.extend(on.iter().copied());
        let off = now.into_iter().skip(kept).rev().collect();
        Ok(DiscChange { loaded: self.answer(&entry, placed, target)?, off, on, proved: looks > 0 })
    }

    /// The longest run of standing discs, from the inside, that a combination as good as `entry` begins with.
    fn keep_most(&self, entry: &Entry, standing: &[usize], looks: &mut u32) -> (usize, Counts) {
        if self.lines.is_empty() {
            return (0, Counts::default());
        }
        let longest = standing.len().min(usize::from(entry.discs));
        for kept in (1..=longest).rev() {
            let mut need = Need { sum: entry.sum, discs: entry.discs, room: self.room() };
            let mut used = Counts::default();
            for rank in standing.iter().take(kept) {
                let Some(line) = self.lines.get(*rank) else { continue };
                need.sum -= line.mass;
                need.discs -= 1;
                need.room = need.room.saturating_sub(line.thickness);
                used = used.plus(Counts::only(*rank, 1));
            }
            if let Some(rest) = self.complete(0, need, used, looks) {
                return (kept, rest);
            }
        }
        (0, entry.counts)
    }

    /// Discs of the kinds from `rank` on that fill the need exactly, the largest first.
    fn complete(&self, rank: usize, need: Need, used: Counts, looks: &mut u32) -> Option<Counts> {
        if need.discs == 0 {
            return (need.sum == 0 && need.room >= 0).then(Counts::default);
        }
        let line = self.lines.get(rank)?;
        if *looks == 0 || need.sum > line.mass.saturating_mul(i64::from(need.discs)) || !self.may_fill(need) {
            return None;
        }
        *looks -= 1;
        let most = line.available.saturating_sub(used.of(rank)).min(need.discs);
        (0..=most).rev().find_map(|count| {
            let left = Need {
                sum: need.sum - line.mass.saturating_mul(i64::from(count)),
                discs: need.discs - count,
                room: need.room.saturating_sub(line.thickness.saturating_mul(i32::from(count))),
            };
            self.complete(rank + 1, left, used, looks).map(|rest| rest.plus(Counts::only(rank, count)))
        })
    }

    /// Whether the whole stock could fill the need at all; a cheap look that ends most branches.
    fn may_fill(&self, need: Need) -> bool {
        let end = self.table.partition_point(|entry| entry.sum <= need.sum);
        let best = end.checked_sub(1).and_then(|at| self.table.get(at));
        need.room >= 0 && best.is_some_and(|entry| entry.sum == need.sum && entry.discs <= need.discs)
    }
}

formula! {
    "loading.load_from",
    /// What goes on each end for this load, with as many of the discs that are on as possible left in place?
    ///
    /// # Formula
    /// As [`load`](super::load()) up to the number of discs; then the fewest discs off and on, where only the
    /// outermost comes off; then the largest inside. `on_bar` names the kinds on each end from the inside out.
    ///
    /// # Errors
    /// As [`load`](super::load()); `not_in_stock` for a disc on the bar that the stock does not have.
    ///
    /// # Source
    /// Arithmetic (row `loading.load_from`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Implement, Rounding, Stock, load_from};
    /// use bismar::quantity::{Name, Mass};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let stock = Stock::new(vec![
    ///     Disc::new(Mass::from_kg(15.0)?, 2)?,
    ///     Disc::new(Mass::from_kg(10.0)?, 4)?,
    ///     Disc::new(Mass::from_kg(5.0)?, 2)?,
    /// ])?;
    /// // 20 a side from 15 + 5 or 10 + 10; a 10 is on already.
    /// let change = load_from(&Implement::Bar(bar), &stock, Mass::from_kg(60.0)?, Rounding::Below, &[1])?;
    /// assert_eq!(change.on.iter().map(|disc| disc.nominal.kg()).collect::<Vec<_>>(), [10.0]);
    /// assert!(change.off.is_empty());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn load_from(implement: &Implement, stock: &Stock, target: Mass, policy: Rounding, on_bar: &[u16]) -> Result<DiscChange, Error> {
        Prepared::new(implement, stock, target)?.load_from(target, policy, on_bar)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

rows![load_from];
