//! O'Conner et al. 1989.

use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const OCONNER_1989: Source = Source {
    id: "oconner-1989",
    citation: "O'Conner B, Simmons J, O'Shea P. Weight Training Today. West, St Paul MN, 1989",
    doi: None,
};

/// Part of the load added by each repetition (0.25 in some copies is a slip).
const SLOPE: f64 = 0.025;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 30.0,
    measured: (1.0, 10.0),
    multiplier: |r| 1.0 + SLOPE * r,
    reps: |m| (m - 1.0) / SLOPE,
};

formula! {
    "one_rm.oconner_1989",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = w (1 + 0.025 r)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives
    /// 1.025 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 30 repetitions: no pole; a straight line without end. Nobody was measured: a
    /// textbook's rule for up to about 10 repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// O'Conner et al. 1989, prediction of the maximum (row `one_rm.oconner_1989`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::oconner_1989;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = oconner_1989(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 120.000).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn oconner_1989(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: OCONNER_1989, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook rule; no sample",
    domain: "1 to 30 repetitions; a rule for up to about 10 repetitions",
}

formula! {
    "one_rm.oconner_1989_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E / (1 + 0.025 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`oconner_1989`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// O'Conner et al. 1989 solved for the load (row `one_rm.oconner_1989_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::oconner_1989_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = oconner_1989_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 83.333).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn oconner_1989_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: OCONNER_1989, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook rule; no sample",
    domain: "1 to 30 repetitions; a rule for up to about 10 repetitions",
}

formula! {
    "one_rm.oconner_1989_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = 40 (1 / F - 1)`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`oconner_1989`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// O'Conner et al. 1989 solved for repetitions (row `one_rm.oconner_1989_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::oconner_1989_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = oconner_1989_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 10.00).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn oconner_1989_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: OCONNER_1989, place: "prediction of the maximum", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a textbook rule; no sample",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![oconner_1989, oconner_1989_load, oconner_1989_reps];
