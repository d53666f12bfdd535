//! Types as Python: a `TypedDict` for what has fields, an alias for the rest. As in TypeScript, `NameInput` is what may
//! be given where that differs from what is answered.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use super::typescript::{name, tidy};
use super::{Body, Direction, Field, Inside, Kind, Shape, Types};

/// A shape in Python; names of types are looked up in `prefix` (empty inside the file of the types).
pub(crate) fn spelled(types: &Types, shape: &Shape, direction: Direction, prefix: &str) -> String {
    let inner = |shape: &Shape| spelled(types, shape, direction, prefix);
    match shape {
        Shape::Number | Shape::Whole { .. } => "float".into(),
        Shape::Text => "str".into(),
        Shape::Flag => "bool".into(),
        Shape::Nothing => "None".into(),
        // None is never accepted inside; an absent answer inside a list or alone is None.
        Shape::Optional(one) if direction == Direction::Given => inner(one),
        Shape::Optional(one) => format!("{} | None", inner(one)),
        Shape::List(one) if direction == Direction::Given && super::typescript::is_number(types, one) => {
            format!("{prefix}Numbers")
        }
        Shape::List(one) if direction == Direction::Given => format!("Sequence[{}]", inner(one)),
        Shape::List(one) => format!("list[{}]", inner(one)),
        // What was answered is a list; what is given may be a tuple.
        Shape::Tuple(items) if direction == Direction::Given => {
            format!("tuple[{}]", items.iter().map(inner).collect::<Vec<_>>().join(", "))
        }
        Shape::Tuple(items) => {
            let kinds: BTreeSet<String> = items.iter().map(inner).collect();
            format!("list[{}]", kinds.into_iter().collect::<Vec<_>>().join(" | "))
        }
        Shape::Table(value) if direction == Direction::Given => format!("Mapping[str, {}]", inner(value)),
        Shape::Table(value) => format!("dict[str, {}]", inner(value)),
        Shape::Type(at) => format!("{prefix}{}", name(types, *at, direction)),
        Shape::Unknown(_) => "Any".into(),
    }
}

/// A type written by hand, by what it says in TypeScript.
fn by_hand(text: &str) -> &'static str {
    match text {
        "number" => "float",
        "string" => "str",
        "number | string" => "float | str",
        "{ kg: number }" => "InKilograms",
        "{ mm: number }" => "InMillimetres",
        _ => "InKilograms | InPounds",
    }
}

/// The file of all types that the shapes need.
pub(crate) fn declarations(types: &Types, given: &[Shape], answered: &[Shape]) -> String {
    let mut wanted: BTreeSet<(String, usize, bool)> = BTreeSet::new();
    for (shapes, direction) in [(given, Direction::Given), (answered, Direction::Answered)] {
        for at in types.reachable(shapes) {
            wanted.insert((name(types, at, direction), at, direction == Direction::Given));
        }
    }
    let (mut out, mut last) = (String::from(HEAD), String::new());
    for (name, at, is_given) in wanted {
        if name == last {
            continue; // both faces are the same
        }
        let direction = if is_given { Direction::Given } else { Direction::Answered };
        if let Some(one) = types.all.get(at) {
            declaration(&mut out, types, &name, &one.doc, &one.body, direction);
        }
        last = name;
    }
    out
}

const HEAD: &str = "\
\"\"\"Types of what is given and answered. Generated from the library; do not edit.\"\"\"

# ruff: noqa
from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Literal, NotRequired, TypeAlias, TypedDict, Union

import numpy as np
from numpy.typing import NDArray

Numbers: TypeAlias = Union[Sequence[float], NDArray[np.float64]]


class InKilograms(TypedDict):
    kg: float


class InPounds(TypedDict):
    lb: float


class InMillimetres(TypedDict):
    mm: float


";

fn declaration(out: &mut String, types: &Types, name: &str, doc: &str, body: &Body, direction: Direction) {
    match body {
        Body::Alias(shape) => {
            comment(out, doc);
            let text = spelled(types, shape, direction, "");
            // A name that may come later is given as a text; inside a union it still takes part in `X | None`.
            let text = if matches!(text.as_str(), "float" | "str" | "bool") {
                text
            } else {
                format!("Union[\"{text}\"]")
            };
            _ = writeln!(out, "{name}: TypeAlias = {text}\n");
        }
        Body::ByHand(one) => {
            comment(out, doc);
            let text = if direction == Direction::Given { one.given } else { one.answered };
            _ = writeln!(out, "{name}: TypeAlias = {}\n", by_hand(text));
        }
        Body::Fields(fields) => dict(out, types, name, doc, fields, direction),
        Body::Kinds(kinds) => union(out, types, name, doc, kinds, direction),
    }
}

