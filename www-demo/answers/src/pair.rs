//! How the strict and the forgiving lift of a pair stand to each other, against this lifter's own past.

use bismar::Error;
use bismar::condition::{PairedEstimate, RatioPrior, VariantRatio, variant_ratio};
use bismar::quantity::{Day, Mass, Name};
use bismar::record::{EventKind, Log, Pair};
use bismar::statistics::quantile;
use serde::{Deserialize, Serialize};

use crate::opened::open;
use crate::trend::{Estimated, estimates};

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

/// The answer. Every ratio is forgiving over strict, as the library has it.
#[derive(Serialize)]
pub(crate) struct Answer {
    #[serde(skip_serializing_if = "Option::is_none")]
    strict_load: Option<Mass>,
    #[serde(skip_serializing_if = "Option::is_none")]
    forgiving_load: Option<Mass>,
    /// Of the two loads.
    #[serde(skip_serializing_if = "Option::is_none")]
    ratio: Option<f64>,
    /// Of the two strengths, from estimates of the same weeks.
    own: VariantRatio,
    /// Where the ratio of a single week may lie, and whether that is read from the lifter's own weeks.
    low: f64,
    high: f64,
    weeks: bool,
    prior_low: f64,
    prior_high: f64,
    /// The strict load may be at most this part of the forgiving lift's proven load.
    #[serde(skip_serializing_if = "Option::is_none")]
    cap: Option<f64>,
    place: Place,
}

#[derive(Clone, Copy, PartialEq, Serialize)]
#[serde(rename_all = "snake_case")]
enum Place {
    Unknown,
    Usual,
    StrictHigher,
    ForgivingAhead,
    AboveCap,
}

/// Estimates at most so many days apart count as of one week.
const SAME_WEEK: i32 = 7;
/// Older weeks say little about how two lifts stand now (our choice).
const HALF_A_YEAR: i32 = 182;
const LEVEL: f64 = 0.95;
/// Before own data: a forgiving variant may be anything from a little under to twice the strict one (our choice,
/// wider than what is published for hex over straight bar, since other pairs have no published ratio).
const OTHER_PAIRS: (f64, f64) = (0.9, 2.5);
/// The lifts of which a ratio is published.
const HEX_OVER_STRAIGHT: (&str, &str) = ("straight-bar pull", "hex-bar pull");
/// Fewest pairs for a band of the lifter's own (our choice).
const FEWEST_FOR_BAND: usize = 8;
/// Fewest pairs for saying that a ratio is usual or not (our choice).
const FEWEST: u32 = 3;

fn last_load(log: &Log, lift: &Name) -> Result<Option<Mass>, Error> {
    let mut found = None;
    for event in log.effective()? {
        let EventKind::SessionRecorded(session) = &event.kind else { continue };
        let done = session.lifts.iter().find(|done| done.lift == *lift);
        found = done.and_then(|done| done.sets.iter().map(|set| set.load).max()).or(found);
    }
    Ok(found)
}

/// Each strict estimate with the forgiving one nearest to it in time.
fn paired(strict: &[Estimated], forgiving: &[Estimated]) -> Vec<PairedEstimate> {
    let apart = |one: Day, other: Day| one.since(other).abs();
    let pair = |own: &Estimated| {
        let near = forgiving.iter().min_by_key(|other| apart(own.evidence.day, other.evidence.day))?;
        (apart(own.evidence.day, near.evidence.day) <= SAME_WEEK).then_some(PairedEstimate {
            strict: own.evidence.estimate,
            strict_error: own.evidence.standard_error,
            forgiving: near.evidence.estimate,
            forgiving_error: near.evidence.standard_error,
        })
    };
    strict.iter().filter_map(pair).collect()
}

/// Between what nine tenths of the lifter's own weeks lay; with few of them, the interval of the ratio.
fn band(own: &VariantRatio, pairs: &[PairedEstimate]) -> Result<(f64, f64, bool), Error> {
    if pairs.len() < FEWEST_FOR_BAND {
        return Ok((own.interval.low(), own.interval.high(), false));
    }
    let ratios: Vec<f64> = pairs.iter().map(|pair| pair.forgiving / pair.strict).collect();
    Ok((quantile(&ratios, 0.05)?, quantile(&ratios, 0.95)?, true))
}

fn place(asked: &Answer, strict: Option<Mass>, forgiving: Option<Mass>) -> Place {
    let (Some(strict), Some(forgiving), Some(ratio)) = (strict, forgiving, asked.ratio) else {
        return Place::Unknown;
    };
    if asked.cap.is_some_and(|cap| strict.kg() > cap * forgiving.kg()) {
        return Place::AboveCap;
    }
    match ratio {
        _ if asked.own.pairs < FEWEST => Place::Unknown,
        ratio if ratio > asked.high => Place::ForgivingAhead,
        ratio if ratio < asked.low => Place::StrictHigher,
        _ => Place::Usual,
    }
}

/// The pair's ratio.
pub(crate) fn pair(asked: Asked) -> Result<Answer, Error> {
    let opened = open(&asked.log)?;
    let log = &opened.log;
    let last = { &log.events }.iter().map(|event| event.day).max();
    let since = last.map_or_else(|| Day::from_number(0), |day| day.plus(-HALF_A_YEAR))?;
    let of = |lift: &Name| estimates(log, lift, since);
    let pairs = paired(&of(&asked.strict)?, &of(&asked.forgiving)?);
    let published = (asked.strict.as_str(), asked.forgiving.as_str()) == HEX_OVER_STRAIGHT;
    let (prior, ends) = if published {
        (RatioPrior::HEX_OVER_STRAIGHT, (0.95, 1.25))
    } else {
        (RatioPrior::new(OTHER_PAIRS.0, OTHER_PAIRS.1)?, OTHER_PAIRS)
    };
    let own = variant_ratio(&pairs, prior, LEVEL)?;
    let (low, high, weeks) = band(&own, &pairs)?;
    let strict_load = asked.strict_load.or(last_load(log, &asked.strict)?);
    let forgiving_load = asked.forgiving_load.or(last_load(log, &asked.forgiving)?);
    let under = strict_load.filter(|load| load.is_positive());
    let known = opened.state.parameters().into_iter().flat_map(|all| &all.pairs);
    let same = |pair: &&Pair| pair.strict == asked.strict && pair.forgiving == asked.forgiving;
    let mut answer = Answer {
        strict_load,
        forgiving_load,
        ratio: under.zip(forgiving_load).map(|(strict, forgiving)| forgiving.kg() / strict.kg()),
        own,
        low,
        high,
        weeks,
        prior_low: ends.0,
        prior_high: ends.1,
        cap: { known }.find(same).map(|pair| pair.ratio_cap),
        place: Place::Unknown,
    };
    answer.place = place(&answer, strict_load, forgiving_load);
    Ok(answer)
}
