//! The English sentences: one for every code, with its numbers, careful with people.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may panic")]

use std::collections::BTreeSet;

#[path = "text/never.rs"]
mod never;
#[path = "text/bounds.rs"]
mod bounds;
#[path = "text/careful.rs"]
mod careful;
#[path = "text/changes.rs"]
mod changes;
#[path = "text/errors.rs"]
mod errors;
#[path = "text/findings.rs"]
mod findings;
#[path = "text/gym.rs"]
mod gym;
#[path = "text/loads.rs"]
mod loads;
#[path = "text/reasons.rs"]
mod reasons;
#[path = "text/steps.rs"]
mod steps;
#[path = "text/stops.rs"]
mod stops;

/// The names under which the variants of an enum are written, read from its source: where the crate keeps no list of
/// them, a variant that nobody says would otherwise go unnoticed.
pub fn variants_of(source: &str, named: &str) -> BTreeSet<String> {
    let start = format!("pub enum {named} {{\n");
    let body = source.split(&start).nth(1).unwrap().split("\n}").next().unwrap();
    let variants = body.lines().filter_map(|line| line.strip_prefix("    "));
    let first_capital = |line: &&str| line.starts_with(char::is_uppercase);
    variants.filter(first_capital).map(snake).collect()
}

fn snake(line: &str) -> String {
    let variant: String = line.chars().take_while(|letter| letter.is_alphanumeric()).collect();
    let mut written = String::new();
    for (at, letter) in variant.chars().enumerate() {
        if letter.is_uppercase() && at > 0 {
            written.push('_');
        }
        written.extend(letter.to_lowercase());
    }
    written
}
