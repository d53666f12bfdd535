//! Age coefficients of federations for masters and juniors.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use super::Sex;
use super::age_table::{FOSTER_FROM_14, MCCULLOCH_FROM_40, MELTZER_FABER_FROM_30};
use super::relative::positive_load;
use crate::caution::{self, Caution};
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Kilograms, Mass};
use crate::source::{Seen, Source, formula, rows};

const MCCULLOCH: Source = Source {
    id: "mcculloch",
    citation: "McCulloch age coefficients of masters powerlifting, in use at meets; the issuing document was not seen",
    doi: None,
};

const FOSTER: Source = Source {
    id: "foster",
    citation: "Foster age coefficients of junior powerlifting, in use at meets; the issuing document was not seen",
    doi: None,
};

const MELTZER_FABER: Source = Source {
    id: "meltzer-faber",
    citation: "Meltzer-Faber age coefficients of masters weightlifting, in use at meets; the issuing document was not seen",
    doi: None,
};

const ALL_ROUND: Source = Source {
    id: "all-round-weightlifting",
    citation: "United States All-Round Weightlifting Association; International All-Round Weightlifting \
               Association. Age correction (congress text of 2009)",
    doi: None,
};

/// An age coefficient: a result times it compares with results of the reference age.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct AgeCoefficient {
    /// The factor.
    pub coefficient: f64,
    /// The rule it comes from.
    pub rule: AgeRule,
    /// Who issued it, as far as known.
    pub issued_by: Cow<'static, str>,
    /// Whose results it was fitted to.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// A federation's age coefficients. Age is in whole years: powerlifting usually takes the age on the day, masters
/// weightlifting the age reached in the calendar year; the rule book decides.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum AgeRule {
    /// McCulloch, masters powerlifting, 40 to 90; 1 from 24 to 39.
    Mcculloch,
    /// Foster, junior powerlifting, 14 to 23.
    Foster,
    /// Meltzer-Faber, masters weightlifting, men, 30 to 90, for a Sinclair total.
    MeltzerFaber,
    /// International All-Round Weightlifting Association, from 40.
    AllRoundInternational,
    /// United States All-Round Weightlifting Association, from 40.
    AllRoundUnitedStates,
}

/// Oldest age the linear all-round rules are taken to, our choice: where the tables of the others end.
const OLDEST_IN_RULES: u8 = 90;

impl AgeRule {
    const fn ages(self) -> (u8, u8) {
        match self {
            AgeRule::Mcculloch => (24, OLDEST_IN_RULES),
            AgeRule::Foster => (14, 23),
            AgeRule::MeltzerFaber => (30, OLDEST_IN_RULES),
            AgeRule::AllRoundInternational | AgeRule::AllRoundUnitedStates => (40, OLDEST_IN_RULES),
        }
    }

