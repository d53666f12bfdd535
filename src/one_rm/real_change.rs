//! Did the maximum really change?

use super::curve::positive_maximum;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Interval, Kilograms};
use crate::source::{Source, constant, formula, rows};
use crate::statistics::{ChangeChances, change_chances, smallest_worthwhile_change, true_change_interval};

const HOPKINS_2000: Source = Source {
    id: "hopkins-2000",
    citation: "Hopkins WG. Measures of reliability in sports medicine and science. Sports Med 30:1-15, 2000",
    doi: Some("10.2165/00007256-200030010-00001"),
};

const HOPKINS_2004: Source = Source {
    id: "hopkins-2004",
    citation: "Hopkins WG. How to interpret changes in an athletic performance test. Sportscience 8:1-7, 2004",
    doi: None,
};

const BANYARD_2017: Source = Source {
    id: "banyard-2017",
    citation: "Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017",
    doi: Some("10.1519/JSC.0000000000001657"),
};

constant! {
    "one_rm.banyard_2017_sem",
    /// Standard error of a tested maximum, in kg: 2.9 on a mean of 140.3.
    ///
    /// # Source
    /// Banyard et al. 2017, abstract (row `one_rm.banyard_2017_sem`).
    pub const BANYARD_2017_SEM: f64 = 2.9;
    source: BANYARD_2017, place: "abstract", standing: Published, seen: Read,
    population: "17 strength-trained men", domain: "back squat, three sessions", error: "CV 2.1 %, ICC 0.99",
}

/// Two maxima of one person, compared.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct StrengthChange {
    /// After less before, kg.
    pub change: Kilograms,
    /// The same in percent of before.
    pub percent: f64,
    /// Where the true change lies, kg.
    pub interval: Interval,
    /// The smallest change that noise does not explain at that level, kg.
    pub smallest_real: Kilograms,
    /// Whether the change is that large, either way.
    pub is_real: bool,
    /// How likely it is that the true change is worth while, trivial or a loss worth minding.
    pub chances: ChangeChances,
}

/// A coefficient of variation of a test.
fn cv_in_range(cv: f64) -> Result<f64, Error> {
    let cv = numeric::within(Code::OutOfRange, "cv", cv, 0.0, 0.5, "")?;
    if cv > 0.0 {
        Ok(cv)
    } else {
        Err(Error::range(Code::OutOfRange, "cv", cv, 0.0, 0.5, "(lower end excluded)"))
    }
}

formula! {
    "one_rm.typical_error",
    /// By how much does a maximum of this size wander from day to day?
    ///
    /// # Formula
    /// `TE = CV E`; `CV` coefficient of variation (0.042 for 4.2 %), `E` maximum in kg.
    ///
    /// # Domain
    /// Published: [`GRGIC_2020_CV`](super::GRGIC_2020_CV) over 32 studies,
    /// [`BANYARD_2017_CV`](super::BANYARD_2017_CV) for trained men; best is the lifter's own.
    ///
    /// # Errors
    /// `out_of_range` for a coefficient at or below 0 or above 0.5; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Hopkins 2000 (row `one_rm.typical_error`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{GRGIC_2020_CV, typical_error};
    /// use bismar::quantity::Kilograms;
    ///
    /// assert!((typical_error(Kilograms::new(100.0)?, GRGIC_2020_CV)?.value() - 4.2).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn typical_error(one_rm: Kilograms, cv: f64) -> Result<Kilograms, Error> {
        Kilograms::new(positive_maximum(one_rm)? * cv_in_range(cv)?)
    }
    source: HOPKINS_2000, place: "typical error as a coefficient of variation", standing: Published, seen: Memory,
    population: "any", domain: "coefficient of variation up to 0.5",
}

