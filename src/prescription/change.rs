//! What would change a decision.

use alloc::vec::Vec;

use super::way_back::{
    after_break, after_rest, eased, gate_anew, is_above, is_too_little, of_the_limit, passing,
    still_to_learn, taken_up_again, untold, way_after_stop, way_back, way_of_a_role,
};
use crate::gate::{Missing, Outcome};
use crate::progression::{Decision, MoveOutlook, STEADY_SESSIONS, Status, View, offer_end};
use crate::quantity::{Day, Length, Mass, Name};
use crate::reason::{Reason, Unasked};

/// One thing that would change the answer, with how much of it.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Change {
    /// The coach takes the move.
    CoachAccepts,
    /// Passing sessions, each on another day.
    PassingSessions {
        /// How many more.
        count: u32,
    },
    /// What the gate still misses otherwise stands in its own list.
    GateOpens,
    /// Calibration sessions.
    LearningSessions {
        /// How many more.
        count: u8,
    },
    /// The answer of the morning after that session.
    NextMorningAnswer,
    /// Days to wait.
    Days {
        /// How many.
        count: u16,
    },
    /// Sessions without more pain than usual.
    ClearSessions {
        /// Where.
        region: Name,
        /// How many more.
        count: u8,
    },
    /// Sessions in a row at or below the agreed usual level of pain, and no answer about it higher than the one before.
    SteadySessions {
        /// Where.
        region: Name,
        /// How many more.
        count: u8,
    },
    /// The question about pain.
    PainAnswer,
    /// A clearance.
    Clearance,
    /// A clearance, then the coach's sign-off.
    ClearanceAndSignOff,
    /// A clearance, or ranges of the lift, declared by the coach, of which one is within the one there is. Either is enough.
    ClearanceOrRanges,
    /// The day's questions.
    DayReport,
    /// The answer to something that was asked.
    AskAnswered {
        /// What.
        ask: crate::sign::Ask,
    },
    /// A session of the work granted, at its place.
    SessionAsGranted,
    /// Sessions whose sets leave what is asked in reserve.
    MoreInReserve {
        /// How many more.
        count: u8,
    },
    /// Sessions of which the lifter says how much each set left in reserve.
    EffortSaid {
        /// How many more.
        count: u8,
    },
    /// The coach ends the override: one to the granted load, without a last day, puts the lift back on its grant.
    OverrideEnds,
    /// The other lift of the pair is left out of the plan of that day.
    LeaveOutPartner {
        /// Which.
        partner: Name,
    },
    /// The planned break is over.
    BreakOver {
        /// Its last day.
        until: Day,
    },
    /// A day within or above the usual, without a session more.
    DayWithin,
    /// A passing session on a day within or above the usual, since every pass came on one below it.
    PassOnDayWithin,
    /// A session of this lift.
    RecentSession,
    /// A recent passing session of the forgiving lift.
    ForgivingProof,
    /// Discs that make a load up to this one.
    SmallerDiscs {
        /// Highest load the step allows.
        up_to: Mass,
    },
    /// Something heavier than all there is, up to this one.
    MoreToLoad {
        /// Highest load the step allows.
        up_to: Mass,
    },
    /// Blocks or discs that start the bar at this height.
    BlocksOrDiscs {
        /// Height of the bar's centre.
        height: Length,
    },
    /// More repetitions at this load first.
    MoreRepetitions,
    /// The usual level of pain is looked at and agreed anew.
    UsualPainAgreed {
        /// Where.
        region: Name,
    },
    /// A body mass.
    BodyMass,
    /// The easy week is over.
    EasyWeekOver,
    /// Sessions of this lift, whatever they come to.
    Sessions {
        /// How many more.
        count: u8,
    },
    /// The plan asks for the whole of the work granted.
    WholeWork,
    /// More time on the day.
    MoreTime,
    /// The implement is there.
    Implement {
        /// Which.
        implement: Name,
    },
    /// Pins or a spotter.
    PinsOrSpotter,
    /// The coach sets another role, ceiling or dimension.
    CoachSetsOtherwise,
    /// A newer version of the library.
    NewerLibrary,
}

