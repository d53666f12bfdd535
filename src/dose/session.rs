//! Session load: how hard the session felt, times how long it was.

use derive_setters::Setters;

use super::daily::LoadTotal;
use super::set::SetDone;
use super::volume::{MINUTES_PER_DAY, total_repetitions};
use crate::error::{Code, Error};
use crate::numeric;
use crate::source::{Source, formula, rows};

pub(super) const FOSTER_2001: Source = Source {
    id: "foster-2001",
    citation: "Foster C, Florhaug JA, Franklin J, Gottschall L, Hrovatin LA, Parker S, Doleshal P, Dodge C. A new approach to monitoring exercise training. J Strength Cond Res 2001;15(1):109-115",
    doi: None,
};

/// One session: its rating and its length.
#[derive(Clone, Copy, Debug, PartialEq, Setters)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Serialize, serde::Deserialize),
    serde(deny_unknown_fields, rename_all = "snake_case")
)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct SessionRated {
    /// One rating for the whole session on the modified 0-10 category-ratio scale, asked about 30 minutes after
    /// its end. Not the rating of a set in repetitions left.
    pub rating: f64,
    /// Length in minutes.
    pub minutes: f64,
}

impl SessionRated {
    /// A session of so many minutes with that rating.
    #[must_use]
    pub fn new(rating: f64, minutes: f64) -> SessionRated {
        SessionRated { rating, minutes }
    }
}

fn session_rating(rating: f64) -> Result<f64, Error> {
    numeric::within(Code::OutOfRange, "rating", rating, 0.0, 10.0, "")
}

formula! {
    "dose.session_load_foster_2001",
    /// How large was the session as it felt?
    ///
    /// # Formula
    /// `rating * minutes`, arbitrary units.
    ///
    /// # Domain
    /// Ratings 0 to 10, at most a day. Ratings were repeatable in lifting (ICC 0.88, 19 people), and heavier sets
    /// felt harder even with fewer repetitions. Minutes count rests as load
    /// ([`Caution::RestsCountAsLoad`](crate::caution::Caution)).
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`.
    ///
    /// # Source
    /// Foster et al. 2001; in lifting: Day et al. 2004, J Strength Cond Res 18:353-358.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::session_load_foster_2001;
    ///
    /// assert_eq!(session_load_foster_2001(5.0, 60.0)?.value(), 300.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn session_load_foster_2001(rating: f64, minutes: f64) -> Result<LoadTotal, Error> {
        let minutes = numeric::within(Code::OutOfRange, "minutes", minutes, 0.0, MINUTES_PER_DAY, "min")?;
        LoadTotal::new(session_rating(rating)? * minutes)
    }
    source: FOSTER_2001, place: "method", standing: Published, seen: Read,
    domain: "rating 0 to 10, asked about 30 minutes after the session",
}

formula! {
    "dose.day_load_foster_2001",
    /// How large was the day, with all its sessions?
    ///
    /// # Formula
    /// `sum rating * minutes`: two sessions on one day are added.
    ///
    /// # Domain
    /// As [`session_load_foster_2001`]; no session at all is 0, which the host should give only for a rested day.
    ///
    /// # Errors
    /// As [`session_load_foster_2001`], with the place in the list.
    ///
    /// # Source
    /// Foster et al. 2001.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SessionRated, day_load_foster_2001};
    ///
    /// let sessions = [SessionRated::new(3.0, 30.0), SessionRated::new(6.0, 50.0)];
    /// assert_eq!(day_load_foster_2001(&sessions)?.value(), 390.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn day_load_foster_2001(sessions: &[SessionRated]) -> Result<LoadTotal, Error> {
        let mut total = 0.0;
        for (at, session) in sessions.iter().enumerate() {
            total += session_load_foster_2001(session.rating, session.minutes)
                .map_err(|error| error.within(&alloc::format!("sessions[{at}]")))?
                .value();
        }
        LoadTotal::new(total)
    }
    source: FOSTER_2001, place: "method", standing: Published, seen: Read,
}

formula! {
    "dose.session_load_by_repetitions",
    /// How large was the session as it felt, with repetitions instead of minutes?
    ///
    /// # Formula
    /// `rating * repetitions`, arbitrary units. Rests do not count; never mix it with the form by minutes.
    ///
    /// # Domain
    /// Ratings 0 to 10.
    ///
    /// # Errors
    /// `not_finite`, `out_of_range`, `load_out_of_domain`.
    ///
    /// # Source
    /// In use among practitioners; no source claimed.
    ///
    /// # Examples
    /// ```
    /// use bismar::dose::{SetDone, session_load_by_repetitions};
    /// use bismar::quantity::{Mass, Reps};
    ///
    /// let sets = [SetDone::new(Mass::from_kg(60.0)?, Reps::whole(5)?).times(5)];
    /// assert_eq!(session_load_by_repetitions(6.0, &sets)?.value(), 150.0);
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn session_load_by_repetitions(rating: f64, sets: &[SetDone]) -> Result<LoadTotal, Error> {
        LoadTotal::new(session_rating(rating)? * total_repetitions(sets)?)
    }
    source: crate::source::COMMON_PRACTICE, place: "rating x repetitions", standing: CommonPractice,
    seen: NotApplicable,
}

rows![session_load_foster_2001, day_load_foster_2001, session_load_by_repetitions];
