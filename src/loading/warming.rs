//! Warm-up steps: rising loads to the work set with little disc handling.

use alloc::format;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::bar::Bar;
use super::disc::Stock;
use super::implement::Implement;
use super::loaded::Rounding;
use super::prepared::Prepared;
use super::stacks::{Band, EndMoves, fewest_moves};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Mass, Reps};
use crate::source::{ARITHMETIC, OURS, formula, rows};

/// Most warm-up steps.
const MOST_STEPS: usize = 12;

/// One wanted warm-up set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct WarmUpStep {
    /// The load aimed at.
    pub target: Mass,
    /// How far the load may lie from it on either side to save disc handling.
    pub tolerance: Mass,
    /// Repetitions to do.
    pub reps: Reps,
    /// The reference set: same load every session, since it measures the day. Always kept, never moved.
    pub reference: bool,
}

impl WarmUpStep {
    /// So many repetitions near that load.
    #[must_use]
    pub fn new(target: Mass, tolerance: Mass, reps: Reps, reference: bool) -> WarmUpStep {
        WarmUpStep { target, tolerance, reps, reference }
    }
}

/// One set of the answer.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LoadedWarmUpSet {
    /// Place of the step in the wanted list; none for the work set.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub step: Option<u16>,
    /// The load and the discs that move.
    pub moves: EndMoves,
}

/// The warm-up sets in order, the work load last.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WarmUp {
    /// The sets.
    pub sets: Vec<LoadedWarmUpSet>,
    /// Steps left out because nothing within their tolerance can be loaded.
    pub left_out: Vec<u16>,
    /// Discs handled on each end, off and on together, until the work load is on.
    pub moves_each_end: u32,
    /// Whether no way with fewer moves exists among stacks with the heavier disc inside; false where the
    /// search was cut off at its stated bound.
    pub proved: bool,
}

formula! {
    "loading.warm_up",
    /// Which warm-up loads, and which discs come off and go on, on the way to the work set?
    ///
    /// # Formula
    /// Among all ways that stay within the tolerance of every step: the fewest discs handled (a disc comes
    /// off only after those outside it), then the smallest sum of distances from the targets. A step never
    /// crosses the middle between its target and its neighbour's, so the loads rise; none reaches the work
    /// load, which is the heaviest load not above `work`.
    ///
    /// # Domain
    /// Up to 12 steps with rising targets, from the empty bar. Heavier discs stay inside lighter ones.
    ///
    /// # Errors
    /// `not_rising`; `above_work_set` for a reference set at or above the work load; `not_loadable` for a
    /// reference set that the stock can't make; `out_of_range` for a negative tolerance or too many steps;
    /// those of [`load`](super::load()).
    ///
    /// # Source
    /// Arithmetic (row `loading.warm_up`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::{Bar, Disc, Stock, WarmUpStep, warm_up};
    /// use bismar::quantity::{Name, Mass, Reps};
    ///
    /// let bar = Bar::new(Name::new("bar 20")?, Mass::from_kg(20.0)?, Mass::ZERO)?;
    /// let stock = Stock::new(vec![Disc::new(Mass::from_kg(20.0)?, 2)?, Disc::new(Mass::from_kg(10.0)?, 6)?])?;
    /// let step = |kg: f64| -> Result<WarmUpStep, bismar::Error> {
    ///     let (target, tolerance) = (Mass::from_kg(kg)?, Mass::ZERO);
    ///     Ok(WarmUpStep::new(target, tolerance, Reps::whole(5)?, false))
    /// };
    /// // 40 and 60 with tens, so that 80 needs one disc more and none off.
    /// let sets = warm_up(&bar, &stock, Mass::from_kg(80.0)?, &[step(40.0)?, step(60.0)?])?;
    /// assert_eq!(sets.moves_each_end, 3);
    /// assert!(sets.proved);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn warm_up(bar: &Bar, stock: &Stock, work: Mass, steps: &[WarmUpStep]) -> Result<WarmUp, Error> {
        check(steps)?;
        let prepared = Prepared::new(&Implement::Bar(bar.clone()), stock, work)?;
        let work_total = prepared.load(work, Rounding::Below)?.total;
        let mut rows = Rows::default();
        for (index, step) in (0_u16..).zip(steps) {
            match band(&prepared, steps, usize::from(index), step, work_total)? {
                Some(band) => rows.push(Some(index), band, step.target),
                None => rows.left_out.push(index),
            }
        }
        let work_band = prepared.band(work_total, work_total, work_total);
        rows.push(None, work_band.ok_or_else(|| Error::plain(Code::NotLoadable, "work"))?, work);
        rows.answer(&prepared)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
}

