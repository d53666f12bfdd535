//! The exported functions. Arguments and results larger than a number pass through two stretches of memory,
//! `IN` and `OUT`; a result's sign says whether it is an answer or an error.

use std::cell::RefCell;

use bismar::Error;
use bismar::value::Value;
use bismar_surface::columns;
use wasm_bindgen::prelude::*;

use crate::fault::Fault;
use crate::flat::{self, Column};
use crate::parcel::{NamesRead, NamesWritten};
use crate::{dispatch, parcel};

thread_local! {
    static IN: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
    static OUT: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
    static NAMES_READ: RefCell<NamesRead> = RefCell::default();
    static NAMES_WRITTEN: RefCell<NamesWritten> = RefCell::default();
    static COLUMNS: RefCell<Vec<Column>> = const { RefCell::new(Vec::new()) };
    static ANSWERS: RefCell<Vec<f64>> = const { RefCell::new(Vec::new()) };
    pub(crate) static LAST: RefCell<Option<Fault>> = const { RefCell::new(None) };
}

/// Memory that is kept between calls at most; what a large call took is given back.
const KEPT: usize = 1 << 16;

/// What a panic would say, were there one: it leaves as a JavaScript error that the package turns into
/// `instance_failed`.
#[wasm_bindgen(start)]
fn raw_start() {
    std::panic::set_hook(Box::new(|panic| wasm_bindgen::throw_str(&panic.to_string())));
}

/// Makes room for so many bytes to come and says where.
#[wasm_bindgen]
#[must_use]
pub fn raw_room(length: usize) -> usize {
    IN.with_borrow_mut(|bytes| {
        bytes.clear();
        bytes.shrink_to(KEPT);
        bytes.resize(length, 0);
        bytes.as_ptr() as usize
    })
}

/// Where the bytes of the last answer lie.
#[wasm_bindgen]
#[must_use]
pub fn raw_answer() -> usize {
    OUT.with_borrow(|bytes| bytes.as_ptr() as usize)
}

pub(crate) fn answer(value: &Value) -> i32 {
    OUT.with_borrow_mut(|bytes| {
        bytes.clear();
        bytes.shrink_to(KEPT);
        NAMES_WRITTEN.with_borrow_mut(|names| parcel::write(value, names, bytes));
        bytes.len() as i32
    })
}

/// The same of a type that has no tree yet, without making one.
#[cfg(keeps)]
pub(crate) fn answer_straight<T: serde::Serialize>(value: &T) -> Result<i32, Error> {
    OUT.with_borrow_mut(|bytes| {
        bytes.clear();
        bytes.shrink_to(KEPT);
        NAMES_WRITTEN.with_borrow_mut(|names| crate::direct::write_answer(value, names, bytes))?;
        Ok(bytes.len() as i32)
    })
}

pub(crate) fn refuse(fault: &Fault) -> i32 {
    -answer(&fault.to_value())
}

/// Identifies the build; the package compares it with its own.
#[wasm_bindgen]
#[must_use]
pub fn raw_build() -> i32 {
    answer(&Value::Text(option_env!("BISMAR_BUILD_ID").unwrap_or("unbuilt").into()))
}

pub(crate) fn given() -> Result<Value, Error> {
    IN.with_borrow(|bytes| NAMES_READ.with_borrow_mut(|names| parcel::read(bytes, names)))
}

/// Calls the function at `index` of the dispatch table with the value that was put in.
#[wasm_bindgen]
#[must_use]
pub fn raw_call(index: u32) -> i32 {
    match given().map_err(|error| Fault::as_spelled(&error)).and_then(|given| dispatch::call(index, &given)) {
        Ok(value) => answer(&value),
        Err(fault) => refuse(&fault),
    }
}

fn call_flat(index: u32, given: &[f64]) -> f64 {
    match flat::call(index as usize, given) {
        Ok(number) => number,
        Err(error) => {
            LAST.set(Some(Fault::about(&error, &Value::Null)));
            f64::NAN
        }
    }
}

/// Why the last flat call or batch failed.
#[wasm_bindgen]
#[must_use]
pub fn raw_error() -> i32 {
    match LAST.take() {
        Some(fault) => refuse(&fault),
        None => 0,
    }
}

macro_rules! flat_by_arity {
    ($($name:ident ($($argument:ident),+));+ $(;)?) => {$(
        /// A flat function of so many numbers; NaN means an error that `raw_error` gives.
        #[wasm_bindgen]
        #[must_use]
        pub fn $name(index: u32, $($argument: f64),+) -> f64 {
            call_flat(index, &[$($argument),+])
        }
    )+};
}

flat_by_arity! {
    raw_flat1(a);
    raw_flat2(a, b);
    raw_flat3(a, b, c);
    raw_flat4(a, b, c, d);
    raw_flat5(a, b, c, d, e);
    raw_flat6(a, b, c, d, e, f);
    raw_flat7(a, b, c, d, e, f, g);
    raw_flat8(a, b, c, d, e, f, g, h);
}

/// Adds a column of one number for all rows to the batch to come.
#[wasm_bindgen]
pub fn raw_same(number: f64) {
    COLUMNS.with_borrow_mut(|columns| columns.push(Column::Same(number)));
}

/// Adds a column of so many rows to the batch to come and says where its numbers go.
#[wasm_bindgen]
#[must_use]
pub fn raw_column(rows: usize) -> usize {
    let numbers = vec![0.0_f64; rows];
    let place = numbers.as_ptr() as usize;
    COLUMNS.with_borrow_mut(|columns| columns.push(Column::Rows(numbers)));
    place
}

/// Runs a flat function over the columns: how many answers there are, or -1 and `raw_error` says why.
#[wasm_bindgen]
#[must_use]
pub fn raw_batch(index: u32) -> i32 {
    let columns = COLUMNS.take();
    match columns::batch(index as usize, &columns) {
        Ok(answers) => {
            let count = answers.len() as i32;
            ANSWERS.set(answers);
            count
        }
        Err(error) => {
            LAST.set(Some(Fault::about(&error, &Value::Null)));
            -1
        }
    }
}

/// Where the answers of the last batch lie.
#[wasm_bindgen]
#[must_use]
pub fn raw_answers() -> usize {
    ANSWERS.with_borrow(|answers| answers.as_ptr() as usize)
}

/// Gives the memory of the last batch back.
#[wasm_bindgen]
pub fn raw_forget() {
    ANSWERS.take();
    COLUMNS.take();
}
