//! Coming back after a break: the layoff table.
//!
//! The gap counts days since a region of the lift was loaded, by whichever lift. A gap that another lift ended counts
//! once, when this lift is next trained, however often the other was trained meanwhile. Days of light work are counted by the same
//! table (see `held`).

use super::held::Held;
use super::lift::{Lift, Now};
use super::loadable::Loads;
use super::status::{Status, WayBack};
use super::view::View;
use crate::quantity::{Day, Mass};
use crate::reason::OverrideEnd;
use crate::record::{Place, Policy};

/// Rows further down after an illness in bed, a hospital stay or an operation (our choice).
const ROWS_AFTER_ILLNESS: usize = 2;
/// First sessions after a break with half the sets (our choice).
pub(super) const HALF_SESSIONS: u8 = 2;

/// Days since the region of the lift that has waited longest was loaded, or since its own last session where it is stopped; none before
/// that.
pub(crate) fn gap(view: &View<'_>) -> Option<i32> {
    let own = view.lift.now.last_session?;
    let loaded = view.shared.regions.iter().filter(|region| view.lift.set.regions.contains(&region.id));
    // A lift that has never been trained has nothing to come back to.
    let last = loaded.filter_map(|region| region.loaded).min().unwrap_or(own);
    let last = if view.lift.now.status.is_stopped() { last.min(own) } else { last };
    Some(view.on.since(last))
}

/// A break from the work of a lift, as the layoff table counts it.
#[derive(Clone, Copy)]
struct Break {
    /// Days, and the row for them, 1 being the shortest.
    gap: u16,
    row: u8,
    /// The days are those of light work.
    held: bool,
    /// The load before it.
    load: Mass,
    /// What was lifted all the same, and is not taken away.
    lifted: Option<Mass>,
}

/// The row for so many days; none for none.
fn row_for(view: &View<'_>, days: i32, ill: bool) -> Option<u8> {
    let policy = view.policy();
    row_of(policy, view.shared.is_older(policy.older_from_years, view.on), days, ill)
}

fn row_of(policy: &Policy, older: bool, days: i32, ill: bool) -> Option<u8> {
    let row = policy.layoff.iter().filter(|row| days >= i32::from(row.from_days)).count();
    // An illness makes a break of any gap, so that age counts on top of it too.
    let older = older && (row > 0 || ill);
    let further = if ill { ROWS_AFTER_ILLNESS } else { 0 } + usize::from(older);
    u8::try_from((row + further).min(policy.layoff.len())).ok().filter(|row| *row > 0)
}

/// The break without the lift's regions: the longest gap since it was trained.
fn untrained(view: &View<'_>) -> Option<Break> {
    let gap = gap(view)?.max(i32::from(view.lift.now.missed));
    let row = row_for(view, gap, view.lift.now.ill)?;
    let load = view.lift.now.grant.load();
    Some(Break { gap: u16::try_from(gap).unwrap_or(u16::MAX), row, held: false, load, lifted: None })
}

/// The days of light work. Days without its regions take of what was lifted before them too.
fn held(view: &View<'_>) -> Option<Break> {
    let held = view.lift.now.held?;
    let gap = held.days_by(view.on);
    let row = row_for(view, i32::from(gap), false)?;
    let after = untrained(view);
    let lifted = held.lifted_where(view.is_range_held());
    let lifted = lifted.map(|lifted| after.map_or(lifted, |after| left_of(view, lifted, after.row)));
    Some(Break { gap, row, held: true, load: held.load, lifted })
}

/// The row for the gap of that day, 0 for none, whether the lift is trained or stopped.
pub(crate) fn row_today(view: &View<'_>) -> u8 {
    untrained(view).into_iter().chain(held(view)).map(|from| from.row).max().unwrap_or(0)
}

/// The lift as it comes back on that day, where a gap asks for it: one without its regions, or days of light work, once what kept it
/// there is over or leaves more than comes after it.
pub(crate) fn returned(view: &View<'_>) -> Option<Now> {
    if !view.lift.now.status.is_trained() {
        return None;
    }
    let untrained = untrained(view);
    let matters = |held: &Break| !view.is_held() || left_by(view, *held) < view.allowed_as_made();
    let held = held(view).filter(|held| !is_lowered(view, *held)).filter(matters);
    // Of two breaks the load of the one that leaves less, the way back from the longer, and the sets of the one without training.
    let both = || held.into_iter().chain(untrained);
    let left = both().map(|from| left_by(view, from)).min()?;
    let longer = both().max_by_key(|from| (from.row, from.gap))?;
    let mut back = come_back(view, longer, left, untrained);
    // Light work too short for a row of its own is over with a break that has one: what comes after is held against what is left.
    let counts =
        |kept: &Held| kept.goes_on || row_for(view, i32::from(kept.days_by(view.on)), false).is_some();
    back.held = back.held.filter(|_| held.is_none()).filter(counts).map(|held| held.parted(view.on));
    Some(back)
}

