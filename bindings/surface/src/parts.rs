//! The parts of the package: each a wasm of its own with some modules of the crate, and the whole with all.

use bismar::registry;
use bismar::source::{Entry, Row};

/// Some modules of the crate.
#[derive(Debug)]
pub struct Part {
    /// Its subpath in the package.
    pub name: &'static str,
    /// Its modules.
    pub modules: &'static [&'static str],
    /// Whether it keeps states between calls.
    pub keeps: bool,
}

/// All parts.
pub const PARTS: &[Part] = include!("part_table.rs");

/// The module of a key.
#[must_use]
pub fn module(key: &str) -> &str {
    key.split_once('.').map_or(key, |(module, _)| module)
}

impl Part {
    /// Whether the function with this key belongs to it.
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        self.modules.contains(&module(key))
    }
}

/// The rows of a part in the order of its numbers; of the whole without one.
pub fn rows(part: Option<&'static Part>) -> impl Iterator<Item = &'static Row> {
    registry::rows().filter(move |row| part.is_none_or(|part| part.has(row.key)))
}

/// The entries of what this crate was compiled as, written by the build script: nothing else is carried.
pub(crate) fn entries() -> Vec<&'static Entry> {
    #[cfg_attr(part = "english", allow(unused_mut, reason = "it has sentences and no entry"))]
    let mut entries = Vec::new();
    include!(concat!(env!("OUT_DIR"), "/entries.rs"));
    entries
}

#[cfg(test)]
mod tests {
    use super::{PARTS, module, rows};
    use bismar::registry;

    #[test]
    fn every_row_is_in_exactly_one_part_and_in_the_whole() {
        for row in registry::rows() {
            let parts: Vec<_> = PARTS.iter().filter(|part| part.has(row.key)).map(|part| part.name).collect();
            assert_eq!(parts.len(), 1, "{} is in {parts:?}", row.key);
        }
        let counts: Vec<_> = PARTS.iter().map(|part| (part.name, rows(Some(part)).count())).collect();
        let sum: usize = counts.iter().map(|(_, count)| count).sum();
        assert_eq!(sum, rows(None).count());
        // The part of sentences has doors alone.
        assert!(
            counts.iter().all(|(name, count)| if *name == "english" { *count == 0 } else { *count > 5 }),
            "{counts:?}"
        );
    }

    #[test]
    fn every_module_of_the_table_has_rows() {
        for name in PARTS.iter().flat_map(|part| part.modules) {
            assert!(registry::rows().any(|row| module(row.key) == *name), "{name}");
        }
    }

    #[cfg(part = "whole")]
    #[test]
    fn the_whole_carries_every_entry() {
        let entries: Vec<_> = super::entries().iter().map(|entry| entry.key).collect();
        assert!(registry::entries().map(|entry| entry.key).eq(entries));
    }
}
