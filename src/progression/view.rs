//! What a rule looks at: one lift, what concerns every lift, and the day.

use super::lift::Lift;
use super::region::RegionState;
use super::shared::Shared;
use crate::quantity::{Day, Length, Mass};
use crate::reason::Reason;
use crate::record::{ClearanceLimits, Grant, Pair, Parameters, Place, Policy};

/// The other lift of a pair.
#[derive(Clone, Copy)]
pub(crate) struct Partner<'a> {
    pub(crate) lift: &'a Lift,
    pub(crate) pair: &'a Pair,
}

/// One lift on one day, with everything that a rule may look at.
#[derive(Clone, Copy)]
pub(crate) struct View<'a> {
    pub(crate) shared: &'a Shared,
    pub(crate) all: &'a Parameters,
    pub(crate) lift: &'a Lift,
    pub(crate) partner: Option<Partner<'a>>,
    pub(crate) on: Day,
}

impl<'a> View<'a> {
    pub(crate) const fn policy(&self) -> &'a Policy {
        &self.all.policy
    }

    /// What is known of the regions that concern the lift.
    pub(crate) fn regions(&self) -> impl Iterator<Item = &'a RegionState> {
        let (shared, lift) = (self.shared, self.lift);
        shared.regions.iter().filter(|region| lift.has_region(&region.id))
    }

    /// Whether the lift is the strict one of its pair.
    pub(crate) fn is_strict(&self) -> bool {
        self.partner.is_some_and(|partner| partner.pair.strict == self.lift.set.id)
    }

    /// The clearance's limits that concern the lift.
    pub(crate) fn limits(&self) -> impl Iterator<Item = &'a ClearanceLimits> {
        let lift = self.lift;
        self.shared
            .limits()
            .iter()
            .filter(move |limit| limit.region.as_ref().is_none_or(|region| lift.has_region(region)))
    }

    /// Whether a limit of effort or breathing is on record for the lift, as blood pressure asks for.
    pub(crate) fn limits_on_record(&self) -> bool {
        self.limits().any(|limit| limit.effort.is_some() || limit.no_breath_hold)
    }

    /// The lowest load that a clearance limits the lift to.
    pub(crate) fn clearance_load(&self) -> Option<Mass> {
        self.limits().filter_map(|limit| limit.load).min()
    }

    /// Whether a clearance limits the range of the lift.
    pub(crate) fn range_limited(&self) -> bool {
        self.limits().any(|limit| limit.range.is_some())
    }

    /// The number in the lift's ranges that the clearance leaves it, at most `range`: none where not even the easiest is
    /// allowed. A lift whose range is not measured keeps its place.
    pub(crate) fn range_allowed(&self, range: u8) -> Option<u8> {
        let ranges = self.lift.set.ranges.as_slice();
        let allowed = |range: Length| {
            self.limits().filter_map(|limit| limit.range).all(|limit| reaches(ranges, limit, range))
        };
        let fits = |number: &u8| ranges.get(usize::from(*number)).is_none_or(|range| allowed(*range));
        (0..=range).rev().find(fits)
    }

    /// The granted place as the clearance leaves it.
    pub(crate) fn place(&self) -> Place {
        let granted = self.lift.now.grant.place;
        Place { range: self.range_allowed(granted.range).unwrap_or(0), ..granted }
    }

    /// The lowest of the ceilings that no override passes.
    pub(crate) fn ceiling(&self) -> Option<Mass> {
        [self.lift.set.ceiling, self.clearance_load()].into_iter().flatten().min()
    }

    /// Load that the coach allows instead of the granted one on that day, upward or downward.
    pub(crate) fn overruled(&self) -> Option<Mass> {
        let given = self.lift.now.overruled.as_ref();
        given.filter(|given| given.expires >= self.on).map(|given| given.load)
    }

    /// Whether an override upward waits: while pain, a day below the usual, or something asked stands.
    pub(crate) fn override_waits(&self) -> bool {
        let upward = self.overruled().is_some_and(|load| load > self.lift.now.grant.load());
        upward && (self.hurts() || self.shared.class_on(self.on).is_bad() || !self.shared.asks.is_empty())
    }

    /// Whether a region of the lift hurts today, or still needs clear sessions.
    fn hurts(&self) -> bool {
        let today = |region: &RegionState| {
            region.last.is_some_and(|(day, score)| day == self.on && score.score() > 0)
        };
        self.lift.now.partner_pain || self.regions().any(|region| region.clear_needed > 0 || today(region))
    }

    /// The load that the grant or an override allows, before every ceiling.
    pub(crate) fn allowed(&self) -> Mass {
        let granted = self.lift.now.grant.load();
        match self.overruled() {
            Some(load) if !self.override_waits() => load,
            _ => granted,
        }
    }

    /// The highest load allowed for the lift as it stands: grant or override, under every ceiling.
    pub(crate) fn limit(&self) -> Mass {
        self.ceiling().map_or(self.allowed(), |ceiling| ceiling.min(self.allowed()))
    }

    /// The next grant that the moving dimension offers, or why it offers nothing.
    pub(crate) fn next_grant(&self) -> Result<Grant, Reason> {
        super::moves::next_grant(self.lift, self.policy().rung_load)
    }
}

/// Whether a range is no deeper than the limit. The list goes from the easiest range to the full one, so that it says
/// itself whether deeper is longer (a depth) or shorter (a height above the floor); where it does not say, only the
/// limit itself is allowed.
pub(crate) fn reaches(ranges: &[Length], limit: Length, range: Length) -> bool {
    let grows = |ordered: fn(&Length, &Length) -> bool| {
        ranges.len() > 1
            && ranges.iter().zip(ranges.iter().skip(1)).all(|(easier, fuller)| ordered(easier, fuller))
    };
    if grows(|easier, fuller| easier < fuller) {
        range <= limit
    } else if grows(|easier, fuller| easier > fuller) {
        range >= limit
    } else {
        range == limit
    }
}
