//! Whether every capability has its test in the crate, in the npm package and on the page, and whether that test is about it.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// What each row is about: a test of the row names one of these words.
const ROWS: [(u32, &str); 82] = [
    (1, "pounds"),
    (2, "exact"),
    (3, "total"),
    (4, "pairs"),
    (5, "rounded|over what"),
    (6, "pounds"),
    (7, "weigh"),
    (8, "collars"),
    (9, "gap"),
    (10, "height"),
    (11, "blocks"),
    (12, "hands"),
    (13, "warm up|warm ups"),
    (14, "fewest"),
    (15, "one bar|share"),
    (16, "tip"),
    (17, "dumbbells"),
    (18, "too large"),
    (19, "bridge"),
    (20, "help"),
    (21, "equations"),
    (22, "range"),
    (23, "and back"),
    (24, "own curve"),
    (25, "rating"),
    (26, "unsaid"),
    (27, "passes"),
    (28, "first"),
    (29, "cold first set"),
    (30, "sessions"),
    (31, "gate holds"),
    (32, "four weeks"),
    (33, "course|got to"),
    (34, "way"),
    (35, "zones"),
    (36, "morning"),
    (37, "stops everything"),
    (38, "override"),
    (39, "clearance"),
    (40, "break"),
    (41, "missed session"),
    (42, "rungs"),
    (43, "range"),
    (44, "tempo"),
    (45, "compared"),
    (46, "strict lift"),
    (47, "own ratio"),
    (48, "region"),
    (49, "nothing moves"),
    (50, "own baseline|own usual"),
    (51, "vote|signs"),
    (52, "chance"),
    (53, "equal conditions"),
    (54, "velocity"),
    (55, "after a set"),
    (56, "back off"),
    (57, "double progression"),
    (58, "table"),
    (59, "technique"),
    (60, "nothing passes"),
    (61, "sets"),
    (62, "session"),
    (63, "own band"),
    (64, "easy week"),
    (65, "trend"),
    (66, "smallest difference"),
    (67, "block"),
    (68, "to keep|expect"),
    (69, "floors"),
    (70, "lapses|stopped"),
    (71, "kept"),
    (72, "source"),
    (73, "read again"),
    (74, "lost|loses none"),
    (75, "days are counted"),
    (76, "what would do"),
    (77, "every way|last bit|same bits"),
    (78, "page|questions"),
    (79, "handover|another coach"),
    (80, "seed"),
    (81, "safety text"),
    (82, "mark"),
];

/// Each place, the folder of its tests and how their files end.
const PLACES: [(&str, &str, &str); 3] =
    [("crate", "tests", "rs"), ("package", "bindings/tests", "mjs"), ("page", "www-demo/tests", "mjs")];

/// How a test says that something has to be so: of Rust, of Node, of the page's own hands.
const HOLDS: [&str; 8] = ["assert", "near(", "shows(", "hides(", "big(", "about(", "told(", "wrong"];

fn files(at: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(at).unwrap().flatten().map(|entry| entry.path()) {
        if entry.is_dir() {
            files(&entry, ending, found);
        } else if entry.extension().is_some_and(|kind| kind == ending) {
            found.push(entry);
        }
    }
}

/// The tests of rows in a text: number, name in words, and whether anything has to be so up to the next item.
fn named(text: &str) -> Vec<(u32, String, bool)> {
    let mut found: Vec<(u32, String, bool)> = Vec::new();
    let mut inside = false;
    for line in text.lines() {
        let start = line.trim_start();
        let starts =
            ["fn ", "test(\"", "it(\"", "describe(\""].iter().find_map(|name| start.strip_prefix(name));
        if let Some((row, rest)) = starts.and_then(|name| name.strip_prefix("row_")?.split_at_checked(2))
            && let Ok(row) = row.parse()
        {
            let name = rest.split(['(', '"']).next().unwrap_or_default();
            found.push((row, name.replace(['_', '-', ':'], " ").to_lowercase(), false));
            inside = true;
            continue;
        }
        // The tests of a described row are its own; any other begins something else.
        let other = start.starts_with("fn ") || start.starts_with("test(\"") || start.starts_with("it(\"row");
        inside &= !other;
        if let Some((_, _, holds)) = found.last_mut().filter(|_| inside) {
            *holds |= HOLDS.iter().any(|word| line.contains(word));
        }
    }
    found
}

#[test]
fn every_capability_has_its_test_in_every_place() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut wrong = Vec::new();
    assert!(ROWS.iter().map(|(row, _)| *row).eq(1..=82));
    for (place, folder, ending) in PLACES {
        let mut found = Vec::new();
        files(&root.join(folder), ending, &mut found);
        let mut tests: BTreeMap<u32, Vec<(String, bool)>> = BTreeMap::new();
        for file in &found {
            for (row, name, holds) in named(&std::fs::read_to_string(file).unwrap()) {
                tests.entry(row).or_default().push((name, holds));
            }
        }
        for (row, about) in ROWS {
            let own = tests.remove(&row).unwrap_or_default();
            if !own.iter().any(|(name, _)| about.split('|').any(|word| name.contains(word))) {
                wrong.push(format!("row {row}, {place}: no test is about \"{about}\": {own:?}"));
            }
            let empty = own.iter().filter(|(_, holds)| !holds);
            wrong.extend(
                empty.map(|(name, _)| format!("row {row}, {place}: nothing has to be so in \"{name}\"")),
            );
        }
        wrong.extend(tests.keys().map(|row| format!("row {row}, {place}: there is no such row")));
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// What the page asks is asked by number: each of its questions once. That they are answered, offline and in time, is for the
/// tests of the page (`row_78` there); that the package has what they ask, for those of the package.
#[test]
fn row_78_every_question_of_the_page_is_there_once() {
    let mut found = Vec::new();
    files(&Path::new(env!("CARGO_MANIFEST_DIR")).join("www-demo/src/questions"), "ts", &mut found);
    let texts = found.iter().map(|file| std::fs::read_to_string(file).unwrap());
    let mut numbers: Vec<u32> = texts
        .flat_map(|text| {
            let after = text.split("{ number: ").skip(1);
            after.map(|rest| rest.split(',').next().unwrap().parse().unwrap()).collect::<Vec<_>>()
        })
        .collect();
    numbers.sort_unstable();
    assert_eq!(numbers, (1..=33).collect::<Vec<_>>());
}

#[test]
fn a_row_is_found_by_its_name_and_by_what_it_holds() {
    let text = "    fn row_07_a() {\n  assert!(x);\n}\nfn other() { assert!(y) }\ntest(\"row_77: b-c\", () => {});\n// fn row_08_c\nfn row_9x() {}\n  it(\"row_12: d\", e\n near(1)";
    let found = named(text);
    let found: Vec<(u32, &str, bool)> =
        found.iter().map(|(row, name, holds)| (*row, name.as_str(), *holds)).collect();
    assert_eq!(found, [(7, " a", true), (77, "  b c", false), (12, "  d", true)]);
}
