//! Reynolds, Gordon & Robergs 2006: from a 5RM test by a straight line, or from any set by an exponential.

use super::curve::{Curve, positive, positive_maximum};
use super::declare::equation;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const REYNOLDS_2006: Source = Source {
    id: "reynolds-2006",
    citation: "Reynolds JM, Gordon TJ, Robergs RA. Prediction of one repetition maximum strength from multiple repetition maximum testing and anthropometry. J Strength Cond Res 2006;20(3):584-592",
    doi: Some("10.1519/R-15304.1"),
};

/// Beyond the 20 repetitions measured the curve still falls, slowly.
const HIGHEST: f64 = 30.0;

/// Percent of the maximum: `span exp(-rate r) + floor`.
struct Percent {
    span: f64,
    rate: f64,
    floor: f64,
}

impl Percent {
    fn multiplier(&self, r: f64) -> f64 {
        100.0 / (self.span * numeric::exp(-self.rate * r) + self.floor)
    }

    fn reps(&self, multiplier: f64) -> f64 {
        -numeric::ln((100.0 / multiplier - self.floor) / self.span) / self.rate
    }
}

const CHEST: Percent = Percent { span: 55.51, rate: 0.0723, floor: 48.47 };
const LEG: Percent = Percent { span: 78.17, rate: 0.0569, floor: 26.41 };

pub(super) const CHEST_CURVE: Curve =
    Curve::new(HIGHEST, (1.0, 20.0), |r| CHEST.multiplier(r), |m| CHEST.reps(m));
pub(super) const LEG_CURVE: Curve = Curve::new(HIGHEST, (1.0, 20.0), |r| LEG.multiplier(r), |m| LEG.reps(m));

/// The two lifts of the study.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum PressLift {
    /// Barbell bench press.
    ChestPress,
    /// Plate-loaded leg press.
    LegPress,
}

impl PressLift {
    const fn curve(self) -> &'static Curve {
        match self {
            PressLift::ChestPress => &CHEST_CURVE,
            PressLift::LegPress => &LEG_CURVE,
        }
    }

    /// Slope and intercept (kg) of the maximum on the 5RM.
    const fn line(self) -> (f64, f64) {
        match self {
            PressLift::ChestPress => (1.1307, 0.6999),
            PressLift::LegPress => (1.0970, 14.2546),
        }
    }
}

formula! {
    "one_rm.reynolds_2006_five_rm",
    /// What could be lifted once, from a tested five-repetition maximum?
    ///
    /// # Formula
    /// Chest press `E = 1.1307 w + 0.6999`, leg press `E = 1.0970 w + 14.2546`; `w` the 5RM, all in kg. Bound to
    /// kilograms: twice the load is not twice the maximum.
    ///
    /// # Domain
    /// 70 people (34 men, 36 women), 18 to 69 years, mixed training. Error of estimate 2.98 kg (R2 0.993) and
    /// 16.16 kg (R2 0.974). The authors' lines for 10RM and 20RM are not carried: their coefficients are not known
    /// here.
    ///
    /// # Errors
    /// `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Reynolds et al. 2006, abstract (row `one_rm.reynolds_2006_five_rm`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{PressLift, reynolds_2006_five_rm};
    /// use bismar::quantity::Mass;
    ///
    /// let estimate = reynolds_2006_five_rm(PressLift::ChestPress, Mass::from_kg(60.0)?)?;
    /// assert!((estimate.value() - 68.54).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn reynolds_2006_five_rm(lift: PressLift, load: Mass) -> Result<Kilograms, Error> {
        let (slope, intercept) = lift.line();
        Kilograms::new(slope * positive(load)? + intercept)
    }
    source: REYNOLDS_2006, place: "abstract", standing: Published, seen: Read,
    population: "70 men and women, 18 to 69 years, bench press and leg press", domain: "a 5RM test",
    error: "Sy.x 2.98 kg chest press, 16.16 kg leg press",
}

