//! Published checks: every public formula against something outside the project.
//!
//! Reads `tests/published/*.json`, and every `*.json` below the folders named in `BISMAR_VECTORS` (separated
//! by `:`), so that anyone can hold the crate against cases of their own. `BISMAR_UPDATE=1` writes
//! `tests/published/names.json` and the page `src/guide/provenance.md` anew.
//!
//! # A file of checks
//!
//! ```json
//! {
//!   "kind": "result",
//!   "source": { "id": "author-year", "standing": "published", "seen": "secondary",
//!               "copies": "the tests of two statistical packages", "citation": "...", "doi": "...", "where": "table 3" },
//!   "cases": [
//!     { "function": "module.name", "given": {}, "expect": 1.5, "within": 0.05, "note": "..." },
//!     { "function": "module.name", "given": {}, "expect_error": "out_of_range" }
//!   ]
//! }
//! ```
//!
//! A case may carry its own `kind`, `standing`, `seen`, `copies`, `library` and `where` in place of the file's.
//!
//! `kind` says what a case can show:
//!
//! | kind | what is expected | standing |
//! |---|---|---|
//! | `result` | an outcome somebody else printed or certified: a worked example, a measured mean, a certified value | `published`, `standard`, `common-practice` |
//! | `constant` | a number or a rule of the source, typed a second time | `published`, `standard`, `common-practice` |
//! | `library` | the answer of an independent implementation; `library` names it with its version | `computed` |
//! | `evaluation` | the same formula evaluated elsewhere | `computed` |
//! | `choice` | our own number or rule, written down a second time | `our-choice`, `common-practice` |
//!
//! A case with `expect_error` has no kind: what is refused is this crate's contract, whatever the numbers are. It is
//! counted as a refusal.
//!
//! `seen` says how a published, standard or common number reached this project: `read` in the work or its abstract;
//! `secondary`, equal in independent public copies, with `copies` naming the kinds of place and never an address;
//! `memory`, recalled, which no standard may be. What is computed or our choice has none.
//!
//! A file may also hold, beside `cases`, the reasons why a key has no more: `"fewer_than_three": { "module.name": "why" }`
//! and `"no_outside_value": { "module.name": "why" }`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use bismar::registry;
use bismar::source::Kind;
use bismar::value::Value;

#[path = "published/provenance.rs"]
mod provenance;

const FOLDER: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/published");

/// Standings whose numbers came from somewhere.
const SOURCED: [&str; 3] = ["published", "standard", "common-practice"];

struct Case {
    place: String,
    function: String,
    body: Value,
    standing: String,
    seen: Option<String>,
    kind: Option<String>,
    library: Option<String>,
    copies: Option<String>,
}

fn text<'a>(value: &'a Value, field: &str) -> Option<&'a str> {
    match value.field(field) {
        Some(Value::Text(text)) => Some(text),
        _ => None,
    }
}

fn json_files(folder: &Path, found: &mut Vec<PathBuf>) {
    let mut entries: Vec<_> = std::fs::read_dir(folder)
        .unwrap_or_else(|error| panic!("{}: {error}", folder.display()))
        .map(|entry| entry.unwrap().path())
        .collect();
    entries.sort();
    for path in entries {
        if path.is_dir() {
            json_files(&path, found);
        } else if path.extension().is_some_and(|kind| kind == "json") && !path.ends_with("names.json") {
            found.push(path);
        }
    }
}

fn read_cases(path: &Path) -> Vec<Case> {
    let name = path.file_name().unwrap().to_string_lossy().into_owned();
    let document = std::fs::read_to_string(path).unwrap();
    cases_in(&name, &Value::from_json(&document).unwrap_or_else(|error| panic!("{name}: {error}")))
}

