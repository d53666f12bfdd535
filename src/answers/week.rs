//! Was this week a jump, by lift, by region and in all, against the lifter's own weeks?

use alloc::vec::Vec;

use super::diary::{Diary, LiftDone};
use super::evidence::reserve_of_set;
use super::lacking::Lacking;
use crate::caution::Caution;
use crate::dose::{
    BandOptions, DailyLoad, Deviation, DiarySet, DoseSummary, EffortZones, PartSummary, SessionRated,
    WeekChange, WeekLoad, block_summary, day_load_foster_2001, week_change, week_monotony,
};
use crate::error::Error;
use crate::quantity::{Day, Kilograms, Mass, Name};
use crate::reason::Reason;
use crate::record::Log;

/// Days of a week.
const WEEK: i32 = 7;

/// In what a week is held against the weeks before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum WeekMeasure {
    /// Load times repetitions.
    VolumeLoad,
    /// Work sets.
    Sets,
}

/// What was done in seven days.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WeekDone {
    /// First day of the seven.
    pub from: Day,
    /// Last day.
    pub to: Day,
    /// Days with a set.
    pub training_days: u32,
    /// Work sets, helped ones too.
    pub sets: u32,
    /// Of these, with help.
    pub helped_sets: u32,
    /// Repetitions.
    pub repetitions: f64,
    /// Load times repetitions; a helped set counts with the body less the help. Absent where nobody was weighed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub volume_load: Option<Kilograms>,
    /// Sets by how near their end they came.
    pub effort: EffortZones,
}

/// One lift or one region in this week.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WeekPart {
    /// Id of the lift or region.
    pub id: Name,
    /// Work sets, helped ones too.
    pub sets: u32,
    /// Repetitions.
    pub repetitions: f64,
    /// Load times repetitions, as for the whole week.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub volume_load: Option<Kilograms>,
    /// In what it is compared.
    pub measure: WeekMeasure,
    /// This week against the own band.
    pub change: WeekChange,
}

/// The sessions of the week as they felt: rating times minutes.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct WeekFelt {
    /// Total, monotony and strain over the seven days; absent while a session of the week is not rated.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub load: Option<WeekLoad>,
    /// The total against the own band.
    pub change: WeekChange,
}

/// The last seven days against the lifter's own weeks.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Week {
    /// Every stop of the lifter, whatever is asked about; empty where nothing is stopped. Shown before anything else.
    pub stops: Vec<Reason>,
    /// The day it was made for: the last of the seven.
    pub today: Day,
    /// What was done in them; absent where the log holds no session at all.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub total: Option<WeekDone>,
    /// In what the whole is compared.
    pub measure: WeekMeasure,
    /// The whole against the own band.
    pub change: WeekChange,
    /// Work sets of the whole against the own band.
    pub sets_change: WeekChange,
    /// As it felt.
    pub felt: WeekFelt,
    /// Each lift of these weeks, in alphabetical order.
    pub lifts: Vec<WeekPart>,
    /// Each region, in alphabetical order; a set counts in each of its regions. Compared in sets.
    pub regions: Vec<WeekPart>,
    /// The weeks that were looked at, oldest first, this one last.
    pub weeks: Vec<WeekDone>,
    /// What nobody wrote down.
    pub missing: Vec<Lacking>,
    /// Rows of the registry that the numbers come from.
    pub sources: Vec<&'static str>,
    /// What to show beside it.
    pub cautions: Vec<Caution>,
}

/// Was this week a jump? Sets, load and effort of the last seven days, by lift and by region, against the lifter's own
/// weeks; how the sessions felt, how alike their days were, and the two multiplied.
///
/// # Rules
/// Seven-day weeks back from today, whole ones within the log; the band over the last 12 of them is that of
/// [`week_change`], which says nothing soon after a break. Helped sets count, with the body less the help where somebody was
/// weighed. Regions are compared in sets, a lift in load times repetitions where that is known for all its weeks. A week
/// without a session counts as not trained, as the fold has it, and is named in `missing`.
///
/// # Errors
/// What [`fold`](crate::progression::fold) reports; `before_last_event`.
///
/// # Examples
/// ```
/// use bismar::answers::{Lacking, week};
/// use bismar::quantity::Name;
/// use bismar::record::{Lifter, Log};
///
/// let empty = Log::new(Lifter::new(Name::new("A")?));
/// let week = week(&empty, "2026-03-02".parse()?)?;
/// assert!(week.total.is_none());
/// assert_eq!(week.missing, [Lacking::Session]);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn week(log: &Log, today: Day) -> Result<Week, Error> {
    Diary::of(log)?.week(today)
}

