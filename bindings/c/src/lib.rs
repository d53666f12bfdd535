//! The C interface: the surface of every language as functions over bytes. Nothing is computed here. `include/bismar.h`
//! is generated from this file, with its comments: `cargo run -p bismar-build -- c-header`.
//!
//! A caller can hand in anything. What can be seen to be wrong is refused with a typed error: a null pointer, a length
//! that no memory has, a text that is not UTF-8, a number of a state that is closed. What cannot be seen, a pointer into
//! memory that is not there, is the caller's to avoid.
//!
//! | file | what it does |
//! |---|---|
//! | `given` | what the caller hands in: pointers as texts, numbers and columns |
//! | `told` | what the caller gets: bytes that are the library's until they are given back, and the status |

#![allow(unsafe_code, reason = "memory of the caller is reached by pointers; nowhere else in this workspace")]
#![deny(unsafe_op_in_unsafe_fn)]
#![deny(clippy::undocumented_unsafe_blocks, clippy::multiple_unsafe_ops_per_block)]
#![deny(clippy::missing_safety_doc)]

mod given;
mod told;

use std::ffi::c_char;

use bismar::error::Allowed;
use bismar::value::Value;
use bismar::{Code, Error};
use bismar_surface::doors::Request;
use bismar_surface::kept::Kept;
use bismar_surface::{calls, columns};

pub use given::BismarColumn;
use given::{Span, columns_of, key_of, numbers, numbers_to_fill, text};
pub use told::{BismarBytes, BismarStatus};
use told::{guarded, place_of};

/// Every state that is open.
static KEPT: Kept = Kept::new();

/// The version of the library, ended by a zero byte. It is there as long as the library is loaded and is not given back.
#[unsafe(no_mangle)]
pub extern "C" fn bismar_version() -> *const c_char {
    concat!(env!("CARGO_PKG_VERSION"), "\0").as_ptr().cast()
}

/// Every key that `bismar_call` knows, as a JSON list of texts.
///
/// # Safety
/// `answer` is null or a place that can be written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_keys(answer: *mut BismarBytes) -> BismarStatus {
    // SAFETY: null or a place to write, as the caller promises.
    let place = unsafe { place_of(answer) };
    guarded(place, || {
        let keys = calls::keys().map(|key| Value::Text(key.into())).collect();
        Ok(Some(Value::List(keys).to_json()))
    })
}

/// Calls a function by its key. `given` is a JSON object of its arguments, `answer` the JSON text of what it gives.
///
/// # Safety
/// `key` and `given` are null or point to as many bytes as their lengths say; `answer` is null or a place that can be
/// written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_call(
    key: *const c_char,
    key_length: usize,
    given: *const c_char,
    given_length: usize,
    answer: *mut BismarBytes,
) -> BismarStatus {
    // SAFETY: null or a place to write, as the caller promises.
    let place = unsafe { place_of(answer) };
    let (key, given) = (Span::of(key, key_length), Span::of(given, given_length));
    guarded(place, || {
        // SAFETY: the caller promises so many bytes.
        let key = unsafe { key_of(key) }?;
        // SAFETY: the caller promises so many bytes.
        let given = unsafe { text("given", given) }?;
        calls::call_json(key, given).map(Some)
    })
}

/// Calls a function of numbers: masses in kg, lengths in mm, days in days from 1970-01-01. `answer` is written where the
/// status is `BISMAR_STATUS_ANSWERED` only.
///
/// # Safety
/// `key` and `given` are null or point to as many bytes and numbers as their lengths say; `answer` and `error` are null or
/// places that can be written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_flat(
    key: *const c_char,
    key_length: usize,
    given: *const f64,
    count: usize,
    answer: *mut f64,
    error: *mut BismarBytes,
) -> BismarStatus {
    // SAFETY: null or a place to write, as the caller promises.
    let place = unsafe { place_of(error) };
    let (key, given, answer) = (Span::of(key, key_length), Span::of(given, count), Span::of(answer, 1));
    guarded(place, || {
        // SAFETY: the caller promises so many bytes.
        let key = unsafe { key_of(key) }?;
        // SAFETY: the caller promises so many numbers.
        let given = unsafe { numbers("given", given) }?;
        let found = (calls::flat(key)?.call)(given)?;
        // SAFETY: the caller promises a number that can be written; `given` is not used any more.
        let answer = unsafe { numbers_to_fill("answer", answer) }?;
        answer.fill(found);
        Ok(None)
    })
}

