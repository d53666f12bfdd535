//! What was given, and what would have been accepted.

use alloc::borrow::Cow;
use alloc::string::String;
use core::fmt;

/// The value that was given, kept as it came.
#[derive(Clone, Debug, PartialEq)]
pub enum Given {
    /// Nothing was given, or the value has no short form.
    Nothing,
    /// A number, in the unit of the field.
    Number(f64),
    /// A text.
    Text(String),
}

impl From<f64> for Given {
    fn from(value: f64) -> Self {
        Given::Number(value)
    }
}

macro_rules! given_from_integer {
    ($($integer:ty),+) => {$(
        impl From<$integer> for Given {
            fn from(value: $integer) -> Self {
                Given::Number(value as f64)
            }
        }
    )+};
}
given_from_integer!(u8, u16, u32, i32, u64, i64, usize);

impl From<&str> for Given {
    fn from(value: &str) -> Self {
        Given::Text(value.into())
    }
}

impl From<String> for Given {
    fn from(value: String) -> Self {
        Given::Text(value)
    }
}

/// What would have been accepted.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
pub enum Allowed {
    /// The code alone says it.
    Unstated,
    /// From `low` to `high`, both included, in `unit` (empty for plain numbers).
    Between {
        /// Lowest value allowed.
        low: f64,
        /// Highest value allowed.
        high: f64,
        /// Unit of both, for example `kg`.
        unit: Cow<'static, str>,
    },
    /// One of these names, separated by commas.
    OneOf(Cow<'static, str>),
    /// A rule in words, for what no range can say.
    Rule(Cow<'static, str>),
}

impl Allowed {
    /// A rule in words.
    #[must_use]
    pub const fn rule(rule: &'static str) -> Allowed {
        Allowed::Rule(Cow::Borrowed(rule))
    }

    /// One of these names.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn one_of(names: &[&str]) -> Allowed {
        Allowed::OneOf(Cow::Owned(names.join(", ")))
    }
}

impl fmt::Display for Given {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Given::Nothing => Ok(()),
            Given::Number(number) => write!(out, "{number}"),
            Given::Text(text) => write!(out, "\"{}\"", Shown(text)),
        }
    }
}

/// The most characters of a given text that a message shows; the error itself keeps all of it.
const MOST_SHOWN: usize = 120;

/// A text from outside as a message shows it: cut where it is long, and nothing in it that a terminal would obey or that
/// would turn the message around.
pub(crate) struct Shown<'a>(pub(crate) &'a str);

impl fmt::Display for Shown<'_> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        for letter in self.0.chars().take(MOST_SHOWN) {
            if letter.is_control()
                || matches!(letter, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
            {
                write!(out, "{}", letter.escape_unicode())?;
            } else {
                fmt::Write::write_char(out, letter)?;
            }
        }
        match self.0.chars().count() {
            count if count > MOST_SHOWN => write!(out, "\u{2026} ({count} characters)"),
            _ => Ok(()),
        }
    }
}

impl fmt::Display for Allowed {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Allowed::Unstated => Ok(()),
            Allowed::Between { low, high, unit } if unit.is_empty() => write!(out, "{low} to {high}"),
            Allowed::Between { low, high, unit } => write!(out, "{low} to {high} {unit}"),
            // Names that somebody chose may be among them.
            Allowed::OneOf(text) | Allowed::Rule(text) => out.write_str(text),
        }
    }
}
