//! The declarations of the package as the page takes it: those of the library, and the page's own answers with what each
//! takes and gives.

use bismar_page::SCHEMAS;

use crate::types::{self, Shape, Signature};
use crate::{Failure, declarations, package};

/// Writes the declarations.
pub(crate) fn write() -> Result<String, Failure> {
    let types = types::generate_with(SCHEMAS)?;
    let answers: Vec<declarations::More> = SCHEMAS
        .iter()
        .map(|(key, _)| {
            let Signature { mut takes, gives } = types.of(key);
            declarations::More { key, takes: takes.pop().unwrap_or(Shape::Any), gives }
        })
        .collect();
    let surface = declarations::write_with(&types, None, &package::documents(), &answers)?;
    match surface.unknown.as_slice() {
        [] => Ok(surface.text),
        names => Err(format!("no TypeScript for {}", names.join(", ")).into()),
    }
}
