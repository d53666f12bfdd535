//! Every single change of a set of parameters changes its digest; the order in which JSON names fields does not.

use alloc::collections::BTreeSet;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::digest;
use crate::record::Parameters;
use crate::value::Value;

/// Parameters in which every field of every type is there, and every variant of every choice that holds something.
/// They need not be parameters that a log would take. Invented throughout.
fn whole() -> Json {
    let lift = |id: &str, step: Json, gate: Json| {
        json!({
            "id": id, "name": "a lift", "body": "lower", "regions": ["knee", "hip"], "implement": "bar",
            "rungs": [
                {"id": "box", "name": "to a box"},
                {"id": "free", "name": "without", "harder_than": ["box"], "own_ratio": 0.9}
            ],
            "starts_from": "floor", "ranges": [{"mm": 300}, {"mm": 225}],
            "tempos": [{"down": 3, "hold": 1, "up": 2}],
            "start": {"place": {"rung": 1, "range": 1, "tempo": 2}, "work": {"sets": 2, "reps": 5, "load": {"kg": 50}}},
            "moving": "load",
            "criteria": [{"id": "brace", "critical": true, "sets": [1, 2]}],
            "pass": {
                "miss_percent": 12, "misses_at_least": 2, "clean_first_reps": 3, "first_set_must_pass": true,
                "unscored_sets_allowed": 1, "every_criterion_seen": true, "critical_borderline_passes": false,
                "lifter_marks_count": false
            },
            "gate": gate, "step": step, "step_cap": 0.05, "ceiling": {"kg": 90}, "reps_top": 8, "sets_top": 4,
            "learning_sessions": 5, "over_the_body": true
        })
    };
    let run = json!({"pass_run": {
        "acceptable": 9, "of": 10, "sessions": 2, "neutral_fails": 1, "rater_change_restarts": true
    }});
    let sequential = json!({"evidence": {"most_reps": 30, "days": 2, "rule": {"sequential": {
        "poor": 0.7, "good": 0.9, "false_open": 0.05, "false_shut": 0.1
    }}}});
    let posterior = json!({"evidence": {"most_reps": 30, "days": 2, "rule": {"posterior": {
        "rate": 0.8, "level": 0.9, "prior_acceptable": 1.5, "prior_missed": 1.5
    }}}});
    let gate = json!({"all": [
        run, sequential, posterior, "effort_cap", {"dwell_sessions": 2}, {"dwell_days": 5}, {"spacing": 7},
        {"any": ["sign_off", "pair"]}, {"at_least": {"count": 1, "of": ["region", "no_open_block"]}}
    ]});
    let stack = json!({
        "id": "stack", "start": {"kg": 5}, "plates": [{"kg": 5}, {"kg": 10}], "add_ons": [{"kg": 2.5}], "ratio": 0.5
    });
    json!({
        "regions": [{"id": "knee", "name": "left knee"}, {"id": "hip", "name": "left hip"}],
        "lifts": [
            lift("one", json!({"part": 0.025}), gate),
            lift("two", json!({"fixed": {"kg": 1}}), run.clone()),
            lift("three", json!("smallest_loadable"), run)
        ],
        "pairs": [{"strict": "one", "forgiving": "two", "ratio_cap": 0.9}],
        "implements": [
            {"bar": {"id": "bar", "mass": {"kg": 20}, "collar": {"kg": 0.5}, "sleeve": {"mm": 400}, "kind": {
                "hex": {"low_handle": {"mm": 10}, "high_handle": {"mm": 100}}
            }}},
            {"handle": {"id": "handle", "mass": {"kg": 2}, "collar": {"kg": 0.25}, "sleeve": {"mm": 100}, "handles": 1}},
            {"pieces": {"id": "pieces", "masses": [{"kg": 4}, {"kg": 8}]}},
            {"machine": stack},
            {"assistance": stack},
            {"pin": {"id": "pin", "mass": {"kg": 3}, "collar": {"kg": 0.5}, "room": {"mm": 200}}}
        ],
        "stock": {"discs": [
            {"nominal": {"kg": 20}, "measured": {"kg": 20.05}, "diameter": {"mm": 450}, "thickness": {"mm": 40}, "count": 4},
            {"nominal": {"kg": 5}, "measured": {"kg": 5.05}, "diameter": {"mm": 230}, "thickness": {"mm": 20}, "count": 2}
        ]},
        "blocks": [{"mm": 50}, {"mm": 100}],
        "policy": Value::write(&crate::record::Policy::default()).map(|policy| policy.to_json()).map_or(Json::Null, |text| {
            serde_json::from_str(&text).unwrap_or_default()
        })
    })
}

