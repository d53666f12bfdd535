//! Lays the files of the package out in `bindings/pkg`.

use std::path::Path;

use serde_json::json;

use bismar_bindings::parts::{PARTS, Part};

use crate::compile::Compiled;
use crate::types::{self, Shape, Types};
use crate::{Failure, compile, declarations, identity, javascript, panics, sizes, texts};

const INDEX: &str = include_str!("../../javascript/index.js");
const NODE: &str = include_str!("../../javascript/node.js");
const SLIM: &str = include_str!("../../javascript/slim.js");
const INLINE: &str = include_str!("../../javascript/inline.js");

/// Documents with a JSON Schema: file and type.
const DOCUMENTS: &[(&str, &str)] = &[("log", "Log"), ("plan", "Plan"), ("state", "State")];

/// Builds the package: the whole, and those parts.
pub(crate) fn build(root: &Path, parts: &[&'static Part]) -> Result<(), Failure> {
    let build_id = identity::build_id(root)?;
    let mut features = vec![Vec::new()];
    features.extend(parts.iter().map(|part| vec![part.name]));
    let mut all = compile::compile_all(root, &build_id, &features)?.into_iter();
    let compiled = all.next().ok_or("nothing was compiled")?;
    let folder = root.join("bindings/pkg");
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(folder.join("schemas"))?;
    let write = |name: &str, bytes: &[u8]| std::fs::write(folder.join(name), bytes);

    let core = javascript::core(&compiled.glue, &build_id, None, &[])?;
    let exports = javascript::exports(None)?;
    write("bismar.wasm", &compiled.wasm)?;
    write("core.js", core.as_bytes())?;
    write("error.js", javascript::ERROR.as_bytes())?;
    for (name, text) in [("index.js", INDEX), ("node.js", NODE), ("slim.js", SLIM)] {
        write(name, text.replace("EXPORTS", &exports).as_bytes())?;
    }
    let alone = core.replacen(javascript::import_of_error(None).as_str(), javascript::ERROR, 1);
    let inline = format!("{alone}{}", INLINE.replace("WASM", &base64(&compiled.wasm)));
    write("inline.js", inline.as_bytes())?;

    let types = types::generate()?;
    let surface = declarations::write(&types, None, &documents())?;
    for name in &surface.unknown {
        println!("  warning: no TypeScript for {name}");
    }
    write("index.d.ts", surface.text.as_bytes())?;
    write("slim.d.ts", SLIM_TYPES.as_bytes())?;
    write("inline.d.ts", INLINE_TYPES.as_bytes())?;
    schemas(&types, &folder)?;

    let registry = texts::write(&build_id)?;
    write("registry.json", registry.as_bytes())?;
    write("package.json", manifest()?.as_bytes())?;
    write("README.md", &std::fs::read(root.join("bindings/README.md"))?)?;
    write("LICENSE", &std::fs::read(root.join("LICENSE"))?)?;

    println!("package {} in bindings/pkg:", build_id);
    println!(
        "  functions        {:>8}, {} of them flat",
        bismar::registry::rows().count(),
        bismar_bindings::flat::TABLE.len()
    );
    for (name, bytes) in [
        ("core.js", core.as_bytes()),
        ("inline.js", inline.as_bytes()),
        ("registry.json", registry.as_bytes()),
    ] {
        println!("  {name:<16} {:>8} B raw,           {:>7} B gzip", bytes.len(), sizes::gzip(bytes)?);
    }
    sizes::print_groups(&compiled.named)?;
    panics::enforce(&compiled.named)?;
    for (part, compiled) in parts.iter().zip(all) {
        write_part(root, &build_id, &types, part, &compiled)?;
    }
    sizes::print_all(&folder)?;
    Ok(())
}

/// Lays one part out in a folder of its own: the same files, with its modules.
fn write_part(
    root: &Path,
    build_id: &str,
    types: &Types,
    part: &'static Part,
    compiled: &Compiled,
) -> Result<(), Failure> {
    let folder = root.join("bindings/pkg").join(part.name);
    std::fs::create_dir_all(&folder)?;
    let write = |name: &str, bytes: &[u8]| std::fs::write(folder.join(name), bytes);
    let exports = javascript::exports(Some(part))?;
    write("bismar.wasm", &compiled.wasm)?;
    write("core.js", javascript::core(&compiled.glue, build_id, Some(part), &[])?.as_bytes())?;
    for (name, text) in [("index.js", INDEX), ("node.js", NODE), ("slim.js", SLIM)] {
        write(name, text.replace("EXPORTS", &exports).as_bytes())?;
    }
    let documents = if part.keeps { documents() } else { Vec::new() };
    let surface = declarations::write(types, Some(part), &documents)?;
    write("index.d.ts", surface.text.as_bytes())?;
    write("slim.d.ts", SLIM_TYPES.as_bytes())?;
    if compiled.apart {
        return panics::enforce(&compiled.named);
    }
    // Built for speed, the checks of the language's lists lie inside the library's functions. All of it is in the whole too,
    // where they are apart and the search is made.
    println!("  calls of panic functions in {}: as searched in the whole", part.name);
    Ok(())
}

pub(crate) const SLIM_TYPES: &str = "export * from \"./index.js\";\nimport type { Instance, WasmSource } from \"./index.js\";\n\n\
    /** Sets the instance up from the wasm that the caller brings. */\n\
    export default function init(source: WasmSource): Promise<void>;\n\n\
    /** Makes a new instance from the wasm that the caller brings. */\n\
    export declare function create(source: WasmSource): Promise<Instance>;\n";

const INLINE_TYPES: &str = "export * from \"./index.js\";\nimport type { Instance } from \"./index.js\";\n\n\
    /** Sets the instance up from the wasm inside the file. */\nexport default function init(): Promise<void>;\n\n\
    /** Makes a new instance from the wasm inside the file. */\n\
    export declare function create(): Promise<Instance>;\n";

pub(crate) fn documents() -> Vec<Shape> {
    DOCUMENTS.iter().map(|(_, name)| Shape::Type(name.to_string())).collect()
}

fn schemas(types: &Types, folder: &Path) -> Result<(), Failure> {
    for (file, name) in DOCUMENTS {
        let schema = types::schema(types, name, &format!("bismar {file}"));
        let path = folder.join(format!("schemas/{file}.schema.json"));
        std::fs::write(path, format!("{}\n", serde_json::to_string_pretty(&schema)?))?;
    }
    Ok(())
}

fn manifest() -> Result<String, Failure> {
    let entry = |file: &str| json!({ "types": format!("./{file}.d.ts"), "default": format!("./{file}.js") });
    let mut exports = json!({
        ".": { "types": "./index.d.ts", "node": "./node.js", "default": "./index.js" },
        "./inline": entry("inline"),
        "./slim": entry("slim"),
        "./bismar.wasm": "./bismar.wasm",
        "./registry.json": "./registry.json",
        "./schemas/*": "./schemas/*",
        "./package.json": "./package.json",
    });
    let mut files: Vec<&str> =
        vec!["*.js", "*.d.ts", "bismar.wasm", "registry.json", "schemas", "README.md", "LICENSE"];
    for Part { name, .. } in PARTS {
        let below = |file: &str| format!("./{name}/{file}");
        let doors =
            json!({ "types": below("index.d.ts"), "node": below("node.js"), "default": below("index.js") });
        let slim = json!({ "types": below("slim.d.ts"), "default": below("slim.js") });
        files.push(name);
        if let Some(exports) = exports.as_object_mut() {
            exports.insert(format!("./{name}"), doors);
            exports.insert(format!("./{name}/slim"), slim);
            exports.insert(format!("./{name}/bismar.wasm"), json!(below("bismar.wasm")));
        }
    }
    let manifest = json!({
        "name": "bismar",
        "version": env!("CARGO_PKG_VERSION"),
        "description": "Progression maths for barbell lifts, in WebAssembly: typed, strict, the same bits everywhere.",
        "license": "MIT",
        "type": "module",
        "sideEffects": false,
        "keywords": ["strength", "training", "barbell", "progression", "wasm"],
        "types": "./index.d.ts",
        "exports": exports,
        "files": files,
        "engines": { "node": ">=20" },
    });
    Ok(format!("{}\n", serde_json::to_string_pretty(&manifest)?))
}

fn base64(bytes: &[u8]) -> String {
    const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let word =
            chunk.iter().fold(0_u32, |word, byte| word << 8 | u32::from(*byte)) << (8 * (3 - chunk.len()));
        for place in 0..4 {
            let letter = ALPHABET.get((word >> (18 - 6 * place)) as usize & 63).copied().unwrap_or(b'=');
            out.push(if place > chunk.len() { '=' } else { char::from(letter) });
        }
    }
    out
}
