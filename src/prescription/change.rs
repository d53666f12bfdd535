//! What would change a decision.

use alloc::vec::Vec;

use crate::gate::Missing;
use crate::progression::{Decision, MoveOutlook};
use crate::quantity::{Mass, Name};
use crate::reason::Reason;

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
    MoreInReserve,
    /// An ordinary day.
    OrdinaryDay,
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

/// Everything that would have to change for the lift to move up.
pub(super) fn changes(decision: &Decision) -> Vec<Change> {
    let mut changes = Vec::new();
    match &decision.outlook {
        MoveOutlook::OnOffer { .. } => changes.push(Change::CoachAccepts),
        MoveOutlook::Blocked { by, .. } => by.iter().for_each(|reason| add(reason, decision, &mut changes)),
    }
    changes.dedup();
    changes
}

fn add(reason: &Reason, decision: &Decision, changes: &mut Vec<Change>) {
    let change = match reason {
        Reason::SymptomStop { .. } | Reason::PainStop { .. } | Reason::Stopped | Reason::NotCleared => {
            Change::ClearanceAndSignOff
        }
        Reason::ClearanceMissing
        | Reason::ClearanceExpired { .. }
        | Reason::ClearanceAfterIllness
        | Reason::ClearanceLimit { .. }
        | Reason::ClearanceRange
        | Reason::LimitWithoutLift { .. }
        | Reason::PainPersists { .. } => Change::Clearance,
        Reason::PainBlock { region, clear_sessions } => {
            Change::ClearSessions { region: region.clone(), count: *clear_sessions }
        }
        Reason::UsualPainUnsteady { region } => Change::ClearSessions { region: region.clone(), count: 1 },
        Reason::PairPain
        | Reason::PairFault
        | Reason::Consolidating
        | Reason::SteppingBack
        | Reason::Returning { .. } => Change::PassingSessions { count: 1 },
        Reason::PainNotAsked => Change::PainAnswer,
        Reason::PassProvisional { .. } => Change::NextMorningAnswer,
        Reason::LearningNotDone { done, needed } => {
            Change::LearningSessions { count: needed.saturating_sub(*done).max(1) }
        }
        Reason::GateNotOpen => return changes.extend(gate_changes(decision)),
        Reason::DayUnknown | Reason::AsksNotAsked => Change::DayReport,
        Reason::AsksFirst { ask, .. } => Change::AskAnswered { ask: *ask },
        Reason::NotAtGrant { .. } => Change::SessionAsGranted,
        Reason::ReserveShort { .. } => Change::MoreInReserve,
        Reason::PairRest { days, needed } => Change::Days { count: needed.saturating_sub(*days) },
        Reason::BadDay | Reason::BadDaySingle | Reason::QualifiedOnBadDays => Change::OrdinaryDay,
        Reason::Stale { .. } | Reason::NeverTrained => Change::RecentSession,
        Reason::CoolingOff { days_left }
        | Reason::RegionWindow { days_left, .. }
        | Reason::WindowCap { days_left, .. }
        | Reason::PairWindow { days_left } => Change::Days { count: *days_left },
        Reason::PairProofMissing | Reason::PairCap { .. } => Change::ForgivingProof,
        Reason::NoLoadableStep { cap, .. } => {
            changes.push(Change::MoreRepetitions);
            Change::SmallerDiscs { up_to: *cap }
        }
        Reason::UsualPainReview { region, .. } => Change::UsualPainAgreed { region: region.clone() },
        Reason::BodyMassMissing => Change::BodyMass,
        Reason::EasyWeek => Change::EasyWeekOver,
        Reason::HalfSets { sessions } => Change::Sessions { count: *sessions },
        Reason::ShortOfTime => Change::MoreTime,
        Reason::ImplementUnavailable { implement } => Change::Implement { implement: implement.clone() },
        Reason::AloneWithoutPins => Change::PinsOrSpotter,
        Reason::UnknownEventPresent { .. } => Change::NewerLibrary,
        _ => Change::CoachSetsOtherwise,
    };
    changes.push(change);
}

fn gate_changes(decision: &Decision) -> Vec<Change> {
    // Open, and yet nothing on offer: the last session did not pass.
    if decision.gate.missing.is_empty() {
        return alloc::vec![Change::PassingSessions { count: 1 }];
    }
    let missing = decision.gate.missing.iter();
    let mut changes: Vec<Change> = missing
        .map(|missing| match missing {
            Missing::PassingSessions { have, need, .. } => {
                Change::PassingSessions { count: need.saturating_sub(*have) }
            }
            Missing::NextMorningAnswer { .. } => Change::NextMorningAnswer,
            _ => Change::GateOpens,
        })
        .collect();
    changes.dedup();
    changes
}
