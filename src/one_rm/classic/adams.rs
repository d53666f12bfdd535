//! Adams 1998.

use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const ADAMS_1998: Source = Source {
    id: "adams-1998",
    citation: "Adams GM. Exercise Physiology Laboratory Manual. McGraw-Hill, Boston MA, 1998",
    doi: None,
};

/// Part of the maximum lost with each repetition.
const STEP: f64 = 0.02;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 49.5,
    measured: (1.0, 10.0),
    multiplier: |r| 1.0 / (1.0 - STEP * r),
    reps: |m| (1.0 - 1.0 / m) / STEP,
};

formula! {
    "one_rm.adams_1998",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = w / (1 - 0.02 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives
    /// 1.0204 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 49.5 repetitions (pole at 50): pole at 50 repetitions. No sample is known: a
    /// rule of a laboratory manual for up to about 10 repetitions. Some cite it as 1994.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 49.5 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Adams 1998, prediction of the maximum (row `one_rm.adams_1998`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::adams_1998;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = adams_1998(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 119.048).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn adams_1998(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: ADAMS_1998, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a laboratory manual; no sample known",
    domain: "1 to 49.5 repetitions (pole at 50); a rule for up to about 10 repetitions",
}

formula! {
    "one_rm.adams_1998_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E (1 - 0.02 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`adams_1998`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 49.5 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Adams 1998 solved for the load (row `one_rm.adams_1998_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::adams_1998_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = adams_1998_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 84.000).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn adams_1998_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: ADAMS_1998, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a laboratory manual; no sample known",
    domain: "1 to 49.5 repetitions (pole at 50); a rule for up to about 10 repetitions",
}

formula! {
    "one_rm.adams_1998_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = 50 (1 - F)`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`adams_1998`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Adams 1998 solved for repetitions (row `one_rm.adams_1998_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::adams_1998_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = adams_1998_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 10.00).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn adams_1998_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: ADAMS_1998, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a laboratory manual; no sample known",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![adams_1998, adams_1998_load, adams_1998_reps];
