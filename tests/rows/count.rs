//! Whether every capability has its test.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// How many there are.
const ROWS: u32 = 82;

fn files(at: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(at).unwrap().flatten().map(|entry| entry.path()) {
        if entry.is_dir() {
            files(&entry, found);
        } else if entry.extension().is_some_and(|kind| kind == "rs" || kind == "mjs") {
            found.push(entry);
        }
    }
}

/// Numbers of the rows that a text has a test for.
fn named(text: &str) -> impl Iterator<Item = u32> + '_ {
    text.lines().filter_map(|line| {
        let line = line.trim_start();
        let rest =
            ["fn row_", "test(\"row_", "describe(\"row_"].iter().find_map(|name| line.strip_prefix(name))?;
        rest.get(..2)?.parse().ok()
    })
}

#[test]
fn every_capability_has_its_test() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    for folder in ["tests", "bindings/tests", "www-demo/tests"] {
        files(&root.join(folder), &mut found);
    }
    let rows: BTreeSet<u32> = found
        .iter()
        .flat_map(|file| named(&std::fs::read_to_string(file).unwrap()).collect::<Vec<_>>())
        .collect();
    let without: Vec<u32> = (1..=ROWS).filter(|row| !rows.contains(row)).collect();
    assert!(without.is_empty(), "no test for {without:?}");
}

#[test]
fn a_row_is_found_by_its_name() {
    let text = "    fn row_07_a() {}\ntest(\"row_77 b\", () => {});\n// fn row_08_c\nfn row_9x() {}";
    assert_eq!(named(text).collect::<Vec<_>>(), [7, 77]);
}
