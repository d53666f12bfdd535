//! Which events report a stop, and whether another diary still has them.

use super::diary::Diary;
use super::in_force::Restriction;
use crate::progression::{PainZone, pain_zone};
use crate::quantity::Pain;
use crate::record::{ClearanceLimits, ClearanceStatus, Event, Opened, PainAnswer, Policy};

/// Whether an event reports that stop.
fn reports(event: &Event, stop: &Restriction, policy: &Policy) -> bool {
    let told = Opened::by(&event.kind);
    match stop {
        Restriction::Sign { sign, .. } => told.signs.contains(sign),
        Restriction::NotToTrain { .. } => {
            told.clearance.is_some_and(|given| given.status == ClearanceStatus::NotCleared)
        }
        Restriction::LimitWithoutLift { region, .. } => {
            let of = |limit: &ClearanceLimits| limit.region.as_ref() == Some(region);
            told.clearance.is_some_and(|given| given.limits.iter().any(of))
        }
        Restriction::Illness { .. } => told.ill.is_some(),
        Restriction::Asked { ask, .. } => told.asks.contains(ask),
        Restriction::Pain { region, .. } => {
            let stops = |answer: &PainAnswer| pain_zone(answer, Pain::NONE, policy) == PainZone::Stop;
            told.pain.iter().any(|answer| answer.region == *region && stops(answer))
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
