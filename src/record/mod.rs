//! The training log as events, and the parameters and the plan as plain data.
//!
//! Uses error, numeric, value, source, quantity, loading, condition, gate. Everything here is data that a host keeps;
//! nothing here decides. Each type checks itself when it is read, so that the fold need not.
//!
//! | what a host keeps | type |
//! |---|---|
//! | one lifter's log | [`Log`], events [`Event`] of the kinds [`EventKind`] |
//! | which lifts, on what kit, by which rules | [`Parameters`], a lift [`TrackParameters`], the numbers [`Policy`] |
//! | what is to be done next | [`Plan`] |
//! | what was done | [`Session`], [`WorkSet`]; how it felt: [`DayReport`], [`NextDayReport`] |
//!
//! [A first log](crate::guide::first_log) shows the smallest one and what its pieces mean.

mod correction;
mod event;
mod health;
mod log;
mod parameters;
mod plan;
mod session;
mod track;

pub use event::{
    Advance, BarChanged, Correction, Event, EventKind, FunctionTest, Layoff, LayoffReason, Measurement, Move,
    Override, Role, RoleSet, Rung, SessionMissed, SignOff, SignOffScope, UnknownEvent,
};
pub(crate) use health::MOST_LIMITS;
pub use health::{
    Ask, Clearance, ClearanceLimits, ClearanceStatus, DayReport, MarkerAnswer, NextDayReport, PainAnswer,
    PainFeature, StopSign, SymptomReport, UsualPain,
};
pub use log::{FORMAT, Lifter, Log, MAX_EVENTS, VERSION};
pub use parameters::{LayoffRow, Pair, Parameters, Policy};
pub use plan::{LiftPlan, PLAN_FORMAT, PLAN_VERSION, Plan};
pub(crate) use session::at_most;
pub use session::{Effort, LiftSession, Session, Setup, WorkSet};
pub use track::{Body, Dimension, StepPolicy, Tempo, TrackParameters, Tuple};

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[parameters::ROWS];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[parameters::ENTRIES];