fn cases_in(name: &str, document: &Value) -> Vec<Case> {
    let source = document.field("source").unwrap_or_else(|| panic!("{name}: no source"));
    let Some(Value::List(cases)) = document.field("cases") else { panic!("{name}: no cases") };
    cases
        .iter()
        .enumerate()
        .map(|(at, body)| {
            let place = format!("{name}[{at}]");
            let own = |field| text(body, field).or_else(|| text(source, field)).map(String::from);
            let standing = own("standing").unwrap_or_else(|| panic!("{place}: no standing"));
            let refusal = body.field("expect_error").is_some();
            let inherited = if refusal { None } else { text(document, "kind") };
            let kind = text(body, "kind").or(inherited).map(String::from);
            let fields = ["function", "given", "expect", "within", "expect_error", "published", "follows"];
            let extra = ["kind", "standing", "seen", "copies", "library", "where", "note"];
            if let Value::Map(map) = body {
                for (key, _) in map {
                    let known = fields.contains(&&**key) || extra.contains(&&**key);
                    assert!(known, "{place}: unknown field {key}");
                }
            }
            let function = text(body, "function").unwrap_or_else(|| panic!("{place}: no function")).into();
            // What is computed or chosen in a file of printed numbers has not been seen anywhere.
            let sourced = SOURCED.contains(&&*standing);
            let seen = if sourced { own("seen") } else { text(body, "seen").map(String::from) };
            let (library, copies) = (own("library"), own("copies"));
            Case { place, function, body: body.clone(), standing, seen, kind, library, copies }
        })
        .collect()
}

/// A published case says how its numbers reached this project; a computed one or a choice has nothing to read.
fn check_seen(case: &Case) -> Result<(), String> {
    let place = &case.place;
    match (case.standing.as_str(), case.seen.as_deref()) {
        ("published" | "common-practice", Some("read" | "memory")) | ("standard", Some("read")) => Ok(()),
        ("published" | "standard" | "common-practice", Some("secondary")) => match case.copies.as_deref() {
            Some(copies) if !copies.trim().is_empty() && !names_an_address(copies) => Ok(()),
            copies => {
                Err(format!("{place}: secondary needs its kinds of copy, without an address: {copies:?}"))
            }
        },
        ("computed" | "our-choice", None) => Ok(()),
        (standing, seen) => Err(format!("{place}: standing {standing} with seen {seen:?}")),
    }
}

/// Copies are named by kind of place: a copy may move or go, and is no authority.
fn names_an_address(copies: &str) -> bool {
    ["://", "www.", ".com", ".org", ".net", ".io"].iter().any(|part| copies.contains(part))
}

/// What a case can show has to agree with the authority it claims.
fn check_kind(case: &Case) -> Result<(), String> {
    let place = &case.place;
    let refusal = case.body.field("expect_error").is_some();
    match (case.kind.as_deref(), case.standing.as_str()) {
        (None, _) if refusal => Ok(()),
        (Some(kind), _) if refusal => Err(format!("{place}: a refusal has no kind, {kind} is given")),
        (None, _) => Err(format!("{place}: no kind")),
        (Some("result"), "published" | "standard" | "common-practice") => Ok(()),
        (Some("constant"), "published" | "standard" | "common-practice") => Ok(()),
        (Some("library"), "computed") => match case.library.as_deref() {
            Some(library) if library.contains(|letter: char| letter.is_ascii_digit()) => Ok(()),
            library => Err(format!("{place}: a library is named with its version, not {library:?}")),
        },
        (Some("evaluation"), "computed") => Ok(()),
        (Some("choice"), "our-choice" | "common-practice") => Ok(()),
        (Some(kind), standing) => Err(format!("{place}: kind {kind} with standing {standing}")),
    }
}

fn check_provenance(case: &Case) -> Result<(), String> {
    check_seen(case)?;
    check_kind(case)
}