/// Everything that would have to change for the lift to move up, each once. `short` is a day too short for the whole of the
/// work, where less is planned.
pub(super) fn changes(decision: &Decision, view: &View<'_>, short: bool) -> Vec<Change> {
    let mut changes = Vec::new();
    match &decision.outlook {
        MoveOutlook::OnOffer { .. } => changes.push(Change::CoachAccepts),
        MoveOutlook::Blocked { by, .. } => {
            let each = by.iter().flat_map(|reason| of(reason, decision, view));
            let time = short.then_some(Change::MoreTime);
            let limit = of_the_limit(&decision.status, view);
            each.chain(time).chain(limit).for_each(|change| join(&mut changes, change));
            if changes.is_empty() {
                changes.push(Change::CoachSetsOtherwise);
            }
        }
    }
    changes
}

/// Names one more thing, unless it is named; of two counts of one kind the larger holds both.
fn join(changes: &mut Vec<Change>, change: Change) {
    for named in &mut *changes {
        match (&mut *named, &change) {
            (Change::PassingSessions { count }, Change::PassingSessions { count: other }) => {
                return *count = (*count).max(*other);
            }
            (Change::Days { count }, Change::Days { count: other }) => return *count = (*count).max(*other),
            (Change::Sessions { count }, Change::Sessions { count: other })
            | (Change::LearningSessions { count }, Change::LearningSessions { count: other }) => {
                return *count = (*count).max(*other);
            }
            (
                Change::ClearSessions { region, count },
                Change::ClearSessions { region: also, count: other },
            )
            | (
                Change::SteadySessions { region, count },
                Change::SteadySessions { region: also, count: other },
            ) if region == also => return *count = (*count).max(*other),
            (named, change) if named == change => return,
            _ => {}
        }
    }
    changes.push(change);
}

