//! A table of sets becomes sessions of a log: what was taken, what had to be guessed, what was left out and why.
//!
//! Uses error, quantity, record, progression. A table is read strictly and a row that is refused is listed; what a table
//! cannot know (pain, marks, places) is left unsaid.

mod cells;
mod csv;
mod head;
mod table;

use alloc::borrow::ToOwned;
use alloc::collections::BTreeMap;
use alloc::string::String;
use alloc::vec::Vec;

use self::cells::Days;
use self::csv::Row;
use self::head::{Field, Head};
pub use self::table::{
    DayOrder, LiftSpelling, RowLeftOut, SetsTable, SetsToLog, TableGuess, TableReading, TableRows,
};
use crate::error::{Allowed, Code, Error};
use crate::progression::fold;
use crate::quantity::{Day, Mass, Name, Reps};
use crate::record::{
    Event, EventKind, LiftParameters, LiftSession, Log, MAX_EVENTS, Parameters, Session, WorkSet,
};

/// The most equal sets that one row may stand for.
const MOST_TIMES: u8 = 30;

/// Which sessions does this table of sets add to the log, and what had to be guessed?
///
/// # Rules
/// Columns by name, in any order: `day`, `lift`, `load_kg` or `load_lb` or `load`, `reps`; and where there are any `session`,
/// `sets` (how many equal ones a row stands for), `reps_in_reserve` or `rating`, `missed`, `warm_up`, `cue`. The log declares the
/// lifts, by the parameters in force on the day of the row. Rows of one day (and one `session`) are one session, in the
/// order of the table. No row is a pass: marks are never taken from a table, since it does not say who marked what. A unit and an
/// order of day and month that nothing shows are asked for, never guessed. A session that the log holds already is not added
/// twice, though a table prints its loads with three digits. Empty lines are no rows. The new log is folded once before it
/// is given.
///
/// # Errors
/// `missing_field` for a column that is needed, `reading.unit` or `reading.day_order`; `duplicate_field` where two columns say
/// the same; `wrong_format` for a quotation mark out of place; `empty_list` for a table without rows; `too_many` rows; what
/// the log that is given reports. A row that is refused is no error: it is left out and listed, and no other is lost for it.
///
/// # Examples
/// ```
/// use bismar::answers::{SetsTable, TableGuess, sets_to_log};
/// use bismar::record::Log;
///
/// let log = Log::from_json(r#"{ "format": "bismar-log", "version": 1, "lifter": { "id": "invented", "invented": true },
///   "events": [{ "sequence": 1, "day": "2026-01-01", "kind": { "parameters_changed": {
///     "implements": [{ "bar": { "id": "bar", "mass": { "kg": 20 }, "collar": { "kg": 0 } } }],
///     "stock": { "discs": [{ "nominal": { "kg": 5 }, "count": 8 }] }, "regions": [{ "id": "knee" }],
///     "lifts": [{ "id": "squat", "body": "lower", "regions": ["knee"], "implement": "bar", "rungs": [{ "id": "box" }],
///       "start": { "work": { "sets": 3, "reps": 5, "load": { "kg": 30 } } }, "criteria": [{ "id": "braced", "critical": true }],
///       "gate": { "pass_run": { "acceptable": 9, "of": 10, "sessions": 2 } } }] } } }] }"#)?;
/// let table = "Date,Exercise,Weight (kg),Reps,RIR\n\
///              2026-01-05,Squat,40,5,3\n\
///              2026-01-05,Squat,40,5,2\n\
///              2026-01-05,Bicycle,0,1,\n";
/// let told = sets_to_log(&SetsTable::Csv(table.into()), &log, None)?;
/// assert_eq!((told.rows, told.taken, told.sessions), (3, 2, 1));
/// assert_eq!((told.left_out[0].line, told.left_out[0].why), (4, "unknown_lift"));
/// assert!(told.guesses.contains(&TableGuess::EveryRowAWorkSet));
/// assert_eq!(told.log.events.len(), 2);
/// # Ok::<(), bismar::Error>(())
/// ```
pub fn sets_to_log(table: &SetsTable, log: &Log, reading: Option<&TableReading>) -> Result<SetsToLog, Error> {
    log.check()?;
    let mut told = SetsToLog {
        log: log.clone(),
        rows: 0,
        taken: 0,
        sessions: 0,
        guesses: Vec::new(),
        columns_left_out: Vec::new(),
        left_out: Vec::new(),
    };
    let usual = TableReading::default();
    let reading = reading.unwrap_or(&usual);
    let mut rows = rows_of(table, &mut told)?.into_iter();
    let head = rows.next().ok_or_else(|| Error::plain(Code::EmptyList, "table"))?;
    let head = Head::read(&head.cells, &mut told)?;
    let rows: Vec<Row> = rows.collect();
    if rows.is_empty() {
        return Err(Error::plain(Code::EmptyList, "rows").within("table"));
    }
    if rows.len() > MAX_EVENTS {
        return Err(
            Error::range(Code::TooMany, "rows", rows.len(), 0.0, MAX_EVENTS as f64, "").within("table")
        );
    }
    told.rows = rows.len() as u32;
    let order = day_order(&head, &rows, reading, &mut told)?;
    let mut import = Import {
        head,
        order,
        reading,
        declared: declared(log)?,
        drafts: Vec::new(),
        places: BTreeMap::new(),
        told,
    };
    for row in &rows {
        import.take(row)?;
    }
    import.finish()
}

