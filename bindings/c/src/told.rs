//! What the caller gets: bytes that are the library's until they are given back, and the status.

use std::ffi::c_char;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::ptr::{null_mut, slice_from_raw_parts_mut};

use bismar::Error;
use bismar::value::Value;
use bismar_surface::fault::describe;

/// How a call ended.
#[repr(i32)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BismarStatus {
    /// There is an answer.
    Answered = 0,
    /// The error is told as a JSON object: `code`, `field`, `message` in English, and where there are any `value`,
    /// `allowed` and `event`. A number in it that JSON cannot say is the text `NaN`, `Infinity` or `-Infinity`.
    Refused = 1,
    /// The place for the answer or the error is null, so that nothing was done and nothing can be told.
    Misused = 2,
    /// The library failed, which is a fault of its own; no bytes are told.
    Failed = 3,
}

/// Bytes of the library, in UTF-8: to be given back with `bismar_free`. Behind the last one stands a zero byte that
/// `length` does not count. `data` is null where there are none.
#[repr(C)]
#[derive(Debug)]
pub struct BismarBytes {
    /// The first of them.
    pub data: *mut c_char,
    /// How many they are.
    pub length: usize,
}

const NONE: BismarBytes = BismarBytes { data: null_mut(), length: 0 };

/// Where bytes are to be written.
pub(crate) struct Place<'a>(&'a mut std::mem::MaybeUninit<BismarBytes>);

/// The place, unless it is null or no place for such a value.
///
/// # Safety
/// `pointer` is null or a place that can be written, and nothing else reads or writes it meanwhile.
pub(crate) unsafe fn place_of<'a>(pointer: *mut BismarBytes) -> Option<Place<'a>> {
    if !pointer.is_aligned() {
        return None;
    }
    // SAFETY: aligned; null or there, as the caller promises. It may hold anything yet.
    unsafe { pointer.cast::<std::mem::MaybeUninit<BismarBytes>>().as_mut() }.map(Place)
}

impl Place<'_> {
    fn tell(&mut self, text: String) {
        let mut bytes = text.into_bytes();
        let length = bytes.len();
        bytes.push(0);
        let data = Box::into_raw(bytes.into_boxed_slice()).cast();
        self.0.write(BismarBytes { data, length });
    }

    pub(crate) fn free(self) {
        // SAFETY: the caller of `bismar_free` promises that the library wrote it.
        let bytes = unsafe { self.0.assume_init_mut() };
        let BismarBytes { data, length } = std::mem::replace(bytes, NONE);
        if data.is_null() {
            return;
        }
        let whole = slice_from_raw_parts_mut(data.cast::<u8>(), length + 1);
        // SAFETY: a box of so many bytes and a zero byte, made in `tell` and given back for the first time.
        drop(unsafe { Box::from_raw(whole) });
    }
}

/// Works, and tells the answer or the error at the place. A panic of the library, which is not meant to have any, ends
/// here instead of in the caller's frames.
pub(crate) fn guarded(
    place: Option<Place<'_>>,
    work: impl FnOnce() -> Result<Option<String>, Error>,
) -> BismarStatus {
    let Some(mut place) = place else { return BismarStatus::Misused };
    place.0.write(NONE);
    let (status, text) = match catch_unwind(AssertUnwindSafe(|| match work() {
        Ok(answer) => (BismarStatus::Answered, answer),
        Err(error) => (BismarStatus::Refused, Some(told(&error))),
    })) {
        Ok(done) => done,
        Err(_) => (BismarStatus::Failed, None),
    };
    if let Some(text) = text {
        place.tell(text);
    }
    status
}

/// An error as JSON text.
fn told(error: &Error) -> String {
    let mut told = describe(error);
    sayable(&mut told);
    if let Value::Map(fields) = &mut told {
        fields.push(("message".into(), Value::Text(error.to_string().into())));
    }
    told.to_json()
}

/// Puts a word for each number that JSON cannot say.
fn sayable(value: &mut Value) {
    match value {
        Value::Number(number) => {
            if let Some(word) = beyond_json(*number) {
                *value = Value::Text(word.into());
            }
        }
        Value::List(items) => items.iter_mut().for_each(sayable),
        Value::Map(fields) => fields.iter_mut().for_each(|(_, value)| sayable(value)),
        _ => {}
    }
}

/// What JSON has no number for.
fn beyond_json(number: f64) -> Option<&'static str> {
    match number {
        number if number.is_finite() => None,
        number if number.is_nan() => Some("NaN"),
        number if number > 0.0 => Some("Infinity"),
        _ => Some("-Infinity"),
    }
}
