//! Cubic equations measured on trained older adults.

use super::curve::{Curve, by_halving};
use super::declare::equation;
use crate::error::Error;
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, rows};

/// Coefficients of r^0 to r^3, for a load of 1.
type Cubic = [f64; 4];

const KEMMLER: Cubic = [0.988, 0.0104, 0.00190, -0.000_058_4];
const LAT_PULL: Cubic = [0.987_542_505, 0.015_270_014_9, 0.002_784_870_38, -0.000_115_638_888];
const TRICEPS_DIP: Cubic = [0.973_559_954, 0.027_164_265_8, 0.000_930_880_743, -0.000_047_745_347_4];
const TRUNK_FLEXION: Cubic = [0.994_961_852, 0.007_312_407_52, 0.002_939_674_56, -0.000_105_109_010];
const LEG_EXTENSION: Cubic = [0.999_714_613, 0.001_840_505_32, 0.003_902_819_62, -0.000_128_405_344];

/// Above the measured zones the cubics turn down (at 24.15 and from 18.44 repetitions): never extrapolated.
const KEMMLER_HIGHEST: f64 = 20.0;
const OSTEOPENIA_HIGHEST: f64 = 16.0;

fn cubic(c: &Cubic, r: f64) -> f64 {
    let [a, b, c, d] = *c;
    a + r * (b + r * (c + r * d))
}

pub(super) const KEMMLER_CURVE: Curve = Curve::new(
    KEMMLER_HIGHEST,
    (3.0, KEMMLER_HIGHEST),
    |r| cubic(&KEMMLER, r),
    |m| by_halving(|r| cubic(&KEMMLER, r), KEMMLER_HIGHEST, m),
);

macro_rules! device_curve {
    ($name:ident, $cubic:ident) => {
        pub(super) const $name: Curve = Curve::new(
            OSTEOPENIA_HIGHEST,
            (5.0, OSTEOPENIA_HIGHEST),
            |r| cubic(&$cubic, r),
            |m| by_halving(|r| cubic(&$cubic, r), OSTEOPENIA_HIGHEST, m),
        );
    };
}

device_curve!(LAT_PULL_CURVE, LAT_PULL);
device_curve!(TRICEPS_DIP_CURVE, TRICEPS_DIP);
device_curve!(TRUNK_FLEXION_CURVE, TRUNK_FLEXION);
device_curve!(LEG_EXTENSION_CURVE, LEG_EXTENSION);

/// The training machine that a cubic of the 2024 study belongs to.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Device {
    /// Lat pull.
    LatPull,
    /// Triceps dip.
    TricepsDip,
    /// Trunk flexion.
    TrunkFlexion,
    /// Leg extension.
    LegExtension,
}

impl Device {
    const fn curve(self) -> &'static Curve {
        match self {
            Device::LatPull => &LAT_PULL_CURVE,
            Device::TricepsDip => &TRICEPS_DIP_CURVE,
            Device::TrunkFlexion => &TRUNK_FLEXION_CURVE,
            Device::LegExtension => &LEG_EXTENSION_CURVE,
        }
    }
}

equation! {
    "Kemmler et al. 2006", "abstract", highest: 20, answers: 20;
    row: {
        source: Source { id: "kemmler-2006", citation: "Kemmler WK, Lauber D, Wassermann A, Mayhew JL. Predicting maximal strength in trained postmenopausal women. J Strength Cond Res 2006;20(4):838-842", doi: None },
        place: "abstract", standing: Published, seen: Read,
        population: "70 trained postmenopausal women, 57.4 (SD 3.1) years, four machines"
    },
    domain: "1 to 20 repetitions; measured 3 to 20",
    error: "of the maximum: mean absolute difference 1.5 to 3.1 %, CV below 3.3 %";
    /// From 1 to 20 repetitions; measured: 3 to 20, 70 trained postmenopausal women of 57.4 (SD 3.1) years, leg
    /// press, bench press, rowing, leg adduction. The cubic turns down after 24.15 repetitions and is never
    /// extrapolated. Mean absolute error 1.5 to 3.1 %, whatever the exercise and the repetitions.
    asks: "What could a trained older woman lift once, from a set to failure on a machine?";
    pub fn kemmler_2006(load: Mass, reps: Reps) -> Result<Kilograms, Error> { KEMMLER_CURVE.one_rm(load, reps) }
    "`E = w (0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3)`", at_one: "1.0002 w, the load itself within rounding",
    gives: 122.360, within: "1e-9", from: "Mass::from_kg(100.0)?, Reps::whole(10)?";
    pub fn kemmler_2006_load(one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> { KEMMLER_CURVE.load(one_rm, reps) }
    "`w = E / (0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3)`",
    gives: 100.000, within: "1e-9", from: "Kilograms::new(122.36)?, Reps::whole(10)?";
    pub fn kemmler_2006_reps(fraction: Fraction) -> Result<f64, Error> { KEMMLER_CURVE.reps(fraction) }
    "The root from 1 to 20 of `1 / F = 0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3`",
    gives: 10.00, within: "1e-9", from: "Fraction::new(1.0 / 1.2236)?", "Fraction";
}

equation! {
    "Sports 2024;12(9):233", "table of regression coefficients", highest: 16, answers: 16, uses: "Device";
    row: {
        source: Source { id: "osteopenia-2024", citation: "Developing Accurate Repetition Prediction Equations for Trained Older Adults with Osteopenia. Sports 2024;12(9):233", doi: Some("10.3390/sports12090233") },
        place: "regression coefficients a device", standing: Published, seen: Read,
        population: "40 trained women and men, 73 (SD 8) years, osteopenia or osteoporosis, machines"
    },
    domain: "1 to 16 repetitions; measured 5 to 16";
    /// From 1 to 16 repetitions; measured: 5 to 16, 40 trained women and men of 73 (SD 8) years with osteopenia or
    /// osteoporosis. The cubics turn down from 18.44 repetitions on and are never extrapolated.
    asks: "What could a trained older adult with osteopenia lift once, from a set to failure on this machine?";
    pub fn osteopenia_2024(device: Device, load: Mass, reps: Reps) -> Result<Kilograms, Error> {
        device.curve().one_rm(load, reps)
    }
    "`E = w (a0 + a1 r + a2 r^2 + a3 r^3)` with four coefficients a machine", at_one: "1.00 to 1.01 w",
    more: "That the coefficients are printed in ascending powers is our reading.",
    gives: 130.309, from: "Device::LatPull, Mass::from_kg(100.0)?, Reps::whole(10)?";
    asks: "What load would be lifted this often to failure on this machine, given the one-repetition maximum?";
    pub fn osteopenia_2024_load(device: Device, one_rm: Kilograms, reps: Reps) -> Result<Kilograms, Error> {
        device.curve().load(one_rm, reps)
    }
    "`w = E / (a0 + a1 r + a2 r^2 + a3 r^3)`",
    gives: 78.125, from: "Device::LegExtension, Kilograms::new(100.0)?, Reps::whole(10)?";
    asks: "How many repetitions to failure does a part of the maximum allow on this machine?";
    pub fn osteopenia_2024_reps(device: Device, fraction: Fraction) -> Result<f64, Error> {
        device.curve().reps(fraction)
    }
    "The root from 1 to 16 of `1 / F = a0 + a1 r + a2 r^2 + a3 r^3`",
    gives: 10.00, from: "Device::LegExtension, Fraction::new(0.78125)?", "Fraction";
}

rows![
    kemmler_2006,
    kemmler_2006_load,
    kemmler_2006_reps,
    osteopenia_2024,
    osteopenia_2024_load,
    osteopenia_2024_reps,
];
