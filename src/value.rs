//! A plain tree of values, and its strict reader and writer.
//!
//! Uses `error` and `canonical`. What arrives from outside (JSON text, a JavaScript object, an event of a newer version) is
//! first a [`Value`]; reading a type from it accepts nothing but what the type names: no unknown field, no
//! null, no text for a number. The error carries the code of the rule that was broken and the path to it.

#[cfg(feature = "serde")]
mod arguments;
#[cfg(feature = "serde")]
mod read;
#[cfg(feature = "serde")]
mod write;

use alloc::borrow::Cow;
#[cfg(feature = "json")]
use alloc::string::String;
use alloc::vec::Vec;

#[cfg(feature = "serde")]
pub use arguments::Arguments;

#[cfg(feature = "serde")]
use crate::error::Error;

/// The name of a field; most are known when the program is written, so that nothing is copied for them.
pub type Key = Cow<'static, str>;

/// A tree of plain values, as JSON knows them. Numbers are finite `f64`; fields keep their order.
///
/// ```
/// # #[cfg(feature = "serde")] {
/// use bismar::{Code, quantity::Mass, value::Value};
///
/// let value = Value::Map(vec![("kg".into(), Value::Number(62.5))]);
/// assert_eq!(value.read::<Mass>()?, Mass::from_kg(62.5)?);
///
/// let wrong = Value::Map(vec![("stone".into(), Value::Number(9.0))]);
/// assert_eq!(wrong.read::<Mass>().unwrap_err().code(), Code::UnknownVariant);
/// # }
/// # Ok::<(), bismar::Error>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Value {
    /// Nothing.
    #[default]
    Null,
    /// True or false.
    Bool(bool),
    /// A finite number.
    Number(f64),
    /// A text.
    Text(Cow<'static, str>),
    /// A list.
    List(Vec<Value>),
    /// Named fields in the order given.
    Map(Vec<(Key, Value)>),
}

impl crate::canonical::Canonical for Value {
    fn put(&self, out: &mut Vec<u8>) {
        self.append_bytes(out);
    }
}

impl Value {
    /// Reads a type, strictly.
    ///
    /// # Errors
    /// The code of the rule that was broken, with the path to the field.
    // One copy a type, shared by all functions that take it.
    #[cfg(feature = "serde")]
    #[inline(never)]
    pub fn read<T: serde::de::DeserializeOwned>(&self) -> Result<T, Error> {
        T::deserialize(read::Strict(self))
    }

    /// Writes a type as a tree.
    ///
    /// # Errors
    /// `not_finite` if a number in it is NaN or infinite; `overflow` if a whole number is larger than `f64` carries
    /// exactly.
    #[cfg(feature = "serde")]
    #[inline(never)]
    pub fn write<T: serde::Serialize + ?Sized>(value: &T) -> Result<Value, Error> {
        value.serialize(write::Writer)
    }

    /// The field of that name, if this is a map that has it.
    #[must_use]
    pub fn field(&self, name: &str) -> Option<&Value> {
        match self {
            Value::Map(fields) => fields.iter().find(|(key, _)| key == name).map(|(_, value)| value),
            _ => None,
        }
    }

    /// Canonical bytes for digests: a tag byte a value, numbers as the bits of `f64` little-endian, lengths as
    /// `u32` little-endian, fields in their order.
    #[must_use]
    pub fn canonical_bytes(&self) -> Vec<u8> {
        let mut bytes = Vec::new();
        self.append_bytes(&mut bytes);
        bytes
    }

    fn append_bytes(&self, bytes: &mut Vec<u8>) {
        let text = |bytes: &mut Vec<u8>, text: &str| {
            bytes.extend((text.len() as u32).to_le_bytes());
            bytes.extend(text.as_bytes());
        };
        match self {
            Value::Null => bytes.push(0),
            Value::Bool(flag) => bytes.extend([1, u8::from(*flag)]),
            Value::Number(number) => {
                bytes.push(2);
                bytes.extend(crate::numeric::tidy(*number).to_bits().to_le_bytes());
            }
            Value::Text(content) => {
                bytes.push(3);
                text(bytes, content);
            }
            Value::List(items) => {
                bytes.push(4);
                bytes.extend((items.len() as u32).to_le_bytes());
                items.iter().for_each(|item| item.append_bytes(bytes));
            }
            Value::Map(fields) => {
                bytes.push(5);
                bytes.extend((fields.len() as u32).to_le_bytes());
                for (key, value) in fields {
                    text(bytes, key);
                    value.append_bytes(bytes);
                }
            }
        }
    }

    /// Parses JSON text. Numbers come out correctly rounded; a field given twice is an error.
    ///
    /// # Errors
    /// `not_json`, `duplicate_field`.
    #[cfg(feature = "json")]
    pub fn from_json(text: &str) -> Result<Value, Error> {
        serde_json::from_str(text).map_err(|error| {
            let error = Error::unpack(&error);
            if error.code() == crate::Code::WrongType {
                Error::new(crate::Code::NotJson, "", crate::error::Given::Nothing, error.allowed().clone())
            } else {
                error
            }
        })
    }

    /// Writes compact JSON text.
    #[cfg(feature = "json")]
    #[must_use]
    pub fn to_json(&self) -> String {
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Writes indented JSON text.
    #[cfg(feature = "json")]
    #[must_use]
    pub fn to_json_pretty(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}
