//! What a set says about strength, and what load asks for a given effort.
//!
//! Uses `quantity`, `source`, `numeric`, `statistics`. Takes its own plain set evidence; knows no log.

mod classic;
mod curve;
mod effort;
mod equation;
mod older_adults;

pub use classic::*;
pub use effort::{
    ExpectedEffort, FractionBand, GridCell, GridRow, HALPERIN_2022_UNDER_CALL, ReserveBias, effort_for,
    effort_grid, fraction_for, fraction_for_rpe, load_for, reps_for, reps_to_failure,
};
pub use equation::Equation;
pub use older_adults::{
    Device, kemmler_2006, kemmler_2006_load, kemmler_2006_reps, osteopenia_2024, osteopenia_2024_load,
    osteopenia_2024_reps,
};

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[
    classic::epley::ROWS,
    classic::brzycki::ROWS,
    classic::brzycki_decimal::ROWS,
    classic::lander::ROWS,
    classic::lombardi::ROWS,
    classic::mayhew::ROWS,
    classic::oconner::ROWS,
    classic::wathan::ROWS,
    classic::brown::ROWS,
    classic::adams::ROWS,
    classic::berger::ROWS,
    classic::cummings_finn::ROWS,
    older_adults::ROWS,
    effort::ROWS,
];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[
    classic::epley::ENTRIES,
    classic::brzycki::ENTRIES,
    classic::brzycki_decimal::ENTRIES,
    classic::lander::ENTRIES,
    classic::lombardi::ENTRIES,
    classic::mayhew::ENTRIES,
    classic::oconner::ENTRIES,
    classic::wathan::ENTRIES,
    classic::brown::ENTRIES,
    classic::adams::ENTRIES,
    classic::berger::ENTRIES,
    classic::cummings_finn::ENTRIES,
    older_adults::ENTRIES,
    effort::ENTRIES,
];
