//! A choice: a bare name, or a map with one named kind.

use serde::de::{self, DeserializeSeed, IntoDeserializer, Visitor};

use super::Strict;
use super::fields::{Named, place};
use super::refusal::wrong_type;
use crate::error::{Allowed, Code, Error};
use crate::value::Value;

pub(super) struct Variant<'a> {
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
    pub(super) fn new(value: &'a Value, names: &'static [&'static str]) -> Result<Self, Error> {
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
