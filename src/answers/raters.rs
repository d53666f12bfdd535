//! Do those who mark the same sets mark alike?

use alloc::vec::Vec;

use derive_setters::Setters;

use super::diary::Diary;
use super::lacking::Lacking;
use crate::caution::Caution;
use crate::error::{Code, Error};
use crate::gate::{Agreement, AgreementWeights, Mark, Rater, SetMarks, rater_agreement};
use crate::quantity::{Day, Name};
use crate::reason::Reason;
use crate::record::{EventKind, LiftSession, Log, WorkSet};

/// Level of the intervals.
const LEVEL: f64 = 0.95;

/// Somebody who marks.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct WhoMarks {
    /// In which role.
    pub rater: Rater,
    /// Which person, where that was written down.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub id: Option<Name>,
}

impl WhoMarks {
    /// A rater of that kind, without a name.
    #[must_use]
    pub fn new(rater: Rater) -> WhoMarks {
        WhoMarks { rater, id: None }
    }
}

/// How two people agree over the marks that both gave.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Alike {
    /// Marks that both gave to the same thing in the same set.
    pub pairs: u32,
    /// Of these, the same mark.
    pub same: u32,
    /// Agreement beyond chance; absent where there is no pair, or where both gave one and the same mark throughout, which
    /// cannot be told from habit.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub agreement: Option<Agreement>,
}

/// Two people who marked the same sets.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct RaterPair {
    /// The one.
    pub first: WhoMarks,
    /// The other.
    pub second: WhoMarks,
    /// Sets that both marked.
    pub sets: u32,
    /// Sets in which both counted acceptable repetitions, and those in which they counted as many.
    pub counted: u32,
    /// Of these, with the same count.
    pub same_count: u32,
    /// Over every criterion.
    pub all: Alike,
    /// By criterion, in the order in which they were first marked.
    pub criteria: Vec<(Name, Alike)>,
}

/// Agreement between those who mark.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Raters {
    /// Every stop of the lifter, whatever is asked about, as far as the log can be read; empty where nothing is stopped. Shown
    /// before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for.
    pub today: Day,
    /// Each two who marked the same sets.
    pub pairs: Vec<RaterPair>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// By how many people the sets of a lift were marked at the most.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Marked {
    NoSets,
    ByOneAtMost,
    BySeveral,
}

impl Marked {
    pub(super) fn of(done: &LiftSession) -> Marked {
        match done.sets.iter().map(|set| set.all_marks().count()).max() {
            None => Marked::NoSets,
            Some(0 | 1) => Marked::ByOneAtMost,
            Some(_) => Marked::BySeveral,
        }
    }
}

/// The marks of two people, side by side.
struct Beside {
    first: WhoMarks,
    second: WhoMarks,
    sets: u32,
    counted: u32,
    same_count: u32,
    marks: Vec<(Name, Mark, Mark)>,
}

impl WhoMarks {
    fn of(marks: &SetMarks) -> WhoMarks {
        WhoMarks { rater: marks.rater, id: marks.rater_id.clone() }
    }
}

impl Beside {
    fn new(first: WhoMarks, second: WhoMarks) -> Beside {
        Beside { first, second, sets: 0, counted: 0, same_count: 0, marks: Vec::new() }
    }

    fn add(&mut self, one: &SetMarks, other: &SetMarks) {
        self.sets += 1;
        if let (Some(one), Some(other)) = (one.acceptable, other.acceptable) {
            self.counted += 1;
            self.same_count += u32::from(one == other);
        }
        for mark in &one.marks {
            self.marks.push((mark.criterion.clone(), mark.mark, other.mark(&mark.criterion)));
        }
        for mark in
            other.marks.iter().filter(|mark| one.marks.iter().all(|own| own.criterion != mark.criterion))
        {
            self.marks.push((mark.criterion.clone(), Mark::NotSeen, mark.mark));
        }
    }

    fn finish(self) -> Result<RaterPair, Error> {
        let mut names: Vec<&Name> = Vec::new();
        for (name, ..) in &self.marks {
            if !names.contains(&name) {
                names.push(name);
            }
        }
        let of = |wanted: &Name| alike(self.marks.iter().filter(|(name, ..)| name == wanted));
        let criteria = names.iter().map(|name| Ok(((*name).clone(), of(name)?)));
        Ok(RaterPair {
            criteria: criteria.collect::<Result<_, Error>>()?,
            all: alike(self.marks.iter())?,
            first: self.first,
            second: self.second,
            sets: self.sets,
            counted: self.counted,
            same_count: self.same_count,
        })
    }
}

