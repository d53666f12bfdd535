//! Days and lengths as people write them.

use alloc::format;
use alloc::string::{String, ToString};

use crate::numeric;
use crate::quantity::{Day, Length};
use crate::record::Tempo;

const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// A day as a person writes it.
///
/// ```
/// assert_eq!(bismar::text::day("2026-08-27".parse()?), "27 Aug 2026");
/// # Ok::<(), bismar::Error>(())
/// ```
#[must_use]
pub fn day(day: Day) -> String {
    let (year, month, day) = day.calendar();
    let month = MONTHS.get(usize::from(month).saturating_sub(1)).copied().unwrap_or_default();
    format!("{day} {month} {year}")
}

/// A tempo in words: `3 s down, 1 s hold, 1 s up`.
#[must_use]
pub fn tempo(tempo: Tempo) -> String {
    let Tempo { down, hold, up } = tempo;
    if hold == 0 {
        format!("{down} s down, {up} s up")
    } else {
        format!("{down} s down, {hold} s hold, {up} s up")
    }
}

/// A range of a lift, or how far one may go, exactly: rounded, either could pass the other, and which way that is the lift's
/// own list says.
pub(super) fn range(length: Length) -> String {
    length.to_string()
}

/// A length to the tenth of a millimetre.
pub(super) fn millimetres(length: Length) -> String {
    format!("{} mm", numeric::round(length.mm() * 10.0) / 10.0)
}
