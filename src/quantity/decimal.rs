//! Decimal numbers and their units as people type them.

use alloc::string::String;

use crate::error::{Allowed, Code, Error};

/// Reads a decimal number with a point or a comma, as people type it; no thousands separators.
pub(crate) fn decimal(field: &'static str, text: &str) -> Result<f64, Error> {
    let refuse =
        || Error::new(Code::NotANumber, field, text, Allowed::rule("a decimal number such as 62.5 or 62,5"));
    let trimmed = text.trim();
    let digits = trimmed.strip_prefix(['-', '+']).unwrap_or(trimmed);
    let marks = digits.bytes().filter(|byte| matches!(byte, b'.' | b',')).count();
    let plain = digits.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b','));
    let ends_well =
        digits.starts_with(|c: char| c.is_ascii_digit()) && digits.ends_with(|c: char| c.is_ascii_digit());
    if !plain || marks > 1 || !ends_well || digits.len() > 24 {
        return Err(refuse());
    }
    let pointed: String = trimmed.chars().map(|c| if c == ',' { '.' } else { c }).collect();
    pointed.parse::<f64>().map_err(|_| refuse())
}

/// Splits `62.5 kg` into its number and its unit text (empty where none is given).
pub(crate) fn split_unit(text: &str) -> (&str, &str) {
    let trimmed = text.trim();
    let at = trimmed.find(|c: char| c.is_alphabetic()).unwrap_or(trimmed.len());
    let (number, unit) = trimmed.split_at_checked(at).unwrap_or((trimmed, ""));
    (number.trim_end(), unit)
}
