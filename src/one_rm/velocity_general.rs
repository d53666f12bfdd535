//! General equations of load and bar velocity: one exercise, one device, one group of men each.

use super::velocity_line::SLOWEST;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::Fraction;
use crate::source::{Source, formula, rows};

const GONZALEZ_BADILLO_2010: Source = Source {
    id: "gonzalez-badillo-2010",
    citation: "Gonzalez-Badillo JJ, Sanchez-Medina L. Movement velocity as a measure of loading intensity in resistance training. Int J Sports Med 2010;31:347-352",
    doi: Some("10.1055/s-0030-1248333"),
};

const SANCHEZ_MEDINA_2014: Source = Source {
    id: "sanchez-medina-2014",
    citation: "Sanchez-Medina L, Gonzalez-Badillo JJ, Perez CE, Pallares JG. Velocity- and power-load relationships of the bench pull vs. bench press exercises. Int J Sports Med 2014;35:209-216",
    doi: None,
};

const SANCHEZ_MEDINA_2017: Source = Source {
    id: "sanchez-medina-2017",
    citation: "Sanchez-Medina L, Pallares JG, Perez CE, Moran-Navarro R, Gonzalez-Badillo JJ. Estimation of relative load from bar velocity in the full back squat exercise. Sports Med Int Open 2017;1:E80-E88",
    doi: Some("10.1055/s-0043-102933"),
};

/// Which mean of the bar's velocity was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum MeanVelocity {
    /// Over the part of the lift in which the bar is still pushed.
    Propulsive,
    /// Over the whole way up. The two agree for heavy loads only.
    Whole,
}

/// The two lifts of the 2014 study, both by mean propulsive velocity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum BenchLift {
    /// Bench press.
    BenchPress,
    /// Prone bench pull.
    BenchPull,
}

/// Percent of the maximum: `square v^2 + linear v + constant`.
struct Parabola {
    square: f64,
    linear: f64,
    constant: f64,
}

const BENCH_2010: [Parabola; 2] = [
    Parabola { square: 8.4326, linear: -73.501, constant: 112.33 },
    Parabola { square: 7.5786, linear: -75.865, constant: 113.02 },
];
const BENCH_2014: Parabola = Parabola { square: 11.4196, linear: -81.904, constant: 114.03 };
const PULL_2014: Parabola = Parabola { square: 18.5797, linear: -104.182, constant: 147.94 };
const SQUAT_2017: [Parabola; 2] = [
    Parabola { square: -5.961, linear: -50.71, constant: 117.0 },
    Parabola { square: -12.87, linear: -46.31, constant: 116.3 },
];

/// Percent of the maximum that was fitted; the upper end leaves room for the printed error of about 4 %.
const FITTED: (f64, f64) = (30.0, 104.0);

impl MeanVelocity {
    const fn of(self, pair: &'static [Parabola; 2]) -> &'static Parabola {
        let [propulsive, whole] = pair;
        match self {
            MeanVelocity::Propulsive => propulsive,
            MeanVelocity::Whole => whole,
        }
    }
}

impl BenchLift {
    const fn parabola(self) -> &'static Parabola {
        match self {
            BenchLift::BenchPress => &BENCH_2014,
            BenchLift::BenchPull => &PULL_2014,
        }
    }
}

impl Parabola {
    /// Velocity at which the falling branch reaches that percentage.
    fn velocity_at(&self, percent: f64) -> f64 {
        let rest = self.constant - percent;
        let discriminant = self.linear * self.linear - 4.0 * self.square * rest;
        2.0 * rest / (numeric::sqrt(discriminant) - self.linear)
    }

    fn fraction(&self, velocity: f64) -> Result<Fraction, Error> {
        let (slowest, fastest) = (self.velocity_at(FITTED.1), self.velocity_at(FITTED.0));
        let velocity =
            numeric::within(Code::VelocityOutOfDomain, "velocity", velocity, SLOWEST, 10.0, "m/s")?;
        if velocity < slowest || velocity > fastest {
            return Err(Error::range(
                Code::VelocityOutOfDomain,
                "velocity",
                velocity,
                slowest,
                fastest,
                "m/s",
            ));
        }
        Fraction::new((self.square * velocity * velocity + self.linear * velocity + self.constant) / 100.0)
    }

    fn velocity(&self, fraction: Fraction) -> Result<f64, Error> {
        if fraction.percent() < FITTED.0 || fraction.percent() > FITTED.1 {
            let rule = Allowed::rule("0.30 to 1.04, the part that was fitted and its error");
            return Err(Error::new(Code::PercentOutOfDomain, "fraction", fraction.value(), rule));
        }
        numeric::finite("velocity", self.velocity_at(fraction.percent()))
    }
}

