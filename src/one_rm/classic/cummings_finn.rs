//! Cummings & Finn 1998: additive, in kilograms, not scale-free.
//!
//! The paper's abstract speaks of a regression that also holds the breadth of the shoulders (biacromial). Its coefficients
//! were not seen; what is here is the line without it, as later lists print it under these authors' names.

use crate::error::{Code, Error};
use crate::numeric;
use crate::one_rm::curve::{positive, positive_maximum};
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const CUMMINGS_FINN_1998: Source = Source {
    id: "cummings-finn-1998",
    citation: "Cummings B, Finn KJ. Estimation of a one repetition maximum bench press for untrained women. J Strength Cond Res 1998;12(4):262-265",
    doi: None,
};

pub(in crate::one_rm) const LOAD: f64 = 1.175;
/// Kilograms for each repetition, whatever the load.
const REPETITION: f64 = 0.839;
const OFFSET: f64 = -4.29787;
/// Far beyond the 4 to 8 repetitions measured.
pub(in crate::one_rm) const HIGHEST: f64 = 30.0;
/// Repetitions measured.
pub(in crate::one_rm) const MEASURED: (f64, f64) = (4.0, 8.0);

/// The part that repetitions add, in kg.
pub(in crate::one_rm) fn added(reps: f64) -> f64 {
    REPETITION * reps + OFFSET
}

pub(in crate::one_rm) fn one_rm_at(load: f64, reps: f64) -> Result<f64, Error> {
    let added = added(numeric::within(Code::RepsOutOfDomain, "reps", reps, 1.0, HIGHEST, "")?);
    let one_rm = LOAD * load + added;
    if one_rm > 0.0 { Ok(one_rm) } else { Err(too_light(load)) }
}

pub(in crate::one_rm) fn load_at(one_rm: f64, reps: f64) -> Result<f64, Error> {
    let added = added(numeric::within(Code::RepsOutOfDomain, "reps", reps, 1.0, HIGHEST, "")?);
    let load = (one_rm - added) / LOAD;
    if load > 0.0 { Ok(load) } else { Err(too_light(load)) }
}

pub(in crate::one_rm) fn reps_at(load: f64, one_rm: f64) -> Result<f64, Error> {
    let fraction = load / one_rm;
    crate::one_rm::curve::answered_reps((one_rm - LOAD * load - OFFSET) / REPETITION, fraction)
}

/// Below a few kilograms the offset takes over and the maximum would be nothing or less.
fn too_light(load: f64) -> Error {
    Error::range(Code::LoadOutOfDomain, "load", load, 0.0, Mass::MAX.kg(), "kg, with a maximum above 0")
}

formula! {
    "one_rm.cummings_finn_1998",
    /// What could be lifted once, from a set to failure, for an untrained young woman's bench press?
    ///
    /// # Formula
    /// `E = 1.175 w + 0.839 r - 4.29787`; `w` load in kg, `r` repetitions to failure, `E` in kg. Bound to kilograms:
    /// twice the load is not twice the maximum.
    ///
    /// # Domain
    /// From 1 repetition up to 30 repetitions; measured: 4 to 8, 57 untrained women, bench press.
    /// The abstract names load, repetitions and biacromial breadth as the variables of its equation; this line, known from
    /// later lists, has no breadth.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg, or where the
    /// offset would leave no maximum.
    ///
    /// # Source
    /// Cummings & Finn 1998, in the form of later lists (row `one_rm.cummings_finn_1998`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::cummings_finn_1998;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = cummings_finn_1998(Mass::from_kg(30.0)?, Reps::whole(6)?)?;
    /// assert!((estimate.value() - 35.986_13).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cummings_finn_1998(load: Mass, reps: Reps) -> Kilograms {
        one_rm_at(positive(load)?, reps.value()).and_then(Kilograms::new)
    }
    source: CUMMINGS_FINN_1998, place: "line of two variables in later lists; the abstract's own also holds biacromial breadth", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    population: "57 untrained women, bench press", domain: "1 to 30 repetitions; measured 4 to 8",
}

formula! {
    "one_rm.cummings_finn_1998_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = (E - 0.839 r + 4.29787) / 1.175`; all masses in kg.
    ///
    /// # Domain
    /// As [`cummings_finn_1998`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum or the load
    /// would be nothing or less.
    ///
    /// # Source
    /// Cummings & Finn 1998 solved for the load (row `one_rm.cummings_finn_1998_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::cummings_finn_1998_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = cummings_finn_1998_load(Kilograms::new(35.986_13)?, Reps::whole(6)?)?;
    /// assert!((load.value() - 30.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cummings_finn_1998_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        load_at(positive_maximum(one_rm)?, reps.value()).and_then(Kilograms::new)
    }
    source: CUMMINGS_FINN_1998, place: "line of two variables in later lists; the abstract's own also holds biacromial breadth", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    population: "57 untrained women, bench press", domain: "1 to 30 repetitions; measured 4 to 8",
}

formula! {
    "one_rm.cummings_finn_1998_reps",
    /// How many repetitions to failure does a load allow, given the one-repetition maximum?
    ///
    /// # Formula
    /// `r = (E - 1.175 w + 4.29787) / 0.839`; all masses in kg. Not scale-free, so it takes both masses.
    ///
    /// # Domain
    /// As [`cummings_finn_1998`]; the answer may lie above what that form accepts, up to 200.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `percent_out_of_domain` where there is no answer from 1 to 200.
    ///
    /// # Source
    /// Cummings & Finn 1998 solved for repetitions (row `one_rm.cummings_finn_1998_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::cummings_finn_1998_reps;
    /// use bismar::quantity::{Kilograms, Mass};
    ///
    /// let reps = cummings_finn_1998_reps(Mass::from_kg(30.0)?, Kilograms::new(35.986_13)?)?;
    /// assert!((reps - 6.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn cummings_finn_1998_reps(load: Mass, one_rm: Kilograms) -> f64 {
        reps_at(positive(load)?, positive_maximum(one_rm)?)
    }
    source: CUMMINGS_FINN_1998, place: "line of two variables in later lists; the abstract's own also holds biacromial breadth", standing: Published, seen: Secondary,
    copies: "public code and lists of equations",
    population: "57 untrained women, bench press", domain: "where the answer lies from 1 to 200 repetitions",
}

rows![cummings_finn_1998, cummings_finn_1998_load, cummings_finn_1998_reps];
