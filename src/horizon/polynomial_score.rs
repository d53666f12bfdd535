//! Powerlifting scores that divide by a polynomial of body mass.

use super::relative::{body_mass_within, positive_load};
use super::score::{HEAVIEST, Issue};
use super::{Score, Sex};
use crate::error::Error;
use crate::numeric;
use crate::quantity::Mass;
use crate::source::{Seen, Source, formula, rows};

const DOTS_2019: Source = Source {
    id: "dots-2019",
    citation: "Bundesverband Deutscher Kraftdreikaempfer. DOTS formula, in use from 2019-2020",
    doi: None,
};

const WILKS_1994: Source = Source {
    id: "wilks-1994",
    citation: "Wilks R. Bodyweight formula for powerlifting, 1994; used by the International Powerlifting \
               Federation until the end of 2018",
    doi: None,
};

const WILKS_2020: Source = Source {
    id: "wilks-2020",
    citation: "Wilks R. Bodyweight formula for powerlifting, revision of 2020",
    doi: None,
};

/// A denominator by rising powers of body mass, with the masses between which the score is meant.
///
/// Beyond the turning point of the denominator a heavier lifter would be credited with more for the same total.
struct Polynomial {
    numerator: f64,
    rising: [f64; 6],
    lightest: f64,
    heaviest: f64,
    beyond: Beyond,
}

/// What becomes of a body mass outside the limits.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Beyond {
    /// It is refused: no copy of the formula says what it counts.
    Refused,
    /// It counts as the limit, as the formula has it, and the answer says so.
    CountedAtLimit,
}

impl Polynomial {
    /// What a kilogram of the total counts at a body mass inside the limits, kg.
    fn coefficient(&self, mass: f64) -> f64 {
        self.numerator / self.rising.iter().rev().fold(0.0, |sum, factor| sum * mass + factor)
    }

    /// The body mass that counts, and whether it is a limit in place of the lifter's own.
    fn counted(&self, body_mass: Mass) -> Result<(f64, bool), Error> {
        if self.beyond == Beyond::Refused {
            return Ok((body_mass_within(body_mass, self.lightest, self.heaviest)?, false));
        }
        let mass = body_mass_within(body_mass, LIGHTEST, HEAVIEST)?;
        let counted = numeric::smaller(numeric::larger(mass, self.lightest), self.heaviest);
        Ok((counted, counted.total_cmp(&mass).is_ne()))
    }

    fn score(&self, total: Mass, body_mass: Mass, by: &'static str, year: u16) -> Result<Score, Error> {
        let result = positive_load("total", total)?;
        let (mass, at_limit) = self.counted(body_mass)?;
        let population = "competition results of powerlifters of their time";
        let issue = Issue { by, year, population, seen: Seen::Secondary };
        issue.score(result, self.coefficient(mass), at_limit)
    }
}

/// Lightest person a score that counts at its limits takes, kg; our choice.
const LIGHTEST: f64 = 20.0;

const DOTS_MEN: Polynomial = Polynomial {
    numerator: 500.0,
    rising: [-307.750_76, 24.090_075_6, -0.191_875_922_1, 0.000_739_129_3, -0.000_001_093_0, 0.0],
    lightest: 40.0,
    heaviest: 210.0,
    beyond: Beyond::CountedAtLimit,
};

const DOTS_WOMEN: Polynomial = Polynomial {
    numerator: 500.0,
    rising: [-57.962_88, 13.617_503_2, -0.112_665_549_5, 0.000_515_856_8, -0.000_001_070_6, 0.0],
    lightest: 40.0,
    heaviest: 150.0,
    beyond: Beyond::CountedAtLimit,
};

// Turning points of the denominators: 202.1, 154.9, 203.7 and 158.0 kg, found numerically. The lower end of 40 kg
// is a choice: where the other powerlifting formulas begin.
const WILKS_1994_MEN: Polynomial = Polynomial {
    numerator: 500.0,
    rising: [-216.047_514_4, 16.260_633_9, -0.002_388_645, -0.001_137_32, 7.018_63e-6, -1.291e-8],
    lightest: 40.0,
    heaviest: 202.1,
    beyond: Beyond::Refused,
};

const WILKS_1994_WOMEN: Polynomial = Polynomial {
    numerator: 500.0,
    rising: [
        594.317_477_755_82,
        -27.238_425_364_47,
        0.821_122_268_71,
        -0.009_307_339_13,
        4.731_582e-5,
        -9.054e-8,
    ],
    lightest: 40.0,
    heaviest: 154.9,
    beyond: Beyond::Refused,
};

const WILKS_2020_MEN: Polynomial = Polynomial {
    numerator: 600.0,
    rising: [
        47.461_788_54,
        8.472_061_379,
        0.073_694_103_46,
        -0.001_395_833_811,
        7.076_659_730_707_43e-6,
        -1.208_043_364_823_15e-8,
    ],
    lightest: 40.0,
    heaviest: 203.7,
    beyond: Beyond::Refused,
};

