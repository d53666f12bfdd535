//! The training log as events, and the parameters and the plan as plain data.
//!
//! Uses error, value, source, quantity, caution, reason, loading, condition, gate. Everything here is data that
//! a host keeps; nothing here decides. Each type checks itself when it is read, so that the fold need not.

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
pub use health::{
    Ask, Clearance, ClearanceLimits, ClearanceStatus, DayReport, NextDayReport, PainAnswer, PainFeature,
    StopSign, SymptomReport, UsualPain,
};
pub use log::{FORMAT, Lifter, Log, MAX_EVENTS, VERSION};
pub use parameters::{LayoffRow, Pair, Parameters, Policy};
pub use plan::{LiftPlan, PLAN_FORMAT, PLAN_VERSION, Plan};
pub use session::{Effort, LiftSession, Session, Setup, WorkSet};
pub use track::{Body, Dimension, StepPolicy, Tempo, TrackParameters, Tuple};

pub(crate) static ROWS: &[&[&crate::source::Row]] = &[];
pub(crate) static ENTRIES: &[&[&crate::source::Entry]] = &[];
