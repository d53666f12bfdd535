//! A functional floor, and how far above it a result lies.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use super::curve::above_zero;
use super::{Band, Better, FunctionTest, Sex};
use crate::caution::{self, Caution};
use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{ARITHMETIC, Seen, formula, rows};

/// A published figure below which (above which, for times) everyday life was found to get hard.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Floor {
    /// What is tested.
    pub test: FunctionTest,
    /// The floor: one figure, or a range where the source gives a range or sex is not known.
    pub value: Band,
    /// Unit of the figure.
    pub unit: Cow<'static, str>,
    /// Which way a result is better.
    pub better: Better,
    /// Whether a result exactly on the figure is on the good side.
    pub met_on_the_figure: bool,
    /// Short name of the work.
    pub source: Cow<'static, str>,
    /// Who was measured.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// A table of floors.
pub(super) struct FloorSource {
    pub(super) id: &'static str,
    pub(super) population: &'static str,
    pub(super) seen: Seen,
}

impl FloorSource {
    /// A floor of this source.
    pub(super) fn floor(&self, test: FunctionTest, value: Band, met: bool, sex: Option<Sex>) -> Floor {
        let mut cautions = vec![Caution::NotAPrognosis, Caution::TalkToClinician, Caution::OtherPopulation];
        cautions.extend(caution::of_seen(self.seen));
        let by_sex = value.low() < value.high();
        if sex.is_none() && by_sex {
            cautions.push(Caution::SexUnknown);
        }
        Floor {
            test,
            value,
            unit: Cow::Borrowed(test.unit()),
            better: test.better(),
            met_on_the_figure: met,
            source: Cow::Borrowed(self.id),
            population: Cow::Borrowed(self.population),
            cautions,
        }
    }

    pub(super) fn has_no(&self, test: FunctionTest) -> Error {
        let rule = crate::error::Allowed::rule("a test that this source gives a floor for");
        Error::new(Code::NotInSource, "test", test.unit(), rule)
    }
}

/// The figures for women and men, over the sexes to cover.
pub(super) fn by_sex(sex: Option<Sex>, women: f64, men: f64) -> Result<Band, Error> {
    let figures = Sex::covered(sex).iter().map(|sex| match sex {
        Sex::Female => women,
        Sex::Male => men,
    });
    Band::around(&figures.collect::<Vec<_>>(), None)
}

/// Where a result lies against a floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum FloorPlace {
    /// On the wrong side of the whole range.
    Below,
    /// Inside the range: the source does not settle it.
    Between,
    /// On the good side of the whole range.
    Above,
}

/// How far a result lies above a floor.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FloorMargin {
    /// Where the result lies.
    pub place: FloorPlace,
    /// Distance in the unit of the test, positive on the good side.
    pub margin: Band,
    /// Result over floor (floor over result for times): above 1 on the good side.
    pub ratio: Band,
    /// Who the floor was measured in.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Largest result of any test, in its unit.
const LARGEST_RESULT: f64 = 1e6;

fn on_good_side(result: f64, figure: f64, floor: &Floor) -> bool {
    let better = match floor.better {
        Better::Higher => result > figure,
        Better::Lower => result < figure,
    };
    better || (floor.met_on_the_figure && result.total_cmp(&figure).is_eq())
}

formula! {
    "horizon.floor_margin",
    /// How far above this floor is the result?
    ///
    /// # Formula
    /// `margin = result - floor`, `ratio = result / floor`; for times `floor - result` and `floor / result`.
    ///
    /// # Domain
    /// Results from 0 (times: above 0). Below a floor is a reason to talk to a clinician, not a diagnosis.
    ///
    /// # Errors
    /// `out_of_range`; `not_finite`.
    ///
    /// # Source
    /// Arithmetic over the floor named (row `horizon.floor_margin`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{FloorPlace, FunctionTest, Sex, ewgsop2_floor, floor_margin};
    ///
    /// let floor = ewgsop2_floor(FunctionTest::Grip, Some(Sex::Female))?;
    /// let margin = floor_margin(24.0, &floor)?;
    /// assert_eq!(margin.place, FloorPlace::Above);
    /// assert_eq!(margin.margin.low(), 8.0);
    ///
    /// // Without a sex, 24 kg lies between the floors for women and for men.
    /// let either = ewgsop2_floor(FunctionTest::Grip, None)?;
    /// assert_eq!(floor_margin(24.0, &either)?.place, FloorPlace::Between);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn floor_margin(result: f64, floor: &Floor) -> Result<FloorMargin, Error> {
        let result = numeric::within(Code::OutOfRange, "result", result, 0.0, LARGEST_RESULT, "")?;
        let (low, high) = (above_zero("floor", floor.value.low())?, floor.value.high());
        let place = match (on_good_side(result, low, floor), on_good_side(result, high, floor)) {
            (true, true) => FloorPlace::Above,
            (false, false) => FloorPlace::Below,
            _ => FloorPlace::Between,
        };
        let (margin, ratio) = match floor.better {
            Better::Higher => (floor.value.map(|floor| result - floor)?, floor.value.map(|floor| result / floor)?),
            Better::Lower => {
                let result = above_zero("result", result)?;
                (floor.value.map(|floor| floor - result)?, floor.value.map(|floor| floor / result)?)
            }
        };
        let population = floor.population.clone();
        Ok(FloorMargin { place, margin, ratio, population, cautions: floor.cautions.clone() })
    }
    source: ARITHMETIC, place: "difference and ratio", standing: Derived, seen: NotApplicable,
    population: "that of the floor given", domain: "results from 0",
}

rows![floor_margin];
