//! Short names that tie a log, a plan and the equipment together.

use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;
use core::cmp::Ordering;
use core::fmt;
use core::hash::{Hash, Hasher};

use crate::canonical::{Canonical, put_text};
use crate::error::{Allowed, Code, Error};

/// A name chosen by the host: of a lift, a bar, a region, a criterion, a person. 1 to 40 characters, each to be seen:
/// no control character, none that turns the text around, none without width; without space at either end.
///
/// ```
/// use bismar::quantity::Name;
///
/// assert_eq!(Name::new("left knee")?.as_str(), "left knee");
/// assert!(Name::new("").is_err());
/// assert!(Name::new("left\u{202e} knee").is_err(), "it would turn what follows around");
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(from = "alloc::string::String", into = "alloc::string::String", extend("minLength" = 1, "maxLength" = 40)))]
pub struct Name(Text);

/// Longest text kept in place, in bytes: with its length no larger than a pointer, a length and a capacity.
const IN_PLACE: usize = 22;

/// A log of decades holds the same few names hundreds of thousands of times: short ones lie in place, so that
/// comparing them follows no pointer and copying them asks for no memory.
#[derive(Clone, PartialEq, Eq)]
enum Text {
    /// Length, and the bytes padded with zeros.
    InPlace(u8, [u8; IN_PLACE]),
    /// Longer than that, always.
    Apart(Box<str>),
}

impl Text {
    fn of(text: &str) -> Text {
        let mut bytes = [0; IN_PLACE];
        match (bytes.get_mut(..text.len()), u8::try_from(text.len())) {
            (Some(place), Ok(length)) => {
                place.copy_from_slice(text.as_bytes());
                Text::InPlace(length, bytes)
            }
            _ => Text::Apart(text.into()),
        }
    }

    fn as_bytes(&self) -> &[u8] {
        match self {
            Text::InPlace(length, bytes) => bytes.get(..usize::from(*length)).unwrap_or_default(),
            Text::Apart(text) => text.as_bytes(),
        }
    }

    fn as_str(&self) -> &str {
        match self {
            // Made from a text, so it is one.
            Text::InPlace(length, bytes) => bytes
                .get(..usize::from(*length))
                .and_then(|text| str::from_utf8(text).ok())
                .unwrap_or_default(),
            Text::Apart(text) => text,
        }
    }
}

/// What nobody can see in a text, and what changes how the text around it is shown: control characters, the code points
/// that Unicode 16.0 calls default ignorable (zero widths, joiners, direction marks, embeddings and isolates, fillers,
/// variation selectors, tags), line and paragraph separators, the marks around annotations, and the blank of Braille. Two
/// names that look the same would else be two.
const UNSEEN: [(char, char); 18] = [
    ('\u{ad}', '\u{ad}'),
    ('\u{34f}', '\u{34f}'),
    ('\u{61c}', '\u{61c}'),
    ('\u{115f}', '\u{1160}'),
    ('\u{17b4}', '\u{17b5}'),
    ('\u{180b}', '\u{180f}'),
    ('\u{200b}', '\u{200f}'),
    ('\u{2028}', '\u{202e}'),
    ('\u{2060}', '\u{206f}'),
    ('\u{2800}', '\u{2800}'),
    ('\u{3164}', '\u{3164}'),
    ('\u{fe00}', '\u{fe0f}'),
    ('\u{feff}', '\u{feff}'),
    ('\u{ffa0}', '\u{ffa0}'),
    ('\u{fff0}', '\u{fffb}'),
    ('\u{1bca0}', '\u{1bca3}'),
    ('\u{1d173}', '\u{1d17a}'),
    ('\u{e0000}', '\u{e0fff}'),
];

/// Whether a character cannot be seen by itself, or moves what is around it.
pub(crate) fn unseen(letter: char) -> bool {
    letter.is_control() || UNSEEN.iter().any(|(from, to)| (*from..=*to).contains(&letter))
}

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
        if fits && text.trim() == text && !text.chars().any(unseen) {
            return Ok(Name(Text::of(text)));
        }
        let rule = "1 to 40 characters, each to be seen, no space at either end";
        let shown: String = text.chars().take(Name::LONGEST).collect();
        Err(Error::new(Code::NotAName, "name", shown, Allowed::rule(rule)))
    }

    /// The text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        self.0.as_str()
    }
}

impl Canonical for Name {
    fn put(&self, out: &mut Vec<u8>) {
        // The bytes of its text, which is not looked through again for each of the names of a log.
        put_text(self.0.as_bytes(), out);
    }
}

impl fmt::Debug for Name {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.debug_tuple("Name").field(&self.as_str()).finish()
    }
}

impl PartialOrd for Name {
    fn partial_cmp(&self, other: &Name) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Name {
    fn cmp(&self, other: &Name) -> Ordering {
        self.as_str().cmp(other.as_str())
    }
}

impl Hash for Name {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.as_str().hash(state);
    }
}

impl fmt::Display for Name {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(self.as_str())
    }
}

impl core::str::FromStr for Name {
    type Err = Error;

    fn from_str(text: &str) -> Result<Name, Error> {
        Name::new(text)
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for Name {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.as_str())
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Name {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Name, D::Error> {
        Name::new(&String::deserialize(from)?).map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may panic")]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_seen_or_turns_the_text_is_no_name() {
        for letter in [
            '\u{202a}',
            '\u{202e}',
            '\u{2066}',
            '\u{2069}',
            '\u{200e}',
            '\u{61c}',
            '\u{200b}',
            '\u{200d}',
            '\u{2060}',
            '\u{feff}',
            '\u{ad}',
            '\u{3164}',
            '\u{115f}',
            '\u{2800}',
            '\u{e0041}',
            '\u{fe0f}',
            '\u{2028}',
            '\u{1b}',
            '\u{9b}',
            '\u{0}',
        ] {
            for text in
                [alloc::format!("a{letter}b"), alloc::format!("{letter}"), alloc::format!("a{letter}")]
            {
                assert_eq!(Name::new(&text).unwrap_err().code(), Code::NotAName, "{text:?}");
            }
        }
        // Every script that people write names in, marks that combine, and signs of one piece stay.
        for text in [
            "Zo\u{eb}",
            "Jose\u{301}",
            "\u{5e0}\u{5d5}\u{5e8}",
            "\u{62f}\u{627}\u{631}\u{627}",
            "\u{91c}\u{93f}\u{928}",
            "\u{674e}",
            "\u{1f3cb}",
            "a b",
        ] {
            assert_eq!(Name::new(text).unwrap().as_str(), text);
        }
    }

    #[test]
    fn short_and_long_names_are_kept_whole_and_ordered_as_text() {
        let texts = ["a", "knee", "a name of 22 bytes: 22", "a name of 22 bytes: 223", "ü", "a\u{301}b", "Ω"];
        assert_eq!(texts[2].len(), IN_PLACE);
        let long = "forty characters and not one of them les";
        for text in texts.iter().chain([&long]) {
            let name = Name::new(text).unwrap();
            assert_eq!(name.as_str(), *text);
            assert_eq!(alloc::format!("{name:?}"), alloc::format!("Name({text:?})"));
            for other in texts {
                let other = Name::new(other).unwrap();
                assert_eq!(name == other, name.as_str() == other.as_str());
                assert_eq!(name.cmp(&other), name.as_str().cmp(other.as_str()));
            }
        }
        assert_eq!(core::mem::size_of::<Name>(), core::mem::size_of::<String>());
    }
}
