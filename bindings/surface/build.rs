//! Writes the table of flat functions from the registry's rows.

use std::fmt::Write as _;
use std::path::Path;

use bismar::registry;
use bismar::source::{Kind, Row};

/// Types that one number says; `src/flat.rs` reads and writes them.
const NUMBERS: &[&str] = &[
    "f64",
    "u8",
    "u16",
    "u32",
    "u64",
    "i32",
    "i64",
    "Mass",
    "Kilograms",
    "Length",
    "Reps",
    "Rir",
    "Rpe",
    "Fraction",
    "Pain",
    "Day",
];

/// The most arguments a flat function may have (also in `src/flat.rs`).
const MOST_ARGUMENTS: usize = 8;

/// Some modules of the crate.
struct Part {
    name: &'static str,
    modules: &'static [&'static str],
    keeps: bool,
}

const PARTS: &[Part] = include!("src/part_table.rs");

/// The part that is compiled; none for the whole, which is also what several parts together are.
fn part() -> Option<&'static Part> {
    let named =
        |part: &&Part| std::env::var_os(format!("CARGO_FEATURE_{}", part.name.to_uppercase())).is_some();
    let mut parts = PARTS.iter().filter(named);
    parts.next().filter(|_| parts.next().is_none())
}

fn main() {
    let part = part();
    let names: Vec<_> = PARTS.iter().map(|part| format!("{:?}", part.name)).collect();
    println!("cargo::rustc-check-cfg=cfg(keeps)");
    println!("cargo::rustc-check-cfg=cfg(part, values(\"whole\", {}))", names.join(", "));
    println!("cargo::rustc-cfg=part={:?}", part.map_or("whole", |part| part.name));
    if part.is_none_or(|part| part.keeps) {
        println!("cargo::rustc-cfg=keeps");
    }
    let has = |module: &str| part.is_none_or(|part| part.modules.contains(&module));
    let mut modules: Vec<&str> = Vec::new();
    for row in registry::rows() {
        let module = row.key.split_once('.').map_or(row.key, |(module, _)| module);
        if has(module) && !modules.contains(&module) {
            modules.push(module);
        }
    }
    let entries: String =
        modules.iter().map(|module| format!("entries.extend(registry::of::{module}());\n")).collect();
    put("entries.rs", &format!("{{\n{entries}}}\n"));
    println!("cargo::rerun-if-changed=../../src");
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-changed=src/part_table.rs");
    let mut text = String::from("/// Every function of numbers only.\npub static TABLE: &[Flat] = &[\n");
    for row in registry::rows().filter(|row| {
        modules.iter().any(|module| row.key.split_once('.').is_some_and(|(own, _)| own == *module))
            && is_flat(row)
            && is_public(row)
    }) {
        let names: Vec<_> = row.arguments.iter().map(|argument| argument.name).collect();
        let takes: Vec<_> = names.iter().map(|name| format!("take({name:?}, {name})?")).collect();
        let path = row.key.replace('.', "::");
        let arity = names.len();
        let (list, takes) = (names.join(", "), takes.join(", "));
        _ = writeln!(
            text,
            "    Flat {{ key: {:?}, names: &{names:?}, call: |given| {{\n        let &[{list}] = given else {{ return \
             Err(count({arity}, given)) }};\n        Ok(give(bismar::{path}({takes})?))\n    }} }},",
            row.key
        );
    }
    text.push_str("];\n");
    put("flat.rs", &text);
}

fn put(name: &str, text: &str) {
    let folder = std::env::var_os("OUT_DIR").unwrap_or_default();
    if let Err(error) = std::fs::write(Path::new(&folder).join(name), text) {
        println!("cargo::error={name} could not be written: {error}");
    }
}

fn is_flat(row: &Row) -> bool {
    let number = |kind: &str| NUMBERS.contains(&kind);
    row.kind == Kind::Function
        && (1..=MOST_ARGUMENTS).contains(&row.arguments.len())
        && row.arguments.iter().all(|argument| number(argument.r#type))
        && number(row.result)
}

/// Whether the module itself shows the function under the name of its key.
fn is_public(row: &Row) -> bool {
    let Some((module, name)) = row.key.split_once('.') else { return false };
    shows(&Path::new("../../src").join(module), name)
}

/// Whether the module in this folder (or file) declares the function or passes it on.
fn shows(module: &Path, name: &str) -> bool {
    let text = std::fs::read_to_string(module.join("mod.rs"))
        .or_else(|_| std::fs::read_to_string(module.with_extension("rs")))
        .unwrap_or_default();
    let passed_on = text.split("pub use ").skip(1).any(|rest| {
        let statement = rest.split(';').next().unwrap_or_default();
        match statement.trim().strip_suffix("::*") {
            Some(inner) => shows(&module.join(inner), name),
            None => statement.split(|c: char| !c.is_alphanumeric() && c != '_').any(|word| word == name),
        }
    });
    passed_on || text.contains(&format!("pub fn {name}("))
}
