//! What speaks against an equation's number: typed, with the sizes that were met.

use alloc::vec::Vec;

use super::equation::Equation;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::Reps;
use crate::source::{ARITHMETIC, formula, rows};

/// Past this many repetitions an equation with a pole near 37 gives no estimate.
pub(super) const STEEP_UP_TO: f64 = 15.0;

/// Percent by which such equations said too much at 16 to 20 repetitions.
const RAN_AWAY: (f64, f64) = (20.0, 67.0);

/// Percent by which the eight usual equations said too little of untrained people at 8.5 repetitions.
const READ_LOW: (f64, f64) = (11.0, 19.0);

/// Why a number of an equation should not be taken as it stands.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum EquationDoubt {
    /// Not measured at this many repetitions.
    OutsideMeasured {
        /// Fewest repetitions measured, or spoken of by the author.
        low: f64,
        /// Most.
        high: f64,
    },
    /// Too steep here: the maximum lies below the number. Others said too much by so many percent.
    RunsAway {
        /// At 16 repetitions, in squats.
        low: f64,
        /// At 20 repetitions, on a leg press.
        high: f64,
    },
    /// Of people new to a lift it says too little, by so many percent; a later rise is partly not strength.
    ReadsLowForNewcomers {
        /// The nearest of the usual equations.
        low: f64,
        /// The furthest.
        high: f64,
    },
}

impl Equation {
    /// Repetitions past which the equation runs away: it then speaks in no estimate. Absent where it does not.
    #[must_use]
    pub const fn runs_away_above(self) -> Option<f64> {
        match self {
            Equation::Brzycki1993 | Equation::Brzycki1993Decimal | Equation::Lander1985 => Some(STEEP_UP_TO),
            _ => None,
        }
    }

    pub(super) fn has_run_away_at(self, reps: f64) -> bool {
        self.runs_away_above().is_some_and(|above| reps > above)
    }
}

formula! {
    "one_rm.equation_doubts",
    /// What speaks against taking this equation's number for a set of so many repetitions to failure?
    ///
    /// # Formula
    /// Outside what was measured ([`Equation::measured_reps`]); run away where a pole lies near 37 repetitions and the
    /// set has more than 15; reads low for who is new to the lift.
    ///
    /// # Domain
    /// Repetitions at which the equation answers at all. Sizes: the equations over what was measured at 70 % by 25
    /// squatters with 16 repetitions (Zourdos et al. 2021: +20 %) and at 80 % by 8 runners with 19.8 on a leg press
    /// (Richens & Cleather 2014: up to +67 %); untrained people did their 7-10RM at 68.4 % (Braith et al. 1993).
    ///
    /// # Errors
    /// `reps_out_of_domain` where the equation gives no number.
    ///
    /// # Source
    /// Follows from the studies named (row `one_rm.equation_doubts`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Equation, EquationDoubt, equation_doubts};
    /// use bismar::quantity::Reps;
    ///
    /// assert!(equation_doubts(Equation::Brzycki1993, Reps::whole(5)?, false)?.is_empty());
    /// let far = equation_doubts(Equation::Brzycki1993, Reps::whole(18)?, false)?;
    /// assert!(matches!(far[1], EquationDoubt::RunsAway { low: 20.0, high: 67.0 }));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn equation_doubts(equation: Equation, reps: Reps, new_to_lift: bool) -> Result<Vec<EquationDoubt>, Error> {
        let highest = equation.highest_reps();
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, highest, "")?;
        let mut doubts = Vec::new();
        if !equation.was_measured_at(reps) {
            let (low, high) = equation.measured_reps();
            doubts.push(EquationDoubt::OutsideMeasured { low, high });
        }
        if equation.has_run_away_at(reps) {
            doubts.push(EquationDoubt::RunsAway { low: RAN_AWAY.0, high: RAN_AWAY.1 });
        }
        if new_to_lift {
            doubts.push(EquationDoubt::ReadsLowForNewcomers { low: READ_LOW.0, high: READ_LOW.1 });
        }
        Ok(doubts)
    }
    source: ARITHMETIC,
    place: "the equations over the repetitions in Zourdos et al. 2021, Richens & Cleather 2014, Braith et al. 1993",
    standing: Derived, seen: NotApplicable, population: "25 squatters, 8 runners, 58 untrained people",
    domain: "where the equation gives a number",
}

rows![equation_doubts];
