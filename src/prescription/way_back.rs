//! What is named beside what stands in the way: the way back from a break, a stop or a rest, what a gate asks for anew, and the
//! limits that keep every day below the work granted.

use alloc::vec::Vec;

use super::change::Change;
use crate::gate::{PassRun, Requirement};
use crate::progression::{HALF_SESSIONS, Now, Purpose, Status, View, WayBack, let_go, returned, row_today};
use crate::quantity::{Day, Mass};
use crate::record::Work;

/// What is left of the way back of a lift that stands so: its passes, no fewer than the sessions that have half the sets, and
/// what it has to learn again after a long break.
pub(super) fn way_back(way: WayBack, passes: u8, now: &Now, view: &View<'_>) -> Vec<Change> {
    let policy = view.policy();
    let needed = policy.return_passes.max(policy.step_back_passes);
    // While a region still needs clear sessions the first row gives nothing back after one pass.
    let waits = view.regions().any(|region| region.clear_needed > 0);
    let left = if way.restores() && !waits { 1 } else { needed.saturating_sub(passes).max(1) };
    // At the load that the first row gives back, and after sessions of which half is too little to tell, the gate counts from
    // nothing.
    let (left, untold) = (u32::from(left) + u32::from(eased(view)), untold(now, view));
    let restores = way.restores() && way.cap > now.grant.load();
    let anew = restores || halved(now, view) > 0;
    let run = if anew { run_anew(view) } else { Some(0) };
    let shown = run.unwrap_or(0);
    let count = if restores { left.max(untold) + shown } else { left.max(untold + shown) };
    let learns = policy.layoff.iter().take(usize::from(way.row_asked())).any(|row| row.relearn);
    let relearning = if learns { view.lift.set.relearning(policy) } else { 0 };
    let others = run.is_none().then_some(Change::GateOpens);
    let learning = still_to_learn(now, relearning);
    core::iter::once(Change::PassingSessions { count }).chain(others).chain(learning).collect()
}

/// Sessions of calibration that come after what holds the lift now: those still open, and no fewer than what it has to learn
/// again.
pub(super) fn still_to_learn(now: &Now, again: u8) -> Option<Change> {
    let count = now.calibration.left().max(again);
    (count > 0).then_some(Change::LearningSessions { count })
}

/// The way back that a lift has before it which is stopped or rests: no shorter than that after a stop.
pub(super) fn way_after_stop(status: &Status, view: &View<'_>) -> Vec<Change> {
    let now = &view.lift.now;
    let way = status.way_back().unwrap_or(WayBack::new(now.grant.load(), 0, 0));
    // The break that lies behind the stop asks for its own row when the lift is trained again.
    let row = way.row.max(row_today(view));
    let back = Now { half_sessions: HALF_SESSIONS, ..now.clone() };
    let mut changes =
        way_back(WayBack { row, no_restoring: true, reopened: Some(view.on), ..way }, 0, &back, view);
    changes.extend(proof_anew(view));
    match now.purpose {
        Purpose::Train => {}
        // The stop hides what the coach had set.
        Purpose::Maintain { .. } | Purpose::Rest => changes.push(Change::CoachSetsOtherwise),
        Purpose::Retire => changes.extend(taken_up_again(view)),
    }
    changes
}

/// The proof of the forgiving lift beside a strict one, where that is stopped too: it comes back on an easier rung, and what it had
/// shown was shown elsewhere.
fn proof_anew(view: &View<'_>) -> Option<Change> {
    let forgiving = view.partner.filter(|_| view.is_strict())?.lift;
    let rung = forgiving.now.grant.place.rung;
    let lower = forgiving.set.easier_rung(rung) != rung;
    (forgiving.now.status.is_stopped() && lower).then_some(Change::ForgivingProof)
}

/// What a lift asks for that is taken up again after it was given up: as a new one, after a break of its own.
pub(super) fn taken_up_again(view: &View<'_>) -> Vec<Change> {
    let count = view.lift.set.learning(view.policy());
    let learning = (count > 0).then_some(Change::LearningSessions { count });
    let changes = core::iter::once(Change::CoachSetsOtherwise).chain(learning).chain(gate_anew(view));
    changes.chain(way_of_a_role(view)).collect()
}

/// The way back that a lift has before it which a role keeps out of use, once it is used again.
pub(super) fn way_of_a_role(view: &View<'_>) -> Vec<Change> {
    let taken_up = view.lift.standing(view.lift.now.taken_up(view.on));
    let view = View { lift: &taken_up, ..*view };
    way_of(returned(&view).as_ref(), &view).unwrap_or_default()
}

/// The way back of a lift that comes back so.
fn way_of(back: Option<&Now>, view: &View<'_>) -> Option<Vec<Change>> {
    let now = back?;
    Some(way_back(now.status.way_back()?, 0, now, view))
}

