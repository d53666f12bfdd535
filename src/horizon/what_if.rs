//! Seeded what-if over the years: hold, gain then hold, lapse and return, a maintenance dose.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::course_of_years::{Drawn, Segment, segments};
use super::curve::above_zero;
use super::{Age, Outlook, Sex};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::numeric::generator::Generator;
use crate::quantity::Interval;
use crate::source::{OURS, Source, constant, default_of, formula, rows};

const SPIERING_2021: Source = Source {
    id: "spiering-2021",
    citation: "Spiering BA, Mujika I, Sharp MA, Foulis SA. Maintaining physical performance: the minimal dose of \
               exercise needed to preserve endurance and strength over time. J Strength Cond Res \
               2021;35(5):1449-1458",
    doi: Some("10.1519/JSC.0000000000003964"),
};

constant! {
    "horizon.maintenance_weeks",
    /// For how many weeks one session a week with one set an exercise was seen to hold strength, load kept.
    pub const MAINTENANCE_WEEKS: f64 = 32.0;
    source: SPIERING_2021, place: "abstract", standing: Published, seen: Read,
    population: "a review; younger and older adults",
    domain: "relative load kept; older people may need 2 sessions and 2 to 3 sets to hold muscle size",
}

/// Three figures for what is not known: least, most likely, most. Drawn from a triangle over them.
///
/// Invariant: `low <= middle <= high`, all from 0 to below 1.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "wire::Wire"))]
pub struct Spread {
    low: f64,
    middle: f64,
    high: f64,
}

impl Spread {
    /// Three figures from 0 up to, not including, 1: parts of the strength at the time.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` outside 0 to below 1; `interval_reversed` where not in order.
    pub fn new(low: f64, middle: f64, high: f64) -> Result<Spread, Error> {
        let part = |field, value| {
            let value = numeric::within(Code::OutOfRange, field, value, 0.0, 1.0, "below 1")?;
            if value < 1.0 {
                Ok(value)
            } else {
                Err(Error::range(Code::OutOfRange, field, value, 0.0, 1.0, "below 1"))
            }
        };
        let spread =
            Spread { low: part("low", low)?, middle: part("middle", middle)?, high: part("high", high)? };
        if spread.low <= spread.middle && spread.middle <= spread.high {
            Ok(spread)
        } else {
            Err(Error::new(Code::IntervalReversed, "low", low, Allowed::rule("low <= middle <= high")))
        }
    }

    /// One figure, taken as known.
    ///
    /// # Errors
    /// As [`Spread::new`].
    pub fn known(figure: f64) -> Result<Spread, Error> {
        Spread::new(figure, figure, figure)
    }

    /// The figure below which the part `u` of the triangle lies.
    pub(super) fn at(&self, u: f64) -> f64 {
        let width = self.high - self.low;
        if width <= 0.0 {
            return self.middle;
        }
        let left = self.middle - self.low;
        if u * width < left {
            self.low + numeric::sqrt(u * width * left)
        } else {
            self.high - numeric::sqrt((1.0 - u) * width * (self.high - self.middle))
        }
    }
}

/// What happens during a phase.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum PhaseCourse {
    /// Strength is kept as it is, by training.
    Hold,
    /// The years take their part, as the outlook says.
    Decline,
    /// A small dose holds strength for as long as it was studied ([`MAINTENANCE_WEEKS`]); after that the outlook.
    MaintenanceDose,
    /// Strength grows by a part each year.
    Gain(Spread),
    /// A break: so much is lost by the end of the phase, as a part of the strength at its start.
    Lapse(Spread),
    /// After a break: a gain each year up to the strength before the last break, then held.
    Return(Spread),
}

/// A stretch of years.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Phase {
    /// Age at its end; it begins where the one before ends, the first one now.
    pub until: Age,
    /// What happens during it.
    pub course: PhaseCourse,
}

impl Phase {
    /// That course up to that age.
    #[must_use]
    pub fn new(until: Age, course: PhaseCourse) -> Phase {
        Phase { until, course }
    }
}

impl Phase {
    /// Strength held until an age.
    #[must_use]
    pub fn hold(until: Age) -> Vec<Phase> {
        vec![Phase { until, course: PhaseCourse::Hold }]
    }

