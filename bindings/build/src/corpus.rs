//! A seeded corpus of inputs for every function, and the digest of what each answers natively.
//!
//! Inputs are the published checks and the demo log, changed at random: numbers to edges and near misses, texts,
//! flags, fields left out, lists cut. `corpus.bin` holds, for each function, its key, a count and the inputs;
//! `digests.json` the SHA-256 of the answers and errors in canonical bytes. The tests run the same inputs through
//! the package in Node and in the browser and compare function by function.

use std::collections::BTreeMap;
use std::path::Path;
use std::time::{Duration, Instant};

use bismar::answers::Door;
use bismar::text::OF_WORDS;
use bismar::value::Value;
use bismar_bindings::dispatch;
use bismar_bindings::names::camel;
use bismar_surface::{calls, fault};
use serde_json::{Map, json};
use sha2::{Digest, Sha256};

use crate::identity::hex;
use crate::{Failure, javascript, told_lifter};

/// Inputs a function gets, unless they are large or slow.
const INPUTS: usize = 2_000;
/// The same for languages that run the very code that the native digests come from, so that only reading and writing
/// can differ; they decode slowly.
const PLAIN_INPUTS: usize = 200;
/// Fewest inputs a function gets, however large or slow.
const FEWEST: usize = 40;
/// Bytes of inputs a function gets at most.
const MOST_BYTES: usize = 600_000;
/// Time a function gets natively.
const LONGEST: Duration = Duration::from_millis(200);
/// Seed of the corpus.
const SEED: u64 = 0x5EED_B15A;

/// Numbers where functions tend to break.
const EDGES: &[f64] = &[
    0.0,
    -0.0,
    1.0,
    -1.0,
    0.5,
    2.0,
    3.0,
    5.0,
    7.5,
    10.0,
    12.0,
    30.0,
    36.0,
    37.0,
    40.0,
    80.0,
    100.0,
    200.0,
    365.0,
    0.1,
    0.95,
    0.999_999_9,
    1e-9,
    1e-300,
    1e9,
    1e15,
    9_007_199_254_740_993.0,
    1e300,
    -1e300,
    5e-324,
    2_147_483_648.0,
];

/// In whose spelling the corpus is written and its answers are digested.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Spelling {
    /// The package's: camelCase, also in errors.
    JavaScript,
    /// That of the log's JSON, for every other language.
    Plain,
}

impl Spelling {
    fn inputs(self) -> usize {
        match self {
            Spelling::JavaScript => INPUTS,
            Spelling::Plain => PLAIN_INPUTS,
        }
    }

    fn key(self, name: &str) -> String {
        match self {
            Spelling::JavaScript => camel(name),
            Spelling::Plain => name.into(),
        }
    }
}

/// Writes the corpus and its digests into the folder.
pub(crate) fn write(root: &Path, folder: &Path, spelling: Spelling) -> Result<(), Failure> {
    std::fs::create_dir_all(folder)?;
    let seeds = seeds(root)?;
    let (mut bytes, mut digests, mut total) = (Vec::new(), Map::new(), 0);
    let mut keys = javascript::keys(None);
    // The whole of the npm package has no sentences; every other language has them behind the rest.
    if spelling == Spelling::Plain {
        keys.extend(OF_WORDS.iter().map(|door| door.key));
    }
    for (index, key) in keys.into_iter().enumerate() {
        let Some(given) = seeds.get(key) else { return Err(format!("{key}: no input to start from").into()) };
        let function = Function { index: index as u32, key, spelling };
        let (count, digest) = function.run(given, &mut bytes);
        total += count;
        digests.insert(key.into(), json!({ "count": count, "digest": digest }));
    }
    std::fs::write(folder.join("corpus.bin"), &bytes)?;
    std::fs::write(folder.join("digests.json"), serde_json::to_string(&digests)?)?;
    println!("corpus: {total} inputs over {} functions, {} B", digests.len(), bytes.len());
    Ok(())
}

