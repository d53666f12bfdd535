//! The shape of the source: which module may use which, and how formulas are declared.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use std::path::{Path, PathBuf};

#[path = "shared/files.rs"]
mod files;
use files::files;

/// Modules from the top down: each may use only those named before it.
const ORDER: &[&str] = &[
    "error",
    "numeric",
    "canonical",
    "value",
    "source",
    "quantity",
    "caution",
    "sign",
    "reason",
    "statistics",
    "one_rm",
    "loading",
    "dose",
    "condition",
    "gate",
    "record",
    "progression",
    "prescription",
    "rehearsal",
    "horizon",
    "answers",
    "registry",
    "text",
];

fn sources() -> Vec<(String, PathBuf, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    files(&root, &[".rs"])
        .into_iter()
        .map(|path| {
            let inside = path.strip_prefix(&root).unwrap().to_path_buf();
            let first = inside.components().next().unwrap().as_os_str().to_string_lossy().into_owned();
            let module = first.trim_end_matches(".rs").to_string();
            let text = std::fs::read_to_string(&path).unwrap();
            (module, inside, text)
        })
        .collect()
}

/// The part of a file that is not its tests, with comments taken out.
fn code(text: &str) -> String {
    let code = text.split("#[cfg(test)]\nmod tests").next().unwrap_or_default();
    code.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}

/// Every module named after `crate::`, groups such as `crate::{a, b::c}` included.
fn named_modules(code: &str) -> Vec<String> {
    let mut named = Vec::new();
    for piece in code.split("crate::").skip(1) {
        if let Some(group) = piece.strip_prefix('{') {
            let (mut depth, mut word) = (0, String::new());
            for c in group.chars() {
                match c {
                    '{' => depth += 1,
                    '}' if depth == 0 => break,
                    '}' => depth -= 1,
                    ',' if depth == 0 => named.push(std::mem::take(&mut word)),
                    c if depth == 0 => word.push(c),
                    _ => {}
                }
            }
            named.push(word);
        } else {
            named.push(piece.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect());
        }
    }
    named.iter().map(|word| word.trim().split("::").next().unwrap_or_default().to_string()).collect()
}

#[test]
fn a_module_uses_only_those_above_it() {
    let mut broken = Vec::new();
    for (module, path, text) in sources() {
        if module == "lib" || module == "guide" {
            continue;
        }
        let Some(floor) = ORDER.iter().position(|name| *name == module) else {
            broken.push(format!("{}: module {module} is not in the table", path.display()));
            continue;
        };
        for used in named_modules(&code(&text)) {
            match ORDER.iter().position(|name| *name == used) {
                Some(other) if other > floor => {
                    broken.push(format!("{}: {module} uses {used}", path.display()))
                }
                _ => {}
            }
        }
    }
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn a_group_of_imports_is_read() {
    assert_eq!(
        named_modules("use crate::{error::{Code, Error}, gate};\ncrate::dose::x"),
        ["error", "gate", "dose"]
    );
}

/// A public function that documents a formula must be declared by the macro, or it has no row.
#[test]
fn every_documented_formula_is_declared_by_the_macro() {
    let mut loose = Vec::new();
    for (_, path, text) in sources() {
        let lines: Vec<_> = text.lines().collect();
        for (at, line) in lines.iter().enumerate() {
            let documented = line.trim_start().starts_with("/// # Formula");
            if !documented {
                continue;
            }
            let mut first = at;
            while first > 0 && lines[first - 1].trim_start().starts_with("///") {
                first -= 1;
            }
            let item = lines[at..].iter().find(|line| !line.trim_start().starts_with("///"));
            let is_function = item.is_some_and(|line| line.trim_start().starts_with("pub fn"));
            let declared = first >= 2 && lines[first - 2].trim().ends_with("! {");
            if is_function && !declared {
                loose.push(format!("{}:{}", path.display(), at + 1));
            }
        }
    }
    assert!(loose.is_empty(), "formula without the macro: {loose:?}");
}

/// A default is numbers that nobody wrote into a log: each has a row, so that its source and its check are known.
#[test]
fn every_default_has_a_row() {
    let (mut seen, mut bare) = (0, Vec::new());
    for (_, path, text) in sources() {
        for after in text.split("impl Default for ").skip(1) {
            seen += 1;
            let name = after.split_whitespace().next().unwrap();
            let declared =
                text.split("default_of! {").skip(1).any(|row| row.contains(&format!("_default: {name};")));
            if !declared {
                bare.push(format!("{}: {name}", path.display()));
            }
        }
    }
    assert!(seen > 10, "the search finds no defaults");
    assert!(bare.is_empty(), "default without a row: {bare:?}");
}

/// Most lines of one file of the source, its tests counted too: one concept a file. Longer tests get a file of their own.
const MOST_LINES: usize = 400;

#[test]
fn no_file_is_longer_than_one_concept() {
    let long: Vec<String> = sources()
        .iter()
        .map(|(_, path, text)| (path, text.lines().count()))
        .filter(|(_, lines)| *lines > MOST_LINES)
        .map(|(path, lines)| format!("{}: {lines}", path.display()))
        .collect();
    assert!(long.is_empty(), "more than {MOST_LINES} lines:\n{}", long.join("\n"));
}

#[test]
fn every_module_says_what_it_is_for_and_what_it_may_use() {
    for (module, path, text) in sources() {
        let is_root = path.components().count() == 1 || path.ends_with("mod.rs");
        if module == "lib" || !is_root {
            continue;
        }
        let head: String = text.lines().take_while(|line| line.starts_with("//!")).collect();
        assert!(head.len() > 40, "{}: no purpose", path.display());
        assert!(head.contains("Uses"), "{}: does not say what it uses", path.display());
    }
}

/// Public fields that exist only with a feature: whoever builds such a value by name would build with one set of features and
/// not with another.
fn gated_fields(code: &str) -> Vec<&str> {
    let mut gated = false;
    let mut found = Vec::new();
    for line in code.lines().map(str::trim) {
        match line {
            _ if line.starts_with("#[cfg(feature") => gated = true,
            _ if line.starts_with('#') => {}
            _ => {
                let field = line.strip_prefix("pub ").and_then(|rest| rest.split_once(':'));
                let is_field = |name: &str| name.chars().all(|c| c.is_alphanumeric() || c == '_');
                if gated && field.is_some_and(|(name, _)| is_field(name)) {
                    found.push(line);
                }
                gated = false;
            }
        }
    }
    found
}

#[test]
fn no_public_field_exists_only_with_a_feature() {
    assert_eq!(
        gated_fields("#[cfg(feature = \"serde\")]\n#[must_use]\npub call: u8,\npub key: u8,"),
        ["pub call: u8,"]
    );
    for (_, path, text) in sources() {
        assert_eq!(gated_fields(&code(&text)), Vec::<&str>::new(), "{}", path.display());
    }
}
