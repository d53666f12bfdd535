//! Civil days.

use alloc::vec::Vec;
use core::fmt;

use time::{Date, Month};

use crate::canonical::Canonical;
use crate::error::{Allowed, Code, Error};

/// Julian day number of 1970-01-01, the day that has number 0 here.
const JULIAN_DAY_OF_ZERO: i32 = 2_440_588;

/// A calendar day in the lifter's own calendar, as a day number (1970-01-01 is 0), from year 1900 to 2199.
///
/// The library reads no clock and knows no time zone: the host decides which day a session belongs to.
///
/// ```
/// use bismar::quantity::Day;
///
/// let day: Day = "2028-02-29".parse()?;
/// assert_eq!(day.plus(1)?.to_string(), "2028-03-01");
/// assert_eq!(day.since("2028-02-01".parse()?), 28);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "alloc::string::String", into = "alloc::string::String", description = "A calendar day, `YYYY-MM-DD`, from 1900 to 2199.", extend("pattern" = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$")))]
pub struct Day(i32);

impl Canonical for Day {
    fn put(&self, out: &mut Vec<u8>) {
        self.0.put(out);
    }
}

impl Day {
    const FIRST: i32 = -25_567;
    const LAST: i32 = 84_005;

    /// A day by its number.
    ///
    /// # Errors
    /// `out_of_range` before 1900-01-01 or after 2199-12-31.
    pub fn from_number(number: i32) -> Result<Day, Error> {
        if (Day::FIRST..=Day::LAST).contains(&number) {
            Ok(Day(number))
        } else {
            Err(Error::range(
                Code::OutOfRange,
                "day",
                number,
                f64::from(Day::FIRST),
                f64::from(Day::LAST),
                "days from 1970-01-01",
            ))
        }
    }

    /// A day by year, month (1 to 12) and day of the month.
    ///
    /// # Errors
    /// `not_a_date` where the calendar has no such day; `out_of_range` outside 1900 to 2199.
    pub fn from_calendar(year: i32, month: u8, day: u8) -> Result<Day, Error> {
        let date =
            Month::try_from(month).ok().and_then(|month| Date::from_calendar_date(year, month, day).ok());
        match date {
            Some(date) => Day::from_number(date.to_julian_day() - JULIAN_DAY_OF_ZERO),
            None => Err(not_a_date(alloc::format!("{year:04}-{month:02}-{day:02}").as_str())),
        }
    }

    /// The day number; 1970-01-01 is 0.
    #[must_use]
    pub const fn number(self) -> i32 {
        self.0
    }

    /// Whole days from `earlier` to this day; negative if it comes first.
    #[must_use]
    pub const fn since(self, earlier: Day) -> i32 {
        self.0 - earlier.0
    }

    /// The day so many days later (or earlier, if negative).
    ///
    /// # Errors
    /// `out_of_range` outside 1900 to 2199.
    pub fn plus(self, days: i32) -> Result<Day, Error> {
        Day::from_number(self.0.saturating_add(days))
    }

    /// Year, month (1 to 12) and day of the month.
    #[must_use]
    pub fn calendar(self) -> (i32, u8, u8) {
        // Every day number of this type lies inside the range of `time::Date`.
        match Date::from_julian_day(self.0 + JULIAN_DAY_OF_ZERO) {
            Ok(date) => (date.year(), date.month() as u8, date.day()),
            Err(_) => (1970, 1, 1),
        }
    }
}

fn not_a_date(text: &str) -> Error {
    Error::new(Code::NotADate, "day", text, Allowed::rule("YYYY-MM-DD"))
}

impl core::str::FromStr for Day {
    type Err = Error;

    /// Reads `2026-03-29` (ISO 8601, extended form, nothing before or after).
    fn from_str(text: &str) -> Result<Day, Error> {
        let refuse = || not_a_date(text);
        let shape = text.len() == 10
            && text
                .bytes()
                .enumerate()
                .all(|(at, byte)| if at == 4 || at == 7 { byte == b'-' } else { byte.is_ascii_digit() });
        if !shape {
            return Err(refuse());
        }
        let mut parts = text.split('-').map(|part| part.parse::<u16>());
        match (parts.next(), parts.next(), parts.next()) {
            (Some(Ok(year)), Some(Ok(month)), Some(Ok(day))) => {
                Day::from_calendar(i32::from(year), month as u8, day as u8)
            }
            _ => Err(refuse()),
        }
    }
}

impl fmt::Display for Day {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.calendar();
        write!(out, "{year:04}-{month:02}-{day:02}")
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! `"2026-03-29"` in and out.
    use super::Day;
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    impl Serialize for Day {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            to.collect_str(self)
        }
    }

    impl<'de> Deserialize<'de> for Day {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Day, D::Error> {
            let text = alloc::string::String::deserialize(from)?;
            let day: Result<Day, crate::Error> = text.parse();
            day.map_err(|error| de::Error::custom(error.named("")))
        }
    }
}