/// What is given in the published checks, by function, and the documents of the examples for the doors.
fn seeds(root: &Path) -> Result<BTreeMap<String, Vec<Value>>, Failure> {
    let mut seeds: BTreeMap<String, Vec<Value>> = BTreeMap::new();
    let mut files: Vec<_> = std::fs::read_dir(root.join("tests/published"))?
        .collect::<Result<Vec<_>, _>>()?
        .iter()
        .map(|entry| entry.path())
        .collect();
    files.sort();
    for path in files.iter().filter(|path| path.extension().is_some_and(|kind| kind == "json")) {
        let document = Value::from_json(&std::fs::read_to_string(path)?)?;
        let Some(Value::List(cases)) = document.field("cases") else { continue };
        for case in cases {
            if let (Some(Value::Text(key)), Some(given)) = (case.field("function"), case.field("given")) {
                seeds.entry(key.to_string()).or_default().push(given.clone());
            }
        }
    }
    documents(root, &mut seeds)?;
    Ok(seeds)
}

fn documents(root: &Path, seeds: &mut BTreeMap<String, Vec<Value>>) -> Result<(), Failure> {
    let read = |name: &str| -> Result<Value, Failure> {
        Ok(Value::from_json(&std::fs::read_to_string(root.join("examples/data").join(name))?)?)
    };
    let (mut log, plan) = (read("demo-log.json")?, read("demo-plan.json")?);
    let mut last = Value::Null;
    if let Value::Map(fields) = &mut log
        && let Some((_, Value::List(events))) = fields.iter_mut().find(|(name, _)| name == "events")
    {
        // A season of it: the corpus is about bits, not about bulk.
        last = events.get(SEASON).cloned().unwrap_or_default();
        events.truncate(SEASON);
    }
    let state = bismar_bindings::doors::open(&map(&[("log", &log)]))?;
    let state = Value::write(&state)?;
    let today = last.field("day").cloned().unwrap_or(Value::Text("2025-03-01".into()));
    for (key, given) in [
        ("progression.fold", map(&[("log", &log)])),
        ("progression.apply", map(&[("state", &state), ("event", &last)])),
        ("progression.decide", map(&[("state", &state), ("today", &today)])),
        ("prescription.next_session", map(&[("log", &log), ("plan", &plan), ("today", &today)])),
        ("prescription.next_session_from", map(&[("state", &state), ("plan", &plan), ("today", &today)])),
    ] {
        seeds.entry(key.into()).or_default().push(given);
    }
    // With a load to keep, so that the years have something to reckon with.
    let mut ahead = plan.clone();
    if let Value::Map(fields) = &mut ahead {
        let keep = r#"{"keep":[{"lift":"front squat","name":"the sack","load":{"kg":30},"at_age":75}]}"#;
        fields.push(("years".into(), Value::from_json(keep)?));
    }
    let of_log = Documents { log: &log, plan: &plan, state: &state, today: &today };
    for door in bismar::answers::doors() {
        let own = seeds.entry(door.key.into()).or_default();
        own.push(asked(door, &of_log)?);
        if door.key == "answers.year" {
            own.push(asked(door, &Documents { plan: &ahead, ..of_log })?);
        }
        own.push(told(root, door)?);
    }
    for door in OF_WORDS {
        let own = seeds.entry(door.key.into()).or_default();
        own.push(asked(door, &of_log)?);
        let in_kilograms = told(root, door)?;
        own.push(in_unit(&in_kilograms, "lb"));
        own.push(in_kilograms);
    }
    for door in bismar::answers::OF_COPIES {
        seeds.entry(door.key.into()).or_default().push(asked(door, &of_log)?);
    }
    for (key, given) in beginnings(&log)? {
        seeds.entry(key.into()).or_default().push(given);
    }
    Ok(())
}

