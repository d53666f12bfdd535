//! Which decline to reckon with: one named model at a time, and strength carried along it as a band.

use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::curve::above_zero;
use super::{Age, AnnualLoss, Band, Curve, LossBand, Sex, Study};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::Name;
use crate::source::{ARITHMETIC, OURS, formula, rows};

/// Whether the person trains for strength all year, year after year.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Training {
    /// No regular strength training.
    Untrained,
    /// Strength training kept up through the years.
    Consistent,
}

/// A decline of the caller's own.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct OwnOutlook {
    /// What to call it.
    pub name: Name,
    /// Who it describes.
    pub population: String,
    /// The slowest fall to reckon with.
    pub slowest: Curve,
    /// The fall thought most likely.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub middle: Option<Curve>,
    /// The fastest fall to reckon with.
    pub fastest: Curve,
}

impl OwnOutlook {
    /// Between these two curves, without a middle one.
    #[must_use]
    pub fn new(name: Name, population: String, slowest: Curve, fastest: Curve) -> OwnOutlook {
        OwnOutlook { name, population, slowest, middle: None, fastest }
    }
}

/// The decline to reckon with. One model holds for the whole of an answer; models are never joined in silence. Who
/// wants to join two says so with an own outlook.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Outlook {
    /// The planning bands from 30 to 90: a judgement over the studies, slowest, middle and fastest.
    Planning(Training),
    /// One study, between the ages it measured.
    Study(Study),
    /// The caller's own.
    Own(OwnOutlook),
}

/// The curves of an outlook for one person.
pub(super) struct Course {
    pub(super) curves: Vec<Curve>,
    pub(super) middle: Option<Curve>,
    pub(super) model: Cow<'static, str>,
    pub(super) population: Cow<'static, str>,
    pub(super) cautions: Vec<Caution>,
}

impl Course {
    /// Logarithm of strength at `to` over strength at `from`, as a band; the ages may come in either order.
    pub(super) fn log_change(&self, from: Age, to: Age) -> Result<Band, Error> {
        let changes = self.curves.iter().map(|curve| curve.log_change(from, to));
        let middle = self.middle.as_ref().map(|curve| curve.log_change(from, to)).transpose()?;
        Band::around(&changes.collect::<Result<Vec<_>, _>>()?, middle)
    }
}

/// One line of the planning bands.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct PlanningBand {
    /// First age.
    pub from: Age,
    /// Last age.
    pub to: Age,
    /// Slowest yearly loss to reckon with.
    pub slowest: AnnualLoss,
    /// Yearly loss to plan with.
    pub middle: AnnualLoss,
    /// Fastest yearly loss to reckon with.
    pub fastest: AnnualLoss,
}

/// From, to, slowest, middle, fastest in percent a year.
type PlanningRow = (f64, f64, f64, f64, f64);

const UNTRAINED: [PlanningRow; 5] = [
    (30.0, 50.0, 0.0, 0.15, 0.9),
    (50.0, 60.0, 0.6, 1.3, 1.5),
    (60.0, 70.0, 1.2, 1.5, 3.0),
    (70.0, 80.0, 2.0, 3.0, 4.1),
    (80.0, 90.0, 2.4, 3.0, 4.1),
];

const CONSISTENT: [PlanningRow; 5] = [
    (30.0, 50.0, 0.0, 0.0, 1.2),
    (50.0, 60.0, 0.0, 0.8, 1.7),
    (60.0, 70.0, 0.0, 1.0, 2.0),
    (70.0, 80.0, 0.35, 1.5, 2.9),
    (80.0, 90.0, 1.0, 2.0, 5.7),
];

