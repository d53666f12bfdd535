//! Words that nobody should read, each with the reason.

/// Nothing here may promise, diagnose or urge. Each word with why it is not used.
pub const NEVER: &[(&str, &str)] = &[
    ("safe", "nobody can promise it"),
    ("harmless", "nobody can promise it"),
    ("risk-free", "nobody can promise it"),
    ("guarantee", "nobody can promise it"),
    ("injury-free", "nobody can promise it"),
    ("injury-proof", "nobody can promise it"),
    ("injury risk", "no rule here was shown to change it"),
    ("diagnos", "for clinicians"),
    ("medical", "this examines nobody"),
    ("abnormal", "a finding, and so for clinicians"),
    ("healthy", "a finding, and so for clinicians"),
    ("heals", "a promise about tissue"),
    ("healing", "a promise about tissue"),
    ("healed", "a promise about tissue"),
    ("cure", "a promise about tissue"),
    ("add load", "urges"),
    ("add weight", "urges"),
    ("go heavier", "urges"),
    ("push", "urges"),
    ("try harder", "urges"),
    ("no excuse", "urges"),
    ("don't stop", "urges against a stop"),
    ("only holding", "holding is a success"),
    ("stuck at a load", "holding is a success"),
    ("stalled", "holding is a success"),
    ("plateau", "holding is a success"),
    ("failed", "judges the person; a session did not pass"),
    ("ugly", "judges the person; technique slipped"),
    ("good day", "a day lies below, within or above the usual"),
    ("bad day", "a day lies below, within or above the usual"),
    ("granted", "a word of the code; people say working load, or today's load"),
    ("tuple", "a word of the code"),
    ("none(", "a debug form"),
    ("some(", "a debug form"),
    ("mass(", "a debug form"),
    ("name(", "a debug form"),
    ("65535", "a number that stands for none"),
];

/// Said against the very thing: nobody is urged and nothing is diagnosed. A state of health is a matter of its own word.
const DENIED: &[&str] =
    &["nobody has to add weight", "nothing here diagnoses", "in age, sex, health or training"];

/// A text in small letters, without what it says only to deny it.
pub fn undenied(said: &str) -> String {
    DENIED.iter().fold(said.to_lowercase(), |rest, denied| rest.replace(denied, ""))
}
