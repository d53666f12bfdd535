//! Abadie's straight lines, in pounds: repetitions do not enter.

use super::curve::{positive, positive_maximum};
use crate::error::{Code, Error};
use crate::quantity::{Kilograms, Mass};
use crate::source::{Source, formula, rows};

const ABADIE_2000: Source = Source {
    id: "abadie-2000",
    citation: "Abadie BR, Wentworth MC. Prediction of one repetition maximal strength from a 5-10 repetition submaximal strength test in college-aged females. J Exerc Physiol Online 2000;3(3)",
    doi: None,
};

const ABADIE_1999: Source = Source {
    id: "abadie-1999",
    citation: "Abadie BR, Altorfer GL, Schuler PB. Does a regression equation to predict maximal strength in untrained lifters remain valid when the subjects are technique trained? J Strength Cond Res 1999;13:259-263",
    doi: None,
};

/// Intercept in pounds and slope.
type Line = (f64, f64);
const WOMEN_2000: Line = (7.24, 1.05);
const MEN_1999: Line = (8.8147, 1.1828);

/// The pound in kilograms, by way of the exact mass.
fn from_pounds(pounds: f64) -> Result<Kilograms, Error> {
    Kilograms::new(pounds * crate::quantity::POUND)
}

fn maximum((intercept, slope): Line, load: Mass) -> Result<Kilograms, Error> {
    positive(load)?;
    from_pounds(intercept + slope * load.lb())
}

fn load((intercept, slope): Line, one_rm: Kilograms) -> Result<Kilograms, Error> {
    let pounds = positive_maximum(one_rm)? / crate::quantity::POUND;
    if pounds <= intercept {
        let lowest = intercept * crate::quantity::POUND;
        let unit = "kg, lower end excluded";
        return Err(Error::range(Code::LoadOutOfDomain, "one_rm", one_rm.value(), lowest, f64::MAX, unit));
    }
    from_pounds((pounds - intercept) / slope)
}

formula! {
    "one_rm.abadie_2000",
    /// What could a young woman press once, from a load she can press 5 to 10 times?
    ///
    /// # Formula
    /// `E = 7.24 + 1.05 w`, both in **pounds**; the argument and the result carry their unit.
    ///
    /// # Domain
    /// 30 women of 19 to 26 years, chest press, a load of 5 to 10 repetitions to failure; how many does not enter.
    /// Error of estimate 2.5 kg, 7.8 % of the maximum.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Abadie & Wentworth 2000, abstract (row `one_rm.abadie_2000`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::abadie_2000;
    /// use bismar::quantity::Mass;
    ///
    /// let estimate = abadie_2000(Mass::from_lb(60.0)?)?;
    /// assert!((estimate.to_mass()?.lb() - 70.24).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn abadie_2000(load: Mass) -> Result<Kilograms, Error> {
        maximum(WOMEN_2000, load)
    }
    source: ABADIE_2000, place: "abstract", standing: Published, seen: Read,
    population: "30 women, 19 to 26 years, chest press", domain: "a load of 5 to 10 repetitions to failure",
    error: "SEE 2.5 kg, 7.8 % of the maximum",
}

formula! {
    "one_rm.abadie_2000_load",
    /// What load could a young woman press 5 to 10 times, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = (E - 7.24) / 1.05`, both in pounds; the argument and the result carry their unit.
    ///
    /// # Domain
    /// As [`abadie_2000`].
    ///
    /// # Errors
    /// `load_out_of_domain` where the maximum does not exceed 7.24 lb.
    ///
    /// # Source
    /// Abadie & Wentworth 2000 solved for the load (row `one_rm.abadie_2000_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::abadie_2000_load;
    /// use bismar::quantity::{Kilograms, Mass};
    ///
    /// let load = abadie_2000_load(Kilograms::from(Mass::from_lb(70.24)?))?;
    /// assert!((load.to_mass()?.lb() - 60.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn abadie_2000_load(one_rm: Kilograms) -> Result<Kilograms, Error> {
        load(WOMEN_2000, one_rm)
    }
    source: ABADIE_2000, place: "abstract", standing: Published, seen: Read,
    population: "30 women, 19 to 26 years, chest press", domain: "a load of 5 to 10 repetitions to failure",
    error: "of the maximum from the load: SEE 2.5 kg, 7.8 %",
}

formula! {
    "one_rm.abadie_1999",
    /// What could an untrained young man press once, from a load he can press 7 to 10 times?
    ///
    /// # Formula
    /// `E = 8.8147 + 1.1828 w`, both in **pounds**; the argument and the result carry their unit.
    ///
    /// # Domain
    /// Recalled as untrained college men, bench press, in pounds: unit, sex and training are not confirmed. A load of 7
    /// to 10 repetitions to failure; how many does not enter.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Abadie et al. 1999 (row `one_rm.abadie_1999`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::abadie_1999;
    /// use bismar::quantity::Mass;
    ///
    /// let estimate = abadie_1999(Mass::from_lb(100.0)?)?;
    /// assert!((estimate.to_mass()?.lb() - 127.0947).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn abadie_1999(load: Mass) -> Result<Kilograms, Error> {
        maximum(MEN_1999, load)
    }
    source: ABADIE_1999, place: "p 259-263", standing: Published, seen: Memory,
    population: "recalled as untrained college men, bench press; unit, sex and training not confirmed", domain: "a load of 7 to 10 repetitions to failure",
}

formula! {
    "one_rm.abadie_1999_load",
    /// What load could an untrained young man press 7 to 10 times, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = (E - 8.8147) / 1.1828`, both in pounds; the argument and the result carry their unit.
    ///
    /// # Domain
    /// As [`abadie_1999`].
    ///
    /// # Errors
    /// `load_out_of_domain` where the maximum does not exceed 8.8147 lb.
    ///
    /// # Source
    /// Abadie et al. 1999 solved for the load (row `one_rm.abadie_1999_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::abadie_1999_load;
    /// use bismar::quantity::{Kilograms, Mass};
    ///
    /// let load = abadie_1999_load(Kilograms::from(Mass::from_lb(127.0947)?))?;
    /// assert!((load.to_mass()?.lb() - 100.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn abadie_1999_load(one_rm: Kilograms) -> Result<Kilograms, Error> {
        load(MEN_1999, one_rm)
    }
    source: ABADIE_1999, place: "p 259-263", standing: Published, seen: Memory,
    population: "recalled as untrained college men, bench press; unit, sex and training not confirmed", domain: "a load of 7 to 10 repetitions to failure",
}

rows![abadie_2000, abadie_2000_load, abadie_1999, abadie_1999_load];
