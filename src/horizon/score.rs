//! Federation formulas that compare lifters across body mass: weightlifting and the powerlifting points in force.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use super::Sex;
use super::relative::{body_mass_within, positive_load};
use crate::caution::{self, Caution};
use crate::error::Error;
use crate::numeric;
use crate::quantity::Mass;
use crate::source::{Seen, Source, formula, rows};

const IWF_SINCLAIR: Source = Source {
    id: "sinclair-iwf",
    citation: "International Weightlifting Federation. Sinclair coefficients, issued anew for each Olympiad",
    doi: None,
};

const IPF_GL_2020: Source = Source {
    id: "ipf-gl-2020",
    citation: "International Powerlifting Federation. IPF GL coefficients, valid from 1 May 2020",
    doi: None,
};

/// A federation's score: a result times a coefficient of body mass.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Score {
    /// The score, unrounded; result sheets print two decimals.
    pub points: f64,
    /// What one kilogram of the result counts.
    pub coefficient: f64,
    /// Who issued the formula.
    pub issued_by: Cow<'static, str>,
    /// First year in which it was in force.
    pub year: u16,
    /// Whose results the coefficients were fitted to.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Who issued a score's numbers, and how they reached this project.
pub(super) struct Issue {
    pub(super) by: &'static str,
    pub(super) year: u16,
    pub(super) population: &'static str,
    pub(super) seen: Seen,
}

impl Issue {
    /// The score of a result; `at_limit` where the body mass was counted as a limit of the formula.
    pub(super) fn score(&self, result: f64, coefficient: f64, at_limit: bool) -> Result<Score, Error> {
        let mut cautions = vec![Caution::NotAPrognosis, Caution::OtherPopulation];
        cautions.extend(caution::of_seen(self.seen));
        cautions.extend(at_limit.then_some(Caution::CountedAtLimit));
        Ok(Score {
            points: numeric::finite("points", result * coefficient)?,
            coefficient: numeric::finite("coefficient", coefficient)?,
            issued_by: Cow::Borrowed(self.by),
            year: self.year,
            population: Cow::Borrowed(self.population),
            cautions,
        })
    }
}

/// Four years between Olympic Games, for which one set of Sinclair coefficients holds.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Olympiad {
    /// 2001 to 2004.
    #[cfg_attr(feature = "serde", serde(rename = "2001-2004"))]
    From2001,
    /// 2005 to 2008.
    #[cfg_attr(feature = "serde", serde(rename = "2005-2008"))]
    From2005,
    /// 2009 to 2012.
    #[cfg_attr(feature = "serde", serde(rename = "2009-2012"))]
    From2009,
    /// 2013 to 2016.
    #[cfg_attr(feature = "serde", serde(rename = "2013-2016"))]
    From2013,
    /// 2017 to 2020.
    #[cfg_attr(feature = "serde", serde(rename = "2017-2020"))]
    From2017,
    /// 2021 to 2024.
    #[cfg_attr(feature = "serde", serde(rename = "2021-2024"))]
    From2021,
    /// 2025 to 2028.
    #[cfg_attr(feature = "serde", serde(rename = "2025-2028"))]
    From2025,
}

/// A and b of one Olympiad: kept together, so that no A meets the b of another.
struct SinclairPair {
    a: f64,
    b: f64,
}

impl Olympiad {
    const fn first_year(self) -> u16 {
        match self {
            Olympiad::From2001 => 2001,
            Olympiad::From2005 => 2005,
            Olympiad::From2009 => 2009,
            Olympiad::From2013 => 2013,
            Olympiad::From2017 => 2017,
            Olympiad::From2021 => 2021,
            Olympiad::From2025 => 2025,
        }
    }

    /// How the pair reached this project: the first at its issuer, most from copies that agree.
    const fn seen(self, sex: Sex) -> Seen {
        match (self, sex) {
            (Olympiad::From2001, _) => Seen::Read,
            (Olympiad::From2005, Sex::Male) => Seen::Memory,
            _ => Seen::Secondary,
        }
    }

