//! The sentences by name: each door of the log told in words, and a session with the sentence of everything in it.

use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Phrase, SaidSession, Show, ToldError, Translation, Words};
use crate::answers::{
    self, DayAnswers, Door, NextPlanned, PairLoads, SetsTable, SetsToday, Sharing, TableReading, door,
};
use crate::error::Error;
use crate::horizon::{Phase, Sex};
use crate::loading::Tolerance;
use crate::prescription::next_session_from;
use crate::progression::{State, fold};
use crate::quantity::{Day, Name, Unit};
use crate::record::{Event, EventKind, Grant, Log, Parameters, Plan};
use crate::source::arguments;
#[cfg(feature = "schema")]
use crate::source::schemas;
use crate::value::{Arguments, Value};

/// The names of these parameters, that unit, those phrases.
fn words<'a>(parameters: Option<&'a Parameters>, unit: Unit, phrases: Option<&'a Translation>) -> Words<'a> {
    let words = parameters.map_or_else(Words::plain, Words::of).in_unit(unit);
    phrases.map_or(words, |own| words.translated(own))
}

/// What the log declares last, which is in force after it: a door has folded the log, and it need not be folded again for names.
fn declared<'e>(events: &'e [Cow<'_, Event>]) -> Option<&'e Parameters> {
    events.iter().rev().find_map(|event| match &event.kind {
        EventKind::ParametersChanged(parameters) => Some(&**parameters),
        _ => None,
    })
}

fn said(
    log: &Log,
    answer: &impl Show,
    unit: Unit,
    phrases: Option<&Translation>,
) -> Result<Vec<String>, Error> {
    let events = log.effective()?;
    Ok(answer.show(&words(declared(&events), unit, phrases)))
}

// A function and a line of the list for each door of one log: what it takes behind the log, and the function itself.
macro_rules! doors {
    ({ $($name:ident($($argument:ident: [$($type:tt)*]),*);)* } { $($other:expr;)* }) => {
        $(fn $name(
            log: &Log,
            $($argument: $($type)*,)*
            unit: Unit,
            phrases: Option<&Translation>,
        ) -> Result<Vec<String>, Error> {
            said(log, &answers::$name(log, $($argument),*)?, unit, phrases)
        })*

        /// The doors that tell in sentences: `text.week` and so on, one for each door of the log, which take what that takes, then
        /// the unit and phrases of the host's own; those of a session; an error; and the phrases.
        pub static OF_WORDS: &[Door] = &[
            $(door!(
                concat!("text.", stringify!($name)),
                concat!("What does `answers.", stringify!($name), "` say, in sentences?"),
                $name,
                Vec<String>,
                [log: &Log, $($argument: $($type)*,)* unit: Unit, phrases: Option<&Translation>]
            ),)*
            $($other,)*
        ];
    };
}

doors! {{
    compare(lift: [&Name], today: [Day], to: [&Grant], from: [Option<&Grant>]);
    handover(today: [Day], since: [Day]);
    history(lift: [Option<&Name>], today: [Day]);
    in_force(today: [Day]);
    missed(plan: [&Plan], today: [Day], next: [Option<&NextPlanned>]);
    next_set(plan: [&Plan], today: [Day], done: [&SetsToday]);
    opens(today: [Day], suppose: [Option<&EventKind>], instead: [Option<&Log>]);
    rack(plan: [&Plan], lift: [&Name], today: [Day], tolerance: [Option<&Tolerance>]);
    raters(lift: [Option<&Name>], today: [Day]);
    review(today: [Day]);
    block_review(today: [Day], name: [Option<&Name>]);
    curve(lift: [&Name], today: [Day]);
    day(today: [Day], answers: [Option<&DayAnswers>]);
    easy_week(plan: [Option<&Plan>], today: [Day]);
    pair(strict: [&Name], forgiving: [&Name], today: [Day], loads: [Option<&PairLoads>]);
    trend(lift: [&Name], today: [Day], weeks: [Option<u16>]);
    verdicts(today: [Day]);
    week(today: [Day]);
    year(plan: [&Plan], today: [Day], sex: [Option<Sex>], phases: [Option<&Vec<Phase>>]);
} {
    door!(
        "text.share",
        "What does `answers.share` say, in sentences? Each lift by the name that its own log has for it.",
        share,
        Vec<String>,
        [lifters: &[Sharing], today: Day, unit: Unit, phrases: Option<&Translation>]
    );
    door!(
        "text.sets_to_log",
        "What does `answers.sets_to_log` say of the table, in sentences?",
        sets_to_log,
        Vec<String>,
        [table: &SetsTable, log: &Log, reading: Option<&TableReading>, unit: Unit, phrases: Option<&Translation>]
    );
    door!(
        "text.session",
        "What does this lifter do today, in sentences: a stop first; and beside them one for everything in the plan, by the whole log?",
        session,
        SaidSession,
        [log: &Log, plan: &Plan, today: Day, unit: Unit, phrases: Option<&Translation>]
    );
    SESSION_FROM;
    door!(
        "text.error",
        "What was refused, and why, as one or two sentences: an error of this library as it was thrown, a range of masses in the unit.",
        in_a_sentence,
        String,
        [error: &ToldError, unit: Unit, phrases: Option<&Translation>]
    );
    door!(
        "text.phrases",
        "Every phrase with its key, in English: what a translation has to say.",
        all_phrases,
        Vec<Phrase>,
        []
    );
}}

/// A stored state is read as a whole, with its seal.
const SESSION_FROM: Door = {
    let door = Door::new(
        "text.session_from",
        "The same by the state that was folded before.",
        arguments!([] state: &State, plan: &Plan, today: Day, unit: Unit, phrases: Option<&Translation>),
        "SaidSession",
        |given| {
            let mut arguments = Arguments::new(given)?;
            let stored: Value = arguments.take("state")?;
            let state = State::from_value(&stored).map_err(|error| error.within("state"))?;
            let (plan, today): (Plan, Day) = (arguments.take("plan")?, arguments.take("today")?);
            let (unit, phrases): (Unit, Option<Translation>) =
                (arguments.take("unit")?, arguments.take("phrases")?);
            arguments.finish()?;
            Value::write(&session_from(&state, &plan, today, unit, phrases.as_ref())?)
        },
    );
    #[cfg(feature = "schema")]
    let door = door.with_schemas(schemas!(
        SaidSession; state: &State, plan: &Plan, today: Day, unit: Unit, phrases: Option<&Translation>
    ));
    door
};

fn all_phrases() -> Result<Vec<Phrase>, Error> {
    Ok(super::phrases().into_iter().map(|(key, text)| Phrase { key, text }).collect())
}

fn in_a_sentence(error: &ToldError, unit: Unit, phrases: Option<&Translation>) -> Result<String, Error> {
    let error = error.to_error().map_err(|wrong| wrong.within("error"))?;
    Ok(words(None, unit, phrases).error(&error))
}

fn share(
    lifters: &[Sharing],
    today: Day,
    unit: Unit,
    phrases: Option<&Translation>,
) -> Result<Vec<String>, Error> {
    let share = answers::share(lifters, today)?;
    let events: Vec<_> = lifters.iter().map(|one| one.log.effective()).collect::<Result<_, _>>()?;
    let each: Vec<_> = events.iter().map(|events| words(declared(events), unit, phrases)).collect();
    Ok(words(None, unit, phrases).share_by_names(&share, &each))
}

fn sets_to_log(
    table: &SetsTable,
    log: &Log,
    reading: Option<&TableReading>,
    unit: Unit,
    phrases: Option<&Translation>,
) -> Result<Vec<String>, Error> {
    said(log, &answers::sets_to_log(table, log, reading)?, unit, phrases)
}

fn session(
    log: &Log,
    plan: &Plan,
    today: Day,
    unit: Unit,
    phrases: Option<&Translation>,
) -> Result<SaidSession, Error> {
    session_from(&fold(log)?, plan, today, unit, phrases)
}

fn session_from(
    state: &State,
    plan: &Plan,
    today: Day,
    unit: Unit,
    phrases: Option<&Translation>,
) -> Result<SaidSession, Error> {
    Ok(words(state.parameters(), unit, phrases).said(&next_session_from(state, plan, today)?))
}
