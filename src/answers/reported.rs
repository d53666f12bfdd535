//! Which events report a stop, and whether another diary still has them.

use super::diary::Diary;
use super::in_force::Restriction;
use crate::progression::{PainZone, pain_zone};
use crate::quantity::Pain;
use crate::record::{ClearanceStatus, Event, EventKind, LayoffReason, PainAnswer, Policy};

/// What an event tells of pain.
fn pains(kind: &EventKind) -> &[PainAnswer] {
    match kind {
        EventKind::PainReport(answer) => core::slice::from_ref(answer),
        EventKind::DayReport(report) => report.pain.as_deref().unwrap_or_default(),
        EventKind::SessionRecorded(session) => session.pain.as_deref().unwrap_or_default(),
        EventKind::NextDayReport(report) => report.pain.as_deref().unwrap_or_default(),
        _ => &[],
    }
}

/// Whether an event reports that stop.
fn reports(event: &Event, stop: &Restriction, policy: &Policy) -> bool {
    match (&event.kind, stop) {
        (EventKind::SymptomReport(report), Restriction::Sign { sign, .. }) => report.signs.contains(sign),
        (EventKind::ClearanceRecorded(given), Restriction::NotToTrain { .. }) => {
            given.status == ClearanceStatus::NotCleared
        }
        (EventKind::ClearanceRecorded(given), Restriction::LimitWithoutLift { region, .. }) => {
            given.limits.iter().any(|limit| limit.region.as_ref() == Some(region))
        }
        (EventKind::LayoffNoted(layoff), Restriction::Illness { .. }) => layoff.reason == LayoffReason::Ill,
        (EventKind::DayReport(report), Restriction::Asked { ask, .. }) => {
            report.asks.iter().flatten().any(|asked| asked == ask)
        }
        (kind, Restriction::Pain { region, .. }) => {
            let stops = |answer: &PainAnswer| pain_zone(answer, Pain::NONE, policy) == PainZone::Stop;
            pains(kind).iter().any(|answer| answer.region == *region && stops(answer))
        }
        _ => false,
    }
}

/// Whether an event that reports the stop is not in the other diary, or says something else there.
pub(super) fn is_taken_back(stop: &Restriction, own: &Diary<'_>, then: &Diary<'_>, policy: &Policy) -> bool {
    let stays = |event: &Event| {
        then.events().any(|other| {
            other.sequence == event.sequence
                && match stop {
                    // What the pain was decides what it stops.
                    Restriction::Pain { .. } => other.kind == event.kind,
                    _ => reports(other, stop, policy),
                }
        })
    };
    own.events().any(|event| reports(event, stop, policy) && !stays(event))
}
