//! The questions, one call each.

use alloc::vec::Vec;

use super::bar::Bar;
use super::disc::Stock;
use super::implement::Implement;
use super::loaded::{Loaded, Rounding};
use super::prepared::Prepared;
use crate::error::{Code, Error};
use crate::quantity::Mass;
use crate::source::{ARITHMETIC, formula, rows};

formula! {
    "loading.load",
    /// What goes on each side of the bar for this load?
    ///
    /// # Formula
    /// `total = bar + 2 collar + 2 sum(discs of one side)`, over every combination that the stock has in
    /// pairs. Chosen: the smallest difference that the policy allows, then the fewest discs, then the largest.
    ///
    /// # Domain
    /// Any stock of up to 25 kinds; found by complete search, never by taking the largest first.
    ///
    /// # Errors
    /// `below_lightest` for less than the empty bar; `above_heaviest`; `not_loadable` for an exact load that
    /// no combination makes; `stock_too_large` beyond 300 000 different sums a side.
    ///
    /// # Source
    /// Arithmetic (row `loading.load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Rounding, Stock, load};
    /// use bismar::quantity::{Name, Mass};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let discs = [20.0, 10.0, 5.0, 2.5, 1.25].map(|kg| Mass::from_kg(kg).and_then(|mass| Disc::new(mass, 2)));
    /// let stock = Stock::new(discs.into_iter().collect::<Result<_, _>>()?)?;
    /// let loaded = load(&bar, &stock, Mass::from_kg(63.4)?, Rounding::Below)?;
    /// assert_eq!(loaded.total.kg(), 62.5);
    /// assert_eq!(loaded.side().iter().map(|disc| disc.nominal.kg()).collect::<Vec<_>>(), [20.0, 1.25]);
    /// assert_eq!(loaded.difference.kg(), -0.9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn load(bar: &Bar, stock: &Stock, target: Mass, policy: Rounding) -> Result<Loaded, Error> {
        Prepared::new(&Implement::Bar(bar.clone()), stock, target)?.load(target, policy)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

formula! {
    "loading.load_on",
    /// How is this load made on a bar, a handle, a rack of dumbbells, a machine, an assistance or a pin?
    ///
    /// # Formula
    /// As [`load()`] for discs; else the nearest of the settings that the implement has. More is harder:
    /// assistance is a load below zero, so that `below` means at least as much help.
    ///
    /// # Errors
    /// As [`load()`].
    ///
    /// # Source
    /// Arithmetic (row `loading.load_on`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Implement, Pieces, Rounding, Stock, load_on};
    /// use bismar::quantity::{Name, Mass};
    ///
    /// let bells = [8.0, 12.0, 16.0].map(Mass::from_kg).into_iter().collect::<Result<_, _>>()?;
    /// let bells = Implement::Pieces(Pieces::new(Name::new("bells")?, bells)?);
    /// let loaded = load_on(&bells, &Stock::default(), Mass::from_kg(14.0)?, Rounding::Below)?;
    /// assert_eq!(loaded.total.kg(), 12.0);
    /// assert_eq!(loaded.next_above.map(Mass::kg), Some(16.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn load_on(implement: &Implement, stock: &Stock, target: Mass, policy: Rounding) -> Result<Loaded, Error> {
        Prepared::new(implement, stock, target)?.load(target, policy)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

formula! {
    "loading.step_up",
    /// What is the next load above this one?
    ///
    /// # Formula
    /// The lightest loadable total that is heavier than `from`.
    ///
    /// # Errors
    /// `above_heaviest` if there is none; `stock_too_large`.
    ///
    /// # Source
    /// Arithmetic (row `loading.step_up`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Implement, Stock, step_up};
    /// use bismar::quantity::{Name, Mass};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let stock = Stock::new(vec![Disc::new(Mass::from_kg(1.25)?, 2)?])?;
    /// let next = step_up(&Implement::Bar(bar), &stock, Mass::from_kg(20.0)?)?;
    /// assert_eq!(next.total.kg(), 22.5);
    /// assert_eq!(next.difference_percent, Some(12.5));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn step_up(implement: &Implement, stock: &Stock, from: Mass) -> Result<Loaded, Error> {
        Prepared::new(implement, stock, from)?.step_up(from)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// A stretch without a loadable total.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Gap {
    /// The load it starts at.
    pub from: Mass,
    /// The load it ends at.
    pub to: Mass,
    /// Its size.
    pub size: Mass,
}

/// What can be made in a range.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Reachable {
    /// Every loadable total, rising.
    pub totals: Vec<Mass>,
    /// The largest gap between two neighbours of the list; the lowest of several equal ones.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub largest_gap: Option<Gap>,
}

formula! {
    "loading.reachable",
    /// What can be made in this range, and where is the largest gap?
    ///
    /// # Formula
    /// All totals from `low` to `high`, both included; the gap is the largest difference of two neighbours.
    ///
    /// # Errors
    /// `interval_reversed` if `low` is above `high`; `stock_too_large`.
    ///
    /// # Source
    /// Arithmetic (row `loading.reachable`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Implement, Stock, reachable};
    /// use bismar::quantity::{Name, Mass};
    ///
    /// let bar = Bar::new(Name::new("bar 15")?, Mass::from_kg(15.0)?, Mass::ZERO)?;
    /// let stock = Stock::new(vec![Disc::new(Mass::from_kg(5.0)?, 2)?, Disc::new(Mass::from_kg(1.0)?, 2)?])?;
    /// let found = reachable(&Implement::Bar(bar), &stock, Mass::ZERO, Mass::from_kg(30.0)?)?;
    /// assert_eq!(found.totals.iter().map(|total| total.kg()).collect::<Vec<_>>(), [15.0, 17.0, 25.0, 27.0]);
    /// assert_eq!(found.largest_gap.map(|gap| gap.size.kg()), Some(8.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn reachable(implement: &Implement, stock: &Stock, low: Mass, high: Mass) -> Result<Reachable, Error> {
        in_order(low, high)?;
        let prepared = super::ends::prepare(implement, stock, high, 0)?;
        let totals: Vec<Mass> = prepared.totals(low, high).collect();
        let largest_gap = largest_gap(&totals)?;
        Ok(Reachable { totals, largest_gap })
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// Refuses a range whose ends are swapped.
pub(super) fn in_order(low: Mass, high: Mass) -> Result<(), Error> {
    if low > high { Err(Error::plain(Code::IntervalReversed, "low")) } else { Ok(()) }
}

/// The largest difference of two neighbours; the first of several equal ones.
pub(super) fn largest_gap(totals: &[Mass]) -> Result<Option<Gap>, Error> {
    let mut largest: Option<Gap> = None;
    for (from, to) in totals.iter().zip(totals.iter().skip(1)) {
        let size = to.minus(*from)?;
        if largest.is_none_or(|gap| size > gap.size) {
            largest = Some(Gap { from: *from, to: *to, size });
        }
    }
    Ok(largest)
}

rows![load, load_on, step_up, reachable];
