//! Wathan 1994.

use crate::numeric;
use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const WATHAN_1994: Source = Source {
    id: "wathan-1994",
    citation: "Wathan D. Load assignment. In: Baechle TR (ed). Essentials of Strength Training and Conditioning. Human Kinetics, Champaign IL, 1994",
    doi: None,
};

/// Percent of the maximum that the curve levels off at.
const FLOOR: f64 = 48.8;
const SPAN: f64 = 53.8;
const RATE: f64 = 0.075;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 30.0,
    measured: (1.0, 15.0),
    multiplier: |r| 100.0 / (FLOOR + SPAN * numeric::exp(-RATE * r)),
    reps: |m| -numeric::ln((100.0 / m - FLOOR) / SPAN) / RATE,
};

formula! {
    "one_rm.wathan_1994",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = 100 w / (48.8 + 53.8 exp(-0.075 r))`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one
    /// repetition it gives 1.0130 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition up to 30 repetitions: no pole; levels off at 2.0492 w. Nobody was measured: a chart
    /// for up to about 15 repetitions, fitted again. The name is also printed Wathen.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Wathan 1994, chapter on load assignment (row `one_rm.wathan_1994`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::wathan_1994;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = wathan_1994(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 127.671).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wathan_1994(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: WATHAN_1994, place: "chapter on load assignment", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a refit of a chart; no sample",
    domain: "1 to 30 repetitions; a chart for up to about 15 repetitions",
}

formula! {
    "one_rm.wathan_1994_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E (48.8 + 53.8 exp(-0.075 r)) / 100`; `E` one-repetition maximum in kg, `r` repetitions to failure,
    /// `w` in kg.
    ///
    /// # Domain
    /// As [`wathan_1994`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Wathan 1994 solved for the load (row `one_rm.wathan_1994_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::wathan_1994_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = wathan_1994_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 78.326).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wathan_1994_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: WATHAN_1994, place: "chapter on load assignment", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a refit of a chart; no sample",
    domain: "1 to 30 repetitions; a chart for up to about 15 repetitions",
}

formula! {
    "one_rm.wathan_1994_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = -ln((100 F - 48.8) / 53.8) / 0.075`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`wathan_1994`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Wathan 1994 solved for repetitions (row `one_rm.wathan_1994_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::wathan_1994_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = wathan_1994_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 7.26).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wathan_1994_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: WATHAN_1994, place: "chapter on load assignment", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    recalled: "the place in the work, and what it was made from",
    population: "a refit of a chart; no sample",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![wathan_1994, wathan_1994_load, wathan_1994_reps];
