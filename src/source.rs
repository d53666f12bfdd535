//! Where every number comes from: row types and the one macro that declares a function and its row together.
//!
//! Uses `error` and `value`. A formula, table or default is declared with `formula!` or `constant!`; the
//! registry, the dispatch table, the published-check runner and the JavaScript declarations are all generated
//! from these declarations, so that none of them can drift from the code.

mod declare;
#[cfg(feature = "schema")]
mod schemas;

use core::fmt;

#[cfg(feature = "serde")]
pub(crate) use declare::call;
pub(crate) use declare::{arguments, constant, default_of, fixed, formula, known, rows};
#[cfg(feature = "schema")]
pub use schemas::Schemas;
#[cfg(feature = "schema")]
pub(crate) use schemas::schemas;

/// A work that numbers come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Source {
    /// Short name, `author-year`.
    pub id: &'static str,
    /// Authors, title, where it appeared, year.
    pub citation: &'static str,
    /// Digital object identifier, where there is one.
    pub doi: Option<&'static str>,
}

/// What kind of authority a number has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Standing {
    /// Printed in the cited work.
    Published,
    /// Set by a standards body or a federation's rule book, whose document or a copy of it was seen.
    Standard,
    /// Follows from definitions or from published numbers by arithmetic.
    Derived,
    /// In use in the trade or at meets, or what careful coaches do; no published evidence is claimed.
    CommonPractice,
    /// A default of this project, to be changed by whoever knows better.
    OurChoice,
}

/// How the number reached this project.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Seen {
    /// Read in the cited work, or in an abstract of it.
    Read,
    /// Not read in the cited work, but seen in public copies of its numbers or in later works that print them, equal
    /// where there are several; the row says in which kind of place, and where it is one only.
    Secondary,
    /// Recalled, not read again: treat with more care.
    Memory,
    /// Nothing to read: it is derived here, or our choice.
    NotApplicable,
}

/// Whether a row describes something to compute or something to look up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Kind {
    /// A function of its arguments.
    Function,
    /// A named number.
    Constant,
}

/// One argument of a function in the dispatch table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Argument {
    /// Its name, the key in a map of arguments.
    pub name: &'static str,
    /// Its Rust type, as written.
    pub r#type: &'static str,
}

impl Argument {
    /// That name with that type.
    #[must_use]
    pub const fn new(name: &'static str, r#type: &'static str) -> Argument {
        Argument { name, r#type }
    }
}

/// One row of the registry.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Row {
    /// Key in the dispatch table, `module.function`.
    pub key: &'static str,
    /// Function or constant.
    pub kind: Kind,
    /// The documentation text.
    pub doc: &'static str,
    /// Arguments in order.
    pub arguments: &'static [Argument],
    /// Rust type of the result.
    pub result: &'static str,
    /// The work it comes from.
    pub source: Source,
    /// Where in the work: page, table, equation.
    pub place: &'static str,
    /// What kind of authority it has.
    pub standing: Standing,
    /// How the numbers reached this project.
    pub seen: Seen,
    /// In which kinds of public copy it was seen, where [`Seen::Secondary`]; empty otherwise.
    pub copies: &'static str,
    /// Which part of it is recalled only, where the rest was read or seen in copies; empty otherwise.
    pub recalled: &'static str,
    /// Who was measured; empty where nobody was.
    pub population: &'static str,
    /// Where it is valid.
    pub domain: &'static str,
    /// Error that the source prints; empty where it prints none.
    pub published_error: &'static str,
    /// Arguments and result as JSON Schema.
    #[cfg(feature = "schema")]
    #[serde(skip)]
    pub(crate) schemas: Schemas,
}

#[cfg(feature = "schema")]
impl Row {
    /// Arguments and result as JSON Schema.
    #[must_use]
    pub const fn schemas(&self) -> Schemas {
        self.schemas
    }
}

/// One callable entry of the dispatch table.
#[derive(Clone, Copy)]
#[non_exhaustive]
pub struct Entry {
    /// Key, `module.function`.
    pub key: &'static str,
    #[cfg(feature = "serde")]
    pub(crate) call: fn(&crate::value::Value) -> Result<crate::value::Value, crate::error::Error>,
}

/// What is declared once stands in one list: a row and its entry.
#[derive(Clone, Copy)]
pub(crate) struct Declared {
    pub(crate) row: &'static Row,
    pub(crate) entry: &'static Entry,
}

/// What a module declares, a file at a time.
pub(crate) type Declarations = &'static [&'static [Declared]];

/// How many there are.
pub(crate) const fn count(mut files: Declarations) -> usize {
    let mut count = 0;
    while let [file, rest @ ..] = files {
        count += file.len();
        files = rest;
    }
    count
}

/// The entries alone, collected when it is compiled: who carries them carries no rows, whose texts weigh more than the code.
#[allow(clippy::indexing_slicing, reason = "a place too few would not compile")]
pub(crate) const fn entries<const COUNT: usize>(mut files: Declarations) -> [Option<&'static Entry>; COUNT] {
    let (mut entries, mut at) = ([None; COUNT], 0);
    while let [file, rest @ ..] = files {
        let mut file = *file;
        while let [declared, others @ ..] = file {
            entries[at] = Some(declared.entry);
            (at, file) = (at + 1, others);
        }
        files = rest;
    }
    entries
}

/// Reads named arguments strictly, calls a function, writes its result.
#[cfg(feature = "serde")]
pub type Call = fn(&crate::value::Value) -> Result<crate::value::Value, crate::error::Error>;

#[cfg(feature = "serde")]
impl Entry {
    /// An entry of a table of one's own beside the registry's.
    #[must_use]
    pub const fn new(
        key: &'static str,
        call: fn(&crate::value::Value) -> Result<crate::value::Value, crate::error::Error>,
    ) -> Entry {
        Entry { key, call }
    }

    /// Reads the named arguments strictly, calls the function, writes its result.
    ///
    /// # Errors
    /// What reading reports, and what the function reports.
    pub fn call(&self, given: &crate::value::Value) -> Result<crate::value::Value, crate::error::Error> {
        (self.call)(given)
    }

    /// The same as a plain function, to keep in a table.
    #[must_use]
    pub const fn function(
        &self,
    ) -> fn(&crate::value::Value) -> Result<crate::value::Value, crate::error::Error> {
        self.call
    }
}

impl fmt::Debug for Entry {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "Entry({})", self.key)
    }
}

/// This project itself, as the source of its own defaults.
pub const OURS: Source =
    Source { id: "bismar", citation: "This project's own choice; a parameter.", doi: None };

/// What careful coaches do, with no published evidence claimed.
pub const COMMON_PRACTICE: Source =
    Source { id: "common-practice", citation: "Common practice of the trade; no source claimed.", doi: None };

/// A definition, or arithmetic that follows from one.
pub const ARITHMETIC: Source =
    Source { id: "arithmetic", citation: "Follows from the definition; nothing measured.", doi: None };
