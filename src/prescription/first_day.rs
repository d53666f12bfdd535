//! The first day of a lift, and the sideways rung.

use alloc::vec::Vec;

use crate::error::{Allowed, Code, Error};
use crate::loading::{AtHeight, Implement, Prepared, Stock, between};
use crate::progression::HEAVIEST;
use crate::quantity::{Mass, Name};
use crate::record::{LiftParameters, Place, Rung};
use crate::source::{OURS, formula, rows};

formula! {
    "prescription.first_rung",
    /// The first day: which rung? The hardest one whose movement held without load.
    ///
    /// # Formula
    /// Of the rungs that passed unloaded, one that is harder than no other passed rung of its chain is left
    /// above it; of several that are not comparable, the first listed.
    ///
    /// # Errors
    /// `empty_list` without rungs; `unknown_name` for a passed rung that is not on the ladder; `not_enough_data` where
    /// none passed: begin below the ladder, without the bar.
    ///
    /// # Source
    /// Our choice; movement before load is common practice.
    ///
    /// # Examples
    /// ```
    /// use bismar::{prescription::first_rung, quantity::Name, record::Rung};
    ///
    /// let rung = |name: &str, below: &[&str]| -> Result<Rung, bismar::Error> {
    ///     let harder_than = below.iter().map(|name| Name::new(name)).collect::<Result<_, _>>()?;
    ///     Ok(Rung::new(Name::new(name)?, harder_than))
    /// };
    /// let ladder = [rung("high box", &[])?, rung("parallel", &["high box"])?, rung("free", &["parallel"])?];
    /// let passed = [Name::new("high box")?, Name::new("parallel")?];
    /// assert_eq!(first_rung(&ladder, &passed)?, 1);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn first_rung(rungs: &[Rung], passed: &[Name]) -> Result<u8, Error> {
        if rungs.is_empty() {
            return Err(Error::plain(Code::EmptyList, "rungs"));
        }
        let mut places: Vec<usize> = Vec::new();
        for name in passed {
            let unknown = || Error::new(Code::UnknownName, "passed", name.as_str(), Allowed::rule("a rung of the ladder"));
            places.push(rungs.iter().position(|rung| rung.id == *name).ok_or_else(unknown)?);
        }
        crate::numeric::sort::sort(&mut places);
        let harder_passed = |at: &usize| {
            let own = rungs.get(*at).map(|rung| &rung.id);
            places.iter().filter_map(|other| rungs.get(*other)).any(|other| own.is_some_and(|own| other.harder_than.contains(own)))
        };
        let first = places.iter().find(|at| !harder_passed(at));
        first.map(|at| *at as u8).ok_or_else(|| Error::plain(Code::NotEnoughData, "passed"))
    }
    source: OURS, place: "first day", standing: OurChoice, seen: NotApplicable,
}

formula! {
    "prescription.first_load",
    /// The first day: what load? The lightest that the implement makes, or the lightest that keeps the bar at its
    /// height where a height is wanted.
    ///
    /// # Formula
    /// The least loadable total; with a height, the least whose centre lies at that height or above. Discs alone carry the bar:
    /// for blocks under it ask [`AtHeight`](crate::loading::AtHeight).
    ///
    /// # Domain
    /// Heights above 0 mm and up to 2 m, as for [`AtHeight`](crate::loading::AtHeight). The lightest 20,000 loads up to 500 kg
    /// are looked at (our choice).
    ///
    /// # Errors
    /// `out_of_range` for a height beyond that; `not_loadable` where nothing reaches the height; `stock_too_large`, also where
    /// none of so many loads reaches it and there are more.
    ///
    /// # Source
    /// Our choice; rebuilding starts far below what a table of percentages would say.
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Implement, Stock};
    /// use bismar::prescription::first_load;
    /// use bismar::quantity::{Length, Mass, Name};
    ///
    /// let bar = Implement::Bar(Bar::new(Name::new("bar")?, Mass::from_kg(15.0)?, Mass::ZERO)?);
    /// let disc = Disc::new(Mass::from_kg(5.0)?, 2)?.with_diameter(Length::from_mm(450.0)?)?;
    /// let stock = Stock::new(vec![disc])?;
    /// assert_eq!(first_load(&bar, &stock, None)?.kg(), 15.0);
    /// assert_eq!(first_load(&bar, &stock, Some(Length::from_mm(225.0)?))?.kg(), 25.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn first_load(implement: &Implement, stock: &Stock, height: Option<crate::quantity::Length>) -> Result<Mass, Error> {
        let height = height.map(|height| between("height", height, AtHeight::HIGHEST)).transpose()?;
        let prepared = Prepared::new(implement, stock, HEAVIEST)?;
        let lightest = prepared.lightest().ok_or_else(|| Error::plain(Code::NotLoadable, "implement"))?;
        let Some(height) = height else { return Ok(lightest) };
        let reaches = |load: &Mass| {
            let loaded = prepared.load(*load, crate::loading::Rounding::Exact).ok();
            loaded.and_then(|loaded| loaded.centre_height).is_some_and(|centre| centre >= height)
        };
        let mut totals = prepared.totals(lightest, HEAVIEST);
        if let Some(found) = totals.by_ref().take(MOST_TOTALS).find(reaches) {
            return Ok(found);
        }
        // What was not looked at is not called out of reach.
        Err(match totals.next() {
            Some(_) => Error::range(Code::StockTooLarge, "stock", MOST_TOTALS + 1, 0.0, MOST_TOTALS as f64, "loads"),
            None => Error::new(Code::NotLoadable, "height", height.mm(), Allowed::rule("a height that the discs reach")),
        })
    }
    source: OURS, place: "first day", standing: OurChoice, seen: NotApplicable,
}

/// Totals looked through for one that reaches a height; the lightest such load lies near the start (our choice).
const MOST_TOTALS: usize = 20_000;

/// Rungs that are not harder than this one, easier ones included: where to go with a sore region or a missing
/// implement. Never with more load.
#[must_use]
pub fn sideways(lift: &LiftParameters, from: Place) -> Vec<Name> {
    let beside = |at: &u8| *at != from.rung && !lift.is_harder(*at, from.rung);
    let places = (0..lift.rungs.len() as u8).filter(beside);
    places.filter_map(|at| lift.rungs.get(usize::from(at))).map(|rung| rung.id.clone()).collect()
}

rows![first_rung, first_load];