fn alike<'a>(marks: impl Iterator<Item = &'a (Name, Mark, Mark)>) -> Result<Alike, Error> {
    let seen = marks.filter(|(_, one, other)| *one != Mark::NotSeen && *other != Mark::NotSeen);
    let (first, second): (Vec<Mark>, Vec<Mark>) = seen.map(|(_, one, other)| (*one, *other)).unzip();
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    let same = first.iter().zip(&second).filter(|(one, other)| one == other).count();
    let agreement = match rater_agreement(&first, &second, AgreementWeights::None, LEVEL) {
        Ok(agreement) => Some(agreement),
        Err(error) if matches!(error.code(), Code::NoTrials | Code::ZeroSpread) => None,
        Err(error) => return Err(error),
    };
    Ok(Alike { pairs: count(first.len()), same: count(same), agreement })
}

/// Do those who mark the same sets of a lift, or of every lift, mark alike?
///
/// Kappa over met, borderline and not met, of every mark that two people gave to the same criterion of the same set
/// ([`rater_agreement`]). What one of them did not see is left out. Trained people who marked a squat on one leg from
/// several views reached 0.52 between two of them, and 0.82 one with himself (Ressman et al. 2021, doi
/// 10.1186/s13102-021-00289-x).
///
/// # Errors
/// What [`Log::check`] and [`Log::effective`] report; `out_of_range` above 100 000 marks of one pair.
pub fn raters(log: &Log, lift: Option<&Name>, today: Day) -> Result<Raters, Error> {
    log.check()?;
    let stops = super::standing::stops_as_far_as_read(log, today);
    let events = log.effective()?;
    let sessions = events.iter().filter(|event| event.day <= today).filter_map(|event| match &event.kind {
        EventKind::SessionRecorded(session) => Some(session),
        _ => None,
    });
    let wanted = sessions.flat_map(|session| &session.lifts);
    let wanted = wanted.filter(|done| lift.is_none_or(|lift| done.lift == *lift));
    let sets: Vec<&WorkSet> = wanted.flat_map(|done| &done.sets).collect();
    among(if sets.is_empty() { None } else { Some(sets) }, lift, (stops, today))
}

impl Diary<'_> {
    /// Do those who mark the same sets mark alike? See [`raters`].
    ///
    /// # Errors
    /// As [`raters`].
    pub fn raters(&self, lift: Option<&Name>, today: Day) -> Result<Raters, Error> {
        among(self.marked_by_several(lift, today), lift, (self.state().stops_on(today), today))
    }
}

/// What the sets tell; none where there are no sets.
fn among(
    sets: Option<Vec<&WorkSet>>,
    lift: Option<&Name>,
    (stops, today): (Vec<Reason>, Day),
) -> Result<Raters, Error> {
    let mut pairs: Vec<Beside> = Vec::new();
    let any = sets.is_some();
    for set in sets.into_iter().flatten() {
        side_by_side(set, &mut pairs);
    }
    let mut missing = Vec::new();
    match lift {
        _ if any => {}
        Some(lift) => missing.push(Lacking::SessionOf(lift.clone())),
        None => missing.push(Lacking::Session),
    }
    if pairs.is_empty() {
        missing.push(Lacking::SecondRater);
    }
    Ok(Raters {
        stops,
        today,
        pairs: pairs.into_iter().map(Beside::finish).collect::<Result<_, _>>()?,
        missing,
        sources: alloc::vec!["gate.rater_agreement", "gate.cohen_kappa"],
        cautions: alloc::vec![Caution::ExaminesNobody],
    })
}

/// Puts every two marks of a set side by side.
fn side_by_side(set: &WorkSet, pairs: &mut Vec<Beside>) {
    for (at, one) in set.all_marks().enumerate() {
        for other in set.all_marks().skip(at + 1) {
            let (first, second) = (WhoMarks::of(one), WhoMarks::of(other));
            let same = |pair: &&mut Beside| pair.first == first && pair.second == second;
            if let Some(pair) = pairs.iter_mut().find(same) {
                pair.add(one, other);
                continue;
            }
            // The two may have been written down the other way round.
            let turned = |pair: &&mut Beside| pair.first == second && pair.second == first;
            match pairs.iter_mut().find(turned) {
                Some(pair) => pair.add(other, one),
                None => {
                    let mut pair = Beside::new(first, second);
                    pair.add(one, other);
                    pairs.push(pair);
                }
            }
        }
    }
}
