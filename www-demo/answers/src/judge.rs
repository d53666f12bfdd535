//! Today against the lifter's own days: markers as they were answered then and now.
//!
//! The page writes each day's markers into the note of its day report, since the log itself keeps the class only.

use bismar::Error;
use bismar::condition::{
    Conditions, DayOptions, DayVerdict, Marker, MarkerKind, MarkerReading, WarmUpTechnique, judge_day,
};
use bismar::quantity::Day;
use bismar::record::EventKind;
use serde::{Deserialize, Serialize};

use crate::opened::open;

/// What the page asks each day, with the word that its notes use.
const ASKED: [(&str, MarkerKind); 5] = [
    ("recovery", MarkerKind::Recovery),
    ("sleep", MarkerKind::Sleep),
    ("soreness", MarkerKind::Soreness),
    ("stress", MarkerKind::Stress),
    ("warm-up effort", MarkerKind::WarmUpEffort),
];
const NOTE: &str = "Markers: ";

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: String,
    today: Day,
    /// Answers of today, each a word and a number from 0 to 10.
    answers: Vec<Given>,
    /// A critical point of technique dropped in the warm-up; absent where it was not looked at.
    #[serde(default)]
    critical_drop: Option<bool>,
}

#[derive(Clone, Deserialize)]
#[serde(deny_unknown_fields)]
struct Given {
    marker: String,
    value: f64,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    verdict: DayVerdict,
    /// Days with markers before today.
    days: u32,
    /// What to write into the day report's note.
    note: String,
}

fn readings(note: &str, kind: &str) -> Option<f64> {
    let rest = note.split_once(NOTE)?.1;
    rest.split(", ").find_map(|part| part.trim_end_matches('.').strip_prefix(kind)?.trim().parse().ok())
}

/// Whether today is a good or a bad day for this lifter.
pub(crate) fn judge(asked: Asked) -> Result<Answer, Error> {
    let opened = open(&asked.log)?;
    let events = opened.log.effective()?;
    let notes: Vec<(Day, &str)> = events
        .iter()
        .filter(|event| matches!(event.kind, EventKind::DayReport(_)) && event.day < asked.today)
        .filter_map(|event| Some((event.day, event.note.as_deref().filter(|note| note.contains(NOTE))?)))
        .collect();
    let markers: Vec<Marker> = ASKED
        .iter()
        .map(|(word, kind)| Marker {
            kind: *kind,
            today: asked.answers.iter().find(|given| given.marker == *word).map(|given| given.value),
            conditions: Conditions::default(),
            history: notes
                .iter()
                .filter_map(|(day, note)| {
                    let value = readings(note, word)?;
                    Some(MarkerReading { day: *day, value, conditions: Conditions::default() })
                })
                .collect(),
            least_spread: None,
        })
        .collect();
    let technique = match asked.critical_drop {
        Some(true) => WarmUpTechnique::CriticalDrop,
        Some(false) => WarmUpTechnique::AsUsual,
        None => WarmUpTechnique::NotScored,
    };
    let said: Vec<String> =
        asked.answers.iter().map(|given| format!("{} {}", given.marker, given.value)).collect();
    Ok(Answer {
        verdict: judge_day(asked.today, &markers, technique, DayOptions::STANDARD)?,
        days: notes.len() as u32,
        note: format!("{NOTE}{}.", said.join(", ")),
    })
}
