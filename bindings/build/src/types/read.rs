//! From a schema to what a type is made of.

use serde_json::{Map, Value};

use super::{Body, Field, Inside, Kind, Shape, Type};

/// The longest list of known length that is spelled item by item.
const LONGEST_TUPLE: u64 = 8;

/// A type from its definition.
pub(super) fn type_of(schema: &Value) -> Type {
    Type { doc: doc(schema), body: body(schema) }
}

fn doc(schema: &Value) -> String {
    text(schema, "description").unwrap_or_default().to_string()
}

fn text<'a>(schema: &'a Value, key: &str) -> Option<&'a str> {
    schema.get(key).and_then(Value::as_str)
}

fn list<'a>(schema: &'a Value, key: &str) -> Option<&'a Vec<Value>> {
    schema.get(key).and_then(Value::as_array)
}

fn properties(schema: &Value) -> Option<&Map<String, Value>> {
    schema.get("properties").and_then(Value::as_object)
}

fn body(schema: &Value) -> Body {
    if let Some(kinds) = list(schema, "oneOf") {
        return Body::Kinds(kinds.iter().flat_map(kinds_of).collect());
    }
    if schema.get("enum").is_some() || schema.get("const").is_some() {
        // What is said is said of the type.
        let unsaid = |kind| Kind { doc: String::new(), ..kind };
        return Body::Kinds(kinds_of(schema).into_iter().map(unsaid).collect());
    }
    if let Some(properties) = properties(schema) {
        return Body::Fields(fields(properties, schema));
    }
    let open = schema.get("additionalProperties").is_some_and(Value::is_object);
    match text(schema, "type") {
        Some("object") if !open => Body::Fields(Vec::new()),
        _ => Body::Alias(shape(schema)),
    }
}

/// The kinds of one branch: names alone stand together in it, or one each.
fn kinds_of(branch: &Value) -> Vec<Kind> {
    let plain = |name: &Value| {
        let name = name.as_str().unwrap_or_default().to_string();
        Kind { name, doc: doc(branch), inside: Inside::Nothing }
    };
    if let Some(name) = branch.get("const") {
        return vec![plain(name)];
    }
    if let Some(names) = list(branch, "enum") {
        return names.iter().map(plain).collect();
    }
    let of_property = |(name, inside): (&String, &Value)| {
        let inside = match properties(inside) {
            Some(inner) => Inside::Fields(fields(inner, inside)),
            None => Inside::One(shape(inside)),
        };
        Kind { name: name.clone(), doc: doc(branch), inside }
    };
    properties(branch).into_iter().flatten().map(of_property).collect()
}

fn fields(properties: &Map<String, Value>, schema: &Value) -> Vec<Field> {
    let required = |name: &str| {
        list(schema, "required").is_some_and(|names| names.iter().any(|one| one.as_str() == Some(name)))
    };
    properties
        .iter()
        .map(|(name, inside)| {
            let shape = shape(inside);
            // The crate's writer leaves an absent value out, and its reader takes no null.
            let optional = !required(name) || matches!(shape, Shape::Optional(_));
            Field { name: name.clone(), doc: doc(inside), shape, optional }
        })
        .collect()
}

/// The shape that a schema describes.
pub(super) fn shape(schema: &Value) -> Shape {
    if let Some(name) = text(schema, "$ref").and_then(|path| path.rsplit('/').next()) {
        return Shape::Type(name.to_string());
    }
    if let Some(branches) = list(schema, "anyOf") {
        let (nothing, some): (Vec<_>, Vec<_>) =
            branches.iter().map(shape).partition(|one| *one == Shape::Nothing);
        let one = if some.len() == 1 { some.first().cloned() } else { None };
        let inner = one.unwrap_or(Shape::Either(some));
        return if nothing.is_empty() { inner } else { Shape::Optional(Box::new(inner)) };
    }
    match schema.get("type") {
        Some(Value::String(kind)) => of_kind(kind, schema),
        Some(Value::Array(kinds)) => {
            let some: Vec<&str> =
                kinds.iter().filter_map(Value::as_str).filter(|kind| *kind != "null").collect();
            let mut shapes: Vec<Shape> = some.iter().map(|kind| of_kind(kind, schema)).collect();
            let inner = if shapes.len() == 1 { shapes.remove(0) } else { Shape::Either(shapes) };
            if some.len() == kinds.len() { inner } else { Shape::Optional(Box::new(inner)) }
        }
        _ => Shape::Any,
    }
}

fn of_kind(kind: &str, schema: &Value) -> Shape {
    match kind {
        "number" | "integer" => Shape::Number,
        "string" => Shape::Text,
        "boolean" => Shape::Flag,
        "null" => Shape::Nothing,
        "array" => of_list(schema),
        "object" => match schema.get("additionalProperties") {
            Some(inner) if inner.is_object() => Shape::Table(Box::new(shape(inner))),
            _ => Shape::Any,
        },
        _ => Shape::Any,
    }
}

/// A short list of known length is a tuple.
fn of_list(schema: &Value) -> Shape {
    if let Some(items) = list(schema, "prefixItems") {
        return Shape::Tuple(items.iter().map(shape).collect());
    }
    let inner = schema.get("items").map_or(Shape::Any, shape);
    let count = |key: &str| schema.get(key).and_then(Value::as_u64);
    match (count("minItems"), count("maxItems")) {
        (Some(low), Some(high)) if low == high && low <= LONGEST_TUPLE => {
            Shape::Tuple((0..low).map(|_| inner.clone()).collect())
        }
        _ => Shape::List(Box::new(inner)),
    }
}

/// Takes from the same type the other way what is not said of this one: what is read is often a private form of what is
/// public.
pub(super) fn described(one: &mut Type, other: &Type) {
    let take = |doc: &mut String, from: &str| {
        if doc.is_empty() {
            *doc = from.to_string();
        }
    };
    let of_fields = |own: &mut Vec<Field>, from: &[Field]| {
        for field in own {
            if let Some(same) = from.iter().find(|same| same.name == field.name) {
                take(&mut field.doc, &same.doc);
            }
        }
    };
    take(&mut one.doc, &other.doc);
    match (&mut one.body, &other.body) {
        (Body::Fields(own), Body::Fields(from)) => of_fields(own, from),
        (Body::Kinds(own), Body::Kinds(from)) => {
            for kind in own {
                let Some(same) = from.iter().find(|same| same.name == kind.name) else { continue };
                take(&mut kind.doc, &same.doc);
                if let (Inside::Fields(own), Inside::Fields(from)) = (&mut kind.inside, &same.inside) {
                    of_fields(own, from);
                }
            }
        }
        _ => {}
    }
}
