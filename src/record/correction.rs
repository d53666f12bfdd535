//! Corrections: each chain followed once to the event that it began with.

use alloc::vec::Vec;

use super::absence::{Layoff, LayoffReason};
use super::coach::Role;
use super::event::{Correction, Event, EventKind};
use super::health::{Clearance, ClearanceStatus, PainAnswer};
use super::session::WorkSet;
use crate::condition::DayClass;
use crate::error::{Allowed, Code, Error};
use crate::quantity::{Day, Pain};
use crate::sign::{Ask, StopSign};

/// One correction, with the event that its chain began with.
struct Link<'a> {
    sequence: u32,
    said: &'a Correction,
    /// First event of the chain, as following it has found; found once.
    first: Option<u32>,
}

/// What the corrections of an event say, one after another in order of their numbers: whether one names the event or an earlier
/// correction of it, it corrects what was said last.
#[derive(Clone, Copy)]
struct Found<'a> {
    /// First event of the chain.
    first: u32,
    /// Number under which what its content opens was told: of the event itself, or of the last correction that opens more.
    told: u32,
    /// The last day said for it.
    day: Option<Day>,
    /// What was said last nobody here can read, and what opened something before it stands in its place.
    unread: bool,
    content: Content<'a>,
}

/// What stands in the place of the first event of a chain.
#[derive(Clone, Copy)]
enum Content<'a> {
    /// Its own content.
    Own,
    /// Other content.
    Other(&'a EventKind),
    /// Nothing: it did not happen.
    Nothing,
}

impl<'a> Found<'a> {
    /// Before anything was corrected.
    const fn own(first: u32) -> Found<'a> {
        Found { first, told: first, day: None, unread: false, content: Content::Own }
    }

    /// What stands in the place of the first event; none where it did not happen.
    fn kind(&self, events: &[&'a Event]) -> Option<&'a EventKind> {
        match self.content {
            Content::Other(kind) => Some(kind),
            Content::Nothing => None,
            Content::Own => {
                let at = events.binary_search_by_key(&self.first, |event| event.sequence).ok()?;
                events.get(at).map(|event| &event.kind)
            }
        }
    }

    /// Takes the next correction. One that says no day keeps the day said before; one that says only a day, the content.
    fn correct(&mut self, by: &Link<'a>, events: &[&'a Event]) {
        let before = self.kind(events);
        // What nobody here can read takes nothing back, nor is its day that of what stands.
        if by.said.with.as_deref().is_some_and(is_unknown) && before.is_some_and(stands_unread) {
            self.unread = true;
            return;
        }
        self.day = by.said.day.or(self.day);
        (self.told, self.content, self.unread) = match (&by.said.with, by.said.day) {
            (Some(with), _) => {
                let no_more = before.is_some_and(|before| opens_no_more(with, before));
                (if no_more { self.told } else { self.told.max(by.sequence) }, Content::Other(with), false)
            }
            (None, Some(_)) => (self.told, self.content, self.unread),
            (None, None) => (self.told.max(by.sequence), Content::Nothing, false),
        };
    }
}

/// What of an event waits for somebody's word.
#[derive(Default)]
pub(crate) struct Opened<'a> {
    pub(crate) signs: &'a [StopSign],
    pub(crate) asks: &'a [Ask],
    pub(crate) pain: &'a [PainAnswer],
    pub(crate) ill: Option<&'a Layoff>,
    pub(crate) clearance: Option<&'a Clearance>,
}

