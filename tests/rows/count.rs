//! Whether every capability has its test in the crate, in the npm package and on the page, or is named as not there.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// How many there are.
const ROWS: u32 = 82;

/// Each place, the folder of its tests and how their files end.
const PLACES: [(&str, &str, &str); 3] =
    [("crate", "tests", "rs"), ("package", "bindings/tests", "mjs"), ("page", "www-demo/tests", "mjs")];

/// What the crate alone cannot show: the package's bits (77) and the page's questions (78). The package and the page name
/// their own in `rows.test.mjs`, with the reason.
const NOT_IN_CRATE: [u32; 2] = [77, 78];

fn files(at: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(at).unwrap().flatten().map(|entry| entry.path()) {
        if entry.is_dir() {
            files(&entry, ending, found);
        } else if entry.extension().is_some_and(|kind| kind == ending) {
            found.push(entry);
        }
    }
}

/// Numbers of the rows that a text has a test for.
fn named(text: &str) -> impl Iterator<Item = u32> + '_ {
    text.lines().filter_map(|line| {
        let line = line.trim_start();
        let rest = ["fn row_", "test(\"row_", "it(\"row_", "describe(\"row_"]
            .iter()
            .find_map(|name| line.strip_prefix(name))?;
        rest.get(..2)?.parse().ok()
    })
}

/// Numbers of the rows that a text names as not shown, each with its reason: `row_07: "why",`.
fn excused(text: &str) -> impl Iterator<Item = u32> + '_ {
    text.lines().filter_map(|line| {
        let (number, _why) = line.trim_start().strip_prefix("row_")?.split_once(": \"")?;
        number.parse().ok()
    })
}

#[test]
fn every_capability_has_its_test_in_every_place_or_is_named() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut wrong = Vec::new();
    for (place, folder, ending) in PLACES {
        let mut found = Vec::new();
        files(&root.join(folder), ending, &mut found);
        let texts: Vec<String> = found.iter().map(|file| std::fs::read_to_string(file).unwrap()).collect();
        let tested: BTreeSet<u32> = texts.iter().flat_map(|text| named(text)).collect();
        let mut without: BTreeSet<u32> = texts.iter().flat_map(|text| excused(text)).collect();
        if place == "crate" {
            without.extend(NOT_IN_CRATE);
        }
        for row in 1..=ROWS {
            match (tested.contains(&row), without.contains(&row)) {
                (false, false) => wrong.push(format!("row {row}: neither tested nor named, {place}")),
                (true, true) => wrong.push(format!("row {row}: tested and named as not there, {place}")),
                _ => {}
            }
        }
        println!("{place}: {} rows tested, not there {without:?}", tested.len());
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_row_is_found_by_its_name() {
    let text = "    fn row_07_a() {}\ntest(\"row_77 b\", () => {});\n// fn row_08_c\nfn row_9x() {}\n  it(\"row_12: d\", e";
    assert_eq!(named(text).collect::<Vec<_>>(), [7, 77, 12]);
    let list = "  row_16: \"why\",\n  row_17_a: \"no number\",\n// row_18: \"a comment\",\nlet row_19 = 3;";
    assert_eq!(excused(list).collect::<Vec<_>>(), [16]);
}
