//! What the result of a session means for the course of its lift.

use alloc::sync::Arc;

use super::judge::Judged;
use super::lift::{Lift, Now};
use super::sitting::Sitting;
use super::status::{Purpose, Status};
use super::step_back::step_back;
use crate::gate::Outcome;
use crate::quantity::{Day, Mass};
use crate::record::{Parameters, Policy};

/// What a result needs to know beside the lift itself.
pub(crate) struct Facts {
    pub(crate) below_usual: bool,
    pub(crate) may_restore: bool,
    /// Something comes before training.
    pub(crate) first: bool,
    pub(crate) all: Arc<Parameters>,
}

/// Takes what a session came to.
pub(crate) fn take_result(lift: &mut Lift, result: &Judged, on: Day, event: u32, facts: &Facts) {
    let now = &mut lift.now;
    let again = now.last_session.replace(on) == Some(on);
    let before = now.short;
    now.short = result.short;
    // What an earlier part of the day lost is not found again by a later one.
    let lost = now.fault.take().filter(|_| again);
    now.refused = None;
    now.override_ended = None;
    now.begun_anew = false;
    now.override_past = None;
    now.below_band = result.heaviest.filter(|load| lies_below_band(now.purpose, *load));
    now.fault = result.fault.clone().or(lost);
    let least = |before: u16| result.reserve.map(|own| own.min(before));
    now.reserve = if again { now.reserve.and_then(least) } else { result.reserve };
    if result.watched_held {
        now.watched = None;
    }
    if result.weak.is_some() {
        now.weak.clone_from(&result.weak);
    }
    if !now.status.is_trained() {
        return;
    }
    if matches!(now.status, Status::Resting { .. }) {
        if now.purpose == Purpose::Rest {
            now.unanswered = Some((event, on));
            return;
        }
        now.wake(on);
    }
    if again {
        // Of a day the part tells that fell short first.
        if result.outcome == Outcome::NotScored && result.as_asked_elsewhere {
            now.short = before.or(result.short);
        }
        take_again(lift, result, on, event, facts);
        return;
    }
    // Done while something that comes first is open or was said today: a pass says nothing and ends nothing, calibration neither,
    // of which the day counts, as it does of the days at the place; the morning after it is waited for, and what is worse counts.
    if facts.first && result.outcome == Outcome::Pass {
        if result.here {
            now.count_here(on);
        }
        if result.short_of_reserve || result.effort_unsaid {
            // What it left in reserve counts all the same.
            let own = sitting(now, result, on, event, facts);
            let nothing =
                Sitting { outcome: Outcome::NotScored, at_grant: false, scored: 0, acceptable: 0, ..own };
            now.remember(Sitting { asked_first: true, ..nothing });
            now.withdraw_offer(on);
        } else {
            now.unanswered = Some((event, on));
        }
        if now.status == Status::Learning {
            now.calibration.count_day();
        }
        return;
    }
    if !facts.first {
        // A token of the work is none of the sessions with half the sets.
        if !result.is_token {
            now.half_sessions = now.half_sessions.saturating_sub(1);
            now.half_after.take_if(|_| now.half_sessions == 0);
        }
        now.partner_pain = false;
    }
    if result.here {
        now.count_here(on);
    }
    now.remember(sitting(now, result, on, event, facts));
    count_outcome(lift, result, on, facts);
}

fn sitting(now: &Now, result: &Judged, on: Day, event: u32, facts: &Facts) -> Sitting {
    Sitting {
        session: event,
        day: on,
        outcome: result.outcome,
        critical: result.critical,
        below_usual: facts.below_usual,
        at_grant: result.short.is_none(),
        confirmed: false,
        short_of_reserve: result.short_of_reserve,
        effort_unsaid: result.effort_unsaid,
        miss_unplaced: result.miss_unplaced,
        asked_first: false,
        other_rater: now.other_rater,
        scored: result.scored,
        acceptable: result.acceptable,
    }
}

fn count_outcome(lift: &mut Lift, result: &Judged, on: Day, facts: &Facts) {
    let now = &mut lift.now;
    match result.outcome {
        Outcome::Pass => take_pass(lift, on, facts),
        Outcome::NotScored => take_neutral(lift, result, on),
        Outcome::Fail
            if facts.below_usual && !result.critical && now.neutral < facts.all.policy.neutral_fails =>
        {
            now.neutral += 1;
            take_neutral(lift, result, on);
        }
        Outcome::Fail => take_fail(lift, result, on, &facts.all.policy),
    }
}