/// The loads that are kept, in order.
#[derive(Default)]
struct Rows {
    kept: Vec<(Option<u16>, Mass)>,
    bands: Vec<Band>,
    left_out: Vec<u16>,
}

impl Rows {
    fn push(&mut self, step: Option<u16>, band: Band, wanted: Mass) {
        self.kept.push((step, wanted));
        self.bands.push(band);
    }

    fn answer(self, prepared: &Prepared) -> Result<WarmUp, Error> {
        let route = fewest_moves(prepared, &[], &self.bands);
        let route = route.ok_or_else(|| Error::plain(Code::NotLoadable, "steps"))?;
        let mut sets = Vec::new();
        let mut before: &[usize] = &[];
        for ((step, wanted), stack) in self.kept.into_iter().zip(&route.stacks) {
            sets.push(LoadedWarmUpSet { step, moves: prepared.end_moves(before, stack, wanted)? });
            before = stack;
        }
        Ok(WarmUp { sets, left_out: self.left_out, moves_each_end: route.moves, proved: route.proved })
    }
}

fn check(steps: &[WarmUpStep]) -> Result<(), Error> {
    if steps.len() > MOST_STEPS {
        return Err(Error::range(Code::OutOfRange, "steps", steps.len(), 0.0, MOST_STEPS as f64, "steps"));
    }
    let mut last = None;
    for (index, step) in steps.iter().enumerate() {
        let place = |error: Error| error.within(&format!("steps[{index}]"));
        super::bar::not_negative("tolerance", step.tolerance, Mass::MAX).map_err(place)?;
        if last.is_some_and(|last| step.target <= last) {
            let rule = Allowed::rule("rising targets");
            return Err(place(Error::new(Code::NotRising, "target", step.target.kg(), rule)));
        }
        last = Some(step.target);
    }
    Ok(())
}

/// The totals that will do for a step; none if it is to be left out.
fn band(
    prepared: &Prepared,
    steps: &[WarmUpStep],
    index: usize,
    step: &WarmUpStep,
    work: Mass,
) -> Result<Option<Band>, Error> {
    if step.reference {
        return reference(prepared, index, step, work).map(Some);
    }
    if step.target >= work {
        return Ok(None);
    }
    let before = index.checked_sub(1).and_then(|at| steps.get(at)).map(|step| step.target);
    let after = steps.get(index + 1).map_or(work, |next| next.target.min(work));
    let mut low = step.target.minus(step.tolerance)?.max(Mass::ZERO);
    if let Some(before) = before {
        // Just above the middle, so that two neighbours never meet there.
        low = low.max(middle(before, step.target)?.plus(SMALLEST)?);
    }
    let high = step.target.plus(step.tolerance).unwrap_or(Mass::MAX);
    let high = high.min(middle(step.target, after)?).min(work.minus(SMALLEST)?);
    Ok(prepared.band(low, high, step.target))
}

/// One nanogram.
const SMALLEST: Mass = match Mass::from_nanograms(1) {
    Some(mass) => mass,
    None => Mass::ZERO,
};

fn middle(a: Mass, b: Mass) -> Result<Mass, Error> {
    a.half().plus(b.half())
}