/// Compares the named fields only. A number that is not whole needs a tolerance.
fn compare(
    path: &str,
    expected: &Value,
    within: Option<&Value>,
    actual: Option<&Value>,
) -> Result<(), String> {
    match (expected, actual) {
        (Value::Map(fields), Some(actual)) => {
            for (key, expected) in fields {
                let within = match within {
                    Some(Value::Number(_)) => within,
                    Some(other) => other.field(key),
                    None => None,
                };
                compare(&format!("{path}.{key}"), expected, within, actual.field(key))?;
            }
            Ok(())
        }
        (Value::List(items), Some(Value::List(actual))) => {
            if items.len() != actual.len() {
                return Err(format!("{path}: {} items instead of {}", actual.len(), items.len()));
            }
            for (at, (expected, actual)) in items.iter().zip(actual).enumerate() {
                let within = match within {
                    Some(Value::List(list)) => list.get(at),
                    other => other,
                };
                compare(&format!("{path}[{at}]"), expected, within, Some(actual))?;
            }
            Ok(())
        }
        (Value::Number(expected), Some(Value::Number(actual))) => {
            let tolerance = match within {
                Some(Value::Number(tolerance)) => *tolerance,
                _ if expected.fract() == 0.0 => 0.0,
                _ => return Err(format!("{path}: {expected} is not whole and has no tolerance")),
            };
            // A tolerance of half a printed digit must not fail on the last bit of that half.
            let slack = if tolerance > 0.0 { expected.abs() * 1e-15 } else { 0.0 };
            if (actual - expected).abs() <= tolerance + slack {
                Ok(())
            } else {
                Err(format!("{path}: {actual} instead of {expected} within {tolerance}"))
            }
        }
        // An absent field stands for null.
        (Value::Null, None) => Ok(()),
        (expected, Some(actual)) if expected == actual => Ok(()),
        (expected, actual) => Err(format!("{path}: {actual:?} instead of {expected:?}")),
    }
}

fn run(case: &Case) -> Result<(), String> {
    let place = &case.place;
    let given = case.body.field("given").ok_or_else(|| format!("{place}: no given"))?;
    let result = registry::call(&case.function, given);
    match (case.body.field("expect"), text(&case.body, "expect_error"), result) {
        (Some(expected), None, Ok(actual)) => {
            let published = case.body.field("published").is_some();
            let follows = case.body.field("follows");
            if published && follows != Some(&Value::Bool(false)) {
                return Err(format!("{place}: a kept published number needs \"follows\": false"));
            }
            if published {
                // What is recorded as not following must really not follow, or the record is wrong.
                let kept = case.body.field("published").unwrap_or(&Value::Null);
                if compare(place, kept, case.body.field("within"), Some(&actual)).is_ok() {
                    return Err(format!("{place}: the published number does follow"));
                }
            }
            compare(place, expected, case.body.field("within"), Some(&actual))
        }
        (None, Some(code), Err(error)) if error.code().as_str() == code => Ok(()),
        (None, Some(code), Err(error)) => Err(format!("{place}: error {error} instead of {code}")),
        (None, Some(code), Ok(actual)) => Err(format!("{place}: {actual:?} instead of error {code}")),
        (Some(_), None, Err(error)) => Err(format!("{place}: {error}")),
        _ => Err(format!("{place}: needs exactly one of expect and expect_error")),
    }
}

fn own_cases() -> Vec<Case> {
    let mut files = Vec::new();
    json_files(Path::new(FOLDER), &mut files);
    files.iter().flat_map(|path| read_cases(path)).collect()
}

#[test]
fn every_published_check_holds() {
    let mut cases = own_cases();
    if let Ok(modules) = std::env::var("BISMAR_MODULES") {
        let wanted: Vec<_> = modules.split(':').collect();
        cases.retain(|case| wanted.iter().any(|module| case.function.split('.').next() == Some(module)));
    }
    let mut failures = Vec::new();
    let mut functions = BTreeSet::new();
    let mut standings: BTreeMap<String, usize> = BTreeMap::new();
    for case in &cases {
        failures.extend(check_provenance(case).err());
        failures.extend(run(case).err());
        functions.insert(case.function.clone());
        let seen = case.seen.as_deref().map_or(String::new(), |seen| format!(", {seen}"));
        let kind = case.kind.as_deref().unwrap_or("refusal");
        *standings.entry(format!("{kind:10} {}{seen}", case.standing)).or_default() += 1;
    }
    println!("published checks: {} cases over {} functions", cases.len(), functions.len());
    for (standing, count) in &standings {
        println!("  {count:5} {standing}");
    }
    assert!(failures.is_empty(), "{} failures:\n{}", failures.len(), failures.join("\n"));
}

