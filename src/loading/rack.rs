//! Alone at the rack, and a bar that must not tip.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::disc::Stock;
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Length, Mass, Rir};
use crate::source::{ARITHMETIC, COMMON_PRACTICE, OURS, constant, formula, rows};

/// What kind of lift stands before the rack, as far as being caught under the bar goes.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum RackLift {
    /// Lying under the bar.
    Bench,
    /// Standing under the bar.
    Squat,
    /// The bar can be put down from everywhere.
    Other,
}

/// Who is there.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Company {
    /// Nobody within call.
    Alone,
    /// Somebody within call who does not stand by the bar.
    WithinCall,
    /// Somebody who stands by the bar and can take it.
    Spotter,
}

/// How the rack is set for a lift.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct RackSetup {
    /// The lift.
    pub lift: RackLift,
    /// Who is there; not recorded counts as alone.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub company: Option<Company>,
    /// Height of the pins or straps that catch the bar; none if there are none, or none was recorded.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub pins: Option<Length>,
}

impl RackSetup {
    /// That lift with neither company nor pins known.
    #[must_use]
    pub fn new(lift: RackLift) -> RackSetup {
        RackSetup { lift, company: None, pins: None }
    }
}

/// What follows from the setup.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RackCheck {
    /// What to say beside the answer.
    pub cautions: Vec<Caution>,
    /// Repetitions that must stay in reserve; none where the setup asks for none.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reserve_floor: Option<Rir>,
    /// Whether the setup leaves a step up open. It never grants one.
    pub step_up_open: bool,
}

constant! {
    "loading.alone_reserve",
    /// Repetitions to keep in reserve when benching or squatting alone without pins.
    pub const ALONE_RESERVE: Rir = Rir::whole(4);
    source: OURS, place: "default", standing: OurChoice, seen: NotApplicable,
}

formula! {
    "loading.rack_check",
    /// What does this setup at the rack ask for?
    ///
    /// # Formula
    /// Benching or squatting alone without pins: a caution, at least 4 repetitions in reserve, no step up.
    /// Company or pins that were not recorded count as absent.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Our choice (row `loading.rack_check`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Company, RackLift, RackSetup, rack_check};
    ///
    /// let alone = RackSetup::new(RackLift::Bench).with_company(Company::Alone);
    /// assert!(!rack_check(alone)?.step_up_open);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn rack_check(setup: RackSetup) -> Result<RackCheck, Error> {
        let under_the_bar = matches!(setup.lift, RackLift::Bench | RackLift::Squat);
        let alone = matches!(setup.company, None | Some(Company::Alone));
        if under_the_bar && alone && setup.pins.is_none() {
            return Ok(RackCheck {
                cautions: alloc::vec![Caution::AloneWithoutPins],
                reserve_floor: Some(ALONE_RESERVE),
                step_up_open: false,
            });
        }
        Ok(RackCheck { cautions: Vec::new(), reserve_floor: None, step_up_open: true })
    }
    source: OURS, place: "default", standing: OurChoice, seen: NotApplicable,
}

/// An end of the bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum End {
    /// The left end.
    Left,
    /// The right end.
    Right,
}

/// One disc put on or taken off one end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Handling {
    /// At which end.
    pub end: End,
    /// The kind of disc.
    pub kind: u16,
    /// On, or off.
    pub on: bool,
}

/// The order in which discs come off and go on.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct HandlingOrder {
    /// Disc by disc, the ends in turn.
    pub order: Vec<Handling>,
    /// The most that one end is ever heavier than the other on the way. No order of the same stacks has less.
    pub most_imbalance: Mass,
    /// The same if one end were done first and then the other.
    pub one_end_first: Mass,
}

constant! {
    "loading.imbalance_limit",
    /// The most that one end should be heavier than the other while a racked bar is loaded or unloaded: one
    /// large disc.
    pub const IMBALANCE_LIMIT: Mass = Mass::grams(25_000);
    source: COMMON_PRACTICE, place: "one large disc", standing: CommonPractice, seen: NotApplicable,
}

formula! {
    "loading.handling_order",
    /// In which order do discs come off and go on, so that the bar does not tip?
    ///
    /// # Formula
    /// Outermost first, the ends in turn, until both ends hold what stays; then inside out, the ends in turn.
    /// The most imbalance is then the heaviest disc that moves, which no order can avoid.
    ///
    /// # Errors
    /// `imbalance_above_limit` if a disc that moves is heavier than `limit`; `not_in_stock`; `out_of_range`
    /// for more than 30 discs on an end.
    ///
    /// # Source
    /// Arithmetic (row `loading.handling_order`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{IMBALANCE_LIMIT, Disc, Stock, handling_order};
    /// use bismar::quantity::Mass;
    ///
    /// let stock = Stock::new(vec![Disc::new(Mass::from_kg(20.0)?, 4)?, Disc::new(Mass::from_kg(5.0)?, 2)?])?;
    /// let plan = handling_order(&stock, &[], &[0, 0, 1], IMBALANCE_LIMIT)?;
    /// assert_eq!(plan.most_imbalance.kg(), 20.0);
    /// assert_eq!(plan.one_end_first.kg(), 45.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn handling_order(stock: &Stock, before: &[u16], after: &[u16], limit: Mass) -> Result<HandlingOrder, Error> {
        let masses = [end_masses(stock, "before", before)?, end_masses(stock, "after", after)?];
        let kept = before.iter().zip(after).take_while(|(a, b)| a == b).count();
        let off = before.iter().skip(kept).rev().map(|kind| (*kind, false));
        let on = after.iter().skip(kept).map(|kind| (*kind, true));
        let order = off
            .chain(on)
            .flat_map(|(kind, on)| [End::Left, End::Right].map(|end| Handling { end, kind, on }))
            .collect();
        let [old, new] = &masses;
        let moved = || old.iter().skip(kept).chain(new.iter().skip(kept)).copied();
        let most_imbalance = moved().max().unwrap_or(Mass::ZERO);
        if most_imbalance > limit {
            let (given, limit) = (most_imbalance.kg(), limit.kg());
            return Err(Error::range(Code::ImbalanceAboveLimit, "limit", given, 0.0, limit, "kg"));
        }
        let all = |masses: &[Mass]| masses.iter().skip(kept).try_fold(Mass::ZERO, |sum, mass| sum.plus(*mass));
        let (emptied, filled) = (all(old)?, all(new)?);
        // While the other end is emptied, the first holds all of its new discs already.
        Ok(HandlingOrder { order, most_imbalance, one_end_first: emptied.max(filled) })
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// Most discs on one end.
const MOST_DISCS: usize = 30;

fn end_masses(stock: &Stock, field: &'static str, kinds: &[u16]) -> Result<Vec<Mass>, Error> {
    if kinds.len() > MOST_DISCS {
        let most = MOST_DISCS as f64;
        return Err(Error::range(Code::OutOfRange, field, kinds.len(), 0.0, most, "discs"));
    }
    let mass = |kind: &u16| {
        let disc = stock.discs().get(usize::from(*kind));
        let on = kinds.iter().filter(|other| *other == kind).count();
        let disc = disc.filter(|disc| on <= usize::from(disc.pairs()));
        let rule = Allowed::rule("kinds of the stock, no more pairs than it has");
        disc.map(|disc| disc.mass()).ok_or_else(|| Error::new(Code::NotInStock, field, *kind, rule))
    };
    kinds.iter().map(mass).collect()
}

rows![ALONE_RESERVE, IMBALANCE_LIMIT, rack_check, handling_order];
