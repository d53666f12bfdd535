//! Stops: what halts a lift, and the only way on.
//!
//! A symptom halts every lift; pain halts every lift of its region; a stop of a region that no lift loads halts every
//! lift, since nobody can tell whom it still concerns.

use alloc::vec::Vec;

use super::lift::Lift;
use super::region::RegionState;
use super::shared::Shared;
use super::state::State;
use super::status::{Purpose, Status, Stop, WayBack};
use super::view::View;
use crate::error::Error;
use crate::quantity::Day;
use crate::reason::{OverrideEnd, Reason};
use crate::record::{Grant, PainAnswer, Parameters, Policy};
use crate::sign::StopSign;

/// Sessions with half the sets after a stop (our choice).
pub(crate) const HALF_SESSIONS: u8 = 2;

/// Every stop in force that halts this lift, as reasons.
pub(crate) fn reasons(view: &View<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    if let Some(stop) = &view.shared.stop {
        reasons.push(Reason::SymptomStop { signs: stop.signs.clone(), since: stop.since });
    }
    for region in halting(view) {
        if let Some(stop) = &region.stop {
            let (region, features) = (region.id.clone(), stop.features.clone());
            reasons.push(Reason::PainStop { region, since: stop.since, features });
        }
    }
    for region in view.shared.limits_without_lift(view.all) {
        reasons.push(Reason::LimitWithoutLift { region: region.clone() });
    }
    reasons
}

/// Of the stops in force that halt this lift, those that the coach signed off in vain.
pub(crate) fn refused(view: &View<'_>) -> Vec<Reason> {
    let of = |region: Option<&RegionState>, stop: &Stop| {
        let (on, why) = stop.refused?;
        Some(Reason::SignOffRefused { region: region.map(|region| region.id.clone()), on, why })
    };
    let everything = view.shared.stop.iter().filter_map(|stop| of(None, stop));
    let own = halting(view).filter_map(|region| of(Some(region), region.stop.as_ref()?));
    everything.chain(own).collect()
}

/// Stopped regions that halt this lift: its own, and those that no lift loads.
fn halting<'a>(view: &View<'a>) -> impl Iterator<Item = &'a RegionState> {
    let lift = view.lift;
    let own = view.regions().filter(|region| region.stop.is_some());
    let without = view.shared.stops_without_lift(view.all);
    own.chain(without.filter(move |region| !lift.has_region(&region.id)))
}

/// Whether a stop halts the lift.
pub(crate) fn is_halted(lift: &Lift, shared: &Shared, all: &Parameters) -> bool {
    let stopped = |region: &RegionState| region.stop.is_some();
    shared.stop.is_some()
        || shared.regions.iter().any(|region| stopped(region) && lift.has_region(&region.id))
        || shared.stops_without_lift(all).next().is_some()
}

impl State {
    /// Everything that stops this lifter, or a region, whatever is planned: signs, pain, limits that nobody can tell the
    /// lifts of, an illness without a new clearance, and what was said before training and is not answered.
    ///
    /// The gravest first; empty where nothing is stopped. A lift may be stopped beyond these by where it stands, with
    /// [`Reason::Stopped`] among the reasons of its day. This is what the last event left in force; an illness that was noted in
    /// advance is there from its first day on, which [`State::stops_on`] knows of.
    #[must_use]
    pub fn stops(&self) -> Vec<Reason> {
        self.stops_where(self.shared.ill_since.is_some())
    }

    /// The same on that day.
    #[must_use]
    pub fn stops_on(&self, day: Day) -> Vec<Reason> {
        self.stops_where(self.shared.ill_on(day).is_some())
    }

    fn stops_where(&self, ill: bool) -> Vec<Reason> {
        let shared = &self.shared;
        let sign = shared.stop.iter();
        let sign = sign.map(|stop| Reason::SymptomStop { signs: stop.signs.clone(), since: stop.since });
        let pain = shared.regions.iter().filter_map(|region| {
            let stop = region.stop.as_ref()?;
            let (region, features) = (region.id.clone(), stop.features.clone());
            Some(Reason::PainStop { region, since: stop.since, features })
        });
        let limits = shared.limits().iter().filter_map(|limit| limit.region.as_ref());
        let limits = limits.filter(|id| shared.is_limited_without_lift(id, self.parameters()));
        let limits = limits.map(|region| Reason::LimitWithoutLift { region: region.clone() });
        let ill = ill.then_some(Reason::ClearanceAfterIllness);
        let asks = shared.asks.iter().map(|open| Reason::AsksFirst { ask: open.ask, since: open.since });
        let mut stops: Vec<Reason> = Vec::new();
        for stop in sign.chain(pain).chain(limits).chain(ill).chain(asks) {
            // Two limits of one region are one stop.
            if !stops.contains(&stop) {
                stops.push(stop);
            }
        }
        stops
    }

