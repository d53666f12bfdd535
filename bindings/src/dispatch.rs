//! Calls by number: the entries of the registry, then the doors, then those that only the offline page has.

use bismar::error::Allowed;
use bismar::source::Entry;
use bismar::value::Value;
use bismar::{Code, Error, registry};

use crate::doors::DOORS;
use crate::fault::Fault;

thread_local! {
    static TABLE: Vec<&'static Entry> = registry::entries().collect();
}

#[cfg(feature = "page")]
static FURTHER: &[Entry] = bismar_page::ENTRIES;
#[cfg(not(feature = "page"))]
static FURTHER: &[Entry] = &[];

type Call = fn(&Value) -> Result<Value, Error>;

fn find(index: u32) -> Option<Call> {
    let index = usize::try_from(index).ok()?;
    TABLE.with(|table| match table.get(index) {
        Some(entry) => Some(entry.call),
        None => {
            let index = index.checked_sub(table.len())?;
            let further = || FURTHER.get(index.checked_sub(DOORS.len())?).map(|entry| entry.call);
            DOORS.get(index).map(|door| door.call).or_else(further)
        }
    })
}

/// Calls the function with that number with a tree whose keys are in Rust's spelling.
///
/// # Errors
/// `unknown_function`, or whatever the function reports.
pub fn call(index: u32, given: &Value) -> Result<Value, Fault> {
    match find(index) {
        Some(call) => call(given).map_err(|error| Fault::about(&error, given)),
        None => {
            let error =
                Error::new(Code::UnknownFunction, "function", index, Allowed::rule("a key of the registry"));
            Err(Fault::as_spelled(&error))
        }
    }
}
