//! What only following the whole log tells of an oddity: where a lift was done or stood, and whether anything was asked.

use alloc::vec::Vec;

use super::oddity::{Odd, Oddity};
use crate::progression::{State, When, fold_told};
use crate::quantity::Name;
use crate::reason::NamedPlace;
use crate::record::{Effective, Event, EventKind, Log};

/// Says of each load that looks like a slip where the lift was done, or stood, and finds answers to what was not open. A log
/// that cannot be followed is looked at without: it says so by every other door.
pub(super) fn follow(found: &mut Vec<Oddity>, log: &Log, told: &Effective<'_>) {
    let is_slip = |odd: &Oddity| matches!(odd.what, Odd::LoadSlip { .. });
    let answers = told.events.iter().any(|event| matches!(event.kind, EventKind::AskAnswered(_)));
    if !answers && !found.iter().any(is_slip) {
        return;
    }
    let mut unasked: Vec<Oddity> = Vec::new();
    let watched = fold_told(log, told, |state, _, event, when| {
        if let (EventKind::AskAnswered(answer), When::Before) = (&event.kind, when)
            && !state.is_asked(answer.ask)
        {
            let odd = Oddity::new(event.day, Odd::AnswerWithoutQuestion { ask: answer.ask });
            unasked.push(Oddity { event: Some(event.sequence), ..odd });
        }
        // A session says afterwards where it was done; a load that a coach allows stands where the lift does.
        let done = matches!(event.kind, EventKind::SessionRecorded(_));
        if done == (when == When::After) {
            let of_event = |odd: &&mut Oddity| is_slip(odd) && odd.event == Some(event.sequence);
            for odd in found.iter_mut().filter(of_event) {
                odd.place = odd.lift.as_ref().and_then(|id| place(state, event, id));
            }
        }
    });
    drop(watched);
    found.extend(unasked);
}

/// Where that event has the lift done, or found it standing.
fn place(state: &State, event: &Event, id: &Name) -> Option<NamedPlace> {
    let lift = state.lift_state(id)?;
    let place = match &event.kind {
        EventKind::SessionRecorded(_) => lift.now().last_place?,
        _ => state.view(id, event.day).ok()?.place(),
    };
    Some(lift.parameters().named_place(place))
}