    const fn issued_by(self) -> &'static str {
        match self {
            AgeRule::Mcculloch => "masters powerlifting federations; issuing document not seen",
            AgeRule::Foster => "junior powerlifting federations; issuing document not seen",
            AgeRule::MeltzerFaber => "masters weightlifting; issuing document not seen",
            AgeRule::AllRoundInternational => "International All-Round Weightlifting Association",
            AgeRule::AllRoundUnitedStates => "United States All-Round Weightlifting Association",
        }
    }

    const fn seen(self) -> Seen {
        match self {
            AgeRule::Mcculloch | AgeRule::Foster | AgeRule::MeltzerFaber => Seen::Secondary,
            AgeRule::AllRoundInternational | AgeRule::AllRoundUnitedStates => Seen::Read,
        }
    }

    const fn population(self) -> &'static str {
        match self {
            AgeRule::Mcculloch | AgeRule::Foster => "competition results of powerlifters, both sexes alike",
            AgeRule::MeltzerFaber => "competition results of masters weightlifters, men",
            AgeRule::AllRoundInternational | AgeRule::AllRoundUnitedStates => {
                "a rule of the federation; nobody measured"
            }
        }
    }

    /// The entry for an age inside `ages`.
    fn entry(self, years: u8) -> Option<f64> {
        let above = |table: &[f64], first: u8| table.get(usize::from(years.checked_sub(first)?)).copied();
        match self {
            AgeRule::Mcculloch if years < 40 => Some(1.0),
            AgeRule::Mcculloch => above(&MCCULLOCH_FROM_40, 40),
            AgeRule::Foster => above(&FOSTER_FROM_14, 14),
            AgeRule::MeltzerFaber => above(&MELTZER_FABER_FROM_30, 30),
            AgeRule::AllRoundUnitedStates => Some(f64::from(61 + u16::from(years)) / 100.0), // 40 gives 1.01,
            AgeRule::AllRoundInternational => {
                // The year 40 counts; from 66 each year counts double.
                let doubled = u16::from(years.saturating_sub(65));
                Some(f64::from(61 + u16::from(years) + doubled) / 100.0)
            }
        }
    }

    /// The coefficient, or the error that says which ages there are.
    fn at(self, field: &'static str, years: u8) -> Result<f64, Error> {
        let (youngest, oldest) = self.ages();
        match self.entry(years) {
            Some(coefficient) if (youngest..=oldest).contains(&years) => Ok(coefficient),
            _ => {
                let (low, high) = (f64::from(youngest), f64::from(oldest));
                Err(Error::range(Code::AgeOutOfDomain, field, years, low, high, "completed years"))
            }
        }
    }

    fn cautions(self, oldest: u8) -> Vec<Caution> {
        let mut cautions = vec![Caution::NotAPrognosis, Caution::SurvivorsOnly];
        cautions.extend(caution::of_seen(self.seen()));
        if self == AgeRule::MeltzerFaber && oldest > 80 {
            cautions.push(Caution::SteepAboveEighty);
        }
        cautions
    }

    fn coefficient(self, years: u8) -> Result<AgeCoefficient, Error> {
        Ok(AgeCoefficient {
            coefficient: self.at("age", years)?,
            rule: self,
            issued_by: Cow::Borrowed(self.issued_by()),
            population: Cow::Borrowed(self.population()),
            cautions: self.cautions(years),
        })
    }
}

formula! {
    "horizon.mcculloch",
    /// What does a masters powerlifter's result count at this age?
    ///
    /// # Formula
    /// A table by completed years, 40 to 90; 1 from 24 to 39. The same for men and women.
    ///
    /// # Domain
    /// 24 to 90 completed years.
    ///
    /// # Errors
    /// `age_out_of_domain`.
    ///
    /// # Source
    /// All 51 entries are equal in public copies; the issuing document was not seen (row `horizon.mcculloch`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::horizon::mcculloch(62)?.coefficient, 1.393);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn mcculloch(age: u8) -> Result<AgeCoefficient, Error> {
        AgeRule::Mcculloch.coefficient(age)
    }
    source: MCCULLOCH, place: "table by age", standing: CommonPractice, seen: Secondary,
    copies: "public code files, compared entry by entry",
    population: "competition results of powerlifters, both sexes alike", domain: "24 to 90 completed years",
}

formula! {
    "horizon.foster_junior_age",
    /// What does a junior powerlifter's result count at this age?
    ///
    /// # Formula
    /// A table by completed years, 14 to 23.
    ///
    /// # Domain
    /// 14 to 23 completed years.
    ///
    /// # Errors
    /// `age_out_of_domain`.
    ///
    /// # Source
    /// All 10 entries are equal in public copies; the issuing document was not seen (row `horizon.foster_junior_age`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::horizon::foster_junior_age(18)?.coefficient, 1.06);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn foster_junior_age(age: u8) -> Result<AgeCoefficient, Error> {
        AgeRule::Foster.coefficient(age)
    }
    source: FOSTER, place: "table by age", standing: CommonPractice, seen: Secondary,
    copies: "public code files, compared entry by entry",
    population: "competition results of powerlifters, both sexes alike", domain: "14 to 23 completed years",
}

formula! {
    "horizon.meltzer_faber",
    /// What does a masters weightlifter's Sinclair total count at this age?
    ///
    /// # Formula
    /// A table by completed years, 30 to 90; masters score = total x Sinclair coefficient x age coefficient.
    ///
    /// # Domain
    /// Men, 30 to 90. Masters women have had a table of their own since 2019. It is not here: its document was not
    /// seen, and what is known of it disagrees (1.340 and 1.321 for the age of 50). Above 80 the factor rises faster
    /// than strength falls.
    ///
    /// # Errors
    /// `age_out_of_domain`; `not_measured_in_sex` for women.
    ///
    /// # Source
    /// All 61 entries are equal in four public copies; the issuing document was not seen (row
    /// `horizon.meltzer_faber`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Sex, meltzer_faber};
    ///
    /// assert_eq!(meltzer_faber(58, Sex::Male)?.coefficient, 1.462);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn meltzer_faber(age: u8, sex: Sex) -> Result<AgeCoefficient, Error> {
        match sex {
            Sex::Male => AgeRule::MeltzerFaber.coefficient(age),
            Sex::Female => {
                Err(Error::new(Code::NotMeasuredInSex, "sex", "female", Allowed::one_of(&["male"])))
            }
        }
    }
    source: MELTZER_FABER, place: "table by age", standing: CommonPractice, seen: Secondary,
    copies: "four public code files, compared entry by entry",
    population: "competition results of masters weightlifters, men", domain: "men, 30 to 90 completed years",
}

