//! The page of rules names the tests that show them: each of them is there.

use std::collections::BTreeSet;
use std::path::Path;

#[path = "../shared/files.rs"]
mod files;

#[test]
fn every_rule_of_the_guide_names_tests_that_are_there() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let page = std::fs::read_to_string(root.join("src/guide/never.md")).unwrap();
    let tests: String = files::files(&root.join("tests"), &[".rs"])
        .into_iter()
        .map(|path| std::fs::read_to_string(path).unwrap())
        .collect();
    let there: BTreeSet<&str> = tests
        .split("#[test]\n")
        .skip(1)
        .filter_map(|test| test.split("fn ").nth(1)?.split('(').next())
        .collect();
    for rule in 1..=18 {
        let begins = format!("**{rule}. ");
        let at = page.find(&begins).unwrap_or_else(|| panic!("no rule {rule}"));
        let own = &page[at + begins.len()..];
        let own = &own[..own.find("\n**").unwrap_or(own.len())];
        let named: Vec<&str> = own
            .split_once("Test: ")
            .unwrap_or_else(|| panic!("rule {rule} names no test"))
            .1
            .split('`')
            .skip(1)
            .step_by(2)
            .filter(|name| !name.contains(['(', ':', '.']))
            .collect();
        assert!(!named.is_empty(), "rule {rule} names no test");
        let gone: Vec<&str> =
            named.into_iter().filter(|name| name.contains('_') && !there.contains(name)).collect();
        assert!(gone.is_empty(), "rule {rule} names tests that are not there: {gone:?}");
    }
}
