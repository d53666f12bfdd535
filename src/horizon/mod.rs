//! Decades: decline, floors to stay above, scenarios, relative strength, the yearly card.
//!
//! Uses `error`, `numeric`, `source`, `quantity`, `caution`, `statistics`, and of `record` what is planned for the years.
//! It reads no log.
//!
//! | question | function |
//! |---|---|
//! | What would be left of this strength at 80? What must be there now? | [`projection`], [`long_plan`] |
//! | By when must I have gained it, and when must I begin? | [`long_plan`] with a yearly gain |
//! | In which year would it meet the floor? | [`floor_crossing`], [`years_to_floor`] |
//! | Is holding this load at 70 more than the years alone would leave? | [`against_expectation`] |
//! | How far above a published floor is this result? | [`ewgsop2_floor`], [`rikli_jones_2013_floor`], [`floor_margin`] |
//! | What if I hold, gain, stop for a while, or do a little? | [`scenario`] |
//! | What part of my strength does this everyday task take? | [`relative_effort`], [`everyday_tasks`] |
//! | How do we compare across body mass and age? | [`scaled_strength`], [`sinclair`], [`ipf_gl_2020`], [`mcculloch`] |
//! | Are the two sides equal? | [`side_difference`] |
//! | What is due this year? | [`yearly_card`] |
//! | What does the evidence say? | [`published_declines`], [`trainability`], [`maintenance_dose`] |
//!
//! No answer is a prognosis, and each names who was measured. One model holds for the whole of an answer; where sex
//! is not known the answer is a range over both, or an error.

mod age_table;
mod band;
mod card;
mod carried;
mod course_of_years;
mod crossing;
mod curve;
mod dated_floor;
mod due;
mod effort;
mod evidence;
mod evidence_lines;
mod floor;
mod function_test;
mod grip;
mod masters;
mod norm;
mod outlook;
mod performance_battery;
mod person;
mod polynomial_score;
mod published_floor;
mod relative;
mod score;
mod sides;
mod study;
mod what_if;

pub use band::Band;
pub use card::{
    BodyMassOn, CardItem, CardLine, CardNote, CardSettings, CardState, LiftSwap, PlannedGap, TestDone,
    Weighing, YearlyCard, YearlyFacts,
};
pub use carried::{
    Carried, annual_loss_compound, annual_loss_linear, carried_back, carried_forward, part_of_peak,
};
pub use crossing::{
    Crossing, FloorCrossing, Person, SteadyLoss, YearsToFloor, floor_crossing, years_to_floor,
};
pub use curve::{AgePoint, Curve, LossBand};
pub use dated_floor::{DatedFloor, Deadline, Deadlines, FloorPlan, MOST_FLOORS, long_plan};
pub use due::{MOST_CARD_ENTRIES, yearly_card};
pub use effort::{
    EverydayTask, MovementEffort, RelativeEffort, effort_after_gain, everyday_tasks, hortobagyi_2003_efforts,
    relative_effort,
};
pub use evidence::{Ends, PublishedFigure, maintenance_dose, published_declines, trainability};
pub use floor::{Floor, FloorMargin, FloorPlace, floor_margin};
pub use function_test::{Better, FunctionTest};
pub use grip::{GripCentiles, GripScore, grip_centiles, grip_t_score};
pub use masters::{
    AgeCoefficient, AgeRule, CarriedResult, all_round_international, all_round_united_states,
    carried_by_coefficients, foster_junior_age, mcculloch, meltzer_faber,
};
pub use norm::{CentileRange, bench_press_ratio, leg_press_ratio, machine_bench_press};
pub use outlook::{
    AgainstExpectation, ExpectationPlace, Outlook, OwnOutlook, PlanningBand, Projection, Training,
    against_expectation, planning_bands, projection,
};
pub use performance_battery::{chair_rise_points, gait_points};
pub use person::{Age, AnnualLoss, Sex};
pub use polynomial_score::{dots_2019, wilks_1994, wilks_2020};
pub use published_floor::{
    cress_meyer_2003_floor, ewgsop2_floor, fnih_floor, knee_torque_floor, ploutz_snyder_2002_floor,
    rikli_jones_2013_floor,
};
pub use relative::{FORCE_EXPONENT, ScaledStrength, TORQUE_EXPONENT, equivalent_load, scaled_strength};
pub use score::{Contest, Equipment, Olympiad, Score, ipf_gl_2020, sinclair};
pub use sides::{SideDifference, SideFigure, SideIndex, SideTest, side_difference};
pub use study::Study;
pub use what_if::{
    MAINTENANCE_WEEKS, MOST_PHASES, Phase, PhaseCourse, ScenarioBands, ScenarioSettings, ScenarioYear,
    Spread, scenario,
};

pub(crate) static DECLARED: crate::source::Declarations = &[
    card::DECLARED,
    carried::DECLARED,
    grip::DECLARED,
    outlook::DECLARED,
    crossing::DECLARED,
    what_if::DECLARED,
    dated_floor::DECLARED,
    floor::DECLARED,
    published_floor::DECLARED,
    performance_battery::DECLARED,
    norm::DECLARED,
    due::DECLARED,
    sides::DECLARED,
    evidence::DECLARED,
    effort::DECLARED,
    relative::DECLARED,
    score::DECLARED,
    polynomial_score::DECLARED,
    masters::DECLARED,
];
