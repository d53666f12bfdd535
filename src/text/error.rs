//! What went wrong, in words.

use alloc::format;
use alloc::string::{String, ToString};

use super::phrases::{ERROR, Phrases};
use super::words::Words;
use crate::error::{Allowed, Error, Given, Shown};
use crate::numeric;
use crate::quantity::{Mass, Unit};

/// What stands around the meaning of an error code, by key.
pub(super) const REFUSALS: Phrases = &[
    ("refused.entry", "Entry {event} of the log. {refusal}"),
    ("refused.plain", "{meaning}."),
    ("refused.field", "{meaning}: {field}."),
    ("refused.value", "{meaning}: {value}."),
    ("refused.field_value", "{meaning}: {field} is {value}."),
    ("refused.allowed", "{refusal} Allowed: {allowed}."),
    ("refused.between", "{low} to {high}"),
    ("refused.between_in_unit", "{low} to {high} {unit}"),
];

impl Words<'_> {
    /// An error as one or two plain sentences: what, where, and what would have been accepted; a range of masses in the unit.
    ///
    /// The entry of the log that it concerns is named by its number, since nothing else finds it again. Field, value, names
    /// and rules that are told stay as they are.
    ///
    /// ```
    /// use bismar::quantity::{Mass, Unit};
    /// use bismar::text::Words;
    ///
    /// let error = Mass::from_kg(2_500.0).unwrap_err();
    /// let said = Words::plain().in_unit(Unit::Lb).error(&error);
    /// assert!(said.ends_with(": mass is 5511.56. Allowed: -4409.24 to 4409.24 lb."), "{said}");
    /// ```
    #[must_use]
    pub fn error(&self, error: &Error) -> String {
        let (value, allowed) = self.value_and_allowed(error);
        let meaning = self.say(&format!("{ERROR}{}", error.code().as_str()), &[]);
        let key = match (error.field(), error.given()) {
            ("", Given::Nothing) => "refused.plain",
            (_, Given::Nothing) => "refused.field",
            ("", _) => "refused.value",
            _ => "refused.field_value",
        };
        let with = [
            ("meaning", meaning.trim_end_matches('.').to_string()),
            ("field", format!("{}", Shown(error.field()))),
            ("value", value),
        ];
        let mut said = self.say(key, &with);
        if *error.allowed() != Allowed::Unstated {
            said = self.say("refused.allowed", &[("refusal", said), ("allowed", allowed)]);
        }
        match error.event() {
            Some(event) => self.say("refused.entry", &[("event", event.to_string()), ("refusal", said)]),
            None => said,
        }
    }

    /// The value, and what would have been accepted; both in the unit where a range of masses is in another.
    fn value_and_allowed(&self, error: &Error) -> (String, String) {
        let Allowed::Between { low, high, unit } = error.allowed() else {
            return (format!("{}", error.given()), format!("{}", error.allowed()));
        };
        let other = [Unit::Kg, Unit::Lb].into_iter().find(|known| known.symbol() == *unit);
        let Some(other) = other.filter(|other| *other != self.unit()) else {
            return (format!("{}", error.given()), self.between(low.to_string(), high.to_string(), unit));
        };
        let value = match error.given() {
            // Away from the range, so that what was refused is never printed as allowed.
            Given::Number(value) if value < low => self.converted(*value, other, numeric::floor),
            Given::Number(value) if value > high => self.converted(*value, other, numeric::ceil),
            Given::Number(value) => self.converted(*value, other, numeric::round),
            given => format!("{given}"),
        };
        let low = self.converted(*low, other, numeric::ceil);
        let high = self.converted(*high, other, numeric::floor);
        (value, self.between(low, high, self.unit().symbol()))
    }

    fn between(&self, low: String, high: String, unit: &str) -> String {
        let key = if unit.is_empty() { "refused.between" } else { "refused.between_in_unit" };
        self.say(key, &[("low", low), ("high", high), ("unit", unit.to_string())])
    }

    /// A number of the other unit in the one of these words, to a hundredth.
    fn converted(&self, value: f64, from: Unit, rounded: fn(f64) -> f64) -> String {
        let in_kilograms = |unit| Mass::from_unit(1.0, unit).map_or(1.0, Mass::kg);
        let value = value * (in_kilograms(from) / in_kilograms(self.unit()));
        // What is larger has no hundredths.
        let hundredths = value * HUNDREDTHS;
        if numeric::fabs(hundredths) >= MOST_EXACT || !hundredths.is_finite() {
            return value.to_string();
        }
        // What only the conversion is off by is no hundredth less.
        let whole = numeric::round(hundredths);
        let noise = numeric::fabs(hundredths - whole) <= NOISE * numeric::fabs(whole);
        numeric::tidy(if noise { whole } else { rounded(hundredths) } / HUNDREDTHS).to_string()
    }
}

const HUNDREDTHS: f64 = 100.0;
/// What a product and a quotient of 64 bits may be off by, with room.
const NOISE: f64 = 1e-12;
/// Beyond it a number of 64 bits has no fraction left to round.
const MOST_EXACT: f64 = 9e15;
