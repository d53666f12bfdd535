//! Lifts to begin with, against a second writing by hand, as a log has them: all of it our choice, so that nothing outside
//! the project has these numbers.

#![allow(clippy::unwrap_used, reason = "a test may panic")]
#![cfg(feature = "json")]

use bismar::prescription::{first_lift, first_lifts};
use bismar::record::LiftParameters;
use bismar::value::Value;

#[test]
fn lifts_to_begin_with_are_as_written_by_hand() {
    let written: Vec<LiftParameters> =
        Value::from_json(include_str!("first_lifts.json")).unwrap().read().unwrap();
    assert_eq!(written.len(), 8);
    assert!(first_lifts().eq(written.iter().map(|lift| lift.id.as_str())));
    for lift in written {
        let made = first_lift(lift.id.as_str(), lift.implement.clone(), lift.start.load()).unwrap();
        assert_eq!(made, lift);
    }
}
