//! Brzycki 1993.

use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

pub(super) const BRZYCKI_1993: Source = Source {
    id: "brzycki-1993",
    citation: "Brzycki M. Strength testing: predicting a one-rep max from reps-to-fatigue. J Phys Educ Rec Dance 1993;64(1):88-90",
    doi: Some("10.1080/07303084.1993.10606684"),
};

/// Where the equation runs away.
const POLE: f64 = 37.0;
/// One less than the pole, so that one repetition gives the load.
const RISE: f64 = 36.0;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 36.5,
    measured: (1.0, 10.0),
    multiplier: |r| RISE / (POLE - r),
    reps: |m| POLE - RISE / m,
};

formula! {
    "one_rm.brzycki_1993",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = 36 w / (37 - r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives
    /// the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 36.5 repetitions (pole at 37): pole at 37 repetitions. Nobody was measured: a
    /// practical rule, stated by its author for up to 10 repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Brzycki 1993, p 88-90 (row `one_rm.brzycki_1993`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_1993;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = brzycki_1993(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 124.138).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_1993(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: BRZYCKI_1993, place: "p 88-90", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a practical rule; no sample",
    domain: "1 to 36.5 repetitions (pole at 37); stated by its author for up to 10 repetitions",
}

formula! {
    "one_rm.brzycki_1993_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E (37 - r) / 36`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`brzycki_1993`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 36.5 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Brzycki 1993 solved for the load (row `one_rm.brzycki_1993_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_1993_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = brzycki_1993_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 80.556).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_1993_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: BRZYCKI_1993, place: "p 88-90", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a practical rule; no sample",
    domain: "1 to 36.5 repetitions (pole at 37); stated by its author for up to 10 repetitions",
}

formula! {
    "one_rm.brzycki_1993_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = 37 - 36 F`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`brzycki_1993`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Brzycki 1993 solved for repetitions (row `one_rm.brzycki_1993_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brzycki_1993_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = brzycki_1993_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 8.20).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brzycki_1993_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: BRZYCKI_1993, place: "p 88-90", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a practical rule; no sample",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![brzycki_1993, brzycki_1993_load, brzycki_1993_reps];
