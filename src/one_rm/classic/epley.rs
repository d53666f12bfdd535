//! Epley 1985.

use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const EPLEY_1985: Source = Source {
    id: "epley-1985",
    citation: "Epley B. Poundage chart. Body Enterprises, Lincoln NE, 1985",
    doi: None,
};

/// Repetitions that double the estimate.
const SLOPE: f64 = 30.0;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 30.0,
    measured: (1.0, 10.0),
    multiplier: |r| 1.0 + r / SLOPE,
    reps: |m| SLOPE * (m - 1.0),
};

formula! {
    "one_rm.epley_1985",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = w (1 + r / 30)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives
    /// 1.0333 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 30 repetitions: no pole; a straight line without end. Not measured: a coach's
    /// chart without a published sample; that it ended at about 10 repetitions is recalled. The form printed with Welday 1988 is the same
    /// curve.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Epley 1985, p 86 as recalled; copies print 1/30 or 0.033 (row `one_rm.epley_1985`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::epley_1985;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = epley_1985(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 126.667).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn epley_1985(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: EPLEY_1985, place: "p 86; copies print 1/30 or 0.033", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a coach's chart; no published sample",
    domain: "1 to 30 repetitions; a chart for up to about 10 repetitions",
}

formula! {
    "one_rm.epley_1985_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E / (1 + r / 30)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`epley_1985`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Epley 1985 solved for the load (row `one_rm.epley_1985_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::epley_1985_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = epley_1985_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 78.947).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn epley_1985_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: EPLEY_1985, place: "p 86; copies print 1/30 or 0.033", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a coach's chart; no published sample",
    domain: "1 to 30 repetitions; a chart for up to about 10 repetitions",
}

formula! {
    "one_rm.epley_1985_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = 30 (1 / F - 1)`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`epley_1985`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Epley 1985 solved for repetitions (row `one_rm.epley_1985_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::epley_1985_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = epley_1985_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 7.50).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn epley_1985_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: EPLEY_1985, place: "p 86; copies print 1/30 or 0.033", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a coach's chart; no published sample",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![epley_1985, epley_1985_load, epley_1985_reps];
