//! Everyday function as it is tested: what each test gives, in which unit, and which way is better.

/// A test of strength or everyday function with published floors, or one worth repeating every year.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum FunctionTest {
    /// Hand grip by dynamometer, best of repeated trials, kg.
    Grip,
    /// Five rises from a chair without arms, s.
    FiveChairRises,
    /// Usual walking speed, m/s.
    GaitSpeed,
    /// Rise, walk 3 m, turn, walk back, sit, s.
    TimedUpAndGo,
    /// Chair rises, gait and standing balance scored together, 0 to 12 points.
    ShortPerformanceBattery,
    /// Walk of 400 m, s.
    #[cfg_attr(feature = "serde", serde(rename = "walk_of_400_metres"))]
    WalkOf400Metres,
    /// Full rises from a chair in 30 s.
    #[cfg_attr(feature = "serde", serde(rename = "chair_stands_in_30_seconds"))]
    ChairStandsIn30Seconds,
    /// Arm curls in 30 s, with 5 lb (women) or 8 lb (men).
    #[cfg_attr(feature = "serde", serde(rename = "arm_curls_in_30_seconds"))]
    ArmCurlsIn30Seconds,
    /// Distance walked in 6 minutes, yd.
    SixMinuteWalk,
    /// Steps on the spot in 2 minutes, counted on the right knee.
    TwoMinuteSteps,
    /// Rise, walk 8 ft, turn, walk back, sit, s.
    EightFootUpAndGo,
    /// Lean mass of arms and legs over height squared, kg/m2.
    LimbLeanMassOverHeightSquared,
    /// Lean mass of arms and legs over body mass index, m2.
    LimbLeanMassOverBodyMassIndex,
    /// Isometric knee-extension torque over body mass, N m/kg.
    KneeTorqueOverBodyMass,
    /// Knee-extension torque over body mass and height, N m/(kg/m).
    KneeTorqueOverMassPerHeight,
    /// Peak oxygen uptake, mL/kg/min.
    PeakOxygenUptake,
    /// Down to the floor and up again, s. No published floor is here.
    FloorRise,
}

/// Which way a result is better.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Better {
    /// A larger figure is better.
    Higher,
    /// A smaller figure is better: times.
    Lower,
}

impl FunctionTest {
    /// The unit of a result.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            FunctionTest::Grip => "kg",
            FunctionTest::GaitSpeed => "m/s",
            FunctionTest::FiveChairRises
            | FunctionTest::TimedUpAndGo
            | FunctionTest::WalkOf400Metres
            | FunctionTest::EightFootUpAndGo
            | FunctionTest::FloorRise => "s",
            FunctionTest::ShortPerformanceBattery => "points",
            FunctionTest::ChairStandsIn30Seconds | FunctionTest::ArmCurlsIn30Seconds => "repetitions",
            FunctionTest::SixMinuteWalk => "yd",
            FunctionTest::TwoMinuteSteps => "steps",
            FunctionTest::LimbLeanMassOverHeightSquared => "kg/m2",
            FunctionTest::LimbLeanMassOverBodyMassIndex => "m2",
            FunctionTest::KneeTorqueOverBodyMass => "N m/kg",
            FunctionTest::KneeTorqueOverMassPerHeight => "N m/(kg/m)",
            FunctionTest::PeakOxygenUptake => "mL/kg/min",
        }
    }

    /// Which way a result is better.
    #[must_use]
    pub const fn better(self) -> Better {
        match self {
            FunctionTest::FiveChairRises
            | FunctionTest::TimedUpAndGo
            | FunctionTest::WalkOf400Metres
            | FunctionTest::EightFootUpAndGo
            | FunctionTest::FloorRise => Better::Lower,
            _ => Better::Higher,
        }
    }
}
