//! Calls by number: those of the surface, then those that only the offline page has.

use bismar::source::Entry;
use bismar::value::Value;
use bismar_surface::calls::{self, Call};

use crate::fault::Fault;

thread_local! {
    static TABLE: Vec<Call> = calls::numbered().map(|(_, call)| call).collect();
}

#[cfg(feature = "page")]
static FURTHER: &[Entry] = bismar_page::ENTRIES;
#[cfg(not(feature = "page"))]
static FURTHER: &[Entry] = &[];

fn find(index: u32) -> Option<Call> {
    let index = usize::try_from(index).ok()?;
    let listed = |table: &Vec<Call>| (table.get(index).copied(), index.checked_sub(table.len()));
    let (call, further) = TABLE.with(listed);
    call.or_else(|| FURTHER.get(further?).map(Entry::function))
}

/// Calls the function with that number with a tree whose keys are in Rust's spelling.
///
/// # Errors
/// `unknown_function`, or whatever the function reports.
pub fn call(index: u32, given: &Value) -> Result<Value, Fault> {
    match find(index) {
        Some(call) => call(given).map_err(|error| Fault::about(&error, given)),
        None => Err(Fault::as_spelled(&calls::unknown(index))),
    }
}
