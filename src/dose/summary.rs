//! Weeks and blocks in numbers: by lift, by region, by effort.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::string::String;
use alloc::vec::Vec;

use derive_setters::Setters;

use super::set::{SetDone, Totals};
use crate::error::{Code, Error};
use crate::quantity::{Day, Kilograms, Mass, Reps, Rir};
use crate::source::{ARITHMETIC, formula, rows};

fn one() -> u16 {
    1
}

/// A work set as it stands in a diary.
#[derive(Clone, Debug, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct DiarySet {
    /// Day.
    pub day: Day,
    /// Name of the lift; a strict and a forgiving variant have names of their own.
    pub lift: String,
    /// Regions it loads; variants that share a region add up there.
    #[cfg_attr(feature = "serde", serde(default))]
    pub regions: Vec<String>,
    /// What was lifted.
    pub load: Mass,
    /// Repetitions of each set.
    pub reps: Reps,
    /// How many such sets; 1 where left out.
    #[cfg_attr(feature = "serde", serde(default = "one"))]
    pub sets: u16,
    /// Repetitions left in reserve, where rated.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    #[setters(into)]
    pub reserve: Option<Rir>,
}

impl DiarySet {
    /// One set of that lift, with neither regions nor reserve written down.
    #[must_use]
    pub fn new(day: Day, lift: String, load: Mass, reps: Reps) -> DiarySet {
        DiarySet { day, lift, regions: Vec::new(), load, reps, sets: one(), reserve: None }
    }
}

/// Sets, repetitions and load of one lift or region.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct PartSummary {
    /// Name of the lift or region.
    pub name: String,
    /// Work sets.
    pub sets: u32,
    /// Repetitions.
    pub repetitions: f64,
    /// Load times repetitions.
    pub volume_load: Kilograms,
    /// Heaviest load.
    pub heaviest: Mass,
    /// Days on which it was trained.
    pub training_days: u32,
}

/// Sets by how near their end they came. Edges are our choice.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct EffortZones {
    /// Fewer than 2 repetitions left.
    pub below_2_left: u32,
    /// From 2 to fewer than 4 left.
    pub from_2_left: u32,
    /// From 4 to 6 left.
    pub from_4_left: u32,
    /// More than 6 left.
    pub above_6_left: u32,
    /// Nobody rated it; not the same as easy.
    pub not_rated: u32,
}

/// A run of days in numbers.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct DoseSummary {
    /// First day, included.
    pub from: Day,
    /// Last day, included.
    pub to: Day,
    /// Days with at least one set.
    pub training_days: u32,
    /// Work sets.
    pub sets: u32,
    /// Repetitions.
    pub repetitions: f64,
    /// Load times repetitions over all lifts: of use against the same lifter's other weeks only.
    pub volume_load: Kilograms,
    /// By lift, in alphabetical order.
    pub lifts: Vec<PartSummary>,
    /// By region, in alphabetical order; a set counts in each of its regions.
    pub regions: Vec<PartSummary>,
    /// By effort.
    pub effort: EffortZones,
}

/// Running totals of one part.
#[derive(Clone, Default)]
struct Part {
    totals: Totals,
    sets: u32,
    heaviest: Mass,
    days: BTreeSet<Day>,
}

impl Part {
    fn add(&mut self, set: &DiarySet) -> Result<(), Error> {
        self.totals.add(&SetDone { load: set.load, reps: set.reps, sets: set.sets })?;
        self.sets = self.sets.saturating_add(u32::from(set.sets));
        self.heaviest = self.heaviest.max(set.load);
        self.days.insert(set.day);
        Ok(())
    }

    fn training_days(&self) -> u32 {
        u32::try_from(self.days.len()).unwrap_or(u32::MAX)
    }

    fn summary(&self, name: &str) -> Result<PartSummary, Error> {
        Ok(PartSummary {
            name: name.into(),
            sets: self.sets,
            repetitions: self.totals.reps(),
            volume_load: Kilograms::new(self.totals.volume_load())?,
            heaviest: self.heaviest,
            training_days: self.training_days(),
        })
    }
}

