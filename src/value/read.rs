//! The strict reader: a serde deserializer over [`Value`] whose error is the crate's own.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt::Display;

use serde::de::{self, DeserializeSeed, IntoDeserializer, Visitor};

use super::{Key, Value};
use crate::error::{Allowed, Code, Error, Given};

impl de::Error for Error {
    fn custom<T: Display>(message: T) -> Self {
        Error::unpack(&message)
    }

    #[cold]
    #[inline(never)]
    fn unknown_field(field: &str, expected: &'static [&'static str]) -> Self {
        Error::new(Code::UnknownField, "", Given::Nothing, Allowed::one_of(expected)).within(field)
    }

    #[cold]
    #[inline(never)]
    fn missing_field(field: &'static str) -> Self {
        Error::plain(Code::MissingField, field)
    }

    #[cold]
    #[inline(never)]
    fn unknown_variant(variant: &str, expected: &'static [&'static str]) -> Self {
        Error::new(Code::UnknownVariant, "", variant, Allowed::one_of(expected))
    }

    #[cold]
    #[inline(never)]
    fn duplicate_field(field: &'static str) -> Self {
        Error::plain(Code::DuplicateField, field)
    }

    fn invalid_type(unexpected: de::Unexpected<'_>, expected: &dyn de::Expected) -> Self {
        mismatch(unexpected, expected)
    }

    fn invalid_value(unexpected: de::Unexpected<'_>, expected: &dyn de::Expected) -> Self {
        mismatch(unexpected, expected)
    }
}

#[cold]
#[inline(never)]
fn mismatch(unexpected: de::Unexpected<'_>, expected: &dyn de::Expected) -> Error {
    let given = match unexpected {
        de::Unexpected::Unsigned(number) => Given::from(number),
        de::Unexpected::Signed(number) => Given::from(number),
        de::Unexpected::Float(number) => Given::Number(number),
        de::Unexpected::Str(text) => Given::from(text),
        other => Given::Text(format!("{other}")),
    };
    Error::new(Code::WrongType, "", given, Allowed::Rule(format!("{expected}").into()))
}

#[cold]
#[inline(never)]
fn kind(value: &Value) -> Given {
    match value {
        Value::Null => Given::Text("null".into()),
        Value::Bool(flag) => Given::Text(format!("{flag}")),
        Value::Number(number) => Given::Number(*number),
        Value::Text(text) => Given::Text(text.clone().into_owned()),
        Value::List(_) => Given::Text("a list".into()),
        Value::Map(_) => Given::Text("a map".into()),
    }
}

#[cold]
#[inline(never)]
pub(super) fn wrong_type(value: &Value, wanted: &'static str) -> Error {
    if *value == Value::Null {
        return Error::new(Code::NullNotAllowed, "", Given::Nothing, Allowed::rule(wanted));
    }
    Error::new(Code::WrongType, "", kind(value), Allowed::rule(wanted))
}

#[inline(never)]
pub(super) fn no_duplicates(fields: &[(Key, Value)]) -> Result<(), Error> {
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
const FEW_FIELDS: usize = 32;

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
        let mut list = List { items: items.iter(), at: 0 };
        let value = visitor.visit_seq(&mut list)?;
        match list.items.len() {
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
        no_duplicates(fields)?;
        visitor.visit_map(Fields { fields: fields.iter(), pending: None })
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

#[cold]
#[inline(never)]
fn in_item(error: Error, at: usize) -> Error {
    error.within(&format!("[{at}]"))
}

struct List<'a> {
    items: core::slice::Iter<'a, Value>,
    at: usize,
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

struct Fields<'a> {
    fields: core::slice::Iter<'a, (Key, Value)>,
    pending: Option<&'a (Key, Value)>,
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
struct Named<'a> {
    fields: core::slice::Iter<'a, (Key, Value)>,
    names: &'static [&'static str],
    expected: usize,
    pending: Option<&'a (Key, Value)>,
}

