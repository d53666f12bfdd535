//! More of the same never makes an answer less sure, and an empty log gives what is missing, never a nought.

use bismar::answers::{doors, raters, trend, verdicts};
use bismar::condition::DayClass;
use bismar::gate::{Mark, Rater, SetMarks};
use bismar::quantity::{Day, Reps};
use bismar::record::*;
use bismar::value::Value;

use crate::made::{day, log_of, monday, of, single};
use crate::world::{kg, name, parameters};

/// Numbers of an answer that are no measure of a lifter: which version, which level, which weeks were asked for, what the policy
/// says, what is believed of everybody until there is more.
const NO_MEASURE: [&str; 5] = ["weeks", "version", "prior", "level", "practice"];

/// Counts, which are nought where nothing was found.
const COUNTS: [&str; 9] =
    ["sessions", "days", "sets", "usable", "elsewhere", "lifts", "unweighed", "trained_weeks", "days_left"];

/// Doors that answer from what is set for a lift: over a log in which nothing is set they refuse, with that code.
const OF_SET_LIFTS: [&str; 4] = ["answers.compare", "answers.next_set", "answers.rack", "answers.share"];

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

/// Every door of a log, asked about the squat of that log.
pub(crate) fn asked_all(
    log: &Log,
    plan: &Plan,
    today: &str,
) -> Vec<(&'static str, Result<Value, bismar::Error>)> {
    let (log, plan) = (Value::write(log).unwrap(), Value::write(plan).unwrap());
    let text = |text: &str| Value::Text(text.to_string().into());
    let json = |text: &str| Value::from_json(text).unwrap();
    let one = Value::Map(vec![
        ("log".into(), log.clone()),
        ("plan".into(), plan.clone()),
        ("lift".into(), text("squat")),
    ]);
    // A table of sets is no question to a log: its own tests try empty ones.
    let doors = doors().filter(|door| door.key != "answers.sets_to_log");
    let asked = doors.map(|door| {
        let given = door.arguments.iter().filter_map(|argument| {
            let value = match argument.name {
                "log" => log.clone(),
                "plan" => plan.clone(),
                "today" | "since" => text(today),
                "lift" | "strict" => text("squat"),
                "forgiving" => text("press"),
                "done" => json(r#"{"lift":"squat","sets":[]}"#),
                "to" => json(r#"{"work":{"sets":1,"reps":1,"load":{"kg":20}}}"#),
                "lifters" => Value::List(vec![one.clone()]),
                _ => return None,
            };
            Some((argument.name.into(), value))
        });
        (door.key, (door.call)(&Value::Map(given.collect())))
    });
    asked.collect()
}

/// What an answer names as missing.
pub(crate) fn missing(answer: &Value) -> &[Value] {
    let Some(Value::List(missing)) = answer.field("missing") else { return &[] };
    missing
}

/// Holds the numbers of an answer to what nobody has measured: counts are nought, and the own ratio of a pair is what is believed
/// of everybody, 1.5 between 0.9 and 2.5, none of it the lifter's own.
fn holds_no_measure(key: &str, answer: &Value) {
    let mut found = Vec::new();
    measures(answer, key, &mut found);
    for (at, number) in found {
        let last = at.rsplit('.').next().unwrap();
        let believed = match &*at {
            "answers.pair.own.ratio" => 1.5,
            "answers.pair.own.interval.low" => 0.9,
            "answers.pair.own.interval.high" => 2.5,
            "answers.pair.own.own_weight" | "answers.pair.own.pairs" => 0.0,
            _ => {
                assert!(COUNTS.contains(&last), "{at}: {number}");
                0.0
            }
        };
        assert!((number - believed).abs() < 1e-12, "{at}: {number}");
    }
}

/// Over a log without an event each door either refuses, since no lift is set, or names what is missing; and whatever number it
/// gives is a count of nothing found, not a load, a rate or an interval.
#[test]
fn every_door_says_of_an_empty_log_what_is_missing() {
    let log = Log::new(Lifter::new(name("invented")));
    let mut refused = Vec::new();
    for (key, answer) in asked_all(&log, &Plan::of([name("squat")]), "2026-01-05") {
        match answer {
            Ok(answer) => {
                assert!(!missing(&answer).is_empty(), "{key}");
                holds_no_measure(key, &answer);
            }
            Err(error) => {
                assert_eq!(error.code().as_str(), "no_parameters", "{key}: {error:?}");
                refused.push(key);
            }
        }
    }
    assert_eq!(refused, OF_SET_LIFTS);
}

/// Lifts and equipment are set, and nobody has lifted: every door answers. Those of a set lift answer from what is set alone, and
/// every other names what is missing.
#[test]
fn every_door_answers_before_the_first_session() {
    let log = log_of(parameters(), []);
    for (key, answer) in asked_all(&log, &Plan::of([name("squat")]), "2026-01-05") {
        let answer = answer.unwrap_or_else(|error| panic!("{key}: {error:?}"));
        let none_missing = missing(&answer).is_empty();
        assert_eq!(none_missing, OF_SET_LIFTS.contains(&key), "{key}: {:?}", missing(&answer));
        // What is granted is handed over, and has its history, with what is missing.
        if !none_missing && !["answers.handover", "answers.history"].contains(&key) {
            holds_no_measure(key, &answer);
        }
    }
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
