//! Coming back after time off: upper limits from a consensus of college strength coaches.

use alloc::vec::Vec;

use super::daily::LoadTotal;
use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{Source, formula, rows};

const CATERISANO_2019: Source = Source {
    id: "caterisano-2019",
    citation: "Caterisano A, Decker D, Snyder B, Feigenbaum M, Glass R, House P, Sharp C, Waller M, Witherspoon Z. CSCCa and NSCA joint consensus guidelines for transition periods. Strength Cond J 2019;41(3):1-23",
    doi: Some("10.1519/SSC.0000000000000477"),
};

/// Who comes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ReturnGroup {
    /// After two weeks off or more, or under a new head coach: two limited weeks.
    AfterBreak,
    /// New to the programme, or after heat illness or muscle breakdown: four limited weeks.
    New,
}

/// Limits of one week.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ReturnWeek {
    /// Week since the return; 1 is the first.
    pub week: u16,
    /// Largest share of the highest conditioning volume on file.
    pub volume_share: f64,
    /// Most training days for a muscle group, where limited.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub most_days: Option<u8>,
    /// Parts of rest for each part of work at least, where limited.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub rest_for_work: Option<u8>,
}

const fn week(week: u16, volume_share: f64, most_days: Option<u8>, rest_for_work: Option<u8>) -> ReturnWeek {
    ReturnWeek { week, volume_share, most_days, rest_for_work }
}

// Shares of the highest volume, each taken from that, not from the week before.
const WEEKS: [ReturnWeek; 4] = [
    week(1, 0.5, Some(3), Some(4)),
    week(2, 0.7, Some(4), Some(3)),
    week(3, 0.8, None, None),
    week(4, 0.9, None, None),
];

fn limited(group: ReturnGroup) -> &'static [ReturnWeek] {
    match group {
        ReturnGroup::AfterBreak => WEEKS.get(..2).unwrap_or_default(),
        ReturnGroup::New => &WEEKS,
    }
}

formula! {
    "dose.return_weeks_caterisano_2019",
    /// Which limits hold in the weeks after coming back?
    ///
    /// # Formula
    /// The published rule: volume cut by 50, 30, 20 and 10 % of the highest on file, training days and rest in the
    /// first two weeks.
    ///
    /// # Domain
    /// College athletes. The cuts are for conditioning and are upper limits; using them for barbell load is a
    /// choice of whoever does so. They say nothing about the best way back.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Caterisano et al. 2019 (abstract read; the details recalled, and alike in a digest).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{ReturnGroup, return_weeks_caterisano_2019};
    ///
    /// assert_eq!(return_weeks_caterisano_2019(ReturnGroup::AfterBreak)?.len(), 2);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn return_weeks_caterisano_2019(group: ReturnGroup) -> Result<Vec<ReturnWeek>, Error> {
        Ok(limited(group).to_vec())
    }
    source: CATERISANO_2019, place: "50/30/20/10 rule and the rule for the first two weeks", standing: Published,
    seen: Memory, population: "college athletes",
}

formula! {
    "dose.return_volume_limit_caterisano_2019",
    /// How much volume at most in this week after coming back?
    ///
    /// # Formula
    /// Highest volume on file times 0.5, 0.7, 0.8, 0.9, then 1. The cuts do not compound.
    ///
    /// # Domain
    /// As [`return_weeks_caterisano_2019`]; an upper limit, not an aim.
    ///
    /// # Errors
    /// `out_of_range` for week 0.
    ///
    /// # Source
    /// Caterisano et al. 2019, recalled.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{LoadTotal, ReturnGroup, return_volume_limit_caterisano_2019};
    ///
    /// let highest = LoadTotal::new(4000.0)?;
    /// let limit = return_volume_limit_caterisano_2019(highest, 2, ReturnGroup::AfterBreak)?;
    /// assert_eq!(limit.value(), 2800.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn return_volume_limit_caterisano_2019(
        highest: LoadTotal, week: u16, group: ReturnGroup
    ) -> Result<LoadTotal, Error> {
        if week == 0 {
            return Err(Error::range(Code::OutOfRange, "week", week, 1.0, f64::from(u16::MAX), ""));
        }
        let row = limited(group).iter().find(|row| row.week == week);
        LoadTotal::new(highest.value() * row.map_or(1.0, |row| row.volume_share))
    }
    source: CATERISANO_2019, place: "50/30/20/10 rule", standing: Published, seen: Memory,
    population: "college athletes",
}

/// Relative volume against the rule for the first two weeks back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum ReturnVolume {
    /// Below 11.
    BelowRange,
    /// From 11 to 30.
    InRange,
    /// Above 30: the source rules it out.
    AboveLimit,
}

// Caterisano 2019: sets x repetitions x part of the maximum, per muscle group or movement.
const LOWEST_RELATIVE_VOLUME: f64 = 11.0;
const HIGHEST_RELATIVE_VOLUME: f64 = 30.0;

formula! {
    "dose.return_relative_volume_caterisano_2019",
    /// Is this much lifting for one muscle group within the rule for the first two weeks back?
    ///
    /// # Formula
    /// Relative volume (sets x repetitions x part of the maximum) from 11 to 30; above is ruled out.
    ///
    /// # Domain
    /// First two weeks after coming back, per muscle group or movement; college athletes.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range` below 0.
    ///
    /// # Source
    /// Caterisano et al. 2019, recalled.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{ReturnVolume, return_relative_volume_caterisano_2019};
    ///
    /// assert_eq!(return_relative_volume_caterisano_2019(32.5)?, ReturnVolume::AboveLimit); // 5 x 10 at 65 %
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn return_relative_volume_caterisano_2019(relative_volume: f64) -> Result<ReturnVolume, Error> {
        let volume = numeric::within(Code::OutOfRange, "relative_volume", relative_volume, 0.0, 1e6, "")?;
        // Products such as 10 x 3 x 0.7 may come out one bit off a whole number.
        const ROUNDING: f64 = 1e-9;
        Ok(if volume < LOWEST_RELATIVE_VOLUME - ROUNDING {
            ReturnVolume::BelowRange
        } else if volume > HIGHEST_RELATIVE_VOLUME + ROUNDING {
            ReturnVolume::AboveLimit
        } else {
            ReturnVolume::InRange
        })
    }
    source: CATERISANO_2019, place: "rule for the first two weeks", standing: Published, seen: Memory,
    population: "college athletes",
}

rows![
    return_weeks_caterisano_2019,
    return_volume_limit_caterisano_2019,
    return_relative_volume_caterisano_2019,
];
