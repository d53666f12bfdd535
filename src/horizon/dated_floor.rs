//! From floors with a date to what is needed now, and by when it must have been gained.

use alloc::borrow::Cow;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::carried::in_order;
use super::crossing::{crossings, first_age};
use super::curve::above_zero;
use super::outlook::Course;
use super::{Age, Band, Curve, FloorCrossing, FloorPlace, Outlook, Person};
use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Day, Name};
use crate::source::{ARITHMETIC, formula, rows};

/// A strength that must still be there at an age.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct DatedFloor {
    /// What it is for: a lift, a task, a test where more is better.
    pub name: Name,
    /// The figure to keep, in the unit of `capacity`.
    pub floor: f64,
    /// Until what age.
    pub at: Age,
    /// What the person has now.
    pub capacity: f64,
}

impl DatedFloor {
    /// That floor at that age, beside the capacity there is now.
    #[must_use]
    pub fn new(name: Name, floor: f64, at: Age, capacity: f64) -> DatedFloor {
        DatedFloor { name, floor, at, capacity }
    }
}

/// When to gain what is missing, along one curve.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Deadline {
    /// What is there now is enough.
    Covered,
    /// It can be gained in time.
    Gain {
        /// Age at which the gain is complete if it starts today and nothing is lost meanwhile.
        complete: Age,
        /// Calendar year of that age.
        complete_year: i32,
        /// Latest age to begin, if nothing is done before and the years take their part.
        latest_start: Age,
        /// Calendar year of that age.
        latest_start_year: i32,
    },
    /// At this rate of gain it is not reached by then.
    NotByThen,
}

/// Deadlines along the fastest, the middle and the slowest fall of the model.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Deadlines {
    /// If strength falls as fast as the model allows: the careful reading.
    pub fastest_fall: Deadline,
    /// Along the middle curve, where the model has one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub middle: Option<Deadline>,
    /// If it falls as slowly as the model allows.
    pub slowest_fall: Deadline,
}

/// What one dated floor asks of today.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct FloorPlan {
    /// The floor's name.
    pub name: Name,
    /// Until what age.
    pub at: Age,
    /// Calendar year of that age.
    pub year: i32,
    /// What would have to be there today for the floor to be left at that age.
    pub needed_now: Band,
    /// What is there over what is needed: above 1 is a margin.
    pub ratio: Band,
    /// Above or below the whole band of what is needed, or between.
    pub place: FloorPlace,
    /// In which year the floor would be met if nothing but the years worked.
    pub crossing: FloorCrossing,
    /// By when a gain must have been made, where a rate of gain is given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub deadlines: Option<Deadlines>,
    /// The model.
    pub model: Cow<'static, str>,
    /// Who the model describes.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// What was agreed for one floor on one day, so that the steps need not carry five arguments.
struct Question<'a> {
    capacity: f64,
    floor: f64,
    now: Age,
    at: Age,
    lifter: &'a Person,
    /// Natural logarithm of the yearly gain factor.
    log_gain: f64,
}

impl Question<'_> {
    fn deadline(&self, curve: &Curve) -> Result<Deadline, Error> {
        // Logarithms of strength over the floor: needed today, held, and wanted at any age.
        let held = numeric::ln(self.capacity / self.floor);
        if held + curve.log_change(self.now, self.at)? >= 0.0 {
            return Ok(Deadline::Covered);
        }
        let (now, at) = (self.now.years(), self.at.years());
        let complete = first_age(now, at, |age| {
            let wanted = curve.log_change(self.at, Age::new(age)?)?;
            Ok(held + (age - now) * self.log_gain >= wanted)
        })?;
        let too_late = first_age(now, at, |age| {
            let begun_with = held + curve.log_change(self.now, Age::new(age)?)?;
            Ok(begun_with + (at - age) * self.log_gain < 0.0)
        })?;
        let (Some(complete), Some(latest)) = (complete, too_late) else { return Ok(Deadline::NotByThen) };
        let (complete, latest) = (Age::new(complete)?, Age::new(latest)?);
        Ok(Deadline::Gain {
            complete,
            complete_year: self.lifter.year_of(complete)?,
            latest_start: latest,
            latest_start_year: self.lifter.year_of(latest)?,
        })
    }

    fn deadlines(&self, course: &Course) -> Result<Deadlines, Error> {
        let mut curves = Vec::new();
        for curve in course.curves.iter().chain(&course.middle) {
            curves.push((curve.log_change(self.now, self.at)?, curve));
        }
        crate::numeric::sort::sort_by(&mut curves, |a, b| a.0.total_cmp(&b.0));
        let (Some(fastest), Some(slowest)) = (curves.first(), curves.last()) else {
            return Err(Error::plain(Code::CurveBroken, "outlook"));
        };
        Ok(Deadlines {
            fastest_fall: self.deadline(fastest.1)?,
            middle: course.middle.as_ref().map(|curve| self.deadline(curve)).transpose()?,
            slowest_fall: self.deadline(slowest.1)?,
        })
    }
}

