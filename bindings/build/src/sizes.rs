//! Prints and enforces sizes, so that growth is seen on every build.

use std::collections::BTreeMap;
use std::io::Write as _;
use std::path::Path;

use wasmparser::{KnownCustom, Name, Parser, Payload};

use crate::Failure;

/// What a part, or the whole, may weigh: bytes raw and after gzip.
struct Budget {
    /// Folder in the package; empty for the whole.
    name: &'static str,
    raw: usize,
    gzip: usize,
    /// What is enforced where the budget is not met: growth past it is a decision, not an accident.
    ceiling: Option<(usize, usize)>,
}

/// The budgets are what prototypes reached before the model grew (a gate's facts, heights, asks, looks at pain) and before
/// the doors of the log stood in the parts that read logs. Each ceiling is what was measured and one part in a hundred; a
/// later change that adds something raises its ceiling by its own measured size: starts that are refused, sessions found by
/// lift, and what no change of declarations may lose have added 7.5 kB to the whole; names that can be seen, run lengths in
/// less time, days of a plan and what is kept of a lift left out long ago another 26 kB;
/// a stop before every answer and the repairs of the rules 5 kB more; the place in every line that names a load, what would
/// change an answer told to its end, and the reserve that was asked for 23 kB; tables of sets, which read every cell and write
/// the whole log anew, some 90 kB (36 kB after gzip); a stop in the first field of every answer, heights that cannot be made and
/// other kinds of implement 21 kB, as the part for the years shows, which has no tables; refused sign-offs that are told, what would
/// change an answer to its last case, mornings told unasked and places that are compared 10 kB; places as the
/// day asked for them, stored states that are sealed and checked against what no course leaves behind, and answers without a
/// question 17 kB, as the part for sessions shows; lifts to begin with, right bars and longer ranges by name 44 kB; columns
/// by the library's batch form 13 kB, as the part for strength shows, and words that close only what was told before them, a digest of what was
/// told and parts of a day that take back 24 kB, as the part for sessions shows; the session of a kept state, written without
/// a tree in between, 50 kB (9 kB after gzip), as the whole shows. The part for sessions is built for speed since then: a session
/// of a kept state takes 2.9 times the native time instead of 7, and the part weighs 500 kB (209 kB after gzip) more. Light work
/// that counts, corrections that go on from one another, illnesses noted ahead and limits in every question are 30 kB. What is in
/// force, what would open, histories and copies without health detail are 50 kB of the whole, 96 kB of the part for sessions, which is
/// built for speed, and as sentences 50 kB. Of the
/// sentences there was no prototype: their budget is what was measured and one part in a hundred; they read logs and ask every
/// door, and weigh less than the three parts together that do so without them.
const BUDGETS: &[Budget] = &[
    Budget { name: "", raw: 1_270_000, gzip: 385_000, ceiling: Some((2_128_700, 666_500)) },
    Budget { name: "strength", raw: 240_000, gzip: 80_000, ceiling: Some((280_400, 95_700)) },
    Budget { name: "loading", raw: 240_000, gzip: 80_000, ceiling: Some((250_800, 94_000)) },
    Budget { name: "session", raw: 430_000, gzip: 152_000, ceiling: Some((1_838_600, 671_300)) },
    Budget { name: "day", raw: 370_000, gzip: 126_000, ceiling: Some((1_014_900, 353_700)) },
    Budget { name: "statistics", raw: 260_000, gzip: 92_000, ceiling: Some((298_000, 108_500)) },
    Budget { name: "horizon", raw: 260_000, gzip: 92_000, ceiling: Some((749_800, 265_500)) },
    Budget { name: "english", raw: 1_437_000, gzip: 520_500, ceiling: Some((1_492_500, 538_300)) },
];

/// Modules of the crate whose weight is shown one by one.
const MODULES: &[&str] = &[
    "answers",
    "canonical",
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
    "sign",
    "statistics",
    "text",
    "error",
    "value",
];

/// Size after gzip at its highest level.
pub(crate) fn gzip(bytes: &[u8]) -> Result<usize, Failure> {
    let mut encoder = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?.len())
}

/// Prints size and budget of the whole and of each part that was built; which of them are over what is enforced.
pub(crate) fn print_all(package: &Path) -> Result<Vec<&'static str>, Failure> {
    let mut over = Vec::new();
    println!("  wasm              raw, B    budget   gzip, B    budget");
    for Budget { name, raw, gzip: zipped, ceiling } in BUDGETS {
        let file = package.join(name).join("bismar.wasm");
        if !file.exists() {
            continue;
        }
        let wasm = std::fs::read(file)?;
        let (own_raw, own_zipped) = (wasm.len(), gzip(&wasm)?);
        let met = own_raw <= *raw && own_zipped <= *zipped;
        let label = if name.is_empty() { "the whole" } else { name };
        let verdict = if met { "met" } else { "BUDGET NOT MET" };
        println!("  {label:<12} {own_raw:>11} {raw:>9} {own_zipped:>9} {zipped:>9}  {verdict}");
        let (most_raw, most_zipped) = ceiling.unwrap_or((*raw, *zipped));
        if own_raw > most_raw || own_zipped > most_zipped {
            over.push(label);
        }
    }
    Ok(over)
}

/// Prints them; an error if one is over.
pub(crate) fn enforce(package: &Path) -> Result<(), Failure> {
    let over = print_all(package)?;
    if over.is_empty() { Ok(()) } else { Err(format!("over what is enforced: {}", over.join(", ")).into()) }
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
    } else if name.contains("bismar_bindings") || name.contains("bismar_surface") {
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
