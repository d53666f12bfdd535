//! Berger 1961, with its constant corrected here.

use crate::numeric;
use crate::one_rm::curve::Curve;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const BERGER_1961: Source = Source {
    id: "berger-1961",
    citation: "Berger RA. Determination of the resistance load for 1-RM and 10-RM. J Assoc Phys Ment Rehabil 1961;15:108-110 (also cited as 1970)",
    doi: None,
};

const START: f64 = 1.0261;
/// Later lists print 0.00262, with which ten repetitions would add nothing; 0.0262 gives the load at one. The original
/// table was not seen: the correction is ours.
const RATE: f64 = 0.0262;

pub(in crate::one_rm) const CURVE: Curve = Curve {
    highest: 30.0,
    measured: (1.0, 10.0),
    multiplier: |r| 1.0 / (START * numeric::exp(-RATE * r)),
    reps: |m| numeric::ln(START * m) / RATE,
};

formula! {
    "one_rm.berger_1961",
    /// What could be lifted once, from a set to failure?
    ///
    /// # Formula
    /// `E = w / (1.0261 exp(-0.0262 r))`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one
    /// repetition it gives 1.0004 w, the load itself within rounding.
    ///
    /// # Domain
    /// From 1 repetition up to 30 repetitions: no pole; grows without end. Measured, as recalled, up to
    /// 10 repetitions (college men, bench press).
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Berger 1961 in later lists, its constant corrected by this project (row `one_rm.berger_1961`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::berger_1961;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = berger_1961(Mass::from_kg(100.0)?, Reps::whole(8)?)?;
    /// assert!((estimate.value() - 120.182).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn berger_1961(load: Mass, reps: Reps) -> Kilograms {
        CURVE.one_rm(load, reps)
    }
    source: BERGER_1961, place: "as later lists print it, 0.0262 in place of their 0.00262", standing: OurChoice, seen: NotApplicable,
    population: "college men, bench press",
    domain: "1 to 30 repetitions; measured up to 10 repetitions",
}

formula! {
    "one_rm.berger_1961_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E 1.0261 exp(-0.0262 r)`; `E` one-repetition maximum in kg, `r` repetitions to failure, `w` in kg.
    ///
    /// # Domain
    /// As [`berger_1961`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum is at or
    /// below 0 kg.
    ///
    /// # Source
    /// Berger 1961 solved for the load (row `one_rm.berger_1961_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::berger_1961_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = berger_1961_load(Kilograms::new(100.0)?, Reps::whole(8)?)?;
    /// assert!((load.value() - 83.207).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn berger_1961_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        CURVE.load(one_rm, reps)
    }
    source: BERGER_1961, place: "as later lists print it, 0.0262 in place of their 0.00262", standing: OurChoice, seen: NotApplicable,
    population: "college men, bench press",
    domain: "1 to 30 repetitions; measured up to 10 repetitions",
}

formula! {
    "one_rm.berger_1961_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// `r = -ln(F / 1.0261) / 0.0262`; `F` part of the one-repetition maximum, `r` repetitions.
    ///
    /// # Domain
    /// As [`berger_1961`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `percent_out_of_domain` where the equation has no answer from 1 to 200 repetitions.
    ///
    /// # Source
    /// Berger 1961 solved for repetitions (row `one_rm.berger_1961_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::berger_1961_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = berger_1961_reps(Fraction::new(0.8)?)?;
    /// assert!((reps - 9.50).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn berger_1961_reps(fraction: Fraction) -> f64 {
        CURVE.reps(fraction)
    }
    source: BERGER_1961, place: "as later lists print it, 0.0262 in place of their 0.00262", standing: OurChoice, seen: NotApplicable,
    population: "college men, bench press",
    domain: "where the answer lies from 1 to 200 repetitions",
}

rows![berger_1961, berger_1961_load, berger_1961_reps];
