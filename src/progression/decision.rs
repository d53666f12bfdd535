//! The decision for one lift on one day, with everything that made it.

use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;

use super::loadable::Loadable;
use super::moves::next_tuple;
use super::state::{State, TrackState};
use super::status::Status;
use crate::error::{Code, Error};
use crate::gate::{GateState, Outcome};
use crate::quantity::{Day, Mass, Name};
use crate::reason::Reason;
use crate::record::Tuple;

/// Whether the lift may move up, and if not, everything that stands in the way.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
pub enum MoveOutlook {
    /// One move waits to be taken.
    OnOffer {
        /// To this place.
        to: Tuple,
    },
    /// Blocked, by all of these.
    Blocked {
        /// Every reason.
        by: Vec<Reason>,
        /// The place it would move to, where there is one.
        #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
        to: Option<Tuple>,
    },
}

/// The decision for one lift on one day.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Decision {
    /// Which lift.
    pub track: Name,
    /// Its state on that day.
    pub status: Status,
    /// The granted place on that day.
    pub tuple: Tuple,
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
    /// What the equipment of a lift can load.
    pub(crate) fn loadable(&self, at: usize) -> Arc<Loadable> {
        if let Some(loadable) = self.loadables.get(at) {
            return Arc::clone(loadable);
        }
        let parameters = self.parameters.as_deref();
        let body = self.body_mass.map(|(_, mass)| mass);
        let made = parameters
            .and_then(|all| all.tracks.get(at).and_then(|track| Loadable::of(track, all, body).ok()));
        Arc::new(made.unwrap_or_default())
    }

    /// The highest load allowed for a lift as its state stands: grant or override, under every ceiling.
    pub(crate) fn limit(&self, at: usize, on: Day) -> Mass {
        let Some(track) = self.tracks.get(at) else { return Mass::ZERO };
        let overruled = track.overruled.as_ref().filter(|overruled| overruled.expires >= on);
        let mut limit = overruled.map_or(track.tuple.load, |overruled| overruled.load);
        let ceiling = self.parameters.as_ref().and_then(|parameters| parameters.tracks.get(at)?.ceiling);
        for cap in [ceiling, self.clearance_load(at)].into_iter().flatten() {
            limit = limit.min(cap);
        }
        limit
    }

    /// The state as time alone has changed it by that day: offers and overrides that ran out, breaks that ask
    /// for a lower start. Time never raises anything.
    #[must_use]
    pub(crate) fn as_of(&self, today: Day) -> State {
        let mut state = self.clone();
        state.expire(today);
        for at in 0..state.tracks.len() {
            let returned = state.returned(at, today, &state.loadable(at));
            if let (Some(returned), Some(track)) = (returned, state.tracks.get_mut(at)) {
                *track = returned;
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
        Ok((0..then.tracks.len()).filter_map(|at| then.decision(at, self, today)).collect())
    }

    pub(crate) fn check_today(&self, today: Day) -> Result<(), Error> {
        self.check_if_read()?;
        match self.last {
            Some((last, _)) if today < last => {
                let rule = crate::error::Allowed::Rule(alloc::format!("{last} or later").into());
                return Err(Error::new(Code::BeforeLastEvent, "today", alloc::format!("{today}"), rule));
            }
            _ => {}
        }
        self.parameters.as_ref().map(drop).ok_or_else(|| Error::plain(Code::NoParameters, "parameters"))
    }

    /// One decision from a state as of the day; `before` is the state as the last event left it.
    fn decision(&self, at: usize, before: &State, today: Day) -> Option<Decision> {
        let parameters = self.parameters.as_deref()?;
        let (set, track) = (parameters.tracks.get(at)?, self.tracks.get(at)?);
        let limit = self.limit(at, today);
        let to = next_tuple(set, parameters.policy.rung_load, track.tuple, &self.loadable(at));
        let by = self.blockers(at, None, today);
        let outlook = match (&to, by.is_empty()) {
            (Ok(to), true) => MoveOutlook::OnOffer { to: *to },
            _ => MoveOutlook::Blocked { by, to: to.ok() },
        };
        let mut reasons = self.stop_reasons(at);
        reasons.extend(self.break_reasons(at, before, today));
        reasons.extend(self.state_reasons(at, today));
        Some(Decision {
            track: set.name.clone(),
            status: track.status,
            tuple: Tuple { range: self.range_allowed(at, track.tuple.range).unwrap_or(0), ..track.tuple },
            limit,
            outlook,
            gate: self.gate_state(at, today),
            reasons,
            evidence: track.sittings.iter().map(|sitting| sitting.session).collect(),
            expires: self.offer_end(at).and_then(|end| end.plus(1).ok()),
            version: self.version.clone(),
            parameters: self.digest.clone(),
        })
    }

    fn stop_reasons(&self, at: usize) -> Vec<Reason> {
        let mut reasons = Vec::new();
        if let Some(stop) = self.stop {
            reasons.push(Reason::SymptomStop { since: stop.since });
        }
        if let Some((region, stop)) = self.stopped_region(at) {
            reasons.push(Reason::PainStop { region: region.clone(), since: stop.since });
        }
        reasons
    }

    fn break_reasons(&self, at: usize, before: &State, today: Day) -> Vec<Reason> {
        let (Some(now), Some(then)) = (self.tracks.get(at), before.tracks.get(at)) else { return Vec::new() };
        let mut reasons = Vec::new();
        let gap = before.gap(at, today).and_then(|gap| u16::try_from(gap).ok());
        if let (true, Some(gap)) =
            (now.since == today && now.status == Status::Returning && then.since != today, gap)
        {
            reasons.push(Reason::Layoff { gap, row: now.return_row, load: now.tuple.load });
        }
        if now.half_sessions > 0 {
            reasons.push(Reason::HalfSets { sessions: now.half_sessions });
        }
        reasons
    }

    fn state_reasons(&self, at: usize, today: Day) -> Vec<Reason> {
        let Some(track) = self.tracks.get(at) else { return Vec::new() };
        let mut reasons = Vec::new();
        reasons.extend(track.state_reason(self.offer_end(at)));
        let band = track.not_below.filter(|_| track.status == Status::Maintaining);
        reasons.extend(band.map(|not_below| Reason::MaintainingBand { not_below }));
        reasons.extend(track.stepped_from.map(|from| Reason::SteppedBack { from }));
        if let Some(overruled) = track.overruled.as_ref().filter(|overruled| overruled.expires >= today) {
            let (load, who, until) = (overruled.load, overruled.who.clone(), Some(overruled.expires));
            reasons.push(Reason::OverrideInForce { load, who, until });
        }
        let ceiling = self.parameters.as_ref().and_then(|parameters| parameters.tracks.get(at)?.ceiling);
        let granted = track.overruled.as_ref().map_or(track.tuple.load, |overruled| overruled.load);
        if let Some(load) = ceiling.filter(|ceiling| *ceiling < granted) {
            reasons.push(Reason::Ceiling { load });
        }
        if let Some(load) = self.clearance_load(at).filter(|load| *load < granted) {
            reasons.push(Reason::ClearanceLimit { load });
        }
        if self.range_allowed(at, track.tuple.range) != Some(track.tuple.range) {
            reasons.push(Reason::ClearanceRange);
        }
        if track.partner_pain {
            reasons.push(Reason::PairPain);
        }
        if self.pair_review(at, today) {
            reasons.push(Reason::PairReview);
        }
        reasons.extend(self.review_reasons(at, today));
        reasons.extend(self.probe(at));
        reasons.extend(track.last_session_reason());
        if let Some(event) = self.refused.filter(|event| self.last.is_some_and(|(_, last)| last == *event)) {
            reasons.push(Reason::MoveRefused { event });
        }
        reasons
    }

    /// Agreed levels of pain that are due to be looked at again, and limits that nobody has set.
    fn review_reasons(&self, at: usize, today: Day) -> Vec<Reason> {
        let days = self.parameters.as_ref().map_or(u16::MAX, |all| all.policy.usual_review_days);
        let regions = self.regions.iter().filter(|region| self.regions_of(at).contains(&region.name));
        let due = regions.filter_map(|region| {
            let agreed = region.review_due(today, days)?;
            Some(Reason::UsualPainReview { region: region.name.clone(), agreed })
        });
        let silent = (!self.limits_on_record(at)).then_some(Reason::NoLimitsOnRecord);
        due.chain(silent).collect()
    }
}

impl TrackState {
    /// Why the last session at this place says nothing about the gate, where it does not.
    fn last_session_reason(&self) -> Option<Reason> {
        let last = self.sittings.last().filter(|last| last.outcome == Outcome::NotScored)?;
        Some(if last.at_grant { Reason::NotScored } else { Reason::NotAtGrant })
    }

    fn state_reason(&self, offer_end: Option<Day>) -> Option<Reason> {
        Some(match self.status {
            Status::Learning => Reason::LearningNotDone { done: self.learned.0, needed: self.learned.1 },
            Status::Holding => Reason::Holding { sessions: self.here.0 },
            Status::ReadyToAdvance => Reason::MoveOnOffer { until: offer_end? },
            Status::Consolidating => Reason::Consolidating,
            Status::SteppingBack => Reason::SteppingBack,
            Status::Resting => Reason::Resting,
            Status::Returning => Reason::Returning { at_most: self.return_cap.unwrap_or(self.tuple.load) },
            Status::Maintaining => Reason::Maintaining,
            // A stop names itself.
            Status::StoppedRefer => return None,
            Status::Retired => Reason::Retired,
        })
    }
}
