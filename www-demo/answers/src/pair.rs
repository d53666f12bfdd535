//! How the strict and the forgiving lift of a pair stand to each other, against this lifter's own past.

use bismar::Error;
use bismar::quantity::{Mass, Name};
use bismar::record::{EventKind, Log, Pair};
use bismar::statistics::quantile;
use serde::{Deserialize, Serialize};

use crate::opened::open;

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: String,
    strict: Name,
    forgiving: Name,
    /// Loads to look at; absent means those last lifted.
    #[serde(default)]
    strict_load: Option<Mass>,
    #[serde(default)]
    forgiving_load: Option<Mass>,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    #[serde(skip_serializing_if = "Option::is_none")]
    strict_load: Option<Mass>,
    #[serde(skip_serializing_if = "Option::is_none")]
    forgiving_load: Option<Mass>,
    /// Strict as a part of forgiving.
    #[serde(skip_serializing_if = "Option::is_none")]
    ratio: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    low: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    high: Option<f64>,
    /// Days on which both were known.
    days: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    cap: Option<f64>,
    place: Place,
}

#[derive(Clone, Copy, Serialize)]
#[serde(rename_all = "snake_case")]
enum Place {
    Unknown,
    Usual,
    StrictHigher,
    ForgivingAhead,
    AboveCap,
}

/// Fewest days for a band of one's own (our choice).
const FEWEST: usize = 8;
/// The middle nine tenths of the past (our choice).
const LOW: f64 = 0.05;
const HIGH: f64 = 0.95;

/// The loads last lifted, and every ratio on the way.
#[derive(Default)]
struct Past {
    strict: Option<Mass>,
    forgiving: Option<Mass>,
    ratios: Vec<f64>,
}

fn past(log: &Log, strict: &Name, forgiving: &Name) -> Result<Past, Error> {
    let mut past = Past::default();
    for event in log.effective()? {
        let EventKind::SessionRecorded(session) = &event.kind else { continue };
        let heaviest = |name: &Name| {
            let lift = session.lifts.iter().find(|lift| lift.track == *name)?;
            lift.sets.iter().map(|set| set.load).max()
        };
        let found = (heaviest(strict), heaviest(forgiving));
        past.strict = found.0.or(past.strict);
        past.forgiving = found.1.or(past.forgiving);
        if found.0.or(found.1).is_some() {
            past.ratios.extend(ratio(past.strict, past.forgiving));
        }
    }
    Ok(past)
}

fn ratio(strict: Option<Mass>, forgiving: Option<Mass>) -> Option<f64> {
    let under = forgiving.filter(|load| load.is_positive())?;
    Some(strict?.kg() / under.kg())
}

fn place(now: Option<f64>, band: (Option<f64>, Option<f64>), cap: Option<f64>) -> Place {
    match (now, band) {
        (Some(now), _) if cap.is_some_and(|cap| now > cap) => Place::AboveCap,
        (Some(now), (Some(low), _)) if now < low => Place::ForgivingAhead,
        (Some(now), (_, Some(high))) if now > high => Place::StrictHigher,
        (Some(_), (Some(_), Some(_))) => Place::Usual,
        _ => Place::Unknown,
    }
}

/// The pair's ratio.
pub(crate) fn pair(asked: Asked) -> Result<Answer, Error> {
    let opened = open(&asked.log)?;
    let past = past(&opened.log, &asked.strict, &asked.forgiving)?;
    let strict_load = asked.strict_load.or(past.strict);
    let forgiving_load = asked.forgiving_load.or(past.forgiving);
    let now = ratio(strict_load, forgiving_load);
    let enough = past.ratios.len() >= FEWEST;
    let band = |part| if enough { quantile(&past.ratios, part).ok() } else { None };
    let (low, high) = (band(LOW), band(HIGH));
    let pairs = opened.state.parameters.iter().flat_map(|all| &all.pairs);
    let own = |pair: &&Pair| pair.strict == asked.strict && pair.forgiving == asked.forgiving;
    let cap = { pairs }.find(own).map(|pair| pair.ratio_cap);
    let place = place(now, (low, high), cap);
    Ok(Answer {
        strict_load,
        forgiving_load,
        ratio: now,
        low,
        high,
        days: past.ratios.len() as u32,
        cap,
        place,
    })
}
