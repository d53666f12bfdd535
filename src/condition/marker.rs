//! What can be asked or measured before the work sets, and against what.

use alloc::vec::Vec;

use derive_setters::Setters;

use crate::canonical::{canonical_fields, canonical_kinds};
use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::{Day, Mass, Name, Reps};
use crate::source::{Source, constant, rows};

const LAURENT_2011: Source = Source {
    id: "laurent-2011",
    citation: "Laurent CM, Green JM, Bishop PA, et al. A practical approach to monitoring recovery. J Strength Cond Res 25:620-628, 2011; typical error from the later reliability study in Int J Sports Physiol Perform 14(3)",
    doi: Some("10.1519/JSC.0b013e3181c69ec6"),
};
const WELLBEING_RELIABILITY: Source = Source {
    id: "wellbeing-reliability",
    citation: "Reliability of wellbeing items, jump height and fatigue measures at rest, PMC7449331",
    doi: None,
};

constant! {
    "condition.recovery_typical_error",
    /// Typical error of the one-number recovery rating (0 to 10): below it no spread of a baseline is believed.
    pub const RECOVERY_TYPICAL_ERROR: f64 = 0.59;
    source: LAURENT_2011, place: "typical error 0.59, ICC .83", standing: Published, seen: Read,
}

constant! {
    "condition.jump_height_variation",
    /// Variation of jump height from test to test, as a part of its value.
    pub const JUMP_HEIGHT_VARIATION: f64 = 0.04;
    source: WELLBEING_RELIABILITY, place: "coefficient of variation 4.0 %", standing: Published, seen: Read,
}

constant! {
    "condition.rating_step",
    /// Ratings are asked in whole steps: a baseline of ratings is not believed narrower than half a step.
    pub const RATING_STEP: f64 = 0.5;
    source: crate::source::OURS, place: "half a step", standing: OurChoice, seen: NotApplicable,
}

constant! {
    "condition.velocity_typical_error",
    /// Spread below which a baseline of bar speed is not believed, in metres a second.
    pub const VELOCITY_TYPICAL_ERROR: f64 = 0.03;
    source: crate::source::OURS, place: "resolution of common devices", standing: OurChoice, seen: NotApplicable,
}

/// What is asked or measured. Each is compared with the lifter's own past only, never with other people or markers.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum MarkerKind {
    /// Bar speed at one fixed warm-up load, in metres a second.
    WarmUpVelocity,
    /// Effort, or how slow the bar felt, at one fixed warm-up set: 0 (nothing) to 10.
    WarmUpEffort,
    /// How recovered, in one number: 0 (not at all) to 10.
    Recovery,
    /// How well slept: higher is better.
    Sleep,
    /// How fresh: higher is better.
    Freshness,
    /// How sore the muscles are: lower is better.
    Soreness,
    /// How stressed: lower is better.
    Stress,
    /// Mood: higher is better.
    Mood,
    /// Jump height in cm. Landing is a load of its own from 70 on.
    JumpHeight,
    /// Technique score of the warm-up, share of criteria met: higher is better.
    WarmUpTechnique,
}

canonical_kinds!(MarkerKind:
    0 WarmUpVelocity, 1 WarmUpEffort, 2 Recovery, 3 Sleep, 4 Freshness, 5 Soreness, 6 Stress, 7 Mood, 8 JumpHeight,
    9 WarmUpTechnique);

impl MarkerKind {
    /// Whether it is read on one fixed set of one lift, so that it means nothing without knowing which.
    #[must_use]
    pub const fn is_of_a_set(self) -> bool {
        matches!(self, MarkerKind::WarmUpVelocity | MarkerKind::WarmUpEffort | MarkerKind::WarmUpTechnique)
    }

    /// Whether a higher value means a day higher against the usual.
    #[must_use]
    pub const fn higher_is_better(self) -> bool {
        !matches!(self, MarkerKind::WarmUpEffort | MarkerKind::Soreness | MarkerKind::Stress)
    }