formula! {
    "one_rm.gonzalez_badillo_2010",
    /// What part of the maximum was this, by the bar's velocity in the bench press?
    ///
    /// # Formula
    /// Mean propulsive `P = 8.4326 v^2 - 73.501 v + 112.33`, mean velocity `P = 7.5786 v^2 - 75.865 v + 113.02`;
    /// `P` in percent, `v` in m/s.
    ///
    /// # Domain
    /// The velocities that give 30 to 104 %, on the falling branch. 120 trained men, bench press, every
    /// repetition as fast as possible, one device. For another exercise, device or person it is a guess.
    ///
    /// # Errors
    /// `velocity_out_of_domain` outside it, the rising branch included.
    ///
    /// # Source
    /// Gonzalez-Badillo & Sanchez-Medina 2010 (row `one_rm.gonzalez_badillo_2010`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{MeanVelocity, gonzalez_badillo_2010};
    ///
    /// let part = gonzalez_badillo_2010(MeanVelocity::Propulsive, 0.47)?;
    /// assert!((part.percent() - 79.65).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn gonzalez_badillo_2010(variable: MeanVelocity, velocity: f64) -> Result<Fraction, Error> {
        variable.of(&BENCH_2010).fraction(velocity)
    }
    source: GONZALEZ_BADILLO_2010, place: "general equation", standing: Published, seen: Memory,
    population: "120 trained men, bench press", domain: "30 to 104 % of the maximum, falling branch",
    error: "SEE 3.56 % (mean propulsive), 3.77 % (mean velocity)",
}

formula! {
    "one_rm.gonzalez_badillo_2010_velocity",
    /// How fast should the bar move at this part of the maximum in the bench press?
    ///
    /// # Formula
    /// The root of [`gonzalez_badillo_2010`] on the falling branch; m/s.
    ///
    /// # Domain
    /// As [`gonzalez_badillo_2010`], 30 to 104 %.
    ///
    /// # Errors
    /// `percent_out_of_domain` outside it.
    ///
    /// # Source
    /// Gonzalez-Badillo & Sanchez-Medina 2010 solved for the velocity (row `one_rm.gonzalez_badillo_2010_velocity`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{MeanVelocity, gonzalez_badillo_2010_velocity};
    /// use bismar::quantity::Fraction;
    ///
    /// let velocity = gonzalez_badillo_2010_velocity(MeanVelocity::Propulsive, Fraction::new(0.8)?)?;
    /// assert!((velocity - 0.465).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn gonzalez_badillo_2010_velocity(variable: MeanVelocity, fraction: Fraction) -> Result<f64, Error> {
        variable.of(&BENCH_2010).velocity(fraction)
    }
    source: GONZALEZ_BADILLO_2010, place: "general equation", standing: Published, seen: Memory,
    population: "120 trained men, bench press", domain: "30 to 104 % of the maximum, falling branch",
    error: "SEE 3.56 % (mean propulsive), 3.77 % (mean velocity)",
}

formula! {
    "one_rm.sanchez_medina_2014",
    /// What part of the maximum was this, by the bar's velocity in the bench press and prone bench pull?
    ///
    /// # Formula
    /// Bench press `P = 11.4196 v^2 - 81.904 v + 114.03`, prone bench pull `P = 18.5797 v^2 - 104.182 v +
    /// 147.94`; `P` in percent, `v` in m/s.
    ///
    /// # Domain
    /// The velocities that give 30 to 104 %, on the falling branch. 75 athletes, bench press and prone bench
    /// pull, every repetition as fast as possible, one device. For another exercise, device or person it is a
    /// guess.
    ///
    /// # Errors
    /// `velocity_out_of_domain` outside it, the rising branch included.
    ///
    /// # Source
    /// Sanchez-Medina et al. 2014 (row `one_rm.sanchez_medina_2014`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{BenchLift, sanchez_medina_2014};
    ///
    /// let part = sanchez_medina_2014(BenchLift::BenchPull, 1.00)?;
    /// assert!((part.percent() - 62.34).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sanchez_medina_2014(lift: BenchLift, velocity: f64) -> Result<Fraction, Error> {
        lift.parabola().fraction(velocity)
    }
    source: SANCHEZ_MEDINA_2014, place: "general equation", standing: Published, seen: Memory,
    population: "75 athletes, bench press and prone bench pull", domain: "30 to 104 % of the maximum, falling branch",
    error: "R2 0.97 and 0.94",
}

