//! The writer: a serde serializer into [`Value`].

use alloc::string::ToString;
use alloc::vec;
use alloc::vec::Vec;
use core::fmt::Display;

use serde::ser::{self, Serialize};

use super::read::EXACT_WHOLE;
use super::{Key, Value};
use crate::error::{Allowed, Code, Error};

impl ser::Error for Error {
    fn custom<T: Display>(message: T) -> Self {
        Error::unpack(&message)
    }
}

impl Serialize for Value {
    fn serialize<S: ser::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Value::Null => to.serialize_unit(),
            Value::Bool(flag) => to.serialize_bool(*flag),
            Value::Number(number) => {
                // Whole numbers are written without a fraction, as people write them; -0.0, which only a refused number
                // can be, keeps its sign.
                let signed_zero = number.to_bits() == (-0.0_f64).to_bits();
                let whole = number.abs() < 1e15 && crate::numeric::is_whole(*number) && !signed_zero;
                if whole { to.serialize_i64(*number as i64) } else { to.serialize_f64(*number) }
            }
            Value::Text(text) => to.serialize_str(text),
            Value::List(items) => to.collect_seq(items),
            Value::Map(fields) => to.collect_map(fields.iter().map(|(key, value)| (key, value))),
        }
    }
}

pub(super) struct Writer;

fn number(value: f64) -> Result<Value, Error> {
    if value.is_finite() {
        Ok(Value::Number(crate::numeric::tidy(value)))
    } else {
        Err(Error::new(Code::NotFinite, "", value, Allowed::Unstated))
    }
}

/// A whole number that `f64` does not carry exactly would be read as another one.
fn integer(value: i128) -> Result<Value, Error> {
    let exact = EXACT_WHOLE as i128;
    if (-exact..=exact).contains(&value) {
        number(value as f64)
    } else {
        Err(Error::range(Code::Overflow, "", value as f64, -EXACT_WHOLE, EXACT_WHOLE, ""))
    }
}

fn tagged(name: &'static str, body: Value) -> Value {
    Value::Map(vec![(Key::Borrowed(name), body)])
}

macro_rules! numbers {
    ($($method:ident $type:ty),+) => {$(
        fn $method(self, value: $type) -> Result<Value, Error> {
            number(value as f64)
        }
    )+};
}

impl ser::Serializer for Writer {
    type Ok = Value;
    type Error = Error;
    type SerializeSeq = Items;
    type SerializeTuple = Items;
    type SerializeTupleStruct = Items;
    type SerializeTupleVariant = Items;
    type SerializeMap = Fields;
    type SerializeStruct = Fields;
    type SerializeStructVariant = Fields;

    numbers! {
        serialize_i8 i8, serialize_i16 i16, serialize_i32 i32,
        serialize_u8 u8, serialize_u16 u16, serialize_u32 u32,
        serialize_f32 f32, serialize_f64 f64
    }

    fn serialize_i64(self, value: i64) -> Result<Value, Error> {
        integer(i128::from(value))
    }

    fn serialize_u64(self, value: u64) -> Result<Value, Error> {
        integer(i128::from(value))
    }

    fn serialize_bool(self, value: bool) -> Result<Value, Error> {
        Ok(Value::Bool(value))
    }

    fn serialize_char(self, value: char) -> Result<Value, Error> {
        Ok(Value::Text(value.to_string().into()))
    }

    fn serialize_str(self, value: &str) -> Result<Value, Error> {
        Ok(Value::Text(value.to_string().into()))
    }

    fn collect_str<T: core::fmt::Display + ?Sized>(self, value: &T) -> Result<Value, Error> {
        use core::fmt::Write as _;
        let mut text = alloc::string::String::new();
        match write!(text, "{value}") {
            Ok(()) => Ok(Value::Text(text.into())),
            // Only a value that cannot be shown; there is none in this crate.
            Err(core::fmt::Error) => Err(Error::plain(Code::WrongType, "")),
        }
    }

    fn serialize_bytes(self, value: &[u8]) -> Result<Value, Error> {
        Ok(Value::List(value.iter().map(|byte| Value::Number(f64::from(*byte))).collect()))
    }

