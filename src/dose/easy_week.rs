//! Easy weeks (deloads): what lifters report, and where the last one lies.

use super::change::median;
use super::daily::DailyLoad;
use super::push_up::MeanAndDeviation;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::source::{OURS, Source, default_of, formula, rows};

const ROGERSON_2024: Source = Source {
    id: "rogerson-2024",
    citation: "Rogerson D, Nolan D, Korakakis PA, Immonen V, Wolf M, Bell L. Deloading practices in strength and physique sports: a cross-sectional survey. Sports Med Open 2024;10:26",
    doi: Some("10.1186/s40798-024-00691-y"),
};

const BELL_2022: Source = Source {
    id: "bell-2022",
    citation: "Bell L, Nolan D, Immonen V, Helms E, Dallamore J, Wolf M, Androulakis Korakakis P. \"You can't shoot another bullet until you've reloaded the gun\": coaches' perceptions, practices and experiences of deloading in strength and physique sports. Front Sports Act Living 2022;4:1073223",
    doi: Some("10.3389/fspor.2022.1073223"),
};

/// Length and spacing of easy weeks as reported.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EasyWeekPractice {
    /// Length in days.
    pub days: MeanAndDeviation,
    /// Weeks from one to the next.
    pub every_weeks: MeanAndDeviation,
}

formula! {
    "dose.easy_week_practice_rogerson_2024",
    /// How long and how often do lifters ease off?
    ///
    /// # Formula
    /// Published means and standard deviations: 6.4 +- 1.7 days every 5.6 +- 2.3 weeks.
    ///
    /// # Domain
    /// 246 strength and physique athletes, by survey: a habit, not a proof. A full week off in a nine-week block
    /// made no difference to size and a little to lower-body strength (Coleman et al. 2024, recalled).
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Rogerson et al. 2024, abstract.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::easy_week_practice_rogerson_2024()?.days.mean, 6.4);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn easy_week_practice_rogerson_2024() -> Result<EasyWeekPractice, Error> {
        Ok(EasyWeekPractice {
            days: MeanAndDeviation { mean: 6.4, deviation: 1.7 },
            every_weeks: MeanAndDeviation { mean: 5.6, deviation: 2.3 },
        })
    }
    source: ROGERSON_2024, place: "abstract", standing: Published, seen: Read,
    population: "246 strength and physique athletes",
}

/// Length and spacing of easy weeks as a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EasyWeekRange {
    /// Fewest days.
    pub days_low: u16,
    /// Most days.
    pub days_high: u16,
    /// Fewest weeks from one to the next.
    pub every_weeks_low: u16,
    /// Most weeks from one to the next.
    pub every_weeks_high: u16,
}

formula! {
    "dose.easy_week_range_bell_2022",
    /// How long and how often do coaches let lifters ease off?
    ///
    /// # Formula
    /// Typically 5 to 7 days every 4 to 6 weeks, mostly by fewer repetitions and sets and more repetitions left in
    /// reserve.
    ///
    /// # Domain
    /// 18 coaches of national level; no single method.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Bell et al. 2022.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::easy_week_range_bell_2022()?.every_weeks_high, 6);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn easy_week_range_bell_2022() -> Result<EasyWeekRange, Error> {
        Ok(EasyWeekRange { days_low: 5, days_high: 7, every_weeks_low: 4, every_weeks_high: 6 })
    }
    source: BELL_2022, place: "results", standing: Published, seen: Read, population: "18 coaches",
}

/// When a week counts as easy, and after how many others the next may be thought of.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct EasyWeekOptions {
    /// Weeks from one easy week to the next: 6, the upper end that coaches report.
    pub every_weeks: u16,
    /// A week at or below this share of the median trained week was easy: 0.7 (our choice).
    pub easy_share: f64,
}

impl Default for EasyWeekOptions {
    fn default() -> EasyWeekOptions {
        EasyWeekOptions { every_weeks: 6, easy_share: 0.7 }
    }
}

