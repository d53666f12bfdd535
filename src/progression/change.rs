//! New parameters: what stays, what is set aside, what is learned anew. Nothing that is open is lost.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::bounds::MOST_REGIONS;
use super::digest::digest;
use super::kinds::{forget_loads, kind_in, relearn};
use super::lift::{Lift, Now};
use super::loadable::Loadable;
use super::region::RegionState;
use super::set_aside::MOST_SET_ASIDE;
use super::shared::Shared;
use super::state::{InForce, State};
use super::status::Calibration;
use crate::error::Error;
use crate::quantity::Day;
use crate::reason::{NamedPlace, OverrideEnd, Restart};
use crate::record::{Grant, LiftParameters, Parameters, Place, Work, at_most};

impl State {
    pub(crate) fn take_parameters(&mut self, parameters: &Parameters, on: Day) -> Result<(), Error> {
        let mut known: Vec<Lift> = core::mem::take(&mut self.lifts);
        // While a lift was set aside nobody looked after it: its own days count, whatever else loaded its regions.
        self.set_aside.iter_mut().for_each(|lift| lift.now.count_own_gap(None, on));
        known.append(&mut self.set_aside);
        let before = self.in_force.take();
        let same_equipment = before.as_ref().is_some_and(|before| {
            let before = &before.parameters;
            before.implements == parameters.implements
                && before.stock == parameters.stock
                && before.blocks == parameters.blocks
        });
        for (at, set) in parameters.lifts.iter().enumerate() {
            let body = self.shared.body_mass().map(|(_, mass)| mass);
            let inside = |error: Error| error.within(&alloc::format!("lifts[{at}]"));
            let kept = known.iter().filter(|_| same_equipment);
            let alike = |lift: &&Lift| lift.loads_like(set);
            let loadable = match self.lifts.iter().find(alike).or_else(|| kept.clone().find(alike)) {
                Some(lift) => Arc::clone(&lift.loadable),
                None => Arc::new(Loadable::of(set, parameters, body).map_err(inside)?),
            };
            let earlier = known.iter().position(|lift| lift.set.id == set.id).map(|at| known.swap_remove(at));
            let earlier = earlier.map(|lift| self.shared.with_gap_of_its_regions(lift, set, on));
            let start = set.start.with_load(loadable.start_of(set).map_err(inside)?);
            let now = match earlier {
                Some(earlier) => {
                    let before = before.as_ref().map(|all| &*all.parameters);
                    let older = self.shared.is_older(parameters.policy.older_from_years, on);
                    carried(earlier, before, (set, start, &loadable), parameters, (older, on))
                }
                None => self.shared.take_up(set, Now::new(start, on, set.learning(&parameters.policy)), on),
            };
            let mut lift = Lift { set: Arc::new(set.clone()), now, loadable };
            lift.ease_where_nothing_was(on);
            // Of one that was set aside nobody has looked since whether it is over.
            lift.now.overruled.take_if(|given| given.expires < on);
            self.lifts.push(lift);
        }
        self.shared.lay_by(&mut known, parameters, on)?;
        at_most("lifts set aside", known.len(), MOST_SET_ASIDE)?;
        known.sort_by(|one, other| one.set.id.cmp(&other.set.id));
        for lift in &mut known {
            lift.now.withdraw_offer(on);
            // Nobody looks at it while it is left out, and its id may come to name something else.
            let was = before.as_ref().and_then(|all| kind_in(&all.parameters, &lift.set.implement));
            if was != kind_in(parameters, &lift.set.implement) && !lift.now.other_implement {
                let kept = before.as_ref().and_then(|all| lift.kept_of(&all.parameters.policy, on));
                lift.now.leave(was, kept, on);
                lift.now.other_implement = true;
            }
            lift.settle_held();
            // The equipment may change meanwhile, and nothing is loaded on it.
            lift.loadable = Arc::default();
        }
        self.set_aside = known;
        self.declare_regions(parameters)?;
        self.in_force =
            Some(InForce { parameters: Arc::new(parameters.clone()), digest: digest(parameters).into() });
        self.forget_closed_regions();
        // A stop in force holds the new lifts too.
        self.halt_where_stopped(on);
        // One that was set aside may have been signed off meanwhile.
        self.reopen(on);
        Ok(())
    }

