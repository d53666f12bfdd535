//! English for errors, reasons and cautions (feature `english`).
//!
//! Uses error, caution, reason, record, gate, progression, prescription, rehearsal. One renderer over codes and numbers; an
//! app that speaks another language writes its own over the same values. Every code has a sentence: a missing one
//! does not compile.

mod change;
#[cfg(feature = "rehearsal")]
mod finding;
mod reason;
mod session;
mod sign;

use alloc::format;
use alloc::string::String;

pub use change::{change, missing};
#[cfg(feature = "rehearsal")]
pub use finding::{finding, found, severity};
pub use reason::reason;
pub use session::{effort, lift_line, one_line, verdict};
pub use sign::{ask, stop_sign};

use crate::caution::Caution;
use crate::error::{Allowed, Error, Given};
use crate::quantity::Mass;

/// A caution as a sentence.
///
/// ```
/// use bismar::{caution::Caution, text};
///
/// assert!(text::caution(Caution::HoldingIsGood).ends_with('.'));
/// ```
#[must_use]
pub fn caution(caution: Caution) -> &'static str {
    caution.meaning()
}

/// An error as one or two plain sentences: what, where, and what would have been accepted.
///
/// ```
/// use bismar::{quantity::Rpe, text};
///
/// let error = Rpe::new(11.0).unwrap_err();
/// assert_eq!(
///     text::error(&error),
///     "The value lies outside the range that its type allows: rpe is 11. Allowed: 0 to 10.",
/// );
/// ```
#[must_use]
pub fn error(error: &Error) -> String {
    let mut text = String::new();
    if let Some(event) = error.event() {
        text.push_str(&format!("Event {event}. "));
    }
    text.push_str(error.code().meaning().trim_end_matches('.'));
    match (error.field(), error.given()) {
        ("", Given::Nothing) => {}
        (field, Given::Nothing) => text.push_str(&format!(": {field}")),
        ("", given) => text.push_str(&format!(": {given}")),
        (field, given) => text.push_str(&format!(": {field} is {given}")),
    }
    text.push('.');
    if *error.allowed() != Allowed::Unstated {
        text.push_str(&format!(" Allowed: {}.", error.allowed()));
    }
    text
}

/// A mass as people read it: kilograms to the gram, without trailing zeros.
#[must_use]
pub fn mass(mass: Mass) -> String {
    let grams = crate::numeric::round(mass.kg() * 1_000.0) / 1_000.0;
    if mass < Mass::ZERO { format!("{} kg of help", -grams) } else { format!("{grams} kg") }
}

/// A count with its noun.
fn counted(count: u32, noun: &str) -> String {
    if count == 1 { format!("{count} {noun}") } else { format!("{count} {noun}s") }
}

/// Things in a row: "a, b and c".
fn listed<'a>(things: impl Iterator<Item = &'a str>) -> String {
    let things: alloc::vec::Vec<&str> = things.collect();
    match things.split_last() {
        Some((last, [])) => String::from(*last),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
        None => String::new(),
    }
}

/// The same text with a capital in front.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
