//! Guards over days: between moves, of a region, of a pair, and how far a lift may grow over a window.

use alloc::vec;
use alloc::vec::Vec;

use super::super::lift::Now;
use super::Situation;
use crate::quantity::{Day, Mass};
use crate::reason::Reason;

/// Days still to wait after that day, if any.
fn days_left(since: Day, on: Day, wait: u16) -> Option<u16> {
    u16::try_from(i32::from(wait) - on.since(since)).ok().filter(|left| *left > 0)
}

pub(super) fn cooled_off(s: &Situation<'_>) -> Vec<Reason> {
    let wait = s.view.policy().cooling_off_days;
    let left = s.now().moves.last().and_then(|(day, _)| days_left(*day, s.view.on, wait));
    left.map(|days_left| Reason::CoolingOff { days_left }).into_iter().collect()
}

pub(super) fn region_window(s: &Situation<'_>) -> Vec<Reason> {
    let policy = s.view.policy();
    let mut reasons = Vec::new();
    for region in s.view.regions() {
        let recent = region.moves.iter();
        let waits: Vec<u16> =
            recent.filter_map(|day| days_left(*day, s.view.on, policy.region_window_days)).collect();
        if let (true, Some(days_left)) =
            (waits.len() >= usize::from(policy.region_moves), waits.first().copied())
        {
            reasons.push(Reason::RegionWindow { region: region.id.clone(), days_left });
        }
    }
    reasons
}

pub(super) fn pair_allows(s: &Situation<'_>) -> Vec<Reason> {
    let (view, mut reasons) = (&s.view, Vec::new());
    let Some(partner) = view.partner else { return reasons };
    let other = &partner.lift.now;
    if s.now().fault.is_some() && s.now().fault == other.fault {
        reasons.push(Reason::PairFault);
    }
    let wait = view.policy().region_window_days;
    if let Some(days_left) = other.moves.last().and_then(|(day, _)| days_left(*day, view.on, wait)) {
        reasons.push(Reason::PairWindow { days_left });
    }
    if !view.is_strict() {
        return reasons;
    }
    match other.proven.filter(|(day, _)| view.on.since(*day) <= i32::from(view.policy().proof_days)) {
        None => reasons.push(Reason::PairProofMissing),
        Some((_, proven)) => {
            let loads = partner.lift.loadable.at(other.grant.place);
            let cap = loads.share(proven, partner.pair.ratio_cap);
            if s.to().is_some_and(|to| to.load() > cap) {
                reasons.push(Reason::PairCap { load: cap });
            }
        }
    }
    reasons
}

/// A pair on one day, or with too little rest between its lifts.
pub(super) fn pair_rested(s: &Situation<'_>) -> Vec<Reason> {
    super::super::pair::rest_missing(&s.view).into_iter().collect()
}

pub(super) fn window_cap(s: &Situation<'_>) -> Vec<Reason> {
    let Some(to) = s.to() else { return Vec::new() };
    let policy = s.view.policy();
    let loads = s.view.lift.loadable.at(to.place);
    let cap_on =
        |day: Day| loads.grown(load_before_window(s.now(), day, policy.window_days), policy.window_cap);
    let load = cap_on(s.view.on);
    // A load that stays is no growth, though a shorter window or an easier start would not allow it any more.
    if to.load() <= load || to.load() <= s.now().grant.load() {
        return Vec::new();
    }
    // The window opens as its moves fall out of it, the oldest first.
    let ends = s.now().moves.iter().filter_map(|(day, _)| day.plus(i32::from(policy.window_days)).ok());
    let free = ends.filter(|day| *day > s.view.on).find(|day| cap_on(*day) >= to.load());
    // A step larger than the window allows from here is not waited for.
    let days_left = free.and_then(|day| u16::try_from(day.since(s.view.on)).ok());
    vec![Reason::WindowCap { load, days_left }]
}

/// The load of which the growth over the window is counted.
fn load_before_window(now: &Now, on: Day, window: u16) -> Mass {
    let recent = now.moves.iter().filter(|(day, _)| on.since(*day) < i32::from(window));
    let granted = now.grant.load();
    recent.map(|(_, load)| *load).min().unwrap_or(granted).min(granted)
}
