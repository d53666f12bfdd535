//! Everyday tasks as loads: what part of the present strength they take, and what is left in reserve.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use super::curve::above_zero;
use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::Mass;
use crate::source::{ARITHMETIC, OURS, Source, formula, rows};

const HORTOBAGYI_2003: Source = Source {
    id: "hortobagyi-2003",
    citation: "Hortobagyi T, Mizelle C, Beam S, DeVita P. Old adults perform activities of daily living near their \
               maximal capabilities. J Gerontol A 2003;58(5):M453-M460",
    doi: None,
};

/// An everyday task stated as a load.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EverydayTask {
    /// A key for the task.
    pub task: Cow<'static, str>,
    /// What has to be moved.
    pub load: Mass,
    /// Where the figure comes from.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Invented examples of round figures, to be replaced by the lifter's own.
const TASKS: [(&str, i32); 6] = [
    ("full_kettle_one_hand", 2_500),
    ("shopping_bag_one_hand", 6_000),
    ("sack_of_potting_soil_from_floor", 20_000),
    ("packed_suitcase_into_car", 23_000),
    ("small_child_from_floor", 15_000),
    ("one_end_of_a_sofa", 35_000),
];

formula! {
    "horizon.everyday_tasks",
    /// Which everyday tasks might a person want to keep, and how heavy are they?
    ///
    /// # Formula
    /// A short list of examples with round figures. Weigh your own and use those.
    ///
    /// # Domain
    /// Examples; nobody was measured.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Our choice (row `horizon.everyday_tasks`).
    ///
    /// # Examples
    /// ```
    /// assert!(bismar::horizon::everyday_tasks()?.iter().all(|task| task.load.is_positive()));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn everyday_tasks() -> Result<Vec<EverydayTask>, Error> {
        let task = |&(task, grams): &(&'static str, i32)| EverydayTask {
            task: Cow::Borrowed(task),
            load: Mass::grams(grams),
            population: Cow::Borrowed("examples with round figures; nobody was measured"),
            cautions: vec![Caution::NotAPrognosis, Caution::ProjectJudgement],
        };
        Ok(TASKS.iter().map(task).collect())
    }
    source: OURS, place: "examples", standing: OurChoice, seen: NotApplicable,
    population: "examples with round figures; nobody was measured",
}

/// What a task takes of the strength a person has.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RelativeEffort {
    /// Part of the maximum that the task takes; above 1 it cannot be done.
    pub effort: f64,
    /// What is left: 1 less the effort. Negative where the task cannot be done.
    pub reserve: f64,
    /// Who it describes.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

fn relative(effort: f64) -> Result<RelativeEffort, Error> {
    Ok(RelativeEffort {
        effort: numeric::finite("effort", effort)?,
        reserve: numeric::finite("reserve", 1.0 - effort)?,
        population: Cow::Borrowed("the person measured, on the day measured"),
        cautions: vec![Caution::NotAPrognosis],
    })
}

formula! {
    "horizon.relative_effort",
    /// What part of my strength does this task take?
    ///
    /// # Formula
    /// `E = demand / capacity`, `reserve = 1 - E`; both in the same unit.
    ///
    /// # Domain
    /// Demand from 0, capacity above 0, of the same movement.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Definition (row `horizon.relative_effort`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::horizon::relative_effort(20.0, 80.0)?.reserve, 0.75);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn relative_effort(demand: f64, capacity: f64) -> Result<RelativeEffort, Error> {
        let demand = numeric::within(Code::OutOfRange, "demand", demand, 0.0, 1e6, "")?;
        relative(demand / above_zero("capacity", capacity)?)
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
    population: "the person measured, on the day measured",
}

formula! {
    "horizon.effort_after_gain",
    /// What part of my strength would the task take after a gain?
    ///
    /// # Formula
    /// `E' = E / (1 + g)`; `E` effort now, `g` gain as a part of the strength now.
    ///
    /// # Domain
    /// Effort from 0 to 10; gain above -1 (a loss) to 10.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// Arithmetic (row `horizon.effort_after_gain`).
    ///
    /// # Examples
    /// ```
    /// let later = bismar::horizon::effort_after_gain(0.80, 0.29)?;
    /// assert!((later.effort - 0.620).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn effort_after_gain(effort: f64, gain: f64) -> Result<RelativeEffort, Error> {
        let effort = numeric::within(Code::OutOfRange, "effort", effort, 0.0, 10.0, "")?;
        let gain = numeric::within(Code::OutOfRange, "gain", gain, -1.0, 10.0, "above -1")?;
        if gain <= -1.0 {
            return Err(Error::range(Code::OutOfRange, "gain", gain, -1.0, 10.0, "above -1"));
        }
        relative(effort / (1.0 + gain))
    }
    source: ARITHMETIC, place: "definition", standing: Derived, seen: NotApplicable,
    population: "the person measured, on the day measured",
}

/// What one everyday movement takes of knee-extensor strength, old and young.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct MovementEffort {
    /// The movement.
    pub movement: Cow<'static, str>,
    /// Part of the maximum in old adults.
    pub old: f64,
    /// Part of the maximum in young adults.
    pub young: f64,
    /// Who was measured.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

formula! {
    "horizon.hortobagyi_2003_efforts",
    /// How near to their maximum do old and young adults work when rising and on stairs?
    ///
    /// # Formula
    /// Knee extensors, part of the maximum, old and young: chair rise 0.80 and 0.42, stair ascent 0.78 and 0.54,
    /// stair descent 0.88 and 0.42.
    ///
    /// # Domain
    /// Two groups, old and young; a difference between groups, not a course of life.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Hortobagyi and others 2003, recalled (row `horizon.hortobagyi_2003_efforts`).
    ///
    /// # Examples
    /// ```
    /// let efforts = bismar::horizon::hortobagyi_2003_efforts()?;
    /// assert!(efforts.iter().all(|effort| effort.old > effort.young));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn hortobagyi_2003_efforts() -> Result<Vec<MovementEffort>, Error> {
        let rows = [("chair_rise", 0.80, 0.42), ("stair_ascent", 0.78, 0.54), ("stair_descent", 0.88, 0.42)];
        let effort = |(movement, old, young): (&'static str, f64, f64)| MovementEffort {
            movement: Cow::Borrowed(movement),
            old,
            young,
            population: Cow::Borrowed("healthy old and young adults, knee extensors"),
            cautions: vec![Caution::NotAPrognosis, Caution::CrossSectional, Caution::SourceNotRead],
        };
        Ok(rows.into_iter().map(effort).collect())
    }
    source: HORTOBAGYI_2003, place: "relative effort by task", standing: Published, seen: Memory,
    population: "healthy old and young adults, knee extensors",
}

rows![everyday_tasks, relative_effort, effort_after_gain, hortobagyi_2003_efforts];
