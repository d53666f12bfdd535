//! The classic prediction equations: one set to failure in, one-repetition maximum out.

use crate::error::{Code, Error};
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const EPLEY_1985: Source = Source {
    id: "epley-1985",
    citation: "Epley B. Poundage chart. Body Enterprises, Lincoln NE, 1985",
    doi: None,
};

/// Repetitions to failure as a number, refused outside `1..=highest`.
fn reps_in_domain(reps: Reps, highest: f64) -> Result<f64, Error> {
    let value = reps.value();
    if value < 1.0 || value > highest {
        return Err(Error::range(Code::RepsOutOfDomain, "reps", value, 1.0, highest, ""));
    }
    Ok(value)
}

/// A load to estimate from: above nothing.
fn positive(load: Mass) -> Result<f64, Error> {
    if load.is_positive() {
        Ok(load.kg())
    } else {
        Err(Error::range(Code::LoadOutOfDomain, "load", load.kg(), 0.0, Mass::MAX.kg(), "kg, above 0"))
    }
}

formula! {
    "one_rm.epley_1985",
    /// One-repetition maximum from a set to failure: what could be lifted once?
    ///
    /// # Formula
    /// `E = w (1 + r / 30)`; `w` load in kg, `r` repetitions to failure, `E` in kg. At one repetition it gives
    /// 1.0333 w, not the load itself.
    ///
    /// # Domain
    /// From 1 repetition; a straight line without end, of use up to about 10.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 or above 30 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Epley 1985, p 86 (row `one_rm.epley_1985`).
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
        let reps = reps_in_domain(reps, 30.0)?;
        Kilograms::new(positive(load)? * (1.0 + reps / 30.0))
    }
    source: EPLEY_1985, place: "p 86", standing: Published, seen: Memory,
    population: "a coach's chart; no published sample", domain: "1 to 30 repetitions", error: "",
}

rows![epley_1985];
