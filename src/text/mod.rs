//! English for errors, reasons, cautions and whole sessions (feature `english`).
//!
//! Uses every module above. One renderer over codes and numbers; an app that speaks another language writes its own over
//! the same values. Every code has a sentence: a missing one does not compile.
//!
//! [`Words`] says in which unit and with whose names; the functions beside it are the same in kilograms and with ids.
//!
//! | to be told | by |
//! |---|---|
//! | a whole session, a stop first | [`Words::session`]: a [`Sheet`] |
//! | the same, with the sentence of each reason, caution and change | [`Words::said`]: a [`SaidSession`] |
//! | any door of the log | [`Show::show`]; by name, with the unit, `OF_WORDS` (feature `serde`) |
//! | one lift in a line | [`Words::lift_line`], [`Words::one_line`] |
//! | how its load is made | [`Words::loading`], [`Words::warm_up`] |
//! | why, and what would change it | [`Words::reason_for`], [`Words::changes`], [`Words::step`] |
//! | a mass, a day, a place, a disc | [`Words::mass`], [`day()`], [`Words::place`], [`face`] |
//! | what went wrong | [`error()`] |

mod answers;
mod change;
mod day;
#[cfg(feature = "serde")]
mod doors;
mod error;
#[cfg(feature = "rehearsal")]
mod finding;
mod loading;
mod mass;
mod missing;
mod phrases;
mod place;
mod reason;
mod said;
mod session;
mod sheet;
mod sign;
mod stop;
#[cfg(feature = "serde")]
mod told_error;
mod words;

use alloc::format;
use alloc::string::String;

pub use answers::Show;
pub use day::{day, tempo};
#[cfg(feature = "serde")]
pub use doors::OF_WORDS;
#[cfg(feature = "rehearsal")]
pub use finding::{finding, found, severity};
pub use mass::face;
pub use phrases::{Phrase, Translation, phrases};
pub use said::{SaidLift, SaidSession};
pub use session::{day_class, effort, status, verdict};
pub use sheet::{LiftSheet, Sheet};
pub use sign::{ask, stop_sign};
#[cfg(feature = "serde")]
pub use told_error::{ToldAllowed, ToldError, ToldValue};
pub use words::Words;

use crate::caution::Caution;
use crate::error::Error;
use crate::gate::Missing;
use crate::prescription::{Change, LiftToday};
use crate::quantity::Mass;
use crate::reason::Reason;

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
/// The entry of the log that it concerns is named by its number, since nothing else finds it again.
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
    Words::plain().error(error)
}

/// [`Words::mass`] in kilograms.
#[must_use]
pub fn mass(mass: Mass) -> String {
    Words::plain().mass(mass)
}

/// [`Words::reason`] in kilograms and with ids.
#[must_use]
pub fn reason(reason: &Reason) -> String {
    Words::plain().reason(reason)
}

/// [`Words::change`] in kilograms and with ids.
#[must_use]
pub fn change(change: &Change) -> String {
    Words::plain().change(change)
}

/// [`Words::missing`] with ids.
#[must_use]
pub fn missing(missing: &Missing) -> String {
    Words::plain().missing(missing)
}

/// [`Words::lift_line`] in kilograms and with ids.
#[must_use]
pub fn lift_line(lift: &LiftToday) -> String {
    Words::plain().lift_line(lift)
}

/// [`Words::one_line`] in kilograms and with ids.
#[must_use]
pub fn one_line(lift: &LiftToday) -> String {
    Words::plain().one_line(lift)
}

/// A count with its noun.
fn counted(count: u32, noun: &str) -> String {
    if count == 1 { format!("{count} {noun}") } else { format!("{count} {noun}s") }
}

/// The same text with a capital in front.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}