formula! {
    "one_rm.reynolds_2006_five_rm_load",
    /// What would the five-repetition maximum be, given the one-repetition maximum?
    ///
    /// # Formula
    /// Chest press `w = (E - 0.6999) / 1.1307`, leg press `w = (E - 14.2546) / 1.0970`; all in kg.
    ///
    /// # Domain
    /// As [`reynolds_2006_five_rm`].
    ///
    /// # Errors
    /// `load_out_of_domain` where the maximum does not exceed the intercept.
    ///
    /// # Source
    /// Reynolds et al. 2006 solved for the load (row `one_rm.reynolds_2006_five_rm_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{PressLift, reynolds_2006_five_rm_load};
    /// use bismar::quantity::Kilograms;
    ///
    /// let load = reynolds_2006_five_rm_load(PressLift::ChestPress, Kilograms::new(68.5419)?)?;
    /// assert!((load.value() - 60.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn reynolds_2006_five_rm_load(lift: PressLift, one_rm: Kilograms) -> Result<Kilograms, Error> {
        let (slope, intercept) = lift.line();
        if one_rm.value() <= intercept {
            return Err(Error::range(
                Code::LoadOutOfDomain, "one_rm", one_rm.value(), intercept, f64::MAX, "kg, lower end excluded",
            ));
        }
        Kilograms::new((one_rm.value() - intercept) / slope)
    }
    source: REYNOLDS_2006, place: "abstract", standing: Published, seen: Read,
    population: "70 men and women, 18 to 69 years, bench press and leg press", domain: "a 5RM test",
    error: "Sy.x 2.98 kg chest press, 16.16 kg leg press",
}

equation! {
    "Reynolds et al. 2006", "non-linear fit", highest: 30, uses: "PressLift";
    row: {
        source: REYNOLDS_2006, place: "non-linear fit of mean values", standing: Published, seen: Secondary,
        copies: "one public code file", population: "70 men and women, 18 to 69 years, bench press and leg press"
    },
    domain: "1 to 30 repetitions; measured 1 to 20", error: "0.2 and 2.6 kg, of the group's mean values";
    /// From 1 to 30 repetitions; measured: 1, 5, 10 and 20. The fit error of 0.2 and 2.6 kg is that of the group's
    /// mean values, not of one person.
    asks: "What could be lifted once, from a set to failure, by the curve through the mean 5, 10 and 20RM?";
    pub fn reynolds_2006(lift: PressLift, load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        lift.curve().one_rm(load, reps)
    }
    "`E = 100 w / P`; chest press `P = 55.51 exp(-0.0723 r) + 48.47`, leg press `P = 78.17 exp(-0.0569 r) + 26.41`",
    at_one: "0.9989 w and 0.9974 w, the load itself within rounding",
    gives: 100.000, from: "PressLift::ChestPress, Mass::from_kg(87.14)?, Reps::whole(5)?";
    pub fn reynolds_2006_load(lift: PressLift, one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        positive_maximum(one_rm)?;
        lift.curve().load(one_rm, reps)
    }
    "`w = E P / 100`, `P` as in [`reynolds_2006`]",
    gives: 75.409, from: "PressLift::ChestPress, Kilograms::new(100.0)?, Reps::whole(10)?";
    pub fn reynolds_2006_reps(lift: PressLift, fraction: Fraction) -> Result<f64, Error> { lift.curve().reps(fraction) }
    "Chest press `r = -ln((100 F - 48.47) / 55.51) / 0.0723`, leg press `r = -ln((100 F - 26.41) / 78.17) / 0.0569`",
    gives: 10.00, from: "PressLift::ChestPress, Fraction::new(0.7541)?", "Fraction";
}

rows![
    reynolds_2006_five_rm,
    reynolds_2006_five_rm_load,
    reynolds_2006,
    reynolds_2006_load,
    reynolds_2006_reps,
];