fn of(reason: &Reason, decision: &Decision, view: &View<'_>) -> Vec<Change> {
    let with = |first: Change, then: Vec<Change>| core::iter::once(first).chain(then).collect();
    match reason {
        Reason::SymptomStop { .. } | Reason::PainStop { .. } | Reason::Stopped | Reason::NotCleared => {
            with(Change::ClearanceAndSignOff, way_after_stop(&decision.status, view))
        }
        Reason::Returning { .. } => match decision.status {
            Status::Returning { way, passes } => way_back(way, passes, &view.lift.now, view),
            _ => alloc::vec![passing(1, view)],
        },
        Reason::Retired => taken_up_again(view),
        Reason::Resting => {
            let back = after_rest(&decision.status, view).into_iter().chain(way_of_a_role(view));
            with(Change::CoachSetsOtherwise, back.collect())
        }
        // A break without a last day lasts until training goes on.
        Reason::AfterBreak | Reason::PlannedBreak { until: None } => {
            with(Change::Sessions { count: 1 }, after_rest(&decision.status, view))
        }
        Reason::SteppingBack => {
            let passes = match decision.status {
                Status::SteppingBack { passes, .. } => passes,
                _ => 0,
            };
            let left = view.policy().step_back_passes.saturating_sub(passes).max(1);
            let learning = still_to_learn(&view.lift.now, 0).into_iter().collect();
            with(passing(u32::from(left), view), learning)
        }
        Reason::PlannedBreak { until: Some(until) } | Reason::IllUntil { until } => {
            with(Change::BreakOver { until: *until }, after_break(*until, &decision.status, view))
        }
        Reason::GateNotOpen => {
            let work = view.lift.now.grant.work;
            let never = is_too_little((work.sets, work.reps), view).then_some(Change::CoachSetsOtherwise);
            gate_changes(decision, view).into_iter().chain(never).collect()
        }
        // Where the implement alone weighs more, no disc makes a step: something lighter to hold does.
        Reason::NoLoadableStep { cap: up_to, .. } if is_above(*up_to, view) => {
            alloc::vec![Change::MoreRepetitions, Change::CoachSetsOtherwise]
        }
        Reason::NoLoadableStep { cap: up_to, next: Some(_) } => {
            alloc::vec![Change::MoreRepetitions, Change::SmallerDiscs { up_to: *up_to }]
        }
        Reason::NoLoadableStep { cap: up_to, next: None } => {
            alloc::vec![Change::MoreRepetitions, Change::MoreToLoad { up_to: *up_to }]
        }
        // What was said today is no ground for a step today, answered or not.
        Reason::AsksFirst { ask, .. } => {
            let today = view.shared.report_on(view.on).is_some_and(|report| report.raised.is_some());
            let wait = if today { another_day(view) } else { Vec::new() };
            with(Change::AskAnswered { ask: *ask }, wait)
        }
        Reason::AskOfToday { .. } => another_day(view),
        // Of the last session it can no longer be asked, and the next asks anew on its own day.
        Reason::PainNotAsked { when: Unasked::LastSession | Unasked::LastSessionAndToday } => {
            alloc::vec![Change::PainAnswer, Change::Sessions { count: 1 }]
        }
        // The partner's own day is none of rest, and the day of the session comes after the last of them.
        Reason::PairRest { needed, .. } => {
            let partner = view.partner.and_then(|partner| partner.lift.now.last_session);
            let since = partner.map_or(0, |last| u16::try_from(view.on.since(last)).unwrap_or(0));
            alloc::vec![Change::Days { count: needed.saturating_add(1).saturating_sub(since) }]
        }
        // What is agreed anew has to be seen to be steady.
        Reason::UsualPainReview { region, .. } => with(
            Change::UsualPainAgreed { region: region.clone() },
            alloc::vec![Change::SteadySessions { region: region.clone(), count: STEADY_SESSIONS }],
        ),
        Reason::PairPain { .. } | Reason::PairFault | Reason::Consolidating => alloc::vec![passing(1, view)],
        Reason::LearningNotDone { done, needed } if done >= needed => alloc::vec![passing(1, view)],
        // Nor does an eased session say anything of the effort of the work granted.
        Reason::ReserveShort { more, .. } => alloc::vec![Change::MoreInReserve { count: more + eased(view) }],
        Reason::EffortNotSaid { more, .. } => alloc::vec![Change::EffortSaid { count: more + eased(view) }],
        // A region that is no longer declared is asked about by nobody, so no session clears it.
        Reason::PainBlock { region, .. }
        | Reason::PainPersists { region }
        | Reason::UsualPainUnsteady { region, .. } => {
            let otherwise = (!view.all.declares(region)).then_some(Change::CoachSetsOtherwise);
            // A session that is eased leaves the last one short of a pass.
            let stays = matches!(reason, Reason::PainPersists { .. }) && view.next_is_eased();
            let pass = stays.then(|| passing(1, view));
            with(one(reason), otherwise.into_iter().chain(pass).collect())
        }
        // What nobody can measure waits for either.
        Reason::ClearanceRange if view.lift.set.ranges.is_empty() => alloc::vec![Change::ClearanceOrRanges],
        // Named by what asked for less.
        Reason::HalfForLighter | Reason::LeastThereIs | Reason::NothingEasier | Reason::EasierRung { .. } => {
            Vec::new()
        }
        _ => alloc::vec![one(reason)],
    }
}

