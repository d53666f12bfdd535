//! A session in sentences, and beside them one for everything in its plan, so that a host can pair each object with its
//! sentence.

use alloc::string::String;
use alloc::vec::Vec;

use super::session::status_beside;
use super::sheet::{Sheet, against};
use super::words::Words;
use crate::caution::Caution;
use crate::prescription::{LiftToday, SessionPlan};
use crate::quantity::Name;
use crate::reason::Reason;

/// A session in sentences. What is to be shown, and in which order, is the sheet: a stop first, and nothing twice. Every other
/// list has a sentence for each object of the list of that name in the [`SessionPlan`], in its order.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SaidSession {
    /// What is to be shown, in its order.
    pub sheet: Sheet,
    /// A sentence for each stop.
    pub stops: Vec<String>,
    /// A sentence for each caution.
    pub cautions: Vec<String>,
    /// The lifts in the order of the plan.
    pub lifts: Vec<SaidLift>,
}

/// A sentence for everything in the plan of one lift.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SaidLift {
    /// Id of the lift.
    pub lift: Name,
    /// Its name.
    pub name: String,
    /// The verdict in a word or two.
    pub verdict: String,
    /// The status in a few words; beside no step today none is called earned.
    pub status: String,
    /// A sentence for each reason.
    pub reasons: Vec<String>,
    /// The one verdict about a step.
    pub outlook: String,
    /// A sentence for each reason that stands against a step; empty where one is on offer.
    pub by: Vec<String>,
    /// What the gate misses, each as part of a sentence.
    pub missing: Vec<String>,
    /// A sentence for each thing that would change the answer.
    pub would_change: Vec<String>,
    /// A sentence for each caution.
    pub cautions: Vec<String>,
}

impl Words<'_> {
    /// A whole session in sentences, and beside them one for everything in its plan.
    #[must_use]
    pub fn said(&self, session: &SessionPlan) -> SaidSession {
        SaidSession {
            sheet: self.session(session),
            stops: session.stops.iter().map(|stop| self.reason(stop)).collect(),
            cautions: self.cautions(&session.cautions),
            lifts: session.lifts.iter().map(|lift| self.said_lift(lift)).collect(),
        }
    }

    fn said_lift(&self, lift: &LiftToday) -> SaidLift {
        let reasons = |all: &[Reason]| all.iter().map(|reason| self.reason_for(lift, reason)).collect();
        SaidLift {
            lift: lift.lift.clone(),
            name: self.lift_name(&lift.lift).into(),
            verdict: self.verdict(lift.verdict),
            status: self.status(status_beside(&lift.status, &lift.outlook)),
            reasons: reasons(&lift.reasons),
            outlook: self.step(lift),
            by: reasons(against(lift)),
            missing: lift.gate.missing.iter().map(|each| self.missing(each)).collect(),
            would_change: self.changes(lift),
            cautions: self.cautions(&lift.cautions),
        }
    }

    fn cautions(&self, cautions: &[Caution]) -> Vec<String> {
        cautions.iter().map(|caution| self.caution(*caution)).collect()
    }
}
