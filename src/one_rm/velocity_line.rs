//! The lifter's own line of load and bar velocity, with the warnings that were published about it.

use alloc::vec::Vec;

use derive_setters::Setters;

use super::curve::positive;
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::{Interval, Kilograms, Mass};
use crate::source::{Source, constant, formula, rows};
use crate::statistics::linear_fit;

const GARCIA_RAMOS_2018: Source = Source {
    id: "garcia-ramos-2018",
    citation: "Garcia-Ramos A, Jaric S. Two-point method: a quick and fatigue-free procedure for assessment of muscle mechanical capacities and the 1 repetition maximum. Strength Cond J 2018;40(2):54-66",
    doi: Some("10.1519/SSC.0000000000000359"),
};

const BANYARD_2017: Source = Source {
    id: "banyard-2017",
    citation: "Banyard HG, Nosaka K, Haff GG. Reliability and validity of the load-velocity relationship to predict the 1RM back squat. J Strength Cond Res 31:1897-1904, 2017",
    doi: Some("10.1519/JSC.0000000000001657"),
};

const SANCHEZ_MEDINA_2011: Source = Source {
    id: "sanchez-medina-2011",
    citation: "Sanchez-Medina L, Gonzalez-Badillo JJ. Velocity loss as an indicator of neuromuscular fatigue during resistance training. Med Sci Sports Exerc 2011;43(9):1725-1734",
    doi: Some("10.1249/MSS.0b013e318213f880"),
};

constant! {
    "one_rm.banyard_2017_velocity_error",
    /// Error of a maximum predicted from velocity: standard error of estimate as a part of the mean maximum.
    ///
    /// # Domain
    /// 10.6 kg on 140.3 kg, free-weight back squat, five loads up to 90 %. The paper prints 7.4 %, with another
    /// denominator. One person was off by -5.5 to +27.8 %.
    ///
    /// # Source
    /// Quotient of two figures in the abstract of Banyard et al. 2017 (row `one_rm.banyard_2017_velocity_error`).
    pub const BANYARD_2017_VELOCITY_ERROR: f64 = 10.6 / 140.3;
    source: BANYARD_2017, place: "10.6 over 140.3 kg, both in the abstract", standing: Derived, seen: NotApplicable,
    population: "17 strength-trained men", domain: "back squat, five loads up to 90 % of the maximum",
    error: "SEE 10.6 kg; one person -5.5 to +27.8 %",
}

/// Below this a bar does not move; above 10 m/s nobody moves one.
pub(super) const SLOWEST: f64 = 0.01;
const FASTEST: f64 = 10.0;

/// One repetition as fast as possible.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct LoadVelocity {
    /// Load.
    pub load: Mass,
    /// Mean velocity of the bar, m/s.
    pub velocity: f64,
}

impl LoadVelocity {
    /// That velocity at that load.
    #[must_use]
    pub fn new(load: Mass, velocity: f64) -> LoadVelocity {
        LoadVelocity { load, velocity }
    }
}

/// A line of velocity on load, and the maximum where it reaches the velocity of a maximum.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct VelocityProfile {
    /// Change of velocity, m/s for each kg; below 0.
    pub slope: f64,
    /// Velocity at no load, m/s.
    pub intercept: f64,
    /// Estimated one-repetition maximum.
    pub one_rm: Kilograms,
    /// Where it lies by the published error of such predictions, in kg.
    pub interval: Interval,
    /// Load at which the line reaches no velocity: always above the maximum.
    pub load_at_no_velocity: Kilograms,
    /// R2 of the line; absent with two points, which any line fits.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub r_squared: Option<f64>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Loads closer than this part of the maximum give unstable slopes (our choice).
const LEAST_SPREAD: f64 = 0.4;

/// Points in one profile at most.
const MOST_POINTS: usize = 100;

