//! The table of repetitions and reserves as parts of the maximum.

use alloc::vec::Vec;

use super::effort::fraction_for;
use super::equation::Equation;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Fraction, Reps, Rir, Rpe};
use crate::source::{ARITHMETIC, formula, rows};

/// One cell of the effort grid.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GridCell {
    /// Repetitions in reserve.
    pub rir: Rir,
    /// The rating, where the scale names one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rpe: Option<Rpe>,
    /// Part of the maximum; absent where the equation has no answer.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub fraction: Option<Fraction>,
    /// Whether repetitions and reserve together lie outside what was measured.
    pub outside_measured: bool,
}

/// One row of the effort grid: a number of repetitions, every reserve.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GridRow {
    /// Repetitions done.
    pub reps: Reps,
    /// One cell a reserve, from 0.
    pub cells: Vec<GridCell>,
}

formula! {
    "one_rm.effort_grid",
    /// The whole table of repetitions and reserves as parts of the maximum, from one equation.
    ///
    /// # Formula
    /// Every cell is [`fraction_for`]: nothing is copied from a chart.
    ///
    /// # Domain
    /// Repetitions from 1 to `highest_reps` (at most 30), reserves from 0 to `highest_reserve` (at most 10), whole
    /// steps. A cell outside the equation's domain is empty; one outside what was measured is flagged.
    ///
    /// # Errors
    /// `out_of_range` beyond those sizes; `not_scale_free`.
    ///
    /// # Source
    /// The equation named in the call (row `one_rm.effort_grid`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Equation, effort_grid};
    /// use bismar::quantity::{Reps, Rir};
    ///
    /// let grid = effort_grid(Equation::Wathan1994, Reps::whole(12)?, Rir::new(4.0)?)?;
    /// assert_eq!((grid.len(), grid[0].cells.len()), (12, 5));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn effort_grid(equation: Equation, highest_reps: Reps, highest_reserve: Rir) -> Result<Vec<GridRow>, Error> {
        /// Largest grid: one page.
        const MOST: (f64, f64) = (30.0, 10.0);
        let reps = numeric::within(Code::OutOfRange, "highest_reps", highest_reps.value(), 1.0, MOST.0, "")?;
        let rir = numeric::within(Code::OutOfRange, "highest_reserve", highest_reserve.value(), 0.0, MOST.1, "")?;
        equation.multiplier_at(1.0)?;
        (1..=reps as u16).map(|reps| grid_row(equation, Reps::whole(reps)?, rir as u8)).collect()
    }
    source: ARITHMETIC, place: "the equation's own row", standing: Derived, seen: NotApplicable,
    domain: "1 to 30 repetitions, 0 to 10 in reserve",
}

fn grid_row(equation: Equation, reps: Reps, highest_reserve: u8) -> Result<GridRow, Error> {
    let cells = (0..=highest_reserve).map(|rir| grid_cell(equation, reps, Rir::whole(rir))).collect();
    Ok(GridRow { reps, cells })
}

fn grid_cell(equation: Equation, reps: Reps, rir: Rir) -> GridCell {
    GridCell {
        rir,
        rpe: Rpe::from_reserve(rir),
        fraction: fraction_for(reps, rir, equation).ok(),
        outside_measured: !equation.was_measured_at(reps.value() + rir.value()),
    }
}

rows![effort_grid];