    /// The spread below which a baseline around `centre` is not believed, unless the coach knows better.
    #[must_use]
    pub fn least_spread(self, centre: f64) -> f64 {
        match self {
            MarkerKind::Recovery => RECOVERY_TYPICAL_ERROR,
            MarkerKind::JumpHeight => JUMP_HEIGHT_VARIATION * numeric::fabs(centre),
            MarkerKind::WarmUpVelocity => VELOCITY_TYPICAL_ERROR,
            MarkerKind::WarmUpTechnique => 0.05,
            _ => RATING_STEP,
        }
    }

    /// Ratings lie between 0 and 10, a technique score between 0 and 1, measured values within what a body does.
    ///
    /// # Errors
    /// `out_of_range`.
    pub fn check(self, value: f64) -> Result<(), Error> {
        let (low, high, unit) = match self {
            MarkerKind::WarmUpVelocity => (0.0, 5.0, "m/s"),
            MarkerKind::JumpHeight => (0.0, 150.0, "cm"),
            MarkerKind::WarmUpTechnique => (0.0, 1.0, ""),
            _ => (0.0, 10.0, ""),
        };
        numeric::within(Code::OutOfRange, "value", value, low, high, unit).map(drop)
    }
}

/// When in the day, as far as it changes what is ordinary.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum TimeOfDay {
    /// Before noon.
    Morning,
    /// Afternoon.
    Afternoon,
    /// Evening.
    Evening,
}

canonical_kinds!(TimeOfDay: 0 Morning, 1 Afternoon, 2 Evening);

/// Under what conditions a marker was read. Only equal conditions are compared.
#[derive(Clone, Debug, Default, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Conditions {
    /// The lift, for markers read on one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub lift: Option<Name>,
    /// The load.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub load: Option<Mass>,
    /// The repetitions.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reps: Option<Reps>,
    /// The time of day.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub time_of_day: Option<TimeOfDay>,
    /// Whether there was caffeine before.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub caffeine: Option<bool>,
    /// Anything else that is told apart, in the coach's words, in one order.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub other: Vec<Name>,
}

canonical_fields!(Conditions: lift, load, reps, time_of_day, caffeine, other);

impl Conditions {
    /// Whether nothing is said of them.
    #[must_use]
    pub fn are_unsaid(&self) -> bool {
        *self == Conditions::default()
    }
}

/// One past value of a marker.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct MarkerReading {
    /// The day.
    pub day: Day,
    /// The value.
    pub value: f64,
    /// Under what conditions.
    #[cfg_attr(feature = "serde", serde(default))]
    pub conditions: Conditions,
}

impl MarkerReading {
    /// That value on that day, under conditions nobody wrote down.
    #[must_use]
    pub fn new(day: Day, value: f64) -> MarkerReading {
        MarkerReading { day, value, conditions: Conditions::default() }
    }
}

/// One marker today, with its past.
#[derive(Clone, Debug, PartialEq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Marker {
    /// What it is.
    pub kind: MarkerKind,
    /// Today's value; absent where it was not answered. A missing answer never counts as good.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub today: Option<f64>,
    /// Today's conditions.
    #[cfg_attr(feature = "serde", serde(default))]
    pub conditions: Conditions,
    /// Earlier values, in any order.
    pub history: Vec<MarkerReading>,
    /// Spread below which the baseline is not believed; the marker's own default where absent.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub least_spread: Option<f64>,
}

impl Marker {
    /// That marker with its earlier readings, not answered today.
    #[must_use]
    pub fn new(kind: MarkerKind, history: Vec<MarkerReading>) -> Marker {
        Marker { kind, today: None, conditions: Conditions::default(), history, least_spread: None }
    }
}

/// Largest size of a marker's value.
const LARGEST: f64 = 1e6;

pub(super) fn value_of(field: &'static str, value: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, field, value, -LARGEST, LARGEST, "")
}

rows![RECOVERY_TYPICAL_ERROR, JUMP_HEIGHT_VARIATION, RATING_STEP, VELOCITY_TYPICAL_ERROR];
