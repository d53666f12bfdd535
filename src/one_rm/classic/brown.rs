//! Brown 1992.

use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const BROWN_1992: Source = Source {
    id: "brown-1992",
    citation: "Brown HL. Lifetime Fitness. Gorsuch Scarisbrick, Scottsdale AZ, 1992",
    doi: None,
};

const START: f64 = 0.9849;
/// Part of the load added by each repetition.
const SLOPE: f64 = 0.0338;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 30.0,
    measured: (1.0, 10.0),
    multiplier: |r| START + SLOPE * r,
    reps: |m| (m - START) / SLOPE,
};

formula! {
    "one_rm.brown_1992",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = w (0.9849 + 0.0338 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it
    /// gives 1.0187 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 30 repetitions: no pole; a straight line without end. No sample is known: a
    /// textbook's rule for up to about 10 repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Brown 1992, prediction of the maximum (row `one_rm.brown_1992`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brown_1992;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = brown_1992(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 125.530).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brown_1992(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: BROWN_1992, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook rule; no sample known",
    domain: "1 to 30 repetitions; a rule for up to about 10 repetitions",
}

formula! {
    "one_rm.brown_1992_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E / (0.9849 + 0.0338 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`brown_1992`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Brown 1992 solved for the load (row `one_rm.brown_1992_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brown_1992_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = brown_1992_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 79.662).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brown_1992_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: BROWN_1992, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook rule; no sample known",
    domain: "1 to 30 repetitions; a rule for up to about 10 repetitions",
}

formula! {
    "one_rm.brown_1992_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = (1 / F - 0.9849) / 0.0338`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`brown_1992`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Brown 1992 solved for repetitions (row `one_rm.brown_1992_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::brown_1992_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = brown_1992_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 7.84).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn brown_1992_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: BROWN_1992, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook rule; no sample known",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![brown_1992, brown_1992_load, brown_1992_reps];
