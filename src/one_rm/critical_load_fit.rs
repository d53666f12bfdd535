//! A critical load fitted from sets to failure.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::critical_load::BERGSTROM_2021;
use super::curve::{HIGHEST_ANSWER, positive};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{formula, rows};

/// One set to failure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SetToFailure {
    /// Load.
    pub load: Mass,
    /// Repetitions to failure.
    pub reps: Reps,
}

impl SetToFailure {
    /// So many repetitions at that load, to failure.
    #[must_use]
    pub fn new(load: Mass, reps: Reps) -> SetToFailure {
        SetToFailure { load, reps }
    }
}

/// Why a critical load should be doubted.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CriticalLoadDoubt {
    /// Fewer than the four loads that the protocol asks for.
    FewerThanFourLoads,
    /// R2 of total work on repetitions below 0.75, where the protocol drops the fit.
    PoorFit,
    /// A load of the fit does not exceed the critical load.
    LoadNotAboveCritical,
}

/// A fitted critical load.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct CriticalLoad {
    /// Load that could be lifted very often.
    pub critical_load: Kilograms,
    /// Store of work above it, in kg times repetitions.
    pub store: f64,
    /// R2 of total work on repetitions. Work contains repetitions, so it flatters.
    pub r_squared: f64,
    /// Why to doubt it.
    pub doubts: Vec<CriticalLoadDoubt>,
}

/// Loads that the protocol asks for, and R2 below which it drops a fit.
const PROTOCOL: (usize, f64) = (4, 0.75);

/// Sets in one fit at most.
const MOST_SETS: usize = 1000;

/// Sums of a straight line: means, squares and product about them.
struct Line {
    slope: f64,
    intercept: f64,
    r_squared: f64,
}

fn line(points: &[(f64, f64)]) -> Option<Line> {
    let n = points.len() as f64;
    let mean_x = points.iter().map(|point| point.0).sum::<f64>() / n;
    let mean_y = points.iter().map(|point| point.1).sum::<f64>() / n;
    let sum = |f: fn(f64, f64) -> f64| points.iter().map(|(x, y)| f(x - mean_x, y - mean_y)).sum::<f64>();
    let (xx, xy, yy) = (sum(|x, _| x * x), sum(|x, y| x * y), sum(|_, y| y * y));
    if xx <= 0.0 || yy <= 0.0 {
        return None;
    }
    let slope = xy / xx;
    Some(Line { slope, intercept: mean_y - slope * mean_x, r_squared: xy * xy / (xx * yy) })
}

fn doubts(sets: &[SetToFailure], fit: &Line) -> Vec<CriticalLoadDoubt> {
    let mut loads: Vec<Mass> = sets.iter().map(|set| set.load).collect();
    crate::numeric::sort::sort(&mut loads);
    loads.dedup();
    let mut doubts = Vec::new();
    if loads.len() < PROTOCOL.0 {
        doubts.push(CriticalLoadDoubt::FewerThanFourLoads);
    }
    if fit.r_squared < PROTOCOL.1 {
        doubts.push(CriticalLoadDoubt::PoorFit);
    }
    if loads.first().is_some_and(|load| load.kg() <= fit.slope) {
        doubts.push(CriticalLoadDoubt::LoadNotAboveCritical);
    }
    doubts
}

/// The work of each set against its repetitions.
fn work(sets: &[SetToFailure]) -> Result<Vec<(f64, f64)>, Error> {
    let point = |set: &SetToFailure| {
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", set.reps.value(), 1.0, HIGHEST_ANSWER, "")?;
        Ok((reps, positive(set.load)? * reps))
    };
    sets.iter().map(point).collect()
}

formula! {
    "one_rm.bergstrom_2021_fit",
    /// Which load could this lifter lift very often, and how much work is in store above it?
    ///
    /// # Formula
    /// Least squares line of total work `w r = L' + CL r`; `CL` critical load in kg, `L'` store in kg repetitions.
    ///
    /// # Domain
    /// Protocol: at least four loads, all above `CL`, the lowest at 50 % of the maximum or more, in steps of 10 %; a
    /// fit with R2 below 0.75 is dropped. Departures are flagged, not hidden.
    ///
    /// # Errors
    /// `not_enough_data` below three sets or with fewer than two different repetitions; `reps_out_of_domain`,
    /// `load_out_of_domain` in a set; `out_of_range` where the line gives no critical load or no store above 0, or
    /// for more than 1000 sets.
    ///
    /// # Source
    /// Bergstrom et al. 2021, abstract and recommendations (row `one_rm.bergstrom_2021_fit`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{SetToFailure, bergstrom_2021_fit};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let set = |kg, reps| Ok::<_, bismar::Error>(SetToFailure::new(Mass::from_kg(kg)?, Reps::whole(reps)?));
    /// let fit = bergstrom_2021_fit(&[set(90.0, 4)?, set(80.0, 6)?, set(70.0, 12)?, set(65.0, 24)?])?;
    /// assert!((fit.critical_load.value() - 60.0).abs() < 1e-9 && (fit.store - 120.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn bergstrom_2021_fit(sets: &[SetToFailure]) -> Result<CriticalLoad, Error> {
        /// Two would fit any line.
        const FEWEST: usize = 3;
        if sets.len() > MOST_SETS {
            return Err(Error::range(Code::OutOfRange, "sets", sets.len(), 0.0, MOST_SETS as f64, "sets"));
        }
        let too_few = || Error::new(Code::NotEnoughData, "sets", sets.len(), Allowed::rule("3 sets, 2 different repetitions"));
        let points = work(sets)?;
        let fit = if points.len() < FEWEST { None } else { line(&points) }.ok_or_else(too_few)?;
        if fit.slope <= 0.0 || fit.intercept <= 0.0 {
            let rule = Allowed::rule("sets whose line has a critical load and a store above 0");
            return Err(Error::new(Code::OutOfRange, "sets", fit.slope, rule));
        }
        Ok(CriticalLoad {
            critical_load: Kilograms::new(fit.slope)?,
            store: numeric::finite("store", fit.intercept)?,
            r_squared: numeric::finite("r_squared", fit.r_squared)?,
            doubts: doubts(sets, &fit),
        })
    }
    source: BERGSTROM_2021, place: "abstract; recommendations", standing: Published, seen: Read,
    population: "the lifter's own sets", domain: "sets to failure at four loads or more, all above the critical load",
}

rows![bergstrom_2021_fit];
