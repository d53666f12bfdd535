//! Points of the short physical performance battery.

use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{Source, formula, rows};

/// The scale came in Guralnik JM and others, J Gerontol 1994;49(2):M85-M94. That paper timed 8 feet and printed tenths;
/// the limits for 4 m, in hundredths, are those of the protocol in use since.
const BATTERY_PROTOCOL: Source = Source {
    id: "short-physical-performance-battery",
    citation: "Short Physical Performance Battery, protocol and score sheet with the walk of 4 m (National Institute \
               on Aging); after Guralnik JM and others, J Gerontol 1994;49(2):M85-M94, who timed 8 feet",
    doi: None,
};

/// Longest time that anyone would write down, s.
const LONGEST: f64 = 3600.0;

/// A time above 0, in hundredths as the stopwatch shows it: the table leaves no gap between its hundredths.
fn hundredths(seconds: f64) -> Result<f64, Error> {
    let seconds = numeric::within(Code::OutOfRange, "seconds", seconds, 0.01, LONGEST, "s")?;
    Ok(numeric::round(seconds * 100.0))
}

/// Points for the first limit (in hundredths) that the time does not exceed.
fn points(time: f64, limits: &[(f64, u8)], beyond: u8) -> u8 {
    limits.iter().find(|(limit, _)| time <= *limit).map_or(beyond, |(_, points)| *points)
}

formula! {
    "horizon.chair_rise_points",
    /// How many points do five chair rises give in the short performance battery?
    ///
    /// # Formula
    /// Up to 11.19 s 4, to 13.69 s 3, to 16.69 s 2, to 60 s 1; longer, or not able (no time given), 0.
    ///
    /// # Domain
    /// Older adults; 0.01 to 3600 s, read in hundredths.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// The battery's protocol, recalled; the paper of 1994 is recalled to print tenths of a second (row
    /// `horizon.chair_rise_points`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::horizon::chair_rise_points(Some(12.4))?, 3);
    /// assert_eq!(bismar::horizon::chair_rise_points(None)?, 0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn chair_rise_points(seconds: Option<f64>) -> Result<u8, Error> {
        let Some(seconds) = seconds else { return Ok(0) };
        let limits = [(1119.0, 4), (1369.0, 3), (1669.0, 2), (6000.0, 1)];
        Ok(points(hundredths(seconds)?, &limits, 0))
    }
    source: BATTERY_PROTOCOL, place: "score sheet", standing: Published, seen: Memory,
    population: "older adults; the scale was made in three communities of the United States", domain: "0.01 to 3600 s",
}

formula! {
    "horizon.gait_points",
    /// How many points does a walk of 4 m give in the short performance battery?
    ///
    /// # Formula
    /// Under 4.82 s 4, to 6.20 s 3, to 8.70 s 2, longer 1; not able (no time given) 0.
    ///
    /// # Domain
    /// Older adults, usual pace; 0.01 to 3600 s, read in hundredths.
    ///
    /// # Errors
    /// `out_of_range`.
    ///
    /// # Source
    /// The battery's protocol for 4 m, recalled; the paper of 1994 timed 8 feet and has limits of its own (row
    /// `horizon.gait_points`).
    ///
    /// # Examples
    /// ```
    /// assert_eq!(bismar::horizon::gait_points(Some(4.82))?, 3);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn gait_points(seconds: Option<f64>) -> Result<u8, Error> {
        let Some(seconds) = seconds else { return Ok(0) };
        Ok(points(hundredths(seconds)?, &[(481.0, 4), (620.0, 3), (870.0, 2)], 1))
    }
    source: BATTERY_PROTOCOL, place: "score sheet", standing: Published, seen: Memory,
    population: "older adults; the scale was made in three communities of the United States", domain: "0.01 to 3600 s",
}

rows![chair_rise_points, gait_points];
