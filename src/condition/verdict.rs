//! Today's verdict: the votes of the markers, and the class they make.

use alloc::vec::Vec;

use super::day_class::DayClass;
use super::false_alarm::{FalseAlarms, false_alarms};
use super::marker::{Marker, MarkerKind, value_of};
use super::own_baseline::{Baseline, DayOptions, baseline};
use crate::error::{Code, Error};
use crate::quantity::Day;
use crate::source::{OURS, formula, rows};

/// Most markers of one day.
const MOST_MARKERS: usize = 20;

/// What one marker says of today.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Vote {
    /// Below the lifter's ordinary range.
    Below,
    /// Within it.
    Within,
    /// Above it.
    Above,
    /// Too few past values under equal conditions.
    NotEnoughHistory,
    /// Not answered or not measured today.
    NotAnswered,
}

/// One marker's vote with its numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct MarkerVote {
    /// Which marker.
    pub kind: MarkerKind,
    /// What it says.
    pub vote: Vote,
    /// Distance from the centre in spreads, above 0 better.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub score: Option<f64>,
    /// What it was held against: this lifter's own ordinary values.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub baseline: Option<Baseline>,
}

/// What the warm-up showed of technique.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum WarmUpTechnique {
    /// As usual.
    AsUsual,
    /// A critical criterion dropped that usually holds.
    CriticalDrop,
    /// Nobody looked.
    #[default]
    NotScored,
}

/// What to do about it. Never more load.
#[non_exhaustive]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum DayAdvice {
    /// Technique only, or one step less and fewer sets.
    EaseOff,
    /// Go on; look again after the first work set.
    RecheckAfterFirstSet,
    /// As planned.
    AsPlanned,
    /// As planned; one more easy set for quality if the coach allows, at the same load.
    QualitySetAllowed,
    /// As planned, without a step up.
    PlannedWithoutAdvance,
}

/// Today's class with everything that made it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DayVerdict {
    /// The class.
    pub class: DayClass,
    /// What to do about it.
    pub advice: DayAdvice,
    /// Each marker's vote.
    pub votes: Vec<MarkerVote>,
    /// Whether a critical drop in technique decided.
    pub technique_decided: bool,
    /// Markers that gave a vote.
    pub usable: u32,
    /// Markers asked.
    pub asked: u32,
    /// How often ordinary days would look like ones below the usual by these rules.
    pub false_alarms: FalseAlarms,
}

fn vote_of(marker: &Marker, today: Day, options: DayOptions) -> Result<MarkerVote, Error> {
    let silent = |vote| MarkerVote { kind: marker.kind, vote, score: None, baseline: None };
    // The floor may depend on the centre, so the centre is found with the smallest floor first.
    let usual = baseline(&marker.history, &marker.conditions, today, f64::MIN_POSITIVE, options)?;
    let floor = match (marker.least_spread, usual) {
        (Some(floor), _) => floor,
        (None, Some(found)) => marker.kind.least_spread(found.centre),
        (None, None) => marker.kind.least_spread(0.0),
    };
    let found = baseline(&marker.history, &marker.conditions, today, floor, options)?;
    let Some(value) = marker.today else { return Ok(silent(Vote::NotAnswered)) };
    let value = value_of("today", value)?;
    let Some(found) = found else { return Ok(silent(Vote::NotEnoughHistory)) };
    let upward = (value - found.centre) / found.spread;
    let score = crate::numeric::tidy(if marker.kind.higher_is_better() { upward } else { -upward });
    // A tie is a decision; rounding must not undo it.
    let vote = if score <= -options.threshold + 1e-9 {
        Vote::Below
    } else if score >= options.threshold - 1e-9 {
        Vote::Above
    } else {
        Vote::Within
    };
    Ok(MarkerVote { kind: marker.kind, vote, score: Some(score), baseline: Some(found) })
}

