//! Logs that are kept open: read and folded once, asked many questions, and added to at the end.

use std::cell::RefCell;
use std::rc::Rc;

use bismar::answers::{Course, Diary};
use bismar::progression::{State, fold};
use bismar::quantity::Day;
use bismar::record::{Event, EventKind, Log, PainAnswer};
use bismar::value::Value;
use bismar::{Code, Error};
use serde::de::{Deserialize, Deserializer, Visitor};

/// A log that was read, with the state after its last event.
#[derive(Clone)]
pub(crate) struct Opened {
    pub(crate) log: Log,
    pub(crate) state: State,
    /// What questions about the whole log are asked of: made at the first of them, grown with the log.
    diary: RefCell<Option<Rc<Diary<'static>>>>,
    /// The log as it was followed for its history, as far as that was asked for.
    course: RefCell<Option<Rc<Course>>>,
    /// The state before each of the last events that were added here, oldest first: taking one of them back folds only what
    /// comes after it.
    before: Vec<Before>,
}

/// The state after so many of a log's events, in the order of the list.
#[derive(Clone)]
struct Before {
    events: usize,
    state: State,
}

/// States that are kept of one log.
const MOST_BEFORE: usize = 24;

thread_local! {
    static KEPT: RefCell<Vec<Option<Rc<Opened>>>> = const { RefCell::new(Vec::new()) };
}

/// Which log is asked: the number of one that is kept open, or a log's text.
#[derive(Clone)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(untagged))]
pub(crate) enum Which {
    Kept(u32),
    Text(String),
}

impl<'de> Deserialize<'de> for Which {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Which, D::Error> {
        struct Either;
        impl Visitor<'_> for Either {
            type Value = Which;

            fn expecting(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                out.write_str("the number of a log that is open, or a log's text")
            }

            fn visit_f64<E: serde::de::Error>(self, number: f64) -> Result<Which, E> {
                let whole = number.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(&number);
                if whole { Ok(Which::Kept(number as u32)) } else { Err(E::custom("a whole number")) }
            }

            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Which, E> {
                Ok(Which::Text(text.to_string()))
            }
        }
        from.deserialize_any(Either)
    }
}

fn not_open() -> Error {
    Error::plain(Code::NotReady, "log")
}

impl Which {
    /// The log that is meant, read and folded.
    pub(crate) fn open(&self) -> Result<Rc<Opened>, Error> {
        match self {
            Which::Kept(number) => {
                let kept = |kept: &Vec<Option<Rc<Opened>>>| kept.get(*number as usize).cloned().flatten();
                KEPT.with_borrow(kept).ok_or_else(not_open)
            }
            Which::Text(text) => Ok(Rc::new(read(text)?)),
        }
    }
}

fn read(text: &str) -> Result<Opened, Error> {
    let log = Log::from_json(text)?;
    let state = fold(&log)?;
    Ok(Opened { log, state, diary: RefCell::default(), course: RefCell::default(), before: Vec::new() })
}

/// A log as text.
#[derive(serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Text {
    log: String,
}

/// Reads and folds a log and keeps it open: its number.
pub(crate) fn keep(asked: Text) -> Result<u32, Error> {
    let opened = Rc::new(read(&asked.log)?);
    Ok(KEPT.with_borrow_mut(|kept| {
        let free = kept.iter().position(Option::is_none).unwrap_or(kept.len());
        match kept.get_mut(free) {
            Some(place) => *place = Some(opened),
            None => kept.push(Some(opened)),
        }
        free as u32
    }))
}

/// What happened, for the end of a log that is open.
#[derive(serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Addition {
    log: u32,
    day: Day,
    kind: EventKind,
    #[serde(default)]
    note: Option<String>,
}

/// An event that was added: its number, and its text as it is kept.
#[derive(serde::Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Added {
    sequence: u32,
    text: String,
}

/// Adds an event to the end of a log that is open, under the next number. What is refused changes nothing.
pub(crate) fn append(asked: Addition) -> Result<Added, Error> {
    let Addition { log, day, kind, note } = asked;
    changed(log, |opened| {
        let event = Event::new(opened.next(), day, kind).with_note(note);
        let text = Value::write(&event)?.to_json();
        let sequence = event.sequence;
        opened.add(event).map(|()| Added { sequence, text })
    })
}

