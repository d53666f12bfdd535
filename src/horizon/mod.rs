//! Decades: decline, floors to stay above, scenarios, relative strength, the yearly card.
//!
//! Uses `error`, `numeric`, `source`, `quantity`, `caution` and `statistics`. It knows no log.

mod band;
mod curve;
mod grip;
mod masters;
mod outlook;
mod person;
mod polynomial_score;
mod relative;
mod score;
mod study;

pub use band::Band;
pub use curve::{
    AgePoint, Curve, LossBand, annual_loss_compound, annual_loss_linear, carried_back, carried_forward,
    part_of_peak,
};
pub use grip::{GripCentiles, GripScore, grip_centiles, grip_t_score};
pub use masters::{
    AgeCoefficient, AgeRule, CarriedResult, all_round_international, all_round_united_states,
    carried_by_coefficients, foster, mcculloch, meltzer_faber,
};
pub use outlook::{
    AgainstExpectation, ExpectationPlace, Outlook, OwnOutlook, PlanningBand, Projection, Training,
    against_expectation, planning_bands, projection,
};
pub use person::{Age, AnnualLoss, Sex};
pub use polynomial_score::{dots_2019, wilks_1994, wilks_2020};
pub use relative::{FORCE_EXPONENT, ScaledStrength, TORQUE_EXPONENT, equivalent_load, scaled_strength};
pub use score::{Contest, Equipment, Olympiad, Score, ipf_gl_2020, sinclair};
pub use study::Study;

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[
    curve::ROWS,
    grip::ROWS,
    outlook::ROWS,
    relative::ROWS,
    score::ROWS,
    polynomial_score::ROWS,
    masters::ROWS,
];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[
    curve::ENTRIES,
    grip::ENTRIES,
    outlook::ENTRIES,
    relative::ENTRIES,
    score::ENTRIES,
    polynomial_score::ENTRIES,
    masters::ENTRIES,
];
