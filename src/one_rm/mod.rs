//! What a set says about strength, and what load asks for a given effort.
//!
//! Uses error, numeric, source, quantity, caution, statistics. Takes its own plain set evidence; knows no log.
//!
//! | question | function |
//! |---|---|
//! | What do these sets say about the maximum, and how sure is that? | [`estimate`] over [`SetEvidence`] |
//! | What does one published equation say? | [`Equation`], or by name: [`epley_1985`] and its companions |
//! | What speaks against that number? | [`equation_doubts`] |
//! | What load for these repetitions and that reserve? | [`load_for`], [`reps_for`], [`fraction_for`] |
//! | The same as a table for the wall | [`effort_grid`] |
//! | What is this lifter's own curve? | [`own_curve`], then [`own_curve_load`] |
//! | What do bar velocities say? | [`velocity_profile`], [`velocity_at_one_rm`] |
//! | Did strength really change? | [`strength_change`], [`smallest_real_change`]; of a new lifter, [`newcomers_gain`] |
//! | How far is a called reserve off? | [`REFALO_2024_RESERVE_ERROR`], [`zourdos_2021_reserve_error`] |
//! | A long column of sets at once? | [`one_rm_batch`] |
//!
//! [Which equation](crate::guide::choose_an_equation) compares them and shows where the studies disagree.

mod abadie;
mod batch;
mod by_own_curve;
mod chart;
mod classic;
mod critical_load;
mod critical_load_fit;
mod cummings_finn;
mod curve;
mod declare;
mod effort;
mod equation;
mod doubts;
mod from_sets;
mod evidence;
mod grid;
mod kravitz;
mod new_to_lift;
mod older_adults;
mod options;
mod own_curve_fit;
mod own_curve_form;
mod posterior;
mod real_change;
mod reserve_error;
mod set_row;
mod reynolds;
mod two_sets;
mod velocity_general;
mod velocity_line;

pub use abadie::{abadie_1999, abadie_1999_load, abadie_2000, abadie_2000_load};
pub use batch::{Tabled, one_rm_batch};
pub(crate) use by_own_curve::estimate_by_own_curve;
pub use chart::{
    ChartAboveTen, percent_chart, percent_chart_fraction, percent_chart_load, percent_chart_reps,
};
pub use classic::*;
pub use critical_load::{
    bergstrom_2021, bergstrom_2021_load, bergstrom_2021_reps, morton_2014, morton_2014_load, morton_2014_reps,
};
pub use critical_load_fit::{CriticalLoad, CriticalLoadDoubt, SetToFailure, bergstrom_2021_fit};
pub use cummings_finn::{cummings_finn_1998, cummings_finn_1998_load, cummings_finn_1998_reps};
pub use doubts::{EquationDoubt, equation_doubts};
pub use effort::{
    ExpectedEffort, FractionBand, ReserveBias, effort_for, fraction_for, fraction_for_rpe, load_for,
    reps_for, reps_to_failure,
};
pub use equation::Equation;
pub use evidence::{SetEffort, SetEvidence, SetFlag, SetRefusal, SetUse, TechniqueVerdict};
pub use from_sets::{EquationEstimate, Estimate, WidthParts, estimate, usable_sets};
pub use grid::{GridCell, GridRow, effort_grid};
pub use kravitz::{PowerLift, kravitz_2003, kravitz_2003_load, kravitz_2003_reps};
pub use new_to_lift::{
    NEW_TO_LIFT_SLOPE_CV, NewcomersGain, Practice, braith_1993, braith_1993_load, newcomers_gain,
};
pub use older_adults::{
    Device, kemmler_2006, kemmler_2006_load, kemmler_2006_reps, osteopenia_2024, osteopenia_2024_load,
    osteopenia_2024_reps,
};
pub use options::{
    BANYARD_2017_CV, EstimateOptions, GRGIC_2020_CV, MITTER_2022_REPETITION_SEM, PERSONAL_SLOPE_CV,
    TYPICAL_SLOPE,
};
pub use own_curve_fit::{CurvePrior, OwnCurve, own_curve};
pub use own_curve_form::{
    CurveForm, FIRST_REPETITION_SPREAD, FIRST_REPETITION_STEP, PRIOR_SLOPE_EXPONENTIAL, own_curve_load,
    own_curve_one_rm, own_curve_reps, own_slope,
};
pub use real_change::{
    BANYARD_2017_SEM, StrengthChange, smallest_real_change, strength_change, typical_error, worthwhile_change,
};
pub use reserve_error::{
    HACKETT_2018_FIRST_SET_ERROR, HALPERIN_2022_UNDER_CALL, REFALO_2024_RESERVE_ERROR,
    RESERVE_ERROR_PER_REPETITION, RESERVE_HABIT_SPREAD, ReserveError, zourdos_2021_reserve_error,
};
pub use reynolds::{
    PressLift, reynolds_2006, reynolds_2006_five_rm, reynolds_2006_five_rm_load, reynolds_2006_load,
    reynolds_2006_reps,
};
pub use two_sets::{brzycki_2000, brzycki_2000_load, brzycki_2000_reps};
pub use velocity_general::{
    BenchLift, MeanVelocity, gonzalez_badillo_2010, gonzalez_badillo_2010_velocity, sanchez_medina_2014,
    sanchez_medina_2014_velocity, sanchez_medina_2017, sanchez_medina_2017_velocity,
};
pub use velocity_line::{
    BANYARD_2017_VELOCITY_ERROR, LoadVelocity, MaximumVelocity, VelocityLift, VelocityProfile,
    garcia_ramos_2018, velocity_at_one_rm, velocity_loss, velocity_profile,
};

pub(crate) static DECLARED: crate::source::Declarations = &[
    classic::DECLARED,
    cummings_finn::DECLARED,
    older_adults::DECLARED,
    reynolds::DECLARED,
    abadie::DECLARED,
    kravitz::DECLARED,
    two_sets::DECLARED,
    chart::DECLARED,
    critical_load_fit::DECLARED,
    critical_load::DECLARED,
    effort::DECLARED,
    grid::DECLARED,
    options::DECLARED,
    reserve_error::DECLARED,
    new_to_lift::DECLARED,
    doubts::DECLARED,
    from_sets::DECLARED,
    own_curve_fit::DECLARED,
    own_curve_form::DECLARED,
    velocity_line::DECLARED,
    velocity_general::DECLARED,
    real_change::DECLARED,
];
