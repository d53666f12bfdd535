//! Types as TypeScript. Where what may be given differs from what is answered, there are two declarations:
//! `Name` for the answer and `NameInput` for what may be given.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use bismar_bindings::names::camel;

use super::{Body, Field, Inside, Kind, Shape, Types};

/// Which way a value goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Direction {
    /// Given by the caller.
    Given,
    /// Answered.
    Answered,
}

/// A shape in TypeScript.
pub(crate) fn spelled(types: &Types, shape: &Shape, direction: Direction) -> String {
    let inner = |shape: &Shape| spelled(types, shape, direction);
    match shape {
        Shape::Number | Shape::Whole { .. } => "number".into(),
        Shape::Text => "string".into(),
        Shape::Flag => "boolean".into(),
        Shape::Nothing => "null".into(),
        // Null is never accepted; an absent answer inside a list or alone is null.
        Shape::Optional(one) if direction == Direction::Given => inner(one),
        Shape::Optional(one) => format!("{} | null", inner(one)),
        Shape::List(one) if direction == Direction::Given && is_number(types, one) => {
            format!("{}[] | Float64Array | Uint8Array", bracketed(&inner(one)))
        }
        Shape::List(one) => format!("{}[]", bracketed(&inner(one))),
        Shape::Tuple(items) => format!("[{}]", items.iter().map(inner).collect::<Vec<_>>().join(", ")),
        Shape::Table(value) => format!("{{ [key: string]: {} }}", inner(value)),
        Shape::Type(at) => name(types, *at, direction),
        Shape::Unknown(_) => "unknown".into(),
    }
}

pub(super) fn is_number(types: &Types, shape: &Shape) -> bool {
    match shape {
        Shape::Number | Shape::Whole { .. } => true,
        Shape::Type(at) => match types.all.get(*at).map(|one| &one.body) {
            Some(Body::Alias(shape)) => is_number(types, shape),
            Some(Body::ByHand(by_hand)) => by_hand.given == "number",
            _ => false,
        },
        _ => false,
    }
}

fn bracketed(text: &str) -> String {
    if text.contains('|') || text.contains(' ') { format!("({text})") } else { text.into() }
}

/// Names that TypeScript itself gives a meaning.
const TAKEN: &[&str] = &[
    "Parameters",
    "Record",
    "Error",
    "Date",
    "Map",
    "Set",
    "Array",
    "Object",
    "Function",
    "Required",
    "Partial",
    "Pick",
    "Code",
    "Allowed",
    "Column",
    "Functions",
    "Progress",
];

/// The name of a type, with its module in front where two modules share it.
pub(super) fn name(types: &Types, at: usize, direction: Direction) -> String {
    let Some(one) = types.all.get(at) else { return "unknown".into() };
    let shared = types.all.iter().enumerate().any(|(other_at, other)| {
        other_at != at
            && other.name == one.name
            && types.places.get(other_at).is_some_and(|place| place.is_public())
    });
    let mut text =
        if shared || TAKEN.contains(&one.name.as_str()) { pascal(&one.module) } else { String::new() };
    text.push_str(&one.name);
    if direction == Direction::Given && differs(types, at) {
        text.push_str("Input");
    }
    text
}

fn pascal(name: &str) -> String {
    name.split('_').map(|word| word[..1].to_uppercase() + &word[1..]).collect()
}

/// Whether a type has two faces.
fn differs(types: &Types, at: usize) -> bool {
    types.reachable(&[Shape::Type(at)]).iter().any(|part| {
        let fields_differ = |fields: &[Field]| {
            fields.iter().any(|field| {
                field.optional_in != field.optional_out
                    || matches!(field.shape, Shape::List(ref inner) if is_number(types, inner))
            })
        };
        match types.all.get(*part).map(|one| &one.body) {
            Some(Body::Fields(fields)) => fields_differ(fields),
            Some(Body::ByHand(by_hand)) => by_hand.given != by_hand.answered,
            Some(Body::Kinds(kinds)) => kinds.iter().any(|kind| match &kind.inside {
                Inside::Fields(fields) => fields_differ(fields),
                _ => false,
            }),
            _ => false,
        }
    })
}