/// How many fields there are to change, counted in the declarations of the types.
const FIELDS: usize = REGION + LIFT + GATE + STEP + PAIR + IMPLEMENTS + DISC + BLOCK + POLICY;
const REGION: usize = 2;
/// 8 of the lift, 4 of a rung, 1 of a range, 3 of a tempo, 6 of the start, 3 of a criterion, 8 of the pass rules, 5 more
/// numbers and whether it is over the body; without gate and step.
const LIFT: usize = 7 + 4 + 1 + 3 + 6 + 3 + 8 + 6;
/// A run alone and in a group, either kind of evidence with its two numbers, the bare names in three places, three
/// numbers of time, a count.
const GATE: usize = 5 + 5 + 4 + 4 + 2 + 3 + 3 + 1;
/// A part, a mass, a bare name.
const STEP: usize = 3;
const PAIR: usize = 3;
/// A bar with a hex frame, a handle, pieces, a machine, one that helps, a pin.
const IMPLEMENTS: usize = 6 + 5 + 2 + 5 + 5 + 4;
const DISC: usize = 5;
const BLOCK: usize = 1;
/// 29 numbers and answers, and the 5 of a row of the layoff table.
const POLICY: usize = 29 + 5;

/// Every name that a choice without content has in JSON.
const NAMES: &[&str] = &[
    "upper",
    "lower",
    "rack",
    "floor",
    "pins",
    "load",
    "reps",
    "effort_cap",
    "no_open_block",
    "sign_off",
    "pair",
    "region",
    "smallest_loadable",
    "straight",
];

fn read(document: &Json) -> Option<Parameters> {
    Value::from_json(&document.to_string()).ok()?.read().ok()
}

/// Pointers to every value of the document that is neither a list nor a map.
fn leaves(document: &Json) -> Vec<String> {
    fn walk(inside: &Json, path: &str, found: &mut Vec<String>) {
        match inside {
            Json::Array(items) => {
                let numbered = items.iter().enumerate();
                numbered.for_each(|(at, item)| walk(item, &std::format!("{path}/{at}"), found));
            }
            Json::Object(fields) => {
                fields.iter().for_each(|(name, item)| walk(item, &std::format!("{path}/{name}"), found));
            }
            _ => found.push(path.to_string()),
        }
    }
    let mut found = Vec::new();
    walk(document, "", &mut found);
    found
}

/// Other values for one place.
fn others(value: &Json) -> Vec<Json> {
    match value {
        Json::Bool(flag) => std::vec![json!(!flag)],
        Json::Number(number) => {
            let number = number.as_f64().unwrap_or_default();
            let whole =
                |number: f64| if number.fract() == 0.0 { json!(number as i64) } else { json!(number) };
            [number + 1.0, number - 1.0, number + 0.01, number - 0.01, number + 0.5].map(whole).to_vec()
        }
        Json::String(text) => {
            let names = NAMES.iter().map(|name| json!(name));
            names.chain([json!(std::format!("{text} too")), json!({"part": 0.03})]).collect()
        }
        _ => Vec::new(),
    }
}

/// The documents that differ from this one at that place and are still parameters.
fn changed<'a>(document: &'a Json, pointer: &'a str) -> impl Iterator<Item = (Json, Parameters)> + 'a {
    let here = document.pointer(pointer).map(others).unwrap_or_default();
    let before = read(document);
    here.into_iter().filter_map(move |other| {
        let mut document = document.clone();
        *document.pointer_mut(pointer)? = other;
        let parameters = read(&document)?;
        (Some(&parameters) != before.as_ref()).then_some((document, parameters))
    })
}

/// The path without the numbers of lists.
fn field(pointer: &str) -> String {
    let names = pointer.split('/').filter(|part| !part.chars().all(|letter| letter.is_ascii_digit()));
    names.collect::<Vec<_>>().join("/")
}