    fn declare_regions(&mut self, parameters: &Parameters) -> Result<(), Error> {
        for region in &parameters.regions {
            if self.shared.region(&region.id).is_none() {
                self.shared.regions.push(RegionState::new(region.id.clone()));
            }
        }
        at_most("regions", self.shared.regions.len(), MOST_REGIONS)?;
        let loaded = parameters.lifts.iter().flat_map(|lift| &lift.regions);
        for id in loaded {
            if let Some(region) = self.shared.region_mut(id) {
                region.lifted = true;
            }
        }
        Ok(())
    }

    /// Regions that a lift had earlier concern it only while something in them is open, or a clearance limits them.
    pub(crate) fn forget_closed_regions(&mut self) {
        let shared = &self.shared;
        for lift in &mut self.lifts {
            let set = &lift.set;
            lift.now.former.retain(|id| shared.is_open(id) && !set.regions.contains(id));
        }
    }
}

impl Lift {
    /// Other equipment may make the lighter load that a break, a stop or a step back asked for.
    fn ease_where_nothing_was(&mut self, on: Day) {
        let (grant, loads) = (self.now.grant, self.loadable.at(self.now.grant.place));
        if let Some(load) = loads.easier(grant.load(), grant.load()).filter(|_| self.now.nothing_easier) {
            self.now.stand_at(grant.with_load(load), on);
        }
    }
}

impl Shared {
    /// A lift that is to load other regions keeps the gap of those that it had: that the new ones were loaded meanwhile says
    /// nothing of it.
    fn with_gap_of_its_regions(&self, mut lift: Lift, set: &LiftParameters, on: Day) -> Lift {
        if lift.set.regions != set.regions
            && let Some(own) = lift.now.last_session
        {
            let waited =
                lift.set.regions.iter().filter_map(|id| self.region(id)?.loaded).min().unwrap_or(own);
            let gap = u16::try_from(on.since(waited)).unwrap_or(0);
            lift.now.missed = lift.now.missed.max(gap);
        }
        lift
    }
}

/// How a lift goes on under its new parameters.
fn carried(
    earlier: Lift,
    before: Option<&Parameters>,
    (set, start, loadable): (&LiftParameters, Grant, &Loadable),
    all: &Parameters,
    (older, on): (bool, Day),
) -> Now {
    let kept = before.and_then(|before| earlier.kept_of(&before.policy, on));
    let (was, mut now) = (earlier.set, earlier.now);
    let learning = set.learning(&all.policy);
    now.last_place = now.last_place.and_then(|place| same_place(&was, set, place));
    now.moved = now.moved.and_then(|(told, place)| Some((told, same_place(&was, set, place)?)));
    for region in &was.regions {
        if !set.regions.contains(region) && !now.former.contains(region) {
            now.former.push(region.clone());
        }
    }
    let other_kind =
        before.is_some_and(|before| kind_in(before, &was.implement) != kind_in(all, &set.implement));
    let aside = core::mem::take(&mut now.other_implement);
    let other_kind = aside || other_kind;
    if other_kind || all.check_load(set, now.grant.load()).is_err() {
        // The number on a bar says nothing about dumbbells, a stack or help: from the start, and learned anew.
        let place = no_harder(&was, (set, start.place), now.grant.place);
        if !aside {
            now.leave(before.and_then(|before| kind_in(before, &was.implement)), kept, on);
        }
        let kind = kind_in(all, &set.implement).filter(|_| other_kind);
        let load =
            now.begins_at(kind, (&was, set), start.load(), &loadable.at(place), (&all.policy, older, on));
        now.end_override(&was, &loadable.at(place));
        now.begun_anew = other_kind;
        forget_loads(&mut now, Grant { place, ..start.with_load(load) }, learning, on);
    } else {
        match same_place(&was, set, now.grant.place) {
            Some(place) => now.grant.place = place,
            None => lose_place(&mut now, &was, (set, start), learning, on),
        }
    }
    let other_test = was.gate != set.gate || was.criteria != set.criteria || was.pass != set.pass;
    if other_test || was.implement != set.implement || was.starts_from != set.starts_from {
        now.restart(on, if other_test { Restart::GateChanged } else { Restart::EquipmentChanged });
    }
    now
}