impl<'a> Named<'a> {
    #[inline(never)]
    fn new(value: &'a Value, names: &'static [&'static str]) -> Result<Self, Error> {
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

#[inline(never)]
fn place(name: &str, names: &[&str]) -> Option<usize> {
    names.iter().position(|candidate| *candidate == name)
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

struct Variant<'a> {
    name: &'a str,
    place: u64,
    body: Option<&'a Value>,
}

impl<'a, 'de> de::EnumAccess<'de> for Variant<'a> {
    type Error = Error;
    type Variant = Variant<'a>;

    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, Self::Variant), Error> {
        Ok((seed.deserialize(self.place.into_deserializer())?, self))
    }
}

impl<'a> Variant<'a> {
    #[inline(never)]
    fn new(value: &'a Value, names: &'static [&'static str]) -> Result<Self, Error> {
        let (name, body) = match value {
            Value::Text(name) => (&**name, None),
            Value::Map(fields) => match fields.as_slice() {
                [(name, body)] => (&**name, Some(body)),
                _ => {
                    return Err(Error::new(
                        Code::WrongType,
                        "",
                        "a map",
                        Allowed::rule("exactly one named kind"),
                    ));
                }
            },
            other => return Err(wrong_type(other, "a name, or a map with one named kind")),
        };
        match place(name, names) {
            Some(place) => Ok(Variant { name, place: place as u64, body }),
            None => Err(<Error as de::Error>::unknown_variant(name, names)),
        }
    }

    fn body(&self) -> Result<&'a Value, Error> {
        self.body.ok_or_else(|| Error::plain(Code::MissingField, "").within(self.name))
    }
}

impl<'de> de::VariantAccess<'de> for Variant<'_> {
    type Error = Error;

    fn unit_variant(self) -> Result<(), Error> {
        match self.body {
            None => Ok(()),
            Some(body) => Err(wrong_type(body, "the bare name").within(self.name)),
        }
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Error> {
        seed.deserialize(Strict(self.body()?)).map_err(|error| error.within(self.name))
    }

    fn tuple_variant<V: Visitor<'de>>(self, _len: usize, visitor: V) -> Result<V::Value, Error> {
        de::Deserializer::deserialize_seq(Strict(self.body()?), visitor)
            .map_err(|error| error.within(self.name))
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        names: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Error> {
        Named::new(self.body()?, names)
            .and_then(|fields| visitor.visit_map(fields))
            .map_err(|error| error.within(self.name))
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

/// The error in the form that a reader of other formats carries unharmed.
fn packed<E: de::Error>(error: &Error) -> E {
    E::custom(format_args!("{error:#}"))
}

/// Any value at all, as an unknown event carries it. From JSON text too: there a field given twice is seen here.
impl<'de> de::Deserialize<'de> for Value {
    fn deserialize<D: de::Deserializer<'de>>(from: D) -> Result<Value, D::Error> {
        struct Any;

        impl<'de> Visitor<'de> for Any {
            type Value = Value;

            fn expecting(&self, out: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                out.write_str("any value")
            }

            fn visit_unit<E>(self) -> Result<Value, E> {
                Ok(Value::Null)
            }

            fn visit_bool<E>(self, flag: bool) -> Result<Value, E> {
                Ok(Value::Bool(flag))
            }

            fn visit_f64<E: de::Error>(self, number: f64) -> Result<Value, E> {
                if number.is_finite() {
                    Ok(Value::Number(number))
                } else {
                    Err(packed(&Error::new(Code::NotFinite, "", number, Allowed::Unstated)))
                }
            }

            fn visit_u64<E: de::Error>(self, number: u64) -> Result<Value, E> {
                Ok(Value::Number(number as f64))
            }

            fn visit_i64<E: de::Error>(self, number: i64) -> Result<Value, E> {
                Ok(Value::Number(number as f64))
            }

            fn visit_str<E>(self, text: &str) -> Result<Value, E> {
                Ok(Value::Text(text.to_string().into()))
            }

            fn visit_seq<A: de::SeqAccess<'de>>(self, mut items: A) -> Result<Value, A::Error> {
                let mut list = Vec::new();
                while let Some(item) = items.next_element()? {
                    list.push(item);
                }
                Ok(Value::List(list))
            }

            fn visit_map<A: de::MapAccess<'de>>(self, mut fields: A) -> Result<Value, A::Error> {
                let mut map: Vec<(Key, Value)> = Vec::new();
                let mut keys = BTreeSet::new();
                while let Some(key) = fields.next_key::<String>()?.map(Key::Owned) {
                    if map.len() == FEW_FIELDS {
                        keys.extend(map.iter().map(|(earlier, _)| earlier.clone()));
                    }
                    let known = if map.len() < FEW_FIELDS {
                        map.iter().any(|(earlier, _)| *earlier == key)
                    } else {
                        !keys.insert(key.clone())
                    };
                    if known {
                        let error = Error::plain(Code::DuplicateField, "").within(&key);
                        return Err(packed(&error));
                    }
                    map.push((key, fields.next_value()?));
                }
                Ok(Value::Map(map))
            }
        }

        from.deserialize_any(Any)
    }
}
