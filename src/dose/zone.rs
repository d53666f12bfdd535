//! Lifts by intensity zone: a trade table, and a ratio made from it.

use alloc::vec::Vec;

use super::set::RelativeSet;
use crate::error::{Allowed, Code, Error, Given};
use crate::numeric;
use crate::quantity::Fraction;
use crate::source::{Source, formula, rows};

const PRILEPIN: Source = Source {
    id: "prilepin",
    citation: "Prilepin AS, a table from training records of Soviet weightlifters, in English copies (Hristov H 2005; McCullough T); the original was not found",
    doi: None,
};

const HRISTOV_2005: Source = Source {
    id: "hristov-2005",
    citation: "Hristov H. How to design strength training programs using Prilepin's table. Self-published 2004/2005",
    doi: None,
};

/// One zone of the table: what was found to work in a session of one competition lift.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct ZoneRow {
    /// Lower edge in percent of the maximum, inside the zone.
    pub from_percent: u8,
    /// Upper edge, outside the zone but for the last, which includes 100.
    pub to_percent: u8,
    /// Fewest repetitions of a set.
    pub reps_low: u8,
    /// Most repetitions of a set.
    pub reps_high: u8,
    /// Repetitions of the session.
    pub total: u8,
    /// Fewest repetitions of the session.
    pub total_low: u8,
    /// Most repetitions of the session.
    pub total_high: u8,
}

const fn zone(edges: (u8, u8), reps: (u8, u8), total: u8, range: (u8, u8)) -> ZoneRow {
    ZoneRow {
        from_percent: edges.0,
        to_percent: edges.1,
        reps_low: reps.0,
        reps_high: reps.1,
        total,
        total_low: range.0,
        total_high: range.1,
    }
}

// The numbers agree in both copies read; the edges do not (one leaves holes at 65-70, 75-80 and 85-90), so
// half-open zones without holes are our choice.
const ZONES: [ZoneRow; 4] = [
    zone((55, 70), (3, 6), 24, (18, 30)),
    zone((70, 80), (3, 6), 18, (12, 24)),
    zone((80, 90), (2, 4), 15, (10, 20)),
    zone((90, 100), (1, 2), 7, (4, 10)),
];

/// Above 100 %: one unit in the last place of a percent must not push a single out of its zone.
const EDGE_SLACK: f64 = 1e-9;

/// Index of the zone, none below 55 % or above 100 %.
fn zone_index(fraction: Fraction) -> Option<usize> {
    let percent = fraction.value() * 100.0 + EDGE_SLACK;
    if percent > 100.0 + 2.0 * EDGE_SLACK {
        return None;
    }
    ZONES.iter().rposition(|zone| percent >= f64::from(zone.from_percent))
}

formula! {
    "dose.prilepin_table",
    /// Which numbers of repetitions were found to work in each intensity zone?
    ///
    /// # Formula
    /// The table in circulation. Its zone edges differ between copies; here they are half-open without holes:
    /// 55 to below 70, to below 80, to below 90, to 100.
    ///
    /// # Domain
    /// Young elite weightlifters, competition lifts, one exercise in one session. Not advice for novices or older
    /// adults. Some copies print 4 instead of 7 in the last zone.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Attributed to Prilepin; read in two English copies, never in the original. Not peer-reviewed.
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::dose::prilepin_table()?.len(), 4);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn prilepin_table() -> Result<Vec<ZoneRow>, Error> {
        Ok(ZONES.to_vec())
    }
    source: PRILEPIN, place: "the table; edges our choice", standing: CommonPractice, seen: Secondary,
    copies: "two articles of the trade, whose edges differ",
    population: "over 1000 elite weightlifters, by report", domain: "55 to 100 % of the maximum",
}

formula! {
    "dose.prilepin_zone",
    /// Which row of the table does this intensity fall in?
    ///
    /// # Formula
    /// The zone whose lower edge is at or below the intensity.
    ///
    /// # Domain
    /// 55 to 100 % of the maximum: one copy begins there, the other prints "70 % and below" without an end. Below it
    /// nothing is answered. Where the copies leave a hole or share an edge, the half-open edges are our choice.
    ///
    /// # Errors
    /// `not_covered`.
    ///
    /// # Source
    /// As [`prilepin_table`].
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::prilepin_zone;
    /// use bismar::quantity::Fraction;
    ///
    /// assert_eq!(prilepin_zone(Fraction::new(0.7)?)?.total, 18);
    /// assert!(prilepin_zone(Fraction::new(0.5)?).is_err());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn prilepin_zone(fraction: Fraction) -> Result<ZoneRow, Error> {
        let row = zone_index(fraction).and_then(|at| ZONES.get(at));
        row.copied().ok_or_else(|| Error::range(Code::NotCovered, "fraction", fraction.value(), 0.55, 1.0, "of 1RM"))
    }
    source: PRILEPIN, place: "the table; edges our choice", standing: CommonPractice, seen: Secondary,
    copies: "two articles of the trade, whose edges differ",
    population: "over 1000 elite weightlifters, by report", domain: "55 to 100 % of the maximum",
}

