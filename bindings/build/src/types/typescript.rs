//! Types as TypeScript. Where what may be given differs from what is answered, there are two declarations:
//! `Name` for the answer and `NameInput` for what may be given.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use bismar_bindings::names::camel;

use super::{Body, Direction, Field, Inside, Kind, Shape, Type, Types};

/// A shape in TypeScript.
pub(crate) fn spelled(types: &Types, shape: &Shape, direction: Direction) -> String {
    let inner = |shape: &Shape| spelled(types, shape, direction);
    match shape {
        Shape::Number => "number".into(),
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
        Shape::Either(some) => some.iter().map(inner).collect::<Vec<_>>().join(" | "),
        Shape::Type(name) => named(types, name, direction),
        Shape::Any => "unknown".into(),
    }
}

pub(super) fn is_number(types: &Types, shape: &Shape) -> bool {
    match shape {
        Shape::Number => true,
        Shape::Type(name) => match types.get(name, Direction::Given).map(|one| &one.body) {
            Some(Body::Alias(shape)) => is_number(types, shape),
            _ => false,
        },
        _ => false,
    }
}

fn bracketed(text: &str) -> String {
    if text.contains('|') || text.contains(' ') { format!("({text})") } else { text.into() }
}

/// Names that TypeScript itself gives a meaning, or the package: no type may be called so.
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

/// Whether a type cannot be called by its name.
pub(super) fn is_taken(name: &str) -> bool {
    TAKEN.contains(&name)
}

/// The name of a type as it goes one way: with `Input` behind it where what is given differs from what is answered.
pub(super) fn named(types: &Types, name: &str, direction: Direction) -> String {
    let input = if direction == Direction::Given && differs(types, name) { "Input" } else { "" };
    format!("{name}{input}")
}

/// Whether a type has two faces.
fn differs(types: &Types, name: &str) -> bool {
    let parts = types.reachable(&[Shape::Type(name.into())], Direction::Given);
    parts.iter().any(|part| {
        let (given, answered) = (types.get(part, Direction::Given), types.get(part, Direction::Answered));
        given.map(|one| &one.body) != answered.map(|one| &one.body)
            // A list of numbers is given in more forms than it is answered in.
            || given.is_some_and(|one| has_numbers(types, one))
    })
}

fn has_numbers(types: &Types, one: &Type) -> bool {
    one.parts().iter().any(|part| matches!(part, Shape::List(inner) if is_number(types, inner)))
}

/// Declarations of all types that the shapes need.
pub(crate) fn declarations(types: &Types, given: &[Shape], answered: &[Shape]) -> String {
    let mut out = String::new();
    for (name, (plain, direction)) in wanted(types, given, answered) {
        let Some(one) = types.get(&plain, direction) else { continue };
        comment(&mut out, "", &one.doc);
        match &one.body {
            Body::Alias(shape) => {
                _ = writeln!(out, "export type {name} = {};\n", spelled(types, shape, direction))
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
                    _ = writeln!(out, "  | {}", kind_text(types, kind, kinds, direction));
                }
                out.truncate(out.trim_end().len());
                out.push_str(if kinds.is_empty() { " never;\n\n" } else { ";\n\n" });
            }
        }
    }
    out
}

/// The declarations to write, in the order of their names: of a type with one face, the answer's.
pub(super) fn wanted(
    types: &Types,
    given: &[Shape],
    answered: &[Shape],
) -> BTreeMap<String, (String, Direction)> {
    let mut wanted = BTreeMap::new();
    for (shapes, direction) in [(given, Direction::Given), (answered, Direction::Answered)] {
        for plain in types.reachable(shapes, direction) {
            wanted.insert(named(types, &plain, direction), (plain, direction));
        }
    }
    wanted
}

fn kind_text(types: &Types, kind: &Kind, all: &[Kind], direction: Direction) -> String {
    let own = key(&camel(&kind.name));
    match &kind.inside {
        Inside::Nothing => format!("{:?}", kind.name),
        // A number in one of several units: each of them may be asked for.
        Inside::One(Shape::Number) if direction == Direction::Answered && are_units(all) => {
            let others = all.iter().filter(|other| other.name != kind.name);
            let never: String =
                others.map(|other| format!("; {}?: never", key(&camel(&other.name)))).collect();
            format!("{{ {own}: number{never} }}")
        }
        Inside::One(shape) => format!("{{ {own}: {} }}", spelled(types, shape, direction)),
        Inside::Fields(fields) => {
            let mut text = format!("{{\n    {own}: {{\n");
            members(&mut text, types, fields, direction, "      ");
            text.push_str("    };\n  }");
            text
        }
    }
}

/// Whether every kind is a number alone.
fn are_units(kinds: &[Kind]) -> bool {
    kinds.iter().all(|kind| kind.inside == Inside::One(Shape::Number))
}

fn members(out: &mut String, types: &Types, fields: &[Field], direction: Direction, indent: &str) {
    for field in fields {
        comment(out, indent, &field.doc);
        // A field that is left out when empty is never null.
        let shape = match &field.shape {
            Shape::Optional(inner) if field.optional => inner,
            shape => shape,
        };
        let mark = if field.optional { "?" } else { "" };
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
