//! What the page keeps: whether a plan or a kit may be kept, which entries are dated after a day, and in what two
//! documents differ.

use std::collections::BTreeMap;

use bismar::Error;
use bismar::error::Allowed;
use bismar::loading::{Implement, Stock};
use bismar::quantity::{Day, Length};
use bismar::record::{EventKind, Plan};
use bismar::value::Value;
use serde::{Deserialize, Serialize};

use crate::opened::Which;

/// A plan beside its log.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "KeepingOfPlan"))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfPlan {
    plan: String,
    log: Which,
}

/// Whether a plan can be read and names lifts of the log; a log without parameters has none.
pub(crate) fn check_plan(asked: OfPlan) -> Result<bool, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    let opened = asked.log.open()?;
    let known = |id: &str| opened.state.lifts().any(|lift| lift.id().as_str() == id);
    match plan.lifts.iter().position(|lift| !known(lift.lift.as_str())) {
        Some(at) => {
            let lift = plan.lifts.get(at).map(|one| one.lift.as_str()).unwrap_or_default();
            let rule = Allowed::rule("a lift of the log");
            Err(Error::new(bismar::Code::UnknownLift, "lift", lift, rule).within(&format!("lifts[{at}]")))
        }
        None => Ok(true),
    }
}

/// A log.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "KeepingOfLog"))]
#[serde(deny_unknown_fields)]
pub(crate) struct OfLog {
    log: Which,
}

/// Whether a log can be read and folded.
pub(crate) fn accepts(asked: OfLog) -> Result<bool, Error> {
    asked.log.open().map(|_| true)
}

/// Bars, discs and blocks as a setting.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[allow(dead_code, reason = "reading them is the check")]
pub(crate) struct Kit {
    implements: Vec<Implement>,
    stock: Stock,
    #[serde(default)]
    blocks: Vec<Length>,
}

/// Whether a list of bars and discs can be read; one without a bar cannot be used.
pub(crate) fn check_kit(asked: Kit) -> Result<bool, Error> {
    if asked.implements.is_empty() {
        return Err(Error::plain(bismar::Code::EmptyList, "implements"));
    }
    Ok(true)
}

/// A log and a day.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct After {
    log: Which,
    day: Day,
}

/// An entry in force that is dated after it.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Ahead {
    /// The last number of its chain of corrections: what another correction replaces.
    last: u32,
    day: Day,
}

/// Entries in force that are dated after a day, in their order.
pub(crate) fn ahead(asked: After) -> Result<Vec<Ahead>, Error> {
    let opened = asked.log.open()?;
    let mut last: BTreeMap<u32, u32> = BTreeMap::new();
    let mut root: BTreeMap<u32, u32> = BTreeMap::new();
    let mut events: Vec<_> = opened.log.events.iter().collect();
    events.sort_by_key(|event| event.sequence);
    for event in events {
        if let EventKind::Correction(said) = &event.kind {
            let first = root.get(&said.replaces).copied().unwrap_or(said.replaces);
            root.insert(event.sequence, first);
            last.insert(first, event.sequence);
        }
    }
    let later = opened.log.effective()?.into_iter().filter(|event| event.day > asked.day);
    Ok(later
        .map(|event| Ahead {
            last: last.get(&event.sequence).copied().unwrap_or(event.sequence),
            day: event.day,
        })
        .collect())
}

/// One place in which two documents differ: what stands here, and what there, as JSON text; absent where nothing does.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Difference {
    at: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    here: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    there: Option<String>,
}

/// Every place in which two documents differ. Items of lists that carry an id are compared by it.
pub(crate) fn differences(here: &Value, there: &Value) -> Vec<Difference> {
    let mut found = Vec::new();
    compare("", Some(here), Some(there), &mut found);
    found
}

fn compare(at: &str, here: Option<&Value>, there: Option<&Value>, found: &mut Vec<Difference>) {
    if here == there {
        return;
    }
    match (here, there) {
        (Some(Value::Map(_)), Some(Value::Map(_))) | (Some(Value::List(_)), Some(Value::List(_))) => {
            let (own, other) = (parts(here), parts(there));
            if own.iter().map(|(key, _)| key).ne(other.iter().map(|(key, _)| key)) && is_list(here) {
                let order = |parts: &[(String, &Value)]| {
                    parts.iter().map(|(key, _)| key.as_str()).collect::<Vec<_>>().join(", ")
                };
                found.push(Difference {
                    at: named(at, "order"),
                    here: Some(order(&own)),
                    there: Some(order(&other)),
                });
            }
            let get = |parts: &[(String, &Value)], key: &str| {
                parts.iter().find(|(name, _)| name == key).map(|(_, value)| (*value).clone())
            };
            let mut keys: Vec<&String> = own.iter().map(|(key, _)| key).collect();
            keys.extend(other.iter().map(|(key, _)| key).filter(|key| get(&own, key).is_none()));
            for key in keys {
                compare(&named(at, key), get(&own, key).as_ref(), get(&other, key).as_ref(), found);
            }
        }
        _ => found.push(Difference { at: at.into(), here: here.map(short), there: there.map(short) }),
    }
}

const fn is_list(value: Option<&Value>) -> bool {
    matches!(value, Some(Value::List(_)))
}

fn named(at: &str, key: &str) -> String {
    if at.is_empty() { key.into() } else { format!("{at}.{key}") }
}

/// The parts of a map or a list by name: an item by its id, or by its place where it has none of its own.
fn parts(value: Option<&Value>) -> Vec<(String, &Value)> {
    match value {
        Some(Value::Map(fields)) => fields.iter().map(|(key, value)| (key.to_string(), value)).collect(),
        Some(Value::List(items)) => {
            let ids: Vec<Option<String>> = items.iter().map(id).collect();
            let own = |at: usize| {
                let name = ids.get(at)?.as_ref()?;
                (ids.iter().flatten().filter(|other| *other == name).count() == 1).then(|| name.clone())
            };
            let place = |at: usize| own(at).unwrap_or_else(|| format!("{}", at + 1));
            items.iter().enumerate().map(|(at, item)| (place(at), item)).collect()
        }
        _ => Vec::new(),
    }
}

/// What an item of a list is called: its id, its lift, or the id of what is inside it.
fn id(item: &Value) -> Option<String> {
    let text = |value: &Value| match value {
        Value::Text(text) => Some(text.to_string()),
        _ => None,
    };
    match item {
        Value::Text(text) => Some(text.to_string()),
        Value::Map(fields) => item
            .field("id")
            .or_else(|| item.field("lift"))
            .and_then(text)
            .or_else(|| fields.iter().find_map(|(_, inside)| inside.field("id").and_then(text))),
        _ => None,
    }
}

/// The most characters of one side of a difference.
const MOST_SHOWN: usize = 80;

fn short(value: &Value) -> String {
    let text = value.to_json();
    if text.chars().count() <= MOST_SHOWN {
        text
    } else {
        text.chars().take(MOST_SHOWN).chain(['\u{2026}']).collect()
    }
}
