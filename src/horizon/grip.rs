//! Grip strength by age: centiles, and distance from the peak of young adults.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use super::curve::above_zero;
use super::{Age, AgePoint, Band, Curve, Sex};
use crate::caution::{self, Caution};
use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{Seen, Source, formula, rows};

const DODDS_2014: Source = Source {
    id: "dodds-2014",
    citation: "Dodds RM, Syddall HE, Cooper R, et al. Grip strength across the life course: normative data from \
               twelve British studies. PLoS ONE 2014;9(12):e113637",
    doi: Some("10.1371/journal.pone.0113637"),
};

/// Who was measured.
pub(super) const DODDS_POPULATION: &str =
    "49 964 people of 12 British studies, ages 4 to 90, best of repeated trials; cross-sectional";

/// One age: 10th, 25th, 50th, 75th, 90th centile, kg.
type CentileRow = (f64, [f64; 5]);

#[rustfmt::skip]
const MEN: [CentileRow; 15] = [
    (20.0, [30.0, 35.0, 40.0, 46.0, 52.0]),
    (25.0, [36.0, 41.0, 48.0, 55.0, 61.0]),
    (30.0, [38.0, 44.0, 51.0, 58.0, 64.0]),
    (35.0, [39.0, 45.0, 51.0, 58.0, 64.0]),
    (40.0, [38.0, 44.0, 50.0, 57.0, 63.0]),
    (45.0, [36.0, 42.0, 49.0, 56.0, 61.0]),
    (50.0, [35.0, 41.0, 48.0, 54.0, 60.0]),
    (55.0, [34.0, 40.0, 47.0, 53.0, 59.0]),
    (60.0, [33.0, 39.0, 45.0, 51.0, 56.0]),
    (65.0, [31.0, 37.0, 43.0, 48.0, 53.0]),
    (70.0, [29.0, 34.0, 39.0, 44.0, 49.0]),
    (75.0, [26.0, 31.0, 35.0, 41.0, 45.0]),
    (80.0, [23.0, 27.0, 32.0, 37.0, 42.0]),
    (85.0, [19.0, 24.0, 29.0, 33.0, 38.0]),
    (90.0, [16.0, 20.0, 25.0, 29.0, 33.0]),
];

#[rustfmt::skip]
const WOMEN: [CentileRow; 15] = [
    (20.0, [21.0, 24.0, 28.0, 32.0, 36.0]),
    (25.0, [23.0, 26.0, 30.0, 35.0, 38.0]),
    (30.0, [24.0, 27.0, 31.0, 35.0, 39.0]),
    (35.0, [23.0, 27.0, 31.0, 35.0, 39.0]),
    (40.0, [23.0, 27.0, 31.0, 35.0, 39.0]),
    (45.0, [22.0, 26.0, 30.0, 34.0, 38.0]),
    (50.0, [21.0, 25.0, 29.0, 33.0, 37.0]),
    (55.0, [19.0, 23.0, 28.0, 32.0, 35.0]),
    (60.0, [18.0, 22.0, 27.0, 31.0, 34.0]),
    (65.0, [17.0, 21.0, 25.0, 29.0, 33.0]),
    (70.0, [16.0, 20.0, 24.0, 27.0, 31.0]),
    (75.0, [14.0, 18.0, 21.0, 25.0, 28.0]),
    (80.0, [13.0, 16.0, 19.0, 23.0, 26.0]),
    (85.0, [11.0, 14.0, 17.0, 20.0, 23.0]),
    (90.0, [9.0, 11.0, 14.0, 17.0, 20.0]),
];

/// Mean and standard deviation at the peak of young adults, kg.
const fn peak(sex: Sex) -> (f64, f64) {
    match sex {
        Sex::Male => (51.9, 9.9),
        Sex::Female => (31.4, 6.1),
    }
}

const fn centile_rows(sex: Sex) -> &'static [CentileRow; 15] {
    match sex {
        Sex::Male => &MEN,
        Sex::Female => &WOMEN,
    }
}

/// The five centile curves of one sex, lowest first.
pub(super) fn centile_curves(sex: Sex) -> Vec<Curve> {
    let curve = |centile: usize| {
        let points = centile_rows(sex).iter().filter_map(|(age, kg)| {
            Some(AgePoint { age: Age::tabled(*age), strength: kg.get(centile).copied()? })
        });
        Curve::Points(points.collect())
    };
    (0..5).map(curve).collect()
}

/// Grip strength of a population at one age, kg; each centile is one figure, or a range where sex is not known.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GripCentiles {
    /// 10th centile, kg.
    pub p10: Band,
    /// 25th centile, kg.
    pub p25: Band,
    /// Median, kg.
    pub p50: Band,
    /// 75th centile, kg.
    pub p75: Band,
    /// 90th centile, kg.
    pub p90: Band,
    /// Who was measured.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// The cautions of numbers that were seen in this way.