fn rows_of(table: &SetsTable, told: &mut SetsToLog) -> Result<Vec<Row>, Error> {
    match table {
        SetsTable::Csv(text) => {
            let separator = csv::separator(text);
            if separator != ',' {
                told.guesses.push(TableGuess::Separator(separator.into()));
            }
            csv::read(text, separator)
        }
        SetsTable::Rows(table) => {
            let all = core::iter::once(&table.columns).chain(&table.rows);
            Ok((1..).zip(all).map(|(line, cells)| Row { line, cells: cells.clone() }).collect())
        }
    }
}

fn day_order(
    head: &Head,
    rows: &[Row],
    reading: &TableReading,
    told: &mut SetsToLog,
) -> Result<Option<DayOrder>, Error> {
    let days = Days::look(head, rows);
    if days.timed > 0 {
        told.guesses.push(TableGuess::TimeLeftOut(days.timed));
    }
    if reading.day_order.is_some() {
        return Ok(reading.day_order);
    }
    let order = days.order()?;
    if let Some(order) = order {
        let rows = if order == DayOrder::DayFirst { days.day_first } else { days.month_first };
        told.guesses.push(TableGuess::DayOrder { order, rows });
    }
    Ok(order)
}

/// The parameters, each with the day from which they are in force.
fn declared(log: &Log) -> Result<Vec<(Day, Parameters)>, Error> {
    let events = log.effective()?;
    let parameters = events.iter().filter_map(|event| match &event.kind {
        EventKind::ParametersChanged(parameters) => Some((event.day, (**parameters).to_owned())),
        _ => None,
    });
    Ok(parameters.collect())
}

/// A session as far as it is read.
struct Draft {
    day: Day,
    /// Where its rows begin.
    lines: Vec<u32>,
    lifts: Vec<LiftSession>,
}

/// What a table can know of a session: loads and repetitions, lift by lift.
type Done<'a> = Vec<(&'a Name, Vec<(Mass, Reps)>)>;

fn done(session: &Session) -> Done<'_> {
    let sets = |lift: &LiftSession| lift.sets.iter().map(|set| (set.load, set.reps)).collect();
    session.lifts.iter().map(|lift| (&lift.lift, sets(lift))).collect()
}

/// Two loads are one where they differ by less, 1 g: three printed digits are off by half a gram at most.
const PRINTED: u64 = 1_000_000_000;

/// Whether it is the same work, as far as a table tells it.
fn alike(one: &Done<'_>, other: &Done<'_>) -> bool {
    let load = |one: Mass, other: Mass| one.nanograms().abs_diff(other.nanograms()) < PRINTED;
    let sets = |one: &[(Mass, Reps)], other: &[(Mass, Reps)]| {
        one.len() == other.len()
            && one.iter().zip(other).all(|(one, other)| one.1 == other.1 && load(one.0, other.0))
    };
    one.len() == other.len()
        && one.iter().zip(other).all(|(one, other)| one.0 == other.0 && sets(&one.1, &other.1))
}

