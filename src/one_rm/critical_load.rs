//! Critical load: what could be lifted very often, and a store of work above it.

use super::curve::{HIGHEST_ANSWER, answered_reps, positive, positive_maximum};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

pub(super) const BERGSTROM_2021: Source = Source {
    id: "bergstrom-2021",
    citation: "Bergstrom HC, Dinyer TK, Succi PJ, Voskuil CC, Housh TJ. Applications of the critical power model to dynamic constant external resistance exercise: a brief review of the critical load test. Sports 2021;9(2):15",
    doi: Some("10.3390/sports9020015"),
};

const MORTON_2014: Source = Source {
    id: "morton-2014",
    citation: "Morton RH, Redstone MD, Laing DJ. The critical power concept and bench press: modeling 1RM and repetitions to failure. Int J Exerc Sci 2014;7:152-160",
    doi: None,
};

/// A critical load and a store, both above 0.
fn checked(critical_load: Kilograms, store: f64) -> Result<(f64, f64), Error> {
    let critical = positive_maximum(critical_load).map_err(|error| error.named("critical_load"))?;
    let store = numeric::finite("store", store)?;
    if store > 0.0 {
        Ok((critical, store))
    } else {
        Err(Error::new(Code::OutOfRange, "store", store, Allowed::rule("above 0 kg repetitions")))
    }
}

/// A load or maximum that must lie above the critical load.
fn above(critical: f64, field: &'static str, kilograms: f64) -> Result<f64, Error> {
    if kilograms > critical {
        return Ok(kilograms - critical);
    }
    let unit = "kg, lower end excluded";
    Err(Error::range(Code::LoadOutOfDomain, field, kilograms, critical, f64::MAX, unit))
}

formula! {
    "one_rm.bergstrom_2021",
    /// What could be lifted once, by the two-parameter critical load?
    ///
    /// # Formula
    /// `E = CL + L'`, the curve at one repetition. It is known to lie too high there.
    ///
    /// # Domain
    /// As [`bergstrom_2021_fit`](super::bergstrom_2021_fit()).
    ///
    /// # Errors
    /// `load_out_of_domain`, `out_of_range` where critical load or store is at or below 0.
    ///
    /// # Source
    /// Bergstrom et al. 2021 (row `one_rm.bergstrom_2021`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::bergstrom_2021;
    /// use bismar::quantity::Kilograms;
    ///
    /// assert_eq!(bergstrom_2021(Kilograms::new(60.0)?, 120.0)?.value(), 180.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn bergstrom_2021(critical_load: Kilograms, store: f64) -> Result<Kilograms, Error> {
        let (critical, store) = checked(critical_load, store)?;
        Kilograms::new(critical + store)
    }
    source: BERGSTROM_2021, place: "abstract", standing: Published, seen: Read,
    population: "the lifter's own sets", domain: "blows up towards one repetition",
}

formula! {
    "one_rm.bergstrom_2021_load",
    /// What load would be lifted this often to failure, by the two-parameter critical load?
    ///
    /// # Formula
    /// `w = CL + L' / r`.
    ///
    /// # Domain
    /// From 1 to 200 repetitions, best within those fitted.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1; `load_out_of_domain`, `out_of_range` where critical load or store is at or
    /// below 0.
    ///
    /// # Source
    /// Bergstrom et al. 2021 (row `one_rm.bergstrom_2021_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::bergstrom_2021_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// assert_eq!(bergstrom_2021_load(Kilograms::new(60.0)?, 120.0, Reps::whole(6)?)?.value(), 80.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn bergstrom_2021_load(critical_load: Kilograms, store: f64, reps: Reps) -> Result<Kilograms, Error> {
        let (critical, store) = checked(critical_load, store)?;
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, HIGHEST_ANSWER, "")?;
        Kilograms::new(critical + store / reps)
    }
    source: BERGSTROM_2021, place: "abstract", standing: Published, seen: Read,
    population: "the lifter's own sets", domain: "1 to 200 repetitions",
}

formula! {
    "one_rm.bergstrom_2021_reps",
    /// How many repetitions to failure does a load allow, by the two-parameter critical load?
    ///
    /// # Formula
    /// `r = L' / (w - CL)`.
    ///
    /// # Domain
    /// Loads above the critical load.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below the critical load; `percent_out_of_domain` where there is no answer from 1
    /// to 200 repetitions; `out_of_range` where the store is at or below 0.
    ///
    /// # Source
    /// Bergstrom et al. 2021 (row `one_rm.bergstrom_2021_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::bergstrom_2021_reps;
    /// use bismar::quantity::{Kilograms, Mass};
    ///
    /// assert_eq!(bergstrom_2021_reps(Kilograms::new(60.0)?, 120.0, Mass::from_kg(80.0)?)?, 6.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn bergstrom_2021_reps(critical_load: Kilograms, store: f64, load: Mass) -> Result<f64, Error> {
        let (critical, store) = checked(critical_load, store)?;
        let excess = above(critical, "load", positive(load)?)?;
        answered_reps(store / excess, load.kg() / (critical + store))
    }
    source: BERGSTROM_2021, place: "abstract", standing: Published, seen: Read,
    population: "the lifter's own sets", domain: "where the answer lies from 1 to 200 repetitions",
}