formula! {
    "horizon.planning_bands",
    /// How fast may strength fall at each age, slow, middle and fast?
    ///
    /// # Formula
    /// A table by decade of age, compound yearly losses: a judgement over the published studies, which disagree.
    /// All three are shown; use the band, not one rate.
    ///
    /// # Domain
    /// 30 to 90 years, both sexes together. The fastest figure for untrained people above 80 is open-ended.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Our choice, over the studies listed in [`Study`] (row `horizon.planning_bands`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Training, planning_bands};
    ///
    /// let bands = planning_bands(Training::Consistent)?;
    /// assert!(bands.iter().all(|band| band.slowest <= band.middle && band.middle <= band.fastest));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn planning_bands(training: Training) -> Result<Vec<PlanningBand>, Error> {
        let percent = |loss: f64| AnnualLoss::tabled(loss / 100.0);
        let band = |&(from, to, slowest, middle, fastest): &PlanningRow| PlanningBand {
            from: Age::tabled(from),
            to: Age::tabled(to),
            slowest: percent(slowest),
            middle: percent(middle),
            fastest: percent(fastest),
        };
        Ok(planning_rows(training).iter().map(band).collect())
    }
    source: OURS, place: "judgement over the published studies", standing: OurChoice, seen: NotApplicable,
    population: "a judgement over studies of trained and untrained adults", domain: "30 to 90 years",
}

const fn planning_rows(training: Training) -> &'static [PlanningRow; 5] {
    match training {
        Training::Untrained => &UNTRAINED,
        Training::Consistent => &CONSISTENT,
    }
}

fn planning(training: Training) -> Result<Course, Error> {
    let bands = planning_bands(training)?;
    let curve = |loss: fn(&PlanningBand) -> AnnualLoss| {
        let band = |band: &PlanningBand| LossBand { from: band.from, to: band.to, loss: loss(band) };
        Curve::Compound(bands.iter().map(band).collect())
    };
    let (model, population) = match training {
        Training::Untrained => ("planning-untrained", "a judgement over studies of untrained adults"),
        Training::Consistent => {
            ("planning-consistent", "a judgement over studies of adults who kept training")
        }
    };
    let mut cautions = vec![Caution::NotAPrognosis, Caution::ProjectJudgement];
    if training == Training::Untrained {
        cautions.push(Caution::OpenEnded);
    }
    Ok(Course {
        curves: vec![curve(|band| band.slowest), curve(|band| band.fastest)],
        middle: Some(curve(|band| band.middle)),
        model: Cow::Borrowed(model),
        population: Cow::Borrowed(population),
        cautions,
    })
}

/// The most characters that say who an own outlook describes.
const LONGEST_POPULATION: usize = 200;

/// No answer leaves without naming its population.
fn described(population: &str) -> Result<String, Error> {
    let length = population.trim().chars().count();
    if (1..=LONGEST_POPULATION).contains(&length) {
        Ok(population.trim().into())
    } else {
        let rule = Allowed::rule("who the outlook describes, 1 to 200 characters");
        Err(Error::new(Code::NotAName, "population", length, rule))
    }
}

impl Outlook {
    pub(super) fn course(&self, sex: Option<Sex>) -> Result<Course, Error> {
        match self {
            Outlook::Planning(training) => planning(*training),
            Outlook::Study(study) => study.course(sex),
            Outlook::Own(own) => Ok(Course {
                curves: vec![own.slowest.clone(), own.fastest.clone()],
                middle: own.middle.clone(),
                model: Cow::Owned(own.name.as_str().into()),
                population: Cow::Owned(described(&own.population)?),
                cautions: vec![Caution::NotAPrognosis],
            }),
        }
    }
}

/// A strength carried to another age by one model.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Projection {
    /// Strength at the other age, in the unit given.
    pub strength: Band,
    /// The model: a study, the planning bands, or the caller's own name.
    pub model: Cow<'static, str>,
    /// Who the model describes.
    pub population: Cow<'static, str>,
    /// What to show beside it; always says that it is not a prognosis.
    pub cautions: Vec<Caution>,
}

