//! Today against the lifter's own days: markers as they were answered then and now.

use bismar::Error;
use bismar::condition::{
    Conditions, DayOptions, DayVerdict, Marker, MarkerKind, MarkerReading, WarmUpTechnique, judge_day,
};
use bismar::quantity::Day;
use bismar::record::{DayReport, EventKind, MarkerAnswer};
use serde::{Deserialize, Serialize};

use crate::opened::open;

/// What the page asks each day.
const ASKED: [MarkerKind; 5] = [
    MarkerKind::Recovery,
    MarkerKind::Sleep,
    MarkerKind::Soreness,
    MarkerKind::Stress,
    MarkerKind::WarmUpEffort,
];

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: String,
    today: Day,
    /// Answers of today.
    answers: Vec<MarkerAnswer>,
    /// A critical point of technique dropped in the warm-up; absent where it was not looked at.
    #[serde(default)]
    critical_drop: Option<bool>,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    verdict: DayVerdict,
    /// Days with markers before today.
    days: u32,
}

/// Whether today is a good or a bad day for this lifter.
pub(crate) fn judge(asked: Asked) -> Result<Answer, Error> {
    let report = DayReport { markers: asked.answers, ..DayReport::default() };
    let opened = open(&asked.log)?;
    let events = opened.log.effective()?;
    let past: Vec<(Day, &[MarkerAnswer])> = events
        .iter()
        .filter(|event| event.day < asked.today)
        .filter_map(|event| match &event.kind {
            EventKind::DayReport(report) if !report.markers.is_empty() => {
                Some((event.day, report.markers.as_slice()))
            }
            _ => None,
        })
        .collect();
    let technique = match asked.critical_drop {
        Some(true) => WarmUpTechnique::CriticalDrop,
        Some(false) => WarmUpTechnique::AsUsual,
        None => WarmUpTechnique::NotScored,
    };
    let markers: Vec<Marker> = ASKED.iter().map(|kind| marker(*kind, &report.markers, &past)).collect();
    Ok(Answer {
        verdict: judge_day(asked.today, &markers, technique, DayOptions::STANDARD)?,
        days: past.len() as u32,
    })
}

fn value(answers: &[MarkerAnswer], kind: MarkerKind) -> Option<f64> {
    answers.iter().find(|answer| answer.kind == kind).map(|answer| answer.value)
}

fn marker(kind: MarkerKind, today: &[MarkerAnswer], past: &[(Day, &[MarkerAnswer])]) -> Marker {
    let reading = |(day, answers): &(Day, &[MarkerAnswer])| {
        let value = value(answers, kind)?;
        Some(MarkerReading { day: *day, value, conditions: Conditions::default() })
    };
    Marker {
        kind,
        today: value(today, kind),
        conditions: Conditions::default(),
        history: past.iter().filter_map(reading).collect(),
        least_spread: None,
    }
}
