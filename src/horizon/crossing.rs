//! When a strength that falls meets a floor.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::curve::above_zero;
use super::outlook::Course;
use super::{Age, Curve, Outlook, Sex};
use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::Day;
use crate::source::{ARITHMETIC, formula, rows};

/// After how many years a strength falls to a floor.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum YearsToFloor {
    /// It is at or below the floor already.
    AtOrBelow,
    /// After so many years.
    InYears(f64),
    /// Not at this rate: nothing is lost.
    Never,
}

/// When a steady loss meets a floor.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct SteadyLoss {
    /// After how many years.
    pub years: YearsToFloor,
    /// Who it describes: whoever loses at that rate.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

fn steady(years: YearsToFloor) -> SteadyLoss {
    let population = Cow::Borrowed("whoever loses at the rate given");
    SteadyLoss { years, population, cautions: vec![Caution::NotAPrognosis] }
}

formula! {
    "horizon.years_to_floor",
    /// At a steady yearly loss, in how many years does this strength fall to the floor?
    ///
    /// # Formula
    /// `n = ln(T / S) / ln(1 - r)`; `S` strength, `T` floor in the same unit, `r` yearly loss as a part.
    ///
    /// # Domain
    /// Strength and floor above 0; loss below 1. At a loss of 0, or a gain, there is no crossing.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Arithmetic (row `horizon.years_to_floor`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{YearsToFloor, years_to_floor};
    ///
    /// let YearsToFloor::InYears(years) = years_to_floor(140.0, 100.0, 0.02)?.years else { return Ok(()) };
    /// assert!((years - 16.65).abs() < 0.005);
    /// assert_eq!(years_to_floor(140.0, 100.0, 0.0)?.years, YearsToFloor::Never);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn years_to_floor(strength: f64, floor: f64, loss: f64) -> Result<SteadyLoss, Error> {
        let strength = above_zero("strength", strength)?;
        let floor = above_zero("floor", floor)?;
        let loss = numeric::within(Code::OutOfRange, "loss", loss, -1.0, 1.0, "a year, below 1")?;
        if loss >= 1.0 {
            return Err(Error::range(Code::OutOfRange, "loss", loss, -1.0, 1.0, "a year, below 1"));
        }
        if strength <= floor {
            return Ok(steady(YearsToFloor::AtOrBelow));
        }
        let years = numeric::ln(floor / strength) / numeric::ln_1p(-loss);
        let met = loss > 0.0 && years.is_finite();
        Ok(steady(if met { YearsToFloor::InYears(years) } else { YearsToFloor::Never }))
    }
    source: ARITHMETIC, place: "compound loss solved for time", standing: Derived, seen: NotApplicable,
    population: "whoever loses at the rate given",
}

/// The person: day of birth, and sex where it is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Person {
    /// Day of birth.
    pub born: Day,
    /// Sex, for tables that differ by it; absent where not known.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub sex: Option<Sex>,
}

impl Person {
    /// Somebody born on that day.
    #[must_use]
    pub fn new(born: Day) -> Person {
        Person { born, sex: None }
    }
}

/// Mean length of a year of the calendar, days.
const DAYS_IN_A_YEAR: f64 = 365.2425;

impl Person {
    /// Age on a day.
    ///
    /// # Errors
    /// As [`Age::on`].
    pub fn age_on(&self, day: Day) -> Result<Age, Error> {
        Age::on(self.born, day)
    }

    /// The calendar year in which an age is reached.
    ///
    /// # Errors
    /// `out_of_range` after 2199.
    pub fn year_of(&self, age: Age) -> Result<i32, Error> {
        // At most 120 years of days, so it fits.
        let days = numeric::floor(age.years() * DAYS_IN_A_YEAR) as i32;
        Ok(self.born.plus(days)?.calendar().0)
    }
}

/// When a floor is met along one curve.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Crossing {
    /// The strength is at or below the floor already.
    AtOrBelow,
    /// Met at this age.
    At {
        /// Age when the floor is met.
        age: Age,
        /// Calendar year of that age.
        year: i32,
    },
    /// Not met up to the last age of the model, which says nothing about later.
    NotBefore {
        /// Last age of the model.
        age: Age,
        /// Calendar year of that age.
        year: i32,
    },
}

impl Crossing {
    /// Age by which to sort: earlier is worse.
    fn order(&self) -> f64 {
        match self {
            Crossing::AtOrBelow => 0.0,
            Crossing::At { age, .. } => age.years(),
            // Never before any age of the models.
            Crossing::NotBefore { age, .. } => age.years() + 1_000.0,
        }
    }
}

/// The years in which a floor is met, as a band.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FloorCrossing {
    /// Along the fastest fall of the model.
    pub earliest: Crossing,
    /// Along the middle one, where the model has one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub middle: Option<Crossing>,
    /// Along the slowest.
    pub latest: Crossing,
    /// The model.
    pub model: Cow<'static, str>,
    /// Who the model describes.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Halvings of an interval of half a year: more would not change the age.
