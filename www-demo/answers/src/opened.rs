//! A log as text, read once and kept: the page asks many questions about the same log, and adds to its end.

use std::cell::RefCell;
use std::rc::Rc;

use bismar::Error;
use bismar::progression::{State, fold};
use bismar::record::{Event, Log};
use bismar::value::Value;

/// A log that was read, with the state after its last event.
pub(crate) struct Opened {
    text: String,
    pub(crate) log: Log,
    pub(crate) state: State,
}

thread_local! {
    static KEPT: RefCell<Vec<Rc<Opened>>> = const { RefCell::new(Vec::new()) };
}

/// Logs that are kept read: those of a small group training together, each with its last few states.
const MOST_KEPT: usize = 12;

/// How a log's text ends.
const END: &str = "]}";

/// Reads and folds a log, or gives the one already read from the same text.
pub(crate) fn open(text: &str) -> Result<Rc<Opened>, Error> {
    let same = |kept: &Vec<Rc<Opened>>| kept.iter().find(|one| one.text == text).cloned();
    if let Some(found) = KEPT.with_borrow(same) {
        return Ok(found);
    }
    let opened = match longer(text) {
        Some(opened) => opened,
        None => {
            let log = Log::from_json(text)?;
            let state = fold(&log)?;
            Opened { text: text.to_string(), log, state }
        }
    };
    let opened = Rc::new(opened);
    KEPT.with_borrow_mut(|kept| {
        if kept.len() >= MOST_KEPT {
            kept.remove(0);
        }
        kept.push(opened.clone());
    });
    Ok(opened)
}

/// The same log with one more event at its end, where that event does not reach back into the past. It takes the
/// shorter log's place, so that nothing of it is copied.
fn longer(text: &str) -> Option<Opened> {
    let body = text.strip_suffix(END)?;
    let tail = |one: &Rc<Opened>| {
        let event = body.strip_prefix(one.text.strip_suffix(END)?)?.strip_prefix(',')?;
        Value::from_json(event).ok()?.read().ok()
    };
    let (at, event): (usize, Event) =
        KEPT.with_borrow(|kept| kept.iter().enumerate().rev().find_map(|(at, one)| Some((at, tail(one)?))))?;
    let before = KEPT.with_borrow(|kept| kept.get(at).cloned())?;
    // A number that is taken is for the whole reading to refuse.
    if before.log.events.iter().any(|known| known.sequence == event.sequence) {
        return None;
    }
    let mut state = before.state.clone();
    state.apply(&event).ok()?;
    KEPT.with_borrow_mut(|kept| kept.remove(at));
    let mut log = Rc::try_unwrap(before).map_or_else(|shared| shared.log.clone(), |own| own.log);
    log.events.push(event);
    Some(Opened { text: text.to_string(), log, state })
}
