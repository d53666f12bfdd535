//! The strict reader: a serde deserializer over [`Value`] whose error is the crate's own.

mod any;
mod fields;
mod refusal;
mod variant;

use serde::de::{self, Visitor};

use self::fields::{List, Named, by_key};
use self::variant::Variant;
use super::Value;
use crate::error::{Allowed, Code, Error};

pub(super) use self::fields::no_duplicates;
pub(super) use self::refusal::wrong_type;

/// Reads one value.
pub(super) struct Strict<'a>(pub(super) &'a Value);

/// Whole numbers that `f64` carries exactly.
pub(super) const EXACT_WHOLE: f64 = 9_007_199_254_740_992.0;

fn whole(number: f64) -> Option<i64> {
    let fits = number.abs() <= EXACT_WHOLE && crate::numeric::is_whole(number);
    fits.then_some(number as i64)
}

impl<'de> Strict<'_> {
    fn integer<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        let Value::Number(number) = *self.0 else { return Err(wrong_type(self.0, "a whole number")) };
        match whole(number) {
            Some(integer) if integer >= 0 => visitor.visit_u64(integer as u64),
            Some(integer) => visitor.visit_i64(integer),
            None => Err(Error::new(Code::NotWhole, "", number, Allowed::rule("a whole number"))),
        }
    }

    fn text<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.0 {
            Value::Text(text) => visitor.visit_str(text),
            other => Err(wrong_type(other, "a text")),
        }
    }
}

impl<'de> de::Deserializer<'de> for Strict<'_> {
    type Error = Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.0 {
            Value::Null => visitor.visit_unit(),
            Value::Bool(flag) => visitor.visit_bool(*flag),
            Value::Number(number) => visitor.visit_f64(*number),
            Value::Text(text) => visitor.visit_str(text),
            Value::List(_) => self.deserialize_seq(visitor),
            Value::Map(_) => self.deserialize_map(visitor),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.0 {
            Value::Bool(flag) => visitor.visit_bool(*flag),
            other => Err(wrong_type(other, "true or false")),
        }
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.0 {
            Value::Number(number) => visitor.visit_f64(*number),
            other => Err(wrong_type(other, "a number")),
        }
    }

    fn deserialize_f32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.deserialize_f64(visitor)
    }

    fn deserialize_i8<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_i16<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_i32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_i64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_u8<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_u16<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_u64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.integer(visitor)
    }

    fn deserialize_char<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.text(visitor)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.text(visitor)
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.text(visitor)
    }

    fn deserialize_bytes<V: Visitor<'de>>(self, _visitor: V) -> Result<V::Value, Error> {
        Err(wrong_type(self.0, "a type without bytes"))
    }

    fn deserialize_byte_buf<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.deserialize_bytes(visitor)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.0 {
            Value::Null => Err(wrong_type(self.0, "a value, or leave the field out")),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_unit<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        match self.0 {
            Value::Null => visitor.visit_unit(),
            other => Err(wrong_type(other, "nothing")),
        }
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Error> {
        self.deserialize_unit(visitor)
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Error> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        let Value::List(items) = self.0 else { return Err(wrong_type(self.0, "a list")) };
        let mut list = List::of(items);
        let value = visitor.visit_seq(&mut list)?;
        match list.left() {
            0 => Ok(value),
            _ => Err(Error::new(Code::WrongType, "", items.len(), Allowed::rule("a shorter list"))),
        }
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, _len: usize, visitor: V) -> Result<V::Value, Error> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        _len: usize,
        visitor: V,
    ) -> Result<V::Value, Error> {
        self.deserialize_seq(visitor)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        let Value::Map(fields) = self.0 else { return Err(wrong_type(self.0, "a map")) };
        visitor.visit_map(by_key(fields)?)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        visitor.visit_map(Named::new(self.0, names)?)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _name: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        visitor.visit_enum(Variant::new(self.0, names)?)
    }

    fn deserialize_identifier<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        self.text(visitor)
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        visitor.visit_unit()
    }
}

/// Stands for an argument that was not given: an `Option` reads as none, everything else is missing.
pub(super) struct Absent(pub(super) &'static str);

impl<'de> de::Deserializer<'de> for Absent {
    type Error = Error;

    fn deserialize_any<V: Visitor<'de>>(self, _visitor: V) -> Result<V::Value, Error> {
        Err(Error::plain(Code::MissingField, self.0))
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Error> {
        visitor.visit_none()
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 u8 u16 u32 u64 f32 f64 char str string bytes byte_buf unit unit_struct
        newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}
