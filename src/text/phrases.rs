//! Phrases by key: English as data, and a translation in its place.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::words::Words;
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::reason::Reason;

/// One list of phrases: a key, and the English with names in braces where a value stands.
pub(super) type Phrases = &'static [(&'static str, &'static str)];

/// Every list of phrases.
const LISTS: &[Phrases] = super::answers::LISTS;

/// Key of a caution.
const CAUTION: &str = "caution.";
/// Key of a reason.
const REASON: &str = "reason.";
/// Key of what an error code means.
pub(super) const ERROR: &str = "error.";

/// The English of a key of that list.
pub(super) fn english_in(list: Phrases, key: &str) -> &'static str {
    list.iter().find(|(known, _)| *known == key).map_or("", |(_, text)| text)
}

fn english(key: &str) -> Option<&'static str> {
    let listed = LISTS.iter().flat_map(|list| list.iter()).find(|(known, _)| *known == key);
    let caution = || {
        let code = key.strip_prefix(CAUTION)?;
        Caution::ALL.iter().find(|caution| caution.as_str() == code).map(|caution| caution.meaning())
    };
    let error = || {
        let code = key.strip_prefix(ERROR)?;
        Code::ALL.iter().find(|known| known.as_str() == code).map(|known| known.meaning())
    };
    listed.map(|(_, text)| *text).or_else(caution).or_else(error)
}

/// What a reason means, with the names of its values in braces: its English sentences are made of more than one phrase.
fn reason(meaning: &str, values: &[&str]) -> String {
    let named: Vec<String> = values.iter().map(|value| alloc::format!("{{{value}}}")).collect();
    let meaning = meaning.trim();
    if named.is_empty() { meaning.to_string() } else { alloc::format!("{meaning} [{}]", named.join(", ")) }
}

/// What a key asks a translation to say.
fn to_translate(key: &str) -> Option<String> {
    let of_reason = || {
        let code = key.strip_prefix(REASON)?;
        let (_, meaning, values) = Reason::MEANINGS.iter().find(|(known, ..)| *known == code)?;
        Some(reason(meaning, values))
    };
    english(key).map(String::from).or_else(of_reason)
}

/// Every phrase with its key: what a translation has to say. Names in braces stand for values and are kept.
///
/// ```
/// let phrases = bismar::text::phrases();
/// assert!(phrases.iter().any(|(key, text)| key == "caution.holding_is_good" && text.ends_with('.')));
/// ```
#[must_use]
pub fn phrases() -> Vec<(String, String)> {
    let listed = LISTS
        .iter()
        .flat_map(|list| list.iter())
        .map(|(key, text)| ((*key).to_string(), (*text).to_string()));
    let keyed = |kind: &str, code: &str, text: &str| (alloc::format!("{kind}{code}"), text.to_string());
    let cautions = Caution::ALL.iter().map(|each| keyed(CAUTION, each.as_str(), each.meaning()));
    let errors = Code::ALL.iter().map(|each| keyed(ERROR, each.as_str(), each.meaning()));
    let reasons =
        Reason::MEANINGS.iter().map(|(code, meaning, values)| keyed(REASON, code, &reason(meaning, values)));
    listed.chain(cautions).chain(errors).chain(reasons).collect()
}

/// A phrase of [`phrases`] with its key.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Phrase {
    /// Its key.
    pub key: String,
    /// The English; names in braces stand for values.
    pub text: String,
}

/// Phrases in another language, or a host's own words. What it does not say is said in English.
///
/// ```
/// use bismar::{caution::Caution, text::{Translation, Words}};
///
/// let own = Translation::new([("caution.holding_is_good", "Halten ist gut.")])?;
/// assert_eq!(Words::plain().translated(&own).caution(Caution::HoldingIsGood), "Halten ist gut.");
/// assert!(own.missing().iter().any(|key| key == "caution.examines_nobody"));
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[cfg_attr(
    feature = "serde",
    derive(serde::Deserialize),
    serde(try_from = "alloc::collections::BTreeMap<String, String>")
)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema),
    schemars(into = "alloc::collections::BTreeMap<String, String>")
)]
pub struct Translation {
    texts: Vec<(String, String)>,
}

impl Translation {
    /// Phrases by key.
    ///
    /// # Errors
    /// `unknown_name` for a key that no phrase has; `wrong_format` where a value that the English names is left out, or
    /// one is named that it does not have.
    pub fn new<'a>(texts: impl IntoIterator<Item = (&'a str, &'a str)>) -> Result<Translation, Error> {
        let mut kept = Vec::new();
        for (key, text) in texts {
            let unknown = || Error::new(Code::UnknownName, "key", key, Allowed::rule("a key of phrases()"));
            let english = to_translate(key).ok_or_else(unknown)?;
            if values(&english) != values(text) {
                return Err(
                    Error::new(Code::WrongFormat, "text", text, Allowed::Rule(english.into())).within(key)
                );
            }
            kept.push((key.to_string(), text.to_string()));
        }
        Ok(Translation { texts: kept })
    }

    /// Keys of the phrases that it does not say.
    #[must_use]
    pub fn missing(&self) -> Vec<String> {
        phrases().into_iter().map(|(key, _)| key).filter(|key| self.text(key).is_none()).collect()
    }

    fn text(&self, key: &str) -> Option<&str> {
        self.texts.iter().find(|(known, _)| known == key).map(|(_, text)| text.as_str())
    }
}

#[cfg(feature = "serde")]
impl TryFrom<alloc::collections::BTreeMap<String, String>> for Translation {
    type Error = Error;

    fn try_from(texts: alloc::collections::BTreeMap<String, String>) -> Result<Translation, Error> {
        Translation::new(texts.iter().map(|(key, text)| (key.as_str(), text.as_str())))
    }
}

/// The values that a phrase names, in order of their names.
fn values(phrase: &str) -> Vec<&str> {
    let mut names: Vec<&str> = phrase.split('{').skip(1).filter_map(|rest| rest.split('}').next()).collect();
    crate::numeric::sort::sort(&mut names);
    names.dedup();
    names
}

impl<'a> Words<'a> {
    /// The phrase with that key, its values filled in.
    pub(super) fn say(&self, key: &str, with: &[(&str, String)]) -> String {
        let own = self.translation().and_then(|own| own.text(key));
        let mut said = String::new();
        let mut rest = own.or_else(|| english(key)).unwrap_or_default();
        while let Some((before, after)) = rest.split_once('{') {
            said.push_str(before);
            let Some((name, after)) = after.split_once('}') else { break };
            let value = with.iter().find(|(known, _)| *known == name);
            // A note may hold what a terminal would obey: it is written out, a new line apart.
            for letter in value.map_or("", |(_, value)| value.as_str()).chars() {
                match letter {
                    letter if letter.is_control() && letter != '\n' => said.extend(letter.escape_unicode()),
                    letter => said.push(letter),
                }
            }
            rest = after;
        }
        said.push_str(rest);
        said
    }

    /// Whether the translation says that phrase.
    pub(super) fn translates(&self, key: &str) -> bool {
        self.translation().is_some_and(|own| own.text(key).is_some())
    }

    /// A caution as a sentence.
    #[must_use]
    pub fn caution(&self, caution: Caution) -> String {
        self.say(&alloc::format!("{CAUTION}{}", caution.as_str()), &[])
    }
}
