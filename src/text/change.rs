//! What would change an answer, as sentences.

use alloc::format;
use alloc::string::{String, ToString};

use super::sign::ask;
use super::{counted, mass};
use crate::gate::Missing;
use crate::prescription::Change;

/// One thing that would change the answer.
#[must_use]
pub fn change(change: &Change) -> String {
    match change {
        Change::CoachAccepts => "the coach takes the step".to_string(),
        Change::PassingSessions { count: 1 } => "1 more passing session on another day".to_string(),
        Change::PassingSessions { count } => {
            format!("{count} more passing sessions in a row, each on another day")
        }
        Change::GateOpens => "the gate's other conditions".to_string(),
        Change::LearningSessions { count } => {
            format!("{} of learning", counted(u32::from(*count), "more session"))
        }
        Change::NextMorningAnswer => "the answer of the morning after".to_string(),
        Change::Days { count } => counted(u32::from(*count), "more day"),
        Change::ClearSessions { region, count } => {
            format!("{} without more {region} pain than usual", counted(u32::from(*count), "session"))
        }
        Change::PainAnswer => "an answer to the question about pain".to_string(),
        Change::Clearance => "a clearance".to_string(),
        Change::ClearanceAndSignOff => "a clearance, then the coach's sign-off".to_string(),
        Change::DayReport => "the day's questions".to_string(),
        Change::AskAnswered { ask: asked } if asked.needs_clinician() => {
            format!("a clinician's word about the {}", ask(*asked))
        }
        Change::AskAnswered { ask: asked } => format!("the coach's word that the {} is over", ask(*asked)),
        Change::SessionAsGranted => "a session of the whole work at its place".to_string(),
        Change::MoreInReserve => "sets that leave what is asked in reserve".to_string(),
        Change::OrdinaryDay => "an ordinary day".to_string(),
        Change::RecentSession => "a session of this lift".to_string(),
        Change::ForgivingProof => "a recent pass of the forgiving lift at that load".to_string(),
        Change::SmallerDiscs { up_to } => format!("discs that make a load up to {}", mass(*up_to)),
        Change::MoreRepetitions => "more repetitions at this load".to_string(),
        Change::UsualPainAgreed { region } => {
            format!("the coach and the lifter agree the usual level of {region} pain anew")
        }
        Change::BodyMass => "the lifter's body mass on record".to_string(),
        Change::EasyWeekOver => "the easy week is over".to_string(),
        Change::Sessions { count } => counted(u32::from(*count), "more session"),
        Change::MoreTime => "more time on the day".to_string(),
        Change::Implement { implement } => format!("the {implement} is there"),
        Change::PinsOrSpotter => "pins or a spotter".to_string(),
        Change::CoachSetsOtherwise => "another choice of the coach".to_string(),
        Change::NewerLibrary => "a newer version of this library".to_string(),
    }
}

/// What a gate still misses.
#[must_use]
pub fn missing(missing: &Missing) -> String {
    match missing {
        Missing::PassingSessions { have, need, weakest, .. } => {
            let watch = weakest.as_ref().map(|name| format!("; watch: {name}")).unwrap_or_default();
            format!("{have} of {need} passing sessions in a row{watch}")
        }
        Missing::Evidence { scored, misses, clean_reps } => {
            let more = clean_reps.map(|reps| format!("; {reps} clean in a row would do")).unwrap_or_default();
            format!("{misses} missed of {scored} repetitions so far{more}")
        }
        Missing::EvidenceAgainst { day, scored, misses } => {
            format!("{misses} missed of {scored} by {day}: start again on something easier")
        }
        Missing::PassingDays { have, need } => format!("{have} of {need} passing days"),
        Missing::LastSessionNotPassed { day } => format!("the session of {day} did not pass"),
        Missing::NextMorningAnswer { day } => format!("the answer of the morning after {day}"),
        Missing::EffortCap { recorded: true } => "effort was above its cap".to_string(),
        Missing::EffortCap { recorded: false } => "effort was not recorded".to_string(),
        Missing::OpenBlock { name } => format!("a block is open: {name}"),
        Missing::DwellSessions { have, need } => format!("{have} of {need} sessions at this place"),
        Missing::DwellDays { have, need } => format!("{have} of {need} days at this place"),
        Missing::Spacing { have, need } => format!("{have} of {need} days since the last step"),
        Missing::SignOff => "the coach's sign-off".to_string(),
        Missing::Pair { name } => format!("its partner: {name}"),
        Missing::Region { name } => format!("its region: {name}"),
        Missing::Ways { have, need, of } => format!("{have} of {need} ways open, of {of}"),
    }
}
