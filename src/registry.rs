//! All rows of the crate in one place, and calls by name.
//!
//! Uses every module above it.
//!
//! ```
//! let row = bismar::registry::row("one_rm.epley_1985").ok_or("no such row")?;
//! assert_eq!(row.source.id, "epley-1985");
//! # Ok::<(), &str>(())
//! ```

use crate::source::{Declarations, Entry, Row};

/// One line a module; each keeps its own list, a file at a time.
macro_rules! modules {
    ($($(#[$feature:meta])? $module:ident),+ $(,)?) => {
        static DECLARED: &[Declarations] = &[$($(#[$feature])? crate::$module::DECLARED),+];

        /// The entries without their rows, whose texts weigh more than the code.
        #[allow(non_upper_case_globals, reason = "named after the module")]
        mod called {
            use crate::source::{Entry, count, entries};

            $(
                $(#[$feature])?
                pub(super) static $module: [Option<&Entry>; count(crate::$module::DECLARED)] =
                    entries(crate::$module::DECLARED);
            )+
        }

        static CALLED: &[&[Option<&Entry>]] = &[$($(#[$feature])? &called::$module),+];

        /// The entries of one module each, so that a build that names some of them carries no others.
        pub mod of {
            use crate::source::Entry;

            $(
                #[doc = concat!("The entries of [`", stringify!($module), "`](crate::", stringify!($module), ").")]
                $(#[$feature])?
                pub fn $module() -> impl Iterator<Item = &'static Entry> {
                    super::called::$module.iter().copied().flatten()
                }
            )+
        }
    };
}

modules! {
    quantity,
    caution,
    reason,
    statistics,
    one_rm,
    loading,
    record,
    dose,
    condition,
    gate,
    progression,
    prescription,
    #[cfg(feature = "rehearsal")]
    rehearsal,
    horizon,
}

/// Every row: formulas, tables and defaults with their sources.
pub fn rows() -> impl Iterator<Item = &'static Row> {
    DECLARED.iter().flat_map(|module| module.iter()).flat_map(|file| file.iter()).map(|declared| declared.row)
}

/// Every entry of the dispatch table.
pub fn entries() -> impl Iterator<Item = &'static Entry> {
    CALLED.iter().flat_map(|module| module.iter().copied().flatten())
}

/// The row with that key.
#[must_use]
pub fn row(key: &str) -> Option<&'static Row> {
    rows().find(|row| row.key == key)
}

/// Calls a function of the dispatch table by name, with a map of named arguments.
///
/// # Errors
/// `unknown_function`, or whatever the function reports.
///
/// ```
/// use bismar::value::Value;
///
/// let given = Value::from_json(r#"{ "load": { "kg": 100 }, "reps": 8 }"#)?;
/// let result = bismar::registry::call("one_rm.epley_1985", &given)?;
/// assert!(result.field("kg").is_some());
/// # Ok::<(), bismar::Error>(())
/// ```
#[cfg(feature = "serde")]
pub fn call(key: &str, given: &crate::value::Value) -> Result<crate::value::Value, crate::error::Error> {
    use crate::error::{Allowed, Code, Error};
    match entries().find(|entry| entry.key == key) {
        Some(entry) => entry.call(given),
        None => {
            Err(Error::new(Code::UnknownFunction, "function", key, Allowed::rule("a key of the registry")))
        }
    }
}
