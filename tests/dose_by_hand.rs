//! Single answers about dose, worked out by hand.

#![allow(clippy::unwrap_used, clippy::float_cmp, reason = "a test may panic, and these numbers are exact")]

use bismar::dose::{DailyLoad, DiarySet, Fading, WeightedStart, weighted_load};
use bismar::value::Value;

/// A span of three days gives today half of the weight.
#[test]
fn after_a_gap_the_mean_of_the_first_days_is_taken_anew() {
    let load = |load: f64| DailyLoad::recorded(load).unwrap();
    let days =
        [load(10.0), load(20.0), load(40.0), DailyLoad::NotRecorded, load(30.0), load(50.0), load(20.0)];
    let weighted = |start| weighted_load(&days, Fading::Span(3), start).unwrap();
    assert_eq!(
        weighted(WeightedStart::MeanOfFirst(2)),
        [None, Some(15.0), Some(27.5), None, None, Some(40.0), Some(30.0)]
    );
    // Neither zero nor an old level stands for what nobody wrote down.
    assert_eq!(
        weighted(WeightedStart::Zero),
        [Some(5.0), Some(12.5), Some(26.25), None, Some(30.0), Some(40.0), Some(30.0)]
    );
}

#[test]
fn a_diary_set_without_a_number_of_sets_is_one() {
    let row = r#"{"day":"2026-01-05","lift":"squat","load":{"kg":40},"reps":5}"#;
    let set: DiarySet = Value::from_json(row).unwrap().read().unwrap();
    assert_eq!((set.sets, set.regions.len(), set.reserve), (1, 0, None));
    assert_eq!(Value::write(&set).unwrap().field("sets"), Some(&Value::Number(1.0)));
}
