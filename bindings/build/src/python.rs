//! The generated part of the Python package: a file a module with a typed function for each row and door, and a file of
//! types.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;

use bismar::source::Kind;
use bismar_bindings::parts::PARTS;

use crate::Failure;
use crate::javascript::{Named, modules};
use crate::types::python::{KEYWORDS, declarations, docstring, spelled};
use crate::types::{self, Direction, Shape, Signature, Types};

/// Writes the files into the folder of the package.
pub(crate) fn write(folder: &Path) -> Result<(), Failure> {
    let types = types::generate()?;
    let mut members: BTreeMap<String, Vec<Named>> = BTreeMap::new();
    let words = PARTS.iter().find(|part| part.name == "english");
    // The sentences are a part of their own in the npm package; here they are in the whole.
    for one in modules(None)?.into_values().chain(modules(words)?.into_values()).flatten() {
        let (module, _) = one.key.split_once('.').ok_or("a key without a module")?;
        members.entry(module.to_string()).or_default().push(one);
    }
    let (mut given, mut answered) = (Vec::new(), Vec::new());
    for one in members.values().flatten() {
        let Signature { takes, gives } = types.of(one.key);
        given.extend(takes);
        answered.push(gives);
    }
    let unknown = [types.unknown(&given, Direction::Given), types.unknown(&answered, Direction::Answered)];
    for name in unknown.iter().flatten() {
        println!("  warning: no Python type for {name}");
    }
    std::fs::create_dir_all(folder)?;
    std::fs::write(folder.join("types.py"), tidied(&declarations(&types, &given, &answered)))?;
    for (module, members) in &members {
        std::fs::write(folder.join(format!("{module}.py")), tidied(&file(&types, module, members)))?;
    }
    std::fs::write(folder.join("__init__.py"), init(members.keys()))?;
    let functions: usize = members.values().map(Vec::len).sum();
    println!("python: {functions} functions and defaults in {} modules", members.len());
    Ok(())
}

fn tidied(text: &str) -> String {
    format!("{}\n", text.trim_end())
}

fn init<'a>(modules: impl Iterator<Item = &'a String>) -> String {
    let modules: Vec<&str> = modules.map(String::as_str).collect();
    let listed =
        |indent: &str| modules.iter().map(|name| format!("{indent}\"{name}\",\n")).collect::<String>();
    format!(
        "\
\"\"\"Progression maths for barbell lifts: plain objects in, plain objects out, every argument checked, every number with
its source, and the same bits as in Rust. Generated from the library; do not edit.
\"\"\"

# ruff: noqa
from bismar import {}
from bismar._core import batch, call_many, fold_many, logs_of
from bismar._error import BismarError
from bismar._native import Progress, call, call_json, flat, keys, rows, version

__version__ = version()
__all__ = [
{}    \"BismarError\",
    \"Progress\",
    \"batch\",
    \"call\",
    \"call_json\",
    \"call_many\",
    \"flat\",
    \"fold_many\",
    \"keys\",
    \"logs_of\",
    \"rows\",
    \"version\",
]
",
        modules.join(", "),
        listed("    ")
    )
}

fn file(types: &Types, module: &str, members: &[Named]) -> String {
    let mut out = format!(
        "\"\"\"The functions and defaults of `{module}`. Generated from the library; do not edit.\"\"\"\n\n# ruff: noqa\n\
         from __future__ import annotations\n\nfrom collections.abc import Mapping, Sequence\nfrom typing import Any\n\n\
         from bismar import types as _t\nfrom bismar._native import call as _call\n\n"
    );
    let constants: Vec<_> = members.iter().filter(|one| one.kind == Kind::Constant).collect();
    for one in &constants {
        _ = writeln!(out, "{}: {}", plain_name(one.key), answer(types, one));
        docstring(&mut out, "", &documented(one));
    }
    if !constants.is_empty() {
        let keys: String = constants
            .iter()
            .map(|one| format!("    \"{}\": \"{}\",\n", plain_name(one.key), one.key))
            .collect();
        _ = writeln!(
            out,
            "\n_CONSTANTS = {{\n{keys}}}\n\n\ndef __getattr__(name: str) -> Any:\n    if name in _CONSTANTS:\n        \
             return _call(_CONSTANTS[name], {{}})\n    raise AttributeError(f\"module {{__name__!r}} has no attribute \
             {{name!r}}\")\n"
        );
    }
    for one in members.iter().filter(|one| one.kind == Kind::Function) {
        function(&mut out, types, one);
    }
    out
}

/// The last part of a key, with an underscore behind a word that Python keeps for itself.
fn plain_name(key: &str) -> String {
    spared(key.split_once('.').map_or(key, |(_, name)| name))
}

fn spared(name: &str) -> String {
    if KEYWORDS.contains(&name) { format!("{name}_") } else { name.into() }
}

fn documented(one: &Named) -> String {
    match one.citation {
        Some(citation) => format!("{}\n\nSource: {citation}", one.doc.trim_end()),
        None => one.doc.trim_end().to_string(),
    }
}

fn answer(types: &Types, one: &Named) -> String {
    spelled(types, &types.of(one.key).gives, Direction::Answered, "_t.")
}

fn function(out: &mut String, types: &Types, one: &Named) {
    let (mut list, mut always, mut sometimes) = (Vec::new(), Vec::new(), Vec::new());
    for (argument, shape) in one.arguments.iter().zip(types.of(one.key).takes) {
        let text = spelled(types, &shape, Direction::Given, "_t.");
        let name = spared(argument.name);
        if matches!(shape, Shape::Optional(_)) {
            list.push(format!("{name}: {text} | None = None"));
            sometimes.push((argument.name, name));
        } else {
            list.push(format!("{name}: {text}"));
            always.push(format!("\"{}\": {name}", argument.name));
        }
    }
    let star = if list.is_empty() { "" } else { "*, " };
    _ = writeln!(out, "\ndef {}({star}{}) -> {}:", plain_name(one.key), list.join(", "), answer(types, one));
    docstring(out, "    ", &documented(one));
    _ = writeln!(out, "    given: dict[str, Any] = {{{}}}", always.join(", "));
    for (key, name) in sometimes {
        _ = writeln!(out, "    if {name} is not None:\n        given[\"{key}\"] = {name}");
    }
    _ = writeln!(out, "    return _call(\"{}\", given)  # type: ignore[no-any-return]\n", one.key);
}
