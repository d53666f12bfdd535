//! Cummings & Finn 1998: additive, in kilograms, not scale-free.
//!
//! The paper's abstract speaks of a regression that also holds the breadth of the shoulders (biacromial). Its coefficients
//! were not seen; what is here is the line without it, as later lists print it under these authors' names.

use super::curve::{answered_reps, positive, positive_maximum};
use super::declare::equation;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{Source, rows};

pub(super) const LOAD: f64 = 1.175;
/// Kilograms for each repetition, whatever the load.
const REPETITION: f64 = 0.839;
const OFFSET: f64 = -4.29787;
/// Far beyond the 4 to 8 repetitions measured.
pub(super) const HIGHEST: f64 = 30.0;
/// Repetitions measured.
pub(super) const MEASURED: (f64, f64) = (4.0, 8.0);

/// The part that repetitions add, in kg.
pub(super) fn added(reps: f64) -> f64 {
    REPETITION * reps + OFFSET
}

pub(super) fn one_rm_at(load: f64, reps: f64) -> Result<f64, Error> {
    let added = added(numeric::within(Code::RepsOutOfDomain, "reps", reps, 1.0, HIGHEST, "")?);
    let one_rm = LOAD * load + added;
    if one_rm > 0.0 { Ok(one_rm) } else { Err(too_light(load)) }
}

pub(super) fn load_at(one_rm: f64, reps: f64) -> Result<f64, Error> {
    let added = added(numeric::within(Code::RepsOutOfDomain, "reps", reps, 1.0, HIGHEST, "")?);
    let load = (one_rm - added) / LOAD;
    if load > 0.0 { Ok(load) } else { Err(too_light(load)) }
}

pub(super) fn reps_at(load: f64, one_rm: f64) -> Result<f64, Error> {
    answered_reps((one_rm - LOAD * load - OFFSET) / REPETITION, load / one_rm)
}

/// Below a few kilograms the offset takes over and the maximum would be nothing or less.
fn too_light(load: f64) -> Error {
    Error::range(Code::LoadOutOfDomain, "load", load, 0.0, Mass::MAX.kg(), "kg, with a maximum above 0")
}

equation! {
    "Cummings & Finn 1998", "in the form of later lists", highest: 30;
    row: {
        source: Source { id: "cummings-finn-1998", citation: "Cummings B, Finn KJ. Estimation of a one repetition maximum bench press for untrained women. J Strength Cond Res 1998;12(4):262-265", doi: None },
        place: "line of two variables in later lists; the abstract's own also holds biacromial breadth",
        standing: Published, seen: Secondary, copies: "public code and lists of equations",
        population: "57 untrained women, bench press"
    },
    domain: "1 to 30 repetitions; measured 4 to 8";
    /// From 1 repetition up to 30 repetitions; measured: 4 to 8, 57 untrained women, bench press.
    /// The abstract names load, repetitions and biacromial breadth as the variables of its equation; this line, known from
    /// later lists, has no breadth.
    asks: "What could be lifted once, from a set to failure, for an untrained young woman's bench press?";
    pub fn cummings_finn_1998(load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        one_rm_at(positive(load)?, reps.value()).and_then(Kilograms::new)
    }
    "`E = 1.175 w + 0.839 r - 4.29787`", more: "Bound to kilograms: twice the load is not twice the maximum.",
    errors: "`reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` at or below 0 kg, or where the offset would leave no maximum.",
    gives: 35.986_13, within: "1e-9", from: "Mass::from_kg(30.0)?, Reps::whole(6)?";
    pub fn cummings_finn_1998_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        load_at(positive_maximum(one_rm)?, reps.value()).and_then(Kilograms::new)
    }
    "`w = (E - 0.839 r + 4.29787) / 1.175`", symbols: "all masses in kg",
    errors: "`reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the maximum or the load would be nothing or less.",
    gives: 30.000, within: "1e-9", from: "Kilograms::new(35.986_13)?, Reps::whole(6)?";
    asks: "How many repetitions to failure does a load allow, given the one-repetition maximum?";
    pub fn cummings_finn_1998_reps(load: Mass, one_rm: Kilograms) -> Result<f64, Error> {
        reps_at(positive(load)?, positive_maximum(one_rm)?)
    }
    "`r = (E - 1.175 w + 4.29787) / 0.839`", symbols: "all masses in kg. Not scale-free, so it takes both masses",
    errors: "`load_out_of_domain` at or below 0 kg; `percent_out_of_domain` where there is no answer from 1 to 200.",
    gives: 6.00, within: "1e-9", from: "Mass::from_kg(30.0)?, Kilograms::new(35.986_13)?", "{Kilograms, Mass}";
}

rows![cummings_finn_1998, cummings_finn_1998_load, cummings_finn_1998_reps];