#[test]
fn cases_from_outside_hold() {
    let Ok(folders) = std::env::var("BISMAR_VECTORS") else { return };
    let mut failures = Vec::new();
    for folder in folders.split(':').filter(|folder| !folder.is_empty()) {
        let mut files = Vec::new();
        json_files(Path::new(folder), &mut files);
        for path in files {
            let cases = read_cases(&path);
            let (mapped, unmapped): (Vec<_>, Vec<_>) =
                cases.iter().partition(|case| registry::row(&case.function).is_some());
            let keys: BTreeSet<_> = unmapped.iter().map(|case| case.function.as_str()).collect();
            println!("{}: {} mapped, not mapped: {keys:?}", path.display(), mapped.len());
            if mapped.is_empty() {
                failures.push(format!("{}: nothing maps", path.display()));
            }
            failures.extend(mapped.iter().filter_map(|case| run(case).err()));
        }
    }
    assert!(failures.is_empty(), "{} failures:\n{}", failures.len(), failures.join("\n"));
}

/// A case of one kind, standing and seen, for the rules about them.
fn case_of(text: &str) -> Case {
    let document = format!(r#"{{"source": {{"id": "x", "citation": "x"}}, "cases": [{text}]}}"#);
    cases_in("x", &Value::from_json(&document).unwrap()).pop().unwrap()
}

#[test]
fn kind_standing_and_seen_must_agree() {
    let holds = [
        r#"{"function": "x", "expect": 1, "kind": "result", "standing": "published", "seen": "read"}"#,
        r#"{"function": "x", "expect": 1, "kind": "constant", "standing": "standard", "seen": "secondary",
            "copies": "two public code copies"}"#,
        r#"{"function": "x", "expect": 1, "kind": "library", "standing": "computed", "library": "scipy 1.17.1"}"#,
        r#"{"function": "x", "expect": 1, "kind": "evaluation", "standing": "computed"}"#,
        r#"{"function": "x", "expect": 1, "kind": "choice", "standing": "our-choice"}"#,
        r#"{"function": "x", "expect_error": "out_of_range", "standing": "computed"}"#,
    ];
    for text in holds {
        assert_eq!(check_provenance(&case_of(text)), Ok(()), "{text}");
    }
    let fails = [
        r#"{"function": "x", "expect": 1, "standing": "published", "seen": "read"}"#,
        r#"{"function": "x", "expect": 1, "kind": "result", "standing": "computed"}"#,
        r#"{"function": "x", "expect": 1, "kind": "result", "standing": "published"}"#,
        r#"{"function": "x", "expect": 1, "kind": "constant", "standing": "standard", "seen": "secondary"}"#,
        r#"{"function": "x", "expect": 1, "kind": "constant", "standing": "standard", "seen": "secondary",
            "copies": "https://copies.example"}"#,
        r#"{"function": "x", "expect": 1, "kind": "library", "standing": "computed"}"#,
        r#"{"function": "x", "expect": 1, "kind": "library", "standing": "computed", "library": "scipy"}"#,
        r#"{"function": "x", "expect": 1, "kind": "evaluation", "standing": "published", "seen": "read"}"#,
        r#"{"function": "x", "expect": 1, "kind": "constant", "standing": "our-choice"}"#,
        r#"{"function": "x", "expect": 1, "kind": "choice", "standing": "computed"}"#,
        r#"{"function": "x", "expect": 1, "kind": "constant", "standing": "standard", "seen": "memory"}"#,
        r#"{"function": "x", "expect": 1, "kind": "guess", "standing": "computed"}"#,
        r#"{"function": "x", "expect_error": "out_of_range", "kind": "result", "standing": "published", "seen": "read"}"#,
    ];
    for text in fails {
        assert!(check_provenance(&case_of(text)).is_err(), "{text}");
    }
}

