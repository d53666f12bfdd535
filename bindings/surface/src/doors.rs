//! Functions of whole logs, plans and states: they have no row in the registry, since no number comes from them. Those
//! that answer a question of a log are listed by the library itself.

#![cfg_attr(not(keeps), allow(dead_code, reason = "a part without kept states calls none of this"))]

use bismar::answers::{self, Door};
use bismar::prescription::{SessionPlan, next_session, next_session_from};
#[cfg(feature = "schema")]
use bismar::progression::Decision;
use bismar::progression::{State, fold};
use bismar::quantity::Day;
use bismar::record::{Event, Log, Plan};
use bismar::source::Argument;
use bismar::value::{Arguments, Value};
use bismar::{Code, Error};

/// A door with its arguments by name and type, and the type of what it gives.
macro_rules! state_door {
    ($key:literal, $doc:literal, [$($name:ident: $type:ty),+] -> $out:ty, $call:expr $(,)?) => {{
        let arguments = const { &[$(Argument::new(stringify!($name), stringify!($type))),+] };
        let door = Door::new($key, $doc, arguments, stringify!($out), $call);
        #[cfg(feature = "schema")]
        let door = door.with_schemas(bismar::source::Schemas::new(
            |generator| vec![$(generator.subschema_for::<$type>()),+],
            |generator| generator.subschema_for::<$out>(),
        ));
        door
    }};
}

/// Those of the whole, and those of the part for sessions.
const WHOLE: [&[Door]; 7] = [
    STATES,
    answers::OF_SESSIONS,
    answers::OF_DAYS,
    answers::OF_YEARS,
    answers::OF_TABLES,
    answers::OF_BEGINNINGS,
    answers::OF_COPIES,
];
const SESSION: [&[Door]; 5] =
    [STATES, answers::OF_SESSIONS, answers::OF_TABLES, answers::OF_BEGINNINGS, answers::OF_COPIES];

/// The doors of a part by its name, or of the whole, in the order of their numbers, which follow those of the registry.
#[must_use]
pub fn lists(part: Option<&str>) -> Vec<&'static [Door]> {
    match part {
        None => WHOLE.to_vec(),
        Some("session") => SESSION.to_vec(),
        Some("day") => vec![answers::OF_DAYS],
        Some("horizon") => vec![answers::OF_YEARS],
        #[cfg(feature = "words")]
        Some("english") => vec![bismar::text::OF_WORDS],
        Some(_) => Vec::new(),
    }
}

/// The doors of what this crate was compiled as; nothing else is carried.
pub(crate) fn doors() -> impl Iterator<Item = &'static Door> {
    #[cfg(part = "whole")]
    let lists = WHOLE;
    #[cfg(part = "session")]
    let lists = SESSION;
    #[cfg(part = "day")]
    let lists = [answers::OF_DAYS];
    #[cfg(part = "horizon")]
    let lists = [answers::OF_YEARS];
    #[cfg(part = "english")]
    let lists = [bismar::text::OF_WORDS];
    #[cfg(any(part = "strength", part = "loading", part = "statistics"))]
    let lists: [&[Door]; 0] = [];
    let lists = lists.into_iter();
    // Behind all others, so that no number depends on whether they are there.
    #[cfg(all(part = "whole", feature = "words"))]
    let lists = lists.chain([bismar::text::OF_WORDS]);
    lists.flatten()
}

