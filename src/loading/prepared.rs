//! An implement with its stock, made ready for many questions.

use alloc::vec::Vec;

use super::disc::{Disc, Stock};
use super::implement::Implement;
use super::loaded::{Loaded, PlacedDisc, Rounding, Setting};
use super::table::{Entry, Line};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Length, Mass};

/// An implement and a stock with every loadable total worked out, up to a stated load.
///
/// Building it costs milliseconds for a large mixed stock; a question afterwards is one search in a sorted
/// list. The answer is the best there is, never a guess: the smallest difference by the policy, then the
/// fewest discs, then the largest discs.
///
/// ```
/// use bismar::loading::{Bar, Disc, Implement, Rounding, Prepared, Stock};
/// use bismar::quantity::{Name, Mass};
///
/// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
/// // 6 kg a side from {5, 3, 3}: taking the largest first would miss it.
/// let stock = Stock::new(vec![Disc::new(Mass::from_kg(5.0)?, 2)?, Disc::new(Mass::from_kg(3.0)?, 4)?])?;
/// let prepared = Prepared::new(&Implement::Bar(bar), &stock, Mass::from_kg(100.0)?)?;
/// let loaded = prepared.load(Mass::from_kg(32.0)?, Rounding::Below)?;
/// assert_eq!(loaded.total.kg(), 32.0);
/// assert_eq!(loaded.side().iter().map(|disc| disc.nominal.kg()).collect::<Vec<_>>(), [3.0, 3.0]);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Prepared {
    pub(super) base: i64,
    pub(super) ends: i64,
    pub(super) table: Vec<Entry>,
    pub(super) lines: Vec<Line>,
    pub(super) discs: Vec<Disc>,
    pub(super) settings: Vec<Setting>,
    pub(super) room: Option<Length>,
    pub(super) highest: Mass,
}

impl Prepared {
    /// Works out every total up to `highest`.
    ///
    /// # Errors
    /// `stock_too_large` if the discs make more than 300 000 different sums on one end.
    pub fn new(implement: &Implement, stock: &Stock, highest: Mass) -> Result<Prepared, Error> {
        super::ends::prepare(implement, stock, highest, super::ends::MARGIN_IN_DISCS)
    }

    /// What goes on for this load?
    ///
    /// # Errors
    /// `below_lightest` or `above_heaviest` where the policy leaves nothing; `not_loadable` for
    /// [`Rounding::Exact`]; `out_of_range` for a target above the load this was prepared for.
    pub fn load(&self, target: Mass, policy: Rounding) -> Result<Loaded, Error> {
        let entry = self.choose(target, policy)?;
        self.answer(&entry, self.placed(&entry), target)
    }

    /// The best entry that the policy allows.
    pub(super) fn choose(&self, target: Mass, policy: Rounding) -> Result<Entry, Error> {
        self.check_prepared(target)?;
        let below = self.last_at_most(target);
        let above = self.first_at_least(target);
        let chosen = match policy {
            Rounding::Exact => below.filter(|entry| self.total(entry) == target.nanograms()),
            Rounding::Below => below,
            Rounding::Above => above,
            Rounding::Nearest => self.nearer(target, below, above),
        };
        chosen.ok_or_else(|| self.refuse(target, policy))
    }

    /// The next load above this one.
    ///
    /// # Errors
    /// `above_heaviest` if there is none; `out_of_range` above the load this was prepared for.
    pub fn step_up(&self, from: Mass) -> Result<Loaded, Error> {
        self.check_prepared(from)?;
        match self.entry_after(from.nanograms()) {
            Some(entry) => self.answer(&entry, self.placed(&entry), from),
            None => Err(self.refuse(from, Rounding::Above)),
        }
    }

    /// The next load below this one.
    ///
    /// # Errors
    /// `below_lightest` if there is none; `out_of_range` above the load this was prepared for.
    pub fn step_down(&self, from: Mass) -> Result<Loaded, Error> {
        self.check_prepared(from)?;
        match self.entry_before(from.nanograms()) {
            Some(entry) => self.answer(&entry, self.placed(&entry), from),
            None => Err(self.refuse(from, Rounding::Below)),
        }
    }

