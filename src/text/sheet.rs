//! A whole session in sentences, in the one order that is allowed: a stop comes before everything else.

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::capital;
use super::stop::cautions_beside;
use super::words::Words;
use crate::caution::Caution;
use crate::prescription::{LiftToday, SessionPlan, Verdict};
use crate::progression::MoveOutlook;
use crate::quantity::Name;
use crate::reason::Reason;

/// A session in sentences. The fields stand in the order in which they are to be shown, and so does [`fmt::Display`]
/// print them.
///
/// In a session with a stop nothing is said of good results, and a clinician is named once.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Sheet {
    /// Every stop: the sign, what to do at once, then the clinician. Empty where nothing is stopped.
    pub stop: Vec<String>,
    /// The day and how it compares with the lifter's usual.
    pub day: String,
    /// The lifts in the order of the plan.
    pub lifts: Vec<LiftSheet>,
    /// What to mind in all of it.
    pub mind: Vec<String>,
}

/// One lift of a session in sentences, in the order in which they are to be shown.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LiftSheet {
    /// Id of the lift.
    pub lift: Name,
    /// Name, place, verdict, load, sets.
    pub line: String,
    /// How the load is made.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub loading: Option<String>,
    /// The warm-up sets.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub warm_up: Option<String>,
    /// Why it is so today.
    pub why: Vec<String>,
    /// The one verdict about a step; absent beside a stop.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub step: Option<String>,
    /// What stands against a step; empty where one is on offer.
    pub against: Vec<String>,
    /// What the gate still misses.
    pub missing: Vec<String>,
    /// What a step needs: who does what.
    pub changes: Vec<String>,
    /// What to mind in this lift.
    pub mind: Vec<String>,
}

/// Every reason that stands against a step; none where one is on offer.
pub(super) fn against(lift: &LiftToday) -> &[Reason] {
    match &lift.outlook {
        MoveOutlook::OnOffer { .. } => &[],
        MoveOutlook::Blocked { by, .. } => by,
    }
}

impl Words<'_> {
    /// A whole session in sentences: a stop first, then the lifts, then what to mind.
    #[must_use]
    pub fn session(&self, session: &SessionPlan) -> Sheet {
        let stop = self.session_stops(session);
        let stopped = !stop.is_empty();
        let heading =
            self.say("line.day", &[("day", self.day(session.today)), ("class", self.day_class(session.day))]);
        let lifts =
            session.lifts.iter().map(|lift| self.lift_sheet(lift, stopped, &session.cautions)).collect();
        let mind = cautions_beside(&session.cautions, stopped).map(|caution| self.caution(caution)).collect();
        Sheet { stop, day: heading, lifts, mind }
    }

    fn lift_sheet(&self, lift: &LiftToday, stopped: bool, of_session: &[Caution]) -> LiftSheet {
        let name = capital(self.lift_name(&lift.lift));
        let halted = lift.verdict == Verdict::Stop;
        let mind: Vec<Caution> = cautions_beside(&lift.cautions, stopped)
            .filter(|caution| !of_session.contains(caution))
            .collect();
        let by = if halted { &[] } else { against(lift) };
        let open = !halted && !by.is_empty();
        LiftSheet {
            lift: lift.lift.clone(),
            line: if halted {
                self.say("stop.heading", &[("lift", name)])
            } else {
                capital(&self.lift_line(lift))
            },
            loading: self.loading(lift).filter(|_| !halted),
            warm_up: self.warm_up(lift).filter(|_| !halted),
            why: self.why(lift, stopped),
            step: (!halted).then(|| self.step_beside(lift, stopped)),
            against: by.iter().map(|reason| self.reason_for(lift, reason)).collect(),
            missing: lift.gate.missing.iter().filter(|_| open).map(|each| self.missing(each)).collect(),
            changes: if open { self.changes(lift) } else { Vec::new() },
            mind: mind.into_iter().map(|caution| self.caution(caution)).collect(),
        }
    }
}

impl fmt::Display for Sheet {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for line in &self.stop {
            writeln!(out, "{line}")?;
        }
        writeln!(out, "{}", self.day)?;
        for lift in &self.lifts {
            write!(out, "\n{lift}")?;
        }
        if !self.mind.is_empty() {
            writeln!(out)?;
        }
        self.mind.iter().try_for_each(|line| writeln!(out, "{line}"))
    }
}

impl Sheet {
    /// Every line in its order, what the gate misses told as that.
    pub(super) fn lines(&self, words: &Words<'_>) -> Vec<String> {
        let mut lines = self.stop.clone();
        lines.push(self.day.clone());
        for lift in &self.lifts {
            lines.push(lift.line.clone());
            lines.extend(lift.details(words));
        }
        lines.extend(self.mind.iter().cloned());
        lines
    }
}

impl LiftSheet {
    /// What stands below its line, in its order.
    fn details(&self, words: &Words<'_>) -> Vec<String> {
        let before = self.loading.iter().chain(&self.warm_up).chain(&self.why).chain(&self.step);
        let against = self.against.iter().filter(|line| !self.why.contains(line));
        let mut lines: Vec<String> = before.chain(against).cloned().collect();
        lines.extend(self.missing.iter().map(|line| words.say("line.gate", &[("missing", line.clone())])));
        lines.extend(self.changes.iter().chain(&self.mind).cloned());
        lines
    }
}

/// What the gate misses is called so in English; the lines of [`Show`](super::Show) follow the translation.
impl fmt::Display for LiftSheet {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(out, "{}", self.line)?;
        self.details(&Words::plain()).iter().try_for_each(|line| writeln!(out, "  {line}"))
    }
}
