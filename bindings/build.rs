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

fn main() {
    println!("cargo::rerun-if-changed=../src");
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-env-changed=BISMAR_BUILD_ID");
    let mut text = String::from("/// Every function of numbers only.\npub static TABLE: &[Flat] = &[\n");
    for row in registry::rows().filter(|row| is_flat(row) && is_public(row)) {
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
    let folder = std::env::var_os("OUT_DIR").unwrap_or_default();
    if let Err(error) = std::fs::write(Path::new(&folder).join("flat.rs"), text) {
        println!("cargo::error=flat.rs could not be written: {error}");
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
    shows(&Path::new("../src").join(module), name)
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