impl EffortZones {
    fn add(&mut self, set: &DiarySet) {
        // Twice the repetitions left, in whole numbers.
        let place = match set.reserve.map(Rir::halves) {
            None => &mut self.not_rated,
            Some(0..=3) => &mut self.below_2_left,
            Some(4..=7) => &mut self.from_2_left,
            Some(8..=12) => &mut self.from_4_left,
            Some(_) => &mut self.above_6_left,
        };
        *place = place.saturating_add(u32::from(set.sets));
    }
}

fn summaries(parts: &BTreeMap<&str, Part>) -> Result<Vec<PartSummary>, Error> {
    parts.iter().map(|(name, part)| part.summary(name)).collect()
}

fn summarise(sets: &[DiarySet], from: Day, to: Day) -> Result<DoseSummary, Error> {
    let (mut all, mut effort) = (Part::default(), EffortZones::default());
    let (mut lifts, mut regions) = (BTreeMap::<&str, Part>::new(), BTreeMap::<&str, Part>::new());
    for (at, set) in sets.iter().enumerate().filter(|(_, set)| from <= set.day && set.day <= to) {
        let place = |error: Error| error.within(&alloc::format!("sets[{at}]"));
        all.add(set).map_err(place)?;
        effort.add(set);
        lifts.entry(set.lift.as_str()).or_default().add(set)?;
        for region in set.regions.iter().map(String::as_str).collect::<BTreeSet<_>>() {
            regions.entry(region).or_default().add(set)?;
        }
    }
    Ok(DoseSummary {
        from,
        to,
        training_days: all.training_days(),
        sets: all.sets,
        repetitions: all.totals.reps(),
        volume_load: Kilograms::new(all.totals.volume_load())?,
        lifts: summaries(&lifts)?,
        regions: summaries(&regions)?,
        effort,
    })
}

formula! {
    "dose.block_summary",
    /// What was done from this day to that one, by lift, by region and by effort?
    ///
    /// # Formula
    /// Sets, repetitions and load added up exactly; days counted once. Sets outside the days are left out; their
    /// order does not matter.
    ///
    /// # Domain
    /// The first day not after the last. A region named twice by one set counts once.
    ///
    /// # Errors
    /// `interval_reversed`; `load_out_of_domain` for a load below 0 kg.
    ///
    /// # Source
    /// Counting; effort zones are our choice.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DiarySet, block_summary};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let day = "2026-03-02".parse()?;
    /// let set = DiarySet::new(day, "squat".into(), Mass::from_kg(60.0)?, Reps::whole(5)?)
    ///     .with_regions(vec!["legs".into()])
    ///     .with_sets(3);
    /// let block = block_summary(&[set], day, day)?;
    /// assert_eq!((block.sets, block.volume_load.value()), (3, 900.0));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn block_summary(sets: &[DiarySet], from: Day, to: Day) -> Result<DoseSummary, Error> {
        if from > to {
            let rule = crate::error::Allowed::rule("from not after to");
            return Err(Error::new(Code::IntervalReversed, "from", from.number(), rule));
        }
        summarise(sets, from, to)
    }
    source: ARITHMETIC, place: "counting", standing: Derived, seen: NotApplicable,
}

/// Most weeks summarised in one call: ten years.
const MOST_WEEKS: u16 = 522;

formula! {
    "dose.week_summaries",
    /// What was done in each of these weeks?
    ///
    /// # Formula
    /// [`block_summary`] of each run of seven days from the first day given.
    ///
    /// # Domain
    /// 1 to 522 weeks.
    ///
    /// # Errors
    /// `out_of_range`; `load_out_of_domain` for a load below 0 kg.
    ///
    /// # Source
    /// Counting.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::week_summaries;
    ///
    /// assert_eq!(week_summaries(&[], "2026-03-02".parse()?, 4)?.len(), 4);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn week_summaries(sets: &[DiarySet], first: Day, weeks: u16) -> Result<Vec<DoseSummary>, Error> {
        if !(1..=MOST_WEEKS).contains(&weeks) {
            return Err(Error::range(Code::OutOfRange, "weeks", weeks, 1.0, f64::from(MOST_WEEKS), ""));
        }
        let week = |week: i32| {
            let from = first.plus(7 * week)?;
            summarise(sets, from, from.plus(6)?)
        };
        (0..i32::from(weeks)).map(week).collect()
    }
    source: ARITHMETIC, place: "counting", standing: Derived, seen: NotApplicable,
}

rows![block_summary, week_summaries];
