//! The wasm and its glue: cargo, wasm-bindgen as a library, `wasm-opt` from npm.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::atomic::{AtomicUsize, Ordering};

use wasm_bindgen_cli_support::{Bindgen, EncodeInto};

use crate::{Failure, order};

const TARGET: &str = "wasm32-unknown-unknown";

/// What the compiler already uses for this target, one by one: with all features switched on, wasm-opt writes
/// code that browsers refuse.
const FEATURES: &[&str] = &[
    "--enable-bulk-memory",
    "--enable-multivalue",
    "--enable-mutable-globals",
    "--enable-nontrapping-float-to-int",
    "--enable-reference-types",
    "--enable-sign-ext",
];

/// Parts that are built for speed: a lifter waits for them between two sets. They weigh more for it.
const QUICK: &[&str] = &["session"];

/// For what a library is made.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Made {
    Small,
    Quick,
}

impl Made {
    fn of(features: &[&str]) -> Made {
        if features.iter().any(|feature| QUICK.contains(feature)) { Made::Quick } else { Made::Small }
    }

    /// Measured over 300 functions with their reading and writing: `z` is a fifth smaller than `3`, and takes twice as long.
    const fn level(self) -> &'static str {
        match self {
            Made::Small => "z",
            Made::Quick => "2",
        }
    }

    /// What `wasm-opt` is asked for. A body that is inlined into its one caller is no longer like its neighbours: a tenth
    /// more after gzip.
    const fn passes(self) -> &'static [&'static str] {
        match self {
            Made::Small => &["-Oz", "--one-caller-inline-max-function-size=0"],
            Made::Quick => &["-Os", "--one-caller-inline-max-function-size=0"],
        }
    }
}

/// A compiled library.
pub(crate) struct Compiled {
    /// The module as it ships.
    pub(crate) wasm: Vec<u8>,
    /// The module before optimisation, with function names, to see which part weighs what.
    pub(crate) named: Vec<u8>,
    /// The JavaScript that wasm-bindgen wrote for it.
    pub(crate) glue: String,
    /// Whether the language's own code still stands apart from the library's, so that a search tells whose a panic is.
    pub(crate) apart: bool,
}

/// Compiles the bindings for the web.
pub(crate) fn compile(root: &Path, build_id: &str, features: &[&str]) -> Result<Compiled, Failure> {
    finish(root, &cargo(root, build_id, features)?, Made::of(features))
}

/// Compiles several, in the order given: while one is made small, the next is compiled, since both keep one processor
/// busy for long.
pub(crate) fn compile_all(
    root: &Path,
    build_id: &str,
    features: &[Vec<&str>],
) -> Result<Vec<Compiled>, Failure> {
    std::thread::scope(|scope| {
        let mut running = Vec::new();
        for features in features {
            let raw = cargo(root, build_id, features)?;
            let made = Made::of(features);
            running
                .push(scope.spawn(move || finish(root, &raw, made).map_err(|failure| failure.to_string())));
        }
        let ended = running.into_iter().map(|one| one.join().map_err(|_| "a thread failed".to_string()));
        ended.map(|one| Ok(one??)).collect()
    })
}

/// The glue, and the wasm as it ships.
fn finish(root: &Path, raw: &[u8], made: Made) -> Result<Compiled, Failure> {
    let mut output = bindgen(raw)?;
    let glue = output.js().to_string();
    let module = output.wasm_mut();
    let named = module.emit_wasm();
    // Like beside like compresses better: names that sort by kind, for the pass that lays functions out by name.
    let sizes: Vec<_> = module.funcs.iter_local().map(|(id, function)| (id, function.size())).collect();
    let mut ranked: Vec<_> = sizes
        .into_iter()
        .map(|(id, size)| (order::kind(module.funcs.get(id).name.as_deref().unwrap_or_default()), size, id))
        .collect();
    ranked.sort();
    for (rank, (_, _, id)) in ranked.into_iter().enumerate() {
        module.funcs.get_mut(id).name = Some(format!("f{rank:06}"));
    }
    let wasm = optimise(root, &module.emit_wasm(), made)?;
    Ok(Compiled { wasm, named, glue, apart: made == Made::Small })
}

fn cargo(root: &Path, build_id: &str, features: &[&str]) -> Result<Vec<u8>, Failure> {
    let target_folder = std::env::var_os("CARGO_TARGET_DIR").map_or(root.join("target"), PathBuf::from);
    let status = Command::new(std::env::var_os("CARGO").unwrap_or("cargo".into()))
        .current_dir(root)
        .args(["build", "--release", "--locked", "--package", "bismar-bindings", "--lib", "--target", TARGET])
        .args(features.iter().map(|feature| format!("--features={feature}")))
        .env("CARGO_ENCODED_RUSTFLAGS", remaps(root).join("\u{1f}"))
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", Made::of(features).level())
        .env("BISMAR_BUILD_ID", build_id)
        .status()?;
    if !status.success() {
        return Err("cargo build failed".into());
    }
    Ok(std::fs::read(target_folder.join(TARGET).join("release/bismar_bindings.wasm"))?)
}

/// No path of the machine in the module, so that two folders give the same bytes.
fn remaps(root: &Path) -> Vec<String> {
    let home = std::env::var_os("HOME").map(PathBuf::from).unwrap_or_default();
    let cargo = std::env::var_os("CARGO_HOME").map_or(home.join(".cargo"), PathBuf::from);
    let rustup = std::env::var_os("RUSTUP_HOME").map_or(home.join(".rustup"), PathBuf::from);
    [(rustup, "/rustup"), (cargo, "/cargo"), (root.to_path_buf(), "/bismar")]
        .iter()
        .map(|(from, to)| format!("--remap-path-prefix={}={to}", from.display()))
        // Names that keep generic parameters, so that `sizes` can tell whose code it is; they do not ship.
        .chain(["-Csymbol-mangling-version=v0".to_string()])
        .collect()
}

fn bindgen(raw: &[u8]) -> Result<wasm_bindgen_cli_support::Output, Failure> {
    let mut bindgen = Bindgen::new();
    bindgen
        .input_bytes("bismar", raw.to_vec())
        .web(true)?
        .typescript(false)
        .omit_default_module_path(true)
        .encode_into(EncodeInto::Always)
        .remove_producers_section(true);
    Ok(bindgen.generate_output()?)
}

fn optimise(root: &Path, named: &[u8], made: Made) -> Result<Vec<u8>, Failure> {
    static RUNS: AtomicUsize = AtomicUsize::new(0);
    let run = RUNS.fetch_add(1, Ordering::Relaxed);
    let folder = std::env::temp_dir().join(format!("bismar-build-{}-{run}", std::process::id()));
    std::fs::create_dir_all(&folder)?;
    let (before, after) = (folder.join("before.wasm"), folder.join("after.wasm"));
    std::fs::write(&before, named)?;
    let status = Command::new("node")
        .arg(root.join("bindings/node_modules/binaryen/bin/wasm-opt"))
        .args(made.passes())
        .arg("--reorder-functions-by-name")
        .args(["--strip-debug", "--strip-producers", "--strip-target-features"])
        .args(FEATURES)
        .args([before.as_os_str(), "-o".as_ref(), after.as_os_str()])
        .status()?;
    if !status.success() {
        return Err("wasm-opt failed; is `npm ci` done in bindings/?".into());
    }
    let bytes = std::fs::read(&after)?;
    std::fs::remove_dir_all(&folder)?;
    Ok(bytes)
}
