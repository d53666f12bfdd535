//! Coming back after a break: the layoff table.
//!
//! The gap counts days since a region of the lift was loaded, by whichever lift. A gap that another lift ended counts
//! once, when this lift is next trained, however often the other was trained meanwhile.

use super::lift::{Lift, Now};
use super::status::{Status, WayBack};
use super::view::View;
use crate::quantity::Day;
use crate::reason::OverrideEnd;
use crate::record::{Place, Policy};

/// Rows further down after an illness in bed, a hospital stay or an operation (our choice).
const ROWS_AFTER_ILLNESS: usize = 2;
/// First sessions after a break with half the sets (our choice).
pub(super) const HALF_SESSIONS: u8 = 2;

/// Days since the region of the lift that has waited longest was loaded; none before the lift's first session.
pub(crate) fn gap(view: &View<'_>) -> Option<i32> {
    let own = view.lift.now.last_session?;
    let loaded = view.shared.regions.iter().filter(|region| view.lift.set.regions.contains(&region.id));
    // A lift that has never been trained has nothing to come back to.
    let last = loaded.filter_map(|region| region.loaded).min().unwrap_or(own);
    Some(view.on.since(last))
}

/// Row of the layoff table for the longest gap since the lift was trained, 1 being the shortest; none for none.
fn row(view: &View<'_>) -> Option<(u16, u8)> {
    let policy = view.policy();
    let gap = gap(view)?.max(i32::from(view.lift.now.missed));
    let ill = view.lift.now.ill;
    let row = policy.layoff.iter().filter(|row| gap >= i32::from(row.from_days)).count();
    // An illness makes a break of any gap, so that age counts on top of it too.
    let older = (row > 0 || ill) && view.shared.is_older(policy.older_from_years, view.on);
    let further = if ill { ROWS_AFTER_ILLNESS } else { 0 } + usize::from(older);
    let row = (row + further).min(policy.layoff.len());
    let row = u8::try_from(row).ok().filter(|row| *row > 0)?;
    Some((u16::try_from(gap).unwrap_or(u16::MAX), row))
}

/// The row for the gap of that day, 0 for none, whether the lift is trained or stopped.
pub(crate) fn row_today(view: &View<'_>) -> u8 {
    row(view).map_or(0, |(_, row)| row)
}

/// The lift as it comes back on that day, where a gap asks for it.
pub(crate) fn returned(view: &View<'_>) -> Option<Now> {
    let (gap, row) = row(view)?;
    view.lift.now.status.is_trained().then(|| come_back(view, gap, row))
}

/// What is left after that row: the least of its own rule and of all rows above it.
fn come_back(view: &View<'_>, gap: u16, row: u8) -> Now {
    let (lift, policy, on) = (view.lift, view.policy(), view.on);
    let before = &lift.now;
    let rows = || policy.layoff.iter().take(usize::from(row));
    let left = rows().fold(1.0, |left, row| crate::numeric::smaller(left, row.load_left));
    let (place, load) = (before.grant.place, before.grant.load());
    let loads = lift.loadable.at(place);
    let one_back = super::moves::one_load_back(lift, place, load, policy).unwrap_or(load);
    let mut at_most = loads.share(load, left).min(one_back);
    if rows().any(|row| row.restart) {
        at_most = loads.lightest().unwrap_or(at_most).min(at_most);
    }
    let easier = loads.easier(load, at_most);
    let mut grant = before.grant.with_load(easier.unwrap_or(load));
    if easier.is_none() || (rows().any(|row| row.easier_rung) && view.is_strict()) {
        grant.place = Place { rung: lift.set.easier_rung(place.rung), ..place };
    }
    let mut now = before.clone();
    // On its way back already, resting on it, stepping back, or a move not yet seen to hold: the longer break counts, and one pass does not give
    // back what was lost before this break.
    let earlier = before.status.way_back();
    let lowered = earlier.is_some() || before.status.is_to_be_seen();
    // Of two breaks the one of the larger row is told, of one row the longer; a stop is no break.
    let longer = earlier.filter(|earlier| earlier.gap > 0 && (earlier.row, earlier.gap) > (row, gap));
    let way = WayBack {
        reopened: earlier.and_then(|earlier| earlier.reopened),
        after_illness: before.ill || earlier.is_some_and(|earlier| earlier.after_illness),
        no_restoring: lowered,
        ..WayBack::new(
            earlier.map_or(load, |earlier| earlier.cap.max(load)),
            earlier.map_or(row, |earlier| earlier.row.max(row)),
            longer.map_or(gap, |longer| longer.gap),
        )
    };
    now.stand_easier(grant, on);
    now.enter(Status::Returning { way, passes: 0 }, on);
    (now.half_sessions, now.half_after) = (HALF_SESSIONS, Some((way.gap, way.row)));
    now.keep_easing_only(OverrideEnd::Break, &lift.set, place);
    // The coach's word that it rests stands, whatever time or other training has come between.
    if now.purpose == super::status::Purpose::Rest {
        now.rest(on);
    }
    now
}

/// Ends a return whose sessions have passed: after the shortest break back to the load before it, after a
/// longer one onward from where the lift stands.
pub(crate) fn finish_return(lift: &mut Lift, on: Day, policy: &Policy, may_restore: bool) {
    let Status::Returning { way, passes } = lift.now.status else { return };
    // Where the load may not be given back, a short break ends as a longer one does.
    let restores = way.restores() && may_restore && passes > 0;
    if !restores && passes < policy.return_passes.max(policy.step_back_passes) {
        return;
    }
    // Where nothing lighter could be loaded there is nothing to give back, and what was shown there stands.
    if restores && way.cap != lift.now.grant.load() {
        let grant = lift.now.grant.with_load(way.cap);
        lift.now.stand_at(grant, on);
    }
    let rows = policy.layoff.iter().take(usize::from(way.row_asked()));
    if rows.into_iter().any(|row| row.relearn) {
        let open = lift.now.calibration.needed.saturating_sub(lift.now.calibration.done);
        lift.now.calibration = super::status::Calibration::of(lift.set.relearning(policy).max(open));
    }
    lift.now.lead_on(on);
    if lift.now.purpose == super::status::Purpose::Rest {
        lift.now.purpose = super::status::Purpose::Train;
    }
}