formula! {
    "one_rm.smallest_real_change",
    /// Which change of a maximum is more than noise?
    ///
    /// # Formula
    /// `z sqrt(2) CV E`, `z` the two-sided normal quantile of `level` (1.96 at 95 %).
    ///
    /// # Domain
    /// Two single tests of one person. At 4.2 % and 95 % it is 11.6 % of the maximum: most real changes within a
    /// training block are smaller than one pair of tests can show.
    ///
    /// # Errors
    /// `out_of_range` for the coefficient or the level; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Hopkins 2000, limits for a change (row `one_rm.smallest_real_change`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{GRGIC_2020_CV, smallest_real_change};
    /// use bismar::quantity::Kilograms;
    ///
    /// let change = smallest_real_change(Kilograms::new(100.0)?, GRGIC_2020_CV, 0.95)?;
    /// assert!((change.value() - 11.64).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn smallest_real_change(one_rm: Kilograms, cv: f64, level: f64) -> Result<Kilograms, Error> {
        let error = typical_error(one_rm, cv)?;
        Kilograms::new(true_change_interval(0.0, error.value(), level)?.high())
    }
    source: HOPKINS_2000, place: "limits for a change", standing: Published, seen: Memory,
    population: "any", domain: "two single tests of one person",
}

formula! {
    "one_rm.worthwhile_change",
    /// Which change of a maximum is worth minding, measured against how people differ?
    ///
    /// # Formula
    /// `0.2 SD`, `SD` the standard deviation of maxima between people, kg.
    ///
    /// # Domain
    /// A convention: it depends on whom you compare, and is often smaller than one test can show.
    ///
    /// # Errors
    /// `out_of_range` at or below 0 kg.
    ///
    /// # Source
    /// Hopkins 2004 (row `one_rm.worthwhile_change`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::worthwhile_change;
    /// use bismar::quantity::Kilograms;
    ///
    /// assert!((worthwhile_change(Kilograms::new(27.2)?)?.value() - 5.44).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn worthwhile_change(between_people: Kilograms) -> Result<Kilograms, Error> {
        Kilograms::new(smallest_worthwhile_change(between_people.value())?)
    }
    source: HOPKINS_2004, place: "smallest worthwhile change", standing: Published, seen: Read,
    population: "any", domain: "one group of people",
}

formula! {
    "one_rm.strength_change",
    /// The maximum was tested twice: did this person really change, and does it matter?
    ///
    /// # Formula
    /// `change = after - before`; interval `change +- z sqrt(2) TE` with `TE = CV before`; real where the change is at
    /// least `z sqrt(2) TE` either way; chances as `statistics.change_chances` with the worthwhile change.
    ///
    /// # Domain
    /// Two single tests, or two estimates with a coefficient of variation that fits estimates (larger). Early in
    /// training a rise is mostly learning of the test: untrained older women rose 22 % on testing alone (Ploutz-Snyder
    /// & Giamis 2001).
    ///
    /// # Errors
    /// `out_of_range` for coefficient, level or worthwhile change; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// The limits are those of Hopkins 2000, the chances those of Hopkins 2004; both recalled.
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{BANYARD_2017_CV, strength_change};
    /// use bismar::quantity::Kilograms;
    ///
    /// let kg = |value| Kilograms::new(value);
    /// let found = strength_change(kg(100.0)?, kg(104.0)?, BANYARD_2017_CV, kg(2.0)?, 0.95)?;
    /// assert!(!found.is_real && found.chances.benefit > 0.7);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn strength_change(
        before: Kilograms, after: Kilograms, cv: f64, worthwhile: Kilograms, level: f64
    ) -> Result<StrengthChange, Error> {
        let (from, to) = (positive_maximum(before)?, positive_maximum(after)?);
        let error = typical_error(before, cv)?.value();
        let smallest_real = smallest_real_change(before, cv, level)?;
        let change = to - from;
        Ok(StrengthChange {
            change: Kilograms::new(change)?,
            percent: numeric::finite("percent", 100.0 * change / from)?,
            interval: true_change_interval(change, error, level)?,
            smallest_real,
            is_real: numeric::fabs(change) >= smallest_real.value(),
            chances: change_chances(change, error, worthwhile.value(), None)?,
        })
    }
    source: HOPKINS_2000, place: "limits for a change; the chances from Hopkins 2004", standing: Published, seen: Memory,
    population: "any", domain: "two single tests of one person",
}

rows![BANYARD_2017_SEM, typical_error, smallest_real_change, worthwhile_change, strength_change];