fn place(capacity: f64, needed: &Band) -> FloorPlace {
    if capacity >= needed.high() {
        FloorPlace::Above
    } else if capacity < needed.low() {
        FloorPlace::Below
    } else {
        FloorPlace::Between
    }
}

fn plan_one(
    dated: &DatedFloor,
    lifter: &Person,
    now: Age,
    course: &Course,
    gain: Option<f64>,
) -> Result<FloorPlan, Error> {
    let capacity = above_zero("capacity", dated.capacity)?;
    let floor = above_zero("floor", dated.floor)?;
    in_order(now, dated.at).map_err(|error| error.named("at"))?;
    let needed_now = course.log_change(dated.at, now)?.map(|change| floor * numeric::exp(change))?;
    let question = |log_gain| Question { capacity, floor, now, at: dated.at, lifter, log_gain };
    Ok(FloorPlan {
        name: dated.name.clone(),
        at: dated.at,
        year: lifter.year_of(dated.at)?,
        needed_now,
        ratio: needed_now.map(|needed| capacity / needed)?,
        place: place(capacity, &needed_now),
        crossing: crossings(course, capacity, floor, now, lifter)?,
        deadlines: gain.map(|gain| question(numeric::ln_1p(gain)).deadlines(course)).transpose()?,
        model: course.model.clone(),
        population: course.population.clone(),
        cautions: course.cautions.clone(),
    })
}

/// Most dated floors in one plan.
pub const MOST_FLOORS: u32 = 64;

formula! {
    "horizon.long_plan",
    /// For strength that must still be there at a later age: what is needed now, what margin is left, and by when
    /// must a gain have been made?
    ///
    /// # Formula
    /// `needed = T f(now) / f(at)` along each curve of the outlook. With a yearly gain `g`: the gain is complete at
    /// the first age `x` with `S (1 + g)^(x - now) >= T f(x) / f(at)`; the latest start is the last age `s` with
    /// `S f(s) / f(now) (1 + g)^(at - s) >= T`.
    ///
    /// # Domain
    /// At most 64 floors, each at or after today's age; strength where higher is better; ages of the outlook; a gain
    /// above 0 and up to 1 a year. Trials of gain lasted weeks to a year: a gain over many years is an assumption.
    /// Not a prognosis.
    ///
    /// # Errors
    /// `ages_reversed` for a floor in the past; `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`;
    /// `out_of_range`.
    ///
    /// # Source
    /// Arithmetic over the outlook named in each answer (row `horizon.long_plan`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, DatedFloor, FloorPlace, Person, Outlook, Training, long_plan};
    /// use bismar::quantity::Name;
    ///
    /// // An invented lifter of 58 who wants to lift 20 kg off the floor at 85 and lifts 60 kg now.
    /// let floor = DatedFloor::new(Name::new("suitcase")?, 20.0, Age::new(85.0)?, 60.0);
    /// let lifter = Person::new("1968-03-29".parse()?);
    /// let outlook = Outlook::Planning(Training::Consistent);
    /// let plan = long_plan(&[floor], &lifter, "2026-03-29".parse()?, &outlook, None)?;
    /// assert!(plan.iter().all(|floor| floor.place == FloorPlace::Above && floor.year == 2053));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn long_plan(
        floors: &[DatedFloor],
        lifter: &Person,
        today: Day,
        outlook: &Outlook,
        gain: Option<f64>,
    ) -> Result<Vec<FloorPlan>, Error> {
        let most = f64::from(MOST_FLOORS);
        numeric::within(Code::OutOfRange, "floors", floors.len() as f64, 0.0, most, "floors")?;
        let gain = gain.map(yearly_gain).transpose()?;
        let now = lifter.age_on(today)?;
        let course = outlook.course(lifter.sex)?;
        let one = |(index, dated): (usize, &DatedFloor)| {
            plan_one(dated, lifter, now, &course, gain)
                .map_err(|error| error.within(&alloc::format!("floors[{index}]")))
        };
        floors.iter().enumerate().map(one).collect()
    }
    source: ARITHMETIC, place: "the curve read backwards from the floor", standing: Derived, seen: NotApplicable,
    population: "that of the outlook given", domain: "ages of the outlook given",
}

/// A yearly gain above 0 and up to 1.
pub(super) fn yearly_gain(gain: f64) -> Result<f64, Error> {
    let gain = numeric::within(Code::OutOfRange, "gain", gain, 0.0, 1.0, "a year, above 0")?;
    if gain > 0.0 {
        Ok(gain)
    } else {
        Err(Error::range(Code::OutOfRange, "gain", gain, 0.0, 1.0, "a year, above 0"))
    }
}

rows![long_plan];