#[test]
fn every_row_has_a_check() {
    let checked: BTreeSet<String> = own_cases().into_iter().map(|case| case.function).collect();
    let missing: Vec<_> = registry::rows().map(|row| row.key).filter(|key| !checked.contains(*key)).collect();
    assert!(missing.is_empty(), "rows without a check in tests/published: {missing:?}");
}

#[test]
fn rows_and_entries_are_the_same_keys_once_each() {
    let rows: Vec<_> = registry::rows().map(|row| row.key).collect();
    let entries: Vec<_> = registry::entries().map(|entry| entry.key).collect();
    assert_eq!(rows, entries);
    let unique: BTreeSet<_> = rows.iter().collect();
    assert_eq!(unique.len(), rows.len(), "a key is declared twice");
}

/// Places of fields that no case names; what is no map or list is named by being expected.
fn unnamed(path: &str, actual: &Value, expected: &[&Value]) -> Vec<String> {
    let each: Vec<(String, &Value, Vec<&Value>)> = match actual {
        Value::Map(fields) => fields
            .iter()
            .map(|(key, actual)| {
                let named = expected.iter().filter_map(|expected| expected.field(key)).collect();
                (format!("{path}.{key}"), actual, named)
            })
            .collect(),
        Value::List(items) => {
            let lists: Vec<&Vec<Value>> = expected
                .iter()
                .filter_map(|expected| if let Value::List(list) = expected { Some(list) } else { None })
                .collect();
            let named = |at: usize| lists.iter().filter_map(|list| list.get(at)).collect();
            items
                .iter()
                .enumerate()
                .map(|(at, actual)| (format!("{path}[{at}]"), actual, named(at)))
                .collect()
        }
        _ if expected.is_empty() => return vec![path.to_string()],
        _ => return Vec::new(),
    };
    if each.is_empty() && expected.is_empty() {
        return vec![path.to_string()];
    }
    each.into_iter().flat_map(|(path, actual, expected)| unnamed(&path, actual, &expected)).collect()
}

/// A field of a default that no case names could be any number.
#[test]
fn every_field_of_a_default_is_named_by_its_cases() {
    let cases = own_cases();
    let (mut seen, mut missing) = (0, Vec::new());
    for row in registry::rows().filter(|row| row.key.ends_with("_default")) {
        seen += 1;
        let expected: Vec<&Value> = cases
            .iter()
            .filter(|case| case.function == row.key)
            .filter_map(|case| case.body.field("expect"))
            .collect();
        let actual = registry::call(row.key, &Value::Map(Vec::new())).unwrap();
        missing.extend(unnamed(row.key, &actual, &expected));
    }
    assert!(seen > 10, "the search finds no defaults");
    assert!(missing.is_empty(), "fields of defaults without a check: {missing:?}");
}