/// Those of a state; those of a whole log are the library's own lists.
static STATES: &[Door] = &[
    state_door!(
        "progression.fold",
        "What is the state after this log? Order in the list does not matter; day and number do.",
        [log: &Log] -> State,
        |given| {
            let mut arguments = Arguments::new(given)?;
            let log: Log = arguments.take("log")?;
            arguments.finish()?;
            Value::write(&fold(&log)?)
        },
    ),
    state_door!(
        "progression.apply",
        "What is the state after one more event? `needs_refold` if the event changes the past.",
        [state: &State, event: &Event] -> State,
        |given| {
            let mut arguments = Arguments::new(given)?;
            let (mut state, event): (State, Event) = (state(&mut arguments)?, arguments.take("event")?);
            arguments.finish()?;
            state.apply(&event)?;
            Value::write(&state)
        },
    ),
    state_door!(
        "progression.decide",
        "What may each lift do today, and what stands in its way?",
        [state: &State, today: Day] -> Vec<Decision>,
        |given| {
            let mut arguments = Arguments::new(given)?;
            let (state, today): (State, Day) = (state(&mut arguments)?, arguments.take("today")?);
            arguments.finish()?;
            Value::write(&state.decide(today)?)
        },
    ),
    state_door!(
        "prescription.next_session",
        "What does this lifter do today, by the whole log?",
        [log: &Log, plan: &Plan, today: Day] -> SessionPlan,
        |given| {
            let mut arguments = Arguments::new(given)?;
            let (log, plan): (Log, Plan) = (arguments.take("log")?, arguments.take("plan")?);
            let today: Day = arguments.take("today")?;
            arguments.finish()?;
            Value::write(&next_session(&log, &plan, today)?)
        },
    ),
    state_door!(
        "prescription.next_session_from",
        "What does this lifter do today, by the state that was folded before?",
        [state: &State, plan: &Plan, today: Day] -> SessionPlan,
        |given| {
            let mut arguments = Arguments::new(given)?;
            let (state, plan): (State, Plan) = (state(&mut arguments)?, arguments.take("plan")?);
            let today: Day = arguments.take("today")?;
            arguments.finish()?;
            Value::write(&next_session_from(&state, &plan, today)?)
        },
    ),
];

/// Takes the stored state that is given.
fn state(arguments: &mut Arguments<'_>) -> Result<State, Error> {
    let stored: Value = arguments.take("state")?;
    State::from_value(&stored).map_err(|error| error.within("state"))
}

/// What may be asked of a state that is kept between calls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(u32)]
pub enum Request {
    /// Apply the event that is given.
    Apply = 0,
    /// Decide for the day that is given.
    Decide = 1,
    /// The next session for the plan and day that are given.
    NextSession = 2,
    /// The state as a value.
    State = 3,
}

impl Request {
    /// The request with that name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Request> {
        match name {
            "apply" => Some(Request::Apply),
            "decide" => Some(Request::Decide),
            "next_session" => Some(Request::NextSession),
            "state" => Some(Request::State),
            _ => None,
        }
    }

    /// The request with that number.
    #[must_use]
    pub fn from_number(number: u32) -> Option<Request> {
        [Request::Apply, Request::Decide, Request::NextSession, Request::State].get(number as usize).copied()
    }
}

/// The state after the log that is given as the argument `log`: the one stored as `state` where it is given and of use,
/// else folded.
///
/// # Errors
/// What reading the log and folding it report.
pub fn open(given: &Value) -> Result<State, Error> {
    let mut arguments = Arguments::new(given)?;
    let (log, stored): (Log, Option<Value>) = (arguments.take("log")?, arguments.take("state")?);
    arguments.finish()?;
    match stored {
        Some(stored) => State::from_value_or_fold(&stored, &log),
        None => fold(&log),
    }
}

/// Answers a request to a kept state.
///
/// # Errors
/// What reading and the request report; the state is then as it was.
pub fn ask(state: &mut State, request: Request, given: &Value) -> Result<Value, Error> {
    let mut arguments = Arguments::new(given)?;
    match request {
        Request::Apply => {
            let event: Event = arguments.take("event")?;
            arguments.finish()?;
            state.apply(&event)?;
            Ok(Value::Null)
        }
        Request::Decide => {
            let today: Day = arguments.take("today")?;
            arguments.finish()?;
            Value::write(&state.decide(today)?)
        }
        Request::NextSession => Value::write(&session_of(state, given)?),
        Request::State => {
            arguments.finish()?;
            Value::write(state)
        }
    }
}

/// What [`Request::NextSession`] answers, for a language that writes it in its own way.
///
/// # Errors
/// What reading and the session report.
pub fn session_of(state: &State, given: &Value) -> Result<SessionPlan, Error> {
    let mut arguments = Arguments::new(given)?;
    let (plan, today): (Plan, Day) = (arguments.take("plan")?, arguments.take("today")?);
    arguments.finish()?;
    next_session_from(state, &plan, today)
}

/// The error for a state that was given back, or never was.
#[must_use]
pub fn gone() -> Error {
    Error::plain(Code::NotReady, "progress")
}
