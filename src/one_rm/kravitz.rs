//! Kravitz et al. 2003: three lifts, elite school powerlifters, one part of the maximum each.

use super::curve::{answered_reps, positive, positive_maximum};
use super::declare::equation;
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Kilograms, Mass, Reps};
use crate::source::{Source, rows};

/// The three lifts of the study.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum PowerLift {
    /// Squat, a set at 70 % of the maximum.
    Squat,
    /// Bench press, a set at 70 % of the maximum.
    BenchPress,
    /// Deadlift, a set at 80 % of the maximum.
    Deadlift,
}

/// `E = start + product r w - each r`.
struct Plane {
    start: f64,
    product: f64,
    each: f64,
}

impl PowerLift {
    const fn plane(self) -> Plane {
        match self {
            PowerLift::Squat => Plane { start: 159.9, product: 0.103, each: 11.552 },
            PowerLift::BenchPress => Plane { start: 90.66, product: 0.085, each: 5.306 },
            PowerLift::Deadlift => Plane { start: 156.08, product: 0.098, each: 12.106 },
        }
    }
}

impl Plane {
    /// Kilograms that one more repetition adds; at or below the crossing load it would add nothing or less.
    fn gain(&self, load: f64) -> Result<f64, Error> {
        let gain = self.product * load - self.each;
        if gain > 0.0 {
            return Ok(gain);
        }
        let crossing = self.each / self.product;
        let unit = "kg, lower end excluded";
        Err(Error::range(Code::LoadOutOfDomain, "load", load, crossing, Mass::MAX.kg(), unit))
    }
}

/// The sets of the study were far shorter.
const HIGHEST: f64 = 30.0;

equation! {
    "Kravitz et al. 2003", "abstract", highest: 30, uses: "PowerLift";
    row: {
        source: Source { id: "kravitz-2003", citation: "Kravitz L, Akalan C, Nowicki K, Kinzey SJ. Prediction of 1 repetition maximum in high-school power lifters. J Strength Cond Res 2003;17(1):167-172", doi: None },
        place: "abstract", standing: Published, seen: Read, population: "18 elite male school powerlifters"
    },
    domain: "one set at 70 % (squat, bench) or 80 % (deadlift)",
    error: "SEE 5.06 kg squat, 2.69 kg bench press, 4.97 kg deadlift";
    /// 18 elite male school powerlifters; one set to failure at 70 % (squat, bench press) or 80 % (deadlift). Not a
    /// general equation: at and below 112.16, 62.42 and 123.53 kg more repetitions would lower the estimate, so
    /// such loads are refused. Error of estimate 5.06, 2.69, 4.97 kg.
    asks: "What could a school powerlifter lift once, from a set to failure at the study's part of the maximum?";
    pub fn kravitz_2003(lift: PowerLift, load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        let plane = lift.plane();
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, HIGHEST, "")?;
        Kilograms::new(plane.start + reps * plane.gain(positive(load)?)?)
    }
    "Squat `E = 159.9 + 0.103 r w - 11.552 r`, bench press `E = 90.66 + 0.085 r w - 5.306 r`, deadlift `E = 156.08 + 0.098 r w - 12.106 r`",
    errors: "`load_out_of_domain` at and below those loads; `reps_out_of_domain` below 1 and above 30 repetitions.",
    gives: 172.020, within: "1e-9", from: "PowerLift::Squat, Mass::from_kg(120.0)?, Reps::whole(15)?";
    pub fn kravitz_2003_load(lift: PowerLift, one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        let plane = lift.plane();
        let reps = numeric::within(Code::RepsOutOfDomain, "reps", reps.value(), 1.0, HIGHEST, "")?;
        let load = (positive_maximum(one_rm)? - plane.start + plane.each * reps) / (plane.product * reps);
        plane.gain(load)?;
        Kilograms::new(load)
    }
    "`w = (E - start + each r) / (product r)` with the coefficients of [`kravitz_2003`]",
    errors: "`reps_out_of_domain` below 1 and above 30 repetitions; `load_out_of_domain` where the load would lie at or below the crossing.",
    gives: 120.000, within: "1e-9", from: "PowerLift::Squat, Kilograms::new(172.02)?, Reps::whole(15)?";
    asks: "How many repetitions to failure does a load allow, given the one-repetition maximum?";
    pub fn kravitz_2003_reps(lift: PowerLift, load: Mass, one_rm: Kilograms) -> Result<f64, Error> {
        let plane = lift.plane();
        let (load, one_rm) = (positive(load)?, positive_maximum(one_rm)?);
        answered_reps((one_rm - plane.start) / plane.gain(load)?, load / one_rm)
    }
    "`r = (E - start) / (product w - each)` with the coefficients of [`kravitz_2003`]", symbols: "masses in kg",
    errors: "`load_out_of_domain` at and below the crossing; `percent_out_of_domain` where there is no answer from 1 to 200 repetitions.",
    gives: 15.00, within: "1e-9", from: "PowerLift::Squat, Mass::from_kg(120.0)?, Kilograms::new(172.02)?", "{Kilograms, Mass}";
}

rows![kravitz_2003, kravitz_2003_load, kravitz_2003_reps];