#[test]
fn a_field_that_no_case_names_is_found_at_any_depth() {
    let value = |json| Value::from_json(json).unwrap();
    let actual = value(r#"{"a": 1, "b": {"c": 2, "d": 3}, "e": [{"f": 4, "g": 5}], "h": []}"#);
    let (some, more) = (value(r#"{"a": 1, "b": {"c": 2}, "e": [{"f": 4}]}"#), value(r#"{"b": {"d": 3}}"#));
    assert_eq!(unnamed("x", &actual, &[&some]), ["x.b.d", "x.e[0].g", "x.h"]);
    assert_eq!(unnamed("x", &actual, &[&some, &more]), ["x.e[0].g", "x.h"]);
}

/// A row that says nothing about where its numbers come from is a gap, whatever its checks say.
#[test]
fn every_row_names_its_source() {
    use bismar::source::Seen;
    for row in registry::rows() {
        assert!(!row.source.citation.is_empty() && !row.place.is_empty(), "{}: source and place", row.key);
        assert!(provenance::standing_and_seen_agree(row), "{}: standing and seen disagree", row.key);
        assert_eq!(
            row.seen == Seen::Secondary,
            !row.copies.is_empty(),
            "{}: copies and seen disagree",
            row.key
        );
        assert!(!names_an_address(row.copies), "{}: copies are named by kind of place", row.key);
        assert!(
            row.doc.contains(row.recalled),
            "{}: recalled in part, and its documentation is silent",
            row.key
        );
        assert!(row.doc.trim().lines().next().is_some(), "{}: no documentation", row.key);
    }
}

/// What is only recalled says so wherever it is shown: in its documentation, and beside an answer that carries cautions.
#[test]
fn what_is_recalled_says_so() {
    use bismar::source::Seen;
    let recalled = |key: &str| registry::row(key).is_some_and(|row| row.seen == Seen::Memory);
    let silent: Vec<_> = registry::rows()
        .filter(|row| row.seen == Seen::Memory && !row.doc.contains("Recalled, not read again"))
        .map(|row| row.key)
        .collect();
    assert!(silent.is_empty(), "recalled rows whose documentation does not say so: {silent:?}");
    let (mut seen, mut silent) = (0, Vec::new());
    // A function whose first answer carries no cautions carries none: most are plain numbers.
    let mut plain = BTreeSet::new();
    for case in own_cases().iter().filter(|case| recalled(&case.function)) {
        if plain.contains(&case.function) {
            continue;
        }
        let Some(Ok(actual)) = case.body.field("given").map(|given| registry::call(&case.function, given))
        else {
            continue;
        };
        let carried = cautions_in(&actual);
        if carried.is_empty() {
            plain.insert(case.function.clone());
        }
        for cautions in carried {
            seen += 1;
            if !cautions.contains(&Value::Text("source_not_read".into())) {
                silent.push(case.place.clone());
            }
        }
    }
    assert!(seen > 30, "the search finds no cautions");
    assert!(silent.is_empty(), "answers of recalled rows without the caution: {silent:?}");
}

/// Every list of cautions in an answer, at any depth.
fn cautions_in(value: &Value) -> Vec<&Vec<Value>> {
    match value {
        Value::Map(fields) => fields
            .iter()
            .flat_map(|(key, inside)| match inside {
                Value::List(cautions) if &**key == "cautions" => vec![cautions],
                inside => cautions_in(inside),
            })
            .collect(),
        Value::List(items) => items.iter().flat_map(cautions_in).collect(),
        _ => Vec::new(),
    }
}

#[test]
fn names_are_listed() {
    let mut names: Vec<(bismar::value::Key, Value)> = Vec::new();
    for row in registry::rows() {
        let arguments: Vec<_> = row
            .arguments
            .iter()
            .map(|argument| (argument.name.into(), Value::Text(plain(argument.r#type).into())))
            .collect();
        names.push((
            row.key.into(),
            Value::Map(vec![
                (
                    "kind".into(),
                    Value::Text(if row.kind == Kind::Function { "function" } else { "constant" }.into()),
                ),
                ("arguments".into(), Value::Map(arguments)),
                ("result".into(), Value::Text(plain(row.result).into())),
            ]),
        ));
    }
    names.sort_by(|(a, _), (b, _)| a.cmp(b));
    let written = format!("{}\n", Value::Map(names).to_json_pretty());
    let path = Path::new(FOLDER).join("names.json");
    if std::env::var_os("BISMAR_UPDATE").is_some() {
        std::fs::write(&path, &written).unwrap();
    }
    let kept = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(kept == written, "tests/published/names.json is out of date; run with BISMAR_UPDATE=1");
}

/// A type as written in the source, with the spacing of the macro undone.
fn plain(r#type: &str) -> String {
    r#type
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .replace(" <", "<")
        .replace("< ", "<")
        .replace(" >", ">")
}
