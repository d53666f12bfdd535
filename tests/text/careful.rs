//! What no English sentence may say.

/// Nothing here may promise, diagnose or urge.
const NEVER: &[&str] = &[
    "safe",
    "harmless",
    "guarantee",
    "diagnos",
    "medical",
    "injury-free",
    "injury-proof",
    "injury risk",
    "add load",
    "add weight",
    "go heavier",
    "push",
];

/// Said against the very thing: nobody is urged and nothing is diagnosed.
const DENIED: &[&str] = &["nobody has to add weight today", "nothing here diagnoses"];

/// Fails on a sentence that promises, diagnoses or urges, or that is badly spaced.
pub fn is_careful(said: &str) {
    let lower = DENIED.iter().fold(said.to_lowercase(), |rest, denied| rest.replace(denied, ""));
    assert!(!NEVER.iter().any(|word| lower.contains(word)), "{said}");
    assert!(!said.contains("  ") && said.trim() == said, "{said}");
}
