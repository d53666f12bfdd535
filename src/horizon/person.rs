//! Age and sex, as the published tables need them.

use core::fmt;

use crate::error::{Code, Error};
use crate::numeric;
use crate::quantity::Day;

/// The sex a published table gives separate figures for.
///
/// Where it is not known, `Option::None` gives a range over both or an error; nothing guesses.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Sex {
    /// Figures given for women.
    Female,
    /// Figures given for men.
    Male,
}

impl Sex {
    /// The sexes to cover: the one given, or both.
    pub(crate) const fn covered(sex: Option<Sex>) -> &'static [Sex] {
        match sex {
            Some(Sex::Female) => &[Sex::Female],
            Some(Sex::Male) => &[Sex::Male],
            None => &[Sex::Female, Sex::Male],
        }
    }
}

/// Age in years, from 0 to 120; parts of a year allowed.
///
/// ```
/// use bismar::horizon::Age;
///
/// let age = Age::on("1968-03-29".parse()?, "2026-03-29".parse()?)?;
/// assert_eq!(age.years(), 58.0);
/// assert_eq!(Age::new(58.9)?.completed(), 58);
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "f64", into = "f64", extend("minimum" = 0, "maximum" = 120)))]
pub struct Age(f64);

impl Age {
    /// Above every age on record with reliable papers.
    const OLDEST: f64 = 120.0;

    /// An age in years.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` outside 0 to 120.
    pub fn new(years: f64) -> Result<Age, Error> {
        numeric::within(Code::OutOfRange, "age", years, 0.0, Age::OLDEST, "years").map(Age)
    }

    /// Age on a day: completed years, and the part of the running year by days. Who was born on 29 February has
    /// the birthday on 1 March in other years.
    ///
    /// # Errors
    /// `ages_reversed` if `day` comes before `born`; `out_of_range` above 120 years, or in the last year of the
    /// calendar range of [`Day`].
    pub fn on(born: Day, day: Day) -> Result<Age, Error> {
        if day < born {
            let rule = crate::error::Allowed::rule("on or after the day of birth");
            return Err(Error::new(Code::AgesReversed, "day", day.number(), rule));
        }
        let (year, month, date) = day.calendar();
        let (birth_year, birth_month, birth_date) = born.calendar();
        let had_birthday = (month, date) >= (birth_month, birth_date);
        let completed = year - birth_year - i32::from(!had_birthday);
        let last = birthday(born, birth_year + completed)?;
        let next = birthday(born, birth_year + completed + 1)?;
        Age::new(f64::from(completed) + f64::from(day.since(last)) / f64::from(next.since(last)))
    }

    /// In years.
    #[must_use]
    pub const fn years(self) -> f64 {
        self.0
    }

    /// Completed years: what federations and most tables call age.
    #[must_use]
    pub fn completed(self) -> u8 {
        // At most 120, so it fits.
        numeric::floor(self.0) as u8
    }
}

fn birthday(born: Day, year: i32) -> Result<Day, Error> {
    let (_, month, date) = born.calendar();
    match Day::from_calendar(year, month, date) {
        Err(error) if error.code() == Code::NotADate => Day::from_calendar(year, 3, 1),
        other => other,
    }
}

impl fmt::Display for Age {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}", self.0)
    }
}

/// Part of the present strength lost in a year: 0.02 is 2 %. From 0 up to, not including, 1.
///
/// ```
/// use bismar::horizon::AnnualLoss;
///
/// assert_eq!(AnnualLoss::new(0.026)?.value(), 0.026);
/// assert!(AnnualLoss::new(2.6).is_err()); // percent given as a part
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "f64", into = "f64", extend("minimum" = 0, "exclusiveMaximum" = 1)))]
pub struct AnnualLoss(f64);

impl AnnualLoss {
    /// A yearly loss.
    ///
    /// # Errors
    /// `not_finite`; `out_of_range` below 0, and at or above 1.
    pub fn new(loss: f64) -> Result<AnnualLoss, Error> {
        let loss = numeric::within(Code::OutOfRange, "loss", loss, 0.0, 1.0, "of strength a year, below 1")?;
        if loss < 1.0 {
            Ok(AnnualLoss(loss))
        } else {
            Err(Error::range(Code::OutOfRange, "loss", loss, 0.0, 1.0, "of strength a year, below 1"))
        }
    }

    /// A figure of this crate's own tables, all of which lie well inside the range.
    pub(super) const fn tabled(loss: f64) -> AnnualLoss {
        AnnualLoss(loss)
    }

    /// Part of the present strength lost in a year.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

impl Age {
    /// An age of this crate's own tables.
    pub(super) const fn tabled(years: f64) -> Age {
        Age(years)
    }
}

#[cfg(feature = "serde")]
mod wire {
    //! Plain numbers in and out.
    use super::{Age, AnnualLoss};
    use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

    impl Serialize for Age {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.years().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for Age {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Age, D::Error> {
            Age::new(f64::deserialize(from)?).map_err(de::Error::custom)
        }
    }

    impl Serialize for AnnualLoss {
        fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
            self.value().serialize(to)
        }
    }

    impl<'de> Deserialize<'de> for AnnualLoss {
        fn deserialize<D: Deserializer<'de>>(from: D) -> Result<AnnualLoss, D::Error> {
            AnnualLoss::new(f64::deserialize(from)?).map_err(de::Error::custom)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(born: &str, day: &str) -> Result<Age, Error> {
        Age::on(born.parse()?, day.parse()?)
    }

    #[test]
    fn a_year_is_completed_on_the_birthday() {
        assert_eq!(on("1968-03-29", "2026-03-28").unwrap().completed(), 57);
        assert_eq!(on("1968-03-29", "2026-03-29").unwrap().completed(), 58);
        assert_eq!(on("1968-03-29", "1968-03-29").unwrap().completed(), 0);
    }

    #[test]
    fn a_leap_day_birthday_falls_on_the_first_of_march() {
        assert_eq!(on("1968-02-29", "2026-02-28").unwrap().completed(), 57);
        assert_eq!(on("1968-02-29", "2026-03-01").unwrap().completed(), 58);
        assert_eq!(on("1968-02-29", "2028-02-29").unwrap().completed(), 60);
    }

    #[test]
    fn nobody_is_younger_than_the_day_of_birth() {
        assert_eq!(on("1968-03-29", "1968-03-28").unwrap_err().code(), Code::AgesReversed);
    }
}
