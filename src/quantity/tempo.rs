//! How long a repetition takes: down, held, up.

use derive_setters::Setters;

use crate::canonical::canonical_fields;
use crate::error::{Allowed, Code, Error};

/// Seconds down, hold and up.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Setters)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(deny_unknown_fields))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[setters(prefix = "with_", no_std)]
#[non_exhaustive]
pub struct Tempo {
    /// Seconds down.
    pub down: u8,
    /// Seconds of hold.
    pub hold: u8,
    /// Seconds up.
    pub up: u8,
}

impl Tempo {
    /// So many seconds down, held and up.
    #[must_use]
    pub fn new(down: u8, hold: u8, up: u8) -> Tempo {
        Tempo { down, hold, up }
    }
}

canonical_fields!(Tempo: down, hold, up);

impl core::str::FromStr for Tempo {
    type Err = Error;

    /// Reads it as it is told: `3 s down, 1 s hold, 1 s up`, or without the hold.
    fn from_str(text: &str) -> Result<Tempo, Error> {
        let refuse = || {
            let rule = Allowed::rule("3 s down, 1 s hold, 1 s up; or 3 s down, 1 s up");
            Error::new(Code::WrongFormat, "tempo", text, rule)
        };
        let part = |said: Option<&str>, word: &str| {
            let number = said?.trim().strip_suffix(word)?.trim_end().strip_suffix('s')?.trim_end();
            let digits = !number.is_empty() && number.bytes().all(|byte| byte.is_ascii_digit());
            digits.then(|| number.parse::<u8>().ok())?
        };
        let mut parts = text.split(',').rev();
        let up = part(parts.next(), "up").ok_or_else(refuse)?;
        let mut last = parts.next();
        let hold = part(last, "hold");
        if hold.is_some() {
            last = parts.next();
        }
        let down = part(last, "down").filter(|_| parts.next().is_none()).ok_or_else(refuse)?;
        Ok(Tempo { down, hold: hold.unwrap_or(0), up })
    }
}
