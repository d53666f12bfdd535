//! The decision for one lift on one day, with everything that made it.

use alloc::string::String;
use alloc::vec::Vec;

use super::guard::Situation;
use super::lift::Now;
use super::sitting::Sitting;
use super::state::State;
use super::status::{Purpose, Status};
use super::view::View;
use crate::error::{Allowed, Code, Error};
use crate::gate::{GateState, Outcome};
use crate::quantity::{Day, Mass, Name};
use crate::reason::{Reason, Restart};
use crate::record::{Grant, Work};

/// Whether the lift may move up, and if not, everything that stands in the way.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
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

impl MoveOutlook {
    /// Where the step is not for today, no reason says that one is on offer: the lift holds, after so many sessions. Beside an
    /// offer nothing is counted.
    pub(crate) fn tell(&self, reasons: &mut Vec<Reason>, sessions: u16) {
        let offers = |reason: &&mut Reason| matches!(reason, Reason::MoveOnOffer { .. });
        match self {
            MoveOutlook::Blocked { .. } => {
                reasons.iter_mut().filter(offers).for_each(|reason| *reason = Reason::Holding { sessions });
            }
            MoveOutlook::OnOffer { .. } => {
                reasons.retain(|reason| !matches!(reason, Reason::CountedAnew { .. }));
            }
        }
    }
}

/// The decision for one lift on one day.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Decision {
    /// Every stop of the lifter, the gravest first, whatever lift it is of; empty where nothing is stopped. Shown before anything
    /// else.
    pub stops: Vec<Reason>,
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
    /// The state as time alone has changed it by that day: offers and overrides that ran out, illnesses noted in advance
    /// that began, breaks that ask for a lower start. Time never raises anything.
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
        reasons.extend(super::stop::refused(view));
        reasons.extend(break_reasons(view));
        reasons.extend(state_reasons(view));
        outlook.tell(&mut reasons, now.here.0);
        let (version, parameters) = self.names();
        Decision {
            stops: self.stops(),
            lift: view.lift.set.id.clone(),
            status: now.status.clone(),
            grant: Grant { place: view.place(), ..now.grant },
            limit: view.limit(),
            outlook,
            gate: super::offer::gate_state(view),
            reasons,
            evidence: now.sittings.iter().map(|sitting| sitting.session).collect(),
            expires: super::waiting::takeable_until(view).and_then(|end| end.plus(1).ok()),
            version,
            parameters,
        }
    }
}

/// The break that a lift comes back from, until the return is over.
fn break_reasons(view: &View<'_>) -> Vec<Reason> {
    let (now, mut reasons) = (&view.lift.now, Vec::new());
    // A planned break on the way back interrupts it and ends nothing of it.
    if let Status::Returning { way, .. } | Status::Resting { way: Some(way) } = &now.status {
        let load = now.grant.load();
        if way.gap > 0 {
            reasons.push(match way.held {
                true => Reason::HeldLower { days: way.gap, row: way.row, load },
                false => Reason::Layoff { gap: way.gap, row: way.row, load },
            });
        }
        reasons.extend(way.stepped_from.map(|from| Reason::SteppedBack { from }));
        reasons.extend(way.reopened.map(|on| Reason::StopLifted { on }));
        if way.after_illness {
            reasons.push(Reason::AfterIllness);
        }
        if way.gap > 0 && view.shared.lifter.oldest_on(view.on).is_none() {
            reasons.push(Reason::AgeUnknown);
        }
    }
    if now.half_sessions > 0 {
        // The first row is over after one pass, its sets are not.
        let told = reasons.iter().any(|reason| matches!(reason, Reason::Layoff { .. }));
        let after = now.half_after.filter(|_| !told);
        reasons.extend(after.map(|(gap, row)| Reason::Layoff { gap, row, load: now.grant.load() }));
        reasons.push(Reason::HalfSets { sessions: now.half_sessions });
    }
    reasons
}

