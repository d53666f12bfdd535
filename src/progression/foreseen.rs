//! What later events say about earlier ones, found before the fold: passes that the next morning takes back, sessions of
//! one lift on one day, which are one unless something told between them parts them, and what was told by a correction.

use alloc::borrow::Cow;
use alloc::vec::Vec;

use super::retraction::{Flare, Retractions};
use super::setup::SetupSeen;
use crate::condition::DayClass;
use crate::quantity::{Day, Name, Pain};
use crate::record::{
    Corrected, Event, EventKind, LayoffReason, LiftParameters, LiftSession, PainAnswer, Parameters, Setup,
};

/// What the fold must know of an event beforehand.
#[derive(Clone, Debug, Default)]
pub(crate) struct Foreseen {
    retractions: Retractions,
    days: Vec<SplitDay>,
    /// First sessions of a day with a lift after which another one follows that is judged apart.
    parted: Vec<(u32, Name)>,
    corrected: Corrected,
}

/// A lift that was trained in several sessions of one day. Where it was set or set up otherwise between two of them, or something was told
/// that stops it, limits it or asks for less, they are judged each by what was in force then: what is done after it never adds
/// to what was done before.
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
}

impl Foreseen {
    /// Looks through events in order.
    pub(crate) fn find(events: &[Cow<'_, Event>]) -> Foreseen {
        let (days, parted) = split_days(events);
        Foreseen { retractions: Retractions::find(events), days, parted, corrected: Corrected::default() }
    }

    /// The same of a log in which these were corrected.
    pub(crate) fn with_corrected(self, corrected: &Corrected) -> Foreseen {
        Foreseen { corrected: corrected.clone(), ..self }
    }

    /// Number under which what the event with that number says was told.
    pub(crate) fn told(&self, event: u32) -> u32 {
        self.corrected.told(event)
    }

    /// Whether a correction of the event with that number is of a kind that is not known here.
    pub(crate) fn is_unread(&self, event: u32) -> bool {
        self.corrected.is_unread(event)
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

    /// Whether a later session of that day with the lift is judged apart from that one.
    pub(crate) fn is_parted(&self, session: u32, lift: &Name) -> bool {
        self.parted.iter().any(|(first, own)| *first == session && own == lift)
    }

    /// What later sessions of that day did of the lift, with nothing told before them that parts them from the first.
    pub(crate) fn later_parts(&self, session: u32, lift: &Name) -> impl Iterator<Item = &LiftSession> {
        self.later(session, lift).map(|part| &part.done)
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

/// How a lift was last said to be set up, while looking through the events.
struct Seen<'a> {
    lift: &'a Name,
    setup: SetupSeen,
    /// Somebody or something would take the bar.
    guarded: bool,
}

/// Takes what is said of the setup of a lift; whether it is another one than was said last, or another stands by the bar.
fn is_set_up_otherwise<'a>(
    seen: &mut Vec<Seen<'a>>,
    done: &'a LiftSession,
    set: Option<&Parameters>,
    on: Day,
) -> bool {
    if done.setup.is_none() && done.height.is_none() {
        return false;
    }
    let at = seen.iter().position(|seen| *seen.lift == done.lift).unwrap_or_else(|| {
        seen.push(Seen { lift: &done.lift, setup: SetupSeen::default(), guarded: false });
        seen.len() - 1
    });
    let Some(seen) = seen.get_mut(at) else { return false };
    let guarded =
        done.setup.as_ref().and_then(Setup::is_unguarded).map_or(seen.guarded, |unguarded| !unguarded);
    let other_guard = core::mem::replace(&mut seen.guarded, guarded) != guarded;
    let over_the_body = set.and_then(|all| all.lift(&done.lift)).is_some_and(|set| set.over_the_body);
    seen.setup.take(done, on) || (over_the_body && other_guard)
}

/// The first session of a lift on the day that is being looked at, and the parameters in force then.
struct First<'a> {
    lift: &'a Name,
    session: u32,
    set: Option<&'a Parameters>,
    /// Something was told since that parts what is done after it.
    parted: bool,
}

fn split_days(events: &[Cow<'_, Event>]) -> (Vec<SplitDay>, Vec<(u32, Name)>) {
    let mut found: Vec<SplitDay> = Vec::new();
    let mut parted: Vec<(u32, Name)> = Vec::new();
    let mut today: (Option<Day>, Vec<First<'_>>) = (None, Vec::new());
    let (mut set, mut seen): (Option<&Parameters>, Vec<Seen<'_>>) = (None, Vec::new());
    for event in events {
        if let EventKind::ParametersChanged(all) = &event.kind {
            set = Some(all);
        }
        let EventKind::SessionRecorded(session) = &event.kind else {
            today.1.iter_mut().for_each(|first| first.parted |= parts(&event.kind, first.lift, set));
            continue;
        };
        if today.0 != Some(event.day) {
            today = (Some(event.day), Vec::new());
        }
        for done in &session.lifts {
            let set_up_otherwise = is_set_up_otherwise(&mut seen, done, set, event.day);
            let own = First { lift: &done.lift, session: event.sequence, set, parted: false };
            let Some(first) = today.1.iter_mut().find(|first| *first.lift == done.lift) else {
                today.1.push(own);
                continue;
            };
            if first.parted || set_up_otherwise || is_set_otherwise(first.set, set, &done.lift) {
                parted.push((first.session, done.lift.clone()));
                *first = own;
                continue;
            }
            let hurting = session.pain.iter().flatten().filter(|answer| answer.score.score() > 0);
            let hurt = hurting.map(|answer| answer.region.clone()).collect();
            let part = LaterPart { session: event.sequence, done: done.clone(), hurt };
            match found.iter_mut().rfind(|day| day.first == first.session && day.lift == done.lift) {
                Some(day) => day.later.push(part),
                None => found.push(SplitDay {
                    lift: done.lift.clone(),
                    first: first.session,
                    later: alloc::vec![part],
                }),
            }
        }
        // What hurt in a session was told before the next.
        today.1.iter_mut().for_each(|first| first.parted |= hurts(session.pain.as_deref(), first.lift, set));
    }
    (found, parted)
}

/// Whether what is told stops or limits that lift, asks for less of it, or changes where it stands: what is done after it is
/// judged for itself.
fn parts(kind: &EventKind, lift: &Name, set: Option<&Parameters>) -> bool {
    let hurts = |pain: Option<&[PainAnswer]>| hurts(pain, lift, set);
    match kind {
        EventKind::DayReport(report) => {
            let asked = report.asks.as_ref().is_some_and(|asks| !asks.is_empty());
            asked || report.class.is_some_and(DayClass::is_below) || hurts(report.pain.as_deref())
        }
        EventKind::NextDayReport(report) => hurts(report.pain.as_deref()),
        EventKind::PainReport(answer) => hurts(Some(core::slice::from_ref(answer))),
        EventKind::LayoffNoted(layoff) => layoff.reason != LayoffReason::Well,
        EventKind::CoachOverride(given) => given.lift == *lift,
        EventKind::AdvanceAccepted(given) | EventKind::AdvanceDeclined(given) => given.lift == *lift,
        EventKind::VariantChanged(given) | EventKind::RangeChanged(given) => given.lift == *lift,
        EventKind::BarOrDiscsChanged(changed) => changed.lift.as_ref().is_none_or(|id| id == lift),
        EventKind::RoleSet(given) => given.lift == *lift,
        EventKind::SymptomReport(_)
        | EventKind::ClearanceRecorded(_)
        | EventKind::ClearanceExpired(_)
        | EventKind::CoachSignOff(_)
        | EventKind::UsualPainAgreed(_)
        | EventKind::Unknown(_) => true,
        // Parameters are held against those of the first part.
        EventKind::ParametersChanged(_)
        | EventKind::SessionRecorded(_)
        | EventKind::SessionMissed(_)
        | EventKind::AskAnswered(_)
        | EventKind::RaterChanged(_)
        | EventKind::BodyMassRecorded(_)
        | EventKind::BlockStarted(_)
        | EventKind::BlockEnded(_)
        | EventKind::FunctionTested(_)
        | EventKind::Correction(_) => false,
    }
}

/// Whether pain is told that stops anything, or any in a region that the lift or its partner loads: that may be what asks for
/// less.
fn hurts(pain: Option<&[PainAnswer]>, lift: &Name, set: Option<&Parameters>) -> bool {
    let loads = |region: &Name| {
        set.is_none_or(|all| {
            let pair = all.pair_of(lift);
            let own = |id: &Name| {
                id == lift || pair.is_some_and(|pair| pair.strict == *id || pair.forgiving == *id)
            };
            all.lifts.iter().any(|one| own(&one.id) && one.regions.contains(region))
        })
    };
    let told = |answer: &PainAnswer| answer.stops() || (answer.score > Pain::NONE && loads(&answer.region));
    pain.into_iter().flatten().any(told)
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
        || before.policy != after.policy
        || before.pairs != after.pairs
}
