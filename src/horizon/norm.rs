//! Where a lift lies among people of the same age and sex, for the two machine tables that are widely printed.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use super::curve::above_zero;
use super::relative::positive_load;
use super::{Age, Sex};
use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::quantity::{Kilograms, Mass};
use crate::source::{Source, formula, rows};

const COOPER_2002: Source = Source {
    id: "cooper-institute-2002",
    citation: "The Cooper Institute. Physical Fitness Specialist Manual. Dallas, revised 2002",
    doi: None,
};

const AEROBICS_RESEARCH_1994: Source = Source {
    id: "aerobics-research-1994",
    citation: "Institute for Aerobics Research, Dallas, 1994: leg press ratios, as guidelines for exercise testing \
               reprint them",
    doi: None,
};

const LEG_POPULATION: &str = "visitors of one gymnasium in Dallas, predominantly white and college-educated, on one \
                              leg press machine; everyone of 60 and over together";

const POPULATION: &str = "visitors of one gymnasium in Dallas, on machines; everyone of 60 and over together";

/// Between which centiles of a population a result lies.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct CentileRange {
    /// Highest printed centile that the result reaches; absent below the lowest one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub at_least: Option<u8>,
    /// Lowest printed centile that it does not reach; absent above the highest one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub below: Option<u8>,
    /// Who was measured.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Thresholds of one sex and age with their centiles, lowest first.
type Thresholds<const N: usize> = [f64; N];

const BENCH_CENTILES: [u8; 5] = [20, 40, 60, 80, 95];

/// Under 20, 20-29, 30-39, 40-49, 50-59, 60 and over.
const BENCH_MEN: [Thresholds<5>; 6] = [
    [0.89, 1.06, 1.19, 1.34, 1.75],
    [0.88, 0.99, 1.14, 1.32, 1.62],
    [0.78, 0.88, 0.98, 1.12, 1.34],
    [0.72, 0.80, 0.88, 1.00, 1.19],
    [0.63, 0.71, 0.79, 0.90, 1.04],
    [0.57, 0.66, 0.72, 0.82, 0.93],
];

const BENCH_WOMEN: [Thresholds<5>; 6] = [
    [0.53, 0.58, 0.65, 0.77, 0.87],
    [0.51, 0.59, 0.70, 0.80, 1.00],
    [0.47, 0.53, 0.60, 0.70, 0.81],
    [0.43, 0.50, 0.54, 0.62, 0.76],
    [0.39, 0.44, 0.48, 0.55, 0.67],
    [0.38, 0.43, 0.47, 0.54, 0.71],
];

const LEG_CENTILES: [u8; 9] = [10, 20, 30, 40, 50, 60, 70, 80, 90];

/// 20-29, 30-39, 40-49, 50-59, 60 and over.
const LEG_MEN: [Thresholds<9>; 5] = [
    [1.51, 1.63, 1.74, 1.83, 1.91, 1.97, 2.05, 2.13, 2.27],
    [1.43, 1.52, 1.59, 1.65, 1.71, 1.77, 1.85, 1.93, 2.07],
    [1.35, 1.44, 1.51, 1.57, 1.62, 1.68, 1.74, 1.82, 1.92],
    [1.22, 1.32, 1.39, 1.46, 1.52, 1.58, 1.64, 1.71, 1.80],
    [1.16, 1.25, 1.30, 1.38, 1.43, 1.49, 1.56, 1.62, 1.73],
];

const LEG_WOMEN: [Thresholds<9>; 5] = [
    [1.14, 1.22, 1.27, 1.37, 1.44, 1.50, 1.58, 1.68, 1.82],
    [1.00, 1.09, 1.15, 1.21, 1.27, 1.33, 1.39, 1.47, 1.61],
    [0.94, 1.02, 1.08, 1.13, 1.18, 1.23, 1.29, 1.37, 1.48],
    [0.78, 0.88, 0.95, 0.99, 1.05, 1.10, 1.17, 1.25, 1.37],
    [0.72, 0.85, 0.88, 0.93, 0.99, 1.04, 1.13, 1.18, 1.32],
];

/// How many thresholds the ratio reaches. The topmost of the bench table must be exceeded, not only reached.
fn reached(ratio: f64, thresholds: &[f64], exceed_last: bool) -> usize {
    let last = thresholds.len().saturating_sub(1);
    let counts = |(index, threshold): (usize, &f64)| {
        if exceed_last && index == last { ratio > *threshold } else { ratio >= *threshold }
    };
    thresholds.iter().enumerate().take_while(|pair| counts(*pair)).count()
}

/// The range that holds for every sex to cover, given how many thresholds each reaches.
fn range(counts: &[usize], centiles: &[u8], sex: Option<Sex>, population: &'static str) -> CentileRange {
    let least = counts.iter().copied().min().unwrap_or(0);
    let most = counts.iter().copied().max().unwrap_or(0);
    // The centiles of the bench bands are recalled too, and they are what is answered.
    let mut cautions = vec![
        Caution::NotAPrognosis,
        Caution::OtherPopulation,
        Caution::MachineSpecific,
        Caution::SourceNotRead,
    ];
    if sex.is_none() {
        cautions.push(Caution::SexUnknown);
    }
    CentileRange {
        at_least: least.checked_sub(1).and_then(|index| centiles.get(index)).copied(),
        below: centiles.get(most).copied(),
        population: Cow::Borrowed(population),
        cautions,
    }
}

fn table<'a, const N: usize>(
    sex: Sex,
    women: &'a [Thresholds<N>],
    men: &'a [Thresholds<N>],
) -> &'a [Thresholds<N>] {
    match sex {
        Sex::Female => women,
        Sex::Male => men,
    }
}

