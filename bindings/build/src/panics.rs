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

/// End of the names of what panics on behalf of one method, as `Vec::remove::assert_failed`.
const ASSERTION: &str = "::assert_failed";

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

fn panics(name: &str) -> bool {
    PANICS.iter().any(|start| name.starts_with(start)) || name.ends_with(ASSERTION)
}

fn search(named: &[u8]) -> Result<Found, Failure> {
    let names = names(named)?;
    if names.is_empty() {
        return Err("the module names no functions, so that nothing can be looked for".into());
    }
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
            if !panics(&callee) || HARMLESS.iter().any(|(start, _)| caller.starts_with(start)) {
                continue;
            }
            if is_own(&caller) {
                found.own.insert(format!("{caller} calls {callee}"));
            } else if !panics(&caller) {
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
    // The language's own for whatever can be shown, like `format!`: a text takes everything that is written into it.
    let shown = name.ends_with(" as alloc::string::ToString>::to_string");
    made_for.starts_with("bismar") && !element && !shown
}

/// Prints what was found; an error where a function of the library could panic, or where the search sees nothing.
pub(crate) fn enforce(named: &[u8]) -> Result<(), Failure> {
    let Found { own, language } = search(named)?;
    println!(
        "  calls of panic functions: {} in the library, {language} in the language's own code",
        own.len()
    );
    if !own.is_empty() {
        let own = own.into_iter().collect::<Vec<_>>().join("\n  ");
        return Err(format!("functions that could panic:\n  {own}").into());
    }
    // The language's lists and sorts always hold some: without one the search looks for the wrong names.
    if language == 0 {
        return Err("no call of a panic function is found, not even in the language's own code".into());
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::{enforce, is_own};

    const IN_THE_LANGUAGE: &str = "alloc::raw_vec::grow";
    const IN_THE_LIBRARY: &str = "bismar::dose::rolling::rolling_load";
    const PANIC: &str = "core::panicking::panic_fmt";

    /// A section: its number, its length, its bytes.
    fn section(number: u8, body: &[u8]) -> Vec<u8> {
        [&[number, u8::try_from(body.len()).unwrap()], body].concat()
    }

    /// A module of two functions, of which the first calls the second and nothing else.
    fn module(names: Option<[&str; 2]>) -> Vec<u8> {
        let mut all = b"\0asm\x01\0\0\0".to_vec();
        all.extend(section(1, &[1, 0x60, 0, 0])); // one type: nothing in, nothing out
        all.extend(section(3, &[2, 0, 0])); // two functions of it
        all.extend(section(10, &[2, 4, 0, 0x10, 1, 0x0b, 2, 0, 0x0b])); // no locals, call 1, end; no locals, end
        if let Some(names) = names {
            let mut naming = vec![2];
            for (index, name) in (0_u8..).zip(names) {
                naming.extend([index, u8::try_from(name.len()).unwrap()]);
                naming.extend(name.bytes());
            }
            all.extend(section(0, &[b"\x04name", section(1, &naming).as_slice()].concat()));
        }
        all
    }

    fn refused(names: Option<[&str; 2]>) -> String {
        enforce(&module(names)).unwrap_err().to_string()
    }

    #[test]
    fn a_search_that_sees_nothing_fails() {
        assert!(refused(None).contains("names no functions"));
        assert!(
            refused(Some([IN_THE_LIBRARY, IN_THE_LANGUAGE])).contains("not even in the language's own code")
        );
    }

    #[test]
    fn a_panic_is_refused_in_the_library_alone() {
        assert!(enforce(&module(Some([IN_THE_LANGUAGE, PANIC]))).is_ok());
        let removal = "<alloc::vec::Vec<bismar::record::event::Event>>::remove::assert_failed";
        for callee in [PANIC, removal] {
            assert!(
                refused(Some([IN_THE_LIBRARY, callee])).contains(&format!("{IN_THE_LIBRARY} calls {callee}"))
            );
        }
        // What panics on a method's behalf holds the panic itself; that is no call of its own.
        assert!(refused(Some([removal, PANIC])).contains("not even in the language's own code"));
    }

    #[test]
    fn what_the_language_makes_for_our_types_is_not_ours() {
        assert!(is_own("bismar::dose::rolling::rolling_load"));
        assert!(is_own("<bismar::progression::state::State>::region_mut"));
        assert!(is_own("bismar_bindings::parcel::read"));
        assert!(!is_own("<bismar::loading::table::Line]>::swap"));
        assert!(!is_own("<&bismar::record::event::Event]>::split_at_mut"));
        assert!(!is_own("<alloc::vec::Vec<bismar::progression::state::Sitting>>::remove"));
        assert!(!is_own("<bismar::quantity::name::Name as alloc::string::ToString>::to_string"));
        assert!(is_own("<bismar::quantity::name::Name as core::fmt::Display>::fmt"));
        assert!(!is_own("core::slice::sort::unstable::ipnsort::<bismar::quantity::day::Day>"));
    }
}
