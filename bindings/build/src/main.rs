//! Builds the npm package: `cargo run -p bismar-build -- package`.
//!
//! | file | what it does |
//! |---|---|
//! | `compile` | the wasm and its glue: cargo, wasm-bindgen, wasm-opt |
//! | `identity` | the build id: a digest of everything the wasm is made from |
//! | `types` | the library's own schemas, as TypeScript, as Python and as JSON Schema |
//! | `javascript`, `declarations` | the generated JavaScript surface and its `.d.ts` |
//! | `c_header` | the header of the C interface |
//! | `python` | the generated part of the Python package |
//! | `texts` | `registry.json`: rows, codes and English |
//! | `package` | lays the files of the package out |
//! | `page` | the package as the offline page takes it, then the page |
//! | `order` | in which order functions lie in the wasm |
//! | `panics` | which functions could reach a panic |
//! | `sizes` | prints and enforces sizes |
//! | `corpus` | inputs and native digests for the comparison of bits |

mod c_header;
mod compile;
mod corpus;
mod declarations;
mod identity;
mod javascript;
mod order;
mod package;
mod page;
mod page_types;
mod panics;
mod python;
mod sizes;
mod texts;
mod told_lifter;
mod types;

use std::path::PathBuf;
use std::process::ExitCode;

use bismar_bindings::parts::{PARTS, Part};
use corpus::Spelling;

/// What can go wrong, in words; the tool prints it and stops.
type Failure = Box<dyn std::error::Error>;

const USAGE: &str = "usage: bismar-build package [[--root FOLDER] --parts NAME,...] | page | page-types | serve-page | sizes | weigh FILE.wasm | panics FILE.wasm | corpus [--plain] FOLDER | python [FOLDER] | c-header";

/// The folder of the workspace this tool was built in.
fn root() -> PathBuf {
    let here = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).map_or(here.clone(), PathBuf::from)
}

/// The parts with those names, between commas; none for an empty text.
fn chosen(names: &str) -> Result<Vec<&'static Part>, Failure> {
    let find = |name: &str| {
        PARTS.iter().find(|part| part.name == name).ok_or_else(|| Failure::from(format!("no part {name:?}")))
    };
    names.split(',').filter(|name| !name.is_empty()).map(find).collect()
}

fn run() -> Result<(), Failure> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["package"] => package::build(&root(), &PARTS.iter().collect::<Vec<_>>()),
        ["package", "--parts", names] => package::build(&root(), &chosen(names)?),
        ["package", "--root", folder, "--parts", names] => package::build(folder.as_ref(), &chosen(names)?),
        ["sizes"] => sizes::enforce(&root().join("bindings/pkg")),
        ["weigh", file] => sizes::print_functions(&std::fs::read(file)?),
        ["panics", file] => panics::enforce(&std::fs::read(file)?),
        ["page"] => page::build(&root()),
        ["page-types"] => page::write_types(&root()),
        ["serve-page"] => page::serve(&root()),
        ["python"] => python::write(&root().join("bindings/python/python/bismar")),
        ["python", folder] => python::write(folder.as_ref()),
        ["c-header"] => c_header::write(&root()),
        ["corpus", folder] => corpus::write(&root(), folder.as_ref(), Spelling::JavaScript),
        ["corpus", "--plain", folder] => corpus::write(&root(), folder.as_ref(), Spelling::Plain),
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
