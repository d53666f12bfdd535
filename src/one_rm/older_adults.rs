//! Cubic equations measured on trained older adults.

use super::curve::{Curve, by_halving};
use crate::quantity::{Fraction, Kilograms, Mass, Reps};
use crate::source::{Source, formula, rows};

const KEMMLER_2006: Source = Source {
    id: "kemmler-2006",
    citation: "Kemmler WK, Lauber D, Wassermann A, Mayhew JL. Predicting maximal strength in trained postmenopausal women. J Strength Cond Res 2006;20(4):838-842",
    doi: None,
};

const OSTEOPENIA_2024: Source = Source {
    id: "osteopenia-2024",
    citation: "Developing Accurate Repetition Prediction Equations for Trained Older Adults with Osteopenia. Sports 2024;12(9):233",
    doi: Some("10.3390/sports12090233"),
};

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

pub(super) const KEMMLER_CURVE: Curve = Curve {
    highest: KEMMLER_HIGHEST,
    measured: (3.0, KEMMLER_HIGHEST),
    multiplier: |r| cubic(&KEMMLER, r),
    reps: |m| by_halving(|r| cubic(&KEMMLER, r), KEMMLER_HIGHEST, m),
};

macro_rules! device_curve {
    ($name:ident, $cubic:ident) => {
        pub(super) const $name: Curve = Curve {
            highest: OSTEOPENIA_HIGHEST,
            measured: (5.0, OSTEOPENIA_HIGHEST),
            multiplier: |r| cubic(&$cubic, r),
            reps: |m| by_halving(|r| cubic(&$cubic, r), OSTEOPENIA_HIGHEST, m),
        };
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

formula! {
    "one_rm.kemmler_2006",
    /// What could a trained older woman lift once, from a set to failure on a machine?
    ///
    /// # Formula
    /// `E = w (0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3)`; `w` load in kg, `r` repetitions to failure, `E` in
    /// kg. At one repetition it gives 1.0002 w, the load itself within rounding.
    ///
    /// # Domain
    /// From 1 to 20 repetitions; measured: 3 to 20, 70 trained postmenopausal women of 57.4 (SD 3.1) years, leg
    /// press, bench press, rowing, leg adduction. The cubic turns down after 24.15 repetitions and is never
    /// extrapolated. Mean absolute error 1.5 to 3.1 %, whatever the exercise and the repetitions.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 20 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Kemmler et al. 2006, abstract (row `one_rm.kemmler_2006`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::kemmler_2006;
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = kemmler_2006(Mass::from_kg(100.0)?, Reps::whole(10)?)?;
    /// assert!((estimate.value() - 122.360).abs() < 0.0005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn kemmler_2006(load: Mass, reps: Reps) -> Kilograms {
        KEMMLER_CURVE.one_rm(load, reps)
    }
    source: KEMMLER_2006, place: "abstract", standing: Published, seen: Read,
    population: "70 trained postmenopausal women, 57.4 (SD 3.1) years, four machines",
    domain: "1 to 20 repetitions; measured 3 to 20",
    error: "mean absolute difference 1.5 to 3.1 %, CV below 3.3 %",
}

formula! {
    "one_rm.kemmler_2006_load",
    /// What load would be lifted this often to failure, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E / (0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3)`; masses in kg, `r` repetitions to failure.
    ///
    /// # Domain
    /// As [`kemmler_2006`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 20 repetitions; `load_out_of_domain` where the maximum is at or below
    /// 0 kg.
    ///
    /// # Source
    /// Kemmler et al. 2006 solved for the load (row `one_rm.kemmler_2006_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::kemmler_2006_load;
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = kemmler_2006_load(Kilograms::new(122.36)?, Reps::whole(10)?)?;
    /// assert!((load.value() - 100.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn kemmler_2006_load(one_rm: Kilograms, reps: Reps) -> Kilograms {
        KEMMLER_CURVE.load(one_rm, reps)
    }
    source: KEMMLER_2006, place: "abstract", standing: Published, seen: Read,
    population: "70 trained postmenopausal women, 57.4 (SD 3.1) years, four machines",
    domain: "1 to 20 repetitions; measured 3 to 20",
    error: "of the maximum: mean absolute difference 1.5 to 3.1 %, CV below 3.3 %",
}

formula! {
    "one_rm.kemmler_2006_reps",
    /// How many repetitions to failure does a part of the maximum allow?
    ///
    /// # Formula
    /// The root from 1 to 20 of `1 / F = 0.988 + 0.0104 r + 0.00190 r^2 - 0.0000584 r^3`; `F` part of the maximum.
    ///
    /// # Domain
    /// As [`kemmler_2006`].
    ///
    /// # Errors
    /// `percent_out_of_domain` where the root does not lie from 1 to 20 repetitions.
    ///
    /// # Source
    /// Kemmler et al. 2006 solved for repetitions (row `one_rm.kemmler_2006_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::kemmler_2006_reps;
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = kemmler_2006_reps(Fraction::new(1.0 / 1.2236)?)?;
    /// assert!((reps - 10.0).abs() < 1e-9);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn kemmler_2006_reps(fraction: Fraction) -> f64 {
        KEMMLER_CURVE.reps(fraction)
    }
    source: KEMMLER_2006, place: "abstract", standing: Published, seen: Read,
    population: "70 trained postmenopausal women, 57.4 (SD 3.1) years, four machines",
    domain: "where the answer lies from 1 to 20 repetitions",
    error: "of the maximum: mean absolute difference 1.5 to 3.1 %, CV below 3.3 %",
}

