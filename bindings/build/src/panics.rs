//! Looks for panics that a call could reach: which functions of the library call the language's panic functions.
//!
//! The library forbids panics by lint; this sees what a lint does not, namely checks that the compiler or the standard
//! library put into the library's own functions and the optimiser did not take out again. None is accepted but for the few in `HARMLESS`. What the
//! language's own code holds (its lists, trees and sorts, the allocator) is counted, not judged.

use std::collections::BTreeSet;

use wasmparser::{Operator, Parser, Payload};

use crate::Failure;
use crate::sizes::{imported_functions, names, plain};

/// Beginnings of the names of what panics.
const PANICS: &[&str] = &[
    "core::cell::panic_already",
    "core::panicking::",
    "core::option::unwrap_failed",
    "core::option::expect_failed",
    "core::result::unwrap_failed",
    "core::slice::index::slice_",
    "core::slice::copy_from_slice_impl::len_mismatch",
    "core::str::slice_error",
    "std::panicking::",
];

/// Functions that hold such a call and cannot come to it, each with the reason.
const HARMLESS: &[(&str, &str)] = &[
    ("<bismar::progression::state::State>::region_mut", "the place was found or made on the line before"),
    ("bismar_bindings::boundary::raw_", "no cell is borrowed twice: nothing inside calls JavaScript back"),
    ("<std::thread::local::LocalKey<core::cell::RefCell<", "as above"),
];

/// A function of the library and the panic function it calls; then how many calls the language's code has.
struct Found {
    own: BTreeSet<String>,
    language: usize,
}

fn search(named: &[u8]) -> Result<Found, Failure> {
    let names = names(named)?;
    let name = |index: u32| plain(names.get(&index).map_or("", String::as_str));
    let mut found = Found { own: BTreeSet::new(), language: 0 };
    let mut index = imported_functions(named)?;
    for payload in Parser::new(0).parse_all(named) {
        let Payload::CodeSectionEntry(body) = payload? else { continue };
        let caller = name(index);
        index += 1;
        for operator in body.get_operators_reader()? {
            let Operator::Call { function_index } = operator? else { continue };
            let callee = name(function_index);
            if !PANICS.iter().any(|start| callee.starts_with(start)) {
                continue;
            }
            if HARMLESS.iter().any(|(start, _)| caller.starts_with(start)) {
                continue;
            }
            if is_own(&caller) {
                found.own.insert(format!("{caller} calls {callee}"));
            } else if !caller.starts_with("core::panicking::") {
                found.language += 1;
            }
        }
    }
    Ok(found)
}

/// Whether it is a function of this workspace, not one of the language made for one of its types.
fn is_own(name: &str) -> bool {
    let made_for = name.trim_start_matches(['<', '&']).trim_start_matches("mut ");
    // A method of a slice is written `element]>::method`.
    let element = made_for.split_once("]>::").is_some_and(|(before, _)| !before.contains('['));
    made_for.starts_with("bismar") && !element
}

/// Prints what was found; an error where a function of the library could panic.
pub(crate) fn enforce(named: &[u8]) -> Result<(), Failure> {
    let Found { own, language } = search(named)?;
    println!(
        "  calls of panic functions: {} in the library, {language} in the language's own code",
        own.len()
    );
    if own.is_empty() {
        return Ok(());
    }
    Err(format!("functions that could panic:\n  {}", own.into_iter().collect::<Vec<_>>().join("\n  ")).into())
}

#[cfg(test)]
mod tests {
    use super::is_own;

    #[test]
    fn what_the_language_makes_for_our_types_is_not_ours() {
        assert!(is_own("bismar::dose::rolling::rolling_load"));
        assert!(is_own("<bismar::progression::state::State>::region_mut"));
        assert!(is_own("bismar_bindings::parcel::read"));
        assert!(!is_own("<bismar::loading::table::Line]>::swap"));
        assert!(!is_own("<&bismar::record::event::Event]>::split_at_mut"));
        assert!(!is_own("<alloc::vec::Vec<bismar::progression::state::Sitting>>::remove"));
        assert!(!is_own("core::slice::sort::unstable::ipnsort::<bismar::quantity::day::Day>"));
    }
}