fn placed<const N: usize>(
    ratio: f64,
    row: usize,
    sex: Option<Sex>,
    tables: (&[Thresholds<N>], &[Thresholds<N>]),
    exceed_last: bool,
) -> Result<Vec<usize>, Error> {
    let ratio = above_zero("ratio", ratio)?;
    let of = |sex: &Sex| table(*sex, tables.0, tables.1).get(row).map(|row| reached(ratio, row, exceed_last));
    let counts: Option<Vec<usize>> = Sex::covered(sex).iter().map(of).collect();
    counts.ok_or_else(|| Error::plain(Code::AgeOutOfDomain, "age"))
}

formula! {
    "horizon.bench_press_ratio",
    /// Where does a bench press of so many times body mass lie among people of this age?
    ///
    /// # Formula
    /// A table of thresholds of one-repetition maximum over body mass by age and sex; they sit at the 20th, 40th,
    /// 60th, 80th and 95th centile.
    ///
    /// # Domain
    /// From 15 years; a bench press machine, one gymnasium, everyone of 60 and over together. Without a sex, the
    /// range over both.
    ///
    /// # Errors
    /// `age_out_of_domain` below 15; `out_of_range` for a ratio at or below 0.
    ///
    /// # Source
    /// Cooper Institute 2002; the thresholds as a college laboratory sheet prints them, the centiles of
    /// the bands recalled. The women's 50th, 70th
    /// and 90th centile as printed elsewhere fall into them (row `horizon.bench_press_ratio`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, Sex, bench_press_ratio};
    ///
    /// let place = bench_press_ratio(0.75, Age::new(58.0)?, Some(Sex::Male))?;
    /// assert_eq!((place.at_least, place.below), (Some(40), Some(60)));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn bench_press_ratio(ratio: f64, age: Age, sex: Option<Sex>) -> Result<CentileRange, Error> {
        let row = match age.completed() {
            0..15 => return Err(Error::range(Code::AgeOutOfDomain, "age", age.years(), 15.0, 120.0, "years")),
            15..20 => 0,
            20..60 => usize::from(age.completed() / 10) - 1,
            _ => 5,
        };
        Ok(range(&placed(ratio, row, sex, (&BENCH_WOMEN, &BENCH_MEN), true)?, &BENCH_CENTILES, sex, POPULATION))
    }
    source: COOPER_2002, place: "table of bench press ratios", standing: Published,
    seen: Secondary, copies: "one college laboratory sheet", recalled: "the centiles of its bands",
    population: "visitors of one gymnasium in Dallas, on machines", domain: "from 15 years",
}

formula! {
    "horizon.leg_press_ratio",
    /// Where does a leg press of so many times body mass lie among people of this age?
    ///
    /// # Formula
    /// A table of centiles (10th to 90th) of one-repetition maximum over body mass by age and sex.
    ///
    /// # Domain
    /// From 20 years; one gymnasium, one kind of leg press, everyone of 60 and over together. Without a sex, the
    /// range over both.
    ///
    /// # Errors
    /// `age_out_of_domain` below 20; `out_of_range` for a ratio at or below 0.
    ///
    /// # Source
    /// Institute for Aerobics Research 1994, recalled (row `horizon.leg_press_ratio`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, Sex, leg_press_ratio};
    ///
    /// let place = leg_press_ratio(1.2, Age::new(64.0)?, Some(Sex::Female))?;
    /// assert_eq!((place.at_least, place.below), (Some(80), Some(90)));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn leg_press_ratio(ratio: f64, age: Age, sex: Option<Sex>) -> Result<CentileRange, Error> {
        let row = match age.completed() {
            0..20 => return Err(Error::range(Code::AgeOutOfDomain, "age", age.years(), 20.0, 120.0, "years")),
            20..60 => usize::from(age.completed() / 10) - 2,
            _ => 4,
        };
        Ok(range(&placed(ratio, row, sex, (&LEG_WOMEN, &LEG_MEN), false)?, &LEG_CENTILES, sex, LEG_POPULATION))
    }
    source: AEROBICS_RESEARCH_1994, place: "table of leg press ratios", standing: Published, seen: Memory,
    population: "visitors of one gymnasium in Dallas, predominantly white and college-educated, on one machine", domain: "from 20 years",
}

formula! {
    "horizon.machine_bench_press",
    /// What would this free-weight bench press be on the machine of the table?
    ///
    /// # Formula
    /// In pounds: men `U = 1.016 F + 18.41`, women `U = 0.848 F + 21.37`; `F` free weight, `U` machine.
    ///
    /// # Domain
    /// The one machine of the Cooper Institute's table.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg; `out_of_range` beyond 2000 kg.
    ///
    /// # Source
    /// Cooper Institute 2002 (row `horizon.machine_bench_press`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Sex, machine_bench_press};
    /// use bismar::quantity::Mass;
    ///
    /// let machine = machine_bench_press(Mass::from_lb(100.0)?, Sex::Male)?;
    /// assert!((machine.to_mass()?.lb() - 120.01).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn machine_bench_press(load: Mass, sex: Sex) -> Result<Kilograms, Error> {
        positive_load("load", load)?;
        let (slope, intercept) = match sex {
            Sex::Male => (1.016, 18.41),
            Sex::Female => (0.848, 21.37),
        };
        Mass::from_lb(slope * load.lb() + intercept).map(Kilograms::from)
    }
    source: COOPER_2002, place: "conversion beside the table of bench press ratios", standing: Published,
    seen: Secondary, copies: "one college laboratory sheet",
    population: "visitors of one gymnasium in Dallas", domain: "one machine",
}

rows![bench_press_ratio, leg_press_ratio, machine_bench_press];
