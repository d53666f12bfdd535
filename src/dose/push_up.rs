//! Push-ups: the part of body mass that the hands hold, by several sources that do not agree.

use super::BodyTable;
use crate::error::Error;
use crate::source::{Source, formula, rows};

const EBBEN_2011: Source = Source {
    id: "ebben-2011",
    citation: "Ebben WP, Wurm B, VanderZanden TL, Spadavecchia ML, Durocher JJ, Bickham CT, Petushek EJ. Kinetic analysis of several variations of push-ups. J Strength Cond Res 2011;25(10):2891-2894",
    doi: Some("10.1519/JSC.0b013e31820c8587"),
};

const SUPRAK_2011: Source = Source {
    id: "suprak-2011",
    citation: "Suprak DN, Dawes J, Stephenson MD. The effect of position on the percentage of body mass supported during traditional and modified push-up variants. J Strength Cond Res 2011;25:497-503",
    doi: None,
};

const MIER_2014: Source = Source {
    id: "mier-2014",
    citation: "Mier CM, Amasay T, Capehart S, Garner H. Differences between men and women in percentage of body weight supported during push-up exercise. Int J Exerc Sci 2014;7(2):161-168",
    doi: None,
};

const GOUVALI_2005: Source = Source {
    id: "gouvali-2005",
    citation: "Gouvali MK, Boudolos K. Dynamic and electromyographical analysis in variants of push-up exercise. J Strength Cond Res 2005;19(1):146-151",
    doi: None,
};

/// A form of the push-up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum PushUp {
    /// Hands and feet on the floor.
    Regular,
    /// On the knees.
    Knees,
    /// Feet 30.48 cm (12 in) up.
    #[cfg_attr(feature = "serde", serde(rename = "feet_up_30_cm"))]
    FeetUp30Cm,
    /// Feet 60.96 cm (24 in) up.
    #[cfg_attr(feature = "serde", serde(rename = "feet_up_60_cm"))]
    FeetUp60Cm,
    /// Hands 30.48 cm (12 in) up.
    #[cfg_attr(feature = "serde", serde(rename = "hands_up_30_cm"))]
    HandsUp30Cm,
    /// Hands 60.96 cm (24 in) up.
    #[cfg_attr(feature = "serde", serde(rename = "hands_up_60_cm"))]
    HandsUp60Cm,
}

/// Where in the push-up the body is held still.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum PushUpPosition {
    /// Arms straight, on the feet.
    RegularUp,
    /// Chest low, on the feet.
    RegularDown,
    /// Arms straight, on the knees.
    KneesUp,
    /// Chest low, on the knees.
    KneesDown,
}

formula! {
    "dose.push_up_peak_share_ebben_2011",
    /// What part of body weight is the peak force of a push-up?
    ///
    /// # Formula
    /// The published table: peak force over body weight.
    ///
    /// # Domain
    /// 23 adults. A peak of a moving push-up, yet below what others measured holding still
    /// ([`push_up_still_share_suprak_2011`]): one constant for the load of a push-up is right to about 10
    /// percentage points.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Ebben et al. 2011 (abstract read; the table recalled).
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{PushUp, push_up_peak_share_ebben_2011};
    ///
    /// assert_eq!(push_up_peak_share_ebben_2011(PushUp::Knees)?, 0.49);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn push_up_peak_share_ebben_2011(form: PushUp) -> Result<f64, Error> {
        Ok(match form {
            PushUp::Regular => 0.64,
            PushUp::Knees => 0.49,
            PushUp::FeetUp30Cm => 0.70,
            PushUp::FeetUp60Cm => 0.74,
            PushUp::HandsUp30Cm => 0.55,
            PushUp::HandsUp60Cm => 0.41,
        })
    }
    source: EBBEN_2011, place: "table of peak forces", standing: Published, seen: Memory,
    population: "23 adults",
}

formula! {
    "dose.push_up_still_share_suprak_2011",
    /// What part of body weight do the hands hold while a push-up is held still?
    ///
    /// # Formula
    /// The published table.
    ///
    /// # Domain
    /// 28 trained men.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Suprak, Dawes and Stephenson 2011, recalled.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{PushUpPosition, push_up_still_share_suprak_2011};
    ///
    /// assert_eq!(push_up_still_share_suprak_2011(PushUpPosition::RegularUp)?, 0.6916);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn push_up_still_share_suprak_2011(position: PushUpPosition) -> Result<f64, Error> {
        Ok(match position {
            PushUpPosition::RegularUp => 0.6916,
            PushUpPosition::RegularDown => 0.7504,
            PushUpPosition::KneesUp => 0.5356,
            PushUpPosition::KneesDown => 0.6180,
        })
    }
    source: SUPRAK_2011, place: "results", standing: Published, seen: Memory, population: "28 trained men",
}

/// A mean and a standard deviation as printed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct MeanAndDeviation {
    /// Mean.
    pub mean: f64,
    /// Standard deviation between people or teams.
    pub deviation: f64,
}

formula! {
    "dose.push_up_still_share_mier_2014",
    /// What part of body weight do the hands hold with arms straight, in men and in women?
    ///
    /// # Formula
    /// The published means and standard deviations, on the feet or on the knees.
    ///
    /// # Domain
    /// The people measured; their ages are not confirmed.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Mier et al. 2014, abstract.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{BodyTable, push_up_still_share_mier_2014};
    ///
    /// assert_eq!(push_up_still_share_mier_2014(BodyTable::Female, false)?.mean, 0.651);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn push_up_still_share_mier_2014(table: BodyTable, on_knees: bool) -> Result<MeanAndDeviation, Error> {
        use BodyTable::{Female, Male};
        let (mean, deviation) = match (table, on_knees) {
            (Male, false) => (0.670, 0.038),
            (Female, false) => (0.651, 0.031),
            (Male, true) => (0.525, 0.037),
            (Female, true) => (0.515, 0.031),
        };
        Ok(MeanAndDeviation { mean, deviation })
    }
    source: MIER_2014, place: "abstract", standing: Published, seen: Read,
    population: "men and women, ages not confirmed",
}

crate::source::constant! {
    "dose.push_up_start_share_gouvali_2005",
    /// Part of body weight that the hands hold at the start of a regular push-up: 0.664.
    pub const PUSH_UP_START_SHARE_GOUVALI_2005: f64 = 0.664;
    source: GOUVALI_2005, place: "abstract", standing: Published, seen: Read,
}

rows![
    push_up_peak_share_ebben_2011,
    push_up_still_share_suprak_2011,
    push_up_still_share_mier_2014,
    PUSH_UP_START_SHARE_GOUVALI_2005,
];
