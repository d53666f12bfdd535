//! Builds the offline page: `cargo run -p bismar-build -- page`; `serve-page` builds and serves it.
//!
//! The page takes the package in its slim form, compiled with the page's own answers; `www-demo/build.mjs` then
//! puts wasm, script and style into one file.

use std::path::Path;
use std::process::Command;

use crate::package::SLIM_TYPES;
use crate::{Failure, compile, identity, javascript, page_types};

/// Where the page's copy of the package is put, below the workspace.
const FOLDER: &str = "www-demo/dist/package";

const SLIM: &str = include_str!("../../javascript/slim.js");

/// Builds the page.
pub(crate) fn build(root: &Path) -> Result<(), Failure> {
    let build_id = identity::build_id(root)?;
    let compiled = compile::compile(root, &build_id, &["page"])?;
    let folder = root.join(FOLDER);
    std::fs::create_dir_all(&folder)?;
    let core = javascript::core(&compiled.glue, &build_id, None, bismar_page::ENTRIES)?;
    std::fs::write(folder.join("bismar.wasm"), &compiled.wasm)?;
    std::fs::write(folder.join("core.js"), core)?;
    std::fs::write(folder.join("error.js"), javascript::ERROR)?;
    std::fs::write(folder.join("slim.js"), SLIM.replace("EXPORTS", &javascript::exports(None)?))?;
    write_types(root)?;
    node(root, "build.mjs")
}

/// Writes the declarations of the package as the page takes it, its own answers among them.
pub(crate) fn write_types(root: &Path) -> Result<(), Failure> {
    let folder = root.join(FOLDER);
    std::fs::create_dir_all(&folder)?;
    let text = page_types::write()?;
    let (index, slim) = (folder.join("index.d.ts"), folder.join("slim.d.ts"));
    std::fs::write(index, text)?;
    Ok(std::fs::write(slim, SLIM_TYPES)?)
}

/// Builds the page, serves it on this machine and prints the address.
pub(crate) fn serve(root: &Path) -> Result<(), Failure> {
    build(root)?;
    node(root, "serve.mjs")
}

fn node(root: &Path, script: &str) -> Result<(), Failure> {
    let status = Command::new("node").arg(script).current_dir(root.join("www-demo")).status()?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("{script} failed; is `npm ci` done in www-demo/?").into())
    }
}
