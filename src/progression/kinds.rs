//! Another kind of implement: a load on one says nothing about a load on another, so the lift begins anew. What made it
//! easier is not lost on the way.
//!
//! The lift begins at its start, but never above what the days since, by the layoff table, leave of where it stood when it left that kind
//! of implement; at the lightest load where it was on its way back, a step easier or under the coach's lower word, and where the
//! number of the start is still that of the other kind.

use super::layoff::left_after;
use super::lift::Now;
use super::loadable::Loads;
use super::status::{Calibration, OverrideInForce, Purpose, Status, WayBack};
use crate::loading::Implement;
use crate::quantity::{Day, Mass, Name};
use crate::reason::OverrideEnd;
use crate::record::{Grant, LiftParameters, Parameters, Policy};

/// The kind of the implement with that id.
pub(crate) fn kind_in(all: &Parameters, id: &Name) -> Option<&'static str> {
    all.implement(id).map(Implement::kind)
}

impl Now {
    /// Remembers what was allowed on the kind of implement that it leaves, or what it kept of that under a limit.
    pub(crate) fn leave(&mut self, kind: Option<&'static str>, kept: Option<Mass>, on: Day) {
        let Some(kind) = kind.and_then(|kind| Name::new(kind).ok()) else { return };
        let granted = self.grant.load();
        let lower = self.overruled.as_ref().filter(|given| given.expires >= on).map(|given| given.load);
        let stood = lower.into_iter().chain(kept).fold(granted, Mass::min);
        self.left.retain(|(known, ..)| *known != kind);
        self.left.push((kind, stood, on));
    }

    /// The load that it begins at on another kind of implement, of that start.
    pub(crate) fn begins_at(
        &self,
        kind: Option<&'static str>,
        (was, set): (&LiftParameters, &LiftParameters),
        start: Mass,
        loads: &Loads<'_>,
        (policy, older, on): (&Policy, bool, Day),
    ) -> Mass {
        let known = self.left.iter().find(|(known, ..)| kind.is_some_and(|kind| known.as_str() == kind));
        let stood = known.map_or(start, |(_, stood, left)| {
            left_after(policy, older, on.since(*left), *stood, loads).min(start)
        });
        // On its way back, or a step easier to look again, it does not begin at what was meant for somebody in training.
        let lower = self.overruled.as_ref().filter(|given| given.eases && given.expires >= on);
        let lost = |given: &OverrideInForce| known.is_none() || loads.not_above(given.load).is_none();
        let eased = self.status.way_back().is_some()
            || matches!(self.status, Status::SteppingBack { .. })
            || lower.is_some_and(lost);
        // A start that nobody wrote anew was written for the other kind.
        let copied = kind.is_some() && known.is_none() && set.start.load() == was.start.load();
        if eased || copied {
            return loads.lightest().map_or(stood, |lightest| lightest.min(stood));
        }
        if stood < start { loads.rounded_down(stood).min(start) } else { start }
    }

    /// The coach's word for more was for the other kind. A lower one stays in force as far as anything here is so light; else
    /// it is told as ended.
    pub(crate) fn end_override(&mut self, was: &LiftParameters, loads: &Loads<'_>) {
        let stood = self.grant.place;
        self.keep_easing_only(OverrideEnd::OtherImplement, was, stood);
        let ended = self.overruled.take_if(|given| loads.not_above(given.load).is_none());
        if let Some(ended) = ended {
            self.override_ended = Some((ended.load, OverrideEnd::OtherImplement, was.named_place(stood)));
        }
        if let Some(given) = &mut self.overruled {
            given.eases = true;
        }
    }
}

/// Starts anew without the loads of another kind of implement.
pub(crate) fn forget_loads(now: &mut Now, start: Grant, learning: u8, on: Day) {
    now.stand_at(start, on);
    now.peak = start.load();
    now.moves.clear();
    now.proven = None;
    now.held = None;
    now.closed_since = None;
    now.calibration = Calibration::of(learning);
    if let Purpose::Maintain { not_below } = &mut now.purpose {
        *not_below = None;
    }
    relearn(now, start.load(), on);
}

/// Back to learning; on its way back it stays, from where it now stands, with its passes still to come.
pub(crate) fn relearn(now: &mut Now, load: Mass, on: Day) {
    let way = |way: WayBack| WayBack { cap: load, no_restoring: true, ..way };
    match &mut now.status {
        Status::Returning { way: old, passes } => (*old, *passes) = (way(*old), 0),
        Status::Resting { way: old } | Status::StoppedRefer { way: old } => *old = old.map(way),
        Status::Retired => {}
        _ => now.enter(Status::Learning, on),
    }
}