/// What may happen.
#[derive(serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Trial {
    log: Which,
    day: Day,
    kind: EventKind,
}

/// Whether a log takes that at its end, refused in the same words as by [`append`]; nothing of it is kept.
pub(crate) fn takes(asked: Trial) -> Result<bool, Error> {
    let mut trial = Opened::clone(&*asked.log.open()?);
    // What was asked of the log stays with it.
    (trial.diary, trial.course) = (RefCell::default(), RefCell::default());
    let event = Event::new(trial.next(), asked.day, asked.kind);
    trial.add(event).map(|()| true)
}

fn changed<T>(log: u32, change: impl FnOnce(&mut Opened) -> Result<T, Error>) -> Result<T, Error> {
    KEPT.with_borrow_mut(|kept| {
        let place = kept.get_mut(log as usize).and_then(Option::as_mut).ok_or_else(not_open)?;
        change(Rc::make_mut(place))
    })
}

/// Events that were entered elsewhere, each as JSON text, for the end of a log that has grown meanwhile.
#[derive(serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Others {
    log: u32,
    events: Vec<String>,
}

/// What became of them.
#[derive(serde::Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Joined {
    /// Those that were added, with new numbers, each as its text is kept.
    texts: Vec<String>,
    /// How many do not fit any more.
    left: u32,
}

/// Adds them one by one. A correction of one of them follows it to its new number; it is written on the last day of the
/// log where that is later.
pub(crate) fn join(asked: Others) -> Result<Joined, Error> {
    let mut numbers = std::collections::BTreeMap::new();
    let mut joined = Joined { texts: Vec::new(), left: 0 };
    for text in &asked.events {
        // What cannot be read fits nowhere.
        let Ok(mut event) = Value::from_json(text).and_then(|value| value.read::<Event>()) else {
            joined.left = joined.left.saturating_add(1);
            continue;
        };
        let own = event.sequence;
        let added = changed(asked.log, |opened| {
            event.sequence = opened.next();
            if let EventKind::Correction(correction) = &mut event.kind {
                correction.replaces =
                    numbers.get(&correction.replaces).copied().unwrap_or(correction.replaces);
                event.day = opened.state.last().map_or(event.day, |(last, _)| event.day.max(last));
            }
            let (sequence, text) = (event.sequence, Value::write(&event)?.to_json());
            opened.add(event).map(|()| (sequence, text))
        });
        match added {
            Ok((sequence, text)) => {
                numbers.insert(own, sequence);
                joined.texts.push(text);
            }
            Err(error) if error.code() == Code::NotReady => return Err(error),
            Err(_) => joined.left = joined.left.saturating_add(1),
        }
    }
    Ok(joined)
}

/// The number of a log that is open.
#[derive(serde::Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(crate) struct Number {
    log: u32,
}

/// Gives a log back that was kept open.
pub(crate) fn close(asked: Number) -> Result<bool, Error> {
    KEPT.with_borrow_mut(|kept| {
        kept.get_mut(asked.log as usize).and_then(Option::take).map(|_| true).ok_or_else(not_open)
    })
}

impl Opened {
    /// The number of the next event.
    pub(crate) fn next(&self) -> u32 {
        let highest = self.log.events.iter().map(|event| event.sequence).max();
        highest.unwrap_or_default().saturating_add(1)
    }