fn moving(field: &'static str, velocity: f64) -> Result<f64, Error> {
    numeric::within(Code::VelocityOutOfDomain, field, velocity, SLOWEST, FASTEST, "m/s")
}

/// Loads and velocities, each faster than the velocity of a maximum.
fn checked(points: &[LoadVelocity], at_one_rm: f64) -> Result<(Vec<f64>, Vec<f64>), Error> {
    let at_one_rm = moving("velocity_at_one_rm", at_one_rm)?;
    let (mut loads, mut velocities) = (Vec::new(), Vec::new());
    for point in points {
        let velocity = moving("velocity", point.velocity)?;
        if velocity <= at_one_rm {
            let rule = Allowed::rule("faster than the velocity of a maximum");
            return Err(Error::new(Code::VelocityOutOfDomain, "velocity", velocity, rule));
        }
        loads.push(positive(point.load)?);
        velocities.push(velocity);
    }
    Ok((loads, velocities))
}

/// The profile of a line that falls.
fn profile(
    (slope, intercept): (f64, f64),
    loads: &[f64],
    at_one_rm: f64,
    level: f64,
    r_squared: Option<f64>,
) -> Result<VelocityProfile, Error> {
    if slope >= 0.0 {
        let rule = Allowed::rule("points that get slower as the load rises");
        return Err(Error::new(Code::VelocityOutOfDomain, "slope", slope, rule));
    }
    let one_rm = (at_one_rm - intercept) / slope;
    let reach = crate::statistics::true_value_interval(0.0, BANYARD_2017_VELOCITY_ERROR, level)?.high();
    let spread = loads.iter().copied().fold(f64::MIN, numeric::larger)
        - loads.iter().copied().fold(f64::MAX, numeric::smaller);
    let mut cautions = alloc::vec![
        Caution::VelocityIsSpecific,
        Caution::VelocityRunsHigh,
        Caution::VelocityAtMaximumUnreliable,
        Caution::VelocityNotFromWarmUp,
    ];
    if spread < LEAST_SPREAD * one_rm {
        cautions.push(Caution::LoadsTooClose);
    }
    Ok(VelocityProfile {
        slope: numeric::finite("slope", slope)?,
        intercept: numeric::finite("intercept", intercept)?,
        one_rm: Kilograms::new(one_rm)?,
        interval: Interval::new(one_rm * numeric::exp(-reach), one_rm * numeric::exp(reach), level)?,
        load_at_no_velocity: Kilograms::new(-intercept / slope)?,
        r_squared,
        cautions,
    })
}

formula! {
    "one_rm.garcia_ramos_2018",
    /// What could be lifted once, from two loads moved as fast as possible?
    ///
    /// # Formula
    /// `s = (v2 - v1) / (L2 - L1)`, `E = L1 + (v_max - v1) / s`; loads in kg, velocities in m/s, `v_max` the velocity
    /// of a maximum. The load at no velocity is `L1 - v1 / s`.
    ///
    /// # Domain
    /// Loads of about 40 and 90 % of the maximum; the line must fall and both must be faster than `v_max`. The interval
    /// is that of [`BANYARD_2017_VELOCITY_ERROR`] on the logarithm, at 95 %.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg or where both loads are the same; `velocity_out_of_domain` where the line
    /// does not fall, a point is no faster than `v_max`, or a velocity lies outside 0.01 to 10 m/s.
    ///
    /// # Source
    /// Garcia-Ramos & Jaric 2018 (row `one_rm.garcia_ramos_2018`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{LoadVelocity, garcia_ramos_2018};
    /// use bismar::quantity::Mass;
    ///
    /// let light = LoadVelocity::new(Mass::from_kg(40.0)?, 1.0);
    /// let heavy = LoadVelocity::new(Mass::from_kg(90.0)?, 0.4);
    /// let profile = garcia_ramos_2018(light, heavy, 0.17)?;
    /// assert!((profile.one_rm.value() - 109.1667).abs() < 0.0001);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn garcia_ramos_2018(lighter: LoadVelocity, heavier: LoadVelocity, velocity_at_one_rm: f64) -> Result<VelocityProfile, Error> {
        /// Level of the interval.
        const LEVEL: f64 = 0.95;
        let (loads, _) = checked(&[lighter, heavier], velocity_at_one_rm)?;
        let distance = heavier.load.kg() - lighter.load.kg();
        if distance == 0.0 {
            let rule = Allowed::rule("two different loads");
            return Err(Error::new(Code::LoadOutOfDomain, "heavier", heavier.load.kg(), rule));
        }
        let slope = (heavier.velocity - lighter.velocity) / distance;
        profile((slope, lighter.velocity - slope * lighter.load.kg()), &loads, velocity_at_one_rm, LEVEL, None)
    }
    source: GARCIA_RAMOS_2018, place: "two-point method", standing: Published, seen: Read,
    population: "any; field check on 39 men, squat", domain: "loads of about 40 and 90 % of the maximum",
    error: "velocity estimates: CV about 4 to 8 %",
}

