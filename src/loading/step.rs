//! Whether the smallest step is too large, and what to do until it is not.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::buying::with_one_more;
use super::disc::Stock;
use super::implement::Implement;
use super::loaded::Loaded;
use super::solve::step_up;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Mass, Reps};
use crate::source::{ARITHMETIC, Source, constant, formula, rows};

const ACSM_2009: Source = Source {
    id: "acsm-2009",
    citation: "American College of Sports Medicine. Progression models in resistance training for healthy adults. Med Sci Sports Exerc 41:687-708, 2009",
    doi: Some("10.1249/MSS.0b013e3181915670"),
};

constant! {
    "loading.step_low",
    /// Smallest step of the published range, in percent of the load.
    pub const STEP_LOW: f64 = 2.0;
    source: ACSM_2009, place: "abstract: 2 to 10 %", standing: Published, seen: Read,
    population: "healthy adults", domain: "when one or two repetitions more than wanted can be done",
}

constant! {
    "loading.step_high",
    /// Largest step of the published range, in percent of the load.
    pub const STEP_HIGH: f64 = 10.0;
    source: ACSM_2009, place: "abstract: 2 to 10 %", standing: Published, seen: Read,
    population: "healthy adults", domain: "when one or two repetitions more than wanted can be done",
}

/// Most discs tried and most repetitions in a capacity table.
const LONGEST_LIST: usize = 100;
/// Two sides of the comparison that differ by less are equal: tables are rounded.
const ROUNDING: f64 = 1e-9;
/// Most discs tried.
const MOST_DISCS: usize = 20;

/// What is known beside the load, for the bridges.
#[derive(Clone, Debug, Default, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct BridgeOptions {
    /// Discs that could be had, one each; tried as an added pair.
    pub discs: Vec<Mass>,
    /// Repetitions wanted at the new load.
    pub reps: Reps,
    /// Part of the one-repetition maximum that can be done for 1, 2, 3, ... repetitions, falling; from any
    /// equation or from the lifter's own curve. Empty: no repetitions are worked out.
    pub capacity: Vec<f64>,
}

/// Where the step lies in the published range.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum StepSize {
    /// Below 2 %.
    BelowRange,
    /// From 2 to 10 %.
    InRange,
    /// Above 10 %.
    AboveRange,
}

/// The smallest step, and the bridges over it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StepReality {
    /// The next load up; its difference is the step.
    pub next: Loaded,
    /// The step in percent of the load.
    pub percent: f64,
    /// Where that lies.
    pub size: StepSize,
    /// Discs of those offered whose added pair brings the step to 10 % or less, heaviest first.
    pub discs_that_help: Vec<Mass>,
    /// Repetitions to reach at the present load before the step; none where no table was given or the table
    /// ends before.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reps_first: Option<Reps>,
}