/// Repetitions by zone; lifts outside the table are counted, not dropped.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct LiftsByZone {
    /// Below 55 %.
    pub below_55: f64,
    /// From 55 % to below 70 %.
    pub from_55: f64,
    /// From 70 % to below 80 %.
    pub from_70: f64,
    /// From 80 % to below 90 %.
    pub from_80: f64,
    /// From 90 % to 100 %.
    pub from_90: f64,
    /// Above 100 % of the maximum on file.
    pub above_100: f64,
}

formula! {
    "dose.lifts_by_zone",
    /// How many lifts were done in each intensity zone?
    ///
    /// # Formula
    /// Repetitions added up by zone, edges as in [`prilepin_table`].
    ///
    /// # Domain
    /// Any fraction; what lies below 55 % or above 100 % has its own count.
    ///
    /// # Errors
    /// None of its own.
    ///
    /// # Source
    /// Counting; the edges are our choice, since copies of the trade table differ in them.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{RelativeSet, lifts_by_zone};
    /// use bismar::quantity::{Fraction, Reps};
    ///
    /// let sets = [RelativeSet::new(Fraction::new(0.8)?, Reps::whole(3)?).times(5)];
    /// assert_eq!(lifts_by_zone(&sets)?.from_80, 15.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lifts_by_zone(sets: &[RelativeSet]) -> Result<LiftsByZone, Error> {
        let mut count = LiftsByZone::default();
        for set in sets {
            let place = match zone_index(set.fraction) {
                Some(0) => &mut count.from_55,
                Some(1) => &mut count.from_70,
                Some(2) => &mut count.from_80,
                Some(_) => &mut count.from_90,
                None if set.fraction.value() > 1.0 => &mut count.above_100,
                None => &mut count.below_55,
            };
            *place += set.repetitions();
        }
        Ok(count)
    }
    source: crate::source::ARITHMETIC, place: "counting by zone", standing: Derived, seen: NotApplicable,
}

formula! {
    "dose.lifts_per_percent_in_reserve_hristov_2005",
    /// How many lifts were done for each percent left below the maximum?
    ///
    /// # Formula
    /// `sum repetitions / (100 - percent)`.
    ///
    /// # Domain
    /// Below 100 %: a single at the maximum would be infinite. An article on the web without any validation; its
    /// bands are not shown.
    ///
    /// # Errors
    /// `no_reserve_left` at 100 % and above.
    ///
    /// # Source
    /// Hristov 2005.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{RelativeSet, lifts_per_percent_in_reserve_hristov_2005};
    /// use bismar::quantity::{Fraction, Reps};
    ///
    /// let sets = [RelativeSet::new(Fraction::new(0.75)?, Reps::whole(3)?).times(6)];
    /// assert!((lifts_per_percent_in_reserve_hristov_2005(&sets)? - 0.72).abs() < 1e-12);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn lifts_per_percent_in_reserve_hristov_2005(sets: &[RelativeSet]) -> Result<f64, Error> {
        let mut sum = 0.0;
        for (at, set) in sets.iter().enumerate() {
            let left = 100.0 * (1.0 - set.fraction.value());
            if left <= 0.0 {
                let rule = Allowed::rule("below 1, the maximum itself");
                return Err(Error::new(Code::NoReserveLeft, "fraction", Given::Number(set.fraction.value()), rule)
                    .within(&alloc::format!("sets[{at}]")));
            }
            sum += set.repetitions() / left;
        }
        numeric::finite("sets", sum)
    }
    source: HRISTOV_2005, place: "the formula", standing: Published, seen: Read,
    domain: "below 100 % of the maximum",
}

rows![prilepin_table, prilepin_zone, lifts_by_zone, lifts_per_percent_in_reserve_hristov_2005];
