//! The log as people read it: each entry with what corrections made of it, the latest first.

use std::collections::BTreeMap;

use bismar::Error;
use bismar::loading::Implement;
use bismar::quantity::{Day, Name};
use bismar::record::{Correction, Event, EventKind, PainAnswer};
use serde::{Deserialize, Serialize};

use crate::opened::Which;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "EntriesAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: Which,
    /// So many of the latest entries.
    most: u32,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "EntriesAnswer"))]
pub(crate) struct Answer {
    /// Events in the log, corrections among them.
    events: u32,
    /// Entries there are; not all may be given.
    all: u32,
    /// The latest first.
    entries: Vec<Entry>,
    /// What undoing the last event would do.
    #[serde(skip_serializing_if = "Option::is_none")]
    undo: Option<Undo>,
}

/// An entry with what corrections made of it.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "EntriesEntry"))]
pub(crate) struct Entry {
    sequence: u32,
    day: Day,
    /// Name of the kind.
    kind: &'static str,
    /// What it says; of one that was taken back what it said last.
    said: EventKind,
    taken_back: bool,
    corrected: bool,
    /// The number that a further correction replaces.
    last: u32,
    /// Of a report of the morning after: the day of its session.
    #[serde(skip_serializing_if = "Option::is_none")]
    of: Option<Day>,
    /// Of a session: its lifts whose load was one of two, one in each hand.
    each_hand: Vec<Name>,
    /// Of a session: the morning after it, where somebody told it.
    #[serde(skip_serializing_if = "Option::is_none")]
    morning: Option<Morning>,
}

/// What was said the morning after.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "EntriesMorning"))]
pub(crate) struct Morning {
    /// Absent where nobody asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pain: Option<Vec<PainAnswer>>,
}

/// What the last event did.
#[derive(Clone, Copy, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "EntriesChange"))]
#[serde(rename_all = "snake_case")]
pub(crate) enum Change {
    Entry,
    Correction,
    TakingBack,
    PuttingBack,
}

/// Undoing the last event.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Undo {
    /// Day and kind of the entry that it is about.
    day: Day,
    kind: &'static str,
    /// What is undone.
    change: Change,
    /// The event that undoes it.
    by: EventKind,
}

/// What an entry said, one after the other; nothing means taken back.
struct Chain<'a> {
    event: &'a Event,
    day: Day,
    said: Vec<(Option<&'a EventKind>, Day)>,
    last: u32,
}

impl Chain<'_> {
    fn now(&self) -> Option<&EventKind> {
        self.said.last().and_then(|(kind, _)| *kind)
    }

    /// What it says, or said last.
    fn told(&self) -> &EventKind {
        self.said.iter().rev().find_map(|(kind, _)| *kind).unwrap_or(&self.event.kind)
    }
}

/// Entries in the order in which they were written, and the place of the one that the last event is about.
fn chains(events: &[Event]) -> (Vec<Chain<'_>>, Option<usize>) {
    let mut chains: Vec<Chain<'_>> = Vec::new();
    // The place of the entry that an event's number belongs to.
    let mut of: BTreeMap<u32, usize> = BTreeMap::new();
    let mut last = None;
    for event in events {
        let corrected = match &event.kind {
            EventKind::Correction(correction) => {
                of.get(&correction.replaces).copied().map(|at| (at, correction))
            }
            _ => None,
        };
        let at = match corrected {
            Some((at, correction)) => {
                if let Some(chain) = chains.get_mut(at) {
                    let before = chain.said.last().copied().unwrap_or((None, chain.day));
                    let kind = match (&correction.with, correction.day) {
                        (Some(kind), _) => Some(kind.as_ref()),
                        // Only its day was wrong.
                        (None, Some(_)) => before.0,
                        (None, None) => None,
                    };
                    chain.day = correction.day.unwrap_or(before.1);
                    chain.said.push((kind, chain.day));
                    chain.last = event.sequence;
                }
                at
            }
            None => {
                let said = vec![(Some(&event.kind), event.day)];
                chains.push(Chain { event, day: event.day, said, last: event.sequence });
                chains.len() - 1
            }
        };
        of.insert(event.sequence, at);
        last = Some(at);
    }
    (chains, last)
}

fn undo(chain: &Chain<'_>) -> Undo {
    let earlier = chain.said.len().checked_sub(2).and_then(|at| chain.said.get(at));
    let change = match (chain.now(), earlier) {
        (_, None) => Change::Entry,
        (None, _) => Change::TakingBack,
        (Some(_), Some((None, _))) => Change::PuttingBack,
        (Some(_), Some(_)) => Change::Correction,
    };
    // What was said before, on the day of before; taken back where nothing was.
    let with = earlier.and_then(|(kind, _)| *kind).map(|kind| Box::new(kind.clone()));
    let day = earlier.filter(|(kind, day)| kind.is_some() && *day != chain.day).map(|(_, day)| *day);
    let by = EventKind::Correction(Correction::new(chain.last).with_day(day).with_kind(with));
    Undo { day: chain.day, kind: chain.told().name(), change, by }
}

/// The latest entries of a log.
pub(crate) fn entries(asked: Asked) -> Result<Answer, Error> {
    let opened = asked.log.open()?;
    let (chains, last) = chains(&opened.log.events);
    let day_of = |session: u32| {
        let own = |chain: &&Chain<'_>| chain.event.sequence == session || chain.last == session;
        chains.iter().find(own).map(|chain| chain.day)
    };
    let morning = |chain: &Chain<'_>| {
        chains.iter().find_map(|other| match other.now() {
            Some(EventKind::NextDayReport(report))
                if report.session == chain.event.sequence || report.session == chain.last =>
            {
                Some(Morning { pain: report.pain.clone() })
            }
            _ => None,
        })
    };
    let effective = opened.log.effective()?;
    let in_two_hands = |chain: &Chain<'_>| -> Vec<Name> {
        let EventKind::SessionRecorded(session) = chain.told() else { return Vec::new() };
        // As the lifts were set when it was done.
        let upto = effective
            .partition_point(|event| (event.day, event.sequence) <= (chain.day, chain.event.sequence));
        let set = effective.iter().take(upto).rev().find_map(|event| match &event.kind {
            EventKind::ParametersChanged(all) => Some(all.as_ref()),
            _ => None,
        });
        let each_hand = |lift: &&Name| {
            let implement = set.and_then(|all| all.implement(&all.lift(lift)?.implement));
            implement.is_some_and(Implement::is_one_of_two)
        };
        session.lifts.iter().map(|lift| &lift.lift).filter(each_hand).cloned().collect()
    };
    let entry = |chain: &Chain<'_>| {
        let told = chain.told();
        Entry {
            sequence: chain.event.sequence,
            day: chain.day,
            kind: told.name(),
            said: told.clone(),
            taken_back: chain.now().is_none(),
            corrected: chain.now().is_some_and(|now| *now != chain.event.kind)
                || chain.day != chain.event.day,
            last: chain.last,
            of: match told {
                EventKind::NextDayReport(report) => day_of(report.session),
                _ => None,
            },
            each_hand: in_two_hands(chain),
            morning: match told {
                EventKind::SessionRecorded(_) => morning(chain),
                _ => None,
            },
        }
    };
    Ok(Answer {
        events: opened.log.events.len() as u32,
        all: chains.len() as u32,
        entries: chains.iter().rev().take(asked.most as usize).map(entry).collect(),
        undo: last.and_then(|at| chains.get(at)).map(undo),
    })
}
