//! Right against left: the recommended index for the kind of test, with the others named beside it.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{Source, formula, rows};
use crate::statistics::{
    asymmetry_robinson_1987, asymmetry_shorter_2008, percentage_difference_bishop_2018,
    symmetry_angle_zifchock_2008,
};

const BISHOP_2018: Source = Source {
    id: "bishop-2018",
    citation: "Bishop C, Read P, Lake J, Chavda S, Turner A. Interlimb asymmetries: understanding how to calculate differences from bilateral and unilateral tests. Strength Cond J 40(4):1-6, 2018",
    doi: Some("10.1519/SSC.0000000000000371"),
};

/// How the two sides were tested.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SideTest {
    /// Both sides share the load.
    Together,
    /// One side at a time.
    Apart,
}

/// A symmetry index that needs no dominant side.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum SideIndex {
    /// Difference over the total.
    OfTotal,
    /// Difference over the stronger side.
    OfStronger,
    /// Difference over the mean of the sides.
    OfMean,
    /// Angle from the line of equality.
    SymmetryAngle,
}

/// One index with its value.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SideFigure {
    /// Which index.
    pub index: SideIndex,
    /// Its value in percent, positive if the right side is better.
    pub percent: f64,
}

/// How unequal two sides are.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SideDifference {
    /// The index recommended for this kind of test.
    pub recommended: SideFigure,
    /// The other indices; the same two numbers give other percentages, so a threshold belongs to one index only.
    pub others: Vec<SideFigure>,
    /// Whether the difference is larger than the test's own scatter, where that is given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub beyond_scatter: Option<bool>,
    /// Who it describes.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

fn figures(right: f64, left: f64) -> Result<[SideFigure; 4], Error> {
    let (stronger, weaker) = (numeric::larger(right, left), numeric::smaller(right, left));
    let sign = if right < left { -1.0 } else { 1.0 };
    let figure = |index, percent: f64| SideFigure { index, percent: numeric::tidy(sign * percent) };
    Ok([
        figure(SideIndex::OfTotal, asymmetry_shorter_2008(stronger, weaker)?),
        figure(SideIndex::OfStronger, percentage_difference_bishop_2018(left, right)?),
        figure(SideIndex::OfMean, asymmetry_robinson_1987(stronger, weaker)?),
        figure(SideIndex::SymmetryAngle, symmetry_angle_zifchock_2008(stronger, weaker)?),
    ])
}

formula! {
    "horizon.side_difference",
    /// How unequal are right and left, by the index recommended for this kind of test?
    ///
    /// # Formula
    /// Together: `100 (higher - lower) / (right + left)`; apart: `100 (1 - lower / higher)`; positive if the right
    /// side is better. The other indices stand beside it.
    ///
    /// # Domain
    /// Sides from 0, not both 0. The test's scatter is its coefficient of variation in percent. Thresholds such as
    /// 15 % were not shown to foretell anything, and do not carry over from one index to another.
    ///
    /// # Errors
    /// `out_of_range` for a side below 0 or both 0, or a scatter outside 0 to 100; `not_finite`.
    ///
    /// # Source
    /// Bishop and others 2018, recalled (row `horizon.side_difference`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{SideTest, side_difference};
    ///
    /// let apart = side_difference(25.0, 20.0, SideTest::Apart, Some(6.0))?;
    /// assert!((apart.recommended.percent - 20.0).abs() < 1e-9);
    /// assert_eq!(apart.beyond_scatter, Some(true));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn side_difference(right: f64, left: f64, test: SideTest, scatter: Option<f64>) -> Result<SideDifference, Error> {
        let scatter = scatter
            .map(|scatter| numeric::within(Code::OutOfRange, "scatter", scatter, 0.0, 100.0, "%"))
            .transpose()?;
        let wanted = match test {
            SideTest::Together => SideIndex::OfTotal,
            SideTest::Apart => SideIndex::OfStronger,
        };
        let figures = figures(right, left)?;
        let missing = || Error::plain(Code::NotInSource, "test");
        let recommended = *figures.iter().find(|figure| figure.index == wanted).ok_or_else(missing)?;
        Ok(SideDifference {
            recommended,
            others: figures.into_iter().filter(|figure| figure.index != wanted).collect(),
            beyond_scatter: scatter.map(|scatter| numeric::fabs(recommended.percent) > scatter),
            population: Cow::Borrowed("the person measured, on the day measured"),
            cautions: vec![Caution::NotAPrognosis, Caution::SourceNotRead],
        })
    }
    source: BISHOP_2018, place: "recommendations for bilateral and unilateral tests", standing: Published,
    seen: Memory, population: "the person measured, on the day measured", domain: "sides from 0, not both 0",
}

rows![side_difference];
