//! Every function of the registry at the edges: of its domain as its row states it, of its types, of `f64`.
//!
//! Starts from the published checks; each number among the arguments is set in turn to each edge. A function answers
//! with finite numbers, or says what is wrong with the input; it never calls a number of its own NaN. Functions with
//! inverses give back what went in, wherever both answer.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may panic"
)]

use std::collections::BTreeMap;
use std::path::Path;

use bismar::registry;
use bismar::source::Kind;
use bismar::value::Value;
use bismar::{Code, Error};

const FOLDER: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/published");

/// Edges of types: counts, masses, lengths, days, `f64` itself.
const EDGES: &[f64] = &[
    0.0,
    -0.0,
    1.0,
    -1.0,
    0.5,
    2.0,
    30.0,
    255.0,
    256.0,
    365.0,
    2000.0,
    3660.0,
    65_535.0,
    65_536.0,
    1e6,
    0.999_999_999,
    1e-12,
    1e-160,
    1e-300,
    5e-324,
    2.225_073_858_507_201_4e-308,
    2_147_483_647.0,
    4_294_967_295.0,
    4_294_967_296.0,
    9_007_199_254_740_992.0,
    1e19,
    1e155,
    1e300,
    -1e300,
    f64::MAX,
    f64::MIN,
];
/// Published cases of a function that serve as starts.
const STARTS: usize = 4;
/// Numbers of a case that are changed in turn.
const PLACES: usize = 24;

/// Checks lie beside the list of names and the code that reads them.
fn is_cases(path: &Path) -> bool {
    path.extension().is_some_and(|kind| kind == "json") && !path.ends_with("names.json")
}

fn starts() -> BTreeMap<String, Vec<Value>> {
    let mut found: BTreeMap<String, Vec<Value>> = BTreeMap::new();
    let mut files: Vec<_> =
        std::fs::read_dir(Path::new(FOLDER)).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    for path in files.iter().filter(|path| is_cases(path)) {
        let document = Value::from_json(&std::fs::read_to_string(path).unwrap()).unwrap();
        let Some(Value::List(cases)) = document.field("cases") else { continue };
        for case in cases {
            let (Some(Value::Text(key)), Some(given)) = (case.field("function"), case.field("given")) else {
                continue;
            };
            let known = found.entry(key.to_string()).or_default();
            if known.len() < STARTS {
                known.push(given.clone());
            }
        }
    }
    found
}

/// Every number in the text, with its neighbours.
fn stated(domain: &str) -> Vec<f64> {
    let words = domain.split(|c: char| !(c.is_ascii_digit() || c == '.' || c == '-'));
    let numbers = words.filter_map(|word| word.trim_end_matches('.').parse::<f64>().ok());
    numbers
        .flat_map(|number| [number, number.next_up(), number.next_down(), number + 1.0, number + 0.5])
        .collect()
}

fn numbers(value: &Value) -> usize {
    match value {
        Value::Number(_) => 1,
        Value::List(items) => items.iter().map(numbers).sum(),
        Value::Map(fields) => fields.iter().map(|(_, inner)| numbers(inner)).sum(),
        _ => 0,
    }
}

/// The number at that place.
fn place<'a>(value: &'a mut Value, left: &mut usize) -> Option<&'a mut f64> {
    match value {
        Value::Number(number) if *left == 0 => Some(number),
        Value::Number(_) => {
            *left -= 1;
            None
        }
        Value::List(items) => items.iter_mut().find_map(|item| place(item, left)),
        Value::Map(fields) => fields.iter_mut().find_map(|(_, inner)| place(inner, left)),
        _ => None,
    }
}

fn finite(value: &Value) -> bool {
    match value {
        Value::Number(number) => number.is_finite() && (*number != 0.0 || number.is_sign_positive()),
        Value::List(items) => items.iter().all(finite),
        Value::Map(fields) => fields.iter().all(|(_, inner)| finite(inner)),
        _ => true,
    }
}

/// Beyond these a quotient or a square may not fit into `f64`; the answer is then `not_finite`, and nothing else.
const REPRESENTABLE: std::ops::Range<f64> = 1e-100..1e100;

/// Sets each number of the first cases of every function to each edge.
fn at_the_edges(most_starts: usize, most_places: usize, every: usize) {
    let starts = starts();
    let (mut calls, mut answers, mut failures) = (0_usize, 0_usize, Vec::new());
    for row in registry::rows().filter(|row| row.kind == Kind::Function) {
        let edges: Vec<f64> = stated(row.domain).into_iter().chain(EDGES.iter().copied()).collect();
        for start in starts.get(row.key).into_iter().flatten().take(most_starts) {
            for at in 0..numbers(start).min(most_places) {
                for edge in edges.iter().skip(at % every).step_by(every) {
                    let mut given = start.clone();
                    *place(&mut given, &mut at.clone()).unwrap() = *edge;
                    calls += 1;
                    match registry::call(row.key, &given) {
                        Ok(answer) if finite(&answer) => answers += 1,
                        Ok(answer) => {
                            failures.push(format!("{}: {answer:?} for {}", row.key, given.to_json()))
                        }
                        Err(error) => {
                            let own = error.code() == Code::NotFinite;
                            if own && (*edge == 0.0 || REPRESENTABLE.contains(&edge.abs())) {
                                failures.push(format!("{}: {error} for {}", row.key, given.to_json()));
                            }
                            assert!(!bismar::text::error(&error).is_empty());
                        }
                    }
                }
            }
        }
    }
    println!("edges: {calls} calls, {answers} answers, the rest typed errors");
    assert!(answers * 10 > calls, "hardly anything was answered");
    failures.truncate(40);
    assert!(failures.is_empty(), "{}", failures.join("\n"));
}