struct Import<'a> {
    head: Head,
    order: Option<DayOrder>,
    reading: &'a TableReading,
    declared: Vec<(Day, Parameters)>,
    drafts: Vec<Draft>,
    /// Where the draft of a session stands.
    places: BTreeMap<(Day, &'a str), usize>,
    told: SetsToLog,
}

/// A set that was read.
struct Read<'a> {
    day: Day,
    session: &'a str,
    lift: Name,
    set: WorkSet,
    times: u8,
    cue: Option<Name>,
}

impl<'a> Import<'a> {
    fn take(&mut self, row: &'a Row) -> Result<(), Error> {
        match self.read(row) {
            Ok(Some(read)) => self.put(row.line, read),
            Ok(None) => self.leave_out(row.line, "warm_up", "warm_up", String::new()),
            // Not of this row alone: the host has to say it.
            Err(error) if error.field() == "reading.unit" => return Err(error),
            Err(error) => {
                let given = match error.given() {
                    crate::error::Given::Text(text) => text.clone(),
                    crate::error::Given::Number(number) => alloc::format!("{number}"),
                    _ => String::new(),
                };
                self.leave_out(row.line, error.code().as_str(), error.field(), given);
            }
        }
        Ok(())
    }

    fn leave_out(&mut self, line: u32, why: &'static str, field: &str, given: String) {
        self.told.left_out.push(RowLeftOut { line, why, field: field.into(), given });
    }

