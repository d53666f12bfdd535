//! Prints and enforces sizes, so that growth is seen on every build.

use std::collections::BTreeMap;
use std::io::Write as _;

use wasmparser::{KnownCustom, Name, Parser, Payload};

use crate::Failure;

/// The full wasm, as it ships.
const MOST_RAW: usize = 240_000;
/// The same after gzip.
const MOST_GZIP: usize = 80_000;

/// What is enforced while the whole library is far above the budget: growth past it is a decision, not an accident.
const CEILING_RAW: usize = 1_450_000;
/// The same after gzip.
const CEILING_GZIP: usize = 570_000;

/// Modules of the crate whose weight is shown one by one.
const MODULES: &[&str] = &[
    "caution",
    "condition",
    "dose",
    "gate",
    "horizon",
    "loading",
    "numeric",
    "one_rm",
    "prescription",
    "progression",
    "quantity",
    "reason",
    "record",
    "registry",
    "rehearsal",
    "statistics",
    "error",
    "value",
];

/// Size after gzip at its highest level.
pub(crate) fn gzip(bytes: &[u8]) -> Result<usize, Failure> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?.len())
}

/// Prints size and budget of the wasm; whether it is within the ceiling.
pub(crate) fn print(wasm: &[u8]) -> Result<bool, Failure> {
    let (raw, zipped) = (wasm.len(), gzip(wasm)?);
    let within = raw <= MOST_RAW && zipped <= MOST_GZIP;
    let verdict = if within { "within budget" } else { "BUDGET NOT MET" };
    println!("  wasm             {raw:>8} B raw of {MOST_RAW}, {zipped:>7} B gzip of {MOST_GZIP}: {verdict}");
    println!("  ceiling enforced {CEILING_RAW:>8} B raw   {CEILING_GZIP:>20} B gzip");
    Ok(raw <= CEILING_RAW && zipped <= CEILING_GZIP)
}

/// Prints them; an error if over.
pub(crate) fn enforce(wasm: &[u8]) -> Result<(), Failure> {
    if print(wasm)? { Ok(()) } else { Err("the wasm is over its ceiling".into()) }
}

/// Prints how much code each part of the crate has, before the last optimisation.
pub(crate) fn print_groups(named: &[u8]) -> Result<(), Failure> {
    let functions = functions(named)?;
    let mut groups: BTreeMap<String, usize> = BTreeMap::new();
    for (name, size) in &functions {
        *groups.entry(group(name)).or_default() += size;
    }
    println!("  code by part, before the last optimisation:");
    for (name, size) in groups {
        println!("    {name:<16} {size:>8} B");
    }
    Ok(())
}

/// Prints every function with its size, the largest first.
pub(crate) fn print_functions(named: &[u8]) -> Result<(), Failure> {
    let mut functions = functions(named)?;
    functions.sort_by_key(|(_, size)| std::cmp::Reverse(*size));
    for (name, size) in functions {
        println!("{size:>8} {}", plain(&name));
    }
    Ok(())
}

/// The first part of this crate that a function's name mentions, so that generic code counts where it is used.
fn group(name: &str) -> String {
    let name = &plain(name);
    let module = name.split("bismar::").nth(1).and_then(|rest| rest.split("::").next()).unwrap_or_default();
    let word: String = module.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
    if MODULES.contains(&word.as_str()) {
        word
    } else if name.contains("bismar_bindings") {
        "(bindings)".into()
    } else if name.contains("libm::") {
        "(libm)".into()
    } else {
        "(language)".into()
    }
}

/// A demangled name without the crates' hashes in brackets.
pub(crate) fn plain(name: &str) -> String {
    let mut out = String::new();
    for piece in name.split_inclusive('[') {
        let rest = piece
            .split_once(']')
            .filter(|(hash, _)| hash.len() > 8 && hash.bytes().all(|b| b.is_ascii_hexdigit()))
            .map_or(piece, |(_, rest)| rest);
        out.push_str(rest.strip_suffix('[').unwrap_or(rest));
    }
    out
}

/// How many functions a module imports: its own are numbered from there.
pub(crate) fn imported_functions(module: &[u8]) -> Result<u32, Failure> {
    let mut imported = 0;
    for payload in Parser::new(0).parse_all(module) {
        if let Payload::ImportSection(section) = payload? {
            for import in section.into_imports() {
                imported += u32::from(matches!(import?.ty, wasmparser::TypeRef::Func(_)));
            }
        }
    }
    Ok(imported)
}

/// The demangled names of functions by their number.
pub(crate) fn names(module: &[u8]) -> Result<BTreeMap<u32, String>, Failure> {
    let mut names = BTreeMap::new();
    for payload in Parser::new(0).parse_all(module) {
        let Payload::CustomSection(section) = payload? else { continue };
        let KnownCustom::Name(section) = section.as_known() else { continue };
        for part in section {
            let Name::Function(map) = part? else { continue };
            for naming in map {
                let naming = naming?;
                names.insert(naming.index, format!("{:#}", rustc_demangle::demangle(naming.name)));
            }
        }
    }
    Ok(names)
}

/// Every function with its name and the bytes of its body.
fn functions(module: &[u8]) -> Result<Vec<(String, usize)>, Failure> {
    let mut bodies = Vec::new();
    for payload in Parser::new(0).parse_all(module) {
        match payload? {
            Payload::CodeSectionEntry(body) => bodies.push(body.range().len()),
            Payload::DataSection(section) => println!("  data             {:>8} B", section.range().len()),
            _ => {}
        }
    }
    let names = names(module)?;
    let named = |index| names.get(&index).cloned().unwrap_or_default();
    Ok((imported_functions(module)?..).zip(bodies).map(|(index, size)| (named(index), size)).collect())
}
