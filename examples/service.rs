//! A service without a framework: a request in JSON a line in, its answer in JSON a line out.
//!
//! `cargo run --example service < examples/data/requests.jsonl` answers what an app may ask. The same `answer` would
//! stand behind any HTTP route: it takes text, gives text, never panics, and keeps nothing between requests. A
//! refused request gets the error's code, field, value and what is allowed, so that the app can word it itself. A bad
//! line, of any bytes, is one error line.

use std::io::{BufRead, Write};

use bismar::prescription::{next_session, next_session_from};
use bismar::progression::{State, StoredState, fold};
use bismar::quantity::Day;
use bismar::record::{Event, Log, Plan};
use bismar::value::Value;
use bismar::{Code, Error, registry, text};

fn main() -> std::io::Result<()> {
    let mut out = std::io::stdout().lock();
    let mut lines = std::io::stdin().lock();
    let mut line = Vec::new();
    // By bytes: a line that is no text must not end the service.
    while lines.read_until(b'\n', &mut line)? > 0 {
        let text = String::from_utf8_lossy(&line);
        let request = text.trim_end_matches(['\n', '\r']);
        // A mark at the start of a file is no part of its first request.
        writeln!(
            out,
            "{}",
            answer(request.trim_start_matches('\u{feff}'), std::str::from_utf8(&line).is_ok())
        )?;
        line.clear();
    }
    Ok(())
}

/// The answer to one request, as JSON text in one line; bytes that are no text are refused, not guessed.
fn answer(request: &str, is_text: bool) -> String {
    let read = match is_text {
        true => Value::from_json(request),
        false => Err(Error::new(Code::NotJson, "", request, bismar::error::Allowed::rule("text in UTF-8"))),
    };
    let (id, found) = match read {
        Ok(request) => (request.field("id").cloned().unwrap_or_default(), respond(&request)),
        Err(error) => (Value::Null, Err(error)),
    };
    let (name, content) = match found {
        Ok(content) => ("answer", content),
        Err(error) => ("error", refused(&error)),
    };
    Value::Map(vec![("id".into(), id), (name.into(), content)]).to_json()
}

fn respond(request: &Value) -> Result<Value, Error> {
    match request.field("ask") {
        Some(Value::Text(ask)) => match &**ask {
            "fold" => fold_log(request),
            "apply" => apply(request),
            "next_session" => today(request),
            "formula" => registry::call(&read::<String>(request, "name")?, part(request, "given")?),
            "source" => source(request),
            _ => Err(Error::plain(Code::UnknownVariant, "ask")),
        },
        _ => Err(Error::plain(Code::MissingField, "ask")),
    }
}

/// A whole log becomes a state, to be stored beside it.
fn fold_log(request: &Value) -> Result<Value, Error> {
    Value::write(&fold(&log(request)?)?)
}

/// The state that the request carries: what is stored is checked before it is a state again.
fn stored(request: &Value) -> Result<State, Error> {
    State::try_from(read::<StoredState>(request, "state")?)
}

/// One more event on a stored state.
fn apply(request: &Value) -> Result<Value, Error> {
    let mut state = stored(request)?;
    state.apply(&read::<Event>(request, "event")?)?;
    Value::write(&state)
}

/// Today's session, from a stored state where there is one, otherwise from the whole log.
fn today(request: &Value) -> Result<Value, Error> {
    let plan: Plan = read(request, "plan")?;
    let today: Day = read(request, "today")?;
    let session = match request.field("state") {
        Some(_) => next_session_from(&stored(request)?, &plan, today)?,
        None => next_session(&log(request)?, &plan, today)?,
    };
    let lines = session.lifts.iter().map(|lift| Value::Text(text::lift_line(lift).into())).collect();
    Ok(Value::Map(vec![("session".into(), Value::write(&session)?), ("lines".into(), Value::List(lines))]))
}

fn source(request: &Value) -> Result<Value, Error> {
    let name: String = read(request, "name")?;
    let row = registry::row(&name).ok_or_else(|| Error::plain(Code::UnknownFunction, "name"))?;
    Value::write(row)
}

/// `Log::from_json` also says which event an error belongs to.
fn log(request: &Value) -> Result<Log, Error> {
    Log::from_json(&part(request, "log")?.to_json())
}

fn part<'a>(request: &'a Value, name: &'static str) -> Result<&'a Value, Error> {
    request.field(name).ok_or_else(|| Error::plain(Code::MissingField, name))
}

fn read<T: serde::de::DeserializeOwned>(request: &Value, name: &'static str) -> Result<T, Error> {
    part(request, name)?.read().map_err(|error| error.within(name))
}

/// The parts of an error, for a program, and the sentence, for a person.
fn refused(error: &Error) -> Value {
    let mut parts = vec![
        ("code".into(), Value::Text(error.code().as_str().into())),
        ("field".into(), Value::Text(error.field().to_string().into())),
        ("value".into(), Value::Text(error.given().to_string().into())),
        ("allowed".into(), Value::Text(error.allowed().to_string().into())),
        ("sentence".into(), Value::Text(text::error(error).into())),
    ];
    parts.extend(error.event().map(|event| ("event".into(), Value::Number(f64::from(event)))));
    Value::Map(parts)
}
