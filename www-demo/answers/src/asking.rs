//! How the tests ask: the demo log and plan, an entry by its name, and the log with one event more.
#![allow(clippy::unwrap_used, reason = "a test may panic")]

use bismar::Error;
use bismar::value::Value;

pub(crate) const LOG: &str = include_str!("../../../examples/data/demo-log.json");
pub(crate) const PLAN: &str = include_str!("../../../examples/data/demo-plan.json");

/// What an entry answers; a text after `json:` is read as JSON.
pub(crate) fn ask(key: &str, given: &[(&'static str, &str)]) -> Result<Value, Error> {
    let entry = crate::ENTRIES.iter().find(|entry| entry.key == key).unwrap();
    let read = |text: &str| match text.strip_prefix("json:") {
        Some(json) => Value::from_json(json).unwrap(),
        None => Value::Text(text.to_string().into()),
    };
    entry.call(&Value::Map(given.iter().map(|(name, text)| ((*name).into(), read(text))).collect()))
}

/// The demo log with one event more.
pub(crate) fn with(event: &str) -> String {
    let end = LOG.trim_end().strip_suffix('}').unwrap().trim_end().strip_suffix(']').unwrap();
    format!("{end},{event}]}}")
}