/// What a lift that rests goes on with: the way back that it had, or what it was learning.
pub(super) fn after_rest(status: &Status, view: &View<'_>) -> Vec<Change> {
    match status.way_back() {
        Some(way) => way_back(way, 0, &view.lift.now, view),
        None => still_to_learn(&view.lift.now, 0).into_iter().collect(),
    }
}

/// Sessions that have to pass, after one that is eased by pain.
pub(super) fn passing(count: u32, view: &View<'_>) -> Change {
    Change::PassingSessions { count: count.saturating_add(u32::from(eased(view))) }
}

/// What a gate asks for of which nothing is shown yet.
pub(super) fn gate_anew(view: &View<'_>) -> Vec<Change> {
    alloc::vec![run_anew(view).map_or(Change::GateOpens, |count| passing(count, view))]
}

fn run_anew(view: &View<'_>) -> Option<u32> {
    run_of(view.lift.set.gate.requirement()).map(|run| u32::from(run.sessions()))
}

/// The next session, where pain eases it: it shows nothing of the work granted, so it is none of those that have to pass.
pub(super) fn eased(view: &View<'_>) -> u8 {
    u8::from(view.next_is_eased())
}

/// Sessions still to come that tell the gate nothing: those with half the sets, and one that is eased by pain.
pub(super) fn untold(now: &Now, view: &View<'_>) -> u32 {
    u32::from(halved(now, view).max(eased(view)))
}

/// The longest run of passing sessions in what a gate asks for.
fn run_of(requirement: &Requirement) -> Option<&PassRun> {
    match requirement {
        Requirement::PassRun(run) => Some(run),
        Requirement::All(of) | Requirement::Any(of) | Requirement::AtLeast { of, .. } => {
            of.iter().filter_map(run_of).max_by_key(|run| run.sessions())
        }
        _ => None,
    }
}

/// Sessions with half the sets that are still to come, where half is too little for a session to tell the gate anything.
fn halved(now: &Now, view: &View<'_>) -> u8 {
    let Work { sets, reps, .. } = now.grant.work;
    let half = match sets {
        1 if now.nothing_easier || view.nothing_is_easier() => (1, reps.div_ceil(2)),
        _ => (sets.div_ceil(2), reps),
    };
    if is_too_little(half, view) { now.half_sessions } else { 0 }
}

/// Whether so many sets of so many repetitions are fewer than a session of the gate's run has to show.
pub(super) fn is_too_little((sets, reps): (u8, u8), view: &View<'_>) -> bool {
    let reps = u16::from(sets) * u16::from(reps);
    run_of(view.lift.set.gate.requirement()).is_some_and(|run| reps < run.of())
}

/// What the end of a noted break leaves to be done: the way back where it lasts so long, else a session and what the break hides.
pub(super) fn after_break(until: Day, status: &Status, view: &View<'_>) -> Vec<Change> {
    let over = until.plus(1).unwrap_or(until);
    let back = returned(&View { on: over, ..*view });
    way_of(back.as_ref(), view).unwrap_or_else(|| {
        core::iter::once(Change::Sessions { count: 1 }).chain(after_rest(status, view)).collect()
    })
}

/// What keeps every day from the work granted, or from what the way back gives back: while it does, no session shows that
/// work. Nobody lifts what cannot be made so light.
pub(super) fn of_the_limit(status: &Status, view: &View<'_>) -> Vec<Change> {
    let given_back = status.way_back().filter(WayBack::restores).map(|way| way.cap);
    let granted = view.lift.now.grant.load();
    let granted = given_back.map_or(granted, |load| load.max(granted));
    let below = |limit: Option<Mass>| limit.is_some_and(|limit| limit < granted);
    let clearance = below(view.clearance_load()).then_some(Change::Clearance);
    let ceiling = below(view.lift.set.ceiling) || is_above(view.lift.now.grant.load(), view);
    let otherwise = ceiling.then_some(Change::CoachSetsOtherwise);
    let up_to = view.lift.now.grant.load();
    let kit = view.is_kit_held().then_some(Change::MoreToLoad { up_to });
    clearance.into_iter().chain(otherwise).chain(kit).chain(after_the_word(view)).collect()
}

/// The way back that waits where a word has kept the lift below its work for so long, once it keeps it no more.
fn after_the_word(view: &View<'_>) -> Vec<Change> {
    let back = let_go(view).filter(|_| view.is_held());
    way_of(back.as_ref(), view).unwrap_or_default()
}

/// Whether all that can be loaded at the lift's place is heavier than this.
pub(super) fn is_above(load: Mass, view: &View<'_>) -> bool {
    let lightest = view.lift.loadable.at(view.lift.now.grant.place).lightest();
    lightest.is_some_and(|lightest| lightest > load)
}