    /// Every loadable total from `low` to `high`, rising.
    pub fn totals(&self, low: Mass, high: Mass) -> impl Iterator<Item = Mass> + '_ {
        let start = self.table.partition_point(|entry| self.total(entry) < low.nanograms());
        let mut last = None;
        self.table
            .iter()
            .skip(start)
            .map(|entry| self.total(entry))
            .take_while(move |total| *total <= high.nanograms())
            .filter(move |total| last.replace(*total) != Some(*total))
            .filter_map(Mass::from_nanograms)
    }

    /// The lightest load.
    #[must_use]
    pub fn lightest(&self) -> Option<Mass> {
        self.table.first().and_then(|entry| self.mass(entry))
    }

    /// The whole load with this sum on each end.
    pub(super) fn total_of(&self, sum: i64) -> Result<Mass, Error> {
        let entry = Entry { sum, ..Entry::default() };
        self.mass(&entry).ok_or_else(|| Error::plain(Code::Overflow, "total"))
    }

    fn check_prepared(&self, target: Mass) -> Result<(), Error> {
        if target <= self.highest {
            return Ok(());
        }
        let lightest = self.lightest().unwrap_or_default().kg();
        Err(Error::range(
            Code::OutOfRange,
            "target",
            target.kg(),
            lightest,
            self.highest.kg(),
            "kg, as prepared",
        ))
    }

    fn total(&self, entry: &Entry) -> i64 {
        self.base.saturating_add(entry.sum.saturating_mul(self.ends))
    }

    fn mass(&self, entry: &Entry) -> Option<Mass> {
        Mass::from_nanograms(self.total(entry))
    }

    /// The best entry of the last sum whose total is not above the target.
    fn last_at_most(&self, target: Mass) -> Option<Entry> {
        let end = self.table.partition_point(|entry| self.total(entry) <= target.nanograms());
        end.checked_sub(1).and_then(|at| self.table.get(at)).copied()
    }

    fn first_at_least(&self, target: Mass) -> Option<Entry> {
        self.entry_after(target.nanograms().saturating_sub(1))
    }

    /// The best entry of the first sum whose total is above this. Within a sum the best comes last.
    fn entry_after(&self, total: i64) -> Option<Entry> {
        let start = self.table.partition_point(|entry| self.total(entry) <= total);
        let sum = self.table.get(start)?.sum;
        let entry = self.table.iter().skip(start).take_while(|entry| entry.sum == sum).last().copied()?;
        self.mass(&entry).map(|_| entry)
    }

    fn entry_before(&self, total: i64) -> Option<Entry> {
        let end = self.table.partition_point(|entry| self.total(entry) < total);
        end.checked_sub(1).and_then(|at| self.table.get(at)).copied()
    }

    fn nearer(&self, target: Mass, below: Option<Entry>, above: Option<Entry>) -> Option<Entry> {
        let (Some(low), Some(high)) = (below, above) else { return below.or(above) };
        let under = target.nanograms().saturating_sub(self.total(&low));
        let over = self.total(&high).saturating_sub(target.nanograms());
        Some(if over < under { high } else { low })
    }

    fn refuse(&self, target: Mass, policy: Rounding) -> Error {
        let lightest = self.lightest().unwrap_or_default();
        let heaviest = self.table.last().and_then(|entry| self.mass(entry)).unwrap_or(Mass::MAX);
        let code = match policy {
            _ if target < lightest => Code::BelowLightest,
            Rounding::Below => Code::BelowLightest,
            Rounding::Exact if target <= heaviest => Code::NotLoadable,
            _ => Code::AboveHeaviest,
        };
        Error::range(code, "target", target.kg(), lightest.kg(), heaviest.kg(), "kg")
    }

    pub(super) fn answer(
        &self,
        entry: &Entry,
        placed: Vec<PlacedDisc>,
        target: Mass,
    ) -> Result<Loaded, Error> {
        let total = self.mass(entry).ok_or_else(|| Error::plain(Code::Overflow, "total"))?;
        let setting = match self.settings.get(entry.counts.as_index()) {
            Some(setting) if self.lines.is_empty() && !self.settings.is_empty() => setting.clone(),
            _ => Setting::Discs(placed),
        };
        let difference = total.minus(target)?;
        let (next_below, next_above) = self.neighbours(total);
        let mut loaded = Loaded {
            setting,
            total,
            nominal: total,
            difference,
            difference_percent: percent(difference, target),
            centre_height: None,
            fit_checked: false,
            next_below,
            next_above,
        };
        loaded.nominal = self.nominal(loaded.side(), total)?;
        loaded.centre_height = centre_height(loaded.side());
        loaded.fit_checked = self.fit_checked(loaded.side());
        Ok(loaded)
    }

    /// The next loads down and up.
    pub(super) fn neighbours(&self, total: Mass) -> (Option<Mass>, Option<Mass>) {
        let mass = |entry: Option<Entry>| entry.and_then(|entry| self.mass(&entry));
        (mass(self.entry_before(total.nanograms())), mass(self.entry_after(total.nanograms())))
    }

    /// The discs of an entry from the inside out: heaviest first, of equal mass the larger first.
    pub(super) fn placed(&self, entry: &Entry) -> Vec<PlacedDisc> {
        let times = |rank: usize| core::iter::repeat_n(rank, usize::from(entry.counts.of(rank)));
        (0..self.lines.len()).flat_map(times).filter_map(|rank| self.disc(rank)).collect()
    }

    /// One disc of the kind of this rank.
    pub(super) fn disc(&self, rank: usize) -> Option<PlacedDisc> {
        let kind = self.lines.get(rank)?.kind;
        let disc = self.discs.get(kind)?;
        let (nominal, mass, diameter) = (disc.nominal(), disc.mass(), disc.diameter());
        Some(PlacedDisc { kind: kind as u16, nominal, mass, diameter })
    }

    /// Room on one end in micrometres.
    pub(super) fn room(&self) -> i32 {
        self.room.map_or(i32::MAX, Length::micrometres)
    }

    /// The ranks of discs that stand on the bar, named by kind.
    pub(super) fn ranks(&self, field: &'static str, kinds: &[u16]) -> Result<Vec<usize>, Error> {
        let mut ranks = Vec::new();
        for kind in kinds {
            let rank = self.lines.iter().position(|line| line.kind == usize::from(*kind));
            let rank = rank.ok_or_else(|| not_in_stock(field, *kind))?;
            let taken = ranks.iter().filter(|other| **other == rank).count();
            if self.lines.get(rank).is_none_or(|line| taken >= usize::from(line.available)) {
                return Err(not_in_stock(field, *kind));
            }
            ranks.push(rank);
        }
        Ok(ranks)
    }

    fn nominal(&self, side: &[PlacedDisc], total: Mass) -> Result<Mass, Error> {
        let mut nominal = total;
        for disc in side {
            let error = disc.nominal.minus(disc.mass)?;
            for _ in 0..self.ends {
                nominal = nominal.plus(error)?;
            }
        }
        Ok(nominal)
    }

    fn fit_checked(&self, side: &[PlacedDisc]) -> bool {
        let known = |disc: &PlacedDisc| {
            self.discs.get(usize::from(disc.kind)).is_some_and(|disc| disc.thickness().is_some())
        };
        self.room.is_some() && side.iter().all(known)
    }
}

fn not_in_stock(field: &'static str, kind: u16) -> Error {
    Error::new(Code::NotInStock, field, kind, Allowed::rule("kinds of the stock, no more discs than it has"))
}

/// Height of the centre: half the largest diameter; none without a disc or with one of unknown size.
fn centre_height(side: &[PlacedDisc]) -> Option<Length> {
    let mut largest = None;
    for disc in side {
        largest = largest.max(Some(disc.diameter?));
    }
    largest.map(Length::half)
}

/// A difference in percent of what was wanted.
pub(super) fn percent(difference: Mass, target: Mass) -> Option<f64> {
    let whole = numeric::fabs(target.kg());
    (whole > 0.0).then(|| numeric::tidy(100.0 * difference.kg() / whole))
}
