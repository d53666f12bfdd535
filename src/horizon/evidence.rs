//! Published evidence as lines to show: how fast strength falls, what training adds, how little keeps it.

use alloc::borrow::Cow;
use alloc::vec;
use alloc::vec::Vec;

use crate::caution::{self, Caution};
use crate::error::Error;
use crate::source::{Seen, Source, formula, rows};

const SEVERAL: Source =
    Source { id: "several-works", citation: "Several works; each line names its own", doi: None };

/// What the two ends of a line are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Ends {
    /// No ends are printed.
    Unprinted,
    /// The range that the source prints.
    Range,
    /// A 95 % confidence interval.
    Confidence95,
    /// One standard error either way.
    StandardError,
    /// One standard deviation either way.
    StandardDeviation,
}

/// One published figure.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct PublishedFigure {
    /// Short name of the work.
    pub source: Cow<'static, str>,
    /// Where it appeared: journal or publisher, volume and pages.
    pub citation: Cow<'static, str>,
    /// Key of what was found.
    pub finding: Cow<'static, str>,
    /// Who was measured.
    pub population: Cow<'static, str>,
    /// The figure, where there is a single one.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub value: Option<f64>,
    /// Lower end.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub low: Option<f64>,
    /// Upper end.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub high: Option<f64>,
    /// What the ends are.
    pub ends: Ends,
    /// Unit of all three.
    pub unit: Cow<'static, str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// A work: short name, where it appeared, who was measured, and whether its figures were read again.
pub(super) struct Work {
    pub(super) id: &'static str,
    pub(super) citation: &'static str,
    pub(super) population: &'static str,
    pub(super) seen: Seen,
}

/// A figure of a work.
pub(super) struct Line {
    pub(super) finding: &'static str,
    pub(super) value: Option<f64>,
    pub(super) ends: Ends,
    pub(super) low: Option<f64>,
    pub(super) high: Option<f64>,
    pub(super) unit: &'static str,
}

/// A single figure without ends.
pub(super) const fn alone(finding: &'static str, value: f64, unit: &'static str) -> Line {
    Line { finding, value: Some(value), ends: Ends::Unprinted, low: None, high: None, unit }
}

/// A printed range.
pub(super) const fn spanning(finding: &'static str, low: f64, high: f64, unit: &'static str) -> Line {
    Line { finding, value: None, ends: Ends::Range, low: Some(low), high: Some(high), unit }
}

/// A figure with two ends.
pub(super) const fn between(
    finding: &'static str,
    value: f64,
    low: f64,
    high: f64,
    ends: Ends,
    unit: &'static str,
) -> Line {
    Line { finding, value: Some(value), ends, low: Some(low), high: Some(high), unit }
}

/// Lines of the works, in their order.
fn lines(works: &[(&Work, &[Line])]) -> Vec<PublishedFigure> {
    works.iter().flat_map(|(work, lines)| lines.iter().map(|line| evidence(work, line))).collect()
}

fn evidence(work: &Work, line: &Line) -> PublishedFigure {
    let mut cautions = vec![Caution::NotAPrognosis, Caution::OtherPopulation];
    cautions.extend(caution::of_seen(work.seen));
    PublishedFigure {
        source: Cow::Borrowed(work.id),
        citation: Cow::Borrowed(work.citation),
        finding: Cow::Borrowed(line.finding),
        population: Cow::Borrowed(work.population),
        value: line.value,
        low: line.low,
        high: line.high,
        ends: line.ends,
        unit: Cow::Borrowed(line.unit),
        cautions,
    }
}

formula! {
    "horizon.trainability",
    /// What did training add to the strength of older people?
    ///
    /// # Formula
    /// A list of published figures, each with its work, its people and its ends.
    ///
    /// # Domain
    /// People of about 50 and over, weeks to a year of training; the most frequent dose was never tried as a whole.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Each line names its work (row `horizon.trainability`).
    ///
    /// # Examples
    /// ```
    /// let lines = bismar::horizon::trainability()?;
    /// assert!(lines.iter().any(|line| line.finding == "leg_press_gain" && line.value == Some(29.0)));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn trainability() -> Result<Vec<PublishedFigure>, Error> {
        Ok(lines(super::evidence_lines::TRAINABILITY))
    }
    source: SEVERAL, place: "abstracts", standing: Published, seen: Read,
    recalled: "the effects of 2 to 3 sets and of 7 to 9 repetitions",
    population: "each line names its own", domain: "people of about 50 and over",
}

formula! {
    "horizon.maintenance_dose",
    /// How little keeps strength, and what does a break cost?
    ///
    /// # Formula
    /// A list of published figures, each with its work, its people and its ends.
    ///
    /// # Domain
    /// Weeks to a year.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Each line names its work (row `horizon.maintenance_dose`).
    ///
    /// # Examples
    /// ```
    /// let lines = bismar::horizon::maintenance_dose()?;
    /// assert!(lines.iter().any(|line| line.source == "spiering-2021"));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn maintenance_dose() -> Result<Vec<PublishedFigure>, Error> {
        Ok(lines(super::evidence_lines::MAINTENANCE))
    }
    source: SEVERAL, place: "abstracts", standing: Published, seen: Read,
    recalled: "the strength lost after 4 weeks off at 90",
    population: "each line names its own", domain: "weeks to a year",
}

formula! {
    "horizon.published_declines",
    /// How fast does strength fall, study by study, in untrained people and in lifters?
    ///
    /// # Formula
    /// A list of published figures, each with its work, its people and its ends. Rates that were printed by ethnic
    /// group are shown as the band they span.
    ///
    /// # Domain
    /// Each line's own. Following people shows a faster fall than comparing ages; records show survivors.
    ///
    /// # Errors
    /// None.
    ///
    /// # Source
    /// Each line names its work (row `horizon.published_declines`).
    ///
    /// # Examples
    /// ```
    /// let lines = bismar::horizon::published_declines()?;
    /// let women = lines.iter().find(|line| line.finding == "knee_extension_women");
    /// assert_eq!(women.and_then(|line| line.high), Some(3.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn published_declines() -> Result<Vec<PublishedFigure>, Error> {
        Ok(lines(super::evidence_lines::DECLINES))
    }
    source: SEVERAL, place: "abstracts; von Haehling and others 2010 as their review of 2012 repeats it", standing: Published,
    seen: Read, recalled: "strength at 75 by Mitchell and others 2012; where the figures of von Haehling and others first stood",
    population: "each line names its own", domain: "each line's own",
}

rows![trainability, maintenance_dose, published_declines];
