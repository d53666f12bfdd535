//! Words that nobody should read: in the sentences of the page and of the examples, and in the documentation. What the
//! library itself says is held against the same list where it is written (`tests/text.rs`).

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may panic")]

#[path = "shared/files.rs"]
mod files;
#[path = "text/never.rs"]
mod never;

use std::fs;
use std::path::Path;

use files::files;

/// Words with a second, harmless use in documentation or in the page: held in what the library says to people only.
const OF_THE_LIBRARY_ALONE: &[&str] =
    &["safe", "failed", "push", "medical", "healthy", "tuple", "none(", "some("];

/// Said of this project in documentation and nowhere else.
const NOT_IN_DOCUMENTATION: &[(&str, &str)] = &[
    ("good day", "a day lies below, within or above the usual"),
    ("bad day", "a day lies below, within or above the usual"),
    ("reading of the day", "a day is told against the lifter's own usual"),
    ("ugly", "technique slipped"),
    ("front-held", "the lift is named: front squat"),
    ("injury-free", "nobody can promise it"),
    ("risk-free", "nobody can promise it"),
    ("guaranteed", "nobody can promise it"),
    ("go heavier", "urges"),
    ("try harder", "urges"),
    ("no excuse", "urges"),
    ("bad, ordinary", "a day lies below, within or above the usual"),
    ("fell apart", "technique slipped"),
    ("middling", "judges a person"),
    ("waved away", "judges what somebody said"),
];

/// Texts between quotes, without comments; what a template puts in is read as code of its own.
fn literals(code: &str) -> Vec<String> {
    let mut found = Vec::new();
    read_code(&code.chars().collect::<Vec<_>>(), 0, &mut found);
    found
}

/// Reads code from there to its end, or to the brace that closes it; answers where it ended.
fn read_code(letters: &[char], mut at: usize, found: &mut Vec<String>) -> usize {
    let mut open = 0_u32;
    while at < letters.len() {
        match (letters[at], letters.get(at + 1)) {
            ('/', Some('/')) => at += letters[at..].iter().take_while(|letter| **letter != '\n').count(),
            ('/', Some('*')) => {
                at += 2;
                while at + 1 < letters.len() && !(letters[at] == '*' && letters[at + 1] == '/') {
                    at += 1;
                }
            }
            ('\'', _) => at += quoted_letter(&letters[at..]),
            ('"' | '`', _) => at = read_text(letters, at, found),
            ('{', _) => open += 1,
            ('}', _) if open == 0 => return at,
            ('}', _) => open -= 1,
            _ => {}
        }
        at += 1;
    }
    at
}

/// How far a quoted letter reaches; nothing for a lifetime or an apostrophe.
fn quoted_letter(letters: &[char]) -> usize {
    match letters {
        [_, '\\', _, '\'', ..] => 3,
        [_, _, '\'', ..] => 2,
        _ => 0,
    }
}

/// Reads one text; answers where its last quote stands.
fn read_text(letters: &[char], start: usize, found: &mut Vec<String>) -> usize {
    let (quote, mut text, mut at) = (letters[start], String::new(), start + 1);
    while at < letters.len() && letters[at] != quote {
        match (letters[at], letters.get(at + 1)) {
            ('\\', Some(letter)) => {
                text.push(*letter);
                at += 1;
            }
            ('$', Some('{')) if quote == '`' => at = read_code(letters, at + 2, found),
            (letter, _) => text.push(letter),
        }
        at += 1;
    }
    found.push(text);
    at
}

#[test]
fn the_page_and_the_examples_promise_nothing_urge_nobody_and_judge_nobody() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (mut read, mut wrong) = (0_u32, Vec::new());
    let folders = [("www-demo/src", ".ts"), ("www-demo/answers/src", ".rs"), ("examples", ".rs")];
    for source in folders.iter().flat_map(|(folder, ending)| files(&root.join(folder), &[*ending])) {
        let code = fs::read_to_string(&source).unwrap();
        // A sentence has a space in it; a code, a class or a name has none.
        for said in literals(&code).into_iter().filter(|text| text.trim().contains(' ')) {
            read += 1;
            for (word, why) in never::NEVER.iter().filter(|(word, _)| !OF_THE_LIBRARY_ALONE.contains(word)) {
                if never::undenied(&said).contains(word) {
                    wrong.push(format!("{}: {word:?} ({why}) in {said:?}", source.display()));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(read > 500, "only {read} sentences found");
}

#[test]
fn the_documentation_uses_the_words_of_the_project() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let code = &[".rs", ".md", ".mjs", ".js", ".ts", ".py", ".java", ".c", ".html", ".json"][..];
    let folders = [
        ("src", &[".rs", ".md"][..]),
        ("bindings", code),
        ("www-demo/src", &[".ts", ".js", ".html"]),
        ("www-demo/answers", &[".rs"]),
        ("www-demo/tests", &[".mjs"]),
        ("examples", code),
        ("tests", &[".rs"]),
    ];
    let (mut pages, mut wrong) = (Vec::new(), Vec::new());
    pages.extend(folders.iter().flat_map(|(folder, endings)| files(&root.join(folder), endings)));
    // Where the words stand in order to be found.
    pages.retain(|page| {
        !["tests/careful_words.rs", "tests/text/never.rs"].iter().any(|own| page.ends_with(own))
    });
    pages.extend(
        ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "www-demo/README.md"].map(|page| root.join(page)),
    );
    for page in &pages {
        let text = fs::read_to_string(page).unwrap().to_lowercase();
        for (word, why) in NOT_IN_DOCUMENTATION {
            if text.contains(word) {
                wrong.push(format!("{}: {word:?} ({why})", page.display()));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(pages.len() > 250, "only {} pages found", pages.len());
}

#[test]
fn a_literal_is_found_and_a_comment_is_not() {
    let code = "// \"no\"\nlet a = \"one two\"; /* `no` */ const b = `three ${x({ y: \"inside it\" })} four`; '\"'; \"five\\\"six\"";
    assert_eq!(literals(code), ["one two", "inside it", "three  four", "five\"six"].map(String::from));
}
