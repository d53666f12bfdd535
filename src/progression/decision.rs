//! The decision for one lift on one day, with everything that made it.

use alloc::string::String;
use alloc::vec::Vec;

use super::guard::Situation;
use super::lift::Now;
use super::state::State;
use super::status::{Purpose, Status};
use super::view::View;
use crate::error::{Allowed, Code, Error};
use crate::gate::{GateState, Outcome};
use crate::quantity::{Day, Mass, Name};
use crate::reason::Reason;
use crate::record::Grant;

/// Whether the lift may move up, and if not, everything that stands in the way.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum MoveOutlook {
    /// One move waits to be taken.
    OnOffer {
        /// To this place and work.
        to: Grant,
    },
    /// Blocked, by all of these.
    Blocked {
        /// Every reason.
        by: Vec<Reason>,
        /// What it would move to, where there is something.
        #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
        to: Option<Grant>,
    },
}

/// The decision for one lift on one day.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Decision {
    /// Id of the lift.
    pub lift: Name,
    /// Its state on that day.
    pub status: Status,
    /// The granted place and work on that day.
    pub grant: Grant,
    /// The highest load allowed on that day. Nothing later raises it.
    pub limit: Mass,
    /// Whether it may move up.
    pub outlook: MoveOutlook,
    /// What the gate has and what it misses.
    pub gate: GateState,
    /// Why the grant is what it is.
    pub reasons: Vec<Reason>,
    /// Numbers of the events that the gate counts.
    pub evidence: Vec<u32>,
    /// First day on which the offer is gone, where there is one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub expires: Option<Day>,
    /// Library version.
    pub version: String,
    /// Digest of the parameters in force.
    pub parameters: String,
}

impl State {
    /// The state as time alone has changed it by that day: offers and overrides that ran out, breaks that ask
    /// for a lower start. Time never raises anything.
    #[must_use]
    pub(crate) fn as_of(&self, today: Day) -> State {
        let mut state = self.clone();
        state.expire(today);
        let back: Vec<Option<Now>> = state.views(today).map(|view| super::layoff::returned(&view)).collect();
        for (lift, back) in state.lifts.iter_mut().zip(back) {
            if let Some(back) = back {
                lift.now = back;
            }
        }
        state
    }

    /// The decisions for every lift on that day.
    ///
    /// # Errors
    /// `before_last_event`; `no_parameters`.
    pub fn decide(&self, today: Day) -> Result<Vec<Decision>, Error> {
        self.check_today(today)?;
        let then = self.as_of(today);
        Ok(then.views(today).map(|view| then.decision(&view)).collect())
    }

    pub(crate) fn check_today(&self, today: Day) -> Result<(), Error> {
        match self.last {
            Some((last, _)) if today < last => {
                let rule = Allowed::Rule(alloc::format!("{last} or later").into());
                return Err(Error::new(Code::BeforeLastEvent, "today", alloc::format!("{today}"), rule));
            }
            _ => {}
        }
        self.declared().map(drop)
    }

    /// One decision from a state as of the day.
    pub(crate) fn decision(&self, view: &View<'_>) -> Decision {
        let now = &view.lift.now;
        let to = view.next_grant();
        #[cfg(test)]
        let without = self.taken_out;
        #[cfg(not(test))]
        let without = None;
        let mut by = Situation::new(*view, None).blockers(without);
        if by.is_empty() && !now.status.is_ready() {
            by.push(Reason::GateNotOpen);
        }
        let outlook = match (&to, by.is_empty()) {
            (Ok(to), true) => MoveOutlook::OnOffer { to: *to },
            _ => MoveOutlook::Blocked { by, to: to.ok() },
        };
        let mut reasons = super::stop::reasons(view);
        reasons.extend(break_reasons(now));
        reasons.extend(state_reasons(view));
        let (version, parameters) = self.names();
        Decision {
            lift: view.lift.set.id.clone(),
            status: now.status.clone(),
            grant: Grant { place: view.place(), ..now.grant },
            limit: view.limit(),
            outlook,
            gate: super::offer::gate_state(view),
            reasons,
            evidence: now.sittings.iter().map(|sitting| sitting.session).collect(),
            expires: super::waiting::offer_end(view).and_then(|end| end.plus(1).ok()),
            version,
            parameters,
        }
    }
}

/// The break that a lift comes back from, until the return is over.
fn break_reasons(now: &Now) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if let Status::Returning { way, .. } = &now.status
        && way.gap > 0
    {
        reasons.push(Reason::Layoff { gap: way.gap, row: way.row, load: now.grant.load() });
    }
    if now.half_sessions > 0 {
        reasons.push(Reason::HalfSets { sessions: now.half_sessions });
    }
    reasons
}