/// Whether the lift stands no higher already than what its light work leaves, each as it is made: what differs by less than the
/// next load is the same.
fn is_lowered(view: &View<'_>, held: Break) -> bool {
    let (granted, made) = (view.lift.now.grant.load(), view.lift.granted_as_loaded());
    let lifted = held.lifted.is_some_and(|lifted| lifted >= made);
    let left = view.lift.loadable.at(view.lift.now.grant.place).rounded_down(left_by(view, held));
    (lifted || held.load > granted) && left >= made
}

/// The lift as it would come back on that day if nothing kept it below its work any more; none where it stands no higher already.
pub(crate) fn let_go(view: &View<'_>) -> Option<Now> {
    let from = held(view).filter(|held| view.lift.now.status.is_trained() && !is_lowered(view, *held))?;
    Some(Now { held: None, ..come_back(view, from, left_by(view, from), None) })
}

/// The load that a break leaves, no more than is granted.
fn left_by(view: &View<'_>, from: Break) -> Mass {
    let left = left_of(view, from.load, from.row);
    from.lifted.map_or(left, |lifted| lifted.max(left)).min(view.lift.now.grant.load())
}

/// What a row leaves of a load at the granted place: the least of its own rule and of all rows above it.
fn left_of(view: &View<'_>, load: Mass, row: u8) -> Mass {
    let (lift, policy) = (view.lift, view.policy());
    let place = lift.now.grant.place;
    let one_back = super::moves::one_load_back(lift, place, load, policy).unwrap_or(load);
    left_by_rows(policy, row, (load, one_back), &lift.loadable.at(place))
}

fn left_by_rows(policy: &Policy, row: u8, (load, one_back): (Mass, Mass), loads: &Loads<'_>) -> Mass {
    let rows = || policy.layoff.iter().take(usize::from(row));
    let left = rows().fold(1.0, |left, row| crate::numeric::smaller(left, row.load_left));
    let at_most = loads.share(load, left).min(one_back);
    if rows().any(|row| row.restart) { loads.lightest().unwrap_or(at_most).min(at_most) } else { at_most }
}

/// What so many days on other equipment leave of a load: the next lighter one that is made at the least.
pub(crate) fn left_after(policy: &Policy, older: bool, days: i32, load: Mass, loads: &Loads<'_>) -> Mass {
    let Some(row) = row_of(policy, older, days, false) else { return load };
    let made = loads.rounded_down(load);
    left_by_rows(policy, row, (load, loads.below(made).unwrap_or(made)), loads)
}

/// The lift after that break, with no more than so much left of its load; half of the sets is for one without training.
fn come_back(view: &View<'_>, from: Break, left: Mass, untrained: Option<Break>) -> Now {
    let Break { gap, row, held, .. } = from;
    let (lift, policy, on) = (view.lift, view.policy(), view.on);
    let before = &lift.now;
    let rows = || policy.layoff.iter().take(usize::from(row));
    let (place, load) = (before.grant.place, before.grant.load());
    let loads = lift.loadable.at(place);
    let easier = loads.easier(load, left);
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
        held: longer.map_or(held, |longer| longer.held),
        ..WayBack::new(
            earlier.map_or(load, |earlier| earlier.cap.max(load)),
            earlier.map_or(row, |earlier| earlier.row.max(row)),
            longer.map_or(gap, |longer| longer.gap),
        )
    };
    now.stand_easier(grant, on);
    now.enter(Status::Returning { way, passes: 0 }, on);
    // Who trained all the while, however lightly, has kept what so many sets ask for.
    if let Some(untrained) = untrained {
        let told = if way.held { (untrained.gap, untrained.row) } else { (way.gap, way.row) };
        (now.half_sessions, now.half_after) = (HALF_SESSIONS, Some(told));
    }
    now.keep_easing_only(if held { OverrideEnd::HeldLower } else { OverrideEnd::Break }, &lift.set, place);
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
        let days = lift.set.relearning(policy).max(lift.now.calibration.left());
        lift.now.calibration = super::status::Calibration::of(days);
    }
    lift.now.lead_on(on);
    if lift.now.purpose == super::status::Purpose::Rest {
        lift.now.purpose = super::status::Purpose::Train;
    }
}
