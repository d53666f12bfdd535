//! Brzycki 1993, decimal form.

use super::brzycki::BRZYCKI_1993;
use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{formula, rows};

const START: f64 = 1.0278;
const STEP: f64 = 0.0278;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 36.5,
    measured: (1.0, 10.0),
    multiplier: |r| 1.0 / (START - STEP * r),
    reps: |m| (START - 1.0 / m) / STEP,
};

formula! {
    "one_rm.brzycki_1993_decimal",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = w / (1.0278 - 0.0278 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it
    /// gives the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 36.5 repetitions (pole at 36.971): pole at 36.971 repetitions. Nobody was
    /// measured: a practical rule, stated by its author for up to 10 repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Brzycki 1993, decimal form, p 88-90, decimal form (row `one_rm.brzycki_1993_decimal`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_1993_decimal;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = brzycki_1993_decimal(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 124.162).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_1993_decimal(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: BRZYCKI_1993, place: "p 88-90, decimal form", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a practical rule; no sample",
    domain: "1 to 36.5 repetitions (pole at 36.971); stated by its author for up to 10 repetitions",
}

formula! {
    "one_rm.brzycki_1993_decimal_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E (1.0278 - 0.0278 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`brzycki_1993_decimal`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Brzycki 1993, decimal form solved for the load (row `one_rm.brzycki_1993_decimal_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_1993_decimal_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = brzycki_1993_decimal_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 80.540).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_1993_decimal_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: BRZYCKI_1993, place: "p 88-90, decimal form", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a practical rule; no sample",
    domain: "1 to 36.5 repetitions (pole at 36.971); stated by its author for up to 10 repetitions",
}

formula! {
    "one_rm.brzycki_1993_decimal_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = (1.0278 - F) / 0.0278`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`brzycki_1993_decimal`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Brzycki 1993, decimal form solved for repetitions (row `one_rm.brzycki_1993_decimal_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_1993_decimal_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = brzycki_1993_decimal_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 8.19).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_1993_decimal_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: BRZYCKI_1993, place: "p 88-90, decimal form", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a practical rule; no sample",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![brzycki_1993_decimal, brzycki_1993_decimal_load, brzycki_1993_decimal_reps];
