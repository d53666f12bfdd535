//! The gate of a lift, and the move that waits while it is open.

use alloc::vec::Vec;

use super::lift::Now;
use super::sitting::Sitting;
use super::state::State;
use super::status::Status;
use super::view::View;
use crate::condition::DayClass;
use crate::error::Error;
use crate::gate::{GateFacts, GateState, NamedCondition, Outcome, SessionFact};
use crate::quantity::{Day, Name};

/// What the gate of a lift says on that day.
pub(crate) fn gate_state(view: &View<'_>) -> GateState {
    // Facts that contradict themselves open nothing.
    view.lift.set.gate.check(&facts(view, view.lift.now.fault.as_ref())).unwrap_or_default()
}

/// Whether the gate of a lift is open on that day, and no more.
pub(crate) fn gate_is_open(view: &View<'_>) -> bool {
    view.lift.set.gate.is_open(&facts(view, None))
}

/// What the gate looks at; the fault only serves to say what to watch.
fn facts(view: &View<'_>, fault: Option<&Name>) -> GateFacts {
    let now = &view.lift.now;
    let (acceptable, scored) = now.earlier;
    let earlier = (scored > 0).then_some(SessionFact {
        day: now.here.1,
        passed: Outcome::NotScored,
        critical_fail: false,
        acceptable,
        scored,
        day_class: DayClass::Unknown,
        answer_pending: false,
        weakest: None,
        rater: None,
    });
    let other = now.sittings.iter().any(|sitting| sitting.other_rater).then(|| Name::new("another").ok());
    let other = other.flatten();
    let sessions =
        earlier.into_iter().chain(now.sittings.iter().map(|sitting| fact(sitting, fault, other.as_ref())));
    let days = |from: Day| u32::try_from(view.on.since(from)).unwrap_or(0);
    let reserve = view.policy().reserve_to_advance.halves();
    GateFacts {
        sessions: sessions.collect(),
        dwell_sessions: u32::from(now.here.0),
        dwell_days: days(now.here.1),
        days_since_move: now.moves.last().map(|(day, _)| days(*day)),
        open_blocks: view
            .regions()
            .filter(|region| region.is_open())
            .map(|region| region.id.clone())
            .collect(),
        signed_off: now.signed_off,
        pair: pair_conditions(view),
        region: region_conditions(view),
        effort_cap_met: now.reserve.map(|halves| halves >= reserve),
    }
}

/// The other lift of a pair must not be stopped. One that steps back for its technique holds nobody up.
fn pair_conditions(view: &View<'_>) -> Vec<NamedCondition> {
    let condition = view.partner.map(|partner| NamedCondition {
        name: partner.lift.set.id.clone(),
        holds: !partner.lift.now.status.is_stopped(),
    });
    condition.into_iter().collect()
}

/// A region of the lift must not be stopped, and must have had its clear sessions since it last hurt.
fn region_conditions(view: &View<'_>) -> Vec<NamedCondition> {
    let own = view.regions();
    own.map(|region| NamedCondition { name: region.id.clone(), holds: !region.is_open() }).collect()
}

fn fact(sitting: &Sitting, fault: Option<&Name>, other: Option<&Name>) -> SessionFact {
    SessionFact {
        day: sitting.day,
        passed: sitting.outcome,
        critical_fail: sitting.critical,
        acceptable: u32::from(sitting.acceptable),
        scored: u32::from(sitting.scored),
        day_class: if sitting.below_usual { DayClass::Below } else { DayClass::Within },
        answer_pending: !sitting.confirmed,
        weakest: fault.filter(|_| sitting.outcome == Outcome::Fail).cloned(),
        rater: other.filter(|_| sitting.other_rater).cloned(),
    }
}

impl State {
    /// Puts the move on offer where the gate has opened and the last session was the work granted and passed.
    pub(crate) fn offer_where_open(&mut self, id: &Name, on: Day) -> Result<(), Error> {
        if is_earned(&self.view(id, on)?) {
            offer(&mut self.lift_mut(id)?.now, on);
        }
        Ok(())
    }

    /// The same for every lift.
    pub(crate) fn offer_all_open(&mut self, on: Day) {
        let earned: Vec<bool> = self.views(on).map(|view| is_earned(&view)).collect();
        for (lift, _) in self.lifts.iter_mut().zip(earned).filter(|(_, earned)| *earned) {
            offer(&mut lift.now, on);
        }
    }
}

fn is_earned(view: &View<'_>) -> bool {
    let now = &view.lift.now;
    now.status == Status::Holding && now.short.is_none() && now.last_passed() && gate_is_open(view)
}

fn offer(now: &mut Now, on: Day) {
    let since = now.last_session.unwrap_or(on);
    now.enter(Status::ReadyToAdvance { since }, on);
    now.closed_since = None;
}
