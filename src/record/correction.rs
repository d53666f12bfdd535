//! Corrections: each chain followed once to the event that it began with.

use alloc::vec::Vec;

use super::event::{Correction, Event, EventKind};
use crate::error::{Allowed, Code, Error};
use crate::quantity::Day;

/// One correction, with what following its chain has found.
struct Link<'a> {
    sequence: u32,
    said: &'a Correction,
    /// What following the chain up to here has found; found once.
    found: Option<Found<'a>>,
}

/// What a chain says up to one of its links.
#[derive(Clone, Copy)]
struct Found<'a> {
    /// First event of the chain.
    first: u32,
    /// The last day said for it.
    day: Option<Day>,
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
        let mut lasts: Vec<Last<'a>> = links.iter().filter_map(|link| link.found.map(Last)).collect();
        // The sort keeps the order of numbers within a chain, and the last correction of a chain speaks.
        lasts.sort_by_key(|last| last.0.first);
        lasts.reverse();
        lasts.dedup_by_key(|last| last.0.first);
        lasts.reverse();
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
        EventKind::Correction(said) => Some(Link { sequence: event.sequence, said, found: None }),
        _ => None,
    }
}

/// Follows one correction to the first event of its chain, and keeps what it found at every link on the way, so
/// that no link is followed twice. Counts the links looked at.
fn follow<'a>(
    from: usize,
    links: &mut [Link<'a>],
    events: &[&Event],
    steps: &mut usize,
) -> Result<(), Error> {
    let mut path = Vec::new();
    let mut next = Some(from);
    let mut found = None;
    while let Some((at, link)) = next.and_then(|at| Some((at, links.get(at)?))) {
        if link.found.is_some() {
            found = link.found;
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
            let first = existing(replaced, link.sequence, events)?;
            found = Some(Found { first, day: None, content: Content::Own });
        }
    }
    *steps += path.len() + 1;
    let Some(mut found) = found else { return Err(cycle(links.get(from))) };
    for at in path.into_iter().rev() {
        let Some(link) = links.get_mut(at) else { continue };
        // A correction that says no day keeps the day of the link that it replaces; one that says only a day, its content.
        found.day = link.said.day.or(found.day);
        found.content = match (&link.said.with, link.said.day) {
            (Some(with), _) => Content::Other(with),
            (None, Some(_)) => found.content,
            (None, None) => Content::Nothing,
        };
        link.found = Some(found);
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