/// A session on a day that has one already, after the lift was set otherwise or something was told that parts the two: what it
/// shows adds nothing, and what it does not show takes back what the day had.
fn take_again(lift: &mut Lift, result: &Judged, on: Day, event: u32, facts: &Facts) {
    let own = sitting(&lift.now, result, on, event, facts);
    let now = &mut lift.now;
    let learned = now.calibration;
    let earlier = now.sittings.pop_if(|last| last.day == on);
    // Of the day's effort the worse is kept, whichever part told it.
    let (short_of_reserve, effort_unsaid) =
        earlier.map_or((false, false), |earlier| (earlier.short_of_reserve, earlier.effort_unsaid));
    let own = Sitting {
        short_of_reserve: own.short_of_reserve || short_of_reserve,
        effort_unsaid: own.effort_unsaid || effort_unsaid,
        ..own
    };
    let effort = |earlier: Sitting| Sitting {
        short_of_reserve: own.short_of_reserve,
        effort_unsaid: own.effort_unsaid,
        ..earlier
    };
    let failed = |sitting: &Sitting| sitting.outcome == Outcome::Fail;
    match (result.outcome, earlier) {
        (Outcome::Fail, Some(earlier)) if failed(&earlier) => {
            if result.here {
                now.count_here(on);
            }
            let critical = earlier.critical || own.critical;
            now.sittings.push(Sitting { critical, ..effort(earlier) });
        }
        (Outcome::Fail, _) => {
            if result.here {
                now.count_here(on);
            }
            now.remember(own);
            count_outcome(lift, result, on, facts);
            // The day has been counted.
            lift.now.calibration = learned;
        }
        // Easier work as the day asked for it takes nothing from what was shown before it; but no offer outlasts it.
        (Outcome::NotScored, Some(earlier)) if result.as_asked_elsewhere => {
            now.sittings.push(earlier);
            now.withdraw_offer(on);
        }
        // Before it the day had nothing that is listed: a pass that said nothing, or what the lift was set otherwise after. No
        // older pass is the last session any more.
        (Outcome::NotScored, None) => {
            if now.last_passed() {
                if result.here {
                    now.count_here(on);
                }
                now.remember(own);
            }
            now.withdraw_offer(on);
        }
        (Outcome::NotScored, Some(earlier)) => {
            let shown = if earlier.outcome == Outcome::Pass { own } else { effort(earlier) };
            now.sittings.push(shown);
            now.withdraw_offer(on);
        }
        (Outcome::Pass, earlier) => now.sittings.extend(earlier.map(effort)),
    }
}

fn take_pass(lift: &mut Lift, on: Day, facts: &Facts) {
    let now = &mut lift.now;
    now.fails = 0;
    now.neutral = 0;
    match &mut now.status {
        Status::Learning => count_learning(lift, on),
        Status::Consolidating => now.settle(on),
        Status::ReadyToAdvance { since } => *since = on,
        Status::SteppingBack { passes, .. } => {
            *passes = passes.saturating_add(1);
            if *passes >= facts.all.policy.step_back_passes {
                now.lead_on(on);
            }
        }
        Status::Returning { passes, .. } => {
            *passes = passes.saturating_add(1);
            super::layoff::finish_return(lift, on, &facts.all.policy, facts.may_restore);
        }
        _ => {}
    }
}

/// A session that is neither a pass nor a fail: an offer does not outlast it, and calibration counts its day where it was done at
/// the place that is learned.
fn take_neutral(lift: &mut Lift, result: &Judged, on: Day) {
    lift.now.withdraw_offer(on);
    if lift.now.status == Status::Learning && !result.away {
        count_learning(lift, on);
    }
}

fn take_fail(lift: &mut Lift, result: &Judged, on: Day, policy: &Policy) {
    let now = &mut lift.now;
    now.fails = now.fails.saturating_add(1);
    now.neutral = 0;
    now.withdraw_offer(on);
    let hurt = now.status == Status::Consolidating && result.critical && result.pain;
    match &mut now.status {
        Status::Learning if !result.away => count_learning(lift, on),
        Status::SteppingBack { passes, .. } | Status::Returning { passes, .. } => *passes = 0,
        _ => {}
    }
    if lift.now.fails >= policy.fails_to_step_back || hurt {
        step_back(lift, on, policy);
    }
}

/// Calibration ends when its days are done and the last session passed.
fn count_learning(lift: &mut Lift, on: Day) {
    let now = &mut lift.now;
    now.calibration.count_day();
    if !now.calibration.is_open() && now.last_passed() {
        // One that was given up on its way back, and taken up again, has now shown what that asked for.
        now.lead_on(on);
    }
}

/// Whether a load lies below the band of a maintained lift.
fn lies_below_band(purpose: Purpose, load: Mass) -> bool {
    matches!(purpose, Purpose::Maintain { not_below: Some(lowest) } if load < lowest)
}