    fn serialize_none(self) -> Result<Value, Error> {
        Ok(Value::Null)
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<Value, Error> {
        value.serialize(self)
    }

    fn serialize_unit(self) -> Result<Value, Error> {
        Ok(Value::Null)
    }

    fn serialize_unit_struct(self, _name: &'static str) -> Result<Value, Error> {
        Ok(Value::Null)
    }

    fn serialize_unit_variant(
        self,
        _name: &'static str,
        _index: u32,
        variant: &'static str,
    ) -> Result<Value, Error> {
        Ok(Value::Text(variant.into()))
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        _name: &'static str,
        value: &T,
    ) -> Result<Value, Error> {
        value.serialize(self)
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        _name: &'static str,
        _index: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<Value, Error> {
        Ok(tagged(variant, value.serialize(Writer)?))
    }

    fn serialize_seq(self, _len: Option<usize>) -> Result<Items, Error> {
        Ok(Items { variant: None, items: Vec::new() })
    }

    fn serialize_tuple(self, _len: usize) -> Result<Items, Error> {
        Ok(Items { variant: None, items: Vec::new() })
    }

    fn serialize_tuple_struct(self, _name: &'static str, _len: usize) -> Result<Items, Error> {
        Ok(Items { variant: None, items: Vec::new() })
    }

    fn serialize_tuple_variant(
        self,
        _name: &'static str,
        _index: u32,
        variant: &'static str,
        _len: usize,
    ) -> Result<Items, Error> {
        Ok(Items { variant: Some(variant), items: Vec::new() })
    }

    fn serialize_map(self, _len: Option<usize>) -> Result<Fields, Error> {
        Ok(Fields::new(None, true))
    }

    fn serialize_struct(self, _name: &'static str, _len: usize) -> Result<Fields, Error> {
        Ok(Fields::new(None, false))
    }

    fn serialize_struct_variant(
        self,
        _name: &'static str,
        _index: u32,
        variant: &'static str,
        _len: usize,
    ) -> Result<Fields, Error> {
        Ok(Fields::new(Some(variant), false))
    }
}

pub(super) struct Items {
    variant: Option<&'static str>,
    items: Vec<Value>,
}

impl Items {
    fn push<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        self.items.push(value.serialize(Writer)?);
        Ok(())
    }

    fn close(self) -> Result<Value, Error> {
        let list = Value::List(self.items);
        Ok(match self.variant {
            Some(name) => tagged(name, list),
            None => list,
        })
    }
}

macro_rules! items {
    ($($trait:ident $method:ident),+) => {$(
        impl ser::$trait for Items {
            type Ok = Value;
            type Error = Error;

            fn $method<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
                self.push(value)
            }

            fn end(self) -> Result<Value, Error> {
                self.close()
            }
        }
    )+};
}
items! {
    SerializeSeq serialize_element, SerializeTuple serialize_element,
    SerializeTupleStruct serialize_field, SerializeTupleVariant serialize_field
}

pub(super) struct Fields {
    variant: Option<&'static str>,
    key: Option<Key>,
    /// A map has the fields that it has; what a type leaves out is no field.
    keeps_null: bool,
    fields: Vec<(Key, Value)>,
}

impl Fields {
    fn new(variant: Option<&'static str>, keeps_null: bool) -> Fields {
        Fields { variant, key: None, keeps_null, fields: Vec::new() }
    }

    fn push<T: Serialize + ?Sized>(&mut self, key: Key, value: &T) -> Result<(), Error> {
        self.keep(key, value.serialize(Writer))
    }

    /// Apart from `push` and never copied into it: one for all types instead of one a type.
    #[inline(never)]
    fn keep(&mut self, key: Key, value: Result<Value, Error>) -> Result<(), Error> {
        let value = value.map_err(|error| error.within(&key))?;
        // An absent value is an absent field: the strict reader takes no null.
        if self.keeps_null || value != Value::Null {
            self.fields.push((key, value));
        }
        Ok(())
    }

    fn close(self) -> Result<Value, Error> {
        let map = Value::Map(self.fields);
        Ok(match self.variant {
            Some(name) => tagged(name, map),
            None => map,
        })
    }
}

impl ser::SerializeMap for Fields {
    type Ok = Value;
    type Error = Error;

    fn serialize_key<T: Serialize + ?Sized>(&mut self, key: &T) -> Result<(), Error> {
        match key.serialize(Writer)? {
            Value::Text(text) => self.key = Some(text),
            _ => return Err(Error::new(Code::WrongType, "", "a key", Allowed::rule("a text"))),
        }
        Ok(())
    }

    fn serialize_value<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), Error> {
        let key = self.key.take().unwrap_or_default();
        self.push(key, value)
    }

    fn end(self) -> Result<Value, Error> {
        self.close()
    }
}

macro_rules! fields {
    ($($trait:ident),+) => {$(
        impl ser::$trait for Fields {
            type Ok = Value;
            type Error = Error;

            fn serialize_field<T: Serialize + ?Sized>(
                &mut self,
                key: &'static str,
                value: &T,
            ) -> Result<(), Error> {
                self.push(Key::Borrowed(key), value)
            }

            fn end(self) -> Result<Value, Error> {
                self.close()
            }
        }
    )+};
}
fields! { SerializeStruct, SerializeStructVariant }