fn reference(prepared: &Prepared, index: usize, step: &WarmUpStep, work: Mass) -> Result<Band, Error> {
    let refuse = |code| {
        let error = Error::range(code, "target", step.target.kg(), 0.0, work.kg(), "kg, below the work load");
        error.within(&format!("steps[{index}]"))
    };
    if step.target >= work {
        return Err(refuse(Code::AboveWorkSet));
    }
    prepared.band(step.target, step.target, step.target).ok_or_else(|| refuse(Code::NotLoadable))
}

/// Parts of the work load and repetitions of the default warm-up (our choice).
const DEFAULT_STEPS: [(f64, u16); 4] = [(0.40, 8), (0.60, 5), (0.75, 3), (0.90, 1)];
/// Repetitions with the empty bar (our choice).
const EMPTY_BAR_REPS: u16 = 10;
/// Tolerance of every default step, as part of the work load (our choice).
const DEFAULT_TOLERANCE: f64 = 0.05;

formula! {
    "loading.warm_up_steps",
    /// Which warm-up sets lead to this work load, if the coach has no list of their own?
    ///
    /// # Formula
    /// The empty bar for 10, then 40 % for 8, 60 % for 5, 75 % for 3 and 90 % for 1 of the work load, each
    /// within 5 % of the work load; a step nearer than that to the empty bar, to the work load or to the
    /// reference set is left out, and the reference set stands in its place among the rest.
    ///
    /// # Errors
    /// `above_work_set` for a reference set at or above the work load.
    ///
    /// # Source
    /// Our choice (row `loading.warm_up_steps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::loading::warm_up_steps;
    /// use bismar::quantity::Mass;
    ///
    /// let steps = warm_up_steps(Mass::from_kg(20.0)?, Mass::from_kg(80.0)?, None)?;
    /// let targets: Vec<f64> = steps.iter().map(|step| step.target.kg()).collect();
    /// assert_eq!(targets, [20.0, 32.0, 48.0, 60.0, 72.0]);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn warm_up_steps(empty: Mass, work: Mass, reference: Option<WarmUpStep>) -> Result<Vec<WarmUpStep>, Error> {
        let tolerance = work.max(Mass::ZERO).scaled_down(DEFAULT_TOLERANCE)?;
        if let Some(step) = reference.filter(|step| step.target >= work) {
            let unit = "kg, below the work load";
            let error = Error::range(Code::AboveWorkSet, "target", step.target.kg(), 0.0, work.kg(), unit);
            return Err(error.within("reference"));
        }
        let apart = |a: Mass, b: Mass| -> Result<bool, Error> {
            let gap = a.max(b).minus(a.min(b))?;
            Ok(gap > tolerance)
        };
        let step = |target, reps| -> Result<WarmUpStep, Error> {
            Ok(WarmUpStep { target, tolerance, reps: Reps::whole(reps)?, reference: false })
        };
        let mut steps = alloc::vec![WarmUpStep { tolerance: Mass::ZERO, ..step(empty, EMPTY_BAR_REPS)? }];
        for (part, reps) in DEFAULT_STEPS {
            let target = work.max(Mass::ZERO).scaled_down(part)?;
            if target > empty && apart(target, empty)? {
                steps.push(step(target, reps)?);
            }
        }
        if let Some(reference) = reference {
            let mut kept = Vec::new();
            for step in steps {
                if apart(step.target, reference.target)? {
                    kept.push(step);
                }
            }
            kept.push(WarmUpStep { reference: true, tolerance: Mass::ZERO, ..reference });
            crate::numeric::sort::sort_by_key(&mut kept, |step| step.target);
            steps = kept;
        }
        steps.retain(|step| step.target < work);
        Ok(steps)
    }
    source: OURS, place: "default", standing: OurChoice, seen: NotApplicable,
}

rows![warm_up, warm_up_steps];
