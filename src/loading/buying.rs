//! Which discs would help.

use alloc::vec::Vec;

use super::disc::{Disc, Stock};
use super::implement::Implement;
use super::solve::{Gap, in_order, largest_gap};
use crate::error::{Code, Error};
use crate::quantity::Mass;
use crate::source::{ARITHMETIC, formula, rows};

/// Most discs compared in one question.
const MOST_OFFERS: usize = 20;

/// One pair that could be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Offer {
    /// Mass of one disc of the pair.
    pub disc: Mass,
    /// The largest gap that remains with it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub largest_gap: Option<Gap>,
}

/// What each pair would do.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Purchase {
    /// The largest gap as it is.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub now: Option<Gap>,
    /// The pair that leaves the smallest largest gap, the lighter of two that do equally; none if no pair
    /// makes it smaller.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub best: Option<Offer>,
    /// Every pair in the order asked.
    pub offers: Vec<Offer>,
}

formula! {
    "loading.buy",
    /// Which one added pair closes the largest gap in this range?
    ///
    /// # Formula
    /// For each disc offered: the largest gap of [`reachable`](super::reachable()) with one pair more (one
    /// for each end that is loaded alike). Here the ends of the range count as ends of a gap, except below
    /// the lightest load, so that a range which the stock does not fill shows.
    ///
    /// # Errors
    /// `out_of_range` for more than 20 discs; `interval_reversed`; `stock_too_large`; those of a disc.
    ///
    /// # Source
    /// Arithmetic (row `loading.buy`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Implement, Stock, buy};
    /// use bismar::quantity::{Mass, Name};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let stock = Stock::new(vec![Disc::new(Mass::from_kg(5.0)?, 4)?])?;
    /// let (low, high) = (Mass::from_kg(20.0)?, Mass::from_kg(40.0)?);
    /// let offered = [Mass::from_kg(1.25)?, Mass::from_kg(2.5)?];
    /// let advice = buy(&Implement::Bar(bar), &stock, low, high, &offered)?;
    /// assert_eq!(advice.now.map(|gap| gap.size.kg()), Some(10.0));
    /// assert_eq!(advice.best.map(|offer| offer.disc.kg()), Some(2.5));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn buy(implement: &Implement, stock: &Stock, low: Mass, high: Mass, offered: &[Mass]) -> Result<Purchase, Error> {
        if offered.len() > MOST_OFFERS {
            let most = MOST_OFFERS as f64;
            return Err(Error::range(Code::OutOfRange, "offered", offered.len(), 0.0, most, "discs"));
        }
        let now = gap_in(implement, stock, low, high)?;
        let mut offers = Vec::new();
        for disc in offered {
            let more = with_one_more(implement, stock, *disc)?;
            offers.push(Offer { disc: *disc, largest_gap: gap_in(implement, &more, low, high)? });
        }
        let size = |gap: &Option<Gap>| gap.map_or(Mass::ZERO, |gap| gap.size);
        let helps = offers.iter().filter(|offer| size(&offer.largest_gap) < size(&now));
        let best = helps.min_by_key(|offer| (size(&offer.largest_gap), offer.disc)).copied();
        Ok(Purchase { now, best, offers })
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// The stock with as many new discs as the implement loads alike; a kind of its own, or, in a full list, more
/// of the same kind.
pub(super) fn with_one_more(implement: &Implement, stock: &Stock, mass: Mass) -> Result<Stock, Error> {
    let count = match implement {
        Implement::Handle(handle) => handle.ends(),
        Implement::Pin(_) => 1,
        _ => 2,
    };
    let mut discs = stock.discs().to_vec();
    discs.push(Disc::new(mass, count)?);
    Stock::new(discs)
}

fn gap_in(implement: &Implement, stock: &Stock, low: Mass, high: Mass) -> Result<Option<Gap>, Error> {
    in_order(low, high)?;
    let prepared = super::ends::prepare(implement, stock, high, 0)?;
    let start = prepared.lightest().map_or(low, |lightest| lightest.max(low));
    let mut points: Vec<Mass> = prepared.totals(low, high).collect();
    if start <= high {
        points.push(high);
        points.push(start);
    }
    crate::numeric::sort::sort(&mut points);
    points.dedup();
    largest_gap(&points)
}

rows![buy];
