//! Which column says what.

use alloc::string::String;
use alloc::vec::Vec;

use super::{SetsToLog, TableGuess};
use crate::error::{Code, Error};

/// What a column can say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Field {
    Day,
    Session,
    Lift,
    Kilograms,
    Pounds,
    Load,
    Reps,
    Sets,
    Reserve,
    Rating,
    Missed,
    WarmUp,
    Cue,
}

/// Each with its own name, and other names that are taken for it.
const NAMES: &[(Field, &str, &[&str])] = &[
    (Field::Day, "day", &["date"]),
    (Field::Session, "session", &["session_id", "session_number"]),
    (Field::Lift, "lift", &["exercise", "movement"]),
    (Field::Kilograms, "load_kg", &["weight_kg", "kg"]),
    (Field::Pounds, "load_lb", &["weight_lb", "weight_lbs", "lb", "lbs"]),
    (Field::Load, "load", &["weight"]),
    (Field::Reps, "reps", &["repetitions"]),
    (Field::Sets, "sets", &[]),
    (Field::Reserve, "reps_in_reserve", &["rir"]),
    (Field::Rating, "rating", &["rpe"]),
    (Field::Missed, "missed", &["failed"]),
    (Field::WarmUp, "warm_up", &["warmup"]),
    (Field::Cue, "cue", &[]),
];

/// The place of each field that the table has.
#[derive(Debug)]
pub(super) struct Head {
    places: Vec<(Field, usize)>,
    /// How many cells a row has.
    pub(super) width: usize,
}

/// In small letters, with one underscore for whatever is neither letter nor digit.
fn plain(name: &str) -> String {
    let mut out = String::new();
    for letter in name.trim().chars().flat_map(char::to_lowercase) {
        if letter.is_alphanumeric() {
            out.push(letter);
        } else if !out.ends_with('_') {
            out.push('_');
        }
    }
    out.trim_matches('_').into()
}

impl Head {
    /// Reads the names; those that mean nothing here are listed in the report.
    pub(super) fn read(names: &[String], told: &mut SetsToLog) -> Result<Head, Error> {
        let mut places: Vec<(Field, usize)> = Vec::new();
        for (place, name) in names.iter().enumerate() {
            let own = plain(name);
            let means = NAMES.iter().find(|(_, named, also)| *named == own || also.contains(&own.as_str()));
            let Some((field, named, _)) = means else {
                told.columns_left_out.push(name.trim().into());
                continue;
            };
            if places.iter().any(|(taken, _)| taken == field) {
                return Err(Error::plain(Code::DuplicateField, named).within("table"));
            }
            if *named != own {
                told.guesses.push(TableGuess::ColumnReadAs { column: name.trim().into(), field: named });
            }
            places.push((*field, place));
        }
        let head = Head { places, width: names.len() };
        let loads = [Field::Kilograms, Field::Pounds, Field::Load];
        for (there, name) in [
            (head.has(Field::Day), "day"),
            (head.has(Field::Lift), "lift"),
            (loads.iter().any(|load| head.has(*load)), "load_kg"),
            (head.has(Field::Reps), "reps"),
        ] {
            if !there {
                return Err(Error::plain(Code::MissingField, name).within("table"));
            }
        }
        Ok(head)
    }

    pub(super) fn has(&self, field: Field) -> bool {
        self.places.iter().any(|(own, _)| *own == field)
    }

    /// What a row says there; none where it says nothing.
    pub(super) fn cell<'a>(&self, cells: &'a [String], field: Field) -> Option<&'a str> {
        let (_, place) = self.places.iter().find(|(own, _)| *own == field)?;
        let text = cells.get(*place)?.trim();
        // A mark that a table's writer sets before what a spreadsheet would take for a sum.
        let bare = text.strip_prefix('\'').filter(|rest| rest.starts_with(['=', '+', '-', '@']));
        Some(bare.unwrap_or(text)).filter(|text| !text.is_empty())
    }
}
