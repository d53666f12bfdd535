//! The lossless text form of an error, written by `{:#}`. A serde deserializer may carry an error of ours only as text
//! (`custom` takes anything that displays); this form lets the strict reader unpack it unharmed.

use alloc::borrow::Cow;
use alloc::string::String;
use core::fmt;

use super::{Allowed, Code, Detail, Error, Given};

const MARK: char = '\u{1f}';

pub(super) fn write(detail: &Detail, out: &mut fmt::Formatter<'_>) -> fmt::Result {
    write!(out, "{MARK}{}{MARK}{}{MARK}", detail.code.as_str(), detail.field.replace(MARK, " "))?;
    match &detail.given {
        Given::Nothing => write!(out, "-{MARK}"),
        Given::Number(number) => write!(out, "n{}{MARK}", number.to_bits()),
        Given::Text(text) => write!(out, "t{}{MARK}", text.replace(MARK, " ")),
    }?;
    match &detail.allowed {
        Allowed::Unstated => write!(out, "-"),
        // As bits: exact, and spares a small build the code that reads decimal numbers.
        Allowed::Between { low, high, unit } => {
            write!(out, "b{}{MARK}{}{MARK}{unit}", low.to_bits(), high.to_bits())
        }
        Allowed::OneOf(names) => write!(out, "o{names}"),
        Allowed::Rule(rule) => write!(out, "r{rule}"),
    }
}

#[cfg_attr(not(feature = "serde"), allow(dead_code))]
pub(super) fn read(text: &str) -> Option<Error> {
    let mut parts = text.strip_prefix(MARK)?.split(MARK);
    let name = parts.next()?;
    let code = Code::ALL.iter().copied().find(|code| code.as_str() == name)?;
    let field = Cow::Owned(String::from(parts.next()?));
    let given = parts.next()?;
    let given = match given.split_at_checked(1)? {
        ("n", bits) => Given::Number(f64::from_bits(bits.parse().ok()?)),
        ("t", text) => Given::Text(text.into()),
        _ => Given::Nothing,
    };
    let allowed = parts.next()?;
    let allowed = match allowed.split_at_checked(1)? {
        ("b", low) => Allowed::Between {
            low: f64::from_bits(low.parse().ok()?),
            high: f64::from_bits(parts.next()?.parse().ok()?),
            unit: Cow::Owned(parts.next()?.into()),
        },
        ("o", names) => Allowed::OneOf(Cow::Owned(names.into())),
        ("r", rule) => Allowed::Rule(Cow::Owned(rule.into())),
        _ => Allowed::Unstated,
    };
    Some(Error(alloc::boxed::Box::new(Detail { code, field, given, allowed, event: None })))
}
