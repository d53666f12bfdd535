//! Does today lie below, within or above this lifter's usual?

use alloc::vec::Vec;

use derive_setters::Setters;

use super::diary::Diary;
use super::lacking::Lacking;
use crate::caution::Caution;
use crate::condition::{
    Conditions, DayOptions, DayVerdict, Marker, MarkerKind, MarkerReading, WarmUpTechnique, judge_day,
};
use crate::error::Error;
use crate::quantity::Day;
use crate::reason::Reason;
use crate::record::{EventKind, Log, MarkerAnswer};

/// Reports back over which a marker counts as one that this lifter is asked (our choice: as many as make a baseline).
const ASKED_OVER: usize = 12;

/// Answers of today that are not in the log yet.
#[derive(Clone, Debug, Default, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, default)
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct DayAnswers {
    /// The markers; each stands before the same one in a report of today.
    pub markers: Vec<MarkerAnswer>,
    /// What the warm-up showed of technique.
    pub technique: WarmUpTechnique,
}

/// Today against the lifter's own days.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DayAnswer {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day.
    pub today: Day,
    /// The class, each marker's vote with its baseline, and how often ordinary days would look like one below the usual;
    /// absent where nothing was answered today.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub verdict: Option<DayVerdict>,
    /// Earlier days with an answer.
    pub days: u32,
    /// What nobody answered or said.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Does today lie below, within or above this lifter's usual, and how often is that a false alarm?
///
/// # Rules
/// Markers of the day's reports before today, each against its own past under equal conditions only: lift, load, repetitions,
/// time of day, caffeine and what else is told apart. Asked is what was answered today or in one of the last 12 reports; what
/// was asked and is not answered never makes a day better. Of a warm-up set whose load nobody said the answer is compared
/// with others of that kind, since it may still warn, and the gap is named in `missing`.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`; `duplicate_name` or `out_of_range` for an answer.
///
/// # Examples
/// ```
/// use bismar::answers::{Lacking, day};
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let empty = Log::new(Lifter::new(Name::new("A")?));
/// let found = day(&empty, "2026-03-02".parse()?, None)?;
/// assert!(found.verdict.is_none());
/// assert_eq!(found.missing, [Lacking::DayAnswers]);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn day(log: &Log, today: Day, answers: Option<&DayAnswers>) -> Result<DayAnswer, Error> {
    Diary::of(log)?.day(today, answers)
}

impl Diary<'_> {
    /// Does today lie below, within or above the usual? See [`day`].
    ///
    /// # Errors
    /// `before_last_event`; `duplicate_name` or `out_of_range` for an answer.
    pub fn day(&self, today: Day, answers: Option<&DayAnswers>) -> Result<DayAnswer, Error> {
        self.check_today(today)?;
        let given = answers.cloned().unwrap_or_default();
        MarkerAnswer::check_all(&given.markers).map_err(|error| error.within("answers"))?;
        let (past, written) = self.markers(today);
        let now = |kind: MarkerKind| {
            given.markers.iter().chain(written.iter().copied()).find(|answer| answer.kind == kind)
        };
        let recent = past.iter().rev().take(ASKED_OVER).flat_map(|(_, answers)| answers.iter());
        let mut asked: Vec<MarkerKind> =
            recent.chain(written.iter().copied()).chain(&given.markers).map(|answer| answer.kind).collect();
        crate::numeric::sort::sort(&mut asked);
        asked.dedup();
        let nothing = written.is_empty() && given.markers.is_empty();
        let unlooked = given.technique == WarmUpTechnique::NotScored;
        let mut missing = Vec::new();
        missing.extend((nothing && unlooked).then_some(Lacking::DayAnswers));
        let unsaid = |kind: &&MarkerKind| {
            kind.is_of_a_set() && now(**kind).is_some_and(|answer| answer.conditions.load.is_none())
        };
        missing.extend(asked.iter().filter(unsaid).map(|kind| Lacking::Conditions(*kind)));
        let markers: Vec<Marker> = asked.iter().map(|kind| marker(*kind, now(*kind), &past)).collect();
        let verdict = if nothing && unlooked {
            None
        } else {
            Some(judge_day(today, &markers, given.technique, DayOptions::STANDARD)?)
        };
        Ok(DayAnswer {
            stops: self.state().stops_on(today),
            today,
            verdict,
            days: past.len() as u32,
            missing,
            sources: alloc::vec!["condition.judge_day", "condition.baseline", "condition.false_alarms"],
            cautions: self.cautions(today),
        })
    }

    /// The answers of each earlier day with any, and those of today.
    fn markers(&self, today: Day) -> (Vec<(Day, &[MarkerAnswer])>, Vec<&MarkerAnswer>) {
        let reports = self.events().filter_map(|event| match &event.kind {
            EventKind::DayReport(report) if !report.markers.is_empty() => {
                Some((event.day, report.markers.as_slice()))
            }
            _ => None,
        });
        let (past, now): (Vec<_>, Vec<_>) = reports.partition(|(day, _)| *day < today);
        // Of two reports of today the later one stands first.
        (past, now.into_iter().rev().flat_map(|(_, answers)| answers).collect())
    }
}

fn marker(kind: MarkerKind, now: Option<&MarkerAnswer>, past: &[(Day, &[MarkerAnswer])]) -> Marker {
    let reading = |(day, answers): &(Day, &[MarkerAnswer])| {
        let answer = answers.iter().find(|answer| answer.kind == kind)?;
        Some(MarkerReading { day: *day, value: answer.value, conditions: answer.conditions.clone() })
    };
    Marker {
        kind,
        today: now.map(|answer| answer.value),
        conditions: now.map_or_else(Conditions::default, |answer| answer.conditions.clone()),
        history: past.iter().filter_map(reading).collect(),
        least_spread: None,
    }
}
