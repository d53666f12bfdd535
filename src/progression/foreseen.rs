//! What later events say about earlier ones, found before the fold: passes that the next morning takes back, and
//! sessions of one lift on one day, which are one.

use alloc::borrow::Cow;
use alloc::vec::Vec;

use super::retraction::{Flare, Retractions};
use crate::condition::DayClass;
use crate::quantity::{Day, Name};
use crate::record::{Event, EventKind, LiftParameters, LiftSession, PainAnswer, Parameters};

/// What the fold must know of an event beforehand.
#[derive(Clone, Debug, Default)]
pub(crate) struct Foreseen {
    retractions: Retractions,
    days: Vec<SplitDay>,
}

/// A lift that was trained in several sessions of one day. Where it was set otherwise between two of them, they are judged
/// each by what was in force then.
#[derive(Clone, Debug)]
struct SplitDay {
    lift: Name,
    first: u32,
    later: Vec<LaterPart>,
}

/// What a later session of the day did with the lift, and where it hurt.
#[derive(Clone, Debug)]
struct LaterPart {
    session: u32,
    done: LiftSession,
    hurt: Vec<Name>,
    between: Between,
}

/// What was said between two sessions of a day that may change where the later one is asked to be done.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Between {
    /// Pain, or a day below the usual.
    pub(crate) eased: bool,
    /// A clearance that limits the range.
    pub(crate) limited: bool,
}

impl Between {
    fn note(&mut self, kind: &EventKind) {
        let hurts = |pain: &Option<Vec<PainAnswer>>| {
            pain.iter().flatten().any(|answer| answer.score.score() > 0 || answer.stops())
        };
        self.eased |= match kind {
            EventKind::SessionRecorded(session) => hurts(&session.pain),
            EventKind::DayReport(report) => {
                report.class.is_some_and(DayClass::is_below) || hurts(&report.pain)
            }
            EventKind::NextDayReport(report) => hurts(&report.pain),
            EventKind::PainReport(_) => true,
            _ => false,
        };
        self.limited |= match kind {
            EventKind::ClearanceRecorded(given) => given.limits.iter().any(|limit| limit.range.is_some()),
            _ => false,
        };
    }
}

impl Foreseen {
    /// Looks through events in order.
    pub(crate) fn find(events: &[Cow<'_, Event>]) -> Foreseen {
        Foreseen { retractions: Retractions::find(events), days: split_days(events) }
    }

    /// Whether that session's pass is taken back for a lift of these regions.
    pub(crate) fn retracts<'a>(&self, session: u32, regions: impl Iterator<Item = &'a Name>) -> bool {
        self.retractions.holds(session, regions)
    }

    /// What the answer with that number found.
    pub(crate) fn flare(&self, event: u32) -> Option<&Flare> {
        self.retractions.flare(event)
    }

    /// Whether the lift was trained earlier on the day of that session.
    pub(crate) fn is_later_part(&self, session: u32, lift: &Name) -> bool {
        let own = self.days.iter().filter(|day| day.lift == *lift);
        own.into_iter().any(|day| day.later.iter().any(|part| part.session == session))
    }

    /// What later sessions of that day did of the lift, and what was said before each.
    pub(crate) fn later_parts(
        &self,
        session: u32,
        lift: &Name,
    ) -> impl Iterator<Item = (&LiftSession, Between)> {
        self.later(session, lift).map(|part| (&part.done, part.between))
    }

    /// Regions that hurt in later sessions of that day with the lift.
    pub(crate) fn hurt_later(&self, session: u32, lift: &Name) -> impl Iterator<Item = &Name> {
        self.later(session, lift).flat_map(|part| &part.hurt)
    }

    fn later(&self, session: u32, lift: &Name) -> impl Iterator<Item = &LaterPart> {
        let day = self.days.iter().find(|day| day.first == session && day.lift == *lift);
        day.into_iter().flat_map(|day| &day.later)
    }
}

/// The first session of a lift on the day that is being looked at, and the parameters in force then.
struct First<'a> {
    lift: &'a Name,
    session: u32,
    set: Option<&'a Parameters>,
    /// Something was said since that comes before training.
    asked: bool,
    between: Between,
}

fn split_days(events: &[Cow<'_, Event>]) -> Vec<SplitDay> {
    let mut found: Vec<SplitDay> = Vec::new();
    let mut today: (Option<Day>, Vec<First<'_>>) = (None, Vec::new());
    let mut set: Option<&Parameters> = None;
    for event in events {
        match &event.kind {
            EventKind::ParametersChanged(all) => set = Some(all),
            // What is said when asked comes before training: what is done after it is judged for itself.
            EventKind::DayReport(report) if report.asks.as_ref().is_some_and(|asks| !asks.is_empty()) => {
                today.1.iter_mut().for_each(|first| first.asked = true);
            }
            _ => {}
        }
        let EventKind::SessionRecorded(session) = &event.kind else {
            today.1.iter_mut().for_each(|first| first.between.note(&event.kind));
            continue;
        };
        if today.0 != Some(event.day) {
            today = (Some(event.day), Vec::new());
        }
        for done in &session.lifts {
            let between = Between::default();
            let own = First { lift: &done.lift, session: event.sequence, set, asked: false, between };
            let Some(first) = today.1.iter_mut().find(|first| *first.lift == done.lift) else {
                today.1.push(own);
                continue;
            };
            if first.asked || is_set_otherwise(first.set, set, &done.lift) {
                *first = own;
                continue;
            }
            let hurting = session.pain.iter().flatten().filter(|answer| answer.score.score() > 0);
            let hurt = hurting.map(|answer| answer.region.clone()).collect();
            let between = first.between;
            let part = LaterPart { session: event.sequence, done: done.clone(), hurt, between };
            match found.iter_mut().rfind(|day| day.first == first.session && day.lift == done.lift) {
                Some(day) => day.later.push(part),
                None => found.push(SplitDay {
                    lift: done.lift.clone(),
                    first: first.session,
                    later: alloc::vec![part],
                }),
            }
        }
        today.1.iter_mut().for_each(|first| first.between.note(&event.kind));
    }
    found
}

/// Whether the lift or its equipment was set otherwise, in anything but names for people.
fn is_set_otherwise(before: Option<&Parameters>, after: Option<&Parameters>, lift: &Name) -> bool {
    let (Some(before), Some(after)) = (before, after) else { return false };
    if core::ptr::eq(before, after) {
        return false;
    }
    let of =
        |all: &Parameters| all.lifts.iter().find(|set| set.id == *lift).map(LiftParameters::without_names);
    of(before) != of(after)
        || before.implements != after.implements
        || before.stock != after.stock
        || before.blocks != after.blocks
}