fn state_reasons(view: &View<'_>) -> Vec<Reason> {
    let (now, mut reasons) = (&view.lift.now, Vec::new());
    reasons.extend(state_reason(view, super::waiting::takeable_until(view)));
    reasons.extend(now.begun_anew.then(|| Reason::OtherImplement {
        implement: view.lift.set.implement.clone(),
        load: now.grant.load(),
    }));
    reasons.extend(counted_anew(now));
    reasons.extend(kept_reasons(now));
    if let Status::SteppingBack { from: Some(from), .. } = now.status {
        reasons.push(Reason::SteppedBack { from });
    }
    reasons.extend(limit_reasons(view));
    reasons.extend(super::pair::strict_hurt(view));
    if super::pair::review_due(view) {
        reasons.push(Reason::PairReview);
    }
    reasons.extend(review_reasons(view));
    reasons.extend(super::probe::due(view));
    reasons.extend(last_session_reason(now));
    if let Some(since) = now.setup.as_ref().and_then(|seen| seen.changed).filter(|_| now.setup_is_news()) {
        reasons.push(Reason::SetupChanged { since });
    }
    reasons.extend(pins_moved(now));
    reasons.extend(now.refused.map(|event| match now.override_refused {
        true => Reason::OverrideRefused { event },
        false => Reason::MoveRefused { event },
    }));
    reasons.extend(now.override_past.map(|last_day| Reason::OverridePast { last_day }));
    reasons
}

/// Since when the sessions that a holding lift counts are counted, where that is not since it stands there.
fn counted_anew(now: &Now) -> Option<Reason> {
    let (since, why) = now.restarted?;
    // A setup that has just changed says so itself.
    let said = why == Restart::SetupChanged && now.setup_is_news();
    let counts = matches!(now.status, Status::Holding | Status::ReadyToAdvance { .. });
    (counts && !said).then_some(Reason::CountedAnew { since, why })
}

/// That a lift is kept on purpose, from the start, and its band.
fn kept_reasons(now: &Now) -> Vec<Reason> {
    let Purpose::Maintain { not_below } = now.purpose else { return Vec::new() };
    let mut reasons = Vec::new();
    if now.status != Status::Maintaining && now.status.is_trained() {
        reasons.push(Reason::Maintaining);
    }
    reasons.extend(not_below.filter(|_| now.status == Status::Maintaining).map(|not_below| {
        match now.below_band {
            Some(load) => Reason::BelowBand { load, not_below },
            None => Reason::MaintainingBand { not_below },
        }
    }));
    reasons
}

/// Where the safety pins stood in the last session, if that was elsewhere than before.
fn pins_moved(now: &Now) -> Option<Reason> {
    let seen = now.setup.as_ref()?;
    let (on, from) = seen.pins_moved.filter(|(on, _)| Some(*on) == now.last_session)?;
    Some(Reason::PinsMoved { from_mm: from.mm(), to_mm: seen.pins?.mm(), on })
}

/// What the coach and a clearance make of the granted load and range.
fn limit_reasons(view: &View<'_>) -> Vec<Reason> {
    let (now, mut reasons) = (&view.lift.now, Vec::new());
    reasons.extend(view.override_in_force());
    if let Some(load) = view.overruled().filter(|load| view.override_says_nothing(*load)) {
        reasons.push(Reason::OverrideSuspended { load });
    }
    let ended = now.override_ended.clone();
    reasons.extend(ended.map(|(load, by, place)| Reason::OverrideEnded { load, by, place }));
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
    match view.lift.loadable.off_at(view.place(), view.limit()) {
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
        if region.persists(policy, view.on) {
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
    let unscored = |last: &&Sitting| last.outcome == Outcome::NotScored && !last.asked_first;
    let last = now.sittings.last().filter(unscored)?;
    Some(if last.miss_unplaced { Reason::MissNotPlaced } else { Reason::NotScored })
}

fn state_reason(view: &View<'_>, offer_end: Option<Day>) -> Option<Reason> {
    let now = &view.lift.now;
    Some(match &now.status {
        Status::Learning => {
            Reason::LearningNotDone { done: now.calibration.done, needed: now.calibration.needed }
        }
        Status::Holding => Reason::Holding { sessions: now.here.0 },
        Status::ReadyToAdvance { .. } => Reason::MoveOnOffer { until: offer_end? },
        Status::Consolidating => Reason::Consolidating,
        Status::SteppingBack { .. } if now.nothing_easier => match now.grant.work {
            Work { sets: 1, reps: 1, .. } => Reason::LeastThereIs,
            _ => Reason::HalfForLighter,
        },
        Status::SteppingBack { .. } => Reason::SteppingBack,
        Status::Resting { .. } if now.purpose != Purpose::Rest && !view.is_away() => Reason::AfterBreak,
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