impl Diary<'_> {
    /// Was this week a jump? See [`week`].
    ///
    /// # Errors
    /// `before_last_event`.
    pub fn week(&self, today: Day) -> Result<Week, Error> {
        self.check_today(today)?;
        let weeks = Weeks::of(self, today)?;
        let (measure, change) = weeks.whole()?;
        let (load, felt_change, unrated) = felt(self, &weeks)?;
        let mut missing = Vec::new();
        if weeks.summaries.is_empty() {
            missing.push(Lacking::Session);
        }
        missing.extend((unrated > 0).then_some(Lacking::SessionRating { sessions: unrated }));
        missing.extend((!weeks.unweighed.is_empty()).then_some(Lacking::BodyMass));
        let empty = weeks.summaries.iter().filter(|week| week.sets == 0).count() as u32;
        missing.extend((empty > 0).then_some(Lacking::Weeks { weeks: empty }));
        let mut cautions = self.cautions(today);
        cautions.push(Caution::SameLiftOnly);
        if load.is_some() {
            cautions.push(Caution::RestsCountAsLoad);
        }
        let mut all = weeks.done()?;
        Ok(Week {
            stops: self.state().stops_on(today),
            today,
            total: all.last().cloned(),
            measure,
            change,
            sets_change: weeks.compared(|week| Some(f64::from(week.sets)))?,
            felt: WeekFelt { load, change: felt_change },
            lifts: weeks.parts(|week| &week.lifts, true)?,
            regions: weeks.parts(|week| &week.regions, false)?,
            weeks: core::mem::take(&mut all),
            missing,
            sources: alloc::vec![
                "dose.block_summary",
                "dose.volume_load",
                "dose.week_change",
                "dose.day_load_foster_2001",
                "dose.week_monotony",
            ],
            cautions,
        })
    }
}

/// The weeks looked at, oldest first, this one last; none where there is no session.
pub(super) struct Weeks {
    pub(super) summaries: Vec<DoseSummary>,
    /// Days and ids of helped sets, and of those whose mass nobody knows.
    helped: Vec<(Day, Name)>,
    unweighed: Vec<(Day, Name)>,
    options: BandOptions,
}

fn diary_set(done: &LiftDone<'_>, set: &crate::record::WorkSet) -> DiarySet {
    DiarySet {
        day: done.day,
        lift: done.lift.lift.as_str().into(),
        regions: done.regions().iter().map(|region| region.as_str().into()).collect(),
        load: done.moved(set.load).unwrap_or(Mass::ZERO),
        reps: set.reps,
        sets: 1,
        reserve: reserve_of_set(set),
    }
}

/// A week's total as the band takes it: a week without a session is one without training.
fn as_load(value: Option<f64>) -> Result<DailyLoad, Error> {
    match value {
        None => Ok(DailyLoad::NotRecorded),
        Some(value) if value > 0.0 => DailyLoad::recorded(value),
        Some(_) => Ok(DailyLoad::Rested),
    }
}

impl Weeks {
    pub(super) fn of(diary: &Diary<'_>, today: Day) -> Result<Weeks, Error> {
        let options = BandOptions::default();
        let mut weeks = Weeks { summaries: Vec::new(), helped: Vec::new(), unweighed: Vec::new(), options };
        let Some(first) = diary.first_session() else { return Ok(weeks) };
        let oldest = today.plus(-WEEK * (i32::from(options.weeks) + 1))?;
        let mut sets = Vec::new();
        for done in diary.lifts_done().rev().take_while(|done| done.day > oldest) {
            let mark = || (done.day, done.lift.lift.clone());
            for set in &done.lift.sets {
                sets.push(diary_set(&done, set));
                weeks.helped.extend(done.is_helped().then(mark));
                weeks.unweighed.extend(done.moved(set.load).is_none().then(mark));
            }
        }
        for back in 0..=i32::from(options.weeks) {
            let to = today.plus(-WEEK * back)?;
            let from = to.plus(1 - WEEK)?;
            // A week that the log only grazes says nothing about what is usual.
            if back > 0 && from < first {
                break;
            }
            weeks.summaries.push(block_summary(&sets, from, to)?);
        }
        weeks.summaries = weeks.summaries.into_iter().rev().collect();
        Ok(weeks)
    }

    /// This week against those before it, by what is read from each.
    fn compared(&self, read: impl Fn(&DoseSummary) -> Option<f64>) -> Result<WeekChange, Error> {
        let loads: Vec<DailyLoad> =
            self.summaries.iter().map(|week| as_load(read(week))).collect::<Result<_, _>>()?;
        match loads.split_last() {
            Some((this, past)) => week_change(past, *this, self.options),
            None => week_change(&[], DailyLoad::NotRecorded, self.options),
        }
    }

    /// The whole in load times repetitions, or in sets where the mass of a helped set is not known.
    fn whole(&self) -> Result<(WeekMeasure, WeekChange), Error> {
        if self.unweighed.is_empty() {
            Ok((WeekMeasure::VolumeLoad, self.compared(|week| Some(week.volume_load.value()))?))
        } else {
            Ok((WeekMeasure::Sets, self.compared(|week| Some(f64::from(week.sets)))?))
        }
    }

