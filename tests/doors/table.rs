//! A table of sets becomes sessions of a log: what is taken, guessed, asked for and left out. The cases and what is expected
//! of them stand in `tables.json`, which every language runs.

use bismar::answers::{LiftSpelling, SetsTable, SetsToLog, TableReading, TableRows, sets_to_log};
use bismar::error::Error;
use bismar::quantity::{Name, Unit};
use bismar::record::Log;
use bismar::text::{Show, Words};
use bismar::value::Value;
use serde_json::{Value as Json, json};

use crate::made::all_careful;

fn document() -> Json {
    serde_json::from_str(include_str!("tables.json")).unwrap()
}

fn log(document: &Json) -> Log {
    Log::from_json(&document["log"].to_string()).unwrap()
}

fn cases(document: &Json) -> &[Json] {
    document["cases"].as_array().unwrap()
}

fn texts(list: &Json) -> Vec<String> {
    list.as_array().unwrap().iter().map(|one| one.as_str().unwrap().to_string()).collect()
}

fn table(case: &Json) -> SetsTable {
    if let Some(text) = case["csv"].as_str() {
        return SetsTable::Csv(text.into());
    }
    if let Some(rows) = case["rows"]["rows"].as_array() {
        let columns = texts(&case["rows"]["columns"]);
        return SetsTable::Rows(TableRows::new(columns, rows.iter().map(texts).collect()));
    }
    SetsTable::Csv(texts(&case["lines"]).join("\n") + "\n")
}

/// The log that a case begins with.
fn before(document: &Json, case: &Json) -> Log {
    let earlier = |name: &str| cases(document).iter().find(|one| one["shows"] == name);
    match case["after"].as_str() {
        Some(name) => told(document, earlier(name).unwrap()).unwrap().log,
        None => log(document),
    }
}

fn told(document: &Json, case: &Json) -> Result<SetsToLog, Error> {
    let reading = case.get("reading").map(|given| Value::from_json(&given.to_string()).unwrap().read());
    let reading: Option<TableReading> = reading.transpose().unwrap();
    sets_to_log(&table(case), &before(document, case), reading.as_ref())
}

/// Every number as the library writes it.
fn plain(value: &Json) -> Json {
    match value {
        Json::Number(number) => json!(number.as_f64().unwrap()),
        Json::Array(items) => items.iter().map(plain).collect(),
        Json::Object(fields) => fields.iter().map(|(name, inside)| (name.clone(), plain(inside))).collect(),
        other => other.clone(),
    }
}

#[test]
fn tables_of_sets_become_what_the_cases_say() {
    let document = document();
    for case in cases(&document) {
        let shows = case["shows"].as_str().unwrap();
        let told = match told(&document, case) {
            Ok(told) => told,
            Err(error) => {
                let refused = json!({ "code": error.code().as_str(), "field": error.field() });
                assert_eq!(refused, case["expect_error"], "{shows}");
                continue;
            }
        };
        let before = before(&document, case);
        let (kept, added) = told.log.events.split_at(before.events.len());
        assert_eq!(kept, before.events, "{shows}");
        assert_eq!(before.with_events(told.log.events.clone()), told.log, "{shows}");
        assert_eq!(told.taken as usize + told.left_out.len(), told.rows as usize, "{shows}");
        let mut answer: Json = serde_json::from_str(&Value::write(&told).unwrap().to_json()).unwrap();
        answer.as_object_mut().unwrap().remove("log");
        answer["added"] = serde_json::from_str(&Value::write(&added).unwrap().to_json()).unwrap();
        assert_eq!(plain(&answer), plain(&case["expect"]), "{shows}");
    }
    assert!(cases(&document).len() >= 30);
}

#[test]
fn what_the_host_knows_is_said_in_types() {
    let document = document();
    let spellings = cases(&document).iter().find(|case| case["reading"]["lifts"].is_array()).unwrap();
    let lift = |text: &str, id: &str| LiftSpelling::new(text.into(), Name::new(id).unwrap());
    let reading = TableReading::default().with_lifts(vec![lift("Squats!", "squat"), lift("press", "nobody")]);
    let in_types = sets_to_log(&table(spellings), &log(&document), Some(&reading));
    assert_eq!(in_types, told(&document, spellings));
    let pounds = cases(&document).iter().find(|case| case["reading"]["unit"] == "lb").unwrap();
    let reading = TableReading::default().with_unit(Unit::Lb);
    assert_eq!(sets_to_log(&table(pounds), &log(&document), Some(&reading)), told(&document, pounds));
}

#[test]
fn a_log_that_is_none_is_refused_whole() {
    let broken = log(&document()).with_version(0);
    assert!(sets_to_log(&SetsTable::Csv("day".into()), &broken, None).is_err());
}

/// Every guess, column and row left out has its sentence; those of one table in full, read against the table.
#[test]
fn what_became_of_a_table_is_said() {
    let document = document();
    let mut guesses = std::collections::BTreeSet::new();
    for case in cases(&document) {
        let Ok(told) = told(&document, case) else { continue };
        let said = told.show(&Words::plain());
        assert_eq!(said.len(), 1 + told.guesses.len() + told.columns_left_out.len() + told.left_out.len());
        // What stands in the table is told as it stands there.
        all_careful(&said[..said.len() - told.left_out.len()]);
        guesses.extend(
            told.guesses
                .iter()
                .map(|guess| format!("{guess:?}").split(['(', ' ']).next().unwrap().to_string()),
        );
    }
    assert_eq!(guesses.len(), 10, "every kind of guess is among the cases: {guesses:?}");
    let table = "Day;Exercise;Weight (lb);Reps;Warm-up;Mood\n13/01/2026;SQUAT;132,5;5;no;x\n13/01/2026;Squat;45;5;yes;x\n\
                 13/01/2026;Bicycle;0;1;no;x\n13/01/2026;Squat;100;;no;x\n";
    let told = sets_to_log(&SetsTable::Csv(table.into()), &log(&document), None).unwrap();
    let wanted = [
        "Taken from the table: 1 of 4 rows, as 1 session.",
        "Cells were taken to stand between these: ;",
        "The column Exercise was read as lift.",
        "The column Weight (lb) was read as load_lb.",
        "Days were read with the day before the month, as 4 rows can be read in no other way.",
        "SQUAT was read as squat.",
        "A comma was read as the decimal mark: 1 row.",
        "The load is in pounds: 1 row.",
        "The rows of one day became one session, since no column tells sessions apart.",
        "Every set was taken as done at the place where the lift stood, since the table says nothing of it.",
        "The column Mood was left out: a log has no place for it.",
        "Line 3 was left out. It is a warm-up set, which a log leaves out.",
        "Line 4 was left out, for its lift, Bicycle. No lift with that id is in the parameters in force.",
        "Line 5 was left out, for its reps. A required field is absent.",
    ];
    assert_eq!(told.show(&Words::plain()), wanted);
}
