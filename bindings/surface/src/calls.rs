//! Functions by number and by key: the entries of the registry, then the doors.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use bismar::error::{Allowed, Given};
use bismar::value::Value;
use bismar::{Code, Error};

use crate::doors::doors;
use crate::flat::{self, Flat};
use crate::parts;

/// Reads its arguments strictly and calls.
pub type Call = fn(&Value) -> Result<Value, Error>;

/// All of them in the order of their numbers, each with its key.
pub fn numbered() -> impl Iterator<Item = (&'static str, Call)> {
    let entries = parts::entries().into_iter().map(|entry| (entry.key, entry.function() as Call));
    entries.chain(doors().map(|door| (door.key, door.call as Call)))
}

static BY_KEY: LazyLock<BTreeMap<&'static str, Call>> = LazyLock::new(|| numbered().collect());
static FLAT_BY_KEY: LazyLock<BTreeMap<&'static str, &'static Flat>> =
    LazyLock::new(|| flat::TABLE.iter().map(|flat| (flat.key, flat)).collect());

/// The error for a function that is not there.
#[must_use]
pub fn unknown(given: impl Into<Given>) -> Error {
    Error::new(Code::UnknownFunction, "function", given, Allowed::rule("a key of the registry"))
}

/// Every key that can be called by name, in the order of the alphabet.
pub fn keys() -> impl Iterator<Item = &'static str> {
    BY_KEY.keys().copied()
}

/// Calls a function by its key.
///
/// # Errors
/// `unknown_function`, or whatever the function reports.
pub fn call(key: &str, given: &Value) -> Result<Value, Error> {
    BY_KEY.get(key).ok_or_else(|| unknown(key))?(given)
}

/// Calls a function by its key with JSON text.
///
/// # Errors
/// As [`call`], and `not_json` or `duplicate_field`.
#[cfg(feature = "json")]
pub fn call_json(key: &str, given: &str) -> Result<String, Error> {
    let call = BY_KEY.get(key).ok_or_else(|| unknown(key))?;
    Ok(call(&Value::from_json(given)?)?.to_json())
}

/// The function of numbers with that key.
///
/// # Errors
/// `unknown_function`, also for one that takes or gives more than numbers.
pub fn flat(key: &str) -> Result<&'static Flat, Error> {
    let rule = Allowed::rule("a key of the registry whose function takes and gives numbers only");
    FLAT_BY_KEY.get(key).copied().ok_or_else(|| Error::new(Code::UnknownFunction, "function", key, rule))
}

#[cfg(part = "whole")]
#[cfg(test)]
mod tests {
    use super::*;

    fn epley() -> Value {
        let load = Value::Map(vec![("kg".into(), Value::Number(100.0))]);
        Value::Map(vec![("load".into(), load), ("reps".into(), Value::Number(15.0))])
    }

    #[test]
    fn a_function_is_called_by_its_key() {
        // 100 * (1 + 15 / 30), by hand.
        let answer = call("one_rm.epley_1985", &epley()).unwrap();
        assert_eq!(answer.field("kg"), Some(&Value::Number(150.0)));
        assert_eq!((flat("one_rm.epley_1985").unwrap().call)(&[100.0, 15.0]), Ok(150.0));
    }

    #[test]
    fn an_unknown_key_is_told() {
        for error in [call("one_rm.nobody", &epley()).unwrap_err(), flat("answers.day").unwrap_err()] {
            assert_eq!(error.code(), Code::UnknownFunction);
        }
    }

    #[test]
    fn every_row_and_every_door_is_there_once() {
        let words = if cfg!(feature = "words") { Some("english") } else { None };
        let lists =
            [crate::doors::lists(None), words.map_or(Vec::new(), |name| crate::doors::lists(Some(name)))];
        let doors = lists.iter().flatten().flat_map(|list| list.iter()).count();
        let rows = bismar::registry::entries().count();
        assert_eq!(numbered().count(), rows + doors);
        assert_eq!(keys().count(), rows + doors);
        assert!(
            ["answers.day", "answers.year", "answers.next_set", "answers.sets_to_log", "progression.fold"]
                .iter()
                .all(|wanted| keys().any(|key| key == *wanted))
        );
    }
}
