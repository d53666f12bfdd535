//! What pointers may do, small enough for an interpreter of the memory rules:
//! `cargo +nightly miri test -p bismar-c` (some minutes).

use std::ptr::{null, null_mut};

use super::*;

const EPLEY: &str = "one_rm.epley_1985";
const NONE: BismarBytes = BismarBytes { data: null_mut(), length: 0 };

/// What was told, given back.
fn taken(bytes: &mut BismarBytes) -> String {
    assert!(!bytes.data.is_null());
    // SAFETY: the library wrote so many bytes.
    let told = unsafe { std::slice::from_raw_parts(bytes.data.cast::<u8>(), bytes.length) };
    let text = String::from_utf8(told.to_vec()).unwrap();
    // SAFETY: the library wrote it.
    unsafe { bismar_free(bytes) };
    assert!(bytes.data.is_null());
    text
}

fn call(key: &str, given: &[u8]) -> (BismarStatus, String) {
    let mut answer = NONE;
    // SAFETY: as long as they are.
    let status = unsafe {
        bismar_call(key.as_ptr().cast(), key.len(), given.as_ptr().cast(), given.len(), &raw mut answer)
    };
    (status, taken(&mut answer))
}

#[test]
fn an_answer_and_an_error_are_told_and_given_back() {
    // 100 * (1 + 15 / 30), by hand.
    let (status, text) = call(EPLEY, br#"{"load":{"kg":100},"reps":15}"#);
    assert_eq!((status, text.as_str()), (BismarStatus::Answered, r#"{"kg":150}"#));
    let (status, text) = call(EPLEY, b"{");
    assert_eq!(status, BismarStatus::Refused);
    assert!(text.contains(r#""code":"not_json""#) && text.contains("message"), "{text}");
    // SAFETY: null is taken.
    unsafe { bismar_free(null_mut()) };
}

/// An error is taken as it was given.
#[test]
fn an_error_is_told_in_a_sentence() {
    let (status, error) = call(EPLEY, br#"{"load":{"kg":2500},"reps":5}"#);
    assert_eq!(status, BismarStatus::Refused);
    let (status, said) = call("text.error", format!(r#"{{"error":{error},"unit":"lb"}}"#).as_bytes());
    assert_eq!(status, BismarStatus::Answered, "{said}");
    assert!(said.ends_with(r#"is 5511.56. Allowed: -4409.24 to 4409.24 lb.""#), "{said}");
}

#[test]
fn what_is_null_or_too_long_is_refused() {
    let mut answer = NONE;
    // SAFETY: null is taken, and the length that no memory has is not read.
    let status = unsafe {
        bismar_call(EPLEY.as_ptr().cast(), EPLEY.len(), EPLEY.as_ptr().cast(), usize::MAX, &raw mut answer)
    };
    assert_eq!(status, BismarStatus::Refused);
    assert!(taken(&mut answer).contains("too_long"));
    // SAFETY: null is taken.
    let status = unsafe { bismar_call(null(), 0, null(), 0, &raw mut answer) };
    assert_eq!(status, BismarStatus::Refused);
    assert!(taken(&mut answer).contains("null_not_allowed"));
    // SAFETY: null is taken.
    assert_eq!(unsafe { bismar_call(null(), 0, null(), 0, null_mut()) }, BismarStatus::Misused);
}

#[test]
fn columns_are_read_and_filled_and_may_not_lie_over_each_other() {
    let (mut loads, reps) = ([100.0, 80.0, -1.0], [15.0, 1.0, 1.0]);
    let columns =
        [BismarColumn { rows: loads.as_ptr(), same: 0.0 }, BismarColumn { rows: reps.as_ptr(), same: 0.0 }];
    let (mut out, mut refused, mut error) = ([0.0; 3], 9, NONE);
    let mut run = |out: *mut f64, rows: usize, refused: *mut usize| {
        // SAFETY: as long as they are; what lies over each other is to be seen.
        let status = unsafe {
            let key = EPLEY.as_ptr().cast();
            bismar_batch(key, EPLEY.len(), columns.as_ptr(), 2, out, rows, refused, &raw mut error)
        };
        (status, (status == BismarStatus::Refused).then(|| taken(&mut error)))
    };
    assert_eq!(run(out.as_mut_ptr(), 3, &raw mut refused).0, BismarStatus::Answered);
    assert_eq!((out[0], refused, out[2].is_nan()), (150.0, 1, true));
    let (status, text) = run(out.as_mut_ptr(), 3, null_mut());
    assert!(status == BismarStatus::Refused && text.is_some_and(|text| text.contains("[2]")));
    let (status, text) = run(loads.as_mut_ptr(), 2, null_mut());
    assert!(status == BismarStatus::Refused && text.is_some_and(|text| text.contains("memory of its own")));
    assert_eq!(run(null_mut(), 0, null_mut()).0, BismarStatus::Answered);
}

#[test]
fn a_number_is_written_only_where_there_is_one() {
    let (given, mut answer, mut error) = ([100.0, 15.0], 7.0, NONE);
    for (count, status, found) in [(1, BismarStatus::Refused, 7.0), (2, BismarStatus::Answered, 150.0)] {
        // SAFETY: at most as long as they are.
        let flat = unsafe {
            let key = EPLEY.as_ptr().cast();
            bismar_flat(key, EPLEY.len(), given.as_ptr(), count, &raw mut answer, &raw mut error)
        };
        assert_eq!((flat, answer.total_cmp(&found).is_eq()), (status, true));
        // SAFETY: the library wrote it.
        unsafe { bismar_free(&raw mut error) };
    }
}

#[test]
fn a_state_is_asked_told_and_given_back_once() {
    let given = r#"{"log":{"format":"bismar-log","version":1,"lifter":{"id":"a"},"events":[]}}"#;
    let (mut state, mut told) = (0, NONE);
    // SAFETY: as long as it is.
    let status = unsafe { bismar_open(given.as_ptr().cast(), given.len(), &raw mut state, &raw mut told) };
    assert_eq!((status, state > 0), (BismarStatus::Answered, true));
    // SAFETY: as long as they are.
    let status = unsafe { bismar_ask(state, c"state".as_ptr(), 5, c"{}".as_ptr(), 2, &raw mut told) };
    assert_eq!(status, BismarStatus::Answered);
    assert!(taken(&mut told).contains("format"));
    assert_eq!((bismar_close(state), bismar_close(state)), (1, 0));
    // SAFETY: as long as it is.
    let status = unsafe { bismar_apply(state, c"{}".as_ptr(), 2, &raw mut told) };
    assert_eq!(status, BismarStatus::Refused);
    assert!(taken(&mut told).contains("not_ready"));
}

#[test]
fn a_panic_ends_inside() {
    let mut told = NONE;
    // SAFETY: a place.
    let place = unsafe { place_of(&raw mut told) };
    assert_eq!(guarded(place, || panic!("as if the library had one")), BismarStatus::Failed);
    assert!(told.data.is_null());
}
