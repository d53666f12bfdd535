//! What is told when a value is not what a type wants: the crate's error as a reader's error.

use alloc::format;
use core::fmt::Display;

use serde::de;

use crate::error::{Allowed, Code, Error, Given};
use crate::value::Value;

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
pub(in crate::value) fn wrong_type(value: &Value, wanted: &'static str) -> Error {
    if *value == Value::Null {
        return Error::new(Code::NullNotAllowed, "", Given::Nothing, Allowed::rule(wanted));
    }
    Error::new(Code::WrongType, "", kind(value), Allowed::rule(wanted))
}
