//! New to a lift: repetitions say less about the maximum than later, and part of their rise is not strength.

use super::curve::{positive, positive_maximum};
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass};
use crate::source::{ARITHMETIC, Source, constant, formula, rows};

const BRAITH_1993: Source = Source {
    id: "braith-1993",
    citation: "Braith RW, Graves JE, Leggett SH, Pollock ML. Effect of training on the relationship between maximal and submaximal strength. Med Sci Sports Exerc 1993;25:132-138",
    doi: Some("10.1249/00005768-199301000-00018"),
};

/// How long the lifter has trained this lift.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Practice {
    /// Not at all.
    Untrained,
    /// For eighteen weeks.
    EighteenWeeks,
}

impl Practice {
    /// Kilograms of maximum for each of the 7-10RM, and at none.
    const fn line(self) -> (f64, f64) {
        match self {
            Practice::Untrained => (1.554, -5.181),
            Practice::EighteenWeeks => (1.172, 7.704),
        }
    }
}

constant! {
    "one_rm.new_to_lift_slope_cv",
    /// How much the slope of an untrained person may differ from the usual one: coefficient of variation.
    ///
    /// # Domain
    /// A 7-10RM of 68.4 % of the maximum (Braith et al. 1993) stands for 46 % more than the load; the eight equations of
    /// [`EstimateOptions::EQUATIONS`](super::EstimateOptions::EQUATIONS) say 25 % at 8.5 repetitions. That shortfall, in
    /// slopes 0.85, taken as a deviation beside the usual [`PERSONAL_SLOPE_CV`](super::PERSONAL_SLOPE_CV).
    ///
    /// # Source
    /// Follows from Braith et al. 1993 (row `one_rm.new_to_lift_slope_cv`).
    pub const NEW_TO_LIFT_SLOPE_CV: f64 = 0.90;
    source: ARITHMETIC, place: "from the 68.4 % of Braith et al. 1993 and eight equations at 8.5 repetitions",
    standing: Derived, seen: NotApplicable, population: "58 untrained people, knee extension",
    domain: "width of the estimate in the first months of a lift",
}

/// The 7-10RM as a part of the maximum: before training, and after eighteen weeks.
const PART_BEFORE: f64 = 0.684;
const PART_AFTER: f64 = 0.791;

/// What a rise of an estimate may be made of.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct NewcomersGain {
    /// The rise as the equation gives it, in percent.
    pub by_equation: f64,
    /// What would be left of it if this lifter learned to repeat as those of the study did in eighteen weeks, percent.
    /// Strength may lie anywhere between the two.
    pub of_strength: f64,
}

formula! {
    "one_rm.braith_1993",
    /// What could be lifted once, from a 7-10RM, before any training of the lift or after eighteen weeks of it?
    ///
    /// # Formula
    /// Untrained `E = 1.554 w - 5.181`, after eighteen weeks `E = 1.172 w + 7.704`; `w` the load of a set of 7 to 10
    /// repetitions to failure, both in kg.
    ///
    /// # Domain
    /// Knee extension on one machine. The first line applied to the trained says 21.2 kg too much: the same equation does
    /// not fit one person before and after.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg, or where no maximum would be left.
    ///
    /// # Source
    /// Braith et al. 1993, abstract (row `one_rm.braith_1993`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Practice, braith_1993};
    /// use bismar::quantity::Mass;
    ///
    /// let load = Mass::from_kg(60.0)?;
    /// assert!((braith_1993(load, Practice::Untrained)?.value() - 88.059).abs() < 1e-9);
    /// assert!((braith_1993(load, Practice::EighteenWeeks)?.value() - 78.024).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn braith_1993(load: Mass, practice: Practice) -> Result<Kilograms, Error> {
        let (rise, offset) = practice.line();
        let one_rm = rise * positive(load)? + offset;
        if one_rm > 0.0 {
            Kilograms::new(one_rm)
        } else {
            let allowed = Allowed::rule("a load with a maximum above 0 kg");
            Err(Error::new(Code::LoadOutOfDomain, "load", load.kg(), allowed))
        }
    }
    source: BRAITH_1993, place: "abstract", standing: Published, seen: Read,
    population: "58 untrained people of 25 +- 5 years, 47 of them trained for 18 weeks", domain: "knee extension, 7-10RM",
    error: "standard error 9.3 kg (R2 0.89) before, 9.9 kg (0.91) after",
}

