//! What would change a decision.

use alloc::vec::Vec;

use crate::gate::Missing;
use crate::progression::{Decision, MoveOutlook, Status};
use crate::quantity::{Day, Mass, Name};
use crate::reason::Reason;
use crate::record::Policy;

/// One thing that would change the answer, with how much of it.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
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
    /// The question about pain.
    PainAnswer,
    /// A clearance.
    Clearance,
    /// A clearance, then the coach's sign-off.
    ClearanceAndSignOff,
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
    /// A day within or above the usual; where every pass came on a day below it, a pass on such a day.
    DayWithin,
    /// A session of this lift.
    RecentSession,
    /// A recent passing session of the forgiving lift.
    ForgivingProof,
    /// Discs that make a load up to this one.
    SmallerDiscs {
        /// Highest load the step allows.
        up_to: Mass,
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

/// Everything that would have to change for the lift to move up, each once.
pub(super) fn changes(decision: &Decision, policy: &Policy) -> Vec<Change> {
    let mut changes = Vec::new();
    match &decision.outlook {
        MoveOutlook::OnOffer { .. } => changes.push(Change::CoachAccepts),
        MoveOutlook::Blocked { by, .. } => {
            let each = by.iter().flat_map(|reason| of(reason, decision, policy));
            each.for_each(|change| join(&mut changes, change));
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
            (
                Change::ClearSessions { region, count },
                Change::ClearSessions { region: also, count: other },
            ) if region == also => return *count = (*count).max(*other),
            (named, change) if named == change => return,
            _ => {}
        }
    }
    changes.push(change);
}

/// Passes that a lift still needs to be done with where it stands.
fn passes_left(status: &Status, policy: &Policy) -> u32 {
    let (needed, passes) = match status {
        Status::Returning { way, passes } if way.row == 1 => (1, passes),
        Status::Returning { passes, .. } => (policy.return_passes.max(policy.step_back_passes), passes),
        Status::SteppingBack { passes, .. } => (policy.step_back_passes, passes),
        _ => return 1,
    };
    u32::from(needed.saturating_sub(*passes).max(1))
}

fn of(reason: &Reason, decision: &Decision, policy: &Policy) -> Vec<Change> {
    let change = match reason {
        Reason::SymptomStop { .. } | Reason::PainStop { .. } | Reason::Stopped | Reason::NotCleared => {
            Change::ClearanceAndSignOff
        }
        Reason::ClearanceMissing
        | Reason::ClearanceExpired { .. }
        | Reason::ClearanceAfterIllness
        | Reason::ClearanceLimit { .. }
        | Reason::ClearanceRange
        | Reason::LimitWithoutLift { .. } => Change::Clearance,
        Reason::PainPersists { region } => Change::ClearSessions { region: region.clone(), count: 1 },
        Reason::PainBlock { region, clear_sessions }
        | Reason::UsualPainUnsteady { region, clear_sessions } => {
            Change::ClearSessions { region: region.clone(), count: *clear_sessions }
        }
        Reason::PairPain { .. }
        | Reason::PairFault
        | Reason::Consolidating
        | Reason::SteppingBack
        | Reason::Returning { .. } => {
            Change::PassingSessions { count: passes_left(&decision.status, policy) }
        }
        Reason::PainNotAsked => Change::PainAnswer,
        Reason::PassProvisional { .. } => Change::NextMorningAnswer,
        Reason::LearningNotDone { done, needed } if done >= needed => Change::PassingSessions { count: 1 },
        Reason::LearningNotDone { done, needed } => Change::LearningSessions { count: needed - done },
        Reason::GateNotOpen => return gate_changes(decision),
        Reason::DayUnknown | Reason::AsksNotAsked => Change::DayReport,
        Reason::AsksFirst { ask, .. } => Change::AskAnswered { ask: *ask },
        Reason::NotAtGrant { .. } => Change::SessionAsGranted,
        Reason::ReserveShort { more, .. } => Change::MoreInReserve { count: *more },
        Reason::PairRest { days, needed } => Change::Days { count: needed.saturating_sub(*days) },
        Reason::DayBelow | Reason::DayBelowSingle | Reason::QualifiedBelowUsual => Change::DayWithin,
        Reason::Stale { .. } | Reason::NeverTrained => Change::RecentSession,
        Reason::CoolingOff { days_left }
        | Reason::RegionWindow { days_left, .. }
        | Reason::WindowCap { days_left, .. }
        | Reason::PairWindow { days_left } => Change::Days { count: *days_left },
        Reason::PairProofMissing | Reason::PairCap { .. } => Change::ForgivingProof,
        Reason::NoLoadableStep { cap, .. } => {
            return alloc::vec![Change::MoreRepetitions, Change::SmallerDiscs { up_to: *cap }];
        }
        Reason::UsualPainReview { region, .. } => Change::UsualPainAgreed { region: region.clone() },
        Reason::BodyMassMissing => Change::BodyMass,
        Reason::EasyWeek => Change::EasyWeekOver,
        Reason::HalfSets { sessions } => Change::Sessions { count: *sessions },
        Reason::ShortOfTime | Reason::FewerSets { .. } => Change::MoreTime,
        Reason::PlanAsksLess => Change::WholeWork,
        Reason::ImplementUnavailable { implement } => Change::Implement { implement: implement.clone() },
        Reason::AloneWithoutPins | Reason::RackNotAsked => Change::PinsOrSpotter,
        Reason::EffortNotSaid { more, .. } => Change::EffortSaid { count: *more },
        Reason::OverrideInForce { .. } => Change::OverrideEnds,
        Reason::PairTogether { partner } => Change::LeaveOutPartner { partner: partner.clone() },
        Reason::PlannedBreak { until: Some(until) } | Reason::IllUntil { until } => {
            Change::BreakOver { until: *until }
        }
        Reason::AskOfToday { .. } => Change::Days { count: 1 },
        Reason::AfterBreak => Change::Sessions { count: 1 },
        Reason::UnknownEventPresent { .. } => Change::NewerLibrary,
        _ => Change::CoachSetsOtherwise,
    };
    alloc::vec![change]
}

fn gate_changes(decision: &Decision) -> Vec<Change> {
    // Open, and yet nothing on offer: the last session did not pass.
    if decision.gate.missing.is_empty() {
        return alloc::vec![Change::PassingSessions { count: 1 }];
    }
    let missing = decision.gate.missing.iter();
    let changes = missing.filter_map(|missing| match missing {
        Missing::PassingSessions { have, need, .. } => {
            Some(Change::PassingSessions { count: need.saturating_sub(*have) })
        }
        Missing::NextMorningAnswer { .. } => Some(Change::NextMorningAnswer),
        // Pain and stops have reasons of their own.
        Missing::OpenBlock { .. } | Missing::Region { .. } => None,
        _ => Some(Change::GateOpens),
    });
    changes.collect()
}