const HALVINGS: u32 = 60;
/// Steps of half a year over at most 120 years.
const MOST_STEPS: u32 = 240;

/// The first age from `now` to `last` at which `passed` holds, by steps of half a year and halving.
pub(super) fn first_age(
    now: f64,
    last: f64,
    passed: impl Fn(f64) -> Result<bool, Error>,
) -> Result<Option<f64>, Error> {
    let mut before = now;
    for step in 1..=MOST_STEPS {
        let age = numeric::smaller(now + f64::from(step) / 2.0, last);
        if passed(age)? {
            return halved(before, age, passed).map(Some);
        }
        if age >= last {
            break;
        }
        before = age;
    }
    Ok(None)
}

fn halved(
    mut before: f64,
    mut after: f64,
    passed: impl Fn(f64) -> Result<bool, Error>,
) -> Result<f64, Error> {
    for _ in 0..HALVINGS {
        let middle = before + (after - before) / 2.0;
        if passed(middle)? {
            after = middle;
        } else {
            before = middle;
        }
    }
    Ok(after)
}

fn crossing(curve: &Curve, strength: f64, floor: f64, now: Age, lifter: &Person) -> Result<Crossing, Error> {
    if strength <= floor {
        return Ok(Crossing::AtOrBelow);
    }
    let (_, last) = curve.ages()?;
    let target = numeric::ln(floor / strength);
    let passed = |age: f64| match curve.log_change(now, Age::new(age)?) {
        Ok(change) => Ok(change <= target),
        // A line that has run out has passed every floor.
        Err(error) if error.code() == Code::StrengthUsedUp => Ok(true),
        Err(error) => Err(error),
    };
    // An age outside the curve is refused before the search.
    curve.log_change(now, now)?;
    let met = first_age(now.years(), last.years(), passed)?;
    Ok(match met {
        Some(age) => {
            let age = Age::new(age)?;
            Crossing::At { age, year: lifter.year_of(age)? }
        }
        None => Crossing::NotBefore { age: last, year: lifter.year_of(last)? },
    })
}

/// Earliest, middle and latest crossing over the curves of a model.
pub(super) fn crossings(
    course: &Course,
    strength: f64,
    floor: f64,
    now: Age,
    lifter: &Person,
) -> Result<FloorCrossing, Error> {
    let of = |curve: &Curve| crossing(curve, strength, floor, now, lifter);
    let middle = course.middle.as_ref().map(of).transpose()?;
    let mut all: Vec<Crossing> = course.curves.iter().map(of).collect::<Result<_, _>>()?;
    all.extend(middle);
    crate::numeric::sort::sort_by(&mut all, |a, b| a.order().total_cmp(&b.order()));
    let (Some(earliest), Some(latest)) = (all.first(), all.last()) else {
        return Err(Error::plain(Code::CurveBroken, "outlook"));
    };
    Ok(FloorCrossing {
        earliest: *earliest,
        middle,
        latest: *latest,
        model: course.model.clone(),
        population: course.population.clone(),
        cautions: course.cautions.clone(),
    })
}

formula! {
    "horizon.floor_crossing",
    /// If nothing but the years worked on this strength, in which year would it meet the floor?
    ///
    /// # Formula
    /// The first age `x` with `S f(x) / f(now) <= T` along each curve of the outlook, and its calendar year.
    ///
    /// # Domain
    /// Strength, where higher is better, from today to the last age of the outlook. Not a prognosis.
    ///
    /// # Errors
    /// `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`; `out_of_range`; `ages_reversed` for a birth after
    /// today.
    ///
    /// # Source
    /// Arithmetic over the outlook named in the answer (row `horizon.floor_crossing`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Crossing, Person, Outlook, Training, floor_crossing};
    ///
    /// let lifter = Person::new("1966-05-04".parse()?);
    /// let outlook = Outlook::Planning(Training::Untrained);
    /// let met = floor_crossing(30.0, 20.0, &lifter, "2026-05-04".parse()?, &outlook)?;
    /// let Crossing::At { age, year } = met.earliest else { return Ok(()) };
    /// assert!(age.years() > 72.0 && age.years() < 73.0);
    /// assert_eq!(year, 2038);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn floor_crossing(
        strength: f64,
        floor: f64,
        lifter: &Person,
        today: Day,
        outlook: &Outlook,
    ) -> Result<FloorCrossing, Error> {
        let strength = above_zero("strength", strength)?;
        let floor = above_zero("floor", floor)?;
        crossings(&outlook.course(lifter.sex)?, strength, floor, lifter.age_on(today)?, lifter)
    }
    source: ARITHMETIC, place: "the curve solved for age", standing: Derived, seen: NotApplicable,
    population: "that of the outlook given", domain: "ages of the outlook given",
}

rows![years_to_floor, floor_crossing];
