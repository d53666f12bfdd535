//! A document's JSON Schema (draft 2020-12), in the spelling of the JSON documents: snake_case.

use schemars::Schema;
use schemars::transform::{RecursiveTransform, Transform};
use serde_json::{Map, Value, json};

use super::typescript::tidy;
use super::{Direction, Shape, Types};

/// Whole numbers beyond this are not exact in f64, and the reader refuses them.
const EXACT: f64 = 9_007_199_254_740_992.0;

/// The schema of a document of that type.
pub(crate) fn schema(types: &Types, name: &str, title: &str) -> Value {
    let mut definitions = Map::new();
    for part in types.reachable(&[Shape::Type(name.into())], Direction::Given) {
        if let Some(mut made) =
            types.definitions.get(&part).and_then(|made| Schema::try_from(made.clone()).ok())
        {
            RecursiveTransform(as_read).transform(&mut made);
            definitions.insert(part, made.into());
        }
    }
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": title,
        "$ref": format!("#/$defs/{name}"),
        "$defs": definitions,
    })
}

/// What the crate's own reader does otherwise than serde's for JSON: no null stands for what is absent, a whole number is
/// whole and within its type, a list may say a thing twice. And no Rust in what is told.
fn as_read(schema: &mut Schema) {
    let Some(object) = schema.as_object_mut() else { return };
    without_null(object);
    if let Some(Value::String(format)) = object.remove("format") {
        within(object, &format);
    }
    object.remove("uniqueItems");
    if let Some(Value::String(doc)) = object.get_mut("description") {
        *doc = tidy(doc);
    }
    if object.get("default").is_some_and(Value::is_null) {
        object.remove("default");
    }
}

fn without_null(object: &mut Map<String, Value>) {
    if let Some(Value::Array(kinds)) = object.get_mut("type") {
        kinds.retain(|kind| kind != "null");
        if let [one] = kinds.as_slice() {
            let one = one.clone();
            object.insert("type".into(), one);
        }
    }
    let Some(Value::Array(branches)) = object.get_mut("anyOf") else { return };
    branches.retain(|branch| branch.get("type").is_none_or(|kind| kind != "null"));
    if let [Value::Object(one)] = branches.as_slice() {
        let one = one.clone();
        object.remove("anyOf");
        for (key, inner) in one {
            object.entry(key).or_insert(inner);
        }
    }
}

/// The range of a whole number's type, where nothing narrower is said.
fn within(object: &mut Map<String, Value>, format: &str) {
    let (low, high) = match format {
        "uint8" => (0.0, f64::from(u8::MAX)),
        "uint16" => (0.0, f64::from(u16::MAX)),
        "uint32" => (0.0, f64::from(u32::MAX)),
        "uint64" | "uint" => (0.0, EXACT),
        "int8" => (f64::from(i8::MIN), f64::from(i8::MAX)),
        "int16" => (f64::from(i16::MIN), f64::from(i16::MAX)),
        "int32" => (f64::from(i32::MIN), f64::from(i32::MAX)),
        "int64" | "int" => (-EXACT, EXACT),
        _ => return,
    };
    object.entry("minimum").or_insert(json!(low));
    object.entry("maximum").or_insert(json!(high));
}