/// Reasons that one thing changes.
fn one(reason: &Reason) -> Change {
    match reason {
        Reason::ClearanceMissing
        | Reason::ClearanceExpired { .. }
        | Reason::ClearanceAfterIllness
        | Reason::ClearanceLimit { .. }
        | Reason::ClearanceRange
        | Reason::LimitWithoutLift { .. } => Change::Clearance,
        Reason::PainPersists { region } => Change::ClearSessions { region: region.clone(), count: 1 },
        Reason::PainBlock { region, clear_sessions, .. } => {
            Change::ClearSessions { region: region.clone(), count: *clear_sessions }
        }
        Reason::UsualPainUnsteady { region, clear_sessions } => {
            Change::SteadySessions { region: region.clone(), count: *clear_sessions }
        }
        Reason::PainMissingAfterHigh { .. } | Reason::PainNotAsked { .. } => Change::PainAnswer,
        Reason::PassProvisional { .. } => Change::NextMorningAnswer,
        Reason::NotAtGrant { .. } => Change::SessionAsGranted,
        Reason::LearningNotDone { done, needed } => Change::LearningSessions { count: needed - done },
        Reason::DayUnknown | Reason::AsksNotAsked => Change::DayReport,
        Reason::DayBelow | Reason::DayBelowSingle => Change::DayWithin,
        Reason::QualifiedBelowUsual => Change::PassOnDayWithin,
        Reason::Stale { .. } | Reason::NeverTrained => Change::RecentSession,
        Reason::CoolingOff { days_left }
        | Reason::RegionWindow { days_left, .. }
        | Reason::WindowCap { days_left: Some(days_left), .. }
        | Reason::PairWindow { days_left } => Change::Days { count: *days_left },
        Reason::PairProofMissing | Reason::PairCap { .. } => Change::ForgivingProof,
        Reason::HeightNotMade { height, .. } => Change::BlocksOrDiscs { height: *height },
        Reason::BodyMassMissing => Change::BodyMass,
        Reason::EasyWeek | Reason::BreakCounts { .. } => Change::EasyWeekOver,
        Reason::HalfSets { sessions } => Change::Sessions { count: *sessions },
        Reason::ShortOfTime | Reason::FewerSets { .. } => Change::MoreTime,
        Reason::PlanAsksLess => Change::WholeWork,
        Reason::ImplementUnavailable { implement } => Change::Implement { implement: implement.clone() },
        Reason::AloneWithoutPins | Reason::RackNotAsked => Change::PinsOrSpotter,
        Reason::OverrideInForce { .. } => Change::OverrideEnds,
        Reason::PairTogether { partner } => Change::LeaveOutPartner { partner: partner.clone() },
        Reason::UnknownEventPresent { .. } => Change::NewerLibrary,
        _ => Change::CoachSetsOtherwise,
    }
}

/// Nothing can be shown before another day; an offer whose last day is this one is over by then.
fn another_day(view: &View<'_>) -> Vec<Change> {
    let over = offer_end(view) == Some(view.on);
    let anew = if over { gate_anew(view) } else { Vec::new() };
    core::iter::once(Change::Days { count: 1 }).chain(anew).collect()
}

fn gate_changes(decision: &Decision, view: &View<'_>) -> Vec<Change> {
    // Open, and yet nothing on offer: the last session did not pass.
    if decision.gate.missing.is_empty() {
        return alloc::vec![passing(1, view)];
    }
    let untold = untold(&view.lift.now, view);
    // Of those that the run has, one may still wait for its morning, and then the run is not over with the last of them.
    let unheard = |have: u32| {
        let passes = view.lift.now.sittings.iter().rev().filter(|one| one.outcome == Outcome::Pass);
        passes.take(have as usize).any(|one| !one.confirmed)
    };
    let missing = decision.gate.missing.iter();
    let changes = missing.flat_map(|missing| match missing {
        Missing::PassingSessions { have, need, .. } => {
            let count = need.saturating_sub(*have) + untold;
            let morning = unheard(*have).then_some(Change::NextMorningAnswer);
            [Some(Change::PassingSessions { count }), morning]
        }
        Missing::NextMorningAnswer { .. } => [Some(Change::NextMorningAnswer), None],
        // Pain and stops have reasons of their own.
        Missing::OpenBlock { .. } | Missing::Region { .. } => [None, None],
        _ => [Some(Change::GateOpens), None],
    });
    changes.flatten().collect()
}