impl<'a> Opened<'a> {
    pub(crate) fn by(kind: &'a EventKind) -> Opened<'a> {
        let none = Opened::default();
        match kind {
            EventKind::SymptomReport(report) => Opened { signs: &report.signs, ..none },
            EventKind::SessionRecorded(session) => {
                Opened { pain: session.pain.as_deref().unwrap_or_default(), ..none }
            }
            EventKind::NextDayReport(report) => {
                Opened { pain: report.pain.as_deref().unwrap_or_default(), ..none }
            }
            EventKind::PainReport(answer) => Opened { pain: core::slice::from_ref(answer), ..none },
            EventKind::DayReport(report) => Opened {
                pain: report.pain.as_deref().unwrap_or_default(),
                asks: report.asks.as_deref().unwrap_or_default(),
                ..none
            },
            EventKind::LayoffNoted(layoff) => {
                Opened { ill: Some(layoff).filter(|layoff| layoff.reason == LayoffReason::Ill), ..none }
            }
            EventKind::ClearanceRecorded(clearance) => Opened { clearance: Some(clearance), ..none },
            _ => none,
        }
    }
}

fn is_unknown(kind: &EventKind) -> bool {
    matches!(kind, EventKind::Unknown(_))
}

/// Whether it opens anything: a stop, pain, an ask, an illness, a limit, the end of a clearance.
fn opens(kind: &EventKind) -> bool {
    let opened = Opened::by(kind);
    let ends = matches!(kind, EventKind::ClearanceExpired(_));
    let limits = |given: &Clearance| given.status == ClearanceStatus::NotCleared || !given.limits.is_empty();
    ends || !opened.signs.is_empty()
        || !opened.asks.is_empty()
        || !opened.pain.iter().all(is_none)
        || opened.ill.is_some()
        || opened.clearance.is_some_and(limits)
}

/// Whether it stands where its correction cannot be read: what opens anything, and every word, day or session for less. A word that gives
/// something, as a clearance or a clean session, does not. Of one that may do either the fold looks which it is: a word for more that
/// is not read is refused there.
fn stands_unread(kind: &EventKind) -> bool {
    let less = match kind {
        EventKind::LayoffNoted(_)
        | EventKind::CoachOverride(_)
        | EventKind::AdvanceDeclined(_)
        | EventKind::VariantChanged(_)
        | EventKind::RangeChanged(_)
        | EventKind::ParametersChanged(_)
        | EventKind::BarOrDiscsChanged(_)
        | EventKind::RaterChanged(_) => true,
        EventKind::RoleSet(given) => matches!(given.role, Role::Rest | Role::Retire),
        EventKind::DayReport(report) => report.class.is_some_and(DayClass::is_below),
        EventKind::SessionRecorded(session) => {
            session.lifts.iter().flat_map(|lift| &lift.sets).any(WorkSet::shows_less)
        }
        _ => false,
    };
    less || opens(kind)
}

fn is_none(answer: &PainAnswer) -> bool {
    answer.score == Pain::NONE && !answer.stops()
}

/// Whether what is said now opens nothing that was not open by what was said before: a slip of a load that is mended in a session
/// tells of no pain anew.
fn opens_no_more(now: &EventKind, before: &EventKind) -> bool {
    let (now, before) = (Opened::by(now), Opened::by(before));
    let told = |answer: &PainAnswer| {
        is_none(answer) || before.pain.iter().any(|earlier| hurts_no_more(answer, earlier))
    };
    let same = |given: &Clearance| {
        let alike = |earlier: &Clearance| earlier.status == given.status && earlier.limits == given.limits;
        before.clearance.is_some_and(alike)
    };
    now.signs.iter().all(|sign| before.signs.contains(sign))
        && now.asks.iter().all(|ask| before.asks.contains(ask))
        && now.pain.iter().all(told)
        && now.ill.is_none_or(|now| before.ill.is_some_and(|before| is_over_no_later(now, before)))
        && now.clearance.is_none_or(same)
}

/// A word given after an illness knew of it as it had been told: not of one that began later, or lasted longer.
fn is_over_no_later(now: &Layoff, before: &Layoff) -> bool {
    let ends = now.to.map_or(before.to.is_none(), |now| before.to.is_none_or(|before| now <= before));
    now.from <= before.from && ends
}

fn hurts_no_more(now: &PainAnswer, before: &PainAnswer) -> bool {
    let features = match (&now.features, &before.features) {
        (Some(now), Some(before)) => now.iter().all(|feature| before.contains(feature)),
        (now, before) => now == before,
    };
    now.region == before.region && now.score <= before.score && features
}

/// What the last correction of a chain says.
pub(super) struct Last<'a>(Found<'a>);

/// The last correction of each chain, in order of the events that they began with.
pub(super) struct Chains<'a> {
    lasts: Vec<Last<'a>>,
    /// Links looked at, for the test of how the work grows.
    #[cfg(test)]
    steps: usize,
}

impl<'a> Chains<'a> {
    /// Follows every correction among events in order of their numbers.
    ///
    /// # Errors
    /// `correction_of_nothing`, `correction_cycle`.
    pub(super) fn of(events: &[&'a Event]) -> Result<Chains<'a>, Error> {
        let mut links: Vec<Link<'a>> = events.iter().filter_map(link).collect();
        let mut steps = 0;
        for at in 0..links.len() {
            follow(at, &mut links, events, &mut steps)?;
        }
        // The sort keeps the order of numbers within a chain.
        links.sort_by_key(|link| link.first);
        let mut lasts: Vec<Last<'a>> = Vec::new();
        for link in &links {
            let Some(first) = link.first else { continue };
            if lasts.last().is_none_or(|last| last.0.first != first) {
                lasts.push(Last(Found::own(first)));
            }
            if let Some(last) = lasts.last_mut() {
                last.0.correct(link, events);
            }
        }
        Ok(Chains {
            lasts,
            #[cfg(test)]
            steps,
        })
    }

    /// The last correction of the chain that began with that event.
    pub(super) fn last_of(&self, first: u32) -> Option<&Last<'a>> {
        let at = self.lasts.binary_search_by_key(&first, |last| last.0.first).ok()?;
        self.lasts.get(at)
    }
}

fn link<'a>(event: &&'a Event) -> Option<Link<'a>> {
    match &event.kind {
        EventKind::Correction(said) => Some(Link { sequence: event.sequence, said, first: None }),
        _ => None,
    }
}

