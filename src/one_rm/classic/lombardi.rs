//! Lombardi 1989.

use crate::numeric;
use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const LOMBARDI_1989: Source = Source {
    id: "lombardi-1989",
    citation: "Lombardi VP. Beginning Weight Training. Brown, Dubuque IA, 1989",
    doi: None,
};

/// How slowly repetitions raise the estimate.
const POWER: f64 = 0.10;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 30.0,
    measured: (1.0, 10.0),
    multiplier: |r| numeric::pow(r, POWER),
    reps: |m| numeric::pow(m, 1.0 / POWER),
};

formula! {
    "one_rm.lombardi_1989",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = w r^0.10`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives the load
    /// itself.
    ///
    /// # Domain
    /// From 1 repetition up to 30 repetitions: no pole; explodes when inverted (35.4 repetitions at 70 %, 165 at
    /// 60 %). Nobody was measured: a textbook's rule, which fits up to 10 repetitions at best.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Lombardi 1989, prediction of the maximum (row `one_rm.lombardi_1989`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::lombardi_1989;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = lombardi_1989(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 123.114).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lombardi_1989(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: LOMBARDI_1989, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook; no sample",
    domain: "1 to 30 repetitions; fits up to 10 repetitions at best",
}

formula! {
    "one_rm.lombardi_1989_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E r^-0.10`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`lombardi_1989`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Lombardi 1989 solved for the load (row `one_rm.lombardi_1989_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::lombardi_1989_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = lombardi_1989_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 81.225).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lombardi_1989_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: LOMBARDI_1989, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook; no sample",
    domain: "1 to 30 repetitions; fits up to 10 repetitions at best",
}

formula! {
    "one_rm.lombardi_1989_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = (1 / F)^10`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`lombardi_1989`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Lombardi 1989 solved for repetitions (row `one_rm.lombardi_1989_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::lombardi_1989_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = lombardi_1989_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 9.31).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lombardi_1989_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: LOMBARDI_1989, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook; no sample",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![lombardi_1989, lombardi_1989_load, lombardi_1989_reps];
