//! The provenance page is fresh, and a gap in it is found. `BISMAR_UPDATE=1` writes the page anew.

use std::path::Path;

use bismar::registry;
use bismar::source::Row;

#[path = "../../examples/shared/provenance.rs"]
mod page;
pub use page::standing_and_seen_agree;
use page::{Work, independent, report, works};

const PAGE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/src/guide/provenance.md");

fn rows() -> Vec<&'static Row> {
    registry::rows().collect()
}

fn all_works() -> Vec<Work> {
    works(Path::new(page::CHECKS)).unwrap()
}

#[test]
fn the_page_is_fresh_and_without_a_gap() {
    let report = report(&rows(), &all_works());
    assert!(report.gaps.is_empty(), "{:?}", report.gaps);
    if std::env::var_os("BISMAR_UPDATE").is_some() {
        std::fs::write(PAGE, &report.page).unwrap();
    }
    let kept = std::fs::read_to_string(PAGE).unwrap_or_default();
    assert!(kept == report.page, "src/guide/provenance.md is out of date; run with BISMAR_UPDATE=1");
}

/// Keys in the order of the page, from a module's heading and the names below it.
fn listed(page: &str) -> Vec<String> {
    let (mut module, mut listed) = ("", Vec::new());
    for line in page.lines() {
        if let Some(name) = line.strip_prefix("## `") {
            module = name.trim_end_matches('`');
        } else if line.starts_with("# ") {
            // Tables of other sections list keys too.
            module = "";
        } else if let Some(rest) = line.strip_prefix("| `").filter(|_| !module.is_empty()) {
            listed.push(format!("{module}.{}", rest.split('`').next().unwrap()));
        }
    }
    listed
}

#[test]
fn every_row_is_on_the_page_once() {
    let mut listed = listed(&report(&rows(), &all_works()).page);
    let mut wanted: Vec<_> = registry::rows().map(|row| row.key.to_string()).collect();
    listed.sort();
    wanted.sort();
    assert_eq!(listed, wanted);
}

#[test]
fn recalled_numbers_come_first() {
    let listed = listed(&report(&rows(), &all_works()).page);
    let recalled = |key: &String| registry::row(key).unwrap().seen == bismar::source::Seen::Memory;
    let last = listed.iter().rposition(recalled).unwrap();
    assert!(listed[..=last].iter().all(recalled));
}

#[test]
fn a_row_without_a_check_is_a_gap() {
    let mut works = all_works();
    for work in &mut works {
        work.checks.retain(|check| check.function != "one_rm.epley_1985");
    }
    assert_eq!(report(&rows(), &works).gaps, ["one_rm.epley_1985: no check"]);
}

#[test]
fn a_check_without_a_row_is_a_gap() {
    let rows: Vec<_> = rows().into_iter().filter(|row| row.key != "one_rm.epley_1985").collect();
    assert_eq!(report(&rows, &all_works()).gaps, ["one_rm.epley_1985: checks, no row"]);
}

#[test]
fn a_row_without_its_place_is_a_gap() {
    let mut bare = *registry::row("one_rm.epley_1985").unwrap();
    (bare.place, bare.doc) = ("", "");
    let bare: &'static Row = Box::leak(Box::new(bare));
    let rows: Vec<_> = rows().into_iter().map(|row| if row.key == bare.key { bare } else { row }).collect();
    let gaps = report(&rows, &all_works()).gaps;
    assert_eq!(gaps, ["one_rm.epley_1985: no place in its source", "one_rm.epley_1985: no documentation"]);
}

#[test]
fn what_is_recalled_in_part_says_which_part() {
    let changed = |key: &str, change: fn(&mut Row)| {
        let mut row = *registry::row(key).unwrap();
        change(&mut row);
        let row: &'static Row = Box::leak(Box::new(row));
        let rows: Vec<_> = rows().into_iter().map(|old| if old.key == row.key { row } else { old }).collect();
        report(&rows, &all_works()).gaps
    };
    let key = "horizon.ewgsop2_floor";
    assert_eq!(
        changed(key, |row| row.recalled = ""),
        [format!("{key}: a recalled constant that the row does not own up to")]
    );
    let key = "loading.attempt_step";
    assert_eq!(
        changed(key, |row| row.recalled = "half after a miss"),
        [format!("{key}: recalled in part and seen disagree")]
    );
}

#[test]
fn fewer_than_three_checks_need_a_reason() {
    let key = "loading.iwf_bar_men";
    let mut works = all_works();
    assert!(report(&rows(), &works).gaps.is_empty());
    for work in &mut works {
        work.fewer.retain(|(named, _)| named != key);
    }
    assert_eq!(report(&rows(), &works).gaps, [format!("{key}: fewer than three checks, and no reason")]);
}

#[test]
fn a_reason_that_is_not_needed_is_a_gap() {
    let mut works = all_works();
    works[0].fewer.push(("one_rm.epley_1985".into(), "none".into()));
    let gap = "one_rm.epley_1985: a reason for fewer than three checks that is not needed";
    assert_eq!(report(&rows(), &works).gaps, [gap]);
}

#[test]
fn a_formula_needs_a_value_from_outside() {
    let key = "one_rm.epley_1985";
    let mut works = all_works();
    for check in works.iter_mut().flat_map(|work| &mut work.checks).filter(|check| check.function == key) {
        check.kind = "choice".into();
    }
    assert_eq!(report(&rows(), &works).gaps, [format!("{key}: no value from outside, and no reason")]);
}

/// Only such a check could have shown a wrong formula; a constant typed twice could not.
#[test]
fn a_quarter_of_the_rows_have_a_result_or_an_independent_implementation() {
    let rows = rows();
    let with = independent(&rows, &all_works());
    assert!(4 * with >= rows.len(), "{with} of {}", rows.len());
}

/// Brzycki's repetitions at a part of the maximum miss what three studies counted, and nothing else speaks for them.
#[test]
fn an_outcome_that_is_missed_counts_for_nothing() {
    let row = registry::row("one_rm.brzycki_1993_reps").unwrap();
    let works = all_works();
    let missed = |check: &&page::Check| check.function == row.key && check.kind == "missed";
    assert!(works.iter().flat_map(|work| &work.checks).any(|check| missed(&check)));
    assert_eq!(independent(&[row], &works), 0);
}