default_of! {
    "dose.easy_week_options_default",
    /// When a week counts as easy, and after how many others the next may be thought of, where a caller names nothing
    /// else.
    easy_week_options_default: EasyWeekOptions;
    source: OURS, place: "weeks since the last easy one", standing: OurChoice, seen: NotApplicable,
}

/// Where the next easy week stands. Never an order: the coach decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum EasyWeekStatus {
    /// The last easy week, planned or made by life, was so many weeks ago; nothing to add.
    NotYet {
        /// Full weeks since.
        weeks_since: u16,
    },
    /// An absence already planned will do; put no other on top.
    PlannedAbsenceCounts {
        /// Weeks until it.
        in_weeks: u16,
    },
    /// It may be thought of.
    Consider {
        /// Full weeks since the last, or on record.
        weeks_since: u16,
    },
    /// A week was not recorded, so nobody knows.
    Unknown,
}

formula! {
    "dose.easy_week_status",
    /// Is an easy week worth thinking of, counting those that life has already given?
    ///
    /// # Formula
    /// Weeks since the last easy one: rested, or at or below a share of the lifter's own median trained week. Travel
    /// and illness count; an absence planned before the next is due counts too.
    ///
    /// # Domain
    /// Week totals in order, the latest last. A week that was not recorded since then leaves it unknown.
    ///
    /// # Errors
    /// `out_of_range` for the options.
    ///
    /// # Source
    /// Our choice, over the spacing that coaches report (Bell et al. 2022).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{DailyLoad, EasyWeekOptions, EasyWeekStatus, easy_week_status};
    ///
    /// let weeks = [DailyLoad::recorded(3000.0)?; 6];
    /// let status = easy_week_status(&weeks, None, EasyWeekOptions::default())?;
    /// assert_eq!(status, EasyWeekStatus::Consider { weeks_since: 6 });
    /// let holiday = easy_week_status(&weeks, Some(1), EasyWeekOptions::default())?;
    /// assert_eq!(holiday, EasyWeekStatus::PlannedAbsenceCounts { in_weeks: 1 });
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn easy_week_status(
        weeks: &[DailyLoad], planned_absence_in_weeks: Option<u16>, options: EasyWeekOptions
    ) -> Result<EasyWeekStatus, Error> {
        numeric::within(Code::OutOfRange, "easy_share", options.easy_share, 0.0, 1.0, "")?;
        if options.every_weeks == 0 {
            return Err(Error::new(Code::OutOfRange, "every_weeks", 0_u16, Allowed::rule("at least 1")));
        }
        let mut trained: alloc::vec::Vec<f64> =
            weeks.iter().filter_map(|week| week.value()).filter(|load| *load > 0.0).collect();
        let limit = options.easy_share * median(&mut trained).unwrap_or(0.0);
        let hard = weeks.iter().rev().take_while(|week| week.value().is_none_or(|load| load > limit));
        let hard: alloc::vec::Vec<&DailyLoad> = hard.collect();
        let weeks_since = u16::try_from(hard.len()).unwrap_or(u16::MAX);
        Ok(if hard.contains(&&DailyLoad::NotRecorded) {
            EasyWeekStatus::Unknown
        } else if weeks_since < options.every_weeks {
            EasyWeekStatus::NotYet { weeks_since }
        } else {
            match planned_absence_in_weeks.filter(|weeks| *weeks <= SOON) {
                Some(in_weeks) => EasyWeekStatus::PlannedAbsenceCounts { in_weeks },
                None => EasyWeekStatus::Consider { weeks_since },
            }
        })
    }
    source: OURS, place: "weeks since the last easy one", standing: OurChoice, seen: NotApplicable,
}

/// A planned absence within so many weeks stands for an easy week (our choice).
const SOON: u16 = 2;

rows![
    easy_week_practice_rogerson_2024,
    easy_week_range_bell_2022,
    easy_week_status,
    easy_week_options_default,
];