/// Calls a function of numbers for every row of the columns, into `out`: bit for bit what a call for each would give.
/// Where `refused` is null, the first row that the function refuses is the error, with its place behind the field, and what
/// `out` holds means nothing; else such a row becomes NaN, and how many there were is written to `refused`.
/// Where no column has rows of its own there can be one row only.
///
/// # Safety
/// `key`, `columns` and `out` are null or point to as many bytes, columns and numbers as their lengths say, and the `rows`
/// of each column is null or points to `rows` numbers; `refused` and `error` are null or places that can be written. None of
/// what is written lies over anything else that is given: `out` over a column is seen and refused.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_batch(
    key: *const c_char,
    key_length: usize,
    columns: *const BismarColumn,
    column_count: usize,
    out: *mut f64,
    rows: usize,
    refused: *mut usize,
    error: *mut BismarBytes,
) -> BismarStatus {
    // SAFETY: null or a place to write, as the caller promises.
    let place = unsafe { place_of(error) };
    let key = Span::of(key, key_length);
    let (columns, out, refused) =
        (Span::of(columns, column_count), Span::of(out, rows), Span::of(refused, 1));
    guarded(place, || {
        // SAFETY: the caller promises so many bytes.
        let key = unsafe { key_of(key) }?;
        let flat = calls::flat(key)?;
        // SAFETY: the caller promises so many columns, each of so many numbers or of one for all.
        let columns = unsafe { columns_of(columns, out) }?;
        // SAFETY: the caller promises so many numbers that can be written; that none of them is in a column was seen.
        let out = unsafe { numbers_to_fill("out", out) }?;
        let mut count = 0;
        if refused.is_null() {
            columns::run(flat, &columns, out, None)?;
            return Ok(None);
        }
        refused.checked("refused")?;
        columns::run(flat, &columns, out, Some(&mut count))?;
        // SAFETY: neither null nor out of place, as was seen, and the caller promises that it can be written.
        unsafe { refused.write(count) };
        Ok(None)
    })
}

/// Folds a log and keeps its state: `given` is `{"log": ...}`, and may name a stored `"state"`, which is taken instead where
/// it is of use. `state` gets its number, which is never used again, not even after it is closed.
///
/// # Safety
/// `given` is null or points to as many bytes as its length says; `state` and `error` are null or places that can be
/// written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_open(
    given: *const c_char,
    given_length: usize,
    state: *mut u64,
    error: *mut BismarBytes,
) -> BismarStatus {
    // SAFETY: null or a place to write, as the caller promises.
    let place = unsafe { place_of(error) };
    let (given, state) = (Span::of(given, given_length), Span::of(state, 1));
    guarded(place, || {
        // Before a state is kept that nobody could close.
        state.checked("state")?;
        // SAFETY: the caller promises so many bytes.
        let given = unsafe { text("given", given) }?;
        let number = KEPT.open(&Value::from_json(given)?)?;
        // SAFETY: neither null nor out of place, as was seen, and the caller promises that it can be written.
        unsafe { state.write(number) };
        Ok(None)
    })
}

/// Tells a kept state one more event, a JSON object as in the log. A state that refuses it is as it was; `needs_refold` if
/// the event changes the past.
///
/// # Safety
/// `event` is null or points to as many bytes as its length says; `error` is null or a place that can be written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_apply(
    state: u64,
    event: *const c_char,
    event_length: usize,
    error: *mut BismarBytes,
) -> BismarStatus {
    // SAFETY: null or a place to write, as the caller promises.
    let place = unsafe { place_of(error) };
    let event = Span::of(event, event_length);
    guarded(place, || {
        // SAFETY: the caller promises so many bytes.
        let event = unsafe { text("event", event) }?;
        let event = Value::from_json(event).map_err(|error| error.within("event"))?;
        KEPT.ask(state, Request::Apply, &Value::Map(vec![("event".into(), event)]))?;
        Ok(None)
    })
}

/// Asks a kept state: `decide` with `{"today": ...}`, `next_session` with `{"plan": ..., "today": ...}`, or `state` with
/// `{}`, which is what to store for tomorrow.
///
/// # Safety
/// `question` and `given` are null or point to as many bytes as their lengths say; `answer` is null or a place that can be
/// written.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_ask(
    state: u64,
    question: *const c_char,
    question_length: usize,
    given: *const c_char,
    given_length: usize,
    answer: *mut BismarBytes,
) -> BismarStatus {
    // SAFETY: null or a place to write, as the caller promises.
    let place = unsafe { place_of(answer) };
    let (question, given) = (Span::of(question, question_length), Span::of(given, given_length));
    guarded(place, || {
        // SAFETY: the caller promises so many bytes.
        let question = unsafe { text("question", question) }?;
        // SAFETY: the caller promises so many bytes.
        let given = unsafe { text("given", given) }?;
        let request = Request::from_name(question)
            .filter(|request| *request != Request::Apply)
            .ok_or_else(|| no_question(question))?;
        KEPT.ask(state, request, &Value::from_json(given)?).map(|answer| Some(answer.to_json()))
    })
}

fn no_question(question: &str) -> Error {
    let names = Allowed::OneOf("decide, next_session, state".into());
    Error::new(Code::UnknownVariant, "question", question.to_string(), names)
}

/// Gives a kept state back: 1 if there was one with that number, 0 if it was closed before or never was, which does no
/// harm.
#[unsafe(no_mangle)]
pub extern "C" fn bismar_close(state: u64) -> i32 {
    i32::from(KEPT.close(state))
}

/// How many states are open: for a test that none is forgotten.
#[unsafe(no_mangle)]
pub extern "C" fn bismar_open_states() -> usize {
    KEPT.count()
}

/// Gives bytes back, once; they are then empty, so that the same place may be given back again. Null does no harm.
///
/// # Safety
/// `bytes` is null, or holds what a function of this library wrote there last, unchanged.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn bismar_free(bytes: *mut BismarBytes) {
    // SAFETY: null or a place to write, as the caller promises.
    if let Some(place) = unsafe { place_of(bytes) } {
        place.free();
    }
}

#[cfg(test)]
mod tests;
