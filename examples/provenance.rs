//! Where every public formula, table and default comes from, and what it is held against.
//!
//! `cargo run --example provenance` prints the page `src/guide/provenance.md` from the registry and the files in
//! `tests/published`, numbers that are only recalled first. Exit codes: 0 nothing is missing; 1 there is a gap (a row
//! without a check, a check without a row, a row without source, place or documentation); 2 a file could not be read.

use std::path::Path;
use std::process::ExitCode;

use bismar::registry;
use bismar::source::Row;

#[path = "shared/provenance.rs"]
mod provenance;

fn main() -> ExitCode {
    let rows: Vec<&'static Row> = registry::rows().collect();
    let works = match provenance::works(Path::new(provenance::CHECKS)) {
        Ok(works) => works,
        Err(message) => {
            eprintln!("{message}");
            return ExitCode::from(2);
        }
    };
    let report = provenance::report(&rows, &works);
    print!("{}", report.page);
    for gap in &report.gaps {
        eprintln!("gap: {gap}");
    }
    ExitCode::from(u8::from(!report.gaps.is_empty()))
}
