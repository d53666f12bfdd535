//! The training log as events, and the parameters and the plan as plain data.
//!
//! Uses error, numeric, value, source, quantity, loading, condition, gate. Everything here is data that a host keeps;
//! nothing here decides. Each type checks itself when it is read, so that the fold need not.
//!
//! | what a host keeps | type |
//! |---|---|
//! | one lifter's log | [`Log`], events [`Event`] of the kinds [`EventKind`] |
//! | which lifts, on what kit, by which rules | [`Parameters`], a lift [`LiftParameters`], the numbers [`Policy`] |
//! | what is to be done next | [`Plan`] |
//! | what was done | [`Session`], [`WorkSet`]; how it felt: [`DayReport`], [`NextDayReport`] |
//!
//! [A first log](crate::guide::first_log) shows the smallest one and what its pieces mean.

mod absence;
mod check;
mod coach;
mod correction;
mod day;
mod event;
mod health;
mod identity;
mod ladder;
mod lift;
mod log;
mod parameters;
mod place;
mod plan;
mod policy;
mod session;
mod set_rule;
mod without_health;
mod years;

pub use crate::quantity::Tempo;
pub use crate::sign::{Ask, StopSign};
pub use absence::{Layoff, LayoffReason, SessionMissed};
pub use coach::{
    Advance, BarChanged, EverydayTest, Measurement, Move, Override, Role, RoleSet, SignOff, SignOffScope,
};
pub(crate) use correction::Opened;
pub use day::{AskAnswered, DayReport, MarkerAnswer};
pub use event::{Correction, Event, EventKind, UnknownEvent};
pub(crate) use health::MOST_LIMITS;
pub use health::{
    Clearance, ClearanceLimits, ClearanceStatus, NextDayReport, PainAnswer, PainFeature, SymptomReport,
    UsualPain,
};
pub use identity::Region;
pub(crate) use identity::declared;
pub use ladder::Rung;
pub use lift::{Body, LiftParameters, StartsFrom};
pub use log::{AgeBand, FORMAT, Lifter, Log, MAX_EVENTS, VERSION};
pub(crate) use log::{Corrected, Effective};
pub use parameters::{MAX_LIFTS, MAX_REGIONS, Pair, Parameters};
pub use place::{Dimension, Grant, Place, StepPolicy, Work};
pub use plan::{LiftPlan, PLAN_FORMAT, PLAN_VERSION, Plan};
pub use policy::{LayoffRow, Policy};
pub use session::{ByTheBar, Effort, LiftSession, Session, Setup, WorkSet};
pub(crate) use session::{MOST_KIT, at_most};
pub use set_rule::SetRule;
pub use without_health::{HealthDetail, LeftOut, WithoutHealth};
pub use years::{LiftSwap, LoadToKeep, PlannedGap, Weighing, YearsAhead};

pub(crate) static DECLARED: crate::source::Declarations = &[policy::DECLARED];