/// The start's place, but no harder than where it stood: on no harder rung, in no longer range and no slower tempo.
fn no_harder(was: &LiftParameters, (set, start): (&LiftParameters, Place), stood: Place) -> Place {
    let rung = was.rungs.get(usize::from(stood.rung)).and_then(|rung| set.rung_with(&rung.id));
    let rung = rung.filter(|rung| set.is_harder(start.rung, *rung)).unwrap_or(start.rung);
    let range = same_entry(&was.ranges, &set.ranges, stood.range).unwrap_or(stood.range).min(start.range);
    let tempo = same_entry(&was.tempos, &set.tempos, stood.tempo).unwrap_or(stood.tempo).min(start.tempo);
    Place { rung, range, tempo }
}

/// The same of a place by what it was: where the new lists do not have its range or its tempo, the easiest.
pub(crate) fn no_harder_than(was: &NamedPlace, set: &LiftParameters, start: Place) -> Place {
    let rung = was.rung.as_ref().and_then(|id| set.rung_with(id));
    let rung = rung.filter(|rung| set.is_harder(start.rung, *rung)).unwrap_or(start.rung);
    let range = number_of(was.range, &set.ranges).unwrap_or(0).min(start.range);
    let tempo = number_of(was.tempo, &set.tempos).unwrap_or(0).min(start.tempo);
    Place { rung, range, tempo }
}

fn number_of<T: PartialEq>(entry: Option<T>, list: &[T]) -> Option<u8> {
    let entry = entry?;
    list.iter().position(|other| *other == entry).and_then(|at| u8::try_from(at).ok())
}

/// The place is gone from the new lists: learn it anew, with no more work and at no harder place than before.
fn lose_place(
    now: &mut Now,
    was: &LiftParameters,
    (set, start): (&LiftParameters, Grant),
    learning: u8,
    on: Day,
) {
    let granted = now.grant;
    let work = Work {
        sets: granted.work.sets.min(start.work.sets),
        reps: granted.work.reps.min(start.work.reps),
        load: granted.load().min(start.load()),
    };
    let load = work.load;
    now.stand_at(Grant { place: no_harder(was, (set, start.place), granted.place), work }, on);
    now.keep_easing_only(OverrideEnd::PlaceGone, was, granted.place);
    now.calibration = Calibration::of(learning);
    // By its number in the new lists the place may look the same.
    now.proven = None;
    relearn(now, load, on);
}

/// The number of the same place in the new lists: the rung with the same id, the same range and the same tempo.
fn same_place(was: &LiftParameters, set: &LiftParameters, place: Place) -> Option<Place> {
    let rung = set.rung_with(&was.rungs.get(usize::from(place.rung))?.id)?;
    let range = same_entry(&was.ranges, &set.ranges, place.range)?;
    let tempo = same_entry(&was.tempos, &set.tempos, place.tempo)?;
    Some(Place { rung, range, tempo })
}

/// Where the entry of the old list stands in the new one; nought where neither list has any.
fn same_entry<T: PartialEq>(was: &[T], set: &[T], number: u8) -> Option<u8> {
    match was.get(usize::from(number)) {
        Some(entry) => set.iter().position(|other| other == entry).and_then(|at| u8::try_from(at).ok()),
        None => set.is_empty().then_some(0),
    }
}
