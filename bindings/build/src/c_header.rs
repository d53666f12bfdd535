//! The header of the C interface, from the source of its crate.

use std::path::Path;

use cbindgen::{Builder, Config, DocumentationStyle, EnumConfig, Language, RenameRule};

use crate::Failure;

const HEAD: &str = "\
/* Bismar: progression maths for barbell lifts, as a C interface. Generated from the library; do not edit.

   Texts and keys are UTF-8 of a given length and need no zero byte at their end. Objects are JSON with the names of the
   log's JSON.

   Memory. What you give stays yours; it is read during the call only and may go afterwards. What you get in a BismarBytes
   is the library's: give it back with bismar_free, once, in the same process. A place is written over without being freed
   first. A state that was opened is kept until it is closed.

   Threads. Every function may be called from every thread at once. Calls to one state wait for each other; calls to two
   do not. A place for an answer belongs to one call at a time. */";

/// Writes `bindings/c/include/bismar.h`.
pub(crate) fn write(root: &Path) -> Result<(), Failure> {
    let source = root.join("bindings/c/src");
    let config = Config {
        language: Language::C,
        header: Some(HEAD.into()),
        include_guard: Some("BISMAR_H".into()),
        cpp_compat: true,
        no_includes: true,
        sys_includes: vec!["stddef.h".into(), "stdint.h".into()],
        documentation_style: DocumentationStyle::C,
        usize_is_size_t: true,
        enumeration: EnumConfig {
            rename_variants: RenameRule::QualifiedScreamingSnakeCase,
            ..EnumConfig::default()
        },
        ..Config::default()
    };
    let mut builder = Builder::new().with_config(config);
    for file in ["lib.rs", "given.rs", "told.rs"] {
        builder = builder.with_src(source.join(file));
    }
    let mut text = Vec::new();
    builder.generate()?.write(&mut text);
    std::fs::write(root.join("bindings/c/include/bismar.h"), text)?;
    println!("c: bindings/c/include/bismar.h");
    Ok(())
}