formula! {
    "one_rm.morton_2014",
    /// What could be lifted once, from a set to failure, by the three-parameter critical load?
    ///
    /// # Formula
    /// `r = 1 + L' / (w - CL) - L' / (E - CL)` solved for `E`. A set of one repetition gives its load.
    ///
    /// # Domain
    /// A load above the critical load; fewer repetitions than `1 + L' / (w - CL)`, where `E` would be without limit.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and from that pole on; `load_out_of_domain` at or below the critical load;
    /// `out_of_range` where the store is at or below 0.
    ///
    /// # Source
    /// Morton et al. 2014, standard three-parameter form (row `one_rm.morton_2014`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::morton_2014;
    /// use bismar::quantity::{Kilograms, Mass, Reps};
    ///
    /// let (load, reps) = (Mass::from_kg(80.0)?, Reps::whole(4)?);
    /// assert_eq!(morton_2014(Kilograms::new(60.0)?, 120.0, load, reps)?.value(), 100.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn morton_2014(critical_load: Kilograms, store: f64, load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        let (critical, store) = checked(critical_load, store)?;
        let excess = above(critical, "load", positive(load)?)?;
        let pole = 1.0 + store / excess;
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, pole, "(upper end excluded)")?;
        let left = pole - reps;
        if left <= 0.0 {
            return Err(Error::range(Code::RepsOutOfDomain, "reps", reps, 1.0, pole, "(upper end excluded)"));
        }
        Kilograms::new(critical + store / left)
    }
    source: MORTON_2014, place: "three-parameter form", standing: Published, seen: Memory,
    population: "bench press", domain: "loads above the critical load, below the pole",
}

formula! {
    "one_rm.morton_2014_load",
    /// What load would be lifted this often to failure, by the three-parameter critical load?
    ///
    /// # Formula
    /// `w = CL + L' / (r - 1 + L' / (E - CL))`.
    ///
    /// # Domain
    /// From 1 to 200 repetitions; one repetition gives the maximum.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1; `load_out_of_domain` where the maximum does not exceed the critical load;
    /// `out_of_range` where the store is at or below 0.
    ///
    /// # Source
    /// Morton et al. 2014, standard three-parameter form (row `one_rm.morton_2014_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::morton_2014_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = morton_2014_load(Kilograms::new(60.0)?, 120.0, Kilograms::new(100.0)?, Reps::whole(4)?)?;
    /// assert_eq!(load.value(), 80.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn morton_2014_load(critical_load: Kilograms, store: f64, one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        let (critical, store) = checked(critical_load, store)?;
        let excess = above(critical, "one_rm", one_rm.value())?;
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, HIGHEST_ANSWER, "")?;
        Kilograms::new(critical + store / (reps - 1.0 + store / excess))
    }
    source: MORTON_2014, place: "three-parameter form", standing: Published, seen: Memory,
    population: "bench press", domain: "1 to 200 repetitions",
}

formula! {
    "one_rm.morton_2014_reps",
    /// How many repetitions to failure does a load allow, by the three-parameter critical load?
    ///
    /// # Formula
    /// `r = 1 + L' / (w - CL) - L' / (E - CL)`.
    ///
    /// # Domain
    /// Loads above the critical load and not above the maximum.
    ///
    /// # Errors
    /// `load_out_of_domain` where load or maximum does not exceed the critical load; `percent_out_of_domain` where
    /// there is no answer from 1 to 200 repetitions; `out_of_range` where the store is at or below 0.
    ///
    /// # Source
    /// Morton et al. 2014, standard three-parameter form (row `one_rm.morton_2014_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::morton_2014_reps;
    /// use bismar::quantity::{Kilograms, Mass};
    ///
    /// let reps = morton_2014_reps(Kilograms::new(60.0)?, 120.0, Kilograms::new(100.0)?, Mass::from_kg(80.0)?)?;
    /// assert_eq!(reps, 4.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn morton_2014_reps(critical_load: Kilograms, store: f64, one_rm: Kilograms, load: Mass) -> Result<f64, Error> {
        let (critical, store) = checked(critical_load, store)?;
        let highest = above(critical, "one_rm", one_rm.value())?;
        let excess = above(critical, "load", positive(load)?)?;
        answered_reps(1.0 + store / excess - store / highest, load.kg() / one_rm.value())
    }
    source: MORTON_2014, place: "three-parameter form", standing: Published, seen: Memory,
    population: "bench press", domain: "where the answer lies from 1 to 200 repetitions",
}

rows![
    bergstrom_2021,
    bergstrom_2021_load,
    bergstrom_2021_reps,
    morton_2014,
    morton_2014_load,
    morton_2014_reps,
];