#[test]
fn every_single_field_changes_the_digest() {
    let document = whole();
    let before = digest(&read(&document).unwrap());
    let mut seen = BTreeSet::new();
    for pointer in leaves(&document) {
        let mut ways = 0;
        for (_, after) in changed(&document, &pointer) {
            ways += 1;
            assert_ne!(digest(&after), before, "{pointer}");
        }
        assert!(ways > 0, "{pointer} cannot be changed");
        seen.insert(field(&pointer));
    }
    assert_eq!(seen.len(), FIELDS, "{seen:#?}");
}

/// What a list holds, in which order and how often, and whether a field is there at all.
#[test]
fn every_list_and_every_field_that_may_be_absent_changes_the_digest() {
    fn at_every_place(inside: &Json, path: &str, found: &mut Vec<String>) {
        found.push(path.to_string());
        match inside {
            Json::Array(items) => {
                for (at, item) in items.iter().enumerate() {
                    at_every_place(item, &std::format!("{path}/{at}"), found);
                }
            }
            Json::Object(fields) => {
                for (name, item) in fields {
                    at_every_place(item, &std::format!("{path}/{name}"), found);
                }
            }
            _ => {}
        }
    }
    let document = whole();
    let before = read(&document).unwrap();
    let (mut places, mut tried) = (Vec::new(), 0);
    at_every_place(&document, "", &mut places);
    let mut try_it = |other: Json, place: &str| {
        if let Some(after) = read(&other).filter(|after| *after != before) {
            tried += 1;
            assert_ne!(digest(&after), digest(&before), "{place}");
        }
    };
    for place in &places {
        let with = |change: &dyn Fn(&mut Json)| {
            let mut other = document.clone();
            other.pointer_mut(place).map(change);
            other
        };
        match document.pointer(place) {
            Some(Json::Array(items)) => {
                try_it(with(&|list| drop(list.as_array_mut().unwrap().pop())), place);
                try_it(with(&|list| list.as_array_mut().unwrap().reverse()), place);
                let first = items[0].clone();
                try_it(with(&|list| list.as_array_mut().unwrap().push(first.clone())), place);
            }
            Some(Json::Object(fields)) => {
                for name in fields.keys() {
                    try_it(with(&|map| drop(map.as_object_mut().unwrap().shift_remove(name))), place);
                }
            }
            _ => {}
        }
    }
    assert!(tried > 100, "only {tried} changes");
}

#[test]
fn the_order_in_which_json_names_fields_is_no_part_of_it() {
    fn turned(value: &Json) -> Json {
        match value {
            Json::Object(fields) => {
                Json::Object(fields.iter().rev().map(|(name, inner)| (name.clone(), turned(inner))).collect())
            }
            Json::Array(items) => Json::Array(items.iter().map(turned).collect()),
            other => other.clone(),
        }
    }
    let document = whole();
    assert_ne!(turned(&document).to_string(), document.to_string());
    assert_eq!(digest(&read(&turned(&document)).unwrap()), digest(&read(&document).unwrap()));
}

#[test]
fn a_zero_has_no_sign() {
    let mut parameters = read(&whole()).unwrap();
    parameters.policy.layoff[0].load_left = 0.0;
    let zero = digest(&parameters);
    parameters.policy.layoff[0].load_left = -0.0;
    assert_eq!(digest(&parameters), zero);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Draws parameters that are 0 to 11 changes of single fields away from the whole set, each at any place and in any
    /// way that can still be read, and then changes one more.
    #[test]
    fn one_more_change_changes_the_digest(draws in prop::collection::vec(any::<(u16, u8)>(), 1..12)) {
        let (mut document, mut last) = (whole(), None);
        for (place, way) in &draws {
            let places = leaves(&document);
            let pointer = places[usize::from(*place) % places.len()].clone();
            let ways: Vec<_> = changed(&document, &pointer).collect();
            if ways.is_empty() {
                continue;
            }
            let (other, parameters) = ways[usize::from(*way) % ways.len()].clone();
            last = Some((read(&document).unwrap(), parameters));
            document = other;
        }
        if let Some((before, after)) = last {
            prop_assert_ne!(digest(&before), digest(&after));
        }
    }
}
