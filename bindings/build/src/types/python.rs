//! Types as Python: a `TypedDict` for what has fields, an alias for the rest. As in TypeScript, `NameInput` is what may
//! be given where that differs from what is answered.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use super::typescript::{named, tidy, wanted};
use super::{Body, Direction, Field, Inside, Kind, Shape, Types};

/// A shape in Python; names of types are looked up in `prefix` (empty inside the file of the types).
pub(crate) fn spelled(types: &Types, shape: &Shape, direction: Direction, prefix: &str) -> String {
    let inner = |shape: &Shape| spelled(types, shape, direction, prefix);
    match shape {
        Shape::Number => "float".into(),
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
        Shape::Either(some) => some.iter().map(inner).collect::<Vec<_>>().join(" | "),
        Shape::Type(name) => format!("{prefix}{}", named(types, name, direction)),
        Shape::Any => "Any".into(),
    }
}

/// The file of all types that the shapes need.
pub(crate) fn declarations(types: &Types, given: &[Shape], answered: &[Shape]) -> String {
    let mut out = String::from(HEAD);
    for (name, (plain, direction)) in wanted(types, given, answered) {
        if let Some(one) = types.get(&plain, direction) {
            declaration(&mut out, types, &name, &one.doc, &one.body, direction);
        }
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
    let spelled_field = |field: &Field| {
        // A field that is left out when empty is never None.
        let shape = match &field.shape {
            Shape::Optional(inner) if field.optional => inner,
            shape => shape,
        };
        let text = spelled(types, shape, direction, "");
        if field.optional { format!("NotRequired[{text}]") } else { text }
    };
    if fields.iter().any(|field| KEYWORDS.contains(&field.name.as_str())) {
        let list: Vec<_> =
            fields.iter().map(|field| format!("\"{}\": \"{}\"", field.name, spelled_field(field))).collect();
        comment(out, doc);
        _ = writeln!(out, "{name} = TypedDict(\"{name}\", {{{}}})\n", list.join(", "));
        return;
    }
    _ = writeln!(out, "class {name}(TypedDict):");
    docstring(out, "    ", doc);
    for field in fields {
        _ = writeln!(out, "    {}: {}", field.name, spelled_field(field));
        docstring(out, "    ", &field.doc);
    }
    if fields.is_empty() {
        out.push_str("    pass\n");
    }
    out.push_str("\n\n");
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