/// What a door is asked about the lifter of whom everything is told, with whatever it may be told beside the log.
fn told(root: &Path, door: &Door) -> Result<Value, Failure> {
    let demo = std::fs::read_to_string(root.join("examples/data/demo-log.json"))?;
    let demo: serde_json::Value = serde_json::from_str(&demo)?;
    let read = |json: &serde_json::Value| Value::from_json(&json.to_string());
    let log = read(&told_lifter::log(demo.pointer("/events/0/kind").unwrap_or(&serde_json::Value::Null)))?;
    let plan = read(&told_lifter::plan())?;
    let state = Value::write(&bismar_bindings::doors::open(&map(&[("log", &log)]))?)?;
    let today = Value::Text(told_lifter::today().into());
    let mut given = asked(door, &Documents { log: &log, plan: &plan, state: &state, today: &today })?;
    if let Value::Map(fields) = &mut given {
        for argument in door.arguments {
            let Some(more) = told_lifter::also(argument.name) else { continue };
            fields.retain(|(name, _)| name != argument.name);
            fields.push((argument.name.into(), read(&more)?));
        }
    }
    Ok(in_unit(&given, "kg"))
}

/// The same in that unit, where it is asked in one.
fn in_unit(given: &Value, unit: &'static str) -> Value {
    let mut given = given.clone();
    if let Value::Map(fields) = &mut given {
        for (_, value) in fields.iter_mut().filter(|(name, _)| name == "unit") {
            *value = Value::Text(unit.into());
        }
    }
    given
}

