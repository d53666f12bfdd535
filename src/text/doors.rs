//! The sentences by name: each door of the log told in words, and a session with the sentence of everything in it.

use alloc::string::String;
use alloc::vec::Vec;

use super::{Phrase, SaidSession, Show, Translation, Words};
use crate::answers::{
    self, DayAnswers, Door, NextPlanned, PairLoads, SetsTable, SetsToday, Sharing, TableReading,
};
use crate::error::Error;
use crate::horizon::{Phase, Sex};
use crate::loading::Tolerance;
use crate::prescription::next_session_from;
use crate::progression::{State, fold};
use crate::quantity::{Day, Name, Unit};
use crate::record::{Grant, Log, Plan};
use crate::source::{arguments, call};
use crate::value::{Arguments, Value};

/// The words of a state: its names, that unit, those phrases.
fn words<'a>(state: &'a State, unit: Unit, phrases: Option<&'a Translation>) -> Words<'a> {
    let words = state.parameters().map_or_else(Words::plain, Words::of).in_unit(unit);
    phrases.map_or(words, |own| words.translated(own))
}

fn said(
    log: &Log,
    answer: &impl Show,
    unit: Unit,
    phrases: Option<&Translation>,
) -> Result<Vec<String>, Error> {
    let state = fold(log)?;
    Ok(answer.show(&words(&state, unit, phrases)))
}

macro_rules! door {
    ($key:expr, $about:expr, $function:path, $out:literal, $($args:tt)*) => {
        Door::new($key, $about, arguments!([] $($args)*), $out, |given| {
            let mut arguments = Arguments::new(given)?;
            call!(arguments, $function, [] $($args)*)
        })
    };
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
        /// the unit and phrases of the host's own; those of a session; and the phrases.
        pub static OF_WORDS: &[Door] = &[
            $(door!(
                concat!("text.", stringify!($name)),
                concat!("What does `answers.", stringify!($name), "` say, in sentences?"),
                $name,
                "Vec<String>",
                log: &Log, $($argument: $($type)*,)* unit: Unit, phrases: Option<&Translation>
            ),)*
            $($other,)*
        ];
    };
}

doors! {{
    compare(lift: [&Name], today: [Day], to: [&Grant], from: [Option<&Grant>]);
    handover(today: [Day], since: [Day]);
    missed(plan: [&Plan], today: [Day], next: [Option<&NextPlanned>]);
    next_set(plan: [&Plan], today: [Day], done: [&SetsToday]);
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
        "Vec<String>",
        lifters: &[Sharing], today: Day, unit: Unit, phrases: Option<&Translation>
    );
    door!(
        "text.sets_to_log",
        "What does `answers.sets_to_log` say of the table, in sentences?",
        sets_to_log,
        "Vec<String>",
        table: &SetsTable, log: &Log, reading: Option<&TableReading>, unit: Unit, phrases: Option<&Translation>
    );
    door!(
        "text.session",
        "What does this lifter do today, in sentences: a stop first; and beside them one for everything in the plan, by the whole log?",
        session,
        "SaidSession",
        log: &Log, plan: &Plan, today: Day, unit: Unit, phrases: Option<&Translation>
    );
    Door::new(
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
    Door::new(
        "text.phrases",
        "Every phrase with its key, in English: what a translation has to say.",
        &[],
        "Vec<Phrase>",
        |given| {
            Arguments::new(given)?.finish()?;
            let all = super::phrases().into_iter().map(|(key, text)| Phrase { key, text });
            Value::write(&all.collect::<Vec<_>>())
        },
    );
}}

fn share(
    lifters: &[Sharing],
    today: Day,
    unit: Unit,
    phrases: Option<&Translation>,
) -> Result<Vec<String>, Error> {
    let share = answers::share(lifters, today)?;
    let states: Vec<State> = lifters.iter().map(|one| fold(&one.log)).collect::<Result<_, _>>()?;
    let each: Vec<Words<'_>> = states.iter().map(|state| words(state, unit, phrases)).collect();
    let of_all = phrases.map_or(Words::plain(), |own| Words::plain().translated(own)).in_unit(unit);
    Ok(of_all.share_by_names(&share, &each))
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
    Ok(words(state, unit, phrases).said(&next_session_from(state, plan, today)?))
}
