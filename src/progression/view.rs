//! What a rule looks at: one lift, what concerns every lift, and the day; and what limits, ceilings and overrides leave of the
//! lift on that day.

use super::lift::Lift;
use super::region::RegionState;
use super::shared::Shared;
use super::status::Status;
use crate::condition::DayClass;
use crate::quantity::{Day, Length, Mass};
use crate::reason::Reason;
use crate::record::{ClearanceLimits, Grant, Pair, Parameters, Place, Policy, StartsFrom};

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
        self.shared.limits_of(self.lift)
    }

    /// Whether a limit of effort or breathing is on record for the lift, as blood pressure asks for.
    pub(crate) fn limits_on_record(&self) -> bool {
        self.limits().any(|limit| limit.effort.is_some() || limit.no_breath_hold)
    }

    /// The lowest load that a clearance limits the lift to. With help the limit is one of what is moved.
    pub(crate) fn clearance_load(&self) -> Option<Mass> {
        let limit = self.limits().filter_map(|limit| limit.load).min()?;
        Some(self.lift.loadable.at(self.lift.now.grant.place).at_which_moved(limit))
    }

    /// Whether a clearance limits the range of the lift.
    pub(crate) fn range_limited(&self) -> bool {
        self.limits().any(|limit| limit.range.is_some())
    }

    /// The number in the lift's ranges that the clearance leaves it, at most `range`: none where not even the easiest is
    /// allowed. Of a lift whose ranges are not declared nobody can tell whether it keeps a limit of range, so that it waits.
    pub(crate) fn range_allowed(&self, range: u8) -> Option<u8> {
        let ranges = self.lift.set.ranges.as_slice();
        if ranges.is_empty() && self.range_limited() {
            return None;
        }
        let allowed = |range: Length| {
            self.limits().filter_map(|limit| limit.range).all(|limit| reaches(ranges, limit, range))
        };
        let as_made = |range: u8| self.lift.loadable.off_by_mm(Place { range, ..self.lift.now.grant.place });
        let fits = |number: &u8| {
            ranges.get(usize::from(*number)).is_none_or(|range| allowed(*range))
                && self.height_allowed(*number, as_made(*number))
        };
        (0..=range).rev().find(fits)
    }

    /// Whether the clearance allows a bar that starts so far off the height of that range, above it positive; none where
    /// nobody knows how far, and then no limit is known to be kept.
    pub(crate) fn height_allowed(&self, range: u8, off_by_mm: Option<f64>) -> bool {
        let height = self.lift.set.ranges.get(usize::from(range));
        let Some(height) = height.filter(|_| self.lift.set.starts_from == StartsFrom::Floor) else {
            return true;
        };
        let mut limits = self.limits().filter_map(|limit| limit.range);
        limits.all(|limit| off_by_mm.is_some_and(|off| height.mm() + off >= limit.mm()))
    }

    /// The height of that place, where no discs and blocks put the bar there.
    pub(crate) fn height_not_made(&self, place: Place) -> Option<Reason> {
        self.lift.height_not_made(place, self.lift.loadable.off_by_mm(place)?)
    }

    /// The height of today's place, where the bar starts lower than that with the load allowed: a harder lift, never shown.
    pub(crate) fn starts_lower(&self) -> Option<Reason> {
        let off = self.lift.loadable.off_at(self.place(), self.limit()).filter(|off| *off < 0.0)?;
        self.lift.height_not_made(self.place(), off)
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

    /// An override in force, as a reason.
    pub(crate) fn override_in_force(&self) -> Option<Reason> {
        let given = self.lift.now.overruled.as_ref().filter(|given| given.expires >= self.on)?;
        let (load, who, until) = (given.load, given.who.clone(), Some(given.expires));
        Some(Reason::OverrideInForce { load, who, until })
    }

    /// Whether an override in force allows more than is granted.
    pub(crate) fn overruled_upward(&self) -> bool {
        let eases = self.lift.now.overruled.as_ref().is_some_and(|given| given.eases);
        !eases && self.overruled().is_some_and(|load| load > self.lift.now.grant.load())
    }

    /// Whether an override upward waits: until everything was asked today and nothing was said that speaks against it, and
    /// while the lift comes back from a break, a stop or a step back.
    pub(crate) fn override_waits(&self) -> bool {
        self.overruled_upward()
            && (self.is_coming_back() || self.hurts() || !self.is_well_today() || self.is_away())
    }

    /// Whether an override in force changes nothing today: it waits, or it asks for less than the lift had before the way back
    /// on which it stands lower still.
    pub(crate) fn override_says_nothing(&self, load: Mass) -> bool {
        self.override_waits() || (load > self.lift.now.grant.load() && self.is_coming_back())
    }

    /// Whether the lift comes back from a break, a stop or a step back, or stands where nothing is trained.
    fn is_coming_back(&self) -> bool {
        let now = &self.lift.now;
        let status = &now.status;
        now.half_sessions > 0
            || status.way_back().is_some()
            || !status.is_trained()
            || matches!(status, Status::SteppingBack { .. } | Status::Resting { .. })
    }

    /// Whether a region of the lift hurts today, still needs clear sessions, or hurts more and more.
    fn hurts(&self) -> bool {
        let hurts = |region: &RegionState| {
            region.hurts_on(self.on) || region.clear_needed > 0 || region.persists(self.policy(), self.on)
        };
        self.lift.now.partner_pain || self.regions().any(hurts)
    }

    /// Whether the day's questions were all asked, and none of the answers speaks against more than is granted.
    fn is_well_today(&self) -> bool {
        let shared = self.shared;
        let asked = shared.report_on(self.on).is_some_and(|report| report.asks_asked && report.pain_asked);
        let usual = matches!(shared.class_on(self.on), DayClass::Within | DayClass::Above);
        let raised = !shared.asks.is_empty() || shared.asked_and_answered(self.on).is_some();
        let cleared = shared.is_cleared(self.policy().clearance_required, self.on);
        asked && usual && !raised && cleared && shared.unknown == 0 && self.is_guarded()
    }

    /// Whether somebody or something would take the bar, as far as anybody said; a lift that is not done under the bar
    /// needs nobody.
    pub(crate) fn is_guarded(&self) -> bool {
        let now = &self.lift.now;
        !self.lift.set.over_the_body || (now.rack_said && !now.unguarded)
    }

    /// Why the lift goes no further than alone under a bar without pins, where it does not.
    pub(crate) fn alone(&self) -> Option<Reason> {
        let said = self.lift.now.rack_said;
        let reason = if said { Reason::AloneWithoutPins } else { Reason::RackNotAsked };
        (!self.is_guarded()).then_some(reason)
    }

    /// Whether the day lies within a break or an illness as noted.
    pub(crate) fn is_away(&self) -> bool {
        self.shared.away_on(self.on).is_some()
    }

    /// The load that the grant or an override allows, before every ceiling.
    pub(crate) fn allowed(&self) -> Mass {
        let granted = self.lift.now.grant.load();
        match self.overruled() {
            Some(load) if self.overruled_upward() && !self.override_waits() => load,
            Some(load) => load.min(granted),
            None => granted,
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
