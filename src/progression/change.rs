//! New parameters: what stays, what is set aside, what is learned anew. Nothing that is open is lost.

use alloc::sync::Arc;
use alloc::vec::Vec;

use super::bounds::{MOST_REGIONS, MOST_SET_ASIDE};
use super::digest::digest;
use super::lift::{Lift, Now};
use super::loadable::Loadable;
use super::region::RegionState;
use super::state::{InForce, State};
use super::status::{Calibration, Status, WayBack};
use crate::error::{Allowed, Code, Error};
use crate::loading::Implement;
use crate::quantity::{Day, Mass, Name};
use crate::record::{Grant, LiftParameters, Parameters, Place, at_most};

impl State {
    pub(crate) fn take_parameters(&mut self, parameters: &Parameters, on: Day) -> Result<(), Error> {
        let mut known: Vec<Lift> = core::mem::take(&mut self.lifts);
        // While a lift was set aside nobody looked after it: its own days count, whatever else loaded its regions.
        self.set_aside.iter_mut().for_each(|lift| lift.now.count_own_gap(on));
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
            check_start(set, &loadable).map_err(inside)?;
            let earlier = known.iter().position(|lift| lift.set.id == set.id).map(|at| known.swap_remove(at));
            let now = match earlier {
                Some(earlier) => {
                    carried(earlier, before.as_ref().map(|all| &*all.parameters), set, parameters, on)
                }
                None => Now::new(set.start, on, set.learning(&parameters.policy)),
            };
            self.lifts.push(Lift { set: Arc::new(set.clone()), now, loadable });
        }
        at_most("lifts set aside", known.len(), MOST_SET_ASIDE)?;
        known.sort_by(|one, other| one.set.id.cmp(&other.set.id));
        for lift in &mut known {
            lift.now.withdraw_offer(on);
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

    /// Regions that a lift had earlier concern it only while something in them is open.
    pub(crate) fn forget_closed_regions(&mut self) {
        let shared = &self.shared;
        for lift in &mut self.lifts {
            let set = &lift.set;
            let open = |id: &Name| shared.region(id).is_some_and(RegionState::is_open);
            lift.now.former.retain(|id| open(id) && !set.regions.contains(id));
        }
    }
}

/// Whether the start can be loaded: at its height, neither below the lightest load nor above the heaviest.
fn check_start(set: &LiftParameters, loadable: &Loadable) -> Result<(), Error> {
    let load = set.start.load();
    let loads = loadable.at(set.start.place);
    match (loads.lightest(), loads.heaviest()) {
        (Some(lightest), Some(heaviest)) if load >= lightest && load <= heaviest => Ok(()),
        (Some(lightest), Some(heaviest)) => {
            let (low, high) = (lightest.kg(), heaviest.kg());
            Err(Error::range(
                Code::NotLoadable,
                "load",
                load.kg(),
                low,
                high,
                "kg at the height of the start",
            )
            .within("work")
            .within("start"))
        }
        _ => {
            let rule = Allowed::rule("an implement that makes some load");
            Err(Error::new(Code::NotLoadable, "implement", set.implement.as_str(), rule))
        }
    }
}

/// How a lift goes on under its new parameters.
fn carried(
    earlier: Lift,
    before: Option<&Parameters>,
    set: &LiftParameters,
    all: &Parameters,
    on: Day,
) -> Now {
    let (was, mut now) = (earlier.set, earlier.now);
    let learning = set.learning(&all.policy);
    for region in &was.regions {
        if !set.regions.contains(region) && !now.former.contains(region) {
            now.former.push(region.clone());
        }
    }
    let kind = |all: &Parameters, id: &Name| all.implement(id).map(kind_of);
    let other_kind = before.is_some_and(|before| kind(before, &was.implement) != kind(all, &set.implement));
    if other_kind || all.check_load(set, now.grant.load()).is_err() {
        // The number on a bar says nothing about dumbbells, a stack or help: from the start, and learned anew.
        forget_loads(&mut now, set.start, learning, on);
    } else {
        match same_place(&was, set, now.grant.place) {
            Some(place) => now.grant.place = place,
            None => lose_place(&mut now, &was, set, learning, on),
        }
    }
    let other_test = was.gate != set.gate || was.criteria != set.criteria || was.pass != set.pass;
    if other_test || was.implement != set.implement || was.starts_from != set.starts_from {
        now.forget_evidence(on);
    }
    now
}

/// The kind of an implement: a load on one says nothing about a load on another.
const fn kind_of(implement: &Implement) -> core::mem::Discriminant<Implement> {
    core::mem::discriminant(implement)
}

/// Starts anew without the loads of another kind of implement.
fn forget_loads(now: &mut Now, start: Grant, learning: u8, on: Day) {
    now.stand_at(start, on);
    now.peak = start.load();
    now.moves.clear();
    now.proven = None;
    now.closed_since = None;
    now.overruled = None;
    now.calibration = Calibration::of(learning);
    if let super::status::Purpose::Maintain { not_below } = &mut now.purpose {
        *not_below = None;
    }
    relearn(now, start.load(), on);
}

/// The place is gone from the new lists: learn it anew, no heavier and on no harder rung than before.
fn lose_place(now: &mut Now, was: &LiftParameters, set: &LiftParameters, learning: u8, on: Day) {
    let load = now.grant.load().min(set.start.load());
    let stood = was.rungs.get(usize::from(now.grant.place.rung)).and_then(|rung| set.rung_with(&rung.id));
    let rung = stood.filter(|rung| set.is_harder(set.start.place.rung, *rung));
    let place = Place { rung: rung.unwrap_or(set.start.place.rung), ..set.start.place };
    now.stand_at(Grant { place, ..set.start.with_load(load) }, on);
    now.keep_easing_only();
    now.calibration = Calibration::of(learning);
    relearn(now, load, on);
}

/// Back to learning; on its way back it stays, from where it now stands, with its passes still to come.
fn relearn(now: &mut Now, load: Mass, on: Day) {
    let way = |way: WayBack| WayBack { cap: load, row: 2, ..way };
    match &mut now.status {
        Status::Returning { way: old, passes } => (*old, *passes) = (way(*old), 0),
        Status::Resting { way: old } | Status::StoppedRefer { way: old } => *old = old.map(way),
        Status::Retired => {}
        _ => now.enter(Status::Learning, on),
    }
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
