//! How long a move stays on offer. Days that a lift only has to wait for its turn do not use the offer up; old
//! evidence does.

use alloc::vec::Vec;

use super::guard::Situation;
use super::state::State;
use super::status::Status;
use super::view::View;
use crate::quantity::Day;
use crate::reason::Restart;

/// Last day of the move on offer, where one is.
pub(crate) fn offer_end(view: &View<'_>) -> Option<Day> {
    let Status::ReadyToAdvance { since } = view.lift.now.status else { return None };
    let policy = view.policy();
    let days = i32::from(policy.offer_days);
    let plain = since.plus(days).ok()?;
    let (Some(free), Some(last)) = (free_from(view, since), view.lift.now.last_session) else {
        return Some(plain);
    };
    let fresh = last.plus(i32::from(policy.freshness_days)).ok()?;
    Some(plain.max(free.plus(days).ok()?.min(fresh)))
}

/// Last day on which the move can be taken, where one is on offer: a clearance that ends earlier ends it for then. One given
/// anew lets it go on to its own end.
pub(crate) fn takeable_until(view: &View<'_>) -> Option<Day> {
    let cleared = view.shared.clearance.as_ref().map(|clearance| clearance.expires);
    let cleared = cleared.filter(|expires| *expires >= view.on);
    offer_end(view).map(|end| cleared.map_or(end, |expires| end.min(expires)))
}

/// The first day from that one on which the lift no longer has to wait for its turn; none where no wait ends it.
fn free_from(view: &View<'_>, from: Day) -> Option<Day> {
    let mut days: Vec<Day> = ends_of_windows(view).into_iter().map(|day| day.max(from)).collect();
    days.push(from);
    days.sort_unstable();
    days.dedup();
    days.into_iter().find(|day| !Situation::new(View { on: *day, ..*view }, None).waits())
}

/// Days on which a window that counts this lift's, its partner's or its region's moves comes to an end.
fn ends_of_windows(view: &View<'_>) -> Vec<Day> {
    let policy = view.policy();
    let partner = view.partner.map(|partner| partner.lift);
    let lifts = core::iter::once(view.lift).chain(partner);
    let moved = lifts.flat_map(|lift| lift.now.moves.iter().map(|(day, _)| *day));
    let moved: Vec<Day> =
        moved.chain(view.regions().flat_map(|region| region.moves.iter().copied())).collect();
    let windows = [policy.cooling_off_days, policy.region_window_days, policy.window_days];
    let ends = windows.into_iter().flat_map(|days| moved.iter().map(move |day| day.plus(i32::from(days))));
    ends.filter_map(Result::ok).collect()
}

impl State {
    /// Lets offers and overrides run out, and illnesses begin that were noted in advance. Time alone only ever takes permission
    /// away.
    pub(crate) fn expire(&mut self, on: Day) {
        let over: Vec<Option<Day>> =
            self.views(on).map(|view| offer_end(&view).filter(|end| on > *end)).collect();
        let mut ran_out: Vec<Option<Day>> = Vec::with_capacity(self.lifts.len());
        for (lift, over) in self.lifts.iter_mut().zip(over) {
            let ended = lift.now.overruled.take_if(|overruled| overruled.expires < on);
            ran_out.push(ended.map(|ended| ended.expires));
            if let Some(end) = over {
                lift.now.restart(on, Restart::OfferEnded);
                // It ended by itself on its own day, whenever somebody looks.
                lift.now.restarted = Some((end, Restart::OfferEnded));
            }
        }
        if ran_out.iter().any(Option::is_some) {
            self.end_held(&ran_out, on);
        }
        self.begin_illnesses(on);
    }
}
