//! Builds the npm package: `cargo run -p bismar-build -- package`.
//!
//! | file | what it does |
//! |---|---|
//! | `compile` | the wasm and its glue: cargo, wasm-bindgen, wasm-opt |
//! | `identity` | the build id: a digest of everything the wasm is made from |
//! | `types` | the crate's serialised types, read from its source, as TypeScript and as JSON Schema |
//! | `javascript`, `declarations` | the generated JavaScript surface and its `.d.ts` |
//! | `texts` | `registry.json`: rows, codes and English |
//! | `package` | lays the files of the package out |
//! | `page` | the package as the offline page takes it, then the page |
//! | `panics` | which functions could reach a panic |
//! | `sizes` | prints and enforces sizes |
//! | `corpus` | inputs and native digests for the comparison of bits |

mod compile;
mod corpus;
mod declarations;
mod identity;
mod javascript;
mod package;
mod page;
mod panics;
mod sizes;
mod texts;
mod types;

use std::path::PathBuf;
use std::process::ExitCode;

/// What can go wrong, in words; the tool prints it and stops.
type Failure = Box<dyn std::error::Error>;

const USAGE: &str = "usage: bismar-build package [--root FOLDER] | page | serve-page | sizes | weigh FILE.wasm | panics FILE.wasm | corpus FOLDER";

/// The folder of the workspace this tool was built in.
fn root() -> PathBuf {
    let here = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).map_or(here.clone(), PathBuf::from)
}

fn run() -> Result<(), Failure> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["package"] => package::build(&root()),
        ["package", "--root", folder] => package::build(folder.as_ref()),
        ["sizes"] => sizes::enforce(&std::fs::read(root().join("bindings/pkg/bismar.wasm"))?),
        ["weigh", file] => sizes::print_functions(&std::fs::read(file)?),
        ["panics", file] => panics::enforce(&std::fs::read(file)?),
        ["page"] => page::build(&root()),
        ["serve-page"] => page::serve(&root()),
        ["corpus", folder] => corpus::write(&root(), folder.as_ref()),
        _ => Err(USAGE.into()),
    }
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("bismar-build: {failure}");
            ExitCode::FAILURE
        }
    }
}