#[test]
fn every_function_answers_or_refuses_at_some_edges() {
    at_the_edges(1, 3, 4);
}

#[test]
#[ignore = "slow: every edge of every number of four cases each"]
fn every_function_answers_or_refuses_at_every_edge() {
    at_the_edges(STARTS, PLACES, 1);
}

fn number(of: &Value) -> Option<f64> {
    match of {
        Value::Number(number) => Some(*number),
        Value::Map(fields) => fields.first().and_then(|(_, inner)| number(inner)),
        _ => None,
    }
}

fn kilograms(value: f64) -> Value {
    Value::Map(vec![("kg".into(), Value::Number(value))])
}

/// Calls a function with the arguments that it takes from the list.
fn call(key: &str, from: &[(&str, Value)]) -> Option<Result<f64, Error>> {
    let row = registry::row(key)?;
    let given: Option<Vec<_>> = row
        .arguments
        .iter()
        .map(|argument| from.iter().find(|(name, _)| *name == argument.name))
        .map(|found| found.map(|(name, value)| (String::from(*name).into(), value.clone())))
        .collect();
    Some(registry::call(key, &Value::Map(given?)).map(|answer| number(&answer).unwrap()))
}

/// Arguments beside load and repetitions, where an equation has some.
const CHOICES: &[(&str, &[&str])] = &[
    ("lift", &["bench_press", "squat", "deadlift", "chest_press", "leg_press"]),
    ("device", &["lat_pull", "triceps_dip", "trunk_flexion", "leg_extension"]),
    ("above_ten", &["one_page", "textbook"]),
];

fn choices(key: &str) -> Vec<Vec<(&'static str, Value)>> {
    let row = registry::row(key).unwrap();
    let mut all = vec![vec![]];
    for (name, values) in CHOICES {
        if row.arguments.iter().any(|argument| argument.name == *name) {
            all = all
                .iter()
                .flat_map(|chosen: &Vec<_>| {
                    values.iter().map(|value| {
                        let mut more = chosen.clone();
                        more.push((*name, Value::Text((*value).into())));
                        more
                    })
                })
                .collect();
        }
    }
    all
}

/// Equations with an inverse: the load of the maximum is the load, the repetitions of the fraction the repetitions,
/// and more load or more repetitions never mean less strength.
#[test]
fn equations_and_their_inverses_agree_at_the_edges() {
    let loads = [0.5, 1.0, 5.0, 20.0, 62.5, 137.5, 250.0, 500.0];
    let (mut both, mut pairs) = (0, std::collections::BTreeSet::new());
    for row in registry::rows().filter(|row| row.key.starts_with("one_rm.") && row.kind == Kind::Function) {
        let inverses = [format!("{}_load", row.key), format!("{}_reps", row.key)];
        let takes = |name| row.arguments.iter().any(|argument| argument.name == name);
        if !takes("load") || !inverses.iter().any(|key| registry::row(key).is_some()) {
            continue;
        }
        for chosen in choices(row.key) {
            for halves in if takes("reps") { 0..=80 } else { 0..=0 } {
                let reps = f64::from(halves) / 2.0;
                let mut before = f64::MIN;
                for load in loads {
                    let mut given = chosen.clone();
                    given.extend([("load", kilograms(load)), ("reps", Value::Number(reps))]);
                    let Some(Ok(one_rm)) = call(row.key, &given) else { continue };
                    assert!(one_rm > before, "{}: {load} kg gives {one_rm} after {before}", row.key);
                    before = one_rm;
                    given.extend([("one_rm", kilograms(one_rm))]);
                    given.push(("fraction", Value::Number(load / one_rm)));
                    for (key, wanted) in [(&inverses[0], load), (&inverses[1], reps)] {
                        if let Some(Ok(back)) = call(key, &given) {
                            let close = (back - wanted).abs() <= 1e-6 * (1.0 + wanted);
                            assert!(close, "{key}: {back} instead of {wanted} ({load} kg x {reps})");
                            both += 1;
                            pairs.insert(key.clone());
                        }
                    }
                }
            }
        }
    }
    println!("inverses: {both} round trips over {} functions", pairs.len());
    assert!(pairs.len() >= 30, "{pairs:?}");
}