formula! {
    "loading.step_reality",
    /// How large is the smallest step here, and what bridges it?
    ///
    /// # Formula
    /// `percent = 100 (next - from) / from`, against 2 to 10 % of the load. Bridges: discs whose added pair
    /// makes a step of at most 10 %; repetitions as in [`rep_bridge`].
    ///
    /// # Errors
    /// `above_heaviest` without a heavier load; `load_out_of_domain` for a load that is zero or assistance;
    /// `out_of_range` for more than 20 discs; those of [`rep_bridge`].
    ///
    /// # Source
    /// Arithmetic; the range: American College of Sports Medicine 2009 (rows `loading.step_low`,
    /// `loading.step_high`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, BridgeOptions, Disc, Implement, StepSize, Stock, step_reality};
    /// use bismar::quantity::{Mass, Name};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let stock = Stock::new(vec![Disc::new(Mass::from_kg(1.25)?, 2)?])?;
    /// let options = BridgeOptions::default().with_discs(vec![Mass::from_kg(0.5)?]);
    /// let step = step_reality(&Implement::Bar(bar), &stock, Mass::from_kg(20.0)?, &options)?;
    /// assert_eq!((step.percent, step.size), (12.5, StepSize::AboveRange));
    /// assert_eq!(step.discs_that_help, [Mass::from_kg(0.5)?]);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn step_reality(implement: &Implement, stock: &Stock, from: Mass, options: &BridgeOptions) -> Result<StepReality, Error> {
        if !from.is_positive() {
            let high = Mass::MAX.kg();
            return Err(Error::range(Code::LoadOutOfDomain, "from", from.kg(), 0.0, high, "kg, above 0"));
        }
        if options.discs.len() > MOST_DISCS {
            let most = MOST_DISCS as f64;
            return Err(Error::range(Code::OutOfRange, "discs", options.discs.len(), 0.0, most, "discs"));
        }
        let next = step_up(implement, stock, from)?;
        let percent = next.difference_percent.unwrap_or(0.0);
        let reps_first = if options.capacity.is_empty() {
            None
        } else {
            rep_bridge(from, next.total, options.reps, &options.capacity)?
        };
        Ok(StepReality {
            percent,
            size: size(percent),
            discs_that_help: helpful(implement, stock, from, &options.discs)?,
            reps_first,
            next,
        })
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

fn size(percent: f64) -> StepSize {
    if percent > STEP_HIGH {
        StepSize::AboveRange
    } else if percent < STEP_LOW {
        StepSize::BelowRange
    } else {
        StepSize::InRange
    }
}

/// The discs whose added pair brings the next step into the range, heaviest first.
fn helpful(implement: &Implement, stock: &Stock, from: Mass, discs: &[Mass]) -> Result<Vec<Mass>, Error> {
    let mut help = Vec::new();
    for disc in discs {
        let next = step_up(implement, &with_one_more(implement, stock, *disc)?, from)?;
        if next.difference_percent.is_some_and(|percent| percent <= STEP_HIGH) {
            help.push(*disc);
        }
    }
    crate::numeric::sort::sort_by(&mut help, |a, b| b.cmp(a));
    help.dedup();
    Ok(help)
}

formula! {
    "loading.rep_bridge",
    /// How many repetitions to reach at the present load before the next one is worth a try?
    ///
    /// # Formula
    /// The smallest `r >= wanted` with `capacity(wanted) / capacity(r) >= to / from`: who does `r` at the
    /// present load has, by the table, room for the wanted repetitions at the next.
    ///
    /// # Domain
    /// An estimate, as good as the table for this lifter; none if the table ends before.
    ///
    /// # Errors
    /// `out_of_range` for an empty or too long table, a part outside 0 to 1.5, wanted repetitions that are
    /// not in the table; `not_whole` for half repetitions; `not_falling` if the table rises;
    /// `load_out_of_domain` for a load at or below zero or a step down.
    ///
    /// # Source
    /// Arithmetic (row `loading.rep_bridge`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::rep_bridge;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// // A made-up table: 3 % for each repetition after the first.
    /// let capacity: Vec<f64> = (0..20).map(|more| 1.0 - 0.03 * f64::from(more)).collect();
    /// let reps = rep_bridge(Mass::from_kg(20.0)?, Mass::from_kg(22.5)?, Reps::whole(6)?, &capacity)?;
    /// assert_eq!(reps, Some(Reps::whole(10)?));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn rep_bridge(from: Mass, to: Mass, wanted: Reps, capacity: &[f64]) -> Result<Option<Reps>, Error> {
        if !from.is_positive() || to < from {
            let high = to.kg();
            return Err(Error::range(Code::LoadOutOfDomain, "from", from.kg(), 0.0, high, "kg, above 0"));
        }
        let table = falling(capacity)?;
        if !wanted.is_whole() {
            return Err(Error::new(Code::NotWhole, "wanted", wanted.value(), Allowed::Unstated));
        }
        let first = usize::from(wanted.halves() / 2);
        let most = table.len() as f64;
        let outside = || Error::range(Code::OutOfRange, "wanted", wanted.value(), 1.0, most, "repetitions");
        let at_wanted = first.checked_sub(1).and_then(|at| table.get(at)).ok_or_else(outside)?;
        let enough = |part: &f64| at_wanted * from.kg() * (1.0 + ROUNDING) >= to.kg() * part;
        let reps = (1_u16..).zip(table).skip(first.saturating_sub(1)).find(|(_, part)| enough(part));
        reps.map(|(reps, _)| Reps::whole(reps)).transpose()
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// A capacity table: parts of the maximum that fall with every repetition.
fn falling(capacity: &[f64]) -> Result<&[f64], Error> {
    let most = LONGEST_LIST as f64;
    if capacity.is_empty() || capacity.len() > LONGEST_LIST {
        return Err(Error::range(Code::OutOfRange, "capacity", capacity.len(), 1.0, most, "repetitions"));
    }
    let mut last = f64::MAX;
    for part in capacity {
        let part = numeric::within(Code::OutOfRange, "capacity", *part, 0.0, 1.5, "of the maximum")?;
        if part >= last {
            let rule = Allowed::rule("a part that falls with every repetition");
            return Err(Error::new(Code::NotFalling, "capacity", part, rule));
        }
        last = part;
    }
    Ok(capacity)
}

rows![STEP_LOW, STEP_HIGH, step_reality, rep_bridge];
