//! Items of lists and fields of maps, one after the other.

use alloc::collections::BTreeSet;
use alloc::format;

use serde::de::{self, DeserializeSeed, IntoDeserializer};

use super::Strict;
use super::refusal::wrong_type;
use crate::error::{Code, Error};
use crate::value::{Key, Value};

#[inline(never)]
pub(in crate::value) fn no_duplicates(fields: &[(Key, Value)]) -> Result<(), Error> {
    // Maps of the crate's types are short; the quadratic look costs less than a set of their keys.
    let mut keys = BTreeSet::new();
    for (at, (key, _)) in fields.iter().enumerate() {
        let known = if fields.len() > FEW_FIELDS {
            !keys.insert(key)
        } else {
            fields.iter().take(at).any(|(earlier, _)| earlier == key)
        };
        if known {
            return Err(Error::plain(Code::DuplicateField, "").within(key));
        }
    }
    Ok(())
}

/// Up to so many fields a look at each is cheaper than a set of them.
pub(super) const FEW_FIELDS: usize = 32;

#[cold]
#[inline(never)]
fn in_item(error: Error, at: usize) -> Error {
    error.within(&format!("[{at}]"))
}

pub(super) struct List<'a> {
    items: core::slice::Iter<'a, Value>,
    at: usize,
}

impl<'a> List<'a> {
    pub(super) fn of(items: &'a [Value]) -> Self {
        List { items: items.iter(), at: 0 }
    }

    /// How many items nobody has read.
    pub(super) fn left(&self) -> usize {
        self.items.len()
    }
}

impl<'de> de::SeqAccess<'de> for &mut List<'_> {
    type Error = Error;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Error> {
        let Some(item) = self.items.next() else { return Ok(None) };
        let at = self.at;
        self.at += 1;
        seed.deserialize(Strict(item)).map(Some).map_err(|error| in_item(error, at))
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.items.len())
    }
}

/// The value of the field whose key was read last. One copy a type of field, shared by everything that has one.
#[inline(never)]
fn field_value<'de, V: DeserializeSeed<'de>>(
    pending: Option<&(Key, Value)>,
    seed: V,
) -> Result<V::Value, Error> {
    match pending {
        Some((key, value)) => seed.deserialize(Strict(value)).map_err(|error| error.within(key)),
        None => Err(Error::plain(Code::WrongType, "")),
    }
}

pub(super) struct Fields<'a> {
    fields: core::slice::Iter<'a, (Key, Value)>,
    pending: Option<&'a (Key, Value)>,
}

/// The fields of a map in its own order, each key once.
pub(super) fn by_key(fields: &[(Key, Value)]) -> Result<Fields<'_>, Error> {
    no_duplicates(fields)?;
    Ok(Fields { fields: fields.iter(), pending: None })
}

impl<'de> de::MapAccess<'de> for Fields<'_> {
    type Error = Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Error> {
        self.pending = self.fields.next();
        match self.pending {
            Some((key, _)) => seed.deserialize((&**key).into_deserializer()).map(Some),
            None => Ok(None),
        }
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Error> {
        field_value(self.pending.take(), seed)
    }
}

/// The fields of a type with named fields. Which field a key means is found here, in one place for all types, and
/// told as a number: every type would else carry comparisons with each of its names.
pub(super) struct Named<'a> {
    fields: core::slice::Iter<'a, (Key, Value)>,
    names: &'static [&'static str],
    expected: usize,
    pending: Option<&'a (Key, Value)>,
}

impl<'a> Named<'a> {
    #[inline(never)]
    pub(super) fn new(value: &'a Value, names: &'static [&'static str]) -> Result<Self, Error> {
        let Value::Map(fields) = value else { return Err(wrong_type(value, "a map")) };
        Ok(Named { fields: fields.iter(), names, expected: 0, pending: None })
    }

    #[inline(never)]
    fn next_field(&mut self) -> Result<Option<u64>, Error> {
        self.pending = self.fields.next();
        let Some((key, _)) = self.pending else { return Ok(None) };
        let place = match self.names.get(self.expected) {
            // Written in the order of the type, as a rule.
            Some(name) if *name == *key => self.expected,
            _ => {
                place(key, self.names).ok_or_else(|| <Error as de::Error>::unknown_field(key, self.names))?
            }
        };
        self.expected = place + 1;
        Ok(Some(place as u64))
    }
}

impl<'de> de::MapAccess<'de> for Named<'_> {
    type Error = Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Error> {
        match self.next_field()? {
            Some(place) => seed.deserialize(place.into_deserializer()).map(Some),
            None => Ok(None),
        }
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Error> {
        field_value(self.pending.take(), seed)
    }
}

#[inline(never)]
pub(super) fn place(name: &str, names: &[&str]) -> Option<usize> {
    names.iter().position(|candidate| *candidate == name)
}