formula! {
    "horizon.all_round_international",
    /// What does an all-round lifter's result count at this age, by the international rule?
    ///
    /// # Formula
    /// 1 % a year from 40, the year 40 itself included, and 2 % a year from 66; applied after the correction for
    /// body mass.
    ///
    /// # Domain
    /// 40 to 90 completed years. Another page of the federation has the 2 % begin at 60; the dated congress text
    /// says 66.
    ///
    /// # Errors
    /// `age_out_of_domain`.
    ///
    /// # Source
    /// IAWA, congress text of 2009 (row `horizon.all_round_international`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::horizon::all_round_international(66)?.coefficient, 1.28);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn all_round_international(age: u8) -> Result<AgeCoefficient, Error> {
        AgeRule::AllRoundInternational.coefficient(age)
    }
    source: ALL_ROUND, place: "age correction", standing: Standard, seen: Read,
    population: "a rule of the federation; nobody measured", domain: "40 to 90 completed years",
}

formula! {
    "horizon.all_round_united_states",
    /// What does an all-round lifter's result count at this age, by the rule of the United States?
    ///
    /// # Formula
    /// 1 % a year from 40, the year 40 itself included; applied after the correction for body mass.
    ///
    /// # Domain
    /// 40 to 90 completed years.
    ///
    /// # Errors
    /// `age_out_of_domain`.
    ///
    /// # Source
    /// USAWA (row `horizon.all_round_united_states`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::horizon::all_round_united_states(45)?.coefficient, 1.06);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn all_round_united_states(age: u8) -> Result<AgeCoefficient, Error> {
        AgeRule::AllRoundUnitedStates.coefficient(age)
    }
    source: ALL_ROUND, place: "age correction", standing: Standard, seen: Read,
    population: "a rule of the federation; nobody measured", domain: "40 to 90 completed years",
}

/// A lift carried from one age to another by a federation's age coefficients.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct CarriedResult {
    /// The result at the other age.
    pub load: Kilograms,
    /// The rule used; another rule gives another number.
    pub rule: AgeRule,
    /// Whose results it was fitted to.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

formula! {
    "horizon.carried_by_coefficients",
    /// What result at another age would count the same, by a federation's age coefficients?
    ///
    /// # Formula
    /// `S(b) = S(a) c(a) / c(b)`; `c` the coefficient at a completed age. Works in both directions.
    ///
    /// # Domain
    /// Ages of the rule's table.
    ///
    /// # Errors
    /// `age_out_of_domain`; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Arithmetic over the table named (row `horizon.carried_by_coefficients`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{AgeRule, carried_by_coefficients};
    /// use bismar::quantity::Mass;
    ///
    /// let at_75 = carried_by_coefficients(Mass::from_kg(120.0)?, 62, 75, AgeRule::Mcculloch)?;
    /// assert!((at_75.load.value() - 91.10).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn carried_by_coefficients(load: Mass, from: u8, to: u8, rule: AgeRule) -> Result<CarriedResult, Error> {
        let load = positive_load("load", load)?;
        let carried = load * rule.at("from", from)? / rule.at("to", to)?;
        Ok(CarriedResult {
            load: Kilograms::new(carried)?,
            rule,
            population: Cow::Borrowed(rule.population()),
            cautions: rule.cautions(if to > from { to } else { from }),
        })
    }
    source: crate::source::ARITHMETIC, place: "ratio of two coefficients", standing: Derived, seen: NotApplicable,
    population: "competition results, as the rule named", domain: "ages of the rule named",
}

rows![
    mcculloch,
    foster_junior_age,
    meltzer_faber,
    all_round_international,
    all_round_united_states,
    carried_by_coefficients,
];