/// One literal for the names alone, and a dictionary of one key for each kind that carries something.
fn union(out: &mut String, types: &Types, name: &str, doc: &str, kinds: &[Kind], direction: Direction) {
    let (mut names, mut parts) = (Vec::new(), Vec::new());
    for kind in kinds {
        let inside = match &kind.inside {
            Inside::Nothing => {
                names.push(format!("'{}'", kind.name));
                continue;
            }
            Inside::One(shape) => spelled(types, shape, direction, ""),
            Inside::Several(shapes) => spelled(types, &Shape::Tuple(shapes.clone()), direction, ""),
            Inside::Fields(fields) => {
                let inner = format!("{name}_{}_fields", kind.name);
                dict(out, types, &inner, &kind.doc, fields, direction);
                inner
            }
        };
        let outer = format!("{name}_{}", kind.name);
        _ = writeln!(out, "{outer} = TypedDict(\"{outer}\", {{\"{}\": \"{inside}\"}})\n", kind.name);
        parts.push(format!("\"{outer}\""));
    }
    if !names.is_empty() {
        parts.insert(0, format!("Literal[{}]", names.join(", ")));
    }
    comment(out, doc);
    _ = match parts.as_slice() {
        [] => writeln!(out, "{name}: TypeAlias = Any\n"),
        parts => writeln!(out, "{name}: TypeAlias = Union[{}]\n", parts.join(", ")),
    };
}

fn dict(out: &mut String, types: &Types, name: &str, doc: &str, fields: &[Field], direction: Direction) {
    let mut members = Vec::new();
    flatten(types, fields, &mut members);
    let spelled_field = |field: &Field| {
        let optional = match direction {
            Direction::Given => field.optional_in,
            Direction::Answered => field.optional_out,
        };
        // A field that is left out when empty is never None.
        let shape = match &field.shape {
            Shape::Optional(inner) if optional => inner,
            shape => shape,
        };
        let text = spelled(types, shape, direction, "");
        if optional { format!("NotRequired[{text}]") } else { text }
    };
    if members.iter().any(|field| KEYWORDS.contains(&field.name.as_str())) {
        let list: Vec<_> =
            members.iter().map(|field| format!("\"{}\": \"{}\"", field.name, spelled_field(field))).collect();
        comment(out, doc);
        _ = writeln!(out, "{name} = TypedDict(\"{name}\", {{{}}})\n", list.join(", "));
        return;
    }
    _ = writeln!(out, "class {name}(TypedDict):");
    docstring(out, "    ", doc);
    for field in &members {
        _ = writeln!(out, "    {}: {}", field.name, spelled_field(field));
        docstring(out, "    ", &field.doc);
    }
    if members.is_empty() {
        out.push_str("    pass\n");
    }
    out.push_str("\n\n");
}

fn flatten<'a>(types: &'a Types, fields: &'a [Field], members: &mut Vec<&'a Field>) {
    for field in fields {
        match (&field.shape, field.flattened) {
            (Shape::Type(at), true) => {
                if let Some(Body::Fields(inner)) = types.all.get(*at).map(|one| &one.body) {
                    flatten(types, inner, members);
                }
            }
            _ => members.push(field),
        }
    }
}

/// Names that Python keeps for itself.
pub(crate) const KEYWORDS: &[&str] = &[
    "and", "as", "assert", "async", "await", "break", "class", "continue", "def", "del", "elif", "else",
    "except", "finally", "for", "from", "global", "if", "import", "in", "is", "lambda", "nonlocal", "not",
    "or", "pass", "raise", "return", "try", "while", "with", "yield", "None", "True", "False",
];

fn comment(out: &mut String, doc: &str) {
    for line in tidy(doc).lines() {
        _ = writeln!(out, "{}", format!("# {line}").trim_end());
    }
}

/// A documentation text, if there is something to say.
pub(crate) fn docstring(out: &mut String, indent: &str, doc: &str) {
    let text = tidy(doc).replace('\\', "\\\\").replace("\"\"\"", "'''");
    let lines: Vec<&str> = text.lines().collect();
    match lines.as_slice() {
        [] => {}
        [one] if !one.ends_with('"') => _ = writeln!(out, "{indent}\"\"\"{one}\"\"\""),
        several => {
            for (at, line) in several.iter().enumerate() {
                let opening = if at == 0 { "\"\"\"" } else { "" };
                _ = writeln!(out, "{}", format!("{indent}{opening}{line}").trim_end());
            }
            _ = writeln!(out, "{indent}\"\"\"");
        }
    }
}
