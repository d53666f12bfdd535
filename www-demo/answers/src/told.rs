//! More of the library's doors of a log, each with its sentences: the own curve, a missed session, an easy week, how good the
//! verdicts about days were, a block of weeks, who marks alike, the year; and how two places compare.

use bismar::answers::{BlockReview, EasyWeek, LiftCurve, Missed, NextPlanned, Raters, Verdicts, Year};
use bismar::horizon::{Phase, Sex};
use bismar::quantity::{Day, Name, Unit};
use bismar::record::{Dimension, Grant, Plan};
use bismar::{Code, Error};
use serde::{Deserialize, Serialize};

use crate::opened::Which;
use crate::words::spoken;

/// A question about the whole log.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "ToldOfLog"))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfLog {
    log: Which,
    today: Day,
    /// In which unit the sentences name loads.
    unit: Unit,
}

/// The same of one lift.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfLift {
    log: Which,
    lift: Name,
    today: Day,
    unit: Unit,
}

/// The same with the plan, as JSON text.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "ToldOfPlan"))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfPlan {
    log: Which,
    plan: String,
    today: Day,
    unit: Unit,
}

/// A missed session.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfMissed {
    log: Which,
    plan: String,
    today: Day,
    unit: Unit,
    /// The next session, where somebody said so.
    #[serde(default)]
    next: Option<NextPlanned>,
}

/// A year.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfYear {
    log: Which,
    plan: String,
    today: Day,
    unit: Unit,
    #[serde(default)]
    sex: Option<Sex>,
    /// What if strength goes so from now on, for each load to keep?
    #[serde(default)]
    phases: Option<Vec<Phase>>,
}

// Each answer with its sentences: what stops first, then what was found and what is missing. What to show beside it stands
// in the answer by its code.

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct CurveTold {
    curve: LiftCurve,
    said: Vec<String>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct MissedTold {
    missed: Missed,
    said: Vec<String>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct EasyWeekTold {
    week: EasyWeek,
    said: Vec<String>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct VerdictsTold {
    verdicts: Verdicts,
    said: Vec<String>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct BlockTold {
    review: BlockReview,
    /// The lifts one by one, each in its own sentences.
    lifts: Vec<Vec<String>>,
    said: Vec<String>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct RatersTold {
    raters: Raters,
    said: Vec<String>,
}

#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct YearTold {
    year: Year,
    /// What is due, and what is worth a talk.
    due: Vec<String>,
}

/// What the words say of an answer without what to show beside it.
fn said<A, C>(
    answer: &mut A,
    cautions: fn(&mut A) -> &mut Vec<C>,
    words: impl FnOnce(&A) -> Vec<String>,
) -> Vec<String> {
    let beside = std::mem::take(cautions(answer));
    let said = words(answer);
    *cautions(answer) = beside;
    said
}

/// What is this lifter's own curve of repetitions and load?
pub(crate) fn curve(asked: OfLift) -> Result<CurveTold, Error> {
    let opened = asked.log.open()?;
    let mut curve = opened.diary()?.curve(&asked.lift, asked.today)?;
    let words = spoken(&opened.state, asked.unit);
    let said = said(&mut curve, |one| &mut one.cautions, |one| words.curve(one));
    Ok(CurveTold { curve, said })
}

/// A session was missed: shift, merge or drop?
pub(crate) fn missed(asked: OfMissed) -> Result<MissedTold, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    let opened = asked.log.open()?;
    let mut missed = opened.diary()?.missed(&plan, asked.today, asked.next.as_ref())?;
    let words = spoken(&opened.state, asked.unit);
    let said = said(&mut missed, |one| &mut one.cautions, |one| words.missed(one));
    Ok(MissedTold { missed, said })
}

/// Is an easy week due, and what would it be?
pub(crate) fn easy_week(asked: OfPlan) -> Result<EasyWeekTold, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    let opened = asked.log.open()?;
    let mut week = opened.diary()?.easy_week(Some(&plan), asked.today)?;
    let words = spoken(&opened.state, asked.unit);
    let said = said(&mut week, |one| &mut one.cautions, |one| words.easy_week(one));
    Ok(EasyWeekTold { week, said })
}

/// How often were the verdicts about the day right?
pub(crate) fn verdicts(asked: OfLog) -> Result<VerdictsTold, Error> {
    let opened = asked.log.open()?;
    let mut verdicts = opened.diary()?.verdicts(asked.today)?;
    let words = spoken(&opened.state, asked.unit);
    let said = said(&mut verdicts, |one| &mut one.cautions, |one| words.verdicts(one));
    Ok(VerdictsTold { verdicts, said })
}

/// Was the block right?
pub(crate) fn block(asked: OfLog) -> Result<BlockTold, Error> {
    let opened = asked.log.open()?;
    let mut review = opened.diary()?.block_review(asked.today, None)?;
    let words = spoken(&opened.state, asked.unit);
    let all = std::mem::take(&mut review.lifts);
    let said = said(&mut review, |one| &mut one.cautions, |one| words.block_review(one));
    let mut one = review.clone();
    one.block = None;
    one.missing.clear();
    one.stops.clear();
    one.cautions.clear();
    let lifts = all.iter().map(|lift| {
        one.lifts = vec![lift.clone()];
        words.block_review(&one)
    });
    let lifts = lifts.collect();
    review.lifts = all;
    Ok(BlockTold { review, lifts, said })
}

/// Do those who mark the same sets mark alike?
pub(crate) fn raters(asked: OfLog) -> Result<RatersTold, Error> {
    let opened = asked.log.open()?;
    let mut raters = opened.diary()?.raters(None, asked.today)?;
    let words = spoken(&opened.state, asked.unit);
    let said = said(&mut raters, |one| &mut one.cautions, |one| words.raters(one));
    Ok(RatersTold { raters, said })
}

/// What is due this year, and how do the tests stand to their floors?
pub(crate) fn year(asked: OfYear) -> Result<YearTold, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    let opened = asked.log.open()?;
    let year = opened.diary()?.year(&plan, asked.today, asked.sex, asked.phases.as_ref())?;
    let mut card = year.clone();
    card.cautions.clear();
    card.tests.clear();
    Ok(YearTold { due: spoken(&opened.state, asked.unit).year(&card), year })
}

/// Two places of a lift.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct TwoPlaces {
    log: Which,
    lift: Name,
    one: Grant,
    other: Grant,
    unit: Unit,
}

/// In what the other one is harder, and in what it is easier.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Compared {
    harder: Vec<Dimension>,
    easier: Vec<Dimension>,
    /// It is another rung, and no chain of harder rungs connects the two.
    sideways: bool,
    /// The library's sentences; beside a stop those that name no load.
    said: Vec<String>,
}

/// How the other of two places of a lift compares with the one.
pub(crate) fn compare(asked: TwoPlaces) -> Result<Compared, Error> {
    let opened = asked.log.open()?;
    let (last, _) = opened.state.last().ok_or_else(|| Error::plain(Code::NoParameters, "lift"))?;
    let mut found = opened.diary()?.compare(&asked.lift, last, &asked.other, Some(&asked.one))?;
    found.cautions.clear();
    let stopped = !std::mem::take(&mut found.stops).is_empty();
    let mut said = spoken(&opened.state, asked.unit).comparison(&found);
    // The first names both loads.
    said.drain(..usize::from(stopped));
    Ok(Compared { harder: found.harder, easier: found.easier, sideways: found.sideways, said })
}
