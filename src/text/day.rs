//! Days and lengths as people write them.

use alloc::format;
use alloc::string::{String, ToString};

use super::phrases::Phrases;
use super::words::Words;
use crate::numeric;
use crate::quantity::{Day, Length};
use crate::record::Tempo;

/// Days, tempos, lengths and help, by key.
pub(super) const DAYS_AND_LENGTHS: Phrases = &[
    ("day.written", "{day} {month} {year}"),
    ("month.1", "Jan"),
    ("month.2", "Feb"),
    ("month.3", "Mar"),
    ("month.4", "Apr"),
    ("month.5", "May"),
    ("month.6", "Jun"),
    ("month.7", "Jul"),
    ("month.8", "Aug"),
    ("month.9", "Sep"),
    ("month.10", "Oct"),
    ("month.11", "Nov"),
    ("month.12", "Dec"),
    ("tempo.without_hold", "{down} s down, {up} s up"),
    ("tempo.with_hold", "{down} s down, {hold} s hold, {up} s up"),
    ("length.mm", "{length} mm"),
    // A load below nothing: what the lifter is helped with.
    ("mass.help", "{mass} of help"),
];

/// A day as a person writes it.
///
/// ```
/// assert_eq!(bismar::text::day("2026-08-27".parse()?), "27 Aug 2026");
/// # Ok::<(), bismar::Error>(())
/// ```
#[must_use]
pub fn day(day: Day) -> String {
    Words::plain().day(day)
}

/// A tempo in words: `3 s down, 1 s hold, 1 s up`.
#[must_use]
pub fn tempo(tempo: Tempo) -> String {
    Words::plain().tempo(tempo)
}

impl Words<'_> {
    /// A day as a person writes it.
    #[must_use]
    pub fn day(&self, day: Day) -> String {
        let (year, month, day) = day.calendar();
        let month = self.say(&format!("month.{month}"), &[]);
        let with = [("day", day.to_string()), ("month", month), ("year", year.to_string())];
        self.say("day.written", &with)
    }

    /// A tempo in words.
    #[must_use]
    pub fn tempo(&self, tempo: Tempo) -> String {
        let Tempo { down, hold, up } = tempo;
        let key = if hold == 0 { "tempo.without_hold" } else { "tempo.with_hold" };
        self.say(key, &[("down", down.to_string()), ("hold", hold.to_string()), ("up", up.to_string())])
    }

    /// A length to the tenth of a millimetre.
    pub(super) fn millimetres(&self, length: Length) -> String {
        let tenths = numeric::round(length.mm() * 10.0) / 10.0;
        self.say("length.mm", &[("length", tenths.to_string())])
    }

    /// A range of a lift, or how far one may go, exactly: rounded, either could pass the other, and which way that is the lift's
    /// own list says.
    pub(super) fn range(&self, length: Length) -> String {
        self.say("length.mm", &[("length", length.mm().to_string())])
    }
}