/// What is asked for somebody new, and of other equipment for the demo log.
fn beginnings(log: &Value) -> Result<Vec<(&'static str, Value)>, Failure> {
    let lift = Value::Text("front squat".into());
    let bar = Value::from_json(
        r#"{"bar":{"id":"light bar","mass":{"kg":8},"collar":{"kg":0},"kind":"straight"}}"#,
    )?;
    let frame = Value::from_json(
        r#"{"bar":{"id":"frame","mass":{"kg":25},"collar":{"kg":0},"kind":{"hex":{"low_handle":{"mm":0}}}}}"#,
    )?;
    let stock = Value::from_json(
        r#"{"discs":[{"nominal":{"kg":10},"diameter":{"mm":450},"count":2},{"nominal":{"kg":2.5},"diameter":{"mm":200},"count":2}]}"#,
    )?;
    let (name, load) = (Value::Text("light bar".into()), Value::from_json(r#"{"kg":13}"#)?);
    let (high, low) = (Value::from_json(r#"{"mm":100}"#)?, Value::from_json(r#"{"mm":50}"#)?);
    let (bars, blocks) = (Value::List(vec![bar.clone(), frame]), Value::List(vec![high.clone()]));
    let first = map(&[("lift", &lift), ("implement", &name), ("load", &load)]);
    let (firsts, lifter) = (Value::List(vec![first]), map(&[("id", &Value::Text("Ann".into()))]));
    let day = Value::Text("2026-01-05".into());
    let kit = [("implements", &bars), ("stock", &stock), ("blocks", &blocks)];
    let with = |own: &[(&'static str, &Value)]| map(&[own, &kit].concat());
    Ok(vec![
        ("prescription.first_lifts", map(&[])),
        ("prescription.first_bars", with(&[("lift", &lift)])),
        ("prescription.first_lift", map(&[("id", &lift), ("implement", &name), ("load", &load)])),
        (
            "prescription.begin",
            with(&[("lifter", &lifter), ("day", &day), ("lifts", &firsts), ("cleared_by", &name)]),
        ),
        ("prescription.other_bars", map(&[("log", log), ("lift", &lift)])),
        (
            "prescription.with_bar",
            map(&[("log", log), ("lift", &lift), ("implement", &Value::Text("bar 15".into()))]),
        ),
        ("prescription.with_kit", with(&[("log", log)])),
        (
            "prescription.longer_range",
            map(&[("implement", &bar), ("stock", &stock), ("load", &load), ("from", &high), ("to", &low)]),
        ),
    ])
}

/// The demo log, and what goes with it.
struct Documents<'a> {
    log: &'a Value,
    plan: &'a Value,
    state: &'a Value,
    today: &'a Value,
}

/// What a door of the log is asked about the demo log. What is not named here and may be left out is left out.
fn asked(door: &Door, of: &Documents<'_>) -> Result<Value, Failure> {
    let Documents { log, plan, state, today } = *of;
    let mut given = Vec::new();
    for argument in door.arguments {
        let value = match argument.name {
            "log" => log.clone(),
            "plan" => plan.clone(),
            "state" => state.clone(),
            "today" | "since" => today.clone(),
            "done" => {
                map(&[("lift", &Value::Text("front squat".into())), ("sets", &Value::List(Vec::new()))])
            }
            "lift" | "strict" => Value::Text("front squat".into()),
            "forgiving" => Value::Text("box squat".into()),
            "to" => Value::from_json(r#"{"work":{"sets":3,"reps":6,"load":{"kg":30}}}"#)?,
            "sex" => Value::Text("female".into()),
            "unit" => Value::Text("lb".into()),
            "tolerance" => Value::Text("iwf".into()),
            "phases" => Value::from_json(
                r#"[{"until":65,"course":{"gain":{"low":0.01,"middle":0.02,"high":0.03}}},{"until":80,"course":"hold"}]"#,
            )?,
            // Part of it refused, so that both are compared.
            "table" => Value::from_json(
                r#"{"csv":"Date;Exercise;Load;Reps;RIR;Note\n3.4.2025;Front squat;62,5;5;2;a\n13.4.2025 18:00;front squat;137.5 lb;5;;b\n13.4.2025;bicycle;1;1;;"}"#,
            )?,
            "reading" => Value::from_json(r#"{"unit":"kg"}"#)?,
            "error" => Value::from_json(
                r#"{"code":"out_of_range","field":"sets[2].load.mass","value":2500,"allowed":{"low":-2000,"high":2000,"unit":"kg"},"event":7}"#,
            )?,
            "lifters" => {
                let lift = Value::Text("front squat".into());
                let one = map(&[("log", log), ("plan", plan), ("lift", &lift)]);
                Value::List(vec![one.clone(), one])
            }
            _ if argument.r#type.starts_with("Option") => continue,
            other => return Err(format!("{}: nothing to ask with as {other}", door.key).into()),
        };
        given.push((argument.name.into(), value));
    }
    Ok(Value::Map(given))
}

/// Events of the demo log that go into the corpus.
const SEASON: usize = 60;

fn map(fields: &[(&'static str, &Value)]) -> Value {
    Value::Map(fields.iter().map(|(name, value)| ((*name).into(), (*value).clone())).collect())
}

struct Function {
    index: u32,
    key: &'static str,
    spelling: Spelling,
}

impl Function {
    /// Runs the inputs, appends them to the corpus, and gives count and digest.
    fn run(&self, seeds: &[Value], corpus: &mut Vec<u8>) -> (usize, String) {
        let mut chance = Chance(SEED ^ (u64::from(self.index) << 32));
        let (mut inputs, mut digest, mut count) = (Vec::<u8>::new(), Sha256::new(), 0);
        let started = Instant::now();
        while count < self.spelling.inputs() {
            let enough = inputs.len() > MOST_BYTES || started.elapsed() > LONGEST;
            if enough && count >= FEWEST.max(seeds.len()) {
                break;
            }
            // Every seed once as it is, then changed.
            let mut given = seeds.get(count % seeds.len()).cloned().unwrap_or_default();
            if count >= seeds.len() {
                for _ in 0..=chance.below(3) {
                    change(&mut given, &mut chance);
                }
            }
            // In the order in which the bytes give them: which fault is found first hangs on it.
            in_order(&mut given, self.spelling);
            canonical(&given, self.spelling, &mut inputs);
            digest.update(self.answer(&given));
            count += 1;
        }
        text(self.key, corpus);
        corpus.extend((count as u32).to_le_bytes());
        corpus.extend(inputs);
        (count, hex(&digest.finalize()))
    }
}

/// Tag of an error in the canonical bytes; the others are those of `parcel`.
const ERROR: u8 = 9;

impl Function {
    fn answer(&self, given: &Value) -> Vec<u8> {
        let answered = match self.spelling {
            Spelling::JavaScript => dispatch::call(self.index, given).map_err(|fault| fault.to_value()),
            Spelling::Plain => calls::call(self.key, given).map_err(|error| fault::describe(&error)),
        };
        let mut bytes = Vec::new();
        match answered {
            Ok(value) => canonical(&value, self.spelling, &mut bytes),
            Err(told) => {
                bytes.push(ERROR);
                canonical(&told, self.spelling, &mut bytes);
            }
        }
        bytes
    }
}

/// The one NaN of the canonical bytes.
const NOT_A_NUMBER: u64 = 0x7FF8_0000_0000_0000;

/// A value in canonical bytes: keys in that spelling and in the order of their bytes.
fn canonical(value: &Value, spelling: Spelling, into: &mut Vec<u8>) {
    match value {
        Value::Null => into.push(0),
        Value::Bool(flag) => into.push(if *flag { 2 } else { 1 }),
        Value::Number(number) => {
            into.push(3);
            // The bits of NaN differ between machines and mean nothing; it occurs as a refused value only.
            let number = if number.is_nan() { NOT_A_NUMBER } else { number.to_bits() };
            into.extend(number.to_le_bytes());
        }
        Value::Text(one) => {
            into.push(4);
            text(one, into);
        }
        Value::List(items) => {
            into.push(5);
            into.extend((items.len() as u32).to_le_bytes());
            items.iter().for_each(|item| canonical(item, spelling, into));
        }
        Value::Map(fields) => {
            into.push(6);
            into.extend((fields.len() as u32).to_le_bytes());
            let mut fields: Vec<_> = fields.iter().map(|(name, value)| (spelling.key(name), value)).collect();
            fields.sort_by(|(a, _), (b, _)| a.cmp(b));
            for (name, value) in fields {
                text(&name, into);
                canonical(value, spelling, into);
            }
        }
    }
}

/// Puts all fields in the order of the canonical bytes.
fn in_order(value: &mut Value, spelling: Spelling) {
    match value {
        Value::List(items) => items.iter_mut().for_each(|item| in_order(item, spelling)),
        Value::Map(fields) => {
            fields.sort_by_key(|(name, _)| spelling.key(name));
            fields.iter_mut().for_each(|(_, value)| in_order(value, spelling));
        }
        _ => {}
    }
}

fn text(one: &str, into: &mut Vec<u8>) {
    into.extend((one.len() as u32).to_le_bytes());
    into.extend(one.as_bytes());
}

/// A small generator of numbers (xorshift, 64 bits), seeded and the same everywhere.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    fn below(&mut self, end: usize) -> usize {
        (self.next() >> 11) as usize % end.max(1)
    }

    fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / 9_007_199_254_740_992.0
    }
}

/// Changes one thing somewhere in the tree.
fn change(value: &mut Value, chance: &mut Chance) {
    match value {
        Value::Map(fields) if !fields.is_empty() => {
            let at = chance.below(fields.len());
            match chance.below(40) {
                0 => _ = fields.remove(at),
                1 if !fields.iter().any(|(name, _)| name == "surplus") => {
                    fields.push(("surplus".into(), Value::Number(1.0)));
                }
                _ => {
                    if let Some((_, inner)) = fields.get_mut(at) {
                        change(inner, chance);
                    }
                }
            }
        }
        Value::List(items) if !items.is_empty() => {
            let at = chance.below(items.len());
            match chance.below(12) {
                0 => _ = items.remove(at),
                1 => items.extend(items.get(at).cloned()),
                2 => items.truncate(at),
                _ => {
                    if let Some(inner) = items.get_mut(at) {
                        change(inner, chance);
                    }
                }
            }
        }
        Value::Number(number) => *number = other_number(*number, chance),
        Value::Bool(flag) => *flag = !*flag,
        Value::Text(text) => other_text(text.to_mut(), chance),
        Value::Map(_) | Value::List(_) | Value::Null => {}
    }
}

fn other_number(number: f64, chance: &mut Chance) -> f64 {
    let other = match chance.below(6) {
        0 => EDGES.get(chance.below(EDGES.len())).copied().unwrap_or_default(),
        1 => number + 1.0,
        2 => (number * (0.5 + chance.unit()) * 2.0).round() / 2.0,
        3 => number * (0.9 + 0.2 * chance.unit()),
        4 => number + (chance.below(9) as f64 - 4.0) * 0.5,
        _ => number * (0.25 + 2.0 * chance.unit()),
    };
    if other.is_finite() { other } else { number }
}

fn other_text(text: &mut String, chance: &mut Chance) {
    let day = text.len() == 10 && text.as_bytes().get(4) == Some(&b'-');
    match chance.below(8) {
        0 => *text = "nobody".into(),
        1 => text.push('ü'),
        _ if day => *text = format!("{}{:02}", &text.get(..8).unwrap_or_default(), 1 + chance.below(31)),
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use bismar::answers::doors;

    use super::*;

    fn answers(key: &str) -> Value {
        let door = doors().chain(OF_WORDS).find(|door| door.key == key).unwrap();
        (door.call)(&told(&crate::root(), door).unwrap()).unwrap_or_else(|error| panic!("{key}: {error:?}"))
    }

    /// A list, or a map, with something in it; a number, a text or a flag that is there.
    fn holds(value: &Value) -> bool {
        match value {
            Value::Null => false,
            Value::List(items) => !items.is_empty(),
            Value::Map(fields) => !fields.is_empty(),
            _ => true,
        }
    }

    /// The corpus compares answers and not only what is missing: no door of the log misses anything about the told lifter, and
    /// what each door is asked for is there.
    #[test]
    fn every_door_has_an_answer_in_the_corpus() {
        for door in doors() {
            let missing = answers(door.key).field("missing").cloned();
            assert!(
                missing.is_none_or(|missing| !holds(&missing)),
                "{}: {:?}",
                door.key,
                answers(door.key).field("missing")
            );
        }
        for (key, fields) in [
            ("answers.day", &["verdict.votes", "verdict.class"][..]),
            ("answers.next_set", &["work", "reasons"]),
            ("answers.raters", &["pairs"]),
            ("answers.block_review", &["block", "lifts"]),
            ("answers.curve", &["curve.slope"]),
            ("answers.missed", &["missed", "next", "lifts"]),
            ("answers.year", &["tests", "keep"]),
            ("answers.trend", &["report.slope", "velocity", "newest.as_called", "points"]),
            ("answers.verdicts", &["calibration"]),
            ("answers.pair", &["ratio", "own"]),
            ("answers.week", &["total", "felt.load"]),
            ("answers.easy_week", &["status", "would_be"]),
            ("answers.handover", &["lifts"]),
            ("answers.rack", &["sets"]),
            ("answers.share", &["lifters"]),
            ("answers.compare", &["harder"]),
            ("answers.history", &["sessions", "steps"]),
            ("answers.in_force", &["restrictions"]),
            ("answers.opens", &["gone"]),
        ] {
            let answer = answers(key);
            for path in fields {
                let found = path.split('.').try_fold(&answer, |value, field| value.field(field));
                assert!(found.is_some_and(holds), "{key}: no {path} in {answer:?}");
            }
        }
    }

    /// The years of a load to keep are reckoned too, as they were asked.
    #[test]
    fn a_load_to_keep_is_reckoned_in_the_corpus() {
        let year = answers("answers.year");
        let Some(Value::List(keep)) = year.field("keep") else { panic!("{year:?}") };
        assert!(keep.iter().all(|kept| {
            ["plan", "what_if", "shown"].iter().all(|field| kept.field(field).is_some_and(holds))
        }));
    }

    /// Sentences are compared in both units.
    #[test]
    fn every_sentence_is_asked_in_both_units() {
        for door in OF_WORDS.iter().filter(|door| door.arguments.iter().any(|one| one.name == "unit")) {
            let given = told(&crate::root(), door).unwrap();
            let said = ["kg", "lb"].map(|unit| (door.call)(&in_unit(&given, unit)).unwrap());
            assert!(said.iter().all(holds), "{}", door.key);
        }
        let week = |unit| {
            (doors_of("text.week").call)(&in_unit(
                &told(&crate::root(), doors_of("text.week")).unwrap(),
                unit,
            ))
        };
        assert_ne!(week("kg").unwrap(), week("lb").unwrap());
    }

    fn doors_of(key: &str) -> &'static Door {
        OF_WORDS.iter().find(|door| door.key == key).unwrap()
    }
}