formula! {
    "horizon.projection",
    /// What would be left, or would have been there, of this strength at another age?
    ///
    /// # Formula
    /// `S(b) = S(a) f(b) / f(a)` along each curve of the outlook; the band is what the curves span. Forward and
    /// back are exact inverses curve by curve.
    ///
    /// # Domain
    /// Ages of the outlook; any unit of strength. Not a prognosis. Without a sex the band covers both, and an
    /// outlook that measured one sex only is refused.
    ///
    /// # Errors
    /// `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`; `out_of_range` for a strength at or below 0;
    /// `curve_broken` and `strength_used_up` for an own outlook.
    ///
    /// # Source
    /// Arithmetic over the outlook named in the answer (row `horizon.projection`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, Outlook, Sex, Study, projection};
    ///
    /// let outlook = Outlook::Study(Study::Goodpaster2006);
    /// let left = projection(100.0, Age::new(70.0)?, Age::new(80.0)?, &outlook, Some(Sex::Female))?;
    /// assert!((left.strength.high() - 76.84).abs() < 0.005);
    /// assert!((left.strength.low() - 73.74).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn projection(strength: f64, from: Age, to: Age, outlook: &Outlook, sex: Option<Sex>) -> Result<Projection, Error> {
        let strength = above_zero("strength", strength)?;
        let course = outlook.course(sex)?;
        let change = course.log_change(from, to)?;
        Ok(Projection {
            strength: change.map(|change| strength * numeric::exp(change))?,
            model: course.model,
            population: course.population,
            cautions: course.cautions,
        })
    }
    source: ARITHMETIC, place: "ratio of two values of each curve", standing: Derived, seen: NotApplicable,
    population: "that of the outlook given", domain: "ages of the outlook given",
}

/// A strength now against what the years alone would have left.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct AgainstExpectation {
    /// What the model would have left, in the unit given.
    pub expected: Band,
    /// Strength now over what was expected: above 1 is more than the years alone would have left.
    pub ratio: Band,
    /// Where it lies.
    pub place: ExpectationPlace,
    /// The model.
    pub model: Cow<'static, str>,
    /// Who the model describes.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Where a strength lies against the band that was expected.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ExpectationPlace {
    /// Below the whole band.
    Below,
    /// Inside the band: on plan.
    Within,
    /// Above the whole band.
    Above,
}

formula! {
    "horizon.against_expectation",
    /// Is holding this strength more than the years alone would have left?
    ///
    /// # Formula
    /// `ratio = now / (then x f(age now) / f(age then))` along each curve of the outlook.
    ///
    /// # Domain
    /// Ages of the outlook. Holding the same load for ten years gives a ratio above 1 wherever the model falls.
    ///
    /// # Errors
    /// As [`projection`]; `ages_reversed`.
    ///
    /// # Source
    /// Arithmetic over the outlook named in the answer (row `horizon.against_expectation`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, ExpectationPlace, Outlook, Training, against_expectation};
    ///
    /// let outlook = Outlook::Planning(Training::Untrained);
    /// let (then, now) = (Age::new(60.0)?, Age::new(70.0)?);
    /// let held = against_expectation(80.0, then, 80.0, now, &outlook, None)?;
    /// assert_eq!(held.place, ExpectationPlace::Above);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn against_expectation(
        then: f64,
        age_then: Age,
        now: f64,
        age_now: Age,
        outlook: &Outlook,
        sex: Option<Sex>,
    ) -> Result<AgainstExpectation, Error> {
        super::carried::in_order(age_then, age_now)?;
        let now = above_zero("now", now)?;
        let expected = projection(then, age_then, age_now, outlook, sex)?;
        let band = expected.strength;
        let place = match now {
            now if now < band.low() => ExpectationPlace::Below,
            now if now > band.high() => ExpectationPlace::Above,
            _ => ExpectationPlace::Within,
        };
        Ok(AgainstExpectation {
            expected: band,
            ratio: band.map(|expected| now / expected)?,
            place,
            model: expected.model,
            population: expected.population,
            cautions: expected.cautions,
        })
    }
    source: ARITHMETIC, place: "ratio to the projection", standing: Derived, seen: NotApplicable,
    population: "that of the outlook given", domain: "ages of the outlook given",
}

rows![planning_bands, projection, against_expectation];
