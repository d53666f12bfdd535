//! An error as plain values: what an exception or an error text of another language is made from.

use bismar::Error;
use bismar::error::{Allowed, Given};
use bismar::value::{Key, Value};

/// The error with the fields `code`, `field`, and where there are any `value`, `allowed` and `event`.
#[must_use]
pub fn describe(error: &Error) -> Value {
    parts(error.code().as_str(), error.field(), error.given(), error.allowed(), error.event())
}

/// The same from its parts.
#[must_use]
pub fn parts(code: &'static str, field: &str, given: &Given, allowed: &Allowed, event: Option<u32>) -> Value {
    let mut fields = vec![
        ("code".into(), Value::Text(code.into())),
        ("field".into(), Value::Text(field.to_string().into())),
    ];
    match given {
        Given::Nothing => {}
        Given::Number(number) => fields.push(("value".into(), Value::Number(*number))),
        Given::Text(text) => fields.push(("value".into(), Value::Text(text.clone().into()))),
    }
    if let Some(allowed) = allowed_fields(allowed) {
        fields.push(("allowed".into(), Value::Map(allowed)));
    }
    if let Some(event) = event {
        fields.push(("event".into(), Value::Number(f64::from(event))));
    }
    Value::Map(fields)
}

fn allowed_fields(allowed: &Allowed) -> Option<Vec<(Key, Value)>> {
    match allowed {
        Allowed::Between { low, high, unit } => {
            let mut fields = vec![("low".into(), Value::Number(*low)), ("high".into(), Value::Number(*high))];
            if !unit.is_empty() {
                fields.push(("unit".into(), Value::Text(unit.clone())));
            }
            Some(fields)
        }
        Allowed::OneOf(names) => {
            let names =
                names.split(',').map(|name| Value::Text(name.trim_start_matches(' ').to_string().into()));
            Some(vec![("one_of".into(), Value::List(names.collect()))])
        }
        Allowed::Rule(rule) => Some(vec![("rule".into(), Value::Text(rule.clone()))]),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use bismar::quantity::Reps;

    #[test]
    fn code_field_value_and_what_is_allowed_are_told() {
        let error = Reps::new(201.0).unwrap_err().within("sets[2]");
        let told = describe(&error);
        assert_eq!(told.field("code"), Some(&Value::Text(error.code().as_str().into())));
        assert_eq!(told.field("field"), Some(&Value::Text("sets[2].reps".into())));
        assert_eq!(told.field("value"), Some(&Value::Number(201.0)));
        assert!(told.field("allowed").is_some_and(|allowed| allowed.field("low").is_some()));
    }
}