    const fn pair(self, sex: Sex) -> SinclairPair {
        let (a, b) = match (self, sex) {
            (Olympiad::From2001, Sex::Male) => (0.938_573_813, 157.141),
            (Olympiad::From2001, Sex::Female) => (1.005_487_664, 112.811),
            (Olympiad::From2005, Sex::Male) => (0.845_716_976, 168.091),
            (Olympiad::From2005, Sex::Female) => (1.316_081_431, 107.844),
            (Olympiad::From2009, Sex::Male) => (0.784_780_654, 173.961),
            (Olympiad::From2009, Sex::Female) => (1.056_683_941, 125.441),
            (Olympiad::From2013, Sex::Male) => (0.794_358_141, 174.393),
            (Olympiad::From2013, Sex::Female) => (0.897_260_740, 148.026),
            (Olympiad::From2017, Sex::Male) => (0.751_945_030, 175.508),
            (Olympiad::From2017, Sex::Female) => (0.783_497_476, 153.655),
            (Olympiad::From2021, Sex::Male) => (0.722_762_521, 193.609),
            (Olympiad::From2021, Sex::Female) => (0.787_004_341, 153.757),
            (Olympiad::From2025, Sex::Male) => (0.700_767_819, 201.159),
            (Olympiad::From2025, Sex::Female) => (0.674_107_991, 163.918),
        };
        SinclairPair { a, b }
    }
}

/// Lower end of the published tables (2001-2004 document), kg.
const fn lightest_in_sinclair_tables(sex: Sex) -> f64 {
    match sex {
        Sex::Male => 32.0,
        Sex::Female => 28.0,
    }
}

/// Heaviest person any of these formulas takes, kg.
pub(super) const HEAVIEST: f64 = 350.0;

formula! {
    "horizon.sinclair",
    /// What would this weightlifter total in the heaviest class, at the same ability?
    ///
    /// # Formula
    /// `total * 10^(A X^2)`, `X = log10(m / b)`; `m` body mass in kg, `A` and `b` of one Olympiad. From `b`
    /// upwards the coefficient is 1, and the answer carries the caution `counted_at_limit`.
    ///
    /// # Domain
    /// Two-lift totals. Body mass from 32 kg (men) or 28 kg (women), where the published tables begin.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain`.
    ///
    /// # Source
    /// International Weightlifting Federation, by Olympiad (row `horizon.sinclair`). The pairs of 2001-2004 were
    /// read there, with a worked example; the men's pair of 2005-2008 is recalled (caution `source_not_read`); the
    /// others are equal in independent copies (`source_seen_in_copies`). Some copies print 135.390 kg as the men's
    /// `b` of 2001-2004; the federation's page says 157.141.
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Olympiad, Sex, sinclair};
    /// use bismar::quantity::Mass;
    ///
    /// let score = sinclair(Mass::from_kg(300.0)?, Mass::from_kg(80.0)?, Sex::Male, Olympiad::From2017)?;
    /// assert!((score.points - 366.9985).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sinclair(total: Mass, body_mass: Mass, sex: Sex, olympiad: Olympiad) -> Result<Score, Error> {
        let result = positive_load("total", total)?;
        let mass = body_mass_within(body_mass, lightest_in_sinclair_tables(sex), HEAVIEST)?;
        let pair = olympiad.pair(sex);
        let issue = Issue {
            by: "International Weightlifting Federation",
            year: olympiad.first_year(),
            population: "holders of the world records of the preceding years, by class",
            seen: olympiad.seen(sex),
        };
        issue.score(result, sinclair_coefficient(&pair, mass), mass >= pair.b)
    }
    source: IWF_SINCLAIR, place: "coefficients of each Olympiad; 2001-2004 read",
    standing: Standard, seen: Secondary, copies: "three or more public code files and an encyclopedia",
    recalled: "the men's pair of 2005-2008",
    population: "holders of the world records of the preceding years, by class",
    domain: "men from 32 kg, women from 28 kg",
}