formula! {
    "one_rm.braith_1993_load",
    /// What is the 7-10RM, given the one-repetition maximum?
    ///
    /// # Formula
    /// Untrained `w = (E + 5.181) / 1.554`, after eighteen weeks `w = (E - 7.704) / 1.172`; kg.
    ///
    /// # Domain
    /// As [`braith_1993`].
    ///
    /// # Errors
    /// `load_out_of_domain` where the maximum or the load would be nothing or less.
    ///
    /// # Source
    /// Braith et al. 1993 solved for the load (row `one_rm.braith_1993_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Practice, braith_1993_load};
    /// use bismar::quantity::Kilograms;
    ///
    /// let load = braith_1993_load(Kilograms::new(88.059)?, Practice::Untrained)?;
    /// assert!((load.value() - 60.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn braith_1993_load(one_rm: Kilograms, practice: Practice) -> Result<Kilograms, Error> {
        let (rise, offset) = practice.line();
        let load = (positive_maximum(one_rm)? - offset) / rise;
        if load > 0.0 {
            Kilograms::new(load)
        } else {
            let allowed = Allowed::rule("a maximum with a load above 0 kg");
            Err(Error::new(Code::LoadOutOfDomain, "one_rm", one_rm.value(), allowed))
        }
    }
    source: BRAITH_1993, place: "abstract", standing: Published, seen: Read,
    population: "58 untrained people of 25 +- 5 years, 47 of them trained for 18 weeks", domain: "knee extension, 7-10RM",
    error: "standard error 9.3 kg (R2 0.89) before, 9.9 kg (0.91) after",
}

formula! {
    "one_rm.newcomers_gain",
    /// A new lifter's estimate rose: how little of that may be strength?
    ///
    /// # Formula
    /// By the equation `100 (after / before - 1)`; of strength `100 (after / before * 0.684 / 0.791 - 1)`: those of the
    /// study did their 7-10RM at 68.4 % of the maximum before training and at 79.1 % after eighteen weeks.
    ///
    /// # Domain
    /// Estimates from repetitions, of people who began with the lift. One study, one machine: it tells the direction,
    /// and a size that was met once. The trained repeat as often as before (Brechue & Mayhew 2009).
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Arithmetic over two figures in the abstract of Braith et al. 1993 (row `one_rm.newcomers_gain`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::newcomers_gain;
    /// use bismar::quantity::Kilograms;
    ///
    /// // The 7-10RM rose by half; the maximum by less than a third.
    /// let gain = newcomers_gain(Kilograms::new(100.0)?, Kilograms::new(151.4)?)?;
    /// assert!((gain.by_equation - 51.4).abs() < 1e-9);
    /// assert!((gain.of_strength - 31.7).abs() < 1.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn newcomers_gain(before: Kilograms, after: Kilograms) -> Result<NewcomersGain, Error> {
        let ratio = positive_maximum(after)? / positive_maximum(before)?;
        Ok(NewcomersGain {
            by_equation: numeric::finite("after", 100.0 * (ratio - 1.0))?,
            of_strength: numeric::finite("after", 100.0 * (ratio * PART_BEFORE / PART_AFTER - 1.0))?,
        })
    }
    source: BRAITH_1993, place: "both parts of the maximum, in the abstract", standing: Derived, seen: NotApplicable,
    population: "47 people new to knee extension, 18 weeks", domain: "estimates from repetitions, first months of a lift",
    error: "51.4 % by the 7-10RM where the maximum rose by 31.7 %",
}

rows![NEW_TO_LIFT_SLOPE_CV, braith_1993, braith_1993_load, newcomers_gain];
