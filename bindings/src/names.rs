//! Field names: snake_case in Rust and JSON, camelCase in JavaScript.
//!
//! The rule is mechanical and loses nothing: an underscore before a letter goes and the letter is raised; one
//! before a digit stays. Only keys of objects change; texts (names of kinds, dates, identifiers) never do.

/// A Rust name, or a path of them, in JavaScript's spelling.
///
/// ```
/// use bismar_bindings::names::camel;
///
/// assert_eq!(camel("sets[2].rest_seconds"), "sets[2].restSeconds");
/// ```
#[must_use]
pub fn camel(name: &str) -> String {
    let mut out = String::with_capacity(name.len());
    let mut letters = name.chars().peekable();
    while let Some(letter) = letters.next() {
        match letters.peek() {
            Some(next) if letter == '_' && next.is_ascii_lowercase() => {
                out.push(next.to_ascii_uppercase());
                letters.next();
            }
            _ => out.push(letter),
        }
    }
    out
}

/// A JavaScript key in Rust's spelling; none if it is not written as a key here.
///
/// ```
/// use bismar_bindings::names::snake;
///
/// assert_eq!(snake("restSeconds").as_deref(), Some("rest_seconds"));
/// assert_eq!(snake("rest_seconds"), None); // one spelling only
/// ```
#[must_use]
pub fn snake(key: &str) -> Option<String> {
    if key == "__proto__" || key.as_bytes().windows(2).any(|pair| matches!(pair, [b'_', b'a'..=b'z'])) {
        return None;
    }
    let mut out = String::with_capacity(key.len() + 4);
    for letter in key.chars() {
        if letter.is_ascii_uppercase() {
            out.push('_');
            out.push(letter.to_ascii_lowercase());
        } else {
            out.push(letter);
        }
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::{camel, snake};

    #[test]
    fn there_and_back() {
        for name in ["load", "rest_seconds", "phi_1", "a_b_c", "kg", "top_set_e1rm", "Squat", "x_"] {
            let key = camel(name);
            if name == "Squat" {
                assert_eq!(snake(name).map(|name| camel(&name)).as_deref(), Some(name));
            } else {
                assert_eq!(snake(&key).as_deref(), Some(name), "{key}");
            }
        }
    }
}
