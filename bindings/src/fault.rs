//! An error in JavaScript's spelling.

use bismar::error::{Allowed, Given};
use bismar::value::Value;
use bismar::{Code, Error};

use crate::names::camel;

/// What a caller is told: the crate's error with keys in camelCase.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Stable code.
    pub code: Code,
    /// Path to the field.
    pub field: String,
    /// The value as given.
    pub value: Given,
    /// What would have been accepted.
    pub allowed: Allowed,
    /// Sequence number of the event it concerns.
    pub event: Option<u32>,
}

impl Fault {
    /// An error whose field is already in JavaScript's spelling.
    #[must_use]
    pub fn as_spelled(error: &Error) -> Fault {
        Fault {
            code: error.code(),
            field: error.field().into(),
            value: error.given().clone(),
            allowed: error.allowed().clone(),
            event: error.event(),
        }
    }

    /// An error of the crate about `given`, the tree it read.
    #[must_use]
    pub fn about(error: &Error, given: &Value) -> Fault {
        let mut fault = Fault::as_spelled(error);
        fault.field = camel(error.field());
        // A kind given as a key (`{ passRun: ... }`) was spelled as a key; given as a text, as a text.
        let key = match error.code() {
            Code::UnknownField | Code::UnknownEvent => true,
            Code::UnknownVariant => matches!(at(given, error.field()), Some(Value::Map(_))),
            _ => false,
        };
        if key {
            match &fault.allowed {
                Allowed::OneOf(names) => fault.allowed = Allowed::OneOf(camel(names).into()),
                Allowed::Rule(rule) => fault.allowed = Allowed::Rule(camel(rule).into()),
                _ => {}
            }
            if let Given::Text(name) = &fault.value {
                fault.value = Given::Text(camel(name));
            }
        }
        fault
    }
}

impl Fault {
    /// The error as the plain object that the package's error class is made from.
    #[must_use]
    pub fn to_value(&self) -> Value {
        bismar_surface::fault::parts(self.code.as_str(), &self.field, &self.value, &self.allowed, self.event)
    }
}

/// The value at a path such as `sets[2].rest`.
fn at<'a>(value: &'a Value, path: &str) -> Option<&'a Value> {
    let mut here = value;
    for part in path.split(['.', '[']).filter(|part| !part.is_empty()) {
        here = match part.strip_suffix(']') {
            Some(index) => match here {
                Value::List(items) => items.get(index.parse::<usize>().ok()?)?,
                _ => return None,
            },
            None => here.field(part)?,
        };
    }
    Some(here)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn map(key: &'static str, value: Value) -> Value {
        Value::Map(vec![(key.into(), value)])
    }

    #[test]
    fn a_kind_is_spelled_as_it_was_given() {
        let error =
            Error::new(Code::UnknownVariant, "", "pass_fun", Allowed::one_of(&["pass_run", "evidence"]));
        let error = error.within("gate_kind");
        let as_text = map("gate_kind", Value::Text("pass_fun".into()));
        let as_key = map("gate_kind", map("pass_fun", Value::Number(1.0)));
        let fault = Fault::about(&error, &as_text);
        assert_eq!((fault.field.as_str(), &fault.value), ("gateKind", &Given::Text("pass_fun".into())));
        let fault = Fault::about(&error, &as_key);
        assert_eq!(fault.value, Given::Text("passFun".into()));
        assert_eq!(fault.allowed, Allowed::OneOf("passRun, evidence".into()));
    }

    #[test]
    fn a_path_is_followed() {
        let tree = map("sets", Value::List(vec![Value::Null, map("reps", Value::Number(3.0))]));
        assert_eq!(at(&tree, "sets[1].reps"), Some(&Value::Number(3.0)));
        assert_eq!(at(&tree, "sets[7].reps"), None);
    }
}