fn state_reasons(view: &View<'_>) -> Vec<Reason> {
    let (now, mut reasons) = (&view.lift.now, Vec::new());
    reasons.extend(state_reason(now, super::waiting::offer_end(view)));
    if let (Purpose::Maintain { not_below: Some(not_below) }, Status::Maintaining) =
        (now.purpose, &now.status)
    {
        reasons.push(Reason::MaintainingBand { not_below });
    }
    if let Status::SteppingBack { from: Some(from), .. } = now.status {
        reasons.push(Reason::SteppedBack { from });
    }
    reasons.extend(limit_reasons(view));
    if now.partner_pain {
        reasons.push(Reason::PairPain);
    }
    if super::pair::review_due(view) {
        reasons.push(Reason::PairReview);
    }
    reasons.extend(review_reasons(view));
    reasons.extend(super::probe::due(view));
    reasons.extend(last_session_reason(now));
    if let Some(since) = now.setup.as_ref().and_then(|seen| seen.changed).filter(|_| now.setup_is_news()) {
        reasons.push(Reason::SetupChanged { since });
    }
    reasons.extend(now.refused.map(|event| Reason::MoveRefused { event }));
    reasons
}

/// What the coach and a clearance make of the granted load and range.
fn limit_reasons(view: &View<'_>) -> Vec<Reason> {
    let (now, mut reasons) = (&view.lift.now, Vec::new());
    if let Some(given) = now.overruled.as_ref().filter(|given| given.expires >= view.on) {
        let (load, who, until) = (given.load, given.who.clone(), Some(given.expires));
        reasons.push(Reason::OverrideInForce { load, who, until });
        if view.override_waits() {
            reasons.push(Reason::OverrideSuspended { load });
        }
    }
    let allowed = view.allowed();
    if let Some(load) = view.lift.set.ceiling.filter(|ceiling| *ceiling < allowed) {
        reasons.push(Reason::Ceiling { load });
    }
    if let Some(load) = view.clearance_load().filter(|load| *load < allowed) {
        reasons.push(Reason::ClearanceLimit { load });
    }
    let range = now.grant.place.range;
    if view.range_allowed(range) != Some(range) {
        reasons.push(Reason::ClearanceRange);
    }
    match view.lift.loadable.off_by_mm(view.place()) {
        Some(mm) if mm != 0.0 => reasons.push(Reason::HeightOff { mm }),
        Some(_) => {}
        None => reasons.push(Reason::HeightUnknown),
    }
    reasons
}

/// Agreed levels of pain that are due to be looked at again, pain that stays, and limits that nobody has set.
fn review_reasons(view: &View<'_>) -> Vec<Reason> {
    let policy = view.policy();
    let mut reasons = Vec::new();
    for region in view.regions() {
        if let Some(agreed) = region.review_due(view.on, policy.usual_review_days) {
            reasons.push(Reason::UsualPainReview { region: region.id.clone(), agreed });
        }
        if region.persists(policy.pain_block_from) {
            reasons.push(Reason::PainPersists { region: region.id.clone() });
        }
    }
    if !view.limits_on_record() {
        reasons.push(Reason::NoLimitsOnRecord);
    }
    reasons
}

/// Why the last session says nothing about the gate, where it does not.
fn last_session_reason(now: &Now) -> Option<Reason> {
    if let Some(short) = now.short {
        return Some(Reason::NotAtGrant { short });
    }
    now.sittings.last().filter(|last| last.outcome == Outcome::NotScored).map(|_| Reason::NotScored)
}

fn state_reason(now: &Now, offer_end: Option<Day>) -> Option<Reason> {
    Some(match &now.status {
        Status::Learning => {
            Reason::LearningNotDone { done: now.calibration.done, needed: now.calibration.needed }
        }
        Status::Holding => Reason::Holding { sessions: now.here.0 },
        Status::ReadyToAdvance { .. } => Reason::MoveOnOffer { until: offer_end? },
        Status::Consolidating => Reason::Consolidating,
        Status::SteppingBack { .. } => Reason::SteppingBack,
        Status::Resting { .. } => Reason::Resting,
        Status::Returning { way, .. } => Reason::Returning { at_most: way.cap },
        Status::Maintaining => Reason::Maintaining,
        // A stop names itself.
        Status::StoppedRefer { .. } => return None,
        Status::Retired => Reason::Retired,
    })
}

impl Now {
    /// Whether the last session is the one in which the setup changed.
    fn setup_is_news(&self) -> bool {
        let changed = self.setup.as_ref().and_then(|seen| seen.changed);
        changed.is_some() && changed == self.last_session
    }
}