    /// Nothing but the years until an age.
    #[must_use]
    pub fn decline(until: Age) -> Vec<Phase> {
        vec![Phase { until, course: PhaseCourse::Decline }]
    }

    /// A small dose until an age.
    #[must_use]
    pub fn maintenance_dose(until: Age) -> Vec<Phase> {
        vec![Phase { until, course: PhaseCourse::MaintenanceDose }]
    }

    /// A yearly gain until one age, held from there to another.
    #[must_use]
    pub fn gain_then_hold(gain: Spread, gained_by: Age, until: Age) -> Vec<Phase> {
        vec![
            Phase { until: gained_by, course: PhaseCourse::Gain(gain) },
            Phase { until, course: PhaseCourse::Hold },
        ]
    }

    /// Held to a break, the break, then back up to what was there before it and held.
    #[must_use]
    pub fn lapse_and_return(from: Age, to: Age, loss: Spread, regain: Spread, until: Age) -> Vec<Phase> {
        vec![
            Phase { until: from, course: PhaseCourse::Hold },
            Phase { until: to, course: PhaseCourse::Lapse(loss) },
            Phase { until, course: PhaseCourse::Return(regain) },
        ]
    }
}

/// How a scenario is worked out.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ScenarioSettings {
    /// Seed of the generator: the same seed gives the same bits.
    pub seed: u32,
    /// Courses drawn, 10 to 5000.
    pub courses: u32,
    /// Part of the courses that the interval holds.
    pub level: f64,
    /// A floor to count courses above.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub floor: Option<f64>,
}

impl Default for ScenarioSettings {
    /// Seed 1, 1000 courses, the middle 90 %, no floor.
    fn default() -> Self {
        ScenarioSettings { seed: 1, courses: 1_000, level: 0.9, floor: None }
    }
}

default_of! {
    "horizon.scenario_settings_default",
    /// Seed, courses, level and floor of drawn courses where a caller names none.
    scenario_settings_default: ScenarioSettings;
    source: OURS, place: "drawn courses", standing: OurChoice, seen: NotApplicable,
}

/// Strength at one age over all courses drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ScenarioYear {
    /// The age.
    pub age: Age,
    /// Half the courses lie above.
    pub median: f64,
    /// The middle part of the courses; the part is the level.
    pub interval: Interval,
    /// Part of the courses at or above the floor, where one was given.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub share_above_floor: Option<f64>,
}

/// A what-if over the years.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ScenarioBands {
    /// At the start, every year after, and at the end.
    pub years: Vec<ScenarioYear>,
    /// The model of decline.
    pub model: Cow<'static, str>,
    /// Who the model describes.
    pub population: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Most phases of a scenario.
pub const MOST_PHASES: u32 = 32;

formula! {
    "horizon.scenario",
    /// What if strength is held, gained, lost for a while, or left to the years?
    ///
    /// # Formula
    /// Each course draws one place between the slowest and the fastest fall of the outlook, one for gains and one for
    /// losses, and keeps them through life; places are drawn from triangles. The interval holds the middle part of
    /// the courses (quantiles by linear interpolation).
    ///
    /// # Domain
    /// 1 to 32 phases in order of age, from now; the outlook is asked only for phases that decline. 10 to 5000
    /// courses. A sum over assumptions, not a prognosis.
    ///
    /// # Errors
    /// `ages_reversed`; `age_out_of_domain`; `sex_needed`; `not_measured_in_sex`; `out_of_range`; `not_enough_data`
    /// without a phase.
    ///
    /// # Source
    /// Our choice (row `horizon.scenario`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{Age, Outlook, Phase, ScenarioSettings, Spread, Training, scenario};
    ///
    /// let phases = Phase::gain_then_hold(Spread::new(0.01, 0.03, 0.05)?, Age::new(60.0)?, Age::new(70.0)?);
    /// let outlook = Outlook::Planning(Training::Consistent);
    /// let bands = scenario(80.0, Age::new(58.0)?, &phases, &outlook, None, &ScenarioSettings::default())?;
    /// let last = bands.years.last().ok_or(bismar::Error::plain(bismar::Code::NotEnoughData, "years"))?;
    /// assert!(last.interval.low() > 80.0 * 1.02 && last.interval.high() < 80.0 * 1.11);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn scenario(
        strength: f64,
        now: Age,
        phases: &[Phase],
        outlook: &Outlook,
        sex: Option<Sex>,
        settings: &ScenarioSettings,
    ) -> Result<ScenarioBands, Error> {
        let strength = above_zero("strength", strength)?;
        let settings = checked(settings)?;
        let course = outlook.course(sex)?;
        let segments = segments(now, phases, &course)?;
        let courses: Vec<Drawn> = (0..settings.courses).map(|index| drawn(settings.seed, index)).collect();
        let years = bands(strength, now, &segments, courses, &settings)?;
        let mut cautions = course.cautions;
        if !cautions.contains(&Caution::ProjectJudgement) {
            cautions.push(Caution::ProjectJudgement);
        }
        Ok(ScenarioBands { years, model: course.model, population: course.population, cautions })
    }
    source: OURS, place: "drawn courses", standing: OurChoice, seen: NotApplicable,
    population: "that of the outlook given", domain: "ages of the outlook given",
}

