//! The gate of a lift, and the move that waits while it is open.

use alloc::vec::Vec;

use super::state::{Sitting, State};
use super::status::Status;
use crate::condition::DayClass;
use crate::gate::{GateFacts, GateState, NamedCondition, Outcome, SessionFact};
use crate::quantity::{Day, Name};

impl State {
    /// What the gate of a lift says on that day.
    pub(crate) fn gate_state(&self, at: usize, on: Day) -> GateState {
        let gate = self
            .parameters
            .as_ref()
            .and_then(|parameters| parameters.tracks.get(at))
            .map(|track| &track.gate);
        // Facts that contradict themselves open nothing.
        let fault = self.tracks.get(at).and_then(|track| track.fault.as_ref());
        gate.and_then(|gate| gate.check(&self.facts(at, fault, on)).ok()).unwrap_or_default()
    }

    /// Whether the gate of a lift is open on that day, and no more.
    pub(crate) fn gate_is_open(&self, at: usize, on: Day) -> bool {
        let set = self.parameters.as_ref().and_then(|parameters| parameters.tracks.get(at));
        set.is_some_and(|set| set.gate.is_open(&self.facts(at, None, on)))
    }

    /// What the gate looks at; the fault only serves to say what to watch.
    fn facts(&self, at: usize, fault: Option<&Name>, on: Day) -> GateFacts {
        let Some(track) = self.tracks.get(at) else { return GateFacts::default() };
        let (acceptable, scored) = track.earlier;
        let earlier = (scored > 0).then_some(SessionFact {
            day: track.here.1,
            passed: Outcome::NotScored,
            critical_fail: false,
            acceptable,
            scored,
            day_class: DayClass::Unknown,
            answer_pending: false,
            weakest: None,
            rater: None,
        });
        let sessions = earlier.into_iter().chain(track.sittings.iter().map(|sitting| fact(sitting, fault)));
        let days = |from: Day| u32::try_from(on.since(from)).unwrap_or(0);
        let reserve =
            self.parameters.as_ref().map_or(0, |parameters| parameters.policy.reserve_to_advance.halves());
        GateFacts {
            sessions: sessions.collect(),
            dwell_sessions: u32::from(track.here.0),
            dwell_days: days(track.here.1),
            days_since_move: track.moves.last().map(|(day, _)| days(*day)),
            open_blocks: self.open_blocks(at),
            signed_off: track.signed_off,
            pair: self.pair_conditions(at),
            region: self.region_conditions(at),
            effort_cap_met: track.reserve.map(|halves| halves >= reserve),
        }
    }

    fn open_blocks(&self, at: usize) -> Vec<Name> {
        let regions = self.regions_of(at);
        let blocked = self.regions.iter().filter(|region| region.stop.is_some() || region.clear_needed > 0);
        blocked.filter(|region| regions.contains(&region.name)).map(|region| region.name.clone()).collect()
    }

    /// The other lift of a pair must not be stopped. One that steps back for its technique holds nobody up.
    fn pair_conditions(&self, at: usize) -> Vec<NamedCondition> {
        let Some(partner) = self.partner(at) else { return Vec::new() };
        let name = self
            .parameters
            .as_ref()
            .and_then(|parameters| parameters.tracks.get(partner))
            .map(|track| track.name.clone());
        let holds = self.tracks.get(partner).is_some_and(|track| track.status != Status::StoppedRefer);
        name.map(|name| NamedCondition { name, holds }).into_iter().collect()
    }

    /// A region of the lift must not be stopped, and must have had its clear sessions since it last hurt.
    fn region_conditions(&self, at: usize) -> Vec<NamedCondition> {
        let regions = self.regions_of(at);
        let own = self.regions.iter().filter(|region| regions.contains(&region.name));
        own.map(|region| NamedCondition {
            name: region.name.clone(),
            holds: region.stop.is_none() && region.clear_needed == 0,
        })
        .collect()
    }

    /// Puts the move on offer where the gate has opened.
    pub(crate) fn offer_where_open(&mut self, at: usize, on: Day) {
        let holding = self.tracks.get(at).is_some_and(|track| track.status == Status::Holding);
        if holding
            && self.gate_is_open(at, on)
            && let Some(track) = self.tracks.get_mut(at)
        {
            track.enter(Status::ReadyToAdvance, on);
            track.offered = Some(on);
            track.closed_since = None;
        }
    }
}

fn fact(sitting: &Sitting, fault: Option<&Name>) -> SessionFact {
    SessionFact {
        day: sitting.day,
        passed: sitting.outcome,
        critical_fail: sitting.critical,
        acceptable: u32::from(sitting.acceptable),
        scored: u32::from(sitting.scored),
        day_class: if sitting.bad_day { DayClass::BadAgreeing } else { DayClass::Ordinary },
        answer_pending: !sitting.confirmed,
        weakest: fault.filter(|_| sitting.outcome == Outcome::Fail).cloned(),
        rater: None,
    }
}
