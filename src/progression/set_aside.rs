//! Lifts that the parameters leave out. A state keeps them as they stood, and when there are more than it can keep, of those
//! trained so long ago that nothing of them would be left but the break itself, the day of their last session, their place and
//! their regions: what is open in a region or limits it goes on concerning them.

use alloc::vec::Vec;

use super::change::no_harder_than;
use super::lift::{Lift, Now};
use super::shared::Shared;
use super::status::Purpose;
use super::stop::is_halted;
use crate::error::Error;
use crate::quantity::{Day, Name};
use crate::reason::NamedPlace;
use crate::record::{LiftParameters, Parameters, at_most};

/// The most lifts that are set aside as they stood, so that a state stays small.
pub(crate) const MOST_SET_ASIDE: usize = 16;
/// The most of which no more than that is kept.
pub(crate) const MOST_LAID_BY: usize = 64;

/// What is kept of a lift that was left out long ago.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct LaidBy {
    pub(crate) id: Name,
    /// Day of its last session; absent where it was never trained.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub(crate) last: Option<Day>,
    /// Where it stood: it comes back at no harder place.
    pub(crate) place: NamedPlace,
    /// Every region that concerned it.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub(crate) regions: Vec<Name>,
}

impl LaidBy {
    fn of(lift: &Lift) -> LaidBy {
        let (id, last) = (lift.set.id.clone(), lift.now.last_session);
        let place = lift.set.named_place(lift.now.grant.place);
        LaidBy { id, last, place, regions: lift.regions().cloned().collect() }
    }
}

impl Shared {
    /// Lays by those trained longest ago until no more are left than are kept as they stood: those of which a break leaves the
    /// lightest load alone. What a stop holds stays; what a coach made easier than its start, rests, keeps or gave up goes last.
    ///
    /// # Errors
    /// `too_many` where more were left out than even that is kept of: none of them is forgotten.
    pub(crate) fn lay_by(
        &mut self,
        set_aside: &mut Vec<Lift>,
        all: &Parameters,
        on: Day,
    ) -> Result<(), Error> {
        let restarts = all.policy.layoff.iter().filter(|row| row.restart);
        let longest = restarts.map(|row| i32::from(row.from_days)).min();
        while set_aside.len() > MOST_SET_ASIDE {
            // One that was never trained has nothing to come back to but what a stop has left of it.
            let over = |lift: &Lift| match lift.now.last_session {
                Some(last) => longest.is_some_and(|days| on.since(last) >= days),
                None => !lift.now.status.is_stopped(),
            };
            let open = |lift: &Lift| lift.now.former.iter().any(|region| self.is_open(region));
            let held = |lift: &Lift| open(lift) || is_halted(lift, self, all);
            let may_go = |lift: &Lift| over(lift) && !held(lift);
            let eligible = set_aside.iter().enumerate().filter(|(_, lift)| may_go(lift));
            // Of what a coach made easier something would be lost, so that it goes when nothing else can.
            let order = |lift: &Lift| (is_eased(lift, on), lift.now.last_session);
            let first = eligible
                .min_by(|(_, one), (_, other)| (order(one), &one.set.id).cmp(&(order(other), &other.set.id)));
            let Some((first, _)) = first else { break };
            let lift = set_aside.remove(first);
            // Of one that was never trained nothing is to be told, unless something in its regions is open.
            if lift.now.last_session.is_some() || lift.regions().any(|region| self.is_open(region)) {
                self.laid_by.push(LaidBy::of(&lift));
            }
        }
        self.laid_by.sort_by(|one, other| (one.last, &one.id).cmp(&(other.last, &other.id)));
        at_most("lifts laid by", self.laid_by.len(), MOST_LAID_BY)
    }

    /// A new lift, or one that was laid by: it begins at its start, at no harder place than it stood, and its break counts. What is
    /// open in a region that it had earlier goes on concerning it.
    pub(crate) fn take_up(&mut self, set: &LiftParameters, start: Now, on: Day) -> Now {
        let Some(at) = self.laid_by.iter().position(|kept| kept.id == set.id) else { return start };
        let LaidBy { id: _, last, place, regions } = self.laid_by.remove(at);
        let former = regions.into_iter().filter(|region| !set.regions.contains(region)).collect();
        let mut now = Now { last_session: last, former, ..start };
        now.grant.place = no_harder_than(&place, set, now.grant.place);
        now.count_own_gap(None, on);
        now
    }
}

/// Whether a coach made it easier than it began, for now or for good, or has it rest, kept or given up.
fn is_eased(lift: &Lift, on: Day) -> bool {
    let (now, start) = (&lift.now, &lift.set.start);
    let (place, from) = (now.grant.place, start.place);
    let easier_place =
        lift.set.is_harder(from.rung, place.rung) || place.range < from.range || place.tempo < from.tempo;
    let less = now.grant.work.sets < start.work.sets || now.grant.work.reps < start.work.reps;
    let overruled = now.overruled.as_ref().is_some_and(|overruled| overruled.expires >= on);
    let lowered = now.last_session.is_none() && now.grant.load() < start.load();
    now.purpose != Purpose::Train || overruled || easier_place || less || lowered
}
