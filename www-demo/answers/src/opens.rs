//! What a correction, an undo, something brought back or a file would open: the library's answer, with its sentences.

use std::rc::Rc;

use bismar::Error;
use bismar::answers::{Diary, HigherLoad, Opens, Restriction};
use bismar::quantity::{Day, Unit};
use bismar::record::EventKind;
use bismar::text::Words;
use serde::{Deserialize, Serialize};

use crate::opened::{Opened, Which};
use crate::stops::InForce;
use crate::words::spoken;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "OpensAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: Which,
    today: Day,
    /// In which unit the sentences name loads.
    unit: Unit,
    /// What if this were written down that day: one kind of event.
    #[serde(default)]
    suppose: Option<EventKind>,
    /// What if that log stood in its place.
    #[serde(default)]
    instead: Option<Which>,
}

/// The answer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "OpensAnswer"))]
pub(crate) struct Answer {
    /// Stops that would no longer be in force.
    stops: Vec<InForce>,
    /// Whatever else narrows a lift now and would not then, and each load of today that would be higher.
    less: Vec<Less>,
    /// It takes the last settings back.
    unsets: bool,
}

/// One thing that keeps a lift below what it would be without it.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct Less {
    /// Name of its kind, as the library has it, or work (the granted load) or load (today).
    kind: &'static str,
    /// What it is, in words; of a load what becomes of it.
    what: String,
    /// What becomes of it, as a sentence.
    says: String,
}

impl Less {
    fn gone(words: &Words<'_>, gone: &Restriction) -> Less {
        Less { kind: gone.kind(), what: words.restriction(gone), says: words.gone(gone) }
    }

    fn higher(words: &Words<'_>, load: &HigherLoad) -> Less {
        let kind = if matches!(load, HigherLoad::Granted { .. }) { "work" } else { "load" };
        let says = words.higher_load(load);
        Less { kind, what: says.clone(), says }
    }
}

/// What would open.
pub(crate) fn opens(asked: Asked) -> Result<Answer, Error> {
    let opened = asked.log.open()?;
    let before = opened.diary()?;
    let own = last_of(&before).map_or(asked.today, |last| asked.today.max(last));
    let after = match (asked.suppose, asked.instead) {
        (Some(kind), _) => Rc::new(opened.diary_supposing(own, kind)?),
        (None, Some(other)) => other.open()?.diary()?,
        (None, None) => Rc::clone(&before),
    };
    let Opens { stops_gone, gone, higher, unsets, .. } = between(&before, &after, own)?;
    let words = spoken(&opened.state, asked.unit);
    let less = gone.iter().map(|one| Less::gone(&words, one));
    let stops = stops_gone.iter().filter_map(|gone| InForce::of(&words, &gone.stop));
    Ok(Answer {
        stops: stops.collect(),
        less: less.chain(higher.iter().map(|load| Less::higher(&words, load))).collect(),
        unsets,
    })
}

fn last_of(diary: &Diary<'_>) -> Option<Day> {
    diary.state().last().map(|(last, _)| last)
}

/// On that day, or the last one of either.
pub(crate) fn between(before: &Diary<'_>, after: &Diary<'_>, day: Day) -> Result<Opens, Error> {
    let last = last_of(before).max(last_of(after));
    before.opens(after, last.map_or(day, |last| day.max(last)))
}

/// The stops in force here that would be gone with another log in its place; none where nothing happened here.
pub(crate) fn stops_gone(here: &Opened, there: &Diary<'_>) -> Result<Vec<StopGone>, Error> {
    let before = here.diary()?;
    let Some(last) = last_of(&before) else { return Ok(Vec::new()) };
    let words = spoken(&here.state, Unit::Kg);
    let gone = between(&before, there, last)?.stops_gone.into_iter().filter_map(|gone| {
        let InForce { what, since, .. } = InForce::of(&words, &gone.stop)?;
        Some(StopGone { what, since, taken_back: gone.taken_back })
    });
    Ok(gone.collect())
}

/// A stop that is in force here and would not be with a file.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "OpensStopGone"))]
pub(crate) struct StopGone {
    what: String,
    since: Day,
    /// What reported it is not in the file any more, or says something else there.
    taken_back: bool,
}
