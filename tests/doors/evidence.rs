//! More of the same never makes an answer less sure, and an empty log gives what is missing, never a nought.

use bismar::answers::{doors, raters, trend, verdicts};
use bismar::condition::DayClass;
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::quantity::{Day, Reps};
use bismar::record::*;
use bismar::value::Value;

use crate::made::{day, log_of, monday, of, single};
use crate::world::{kg, name, parameters};

/// Numbers of an answer over an empty log that are no measure: which version, which level, what is taken until there is more (of
/// a pair the belief that stands in for the own ratio).
const NO_MEASURE: [&str; 7] = ["weeks", "version", "prior", "level", "limits", "practice", "own"];

fn measures(value: &Value, at: &str, found: &mut Vec<(String, f64)>) {
    match value {
        Value::Number(number) => found.push((at.to_string(), *number)),
        Value::List(items) => items.iter().for_each(|item| measures(item, at, found)),
        Value::Map(fields) => {
            fields.iter().filter(|(key, _)| !NO_MEASURE.contains(&&**key)).for_each(|(key, item)| {
                measures(item, &format!("{at}.{key}"), found);
            });
        }
        _ => {}
    }
}

/// Each door by name, over a log without an event. What needs parameters says so; every other names what is missing, and
/// whatever number it gives is a count of nothing found, not a load, a rate or an interval.
#[test]
fn every_door_says_of_an_empty_log_what_is_missing() {
    let log = Value::write(&Log::new(Lifter::new(name("invented")))).unwrap();
    let plan = Value::write(&Plan::of([name("squat")])).unwrap();
    let text = |text: &str| Value::Text(text.to_string().into());
    let mut wrong = Vec::new();
    // A table of sets is no question to a log: its own tests try empty ones.
    for door in doors().filter(|door| door.key != "answers.sets_to_log") {
        let mut given = Vec::new();
        for argument in door.arguments {
            let value = match argument.name {
                "log" => log.clone(),
                "plan" => plan.clone(),
                "today" | "since" => text("2026-01-05"),
                "lift" | "strict" => text("squat"),
                "forgiving" => text("press"),
                "done" => Value::from_json(r#"{"lift":"squat","sets":[]}"#).unwrap(),
                "to" => Value::from_json(r#"{"work":{"sets":1,"reps":1,"load":{"kg":20}}}"#).unwrap(),
                "lifters" => Value::List(Vec::new()),
                _ => continue,
            };
            given.push((argument.name.into(), value));
        }
        let answer = match (door.call)(&Value::Map(given)) {
            Ok(answer) => answer,
            Err(error) => {
                assert!(
                    ["no_parameters", "unknown_lift"].contains(&error.code().as_str()),
                    "{}: {error:?}",
                    door.key
                );
                continue;
            }
        };
        // Who shares a bar with nobody misses nothing.
        if door.key != "answers.share" {
            let Some(Value::List(missing)) = answer.field("missing") else { panic!("{}", door.key) };
            assert!(!missing.is_empty(), "{}", door.key);
        }
        let mut found = Vec::new();
        measures(&answer, door.key, &mut found);
        // What was never done is due now, in no days.
        let counts = [
            "sessions",
            "days",
            "sets",
            "usable",
            "elsewhere",
            "lifts",
            "unweighed",
            "trained_weeks",
            "days_left",
        ];
        wrong.extend(found.into_iter().filter(|(at, number)| {
            let last = at.rsplit('.').next().unwrap();
            *number != 0.0 || !counts.contains(&last)
        }));
    }
    assert!(wrong.is_empty(), "{wrong:?}");
}

/// A single of 100 kg every Monday: with every further week the slope is known better, and the least difference that is real
/// becomes no larger.
#[test]
fn a_steady_lifter_makes_the_trend_surer() {
    let width = |weeks: i32| {
        let log =
            log_of(parameters(), (0..weeks).map(|week| (monday(week), of("squat", vec![single(100.0)]))));
        let found = trend(&log, &name("squat"), monday(weeks), Some(26)).unwrap();
        let slope = found.report.and_then(|report| report.slope)?;
        Some((slope.interval.width(), slope.smallest_real_difference))
    };
    let widths: Vec<(f64, f64)> = (4..20).filter_map(width).collect();
    assert!(widths.len() >= 10, "{widths:?}");
    for two in widths.windows(2) {
        assert!(two[1].0 <= two[0].0 * (1.0 + 1e-9), "{two:?}");
        assert!(two[1].1 <= two[0].1 * (1.0 + 1e-9), "{two:?}");
    }
}

/// The same days again: of the same parts the intervals become narrower.
#[test]
fn more_days_make_the_verdicts_surer() {
    let widths = |rounds: i32| {
        let mut events = Vec::new();
        for at in 0..rounds * 8 {
            let on: Day = day("2026-02-02").plus(4 * at).unwrap();
            let class = if at % 4 == 0 { DayClass::Below } else { DayClass::Within };
            let set = WorkSet::done(kg(60.0), Reps::whole(5).unwrap()).with_failed(at % 8 == 0);
            events.push((on, EventKind::DayReport(DayReport::all_well(class))));
            events.push((on, of("squat", vec![set])));
        }
        let found = verdicts(&log_of(parameters(), events), day("2026-12-31")).unwrap().calibration.unwrap();
        [found.right, found.caught, found.wrongly_called].map(|interval| interval.unwrap().width())
    };
    let all: Vec<[f64; 3]> = (3..8).map(widths).collect();
    for two in all.windows(2) {
        for (before, after) in two[0].iter().zip(two[1]) {
            assert!(after <= *before, "{two:?}");
        }
    }
}

/// The same table of marks once more: the same kappa, with a narrower interval.
#[test]
fn more_sets_make_the_agreement_surer() {
    let pairs = |rounds: usize| {
        let (met, lost) = (Mark::Met, Mark::NotMet);
        let one = [(met, met), (met, met), (lost, lost), (met, lost), (met, met)];
        let marks = |rater, mark| {
            let acceptable = if mark == lost { 3 } else { 5 };
            SetMarks::scored(5, acceptable, rater).with("brace", mark).unwrap()
        };
        let set = |(coach, video): (Mark, Mark)| {
            WorkSet::done(kg(60.0), Reps::whole(5).unwrap())
                .with_marks(marks(Rater::Coach, coach))
                .with_also_marked(vec![marks(Rater::Video, video)])
        };
        let sessions = (0..rounds).map(|at| (monday(at as i32), of("squat", one.map(set).to_vec())));
        let found = raters(&log_of(parameters(), sessions), None, monday(60)).unwrap();
        let agreement = found.pairs[0].all.agreement.clone().unwrap();
        (agreement.kappa, agreement.interval.width())
    };
    let all: Vec<(f64, f64)> = [4, 8, 16, 32].map(pairs).to_vec();
    for two in all.windows(2) {
        assert!((two[0].0 - two[1].0).abs() < 1e-12 && two[1].1 <= two[0].1, "{two:?}");
    }
}