formula! {
    "one_rm.velocity_profile",
    /// What could be lifted once, from several loads moved as fast as possible?
    ///
    /// # Formula
    /// Least squares line `v = i + s L`; `E = (v_max - i) / s`, load at no velocity `-i / s`.
    ///
    /// # Domain
    /// Three points or more, spread over at least 40 % of the maximum. As [`garcia_ramos_2018`]; `level` is that of the
    /// interval.
    ///
    /// # Errors
    /// `not_enough_data` below three points; `not_identified` where all loads are the same; otherwise as
    /// [`garcia_ramos_2018`]; `out_of_range` for the level or more than 100 points.
    ///
    /// # Source
    /// Garcia-Ramos & Jaric 2018; least squares (row `one_rm.velocity_profile`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{LoadVelocity, velocity_profile};
    /// use bismar::quantity::Mass;
    ///
    /// let point = |kg, velocity| Ok::<_, bismar::Error>(LoadVelocity::new(Mass::from_kg(kg)?, velocity));
    /// let points = [point(60.0, 0.95)?, point(85.0, 0.70)?, point(110.0, 0.45)?];
    /// let profile = velocity_profile(&points, 0.30, 0.95)?;
    /// assert!((profile.one_rm.value() - 125.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn velocity_profile(points: &[LoadVelocity], velocity_at_one_rm: f64, level: f64) -> Result<VelocityProfile, Error> {
        /// Two would fit any line.
        const FEWEST: usize = 3;
        if points.len() < FEWEST || points.len() > MOST_POINTS {
            let code = if points.len() < FEWEST { Code::NotEnoughData } else { Code::OutOfRange };
            return Err(Error::range(code, "points", points.len(), FEWEST as f64, MOST_POINTS as f64, "points"));
        }
        let (loads, velocities) = checked(points, velocity_at_one_rm)?;
        let fit = linear_fit(&loads, &velocities)?;
        profile((fit.slope, fit.intercept), &loads, velocity_at_one_rm, level, fit.r_squared)
    }
    source: GARCIA_RAMOS_2018, place: "linear load-velocity line", standing: Published, seen: Read,
    population: "any", domain: "three points or more over at least 40 % of the maximum",
    error: "velocity estimates: CV about 4 to 8 %",
}

/// A lift whose velocity at the maximum was published.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum VelocityLift {
    /// Bench press, guided bar, mean propulsive (Gonzalez-Badillo & Sanchez-Medina 2010).
    BenchPress,
    /// Bench press, free weights (Isokinet Exerc Sci 2021, doi 10.3233/IES-202247).
    FreeBenchPress,
    /// Full squat, guided bar, mean propulsive (Sanchez-Medina et al. 2017).
    FullSquat,
    /// Back squat, free weights (Banyard et al. 2017).
    FreeBackSquat,
    /// Leg press, mean propulsive (Conceicao et al. 2016).
    LegPress,
    /// Hex bar deadlift (Janicijevic et al. 2024).
    HexDeadlift,
    /// Prone bench pull, mean propulsive (Sanchez-Medina et al. 2014, from memory).
    BenchPull,
}