const WILKS_2020_WOMEN: Polynomial = Polynomial {
    numerator: 600.0,
    rising: [
        -125.425_539_8,
        13.712_194_19,
        -0.033_072_506_31,
        -0.001_050_400_051,
        9.387_738_814_627_99e-6,
        -2.333_461_388_495_4e-8,
    ],
    lightest: 40.0,
    heaviest: 158.0,
    beyond: Beyond::Refused,
};

formula! {
    "horizon.dots_2019",
    /// How good is this powerlifting total for this body mass, by the German federation's formula?
    ///
    /// # Formula
    /// `total * 500 / (A m^4 + B m^3 + C m^2 + D m + E)`; `m` body mass in kg, coefficients by sex.
    ///
    /// # Domain
    /// Body mass 40 to 210 kg (men), 40 to 150 kg (women). The formula counts a lifter beyond a limit as the limit;
    /// the answer then carries the caution `counted_at_limit`. 20 to 350 kg are taken.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.
    ///
    /// # Source
    /// BVDK 2019-2020; coefficients and limits are equal in public copies, the issuing document was not seen (row
    /// `horizon.dots_2019`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Sex, dots_2019};
    /// use bismar::quantity::Mass;
    ///
    /// let score = dots_2019(Mass::from_kg(300.0)?, Mass::from_kg(60.0)?, Sex::Female)?;
    /// assert!((score.points - 332.564).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn dots_2019(total: Mass, body_mass: Mass, sex: Sex) -> Result<Score, Error> {
        let polynomial = match sex {
            Sex::Male => DOTS_MEN,
            Sex::Female => DOTS_WOMEN,
        };
        polynomial.score(total, body_mass, "Bundesverband Deutscher Kraftdreikaempfer", 2019)
    }
    source: DOTS_2019, place: "table of coefficients", standing: CommonPractice, seen: Secondary,
    copies: "public code files",
    population: "competition results of powerlifters of their time",
    domain: "men 40 to 210 kg, women 40 to 150 kg",
}

formula! {
    "horizon.wilks_1994",
    /// How good is this powerlifting total for this body mass, by the formula used until 2018?
    ///
    /// # Formula
    /// `total * 500 / (a + b m + c m^2 + d m^3 + e m^4 + f m^5)`; `m` body mass in kg, coefficients by sex.
    ///
    /// # Domain
    /// Body mass 40 to 202.1 kg (men), 40 to 154.9 kg (women): up to the turning point of the denominator.
    /// As recalled, no bias was found for bench press and total, and one against heavier lifters in the deadlift.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.
    ///
    /// # Source
    /// Wilks 1994; the coefficients are equal in public copies, no printed document was seen (row
    /// `horizon.wilks_1994`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Sex, wilks_1994};
    /// use bismar::quantity::Mass;
    ///
    /// let score = wilks_1994(Mass::from_kg(700.0)?, Mass::from_kg(93.0)?, Sex::Male)?;
    /// assert!((score.points - 439.733).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wilks_1994(total: Mass, body_mass: Mass, sex: Sex) -> Result<Score, Error> {
        let polynomial = match sex {
            Sex::Male => WILKS_1994_MEN,
            Sex::Female => WILKS_1994_WOMEN,
        };
        polynomial.score(total, body_mass, "R. Wilks; International Powerlifting Federation", 1994)
    }
    source: WILKS_1994, place: "table of coefficients", standing: CommonPractice, seen: Secondary,
    copies: "public code files",
    population: "competition results of powerlifters of their time",
    domain: "men 40 to 202.1 kg, women 40 to 154.9 kg",
}

formula! {
    "horizon.wilks_2020",
    /// How good is this powerlifting total for this body mass, by the revised formula of 2020?
    ///
    /// # Formula
    /// `total * 600 / (a + b m + c m^2 + d m^3 + e m^4 + f m^5)`; `m` body mass in kg, coefficients by sex.
    ///
    /// # Domain
    /// Body mass 40 to 203.7 kg (men), 40 to 158 kg (women): up to the turning point of the denominator.
    /// Scores of 1994 and 2020 do not compare: the numerators differ.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.
    ///
    /// # Source
    /// Wilks 2020; the coefficients are equal in public copies, no printed document was seen (row
    /// `horizon.wilks_2020`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Sex, wilks_2020};
    /// use bismar::quantity::Mass;
    ///
    /// let score = wilks_2020(Mass::from_kg(300.0)?, Mass::from_kg(60.0)?, Sex::Female)?;
    /// assert!((score.points - 395.710).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn wilks_2020(total: Mass, body_mass: Mass, sex: Sex) -> Result<Score, Error> {
        let polynomial = match sex {
            Sex::Male => WILKS_2020_MEN,
            Sex::Female => WILKS_2020_WOMEN,
        };
        polynomial.score(total, body_mass, "R. Wilks", 2020)
    }
    source: WILKS_2020, place: "table of coefficients", standing: CommonPractice, seen: Secondary,
    copies: "public code files",
    population: "competition results of powerlifters of their time",
    domain: "men 40 to 203.7 kg, women 40 to 158 kg",
}

rows![dots_2019, wilks_1994, wilks_2020];