formula! {
    "one_rm.osteopenia_2024",
    /// What could a trained older adult with osteopenia lift once, from a set to failure on this machine?
    ///
    /// # Formula
    /// `E = w (a0 + a1 r + a2 r^2 + a3 r^3)` with four coefficients a machine; `w` load in kg, `r` repetitions to
    /// failure. At one repetition it gives 1.00 to 1.01 w. That the coefficients are printed in ascending powers is
    /// our reading.
    ///
    /// # Domain
    /// From 1 to 16 repetitions; measured: 5 to 16, 40 trained women and men of 73 (SD 8) years with osteopenia or
    /// osteoporosis. The cubics turn down from 18.44 repetitions on and are never extrapolated.
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 16 repetitions; `load_out_of_domain` at or below 0 kg.
    ///
    /// # Source
    /// Sports 2024;12(9):233, table of regression coefficients (row `one_rm.osteopenia_2024`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Device, osteopenia_2024};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let estimate = osteopenia_2024(Device::LatPull, Mass::from_kg(100.0)?, Reps::whole(10)?)?;
    /// assert!((estimate.value() - 130.31).abs() < 0.005);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn osteopenia_2024(device: Device, load: Mass, reps: Reps) -> Kilograms {
        device.curve().one_rm(load, reps)
    }
    source: OSTEOPENIA_2024, place: "regression coefficients a device", standing: Published, seen: Read,
    population: "40 trained women and men, 73 (SD 8) years, osteopenia or osteoporosis, machines",
    domain: "1 to 16 repetitions; measured 5 to 16",
}

formula! {
    "one_rm.osteopenia_2024_load",
    /// What load would be lifted this often to failure on this machine, given the one-repetition maximum?
    ///
    /// # Formula
    /// `w = E / (a0 + a1 r + a2 r^2 + a3 r^3)`; masses in kg, `r` repetitions to failure.
    ///
    /// # Domain
    /// As [`osteopenia_2024`].
    ///
    /// # Errors
    /// `reps_out_of_domain` below 1 and above 16 repetitions; `load_out_of_domain` where the maximum is at or below
    /// 0 kg.
    ///
    /// # Source
    /// Sports 2024;12(9):233 solved for the load (row `one_rm.osteopenia_2024_load`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Device, osteopenia_2024_load};
    /// use bismar::quantity::{Kilograms, Reps};
    ///
    /// let load = osteopenia_2024_load(Device::LegExtension, Kilograms::new(100.0)?, Reps::whole(10)?)?;
    /// assert!((load.value() - 78.13).abs() < 0.01);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn osteopenia_2024_load(device: Device, one_rm: Kilograms, reps: Reps) -> Kilograms {
        device.curve().load(one_rm, reps)
    }
    source: OSTEOPENIA_2024, place: "regression coefficients a device", standing: Published, seen: Read,
    population: "40 trained women and men, 73 (SD 8) years, osteopenia or osteoporosis, machines",
    domain: "1 to 16 repetitions; measured 5 to 16",
}

formula! {
    "one_rm.osteopenia_2024_reps",
    /// How many repetitions to failure does a part of the maximum allow on this machine?
    ///
    /// # Formula
    /// The root from 1 to 16 of `1 / F = a0 + a1 r + a2 r^2 + a3 r^3`; `F` part of the maximum.
    ///
    /// # Domain
    /// As [`osteopenia_2024`].
    ///
    /// # Errors
    /// `percent_out_of_domain` where the root does not lie from 1 to 16 repetitions.
    ///
    /// # Source
    /// Sports 2024;12(9):233 solved for repetitions (row `one_rm.osteopenia_2024_reps`).
    ///
    /// # Examples
    /// ```
    /// use bismar::one_rm::{Device, osteopenia_2024_reps};
    /// use bismar::quantity::Fraction;
    ///
    /// let reps = osteopenia_2024_reps(Device::LegExtension, Fraction::new(0.78125)?)?;
    /// assert!((reps - 10.0).abs() < 0.01);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn osteopenia_2024_reps(device: Device, fraction: Fraction) -> f64 {
        device.curve().reps(fraction)
    }
    source: OSTEOPENIA_2024, place: "regression coefficients a device", standing: Published, seen: Read,
    population: "40 trained women and men, 73 (SD 8) years, osteopenia or osteoporosis, machines",
    domain: "where the answer lies from 1 to 16 repetitions",
}

rows![
    kemmler_2006,
    kemmler_2006_load,
    kemmler_2006_reps,
    osteopenia_2024,
    osteopenia_2024_load,
    osteopenia_2024_reps,
];