    /// Any one sign halts every lift. A second one before the clearance joins the first.
    pub(crate) fn stop_everything(&mut self, signs: &[StopSign], on: Day, told: u32) {
        let earlier = self.shared.stop.take();
        let refused = earlier.as_ref().and_then(|earlier| earlier.refused);
        let told = earlier.as_ref().map_or(told, |earlier| earlier.told.max(told));
        let mut all = earlier.map(|earlier| earlier.signs).unwrap_or_default();
        for sign in signs {
            if !all.contains(sign) {
                all.push(*sign);
            }
        }
        self.shared.stop = Some(Stop { refused, ..Stop::new(on, told, all) });
        self.halt_where_stopped(on);
    }

    /// Halts the lifts of a region.
    pub(crate) fn stop_region(&mut self, answer: &PainAnswer, on: Day, told: u32) -> Result<(), Error> {
        let region = self.shared.known_mut(&answer.region)?;
        // What came with the pain earlier and was not taken back by a clearance still stands.
        let earlier = region.stop.take();
        let refused = earlier.as_ref().and_then(|earlier| earlier.refused);
        let told = earlier.as_ref().map_or(told, |earlier| earlier.told.max(told));
        let mut features = earlier.map(|earlier| earlier.features).unwrap_or_default();
        answer.join_features(&mut features);
        region.stop = Some(Stop { features, refused, ..Stop::new(on, told, Vec::new()) });
        self.halt_where_stopped(on);
        Ok(())
    }

    /// Puts every lift into its stop that a stop in force concerns, those set aside as well: they come back from it as if they
    /// had been there.
    pub(crate) fn halt_where_stopped(&mut self, on: Day) {
        let Some(in_force) = &self.in_force else { return };
        for lift in self.lifts.iter_mut().chain(&mut self.set_aside) {
            // What halts it for want of a lift goes on concerning it, though a lift loads the region again.
            for region in self.shared.stops_without_lift(&in_force.parameters) {
                if !lift.has_region(&region.id) {
                    lift.now.former.push(region.id.clone());
                }
            }
            if !lift.now.status.is_stopped() && is_halted(lift, &self.shared, &in_force.parameters) {
                let way = lift.now.status.way_back();
                lift.now.forget_evidence(on);
                let stands = lift.now.grant.place;
                lift.now.keep_easing_only(OverrideEnd::Stop, &lift.set, stands);
                lift.now.enter(Status::StoppedRefer { way }, on);
            }
        }
    }

    /// Lifts the stops that have both a clearance and a sign-off, and takes the lifts they held back in.
    pub(crate) fn reopen(&mut self, on: Day) {
        self.shared.stop.take_if(|stop| stop.is_lifted());
        for region in &mut self.shared.regions {
            region.stop.take_if(|stop| stop.is_lifted());
        }
        let Some(in_force) = &self.in_force else { return };
        for lift in &mut self.lifts {
            if let Status::StoppedRefer { way } = lift.now.status
                && !is_halted(lift, &self.shared, &in_force.parameters)
            {
                reopen_lower(lift, way, on, &in_force.parameters.policy);
            }
        }
    }
}

/// Back on a lower rung, one step easier, returning; a lift that rests or is given up stands there when it is
/// taken up.
fn reopen_lower(lift: &mut Lift, way: Option<WayBack>, on: Day, policy: &Policy) {
    let before = lift.now.grant;
    let place = before.place;
    let easier = super::moves::one_load_back(lift, place, before.load(), policy);
    let load = easier.unwrap_or(before.load());
    let rung = lift.set.easier_rung(place.rung);
    let now = &mut lift.now;
    now.stand_easier(Grant { place: crate::record::Place { rung, ..place }, ..before.with_load(load) }, on);
    now.keep_easing_only(OverrideEnd::Stop, &lift.set, place);
    now.half_sessions = HALF_SESSIONS;
    now.half_after = way.filter(|way| way.gap > 0 && !way.held).map(|way| (way.gap, way.row));
    // Two passing sessions lead on from here; the load before is not simply restored.
    let way = WayBack {
        reopened: Some(on),
        after_illness: way.is_some_and(|way| way.after_illness),
        held: way.is_some_and(|way| way.held),
        no_restoring: true,
        ..WayBack::new(before.load(), way.map_or(2, |way| way.row), way.map_or(0, |way| way.gap))
    };
    let status = match now.purpose {
        Purpose::Retire => Status::Retired,
        Purpose::Rest => Status::Resting { way: Some(way) },
        Purpose::Train | Purpose::Maintain { .. } => Status::Returning { way, passes: 0 },
    };
    // Nobody trained it meanwhile, whatever else loaded its regions.
    now.count_own_gap(None, on);
    now.enter(status, on);
}
