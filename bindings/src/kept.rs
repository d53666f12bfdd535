//! States kept between calls, for the package's handles.

use std::cell::RefCell;

use bismar::Error;
use bismar::progression::State;
use wasm_bindgen::prelude::*;

use crate::boundary::{LAST, answer, answer_straight, given, refuse};
use crate::doors::{self, Request};
use crate::fault::Fault;

thread_local! {
    static KEPT_STATES: RefCell<Vec<Option<State>>> = const { RefCell::new(Vec::new()) };
    // Places that were given back and are used again, so that opening looks through nothing.
    static FREE: RefCell<Vec<usize>> = const { RefCell::new(Vec::new()) };
}

/// Folds the log that was put in, or takes the state stored with it, and keeps the state: its number, or -1 and
/// `raw_error` says why.
#[wasm_bindgen]
#[must_use]
pub fn raw_open() -> i32 {
    let opened = given()
        .map_err(|error| Fault::as_spelled(&error))
        .and_then(|given| doors::open(&given).map_err(|error| Fault::about(&error, &given)));
    match opened {
        Ok(state) => KEPT_STATES.with_borrow_mut(|states| {
            let free = FREE.with_borrow_mut(Vec::pop).unwrap_or(states.len());
            if free == states.len() {
                states.push(None);
            }
            if let Some(place) = states.get_mut(free) {
                *place = Some(state);
            }
            free as i32
        }),
        Err(fault) => {
            LAST.set(Some(fault));
            -1
        }
    }
}

/// Asks a kept state.
#[wasm_bindgen]
#[must_use]
pub fn raw_ask(number: usize, request: u32) -> i32 {
    let given = match given() {
        Ok(given) => given,
        Err(error) => return refuse(&Fault::as_spelled(&error)),
    };
    let answered = KEPT_STATES.with_borrow_mut(|states| -> Result<i32, Error> {
        match (states.get_mut(number).and_then(Option::as_mut), Request::from_number(request)) {
            // Asked for between two sets.
            (Some(state), Some(Request::NextSession)) => answer_straight(&doors::session_of(state, &given)?),
            (Some(state), Some(request)) => Ok(answer(&doors::ask(state, request, &given)?)),
            _ => Err(doors::gone()),
        }
    });
    match answered {
        Ok(length) => length,
        Err(error) => refuse(&Fault::about(&error, &given)),
    }
}

/// Gives a kept state back.
#[wasm_bindgen]
pub fn raw_close(number: usize) {
    KEPT_STATES.with_borrow_mut(|states| {
        if let Some(place) = states.get_mut(number)
            && place.take().is_some()
        {
            FREE.with_borrow_mut(|free| free.push(number));
        }
    });
}