/// Declarations of all types that the shapes need.
pub(crate) fn declarations(types: &Types, given: &[Shape], answered: &[Shape]) -> String {
    let mut wanted: BTreeSet<(String, usize, bool)> = BTreeSet::new();
    for at in types.reachable(given) {
        wanted.insert((name(types, at, Direction::Given), at, true));
    }
    for at in types.reachable(answered) {
        wanted.insert((name(types, at, Direction::Answered), at, false));
    }
    let mut out = String::new();
    let mut last = String::new();
    for (name, at, is_given) in wanted {
        if name == last {
            continue; // both faces are the same
        }
        let direction = if is_given { Direction::Given } else { Direction::Answered };
        let Some(one) = types.all.get(at) else { continue };
        comment(&mut out, "", &one.doc);
        match &one.body {
            Body::Alias(shape) => {
                _ = writeln!(out, "export type {name} = {};\n", spelled(types, shape, direction))
            }
            Body::ByHand(by_hand) => {
                let text = if is_given { by_hand.given } else { by_hand.answered };
                _ = writeln!(out, "export type {name} = {text};\n");
            }
            Body::Fields(fields) => {
                _ = writeln!(out, "export interface {name} {{");
                members(&mut out, types, fields, direction, "  ");
                out.push_str("}\n\n");
            }
            Body::Kinds(kinds) => {
                _ = writeln!(out, "export type {name} =");
                for kind in kinds {
                    comment(&mut out, "  ", &kind.doc);
                    _ = writeln!(out, "  | {}", kind_text(types, kind, direction));
                }
                out.truncate(out.trim_end().len());
                out.push_str(if kinds.is_empty() { " never;\n\n" } else { ";\n\n" });
            }
        }
        last = name;
    }
    out
}

fn kind_text(types: &Types, kind: &Kind, direction: Direction) -> String {
    let key = key(&camel(&kind.name));
    match &kind.inside {
        Inside::Nothing => format!("{:?}", kind.name),
        Inside::One(shape) => format!("{{ {key}: {} }}", spelled(types, shape, direction)),
        Inside::Several(shapes) => {
            format!("{{ {key}: {} }}", spelled(types, &Shape::Tuple(shapes.clone()), direction))
        }
        Inside::Fields(fields) => {
            let mut text = format!("{{\n    {key}: {{\n");
            members(&mut text, types, fields, direction, "      ");
            text.push_str("    };\n  }");
            text
        }
    }
}

fn members(out: &mut String, types: &Types, fields: &[Field], direction: Direction, indent: &str) {
    for field in fields {
        if field.flattened {
            // The fields of the inner type stand here.
            if let Shape::Type(at) = field.shape
                && let Some(Body::Fields(inner)) = types.all.get(at).map(|one| &one.body)
            {
                members(out, types, inner, direction, indent);
            }
            continue;
        }
        comment(out, indent, &field.doc);
        let optional = match direction {
            Direction::Given => field.optional_in,
            Direction::Answered => field.optional_out,
        };
        // A field that is left out when empty is never null.
        let shape = match &field.shape {
            Shape::Optional(inner) if optional => inner,
            shape => shape,
        };
        let mark = if optional { "?" } else { "" };
        _ = writeln!(
            out,
            "{indent}{}{mark}: {};",
            key(&camel(&field.name)),
            spelled(types, shape, direction)
        );
    }
}

fn key(name: &str) -> String {
    let plain = name.chars().all(|c| c.is_ascii_alphanumeric() || c == '_' || c == '$')
        && !name.starts_with(|c: char| c.is_ascii_digit());
    if plain { name.into() } else { format!("{name:?}") }
}

/// A documentation comment, if there is something to say.
pub(crate) fn comment(out: &mut String, indent: &str, doc: &str) {
    let text = tidy(doc);
    let lines: Vec<&str> = text.lines().collect();
    match lines.as_slice() {
        [] => {}
        [one] => _ = writeln!(out, "{indent}/** {one} */"),
        several => {
            _ = writeln!(out, "{indent}/**");
            for line in several {
                _ = writeln!(out, "{}", format!("{indent} * {line}").trim_end());
            }
            _ = writeln!(out, "{indent} */");
        }
    }
}

/// A Rust documentation text without its Rust: no code blocks, no links to items, no examples.
pub(crate) fn tidy(doc: &str) -> String {
    let (mut out, mut in_code, mut in_examples) = (String::new(), false, false);
    for line in doc.lines() {
        let line = line.strip_prefix(' ').unwrap_or(line);
        if line.trim_start().starts_with("```") {
            in_code = !in_code;
            continue;
        }
        if line.starts_with("# ") && !in_code {
            in_examples = line.starts_with("# Examples");
        }
        if !in_code && !in_examples {
            out.push_str(&line.replace("*/", "* /").replace("[`", "`").replace("`]", "`"));
            out.push('\n');
        }
    }
    while out.contains("\n\n\n") {
        out = out.replace("\n\n\n", "\n\n");
    }
    out.trim().to_string()
}
