//! Replays what fuzzing kept: every input of every corpus, and every input that once failed.
//!
//! The corpora lie in `tests/fuzz/corpus`, one folder a target; DEVELOPERS.md says how they are made.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

#[path = "fuzz/checks/mod.rs"]
mod checks;

use std::path::Path;

const FOLDER: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/fuzz/corpus");

#[test]
fn every_kept_input_passes() {
    for (name, check) in checks::TARGETS {
        let mut files: Vec<_> = std::fs::read_dir(Path::new(FOLDER).join(name))
            .unwrap_or_else(|error| panic!("{name}: {error}"))
            .map(|entry| entry.unwrap().path())
            .collect();
        files.sort();
        assert!(!files.is_empty(), "{name}: no corpus");
        for path in files {
            let data = std::fs::read(&path).unwrap();
            if std::panic::catch_unwind(|| check(&data)).is_err() {
                panic!("{} fails", path.display());
            }
        }
    }
}
