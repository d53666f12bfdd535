//! Any value at all, kept as it is.

use alloc::collections::BTreeSet;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use serde::de::{self, Visitor};

use super::fields::FEW_FIELDS;
use crate::error::{Allowed, Code, Error};
use crate::value::{Key, Value};

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