formula! {
    "one_rm.sanchez_medina_2014_velocity",
    /// How fast should the bar move at this part of the maximum in the bench press and prone bench pull?
    ///
    /// # Formula
    /// The root of [`sanchez_medina_2014`] on the falling branch; m/s.
    ///
    /// # Domain
    /// As [`sanchez_medina_2014`], 30 to 104 %.
    ///
    /// # Errors
    /// `percent_out_of_domain` outside it.
    ///
    /// # Source
    /// Sanchez-Medina et al. 2014 solved for the velocity (row `one_rm.sanchez_medina_2014_velocity`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{BenchLift, sanchez_medina_2014_velocity};
    /// use bismar::quantity::Fraction;
    ///
    /// let velocity = sanchez_medina_2014_velocity(BenchLift::BenchPull, Fraction::new(0.8)?)?;
    /// assert!((velocity - 0.753).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sanchez_medina_2014_velocity(lift: BenchLift, fraction: Fraction) -> Result<f64, Error> {
        lift.parabola().velocity(fraction)
    }
    source: SANCHEZ_MEDINA_2014, place: "general equation", standing: Published, seen: Memory,
    population: "75 athletes, bench press and prone bench pull", domain: "30 to 104 % of the maximum, falling branch",
    error: "R2 0.97 and 0.94",
}

formula! {
    "one_rm.sanchez_medina_2017",
    /// What part of the maximum was this, by the bar's velocity in the full squat?
    ///
    /// # Formula
    /// Mean propulsive `P = -5.961 v^2 - 50.71 v + 117.0`, mean velocity `P = -12.87 v^2 - 46.31 v + 116.3`; `P`
    /// in percent, `v` in m/s.
    ///
    /// # Domain
    /// The velocities that give 30 to 104 %, on the falling branch. 80 men, full squat on a guided bar, every
    /// repetition as fast as possible, one device. For another exercise, device or person it is a guess.
    ///
    /// # Errors
    /// `velocity_out_of_domain` outside it, the rising branch included.
    ///
    /// # Source
    /// Sanchez-Medina et al. 2017 (row `one_rm.sanchez_medina_2017`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{MeanVelocity, sanchez_medina_2017};
    ///
    /// let part = sanchez_medina_2017(MeanVelocity::Propulsive, 0.68)?;
    /// assert!((part.percent() - 79.76).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sanchez_medina_2017(variable: MeanVelocity, velocity: f64) -> Result<Fraction, Error> {
        variable.of(&SQUAT_2017).fraction(velocity)
    }
    source: SANCHEZ_MEDINA_2017, place: "general equation", standing: Published, seen: Memory,
    population: "80 men, full squat on a guided bar", domain: "30 to 104 % of the maximum, falling branch",
    error: "SEE 4.02 % (mean propulsive); velocity SEE 0.06 m/s",
}

formula! {
    "one_rm.sanchez_medina_2017_velocity",
    /// How fast should the bar move at this part of the maximum in the full squat?
    ///
    /// # Formula
    /// The root of [`sanchez_medina_2017`] on the falling branch; m/s.
    ///
    /// # Domain
    /// As [`sanchez_medina_2017`], 30 to 104 %.
    ///
    /// # Errors
    /// `percent_out_of_domain` outside it.
    ///
    /// # Source
    /// Sanchez-Medina et al. 2017 solved for the velocity (row `one_rm.sanchez_medina_2017_velocity`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{MeanVelocity, sanchez_medina_2017_velocity};
    /// use bismar::quantity::Fraction;
    ///
    /// let velocity = sanchez_medina_2017_velocity(MeanVelocity::Propulsive, Fraction::new(0.8)?)?;
    /// assert!((velocity - 0.676).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn sanchez_medina_2017_velocity(variable: MeanVelocity, fraction: Fraction) -> Result<f64, Error> {
        variable.of(&SQUAT_2017).velocity(fraction)
    }
    source: SANCHEZ_MEDINA_2017, place: "general equation", standing: Published, seen: Memory,
    population: "80 men, full squat on a guided bar", domain: "30 to 104 % of the maximum, falling branch",
    error: "SEE 4.02 % (mean propulsive); velocity SEE 0.06 m/s",
}

rows![
    gonzalez_badillo_2010,
    gonzalez_badillo_2010_velocity,
    sanchez_medina_2014,
    sanchez_medina_2014_velocity,
    sanchez_medina_2017,
    sanchez_medina_2017_velocity,
];