/// Velocity of a maximum: mean, and standard deviation between people where printed; m/s.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct MaximumVelocity {
    /// Mean velocity.
    pub velocity: f64,
    /// Standard deviation between people.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub deviation: Option<f64>,
}

formula! {
    "one_rm.velocity_at_one_rm",
    /// How fast does the bar move at a maximum, in people who were measured?
    ///
    /// # Formula
    /// A table: bench press 0.16 (SD 0.04), free 0.17; full squat 0.32 (0.03), free back squat 0.24 (0.06); leg press
    /// 0.21 (0.06); hex deadlift 0.25; prone bench pull 0.52; m/s.
    ///
    /// # Domain
    /// Each its own exercise, device, variable and group. From one test to the next it is poorly repeatable (ICC 0.42,
    /// CV 22.5 %: Banyard et al. 2017).
    ///
    /// # Errors
    /// None beyond the types.
    ///
    /// # Source
    /// The papers named at [`VelocityLift`] (row `one_rm.velocity_at_one_rm`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{VelocityLift, velocity_at_one_rm};
    ///
    /// assert_eq!(velocity_at_one_rm(VelocityLift::FreeBackSquat)?.velocity, 0.24);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn velocity_at_one_rm(lift: VelocityLift) -> Result<MaximumVelocity, Error> {
        let (velocity, deviation) = match lift {
            VelocityLift::BenchPress => (0.16, Some(0.04)),
            VelocityLift::FreeBenchPress => (0.17, None),
            VelocityLift::FullSquat => (0.32, Some(0.03)),
            VelocityLift::FreeBackSquat => (0.24, Some(0.06)),
            VelocityLift::LegPress => (0.21, Some(0.06)),
            VelocityLift::HexDeadlift => (0.25, None),
            VelocityLift::BenchPull => (0.52, None),
        };
        Ok(MaximumVelocity { velocity, deviation })
    }
    source: BANYARD_2017, place: "abstract; the papers named at each lift", standing: Published, seen: Read,
    recalled: "0.52 m/s of the prone bench pull",
    population: "trained men, one study a lift", domain: "seven lifts",
    error: "velocity at the maximum: ICC 0.42, CV 22.5 % between tests",
}

formula! {
    "one_rm.velocity_loss",
    /// By how much did the bar slow down within a set?
    ///
    /// # Formula
    /// `100 (v_fastest - v_last) / v_fastest`, in percent.
    ///
    /// # Domain
    /// Repetitions of one set, each as fast as possible. The same loss leaves different people with different reserves.
    ///
    /// # Errors
    /// `velocity_out_of_domain` outside 0.01 to 10 m/s, or where the last is faster than the fastest.
    ///
    /// # Source
    /// Sanchez-Medina & Gonzalez-Badillo 2011 (row `one_rm.velocity_loss`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::one_rm::velocity_loss(0.5, 0.4)?.round(), 20.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn velocity_loss(fastest: f64, last: f64) -> Result<f64, Error> {
        let fastest = moving("fastest", fastest)?;
        let last = numeric::within(Code::VelocityOutOfDomain, "last", last, SLOWEST, fastest, "m/s")?;
        numeric::finite("velocity_loss", 100.0 * (fastest - last) / fastest)
    }
    source: SANCHEZ_MEDINA_2011, place: "definition", standing: Published, seen: Read,
    population: "18 men, squat and bench press", domain: "one set, every repetition as fast as possible",
}

rows![BANYARD_2017_VELOCITY_ERROR, garcia_ramos_2018, velocity_profile, velocity_at_one_rm, velocity_loss,];