fn sinclair_coefficient(pair: &SinclairPair, mass: f64) -> f64 {
    if mass >= pair.b {
        return 1.0;
    }
    let x = numeric::log10(mass / pair.b);
    numeric::pow(10.0, pair.a * x * x)
}

/// What a powerlifter wears.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Equipment {
    /// No supportive suit or shirt.
    Classic,
    /// Supportive suit and shirt.
    Equipped,
}

/// What a powerlifting result is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Contest {
    /// Squat, bench press and deadlift.
    ThreeLifts,
    /// Bench press alone.
    BenchPress,
}

/// A, B and C of the points formula.
const fn ipf_gl_coefficients(sex: Sex, equipment: Equipment, contest: Contest) -> (f64, f64, f64) {
    use Contest::{BenchPress, ThreeLifts};
    use Equipment::{Classic, Equipped};
    match (sex, equipment, contest) {
        (Sex::Male, Equipped, ThreeLifts) => (1_236.251_15, 1_449.218_64, 0.016_44),
        (Sex::Male, Classic, ThreeLifts) => (1_199.728_39, 1_025.181_62, 0.009_21),
        (Sex::Male, Equipped, BenchPress) => (381.220_73, 733.793_78, 0.023_98),
        (Sex::Male, Classic, BenchPress) => (320.980_41, 281.402_58, 0.010_08),
        (Sex::Female, Equipped, ThreeLifts) => (758.638_78, 949.313_82, 0.024_35),
        (Sex::Female, Classic, ThreeLifts) => (610.327_96, 1_045.592_82, 0.030_48),
        (Sex::Female, Equipped, BenchPress) => (221.822_09, 357.003_77, 0.029_37),
        (Sex::Female, Classic, BenchPress) => (142.403_98, 442.526_71, 0.047_24),
    }
}

/// Lightest body mass the points are worked out for, kg; well above every pole of the formula.
const LIGHTEST_FOR_POINTS: f64 = 40.0;

formula! {
    "horizon.ipf_gl_2020",
    /// How good is this powerlifting result against the best of that body mass?
    ///
    /// # Formula
    /// `total * 100 / (A - B e^(-C m))`; `m` body mass in kg, `A`, `B`, `C` by sex, equipment and contest.
    ///
    /// # Domain
    /// Body mass from 40 kg. "IPF points" may mean three different formulas; this is the one in force since
    /// 1 May 2020.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `body_mass_out_of_domain` below 40 kg.
    ///
    /// # Source
    /// International Powerlifting Federation 2020; the coefficients are equal in independent copies (row
    /// `horizon.ipf_gl_2020`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Contest, Equipment, Sex, ipf_gl_2020};
    /// use bismar::quantity::Mass;
    ///
    /// let score = ipf_gl_2020(
    ///     Mass::from_kg(700.0)?, Mass::from_kg(93.0)?, Sex::Male, Equipment::Classic, Contest::ThreeLifts)?;
    /// assert!((score.points - 91.5748).abs() < 0.00005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn ipf_gl_2020(
        total: Mass,
        body_mass: Mass,
        sex: Sex,
        equipment: Equipment,
        contest: Contest,
    ) -> Result<Score, Error> {
        let result = positive_load("total", total)?;
        let mass = body_mass_within(body_mass, LIGHTEST_FOR_POINTS, HEAVIEST)?;
        let (a, b, c) = ipf_gl_coefficients(sex, equipment, contest);
        let issue = Issue {
            by: "International Powerlifting Federation",
            year: 2020,
            population: "lifters at 84 % or more of the world record of their class",
            seen: Seen::Secondary,
        };
        issue.score(result, 100.0 / (a - b * numeric::exp(-c * mass)), false)
    }
    source: IPF_GL_2020, place: "table of coefficients; its adoption read at a member federation", standing: Standard,
    seen: Secondary, copies: "three unrelated public code files",
    population: "lifters at 84 % or more of the world record of their class",
    domain: "body mass from 40 kg",
}

rows![sinclair, ipf_gl_2020];
