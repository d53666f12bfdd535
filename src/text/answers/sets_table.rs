//! What a table of sets added to a log, in words.

use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::answers::{DayOrder, RowLeftOut, SetsToLog, TableGuess};
use crate::text::phrases::Phrases;
use crate::text::words::Words;

pub(in crate::text) const SETS_TABLE: Phrases = &[
    ("count.row.one", "1 row"),
    ("count.row.other", "{count} rows"),
    ("table.taken", "Taken from the table: {taken} of {rows}, as {sessions}."),
    ("table.separator", "Cells were taken to stand between these: {separator}"),
    ("table.column_read_as", "The column {column} was read as {field}."),
    (
        "table.day_first",
        "Days were read with the day before the month, as {rows} can be read in no other way.",
    ),
    (
        "table.month_first",
        "Days were read with the month before the day, as {rows} can be read in no other way.",
    ),
    ("table.time_left_out", "A time of day was left out: {rows}."),
    ("table.decimal_comma", "A comma was read as the decimal mark: {rows}."),
    ("table.pounds", "The load is in pounds: {rows}."),
    ("table.lift_read_as", "{text} was read as {lift}."),
    (
        "table.one_session_a_day",
        "The rows of one day became one session, since no column tells sessions apart.",
    ),
    ("table.every_row_a_work_set", "Every row was taken as a work set, since no column tells warm-ups."),
    (
        "table.place_as_granted",
        "Every set was taken as done at the place where the lift stood, since the table says nothing of it.",
    ),
    ("table.column_left_out", "The column {column} was left out: a log has no place for it."),
    ("table.row_left_out", "Line {line} was left out. {why}"),
    ("table.row_left_out_at", "Line {line} was left out, for its {field}. {why}"),
    ("table.row_left_out_given", "Line {line} was left out, for its {field}, {given}. {why}"),
    ("table.warm_up", "It is a warm-up set, which a log leaves out."),
    ("table.already_there", "The log has that session already."),
];

impl Words<'_> {
    /// What a table of sets added to a log, in sentences: how much was taken, every guess, then what was left out and why.
    #[must_use]
    pub fn sets_to_log(&self, told: &SetsToLog) -> Vec<String> {
        let rows = self.count("row", told.rows);
        let with = [
            ("taken", told.taken.to_string()),
            ("rows", rows),
            ("sessions", self.count("session", told.sessions)),
        ];
        let mut said = alloc::vec![self.say("table.taken", &with)];
        said.extend(told.guesses.iter().map(|guess| self.table_guess(guess)));
        let column = |column: &String| self.say("table.column_left_out", &[("column", column.clone())]);
        said.extend(told.columns_left_out.iter().map(column));
        said.extend(told.left_out.iter().map(|row| self.row_left_out(row)));
        said
    }

    fn table_guess(&self, guess: &TableGuess) -> String {
        let rows = |key, rows: u32| self.say(key, &[("rows", self.count("row", rows))]);
        match guess {
            TableGuess::Separator(mark) => self.say("table.separator", &[("separator", mark.clone())]),
            TableGuess::ColumnReadAs { column, field } => {
                let with = [("column", column.clone()), ("field", (*field).to_string())];
                self.say("table.column_read_as", &with)
            }
            TableGuess::DayOrder { order: DayOrder::DayFirst, rows: so_many } => {
                rows("table.day_first", *so_many)
            }
            TableGuess::DayOrder { order: DayOrder::MonthFirst, rows: so_many } => {
                rows("table.month_first", *so_many)
            }
            TableGuess::TimeLeftOut(so_many) => rows("table.time_left_out", *so_many),
            TableGuess::DecimalComma(so_many) => rows("table.decimal_comma", *so_many),
            TableGuess::Pounds(so_many) => rows("table.pounds", *so_many),
            TableGuess::LiftReadAs { text, lift } => {
                let with = [("text", text.clone()), ("lift", self.lift_name(lift).to_string())];
                self.say("table.lift_read_as", &with)
            }
            TableGuess::OneSessionADay => self.say("table.one_session_a_day", &[]),
            TableGuess::EveryRowAWorkSet => self.say("table.every_row_a_work_set", &[]),
            TableGuess::PlaceAsGranted => self.say("table.place_as_granted", &[]),
        }
    }

    fn row_left_out(&self, row: &RowLeftOut) -> String {
        let why = match row.why {
            "warm_up" => self.say("table.warm_up", &[]),
            "already_there" => self.say("table.already_there", &[]),
            code => self.say(&alloc::format!("error.{code}"), &[]),
        };
        let with = [
            ("line", row.line.to_string()),
            ("field", row.field.clone()),
            ("given", row.given.clone()),
            ("why", why),
        ];
        let key = match (row.field.as_str(), row.given.as_str(), row.why) {
            ("", ..) | (.., "warm_up" | "already_there") => "table.row_left_out",
            (_, "", _) => "table.row_left_out_at",
            _ => "table.row_left_out_given",
        };
        self.say(key, &with)
    }
}
