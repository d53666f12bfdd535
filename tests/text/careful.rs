//! What no English sentence may say.

use super::never::{NEVER, undenied};

/// Fails on a sentence that promises, diagnoses or urges, that shows the inside of the code, or that is badly spaced.
pub fn is_careful(said: &str) {
    let lower = undenied(said);
    for (word, why) in NEVER {
        assert!(!lower.contains(word), "{word:?} ({why}) in {said:?}");
    }
    assert!(!said.contains("  ") && said.trim() == said, "{said}");
    assert!(!has_machine_date(said), "{said}");
}

/// Four digits, a hyphen, two digits, a hyphen: a date that no person writes.
fn has_machine_date(said: &str) -> bool {
    let shape = |window: &[char]| {
        window.iter().enumerate().all(|(at, letter)| match at {
            4 | 7 => *letter == '-',
            _ => letter.is_ascii_digit(),
        })
    };
    said.chars().collect::<Vec<_>>().windows(10).any(shape)
}