    /// The log as it is asked questions: read once, and again only after what changes its past.
    pub(crate) fn diary(&self) -> Result<Rc<Diary<'static>>, Error> {
        let mut kept = self.diary.borrow_mut();
        match kept.as_ref() {
            Some(diary) => Ok(Rc::clone(diary)),
            None => Ok(Rc::clone(kept.insert(Rc::new(Diary::of(&self.log)?.into_owned())))),
        }
    }

    /// The log as it was followed for its history, from where it was followed to before.
    pub(crate) fn course(&self) -> Result<Rc<Course>, Error> {
        let kept = self.course.take().map(Rc::unwrap_or_clone).unwrap_or_default();
        let course = Rc::new(kept.follow(&*self.diary()?)?);
        self.course.replace(Some(Rc::clone(&course)));
        Ok(course)
    }

    /// What questions would be asked of if that had happened too; nothing is kept of it.
    pub(crate) fn diary_supposing(&self, day: Day, kind: EventKind) -> Result<Diary<'static>, Error> {
        let event = Event::new(self.next(), day, kind);
        let mut diary = Diary::clone(&*self.diary()?);
        match diary.add(&event) {
            Err(error) if error.code() == Code::NeedsRefold => {
                let mut log = self.log.clone();
                log.events.push(event);
                Ok(Diary::of(&log)?.into_owned())
            }
            taken => taken.map(|()| diary),
        }
    }

    /// The state if these had happened too, each on its day; nothing is kept of it.
    pub(crate) fn supposing(&self, kinds: Vec<(Day, EventKind)>) -> Result<State, Error> {
        let events: Vec<Event> =
            (self.next()..).zip(kinds).map(|(number, (day, kind))| Event::new(number, day, kind)).collect();
        let mut state = self.state.clone();
        for event in &events {
            if state.changes_the_past(event) {
                let mut all = self.clone();
                all.log.events.extend(events.iter().cloned());
                return all.folded();
            }
            state = state.applied(event)?;
        }
        Ok(state)
    }

    pub(crate) fn add(&mut self, event: Event) -> Result<(), Error> {
        let events = self.log.events.len();
        let used = self.log.events.iter().any(|known| known.sequence == event.sequence);
        // Taken once: by what questions about the whole log are asked of, where that was made, since it has the state too.
        let taken = match self.diary.get_mut() {
            // A number that is taken is for the whole fold to refuse.
            _ if used => None,
            Some(diary) => Some(Rc::make_mut(diary).add(&event).map(|()| diary.state().clone())),
            None => Some(self.state.clone().applied(&event)),
        };
        let in_order = matches!(taken, Some(Ok(_)));
        self.log.events.push(event);
        let after = match taken {
            // What is wrong with the event itself is wrong wherever it stands; checking says where it stands.
            Some(Err(error)) if error.code() != Code::NeedsRefold => self.log.check().and(Err(error)),
            Some(Ok(state)) => Ok(state),
            _ => self.folded(),
        };
        let state = after.inspect_err(|_| self.log.events.truncate(events))?;
        if !in_order {
            // The past is another by now.
            (self.diary, self.course) = (RefCell::default(), RefCell::default());
        }
        let state = std::mem::replace(&mut self.state, state);
        if self.before.len() >= MOST_BEFORE {
            self.before.remove(0);
        }
        self.before.push(Before { events, state });
        Ok(())
    }

    /// The state of the whole log, from the last state kept that nothing after it changes, else from the beginning.
    fn folded(&self) -> Result<State, Error> {
        self.log.check()?;
        self.before
            .iter()
            .rev()
            .find_map(|before| self.folded_from(before))
            .map_or_else(|| fold(&self.log), Ok)
    }

    /// None where what comes later reaches back before that state, or a correction in it opens what waits for a word: that is told
    /// when it is corrected, which only the whole log knows.
    fn folded_from(&self, before: &Before) -> Option<State> {
        let (earlier, later) = self.log.events.split_at_checked(before.events)?;
        let known = |number: u32| earlier.iter().any(|event| event.sequence == number);
        // A correction of a correction is one of the event that was corrected first.
        let reaches_back = |event: &Event| {
            let EventKind::Correction(correction) = &event.kind else { return known(event.sequence) };
            known(correction.replaces) || correction.with.as_deref().is_some_and(may_open)
        };
        if later.iter().any(reaches_back) {
            return None;
        }
        let mut state = before.state.clone();
        for event in self.log.effective().ok()?.iter().filter(|event| !known(event.sequence)) {
            state.apply(event).ok()?;
        }
        Some(state)
    }
}

/// Whether what is told may wait for somebody's word: a stop, pain, an ask, an illness, a limit. Then it counts when it was told.
fn may_open(kind: &EventKind) -> bool {
    let some = |pain: &Option<Vec<PainAnswer>>| pain.as_ref().is_some_and(|pain| !pain.is_empty());
    match kind {
        EventKind::SessionRecorded(session) => some(&session.pain),
        EventKind::NextDayReport(report) => some(&report.pain),
        EventKind::BodyMassRecorded(_) | EventKind::ParametersChanged(_) => false,
        _ => true,
    }
}