/// The class that votes make. A drop in technique decides alone; missing answers never make a day better.
fn class_of(votes: &[MarkerVote], technique: WarmUpTechnique, agreeing: u32) -> DayClass {
    let count = |vote: Vote| votes.iter().filter(|one| one.vote == vote).count() as u32;
    let usable = votes.iter().filter(|one| one.score.is_some()).count() as u32;
    let (bad, good) = (count(Vote::Below), count(Vote::Above));
    if technique == WarmUpTechnique::CriticalDrop || bad >= agreeing {
        DayClass::Below
    } else if bad > 0 {
        DayClass::BelowSingle
    } else if usable == 0 || 2 * usable < votes.len() as u32 {
        DayClass::Unknown
    } else if good >= agreeing {
        DayClass::Above
    } else {
        DayClass::Within
    }
}

const fn advice_for(class: DayClass) -> DayAdvice {
    match class {
        DayClass::Below => DayAdvice::EaseOff,
        DayClass::BelowSingle => DayAdvice::RecheckAfterFirstSet,
        DayClass::Within => DayAdvice::AsPlanned,
        DayClass::Above => DayAdvice::QualitySetAllowed,
        DayClass::Unknown => DayAdvice::PlannedWithoutAdvance,
    }
}

formula! {
    "condition.judge_day",
    /// Does today lie below, within or above this lifter's usual?
    ///
    /// # Formula
    /// Each marker votes by its distance from its own baseline: below at or under minus the threshold, above at or over it.
    /// Below (agreeing): enough votes below, or a critical drop in technique. Below (single): one vote below. Above:
    /// enough votes above and none below. Unknown: no vote, or fewer than half of those asked. Otherwise within.
    ///
    /// # Domain
    /// Up to 20 markers, each kind once. Not a stop sign: fever, dizziness, palpitations, a fall or a new medicine are
    /// asked first and are no markers.
    ///
    /// # Errors
    /// `out_of_range` for options or values outside their ranges or more than 20 markers; `duplicate_field` for a kind
    /// given twice; `not_finite`.
    ///
    /// # Source
    /// This project's choice, from what is known of each marker (row `condition.judge_day`).
    ///
    /// # Examples
    /// ```
    /// use bismar::condition::{DayClass, DayOptions, WarmUpTechnique, judge_day};
    /// use bismar::quantity::Day;
    ///
    /// let today = Day::from_number(20000)?;
    /// let verdict = judge_day(today, &[], WarmUpTechnique::CriticalDrop, DayOptions::STANDARD)?;
    /// assert_eq!(verdict.class, DayClass::Below);
    /// let verdict = judge_day(today, &[], WarmUpTechnique::NotScored, DayOptions::STANDARD)?;
    /// assert_eq!(verdict.class, DayClass::Unknown);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn judge_day(
        today: Day,
        markers: &[Marker],
        technique: WarmUpTechnique,
        options: DayOptions
    ) -> Result<DayVerdict, Error> {
        let options = options.checked()?;
        if markers.len() > MOST_MARKERS {
            let most = MOST_MARKERS as f64;
            return Err(Error::range(Code::OutOfRange, "markers", markers.len(), 0.0, most, "markers"));
        }
        let mut votes = Vec::with_capacity(markers.len());
        for (at, marker) in markers.iter().enumerate() {
            if markers.iter().take(at).any(|earlier| earlier.kind == marker.kind) {
                return Err(Error::plain(Code::DuplicateField, "kind").within(&alloc::format!("markers[{at}]")));
            }
            let place = |error: Error| error.within(&alloc::format!("markers[{at}]"));
            votes.push(vote_of(marker, today, options).map_err(place)?);
        }
        let class = class_of(&votes, technique, options.agreeing);
        let counts: Vec<u32> = votes.iter().filter_map(|vote| vote.baseline.filter(|_| vote.score.is_some())).map(|found| found.values).collect();
        Ok(DayVerdict {
            class,
            advice: advice_for(class),
            technique_decided: technique == WarmUpTechnique::CriticalDrop,
            usable: counts.len() as u32,
            asked: markers.len() as u32,
            false_alarms: false_alarms(&counts, options)?,
            votes,
        })
    }
    source: OURS, place: "votes of markers", standing: OurChoice, seen: NotApplicable,
    domain: "up to 20 markers",
}

rows![judge_day];