    /// The set of a row; none for a warm-up.
    fn read(&mut self, row: &'a Row) -> Result<Option<Read<'a>>, Error> {
        let cells = &row.cells;
        if cells.len() != self.head.width {
            let rule = Allowed::rule("a cell for each column");
            return Err(Error::new(Code::WrongLength, "row", cells.len(), rule));
        }
        let text = |field: Field, name: &'static str| {
            self.head.cell(cells, field).ok_or_else(|| Error::plain(Code::MissingField, name))
        };
        let flag = |field: Field, name: &'static str| {
            self.head.cell(cells, field).map_or(Ok(false), |text| cells::flag(name, text))
        };
        let day = cells::day(text(Field::Day, "day")?, self.order)?;
        let named = text(Field::Lift, "lift")?;
        if flag(Field::WarmUp, "warm_up")? {
            return Ok(None);
        }
        let load = cells::load(&self.head, cells, self.reading.unit)?;
        let mut set = WorkSet::done(load.mass, cells::reps(text(Field::Reps, "reps")?)?);
        set.effort = cells::effort(&self.head, cells)?;
        set.failed = flag(Field::Missed, "missed")?;
        let times =
            self.head.cell(cells, Field::Sets).map_or(Ok(1), |text| cells::times(text, MOST_TIMES))?;
        let cue = self
            .head
            .cell(cells, Field::Cue)
            .map(Name::new)
            .transpose()
            .map_err(|error| error.named("cue"))?;
        let session = self.head.cell(cells, Field::Session).unwrap_or_default();
        let lift = self.lift(named, day)?;
        self.note(load.comma, TableGuess::DecimalComma(0));
        self.note(load.pounds, TableGuess::Pounds(0));
        Ok(Some(Read { day, session, lift, set, times, cue }))
    }

    /// The id of a lift that is declared on that day.
    fn lift(&mut self, text: &str, day: Day) -> Result<Name, Error> {
        let in_force = self.declared.iter().rev().find(|(from, _)| *from <= day);
        let (_, parameters) = in_force.ok_or_else(|| Error::plain(Code::NoParameters, "day"))?;
        let told = self.reading.lifts.iter().find(|one| one.text.trim() == text).map(|one| one.lift.as_str());
        let exact = |one: &&LiftParameters| one.id.as_str() == told.unwrap_or(text);
        if let Some(lift) = parameters.lifts.iter().find(exact) {
            return Ok(lift.id.clone());
        }
        let plain = text.to_lowercase();
        let same = |name: &Name| name.as_str().to_lowercase() == plain;
        let mut like =
            parameters.lifts.iter().filter(|one| same(&one.id) || one.name.as_ref().is_some_and(same));
        match (told, like.next(), like.next()) {
            (None, Some(lift), None) => {
                let guess = TableGuess::LiftReadAs { text: text.into(), lift: lift.id.clone() };
                if !self.told.guesses.contains(&guess) {
                    self.told.guesses.push(guess);
                }
                Ok(lift.id.clone())
            }
            _ => {
                let ids: Vec<&str> = parameters.lifts.iter().map(|lift| lift.id.as_str()).collect();
                Err(Error::new(
                    Code::UnknownLift,
                    "lift",
                    told.unwrap_or(text),
                    Allowed::OneOf(ids.join(", ").into()),
                ))
            }
        }
    }

    /// Counts a row in a guess of that kind.
    fn note(&mut self, so: bool, guess: TableGuess) {
        if !so {
            return;
        }
        let kind = core::mem::discriminant(&guess);
        if !self.told.guesses.iter().any(|one| core::mem::discriminant(one) == kind) {
            self.told.guesses.push(guess);
        }
        for one in &mut self.told.guesses {
            if core::mem::discriminant(one) == kind
                && let TableGuess::DecimalComma(rows) | TableGuess::Pounds(rows) = one
            {
                *rows += 1;
            }
        }
    }

    fn put(&mut self, line: u32, read: Read<'a>) {
        let at = *self.places.entry((read.day, read.session)).or_insert_with(|| {
            self.drafts.push(Draft { day: read.day, lines: Vec::new(), lifts: Vec::new() });
            self.drafts.len() - 1
        });
        let Some(draft) = self.drafts.get_mut(at) else { return };
        draft.lines.push(line);
        let place = draft.lifts.iter().position(|lift| lift.lift == read.lift).unwrap_or_else(|| {
            draft.lifts.push(LiftSession::as_granted(read.lift.clone(), Vec::new()));
            draft.lifts.len() - 1
        });
        let Some(lift) = draft.lifts.get_mut(place) else { return };
        lift.sets.extend(core::iter::repeat_n(read.set, usize::from(read.times)));
        // The cue last used.
        if read.cue.is_some() {
            lift.cue = read.cue;
        }
    }

    /// Makes events of the sessions, and folds the log once.
    fn finish(mut self) -> Result<SetsToLog, Error> {
        let mut drafts = core::mem::take(&mut self.drafts);
        drafts.sort_by_key(|draft| draft.day);
        let told = core::mem::take(&mut self.told.log.events);
        let mut there: BTreeMap<Day, Vec<Done<'_>>> = BTreeMap::new();
        for event in &told {
            if let EventKind::SessionRecorded(session) = &event.kind {
                there.entry(event.day).or_default().push(done(session));
            }
        }
        let mut sequence = told.iter().map(|event| event.sequence).max().unwrap_or_default();
        let mut added = Vec::new();
        for draft in drafts {
            let session = Session { lifts: draft.lifts, pain: None, minutes: None, effort: None };
            let twice = there
                .get(&draft.day)
                .is_some_and(|all| all.iter().any(|known| alike(known, &done(&session))));
            let why = match session.check() {
                _ if twice => Some(("already_there", String::from("session"))),
                checked => checked.err().map(|error| (error.code().as_str(), error.field().to_owned())),
            };
            if let Some((why, field)) = why {
                for line in draft.lines {
                    self.leave_out(line, why, &field, String::new());
                }
                continue;
            }
            let Some(next) = sequence.checked_add(1) else {
                return Err(Error::new(Code::Overflow, "sequence", sequence, Allowed::Unstated));
            };
            sequence = next;
            let kind = EventKind::SessionRecorded(session);
            added.push(Event { sequence, day: draft.day, kind, note: None });
            self.told.taken += draft.lines.len() as u32;
            self.told.sessions += 1;
        }
        drop(there);
        self.told.log.events = told;
        self.told.log.events.append(&mut added);
        self.told.left_out.sort_by_key(|row| row.line);
        if self.told.taken > 0 {
            if !self.head.has(Field::Session) {
                self.told.guesses.push(TableGuess::OneSessionADay);
            }
            if !self.head.has(Field::WarmUp) {
                self.told.guesses.push(TableGuess::EveryRowAWorkSet);
            }
            self.told.guesses.push(TableGuess::PlaceAsGranted);
        }
        self.told.log.check()?;
        fold(&self.told.log)?;
        Ok(self.told)
    }
}