pub(super) fn grip_cautions(sex: Option<Sex>, seen: Seen) -> Vec<Caution> {
    let mut cautions = vec![Caution::NotAPrognosis, Caution::CrossSectional];
    cautions.extend(caution::of_seen(seen));
    if sex.is_none() {
        cautions.push(Caution::SexUnknown);
    }
    cautions
}

/// One centile at an age, over the sexes to cover.
fn centile_at(age: Age, sex: Option<Sex>, centile: usize) -> Result<Band, Error> {
    let kg = Sex::covered(sex).iter().map(|sex| interpolated(centile_rows(*sex), age, centile));
    Band::around(&kg.collect::<Result<Vec<_>, _>>()?, None)
}

fn interpolated(rows: &[CentileRow; 15], age: Age, centile: usize) -> Result<f64, Error> {
    let years = numeric::within(Code::AgeOutOfDomain, "age", age.years(), 20.0, 90.0, "years")?;
    let read = rows.windows(2).find_map(|pair| {
        let [(from, low), (to, high)] = pair else { return None };
        let (low, high) = (low.get(centile)?, high.get(centile)?);
        (years <= *to).then(|| low + (years - from) / (to - from) * (high - low))
    });
    read.ok_or_else(|| Error::range(Code::AgeOutOfDomain, "age", years, 20.0, 90.0, "years"))
}

formula! {
    "horizon.grip_centiles",
    /// How strong is the grip of people of this age?
    ///
    /// # Formula
    /// A table at every fifth year from 20 to 90, read in a straight line between its rows; kg.
    ///
    /// # Domain
    /// 20 to 90 years; British studies, cross-sectional. Without a sex each centile is the range over both.
    ///
    /// # Errors
    /// `age_out_of_domain`.
    ///
    /// # Source
    /// Dodds and others 2014; the rows are equal in public copies, the peak medians (51 and 31 kg) were read (row
    /// `horizon.grip_centiles`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, Sex, grip_centiles};
    ///
    /// let women = grip_centiles(Age::new(70.0)?, Some(Sex::Female))?;
    /// assert_eq!(women.p50.low(), 24.0);
    /// let either = grip_centiles(Age::new(70.0)?, None)?;
    /// assert_eq!((either.p50.low(), either.p50.high()), (24.0, 39.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn grip_centiles(age: Age, sex: Option<Sex>) -> Result<GripCentiles, Error> {
        Ok(GripCentiles {
            p10: centile_at(age, sex, 0)?,
            p25: centile_at(age, sex, 1)?,
            p50: centile_at(age, sex, 2)?,
            p75: centile_at(age, sex, 3)?,
            p90: centile_at(age, sex, 4)?,
            population: Cow::Borrowed(DODDS_POPULATION),
            cautions: grip_cautions(sex, Seen::Secondary),
        })
    }
    source: DODDS_2014, place: "normative table by age and sex", standing: Published, seen: Secondary,
    copies: "two public code files for men, one for women",
    population: "49 964 people of 12 British studies, ages 4 to 90", domain: "20 to 90 years",
}

/// Distance from the peak mean of young adults of the same sex, in their standard deviations.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct GripScore {
    /// Standard deviations above (positive) or below the peak mean; a range where sex is not known.
    pub score: Band,
    /// Who was measured.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

formula! {
    "horizon.grip_t_score",
    /// How far is this grip from that of young adults?
    ///
    /// # Formula
    /// `T = (grip - mean) / SD`, kg; mean and SD at the peak: 51.9 (9.9) men, 31.4 (6.1) women. The authors call a
    /// grip weak from 2.5 SD below.
    ///
    /// # Domain
    /// Adults; above 0 to 1000 kg. Without a sex, the range over both.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Dodds and others 2014, recalled (row `horizon.grip_t_score`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Sex, grip_t_score};
    ///
    /// let weak = grip_t_score(16.15, Some(Sex::Female))?;
    /// assert!((weak.score.low() + 2.5).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn grip_t_score(grip: f64, sex: Option<Sex>) -> Result<GripScore, Error> {
        let grip = numeric::within(Code::OutOfRange, "grip", above_zero("grip", grip)?, 0.0, 1000.0, "kg")?;
        let scores = Sex::covered(sex).iter().map(|sex| {
            let (mean, deviation) = peak(*sex);
            (grip - mean) / deviation
        });
        Ok(GripScore {
            score: Band::around(&scores.collect::<Vec<_>>(), None)?,
            population: Cow::Borrowed(DODDS_POPULATION),
            cautions: grip_cautions(sex, Seen::Memory),
        })
    }
    source: DODDS_2014, place: "peak mean and standard deviation", standing: Published, seen: Memory,
    population: "49 964 people of 12 British studies, ages 4 to 90", domain: "adults",
}

rows![grip_centiles, grip_t_score];
