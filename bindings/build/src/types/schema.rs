//! A type as JSON Schema (draft 2020-12), in the spelling of the JSON documents: snake_case.

use serde_json::{Map, Value, json};

use super::typescript::tidy;
use super::{Body, Field, Inside, Kind, Shape, Types};

/// The schema of a document of that type.
pub(crate) fn schema(types: &Types, at: usize, title: &str) -> Value {
    let mut definitions = Map::new();
    for part in types.reachable(&[Shape::Type(at)]) {
        definitions.insert(name(types, part), of_type(types, part));
    }
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": title,
        "$ref": format!("#/$defs/{}", name(types, at)),
        "$defs": definitions,
    })
}

fn name(types: &Types, at: usize) -> String {
    types.all.get(at).map_or(String::new(), |one| format!("{}.{}", one.module, one.name))
}

fn of_type(types: &Types, at: usize) -> Value {
    let Some(one) = types.all.get(at) else { return json!(true) };
    let mut schema = match &one.body {
        Body::Alias(shape) => of_shape(types, shape),
        Body::ByHand(by_hand) => serde_json::from_str(by_hand.schema).unwrap_or(json!(true)),
        Body::Fields(fields) => object(types, fields),
        Body::Kinds(kinds) => {
            json!({ "oneOf": kinds.iter().map(|kind| of_kind(types, kind)).collect::<Vec<_>>() })
        }
    };
    describe(&mut schema, &one.doc);
    schema
}

fn describe(schema: &mut Value, doc: &str) {
    if let Some(object) = schema.as_object_mut()
        && !doc.is_empty()
    {
        object.insert("description".into(), json!(tidy(doc)));
    }
}

fn of_kind(types: &Types, kind: &Kind) -> Value {
    let inside = match &kind.inside {
        Inside::Nothing => {
            let mut schema = json!({ "const": kind.name });
            describe(&mut schema, &kind.doc);
            return schema;
        }
        Inside::One(shape) => of_shape(types, shape),
        Inside::Several(shapes) => of_shape(types, &Shape::Tuple(shapes.clone())),
        Inside::Fields(fields) => object(types, fields),
    };
    let mut schema = json!({
        "type": "object",
        "properties": { kind.name.as_str(): inside },
        "required": [kind.name],
        "additionalProperties": false,
    });
    describe(&mut schema, &kind.doc);
    schema
}

fn object(types: &Types, fields: &[Field]) -> Value {
    let (mut properties, mut required) = (Map::new(), Vec::new());
    collect(types, fields, &mut properties, &mut required);
    json!({ "type": "object", "properties": properties, "required": required, "additionalProperties": false })
}

fn collect(types: &Types, fields: &[Field], properties: &mut Map<String, Value>, required: &mut Vec<String>) {
    for field in fields {
        if field.flattened {
            if let Shape::Type(at) = field.shape
                && let Some(Body::Fields(inner)) = types.all.get(at).map(|one| &one.body)
            {
                collect(types, inner, properties, required);
            }
            continue;
        }
        let mut schema = of_shape(types, &field.shape);
        describe(&mut schema, &field.doc);
        properties.insert(field.name.clone(), schema);
        if !field.optional_in {
            required.push(field.name.clone());
        }
    }
}

fn of_shape(types: &Types, shape: &Shape) -> Value {
    match shape {
        Shape::Number => json!({ "type": "number" }),
        Shape::Whole { low, high } => json!({ "type": "integer", "minimum": low, "maximum": high }),
        Shape::Text => json!({ "type": "string" }),
        Shape::Flag => json!({ "type": "boolean" }),
        Shape::Nothing => json!({ "type": "null" }),
        Shape::Optional(inner) => of_shape(types, inner),
        Shape::List(inner) => json!({ "type": "array", "items": of_shape(types, inner) }),
        Shape::Tuple(items) => {
            let each: Vec<_> = items.iter().map(|item| of_shape(types, item)).collect();
            let length = each.len();
            json!({ "type": "array", "prefixItems": each, "minItems": length, "maxItems": length })
        }
        Shape::Table(value) => json!({ "type": "object", "additionalProperties": of_shape(types, value) }),
        Shape::Type(at) => json!({ "$ref": format!("#/$defs/{}", name(types, *at)) }),
        Shape::Unknown(_) => json!(true),
    }
}
