//! What the yearly card is made from, and what it says.

use alloc::vec;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::FunctionTest;
use crate::caution::Caution;
use crate::quantity::{Day, Mass, Name};
pub use crate::record::{LiftSwap, PlannedGap, Weighing};
use crate::source::{OURS, default_of, rows};

/// A function test and when it was last done; the result is kept by the record.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct TestDone {
    /// Which test.
    pub test: FunctionTest,
    /// The day it was last done.
    pub on: Day,
}

/// Body mass on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct BodyMassOn {
    /// The day.
    pub on: Day,
    /// Body mass.
    pub mass: Mass,
}

/// What the yearly card is made from. Plain dates; the caller takes them from its record.
#[derive(Clone, Debug, Default, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct YearlyFacts {
    /// Day of the last clearance; absent if there is none.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub clearance: Option<Day>,
    /// Function tests done; the latest of each counts.
    pub tests: Vec<TestDone>,
    /// Equipment that carries a weight.
    pub equipment: Vec<Weighing>,
    /// Lifts to swap.
    pub swaps: Vec<LiftSwap>,
    /// Planned gaps.
    pub gaps: Vec<PlannedGap>,
    /// Body masses in any order.
    pub body_masses: Vec<BodyMassOn>,
    /// Whether a loss of body mass was intended.
    pub mass_loss_intended: bool,
    /// Whether there was a fall since the last card.
    pub fall: bool,
    /// Whether there is a new medicine since the last card.
    pub new_medicine: bool,
}

/// After how many days things come due.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CardSettings {
    /// A clearance, days.
    pub clearance_days: u16,
    /// A function test, days.
    pub test_days: u16,
    /// A weighing of equipment, days.
    pub weighing_days: u16,
    /// A body mass, days.
    pub body_mass_days: u16,
    /// From how many days ahead a thing counts as soon.
    pub soon_days: u16,
    /// Tests to repeat each year.
    pub tests: Vec<FunctionTest>,
    /// Loss of body mass that is worth a talk, as a part.
    pub mass_loss: f64,
    /// Over how many days.
    pub mass_loss_days: u16,
}

impl Default for CardSettings {
    /// Everything once in 365 days, soon from 30 days ahead; chair rise, gait, grip and floor rise; 5 % of body mass
    /// in 182 days.
    fn default() -> Self {
        CardSettings {
            clearance_days: 365,
            test_days: 365,
            weighing_days: 365,
            body_mass_days: 365,
            soon_days: 30,
            tests: vec![
                FunctionTest::FiveChairRises,
                FunctionTest::GaitSpeed,
                FunctionTest::Grip,
                FunctionTest::FloorRise,
            ],
            mass_loss: 0.05,
            mass_loss_days: 182,
        }
    }
}

default_of! {
    "horizon.card_settings_default",
    /// What the yearly card reminds of, and how often, where a coach names nothing else.
    card_settings_default: CardSettings;
    source: OURS, place: "yearly card", standing: OurChoice, seen: NotApplicable,
}

/// A thing on the card.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CardItem {
    /// A new clearance.
    Clearance,
    /// A function test to repeat.
    Test(FunctionTest),
    /// Body mass to take again.
    BodyMass,
    /// Equipment to weigh again.
    Weigh(Name),
    /// A lift to swap.
    Swap {
        /// The lift.
        lift: Name,
        /// What takes its place, if known.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        replacement: Option<Name>,
    },
    /// A planned gap begins.
    Gap {
        /// What for.
        name: Name,
        /// Last day.
        to: Day,
    },
}

/// How a line stands today.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum CardState {
    /// Never done: due today.
    Never,
    /// The day has passed.
    Overdue,
    /// Today or within the days that count as soon.
    Soon,
    /// Later.
    Later,
    /// A gap that has begun and not ended.
    Running,
}

/// One line of the card.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct CardLine {
    /// What is due.
    pub item: CardItem,
    /// By which day.
    pub due: Day,
    /// Days from today to that day; negative if it has passed.
    pub days_left: i32,
    /// How it stands.
    pub state: CardState,
}

/// Something worth a talk with a clinician.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(rename_all = "snake_case", deny_unknown_fields)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum CardNote {
    /// Body mass lost without intending to.
    MassLost {
        /// Part of the highest body mass of the stretch.
        part: f64,
        /// Days over which.
        days: i32,
    },
    /// A fall.
    Fall,
    /// A new medicine.
    NewMedicine,
}

/// The yearly card.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct YearlyCard {
    /// What is due, by day.
    pub lines: Vec<CardLine>,
    /// What is worth a talk with a clinician.
    pub notes: Vec<CardNote>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

rows![card_settings_default];
