//! The build id: a digest of everything the wasm is made from, the same in whatever folder it is built.

use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};

use crate::Failure;

/// What the wasm is made from, below the workspace.
const PARTS: &[&str] = &[
    "Cargo.toml",
    "Cargo.lock",
    "src",
    "bindings/Cargo.toml",
    "bindings/build.rs",
    "bindings/src",
    "bindings/surface/Cargo.toml",
    "bindings/surface/build.rs",
    "bindings/surface/src",
];

/// Characters of the digest that are kept: 64 bits, enough to tell two builds apart.
const LENGTH: usize = 16;

/// The build id of the sources below `root`.
pub(crate) fn build_id(root: &Path) -> Result<String, Failure> {
    let mut files = Vec::new();
    for part in PARTS {
        collect(&root.join(part), &mut files)?;
    }
    files.sort();
    let mut digest = Sha256::new();
    for path in files {
        let name = path.strip_prefix(root)?.to_string_lossy().replace('\\', "/");
        let bytes = std::fs::read(&path)?;
        digest.update((name.len() as u32).to_le_bytes());
        digest.update(name.as_bytes());
        digest.update((bytes.len() as u32).to_le_bytes());
        digest.update(&bytes);
    }
    Ok(hex(&digest.finalize()).chars().take(LENGTH).collect())
}

/// Bytes as lower-case hexadecimal text.
pub(crate) fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn collect(path: &Path, files: &mut Vec<PathBuf>) -> Result<(), Failure> {
    if path.is_dir() {
        for entry in std::fs::read_dir(path)? {
            collect(&entry?.path(), files)?;
        }
    } else {
        files.push(path.to_path_buf());
    }
    Ok(())
}