/// Follows one correction to the first event of its chain, and keeps that at every link on the way, so that no link is followed
/// twice. Counts the links looked at.
fn follow(from: usize, links: &mut [Link<'_>], events: &[&Event], steps: &mut usize) -> Result<(), Error> {
    let mut path = Vec::new();
    let mut next = Some(from);
    let mut first = None;
    while let Some((at, link)) = next.and_then(|at| Some((at, links.get(at)?))) {
        if link.first.is_some() {
            first = link.first;
            break;
        }
        // Longer than all links there are: it goes in a circle.
        if path.len() >= links.len() {
            return Err(cycle(links.get(from)));
        }
        path.push(at);
        let replaced = link.said.replaces;
        next = links.binary_search_by_key(&replaced, |link| link.sequence).ok();
        if next.is_none() {
            first = Some(existing(replaced, link.sequence, events)?);
        }
    }
    *steps += path.len() + 1;
    if first.is_none() {
        return Err(cycle(links.get(from)));
    }
    for at in path {
        if let Some(link) = links.get_mut(at) {
            link.first = first;
        }
    }
    Ok(())
}

/// The number of the replaced event, which must be there.
fn existing(replaced: u32, by: u32, events: &[&Event]) -> Result<u32, Error> {
    if events.binary_search_by_key(&replaced, |event| event.sequence).is_ok() {
        return Ok(replaced);
    }
    let rule = Allowed::rule("the number of an event in the log");
    Err(Error::new(Code::CorrectionOfNothing, "replaces", replaced, rule).at_event(by))
}

fn cycle(link: Option<&Link<'_>>) -> Error {
    let (sequence, replaces) = link.map_or((0, 0), |link| (link.sequence, link.said.replaces));
    Error::new(Code::CorrectionCycle, "replaces", replaces, Allowed::Unstated).at_event(sequence)
}

impl Last<'_> {
    /// Number under which what it opens was told.
    pub(super) const fn told(&self) -> u32 {
        self.0.told
    }

    /// Whether what was said last is of a kind that is not known here, and what stands in the event's place was said before it.
    pub(super) const fn is_unread(&self) -> bool {
        self.0.unread
    }

    /// What stands in the event's place; nothing where the event did not happen.
    pub(super) fn applied_to(&self, event: &Event) -> Option<Event> {
        let kind = match self.0.content {
            Content::Own => event.kind.clone(),
            Content::Other(kind) => kind.clone(),
            Content::Nothing => return None,
        };
        Some(Event { day: self.0.day.unwrap_or(event.day), kind, ..event.clone() })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may panic")]
mod tests {
    use super::*;
    use crate::quantity::Name;
    use alloc::boxed::Box;

    /// One event, and so many corrections: each of the one before it, or all of the event itself.
    fn log(corrections: u32, chained: bool) -> Vec<Event> {
        let day: Day = "2025-01-06".parse().unwrap();
        let block = || EventKind::BlockStarted(Name::new("block").unwrap());
        let first = Event { sequence: 1, day, kind: block(), note: None };
        let correction = |number: u32| {
            let replaces = if chained { number - 1 } else { 1 };
            let said = Correction { replaces, day: None, with: Some(Box::new(block())) };
            Event { sequence: number, day, kind: EventKind::Correction(said), note: None }
        };
        core::iter::once(first).chain((2..corrections + 2).map(correction)).collect()
    }

    fn steps(events: &[Event], backwards: bool) -> usize {
        let sorted: Vec<&Event> = events.iter().collect();
        let chains = Chains::of(&sorted).unwrap();
        assert_eq!(chains.lasts.len(), 1);
        assert!(backwards || chains.last_of(1).is_some());
        chains.steps
    }

    #[test]
    fn work_grows_no_faster_than_the_corrections() {
        for chained in [false, true] {
            let (some, double) = (steps(&log(1_000, chained), false), steps(&log(2_000, chained), false));
            assert!(some <= 2 * 1_000 && double <= 2 * some + 2, "{some} and {double} steps");
        }
        // The worst order: each correction replaces the one after it, and the last one replaces the event.
        let mut events = log(1_000, false);
        for event in &mut events {
            if let EventKind::Correction(said) = &mut event.kind {
                said.replaces = if event.sequence == 1_001 { 1 } else { event.sequence + 1 };
            }
        }
        assert!(steps(&events, true) <= 2 * 1_000);
    }
}
