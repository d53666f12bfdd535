//! JSON from outside: logs, plans, stored states, calls by name.

use bismar::Code;
use bismar::progression::{State, fold};
use bismar::quantity::{Day, Name};
use bismar::record::{Event, Lifter, Log, Plan};
use bismar::registry;
use bismar::value::Value;

use super::session::{below_the_grant, plan_of, spoken};

fn tree(data: &[u8]) -> Option<Value> {
    let text = std::str::from_utf8(data).ok()?;
    match Value::from_json(text) {
        Ok(tree) => {
            let again = Value::from_json(&tree.to_json()).expect("what was written is read");
            assert_eq!(again.canonical_bytes(), tree.canonical_bytes(), "written and read is the same");
            Some(tree)
        }
        Err(error) => {
            spoken(&error);
            None
        }
    }
}

/// A log: read or refused whole; written again it is the same; folded it gives a state and sessions, or an error.
pub fn log(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let log = match Log::from_json(text) {
        Ok(log) => log,
        Err(error) => return spoken(&error),
    };
    let written = Value::write(&log).expect("a log holds no NaN").to_json();
    assert_eq!(Log::from_json(&written).as_ref(), Ok(&log), "written and read is the same");
    let state = match fold(&log) {
        Ok(state) => state,
        Err(error) => return spoken(&error),
    };
    sessions(&state);
    let mut turned = log.clone();
    turned.events.reverse();
    assert_eq!(fold(&turned).as_ref(), Ok(&state), "order in the list does not matter");
}

/// Sessions on the day of the last event, and some time after it.
fn sessions(state: &State) {
    let Some((last, _)) = state.last() else { return };
    let plan = plan_of(state);
    for days in [0, 1, 30, 400] {
        if let Ok(today) = last.plus(days) {
            below_the_grant(state, &plan, today);
        }
    }
}

/// A plan on the state of a small log.
pub fn plan(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else { return };
    let plan = match Plan::from_json(text) {
        Ok(plan) => plan,
        Err(error) => return spoken(&error),
    };
    let written = Value::write(&plan).expect("a plan holds no NaN").to_json();
    assert_eq!(Plan::from_json(&written).as_ref(), Ok(&plan), "written and read is the same");
    let (state, last) = super::events::started();
    for days in [0, 3, 25] {
        below_the_grant(&state, &plan, last.plus(days).expect("a day"));
    }
}

/// The state as this version would have stored it, so that what was found once is not refused by its version or its seal alone.
fn of_this_version(stored: &Value) -> String {
    let mut stored = stored.clone();
    if let Value::Map(fields) = &mut stored
        && let Some((_, version)) = fields.iter_mut().find(|(key, _)| key == "version")
    {
        *version =
            Value::Text(State::new(Lifter::new(Name::new("nobody").expect("a name"))).version().into());
    }
    if let Value::Map(fields) = &mut stored {
        fields.retain(|(key, _)| key != "seal");
    }
    let mixed = |hash: u64, byte: &u8| (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3);
    let seal = stored.canonical_bytes().iter().fold(0xcbf2_9ce4_8422_2325, mixed);
    if let Value::Map(fields) = &mut stored {
        fields.push(("seal".into(), Value::Text(format!("{seal:016x}").into())));
    }
    stored.to_json()
}

/// A stored state, and an event after it: `{"state": ..., "event": ...}`.
pub fn state(data: &[u8]) {
    let Some(document) = tree(data) else { return };
    let read = |name| document.field(name);
    let mut state: State = match read("state").map(|stored| State::from_json(&of_this_version(stored))) {
        Some(Ok(state)) => state,
        Some(Err(error)) => return spoken(&error),
        None => return,
    };
    let written = state.to_json().expect("a state holds no NaN");
    assert_eq!(State::from_json(&written).as_ref(), Ok(&state), "written and read is the same");
    sessions(&state);
    if let Some(Ok(event)) = read("event").map(Value::read::<Event>) {
        let before = state.clone();
        match state.apply(&event) {
            Ok(()) => sessions(&state),
            Err(error) => {
                spoken(&error);
                assert_eq!(state, before, "an error changes nothing");
            }
        }
    }
    if let Some(Ok(today)) = read("today").map(Value::read::<Day>) {
        below_the_grant(&state, &plan_of(&state), today);
    }
}

/// A call by name: `{"function": ..., "given": {...}}`. It answers with numbers that are numbers, or says what is
/// wrong with the input.
pub fn functions(data: &[u8]) {
    let Some(document) = tree(data) else { return };
    let (Some(Value::Text(name)), Some(given)) = (document.field("function"), document.field("given")) else {
        return;
    };
    match registry::call(name, given) {
        Ok(answer) => assert_eq!(registry::call(name, given).as_ref(), Ok(&answer), "{name}: twice the same"),
        Err(error) => {
            spoken(&error);
            // The input holds finite numbers only: this would be a number of ours that is none.
            assert!(error.code() != Code::NotFinite || named(given, error.field()), "{name}: {error:?}");
        }
    }
}

/// Whether the field's last name occurs among the arguments.
fn named(given: &Value, field: &str) -> bool {
    let last = field.rsplit('.').next().unwrap_or(field);
    let last = last.split('[').next().unwrap_or(last);
    match given {
        Value::Map(fields) => fields.iter().any(|(key, inner)| key == last || named(inner, field)),
        Value::List(items) => items.iter().any(|inner| named(inner, field)),
        _ => false,
    }
}
