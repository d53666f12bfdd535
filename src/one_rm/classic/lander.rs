//! Lander 1985.

use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const LANDER_1985: Source = Source {
    id: "lander-1985",
    citation: "Lander J. Maximum based on reps. NSCA Journal 1985;6(6):60-61",
    doi: None,
};

/// Percent of the maximum at no repetition.
const START: f64 = 101.3;
/// Percent lost with each repetition.
const STEP: f64 = 2.67123;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 37.5,
    measured: (1.0, 10.0),
    multiplier: |r| 100.0 / (START - STEP * r),
    reps: |m| (START - 100.0 / m) / STEP,
};

formula! {
    "one_rm.lander_1985",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = 100 w / (101.3 - 2.67123 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one
    /// repetition it gives 1.0139 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 37.5 repetitions (pole at 37.923): pole at 37.923 repetitions. Nobody was
    /// measured: a handbook chart for up to 10 repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 37.5 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Lander 1985, p 60-61 (row `one_rm.lander_1985`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::lander_1985;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = lander_1985(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 125.109).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lander_1985(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: LANDER_1985, place: "p 60-61", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a handbook chart; no sample",
    domain: "1 to 37.5 repetitions (pole at 37.923); a handbook chart for up to 10 repetitions",
}

formula! {
    "one_rm.lander_1985_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E (101.3 - 2.67123 r) / 100`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in
    /// kg.
    ///
    /// # Domain
    /// As [`lander_1985`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 37.5 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Lander 1985 solved for the load (row `one_rm.lander_1985_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::lander_1985_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = lander_1985_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 79.930).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lander_1985_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: LANDER_1985, place: "p 60-61", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a handbook chart; no sample",
    domain: "1 to 37.5 repetitions (pole at 37.923); a handbook chart for up to 10 repetitions",
}

formula! {
    "one_rm.lander_1985_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = (101.3 - 100 F) / 2.67123`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`lander_1985`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Lander 1985 solved for repetitions (row `one_rm.lander_1985_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::lander_1985_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = lander_1985_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 7.97).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lander_1985_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: LANDER_1985, place: "p 60-61", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a handbook chart; no sample",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![lander_1985, lander_1985_load, lander_1985_reps];
