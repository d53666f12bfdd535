//! The files of a folder, for tests that read what is written.

use std::path::{Path, PathBuf};

/// Folders that tools fill.
const MADE: &[&str] = &["node_modules", "dist", "pkg", "target", "corpus"];

/// Files with one of these endings, in that folder and below it, always in the same order.
pub fn files(folder: &Path, endings: &[&str]) -> Vec<PathBuf> {
    let mut paths: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let mut found = Vec::new();
    for path in paths {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir() {
            if !MADE.contains(&name.as_str()) {
                found.extend(files(&path, endings));
            }
        } else if endings.iter().any(|ending| name.ends_with(ending)) {
            found.push(path);
        }
    }
    found
}
