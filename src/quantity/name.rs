//! Short names that tie a log, a plan and the equipment together.

use alloc::string::String;
use core::fmt;

use crate::error::{Allowed, Code, Error};

/// A name chosen by the host: of a lift, a bar, a region, a criterion, a person. 1 to 40 characters, without
/// control characters and without space at either end.
///
/// ```
/// use bismar::quantity::Name;
///
/// assert_eq!(Name::new("left knee")?.as_str(), "left knee");
/// assert!(Name::new("").is_err());
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(transparent))]
pub struct Name(String);

impl Name {
    /// The most characters a name may have.
    pub const LONGEST: usize = 40;

    /// A name.
    ///
    /// # Errors
    /// `not_a_name`.
    pub fn new(text: &str) -> Result<Name, Error> {
        let length = text.chars().count();
        let fits = (1..=Name::LONGEST).contains(&length);
        if fits && text.trim() == text && !text.chars().any(char::is_control) {
            return Ok(Name(text.into()));
        }
        let rule = "1 to 40 characters, none a control character, no space at either end";
        let shown: String = text.chars().take(Name::LONGEST).collect();
        Err(Error::new(Code::NotAName, "name", shown, Allowed::rule(rule)))
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Name {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.0)
    }
}

impl core::str::FromStr for Name {
    type Err = Error;

    fn from_str(text: &str) -> Result<Name, Error> {
        Name::new(text)
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Name {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Name, D::Error> {
        Name::new(&String::deserialize(from)?).map_err(serde::de::Error::custom)
    }
}
