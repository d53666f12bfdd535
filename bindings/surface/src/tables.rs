//! The door of tables. It answers as the library's own and gives the log back as it came, with the new sessions behind its
//! events: nothing that was given is spelled anew, and the WebAssembly package carries nothing that writes every kind of event.

use bismar::Error;
use bismar::answers::{Door, SetsTable, TableReading, sets_to_log};
use bismar::record::{Event, EventKind, Log};
use bismar::source::Argument;
use bismar::value::{Arguments, Key, Value};

/// The doors of tables, each told as the library tells it.
pub(crate) static TABLES: &[Door] = &[Door::new(
    "answers.sets_to_log",
    "Which sessions does this table of sets add to the log, and what had to be guessed?",
    &[
        Argument::new("table", "&SetsTable"),
        Argument::new("log", "&Log"),
        Argument::new("reading", "Option<&TableReading>"),
    ],
    "SetsToLog",
    table,
)];

fn table(given: &Value) -> Result<Value, Error> {
    let mut arguments = Arguments::new(given)?;
    let table: SetsTable = arguments.take("table")?;
    let log: Log = arguments.take("log")?;
    let reading: Option<TableReading> = arguments.take("reading")?;
    arguments.finish()?;
    let told = sets_to_log(&table, &log, reading.as_ref())?;
    let added = told.log.events.iter().skip(log.events.len()).map(event).collect::<Result<Vec<_>, _>>()?;
    let mut whole = given.field("log").cloned().unwrap_or_default();
    if let Value::Map(fields) = &mut whole
        && let Some((_, Value::List(events))) = fields.iter_mut().find(|(name, _)| name == "events")
    {
        events.extend(added);
    }
    let number = |number: u32| Value::Number(f64::from(number));
    let columns = told.columns_left_out.into_iter().map(|name| Value::Text(name.into())).collect();
    Ok(map([
        ("log", whole),
        ("rows", number(told.rows)),
        ("taken", number(told.taken)),
        ("sessions", number(told.sessions)),
        ("guesses", Value::write(&told.guesses)?),
        ("columns_left_out", Value::List(columns)),
        ("left_out", Value::write(&told.left_out)?),
    ]))
}

/// An event that a table adds: a session, without a note.
fn event(event: &Event) -> Result<Value, Error> {
    let session = match &event.kind {
        EventKind::SessionRecorded(session) => Value::write(session)?,
        _ => Value::Null,
    };
    Ok(map([
        ("sequence", Value::Number(f64::from(event.sequence))),
        ("day", Value::Text(event.day.to_string().into())),
        ("kind", map([("session_recorded", session)])),
    ]))
}

fn map<const FIELDS: usize>(fields: [(&'static str, Value); FIELDS]) -> Value {
    Value::Map(fields.into_iter().map(|(name, value)| (Key::from(name), value)).collect())
}

#[cfg(all(test, feature = "json"))]
mod tests {
    use super::*;
    use bismar::answers::OF_TABLES;

    #[test]
    fn it_is_told_as_the_library_tells_it() {
        let told = |door: &Door| format!("{} {} {:?} {}", door.key, door.doc, door.arguments, door.result);
        assert_eq!(
            TABLES.iter().map(told).collect::<Vec<_>>(),
            OF_TABLES.iter().map(told).collect::<Vec<_>>()
        );
    }

    /// The cases that every language runs: here against the library's own door, on a log as the library writes it.
    #[test]
    fn it_answers_as_the_library_does() {
        let document = Value::from_json(include_str!("../../../tests/doors/tables.json")).unwrap();
        let log: Log = document.field("log").unwrap().read().unwrap();
        let log = Value::write(&log).unwrap();
        let Some(Value::List(cases)) = document.field("cases") else { panic!("no cases") };
        for case in cases {
            let csv = match (case.field("csv"), case.field("lines")) {
                (Some(csv), _) => csv.clone(),
                (None, Some(Value::List(lines))) => {
                    let text = |line: &Value| {
                        if let Value::Text(text) = line { format!("{text}\n") } else { String::new() }
                    };
                    Value::Text(lines.iter().map(text).collect::<String>().into())
                }
                _ => continue,
            };
            let mut given = vec![(Key::from("table"), map([("csv", csv)])), (Key::from("log"), log.clone())];
            given.extend(case.field("reading").map(|reading| (Key::from("reading"), reading.clone())));
            let given = Value::Map(given);
            assert_eq!(table(&given), (OF_TABLES[0].call)(&given), "{case:?}");
        }
        assert!(cases.len() >= 27);
    }

    #[test]
    fn a_log_that_is_spelled_otherwise_comes_back_as_it_was() {
        let document = Value::from_json(include_str!("../../../tests/doors/tables.json")).unwrap();
        let log = document.field("log").unwrap();
        let csv = Value::Text("day,lift,load_kg,reps\n2026-01-05,squat,40,5\n".into());
        let told = table(&map([("table", map([("csv", csv)])), ("log", log.clone())])).unwrap();
        let events = |log: &Value| {
            if let Some(Value::List(events)) = log.field("events") { events.clone() } else { Vec::new() }
        };
        let (before, after) = (events(log), events(told.field("log").unwrap()));
        assert_eq!((before.as_slice(), after.len()), (&after[..before.len()], before.len() + 1));
    }
}
