//! The one error type, with stable machine codes.
//!
//! Uses nothing else of the crate. Every fallible function of the crate returns [`Error`]: which rule was
//! broken ([`Code`]), in which field, the value that was given, and what is allowed. Code and numbers are the
//! contract; the English sentence is one renderer over them (feature `english`, module `text`).

mod code;
mod given;
mod parcel;

use alloc::borrow::Cow;
use alloc::boxed::Box;
use alloc::format;
use alloc::string::String;
use core::fmt;

pub use code::Code;
#[cfg(feature = "english")]
pub(crate) use given::Shown;
pub use given::{Allowed, Given};

/// The one error of the crate.
///
/// ```
/// use bismar::{Code, quantity::Mass};
///
/// let error = Mass::from_kg(f64::NAN).unwrap_err();
/// assert_eq!(error.code(), Code::NotFinite);
/// assert_eq!(error.field(), "mass");
/// ```
#[derive(Clone, PartialEq)]
pub struct Error(Box<Detail>);

#[derive(Clone, PartialEq)]
struct Detail {
    code: Code,
    field: Cow<'static, str>,
    given: Given,
    allowed: Allowed,
    event: Option<u32>,
}

impl Error {
    /// Builds an error; apps that add rules of their own may use it too.
    #[must_use]
    pub fn new(code: Code, field: &'static str, given: impl Into<Given>, allowed: Allowed) -> Self {
        Error::build(code, field, given.into(), allowed)
    }

    // Errors are rare and made in hundreds of places: never copied into them.
    #[cold]
    #[inline(never)]
    fn build(code: Code, field: &'static str, given: Given, allowed: Allowed) -> Self {
        Error(Box::new(Detail { code, field: Cow::Borrowed(field), given, allowed, event: None }))
    }

    /// An error that needs no value and no range.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn plain(code: Code, field: &'static str) -> Self {
        Error::new(code, field, Given::Nothing, Allowed::Unstated)
    }

    /// An error for a number outside `low..=high`.
    #[must_use]
    pub fn range(
        code: Code,
        field: &'static str,
        given: impl Into<Given>,
        low: f64,
        high: f64,
        unit: &'static str,
    ) -> Self {
        Error::outside(code, field, given.into(), low, high, unit)
    }

    #[cold]
    #[inline(never)]
    fn outside(
        code: Code,
        field: &'static str,
        given: Given,
        low: f64,
        high: f64,
        unit: &'static str,
    ) -> Self {
        Error::build(code, field, given, Allowed::Between { low, high, unit: Cow::Borrowed(unit) })
    }

    /// The same error seen from one level further out: `reps` inside `sets[2]` becomes `sets[2].reps`.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn within(mut self, outer: &str) -> Self {
        let field = &self.0.field;
        self.0.field = Cow::Owned(if field.is_empty() {
            String::from(outer)
        } else if field.starts_with('[') {
            format!("{outer}{field}")
        } else {
            format!("{outer}.{field}")
        });
        self
    }

    /// The same error under another field name, for an argument that has a name of its own.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn named(mut self, field: &'static str) -> Self {
        self.0.field = Cow::Borrowed(field);
        self
    }

    /// The same error tied to the event with this sequence number.
    #[must_use]
    pub fn at_event(mut self, sequence: u32) -> Self {
        self.0.event = Some(sequence);
        self
    }

    /// The stable code.
    #[must_use]
    pub fn code(&self) -> Code {
        self.0.code
    }

    /// The field, with its path where it lies inside a larger value.
    #[must_use]
    pub fn field(&self) -> &str {
        &self.0.field
    }

    /// The value as it was given.
    #[must_use]
    pub fn given(&self) -> &Given {
        &self.0.given
    }

    /// What would have been accepted.
    #[must_use]
    pub fn allowed(&self) -> &Allowed {
        &self.0.allowed
    }

    /// The sequence number of the event it concerns, if it concerns one.
    #[must_use]
    pub fn event(&self) -> Option<u32> {
        self.0.event
    }
}

impl fmt::Display for Error {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let detail = &self.0;
        if out.alternate() {
            return parcel::write(detail, out);
        }
        if let Some(event) = detail.event {
            write!(out, "event {event}: ")?;
        }
        out.write_str(detail.code.as_str())?;
        if !detail.field.is_empty() {
            write!(out, ": {}", given::Shown(&detail.field))?;
        }
        if detail.given != Given::Nothing {
            write!(out, " = {}", detail.given)?;
        }
        if detail.allowed != Allowed::Unstated {
            write!(out, " (allowed: {})", detail.allowed)?;
        }
        Ok(())
    }
}

impl fmt::Debug for Error {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "Error({self})")
    }
}

impl core::error::Error for Error {}

#[cfg(feature = "serde")]
impl Error {
    /// Unpacks what another deserializer could carry only as text; other texts become `wrong_type`.
    pub(crate) fn unpack(message: &dyn fmt::Display) -> Error {
        let text = format!("{message:#}");
        parcel::read(&text).unwrap_or_else(|| {
            Error::new(Code::WrongType, "", Given::Nothing, Allowed::Rule(Cow::Owned(text)))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::ToString;

    #[cfg(feature = "serde")]
    #[test]
    fn an_error_survives_being_carried_as_text() {
        let errors = [
            Error::range(Code::OutOfRange, "reps", 300_u16, 0.0, 200.0, "kg"),
            Error::new(Code::NotADate, "day", "2026-02-30", Allowed::rule("YYYY-MM-DD")),
            Error::new(Code::UnknownUnit, "mass", "stone", Allowed::one_of(&["kg", "lb"])),
            Error::plain(Code::Overflow, "mass"),
        ];
        for error in errors {
            assert_eq!(Error::unpack(&error), error);
        }
    }

    #[test]
    fn a_message_cuts_what_is_long_and_moves_no_terminal() {
        let error = Error::new(Code::WrongFormat, "format", "\u{1b}[2J\u{202e}x", Allowed::Unstated)
            .within("a\u{9b}b");
        let text = error.to_string();
        assert!(!text.chars().any(|letter| letter.is_control() || letter == '\u{202e}'), "{text:?}");
        let long = Error::new(Code::WrongFormat, "format", "y".repeat(100_000), Allowed::Unstated);
        assert!(
            long.to_string().len() < 300 && matches!(long.given(), Given::Text(all) if all.len() == 100_000)
        );
    }

    #[test]
    fn the_path_grows_outwards() {
        let error = Error::range(Code::OutOfRange, "reps", 300_u16, 0.0, 200.0, "");
        let error = error.within("[2]").within("sets").at_event(7);
        assert_eq!(error.to_string(), "event 7: out_of_range: sets[2].reps = 300 (allowed: 0 to 200)");
    }
}