    /// The totals of the weeks, oldest first, in the measure of the whole.
    pub(super) fn loads(&self) -> Result<Vec<DailyLoad>, Error> {
        let weighed = self.unweighed.is_empty();
        let total =
            |week: &DoseSummary| if weighed { week.volume_load.value() } else { f64::from(week.sets) };
        self.summaries.iter().map(|week| as_load(Some(total(week)))).collect()
    }

    fn done(&self) -> Result<Vec<WeekDone>, Error> {
        let within = |list: &[(Day, Name)], week: &DoseSummary| {
            list.iter().filter(|(day, _)| (week.from..=week.to).contains(day)).count() as u32
        };
        let one = |week: &DoseSummary| WeekDone {
            from: week.from,
            to: week.to,
            training_days: week.training_days,
            sets: week.sets,
            helped_sets: within(&self.helped, week),
            repetitions: week.repetitions,
            volume_load: (within(&self.unweighed, week) == 0).then_some(week.volume_load),
            effort: week.effort,
        };
        Ok(self.summaries.iter().map(one).collect())
    }

    /// Each part that was trained in one of the weeks.
    fn parts(
        &self,
        of: impl Fn(&DoseSummary) -> &Vec<PartSummary>,
        by_load: bool,
    ) -> Result<Vec<WeekPart>, Error> {
        let mut names: Vec<&str> =
            self.summaries.iter().flat_map(&of).map(|part| part.name.as_str()).collect();
        crate::numeric::sort::sort(&mut names);
        names.dedup();
        let Some(this) = self.summaries.last() else { return Ok(Vec::new()) };
        let mut parts = Vec::with_capacity(names.len());
        for name in names {
            let part = |week: &DoseSummary| of(week).iter().find(|part| part.name == name).cloned();
            let unweighed = self.unweighed.iter().any(|(_, lift)| lift.as_str() == name);
            let weighed = by_load
                && !unweighed
                && self.summaries.iter().filter_map(part).all(|part| part.volume_load.value() > 0.0);
            let measure = if weighed { WeekMeasure::VolumeLoad } else { WeekMeasure::Sets };
            let change = self.compared(|week| {
                let read = |part: PartSummary| match measure {
                    WeekMeasure::VolumeLoad => part.volume_load.value(),
                    WeekMeasure::Sets => f64::from(part.sets),
                };
                Some(part(week).map_or(0.0, read))
            })?;
            let now = part(this);
            parts.push(WeekPart {
                id: Name::new(name)?,
                sets: now.as_ref().map_or(0, |part| part.sets),
                repetitions: now.as_ref().map_or(0.0, |part| part.repetitions),
                volume_load: now.map(|part| part.volume_load).filter(|_| weighed),
                measure,
                change,
            });
        }
        Ok(parts)
    }
}

/// The seven days as they felt, their total against the own band, and how many sessions of the week are not rated.
fn felt(diary: &Diary<'_>, weeks: &Weeks) -> Result<(Option<WeekLoad>, WeekChange, u32), Error> {
    let (mut totals, mut last, mut unrated) = (Vec::new(), None, 0);
    for week in &weeks.summaries {
        unrated = 0;
        let mut days = Vec::new();
        for at in 0..WEEK {
            let day = week.from.plus(at)?;
            let (load, without) = day_felt(diary, day)?;
            days.push(load);
            unrated += without;
        }
        let total = days.iter().map(|day| day.value()).sum::<Option<f64>>();
        totals.push(as_load(total)?);
        last = total.filter(|total| *total > 0.0).map(|_| days);
    }
    let load = last.map(|days| week_monotony(&days, Deviation::Population)).transpose()?;
    let change = match totals.split_last() {
        Some((this, past)) => week_change(past, *this, weeks.options)?,
        None => week_change(&[], DailyLoad::NotRecorded, weeks.options)?,
    };
    Ok((load, change, unrated))
}

/// How a day felt, and how many of its sessions nobody rated or timed.
fn day_felt(diary: &Diary<'_>, day: Day) -> Result<(DailyLoad, u32), Error> {
    let (mut rated, mut without) = (Vec::new(), 0);
    for (_, session) in diary.sessions_on(day) {
        match (session.effort, session.minutes) {
            (Some(rating), Some(minutes)) => {
                rated.push(SessionRated { rating: rating.value(), minutes: f64::from(minutes) });
            }
            _ => without += 1,
        }
    }
    let load = match (rated.is_empty(), without) {
        (_, 1..) => DailyLoad::NotRecorded,
        (true, _) => DailyLoad::Rested,
        (false, _) => DailyLoad::Recorded(day_load_foster_2001(&rated)?),
    };
    Ok((load, without))
}
