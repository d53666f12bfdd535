//! An error as another language has it: what its class or its JSON carries.

use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use serde::de::{self, Deserialize, Deserializer};

use crate::error::{Allowed, Code, Error, Given};

/// An error of this library as another language has it, to be told in a sentence.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ToldError {
    /// Stable code.
    pub code: String,
    /// Path to the field, as the language spells it; absent or empty where there is none.
    #[serde(default)]
    pub field: String,
    /// The value as given.
    #[serde(default)]
    pub value: Option<ToldValue>,
    /// What would have been accepted.
    #[serde(default)]
    pub allowed: Option<ToldAllowed>,
    /// Sequence number of the event it concerns.
    #[serde(default)]
    pub event: Option<u32>,
    /// The message that some languages have beside it; the sentence is made without it.
    #[serde(default)]
    pub message: Option<String>,
}

/// A value that was refused.
#[non_exhaustive]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(
    feature = "schema",
    derive(schemars::JsonSchema),
    schemars(
        description = "A value that was refused; `NaN`, `Infinity` and `-Infinity` stand for the numbers that JSON cannot say.",
        untagged
    )
)]
pub enum ToldValue {
    /// A number.
    Number(f64),
    /// A text; `NaN`, `Infinity` and `-Infinity` stand for the numbers that JSON cannot say.
    Text(String),
}

/// What would have been accepted: a range, one of some names, or a rule in words.
#[non_exhaustive]
#[derive(Clone, Debug, Default, PartialEq, serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ToldAllowed {
    /// Lowest value allowed.
    #[serde(default)]
    pub low: Option<f64>,
    /// Highest value allowed.
    #[serde(default)]
    pub high: Option<f64>,
    /// Unit of both.
    #[serde(default)]
    pub unit: Option<String>,
    /// One of these names.
    #[serde(default)]
    pub one_of: Option<Vec<String>>,
    /// A rule in words.
    #[serde(default)]
    pub rule: Option<String>,
}

impl<'de> Deserialize<'de> for ToldValue {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<ToldValue, D::Error> {
        from.deserialize_any(NumberOrText)
    }
}

struct NumberOrText;

impl de::Visitor<'_> for NumberOrText {
    type Value = ToldValue;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a number or a text")
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<ToldValue, E> {
        Ok(ToldValue::Number(number))
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<ToldValue, E> {
        Ok(ToldValue::Number(number as f64))
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<ToldValue, E> {
        Ok(ToldValue::Number(number as f64))
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<ToldValue, E> {
        Ok(match text {
            "NaN" => ToldValue::Number(f64::NAN),
            "Infinity" => ToldValue::Number(f64::INFINITY),
            "-Infinity" => ToldValue::Number(f64::NEG_INFINITY),
            text => ToldValue::Text(text.into()),
        })
    }
}

impl ToldError {
    /// The library's own error with these parts.
    ///
    /// # Errors
    /// `unknown_name` for a code that this version does not have; `wrong_format` for what is allowed in more than one way or in
    /// none.
    pub fn to_error(&self) -> Result<Error, Error> {
        let known = Code::ALL.iter().copied().find(|code| code.as_str() == self.code);
        let unknown =
            || Error::new(Code::UnknownName, "code", self.code.as_str(), Allowed::rule("a code of an error"));
        let given = match &self.value {
            None => Given::Nothing,
            Some(ToldValue::Number(number)) => Given::Number(*number),
            Some(ToldValue::Text(text)) => Given::Text(text.clone()),
        };
        let allowed = self.allowed.as_ref().map_or(Ok(Allowed::Unstated), ToldAllowed::to_allowed)?;
        let error = Error::new(known.ok_or_else(unknown)?, "", given, allowed);
        let error = if self.field.is_empty() { error } else { error.within(&self.field) };
        Ok(self.event.map_or(error.clone(), |event| error.at_event(event)))
    }
}

impl ToldAllowed {
    fn to_allowed(&self) -> Result<Allowed, Error> {
        match self {
            ToldAllowed { low: Some(low), high: Some(high), unit, one_of: None, rule: None } => {
                let unit = Cow::Owned(unit.clone().unwrap_or_default());
                Ok(Allowed::Between { low: *low, high: *high, unit })
            }
            ToldAllowed { low: None, high: None, unit: None, one_of: Some(names), rule: None } => {
                Ok(Allowed::OneOf(names.join(", ").into()))
            }
            ToldAllowed { low: None, high: None, unit: None, one_of: None, rule: Some(rule) } => {
                Ok(Allowed::Rule(rule.clone().into()))
            }
            _ => {
                let rule = Allowed::rule("low and high, or one_of, or rule");
                Err(Error::new(Code::WrongFormat, "allowed", Given::Nothing, rule))
            }
        }
    }
}