fn checked(settings: &ScenarioSettings) -> Result<ScenarioSettings, Error> {
    numeric::within(Code::OutOfRange, "courses", f64::from(settings.courses), 10.0, 5_000.0, "courses")?;
    Interval::new(0.0, 0.0, settings.level)?;
    settings.floor.map(|floor| above_zero("floor", floor)).transpose()?;
    Ok(*settings)
}

/// The places of one course, from a stream of its own.
fn drawn(seed: u32, index: u32) -> Drawn {
    let mut generator = Generator::stream(seed, index);
    Drawn::new(generator.uniform(), generator.uniform(), generator.uniform())
}

fn bands(
    strength: f64,
    now: Age,
    segments: &[Segment],
    mut courses: Vec<Drawn>,
    settings: &ScenarioSettings,
) -> Result<Vec<ScenarioYear>, Error> {
    let mut years = vec![year(strength, now, &courses, settings)?];
    for segment in segments {
        for course in &mut courses {
            course.advance(segment);
        }
        if segment.reported {
            years.push(year(strength, segment.to, &courses, settings)?);
        }
    }
    Ok(years)
}

fn year(
    strength: f64,
    age: Age,
    courses: &[Drawn],
    settings: &ScenarioSettings,
) -> Result<ScenarioYear, Error> {
    let mut values: Vec<f64> = courses.iter().map(|course| strength * numeric::exp(course.log())).collect();
    crate::numeric::sort::sort_numbers(&mut values);
    let tail = (1.0 - settings.level) / 2.0;
    let interval = Interval::new(quantile(&values, tail)?, quantile(&values, 1.0 - tail)?, settings.level)?;
    let above = |floor: f64| {
        let count = values.iter().filter(|value| **value >= floor).count();
        count as f64 / values.len() as f64
    };
    let median = numeric::finite("median", quantile(&values, 0.5)?)?;
    Ok(ScenarioYear { age, median, interval, share_above_floor: settings.floor.map(above) })
}

/// Quantile of sorted values by linear interpolation between order statistics.
fn quantile(sorted: &[f64], part: f64) -> Result<f64, Error> {
    let place = part * (sorted.len().saturating_sub(1)) as f64;
    let below = numeric::floor(place);
    let at = below as usize;
    let missing = || Error::plain(Code::NotEnoughData, "courses");
    let low = sorted.get(at).ok_or_else(missing)?;
    let high = sorted.get(at + 1).unwrap_or(low);
    Ok(low + (place - below) * (high - low))
}

#[cfg(feature = "serde")]
mod wire {
    //! `{ "low": 0.01, "middle": 0.02, "high": 0.03 }` in and out.
    use super::Spread;
    use serde::{Deserialize, Deserializer, de};

    #[derive(Deserialize)]
    #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
    #[serde(deny_unknown_fields, rename = "Spread")]
    pub(super) struct Wire {
        low: f64,
        middle: f64,
        high: f64,
    }

    impl<'de> Deserialize<'de> for Spread {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Spread, D::Error> {
            let wire = Wire::deserialize(from)?;
            Spread::new(wire.low, wire.middle, wire.high).map_err(de::Error::custom)
        }
    }
}

rows![MAINTENANCE_WEEKS, scenario, scenario_settings_default];
